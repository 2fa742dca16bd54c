//! A frame drawn on empty ground takes all knots in it.

use egui::{Painter, PointerButton, Rect, Response, Stroke, StrokeKind, Ui};

use super::ground::Ground;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::Tokens;
use crate::view::look::Look;

/// Reads the hand that draws a frame; returns the frame. With Shift, selected knots stay so.
pub(super) fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    starts: bool,
    actions: &mut Actions,
) -> Option<Rect> {
    let started = starts && board.drag_started_by(PointerButton::Primary);
    if started {
        board.request_focus();
        actions.look(Look::Band(true));
    }
    if !started && !bench.view.board.band {
        return None;
    }
    let (from, to, shift) =
        ui.input(|i| (i.pointer.press_origin(), i.pointer.latest_pos(), i.modifiers.shift));
    let frame = from.zip(to).map(|(from, to)| Rect::from_two_pos(from, to));
    if let Some(frame) = frame {
        let mut knots = if shift { bench.view.knots() } else { Vec::new() };
        for (index, knot) in bench.document.piece().outline.knots.iter().enumerate() {
            let inside = frame.contains(ground.at(knot.place()))
                || frame.contains(ground.mirrored(knot.place()));
            if inside && !knots.contains(&index) {
                knots.push(index);
            }
        }
        actions.look(Look::Select(None));
        actions.look(Look::Knots(knots));
    }
    if !board.dragged() && !started {
        actions.look(Look::Band(false));
        return None;
    }
    frame
}

/// Draws the frame.
pub(super) fn paint(painter: &Painter, t: &Tokens, frame: Rect) {
    let pen = Stroke::new(1.2, t.outline);
    painter.rect(frame, 2.0, t.outline.gamma_multiply(0.08), pen, StrokeKind::Inside);
}
