//! What the body stands on and hangs from: a turntable with degrees, and the plumb line.

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};

use crate::bench::Bench;
use crate::kit::tokens::mix;
use crate::kit::{icons, type_faces};

/// Degrees from tick to tick; every third is long.
const TICK_DEG: f32 = 10.0;

/// Draws both, before the body.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, rect: Rect) {
    let (body, t) = (&bench.body, bench.t);
    let turned = &bench.view.turned;
    let (top, _, half) = body.reach();
    let middle = body.middle();
    let (dip, level) = turned.tilt_deg.to_radians().sin_cos();
    if turned.tilt_deg < 75.0 {
        let string = rect.top() + 2.0..=(top + 4.0).max(rect.top() + 2.0);
        painter.vline(middle.x, string, Stroke::new(1.0, t.soft_ink));
    }
    let foot = pos2(middle.x, middle.y + body.half_height() * level);
    if dip > 0.05 && turned.zoom < 1.3 {
        let radius = (1.12 * half).min(0.5 * rect.width() - 8.0);
        table(painter, bench, foot, vec2(radius, radius * dip.min(0.6)), half);
    }
}

fn table(painter: &Painter, bench: &Bench<'_>, foot: Pos2, size: egui::Vec2, half: f32) {
    let t = bench.t;
    let ring = |part: f32, deg: f32| {
        let (sin, cos) = deg.to_radians().sin_cos();
        foot + part * vec2(size.x * sin, size.y * cos)
    };
    let circle = |part: f32| (0..72).map(|i| ring(part, 5.0 * i as f32)).collect::<Vec<_>>();
    painter.add(Shape::convex_polygon(circle(1.0), t.well, Stroke::new(1.0, t.edge)));
    // The body's own shade, in steps: no blur.
    let shade = (half / size.x).min(1.0);
    for (part, share) in [(0.92, 0.05), (0.76, 0.09), (0.58, 0.14)] {
        let colour = mix(t.well, t.body_shade, share);
        painter.add(Shape::convex_polygon(circle(part * shade), colour, Stroke::NONE));
    }
    let mut deg = 0.0;
    while deg < 360.0 {
        let long = deg % 30.0 == 0.0;
        let at = deg + bench.view.turned.turn_deg;
        let inner = if long { 0.90 } else { 0.94 };
        let pen = Stroke::new(if long { 1.2 } else { 0.8 }, t.soft_ink);
        painter.line_segment([ring(inner, at), ring(0.98, at)], pen);
        deg += TICK_DEG;
    }
    let pointer = foot + vec2(0.0, size.y + 7.0);
    icons::triangle(painter, pointer, vec2(0.0, -6.0), 4.0, t.outline);
    if bench.view.present.hides() {
        return;
    }
    let words = degrees(bench.view.turned.turn_deg);
    let font = type_faces::regular(type_faces::SMALL);
    let at = pointer + vec2(9.0, -2.0);
    painter.text(at, Align2::LEFT_CENTER, words, font, t.soft_ink);
}

/// How far the body is turned, in whole degrees: `30°`.
fn degrees(turn_deg: f32) -> String {
    format!("{:.0}°", turn_deg.rem_euclid(360.0).round().rem_euclid(360.0))
}
