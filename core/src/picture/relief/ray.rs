//! A ray from the eye: where it meets a part.
//!
//! Far from the cloth it goes on by its distance from it (sphere tracing: Hart, The Visual
//! Computer 12, 1996), near it to where the surface, bent as it is there, is met; within the
//! cloth's thickness by its height over the stitch below it.

use super::body::Relief;
use super::cloth::Care;
use super::patch::{Beside, Descent, Patch};
use super::pressed::Pressed;
use super::space::{V3, along, fibre, scaled};
use super::view::PosedRelief;

/// Most steps of a ray.
const MOST_STEPS: usize = 96;
/// Height at which the cloth is met where it is drawn smooth, in stitch widths.
pub(super) const SMOOTH: f32 = -0.10;

/// How dense fibres are where they leave the cloth.
const FUZZ: f32 = 0.55;

/// Where a ray would be: `from` + depth × `towards`, in the part's own frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ray {
    pub(super) from: V3,
    /// Unit vector towards the eye.
    pub(super) towards: V3,
}

/// Where a ray meets a part.
#[derive(Debug, Clone, Copy)]
pub(super) struct RayMeeting {
    /// How far towards the eye, mm.
    pub(super) depth: f32,
    /// How much of the ray's width the part covers.
    pub(super) cover: f32,
    /// What it meets there, and how far on from it.
    pub(super) patch: Patch,
    pub(super) gone: f32,
    /// Whether that is the face of a cut, not cloth or stuffing.
    pub(super) is_cut: bool,
}

impl RayMeeting {
    /// Cloth or stuffing, `gone` on from a patch of it.
    fn of(patch: Patch, gone: f32) -> Self {
        Self { depth: patch.depth(gone), cover: 1.0, patch, gone, is_cut: false }
    }
}

/// How much of the ground the fibres hide that stand off the cloth, `far` mm from it.
fn fuzz(relief: &Relief, place: V3, far: f32) -> f32 {
    let halo = relief.halo();
    if far >= halo || halo <= 0.0 {
        return 0.0;
    }
    let part = 1.0 - far.max(0.0) / halo;
    let strands = 0.6 + 0.7 * fibre(scaled(place, 5.0 / relief.stitch));
    FUZZ * part * part * strands
}

impl Ray {
    fn at(&self, depth: f32) -> V3 {
        along(self.from, self.towards, depth)
    }

    /// The same line, seen from behind.
    pub(super) fn back(&self) -> Self {
        Self { from: self.from, towards: scaled(self.towards, -1.0) }
    }

    /// How far towards the eye a bundle of rays of radius `reach` about this one comes to
    /// `relief` between depths `begin` and `end`; nothing if it never does.
    pub(super) fn approach(
        &self,
        relief: &Relief,
        begin: f32,
        end: f32,
        reach: f32,
    ) -> Option<f32> {
        let mut depth = begin;
        for _ in 0..MOST_STEPS {
            let far = relief.far(self.at(depth)) - reach;
            if far < 0.25 * reach {
                return Some(depth);
            }
            depth -= far;
            if depth < end {
                return None;
            }
        }
        Some(depth)
    }

    /// Where the ray, `wide` mm wide and as it runs where the part is round, meets it between depths `begin` and `end`: on its
    /// stitches where `deep`, else on a smooth skin.
    pub(super) fn meet(
        &self,
        placed: &PosedRelief<'_>,
        pressed: &Pressed,
        begin: f32,
        end: f32,
        wide: f32,
        deep: bool,
    ) -> Option<RayMeeting> {
        let relief = placed.relief;
        let (mut depth, end, mut cut) = self.kept(placed.cutaway, begin, end)?;
        let care = Care::new(wide, relief.stitch);
        // Where the cloth is as if it were smooth: a draft, or stitches that have melted.
        let smooth = !deep || care.melted >= 1.0;
        let high = if smooth { SMOOTH * relief.stitch } else { 0.0 };
        let mut closest = (f32::INFINITY, depth);
        // Where the ray was last above the surface, and above the relief, and how far.
        let mut above: Option<(f32, f32)> = None;
        let mut last: Option<(f32, f32)> = None;
        let mut steps = 0;
        while depth >= end {
            steps += 1;
            if steps > MOST_STEPS {
                // Between folds so close that it hardly comes on: it is as good as met.
                closest.0 = closest.0.min(0.0);
                break;
            }
            let place = self.at(depth);
            let found = relief.found(place);
            let near = found.near;
            if near.segment.is_none() && near.far > 0.0 {
                above = Some((near.far, depth));
                depth -= near.far.max(0.05 * relief.thick);
                cut = false;
                continue;
            }
            let beside = Beside::new(relief, place, found);
            let near = beside.near;
            if cut && near.far < SMOOTH * relief.stitch {
                let course = beside.course(relief, self.towards);
                let patch = Patch::bare(beside, course, depth);
                return Some(RayMeeting { is_cut: true, ..RayMeeting::of(patch, 0.0) });
            }
            cut = false;
            let over = near.far - high;
            if over < -0.06 * relief.stitch
                && let Some((was, from)) = above.take()
                && was > 0.0
            {
                // A step too far: back to where the surface is.
                depth = from + (depth - from) * was / (was - over);
                continue;
            }
            let course = beside.course(relief, self.towards);
            if over > 0.02 * relief.stitch {
                above = Some((over, depth));
                if over < closest.0 {
                    closest = (over, depth);
                }
                let (to, meets) = course.down_to(high);
                // No farther than can be told from here, nor through the cloth of another fold.
                let most = (3.0 * over).min(over + 0.35 * relief.thick);
                depth -= if meets {
                    to.clamp(over, most)
                } else if to > 0.3 * over {
                    to.min(most)
                } else {
                    over.max(0.1 * relief.stitch)
                };
                continue;
            }
            above = None;
            let patch = Patch::new(relief, beside, course, depth, (pressed, smooth));
            if smooth {
                return Some(RayMeeting::of(patch, 0.0));
            }
            let before = last.map(|(over, at): (f32, f32)| (over, at - depth));
            match course.descend(relief, patch.layers.as_ref(), before, care) {
                Descent::Meets(gone) => return Some(RayMeeting::of(patch, gone)),
                Descent::Leaves { over, gone, nearest } => {
                    if nearest.0 < closest.0 {
                        closest = (nearest.0, patch.depth(nearest.1));
                    }
                    last = Some((over, patch.depth(gone)));
                    depth -= gone;
                }
            }
        }
        let depth = closest.1;
        let place = self.at(depth);
        let cover = (1.0 - 2.0 * closest.0 / wide).max(fuzz(relief, place, closest.0)).min(1.0);
        if cover < 0.04 {
            return None;
        }
        let beside = Beside::new(relief, place, relief.found(place));
        let course = beside.course(relief, self.towards);
        let patch = Patch::new(relief, beside, course, depth, (pressed, smooth));
        Some(RayMeeting { cover, ..RayMeeting::of(patch, 0.0) })
    }

    /// Between which depths of `begin` and `end` there is something of a part of which perhaps
    /// the half of y > 0 is cut away, and whether the ray begins on the cut.
    fn kept(&self, cutaway: bool, begin: f32, end: f32) -> Option<(f32, f32, bool)> {
        if !cutaway {
            return Some((begin, end, false));
        }
        let (y, dy) = (self.from[1], self.towards[1]);
        if dy > 1e-6 {
            let plane = -y / dy;
            Some((begin.min(plane), end, plane <= begin))
        } else if dy < -1e-6 {
            Some((begin, end.max(-y / dy), false))
        } else {
            (y <= 0.0).then_some((begin, end, false))
        }
    }
}
