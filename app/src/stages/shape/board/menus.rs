//! What a right click offers: on a knot, on the line, on a round, on the ground.

use egui::{Button, Popup, Response, Ui};

use super::{holds, wanted};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::choice::Choice;
use crate::document::edit::Edit;
use crate::document::shaping::whole;
use crate::kit::letters;
use crate::view::look::Look;

/// A line of a menu, with its key.
fn line(bench: &Bench<'_>, text: &str, command: Option<Command>) -> Button<'static> {
    let key = command.and_then(|c| bench.key_text(c)).unwrap_or_default();
    Button::new(text.to_owned()).shortcut_text(key).frame_when_inactive(false)
}

/// A line that asks for a command.
fn command(ui: &mut Ui, bench: &Bench<'_>, command: Command, actions: &mut Actions) {
    let item = line(bench, command.text(), Some(command));
    let pressed = ui.add_enabled(command.enabled(bench), item);
    letters::line(&pressed, command.text());
    if pressed.on_hover_text(command.tooltip()).clicked() {
        actions.command(command);
    }
}

/// The menu of a knot.
pub(super) fn knot(bench: &Bench<'_>, index: usize, held: &Response, actions: &mut Actions) {
    Popup::context_menu(held).show(|ui| {
        ui.set_min_width(220.0);
        knot_lines(ui, bench, index, actions);
        ui.separator();
        command(ui, bench, Command::FitView, actions);
    });
}

/// What can be done with a knot, as lines of a menu.
pub(super) fn knot_lines(ui: &mut Ui, bench: &Bench<'_>, index: usize, actions: &mut Actions) {
    let knots = &bench.document.piece().outline.knots;
    let Some(knot) = knots.get(index) else { return };
    let last = index + 1 == knots.len();
    let end = index == 0 || last;
    let corner = match (knot.corner, end && knot.is_pole()) {
        (false, false) => say!("board-make-it-a-corner"),
        (false, true) => say!("board-make-it-a-pointed-tip"),
        (true, _) => say!("board-make-it-smooth"),
    };
    let item = ui.add(line(bench, corner, Some(Command::ToggleCorner)));
    if letters::noted(item, corner).clicked() {
        actions.edit(Edit::ToggleCorner(index));
    }
    if end {
        let words = if knot.is_pole() {
            say!("board-open-this-end")
        } else {
            say!("board-close-this-end")
        };
        if letters::noted(ui.add(line(bench, words, None)), words).clicked() {
            actions.edit(Edit::ToggleEnd(index));
        }
    } else {
        let enough = knots.len() > 3;
        let remove = line(bench, say!("command-remove-knot"), Some(Command::RemoveKnot));
        let remove = ui.add_enabled(enough, remove);
        if letters::noted(remove, say!("command-remove-knot")).clicked() {
            actions.edit(Edit::RemoveKnot(index));
        }
    }
    holds::menu(ui, knot, index, last, actions);
}

/// Where a right click fell on the board: remembered while its menu is open.
#[derive(Debug, Clone, Copy, Default)]
struct ClickedSpot {
    foot: Option<wanted::OutlinePlace>,
    round: Option<u32>,
}

/// The menu of the line, of a round, of the ground.
pub(super) fn board(
    ui: &Ui,
    bench: &Bench<'_>,
    board: &Response,
    foot: Option<wanted::OutlinePlace>,
    round: Option<u32>,
    actions: &mut Actions,
) {
    if board.secondary_clicked() {
        ui.data_mut(|d| d.insert_temp(board.id, ClickedSpot { foot, round }));
        if foot.is_none() && round.is_some() {
            actions.look(Look::Select(round));
        }
    }
    let spot: ClickedSpot = ui.data(|d| d.get_temp(board.id)).unwrap_or_default();
    Popup::context_menu(board).show(|ui| {
        ui.set_min_width(220.0);
        if let Some(foot) = spot.foot {
            line_lines(ui, bench, foot, actions);
            ui.separator();
        } else if let Some(round) = spot.round {
            round_lines(ui, bench, round, actions);
            ui.separator();
        }
        command(ui, bench, Command::FitView, actions);
        let on = bench.view.board.magnet;
        let magnet = ui.selectable_label(on, say!("command-magnet"));
        letters::line(&magnet, say!("command-magnet"));
        if magnet.on_hover_text(bench.hint(Command::ToggleMagnet)).clicked() {
            actions.command(Command::ToggleMagnet);
            ui.close();
        }
        if bench.document.piece().picture.is_some() {
            let words = say!("board-move-or-scale-the-picture");
            if letters::noted(ui.add(line(bench, words, None)), words).clicked() {
                actions.look(Look::Picture(true));
            }
        } else {
            command(ui, bench, Command::ChoosePicture, actions);
        }
    });
}

fn line_lines(
    ui: &mut Ui,
    bench: &Bench<'_>,
    foot: wanted::OutlinePlace,
    actions: &mut Actions,
) {
    let words = say!("board-add-a-knot-here");
    if letters::noted(ui.add(line(bench, words, None)), words).clicked() {
        add_knot(foot, actions);
    }
    let knots = &bench.document.piece().outline.knots;
    let card = knots.get(foot.span).is_some_and(|k| k.card);
    let why = say!("board-stiff-card-or-plastic-inside-keeps");
    let words = say!("board-card-between-these-two-knots");
    let item = letters::noted(ui.selectable_label(card, words), words);
    if item.on_hover_text(why).clicked() {
        actions.choose(Choice::Card { knot: foot.span, on: !card });
        ui.close();
    }
}

fn round_lines(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let Some(count) = bench.count_of(round) else { return };
    let (words, edit) = match bench.pin_of(round) {
        Some(_) => (say!("board-unpin-round-round", round = round), Edit::Unpin(round)),
        None => (
            say!("board-pin-round-round-at-count-stitches", round = round, count = count),
            Edit::Pin { round, count },
        ),
    };
    let item = ui.add(line(bench, &words, Some(Command::TogglePin)));
    if letters::noted(item, &words).clicked() {
        actions.edit(edit);
    }
}

/// Adds a knot where the line was pointed at.
pub(super) fn add_knot(foot: wanted::OutlinePlace, actions: &mut Actions) {
    actions.edit(Edit::AddKnot {
        knot: foot.span + 1,
        radius_mm: whole(foot.at.r),
        height_mm: whole(foot.at.z),
    });
    actions.look(Look::Select(None));
}
