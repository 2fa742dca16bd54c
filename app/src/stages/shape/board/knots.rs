//! The hand on the knots and on the line: either side takes it, the left as the mirror image
//! of the right.

use egui::{
    CursorIcon, Modifiers, PointerButton, Pos2, Rect, Response, Role, Sense, Ui, WidgetInfo,
    vec2,
};
use plumpline_core::outline::Rz;
use plumpline_core::{Knot, Outline};

use super::ground::Ground;
use super::snap::{self, Guide};
use super::{holds, menus, wanted};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::document::shaping::{self, OFF_AXIS_MM};
use crate::kit::tokens::HIT;
use crate::view::board::Drag;
use crate::view::ids;
use crate::view::look::Look;

/// How far off the axis a closed end is dragged before it opens, points.
const OPENS: f32 = 24.0;

/// What the hand does to the knots in this frame.
#[derive(Debug, Default)]
pub(super) struct Touch {
    /// The knot pointed at.
    pub(super) pointed: Option<usize>,
    /// What a dragged knot has snapped to.
    pub(super) guides: Vec<Guide>,
}

/// The knots and their mirror images, each with its own place to hold.
pub(super) fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    actions: &mut Actions,
) -> Touch {
    let mut touch = Touch::default();
    for mirrored in [true, false] {
        for (index, knot) in bench.document.piece().outline.knots.iter().enumerate() {
            if !(mirrored && knot.is_pole()) {
                one(ui, bench, ground, board, (index, knot, mirrored), &mut touch, actions);
            }
        }
    }
    touch
}

fn one(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    (index, knot, mirrored): (usize, &Knot, bool),
    touch: &mut Touch,
    actions: &mut Actions,
) {
    let at = if mirrored { ground.mirrored(knot.place()) } else { ground.at(knot.place()) };
    let held_now = matches!(&bench.view.board.drag,
        Some(Drag::Knots { lead, mirrored: m, .. }) if (*lead, *m) == (index, mirrored));
    if !held_now && !ground.rect.contains(at) {
        return;
    }
    let id = ids::board_id().with(("knot", index, mirrored));
    let place = Rect::from_center_size(at, vec2(HIT, HIT));
    let held = ui.interact(place, id, Sense::CLICK | Sense::DRAG);
    held.widget_info(|| {
        let name = match mirrored {
            true => say!("board-knot-left", knot = index + 1),
            false => say!("board-knot", knot = index + 1),
        };
        WidgetInfo::labeled(Role::Slider, true, name)
    });
    let shift = ui.input(|i| i.modifiers.shift);
    if held.drag_started_by(PointerButton::Primary) {
        board.request_focus();
        take(bench, index, shift, false, actions);
        begin(bench, index, mirrored, None, actions);
    } else if held.clicked() || held.secondary_clicked() {
        board.request_focus();
        take(bench, index, shift, held.clicked(), actions);
    }
    if held.dragged_by(PointerButton::Primary)
        && let Some(moved) = held.total_drag_delta()
    {
        let outline = &bench.document.piece().outline;
        let drag = bench.view.board.drag.as_ref();
        let base = match drag {
            Some(Drag::Knots { base, .. }) => base,
            _ => outline,
        };
        let mut knots = bench.view.knots();
        if !knots.contains(&index) {
            knots = vec![index];
        }
        let held = KnotPull { lead: index, mirrored, base, knots: &knots, moved };
        touch.guides = pull(ui, bench, ground, &held, actions);
    }
    if held.hovered() || held.dragged() {
        touch.pointed = Some(index);
        let held = if held.dragged() { CursorIcon::Grabbing } else { CursorIcon::Grab };
        ui.set_cursor_icon(held);
    }
    menus::knot(bench, index, &held, actions);
    if let Some(words) = holds::words(knot) {
        held.on_hover_text(words);
    }
}

/// Selects a knot: alone, or beside those that are. With Shift a click adds it or lets
/// it go; a knot that is selected with others stays so when it is dragged.
fn take(bench: &Bench<'_>, index: usize, shift: bool, click: bool, actions: &mut Actions) {
    let mut knots = bench.view.knots();
    let among = knots.contains(&index);
    knots.retain(|&k| k != index);
    match (shift, among) {
        (true, true) if click => {}
        (true, _) => knots.insert(0, index),
        (false, true) if !click => knots.insert(0, index),
        (false, _) => knots = vec![index],
    }
    actions.look(Look::Select(None));
    actions.look(Look::Knots(knots));
}

/// A drag begins: one step, and the outline as it was stays in sight. `with` is the outline
/// with a knot that came with the hand.
fn begin(
    bench: &Bench<'_>,
    lead: usize,
    mirrored: bool,
    with: Option<Outline>,
    actions: &mut Actions,
) {
    let ghost = bench.document.piece().outline.clone();
    let base = with.unwrap_or_else(|| ghost.clone());
    actions.push(Action::Begin);
    actions.look(Look::Drag(Some(Drag::Knots { lead, mirrored, base, ghost })));
}

/// Knots being dragged.
struct KnotPull<'a> {
    /// The one that the hand took.
    lead: usize,
    /// Whether it was taken by its mirror image.
    mirrored: bool,
    /// The outline as it was when the drag began.
    base: &'a Outline,
    /// All that come along, the first one too.
    knots: &'a [usize],
    /// How far the hand has moved, points.
    moved: egui::Vec2,
}

/// Moves all selected knots by as much as the hand has moved since it took the first, never to
/// the hand; where the magnet is on, the first one snaps and the others come along.
fn pull(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    pull: &KnotPull<'_>,
    actions: &mut Actions,
) -> Vec<Guide> {
    let &KnotPull { lead, mirrored, base, knots, moved } = pull;
    let Some(first) = base.knots.get(lead) else { return Vec::new() };
    let scale = f64::from(ground.scale().max(1e-6));
    let across = if mirrored { -moved.x } else { moved.x };
    let mut by = Rz::new(f64::from(across) / scale, f64::from(moved.y) / scale);
    let mut guides = Vec::new();
    if bench.view.board.magnet && !ui.input(|i| i.modifiers.contains(Modifiers::ALT)) {
        let others = base.knots.iter().enumerate().filter(|(i, _)| !knots.contains(i));
        let others: Vec<Rz> = others.map(|(_, k)| k.place()).collect();
        let end = lead == 0 || lead + 1 == base.knots.len();
        let wanted = Rz::new(first.radius_mm + by.r, first.height_mm + by.z);
        let near = f64::from(snap::PULL) / scale;
        let draws = (near, bench.unit().grid_mm());
        let (at, mut lines) = snap::snapped(wanted, &others, draws, end && !first.is_pole());
        let off_axis = !first.is_pole() && (end || at.r >= OFF_AXIS_MM);
        lines.retain(|g| off_axis || matches!(g, Guide::Height(_) | Guide::WholeHeight(_)));
        by = Rz::new(at.r - first.radius_mm, at.z - first.height_mm);
        guides = lines;
    }
    let outline = shaping::moved(base, knots, by);
    let end = lead == 0 || lead + 1 == base.knots.len();
    // A closed end keeps to the axis until the hand means it.
    let opens = end && first.is_pole() && knots.len() == 1 && across.abs() >= OPENS;
    let outline = match opens {
        true => shaping::opened(&outline, lead, (f64::from(across) / scale).abs()),
        false => outline,
    };
    actions.edit(Edit::MoveKnots { lead, outline });
    guides
}

/// A drag of the line itself: a knot comes with the hand. `foot` is where the line was taken.
pub(super) fn drag_line(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    near: impl Fn(Pos2) -> Option<wanted::OutlinePlace>,
    actions: &mut Actions,
) -> Vec<Guide> {
    let outline = &bench.document.piece().outline;
    let moved = board.total_drag_delta().unwrap_or_default();
    let origin = ui.input(|i| i.pointer.press_origin());
    if board.drag_started_by(PointerButton::Primary) {
        let Some(foot) = origin.and_then(near) else { return Vec::new() };
        let (lead, mirrored) = (foot.span + 1, foot.mirrored);
        let mut with = outline.clone();
        let at = Rz::new(shaping::whole(foot.at.r), shaping::whole(foot.at.z));
        with.knots.insert(lead, Knot::new(at.r.max(OFF_AXIS_MM), at.z));
        board.request_focus();
        begin(bench, lead, mirrored, Some(with.clone()), actions);
        let held = KnotPull { lead, mirrored, base: &with, knots: &[lead], moved };
        let guides = pull(ui, bench, ground, &held, actions);
        actions.look(Look::Knots(vec![lead]));
        return guides;
    }
    let Some(Drag::Knots { lead, mirrored, base, ghost }) = &bench.view.board.drag else {
        return Vec::new();
    };
    // A knot that was there is held by its own place.
    if base.knots.len() == ghost.knots.len() {
        return Vec::new();
    }
    if !board.dragged_by(PointerButton::Primary) {
        return Vec::new();
    }
    let held = KnotPull { lead: *lead, mirrored: *mirrored, base, knots: &[*lead], moved };
    pull(ui, bench, ground, &held, actions)
}
