//! Things without stitches in a scene: eyes and noses, blocks, cords and wires.

use super::ray::Ray;
use super::space::{ReliefPose, V3, add, dot, scaled, unit};
use crate::picture::Rgb;

/// The form of a thing without stitches, in its own frame, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BareForm {
    /// An ellipsoid about the origin: half its size along x, y and z.
    Ball(V3),
    /// A block about the z axis, from z = 0 on: its size along x, y and z.
    Block(V3),
    /// A rod along the z axis from z = 0 on, rounded at both ends.
    Rod {
        /// Half its thickness.
        radius: f32,
        /// Length between the middles of its round ends.
        long: f32,
    },
}

/// A thing without stitches in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PosedPlain {
    /// Its form.
    pub form: BareForm,
    /// How it stands.
    pub pose: ReliefPose,
    /// Its colour.
    pub colour: Rgb,
    /// Whether it shines, as plastic does.
    pub shines: bool,
}

/// Where a ray meets a thing: how far towards the eye, mm, and the normal there, in its frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct PlainMet {
    pub(super) depth: f32,
    pub(super) normal: V3,
}

impl BareForm {
    /// Middle and radius of a sphere that holds all of it.
    pub fn ball(self) -> (V3, f32) {
        match self {
            Self::Ball(half) => ([0.0; 3], half.into_iter().fold(0.0, f32::max)),
            Self::Block(size) => {
                let half = size.map(|s| 0.5 * s);
                ([0.0, 0.0, half[2]], dot(half, half).sqrt())
            }
            Self::Rod { radius, long } => ([0.0, 0.0, 0.5 * long], 0.5 * long + radius),
        }
    }

    /// Places of its own frame that reach as far as any of it, each way along each axis.
    pub fn reach(self) -> [V3; 8] {
        let (low, high) = match self {
            Self::Ball(half) => (half.map(|h| -h), half),
            Self::Block([x, y, z]) => ([-0.5 * x, -0.5 * y, 0.0], [0.5 * x, 0.5 * y, z]),
            Self::Rod { radius, long } => {
                ([-radius, -radius, -radius], [radius, radius, long + radius])
            }
        };
        std::array::from_fn(|corner| {
            std::array::from_fn(|i| if corner >> i & 1 == 1 { high[i] } else { low[i] })
        })
    }

    /// It, no thinner than `least` mm to either side of its axis where it is a rod, and how
    /// much of that it fills.
    pub(super) fn at_least(self, least: f32) -> (Self, f32) {
        match self {
            Self::Rod { radius, long } if radius > 0.0 && radius < least => {
                (Self::Rod { radius: least, long }, radius / least)
            }
            other => (other, 1.0),
        }
    }

    /// Where a ray from the eye meets it first.
    pub(super) fn meet(self, ray: &Ray) -> Option<PlainMet> {
        let (from, towards) = (ray.from, ray.towards);
        let at = |depth: f32| add(from, scaled(towards, depth));
        match self {
            Self::Ball(half) => {
                let over = half.map(|h| 1.0 / h.max(1e-4));
                let by = |v: V3| [v[0] * over[0], v[1] * over[1], v[2] * over[2]];
                let depth = sphere(by(from), by(towards), 1.0)?;
                let place = by(at(depth));
                Some(PlainMet { depth, normal: unit(by(place)) })
            }
            Self::Block(size) => block(from, towards, size),
            Self::Rod { radius, long } => {
                let ends = [0.0, long].into_iter().filter_map(|z| {
                    let depth = sphere([from[0], from[1], from[2] - z], towards, radius)?;
                    let place = at(depth);
                    let normal = unit([place[0], place[1], place[2] - z]);
                    Some(PlainMet { depth, normal })
                });
                let side = side(from, towards, radius).and_then(|depth| {
                    let place = at(depth);
                    let normal = unit([place[0], place[1], 0.0]);
                    (0.0..=long).contains(&place[2]).then_some(PlainMet { depth, normal })
                });
                ends.chain(side).max_by(|a, b| a.depth.total_cmp(&b.depth))
            }
        }
    }
}

/// How far towards the eye a line leaves a sphere about the origin.
fn sphere(from: V3, towards: V3, radius: f32) -> Option<f32> {
    let (a, b) = (dot(towards, towards), dot(from, towards));
    let under = b * b - a * (dot(from, from) - radius * radius);
    (under >= 0.0 && a > 0.0).then(|| (under.sqrt() - b) / a)
}

/// How far towards the eye a line leaves a cylinder about the z axis.
fn side(from: V3, towards: V3, radius: f32) -> Option<f32> {
    let flat = |v: V3| [v[0], v[1], 0.0];
    sphere(flat(from), flat(towards), radius)
}

/// Where a line leaves a block.
fn block(from: V3, towards: V3, size: V3) -> Option<PlainMet> {
    let low = [-0.5 * size[0], -0.5 * size[1], 0.0];
    let high = [0.5 * size[0], 0.5 * size[1], size[2]];
    let (mut into, mut out) = (f32::NEG_INFINITY, f32::INFINITY);
    let mut normal = [0.0; 3];
    for i in 0..3 {
        if towards[i].abs() < 1e-9 {
            if !(low[i]..=high[i]).contains(&from[i]) {
                return None;
            }
            continue;
        }
        let ends = [low[i], high[i]].map(|edge| (edge - from[i]) / towards[i]);
        into = into.max(ends[0].min(ends[1]));
        let leaves = ends[0].max(ends[1]);
        if leaves < out {
            out = leaves;
            normal = [0.0; 3];
            normal[i] = towards[i].signum();
        }
    }
    (into <= out && out.is_finite()).then_some(PlainMet { depth: out, normal })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ray(from: V3, towards: V3) -> Ray {
        Ray { from, towards: unit(towards) }
    }

    fn near(a: V3, b: V3) -> bool {
        (0..3).all(|i| (a[i] - b[i]).abs() < 1e-4)
    }

    #[test]
    fn a_ball_is_met_where_it_is_nearest_to_the_eye() {
        let ball = BareForm::Ball([2.0, 3.0, 4.0]);
        let met = ball.meet(&ray([0.0; 3], [0.0, 1.0, 0.0])).expect("it is met");
        assert!((met.depth - 3.0).abs() < 1e-4 && near(met.normal, [0.0, 1.0, 0.0]), "{met:?}");
        let met = ball.meet(&ray([1.0, 0.0, 0.0], [0.0, 0.0, 1.0])).expect("it is met");
        // z = 4 √(1 − ¼) there, and the normal is along (x/4, 0, z/16).
        assert!((met.depth - 12.0_f32.sqrt()).abs() < 1e-4, "{met:?}");
        assert!(near(met.normal, unit([0.25, 0.0, 12.0_f32.sqrt() / 16.0])), "{met:?}");
        assert!(ball.meet(&ray([2.1, 0.0, 0.0], [0.0, 0.0, 1.0])).is_none());
    }

    #[test]
    fn a_block_stands_on_its_origin() {
        let block = BareForm::Block([4.0, 6.0, 10.0]);
        let met = block.meet(&ray([1.0, 1.0, 0.0], [0.0, 0.0, 1.0])).expect("it is met");
        assert!((met.depth - 10.0).abs() < 1e-4 && near(met.normal, [0.0, 0.0, 1.0]));
        let met = block.meet(&ray([1.0, 1.0, 5.0], [0.0, -1.0, 0.0])).expect("it is met");
        assert!((met.depth - 4.0).abs() < 1e-4 && near(met.normal, [0.0, -1.0, 0.0]));
        assert!(block.meet(&ray([1.0, 1.0, -0.1], [0.0, -1.0, 0.0])).is_none());
    }

    #[test]
    fn a_thin_rod_is_wider_and_fainter() {
        let rod = BareForm::Rod { radius: 0.1, long: 8.0 };
        let (wider, cover) = rod.at_least(0.4);
        assert_eq!(wider, BareForm::Rod { radius: 0.4, long: 8.0 });
        assert!((cover - 0.25).abs() < 1e-6);
        assert_eq!(rod.at_least(0.05), (rod, 1.0));
    }

    #[test]
    fn a_rod_is_round_at_its_ends() {
        let rod = BareForm::Rod { radius: 1.0, long: 8.0 };
        let met = rod.meet(&ray([0.0; 3], [0.0, 0.0, 1.0])).expect("it is met");
        assert!((met.depth - 9.0).abs() < 1e-4, "{met:?}");
        let met = rod.meet(&ray([0.0, 0.0, 4.0], [1.0, 0.0, 0.0])).expect("it is met");
        assert!((met.depth - 1.0).abs() < 1e-4 && near(met.normal, [1.0, 0.0, 0.0]));
        let (middle, radius) = rod.ball();
        assert!(near(middle, [0.0, 0.0, 4.0]) && (radius - 5.0).abs() < 1e-4);
        assert!(rod.meet(&ray([0.0, 0.0, 9.1], [1.0, 0.0, 0.0])).is_none());
    }
}
