//! The trade-off as a plot: how far each answer is likely to be off the outline against how
//! many different lines its pattern has.

use egui::{Rect, Role, Sense, Stroke, Ui, UiBuilder, WidgetInfo};
use egui_plot::{AxisHints, GridInput, GridMark, Line, MarkerShape, Plot, PlotPoint, Points};

use super::simplicity::Pick;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::words::decimal;
use crate::kit::{Tokens, plot};
use crate::view::look::Look;

/// How near a point the hand has to be, points.
const NEAR: f32 = 14.0;

/// Where an answer stands: different lines, stitches it is likely to be off the outline.
fn place(choice: &Pick<'_>) -> [f64; 2] {
    [choice.answer.distinct_lines as f64, choice.answer.likely_rms_stitches]
}

/// Draws the plot; a click on a point takes its answer.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    choices: &[Pick<'_>],
    actions: &mut Actions,
) {
    let t = bench.t;
    let places: Vec<[f64; 2]> = choices.iter().map(place).collect();
    let here = choices.iter().find(|c| c.is_on).map(place);
    let reach = PlotReach::of(places.iter().copied());
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("trade-off"));
    let shown = bench.view.answer.filter(|&i| i < choices.len());
    let answer = trade_plot(t, rect, &reach).show(&mut child, |plot| {
        let points = |list: Vec<[f64; 2]>| Points::new("", list).allow_hover(false);
        // In order, so that the way from faithful to simple can be followed; span by span,
        // since a line that turns back on itself would be drawn as a wedge. The default, which
        // stands first, may lie beside it.
        for pair in places[1..].windows(2) {
            let span = Line::new("", pair.to_vec()).stroke(Stroke::new(1.3, t.control_edge));
            plot.line(span.allow_hover(false));
        }
        plot.points(points(places.clone()).radius(3.6).color(t.outline));
        if let Some(i) = shown {
            let ring = points(vec![places[i]]).radius(9.0).color(t.outline).filled(false);
            plot.points(ring.shape(MarkerShape::Circle));
        }
        if let Some(here) = here {
            plot.points(points(vec![here]).radius(7.0).color(t.highlight_edge));
            plot.points(points(vec![here]).radius(5.2).color(t.highlight));
        }
    });
    answer.response.widget_info(|| {
        WidgetInfo::labeled(
            Role::Canvas,
            true,
            say!("results-stitches-likely-off-the-outline-by"),
        )
    });
    let on_screen =
        |i: usize| answer.transform.position_from_point(&PlotPoint::from(places[i]));
    let Some(pos) = answer.response.hover_pos() else { return };
    let nearest = (0..choices.len())
        .min_by(|&a, &b| on_screen(a).distance(pos).total_cmp(&on_screen(b).distance(pos)))
        .filter(|&i| on_screen(i).distance(pos) <= NEAR);
    if let Some(i) = nearest {
        ui.set_cursor_icon(egui::CursorIcon::PointingHand);
        if bench.view.answer != Some(i) {
            actions.look(Look::Answer(Some(i)));
        }
        if answer.response.clicked() && !choices[i].is_on {
            choices[i].pick(bench, actions);
        }
    }
}

/// How far the axes reach, a little beyond the points.
struct PlotReach {
    x: [f64; 2],
    y: [f64; 2],
}

impl PlotReach {
    fn of(places: impl Iterator<Item = [f64; 2]> + Clone) -> Self {
        let ends = |axis: usize| {
            let values = places.clone().map(|p| p[axis]);
            values.fold((f64::INFINITY, 0.0_f64), |(low, high), v| (low.min(v), high.max(v)))
        };
        let ((left, right), (bottom, top)) = (ends(0), ends(1));
        let side = (0.08 * (right - left)).max(1.0);
        // From nothing, unless all points would then crowd at the top.
        let over = (0.25 * (top - bottom)).max(0.02);
        let floor = if bottom > 0.6 * top { (bottom - over).max(0.0) } else { 0.0 };
        Self { x: [left - side, right + side], y: [floor, top + over] }
    }
}

/// Marks `step` apart.
fn marks(input: GridInput, step: f64) -> Vec<GridMark> {
    let (low, high) = input.bounds;
    let first = (low / step).ceil() as i64;
    let last = (high / step).floor() as i64;
    (first..=last).map(|i| GridMark { value: i as f64 * step, step_size: step }).collect()
}

/// The finest of these steps that gives no more than `most` marks over a length.
fn step(length: f64, most: f64, steps: &[f64]) -> f64 {
    steps.iter().copied().find(|s| length / s <= most).unwrap_or(length)
}

fn trade_plot<'a>(t: &'static Tokens, rect: Rect, reach: &PlotReach) -> Plot<'a> {
    let whole = |mark: GridMark, _: &std::ops::RangeInclusive<f64>| {
        if mark.value >= 0.0 { format!("{:.0}", mark.value) } else { String::new() }
    };
    let parts = |mark: GridMark, _: &std::ops::RangeInclusive<f64>| {
        let text = decimal(mark.value, 2);
        text.strip_suffix('0').unwrap_or(&text).to_owned()
    };
    let axis =
        |hints, label| plot::axis(hints, label, t).label_spacing(egui::Rangef::new(8.0, 9.0));
    let x = axis(AxisHints::new_x(), say!("results-different-lines")).formatter(whole);
    let y = axis(AxisHints::new_y(), say!("results-likely-st-off"))
        .formatter(parts)
        .min_thickness(34.0);
    let across = step(reach.x[1] - reach.x[0], 7.0, &[1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0]);
    let steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 50.0];
    let along = step(reach.y[1] - reach.y[0], 4.5, &steps);
    plot::fixed("trade-off", rect, reach.x, reach.y, t)
        .x_grid_spacer(move |input| marks(input, across))
        .y_grid_spacer(move |input| marks(input, along))
        .sense(Sense::CLICK)
        .grid_spacing(egui::Rangef::new(4.0, 300.0))
        .custom_x_axes(vec![x])
        .custom_y_axes(vec![y])
}
