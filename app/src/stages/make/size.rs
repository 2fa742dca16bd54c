//! What size is under the hook, as the heading of the stage, and the list to take another from.
//! Projects without sizes have no such heading.

use egui::{
    Align2, Popup, Rect, Response, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo,
};
use egui::{pos2, vec2};
use plumpline_core::sizes::size_names;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, MakeCommand};
use crate::kit::icons::Icon;
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{controls, paint, type_faces};
use crate::work::making::{Make, SizeTally, size_title, size_words};

/// Widest the heading gets; longer names are cut.
const MOST: f32 = 230.0;
/// Height of the heading.
const HEIGHT: f32 = 50.0;
/// Room for the rule between the heading and the rest.
const RULE: f32 = 14.0;
/// Width of the list.
const LIST: f32 = 260.0;
/// Height of a size in it.
const ROW: f32 = 34.0;

/// Draws the heading at the left of `rect`; returns where the rest of the row begins: at
/// `column`, unless the heading is longer than that.
pub(super) fn show(
    ui: &Ui,
    bench: &Bench<'_>,
    (rect, column): (Rect, f32),
    actions: &mut Actions,
) -> f32 {
    let project = bench.document.project();
    let names = size_names(project);
    if names.is_empty() {
        return rect.left();
    }
    let (t, painter, size) = (bench.t, ui.painter(), bench.making.size());
    let title = size_title(size);
    let state = SizeTally::of(project, size).text();
    let font = type_faces::bold(type_faces::BIG);
    let words = painter.layout_no_wrap(title.clone(), font.clone(), t.ink).size().x;
    let least = column - rect.left() - RULE;
    let width = (words + 34.0).min(MOST).max(least).min(0.5 * rect.width());
    let place = Rect::from_min_size(rect.min, vec2(width, HEIGHT));
    let response = ui.interact(place, ui.scope_id().with("size"), Sense::click());
    let spoken =
        say!("make-size-being-made-size-state", size = size_words(size), state = state);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &spoken));
    // Another size is read out as it is taken, wherever the keyboard is.
    ui.ctx().accesskit_node_builder(response.id, |node| {
        node.set_live(egui::accesskit::Live::Polite);
    });
    if response.hovered() || Popup::is_id_open(ui.ctx(), Popup::default_response_id(&response))
    {
        painter.rect_filled(place, CARD_RADIUS, t.well);
    }
    let left = place.left() + 8.0;
    let room = place.width() - 30.0;
    let at = pos2(left, rect.top() + 16.0);
    let (named, cut) = paint::clipped_text(painter, at, &title, font, t.ink, room);
    Icon::Down.paint(painter, pos2(named.right() + 13.0, at.y + 1.0), t.ink);
    let small = type_faces::regular(type_faces::SMALL);
    let below = pos2(left, rect.top() + 39.0);
    paint::clipped_text(painter, below, &state, small, t.soft_ink, place.width() - 16.0);
    let rest = place.right() + RULE;
    painter.vline(rest - 0.5 * RULE, place.y_range().shrink(6.0), Stroke::new(1.0, t.edge));
    if response.has_focus() {
        paint::focus_ring(painter, place, CARD_RADIUS, t);
    }
    list(&response, bench, &names, actions);
    let key = bench.key_text(Command::Make(MakeCommand::Size)).unwrap_or_default();
    let hint = match cut {
        true => say!("make-title-choose-the-size-to-make-key-goes", title = title, key = key),
        false => say!("make-choose-the-size-to-make-key-goes-to", key = key),
    };
    response.on_hover_text(hint);
    rest
}

/// All sizes with how far each is.
fn list(on: &Response, bench: &Bench<'_>, names: &[&str], actions: &mut Actions) {
    Popup::menu(on).width(LIST).show(|ui| {
        ui.set_width(LIST);
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 2.0;
        let room = 0.6 * ui.ctx().content_rect().height();
        ScrollArea::vertical().max_height(room).show(ui, |ui| {
            let all = std::iter::once(None).chain(names.iter().copied().map(Some));
            for size in all {
                if row(ui, bench, size).clicked() {
                    actions.make(Make::Size(size.map(str::to_owned)));
                    ui.close();
                }
            }
            controls::follow_focus(ui);
        });
    });
}

/// A size to take, and how far it is.
fn row(ui: &mut Ui, bench: &Bench<'_>, size: Option<&str>) -> Response {
    let t = bench.t;
    let tally = SizeTally::of(bench.document.project(), size);
    let (title, state) = (size_title(size), tally.text());
    let on = bench.making.size() == size;
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::click());
    let spoken = say!("make-make-size-state", size = size_words(size), state = state);
    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, &spoken));
    let painter = ui.painter();
    if on {
        let edge = Stroke::new(1.4, t.highlight_edge);
        painter.rect(rect, CARD_RADIUS, t.wash, edge, StrokeKind::Inside);
    } else if response.hovered() {
        painter.rect_filled(rect, CARD_RADIUS, t.well);
    }
    let small = type_faces::regular(type_faces::SMALL);
    let right = rect.right_center() - vec2(10.0, 0.0);
    let ink = if tally.begun > 0 { t.ink } else { t.soft_ink };
    let said = painter.text(right, Align2::RIGHT_CENTER, state, small, ink);
    let at = rect.left_center() + vec2(10.0, 0.0);
    let font = type_faces::semibold(type_faces::BODY);
    let room = said.left() - at.x - 12.0;
    let (_, cut) = paint::clipped_text(painter, at, &title, font, t.ink, room);
    if response.has_focus() {
        paint::focus_ring(painter, rect.shrink(3.0), CARD_RADIUS, t);
    }
    if cut { response.on_hover_text(title) } else { response }
}
