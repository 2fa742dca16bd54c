//! The wanted line and its knots.

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Knot;
use plumpline_core::outline::Rz;

use super::ground::Ground;
use super::hands::Hand;
use crate::studio::bench::Bench;
use crate::ui_kit::{Tokens, type_faces};

/// Pieces a span of the curve is drawn in.
const PIECES: usize = 24;

/// The place of the outline nearest to a point.
#[derive(Debug, Clone, Copy)]
pub(super) struct Foot {
    /// Which span: between knot `span` and the next.
    pub(super) span: usize,
    /// Where, mm.
    pub(super) at: Rz,
    /// How far from the point, points of the screen.
    pub(super) distance: f32,
}

/// The curve, span by span, mm.
fn spans(bench: &Bench<'_>) -> Vec<Vec<Rz>> {
    bench
        .document
        .piece()
        .outline
        .beziers()
        .iter()
        .map(|b| {
            (0..=PIECES)
                .map(|i| {
                    let t = i as f64 / PIECES as f64;
                    let s = 1.0 - t;
                    let w = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
                    let x = w[0] * b.p0.x + w[1] * b.p1.x + w[2] * b.p2.x + w[3] * b.p3.x;
                    let y = w[0] * b.p0.y + w[1] * b.p1.y + w[2] * b.p2.y + w[3] * b.p3.y;
                    Rz::new(x, y)
                })
                .collect()
        })
        .collect()
}

/// The place of the outline nearest to `pos`.
pub(super) fn nearest(bench: &Bench<'_>, ground: &Ground, pos: Pos2) -> Option<Foot> {
    let mut best: Option<Foot> = None;
    for (span, places) in spans(bench).iter().enumerate() {
        for pair in places.windows(2) {
            let (a, b) = (ground.at(pair[0]), ground.at(pair[1]));
            let along = b - a;
            let share = ((pos - a).dot(along) / along.length_sq().max(1e-9)).clamp(0.0, 1.0);
            let distance = (a + share * along).distance(pos);
            if best.is_none_or(|foot| distance < foot.distance) {
                let share = f64::from(share);
                let mix = |x: f64, y: f64| x + share * (y - x);
                let at = Rz::new(mix(pair[0].r, pair[1].r), mix(pair[0].z, pair[1].z));
                best = Some(Foot { span, at, distance });
            }
        }
    }
    best
}

/// Draws the line: in pencil on the right, dashed on the left where it is only mirrored.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, ground: &Ground, hand: &Hand) {
    let t = bench.t;
    let places: Vec<Rz> = spans(bench).concat();
    let right: Vec<Pos2> = places.iter().map(|&p| ground.at(p)).collect();
    let left: Vec<Pos2> = places.iter().map(|&p| ground.mirrored(p)).collect();
    painter.extend(Shape::dashed_line(&left, Stroke::new(1.2, t.outline), 5.0, 4.0));
    let echo = right.iter().map(|&p| p + vec2(1.0, 0.6)).collect();
    painter.add(Shape::line(echo, Stroke::new(0.7, t.outline.gamma_multiply(0.55))));
    painter.add(Shape::line(right, Stroke::new(1.7, t.outline)));
    for (index, knot) in bench.document.piece().outline.knots.iter().enumerate() {
        let pointed = hand.knot == Some(index);
        draw_knot(painter, t, ground, knot, pointed, bench.view.knot == Some(index));
    }
}

/// A ring; square where the line turns sharply, filled when in hand.
fn draw_knot(
    painter: &Painter,
    t: &Tokens,
    ground: &Ground,
    knot: &Knot,
    pointed: bool,
    taken: bool,
) {
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
    if taken {
        draw(9.5, t.panel);
        draw(4.5, t.outline);
    } else {
        draw(if pointed { 7.0 } else { 5.2 }, t.panel);
    }
}

/// Radius and height of the knot in hand, beside it.
pub(super) fn readout(painter: &Painter, bench: &Bench<'_>, ground: &Ground) {
    let t = bench.t;
    let Some(index) = bench.view.dragged_knot.or(bench.view.knot) else { return };
    let Some(knot) = bench.document.piece().outline.knots.get(index) else { return };
    let at = ground.at(knot.place());
    let words = if knot.is_pole() {
        format!("height {:.1}", knot.height_mm)
    } else {
        format!("radius {:.1}\nheight {:.1}", knot.radius_mm, knot.height_mm)
    };
    let font = type_faces::semibold(type_faces::SMALL);
    let galley = painter.layout(words, font, t.ink, f32::INFINITY);
    let size = galley.size() + vec2(14.0, 8.0);
    // Inside the body, so that it neither leaves the board nor hides the line.
    let room = at.x - 16.0 - size.x > ground.rect.left() + 4.0;
    let (anchor, place) = if room {
        (Align2::RIGHT_CENTER, pos2(at.x - 16.0, at.y))
    } else {
        (Align2::LEFT_CENTER, pos2(at.x + 16.0, at.y))
    };
    let rect = anchor.anchor_size(place, size);
    let low = ground.rect.top() + 4.0 - rect.top();
    let high = ground.rect.bottom() - 4.0 - rect.bottom();
    let rect = rect.translate(vec2(0.0, low.max(0.0) + high.min(0.0)));
    painter.rect(rect, 5.0, t.panel, Stroke::new(1.3, t.outline), StrokeKind::Inside);
    painter.galley(rect.min + vec2(7.0, 4.0), galley, t.ink);
}
