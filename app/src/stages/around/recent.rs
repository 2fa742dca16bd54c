//! The projects last worked on, as lines of a menu or a card.

use std::path::{Path, PathBuf};

use egui::{Align2, Rect, Role, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, vec2};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::fields::form;
use crate::kit::icons::Icon;
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{letters, paint, type_faces};
use crate::work::home::DeskAction;

/// Height of a line.
const LINE: f32 = 28.0;
/// Size of the picture of a project at the head of its line.
pub(super) const PICTURE: Vec2 = vec2(34.0, 26.0);

/// Height of the button that goes on with the project worked on last; its picture.
pub(super) const CONTINUE: f32 = 58.0;
pub(super) const LARGE: Vec2 = vec2(51.0, 39.0);

/// The button that goes on where the hook was, or else with the project as it was left.
pub(super) fn go_on(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    path: &Path,
    actions: &mut Actions,
) {
    let t = bench.t;
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let left_at = bench.small_pictures.left_at(path);
    let words = match left_at {
        Some(at) => say!("recent-continue", piece = at.piece, round = at.round),
        None => say!("recent-go-on-with", name = stem),
    };
    let rect = rect.with_max_y(rect.bottom() - 3.0);
    let response = ui.interact(rect, ui.scope_id().with("go on"), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &words));
    let painter = ui.painter();
    paint::lip(painter, rect, CARD_RADIUS, t.edge_deep, 3.0);
    let hovered = response.hovered();
    let (fill, edge) = if hovered { (t.wash, t.outline) } else { (t.panel, t.control_edge) };
    let edge = Stroke::new(if hovered { 1.5 } else { 1.0 }, edge);
    painter.rect(rect, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let inner = rect.shrink2(vec2(12.0, 0.0));
    let place = Align2::LEFT_CENTER.anchor_size(inner.left_center(), LARGE);
    if let Some(texture) = bench.small_pictures.project(path) {
        paint::texture(painter, texture, place);
    }
    let x = place.right() + 12.0;
    let room = inner.right() - x;
    let y = rect.center().y;
    let title = type_faces::bold(type_faces::TITLE);
    let at = egui::pos2(x, y - 9.0);
    paint::clipped_text(painter, at, &words, title, t.ink, room);
    let folder = path.parent().and_then(Path::file_name).unwrap_or_default();
    let below = match left_at {
        Some(_) => {
            say!("recent-name-in-folder", name = stem, folder = folder.to_string_lossy())
        }
        None => say!("recent-in-folder", folder = folder.to_string_lossy()),
    };
    let small = type_faces::regular(type_faces::SMALL);
    paint::clipped_text(painter, egui::pos2(x, y + 11.0), &below, small, t.soft_ink, room);
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    if response.on_hover_text(path.display().to_string()).clicked() {
        let path = path.to_owned();
        let action = match left_at {
            Some(_) => DeskAction::Continue(path),
            None => DeskAction::Open(path),
        };
        actions.push(Action::Desk(action));
    }
}

/// The lines under the file menu's own.
pub(super) fn menu(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    if bench.desk.recent.is_empty() {
        return;
    }
    ui.add_space(4.0);
    form::heading(ui, say!("recent-recent-projects"));
    lines(ui, bench, &bench.desk.recent, false, actions);
}

/// A line for each of these projects, with a picture of it if so asked; one that is gone can be
/// taken off the list.
pub(super) fn lines(
    ui: &mut Ui,
    bench: &Bench<'_>,
    projects: &[PathBuf],
    pictured: bool,
    actions: &mut Actions,
) {
    for path in projects {
        let gone = bench.desk.is_missing(path);
        if line(ui, bench, path, gone, pictured) {
            let path = path.clone();
            let action = if gone { DeskAction::Forget(path) } else { DeskAction::Open(path) };
            actions.push(Action::Desk(action));
            ui.close();
        }
    }
}

/// One project: its name, and the folder it lies in. Returns whether it was clicked.
fn line(ui: &mut Ui, bench: &Bench<'_>, path: &Path, gone: bool, pictured: bool) -> bool {
    let t = bench.t;
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), LINE), Sense::click());
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let name = if gone {
        say!("recent-remove-stem-from-the-list", stem = stem)
    } else {
        say!("recent-open", stem = stem)
    };
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    letters::line(&response, &stem);
    let painter = ui.painter();
    paint::row(painter, rect, &response, false, t);
    let mut inner = rect.shrink2(vec2(8.0, 0.0));
    if pictured {
        let place = Align2::LEFT_CENTER.anchor_size(inner.left_center(), PICTURE);
        if let Some(texture) = bench.small_pictures.project(path) {
            paint::texture(painter, texture, place);
        }
        inner.min.x = place.right() + 8.0;
    }
    let (ink, aside) = if gone {
        (t.disabled(), say!("recent-no-longer-there").into())
    } else {
        let folder = path.parent().and_then(Path::file_name).unwrap_or_default();
        (t.ink, folder.to_string_lossy())
    };
    let small = type_faces::regular(type_faces::SMALL);
    let end = if gone {
        Icon::Close.paint(painter, inner.right_center() - vec2(6.0, 0.0), t.soft_ink);
        inner.right() - 20.0
    } else {
        inner.right()
    };
    let galley = painter.layout_no_wrap(aside.into_owned(), small, t.soft_ink);
    let width = galley.size().x.min(0.45 * inner.width());
    let place = Align2::RIGHT_CENTER
        .anchor_size(egui::pos2(end, inner.center().y), vec2(width, galley.size().y));
    painter
        .with_clip_rect(Rect::from_min_max(place.min, egui::pos2(end, rect.bottom())))
        .galley(place.min, galley, t.soft_ink);
    let font = type_faces::regular(type_faces::BODY);
    let room = place.left() - inner.left() - 8.0;
    paint::clipped_text(painter, inner.left_center(), &stem, font, ink, room);
    let whole = path.display();
    let hint =
        if gone { format!("{whole}\n{}", say!("recent-gone")) } else { whole.to_string() };
    response.on_hover_text(hint).clicked()
}
