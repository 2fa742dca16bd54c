//! The scene: parts as they stand to one another, seen from one side.

use super::cloth::Care;
use super::hit::HitLook;
use super::patch::{Descent, Patch};
use super::plain::{PlainMet, PosedPlain};
use super::ray::{Ray, RayMeeting, RayMet};
use super::shade::{Dyes, PlainDye};
use super::space::{Turned, V3, add, along, scaled, sub, turned};
use super::view::{PosedRelief, Quality, ReliefView, Seen};

/// A part as the eye sees it.
struct ShownPart<'a> {
    placed: PosedRelief<'a>,
    dyes: Dyes,
    /// Right, down and towards the eye, in the part's own frame.
    eye: Turned,
    /// The place in the part's own frame that is in the middle of the picture.
    middle: V3,
    /// The sphere around it: middle in the eye's frame, and radius, mm.
    around: (V3, f32),
}

/// A thing without stitches as the eye sees it.
struct ShownPlain {
    placed: PosedPlain,
    dye: PlainDye,
    eye: Turned,
    middle: V3,
    around: (V3, f32),
}

/// What is near a block of pixels.
#[derive(Default)]
struct NearBlock {
    /// Parts, each with how far towards the eye its rays begin.
    parts: Vec<(usize, f32)>,
    /// Things without stitches.
    plain: Vec<usize>,
}

/// A scene made ready to be drawn, a band of rows at a time, by as many threads as there are.
pub struct ReliefScene<'a> {
    parts: Vec<ShownPart<'a>>,
    plain: Vec<ShownPlain>,
    view: ReliefView,
}

/// One in each row and in each column of a four by four grid of a pixel, opposite ones first.
const PLACES: [[f32; 2]; 4] =
    [[-0.125, -0.375], [0.125, 0.375], [0.375, -0.125], [-0.375, 0.125]];
/// Side of a block of pixels that are brought near the surface together.
const BLOCK: u32 = 4;
/// Samples of a pixel that differ by no more than this, of 255, are as good as one.
const ALIKE: f32 = 9.0;

impl<'a> ReliefScene<'a> {
    /// The scene of `parts`, at most 65,534 of them, as `view` sees it.
    pub fn new(parts: &[PosedRelief<'a>], view: &ReliefView) -> Self {
        let eye = view.eye();
        let shown = |placed: &PosedRelief<'a>| {
            let own = eye.map(|way| placed.pose.own_direction(way));
            let (ball, radius) = placed.relief.ball();
            let away = sub(placed.pose.place(ball), view.middle);
            ShownPart {
                placed: *placed,
                dyes: Dyes::new(placed.colours, placed.lit),
                eye: own,
                middle: placed.pose.own_place(view.middle),
                around: (turned(&eye, away), radius),
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
            ShownPlain {
                placed: *placed,
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

    /// Draws rows `from` to before `to` of the picture into `pixels`, premultiplied RGBA, and
    /// what is seen there into `map`: both row by row, as long as the rows are. Where they are
    /// shorter, the rest is left out.
    ///
    /// A row does not depend on which others are drawn with it.
    pub fn rows(&self, from: u32, to: u32, pixels: &mut [[u8; 4]], map: &mut [Seen]) {
        let [wide, tall] = self.view.size;
        let to = to.min(tall);
        pixels.fill([0; 4]);
        map.fill(Seen::default());
        if from >= to || wide == 0 || self.view.scale.is_nan() || self.view.scale <= 0.0 {
            return;
        }
        let mut near = NearBlock::default();
        for top in (from / BLOCK * BLOCK..to).step_by(BLOCK as usize) {
            for left in (0..wide).step_by(BLOCK as usize) {
                self.near(left, top, &mut near);
                if near.parts.is_empty() && near.plain.is_empty() {
                    continue;
                }
                for y in top.max(from)..(top + BLOCK).min(to) {
                    for x in left..(left + BLOCK).min(wide) {
                        let at = (y - from) as usize * wide as usize + x as usize;
                        let (Some(pixel), Some(seen)) = (pixels.get_mut(at), map.get_mut(at))
                        else {
                            continue;
                        };
                        (*pixel, *seen) = self.pixel(x, y, &near);
                    }
                }
            }
        }
    }

    /// Where in the eye's frame a place of the picture is, mm.
    fn at(&self, x: f32, y: f32) -> [f32; 2] {
        let [wide, tall] = self.view.size.map(|s| s as f32);
        [(x - 0.5 * wide) / self.view.scale, (y - 0.5 * tall) / self.view.scale]
    }

    /// What a block may show.
    fn near(&self, left: u32, top: u32, near: &mut NearBlock) {
        near.parts.clear();
        near.plain.clear();
        let half = 0.5 * BLOCK as f32;
        let at = self.at(left as f32 + half, top as f32 + half);
        // To the farthest sample, and one more pixel for what rays graze.
        let reach = (half * 1.4143 + 1.0) / self.view.scale;
        for (i, part) in self.parts.iter().enumerate() {
            let (middle, radius) = part.around;
            let (dx, dy) = (at[0] - middle[0], at[1] - middle[1]);
            if dx * dx + dy * dy > (radius + reach) * (radius + reach) {
                continue;
            }
            let ray = part.ray(at);
            let (begin, end) = (middle[2] + radius, middle[2] - radius);
            if let Some(at) = ray.approach(part.placed.relief, begin, end, reach) {
                near.parts.push((i, at));
            }
        }
        for (i, thing) in self.plain.iter().enumerate() {
            let (middle, radius) = thing.around;
            let (dx, dy) = (at[0] - middle[0], at[1] - middle[1]);
            if dx * dx + dy * dy <= (radius + reach) * (radius + reach) {
                near.plain.push(i);
            }
        }
    }

    fn pixel(&self, x: u32, y: u32, near: &NearBlock) -> ([u8; 4], Seen) {
        let (x, y) = (x as f32, y as f32);
        let middle = self.at(x + 0.5, y + 0.5);
        let pixel = 1.0 / self.view.scale;
        if !near.plain.is_empty() {
            return self.mixed(middle, near, pixel);
        }
        let near = near.parts.as_slice();
        let deep = self.view.quality == Quality::Full;
        let found = self.meet(middle, near, pixel * if deep { 0.6 } else { 1.0 });
        if !deep {
            let Some((i, met)) = found else { return ([0; 4], Seen::default()) };
            let (colour, seen) = self.colour(i, &met, None, pixel);
            let seen = if met.cover >= 0.5 { seen } else { Seen::default() };
            return (colour.map(rounded), seen);
        }
        let wide = 0.6 * pixel;
        // Rays a part of a pixel aside meet the same patch, unless another may be in the way.
        let patch = found.as_ref().filter(|(own, met)| {
            let before = |&(i, begin): &(usize, f32)| i != *own && begin + pixel > met.depth;
            met.cover >= 1.0 && !near.iter().any(before)
        });
        let mut sum = [0.0_f32; 4];
        let (mut taken, mut first) = (0, [0.0; 4]);
        let mut seen = Seen::default();
        for place in PLACES {
            let off = [place[0] * pixel, place[1] * pixel];
            let own =
                patch.and_then(|(i, met)| self.beside(*i, met, off, wide)).or_else(|| {
                    let at = [middle[0] + off[0], middle[1] + off[1]];
                    let (i, met) = self.meet(at, near, wide)?;
                    Some(self.colour(i, &met, None, wide))
                });
            let own = match own {
                Some((colour, what)) => {
                    if seen.part == 0 && colour[3] >= 127.0 {
                        seen = what;
                    }
                    colour
                }
                None => [0.0; 4],
            };
            sum = [0, 1, 2, 3].map(|c| sum[c] + own[c]);
            taken += 1;
            if taken == 1 {
                first = own;
            } else if taken == 2 && (0..4).all(|c| (first[c] - own[c]).abs() < ALIKE) {
                // Two alike: the others will be too.
                break;
            }
        }
        if let Some((i, met)) = &found
            && met.cover >= 1.0
        {
            // The map tells what is in the middle of the pixel.
            seen = self.colour(*i, met, None, wide).1;
        }
        let share = 1.0 / taken as f32;
        (sum.map(|c| rounded(c * share)), seen)
    }

    /// A pixel near things without stitches: each of its rays is followed by itself.
    fn mixed(&self, middle: [f32; 2], near: &NearBlock, pixel: f32) -> ([u8; 4], Seen) {
        let seen = |sample: &Option<([f32; 4], Seen)>| match sample {
            Some((colour, seen)) if colour[3] >= 127.0 => *seen,
            _ => Seen::default(),
        };
        if self.view.quality != Quality::Full {
            let sample = self.sample(middle, near, pixel);
            let colour = sample.as_ref().map_or([0.0; 4], |(colour, _)| *colour);
            return (colour.map(rounded), seen(&sample));
        }
        let wide = 0.6 * pixel;
        let mut sum = [0.0_f32; 4];
        let mut found = Seen::default();
        for place in PLACES {
            let at = [middle[0] + place[0] * pixel, middle[1] + place[1] * pixel];
            let sample = self.sample(at, near, wide);
            if found.part == 0 {
                found = seen(&sample);
            }
            if let Some((colour, _)) = sample {
                sum = [0, 1, 2, 3].map(|c| sum[c] + 0.25 * colour[c]);
            }
        }
        (sum.map(rounded), found)
    }

    /// What one ray shows, where parts and things without stitches may hide one another.
    fn sample(&self, at: [f32; 2], near: &NearBlock, wide: f32) -> Option<([f32; 4], Seen)> {
        let met = self.meet(at, &near.parts, wide);
        let thing = near
            .plain
            .iter()
            .filter_map(|&i| Some((i, self.plain[i].meet(at)?)))
            .max_by(|(_, a), (_, b)| a.depth.total_cmp(&b.depth));
        let Some((i, plain)) = thing else {
            let (i, met) = met?;
            return Some(self.colour(i, &met, None, wide));
        };
        let shown = &self.plain[i];
        let [r, g, b] = shown.dye.colour(turned(&shown.eye, plain.normal));
        let number = (self.parts.len() + i + 1) as u16;
        let behind = ([r, g, b, 255.0], Seen { part: number, ..Seen::default() });
        match met.filter(|(_, met)| met.depth > plain.depth) {
            None => Some(behind),
            Some((part, met)) => {
                let (over, seen) = self.colour(part, &met, None, wide);
                let left = 1.0 - met.cover;
                let colour = [0, 1, 2, 3].map(|c| over[c] + left * behind.0[c]);
                Some((colour, if met.cover >= 0.5 { seen } else { behind.1 }))
            }
        }
    }

    /// What the ray at a place of the picture, `wide` mm wide, meets first, and of which part.
    fn meet(
        &self,
        at: [f32; 2],
        near: &[(usize, f32)],
        wide: f32,
    ) -> Option<(usize, RayMeeting)> {
        let mut best: Option<(usize, RayMeeting)> = None;
        let deep = self.view.quality == Quality::Full;
        for &(i, begin) in near {
            let part = &self.parts[i];
            let mut end = part.around.0[2] - part.around.1;
            if let Some((_, found)) = &best
                && found.cover >= 1.0
            {
                end = end.max(found.depth);
            }
            let Some(met) = part.ray(at).meet(&part.placed, begin, end, wide, deep) else {
                continue;
            };
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

    /// The colour, premultiplied, of what is met of part `i`, and what the map says of it.
    fn colour(
        &self,
        i: usize,
        met: &RayMeeting,
        off: Option<(V3, f32)>,
        wide: f32,
    ) -> ([f32; 4], Seen) {
        let part = &self.parts[i];
        let look = HitLook { relief: part.placed.relief, eye: &part.eye, wide };
        let (mut lit, seen) = match (&met.met, off) {
            (RayMet::Patch(patch, _), Some((off, gone))) => {
                look.on_patch(patch, Some(off), gone)
            }
            (met, _) => look.on(met),
        };
        lit.open *= self.open(i, met);
        let [r, g, b] = part.dyes.colour(&lit);
        let cover = met.cover;
        let seen = Seen { part: i as u16 + 1, ..seen };
        ([r * cover, g * cover, b * cover, 255.0 * cover], seen)
    }

    /// The same of a ray `off` mm right and down of the one that was met, on the same patch;
    /// nothing if it leaves it.
    fn beside(
        &self,
        i: usize,
        met: &RayMeeting,
        off: [f32; 2],
        wide: f32,
    ) -> Option<([f32; 4], Seen)> {
        let RayMet::Patch(patch, _) = &met.met else { return None };
        let part = &self.parts[i];
        let off = add(scaled(part.eye[0], off[0]), scaled(part.eye[1], off[1]));
        let care = Care::new(wide, part.placed.relief.stitch);
        let Descent::Meets(gone) = patch.descend(part.placed.relief, Some(off), None, care)
        else {
            return None;
        };
        Some(self.colour(i, met, Some((off, gone)), wide))
    }

    /// How much light comes to a place past the other parts.
    fn open(&self, own: usize, met: &RayMeeting) -> f32 {
        if self.parts.len() < 2 {
            return 1.0;
        }
        let pose = &self.parts[own].placed.pose;
        let (RayMet::Patch(Patch { beside, .. }, _) | RayMet::Cut(beside)) = &met.met;
        let (place, out) = (beside.place, beside.out);
        let (place, out) = (pose.place(place), pose.direction(out));
        let mut open = 1.0;
        for far in [3.0_f32, 7.0, 13.0] {
            let there = along(place, out, far);
            let mut free = far;
            for (i, part) in self.parts.iter().enumerate() {
                if i != own {
                    free = free.min(part.placed.relief.far(part.placed.pose.own_place(there)));
                }
            }
            open -= 0.17 * ((far - free) / far).clamp(0.0, 1.2);
        }
        open.max(0.35)
    }
}

fn rounded(channel: f32) -> u8 {
    (channel + 0.5).clamp(0.0, 255.0) as u8
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
        Ray { from, towards }
    }
}
