//! A patch: a place of a part's surface that a ray comes to, with the stitches there, and how
//! rays close by go down into their relief.

use super::body::{Around, Relief, SurfaceSpot};
use super::cloth::{Care, ClothLayers, LayerAsk};
use super::curve::NearCurve;
use super::frill::Waved;
use super::pressed::Pressed;
use super::profile::ProfileStretch;
use super::space::{V3, add, dot, scaled, sub, unit};

/// Most steps within the relief before a ray is looked up where it is anew.
const STEPS: usize = 12;
/// How far a ray may go before it is, in stitch widths, and where the surface is bent tightly.
const ROOM: f32 = 0.7;
const TIGHT_ROOM: f32 = 0.15;
/// How little a ray falls towards the surface a mm for a step down to be reckoned from it:
/// legs are steep.
const LEAST_FALL: f32 = 0.42;
/// How near to the relief it is met, in stitch widths.
const NEAR: f32 = 0.01;
/// How often the last step of a ray is halved.
const HALVINGS: usize = 5;

/// A place against the surface of a part, in the part's own frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beside {
    pub(super) place: V3,
    pub(super) around: Around,
    pub(super) near: NearCurve,
    /// Unit vectors away from the surface, around it in working order and along the profile.
    pub(super) out: V3,
    pub(super) hoop: V3,
    pub(super) meridian: V3,
    /// The wave of a frill there.
    pub(super) wave: Option<SurfaceWave>,
}

/// A frill at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct SurfaceWave {
    /// How much longer the cloth is than the line around.
    long: f32,
    /// How it turns away from its tangent around, a mm.
    bend: f32,
}

/// How a ray runs over the surface: its distance from it, and how far around and along it
/// comes, as it goes on away from the eye.
#[derive(Debug, Clone, Copy)]
pub(super) struct PatchCourse {
    far: f32,
    pub(super) fall: f32,
    bend: f32,
    /// Around and along the profile, mm: where it begins, and for each mm on.
    pub(super) from: [f32; 2],
    pub(super) way: [f32; 2],
}

/// A place where a ray comes to a surface, and the stitches there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Patch {
    pub(super) beside: Beside,
    /// None on stuffing.
    pub(super) layers: Option<ClothLayers>,
    /// The part of a turn at which it lies.
    turn: f32,
    pub(super) course: PatchCourse,
    /// Depth of the place, mm towards the eye.
    depth: f32,
}

/// What becomes of a ray that goes down into the relief.
pub(super) enum Descent {
    /// It meets it so far on.
    Meets(f32),
    /// It is above it still, by `over`, when it has gone so far on; how near it came, and how
    /// far on that was.
    Leaves { over: f32, gone: f32, nearest: (f32, f32) },
}

impl Beside {
    pub(super) fn new(relief: &Relief, place: V3, found: SurfaceSpot) -> Self {
        let SurfaceSpot { around, near, waved } = found;
        let ([ox, oy], [wr, wz]) = (around.out, near.way);
        let smooth = Self {
            place,
            around,
            near,
            out: [wz * ox, wz * oy, -wr],
            hoop: [relief.hand * oy, -relief.hand * ox, 0.0],
            meridian: [wr * ox, wr * oy, wz],
            wave: None,
        };
        waved.map_or(smooth, |waved| smooth.waved(relief, &waved))
    }

    /// The same where a frill is: it climbs and falls on the way around.
    fn waved(self, relief: &Relief, waved: &Waved) -> Self {
        let Self { out, hoop, near, .. } = self;
        let girth = relief.girth(self.around.r).max(0.2 * relief.stitch);
        let along_out = |v: [f32; 2]| v[0] * near.way[1] - v[1] * near.way[0];
        let climb = along_out(waved.a_turn) / girth;
        let bend = along_out(waved.bend) / (girth * girth);
        let long = (1.0 + climb * climb).sqrt();
        Self {
            out: unit(sub(out, scaled(hoop, climb))),
            hoop: unit(add(hoop, scaled(out, climb))),
            near: NearCurve { far: near.far / long, ..near },
            wave: Some(SurfaceWave { long, bend: -bend / (long * long * long) }),
            ..self
        }
    }

    /// How the surface turns away from its tangents around and along, a mm.
    pub(super) fn bends(&self, relief: &Relief) -> [f32; 2] {
        let along = self.near.segment.map_or(0.0, |s| relief.curve.segment(s).bend);
        let straight = self.around.foot.abs() < relief.straight;
        let around = if straight {
            0.0
        } else {
            self.near.way[1] / self.around.r.max(0.2 * relief.stitch)
        };
        [around + self.wave.map_or(0.0, |wave| wave.bend), along]
    }

    /// Length of a turn of it, mm.
    pub(super) fn girth(&self, relief: &Relief) -> f32 {
        relief.girth(self.around.r) * self.wave.map_or(1.0, |wave| wave.long)
    }

    /// The course of a ray from `towards` through the place.
    pub(super) fn course(&self, relief: &Relief, towards: V3) -> PatchCourse {
        let way = [-dot(self.hoop, towards), -dot(self.meridian, towards)];
        let [around, along] = self.bends(relief);
        PatchCourse {
            far: self.near.far,
            fall: dot(self.out, towards),
            bend: around * way[0] * way[0] + along * way[1] * way[1],
            from: [0.0; 2],
            way,
        }
    }

    /// What stretch of the profile it is beside.
    pub(super) fn stretch(&self, relief: &Relief) -> Option<ProfileStretch> {
        self.near.segment.map(|s| relief.curve.segment(s).stretch)
    }
}

impl PatchCourse {
    fn far(&self, gone: f32) -> f32 {
        self.far + gone * (0.5 * self.bend * gone - self.fall)
    }

    /// How far around and along the profile it is `gone` on.
    pub(super) fn aside(&self, gone: f32) -> [f32; 2] {
        [self.from[0] + self.way[0] * gone, self.from[1] + self.way[1] * gone]
    }

    /// The course of a ray beside this one: `over` farther from the tangent plane, and as far
    /// around and along as `from` says, on a surface that bends as `bends` has it.
    pub(super) fn beside(&self, over: f32, from: [f32; 2], bends: [f32; 2]) -> Self {
        let bent = [bends[0] * from[0], bends[1] * from[1]];
        Self {
            far: self.far + over + 0.5 * (bent[0] * from[0] + bent[1] * from[1]),
            fall: self.fall - bent[0] * self.way[0] - bent[1] * self.way[1],
            from,
            ..*self
        }
    }

    /// The same course, begun where it is `gone` on.
    pub(super) fn begun_at(&self, gone: f32) -> Self {
        Self {
            far: self.far(gone),
            fall: self.fall - self.bend * gone,
            from: self.aside(gone),
            ..*self
        }
    }

    /// The same, reckoned around and along from `at`.
    pub(super) fn reckoned_from(&self, at: [f32; 2]) -> Self {
        Self { from: [self.from[0] - at[0], self.from[1] - at[1]], ..*self }
    }

    /// How far on it comes down to `high`, or nearest to it if it does not; whether it does.
    pub(super) fn down_to(&self, high: f32) -> (f32, bool) {
        let over = self.far - high;
        let root = self.fall * self.fall - 2.0 * self.bend * over;
        if root >= 0.0 && (self.fall > 0.0 || self.bend < 0.0) {
            // The form of the root that loses no digits.
            let whole = self.fall + root.sqrt();
            if whole > 1e-6 {
                return (2.0 * over / whole, true);
            }
        }
        if self.fall > 0.0 && self.bend > 1e-9 {
            (self.fall / self.bend, false)
        } else {
            (0.0, false)
        }
    }

    /// Follows the ray from here down into the relief of `layers`; `last` is how far above it
    /// was when it was last looked up, and how far before this.
    pub(super) fn descend(
        &self,
        relief: &Relief,
        layers: Option<&ClothLayers>,
        last: Option<(f32, f32)>,
        care: Care,
    ) -> Descent {
        let stitch = relief.stitch;
        let Some(layers) = layers else {
            // Stuffing is smooth.
            return Descent::Meets(self.far / self.fall.max(0.3));
        };
        let tight = self.bend.abs() * stitch > 0.35;
        let most = if tight { TIGHT_ROOM } else { ROOM } * stitch;
        let most = most.min(layers.room(self.from, self.way) + NEAR * stitch);
        let near = care.near.max(NEAR) * stitch;
        let (mut gone, mut nearest) = (0.0, (f32::INFINITY, 0.0));
        let mut last = last.map_or((0.0, f32::INFINITY), |(over, before)| (-before, over));
        let over_at = |gone| self.far(gone) - layers.high(self.aside(gone), care);
        for _ in 0..STEPS {
            let far = self.far(gone);
            let over = over_at(gone);
            if over < nearest.0 {
                nearest = (over, gone);
            }
            if over < near {
                let has_passed = over < -near && last.1.is_finite() && last.1 > 0.0;
                let met = if has_passed { halved([last.0, gone], near, over_at) } else { gone };
                return Descent::Meets(met);
            }
            last = (gone, over);
            if gone >= most || far > 0.03 * stitch && self.bend * gone > self.fall {
                break;
            }
            let step = over / self.fall.max(LEAST_FALL);
            gone = (gone + step.clamp(0.02 * stitch, 0.20 * stitch)).min(most);
        }
        Descent::Leaves { over: last.1, gone: gone.max(NEAR * stitch), nearest }
    }
}

/// Where a ray that is over the relief at the first place and under it at the second passes
/// it, to within `near`. By halves: legs have walls, on which a straight line between the two
/// says little.
fn halved([mut above, mut below]: [f32; 2], near: f32, over: impl Fn(f32) -> f32) -> f32 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (above + below);
        let over = over(middle);
        if over.abs() < near {
            return middle;
        }
        if over > 0.0 { above = middle } else { below = middle }
    }
    below
}

impl Patch {
    /// Where a ray comes to at `depth` by `course`.
    pub(super) fn new(
        relief: &Relief,
        beside: Beside,
        course: PatchCourse,
        depth: f32,
        (pressed, alone): (&Pressed, bool),
    ) -> Self {
        let (turn, longer) = pressed.turn(relief.turn(&beside.around));
        let lift = pressed.lift(beside.out);
        let ahead = course.ahead(relief);
        let girth = beside.girth(relief) / longer;
        let ask = LayerAsk { ahead, lift, alone };
        let layers = relief.layers(&beside.near, (turn, girth), beside.around.r, ask);
        Self { beside, layers, turn, course, depth }
    }

    /// The face of a cut there, which has no stitches of its own.
    pub(super) fn bare(beside: Beside, course: PatchCourse, depth: f32) -> Self {
        Self { beside, layers: None, turn: 0.0, course, depth }
    }

    /// Depth of a place `gone` on, mm towards the eye.
    pub(super) fn depth(&self, gone: f32) -> f32 {
        self.depth - gone
    }

    /// The stitches that `course`, of a ray beside the patch's own, comes down among where it
    /// begins; nothing where that is beyond the cloth.
    pub(super) fn layers_at(
        &self,
        relief: &Relief,
        course: &PatchCourse,
        alone: bool,
    ) -> Option<ClothLayers> {
        let Beside { near, around, .. } = &self.beside;
        let segment = relief.curve.segment(near.segment?);
        let [aside, along] = course.from;
        let along_rounds = near.along + along * segment.per_mm;
        if !(0.0..=relief.fabric.reach()).contains(&along_rounds) {
            return None;
        }
        let near = NearCurve { along: along_rounds, ..*near };
        let r = around.r + along * near.way[0];
        let turn = self.turn + aside / relief.girth(around.r).max(1e-3);
        let ask = LayerAsk { ahead: course.ahead(relief), lift: 1.0, alone };
        relief.layers(&near, (turn, relief.girth(r)), r, ask)
    }
}

impl PatchCourse {
    /// About how far along the profile the ray goes until it is met.
    fn ahead(&self, relief: &Relief) -> f32 {
        let gone = (0.34 * relief.stitch / self.fall.max(0.3)).min(ROOM * relief.stitch);
        self.way[1] * gone
    }
}
