//! One leg of a stitch's V as the eye sees it: a leaf that is as thick as the yarn.

use super::vector::{Eye, V3, sub};

/// Half the outline of a leaf, foot to head: (part of the length, part of half the width).
/// The foot tucks under the stitch below.
const SIDE: [(f32, f32); 5] =
    [(-0.12, 0.50), (0.08, 0.86), (0.40, 1.0), (0.76, 0.98), (1.00, 0.64)];
/// Its two ends.
const ENDS: [f32; 2] = [-0.22, 1.10];
/// Thickness of the yarn out of the cloth, as a part of the leaf's half width.
pub(super) const THICKNESS: f32 = 0.72;

/// A leg in the body's frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Leg {
    /// Where it comes out of the round below.
    pub(super) foot: V3,
    /// Where it ends in the round's own edge.
    pub(super) head: V3,
    /// Half its width at foot and head, mm.
    pub(super) half: (f32, f32),
}

/// A leg in the eye's frame, scaled to pixels.
#[derive(Debug, Clone, Copy)]
pub(super) struct Leaf {
    foot: [f32; 2],
    along: [f32; 2],
    /// Half its width at foot and head, square to `along`.
    half: [[f32; 2]; 2],
}

impl Leaf {
    /// The leaf of a leg on cloth that lies along `across` (unit, the eye's frame) and faces
    /// `normal`.
    pub(super) fn seen(leg: &Leg, eye: &Eye, across: V3, normal: V3, scale: f32) -> Self {
        let foot = eye.see(leg.foot);
        let way = sub(eye.see(leg.head), foot);
        let length = way[0].hypot(way[1]);
        let square =
            if length > 1e-4 { [-way[1] / length, way[0] / length] } else { [1.0, 0.0] };
        // A tube of elliptic section, however it is turned, is as wide as this.
        let flat = across[0] * square[0] + across[1] * square[1];
        let thick = THICKNESS * (normal[0] * square[0] + normal[1] * square[1]);
        let wide = flat.hypot(thick) * scale;
        let half = |mm: f32| [square[0] * wide * mm, square[1] * wide * mm];
        Self {
            foot: [foot[0] * scale, foot[1] * scale],
            along: [way[0] * scale, way[1] * scale],
            half: [half(leg.half.0), half(leg.half.1)],
        }
    }

    /// The point at part `u` of the length and part `s` of half the width.
    pub(super) fn at(&self, u: f32, s: f32) -> [f32; 2] {
        let [foot, head] = self.half;
        let v = u.clamp(0.0, 1.0);
        let wide = |i: usize| s * (foot[i] + v * (head[i] - foot[i]));
        [self.foot[0] + u * self.along[0] + wide(0), self.foot[1] + u * self.along[1] + wide(1)]
    }

    /// Its outline.
    pub(super) fn outline(&self) -> impl Iterator<Item = [f32; 2]> + '_ {
        let up = SIDE.iter().map(|&(u, s)| self.at(u, s));
        let down = SIDE.iter().rev().map(|&(u, s)| self.at(u, -s));
        let ends = ENDS.map(|u| self.at(u, 0.0));
        std::iter::once(ends[0]).chain(up).chain(std::iter::once(ends[1])).chain(down)
    }

    /// A strand on it: from `u` to `u + long` along `s`, `wide` of half its width.
    pub(super) fn strand(&self, u: (f32, f32), s: f32, wide: f32) -> [[f32; 2]; 6] {
        let (from, to) = u;
        let near = from + 0.25 * (to - from);
        let far = from + 0.75 * (to - from);
        [
            self.at(from, s),
            self.at(near, s + wide),
            self.at(far, s + wide),
            self.at(to, s),
            self.at(far, s - wide),
            self.at(near, s - wide),
        ]
    }

    /// Its length, pixels.
    pub(super) fn length(&self) -> f32 {
        self.along[0].hypot(self.along[1])
    }

    /// The unit vector across it on the screen, towards which positive `s` lies.
    pub(super) fn side(&self) -> [f32; 2] {
        let [x, y] = self.half[1];
        let length = x.hypot(y).max(1e-6);
        [x / length, y / length]
    }
}
