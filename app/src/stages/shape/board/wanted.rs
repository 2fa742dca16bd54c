//! The wanted line and its knots.

use egui::{Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Knot;
use plumpline_core::outline::Rz;

use super::ground::Ground;
use super::hands::BoardHand;
use crate::bench::Bench;
use crate::document::shaping;
use crate::kit::Tokens;

/// The place of the outline nearest to a point.
#[derive(Debug, Clone, Copy)]
pub(super) struct OutlinePlace {
    /// Which span: between knot `span` and the next.
    pub(super) span: usize,
    /// Where, mm.
    pub(super) at: Rz,
    /// How far from the point, points of the screen.
    pub(super) distance: f32,
    /// Whether it is on the left, the mirrored side.
    pub(super) mirrored: bool,
}

/// The place of the outline nearest to `pos`, on either side.
pub(super) fn nearest(bench: &Bench<'_>, ground: &Ground, pos: Pos2) -> Option<OutlinePlace> {
    // The left side is the right one seen in the plumb line.
    let mirrored = pos.x < ground.axis_x;
    let pos = if mirrored { pos2(2.0 * ground.axis_x - pos.x, pos.y) } else { pos };
    let mut best: Option<OutlinePlace> = None;
    for (span, places) in shaping::spans(&bench.document.piece().outline).iter().enumerate() {
        for pair in places.windows(2) {
            let (a, b) = (ground.at(pair[0]), ground.at(pair[1]));
            let along = b - a;
            let share = ((pos - a).dot(along) / along.length_sq().max(1e-9)).clamp(0.0, 1.0);
            let distance = (a + share * along).distance(pos);
            if best.is_none_or(|foot| distance < foot.distance) {
                let share = f64::from(share);
                let mix = |x: f64, y: f64| x + share * (y - x);
                let at = Rz::new(mix(pair[0].r, pair[1].r), mix(pair[0].z, pair[1].z));
                best = Some(OutlinePlace { span, at, distance, mirrored });
            }
        }
    }
    best
}

/// Draws the line: in pencil on the right, dashed on the left where it is only mirrored.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, ground: &Ground, hand: &BoardHand) {
    let t = bench.t;
    let places: Vec<Rz> = shaping::spans(&bench.document.piece().outline).concat();
    let right: Vec<Pos2> = places.iter().map(|&p| ground.at(p)).collect();
    let left: Vec<Pos2> = places.iter().map(|&p| ground.mirrored(p)).collect();
    painter.extend(Shape::dashed_line(&left, Stroke::new(1.2, t.outline), 5.0, 4.0));
    let echo = right.iter().map(|&p| p + vec2(1.0, 0.6)).collect();
    painter.add(Shape::line(echo, Stroke::new(0.7, t.outline.gamma_multiply(0.55))));
    painter.add(Shape::line(right, Stroke::new(1.7, t.outline)));
    for (index, knot) in bench.document.piece().outline.knots.iter().enumerate() {
        let pointed = hand.knot == Some(index);
        let held = KnotHold {
            pointed,
            first: bench.view.knot == Some(index),
            also: bench.view.board.also.contains(&index),
        };
        draw_knot(painter, t, ground, knot, held);
    }
}

/// How a knot is held.
#[derive(Debug, Clone, Copy)]
struct KnotHold {
    pointed: bool,
    first: bool,
    also: bool,
}

/// A ring; square where the line turns sharply, filled when selected.
fn draw_knot(painter: &Painter, t: &Tokens, ground: &Ground, knot: &Knot, held: KnotHold) {
    let at = ground.at(knot.place());
    let ring = Stroke::new(1.7, t.outline);
    let draw = |radius: f32, fill| {
        if knot.corner {
            let rect = Rect::from_center_size(at, vec2(1.8 * radius, 1.8 * radius));
            painter.rect(rect, 1.0, fill, ring, StrokeKind::Middle);
        } else {
            painter.circle(at, radius, fill, ring);
        }
    };
    if held.first {
        draw(9.5, t.panel);
        draw(4.5, t.outline);
    } else if held.also {
        draw(7.0, t.outline);
    } else {
        draw(if held.pointed { 7.0 } else { 5.2 }, t.panel);
    }
}
