//! The hand on the board: knots that are dragged, rounds that are pointed at.

use egui::{Popup, Pos2, Rect, Response, Role, Sense, Ui, WidgetInfo, vec2};
use plumpline_core::outline::Rz;
use plumpline_core::{Knot, Plan};

use super::ground::Ground;
use super::{holds, wanted};
use crate::studio::action::{Action, Actions, Edit, Look};
use crate::studio::bench::Bench;
use crate::studio::command::Command;
use crate::studio::keys;
use crate::ui_kit::tokens::HIT;

/// How near the line a double click has to be to add a knot, points.
const NEAR: f32 = 10.0;

/// What the hand is on.
#[derive(Debug, Clone)]
pub struct Hand {
    /// The ground it moves on.
    pub ground: Ground,
    /// The round pointed at.
    pub round: Option<u32>,
    /// The knot pointed at.
    pub knot: Option<usize>,
    /// Whether the board has the keyboard.
    pub focused: bool,
}

/// Reads the hand.
pub fn hands(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> Hand {
    let ground = Ground::of(bench, rect);
    let board = ui.interact(rect, keys::board_id(), Sense::click());
    board.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, "Outline board"));
    keep_arrows(ui, &board);
    let knot = knots(ui, bench, &ground, &board, actions);
    let round = match (knot, board.hover_pos(), bench.plan) {
        (None, Some(pos), Some(plan)) if !bench.view.is_dragging() => {
            round_at(plan, &ground, pos)
        }
        _ => None,
    };
    on_board(ui, bench, &ground, &board, round, actions);
    Hand { ground, round, knot, focused: board.has_focus() && !bench.view.holds_something() }
}

/// While the board has the keyboard, arrows and Esc belong to it; Tab leaves it.
fn keep_arrows(ui: &Ui, board: &Response) {
    let filter = egui::EventFilter {
        tab: false,
        horizontal_arrows: true,
        vertical_arrows: true,
        escape: true,
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(board.id, filter));
}

/// The knots, each with its own place to hold; returns the one pointed at.
fn knots(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    actions: &mut Actions,
) -> Option<usize> {
    let mut pointed = None;
    for (index, knot) in bench.document.piece().outline.knots.iter().enumerate() {
        let place = Rect::from_center_size(ground.at(knot.place()), vec2(HIT, HIT));
        let id = keys::board_id().with(("knot", index));
        let held = ui.interact(place, id, Sense::CLICK | Sense::DRAG);
        held.widget_info(|| {
            WidgetInfo::labeled(Role::Slider, true, format!("Knot {}", index + 1))
        });
        drag(ui, bench, ground, index, *knot, &held, actions);
        if held.drag_started() || held.clicked() || held.secondary_clicked() {
            board.request_focus();
            actions.look(Look::Select(None));
            actions.look(Look::Knot(Some(index)));
        }
        if held.hovered() || held.dragged() {
            pointed = Some(index);
            ui.set_cursor_icon(egui::CursorIcon::Grab);
        }
        if held.dragged() {
            ui.set_cursor_icon(egui::CursorIcon::Grabbing);
        }
        knot_menu(bench, index, &held, actions);
        if let Some(words) = holds::words(knot) {
            held.on_hover_text(words);
        }
    }
    pointed
}

/// A drag keeps the place at which the knot was taken: it moves by as much as the hand has
/// moved since, never to the hand.
fn drag(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    index: usize,
    knot: Knot,
    held: &Response,
    actions: &mut Actions,
) {
    if held.drag_started_by(egui::PointerButton::Primary) {
        ui.data_mut(|d| d.insert_temp(held.id, (knot.radius_mm, knot.height_mm)));
        actions.push(Action::Begin);
        actions.look(Look::DragKnot(Some(index)));
    }
    let from: Option<(f64, f64)> = ui.data(|d| d.get_temp(held.id));
    let ours = held.dragged_by(egui::PointerButton::Primary);
    if let (true, Some((radius, height)), Some(moved)) = (ours, from, held.total_drag_delta()) {
        let scale = f64::from(ground.scale());
        actions.edit(Edit::MoveKnot {
            knot: index,
            radius_mm: radius + f64::from(moved.x) / scale,
            height_mm: height + f64::from(moved.y) / scale,
        });
    }
    if held.drag_stopped() && bench.view.dragged_knot == Some(index) {
        actions.push(Action::Commit);
        actions.look(Look::DragKnot(None));
    }
}

fn knot_menu(bench: &Bench<'_>, index: usize, held: &Response, actions: &mut Actions) {
    Popup::context_menu(held).show(|ui| {
        ui.set_min_width(220.0);
        knot_lines(ui, bench, index, actions);
    });
}

/// What can be done with a knot, as lines of a menu.
pub(super) fn knot_lines(ui: &mut Ui, bench: &Bench<'_>, index: usize, actions: &mut Actions) {
    let knots = &bench.document.piece().outline.knots;
    let Some(knot) = knots.get(index) else { return };
    let last = index + 1 == knots.len();
    let end = index == 0 || last;
    let corner = match (knot.corner, end && knot.is_pole()) {
        (false, false) => "Make it a corner",
        (false, true) => "Make it a pointed tip",
        (true, _) => "Make it smooth",
    };
    let item = |text: &str, command: Option<Command>| {
        let key = command.and_then(Command::key_text).unwrap_or_default();
        egui::Button::new(text.to_owned()).shortcut_text(key).frame_when_inactive(false)
    };
    if ui.add(item(corner, Some(Command::ToggleCorner))).clicked() {
        actions.edit(Edit::ToggleCorner(index));
    }
    if end {
        let words = if knot.is_pole() { "Open this end" } else { "Close this end" };
        if ui.add(item(words, None)).clicked() {
            actions.edit(Edit::ToggleEnd(index));
        }
    } else {
        let enough = knots.len() > 3;
        let remove = item("Remove knot", Some(Command::RemoveKnot));
        if ui.add_enabled(enough, remove).clicked() {
            actions.edit(Edit::RemoveKnot(index));
        }
    }
    holds::menu(ui, knot, index, last, actions);
}

/// Clicks on the board itself: on the line twice to add a knot, on a round to take it.
fn on_board(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    round: Option<u32>,
    actions: &mut Actions,
) {
    let near = board
        .interact_pointer_pos()
        .or(board.hover_pos())
        .and_then(|pos| wanted::nearest(bench, ground, pos))
        .filter(|foot| foot.distance <= NEAR);
    if near.is_some() && board.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Crosshair);
    }
    let add = |foot: wanted::Foot, actions: &mut Actions| {
        actions.edit(Edit::AddKnot {
            knot: foot.span + 1,
            radius_mm: (foot.at.r * 1000.0).round() / 1000.0,
            height_mm: (foot.at.z * 1000.0).round() / 1000.0,
        });
        actions.look(Look::Select(None));
    };
    if board.clicked() {
        board.request_focus();
        match near {
            Some(foot) if board.double_clicked() => add(foot, actions),
            Some(_) => {}
            None => {
                let again = bench.view.selected == round;
                actions.look(Look::Knot(None));
                actions.look(Look::Select(round.filter(|_| !again)));
            }
        }
    }
    if board.secondary_clicked() {
        let foot = near.map(|f| (f.span, f.at.r, f.at.z));
        ui.data_mut(|d| d.insert_temp(board.id, foot));
    }
    let foot: Option<Option<(usize, f64, f64)>> = ui.data(|d| d.get_temp(board.id));
    if let Some(Some((span, r, z))) = foot {
        Popup::context_menu(board).show(|ui| {
            ui.set_min_width(150.0);
            let item = egui::Button::new("Add a knot here").frame_when_inactive(false);
            if ui.add(item).clicked() {
                add(wanted::Foot { span, at: Rz::new(r, z), distance: 0.0 }, actions);
            }
        });
    }
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
    plan.forecast.windows(2).rposition(inside).map(|i| i as u32 + 1)
}
