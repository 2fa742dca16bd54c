//! The toy: turned by hand, its parts pointed at, taken and moved.

use egui::epaint::CubicBezierShape;
use egui::{Color32, PointerButton, Pos2, Rect, Response, Role, Sense, Stroke, Ui, WidgetInfo};
use egui::{pos2, vec2};
use plumpline_core::picture::toy::ToyThing;

use super::here::ToyBench;
use super::layout::{AssemblyLayout, BUTTONS};
use super::{balance, drag, ground, told};
use crate::bench::action::Actions;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::tokens::{GAP, PAD};
use crate::kit::{paint, type_faces};
use crate::view::ids;
use crate::view::toy::{ToyPick, ToySide, ToyView};

/// How much a point of scrolling zooms, and a press of a button.
const ZOOM_A_POINT: f32 = 0.004;
const ZOOM_A_PRESS: f32 = 1.25;

/// Draws the toy in its panel, and does what the hand asks for.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    layout: &AssemblyLayout,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let (panel, field) = (layout.picture, layout.field());
    let t = here.bench.t;
    let canvas = ui.interact(field, ids::toy_id(), Sense::click_and_drag());
    canvas.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("toy-toy")));
    hands(ui, here, &canvas, next, actions);
    let painter = ui.painter_at(field);
    if let Some(place) = here.bench.toy.place() {
        ground::table(&painter, here, place);
    }
    let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
    for (texture, place) in
        [here.bench.toy.picture(), here.bench.toy.rim()].into_iter().flatten()
    {
        painter.image(texture.id(), place, whole, Color32::WHITE);
    }
    if let Some(place) = here.bench.toy.place() {
        ground::height(&painter, here, place, field.left());
        if let Some(made) = here.made.filter(|_| next.balance && next.apart == 0.0) {
            balance::paint(&painter, here, made, place);
        }
    }
    said(ui, here, field);
    let end = heading(ui, panel, here);
    sides(ui, panel, end, next);
    buttons(ui, panel, next);
    mark(ui, here, layout, next);
    if let (Some(at), Some(part)) = (canvas.hover_pos(), here.bench.view.toy.hovered)
        && next.drag.is_none()
    {
        let words = told::title(here.project, part, here.bench.unit());
        ground::label(&painter, at, &words, here);
    }
    if canvas.has_focus() {
        paint::focus_ring(ui.painter(), field.shrink(3.0), 6.0, t);
    }
}

/// Why there is no toy, or that it is on its way.
fn said(ui: &Ui, here: &ToyBench<'_>, field: Rect) {
    let t = here.bench.t;
    let words = match (here.bench.toy.error(), here.bench.toy.picture()) {
        (Some(error), _) => error.to_owned(),
        (None, None) => say!("toy-preparing").to_owned(),
        (None, Some(_)) => return,
    };
    let ink = if here.bench.toy.error().is_some() { t.warning } else { t.soft_ink };
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words, font, ink, field.width() - 48.0);
    let at = pos2(field.center().x - 0.5 * galley.size().x, field.top() + 24.0);
    ui.painter().galley(at, galley, ink);
}

fn hands(
    ui: &Ui,
    here: &ToyBench<'_>,
    canvas: &Response,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    ids::keep_arrows(ui, canvas);
    let toy = here.bench.toy;
    let thing_at = |at: Pos2| toy.pick(at);
    let part_at = |at: Pos2| toy.pick(at).and_then(|thing| toy.part(thing));
    if canvas.drag_started_by(PointerButton::Primary)
        && let Some(at) = ui.input(|i| i.pointer.press_origin())
        && let Some(ToyThing::Pose(pose)) = thing_at(at)
        && let Some(part) = part_at(at).filter(|&part| next.part() == Some(part))
        && let Some(held) = drag::hold(here, part, pose, at).filter(|_| next.apart == 0.0)
    {
        drag::begin(next, held, actions);
    }
    if let Some(held) = next.drag.filter(|_| canvas.dragged()) {
        if let Some(at) = canvas.interact_pointer_pos() {
            drag::go(here, held, at, actions);
        }
        ui.set_cursor_icon(egui::CursorIcon::Grabbing);
    } else if canvas.dragged() && next.drag.is_none() {
        let each = toy.place().map_or(100.0, |place| place.points_per_radian());
        let by = canvas.drag_delta() / each;
        next.turned = next.turned.moved(by.x.to_degrees(), by.y.to_degrees());
        ui.set_cursor_icon(egui::CursorIcon::Grabbing);
    } else if canvas.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Grab);
    }
    if next.drag.is_some() && canvas.drag_stopped() {
        drag::end(next, actions);
    }
    if canvas.contains_pointer() {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta.y, i.zoom_delta()));
        next.turned = next.turned.zoomed((scroll * ZOOM_A_POINT).exp() * pinch);
        ui.input_mut(|i| i.smooth_scroll_delta = egui::Vec2::ZERO);
    }
    if let Some(at) = canvas.hover_pos().filter(|_| !canvas.dragged()) {
        next.hovered = next.hovered.or(part_at(at));
    }
    if canvas.clicked() {
        canvas.request_focus();
        let at = canvas.interact_pointer_pos();
        match at.and_then(thing_at) {
            Some(ToyThing::Attachment(index)) if index < here.toy.attachments.len() => {
                next.taken = Some(ToyPick::Attachment(index));
            }
            Some(thing) => next.taken = toy.part(thing).map(ToyPick::Part),
            None => next.taken = None,
        }
    }
}

/// Draws the heading; returns where its words end.
fn heading(ui: &Ui, panel: Rect, here: &ToyBench<'_>) -> f32 {
    let at = panel.left_top() + vec2(PAD, 22.0);
    let hint = match (panel.width() > 620.0, here.bench.view.toy.part()) {
        (false, _) => "",
        (true, None) => say!("toy-drag-to-turn-click-to-select-a-part"),
        (true, Some(_)) => say!("toy-drag-the-selected-part-to-move-it"),
    };
    paint::title(ui.painter(), at, say!("stage-assembly"), hint, here.bench.t)
}

/// The sides it can be looked at from.
fn sides(ui: &Ui, panel: Rect, _from: f32, next: &mut ToyView) {
    let words = ToySide::ALL.map(ToySide::text);
    let wide: Vec<f32> =
        words.iter().map(|word| controls::words_width(ui, word) - 6.0).collect();
    let all: f32 = wide.iter().sum::<f32>() + 6.0 * (words.len() - 1) as f32;
    let mut x = panel.right() - 12.0 - all;
    for (side, wide) in ToySide::ALL.into_iter().zip(wide) {
        let rect = Rect::from_min_size(pos2(x, panel.top() + 8.0), vec2(wide, 26.0));
        let name = say!("toy-look-at-it", side = side.text());
        let on = next.side() == side;
        let face = ButtonFace::Words(side.text());
        if controls::toggle(ui, rect, face, &name, true, Some(on)).clicked() {
            next.turn_to(side);
        }
        x += wide + 6.0;
    }
}

/// Balance on the left, zoom on the right.
fn buttons(ui: &Ui, panel: Rect, next: &mut ToyView) {
    let y = panel.bottom() - 0.5 * BUTTONS - 2.0;
    let words = say!("toy-balance");
    let size = vec2(controls::words_width(ui, words), 28.0);
    let left = Rect::from_min_size(pos2(panel.left() + 12.0, y - 14.0), size);
    let face = ButtonFace::Words(words);
    let button = controls::toggle(
        ui,
        left,
        face,
        say!("toy-show-its-balance"),
        true,
        Some(next.balance),
    );
    let why = say!("toy-its-center-of-mass-and-what-it-stands");
    if button.on_hover_text(why).clicked() {
        next.balance = !next.balance;
    }
    let mut x = panel.right() - 12.0;
    for (icon, name, why) in [
        (Icon::Fit, say!("toy-fit-the-toy"), say!("toy-all-of-it-in-sight")),
        (Icon::More, say!("toy-zoom-in"), say!("toy-larger")),
        (Icon::Less, say!("toy-zoom-out"), say!("toy-smaller")),
    ] {
        let rect = Rect::from_min_size(pos2(x - 28.0, y - 14.0), vec2(28.0, 28.0));
        x = rect.left() - 6.0;
        if controls::button(ui, rect, ButtonFace::Icon(icon), name, true)
            .on_hover_text(why)
            .clicked()
        {
            next.turned = match icon {
                Icon::More => next.turned.zoomed(ZOOM_A_PRESS),
                Icon::Less => next.turned.zoomed(1.0 / ZOOM_A_PRESS),
                _ => crate::view::Turned { zoom: 1.0, ..next.turned },
            };
        }
    }
}

/// The thread from the part in hand to its card.
fn mark(ui: &Ui, here: &ToyBench<'_>, layout: &AssemblyLayout, next: &ToyView) {
    let place = || {
        let made = here.made?;
        let pose = made.assembled.poses.get(made.pose_of(next.part()?)?)?;
        here.bench.toy.on_cloth(pose.on?, pose.seat?)
    };
    let Some((at, _)) = place().filter(|(at, _)| layout.field().contains(*at)) else { return };
    let side = layout.side;
    let right = side.center().x > at.x;
    let edge = if right { side.left() } else { side.right() };
    let end = pos2(edge, side.top() + 26.0);
    let t = here.bench.t;
    paint::thread(ui.painter(), way(at, end, if right { -0.5 } else { 0.5 } * GAP), t);
    ui.painter().circle(at, 3.6, t.panel, Stroke::new(1.8, t.highlight_edge));
}

/// The thread's way: over to the lane between the panels, and up there to the tag, so that it
/// crosses no buttons.
fn way(at: Pos2, end: Pos2, lane: f32) -> Vec<Pos2> {
    let curve = |points: [Pos2; 4]| {
        let clear = Color32::TRANSPARENT;
        CubicBezierShape::from_points_stroke(points, false, clear, Stroke::NONE)
            .flatten(Some(0.2))
    };
    let lane = end.x + lane;
    let turn = pos2(lane, (at.y - 70.0).max(end.y + 14.0));
    let bend = vec2(0.6 * (lane - at.x), 0.0);
    let mut way = curve([at, at + bend, pos2(lane, turn.y + 60.0), turn]);
    let leave = pos2(lane, end.y + 12.0);
    way.extend(curve([leave, pos2(lane, end.y), pos2(lane, end.y), end]));
    way
}
