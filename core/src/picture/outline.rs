//! The outline as a drawing: the forecast body in its yarns, its rounds, the wanted line
//! over it, and the main measures.

use super::colour::mixed;
use super::{Rgb, Scene, Writing};
use crate::extent::Extent;
use crate::piece::outline::Rz;
use crate::plan::Plan;

/// Ink of lines and figures.
const INK: Rgb = [47, 59, 76];
/// The edge of the forecast.
const EDGE: Rgb = [122, 98, 64];
/// What yarn is mixed with, so that lines read on it, and how much of that.
const PAPER: Rgb = [246, 240, 228];
const PAPER_SHARE: f32 = 0.38;

/// The drawing at `scale` pixels a millimetre, `colours` by yarn. An oval is drawn along its
/// straight side.
pub fn scene(plan: &Plan, scale: f32, colours: &[Rgb]) -> Scene {
    let mut drawing = OutlineDrawing::new(plan, scale, colours);
    drawing.body();
    drawing.wanted();
    drawing.measures();
    drawing.scene
}

struct OutlineDrawing<'a> {
    plan: &'a Plan,
    scale: f32,
    colours: &'a [Rgb],
    middle: f64,
    straight: f64,
    /// Size of type, pixels; lines follow it.
    type_px: f32,
    scene: Scene,
}

impl<'a> OutlineDrawing<'a> {
    fn new(plan: &'a Plan, scale: f32, colours: &'a [Rgb]) -> Self {
        let reach = |of: fn(f64, f64) -> f64, from: f64| {
            plan.forecast.iter().map(|n| n.z).fold(from, of)
        };
        let (low, high) = (reach(f64::min, f64::INFINITY), reach(f64::max, f64::NEG_INFINITY));
        let straight = plan.depth_mm.map_or(0.0, |depth| plan.size_mm.width - depth);
        let larger = plan.size_mm.height.max(plan.size_mm.width) as f32 * scale;
        Self {
            plan,
            scale,
            colours,
            middle: 0.5 * (low + high),
            straight,
            type_px: (larger / 26.0).clamp(9.0, 40.0),
            scene: Scene::default(),
        }
    }

    fn at(&self, place: Rz, side: f32) -> [f32; 2] {
        let x = (place.r + 0.5 * self.straight) as f32;
        [side * x * self.scale, (place.z - self.middle) as f32 * self.scale]
    }

    fn body(&mut self) {
        let pen = 0.06 * self.type_px;
        for (i, round) in self.plan.rounds.iter().enumerate() {
            let (a, b) = (self.plan.forecast[i], self.plan.forecast[i + 1]);
            let yarn = self
                .colours
                .get(round.yarn)
                .or(self.colours.first())
                .copied()
                .unwrap_or([128; 3]);
            let colour = mixed(yarn, PAPER, PAPER_SHARE);
            let corners =
                [self.at(a, -1.0), self.at(a, 1.0), self.at(b, 1.0), self.at(b, -1.0)];
            self.scene.push(colour, corners);
            let dark = mixed(colour, INK, 0.30);
            self.stroke([self.at(b, -1.0), self.at(b, 1.0)], pen, dark);
            for side in [-1.0, 1.0] {
                self.stroke([self.at(a, side), self.at(b, side)], 1.6 * pen, EDGE);
            }
        }
    }

    /// The wanted line: whole on the right, dashed on the left.
    fn wanted(&mut self) {
        let pen = 0.13 * self.type_px;
        let shift = self.plan.shift_mm;
        let place = |p: &Rz| Rz::new(p.r, p.z - shift);
        let points: Vec<Rz> = self.plan.outline.iter().map(place).collect();
        for (i, pair) in points.windows(2).enumerate() {
            self.stroke([self.at(pair[0], 1.0), self.at(pair[1], 1.0)], pen, INK);
            if i % 8 < 5 {
                self.stroke([self.at(pair[0], -1.0), self.at(pair[1], -1.0)], pen, INK);
            }
        }
    }

    /// Height and width, with slanted ticks.
    fn measures(&mut self) {
        let [low, high] = self.scene.bounds();
        let (pen, gap) = (0.07 * self.type_px, 1.9 * self.type_px);
        let Extent { height: tall, width: wide } = self.plan.size_mm;
        let half_tall = 0.5 * tall as f32 * self.scale;
        let half_wide = 0.5 * wide as f32 * self.scale;
        let x = low[0] - gap;
        let y = low[1] - gap;
        self.measure([x, -half_tall], [x, half_tall], pen, format!("{tall:.1} mm"));
        self.measure([-half_wide, y], [half_wide, y], pen, format!("{wide:.1} mm"));
        if let Some(deep) = self.plan.depth_mm {
            let at = [0.0, high[1] + gap];
            self.write(format!("{deep:.1} mm deep"), at, false);
        }
    }

    fn measure(&mut self, a: [f32; 2], b: [f32; 2], pen: f32, text: String) {
        let upright = a[0] == b[0];
        let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
        // The line stops short of the words.
        let half = 0.29 * self.type_px * text.chars().count() as f32 + 0.4 * self.type_px;
        let stop = |by: f32| {
            if upright { [middle[0], middle[1] + by] } else { [middle[0] + by, middle[1]] }
        };
        let room = (b[0] - a[0]).hypot(b[1] - a[1]) > 2.2 * half;
        if room {
            self.stroke([a, stop(-half)], pen, INK);
            self.stroke([stop(half), b], pen, INK);
        } else {
            self.stroke([a, b], pen, INK);
        }
        let tick = 0.32 * self.type_px;
        for end in [a, b] {
            let from = [end[0] - tick, end[1] + tick];
            self.stroke([from, [end[0] + tick, end[1] - tick]], 1.6 * pen, INK);
        }
        let aside = if room { 0.0 } else { -0.9 * self.type_px };
        let at = if upright {
            [middle[0] + aside, middle[1]]
        } else {
            [middle[0], middle[1] + aside]
        };
        self.write(text, at, upright);
    }

    fn write(&mut self, text: String, at: [f32; 2], upright: bool) {
        self.scene.writing.push(Writing {
            text,
            at,
            height: self.type_px,
            colour: INK,
            upright,
        });
    }

    fn stroke(&mut self, ends: [[f32; 2]; 2], pen: f32, colour: Rgb) {
        let [a, b] = ends;
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = dx.hypot(dy);
        if length < 1e-6 {
            return;
        }
        // Reaching a little past both ends, strokes join without gaps.
        let (ux, uy) = (0.5 * pen * dx / length, 0.5 * pen * dy / length);
        let (sx, sy) = (-uy, ux);
        let corners = [
            [a[0] - ux + sx, a[1] - uy + sy],
            [b[0] + ux + sx, b[1] + uy + sy],
            [b[0] + ux - sx, b[1] + uy - sy],
            [a[0] - ux - sx, a[1] - uy - sy],
        ];
        self.scene.push(colour, corners);
    }
}
