//! From every round of the body a line to its bar: the proof that both show one thing.

use egui::{Painter, Pos2, Shape, Stroke, pos2};
use plumpline_core::Plan;

use super::ground::Ground;
use crate::bench::Bench;
use crate::kit::paint;
use crate::stages::shape::bars;

/// Where the side of a round is, half-way up it: the right one (`way` 1) or the left (−1).
fn side(plan: &Plan, ground: &Ground, round: u32, way: f32) -> Option<Pos2> {
    let k = round as usize;
    let (a, b) = (plan.forecast.get(k.checked_sub(1)?)?, plan.forecast.get(k)?);
    let x = ground.axis_x + way * 0.5 * (a.r + b.r) as f32 * ground.scale();
    Some(pos2(x, ground.y(0.5 * (a.z + b.z) + plan.shift_mm)))
}

/// Level off the body, slanting across the gap, level into the bar.
fn path(
    plan: &Plan,
    ground: &Ground,
    bars: &bars::BarsHand,
    round: u32,
    mirrored: bool,
) -> Option<Vec<Pos2>> {
    let way = if mirrored { -1.0 } else { 1.0 };
    let from = side(plan, ground, round, way)?;
    // Zoomed in, rounds may lie off the board; those in sight end at its edge.
    let board = ground.rect;
    if !board.y_range().contains(from.y) {
        return None;
    }
    let from = pos2(from.x.clamp(board.left(), board.right()), from.y);
    let y = bars.rows.y(round);
    let (bend, to_x) = if mirrored {
        ((board.left() + 2.0).min(from.x), bars.rows.right() - 2.0)
    } else {
        ((board.right() - 2.0).max(from.x), bars.rows.left() + 2.0)
    };
    Some(vec![from, pos2(bend, from.y), pos2(to_x - 8.0 * way, y), pos2(to_x, y)])
}

/// Draws the lines of all rounds in sight.
pub(super) fn fan(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    bars: &bars::BarsHand,
) {
    let stroke = Stroke::new(0.9, bench.t.link);
    let mut drawn = f32::NEG_INFINITY;
    for round in bars.rows.in_sight() {
        // Where rows lie too close to tell apart, some lines say as much as all.
        if !bars.rows.sees(round) || bars.rows.y(round) - drawn < 4.0 {
            continue;
        }
        if let Some(path) = path(plan, ground, bars, round, bench.view.prefs.mirrored) {
            painter.add(Shape::line(path, stroke));
            drawn = bars.rows.y(round);
        }
    }
}

/// Draws the thread of the selected round.
pub(super) fn thread(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    bars: &bars::BarsHand,
) {
    let Some(round) = bench.view.current_round() else { return };
    if !bars.rows.sees(round) {
        return;
    }
    if let Some(path) = path(plan, ground, bars, round, bench.view.prefs.mirrored) {
        paint::thread(painter, path, bench.t);
    }
}
