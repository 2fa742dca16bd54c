//! What a ray meets, and the light on it.

use super::body::Relief;
use super::cloth::Care;
use super::facet::{Facet, FacetMet};
use super::patch::Beside;
use super::profile::ProfileStretch;
use super::shade::{Lit, ShadeGround};
use super::space::{V3, add, chance, eased, fibre, scaled, unit};
use super::view::Seen;

/// How much of the relief's own normal light sees: wool scatters it.
const ROUGH: f32 = 0.70;
/// How much one stitch's tint differs from the next: yarn is never even.
const UNEVEN_TINT: f32 = 0.045;

/// How deep stuffing is as light as it is anywhere, in thicknesses of the cloth.
const FILLED: f32 = 2.6;

/// How a place is looked at.
pub(super) struct HitLook<'a> {
    pub(super) relief: &'a Relief,
    /// How wide a sample is, mm.
    pub(super) wide: f32,
    /// Whether there is stuffing in it.
    pub(super) stuffed: bool,
}

impl HitLook<'_> {
    /// The light on a place of a facet, and what the map says of it: round and stitch counted
    /// from 1.
    pub(super) fn on(&self, facet: &Facet, met: &FacetMet<'_>) -> (Lit, Seen) {
        let (relief, beside) = (self.relief, &facet.patch.beside);
        // Seen aslant, a sample covers more of it.
        let care = Care::new(self.wide / facet.out[2].max(0.12).sqrt(), relief.stitch);
        let top = met.layers.and_then(|layers| layers.top(met.aside, care));
        let Some(top) = top else {
            let inside = if self.stuffed { self.stuffing(facet) } else { self.hollow(facet) };
            return (inside, Seen::default());
        };
        // The surface turns on the way from the middle of the facet.
        let leans = [facet.bends[0] * met.off[0], facet.bends[1] * met.off[1]];
        let leant = |around: f32, along: f32| {
            let aside = add(scaled(facet.hoop, around), scaled(facet.meridian, along));
            unit(add(facet.out, aside))
        };
        let smooth = leant(leans[0], leans[1]);
        let rough = leant(leans[0] - top.slope[0], leans[1] - top.slope[1]);
        let normal = unit(add(scaled(rough, ROUGH), scaled(smooth, 1.0 - ROUGH)));
        let rounds = relief.fabric.rounds();
        let apart = 1.0 - care.melted;
        let tint = UNEVEN_TINT * chance(top.stitch + 7, top.round + 31) * apart;
        let within = if beside.stretch(relief) == Some(ProfileStretch::Within) {
            let along = beside.near.along;
            1.0 / (1.0 + 0.55 * along.min(rounds as f32 - along).max(0.0))
        } else {
            1.0
        };
        let round = top.round.min(rounds.saturating_sub(1));
        let lit = Lit {
            normal,
            smooth,
            groove: top.light,
            open: within,
            tint: 1.0 + tint,
            ground: relief.ground(round, top.stitch),
        };
        let number = |n: u32| (n + 1).min(65_535) as u16;
        (lit, Seen { part: 0, round: number(round), stitch: number(top.stitch) })
    }

    fn stuffing(&self, facet: &Facet) -> Lit {
        let normal = unit(facet.out);
        Lit {
            normal,
            smooth: normal,
            groove: self.fluff(facet.patch.beside.place),
            open: 0.72,
            tint: 1.0,
            ground: ShadeGround::Stuffing,
        }
    }

    /// What is seen in the opening of a part with nothing in it: the dark of its inside.
    fn hollow(&self, facet: &Facet) -> Lit {
        let last = self.relief.fabric.rounds().saturating_sub(1);
        let ground = self.relief.ground(last, 0);
        let normal = unit(facet.out);
        Lit { normal, smooth: normal, groove: 0.5, open: 0.3, tint: 1.0, ground }
    }

    /// The face of a cut: cloth, and the stuffing in it.
    pub(super) fn cut(&self, beside: &Beside) -> Lit {
        let relief = self.relief;
        let near = match beside.near.segment {
            // Deep inside it is told surely enough that all is stuffing.
            None if -beside.near.far > FILLED * relief.thick => beside.near,
            Some(s) if relief.curve.segment(s).stretch == ProfileStretch::Outside => {
                beside.near
            }
            _ => relief.curve.within(beside.around.r, beside.place[2]),
        };
        let (deep, along) = (-near.far / relief.thick, near.along.max(0.0));
        let cloth = deep < 1.0;
        let round = (along as u32).min(relief.fabric.rounds().saturating_sub(1));
        let facing = [0.0, 0.0, 1.0];
        // Two strands of yarn in every round, one behind the other.
        let across =
            [2.0 * (along - along.floor()) - 1.0, 4.0 * (deep.clamp(0.0, 1.0) % 0.5) - 1.0];
        let off = across[0] * across[0] + across[1] * across[1];
        let (groove, ground) = if cloth {
            let bead = 0.92 - 0.30 * eased(0.35, 1.7, off);
            (bead, relief.ground(round, 0))
        } else {
            let shade = eased(0.6, FILLED, deep);
            ((0.55 + 0.45 * shade) * self.fluff(beside.place), ShadeGround::Stuffing)
        };
        Lit { normal: facing, smooth: facing, groove, open: 1.0, tint: 1.0, ground }
    }

    /// How light stuffing is at a place, 0 to 1: curls of fibre.
    fn fluff(&self, place: V3) -> f32 {
        let size = self.relief.stitch;
        let bent = |salt: f32| fibre(scaled(place, 0.7 / size).map(|p| p + salt));
        let bent = [bent(0.0), bent(17.0), bent(31.0)];
        let warped = add(scaled(place, 1.7 / size), scaled(bent, 1.6));
        // Crests of a bent field are lines: strands.
        let strand = 1.0 - fibre(warped).abs() * 2.2;
        // What is finer than a sample is left out.
        let seen = 1.0 - eased(0.15, 0.5, self.wide / size);
        let fine = if seen > 0.0 {
            seen * (1.0 - fibre(scaled(warped, 2.3)).abs() * 2.2).max(0.0)
        } else {
            0.0
        };
        (0.80 + 0.16 * strand.max(0.0) + 0.10 * fine + 0.10 * bent[0]).clamp(0.0, 1.0)
    }
}

impl Relief {
    /// The yarn of a stitch, both counted from 0.
    fn ground(&self, round: u32, stitch: u32) -> ShadeGround {
        let yarn = self.fabric.yarn(round, stitch);
        ShadeGround::Yarn { round: round + 1, yarn, face: self.fabric.face(yarn) }
    }
}
