//! A block of pixels: what is near it, and the rays that are sent there.
//!
//! Where a part lies smoothly before a block, one ray finds its surface for all (a
//! [`Facet`](super::facet::Facet)). In full quality rays go through the corners of pixels, which
//! neighbours share; where those differ, through the middle too, and where they differ much,
//! as at an edge, through more places of the pixel.

use super::facet::Facet;
use super::ray::RayMet;
use super::scene::{NearBlock, RaySample, ReliefScene};
use super::view::{Quality, Seen};

/// Side of a block, pixels.
pub(super) const BLOCK: u32 = 4;
const SIDE: usize = BLOCK as usize;
/// One in each row and in each column of a four by four grid of a pixel.
const PLACES: [[f32; 2]; 4] =
    [[-0.125, -0.375], [0.125, 0.375], [0.375, -0.125], [-0.375, 0.125]];
/// Corners that differ by no more than this, of 255, are as good as one.
const ALIKE: f32 = 9.0;
/// Samples that differ by more are an edge.
const EDGE: f32 = 84.0;
/// How wide a sample is, in pixels.
const WIDE: f32 = 0.6;

/// What the rays of a block share.
enum Facets {
    None,
    Whole(usize, Facet),
    Quarters([Option<(usize, Facet)>; 4]),
}

/// A block of pixels of a scene.
pub(super) struct PixelBlock<'s, 'a> {
    scene: &'s ReliefScene<'a>,
    near: &'s NearBlock,
    left: u32,
    top: u32,
    facets: Facets,
    /// How wide a sample is, mm.
    wide: f32,
    full: bool,
}

impl<'s, 'a> PixelBlock<'s, 'a> {
    pub(super) fn new(
        scene: &'s ReliefScene<'a>,
        near: &'s NearBlock,
        [left, top]: [u32; 2],
    ) -> Self {
        let full = scene.view().quality == Quality::Full;
        let wide = if full { WIDE } else { 1.0 } / scene.view().scale;
        let mut block = Self { scene, near, left, top, facets: Facets::None, wide, full };
        block.facets = block.shared();
        block
    }

    /// Draws rows `from` to before `to` of it and of the picture, as far as `right`.
    pub(super) fn draw(
        &self,
        (from, to, right): (u32, u32, u32),
        mut put: impl FnMut(u32, u32, [u8; 4], Seen),
    ) {
        let rows = (from - self.top) as usize..(to - self.top) as usize;
        let columns = (right - self.left) as usize;
        if !self.full {
            for y in rows {
                for x in 0..columns {
                    let own = self.sample(x as f32 + 0.5, y as f32 + 0.5);
                    put(self.left + x as u32, self.top + y as u32, own.pixel(), own.seen());
                }
            }
            return;
        }
        let mut corners = [[RaySample::default(); SIDE + 1]; SIDE + 1];
        for (y, row) in corners.iter_mut().enumerate().take(rows.end + 1).skip(rows.start) {
            for (x, corner) in row.iter_mut().enumerate().take(columns + 1) {
                *corner = self.sample(x as f32, y as f32);
            }
        }
        for y in rows {
            for x in 0..columns {
                let [above, below] = [&corners[y], &corners[y + 1]];
                let four = [above[x], above[x + 1], below[x], below[x + 1]];
                let own = self.pixel([x as f32 + 0.5, y as f32 + 0.5], &four);
                put(self.left + x as u32, self.top + y as u32, own.pixel(), own.seen());
            }
        }
    }

    /// The pixel about a place, with the samples at its corners.
    fn pixel(&self, [x, y]: [f32; 2], four: &[RaySample; 4]) -> RaySample {
        let mean = RaySample::mean(four);
        let one = four.iter().all(|s| s.seen() == four[0].seen());
        if one && RaySample::spread(four) < ALIKE {
            return RaySample { colour: mean.colour, ..four[0] };
        }
        let middle = self.sample(x, y);
        let [a, b, c, d] = *four;
        if RaySample::spread(&[a, b, c, d, middle]) < EDGE {
            let colour = [0, 1, 2, 3].map(|c| 0.5 * (middle.colour[c] + mean.colour[c]));
            return RaySample { colour, ..middle };
        }
        let [a, b, c, d] = PLACES.map(|[dx, dy]| self.sample(x + dx, y + dy));
        RaySample { colour: RaySample::mean(&[a, b, c, d, middle]).colour, ..middle }
    }

    /// A place of the block, pixels from its corner, in the eye's frame, mm.
    fn at(&self, x: f32, y: f32) -> [f32; 2] {
        self.scene.at(self.left as f32 + x, self.top as f32 + y)
    }

    fn sample(&self, x: f32, y: f32) -> RaySample {
        let half = 0.5 * BLOCK as f32;
        let (facet, from) = match &self.facets {
            Facets::None => (None, [0.0; 2]),
            Facets::Whole(part, facet) => (Some((*part, facet)), [half; 2]),
            Facets::Quarters(quarters) => {
                let quarter = usize::from(x > half) + 2 * usize::from(y > half);
                let facet = quarters[quarter].as_ref().map(|(part, facet)| (*part, facet));
                (facet, quarter_middle(quarter))
            }
        };
        let pixel = 1.0 / self.scene.view().scale;
        let facet = facet
            .map(|(part, facet)| (part, facet, [(x - from[0]) * pixel, (y - from[1]) * pixel]));
        self.scene.sample(self.at(x, y), self.near, facet, self.wide)
    }

    /// The facets that serve this block.
    fn shared(&self) -> Facets {
        let half = 0.5 * BLOCK as f32;
        if let Some((part, facet)) = self.facet([half; 2], half) {
            return Facets::Whole(part, facet);
        }
        let quarters = [0, 1, 2, 3].map(|i| self.facet(quarter_middle(i), 0.5 * half));
        if quarters.iter().all(Option::is_none) {
            return Facets::None;
        }
        Facets::Quarters(quarters)
    }

    /// The facet of the ray through a place, if it serves all within `half` pixels of that.
    fn facet(&self, [x, y]: [f32; 2], half: f32) -> Option<(usize, Facet)> {
        let scene = self.scene;
        let (part, met) = scene.meet(self.at(x, y), &self.near.parts, self.wide)?;
        let RayMet::Patch(patch, _) = met.met else { return None };
        let pixel = 1.0 / scene.view().scale;
        let (_, begin) = *self.near.parts.iter().find(|(i, _)| *i == part)?;
        // Another part may be in the way.
        let before = |&(i, begin): &(usize, f32)| i != part && begin + pixel > met.depth;
        if met.cover < 1.0 || !scene.is_round(part) || self.near.parts.iter().any(before) {
            return None;
        }
        let facet = scene.facet(part, patch);
        let reach = half * std::f32::consts::SQRT_2 * pixel;
        let relief = scene.relief(part);
        let whole = 0.5 * BLOCK as f32 * std::f32::consts::SQRT_2 * pixel;
        facet.serves(relief, reach, (begin, whole)).then_some((part, facet))
    }
}

impl ReliefScene<'_> {
    /// Draws rows `from` to before `to` of the picture into `pixels`, premultiplied RGBA, and
    /// what is seen there into `map`: both row by row, as long as the rows are. Where they are
    /// shorter, the rest is left out.
    ///
    /// A row does not depend on which others are drawn with it.
    pub fn rows(&self, from: u32, to: u32, pixels: &mut [[u8; 4]], map: &mut [Seen]) {
        let [wide, tall] = self.view().size;
        let to = to.min(tall);
        pixels.fill([0; 4]);
        map.fill(Seen::default());
        if from >= to || wide == 0 || self.view().scale.is_nan() || self.view().scale <= 0.0 {
            return;
        }
        let half = 0.5 * BLOCK as f32;
        // To the farthest sample, and one more pixel for what rays graze.
        let reach = (half * std::f32::consts::SQRT_2 + 1.0) / self.view().scale;
        let mut near = NearBlock::default();
        for top in (from / BLOCK * BLOCK..to).step_by(BLOCK as usize) {
            for left in (0..wide).step_by(BLOCK as usize) {
                let middle = self.at(left as f32 + half, top as f32 + half);
                self.near(middle, reach, &mut near);
                if near.parts.is_empty() && near.plain.is_empty() {
                    continue;
                }
                let right = (left + BLOCK).min(wide);
                let rows = (top.max(from), (top + BLOCK).min(to), right);
                PixelBlock::new(self, &near, [left, top]).draw(rows, |x, y, colour, what| {
                    let at = (y - from) as usize * wide as usize + x as usize;
                    if let (Some(pixel), Some(seen)) = (pixels.get_mut(at), map.get_mut(at)) {
                        (*pixel, *seen) = (colour, what);
                    }
                });
            }
        }
    }
}

/// The middle of a quarter of a block, pixels from its corner.
fn quarter_middle(quarter: usize) -> [f32; 2] {
    let step = 0.25 * BLOCK as f32;
    [step + 2.0 * step * (quarter % 2) as f32, step + 2.0 * step * (quarter / 2) as f32]
}
