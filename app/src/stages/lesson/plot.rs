//! The angle missing at each round, as it was counted and as the cloth lies.

use egui::{Align2, Rect, Role, Sense, Stroke, Ui, UiBuilder, WidgetInfo};
use egui::{pos2, vec2};
use egui_plot::{AxisHints, Line, Plot, Points, VLine};

use super::here::{Bent, LessonBench};
use super::picture::{select, step};
use crate::bench::action::Actions;
use crate::kit::tokens::Tokens;
use crate::kit::{paint, plot, type_faces};
use crate::view::ids;
use crate::view::lesson::LessonView;

/// Height of the legend.
const LEGEND: f32 = 34.0;

/// Draws the plot; a click selects the round it falls on.
pub(super) fn show(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    bent: &Bent,
    area: Rect,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let counted: Vec<[f64; 2]> =
        points(bent.sum.edges.iter().map(|edge| edge.missing_rad.to_degrees()));
    // The last round's edge belongs to the end.
    let lies: Vec<[f64; 2]> = match (&bent.forecast, here.bench.lesson.state()) {
        (_, Some(state)) => {
            let rings = &state.rings[1..];
            points(rings.iter().map(|ring| ring.missing_rad.to_degrees()))
                .into_iter()
                .take(counted.len().saturating_sub(1))
                .collect()
        }
        (Some(forecast), None) => {
            points(forecast.edges.iter().map(|edge| edge.missing_rad.to_degrees()))
        }
        (None, None) => Vec::new(),
    };
    let counted = counted[..counted.len().saturating_sub(1)].to_vec();
    let ends = counted.iter().chain(&lies).map(|p| p[1]);
    let (low, high) = ends.fold((0.0_f64, 0.0_f64), |(l, h), v| (l.min(v), h.max(v)));
    let over = (0.12 * (high - low)).max(5.0);
    let last = bent.gains.len() as f64;
    let field = area.with_max_y(area.bottom() - LEGEND);
    let mut child = ui.new_child(UiBuilder::new().max_rect(field).id_salt("angles"));
    let bounds = ([0.5, last + 0.5], [low - over, high + over]);
    let answer = angle_plot(t, field, bounds, here.tells_numbers()).show(&mut child, |plot| {
        if let Some(round) = here.round() {
            let line = VLine::new("", f64::from(round)).color(t.highlight);
            plot.vline(line.stroke(Stroke::new(6.0, t.highlight)).allow_hover(false));
        }
        let lying = Line::new("", lies.clone()).stroke(Stroke::new(2.0, t.highlight_edge));
        plot.line(lying.allow_hover(false));
        plot.points(Points::new("", counted).radius(3.0).color(t.outline).allow_hover(false));
    });
    answer.response.widget_info(|| {
        WidgetInfo::labeled(
            Role::Canvas,
            true,
            say!("lesson-angle-missing-at-each-round-degrees"),
        )
    });
    legend(ui, here, area);
    if answer.response.has_focus() {
        ids::keep_arrows(ui, &answer.response);
        paint::focus_ring(ui.painter(), area.expand(2.0), 6.0, t);
        step(ui, here, bent, next, actions);
    }
    if let Some(at) =
        answer.response.interact_pointer_pos().filter(|_| answer.response.clicked())
    {
        let round = answer.transform.value_from_position(at).x.round();
        let hit = (1.0..=last).contains(&round).then_some(round as u32);
        select(here, hit, next, actions);
    }
}

fn points(values: impl Iterator<Item = f64>) -> Vec<[f64; 2]> {
    values.enumerate().map(|(i, value)| [i as f64 + 1.0, value]).collect()
}

fn legend(ui: &Ui, here: &LessonBench<'_>, area: Rect) {
    let t = here.bench.t;
    let small = type_faces::regular(type_faces::SMALL);
    let painter = ui.painter();
    let lies = if here.bench.lesson.state().is_some() {
        say!("lesson-as-the-fabric-lies")
    } else {
        say!("lesson-forecast")
    };
    let mut at = pos2(area.left() + 8.0, area.bottom() - 16.0);
    painter.circle_filled(at, 3.0, t.outline);
    at.x += 8.0;
    let words = say!("lesson-as-counted");
    at.x = painter.text(at, Align2::LEFT_CENTER, words, small.clone(), t.ink).right() + 16.0;
    let pen = Stroke::new(2.0, t.highlight_edge);
    painter.line_segment([at, at + vec2(16.0, 0.0)], pen);
    at.x += 22.0;
    painter.text(at, Align2::LEFT_CENTER, lies, small, t.ink);
}

fn angle_plot<'a>(
    t: &'static Tokens,
    rect: Rect,
    ([left, right], [low, high]): ([f64; 2], [f64; 2]),
    numbers: bool,
) -> Plot<'a> {
    let axis = |hints, label| plot::axis(hints, label, t);
    let whole = move |mark: egui_plot::GridMark, _: &std::ops::RangeInclusive<f64>| {
        let is_whole = (mark.value - mark.value.round()).abs() < 1e-6;
        if is_whole && mark.value >= 1.0 { format!("{:.0}", mark.value) } else { String::new() }
    };
    let degrees = move |mark: egui_plot::GridMark, _: &std::ops::RangeInclusive<f64>| {
        if numbers { format!("{:.0}°", mark.value).replace('-', "−") } else { String::new() }
    };
    plot::fixed("angles missing", rect, [left, right], [low, high], t)
        .sense(Sense::click())
        .grid_spacing(egui::Rangef::new(18.0, 300.0))
        .custom_x_axes(vec![axis(AxisHints::new_x(), say!("lesson-round")).formatter(whole)])
        .custom_y_axes(vec![
            axis(AxisHints::new_y(), say!("lesson-missing")).formatter(degrees),
        ])
}
