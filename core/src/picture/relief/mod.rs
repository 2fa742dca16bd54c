//! The relief: a stuffed piece with the relief of its stitches, one ray a pixel.
//!
//! A [`Relief`] is a piece and its plan made ready: the forecast turned about its axis, and on
//! it the stitches where placement has them. A [`ReliefScene`] is one or more of them, each in its
//! [`ReliefPose`], as a [`ReliefView`] sees them; [`ReliefScene::rows`] draws a band of its rows.
//!
//! Everything here is a pure function of its arguments: however a picture is cut into bands,
//! and whoever draws them, its bytes are the same.

mod cloth;
mod curve;
mod fabric;
mod hit;
mod outline;
mod patch;
mod profile;
mod ray;
mod scene;
mod shade;
mod shapes;
mod space;
mod still;
mod tile;

use std::hash::{Hash, Hasher};

use cloth::Care;
use curve::{Curve, NearCurve};
use fabric::Fabric;
use space::turn_of;

pub use scene::{PosedRelief, Quality, ReliefScene, ReliefView, Seen};
pub use space::{ReliefPose, V3};
pub use still::{MOST_PIXELS, Still};

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
    curve: Curve,
    fabric: Fabric,
    /// Width of a stitch and thickness of the cloth, mm.
    stitch: f32,
    thick: f32,
    /// Half the straight part of an oval's side, mm.
    straight: f32,
    /// −1 where the work runs the other way round: left-handed.
    hand: f32,
}

/// A place against the axis.
#[derive(Debug, Clone, Copy)]
struct Around {
    /// Distance from the axis, or from an oval's straight middle, mm.
    r: f32,
    /// Unit vector away from it.
    out: [f32; 2],
    /// How far along an oval's straight middle, mm.
    foot: f32,
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

    /// A latitude of the cloth laid flat: from where round `round` (counted from 1) begins
    /// once around it, `up` of its height (0 at its lower edge, 1 at its upper), at `places`
    /// even places. Height of the relief there, mm, 0 at the crests; and the round and stitch
    /// that lie uppermost, counted from 1. Empty for a round there is not.
    pub fn latitude(&self, round: u32, up: f32, places: u32) -> Vec<(f32, u32, u32)> {
        if round == 0 || round > self.fabric.rounds() {
            return Vec::new();
        }
        let care = Care::new(0.0, self.stitch);
        (0..places)
            .filter_map(|i| {
                let on = (i as f32 + 0.5) / places as f32;
                let (along, turn) = self.fabric.place(round - 1, up, on);
                let ([r, z], _) = self.curve.at(along);
                let near = NearCurve { along, ..self.curve.near(r, z) };
                let layers = self.layers(&near, turn, r, 0.0)?;
                let top = layers.top([0.0; 2], care)?;
                Some((layers.high([0.0; 2], care), top.round + 1, top.stitch + 1))
            })
            .collect()
    }

    fn around(&self, place: V3) -> Around {
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
    fn turn(&self, around: &Around) -> f32 {
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
    fn girth(&self, r: f32) -> f32 {
        std::f32::consts::TAU * r + 4.0 * self.straight
    }

    /// How far off the part a place of its own frame is, mm; from afar only a distance that is
    /// surely not too great.
    fn far(&self, place: V3) -> f32 {
        self.curve.near(self.around(place).r, place[2]).far
    }
}
