//! The forecast body: one strip a round, its side scalloped, lit from the upper left.

use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, pos2};
use plumpline_core::Plan;
use plumpline_core::outline::Rz;

use super::ground::Ground;
use super::neck;
use crate::bench::Bench;
use crate::kit::tokens::{Tokens, mix};
use crate::kit::{paint, type_faces};

/// How far each round bulges out of the silhouette, as a part of its height. 0.42 mm at a
/// round of 4.2 mm.
const BULGE: f32 = 0.10;
/// Columns of the mesh across the body.
const ACROSS: usize = 14;

/// The silhouette of one round, from its lower node to its upper one, right side, points.
fn silhouette(plan: &Plan, ground: &Ground, round: usize, steps: usize) -> Vec<Pos2> {
    let place = |k: usize| {
        let node = plan.forecast[k];
        ground.at(Rz::new(node.r, node.z + plan.shift_mm))
    };
    let (a, b) = (place(round - 1), place(round));
    let along = b - a;
    let out = egui::vec2(along.y, -along.x);
    (0..=steps)
        .map(|i| {
            let u = i as f32 / steps as f32;
            let bulge = BULGE * (std::f32::consts::PI * u).sin();
            let p = a + u * along + bulge * out;
            pos2(p.x.max(ground.axis_x), p.y)
        })
        .collect()
}

/// Steps along a round: enough for a smooth scallop, fewer where rounds are thin.
fn steps(ground: &Ground, plan: &Plan) -> usize {
    let height = plan.stitch_mm.height as f32 * ground.scale();
    ((height / 3.0).round() as usize).clamp(1, 6)
}

/// Light across the body at `side` −1 (left) to 1 (right): how much to lighten, darken.
fn light(t: &Tokens, base: Color32, side: f32) -> Color32 {
    let facing = side + 0.38;
    let lit = (1.0 - (facing / 0.75).powi(2)).max(0.0);
    let shade =
        ((side - 0.05).max(0.0)).powf(1.7) * 0.26 + ((-side - 0.6).max(0.0)).powi(2) * 0.8;
    let lighten = if t.dark { 0.10 } else { 0.20 };
    mix(mix(base, t.body_light, lighten * lit), t.body_shade, shade)
}

/// One strip of the body as a mesh, coloured by `colour` of the place across it.
fn strip(side: &[Pos2], axis_x: f32, colour: impl Fn(f32) -> Color32) -> Mesh {
    let mut mesh = Mesh::default();
    for p in side {
        for i in 0..=ACROSS {
            let across = 2.0 * i as f32 / ACROSS as f32 - 1.0;
            // Closer together towards the sides, where the light turns fastest.
            let bent = (across * std::f32::consts::FRAC_PI_2).sin();
            mesh.colored_vertex(pos2(axis_x + bent * (p.x - axis_x), p.y), colour(bent));
        }
    }
    let row = ACROSS as u32 + 1;
    for i in 0..side.len() as u32 - 1 {
        for j in 0..ACROSS as u32 {
            let a = i * row + j;
            mesh.add_triangle(a, a + 1, a + row);
            mesh.add_triangle(a + 1, a + row + 1, a + row);
        }
    }
    mesh
}

/// Draws the body.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let t = bench.t;
    let steps = steps(ground, plan);
    let mut right: Vec<Pos2> = Vec::with_capacity(plan.rounds.len() * steps + 1);
    let mut body = Mesh::default();
    for (i, round) in plan.rounds.iter().enumerate() {
        let side = silhouette(plan, ground, i + 1, steps);
        let base = t.body(bench.yarn_of(round.yarn));
        body.append(strip(&side, ground.axis_x, |across| light(t, base, across)));
        right.extend(side);
    }
    painter.add(Shape::mesh(body));
    latitudes(painter, bench, plan, ground);
    rim(painter, bench.t, ground, right);
}

/// Draws its edge alone.
pub(super) fn edge(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let steps = steps(ground, plan);
    let rounds = 1..=plan.rounds.len();
    let right = rounds.flat_map(|round| silhouette(plan, ground, round, steps)).collect();
    rim(painter, bench.t, ground, right);
}

/// The silhouette, of which `right` is the right side.
fn rim(painter: &Painter, t: &Tokens, ground: &Ground, right: Vec<Pos2>) {
    let mirrored = |p: &Pos2| pos2(2.0 * ground.axis_x - p.x, p.y);
    let left: Vec<Pos2> = right.iter().map(mirrored).collect();
    let edge = Stroke::new(1.3, t.forecast_edge);
    // An open end shows its edge.
    for (r, l) in [(right.first(), left.first()), (right.last(), left.last())] {
        if let (Some(&r), Some(&l)) = (r, l)
            && r.x - l.x > 1.0
        {
            painter.line_segment([l, r], edge);
        }
    }
    painter.add(Shape::line(right, edge));
    painter.add(Shape::line(left, edge));
}

/// Faint lines where one round meets the next, unless they would run together.
fn latitudes(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let stroke = Stroke::new(0.8, bench.t.ink.gamma_multiply(0.2));
    let mut drawn = f32::NEG_INFINITY;
    for node in &plan.forecast {
        let place = Rz::new(node.r, node.z + plan.shift_mm);
        let (left, right) = (ground.mirrored(place), ground.at(place));
        if right.x - left.x > 2.0 && (right.y - drawn).abs() >= 2.5 {
            painter.line_segment([left, right], stroke);
            drawn = right.y;
        }
    }
}

/// Draws the selected round, and the one pointed at beside it.
pub(super) fn current_round(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
) {
    let t = bench.t;
    if let Some(round) = bench.view.washed().filter(|&r| r as usize <= plan.rounds.len()) {
        let side = silhouette(plan, ground, round as usize, steps(ground, plan));
        painter.add(Shape::mesh(strip(&side, ground.axis_x, |_| t.wash)));
    }
    let Some(round) = bench.view.current_round().filter(|&r| r as usize <= plan.rounds.len())
    else {
        return;
    };
    let side = silhouette(plan, ground, round as usize, steps(ground, plan));
    let shade = |across: f32| mix(t.highlight, t.body_shade, 0.10 * across.max(0.0));
    painter.add(Shape::mesh(strip(&side, ground.axis_x, shade)));
    let mut rim = side.clone();
    rim.extend(side.iter().rev().map(|p| pos2(2.0 * ground.axis_x - p.x, p.y)));
    painter.add(Shape::closed_line(rim, Stroke::new(1.6, t.highlight_edge)));
    stitches(painter, t, ground, &side, plan.rounds[round as usize - 1].count);
    label(painter, bench, plan, ground, &side, round);
}

/// The stitches of the round that face us, as they foreshorten.
fn stitches(painter: &Painter, t: &Tokens, ground: &Ground, side: &[Pos2], count: u32) {
    let (Some(a), Some(b)) = (side.first(), side.last()) else { return };
    let half = 0.5 * (a.x + b.x) - ground.axis_x;
    if (b.y - a.y).abs() < 5.0 || half * std::f32::consts::PI / count as f32 > 60.0 {
        return;
    }
    let tick = Stroke::new(1.0, t.on_highlight.gamma_multiply(0.3));
    let (top, bottom) = (a.y.min(b.y), a.y.max(b.y));
    let mut last = f32::NEG_INFINITY;
    for k in 0..count {
        let angle = std::f32::consts::TAU * (k as f32 + 0.5) / count as f32;
        if angle.cos() <= 0.0 {
            continue;
        }
        let x = ground.axis_x + half * angle.sin();
        if (x - last).abs() >= 3.0 {
            painter.vline(x, top + 2.0..=bottom - 2.0, tick);
            last = x;
        }
    }
}

/// The name of the selected round: on its strip where that is high enough, else beside it.
fn label(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    side: &[Pos2],
    round: u32,
) {
    let t = bench.t;
    let (Some(a), Some(b)) = (side.first(), side.last()) else { return };
    if bench.view.present.hides() {
        return;
    }
    let y = 0.5 * (a.y + b.y);
    let half = 0.5 * (a.x + b.x) - ground.axis_x;
    let words = say!("board-rnd-round", round = round);
    let font = type_faces::bold(type_faces::SMALL);
    let galley = painter.layout_no_wrap(words.clone(), font, t.on_highlight);
    if (b.y - a.y).abs() >= 13.0 && half > galley.size().x + 14.0 {
        // Left of the axis, or right of it where the number of the neck stands there.
        let neck = neck::mark(plan, ground);
        let place = |side: f32| {
            let at = pos2(ground.axis_x + side * 0.5 * half, y);
            Align2::CENTER_CENTER.anchor_size(at, galley.size())
        };
        let free = |rect: &Rect| neck.is_none_or(|neck| !neck.intersects(rect.expand(5.0)));
        let Some(rect) = [-1.0, 1.0].map(place).into_iter().find(free) else { return };
        painter.rect_filled(rect.expand2(egui::vec2(4.0, 0.0)), 2.0, t.highlight);
        painter.galley(rect.min, galley, t.on_highlight);
    } else {
        // A strip too thin for its name wears it as a pill, on the body: beside it stand the
        // numbers of the dimensions and the thread.
        let wide = galley.size().x + 14.0;
        let mut left = if half > wide { -0.5 * half - 0.5 * wide } else { -0.5 * wide };
        if let Some(neck) = neck::mark(plan, ground)
            && neck.y_range().expand(12.0).contains(y)
        {
            // Beside the number of the neck.
            left = left.min(neck.left() - ground.axis_x - wide - 4.0);
        }
        paint::pill(painter, pos2(ground.axis_x + left, y), &words, t);
    }
}
