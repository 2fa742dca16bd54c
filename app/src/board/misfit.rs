//! Where wanted and forecast part by more than half a stitch: hatched, with one callout.

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::outline::Rz;
use plumpline_core::warning::Misfit;

use super::ground::Ground;
use crate::studio::bench::Bench;
use crate::ui_kit::{icons, paint, type_faces};

/// The place of the outline nearest to a forecast node (already shifted onto it).
fn foot(plan: &Plan, node: Rz) -> Rz {
    plan.outline
        .iter()
        .copied()
        .min_by(|a, b| a.distance(node).total_cmp(&b.distance(node)))
        .unwrap_or(node)
}

/// The nodes of a stretch, one more at either end so that the hatch runs out.
fn stretch(plan: &Plan, misfit: &Misfit) -> Vec<Rz> {
    let last = plan.forecast.len() - 1;
    (misfit.from.saturating_sub(1)..=(misfit.to + 1).min(last))
        .map(|k| Rz::new(plan.forecast[k].r, plan.forecast[k].z + plan.shift_mm))
        .collect()
}

/// Hatches the gaps, on both sides of the axis.
pub(super) fn hatch(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let t = bench.t;
    let line = Stroke::new(1.0, t.warning);
    for misfit in &plan.misfits {
        let nodes = stretch(plan, misfit);
        let feet: Vec<Rz> = nodes.iter().map(|&n| foot(plan, n)).collect();
        for side in [1.0, -1.0] {
            let at = |p: Rz| {
                let p = ground.at(p);
                pos2(ground.axis_x + side * (p.x - ground.axis_x), p.y)
            };
            for (pair, under) in nodes.windows(2).zip(feet.windows(2)) {
                let corners = [at(pair[0]), at(pair[1]), at(under[1]), at(under[0])];
                paint::hatch(painter, &corners, 6.0, line);
            }
            let rim: Vec<Pos2> = nodes.iter().map(|&n| at(n)).collect();
            painter.add(Shape::line(rim, Stroke::new(1.2, t.warning)));
        }
    }
}

/// What is wrong where it is worst, and what helps.
pub(super) fn callout(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let worst = |a: &&Misfit, b: &&Misfit| a.off_mm.abs().total_cmp(&b.off_mm.abs());
    let Some(misfit) = plan.misfits.iter().max_by(worst) else { return };
    if bench.error.is_some() {
        return;
    }
    let t = bench.t;
    let what = capital(&misfit.text(plan.forecast.len() - 1));
    let [first, last] = misfit.rounds();
    let helps = if misfit.off_mm > 0.0 { "round the outline" } else { "ease the outline" };
    let helps = format!("{helps}, rnds {first}–{last}");
    let bold = painter.layout_no_wrap(what, type_faces::bold(type_faces::BODY), t.warning);
    let small = type_faces::regular(type_faces::SMALL);
    let small = painter.layout_no_wrap(helps, small, t.ink);
    let size = vec2(bold.size().x.max(small.size().x) + 50.0, 42.0);
    let node = plan.forecast[misfit.worst];
    let target = ground.mirrored(Rz::new(node.r, node.z + plan.shift_mm));
    let rect = place(plan, ground, size, target);
    let from = pos2(
        target.x.clamp(rect.left(), rect.right()),
        target.y.clamp(rect.top(), rect.bottom()),
    );
    painter.line_segment([from, target], Stroke::new(1.3, t.warning));
    painter.circle_filled(target, 2.4, t.warning);
    painter.rect(rect, 6.0, t.warn_wash, Stroke::new(1.3, t.warning), StrokeKind::Inside);
    icons::warning(painter, rect.left_center() + vec2(20.0, 0.0), 15.0, t.warning);
    painter.galley(rect.left_top() + vec2(38.0, 4.0), bold, t.warning);
    painter.galley(rect.left_top() + vec2(38.0, 23.0), small, t.ink);
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |c| c.to_uppercase().chain(letters).collect())
}

/// Where the callout hides least of the body: of eight places, the clearest, the nearest
/// among equals.
fn place(plan: &Plan, ground: &Ground, size: egui::Vec2, target: Pos2) -> Rect {
    let board = ground.rect.shrink(6.0);
    let (left, right) = (board.left() + 22.0, board.right() - size.x);
    let high = board.top();
    let low = board.bottom() - size.y;
    let beside = (target.y - 0.5 * size.y).clamp(high, low);
    let below = (target.y + 18.0).clamp(high, low);
    let corners = [
        (left, beside),
        (left, below),
        (left, low),
        (left, high),
        (right, low),
        (right, beside),
        (right, high),
        (board.left() - 4.0, low),
    ];
    let hidden = |rect: Rect| -> f32 {
        let hides = |pair: &[Rz]| {
            let (a, b) = (pair[0], pair[1]);
            let z = 0.5 * (a.z + b.z) + plan.shift_mm;
            let half = a.r.max(b.r) as f32 * ground.scale() + 8.0;
            let y = ground.y(z);
            let overlap = (rect.right().min(ground.axis_x + half)
                - rect.left().max(ground.axis_x - half))
            .max(0.0);
            if rect.y_range().contains(y) { overlap } else { 0.0 }
        };
        plan.forecast.windows(2).map(hides).sum()
    };
    let numbers = super::dimensions::numbers(plan, ground);
    corners
        .into_iter()
        .map(|(x, y)| Align2::LEFT_TOP.anchor_size(pos2(x, y), size))
        .min_by(|a, b| {
            let covers = |r: &Rect| numbers.iter().filter(|n| n.intersects(*r)).count() as f32;
            let cost =
                |r: &Rect| hidden(*r) + 2000.0 * covers(r) + 0.05 * r.center().distance(target);
            cost(a).total_cmp(&cost(b))
        })
        .unwrap_or(Rect::from_min_size(board.min, size))
}
