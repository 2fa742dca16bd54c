//! Marks on the picture, drawn by the hand or by the keyboard alone.

use egui::{EventFilter, Key, Modifiers, Painter, PointerButton, Response, Stroke, Ui, vec2};

use super::picture::PhotoGround;
use crate::kit::Tokens;
use crate::kit::words::MessageKey;
use crate::view::tracing::{DrawnBy, TraceView};

/// Half the thickness of a stroke, as a share of the picture's longer side.
const STROKE: f64 = 0.012;
/// How far an arrow moves the cross, and with Shift, as shares of the longer side.
const STEP: f64 = 0.01;
const LONG_STEP: f64 = 0.05;
/// Reach of the cross, points.
const CROSS: f32 = 14.0;

/// What the keys do while the picture has the keyboard.
pub(super) const KEYS: MessageKey = message!("trace-keys");

/// Takes what the hand draws.
pub(super) fn by_hand(ui: &Ui, shown: &PhotoGround, held: &Response, now: &mut TraceView) {
    if held.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Crosshair);
    }
    if held.drag_started_by(PointerButton::Primary)
        && let Some(origin) = ui.input(|i| i.pointer.press_origin())
    {
        if now.pen.drawing.is_some() {
            now.end_mark();
        }
        now.begin_mark(DrawnBy::Hand, shown.pixel(origin), STROKE * shown.longer());
    }
    if now.pen.drawing != Some(DrawnBy::Hand) {
        return;
    }
    if let Some(pos) = held.interact_pointer_pos() {
        now.draw_to(shown.pixel(pos));
    }
    if !held.dragged() {
        now.end_mark();
    }
}

/// Takes what the keyboard draws, while the picture has it.
pub(super) fn by_keys(ui: &Ui, shown: &PhotoGround, held: &Response, now: &mut TraceView) {
    if !held.has_focus() {
        if now.pen.drawing == Some(DrawnBy::Keys) {
            now.end_mark();
        }
        return;
    }
    let drawing = now.pen.drawing == Some(DrawnBy::Keys);
    let filter = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        // The first Esc gives the mark up, the next puts the card away.
        escape: drawing,
        ..EventFilter::default()
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(held.id, filter));
    let at = now.pen.at.unwrap_or_else(|| shown.pixel(shown.rect.center()));
    let to = shown.pixel(shown.at(moved(ui, at, shown.longer())));
    now.pen.at = Some(to);
    if drawing && to != at {
        now.draw_to(to);
    }
    let pressed = |key: Key| ui.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    if drawing && pressed(Key::Escape) {
        now.give_mark_up();
    } else if pressed(Key::Space) || pressed(Key::Enter) {
        if drawing {
            now.end_mark();
        } else {
            now.begin_mark(DrawnBy::Keys, to, STROKE * shown.longer());
        }
    } else if pressed(Key::Backspace) || pressed(Key::Delete) {
        now.take_mark_back();
    }
}

/// Where the arrows take the cross from `at`.
fn moved(ui: &Ui, at: (f64, f64), longer: f64) -> (f64, f64) {
    let steps = |key: Key| {
        ui.input_mut(|i| {
            let long = i.count_and_consume_key(Modifiers::SHIFT, key);
            let short = i.count_and_consume_key(Modifiers::NONE, key);
            longer * (LONG_STEP * long as f64 + STEP * short as f64)
        })
    };
    let across = steps(Key::ArrowRight) - steps(Key::ArrowLeft);
    let down = steps(Key::ArrowDown) - steps(Key::ArrowUp);
    (at.0 + across, at.1 + down)
}

/// The cross, while the picture has the keyboard.
pub(super) fn cross(
    painter: &Painter,
    t: &Tokens,
    shown: &PhotoGround,
    held: &Response,
    now: &TraceView,
) {
    let Some(at) = now.pen.at.filter(|_| held.has_focus()) else { return };
    let at = shown.at(at);
    for (width, colour) in [(4.5, t.panel), (2.0, t.outline)] {
        for (from, to) in [(4.0, CROSS), (-CROSS, -4.0)] {
            let stroke = Stroke::new(width, colour);
            painter.line_segment([at + vec2(from, 0.0), at + vec2(to, 0.0)], stroke);
            painter.line_segment([at + vec2(0.0, from), at + vec2(0.0, to)], stroke);
        }
    }
}
