//! A block of pixels: what is near it, and the rays that are sent there.
//!
//! Where a part lies smoothly before a block, one ray finds its surface for all (a
//! [`Facet`](super::facet::Facet)). In full quality rays go through the corners of pixels, which
//! neighbours share; where those differ, through the middle too, and where they differ much,
//! as at an edge, through more places of the pixel.

use super::facet::Facet;
use super::sample::RaySample;
use super::scene::{NearBlock, NearPart, ReliefScene};
use super::view::{Quality, Seen};

/// Side of a block, pixels: where stitches are wide, more of them share a facet.
const SIDE: usize = 4;
const WIDE_SIDE: usize = 8;
/// How wide stitches are then, pixels.
const WIDE_STITCH: f32 = 16.0;
/// One in each row and in each column of a four by four grid of a pixel.
const PLACES: [[f32; 2]; 4] =
    [[-0.125, -0.375], [0.125, 0.375], [0.375, -0.125], [-0.375, 0.125]];
/// Corners that differ by no more than this, of 255, are as good as one: less in a picture
/// whose stitches are few pixels wide, where more lies between them.
const ALIKE: f32 = 14.0;
const WIDE_ALIKE: f32 = 30.0;
/// Samples that differ by more are an edge.
const EDGE: f32 = 84.0;
/// How wide a sample is, in pixels.
const WIDE: f32 = 0.6;

/// A quarter of a block, with the parts near it and perhaps a facet.
struct Quarter {
    near: Vec<NearPart>,
    facet: Option<(usize, Facet)>,
}

/// The samples on the right edge of the block drawn last, and where that is.
#[derive(Default)]
struct CornerEdge {
    at: Option<u32>,
    samples: [RaySample; WIDE_SIDE + 1],
}

/// A block of pixels of a scene.
pub(super) struct PixelBlock<'s, 'a> {
    scene: &'s ReliefScene<'a>,
    near: &'s NearBlock,
    left: u32,
    top: u32,
    side: usize,
    /// The facet that serves all of it, or else its quarters.
    whole: Option<(usize, Facet)>,
    quarters: Option<Box<[Quarter; 4]>>,
    /// How wide a sample is, mm.
    wide: f32,
    full: bool,
}

impl<'s, 'a> PixelBlock<'s, 'a> {
    pub(super) fn new(
        scene: &'s ReliefScene<'a>,
        near: &'s NearBlock,
        ([left, top], side): ([u32; 2], usize),
    ) -> Self {
        let full = scene.view().quality == Quality::Full;
        let wide = if full { WIDE } else { 1.0 } / scene.view().scale;
        let mut block =
            Self { scene, near, left, top, side, whole: None, quarters: None, wide, full };
        block.share();
        block
    }

    /// Draws rows `from` to before `to` of it and of the picture, as far as `right`. `edge` are
    /// the samples on its left edge, where another block has them; it leaves those on its right
    /// there.
    fn draw(
        &self,
        (from, to, right): (u32, u32, u32),
        edge: &mut CornerEdge,
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
        let mut corners = [[RaySample::default(); WIDE_SIDE + 1]; WIDE_SIDE + 1];
        let known = edge.at == Some(self.left);
        for (y, row) in corners.iter_mut().enumerate().take(rows.end + 1).skip(rows.start) {
            for (x, corner) in row.iter_mut().enumerate().take(columns + 1) {
                *corner = if x == 0 && known {
                    edge.samples[y]
                } else {
                    self.sample(x as f32, y as f32)
                };
            }
            edge.samples[y] = row[columns];
        }
        edge.at = Some(right);
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
        let alike = if self.side == WIDE_SIDE { WIDE_ALIKE } else { ALIKE };
        let one = four.iter().all(|s| s.seen() == four[0].seen());
        if one && RaySample::spread(four) < alike {
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
        let half = 0.5 * self.side as f32;
        let quarter = usize::from(x > half) + 2 * usize::from(y > half);
        let (near, facet, from) = match &self.quarters {
            None => (&self.near.parts, &self.whole, [half; 2]),
            Some(quarters) => {
                let Quarter { near, facet } = &quarters[quarter];
                (near, facet, self.quarter_middle(quarter))
            }
        };
        if near.is_empty() && self.near.plain.is_empty() {
            return RaySample::default();
        }
        let pixel = 1.0 / self.scene.view().scale;
        let off = [(x - from[0]) * pixel, (y - from[1]) * pixel];
        let facet = facet.as_ref().map(|(part, facet)| (*part, facet, off));
        self.scene.sample(self.at(x, y), (near, &self.near.plain), facet, self.wide)
    }

    /// Finds what serves the rays of this block.
    fn share(&mut self) {
        let half = 0.5 * self.side as f32;
        self.whole = self.facet(&self.near.parts, [half; 2], half);
        if self.whole.is_some() {
            return;
        }
        let pixel = 1.0 / self.scene.view().scale;
        // To the corners, and half a pixel more for what rays graze.
        let reach = (0.5 * half * std::f32::consts::SQRT_2 + 0.5) * pixel;
        let quarters = [0, 1, 2, 3].map(|i| {
            let middle = self.quarter_middle(i);
            let [x, y] = self.at(middle[0], middle[1]);
            let between = |near| self.scene.between(near, [x, y], reach);
            let near: Vec<NearPart> = self.near.parts.iter().filter_map(between).collect();
            let facet = self.facet(&near, middle, 0.5 * half);
            Quarter { near, facet }
        });
        self.quarters = Some(Box::new(quarters));
    }

    /// The middle of a quarter, pixels from the corner of the block.
    fn quarter_middle(&self, quarter: usize) -> [f32; 2] {
        let step = 0.25 * self.side as f32;
        [step + 2.0 * step * (quarter % 2) as f32, step + 2.0 * step * (quarter / 2) as f32]
    }

    /// The facet of the ray through a place, if it serves all within `half` pixels of that.
    fn facet(&self, near: &[NearPart], [x, y]: [f32; 2], half: f32) -> Option<(usize, Facet)> {
        let scene = self.scene;
        let (part, met) = scene.meet(self.at(x, y), near, self.wide)?;
        let pixel = 1.0 / scene.view().scale;
        let begin = near.iter().find(|near| near.part == part)?.begin;
        // Another part may be in the way.
        let before = |near: &NearPart| near.part != part && near.begin + pixel > met.depth;
        if met.is_cut || met.cover < 1.0 || !scene.is_round(part) || near.iter().any(before) {
            return None;
        }
        let facet = scene.facet(part, met.patch);
        let reach = half * std::f32::consts::SQRT_2 * pixel;
        facet.serves(scene.relief(part), reach, begin).then_some((part, facet))
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
        let side =
            if self.finest() * self.view().scale > WIDE_STITCH { WIDE_SIDE } else { SIDE };
        let half = 0.5 * side as f32;
        // To the farthest sample, and one more pixel for what rays graze.
        let reach = (half * std::f32::consts::SQRT_2 + 1.0) / self.view().scale;
        let mut near = NearBlock::default();
        let step = side as u32;
        for top in (from / step * step..to).step_by(side) {
            let mut edge = CornerEdge::default();
            for left in (0..wide).step_by(side) {
                let middle = self.at(left as f32 + half, top as f32 + half);
                self.near(middle, reach, &mut near);
                if near.parts.is_empty() && near.plain.is_empty() {
                    continue;
                }
                let right = (left + step).min(wide);
                let rows = (top.max(from), (top + step).min(to), right);
                let block = PixelBlock::new(self, &near, ([left, top], side));
                block.draw(rows, &mut edge, |x, y, colour, what| {
                    let at = (y - from) as usize * wide as usize + x as usize;
                    if let (Some(pixel), Some(seen)) = (pixels.get_mut(at), map.get_mut(at)) {
                        (*pixel, *seen) = (colour, what);
                    }
                });
            }
        }
    }
}
