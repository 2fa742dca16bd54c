//! One leg of a stitch's V as the eye sees it: a leaf that is as thick as the yarn.

use super::vector::{Eye, V3, long, sub};

/// Half the outline of a leaf, foot to head: (part of the length, part of half the width).
/// The foot tucks under the stitch below.
const SIDE: [(f32, f32); 5] =
    [(-0.12, 0.50), (0.08, 0.86), (0.40, 1.0), (0.76, 0.98), (1.00, 0.64)];
/// Its two ends.
const ENDS: [f32; 2] = [-0.22, 1.10];
/// Corners of a leaf, and of a small one, which shows no more: half a side between the ends.
const CORNERS: usize = 2 * SIDE.len() + 2;
const SMALL_SIDE: [(f32, f32); 3] = [(-0.02, 0.76), (0.52, 1.0), (0.98, 0.72)];
const SMALL_CORNERS: usize = 2 * SMALL_SIDE.len() + 2;
/// Leaves at least this long, pixels, are drawn in full.
const FULL_FROM: f32 = 12.0;
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

/// The corners of a polygon, in one place of memory.
#[derive(Debug, Clone, Copy)]
pub(super) struct Corners {
    places: [[f32; 2]; CORNERS],
    many: usize,
}

impl Corners {
    fn of<const N: usize>(corners: [[f32; 2]; N]) -> Self {
        let mut places = [[0.0; 2]; CORNERS];
        places[..N].copy_from_slice(&corners);
        Self { places, many: N }
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = [f32; 2]> + '_ {
        self.places[..self.many].iter().copied()
    }
}

impl Leaf {
    /// The leaf of a leg on cloth that lies along `across` (unit, the eye's frame) and faces
    /// `normal`.
    pub(super) fn seen(leg: &Leg, eye: &Eye, across: V3, normal: V3, scale: f32) -> Self {
        let foot = eye.see(leg.foot);
        let way = sub(eye.see(leg.head), foot);
        let length = long([way[0], way[1]]);
        let square =
            if length > 1e-4 { [-way[1] / length, way[0] / length] } else { [1.0, 0.0] };
        // A tube of elliptic section, however it is turned, is as wide as this.
        let flat = across[0] * square[0] + across[1] * square[1];
        let thick = THICKNESS * (normal[0] * square[0] + normal[1] * square[1]);
        let wide = long([flat, thick]) * scale;
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

    /// Whether it is long enough for all its corners and the plies of its yarn.
    pub(super) fn is_full(&self) -> bool {
        self.length() >= FULL_FROM
    }

    /// Its outline.
    pub(super) fn outline(&self) -> Corners {
        if self.is_full() {
            Corners::of(self.around::<CORNERS>(&SIDE))
        } else {
            Corners::of(self.around::<SMALL_CORNERS>(&SMALL_SIDE))
        }
    }

    /// Foot end, one side, head end and the other side back.
    fn around<const N: usize>(&self, side: &[(f32, f32)]) -> [[f32; 2]; N] {
        let (n, last) = (side.len(), N - 1);
        std::array::from_fn(|i| match i {
            0 => self.at(ENDS[0], 0.0),
            i if i <= n => self.at(side[i - 1].0, side[i - 1].1),
            i if i == n + 1 => self.at(ENDS[1], 0.0),
            i => self.at(side[last - i].0, -side[last - i].1),
        })
    }

    /// A strand on it: from `from` to `to` of its length along `s`, `wide` of half its width.
    pub(super) fn strand(&self, (from, to): (f32, f32), s: f32, wide: f32) -> Corners {
        let at = |part: f32, s: f32| self.at(from + part * (to - from), s);
        if self.is_full() {
            let (low, high) = (s - wide, s + wide);
            Corners::of([
                at(0.0, s),
                at(0.25, high),
                at(0.75, high),
                at(1.0, s),
                at(0.75, low),
                at(0.25, low),
            ])
        } else {
            Corners::of([at(0.0, s), at(0.5, s + wide), at(1.0, s), at(0.5, s - wide)])
        }
    }

    /// Its length, pixels.
    pub(super) fn length(&self) -> f32 {
        long(self.along)
    }

    /// The unit vector across it on the screen, towards which positive `s` lies.
    pub(super) fn side(&self) -> [f32; 2] {
        let length = long(self.half[1]).max(1e-6);
        self.half[1].map(|part| part / length)
    }
}
