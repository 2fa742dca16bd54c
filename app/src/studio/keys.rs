//! Keys: commands by their shortcuts, arrows that nudge the knots in hand.

use egui::{Context, Id, Key, Modifiers};
use plumpline_core::outline::Rz;

use super::action::{Actions, Edit};
use super::bench::Bench;
use super::command::Command;
use super::shaping;
use super::view::Stage;

/// The id the outline board takes the keyboard with.
pub fn board_id() -> Id {
    Id::unique("outline board")
}

/// The id the round bars take the keyboard with.
pub fn bars_id() -> Id {
    Id::unique("round bars")
}

/// How far an arrow moves a knot, mm; with Shift ten times as far.
const NUDGE_MM: f64 = 0.5;

/// Reads the keys of this frame.
pub fn read(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let focused = ctx.memory(|m| m.focused());
    // While a menu or a card is open, arrows and Esc are its own.
    let on_canvas = focused.is_none_or(|id| id == board_id() || id == bars_id())
        && !egui::Popup::is_any_open(ctx);
    if on_canvas && focused != Some(bars_id()) {
        nudge(ctx, bench, actions);
    }
    for command in Command::ALL {
        let Some(shortcut) = command.shortcut() else { continue };
        let plain = shortcut.modifiers.is_none();
        // A single key belongs to whatever has the keyboard: a field, a slider, a menu.
        if plain && !on_canvas {
            continue;
        }
        if command.enabled(bench) {
            let (modifiers, key) = (shortcut.modifiers, shortcut.logical_key);
            // A key may have repeated more often than frames were drawn.
            let presses = ctx.input_mut(|i| i.count_and_consume_key(modifiers, key));
            for _ in 0..presses {
                actions.command(command);
            }
        }
    }
    let again = egui::KeyboardShortcut::new(Modifiers::COMMAND, Key::Y);
    if Command::Redo.enabled(bench) && ctx.input_mut(|i| i.consume_shortcut(&again)) {
        actions.command(Command::Redo);
    }
    let alike = egui::KeyboardShortcut::new(Modifiers::NONE, Key::Equals);
    let more = Command::MoreStitches;
    if on_canvas && more.enabled(bench) && ctx.input_mut(|i| i.consume_shortcut(&alike)) {
        actions.command(more);
    }
}

/// Moves the knots in hand by the arrow keys.
fn nudge(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let knots = bench.view.knots();
    if knots.is_empty() || bench.view.stage != Stage::Shape || bench.view.is_dragging() {
        return;
    }
    let (mut right, mut down) = (0.0, 0.0);
    ctx.input_mut(|i| {
        let step = if i.modifiers.shift { 10.0 * NUDGE_MM } else { NUDGE_MM };
        let mut presses = |key: Key| {
            let plain = i.count_and_consume_key(Modifiers::NONE, key);
            plain as f64 * step
        };
        right += presses(Key::ArrowRight) - presses(Key::ArrowLeft);
        down += presses(Key::ArrowDown) - presses(Key::ArrowUp);
    });
    if right != 0.0 || down != 0.0 {
        let outline = &bench.document.piece().outline;
        actions.edit(Edit::Outline(shaping::moved(outline, &knots, Rz::new(right, down))));
    }
}
