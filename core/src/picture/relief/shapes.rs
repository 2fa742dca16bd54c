//! The yarn of one stitch: how its strands run, and the relief they make.
//!
//! A strand is a round cord along a path over the stitch. Across and up are in stitch widths,
//! so that a cord is as thick one way as the other; heights are in stitch widths too, 0 at the
//! crest of the cloth. All by eye, from worked cloth; no source.

use std::f32::consts::PI;

use super::look::{REACH, Sample, TileShape};
use super::space::{chance, eased, mix};
use crate::piece::YarnFace;

/// Half the thickness of the yarn, in stitch widths: two legs side by side fill a stitch.
const YARN: f32 = 0.245;
/// What lies under all strands, in stitch widths.
pub(super) const FLOOR: f32 = -0.33;
/// Turns of the plies in a stitch width of yarn, and how many strands they are.
const TWIST: f32 = 1.30;
const PLIES: f32 = 3.0;
/// Size of a tuft of pile and of a fibre's waves, in stitch widths.
const TUFT: f32 = 0.05;
const FIBRE: [f32; 2] = [0.16, 0.022];
/// Steps in which a strand is laid.
const STEPS: usize = 28;

/// How a yarn of one face lies.
#[derive(Debug, Clone, Copy)]
struct YarnLay {
    face: YarnFace,
    /// How much thicker than a smooth yarn it is.
    thick: f32,
    /// How deep it is between plies, fibres or tufts, in stitch widths, and how dark.
    deep: f32,
    dark: f32,
}

impl YarnLay {
    fn of(face: YarnFace) -> Self {
        let (thick, deep, dark) = match face {
            YarnFace::Smooth => (1.0, 0.030, 0.28),
            YarnFace::Wool => (1.05, 0.026, 0.30),
            YarnFace::Chenille => (1.16, 0.060, 0.34),
        };
        Self { face, thick, deep, dark }
    }

    /// How deep between plies, fibres or tufts a place of a strand is, 0 to 1: `gone` along it,
    /// `side` −1 to 1 across it.
    fn between(&self, gone: f32, side: f32) -> f32 {
        let across = side.clamp(-1.0, 1.0).asin() * YARN;
        match self.face {
            YarnFace::Smooth => plies(gone, side),
            YarnFace::Wool => {
                // Fibres run with the plies, aslant over the strand.
                let fibre =
                    uneven([(gone - across) / FIBRE[0], (across + 0.4 * gone) / FIBRE[1]]);
                0.45 * plies(gone, side) + 0.55 * fibre
            }
            YarnFace::Chenille => {
                let [a, b] = [gone / TUFT, across / TUFT];
                0.65 * uneven([a, b]) + 0.35 * uneven([2.3 * a + 7.0, 2.3 * b])
            }
        }
    }
}

/// A smooth field of chance over the plane, 0 to 1, about a unit from crest to crest.
fn uneven([x, y]: [f32; 2]) -> f32 {
    let (i, j) = (x.floor(), y.floor());
    let (u, v) = (eased(0.0, 1.0, x - i), eased(0.0, 1.0, y - j));
    let at = |di: i32, dj: i32| chance((i as i32 + di) as u32, (j as i32 + dj) as u32);
    let low = mix(at(0, 0), at(1, 0), u);
    let high = mix(at(0, 1), at(1, 1), u);
    0.5 + 0.5 * mix(low, high, v)
}

/// A place of a strand.
#[derive(Debug, Clone, Copy)]
struct Bead {
    /// Across and up, in stitch widths.
    at: [f32; 2],
    /// Height of its middle.
    high: f32,
    /// Half its width.
    half: f32,
    /// Length of strand before it.
    gone: f32,
}

/// One strand, as beads on a string.
type Strand = Vec<Bead>;

fn strand(bead: impl Fn(f32) -> ([f32; 2], f32, f32)) -> Strand {
    let mut gone = 0.0;
    let mut last: Option<[f32; 2]> = None;
    (0..=STEPS)
        .map(|i| {
            let (at, high, half) = bead(i as f32 / STEPS as f32);
            if let Some(before) = last {
                gone += ((at[0] - before[0]).powi(2) + (at[1] - before[1]).powi(2)).sqrt();
            }
            last = Some(at);
            Bead { at, high, half, gone }
        })
        .collect()
}

/// Height of a stitch in stitch widths, as tiles take it.
fn tall(shape: TileShape) -> f32 {
    match shape.index() {
        4..=7 => 1.38,
        8..=11 => 1.9,
        12 => 0.5,
        13 => 0.62,
        _ => 0.92,
    }
}

/// A leg of a V on side `side` (−1 or 1): from the foot, across `foot`, under the heads of the
/// round below, to the head, across `head`, which dips under the next round.
fn leg(tall: f32, foot: f32, head: f32, slim: f32) -> Strand {
    strand(|t| {
        let b = mix(-0.40, 1.22, t);
        let across = mix(foot, head, ((b + 0.1) / 1.15).clamp(0.0, 1.0));
        // Legs are slim where they are pulled through, full where they are free.
        let half =
            YARN * mix(slim, 1.0, eased(-0.2, 0.5, b)) * mix(1.0, 0.80, eased(0.75, 1.2, b));
        let sunk = 0.20 * eased(0.30, -0.40, b) + 0.30 * eased(0.80, 1.24, b);
        ([across, b * tall], -YARN - sunk, half)
    })
}

fn strands(shape: TileShape) -> Vec<Strand> {
    let tall = tall(shape);
    match shape.index() {
        12 => vec![strand(|t| {
            let b = mix(-0.35, 1.05, t);
            ([0.0, b * tall], -0.45 - 0.5 * eased(0.1, 1.0, b), 0.40)
        })],
        13 => [-1.0, 1.0].into_iter().map(|side| loop_of_rim(tall, side)).collect(),
        14 => within(tall),
        15 => vec![strand(|t| {
            let u = mix(-0.62, 0.62, t);
            let b = 1.06 + 0.10 * u + 0.10 * (1.0 - 4.0 * u * u).max(-0.4);
            ([u, b * tall], -0.16 - 0.42 * u.abs().powi(3) * 2.0, 0.165)
        })],
        own => {
            let legs = match own % 4 {
                1 => [leg(tall, 0.0, -0.295, 0.78), leg(tall, 0.20, 0.285, 0.78)],
                2 => [leg(tall, -0.20, -0.285, 0.78), leg(tall, 0.0, 0.295, 0.78)],
                3 => [leg(tall, -0.22, -0.27, 0.74), leg(tall, 0.22, 0.27, 0.74)],
                _ => [leg(tall, -0.055, -0.295, 0.72), leg(tall, 0.055, 0.295, 0.72)],
            };
            let mut all = Vec::from(legs);
            // Its top loops lie behind the feet of the next round.
            all.push(strand(|t| {
                let u = mix(-0.7, 0.7, t);
                ([u, 1.02 * tall], -0.40, 0.20)
            }));
            // Taller stitches show the yarn that was laid over the hook.
            let wraps: &[f32] = match own / 4 {
                1 => &[0.52],
                2 => &[0.36, 0.70],
                _ => &[],
            };
            all.extend(wraps.iter().map(|&up| {
                strand(|t| {
                    let u = mix(-0.40, 0.40, t);
                    let b = up + 0.16 * u;
                    ([u, b * tall], -0.13 - 0.55 * (2.2 * u).powi(4).min(1.0), 0.15)
                })
            }));
            all
        }
    }
}

/// One of the two loops on top of a stitch, which lie along an open edge like a chain.
fn loop_of_rim(tall: f32, side: f32) -> Strand {
    strand(|t| {
        let u = mix(-0.72, 0.68, t);
        let bow = eased(-0.66, -0.12, u) * (1.0 - 0.55 * eased(0.1, 0.66, u));
        let b = 0.5 + side * (0.04 + 0.27 * bow);
        let sunk = 0.26 * eased(-0.20, -0.70, u) + 0.40 * eased(0.28, 0.70, u);
        ([u, b * tall], -0.20 - sunk, 0.205)
    })
}

/// The back of a stitch: a bar across and the bump under it.
fn within(tall: f32) -> Vec<Strand> {
    let bar = |up: f32, bow: f32, high: f32| {
        strand(move |t| {
            let u = mix(-0.6, 0.6, t);
            let b = up + bow * (1.0 - 4.0 * u * u);
            ([u, b * tall], high - 0.30 * (1.9 * u).powi(4).min(1.0), 0.21)
        })
    };
    vec![bar(0.18, 0.10, -0.28), bar(0.66, 0.18, -0.21)]
}

/// The samples of a tile, `wide` × `rows`, row by row: the rows reach over the stitch and
/// [`REACH`] of its height beyond it, below and above.
pub(super) fn relief(
    shape: TileShape,
    face: YarnFace,
    wide: usize,
    rows: usize,
) -> Vec<Sample> {
    let (tall, lay) = (tall(shape), YarnLay::of(face));
    let mut field = CurveField::new(lay, (wide, rows), tall);
    for (which, mut strand) in strands(shape).into_iter().enumerate() {
        for bead in &mut strand {
            // As high as before: more of it lies deeper.
            bead.high -= (lay.thick - 1.0) * bead.half;
            bead.half *= lay.thick;
        }
        for pair in strand.windows(2) {
            for (aside, shift) in [-1.0, 0.0, 1.0].into_iter().enumerate() {
                field.lay((pair[0], pair[1]), shift, 3 * which as u32 + aside as u32);
            }
        }
    }
    for spot in &mut field.spots {
        spot.high -= lay.deep * spot.between;
    }
    let among = field.among();
    let mut samples = Vec::with_capacity(field.spots.len());
    for row in 0..rows {
        for column in 0..wide {
            let FieldSpot { high, between, .. } = field.spots[row * wide + column];
            let [across, up] = field.slope(column, row);
            let light = field.light(&among, column, row, high) * (1.0 - lay.dark * between);
            samples.push([high, across, up, light]);
        }
    }
    samples
}

/// How deep between plies a place of a strand is, 0 to 1: `side` −1 to 1 across it.
fn plies(gone: f32, side: f32) -> f32 {
    let around = side.clamp(-1.0, 1.0).asin() / PI;
    let turn = PLIES * (0.5 * around + TWIST * gone);
    let off = 2.0 * (turn - turn.floor()) - 1.0;
    1.0 - (1.0 - off * off).max(0.0).sqrt()
}

/// What lies uppermost at a place of a tile.
#[derive(Debug, Clone, Copy)]
struct FieldSpot {
    high: f32,
    /// How deep between plies it is, 0 to 1.
    between: f32,
    /// Which cord it is, none on the ground.
    cord: Option<u32>,
}

/// The places of a tile.
struct CurveField {
    lay: YarnLay,
    spots: Vec<FieldSpot>,
    wide: usize,
    rows: usize,
    tall: f32,
    /// Samples a stitch width, up the stitch.
    per_up: f32,
}

impl CurveField {
    fn new(lay: YarnLay, (wide, rows): (usize, usize), tall: f32) -> Self {
        let per_up = rows as f32 / (1.0 + 2.0 * REACH) / tall;
        let ground = FieldSpot { high: FLOOR, between: 0.0, cord: None };
        let spots = vec![ground; wide * rows];
        Self { lay, spots, wide, rows, tall, per_up }
    }

    /// Lays the piece of a cord between two beads, `shift` stitches aside.
    fn lay(&mut self, (p, q): (Bead, Bead), shift: f32, cord: u32) {
        let thick = p.half.max(q.half);
        let from = [p.at[0] + shift, p.at[1]];
        let chord = [q.at[0] - p.at[0], q.at[1] - p.at[1]];
        let square = (chord[0] * chord[0] + chord[1] * chord[1]).max(1e-9);
        let reach = |i: usize| {
            let (a, b) = (from[i], from[i] + chord[i]);
            (a.min(b) - thick, a.max(b) + thick)
        };
        let range = |(low, high): (f32, f32), per: f32, zero: f32, many: usize| {
            let at = |v: f32| ((v + zero) * per).clamp(0.0, many as f32) as usize;
            at(low)..(at(high) + 1).min(many)
        };
        let per_across = self.wide as f32;
        let below = REACH * self.tall;
        let lay = self.lay;
        for row in range(reach(1), self.per_up, below, self.rows) {
            for column in range(reach(0), per_across, 0.5, self.wide) {
                let at = [
                    (column as f32 + 0.5) / per_across - 0.5 - from[0],
                    (row as f32 + 0.5) / self.per_up - below - from[1],
                ];
                let part = ((at[0] * chord[0] + at[1] * chord[1]) / square).clamp(0.0, 1.0);
                let half = mix(p.half, q.half, part);
                let off = [at[0] - part * chord[0], at[1] - part * chord[1]];
                let far = (off[0] * off[0] + off[1] * off[1]) / (half * half);
                if far >= 1.0 {
                    continue;
                }
                let high = mix(p.high, q.high, part) + half * (1.0 - far).sqrt();
                let best = &mut self.spots[row * self.wide + column];
                if high > best.high {
                    // Where a strand dips, a place is covered by what lies farther along it:
                    // its plies go by the place all the same, or they would break there.
                    let long = square.sqrt();
                    let cross = (chord[0] * at[1] - chord[1] * at[0]) / long;
                    let along = (chord[0] * at[0] + chord[1] * at[1]) / long;
                    let between = lay.between(p.gone + along, cross / half);
                    *best = FieldSpot { high, between, cord: Some(cord) };
                }
            }
        }
    }

    /// Rows of one stitch height.
    fn stitch_rows(&self) -> usize {
        (self.per_up * self.tall).round() as usize
    }

    /// The highest of a stitch and of those like it above and below.
    fn among(&self) -> Vec<f32> {
        let step = self.stitch_rows();
        let own = |row: usize, column: usize| self.spots[row * self.wide + column].high;
        let mut all = Vec::with_capacity(self.spots.len());
        for row in 0..self.rows {
            for column in 0..self.wide {
                let mut best = own(row, column);
                if row >= step {
                    best = best.max(own(row - step, column));
                }
                if row + step < self.rows {
                    best = best.max(own(row + step, column));
                }
                all.push(best);
            }
        }
        all
    }

    /// How height grows across and up at a place, along its own cord alone: a wall between two
    /// is as jagged as the samples are.
    fn slope(&self, column: usize, row: usize) -> [f32; 2] {
        let spot = |column: usize, row: usize| self.spots[row * self.wide + column];
        let own = spot(column, row);
        let grows = |before: FieldSpot, after: FieldSpot, per: f32| {
            let high = |other: FieldSpot| (other.cord == own.cord).then_some(other.high);
            match (high(before), high(after)) {
                (Some(before), Some(after)) => 0.5 * (after - before) * per,
                (Some(before), None) => (own.high - before) * per,
                (None, Some(after)) => (after - own.high) * per,
                (None, None) => 0.0,
            }
        };
        let (left, right) = ((column + self.wide - 1) % self.wide, (column + 1) % self.wide);
        let (below, above) = (row.saturating_sub(1), (row + 1).min(self.rows - 1));
        let across = grows(spot(left, row), spot(right, row), self.wide as f32);
        let up = grows(spot(column, below), spot(column, above), self.per_up * self.tall);
        [across, up]
    }

    /// How much light comes to a place past what stands around it.
    fn light(&self, among: &[f32], column: usize, row: usize, high: f32) -> f32 {
        const WAYS: usize = 10;
        let mut shut = 0.0;
        for way in 0..WAYS {
            let (sin, cos) = (2.0 * PI * way as f32 / WAYS as f32).sin_cos();
            let mut steepest = 0.0_f32;
            for far in [0.06, 0.12, 0.20, 0.30, 0.44] {
                let i = column as f32 + 0.5 + (1.0 + far * cos) * self.wide as f32;
                let j = row as f32 + 0.5 + far * sin * self.per_up;
                let (i, j) = (i as usize % self.wide, (j.max(0.0) as usize).min(self.rows - 1));
                steepest = steepest.max((among[j * self.wide + i] - high) / far);
            }
            // Sine squared of the horizon's height: the share of light from below it.
            shut += steepest * steepest / (1.0 + steepest * steepest);
        }
        1.0 - shut / WAYS as f32
    }
}
