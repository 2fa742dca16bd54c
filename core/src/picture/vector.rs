//! Vectors of three numbers, and the turn of the eye. `f32`: a picture needs no more.

use super::Viewpoint;

/// A place or a direction, mm or a unit vector.
pub(super) type V3 = [f32; 3];

pub(super) fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(super) fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn scaled(a: V3, by: f32) -> V3 {
    [a[0] * by, a[1] * by, a[2] * by]
}

pub(super) fn dot(a: V3, b: V3) -> f32 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// `a` at length 1; the null vector stays what it is.
pub(super) fn unit(a: V3) -> V3 {
    let length = dot(a, a).sqrt();
    if length > 1e-12 { scaled(a, 1.0 / length) } else { a }
}

/// Length in the plane. `hypot` guards against an overflow that no piece comes near, for three
/// times the work.
pub(super) fn long([x, y]: [f32; 2]) -> f32 {
    (x * x + y * y).sqrt()
}

pub(super) fn mean(a: V3, b: V3) -> V3 {
    scaled(add(a, b), 0.5)
}

/// The rotation from the body's frame to the eye's: x right, y down, depth towards the eye.
#[derive(Debug, Clone, Copy)]
pub(super) struct Eye {
    turn: (f32, f32),
    tilt: (f32, f32),
}

impl Eye {
    pub(super) fn new(look: &Viewpoint) -> Self {
        Self {
            turn: look.turn_deg.to_radians().sin_cos(),
            tilt: look.tilt_deg.to_radians().sin_cos(),
        }
    }

    /// A direction, or a place whose Z counts from the middle, as the eye sees it.
    pub(super) fn see(&self, v: V3) -> V3 {
        let ((sin, cos), (dip, level)) = (self.turn, self.tilt);
        let across = v[0] * cos + v[1] * sin;
        let front = v[1] * cos - v[0] * sin;
        [across, v[2] * level + front * dip, front * level - v[2] * dip]
    }

    /// Whether the eye is above the level (1), below it (−1) or on it (0).
    pub(super) fn side(&self) -> f32 {
        if self.tilt.0 == 0.0 { 0.0 } else { self.tilt.0.signum() }
    }
}
