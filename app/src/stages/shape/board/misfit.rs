//! Where wanted and forecast part by more than half a stitch: hatched, with one callout.

use std::ops::RangeInclusive;

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::outline::Rz;
use plumpline_core::warning::{Misfit, Warning, WarningKind};

use super::ground::Ground;
use super::zones::{self, ZoneKind};
use crate::bench::Bench;
use crate::kit::{icons, paint, type_faces};
use crate::view::board::Drag;

/// The place of the outline nearest to a forecast node (already shifted onto it).
fn foot(plan: &Plan, node: Rz) -> Rz {
    plan.outline
        .iter()
        .copied()
        .min_by(|a, b| a.distance(node).total_cmp(&b.distance(node)))
        .unwrap_or(node)
}

/// Nodes of the forecast, laid on the outline.
fn stretch(plan: &Plan, nodes: RangeInclusive<usize>) -> Vec<Rz> {
    nodes.map(|k| Rz::new(plan.forecast[k].r, plan.forecast[k].z + plan.shift_mm)).collect()
}

/// Hatches the gaps, on both sides of the axis.
pub(super) fn hatch(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let line = Stroke::new(1.0, bench.t.warning);
    let last = plan.rounds.len();
    for misfit in &plan.misfits {
        // One more node at either end, so that the hatch runs out.
        let nodes = misfit.from.saturating_sub(1)..=(misfit.to + 1).min(last);
        hatch_nodes(painter, plan, ground, nodes.clone(), 6.0, line);
        for side in [1.0, -1.0] {
            let rim = stretch(plan, nodes.clone()).into_iter();
            let rim: Vec<Pos2> = rim.map(|n| on_side(ground, n, side)).collect();
            painter.add(Shape::line(rim, Stroke::new(1.2, bench.t.warning)));
        }
    }
}

/// Hatches between forecast and outline from one node to another, both sides.
pub(super) fn hatch_nodes(
    painter: &Painter,
    plan: &Plan,
    ground: &Ground,
    nodes: RangeInclusive<usize>,
    spacing: f32,
    line: Stroke,
) {
    let nodes = stretch(plan, nodes);
    let feet: Vec<Rz> = nodes.iter().map(|&n| foot(plan, n)).collect();
    for side in [1.0, -1.0] {
        let at = |p: Rz| on_side(ground, p, side);
        for (pair, under) in nodes.windows(2).zip(feet.windows(2)) {
            let corners = [at(pair[0]), at(pair[1]), at(under[1]), at(under[0])];
            paint::hatch(painter, &corners, spacing, line);
        }
    }
}

/// Where a place falls right of the axis (`side` 1) or left of it (−1).
fn on_side(ground: &Ground, place: Rz, side: f32) -> Pos2 {
    let p = ground.at(place);
    pos2(ground.axis_x + side * (p.x - ground.axis_x), p.y)
}

/// The gap the callout names: the widest.
pub(super) fn worst(plan: &Plan) -> Option<&Misfit> {
    plan.misfits.iter().max_by(|a, b| a.off_mm.abs().total_cmp(&b.off_mm.abs()))
}

/// What helps, in a few words; the notes have it at length.
fn remedy(plan: &Plan, misfit: &Misfit) -> &'static str {
    let rounds = misfit.rounds();
    let corner = |w: &Warning| w.kind == WarningKind::Corner && w.rounds == rounds;
    match (plan.warnings.iter().any(corner), zones::kind_at(plan, misfit)) {
        (true, _) => say!("board-pull-a-thread-sew-it-or-put-a-card-in"),
        (false, Some(ZoneKind::Wrinkles)) => say!("board-fabric-this-flat-wrinkles-a-rounder"),
        (false, Some(_)) => say!("board-put-a-card-in-or-make-the-side-steeper"),
        (false, None) if misfit.off_mm > 0.0 => {
            say!("board-round-the-outline-or-hold-it-there")
        }
        (false, None) => say!("board-ease-the-outline-or-pin-more-stitches"),
    }
}

/// Room of the switch between outline and body.
const SWITCH: egui::Vec2 = vec2(180.0, 34.0);

/// Widest the words of a callout may run before they turn to the next line.
const WORDS: f32 = 178.0;

/// What is wrong where it is worst, and what helps; returns the space it takes.
pub(super) fn callout(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
) -> Option<Rect> {
    let misfit = worst(plan)?;
    let t = bench.t;
    let what = capital(&misfit.sentence(plan.rounds.len()).text(bench.unit()));
    let [first, last] = misfit.rounds();
    let rounds = if first == last {
        say!("board-rnd", round = first)
    } else {
        say!("board-rnds", first = first, last = last)
    };
    let small = || type_faces::regular(type_faces::SMALL);
    let bold = painter.layout_no_wrap(what, type_faces::bold(type_faces::BODY), t.warning);
    let rounds = painter.layout_no_wrap(rounds, small(), t.ink);
    let helps = painter.layout(remedy(plan, misfit).into(), small(), t.ink, WORDS);
    let head = bold.size().x + 8.0 + rounds.size().x;
    let size = vec2(head.max(helps.size().x) + 50.0, helps.size().y + 29.0);
    let node = plan.forecast[misfit.worst];
    let target = ground.mirrored(Rz::new(node.r, node.z + plan.shift_mm));
    // Zoomed in, what it names may lie off the board.
    if !ground.rect.contains(target) {
        return None;
    }
    let rect = place(bench, plan, ground, size, target);
    let from = nearest_on(rect, target);
    painter.line_segment([from, target], Stroke::new(1.3, t.warning));
    painter.circle_filled(target, 2.4, t.warning);
    painter.rect(rect, 6.0, t.warn_wash, Stroke::new(1.3, t.warning), StrokeKind::Inside);
    icons::warning(painter, rect.left_center() + vec2(20.0, 0.0), 15.0, t.warning);
    let at = rect.left_top() + vec2(38.0, 4.0);
    let beside = at + vec2(bold.size().x + 8.0, 2.5);
    painter.galley(at, bold, t.warning);
    painter.galley(beside, rounds, t.ink);
    painter.galley(rect.left_top() + vec2(38.0, 23.0), helps, t.ink);
    Some(rect)
}

/// The words with a capital at their head.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |c| c.to_uppercase().chain(letters).collect())
}

/// Where the callout hides least of the body and of the numbers, and is near what it names.
fn place(
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    size: egui::Vec2,
    target: Pos2,
) -> Rect {
    let board = ground.rect.shrink(6.0);
    // Where outline and body share a place, the switch between them is in its corner.
    let corner = Rect::from_min_size(ground.rect.min, SWITCH);
    let numbers = super::dimensions::marks(plan, ground);
    let knots = &bench.document.piece().outline.knots;
    let knots: Vec<Pos2> = knots.iter().map(|k| ground.at(k.place())).collect();
    // The hand needs room about what it drags, and to see where it goes.
    let dragged = match &bench.view.board.drag {
        Some(Drag::Knots { lead, mirrored: false, .. }) => knots.get(*lead).copied(),
        Some(Drag::Knots { lead, .. }) => {
            knots.get(*lead).map(|at| pos2(2.0 * ground.axis_x - at.x, at.y))
        }
        _ => None,
    };
    let in_the_way = |rect: Rect| dragged.is_some_and(|at| rect.expand(40.0).contains(at));
    let cost = |rect: Rect| {
        let leader = [nearest_on(rect, target), target];
        let crossed = |n: &&Rect| n.intersects(rect) || crosses(leader, **n);
        let covered = numbers.iter().filter(crossed).count() as f32;
        let length = leader[0].distance(target);
        // A leader needs a little length to be seen as one.
        let over = through(plan, ground, leader);
        hidden(plan, ground, rect)
            + 600.0 * covered
            + 500.0 * knots.iter().filter(|&&k| rect.expand(9.0).contains(k)).count() as f32
            + if in_the_way(rect) { 50_000.0 } else { 0.0 }
            + if rect.intersects(corner) { 20_000.0 } else { 0.0 }
            + length
            + 3.0 * over
            + (24.0 - length).max(0.0)
    };
    let (across, down) = (6, 24);
    let step = |from: f32, to: f32, i: usize, n: usize| {
        from + (to - from).max(0.0) * i as f32 / n as f32
    };
    let mut best: Option<(f32, Rect)> = None;
    for i in 0..=across {
        for j in 0..=down {
            let x = step(board.left(), board.right() - size.x, i, across);
            let y = step(board.top(), board.bottom() - size.y, j, down);
            let rect = Align2::LEFT_TOP.anchor_size(pos2(x, y), size);
            let cost = cost(rect);
            if best.is_none_or(|(least, _)| cost < least) {
                best = Some((cost, rect));
            }
        }
    }
    best.map_or(Rect::from_min_size(board.min, size), |(_, rect)| rect)
}

fn nearest_on(rect: Rect, p: Pos2) -> Pos2 {
    pos2(p.x.clamp(rect.left(), rect.right()), p.y.clamp(rect.top(), rect.bottom()))
}

/// Whether a line runs through `rect`; sampled, which is fine enough for a leader.
fn crosses([a, b]: [Pos2; 2], rect: Rect) -> bool {
    (0..=24).any(|i| rect.contains(a + (b - a) * (i as f32 / 24.0)))
}

/// How much of a line runs over the body, points.
fn through(plan: &Plan, ground: &Ground, [a, b]: [Pos2; 2]) -> f32 {
    let high = (2.2 * plan.stitch_mm.height as f32 * ground.scale()).max(8.0);
    let inside = |i: &i32| {
        let at = a + (b - a) * (*i as f32 / 12.0);
        let spot = Rect::from_center_size(at, vec2(2.0, high));
        let on = |node: &Rz| {
            let y = ground.y(node.z + plan.shift_mm);
            let half = node.r as f32 * ground.scale();
            spot.y_range().contains(y) && (at.x - ground.axis_x).abs() < half - 4.0
        };
        plan.forecast.iter().any(on)
    };
    // The last of them is the target itself, on the rim.
    (0..11).filter(inside).count() as f32 / 11.0 * a.distance(b)
}

/// How much of the body `rect` hides, in points of width summed over some of its rounds.
fn hidden(plan: &Plan, ground: &Ground, rect: Rect) -> f32 {
    let step = (plan.forecast.len() / 60).max(1);
    let over = |node: &Rz| {
        let half = node.r as f32 * ground.scale() + 8.0;
        let left = rect.left().max(ground.axis_x - half);
        let overlap = (rect.right().min(ground.axis_x + half) - left).max(0.0);
        let y = ground.y(node.z + plan.shift_mm);
        if rect.y_range().contains(y) { overlap } else { 0.0 }
    };
    plan.forecast.iter().step_by(step).map(over).sum()
}
