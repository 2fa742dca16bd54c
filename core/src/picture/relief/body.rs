//! A piece made ready: its forecast turned about its axis, and its stitches on it.

use std::hash::{Hash, Hasher};

use super::curve::{Curve, NearCurve};
use super::fabric::Fabric;
use super::frill::{Frill, Waved};
use super::space::{V3, turn_of};
use crate::piece::cloth::Hand;
use crate::piece::{Piece, YarnFace};
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
    frill: Option<Frill>,
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

/// A place against the surface, frills and all.
#[derive(Debug, Clone, Copy)]
pub(super) struct SurfaceSpot {
    pub(super) around: Around,
    pub(super) near: NearCurve,
    pub(super) waved: Option<Waved>,
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
        for number in self.frill.iter().flat_map(Frill::numbers) {
            number.to_bits().hash(state);
        }
    }
}

impl Relief {
    /// The relief of `plan`, which must be the plan of `piece`.
    pub fn new(piece: &Piece, plan: &Plan) -> Self {
        let stitch = (plan.stitch_mm.width as f32).clamp(0.1, 1e3);
        let thick = CLOTH * stitch;
        let straight =
            if plan.depth_mm.is_some() { 0.5 * piece.straight_mm as f32 } else { 0.0 };
        let curve = Curve::new(&plan.forecast, thick);
        Self {
            frill: Frill::of(plan, &curve).filter(|_| straight <= 0.0),
            curve,
            fabric: Fabric::new(piece, plan),
            stitch,
            thick,
            straight,
            hand: if piece.hand == Hand::Left { -1.0 } else { 1.0 },
        }
    }

    /// The same in yarns of these faces; those it does not name are smooth.
    #[must_use]
    pub fn in_yarns(self, faces: &[YarnFace]) -> Self {
        Self { fabric: self.fabric.of_faces(faces), ..self }
    }

    /// How far fibres stand off the cloth, mm.
    pub(super) fn halo(&self) -> f32 {
        self.fabric.halo() * self.stitch
    }

    /// Middle of the forecast in its own frame, whose z is 0 at the start, and the radius of a
    /// sphere around it that holds all of it, mm.
    pub fn ball(&self) -> (V3, f32) {
        let (low, high, across) = self.extent();
        let radius = across.hypot(0.5 * (high - low)) + 0.2 * self.thick;
        ([0.0, 0.0, 0.5 * (low + high)], radius)
    }

    /// Least and greatest z, and the greatest distance from the axis, mm.
    pub fn extent(&self) -> (f32, f32, f32) {
        let wave = self.wave();
        let across = self.curve.widest + self.straight + wave;
        (self.curve.low - wave, self.curve.high + wave, across)
    }

    /// Pixels a millimetre at which all of it fits into `wide` × `tall` pixels, however it is
    /// turned about its axis and tilted.
    pub fn fitting(&self, wide: f32, tall: f32) -> f32 {
        let (low, high, across) = self.extent();
        let round = across.hypot(0.5 * (high - low));
        (0.5 * wide / across.max(1e-3)).min(0.5 * tall / round.max(1e-3))
    }

    /// Height of its highest frill, mm.
    pub(super) fn wave(&self) -> f32 {
        self.frill.as_ref().map_or(0.0, |frill| frill.most)
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
        self.found(place).near.far
    }

    /// A place of its own frame against the surface: from afar only a distance that is surely
    /// not too great.
    pub(super) fn found(&self, place: V3) -> SurfaceSpot {
        let around = self.around(place);
        let Some(frill) = &self.frill else {
            return SurfaceSpot {
                around,
                near: self.curve.near(around.r, place[2]),
                waved: None,
            };
        };
        let waved = frill.at(around.r, place[2], self.turn(&around));
        let (r, z) = ((around.r - waved.by[0]).max(0.0), place[2] - waved.by[1]);
        let near = self.curve.near(r, z);
        let far = if near.segment.is_some() { near.far } else { near.far * frill.pace };
        let is_waved = waved.a_turn != [0.0; 2] || waved.bend != [0.0; 2];
        let waved = Some(waved).filter(|_| is_waved && near.segment.is_some());
        SurfaceSpot { around: Around { r, ..around }, near: NearCurve { far, ..near }, waved }
    }
}
