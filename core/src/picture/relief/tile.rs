//! Tiles: the relief of one stitch, worked out once and then looked up.
//!
//! A tile holds height, slopes and how much light its grooves let in, at sizes that halve: a
//! stitch of a few pixels is looked up where a sample is as large as a pixel, and so melts
//! into its own tone instead of flickering.

use std::sync::OnceLock;

use super::look::{REACH, Sample, TileShape};
use super::shapes;
use crate::piece::YarnFace;

/// Samples across a tile at its finest.
const FINEST: usize = 96;
/// Sizes held, each half the one before.
const LEVELS: usize = 6;

/// One size of one tile.
#[derive(Debug)]
struct TileLevel {
    samples: Vec<Sample>,
    /// Heights alone, with one more at the end of each row and one more row: most of what is
    /// looked up.
    heights: Vec<f32>,
    wide: usize,
    tall: usize,
}

/// All sizes of one tile.
#[derive(Debug)]
pub(super) struct Tile {
    levels: Vec<TileLevel>,
    /// Its mean inside the stitch.
    pub(super) mean: Sample,
}

/// The tile of a shape in a yarn of this face.
pub(super) fn tile(shape: TileShape, face: YarnFace) -> &'static Tile {
    static TILES: [[OnceLock<Tile>; TileShape::MANY]; YarnFace::ALL.len()] =
        [const { [const { OnceLock::new() }; TileShape::MANY] }; YarnFace::ALL.len()];
    TILES[face as usize][shape.index()].get_or_init(|| Tile::baked(shape, face))
}

impl Tile {
    fn baked(shape: TileShape, face: YarnFace) -> Self {
        let wide = FINEST;
        let tall = (FINEST as f32 * (1.0 + 2.0 * REACH)) as usize / 32 * 32;
        let samples = shapes::relief(shape, face, wide, tall);
        let (mut sum, mut many) = ([0.0; 4], 0.0);
        for (row, line) in samples.chunks(wide).enumerate() {
            let b = (row as f32 + 0.5) / tall as f32 * (1.0 + 2.0 * REACH) - REACH;
            if (0.0..1.0).contains(&b) {
                for s in line {
                    sum = [0, 1, 2, 3].map(|j| sum[j] + s[j]);
                    many += 1.0;
                }
            }
        }
        let mut levels = vec![TileLevel::new(samples, wide, tall)];
        for _ in 1..LEVELS {
            let next = levels[levels.len() - 1].halved();
            levels.push(next);
        }
        Self { levels, mean: [sum[0] / many, 0.0, 0.0, sum[3] / many] }
    }

    /// The size at which a sample is as large as `wide` stitches.
    pub(super) fn level_for(wide: f32) -> usize {
        let samples = wide * FINEST as f32;
        // Sharper by half a size: pixels are more than one sample as a rule.
        let mut level = 0;
        let mut size = 1.6;
        while level + 1 < LEVELS && samples > size {
            size *= 2.0;
            level += 1;
        }
        level
    }

    /// The tile at (a, b) of its stitch.
    pub(super) fn sample(&self, level: usize, a: f32, b: f32) -> Sample {
        let level = &self.levels[level];
        let (i, u) = level.column(a);
        let (j, v) = level.row(b);
        let p = |i: usize, j: usize| level.samples[j * level.wide + i];
        let (p00, p10) = (p(i.0, j.0), p(i.1, j.0));
        let (p01, p11) = (p(i.0, j.1), p(i.1, j.1));
        std::array::from_fn(|c| {
            let low = p00[c] + (p10[c] - p00[c]) * u;
            let high = p01[c] + (p11[c] - p01[c]) * u;
            low + (high - low) * v
        })
    }

    /// Its height alone.
    pub(super) fn height(&self, level: usize, a: f32, b: f32) -> f32 {
        let level = &self.levels[level];
        let most = |many: usize| (many - 1) as f32;
        let x = ((a + 0.5) * level.wide as f32 - 0.5).max(0.0).min(most(level.wide));
        let y = (b + REACH) * (level.tall as f32 / (1.0 + 2.0 * REACH)) - 0.5;
        let y = y.max(0.0).min(most(level.tall));
        let (i, j) = (x as u32, y as u32);
        let (u, v) = (x - i as f32, y - j as f32);
        let stride = level.wide + 1;
        let from = j as usize * stride + i as usize;
        let Some(four) = level.heights.get(from..from + stride + 2) else { return 0.0 };
        let low = four[0] + (four[1] - four[0]) * u;
        let high = four[stride] + (four[stride + 1] - four[stride]) * u;
        low + (high - low) * v
    }
}

impl TileLevel {
    fn new(samples: Vec<Sample>, wide: usize, tall: usize) -> Self {
        let mut heights = Vec::with_capacity((wide + 1) * (tall + 1));
        for row in (0..tall).chain([tall - 1]) {
            let own = &samples[row * wide..(row + 1) * wide];
            heights.extend(own.iter().chain(own.last()).map(|sample| sample[0]));
        }
        // The last place looks one beyond the last.
        heights.push(0.0);
        Self { samples, heights, wide, tall }
    }

    fn column(&self, a: f32) -> ((usize, usize), f32) {
        split((a + 0.5) * self.wide as f32 - 0.5, self.wide)
    }

    fn row(&self, b: f32) -> ((usize, usize), f32) {
        split((b + REACH) / (1.0 + 2.0 * REACH) * self.tall as f32 - 0.5, self.tall)
    }

    fn halved(&self) -> Self {
        let (wide, tall) = ((self.wide / 2).max(1), (self.tall / 2).max(1));
        let mut samples = Vec::with_capacity(wide * tall);
        for row in 0..tall {
            for column in 0..wide {
                let of = |i: usize, j: usize| {
                    let i = (2 * column + i).min(self.wide - 1);
                    let j = (2 * row + j).min(self.tall - 1);
                    self.samples[j * self.wide + i]
                };
                let (p, q, r, s) = (of(0, 0), of(1, 0), of(0, 1), of(1, 1));
                samples.push([0, 1, 2, 3].map(|c| 0.25 * (p[c] + q[c] + r[c] + s[c])));
            }
        }
        Self::new(samples, wide, tall)
    }
}

/// The two samples around a place, and how far it is from the first to the second.
fn split(at: f32, many: usize) -> ((usize, usize), f32) {
    let at = at.clamp(0.0, (many - 1) as f32);
    let i = at as usize;
    ((i, (i + 1).min(many - 1)), at - i as f32)
}
