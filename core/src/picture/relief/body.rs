//! A piece made ready: its forecast turned about its axis, and its stitches on it.

use std::hash::{Hash, Hasher};

use super::curve::Curve;
use super::fabric::Fabric;
use super::space::{V3, turn_of};
use crate::piece::Piece;
use crate::piece::cloth::Hand;
use crate::plan::Plan;

/// Thickness of cloth, in stitch widths: yarn of half a width, and the half of another that
/// crosses under it. By eye, no source.
const CLOTH: f32 = 0.80;

/// A stuffed piece made ready to be looked at. A pure function of a piece and its plan; it
/// holds no colours, so that a yarn may change its colour without another relief.
#[derive(Debug, Clone)]
pub struct Relief {
    pub(super) curve: Curve,
    pub(super) fabric: Fabric,
    /// Width of a stitch and thickness of the cloth, mm.
    pub(super) stitch: f32,
    pub(super) thick: f32,
    /// Half the straight part of an oval's side, mm.
    pub(super) straight: f32,
    /// −1 where the work runs the other way round: left-handed.
    pub(super) hand: f32,
}

/// A place against the axis.
#[derive(Debug, Clone, Copy)]
pub(super) struct Around {
    /// Distance from the axis, or from an oval's straight middle, mm.
    pub(super) r: f32,
    /// Unit vector away from it.
    pub(super) out: [f32; 2],
    /// How far along an oval's straight middle, mm.
    pub(super) foot: f32,
}

impl Hash for Relief {
    /// By all that it shows.
    fn hash<H: Hasher>(&self, state: &mut H) {
        for numbers in
            self.curve.corners().chain([[self.stitch, self.thick], [self.straight, self.hand]])
        {
            numbers.map(f32::to_bits).hash(state);
        }
        self.fabric.hash(state);
    }
}

impl Relief {
    /// The relief of `plan`, which must be the plan of `piece`.
    pub fn new(piece: &Piece, plan: &Plan) -> Self {
        let stitch = (plan.stitch_mm.width as f32).clamp(0.1, 1e3);
        let thick = CLOTH * stitch;
        let straight =
            if plan.depth_mm.is_some() { 0.5 * piece.straight_mm as f32 } else { 0.0 };
        Self {
            curve: Curve::new(&plan.forecast, thick),
            fabric: Fabric::new(piece, plan),
            stitch,
            thick,
            straight,
            hand: if piece.hand == Hand::Left { -1.0 } else { 1.0 },
        }
    }

    /// Middle of the forecast in its own frame, whose z is 0 at the start, and the radius of a
    /// sphere around it that holds all of it, mm.
    pub fn ball(&self) -> (V3, f32) {
        let (low, high) = (self.curve.low, self.curve.high);
        let across = self.curve.widest + self.straight;
        let radius = across.hypot(0.5 * (high - low)) + 0.2 * self.thick;
        ([0.0, 0.0, 0.5 * (low + high)], radius)
    }

    /// Least and greatest z, and the greatest distance from the axis, mm.
    pub fn extent(&self) -> (f32, f32, f32) {
        (self.curve.low, self.curve.high, self.curve.widest + self.straight)
    }

    /// Pixels a millimetre at which all of it fits into `wide` × `tall` pixels, however it is
    /// turned about its axis and tilted.
    pub fn fitting(&self, wide: f32, tall: f32) -> f32 {
        let (low, high, across) = self.extent();
        let round = across.hypot(0.5 * (high - low));
        (0.5 * wide / across.max(1e-3)).min(0.5 * tall / round.max(1e-3))
    }

    pub(super) fn around(&self, place: V3) -> Around {
        let foot = if self.straight > 0.0 {
            place[0].clamp(-self.straight, self.straight)
        } else {
            0.0
        };
        let x = place[0] - foot;
        let r = (x * x + place[1] * place[1]).sqrt();
        let out = if r > 1e-6 { [x / r, place[1] / r] } else { [0.0, -1.0] };
        Around { r, out, foot: -self.hand * foot }
    }

    /// The part of a turn at a place: rounds begin at the back, −Y, and run to the right as
    /// the viewer sees the front.
    pub(super) fn turn(&self, around: &Around) -> f32 {
        let own = turn_of(-around.out[1], -self.hand * around.out[0]);
        if self.straight <= 0.0 {
            return own;
        }
        // Two half rounds, each before its straight side.
        let (arc, side) = (std::f32::consts::PI * around.r.max(1e-3), 2.0 * self.straight);
        let run = if around.foot.abs() >= self.straight {
            own * 2.0 * arc + if around.foot < 0.0 { side } else { 0.0 }
        } else if around.out[1] > 0.0 {
            arc + self.straight - around.foot
        } else {
            2.0 * arc + side + around.foot + self.straight
        };
        run / (2.0 * (arc + side))
    }

    /// Circumference at distance `r` from the axis, mm.
    pub(super) fn girth(&self, r: f32) -> f32 {
        std::f32::consts::TAU * r + 4.0 * self.straight
    }

    /// How far off the part a place of its own frame is, mm; from afar only a distance that is
    /// surely not too great.
    pub(super) fn far(&self, place: V3) -> f32 {
        self.curve.near(self.around(place).r, place[2]).far
    }
}
