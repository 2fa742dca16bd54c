//! What the toy stands on, and how high it is.

use egui::{Align2, Painter, Pos2, Shape, Stroke, pos2, vec2};

use super::here::ToyBench;
use crate::kit::tokens::mix;
use crate::kit::{icons, paint, type_faces};
use crate::work::toy::ToyPlace;

/// Degrees from tick to tick; every third is long.
const TICK_DEG: f32 = 10.0;

/// Draws the table under the toy, before it; `rect` is the field.
pub(super) fn table(painter: &Painter, here: &ToyBench<'_>, place: &ToyPlace) {
    let t = here.bench.t;
    let turned = here.bench.view.toy.turned;
    let dip = turned.tilt_deg.to_radians().sin();
    if dip < 0.05 {
        if dip > -0.05 {
            // Level: the ground is a line.
            let foot = place.at(place.foot()).0;
            let half = 1.15 * place.across();
            painter.hline(foot.x - half..=foot.x + half, foot.y, Stroke::new(1.2, t.soft_ink));
        }
        return;
    }
    let foot = place.at(place.foot()).0;
    let half = place.across();
    let radius = 1.12 * half;
    let size = vec2(radius, radius * dip);
    let ring = |share: f32, deg: f32| {
        let (sin, cos) = deg.to_radians().sin_cos();
        foot + share * vec2(size.x * sin, size.y * cos)
    };
    let circle = |share: f32| (0..72).map(|i| ring(share, 5.0 * i as f32)).collect::<Vec<_>>();
    painter.add(Shape::convex_polygon(circle(1.0), t.well, Stroke::new(1.0, t.edge)));
    // The toy's own shade, in steps: no blur.
    for (share, dark) in [(0.80, 0.05), (0.62, 0.08), (0.44, 0.12)] {
        let colour = mix(t.well, t.body_shade, dark);
        painter.add(Shape::convex_polygon(circle(share), colour, Stroke::NONE));
    }
    let mut deg = 0.0;
    while deg < 360.0 {
        let long = deg % 30.0 == 0.0;
        let at = deg + turned.turn_deg;
        let inner = if long { 0.93 } else { 0.96 };
        let pen = Stroke::new(if long { 1.2 } else { 0.8 }, t.soft_ink);
        painter.line_segment([ring(inner, at), ring(0.99, at)], pen);
        deg += TICK_DEG;
    }
    // Where its front is.
    let (at, out) = (ring(1.0, turned.turn_deg), ring(1.07, turned.turn_deg));
    icons::triangle(painter, out, at - out, 4.0, t.outline);
}

/// Draws the height of the toy beside it, where it is seen nearly level.
pub(super) fn height(painter: &Painter, here: &ToyBench<'_>, place: &ToyPlace, left: f32) {
    let turned = here.bench.view.toy.turned;
    if turned.tilt_deg.abs() > 35.0 || here.bench.view.toy.apart > 0.0 {
        return;
    }
    let t = here.bench.t;
    let (top, foot) = (place.at(place.top()).0, place.at(place.foot()).0);
    let x = (foot.x - 1.12 * place.across() - 14.0).max(left + 16.0);
    let pen = Stroke::new(1.2, t.outline);
    painter.vline(x, top.y..=foot.y, pen);
    for y in [top.y, foot.y] {
        // Slanting strokes, as on a drawing.
        painter.line_segment([pos2(x - 5.0, y + 5.0), pos2(x + 5.0, y - 5.0)], pen);
        painter.hline(x - 7.0..=x + 7.0, y, Stroke::new(1.0, t.soft_ink));
    }
    let high = 2.0 * f64::from(place.half_height_mm());
    let words = here.bench.unit().rough_text(high);
    let font = type_faces::bold(type_faces::SMALL);
    let middle = pos2(x, 0.5 * (top.y + foot.y));
    paint::upright_text(painter, middle, &words, font, t.outline, t.panel);
}

/// A label in a pill about `at`, within `field`.
pub(super) fn label(painter: &Painter, at: Pos2, words: &str, here: &ToyBench<'_>) {
    let t = here.bench.t;
    let font = type_faces::semibold(type_faces::SMALL);
    let galley = painter.layout_no_wrap(words.to_owned(), font, t.ink);
    let field = painter.clip_rect();
    let size = galley.size() + vec2(14.0, 6.0);
    let rect = Align2::CENTER_BOTTOM.anchor_size(at - vec2(0.0, 16.0), size);
    let x =
        rect.left().clamp(field.left() + 4.0, (field.right() - size.x - 4.0).max(field.left()));
    let rect = egui::Rect::from_min_size(pos2(x, rect.top().max(field.top() + 4.0)), size);
    let edge = Stroke::new(1.2, t.highlight_edge);
    painter.rect(rect, 5.0, t.panel, edge, egui::StrokeKind::Inside);
    painter.galley(rect.min + vec2(7.0, 3.0), galley, t.ink);
}
