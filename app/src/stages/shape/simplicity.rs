//! Simplicity: the answers a piece has, from faithful to simple, what each costs in likely fit
//! and saves in lines to read, and its rounds.

use egui::{Align2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder};
use egui::{WidgetInfo, pos2, vec2};
use plumpline_core::simplicity::Answer;

use super::answers_plot;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::form::short;
use crate::kit::words::decimal;
use crate::kit::{Tokens, controls, paint, type_faces};
use crate::view::look::Look;
use crate::work::trade::Offer;

/// Height of an answer's row.
const ROW: f32 = 24.0;
/// Height of the headings over answers and rounds.
const HEADING: f32 = 30.0;
/// Width of the list of answers.
const LIST: f32 = 178.0;

/// An answer that can be picked: the default one first, then from faithful to simple.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pick<'a> {
    pub(super) answer: &'a Answer,
    pub(super) is_default: bool,
    /// Whether it is the one in use.
    pub(super) is_on: bool,
}

impl Pick<'_> {
    /// What it is called.
    fn name(&self) -> String {
        match self.answer.simplicity {
            _ if self.is_default => say!("simplicity-default").into(),
            s if s <= 0.0 => say!("simplicity-faithful").into(),
            s if s >= 1.0 => say!("simplicity-simple").into(),
            s => short((100.0 * s).round() / 100.0),
        }
    }

    /// Takes it.
    pub(super) fn pick(&self, bench: &Bench<'_>, actions: &mut Actions) {
        let chosen = self.answer.chosen(bench.document.piece());
        match chosen.accepted.filter(|_| !self.is_default) {
            Some(answer) => actions.edit(Edit::Answer(answer)),
            None => actions.edit(Edit::Simplicity(None)),
        }
    }
}

/// The answers on offer, as they are listed.
fn choices<'a>(bench: &Bench<'_>, offer: &'a Offer) -> Vec<Pick<'a>> {
    let simplicity = bench.document.piece().simplicity;
    let counts = bench.plan.map(|plan| plan.counts());
    let same = |a: &Answer| counts.as_ref() == Some(&a.counts);
    let far = |a: &Answer| (a.simplicity - simplicity.unwrap_or_default()).abs();
    // Counts kept from before may be none of the answers; the nearest stands for them.
    let all = || offer.answers.iter().enumerate();
    let on = all()
        .find(|(_, a)| same(a))
        .or_else(|| all().min_by(|a, b| far(a.1).total_cmp(&far(b.1))))
        .map(|(i, _)| i)
        .filter(|_| simplicity.is_some());
    let default =
        Pick { answer: &offer.default, is_default: true, is_on: simplicity.is_none() };
    let others =
        all().map(|(i, answer)| Pick { answer, is_default: false, is_on: on == Some(i) });
    std::iter::once(default).chain(others).collect()
}

/// Draws the trade-off, the answers and the rounds of one of them.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let place = ui.max_rect();
    let Some(offer) = bench.trade.offer() else {
        waiting(ui, bench, place);
        return;
    };
    let choices = choices(bench, offer);
    let plot_height = (0.36 * place.height()).clamp(104.0, 170.0);
    let plot = place.with_max_y(place.top() + plot_height);
    answers_plot::show(ui, bench, plot.with_max_x(place.right() - 10.0), &choices, actions);
    let below = place.with_min_y(plot.bottom() + 2.0);
    let list = below.with_max_x(below.left() + LIST);
    table(ui, bench, list, &choices, actions);
    let rounds = below.with_min_x(list.right() + 10.0);
    let on = choices.iter().position(|c| c.is_on).unwrap_or(0);
    let shown = bench.view.answer.filter(|&i| i < choices.len()).unwrap_or(on);
    rounds_of(ui, bench, rounds, &choices[shown]);
}

/// What stands there until there are answers.
fn waiting(ui: &Ui, bench: &Bench<'_>, place: Rect) {
    let t = bench.t;
    let words = match bench.trade.error() {
        Some(error) => say!("results-no-results-while-the-outline-cannot-be", error = error),
        None if bench.trade.is_working() => say!("results-preparing-the-results").into(),
        None => say!("results-the-results-come-when-you-stop").into(),
    };
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words, font, t.soft_ink, place.width() - 16.0);
    ui.painter().galley(place.left_top() + vec2(0.0, 8.0), galley, t.soft_ink);
}

/// Left end of the first column, right ends of the other three.
fn columns(rect: Rect) -> [f32; 4] {
    [6.0, 84.0, 116.0, LIST - 14.0].map(|x| rect.left() + x)
}

/// The answers: name, likely fit, lines that differ, share of rounds in one repeat.
fn table(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    choices: &[Pick<'_>],
    actions: &mut Actions,
) {
    let t = bench.t;
    let heads = [
        ("", ""),
        (say!("results-likely"), say!("results-st-off")),
        (say!("results-lines"), ""),
        (say!("results-repeats"), "%"),
    ];
    for (x, (head, unit)) in columns(rect).into_iter().zip(heads) {
        let font = type_faces::regular(type_faces::SMALL);
        let at = pos2(x, rect.top() + 8.0);
        let painter = ui.painter();
        painter.text(at, Align2::RIGHT_CENTER, head, font.clone(), t.soft_ink);
        painter.text(at + vec2(0.0, 12.0), Align2::RIGHT_CENTER, unit, font, t.soft_ink);
    }
    let line = Stroke::new(1.0, t.edge);
    ui.painter().hline(rect.x_range(), rect.top() + HEADING - 2.0, line);
    let list = rect.with_min_y(rect.top() + HEADING);
    let mut child = ui.new_child(UiBuilder::new().max_rect(list).id_salt("answers"));
    scroll_style(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        for (i, choice) in choices.iter().enumerate() {
            let response = row(ui, bench, i, choice);
            if (response.hovered() || response.gained_focus()) && bench.view.answer != Some(i) {
                actions.look(Look::Answer(Some(i)));
            }
            if response.clicked() && !choice.is_on {
                choice.pick(bench, actions);
            }
        }
        controls::follow_focus(ui);
    });
}

/// A thin bar beside a narrow list.
fn scroll_style(ui: &mut Ui) {
    controls::scroll_colours(ui);
    ui.spacing_mut().scroll.bar_width = 6.0;
    ui.spacing_mut().scroll.bar_inner_margin = 2.0;
}

fn row(ui: &mut Ui, bench: &Bench<'_>, index: usize, choice: &Pick<'_>) -> egui::Response {
    let t = bench.t;
    let size = vec2(LIST - 8.0, ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let (answer, on) = (choice.answer, choice.is_on);
    response.widget_info(|| {
        let name = say!("results-result-name", name = choice.name());
        WidgetInfo::selected(Role::RadioButton, true, on, name)
    });
    let shown = bench.view.answer == Some(index);
    if on {
        let edge = Stroke::new(1.4, t.highlight_edge);
        ui.painter().rect(rect, 5.0, t.wash, edge, StrokeKind::Inside);
    } else if shown || response.hovered() {
        ui.painter().rect_filled(rect, 5.0, t.well);
    }
    let values = [
        choice.name(),
        decimal(answer.likely_rms_stitches, 2),
        answer.distinct_lines.to_string(),
        format!("{:.0}", 100.0 * answer.simple_share),
    ];
    let ink = if bench.trade.is_current() { t.ink } else { t.soft_ink };
    for (i, (x, value)) in columns(rect).into_iter().zip(values).enumerate() {
        let face = if i == 0 || on { type_faces::semibold } else { type_faces::regular };
        let align = if i == 0 { Align2::LEFT_CENTER } else { Align2::RIGHT_CENTER };
        let at = pos2(x, rect.center().y);
        ui.painter().text(at, align, value, face(type_faces::BODY), ink);
    }
    if response.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(3.0), 5.0, t);
    }
    response.on_hover_text(say!("results-use-this-result"))
}

/// The rounds of an answer, to scroll through.
fn rounds_of(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, choice: &Pick<'_>) {
    let t = bench.t;
    let head = match bench.trade.is_current() {
        true => say!("results-rounds-name", name = choice.name()),
        false => say!("results-preparing").into(),
    };
    let at = pos2(rect.left(), rect.top() + 10.0);
    let font = type_faces::semibold(type_faces::BODY);
    ui.painter().text(at, Align2::LEFT_CENTER, head, font, t.ink);
    let line = Stroke::new(1.0, t.edge);
    let across = rect.left()..=rect.right() - 10.0;
    ui.painter().hline(across, rect.top() + HEADING - 2.0, line);
    let list = rect.with_min_y(rect.top() + HEADING);
    let mut child = ui.new_child(UiBuilder::new().max_rect(list).id_salt("rounds"));
    scroll_style(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        for line in &choice.answer.lines {
            words(ui, t, line);
        }
    });
}

/// One line: its rounds in soft ink, what to work, the count.
fn words(ui: &mut Ui, t: &Tokens, line: &plumpline_core::wording::WrittenLine) {
    let numbers = if line.first == line.last {
        line.first.to_string()
    } else {
        format!("{}–{}", line.first, line.last)
    };
    let small = || type_faces::regular(type_faces::SMALL);
    let mut job = egui::text::LayoutJob::default();
    job.wrap.max_width = ui.available_width() - 6.0;
    let format = |font, ink| egui::TextFormat::simple(font, ink);
    job.append(&format!("{numbers}  "), 0.0, format(small(), t.soft_ink));
    job.append(&line.text, 0.0, format(small(), t.ink));
    let count = format!("  [{}]", line.count);
    job.append(&count, 0.0, format(type_faces::semibold(type_faces::SMALL), t.ink));
    let galley = ui.painter().layout_job(job);
    let size = vec2(ui.available_width(), galley.size().y + 5.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| {
        let text = format!("{}: {} [{}]", line.heading, line.text, line.count);
        WidgetInfo::labeled(Role::Label, true, text)
    });
    ui.painter().galley(rect.min + vec2(0.0, 2.0), galley, t.ink);
}
