//! A patch: a place of a part's surface that a ray comes to, with the stitches there, and how
//! rays close by go down into their relief.

use super::body::{Around, Relief};
use super::cloth::{Care, ClothLayers};
use super::curve::NearCurve;
use super::profile::ProfileStretch;
use super::space::{V3, dot};

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
}

/// How a ray runs over the surface: its distance from it, and how far around and along it
/// comes, as it goes on away from the eye.
#[derive(Debug, Clone, Copy)]
pub(super) struct PatchCourse {
    far: f32,
    fall: f32,
    bend: f32,
    /// Around and along the profile, mm: where it begins, and for each mm on.
    from: [f32; 2],
    way: [f32; 2],
}

/// A place where a ray comes to a surface, and the stitches there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Patch {
    pub(super) beside: Beside,
    /// None on stuffing.
    pub(super) layers: Option<ClothLayers>,
    course: PatchCourse,
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
    pub(super) fn new(relief: &Relief, place: V3, around: Around, near: NearCurve) -> Self {
        let ([ox, oy], [wr, wz]) = (around.out, near.way);
        Self {
            place,
            around,
            near,
            out: [wz * ox, wz * oy, -wr],
            hoop: [relief.hand * oy, -relief.hand * ox, 0.0],
            meridian: [wr * ox, wr * oy, wz],
        }
    }

    /// The course of a ray from `towards` through the place.
    pub(super) fn course(&self, relief: &Relief, towards: V3) -> PatchCourse {
        let way = [-dot(self.hoop, towards), -dot(self.meridian, towards)];
        let along = self.near.segment.map_or(0.0, |s| relief.curve.segment(s).bend);
        let straight = self.around.foot.abs() < relief.straight;
        let around = if straight {
            0.0
        } else {
            self.near.way[1] / self.around.r.max(0.2 * relief.stitch)
        };
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

    fn aside(&self, gone: f32) -> [f32; 2] {
        [self.from[0] + self.way[0] * gone, self.from[1] + self.way[1] * gone]
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
}

impl Patch {
    /// Where a ray from `towards` comes to at `depth`.
    pub(super) fn new(
        relief: &Relief,
        beside: Beside,
        course: PatchCourse,
        depth: f32,
    ) -> Self {
        // About how far along the profile the ray goes until it is met.
        let gone = (0.34 * relief.stitch / course.fall.max(0.3)).min(ROOM * relief.stitch);
        let turn = relief.turn(&beside.around);
        let layers = relief.layers(&beside.near, turn, beside.around.r, course.way[1] * gone);
        Self { beside, layers, course, depth }
    }

    /// Depth of a place `gone` on, mm towards the eye.
    pub(super) fn depth(&self, gone: f32) -> f32 {
        self.depth - gone
    }

    /// Where a ray is `gone` on that runs `off` (own frame, mm) beside the one the patch was
    /// made for: how far around and along the profile from the patch.
    pub(super) fn aside(&self, off: Option<V3>, gone: f32) -> [f32; 2] {
        self.shifted(off).aside(gone)
    }

    fn shifted(&self, off: Option<V3>) -> PatchCourse {
        let Some(off) = off else { return self.course };
        PatchCourse {
            far: self.course.far + dot(self.beside.out, off),
            from: [dot(self.beside.hoop, off), dot(self.beside.meridian, off)],
            ..self.course
        }
    }

    /// Follows the ray down into the relief, or one that runs `off` beside it; `last` is how
    /// far above it was when it was last looked up, and how far before the patch.
    pub(super) fn descend(
        &self,
        relief: &Relief,
        off: Option<V3>,
        last: Option<(f32, f32)>,
        care: Care,
    ) -> Descent {
        let stitch = relief.stitch;
        let course = self.shifted(off);
        let Some(layers) = &self.layers else {
            // Stuffing is smooth.
            return Descent::Meets(course.far / course.fall.max(0.3));
        };
        let tight = course.bend.abs() * stitch > 0.35;
        let most = if tight { TIGHT_ROOM } else { ROOM } * stitch;
        // From the crests, if the other ray begins below them.
        let begin = if off.is_some() {
            (course.far / course.fall.max(0.2)).clamp(-most, 0.0)
        } else {
            0.0
        };
        let most =
            most.min(layers.room(course.aside(begin), course.way) + begin + NEAR * stitch);
        let (mut gone, mut nearest) = (begin, (f32::INFINITY, 0.0));
        let mut last = last.map_or((0.0, f32::INFINITY), |(over, before)| (-before, over));
        for _ in 0..STEPS {
            let far = course.far(gone);
            let over = far - layers.high(course.aside(gone), care);
            if over < nearest.0 {
                nearest = (over, gone);
            }
            if over < NEAR * stitch {
                // Between the last step and this one, in a straight line.
                let back = over < 0.0 && last.1.is_finite() && last.1 > 0.0;
                let share = if back { last.1 / (last.1 - over) } else { 1.0 };
                return Descent::Meets(last.0 + (gone - last.0) * share);
            }
            last = (gone, over);
            if gone >= most || far > 0.03 * stitch && course.bend * gone > course.fall {
                break;
            }
            let step = over / course.fall.max(LEAST_FALL);
            gone = (gone + step.clamp(0.02 * stitch, 0.20 * stitch)).min(most);
        }
        Descent::Leaves { over: last.1, gone: gone.max(NEAR * stitch), nearest }
    }
}
