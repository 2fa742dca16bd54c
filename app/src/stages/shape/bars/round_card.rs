//! The card of a round: what can be chosen for it and for the rounds after it.

use egui::{Popup, PopupCloseBehavior, Rect, Response, Sense, Ui, pos2, vec2};
use plumpline_core::{Kind, Loop, Yarn};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::choice::Choice;
use crate::document::edit::Edit;
use crate::fields::form::{self, Counted};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::paint;
use crate::view::look::Look;

/// Width of the card.
const WIDTH: f32 = 280.0;
/// Yarns a project may list.
const MOST_YARNS: usize = 26;

/// Opens the card where the row was clicked.
pub(super) fn on_row(
    ui: &Ui,
    row: &Response,
    bench: &Bench<'_>,
    round: u32,
    actions: &mut Actions,
) {
    open(ui, Popup::context_menu(row), bench, round, actions);
}

/// Opens the card below a button.
pub(super) fn below(
    ui: &Ui,
    on: &Response,
    bench: &Bench<'_>,
    round: u32,
    actions: &mut Actions,
) {
    open(ui, Popup::menu(on), bench, round, actions);
}

fn open(ui: &Ui, popup: Popup<'_>, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let popup = popup.frame(form::frame(ui));
    // It stays while choices are tried: the rounds behind it follow.
    popup.close_behavior(PopupCloseBehavior::CloseOnClickOutside).width(WIDTH).show(|ui| {
        ui.set_width(WIDTH);
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 2.0;
        show(ui, bench, round, actions);
    });
}

fn show(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let Some(count) = bench.count_of(round) else { return };
    form::numbered_heading(ui, &say!("round-round-round", round = round));
    copy(ui, bench, round, actions);
    pin(ui, bench, round, count, actions);
    plain(ui, bench, round, actions);
    form::keyed_heading(
        ui,
        say!("round-stitch-from-here-on"),
        bench.key_text(Command::NextKind),
    );
    kind(ui, bench, round, actions);
    if round > 1 {
        form::keyed_heading(
            ui,
            say!("round-this-round-worked-into"),
            bench.key_text(Command::NextLoop),
        );
        loops(ui, bench, round, actions);
    }
    form::heading(ui, say!("round-yarn-from-here-on"));
    yarns(ui, bench, round, actions);
}

/// Copies the round's line; the round is selected first, for the command speaks of it.
fn copy(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let command = Command::CopyRound;
    let (words, rect) = (command.text(), line(ui));
    let place = rect.with_max_x(rect.left() + controls::words_width(ui, words));
    let button =
        controls::button(ui, place, ButtonFace::Words(words), words, bench.plan.is_some());
    if button.on_hover_text(bench.hint(command)).clicked() {
        actions.look(Look::Select(Some(round)));
        actions.command(command);
    }
}

fn pin(ui: &mut Ui, bench: &Bench<'_>, round: u32, count: u32, actions: &mut Actions) {
    let held = bench.pin_of(round);
    let words = match held {
        Some(count) => say!("round-pinned-at-count-stitches", count = count),
        None => say!("round-pin-at-count-stitches", count = count),
    };
    let hint = bench.hint(Command::TogglePin);
    match form::tick(ui, &words, &hint, held.is_some()) {
        Some(true) => actions.edit(Edit::Pin { round, count }),
        Some(false) => actions.edit(Edit::Unpin(round)),
        None => {}
    }
}

/// For how many rounds from here nothing is to be shaped.
fn plain(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let piece = bench.document.piece();
    let rounds = bench.plan.map_or(round, |p| p.rounds.len() as u32);
    let kept = (round..=rounds).take_while(|&r| piece.is_in_face(r)).count() as u32;
    let key = bench.key_text(Command::TogglePlain).unwrap_or_default();
    let why = say!("round-no-increases-or-decreases-from-this", key = key);
    let rect = form::row(ui, say!("round-plain-for"), &why);
    let most = (rounds + 1).saturating_sub(round).max(1);
    let span = Counted { ends: (1, most), none: Some((say!("round-off"), 0)) };
    let now = Some(kept).filter(|&n| n > 0);
    if let Some(new) = form::stepper(ui, rect, say!("round-plain-rounds"), now, span, actions) {
        let new = new.unwrap_or(0);
        let (from, to, on) = if new > kept {
            (round + kept, round + new - 1, true)
        } else {
            (round + new, round + kept - 1, false)
        };
        actions.choose(Choice::Plain { from, to, on });
    }
}

fn kind(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let kinds = [Kind::Single, Kind::HalfDouble, Kind::Double];
    let now = bench.document.piece().kind_of_round(round);
    let now = kinds.iter().position(|&k| k == now).unwrap_or(0);
    let rect = line(ui);
    let words = [say!("round-single"), say!("round-half-double"), say!("round-double")];
    if let Some(i) = form::pick(ui, rect, say!("round-stitch-from-here-on"), &words, now) {
        actions.choose(Choice::Kind { round, kind: kinds[i] });
    }
}

fn loops(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let loops = [None, Some(Loop::Front), Some(Loop::Back)];
    let now = bench.document.piece().loops.get(&round).copied();
    let now = loops.iter().position(|&l| l == now).unwrap_or(0);
    let rect = line(ui);
    let words = [say!("round-both-loops"), say!("round-front-only"), say!("round-back-only")];
    if let Some(i) = form::pick(ui, rect, say!("round-worked-into"), &words, now) {
        actions.choose(Choice::Loop { round, only: loops[i] });
    }
}

fn line(ui: &mut Ui) -> Rect {
    ui.allocate_exact_size(vec2(ui.available_width(), form::ROW), Sense::hover()).0
}

/// A bead a yarn, the one in use held down; plus, to begin another.
fn yarns(ui: &mut Ui, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let yarns = &bench.document.project().yarns;
    let now = bench.document.piece().yarn_of_round(round);
    let shown = yarns.len().min(MOST_YARNS);
    let across = (ui.available_width() / 32.0).floor().max(1.0) as usize;
    let lines = (shown + 1).div_ceil(across);
    let size = vec2(ui.available_width(), 32.0 * lines as f32);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let spot = |i: usize| {
        let at = vec2(32.0 * (i % across) as f32, 32.0 * (i / across) as f32 + 2.0);
        Rect::from_min_size(pos2(rect.left(), rect.top()) + at, vec2(28.0, 26.0))
    };
    for (i, yarn) in yarns.iter().enumerate().take(shown) {
        let name = say!(
            "round-yarn-from-here-on-letter-name",
            letter = Yarn::letter(i),
            name = yarn.name
        );
        let place = spot(i);
        let button =
            controls::toggle(ui, place, ButtonFace::Words(""), &name, true, Some(i == now));
        paint::bead(ui.painter(), place.center(), &Yarn::letter(i), yarn.colour, bench.t);
        if button.on_hover_text(&yarn.name).clicked() && i != now {
            actions.edit(Edit::Band { round, yarn: i });
        }
    }
    if shown < MOST_YARNS {
        let name = say!("round-another-yarn-from-here-on");
        let button =
            controls::button(ui, spot(shown), ButtonFace::Icon(Icon::More), name, true);
        if button.on_hover_text(name).clicked() {
            actions.edit(Edit::NewYarn { round });
        }
    }
}
