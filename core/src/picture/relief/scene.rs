//! The scene: parts as they stand to one another, seen from one side.

use super::body::Relief;
use super::cloth::Care;
use super::facet::{Facet, FacetMet};
use super::hit::HitLook;
use super::patch::{Beside, Patch};
use super::plain::{PlainMet, PosedPlain};
use super::pressed::Pressed;
use super::ray::{Ray, RayMeeting, SMOOTH};
use super::sample::RaySample;
use super::shade::{Dyes, PlainDye};
use super::space::{Turned, V3, add, along, dot, scaled, sub, turned};
use super::view::{PosedRelief, Quality, ReliefFilling, ReliefView, Seen};

/// A part as the eye sees it.
struct ShownPart<'a> {
    placed: PosedRelief<'a>,
    pressed: Pressed,
    dyes: Dyes,
    /// Right, down and towards the eye, in the part's own frame where it is round.
    eye: Turned,
    /// How many mm of that frame one towards the eye is.
    pace: f32,
    /// The place in that frame that is in the middle of the picture.
    middle: V3,
    /// The sphere around it: middle in the eye's frame, and radius, mm.
    around: (V3, f32),
}

/// A thing without stitches as the eye sees it.
struct ShownPlain {
    placed: PosedPlain,
    /// How much it hides of what is behind: what is thinner than a pixel is drawn as wide as
    /// one, but faint.
    cover: f32,
    dye: PlainDye,
    eye: Turned,
    middle: V3,
    around: (V3, f32),
}

/// A part near a bundle of rays: between which depths they may meet it, mm towards the eye.
#[derive(Debug, Clone, Copy)]
pub(super) struct NearPart {
    pub(super) part: usize,
    pub(super) begin: f32,
    end: f32,
}

/// What is near a block of pixels.
#[derive(Default)]
pub(super) struct NearBlock {
    /// Parts.
    pub(super) parts: Vec<NearPart>,
    /// Things without stitches.
    pub(super) plain: Vec<usize>,
}

/// A scene made ready to be drawn, a band of rows at a time, by as many threads as there are.
pub struct ReliefScene<'a> {
    parts: Vec<ShownPart<'a>>,
    plain: Vec<ShownPlain>,
    view: ReliefView,
}

/// Half the thickness of the thinnest rod that is drawn as thick as it is, pixels: thinner, it
/// would be met by some rays and missed by their neighbours.
const THINNEST: f32 = 0.6;

impl<'a> ReliefScene<'a> {
    /// The scene of `parts`, at most 65,534 of them, as `view` sees it.
    pub fn new(parts: &[PosedRelief<'a>], view: &ReliefView) -> Self {
        let eye = view.eye();
        let shown = |placed: &PosedRelief<'a>| {
            let own = eye.map(|way| placed.pose.own_direction(way));
            let (ball, radius) = placed.relief.ball();
            let away = sub(placed.pose.place(ball), view.middle);
            let pressed = match placed.filling {
                ReliefFilling::Pressed => Pressed::of(placed.relief),
                ReliefFilling::Stuffed | ReliefFilling::Empty => Pressed::NOT,
            };
            let own = pressed.rounds(&own);
            ShownPart {
                placed: *placed,
                pressed,
                dyes: Dyes::new(placed.colours, placed.lit),
                pace: dot(own[2], own[2]).sqrt(),
                eye: own,
                middle: pressed.round(placed.pose.own_place(view.middle)),
                around: (turned(&eye, away), radius * pressed.wider()),
            }
        };
        let parts = parts.iter().take(65_534).map(shown).collect();
        Self { parts, plain: Vec::new(), view: *view }
    }

    /// The same scene with things without stitches among its parts. The map counts them on
    /// from the last part; together there are at most 65,534.
    #[must_use]
    pub fn with_plain(mut self, plain: &[PosedPlain]) -> Self {
        let eye = self.view.eye();
        let shown = |placed: &PosedPlain| {
            let (ball, radius) = placed.form.ball();
            let away = sub(placed.pose.place(ball), self.view.middle);
            let (form, cover) = placed.form.at_least(THINNEST / self.view.scale);
            ShownPlain {
                placed: PosedPlain { form, ..*placed },
                cover,
                dye: PlainDye::new(placed.colour, placed.shines),
                eye: eye.map(|way| placed.pose.own_direction(way)),
                middle: placed.pose.own_place(self.view.middle),
                around: (turned(&eye, away), radius),
            }
        };
        let left = 65_534 - self.parts.len();
        self.plain = plain.iter().take(left).map(shown).collect();
        self
    }

    /// The view it is seen in.
    pub fn view(&self) -> &ReliefView {
        &self.view
    }

    /// Where in the eye's frame a place of the picture is, mm.
    pub(super) fn at(&self, x: f32, y: f32) -> [f32; 2] {
        let [wide, tall] = self.view.size.map(|s| s as f32);
        [(x - 0.5 * wide) / self.view.scale, (y - 0.5 * tall) / self.view.scale]
    }

    /// What rays may meet that are no farther than `reach` mm from a place.
    pub(super) fn near(&self, at: [f32; 2], reach: f32, near: &mut NearBlock) {
        near.parts.clear();
        near.plain.clear();
        for (i, part) in self.parts.iter().enumerate() {
            let (middle, radius) = part.around;
            let (dx, dy) = (at[0] - middle[0], at[1] - middle[1]);
            if dx * dx + dy * dy > (radius + reach) * (radius + reach) {
                continue;
            }
            let near_part =
                NearPart { part: i, begin: middle[2] + radius, end: middle[2] - radius };
            near.parts.extend(self.nearer(&near_part, at, reach));
        }
        for (i, thing) in self.plain.iter().enumerate() {
            let (middle, radius) = thing.around;
            let (dx, dy) = (at[0] - middle[0], at[1] - middle[1]);
            if dx * dx + dy * dy <= (radius + reach) * (radius + reach) {
                near.plain.push(i);
            }
        }
    }

    /// The same for fewer rays of the bundle, no farther than `reach` mm from a place; nothing
    /// if they never come to the part.
    fn nearer(&self, near: &NearPart, at: [f32; 2], reach: f32) -> Option<NearPart> {
        let part = &self.parts[near.part];
        let reach = reach * part.pressed.most() + part.placed.relief.halo();
        let (begin, end) = (near.begin * part.pace, near.end * part.pace);
        let begin = part.ray(at).approach(part.placed.relief, begin, end, reach)?;
        Some(NearPart { begin: begin / part.pace, ..*near })
    }

    /// The same, from the front and from behind: what lies between is all that they may meet.
    pub(super) fn between(
        &self,
        near: &NearPart,
        at: [f32; 2],
        reach: f32,
    ) -> Option<NearPart> {
        let near = self.nearer(near, at, reach)?;
        let part = &self.parts[near.part];
        let reach = reach * part.pressed.most() + part.placed.relief.halo();
        // Seen from behind, depths are of the other sign.
        let ray = part.ray(at).back();
        let (begin, end) = (-near.end * part.pace, -near.begin * part.pace);
        let end = ray.approach(part.placed.relief, begin, end, reach);
        Some(NearPart { end: end.map_or(near.begin, |end| -end / part.pace), ..near })
    }

    /// What one ray shows, where parts and things without stitches may hide one another. A
    /// facet of a part serves it, `off` mm right and down of that's own ray, unless it leaves it.
    pub(super) fn sample(
        &self,
        at: [f32; 2],
        near: (&[NearPart], &[usize]),
        facet: Option<(usize, &Facet, [f32; 2])>,
        wide: f32,
    ) -> RaySample {
        let on_facet = |(part, facet, off): (usize, &Facet, [f32; 2])| {
            let shown = &self.parts[part];
            let relief = shown.placed.relief;
            let care = Care::new(wide, relief.stitch);
            facet.meet(relief, off, (self.smooth(relief, care), care), |met| {
                let kept = shown.keeps(facet, met);
                kept.then(|| self.on_facet(part, facet, met, 1.0, wide))
            })
        };
        let own = facet.and_then(on_facet).unwrap_or_else(|| {
            let met = self.meet(at, near.0, wide);
            met.map_or_else(RaySample::default, |(part, met)| self.shown(part, &met, wide))
        });
        let things = near.1.iter().filter_map(|&i| Some((i, self.plain[i].meet(at)?)));
        let nearest = things.max_by(|(_, a), (_, b)| a.depth.total_cmp(&b.depth));
        let Some((i, plain)) = nearest else { return own };
        let shown = &self.plain[i];
        let [r, g, b] = shown.dye.colour(turned(&shown.eye, plain.normal));
        let number = (self.parts.len() + i + 1) as u16;
        let of = Seen { part: number, ..Seen::default() };
        let behind = RaySample::new([r, g, b], shown.cover, of, plain.depth);
        if own.colour[3] <= 0.0 || own.depth <= plain.depth {
            let left = 1.0 - shown.cover;
            let colour = [0, 1, 2, 3].map(|c| behind.colour[c] + left * own.colour[c]);
            let of = if left <= 0.5 || own.colour[3] <= 0.0 { behind.of } else { own.of };
            return RaySample { colour, of, ..behind };
        }
        let left = 1.0 - own.colour[3] / 255.0;
        let colour = [0, 1, 2, 3].map(|c| own.colour[c] + left * behind.colour[c]);
        RaySample { colour, of: if left <= 0.5 { own.of } else { behind.of }, ..own }
    }

    /// The height at which cloth is met that is drawn as if it were smooth: a draft, or
    /// stitches that have melted.
    fn smooth(&self, relief: &Relief, care: Care) -> Option<f32> {
        let deep = self.view.quality == Quality::Full;
        (!deep || care.melted >= 1.0).then_some(SMOOTH * relief.stitch)
    }

    /// A patch of part `part` as the eye sees it.
    pub(super) fn facet(&self, part: usize, patch: Patch) -> Facet {
        let shown = &self.parts[part];
        Facet::new(shown.placed.relief, &shown.eye, patch)
    }

    /// Width of the narrowest stitch of any part, mm.
    pub(super) fn finest(&self) -> f32 {
        let stitches = self.parts.iter().map(|part| part.placed.relief.stitch);
        stitches.fold(f32::INFINITY, f32::min)
    }

    pub(super) fn relief(&self, part: usize) -> &Relief {
        self.parts[part].placed.relief
    }

    /// Whether a part is as round as its relief.
    pub(super) fn is_round(&self, part: usize) -> bool {
        self.parts[part].pressed.is_none()
    }

    /// What the ray at a place of the picture, `wide` mm wide, meets first, and of which part.
    pub(super) fn meet(
        &self,
        at: [f32; 2],
        near: &[NearPart],
        wide: f32,
    ) -> Option<(usize, RayMeeting)> {
        let mut best: Option<(usize, RayMeeting)> = None;
        let deep = self.view.quality == Quality::Full;
        for &NearPart { part: i, begin, mut end } in near {
            let part = &self.parts[i];
            if let Some((_, found)) = &best
                && found.cover >= 1.0
            {
                end = end.max(found.depth);
            }
            let (ray, pace) = (part.ray(at), part.pace);
            let (placed, pressed) = (&part.placed, &part.pressed);
            let met = ray.meet(placed, pressed, begin * pace, end * pace, wide, deep);
            let Some(met) = met else { continue };
            let met = RayMeeting { depth: met.depth / pace, ..met };
            // A ray that only grazes a part is not kept from those behind it.
            let nearer = best.as_ref().is_none_or(|(_, found)| {
                met.cover > found.cover || (met.cover == found.cover && met.depth > found.depth)
            });
            if nearer {
                best = Some((i, met));
            }
        }
        best
    }

    /// What is met of part `part`.
    fn shown(&self, part: usize, met: &RayMeeting, wide: f32) -> RaySample {
        let shown = &self.parts[part];
        if met.is_cut {
            let beside = &met.patch.beside;
            let mut lit = shown.look(wide).cut(beside);
            lit.open *= self.open(part, beside);
            let of = Seen { part: part as u16 + 1, ..Seen::default() };
            return RaySample::new(shown.dyes.colour(&lit), met.cover, of, met.depth);
        }
        let facet = self.facet(part, met.patch);
        let own = self.on_facet(part, &facet, &facet.met(met.gone), met.cover, wide);
        RaySample { depth: met.depth, ..own }
    }

    /// What is met of a facet of part `part`.
    fn on_facet(
        &self,
        part: usize,
        facet: &Facet,
        met: &FacetMet<'_>,
        cover: f32,
        wide: f32,
    ) -> RaySample {
        let shown = &self.parts[part];
        let look = shown.look(wide);
        let (mut lit, seen) = look.on(facet, met);
        lit.open *= self.open(part, &facet.patch.beside);
        let of = Seen { part: part as u16 + 1, ..seen };
        let depth = facet.patch.depth(met.gone) / shown.pace;
        RaySample::new(shown.dyes.colour(&lit), cover, of, depth)
    }

    /// How much light comes to a place past the other parts.
    fn open(&self, own: usize, beside: &Beside) -> f32 {
        if self.parts.len() < 2 {
            return 1.0;
        }
        let pose = &self.parts[own].placed.pose;
        let (place, out) = self.parts[own].pressed.back(beside.place, beside.out);
        let (place, out) = (pose.place(place), pose.direction(out));
        let mut open = 1.0;
        for far in [3.0_f32, 7.0, 13.0] {
            let there = along(place, out, far);
            let mut free = far;
            for (i, part) in self.parts.iter().enumerate() {
                if i != own {
                    let own = part.placed.pose.own_place(there);
                    let far = part.placed.relief.far(part.pressed.round(own));
                    free = free.min(far * part.pressed.nearer(own));
                }
            }
            open -= 0.17 * ((far - free) / far).clamp(0.0, 1.2);
        }
        open.max(0.35)
    }
}

impl ShownPlain {
    /// Where the ray through a place of the picture meets it.
    fn meet(&self, at: [f32; 2]) -> Option<PlainMet> {
        let [right, down, towards] = self.eye;
        let from = add(self.middle, add(scaled(right, at[0]), scaled(down, at[1])));
        self.placed.form.meet(&Ray { from, towards })
    }
}

impl ShownPart<'_> {
    /// The ray through a place of the picture, from the eye.
    fn ray(&self, at: [f32; 2]) -> Ray {
        let [right, down, towards] = self.eye;
        let from = add(self.middle, add(scaled(right, at[0]), scaled(down, at[1])));
        Ray { from, towards: scaled(towards, 1.0 / self.pace) }
    }

    fn look(&self, wide: f32) -> HitLook<'_> {
        let stuffed = self.placed.filling == ReliefFilling::Stuffed;
        HitLook { relief: self.placed.relief, wide, stuffed }
    }

    /// Whether what is met of a facet is not cut away.
    fn keeps(&self, facet: &Facet, met: &FacetMet<'_>) -> bool {
        if !self.placed.cutaway {
            return true;
        }
        let Beside { place, hoop, meridian, .. } = &facet.patch.beside;
        place[1] + hoop[1] * met.off[0] + meridian[1] * met.off[1] < 0.0
    }
}
