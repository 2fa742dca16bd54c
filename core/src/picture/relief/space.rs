//! Places and directions in space, and how a part stands in its scene. `f32`: a picture needs
//! no more.

/// A place or a direction, mm or a unit vector.
pub type V3 = [f32; 3];

pub(super) fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(super) fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn scaled(a: V3, by: f32) -> V3 {
    [a[0] * by, a[1] * by, a[2] * by]
}

pub(super) fn along(a: V3, way: V3, far: f32) -> V3 {
    [a[0] + way[0] * far, a[1] + way[1] * far, a[2] + way[2] * far]
}

pub(super) fn dot(a: V3, b: V3) -> f32 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// `a` at length 1; the null vector stays what it is.
pub(super) fn unit(a: V3) -> V3 {
    let length = dot(a, a).sqrt();
    if length > 1e-12 { scaled(a, 1.0 / length) } else { a }
}

/// A rotation, by its rows.
pub(super) type Turned = [V3; 3];

pub(super) fn turned(by: &Turned, v: V3) -> V3 {
    [dot(by[0], v), dot(by[1], v), dot(by[2], v)]
}

/// By the rotation that undoes `by`.
pub(super) fn turned_back(by: &Turned, v: V3) -> V3 {
    add(add(scaled(by[0], v[0]), scaled(by[1], v[1])), scaled(by[2], v[2]))
}

/// How a part stands in the scene: its own frame, whose Z is the axis in working order from
/// z = 0 of the forecast, and whose rounds begin at −Y, is turned and then moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReliefPose {
    /// Where the part's own x, y and z axes point in the scene: unit vectors square to one
    /// another, right-handed.
    pub axes: [V3; 3],
    /// Where its origin lies in the scene, mm.
    pub at: V3,
}

impl Default for ReliefPose {
    /// As it lies in its own frame.
    fn default() -> Self {
        Self { axes: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]], at: [0.0; 3] }
    }
}

impl ReliefPose {
    /// Where a place of the part lies in the scene.
    pub fn place(&self, own: V3) -> V3 {
        add(self.direction(own), self.at)
    }

    /// Where a direction of the part points in the scene.
    pub fn direction(&self, own: V3) -> V3 {
        turned_back(&self.axes, own)
    }

    /// Where a place of the scene lies in the part's own frame.
    pub(super) fn own_place(&self, place: V3) -> V3 {
        turned(&self.axes, sub(place, self.at))
    }

    pub(super) fn own_direction(&self, way: V3) -> V3 {
        turned(&self.axes, way)
    }
}

/// The part of a full turn, 0 to 1, at which (x, y) lies from the +x axis towards +y. Within
/// 2e-6 of the arctangent; much faster, and the same on every machine.
pub(super) fn turn_of(x: f32, y: f32) -> f32 {
    let (ax, ay) = (x.abs(), y.abs());
    let (low, high) = if ax < ay { (ax, ay) } else { (ay, ax) };
    let t = low / high.max(1e-20);
    // Odd polynomial for atan(t)/2π on [0, 1]: Abramowitz and Stegun 4.4.49, scaled.
    const INVERSE: f32 = 1.0 / std::f32::consts::TAU;
    let q = t * t;
    let p = 0.002_866_225_7_f32;
    let p = p * q - 0.016_165_737;
    let p = p * q + 0.042_909_614;
    let p = p * q - 0.075_289_64;
    let p = p * q + 0.106_562_64;
    let p = p * q - 0.142_089;
    let p = p * q + 0.199_935_51;
    let p = p * q - 0.333_331_45;
    let a = t * (p * q + 1.0) * INVERSE;
    let a = if ax < ay { 0.25 - a } else { a };
    let a = if x < 0.0 { 0.5 - a } else { a };
    let a = if y < 0.0 { 1.0 - a } else { a };
    if a >= 1.0 { 0.0 } else { a }
}

/// A number from −1 to 1 that looks like chance and is the same every time.
pub(super) fn chance(a: u32, b: u32) -> f32 {
    // A mix of bits in the manner of integer hashes; any odd constants would do.
    let mut x = a.wrapping_mul(0x9E37_79B1) ^ b.wrapping_mul(0x85EB_CA77);
    x = (x ^ (x >> 15)).wrapping_mul(0x2C1B_3C6D);
    x = (x ^ (x >> 12)).wrapping_mul(0x297A_2D39);
    x ^= x >> 15;
    (x >> 8) as f32 / 8_388_607.5 - 1.0
}

/// 0 below `from`, 1 above `to`, smooth between.
pub(super) fn eased(from: f32, to: f32, at: f32) -> f32 {
    let t = ((at - from) / (to - from)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// The whole number at or below `x`, for numbers that are not great: without a call.
pub(super) fn whole(x: f32) -> f32 {
    let cut = x as i32 as f32;
    if cut > x { cut - 1.0 } else { cut }
}

pub(super) fn mix(a: f32, b: f32, part: f32) -> f32 {
    a + (b - a) * part
}

/// A smooth field of chance over space, −1 to 1: the same at a place every time.
pub(super) fn fibre(place: V3) -> f32 {
    let cell = place.map(whole);
    let part = [0, 1, 2].map(|i| eased(0.0, 1.0, place[i] - cell[i]));
    let mut value = 0.0;
    for (i, j, k) in (0..8).map(|n| (n & 1, (n >> 1) & 1, n >> 2)) {
        let weight = |on: i32, part: f32| if on == 1 { part } else { 1.0 - part };
        let at = [cell[0] as i32 + i, cell[1] as i32 + j, cell[2] as i32 + k].map(|n| n as u32);
        let own = chance(at[0] ^ at[1].rotate_left(11), at[2]);
        value += own * weight(i, part[0]) * weight(j, part[1]) * weight(k, part[2]);
    }
    value
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_turn_is_that_of_the_arctangent() {
        for i in 0..5000 {
            let angle = i as f32 / 5000.0 * std::f32::consts::TAU;
            let (sin, cos) = angle.sin_cos();
            let off = turn_of(3.0 * cos, 3.0 * sin) - i as f32 / 5000.0;
            let off = off - off.round();
            assert!(off.abs() < 2e-6, "{i}: {off}");
        }
    }

    #[test]
    fn a_pose_takes_places_there_and_back() {
        let (sin, cos) = 0.7_f32.sin_cos();
        let pose = ReliefPose {
            axes: [[cos, sin, 0.0], [0.0, 0.0, 1.0], [sin, -cos, 0.0]],
            at: [1.0, -2.0, 3.0],
        };
        let own = [0.3, 5.0, -1.0];
        let back = pose.own_place(pose.place(own));
        for i in 0..3 {
            assert!((own[i] - back[i]).abs() < 1e-5, "{back:?}");
        }
    }
}
