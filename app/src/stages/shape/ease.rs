//! Ease: what each of its steps costs in fit and saves in counting, and its rounds.

use egui::{Align2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder};
use egui::{WidgetInfo, pos2, vec2};
use plumpline_core::ease::{EaseStep, STEPS};
use plumpline_core::piece::ease_stop;

use super::ease_plot;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::form::short;
use crate::kit::{Tokens, controls, paint, type_faces};
use crate::view::look::Look;

/// Height of a step's row.
const ROW: f32 = 24.0;
/// Height of the headings over steps and rounds.
const HEADING: f32 = 30.0;
/// Width of the list of steps.
const LIST: f32 = 152.0;

/// Draws the trade-off, the steps and the rounds of one of them.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let place = ui.max_rect();
    let steps = bench.trade.steps();
    if steps.is_empty() {
        waiting(ui, bench, place);
        return;
    }
    let plot_height = (0.36 * place.height()).clamp(104.0, 170.0);
    let plot = place.with_max_y(place.top() + plot_height);
    let under = in_use(bench, steps);
    ease_plot::show(ui, bench, plot.with_max_x(place.right() - 10.0), steps, actions);
    let below = place.with_min_y(plot.bottom() + 2.0);
    let list = below.with_max_x(below.left() + LIST);
    table(ui, bench, list, steps, actions);
    let rounds = below.with_min_x(list.right() + 10.0);
    let shown = bench.view.step.filter(|&i| i < steps.len()).unwrap_or(under);
    rounds_of(ui, bench, rounds, &steps[shown]);
}

/// The step in use.
fn in_use(bench: &Bench<'_>, steps: &[EaseStep]) -> usize {
    ease_stop(bench.document.piece().ease).min(steps.len() - 1)
}

/// What stands there until there are steps.
fn waiting(ui: &Ui, bench: &Bench<'_>, place: Rect) {
    let t = bench.t;
    let words = match (bench.trade.error(), bench.trade.at_step()) {
        (Some(error), _) => format!("No steps while the outline cannot be worked: {error}."),
        (None, Some(step)) => format!("Working out step {step} of {STEPS}"),
        (None, None) => "The steps are worked out when the hand is still".into(),
    };
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words, font, t.soft_ink, place.width() - 16.0);
    ui.painter().galley(place.left_top() + vec2(0.0, 8.0), galley, t.soft_ink);
}

/// Left ends of nothing, right ends of the four columns.
fn columns(rect: Rect) -> [f32; 4] {
    [26.0, 66.0, 108.0, LIST - 10.0].map(|x| rect.left() + x)
}

/// The steps: ease, fit, share of simple rounds, lines that differ.
fn table(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    steps: &[EaseStep],
    actions: &mut Actions,
) {
    let t = bench.t;
    let ease = bench.document.piece().ease;
    let heads = [("ease", ""), ("off", "st"), ("simple", "%"), ("lines", "")];
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
    let mut child = ui.new_child(UiBuilder::new().max_rect(list).id_salt("steps"));
    scroll_style(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        for (i, step) in steps.iter().enumerate() {
            let response = row(ui, bench, i, step, i == ease_stop(ease));
            if (response.hovered() || response.gained_focus()) && bench.view.step != Some(i) {
                actions.look(Look::Step(Some(i)));
            }
            if response.clicked() {
                actions.edit(Edit::Ease(step.ease));
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

fn row(
    ui: &mut Ui,
    bench: &Bench<'_>,
    index: usize,
    step: &EaseStep,
    on: bool,
) -> egui::Response {
    let t = bench.t;
    let size = vec2(LIST - 8.0, ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| {
        WidgetInfo::selected(Role::RadioButton, true, on, format!("Ease {}", short(step.ease)))
    });
    let shown = bench.view.step == Some(index);
    if on {
        let edge = Stroke::new(1.4, t.highlight_edge);
        ui.painter().rect(rect, 5.0, t.wash, edge, StrokeKind::Inside);
    } else if shown || response.hovered() {
        ui.painter().rect_filled(rect, 5.0, t.well);
    }
    let fit = step.fit.map_or("–".to_owned(), |f| format!("{:.2}", f.rms_stitches));
    let values = [
        short(step.ease),
        fit,
        format!("{:.0}", 100.0 * step.simple_share),
        step.distinct_lines.to_string(),
    ];
    let ink = if bench.trade.is_current() { t.ink } else { t.soft_ink };
    for (i, (x, value)) in columns(rect).into_iter().zip(values).enumerate() {
        let face = if i == 0 || on { type_faces::semibold } else { type_faces::regular };
        let at = pos2(x, rect.center().y);
        ui.painter().text(at, Align2::RIGHT_CENTER, value, face(type_faces::BODY), ink);
    }
    if response.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(3.0), 5.0, t);
    }
    response.on_hover_text("Work with this ease")
}

/// The rounds of a step, to scroll through.
fn rounds_of(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, step: &EaseStep) {
    let t = bench.t;
    let head = match bench.trade.at_step() {
        Some(at) if !bench.trade.is_current() => format!("Working out {at} of {STEPS}"),
        _ => format!("Rounds at ease {}", short(step.ease)),
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
        for line in &step.lines {
            words(ui, t, line);
        }
    });
}

/// One line: its rounds in soft ink, what to work, the count.
fn words(ui: &mut Ui, t: &Tokens, line: &plumpline_core::wording::Line) {
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
