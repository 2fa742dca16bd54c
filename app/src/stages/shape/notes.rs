//! Notes: what the maker should know before working the piece, each with its remedy.

use egui::{Align2, Painter, Pos2, Sense, Ui, pos2, vec2};
use plumpline_core::warning::{Warning, WarningKind};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::{icons, paint, type_faces};
use crate::view::look::Look;

fn warnings<'a>(bench: &Bench<'a>) -> &'a [Warning] {
    bench.plan.map_or(&[], |p| p.warnings.as_slice())
}

/// What the notes there are tell of, in order.
fn kinds(bench: &Bench<'_>) -> Vec<WarningKind> {
    let mut kinds: Vec<WarningKind> = warnings(bench).iter().map(|w| w.kind).collect();
    kinds.sort_unstable();
    kinds
}

/// Whether there is a note that has not been seen. Numbers in a note may change unseen.
pub(super) fn has_news(bench: &Bench<'_>) -> bool {
    let mut read = bench.view.read.clone();
    kinds(bench).into_iter().any(|kind| {
        let known = read.iter().position(|&r| r == kind);
        known.map(|i| read.swap_remove(i)).is_none()
    })
}

/// Notes that are in sight have been seen.
pub(super) fn mark_read(bench: &Bench<'_>, actions: &mut Actions) {
    let kinds = kinds(bench);
    if bench.view.read != kinds {
        actions.look(Look::Read(kinds));
    }
}

/// How many notes there are, with a triangle where one is new.
pub(super) fn sign(painter: &Painter, bench: &Bench<'_>, at: Pos2, shown: bool) {
    let t = bench.t;
    let count = warnings(bench).len();
    if count == 0 {
        return;
    }
    let new = !shown && has_news(bench);
    let x = if new {
        icons::warning(painter, at, 13.0, t.warning);
        at.x + 10.0
    } else {
        at.x - 5.0
    };
    let font = type_faces::bold(type_faces::SMALL);
    let ink = if new { t.warning } else { t.soft_ink };
    painter.text(pos2(x, at.y + 1.0), Align2::LEFT_CENTER, count, font, ink);
}

/// The notes, one under another.
pub(super) fn list(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let t = bench.t;
    ui.spacing_mut().item_spacing.y = 6.0;
    let notes = warnings(bench);
    if notes.is_empty() {
        ui.horizontal(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(18.0, 20.0), Sense::hover());
            icons::check(ui.painter(), rect.center(), t.increase);
            ui.label(say!("checks-no-problems-found"));
        });
    }
    for (i, note) in notes.iter().enumerate() {
        let round = note.rounds.first().copied();
        if one(ui, bench, i, note).clicked()
            && let Some(round) = round
        {
            actions.command(Command::ShowShape);
            actions.look(Look::Select(Some(round)));
        }
    }
}

/// One note; a click selects its first round.
fn one(ui: &mut Ui, bench: &Bench<'_>, index: usize, note: &Warning) -> egui::Response {
    let t = bench.t;
    let width = ui.available_width() - 26.0;
    let font = type_faces::regular(type_faces::BODY);
    let text = note.sentence().text(bench.unit());
    let galley = ui.painter().layout(text.clone(), font, t.ink, width - 6.0);
    let size = vec2(ui.available_width(), galley.size().y + 8.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let whole = note.rounds.is_empty();
    let sense = if whole { Sense::hover() } else { Sense::click() };
    let response = ui.interact(rect, ui.scope_id().with(("note", index)), sense);
    let role = if whole { egui::Role::Label } else { egui::Role::Button };
    response.widget_info(|| egui::WidgetInfo::labeled(role, true, &text));
    if !whole {
        paint::row(ui.painter(), rect, &response, false, t);
    }
    let at = rect.left_top() + vec2(11.0, 13.0);
    icons::warning(ui.painter(), at, 13.0, t.warning);
    ui.painter().galley(rect.left_top() + vec2(26.0, 4.0), galley, t.ink);
    if whole { response } else { response.on_hover_text(say!("checks-select-these-rounds")) }
}
