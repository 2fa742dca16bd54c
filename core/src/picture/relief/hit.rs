//! What a ray meets, and the light on it.

use super::body::Relief;
use super::cloth::Care;
use super::patch::{Beside, Patch};
use super::profile::ProfileStretch;
use super::ray::RayMet;
use super::shade::{Lit, ShadeGround};
use super::space::{Turned, V3, add, chance, dot, eased, scaled, turned, unit};
use super::view::Seen;

/// How much of the relief's own normal light sees: wool scatters it.
const ROUGH: f32 = 0.70;
/// How much one stitch's tint differs from the next: yarn is never even.
const UNEVEN_TINT: f32 = 0.045;

/// How a place is looked at.
pub(super) struct HitLook<'a> {
    pub(super) relief: &'a Relief,
    /// Right, down and towards the eye, in the part's own frame.
    pub(super) eye: &'a Turned,
    /// How wide a sample is, mm.
    pub(super) wide: f32,
}

impl HitLook<'_> {
    /// The light on what is met, and what the map says of it: round and stitch counted from 1.
    pub(super) fn on(&self, met: &RayMet) -> (Lit, Seen) {
        match met {
            RayMet::Patch(patch, gone) => self.on_patch(patch, None, *gone),
            RayMet::Cut(beside) => (self.cut(beside), Seen::default()),
        }
    }

    /// As [`Self::on`], where a ray `off` beside that of the patch meets it `gone` on.
    pub(super) fn on_patch(&self, patch: &Patch, off: Option<V3>, gone: f32) -> (Lit, Seen) {
        let (relief, beside) = (self.relief, &patch.beside);
        let aside = patch.aside(off, gone);
        let slant = dot(beside.out, self.eye[2]).max(0.12);
        // Seen aslant, a sample covers more of it.
        let care = Care::new(self.wide / slant.sqrt(), relief.stitch);
        let top = patch.layers.as_ref().and_then(|layers| layers.top(aside, care));
        let Some(top) = top else { return (self.stuffing(beside), Seen::default()) };
        let [around, along] = top.slope;
        let rise = add(scaled(beside.hoop, -around), scaled(beside.meridian, -along));
        let rough = unit(add(beside.out, rise));
        let normal = unit(add(scaled(rough, ROUGH), scaled(beside.out, 1.0 - ROUGH)));
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
            normal: turned(self.eye, normal),
            smooth: turned(self.eye, beside.out),
            groove: top.light,
            open: within,
            tint: 1.0 + tint,
            ground: ShadeGround::Yarn { round: round + 1, yarn: relief.fabric.yarn(round) },
        };
        let number = |n: u32| (n + 1).min(65_535) as u16;
        (lit, Seen { part: 0, round: number(round), stitch: number(top.stitch) })
    }

    fn stuffing(&self, beside: &Beside) -> Lit {
        let normal = turned(self.eye, beside.out);
        Lit {
            normal,
            smooth: normal,
            groove: self.fluff(beside.place),
            open: 0.72,
            tint: 1.0,
            ground: ShadeGround::Stuffing,
        }
    }

    /// The face of a cut: cloth, and the stuffing in it.
    fn cut(&self, beside: &Beside) -> Lit {
        let relief = self.relief;
        let near = relief.curve.within(beside.around.r, beside.place[2]);
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
            (bead, ShadeGround::Yarn { round: round + 1, yarn: relief.fabric.yarn(round) })
        } else {
            let shade = eased(0.6, 2.6, deep);
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
        let fine = 1.0 - fibre(scaled(warped, 2.3)).abs() * 2.2;
        let fine = fine.max(0.0) * (1.0 - eased(0.15, 0.5, self.wide / size));
        (0.80 + 0.16 * strand.max(0.0) + 0.10 * fine + 0.10 * bent[0]).clamp(0.0, 1.0)
    }
}

/// A smooth field of chance over space, −1 to 1: the same at a place every time.
fn fibre(place: V3) -> f32 {
    let cell = place.map(f32::floor);
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
