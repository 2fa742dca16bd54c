//! What can be done with the selected picture: buttons over the board, its opacity at its foot.

use egui::{Rect, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::piece::Picture;

use super::ground::Ground;
use super::navigate;
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::type_faces;
use crate::view::look::Look;

/// What a button over the board does.
enum Deed {
    Lock,
    Hide,
    Trace,
    Replace,
    Remove,
    Done,
}

/// Draws the controls of the selected picture.
pub(super) fn show(
    ui: &Ui,
    bench: &Bench<'_>,
    main: Rect,
    ground: &Ground,
    actions: &mut Actions,
) {
    let picture = bench.document.piece().picture.as_ref();
    let Some(picture) = picture.filter(|_| bench.view.board.picture) else { return };
    buttons(ui, main.top() + 7.0, ground.rect.right(), picture, actions);
    let plate = opacity(ui, bench, ground, picture, actions);
    if !picture.hidden && !picture.locked {
        scale_hint(ui, bench, ground, plate.top() - 6.0);
    }
}

/// The buttons, the last one's right end at `right`.
fn buttons(ui: &Ui, top: f32, mut right: f32, picture: &Picture, actions: &mut Actions) {
    let all = [
        (
            Deed::Done,
            say!("photo-done"),
            say!("photo-deselect-the-picture"),
            say!("photo-back-to-the-knots-esc"),
            None,
        ),
        (
            Deed::Remove,
            say!("photo-remove"),
            say!("photo-remove-the-picture"),
            say!("photo-remove-it-its-file-stays"),
            None,
        ),
        (
            Deed::Replace,
            say!("photo-replace"),
            say!("photo-replace-the-picture"),
            say!("photo-another-one-in-its-place"),
            None,
        ),
        (
            Deed::Trace,
            say!("photo-trace"),
            say!("photo-trace-the-picture"),
            say!("photo-find-its-outline-to-look-at-first"),
            None,
        ),
        (
            Deed::Hide,
            say!("photo-hide"),
            say!("photo-hide-the-picture"),
            say!("photo-keep-it-out-of-sight"),
            Some(picture.hidden),
        ),
        (
            Deed::Lock,
            say!("photo-lock"),
            say!("photo-lock-the-picture"),
            say!("photo-keep-it-in-its-place"),
            Some(picture.locked),
        ),
    ];
    for (deed, words, name, hint, on) in all {
        let width = controls::words_width(ui, words) - 4.0;
        let rect = Rect::from_min_size(pos2(right - width, top), vec2(width, 26.0));
        right = rect.left() - 6.0;
        let held = controls::toggle(ui, rect, ButtonFace::Words(words), name, true, on);
        if !held.on_hover_text(hint).clicked() {
            continue;
        }
        let with = |picture: Picture| Edit::Picture(Some(picture));
        match deed {
            Deed::Lock => {
                actions.edit(with(Picture { locked: !picture.locked, ..picture.clone() }));
            }
            Deed::Hide => {
                actions.edit(with(Picture { hidden: !picture.hidden, ..picture.clone() }));
            }
            Deed::Trace => actions.command(Command::TracePicture),
            Deed::Replace => actions.command(Command::ChoosePicture),
            Deed::Remove => {
                actions.edit(Edit::Picture(None));
                actions.look(Look::Picture(false));
            }
            Deed::Done => actions.look(Look::Picture(false)),
        }
    }
}

/// How the picture comes to its scale, in a line whose foot is at `foot`.
fn scale_hint(ui: &Ui, bench: &Bench<'_>, ground: &Ground, foot: f32) {
    let t = bench.t;
    let words = say!("board-scale-hint");
    let font = type_faces::regular(type_faces::SMALL);
    let room = ground.rect.width() - 32.0;
    let galley = ui.painter().layout(words.to_owned(), font, t.ink, room);
    let at = pos2(ground.rect.center().x, foot);
    let rect = egui::Align2::CENTER_BOTTOM.anchor_size(at, galley.size() + vec2(12.0, 6.0));
    ui.painter().rect(rect, 6.0, t.panel, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    ui.painter().galley(rect.min + vec2(6.0, 3.0), galley, t.ink);
}

/// The slider of opacity, between the controls in the corners; returns the space it takes.
fn opacity(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    picture: &Picture,
    actions: &mut Actions,
) -> Rect {
    let t = bench.t;
    let [left, right] = navigate::marks(ground.rect);
    let wide = (right.left() - left.right() - 8.0).clamp(90.0, 240.0);
    let middle = pos2(0.5 * (left.right() + right.left()), left.center().y);
    let plate = Rect::from_center_size(middle, vec2(wide, 32.0));
    let painter = ui.painter();
    painter.rect(plate, 8.0, t.panel, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    let word = plate.left_center() + vec2(8.0, 0.0);
    let font = type_faces::regular(type_faces::SMALL);
    let word =
        painter.text(word, egui::Align2::LEFT_CENTER, say!("photo-opacity"), font, t.soft_ink);
    let rail = Rect::from_min_max(
        pos2(word.right() + 4.0, plate.center().y - 14.0),
        pos2(plate.right() - 4.0, plate.center().y + 10.0),
    );
    let (held, moved) = controls::slider(
        ui,
        rail,
        say!("photo-opacity-name"),
        (picture.opacity, true),
        (0.0, 1.0, 0.05),
    );
    if held.drag_started() {
        actions.push(Action::Begin);
    }
    if let Some(opacity) = moved {
        actions.edit(Edit::Picture(Some(Picture { opacity, ..picture.clone() })));
    }
    if held.drag_stopped() {
        actions.push(Action::Commit);
    }
    plate
}
