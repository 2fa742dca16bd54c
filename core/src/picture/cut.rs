//! The cut face of a body whose front half is taken away: cloth, and the stuffing in it.

use std::f32::consts::TAU;

use super::Rgb;
use super::light::{Light, mixed, speckle};
use super::scene::{Paint, Rim, Scene};
use super::surface::Surface;
use super::view::BodyView;

/// Thickness of the cloth, in stitch widths. Common practice, no source.
const CLOTH: f32 = 0.46;
/// The stuffing: white polyester, as most of it is sold. Common practice, no source.
const STUFFING: Rgb = [240, 234, 222];
/// Where it lies in the shade of the cloth.
const STUFFING_SHADE: Rgb = [206, 196, 180];
/// Tufts drawn a square centimetre, and the most in all.
const TUFTS_PER_CM2: f32 = 7.0;
const MOST_TUFTS: f32 = 700.0;

/// Draws the face, which lies in the plane of the axis before all that is left of the body.
pub(super) fn section(
    view: &BodyView<'_>,
    surface: &Surface,
    stitch: (f32, f32),
    yarns: &[usize],
    scene: &mut Scene,
) {
    let out = view.eye.see([0.0, 1.0, 0.0]);
    if out[2] <= 0.02 {
        return;
    }
    let face = CutFace { view, surface, cloth: CLOTH * stitch.0, light: Light::soft() };
    face.stuffing(scene);
    face.tufts(scene);
    for (round, &yarn) in (1..).zip(yarns) {
        face.cloth(scene, round, view.colour(round, yarn));
    }
}

struct CutFace<'a, 'b> {
    view: &'a BodyView<'b>,
    surface: &'a Surface,
    cloth: f32,
    light: Light,
}

impl CutFace<'_, '_> {
    /// Half the width of the body at a node, `within` mm inside its surface.
    fn half(&self, node: (f32, f32), within: f32) -> f32 {
        (node.0 + 0.5 * self.surface.straight() - within).max(0.0)
    }

    fn fill(&self, colour: Rgb, times: f32, round: Option<u32>) -> Paint {
        let colour = self.light.tint_once(colour, times);
        Paint { colour, depth: f32::MAX, round, stitch: None, rim: Rim::Seen }
    }

    /// Strips across, shaded where they near the cloth.
    fn stuffing(&self, scene: &mut Scene) {
        for (within, share) in [(0.5, 1.0), (1.1, 0.62), (2.0, 0.28), (3.2, 0.0)] {
            let colour = mixed(STUFFING, STUFFING_SHADE, share);
            let paint = self.fill(colour, 0.97, None);
            for pair in self.surface.nodes().windows(2) {
                let (a, b) = (
                    self.half(pair[0], within * self.cloth),
                    self.half(pair[1], within * self.cloth),
                );
                if a.max(b) <= 0.0 {
                    continue;
                }
                let at = |x: f32, z: f32| self.view.at([x, 0.0, z]);
                let (low, high) = (pair[0].1, pair[1].1);
                scene.push(paint, [at(-a, low), at(a, low), at(b, high), at(-b, high)]);
            }
        }
    }

    /// Soft curls of fibre, strewn the same way every time.
    fn tufts(&self, scene: &mut Scene) {
        let nodes = self.surface.nodes();
        // None near the ends, where they would stick out.
        let within = 2..nodes.len().saturating_sub(3) as u32;
        for (k, pair) in (0_u32..).zip(nodes.windows(2)).filter(|(k, _)| within.contains(k)) {
            let inset = 2.6 * self.cloth;
            let wide = 0.5 * (self.half(pair[0], inset) + self.half(pair[1], inset));
            let high = (pair[1].1 - pair[0].1).abs();
            let whole = 2.0 * wide * high * 0.01 * TUFTS_PER_CM2;
            let many =
                whole.min(MOST_TUFTS / nodes.len() as f32) as u32 + u32::from(wide > 1.0);
            for i in 0..many {
                let (salt, seed) = (k * 131 + i, 977 + i);
                let x = wide * speckle(salt, seed);
                let z =
                    pair[0].1 + (pair[1].1 - pair[0].1) * (0.5 + 0.5 * speckle(salt, seed + 1));
                self.tuft(scene, (x, z), salt);
            }
        }
    }

    fn tuft(&self, scene: &mut Scene, at: (f32, f32), salt: u32) {
        let chance = |i: u32| 0.5 + 0.5 * speckle(salt, i);
        let (sin, cos) = (TAU * chance(5)).sin_cos();
        let (long, thick) = (1.4 + 2.2 * chance(6), 0.30 + 0.45 * chance(7));
        let bow = 0.9 * speckle(salt, 8);
        let light = if chance(9) > 0.5 { 1.022 } else { 0.968 };
        let paint = self.fill(STUFFING, light, None);
        let place = |u: f32, v: f32| {
            let (x, z) = (long * u, bow * (1.0 - u * u) + thick * v);
            self.view.at([at.0 + x * cos - z * sin, 0.0, at.1 + x * sin + z * cos])
        };
        // A bowed lens in convex pieces.
        for i in 0..4 {
            let u = |j: i32| 0.5 * (i + j) as f32 - 1.0;
            let v = |u: f32| 1.0 - u * u;
            let (a, b) = (u(0), u(1));
            let corners = [place(a, -v(a)), place(b, -v(b)), place(b, v(b)), place(a, v(a))];
            scene.push(paint, corners);
        }
    }

    /// A round cut through: a bead of its yarn on either side.
    fn cloth(&self, scene: &mut Scene, round: u32, colour: Rgb) {
        let nodes = self.surface.nodes();
        let (a, b) = (nodes[round as usize - 1], nodes[round as usize]);
        let straight = 0.5 * self.surface.straight();
        let (dr, dz) = (b.0 - a.0, b.1 - a.1);
        let length = dr.hypot(dz).max(1e-6);
        let (along, out) = ((dr / length, dz / length), (dz / length, -dr / length));
        let middle = (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1));
        for side in [-1.0, 1.0] {
            for (size, shift, times) in [
                (1.0, (0.0, 0.0), 0.62),
                (0.80, (0.0, 0.0), 0.98),
                (0.40, (-0.14, -0.14), 1.18),
            ] {
                let paint = self.fill(colour, times, Some(round));
                let corner = |i: u32| {
                    let (sin, cos) = (TAU * i as f32 / 12.0).sin_cos();
                    let (u, v) =
                        (0.52 * length * size * cos, 0.5 * self.cloth * (size * sin - 1.0));
                    let x = middle.0 + u * along.0 + v * out.0;
                    let z = middle.1 + u * along.1 + v * out.1;
                    let x = side * (straight + x.max(0.0)) + shift.0 * self.cloth;
                    self.view.at([x, 0.0, z + shift.1 * self.cloth])
                };
                scene.push(paint, (0..12).map(corner));
            }
        }
    }
}
