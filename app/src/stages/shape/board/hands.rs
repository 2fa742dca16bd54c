//! The hand on the board: what it is on, and in which order its parts are asked.

use egui::{Pos2, Rect, Response, Role, Sense, Ui, WidgetInfo};
use plumpline_core::Plan;
use plumpline_core::outline::Rz;

use super::ground::Ground;
use super::snap::Guide;
use super::{band, knots, menus, navigate, picture, wanted, whole};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::view::board::Handle;
use crate::view::ids;
use crate::view::look::Look;

/// How near the line the hand has to be to take it, points.
const NEAR: f32 = 12.0;

/// What the hand is on.
#[derive(Debug, Clone)]
pub struct BoardHand {
    /// The ground it moves on.
    pub ground: Ground,
    /// The round pointed at.
    pub round: Option<u32>,
    /// The knot pointed at.
    pub knot: Option<usize>,
    /// Whether the board has the keyboard.
    pub focused: bool,
    /// The handle pointed at that scales the whole outline.
    pub handle: Option<Handle>,
    /// What a dragged knot has snapped to.
    pub guides: Vec<Guide>,
    /// The frame being drawn round knots.
    pub band: Option<Rect>,
}

/// Reads the hand.
pub fn hands(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> BoardHand {
    let hand = parts(ui, bench, rect, actions);
    // Every drag ends here, whatever has become of what it began on.
    if bench.view.board.drag.is_some() && !ui.input(|i| i.pointer.any_down()) {
        actions.push(Action::Commit);
        actions.look(Look::Drag(None));
    }
    hand
}

/// Asks the parts of the board in order.
fn parts(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> BoardHand {
    let board = ui.interact(rect, ids::board_id(), Sense::click_and_drag());
    board.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("group-outline-board")));
    ids::keep_arrows(ui, &board);
    let (ground, roams) = navigate::read(ui, bench, &board, Ground::of(bench, rect));
    let focused = board.has_focus() && !bench.view.holds_something();
    let mut hand = BoardHand {
        ground,
        round: None,
        knot: None,
        focused,
        handle: None,
        guides: Vec::new(),
        band: None,
    };
    if roams {
        return hand;
    }
    if bench.view.board.picture {
        picture::hands(ui, bench, &ground, &board, actions);
        return hand;
    }
    hand.handle = whole::hands(ui, bench, &ground, actions);
    let touch = knots::hands(ui, bench, &ground, &board, actions);
    (hand.knot, hand.guides) = (touch.pointed, touch.guides);
    let free = !bench.view.is_dragging() && !bench.view.board.band;
    if let (None, Some(pos), Some(plan), true) =
        (hand.knot, board.hover_pos(), bench.plan, free)
    {
        hand.round = round_at(plan, &ground, pos);
    }
    on_board(ui, bench, &board, &mut hand, actions);
    hand
}

/// The board itself: a drag of the line brings a knot, a drag of the ground frames knots; two
/// clicks on the line add a knot, on empty ground they fit the view; one takes a round.
fn on_board(
    ui: &Ui,
    bench: &Bench<'_>,
    board: &Response,
    hand: &mut BoardHand,
    actions: &mut Actions,
) {
    let ground = hand.ground;
    let foot =
        |pos: Pos2| wanted::nearest(bench, &ground, pos).filter(|foot| foot.distance <= NEAR);
    let near = board.interact_pointer_pos().or(board.hover_pos()).and_then(foot);
    if near.is_some() && board.hovered() && !bench.view.board.band {
        ui.set_cursor_icon(egui::CursorIcon::Crosshair);
    }
    let guides = knots::drag_line(ui, bench, &ground, board, foot, actions);
    if !guides.is_empty() {
        hand.guides = guides;
    }
    let on_ground = ui.input(|i| i.pointer.press_origin()).is_some_and(|p| foot(p).is_none());
    hand.band = band::hands(ui, bench, &ground, board, on_ground, actions);
    if board.clicked_by(egui::PointerButton::Primary) {
        board.request_focus();
        match near {
            Some(foot) if board.double_clicked() => menus::add_knot(foot, actions),
            Some(_) => {}
            None if hand.round.is_none() && board.double_clicked() => {
                actions.command(Command::FitView);
            }
            None => {
                let again = bench.view.selected == hand.round;
                actions.look(Look::Knots(Vec::new()));
                actions.look(Look::Select(hand.round.filter(|_| !again)));
            }
        }
    }
    menus::board(ui, bench, board, near, hand.round, actions);
}

/// The round whose strip of the body is under `pos`; where two lie over one another, the
/// one drawn on top.
fn round_at(plan: &Plan, ground: &Ground, pos: Pos2) -> Option<u32> {
    let place = ground.mm(pos);
    let z = place.z - plan.shift_mm;
    let slack = 5.0 / f64::from(ground.scale());
    let inside = |pair: &[Rz]| {
        let (a, b) = (pair[0], pair[1]);
        let (low, high) = (a.z.min(b.z), a.z.max(b.z));
        if z < low || z > high {
            return false;
        }
        let along = if high > low { (z - a.z) / (b.z - a.z) } else { 0.5 };
        place.r.abs() <= a.r + along * (b.r - a.r) + slack
    };
    plan.forecast[..=plan.rounds.len()].windows(2).rposition(inside).map(|i| i as u32 + 1)
}
