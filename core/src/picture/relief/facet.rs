//! A facet: a small stretch of a part's surface that many rays come to together, so that it
//! is found once for all of them.

use super::body::Relief;
use super::cloth::{Care, ClothLayers};
use super::patch::{Descent, Patch};
use super::profile::ProfileStretch;
use super::space::{Turned, V3, turned};

/// How squarely a facet must look at the eye to be shared: aslant little goes far.
const LEAST_FALL: f32 = 0.16;
/// How many times as far as its rays reach the axis must be: about a pole around and along
/// turn quickly.
const FROM_AXIS: f32 = 7.0;
/// How much of a radian the surface may turn within it.
const MOST_TURN: f32 = 0.14;
/// How often a ray is looked up anew before it has left a facet.
const LOOKS: usize = 4;
/// How far up its round a ray may come down, beside the first, among the same stitches.
const SAME_STITCHES: f32 = 0.12;

/// A patch, as the eye sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Facet {
    pub(super) patch: Patch,
    /// Away from the surface, around it and along it, in the eye's frame.
    pub(super) out: V3,
    pub(super) hoop: V3,
    pub(super) meridian: V3,
    /// How the surface turns around and along, a mm.
    pub(super) bends: [f32; 2],
}

/// Where a ray meets a facet.
#[derive(Debug, Clone, Copy)]
pub(super) struct FacetMet<'l> {
    pub(super) layers: Option<&'l ClothLayers>,
    /// How far around and along the profile from where `layers` were looked up, mm.
    pub(super) aside: [f32; 2],
    /// The same from the middle of the facet.
    pub(super) off: [f32; 2],
    /// How far before the depth of the patch, mm from the eye.
    pub(super) gone: f32,
}

impl Facet {
    /// Of a patch, seen by `eye`: right, down and towards the eye in the part's own frame.
    pub(super) fn new(relief: &Relief, eye: &Turned, patch: Patch) -> Self {
        let beside = &patch.beside;
        Self {
            out: turned(eye, beside.out),
            hoop: turned(eye, beside.hoop),
            meridian: turned(eye, beside.meridian),
            bends: beside.bends(relief),
            patch,
        }
    }

    /// Whether rays up to `reach` mm beside its own may be met on it, when nothing of the part
    /// is nearer to the eye than `begin`, anywhere there.
    pub(super) fn serves(&self, relief: &Relief, reach: f32, begin: f32) -> bool {
        let beside = &self.patch.beside;
        let fall = self.out[2];
        let turns = self.bends[0].abs().max(self.bends[1].abs()) * reach;
        let is_bare = beside.stretch(relief) != Some(ProfileStretch::Outside);
        // As near as rays come together, or another fold hides it in part.
        let before = (begin - self.patch.depth(0.0)) * fall;
        !is_bare
            && beside.wave.is_none()
            && fall > LEAST_FALL
            && beside.around.r > FROM_AXIS * reach
            && turns < MOST_TURN
            && before < 3.2 * reach + 1.5 * relief.halo() + 0.05 * relief.stitch
    }

    /// Where the patch's own ray meets it, `gone` on.
    pub(super) fn met(&self, gone: f32) -> FacetMet<'_> {
        let aside = self.patch.course.aside(gone);
        FacetMet { layers: self.patch.layers.as_ref(), aside, off: aside, gone }
    }

    /// Tells `found` where a ray `off` mm right and down of the patch's own meets it: on its
    /// stitches, or at the height `smooth` says. Nothing where it leaves them.
    pub(super) fn meet<R>(
        &self,
        relief: &Relief,
        off: [f32; 2],
        (smooth, care): (Option<f32>, Care),
        found: impl FnOnce(&FacetMet<'_>) -> Option<R>,
    ) -> Option<R> {
        let aside = |way: V3| way[0] * off[0] + way[1] * off[1];
        let from = [aside(self.hoop), aside(self.meridian)];
        let course = self.patch.course.beside(aside(self.out), from, self.bends);
        let (begin, comes) = course.down_to(smooth.unwrap_or(0.0));
        if !comes {
            return None;
        }
        // The course from where the patch is, and where it was last begun.
        let mut course = course.begun_at(begin);
        let mut gone = begin;
        let own = self.patch.layers.as_ref()?;
        let mut looked_up;
        let mut layers = own;
        let mut at = [0.0; 2];
        let mut last = None;
        for look in 0..LOOKS {
            if look > 0 || !own.holds(course.from, SAME_STITCHES) {
                at = course.from;
                looked_up = self.patch.layers_at(relief, &course, smooth.is_some())?;
                layers = &looked_up;
            }
            let own = course.reckoned_from(at);
            let on = match smooth {
                Some(_) => Descent::Meets(0.0),
                None => own.descend(relief, Some(layers), last, care),
            };
            match on {
                Descent::Meets(on) => {
                    let aside = own.aside(on);
                    let off = [aside[0] + at[0], aside[1] + at[1]];
                    let layers = Some(layers);
                    return found(&FacetMet { layers, aside, off, gone: gone + on });
                }
                Descent::Leaves { over, gone: on, .. } => {
                    course = course.begun_at(on);
                    gone += on;
                    last = Some((over, 0.0));
                }
            }
            if course.fall < 0.0 {
                return None;
            }
        }
        None
    }
}
