//! Keys: commands by their shortcuts, arrows that nudge the selected knots; `toy` has those of
//! the Assembly stage, `lesson` those of the Lesson stage.

mod lesson;
mod toy;

use egui::{Context, Key, KeyboardShortcut, Modifiers};
use plumpline_core::outline::Rz;

use super::Bench;
use super::action::{Action, Actions};
use super::command::{Command, MakeCommand, asked};
use crate::document::edit::Edit;
use crate::document::shaping;
use crate::view::Stage;
use crate::view::ids::{
    bars_id, bend_id, board_id, body_id, gains_id, guess_id, lesson_id, lesson_side_id,
    make_id, map_id, note_id, pattern_id, toy_id,
};
use crate::view::look::Look;

/// How far an arrow turns the body, degrees.
const TURN_DEG: f32 = 5.0;

/// How far an arrow moves a knot, in steps of the grid; with Shift ten times as far.
const NUDGE: f64 = 0.5;

/// Reads the keys of this frame.
pub fn read(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let focused = ctx.memory(|m| m.focused());
    // While a menu or a card is open, arrows and Esc are its own.
    let canvases = [
        board_id(),
        bars_id(),
        body_id(),
        bend_id(),
        make_id(),
        toy_id(),
        map_id(),
        lesson_id(),
        lesson_side_id(),
        gains_id(),
    ];
    let on_canvas =
        focused.is_none_or(|id| canvases.contains(&id)) && !egui::Popup::is_any_open(ctx);
    let typing = [pattern_id(), note_id(), guess_id()].map(Some).contains(&focused);
    if on_canvas && bench.view.stage == Stage::Assembly {
        toy::read(ctx, bench, actions);
    } else if on_canvas && bench.view.stage == Stage::Lesson && focused != Some(gains_id()) {
        lesson::read(ctx, bench, actions);
    } else if on_canvas && focused == Some(body_id()) {
        turn(ctx, bench, actions);
    } else if on_canvas && ![Some(bars_id()), Some(bend_id())].contains(&focused) {
        nudge(ctx, bench, actions);
    }
    for command in Command::ALL {
        for shortcut in command.shortcuts() {
            // While a pattern or a note is typed, Ctrl+Z takes the typing back, not the piece.
            let steps = matches!(command, Command::Undo | Command::Redo);
            // A key by itself belongs to whatever has the keyboard: a field, a slider, a menu.
            // So does the key that copies.
            let plain = shortcut.modifiers.is_none() && shortcut.logical_key != Key::F1;
            let theirs = plain || command == Command::CopyRound;
            if (steps && typing) || (theirs && !on_canvas) {
                continue;
            }
            press(ctx, bench, command, shortcut, actions);
        }
    }
    // Where the desktop knows Ctrl+C as such, it comes as a wish to copy, not as a key.
    let copies = |i: &egui::InputState| i.events.contains(&egui::Event::Copy);
    if on_canvas && Command::CopyRound.enabled(bench) && ctx.input(copies) {
        actions.command(Command::CopyRound);
    }
}

/// Reads the keys that act whatever lies over the window: those of how it looks.
pub fn read_everywhere(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    use Command::{LargerText, SmallerText, ToggleTheme, UsualText};
    for command in [LargerText, SmallerText, UsualText, ToggleTheme] {
        for shortcut in command.shortcuts() {
            press(ctx, bench, command, shortcut, actions);
        }
    }
}

/// Reads the keys of the small window beside a film: those of the round under the hook, without
/// what is typed.
pub fn read_making(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    use MakeCommand::{Back, Done, Repeat, Round, Small, Stitch};
    for make in [Stitch, Repeat, Round, Back, Done, Small] {
        let command = Command::Make(make);
        command.shortcuts().for_each(|key| press(ctx, bench, command, key, actions));
    }
}

/// Asks for a command as often as its key was pressed: one may have repeated more often than
/// frames were drawn.
fn press(
    ctx: &Context,
    bench: &Bench<'_>,
    command: Command,
    shortcut: KeyboardShortcut,
    actions: &mut Actions,
) {
    if command.enabled(bench) {
        let KeyboardShortcut { modifiers, logical_key } =
            asked(shortcut, bench.view.prefs.single_keys);
        // But nobody works twenty stitches a second: there a key held down counts once.
        let held = matches!(command, Command::Make(_)).then(|| repeats(ctx, logical_key));
        let presses = ctx.input_mut(|i| i.count_and_consume_key(modifiers, logical_key));
        for _ in 0..presses.saturating_sub(held.unwrap_or(0)) {
            actions.command(command);
        }
    } else if command.waits_for_a_file(bench) {
        let KeyboardShortcut { modifiers, logical_key } =
            asked(shortcut, bench.view.prefs.single_keys);
        if ctx.input_mut(|i| i.consume_key(modifiers, logical_key)) {
            actions.push(Action::Refused(command));
        }
    }
}

/// How often this key was pressed again by being held down.
fn repeats(ctx: &Context, key: Key) -> usize {
    let held = |e: &&egui::Event| matches!(e, egui::Event::Key { key: k, pressed: true, repeat: true, .. } if *k == key);
    ctx.input(|i| i.events.iter().filter(held).count())
}

/// Turns the body by Left and Right, tilts it by Shift with Up and Down.
fn turn(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let (mut right, mut down) = (0.0, 0.0);
    ctx.input_mut(|i| {
        let mut presses = |modifiers: Modifiers, key: Key| {
            i.count_and_consume_key(modifiers, key) as f32 * TURN_DEG
        };
        right += presses(Modifiers::NONE, Key::ArrowRight);
        right -= presses(Modifiers::NONE, Key::ArrowLeft);
        down += presses(Modifiers::SHIFT, Key::ArrowDown);
        down -= presses(Modifiers::SHIFT, Key::ArrowUp);
    });
    if right != 0.0 || down != 0.0 {
        actions.look(Look::Turn(bench.view.turned.moved(right, down)));
    }
}

/// Moves the selected knots by the arrow keys.
fn nudge(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let knots = bench.view.knots();
    if knots.is_empty() || bench.view.stage != Stage::Shape || bench.view.is_dragging() {
        return;
    }
    let (mut right, mut down) = (0.0, 0.0);
    ctx.input_mut(|i| {
        let step = NUDGE * bench.unit().grid_mm() * if i.modifiers.shift { 10.0 } else { 1.0 };
        let mut presses = |key: Key| {
            let plain = i.count_and_consume_key(Modifiers::NONE, key);
            plain as f64 * step
        };
        right += presses(Key::ArrowRight) - presses(Key::ArrowLeft);
        down += presses(Key::ArrowDown) - presses(Key::ArrowUp);
    });
    if right != 0.0 || down != 0.0 {
        let outline = &bench.document.piece().outline;
        let outline = shaping::moved(outline, &knots, Rz::new(right, down));
        actions.edit(Edit::MoveKnots { lead: knots[0], outline });
    }
}
