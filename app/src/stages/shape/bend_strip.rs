//! The bend strip: stitches gained or lost per round against the line that lies flat, and
//! how sharply the side turns.

use egui::{
    Align2, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo,
};
use egui::{pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::bend::{Bend, BendWord, FLAT_BAND};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::icons::{self, Way};
use crate::kit::tokens::{PAD, mix};
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{paint, type_faces};
use crate::view::ids;
use crate::view::look::Look;

/// Width of the heading and legend.
const LEGEND: f32 = 158.0;
/// Width of the words beside the scale.
const WORDS: f32 = 62.0;

/// A stitch is no higher than this, points, unless the strip is.
const MOST: f32 = 8.0;

/// Where the columns stand.
pub(super) struct BendColumns {
    pub(super) area: Rect,
    pub(super) pitch: f32,
    pub(super) zero: f32,
    unit: f32,
}

impl BendColumns {
    fn new(panel: Rect, plan: &Plan) -> Self {
        let area = Rect::from_min_max(
            pos2(panel.left() + LEGEND + WORDS + 20.0, panel.top() + 18.0),
            pos2(panel.right() - PAD, panel.bottom() - 22.0),
        );
        let most = plan.bends.iter().map(|b| b.gained).max().unwrap_or(0).max(1);
        let least = plan.bends.iter().map(|b| b.gained).min().unwrap_or(0).min(-2);
        let up = f64::from(most).max(plan.flat_increase + 1.0) as f32;
        let ruffles = plan.bends.iter().any(|b| b.word == BendWord::Ruffle);
        let area = if ruffles { area.with_min_y(area.top() + 8.0) } else { area };
        let unit = (area.height() / (up + least.unsigned_abs() as f32))
            .min(MOST.max(0.06 * area.height()));
        Self {
            area,
            pitch: area.width() / plan.bends.len().max(1) as f32,
            zero: area.top() + up * unit,
            unit,
        }
    }

    /// Points a stitch.
    pub(super) fn unit(&self) -> f32 {
        self.unit
    }

    fn x(&self, index: usize) -> f32 {
        self.area.left() + (index as f32 + 0.5) * self.pitch
    }

    pub(super) fn bar(&self, index: usize, gained: i32) -> Rect {
        let half = (0.34 * self.pitch).clamp(0.5, 9.0_f32.max(0.06 * self.area.height()));
        let y = self.zero - gained as f32 * self.unit;
        Rect::from_x_y_ranges(
            self.x(index) - half..=self.x(index) + half,
            y.min(self.zero)..=y.max(self.zero),
        )
    }
}

/// The hand on the strip; returns the round pointed at.
pub(crate) fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    panel: Rect,
    actions: &mut Actions,
) -> Option<u32> {
    let plan = bench.plan?;
    let columns = BendColumns::new(panel, plan);
    let field = Rect::from_min_max(pos2(columns.area.left(), panel.top()), panel.max);
    let response = ui.interact(field, ids::bend_id(), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("strip-bend-strip")));
    ids::keep_rounds(ui, &response);
    if response.has_focus() && bench.view.selected.is_none() {
        paint::focus_ring(ui.painter(), field.shrink(4.0), 6.0, bench.t);
    }
    let pos = response.hover_pos()?;
    let index = ((pos.x - columns.area.left()) / columns.pitch).floor().max(0.0) as usize;
    let round = (index < plan.bends.len()).then_some(index as u32 + 1)?;
    if response.clicked() {
        response.request_focus();
        let again = bench.view.selected == Some(round);
        actions.look(Look::Select((!again).then_some(round)));
    }
    Some(round)
}

/// Draws the strip.
pub(crate) fn paint(painter: &Painter, bench: &Bench<'_>, panel: Rect) {
    let painter = painter.with_clip_rect(panel);
    legend(&painter, bench, panel);
    let Some(plan) = bench.plan else { return };
    let columns = BendColumns::new(panel, plan);
    flat_band(&painter, bench, plan, &columns);
    if let Some(round) = bench.view.washed() {
        wash(&painter, bench, panel, &columns, round, false);
    }
    if let Some(round) = bench.view.current_round() {
        wash(&painter, bench, panel, &columns, round, true);
    }
    scale(&painter, bench, plan, &columns);
    for (i, bend) in plan.bends.iter().enumerate() {
        column(&painter, bench, plan, &columns, i, bend);
    }
    turn(&painter, bench, plan, &columns);
    if bench.view.present.hides() {
        return;
    }
    numbers(&painter, bench, panel, plan, &columns);
    if let Some(round) = bench.view.current_round() {
        current_round(&painter, bench, panel, plan, &columns, round);
    }
}

fn legend(painter: &Painter, bench: &Bench<'_>, panel: Rect) {
    let t = bench.t;
    let left = panel.left() + PAD;
    paint::title(painter, pos2(left, panel.top() + 20.0), say!("strip-bend-strip"), "", t);
    let small = || type_faces::regular(type_faces::SMALL);
    let mut y = panel.top() + 39.0;
    let say = |x: f32, y: f32, words: &str| {
        painter.text(pos2(x, y), Align2::LEFT_CENTER, words, small(), t.soft_ink).right()
    };
    say(left, y, say!("strip-stitches-per-round"));
    y += 22.0;
    icons::notch(painter, pos2(left + 5.0, y + 3.0), Way::Up, vec2(8.0, 7.0), t.increase);
    let x = say(left + 14.0, y, say!("strip-added"));
    icons::notch(painter, pos2(x + 14.0, y - 3.0), Way::Down, vec2(8.0, 7.0), t.decrease);
    say(x + 23.0, y, say!("strip-decreased"));
    y += 20.0;
    if y + 8.0 < panel.bottom() {
        let wave = |i: usize| pos2(left + 2.2 * i as f32, y - 2.5 * (0.7 * i as f32).sin());
        painter.add(Shape::line((0..10).map(wave).collect(), Stroke::new(1.6, t.outline)));
        say(left + 28.0, y, say!("strip-change-of-slope"));
    }
    y += 20.0;
    if y + 8.0 < panel.bottom()
        && let Some(plan) = bench.plan
    {
        let dash = Stroke::new(1.4, t.soft_ink);
        let ends = [pos2(left, y), pos2(left + 20.0, y)];
        painter.extend(Shape::dashed_line(&ends, dash, 4.0, 3.0));
        let words = match bench.view.present.hides() {
            true => say!("strip-lies-flat").to_owned(),
            false => {
                let stitches = decimal(plan.flat_increase, 1);
                say!("strip-lies-flat-stitches", stitches = stitches)
            }
        };
        say(left + 28.0, y, &words);
    }
    let x = panel.left() + LEGEND + 8.0;
    painter.vline(x, panel.y_range().shrink(14.0), Stroke::new(1.0, t.edge));
}

/// The band in which a round counts as lying flat.
fn flat_band(painter: &Painter, bench: &Bench<'_>, plan: &Plan, columns: &BendColumns) {
    let flat = columns.zero - plan.flat_increase as f32 * columns.unit;
    let half = FLAT_BAND as f32 * columns.unit;
    let band = Rect::from_x_y_ranges(
        columns.area.left() - 8.0..=columns.area.right(),
        flat - half..=flat + half,
    );
    painter.rect_filled(band, 3.0, mix(bench.t.panel, bench.t.edge, 0.35));
}

fn scale(painter: &Painter, bench: &Bench<'_>, plan: &Plan, columns: &BendColumns) {
    let t = bench.t;
    let span = columns.area.left() - 8.0..=columns.area.right();
    let flat = columns.zero - plan.flat_increase as f32 * columns.unit;
    let dash = Stroke::new(1.3, t.soft_ink);
    let ends = [pos2(*span.start(), flat), pos2(*span.end(), flat)];
    painter.extend(Shape::dashed_line(&ends, dash, 6.0, 4.0));
    painter.hline(span, columns.zero, Stroke::new(1.3, t.control_edge));
    let font = || type_faces::drafting(type_faces::SMALL + 1.0);
    let right = columns.area.left() - 14.0;
    let top = (flat - 13.0).max(columns.area.top() - 8.0);
    let ruffle = terms::bend(BendWord::Ruffle);
    let mut words = vec![(top, ruffle, t.soft_ink), (flat, terms::bend(BendWord::Flat), t.ink)];
    let middle = 0.5 * (flat + columns.zero);
    if columns.zero - flat > 34.0 {
        words.push((middle, terms::bend(BendWord::Cup), t.soft_ink));
    }
    words.push((columns.zero + 14.0, terms::bend(BendWord::DrawIn), t.soft_ink));
    for (y, word, ink) in words {
        painter.text(pos2(right, y), Align2::RIGHT_CENTER, word, font(), ink);
    }
}

/// One round: a block for every stitch, or one solid bar where blocks would be too thin.
fn column(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    columns: &BendColumns,
    i: usize,
    bend: &Bend,
) {
    let t = bench.t;
    let bar = columns.bar(i, bend.gained);
    let colour = if bend.gained > 0 { t.increase } else { t.decrease };
    if bend.gained == 0 {
        let dash = Rect::from_center_size(bar.center(), vec2(bar.width(), 2.5));
        painter.rect_filled(dash, 1.0, t.control_edge);
        return;
    }
    painter.rect_filled(bar, 1.0, colour);
    if columns.unit >= 3.5 {
        for k in 1..bend.gained.unsigned_abs() {
            let y = bar.top() + k as f32 * columns.unit;
            painter.hline(bar.x_range(), y, Stroke::new(1.0, t.panel));
        }
    }
    if bend.word == BendWord::Ruffle {
        let wave: Vec<Pos2> = (0..=12)
            .map(|k| {
                let share = k as f32 / 12.0;
                let x = egui::lerp(bar.left() - 2.0..=bar.right() + 2.0, share);
                pos2(x, bar.top() - 3.0 - 2.0 * (share * 12.6).sin())
            })
            .collect();
        painter.add(Shape::line(wave, Stroke::new(1.5, colour)));
        // Named once where several stand together.
        let near = (60.0 / columns.pitch).ceil() as usize;
        let before = &plan.bends[i.saturating_sub(near)..i];
        let first = before.iter().all(|b| b.word != BendWord::Ruffle);
        if first {
            let font = type_faces::drafting(type_faces::SMALL + 1.0);
            let at = pos2(bar.center().x, bar.top() - 12.0);
            painter.text(
                at,
                Align2::CENTER_CENTER,
                terms::bend(BendWord::Ruffle),
                font,
                colour,
            );
        }
    }
}

/// The turn of the side, its sharpest place named.
fn turn(painter: &Painter, bench: &Bench<'_>, plan: &Plan, columns: &BendColumns) {
    let t = bench.t;
    let turns: Vec<f64> = plan.bends.iter().map(|b| b.turn_deg).collect();
    let Some((_, inner)) = turns.split_last() else { return };
    let most = inner.iter().map(|d| d.abs()).fold(1.0, f64::max);
    let room = (columns.zero - columns.area.top()).max(10.0) * 0.82;
    let at = |i: usize| {
        let y = columns.zero - room * (inner[i] / most) as f32;
        pos2(columns.x(i), y.clamp(columns.area.top() - 6.0, columns.area.bottom()))
    };
    let line: Vec<Pos2> = (0..inner.len()).map(at).collect();
    if line.len() < 2 {
        return;
    }
    painter.add(Shape::line(line.clone(), Stroke::new(3.4, t.panel)));
    painter.add(Shape::line(line.clone(), Stroke::new(1.6, t.outline)));
    let sharpest = (0..inner.len()).max_by(|&a, &b| inner[a].abs().total_cmp(&inner[b].abs()));
    if let Some(i) = sharpest.filter(|_| !bench.view.present.hides()) {
        let words = say!(
            "strip-sharpest-change-of-slope-degrees-in",
            degrees = format!("{:.0}", inner[i].abs()),
            round = i + 1
        );
        super::bend_label::paint(painter, t, plan, columns, &line, i, words);
    }
}

fn numbers(
    painter: &Painter,
    bench: &Bench<'_>,
    panel: Rect,
    plan: &Plan,
    columns: &BendColumns,
) {
    let count = plan.bends.len();
    let step = [1, 5, 10, 20, 50, 100, 200]
        .into_iter()
        .find(|&s| s as f32 * columns.pitch >= 30.0)
        .unwrap_or(500);
    let y = panel.bottom() - 11.0;
    let small = || type_faces::regular(type_faces::SMALL);
    for i in 0..count {
        let round = i + 1;
        // The last round is named unless its neighbour is too near.
        let last = round == count && (count % step) as f32 * columns.pitch > 22.0;
        if round == 1 || round.is_multiple_of(step) || last {
            let at = pos2(columns.x(i), y);
            painter.text(at, Align2::CENTER_CENTER, round, small(), bench.t.soft_ink);
        } else if columns.pitch >= 8.0 {
            let tick = Stroke::new(1.0, bench.t.edge);
            painter.vline(columns.x(i), y - 2.0..=y + 2.0, tick);
        }
    }
}

fn strip_of(panel: Rect, columns: &BendColumns, round: u32) -> Rect {
    let x = columns.x(round as usize - 1);
    let half = (0.5 * columns.pitch).max(11.0);
    Rect::from_x_y_ranges(x - half..=x + half, panel.top() + 4.0..=panel.bottom() - 3.0)
}

fn wash(
    painter: &Painter,
    bench: &Bench<'_>,
    panel: Rect,
    columns: &BendColumns,
    round: u32,
    edged: bool,
) {
    let strip = strip_of(panel, columns, round);
    let edge = if edged { Stroke::new(1.4, bench.t.highlight_edge) } else { Stroke::NONE };
    painter.rect(strip, 5.0, bench.t.wash, edge, StrokeKind::Inside);
}

fn current_round(
    painter: &Painter,
    bench: &Bench<'_>,
    panel: Rect,
    plan: &Plan,
    columns: &BendColumns,
    round: u32,
) {
    let t = bench.t;
    let Some(bend) = plan.bends.get(round as usize - 1) else { return };
    let strip = strip_of(panel, columns, round);
    let pill = Rect::from_min_max(pos2(strip.left(), strip.bottom() - 17.0), strip.max);
    painter.rect(
        pill,
        5.0,
        t.highlight,
        Stroke::new(1.4, t.highlight_edge),
        StrokeKind::Inside,
    );
    let bold = || type_faces::bold(type_faces::SMALL);
    painter.text(pill.center(), Align2::CENTER_CENTER, round, bold(), t.on_highlight);
    let words = if bend.gained > 0 {
        format!("+{}", bend.gained)
    } else {
        bend.gained.to_string().replace('-', "−")
    };
    let bar = columns.bar(round as usize - 1, bend.gained);
    let y = match bend.gained {
        // Over a round that ruffles stands its word, so its number stands in the bar.
        ..=0 => bar.bottom() + 9.0,
        _ if bend.word == BendWord::Ruffle => bar.top() + 9.0,
        _ => bar.top() - 8.0,
    };
    let y = y.clamp(strip.top() + 8.0, pill.top() - 8.0);
    let galley = painter.layout_no_wrap(words, bold(), t.ink);
    let rect = Align2::CENTER_CENTER.anchor_size(pos2(strip.center().x, y), galley.size());
    painter.rect_filled(rect, 2.0, t.wash);
    painter.galley(rect.min, galley, t.ink);
}
