//! Two handles that scale the whole outline: over its top the height, right of its middle
//! the width.

use egui::{
    Align2, CursorIcon, Painter, PointerButton, Pos2, Rect, Role, Sense, Stroke, StrokeKind,
    Ui, WidgetInfo, pos2, vec2,
};
use plumpline_core::Outline;

use super::ground::{self, Ground};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::document::shaping::{self, Reach};
use crate::kit::tokens::HIT;
use crate::kit::type_faces;
use crate::view::board::{Drag, Handle};
use crate::view::ids;
use crate::view::look::Look;

/// Side of a handle, points.
const SIDE: f32 = 9.0;
/// How far the handles stand off the outline: over the width's number, beside the knots.
const OVER: f32 = 47.0;
const BESIDE: f32 = 18.0;

/// How far past the edge of the board a handle may belong and still stand at it, points.
const PAST: f32 = 40.0;

/// Where the handles stand; those that belong far off the board do not, unless they are held.
fn places(bench: &Bench<'_>, ground: &Ground) -> impl Iterator<Item = (Handle, Pos2)> + use<> {
    let outline = &bench.document.piece().outline;
    let held = match bench.view.board.drag {
        Some(Drag::Whole { handle, .. }) => Some(handle),
        _ => None,
    };
    let reach = Reach::of(outline);
    let middle = ground.y(0.5 * (reach.low + reach.high));
    let side = ground.axis_x + reach.radius as f32 * ground.scale() + BESIDE;
    let room = ground.rect.shrink(SIDE);
    let places = [
        (Handle::Height, pos2(ground.axis_x, ground.y(reach.low) - OVER)),
        (Handle::Width, pos2(side, middle)),
    ];
    let wide = room.expand(PAST);
    let near = places
        .into_iter()
        .filter(move |(handle, at)| wide.contains(*at) || held == Some(*handle));
    near.map(move |(handle, at)| (handle, ground::kept(room, at)))
}

fn name(handle: Handle) -> &'static str {
    match handle {
        Handle::Height => say!("board-scale-height"),
        Handle::Width => say!("board-scale-width"),
    }
}

/// Reads the hand on the handles; returns the one it is on.
pub(super) fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    actions: &mut Actions,
) -> Option<Handle> {
    let mut pointed = None;
    let outline = &bench.document.piece().outline;
    for (handle, at) in places(bench, ground) {
        let id = ids::board_id().with(name(handle));
        let place = Rect::from_center_size(at, vec2(HIT, HIT));
        let held = ui.interact(place.intersect(ground.rect), id, Sense::DRAG);
        held.widget_info(|| WidgetInfo::labeled(Role::Slider, true, name(handle)));
        if held.drag_started_by(PointerButton::Primary) {
            actions.push(Action::Begin);
            let ghost = outline.clone();
            actions.look(Look::Drag(Some(Drag::Whole { handle, ghost })));
        }
        if let (Some(moved), true) =
            (held.total_drag_delta(), held.dragged_by(PointerButton::Primary))
        {
            let ghost = bench.view.board.drag.as_ref().and_then(Drag::ghost);
            actions.edit(Edit::Outline(scaled(
                ghost.unwrap_or(outline),
                handle,
                moved,
                ground,
            )));
        }
        if held.hovered() || held.dragged() {
            pointed = Some(handle);
            ui.set_cursor_icon(match handle {
                Handle::Height => CursorIcon::ResizeVertical,
                Handle::Width => CursorIcon::ResizeHorizontal,
            });
        }
        held.on_hover_text(match handle {
            Handle::Height => say!("board-drag-to-scale-the-height-from-the-foot"),
            Handle::Width => say!("board-drag-to-scale-the-width-from-the-axis"),
        });
    }
    pointed
}

/// The outline with its top or its side moved by as much as the hand.
fn scaled(was: &Outline, handle: Handle, moved: egui::Vec2, ground: &Ground) -> Outline {
    let reach = Reach::of(was);
    let mm = |points: f32| f64::from(points / ground.scale());
    match handle {
        Handle::Height => {
            let height = reach.height().max(1.0);
            shaping::scaled_on_foot(was, 1.0, (height - mm(moved.y)) / height)
        }
        Handle::Width => {
            let radius = reach.radius.max(1.0);
            shaping::scaled_on_foot(was, (radius + mm(moved.x)) / radius, 1.0)
        }
    }
}

/// Draws the handles, and beside the selected one what the outline comes to.
pub(super) fn paint(
    painter: &Painter,
    bench: &Bench<'_>,
    ground: &Ground,
    pointed: Option<Handle>,
) {
    let t = bench.t;
    let outline = &bench.document.piece().outline;
    for (handle, at) in places(bench, ground) {
        let on = pointed == Some(handle);
        let (side, edge) = if on { (SIDE + 3.0, t.outline) } else { (SIDE, t.control_edge) };
        let rect = Rect::from_center_size(at, vec2(side, side));
        let fill = if on { t.wash } else { t.panel };
        painter.rect(rect, 1.5, fill, Stroke::new(1.4, edge), StrokeKind::Middle);
        let Some(Drag::Whole { handle: held, ghost }) = &bench.view.board.drag else {
            continue;
        };
        if *held == handle {
            let (now, was) = (Reach::of(outline), Reach::of(ghost));
            let (word, now, was) = match handle {
                Handle::Height => (say!("readout-height"), now.height(), was.height()),
                Handle::Width => (say!("readout-width"), now.width(), was.width()),
            };
            let share = 100.0 * now / was.max(1e-9);
            let words = say!(
                "board-scaled",
                what = word,
                length = bench.unit().text(now),
                share = format!("{share:.0}"),
            );
            let font = type_faces::semibold(type_faces::SMALL);
            let galley = painter.layout(words, font, t.ink, f32::INFINITY);
            let size = galley.size() + vec2(14.0, 8.0);
            // Never past the edge of the board.
            let room = ground.rect.shrink(4.0);
            let rect = Align2::LEFT_CENTER.anchor_size(at + vec2(14.0, 0.0), size);
            let shift = vec2(
                (room.right() - rect.right()).min(0.0),
                (room.top() - rect.top()).max(0.0),
            );
            let lower =
                if shift.x < 0.0 { vec2(0.0, 0.5 * size.y + 14.0) } else { vec2(0.0, 0.0) };
            let rect = rect.translate(shift + lower);
            painter.rect(rect, 5.0, t.panel, Stroke::new(1.3, t.outline), StrokeKind::Inside);
            painter.galley(rect.min + vec2(7.0, 4.0), galley, t.ink);
        }
    }
}
