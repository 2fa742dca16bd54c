//! Balance drawn over the toy: its centre of mass, the plumb line from it, and the area that
//! what touches the ground spans.

use egui::{Color32, Painter, Pos2, Shape, Stroke, vec2};

use super::here::ToyBench;
use crate::kit::Tokens;
use crate::work::toy::{ToyMade, ToyPlace};

/// Draws it.
pub(super) fn paint(painter: &Painter, here: &ToyBench<'_>, made: &ToyMade, place: &ToyPlace) {
    let (t, toy) = (here.bench.t, here.bench.toy);
    let Some(centre) = toy.at(made.assembled.mass.centre) else { return };
    if let Some(standing) = &made.assembled.standing {
        // To its own right and ahead, on the ground: its right is left of who looks at it.
        let [_, _, z] = place.foot();
        let on_ground = |at: [f64; 2]| place.at([-at[0] as f32, at[1] as f32, z]).0;
        let corners: Vec<Pos2> = standing.ground.iter().map(|&at| on_ground(at)).collect();
        if corners.len() > 2 {
            let wash = t.highlight.gamma_multiply(0.22);
            painter.add(Shape::convex_polygon(corners.clone(), wash, Stroke::NONE));
            painter.add(Shape::closed_line(corners, Stroke::new(1.4, t.highlight_edge)));
        }
        let foot = on_ground(standing.foot);
        plumb(painter, [centre, foot], t);
        painter.circle_filled(foot, 3.0, t.outline);
    }
    for hanging in &made.assembled.hangings {
        let Some(point) = toy.at(hanging.point) else { continue };
        plumb(painter, [point, centre], t);
        painter.circle_stroke(point, 4.0, Stroke::new(1.6, t.outline));
    }
    sign(painter, centre, 8.0, t);
}

/// A dashed line that is seen on any yarn.
fn plumb(painter: &Painter, ends: [Pos2; 2], t: &Tokens) {
    painter.line_segment(ends, Stroke::new(2.6, t.panel));
    painter.extend(Shape::dashed_line(&ends, Stroke::new(1.6, t.outline), 5.0, 3.0));
}

/// The sign of a centre of mass: a disc in quarters.
pub(super) fn sign(painter: &Painter, at: Pos2, radius: f32, t: &Tokens) {
    painter.circle_filled(at, radius, t.panel);
    for from in [0.0_f32, 180.0] {
        let mut wedge = vec![at];
        wedge.extend((0..=12).map(|i| {
            let (sin, cos) = (from + 7.5 * i as f32).to_radians().sin_cos();
            at + radius * vec2(cos, sin)
        }));
        painter.add(Shape::convex_polygon(
            wedge,
            t.outline,
            Stroke::new(0.0, Color32::TRANSPARENT),
        ));
    }
    painter.circle_stroke(at, radius, Stroke::new(1.6, t.outline));
}
