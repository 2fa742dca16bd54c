//! Vectors of three numbers and frames, `f64`: figures are made of them.

/// A place, mm, or a direction.
pub type V3 = [f64; 3];

pub(super) fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(super) fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn scaled(a: V3, by: f64) -> V3 {
    [a[0] * by, a[1] * by, a[2] * by]
}

/// `a + b·by`.
pub(super) fn plus(a: V3, b: V3, by: f64) -> V3 {
    [b[0].mul_add(by, a[0]), b[1].mul_add(by, a[1]), b[2].mul_add(by, a[2])]
}

pub(super) fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(super) fn length(a: V3) -> f64 {
    dot(a, a).sqrt()
}

pub(super) fn distance(a: V3, b: V3) -> f64 {
    length(sub(a, b))
}

/// `a` at length 1; the null vector stays what it is.
pub(super) fn unit(a: V3) -> V3 {
    let length = length(a);
    if length > 1e-12 { scaled(a, 1.0 / length) } else { a }
}

/// Where a part's own axes lie: its origin, and unit vectors at right angles.
///
/// Of a piece `z` runs along its axis in working order from its start, `y` to its front; of a
/// small thing `z` stands away from what carries it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axes {
    /// The part's own origin, mm.
    pub origin: V3,
    /// Its sideways axis, y × z.
    pub x: V3,
    /// Its axis to the front.
    pub y: V3,
    /// Its own axis.
    pub z: V3,
}

impl Axes {
    /// The frame of the toy itself.
    pub const WORLD: Self =
        Self { origin: [0.0; 3], x: [1.0, 0.0, 0.0], y: [0.0, 1.0, 0.0], z: [0.0, 0.0, 1.0] };

    /// A frame at `origin` whose axis is `z` and whose front is `y`; both at right angles.
    pub(super) fn new(origin: V3, y: V3, z: V3) -> Self {
        Self { origin, x: cross(y, z), y, z }
    }

    /// The place that is `own` in the part's own axes, mm.
    pub fn place(&self, own: V3) -> V3 {
        add(self.origin, self.direction(own))
    }

    /// The direction that is `own` in the part's own axes.
    pub fn direction(&self, own: V3) -> V3 {
        plus(plus(scaled(self.x, own[0]), self.y, own[1]), self.z, own[2])
    }

    /// The place `world` in the part's own axes, mm.
    pub fn own_place(&self, world: V3) -> V3 {
        self.own_direction(sub(world, self.origin))
    }

    /// The direction `world` in the part's own axes.
    pub fn own_direction(&self, world: V3) -> V3 {
        [dot(world, self.x), dot(world, self.y), dot(world, self.z)]
    }
}
