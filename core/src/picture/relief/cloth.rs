//! The relief of the cloth at a place of it: which stitch lies uppermost and how high.

use super::body::Relief;
use super::curve::NearCurve;
use super::fabric::Cell;
use super::look::{REACH, Sample, TileShape};
use super::profile::ProfileStretch;
use super::shapes;
use super::space::{chance, eased, mix};
use super::tile::{Tile, tile};

/// How wide a sample may be, in stitches, before stitches begin to melt, and when they are
/// one tone.
const MELTS: (f32, f32) = (0.42, 0.80);
/// How much one stitch is higher than another: hands are never even.
const UNEVEN: f32 = 0.07;
/// How deep the ring that a piece starts from is drawn in, in stitch widths, and how wide.
const DIMPLE: (f32, f32) = (0.45, 0.55);
/// What is no higher is ground, in stitch widths.
const GROUND: f32 = shapes::FLOOR + 0.01;
/// Layers that may lie over one another at a place.
const LAYERS: usize = 3;

/// A stitch that lies at a place of the cloth, perhaps under another.
#[derive(Debug, Clone, Copy)]
struct Layer {
    /// Its round and its number in it, counted from 0.
    round: u32,
    stitch: u32,
    tile: &'static Tile,
    /// Stitch width that its relief is as high as, mm.
    by: f32,
    /// Where in the stitch the place is, across and up.
    at: [f32; 2],
    /// How that changes with a mm around, and along the profile.
    around: [f32; 2],
    along: [f32; 2],
}

/// What stitches are asked for.
#[derive(Debug, Clone, Copy)]
pub(super) struct LayerAsk {
    /// How far along the profile a ray goes on until it is met, about, mm.
    pub(super) ahead: f32,
    /// How many times as high as it is their relief is to be.
    pub(super) lift: f32,
    /// Whether the stitch that the place is in will do: those that reach over it hardly show
    /// where cloth is drawn smooth.
    pub(super) alone: bool,
}

/// The stitch that lies uppermost at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Top {
    /// Its round and its number in it, counted from 0.
    pub(super) round: u32,
    pub(super) stitch: u32,
    /// How height grows around and along the profile, mm a mm.
    pub(super) slope: [f32; 2],
    /// How much light its grooves let in, 0 to 1.
    pub(super) light: f32,
}

/// All stitches at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct ClothLayers {
    all: [Option<Layer>; LAYERS],
    /// How far the cloth is drawn in there, mm.
    sunk: f32,
}

/// How closely the cloth is looked at.
#[derive(Debug, Clone, Copy)]
pub(super) struct Care {
    level: usize,
    /// 0 where every stitch is seen, 1 where they are one tone.
    pub(super) melted: f32,
    /// How near to the relief a ray need come to meet it, in stitch widths.
    pub(super) near: f32,
}

impl Care {
    /// For samples `wide` mm wide on stitches `stitch` mm wide.
    pub(super) fn new(wide: f32, stitch: f32) -> Self {
        let stitches = wide / stitch;
        Self {
            level: Tile::level_for(stitches),
            melted: eased(MELTS.0, MELTS.1, stitches),
            near: 0.12 * stitches,
        }
    }
}

impl Relief {
    /// What lies at `turn` around of a turn `girth` mm long beside `near`, `r` from the axis;
    /// nothing where that is no cloth.
    pub(super) fn layers(
        &self,
        near: &NearCurve,
        (turn, girth): (f32, f32),
        r: f32,
        LayerAsk { ahead, lift, alone }: LayerAsk,
    ) -> Option<ClothLayers> {
        let segment = self.curve.segment(near.segment?);
        let along = match segment.stretch {
            ProfileStretch::Outside | ProfileStretch::Within => near.along,
            ProfileStretch::Rim { start: true } => 0.0,
            ProfileStretch::Rim { start: false } => self.fabric.rounds() as f32 - 1e-3,
            ProfileStretch::Stuffing => return None,
        };
        let girth = girth.max(1e-3);
        let spot = self.fabric.spot(along, turn);
        let mut cell = self.fabric.cell(spot);
        let layer = |cell: &Cell, shape| {
            let own = self.layer(cell, shape, girth, segment.per_mm);
            Layer { by: lift * own.by, ..own }
        };
        let mut all = [None; LAYERS];
        match segment.stretch {
            ProfileStretch::Outside => {
                all[0] = Some(layer(&cell, cell.shape));
                // Where rounds meet, one lies over the other.
                let middle = cell.b + 0.5 * ahead * segment.per_mm * cell.per_round[1];
                let above = middle > 0.5;
                let off = (middle - 0.5).abs() + (middle - cell.b).abs();
                if !alone
                    && off > 0.5 - REACH
                    && let Some(beside) = self.fabric.beside(spot, above)
                {
                    let b = self.fabric.up(beside).0;
                    if b > -1.0 && b < 2.0 {
                        let other = self.fabric.cell(beside);
                        all[1] = Some(layer(&other, other.shape));
                        if !above && self.fabric.has_ridge(other.round) {
                            all[2] = Some(layer(&other, TileShape::RIDGE));
                        }
                    }
                }
                if !alone && cell.b > 1.0 - REACH && self.fabric.has_ridge(cell.round) {
                    all[2] = Some(layer(&cell, TileShape::RIDGE));
                }
            }
            ProfileStretch::Rim { .. } => {
                cell.b = near.along;
                cell.per_turn = [1.0 / cell.width, 0.0];
                cell.per_round = [0.0, 1.0];
                all[0] = Some(layer(&cell, TileShape::RIM));
            }
            _ => all[0] = Some(layer(&cell, TileShape::WITHIN)),
        }
        Some(ClothLayers { all, sunk: self.dimple(near, r) })
    }

    fn layer(&self, cell: &Cell, shape: TileShape, girth: f32, per_mm: f32) -> Layer {
        // Near a pole stitches are narrow, but the yarn stays as thick as it is.
        let own = cell.width * girth / self.stitch;
        let uneven = 1.0 + UNEVEN * chance(cell.round, cell.stitch);
        let per_turn = 1.0 / girth;
        Layer {
            round: cell.round,
            stitch: cell.stitch,
            tile: tile(shape, cell.face),
            by: self.stitch * own.clamp(0.45, 1.1) * uneven,
            at: [cell.a, cell.b],
            around: [cell.per_turn[0] * per_turn, cell.per_turn[1] * per_turn],
            along: [cell.per_round[0] * per_mm, cell.per_round[1] * per_mm],
        }
    }

    /// The hole of a ring drawn tight.
    fn dimple(&self, near: &NearCurve, r: f32) -> f32 {
        let (deep, wide) = (DIMPLE.0 * self.stitch, DIMPLE.1 * self.stitch);
        if near.along > 1.0 || r > wide {
            return 0.0;
        }
        let part = 1.0 - r / wide;
        deep * part * part
    }
}

impl ClothLayers {
    /// Height of what lies uppermost `aside` mm around and along the profile, mm: 0 at the
    /// crests, negative below.
    pub(super) fn high(&self, aside: [f32; 2], care: Care) -> f32 {
        let mut best = f32::NEG_INFINITY;
        for layer in self.all.iter().flatten() {
            best = best.max(layer.high(layer.at(aside), care));
        }
        best - self.sunk
    }

    /// Whether the place `aside` mm around and along the profile is among the same stitches, and
    /// no farther than `up` of a round from where they were looked up.
    pub(super) fn holds(&self, aside: [f32; 2], up: f32) -> bool {
        let Some(layer) = &self.all[0] else { return false };
        let [a, b] = layer.at(aside);
        a.abs() <= 0.5 && (b - layer.at[1]).abs() <= up
    }

    /// How often one may go `step` mm around and along the profile from `aside` before one
    /// comes to other stitches than these.
    pub(super) fn room(&self, aside: [f32; 2], step: [f32; 2]) -> f32 {
        let mut room = f32::INFINITY;
        for layer in self.all.iter().flatten() {
            let from = layer.at(aside)[0];
            let a = layer.around[0] * step[0] + layer.along[0] * step[1];
            let left = if a > 0.0 { 0.5 - from } else { 0.5 + from };
            room = room.min(left / a.abs().max(1e-6));
        }
        room
    }

    /// What lies uppermost `aside` mm around and along the profile.
    pub(super) fn top(&self, aside: [f32; 2], care: Care) -> Option<Top> {
        let mut best: Option<(&Layer, [f32; 2], f32)> = None;
        for layer in self.all.iter().flatten() {
            let at = layer.at(aside);
            let high = layer.high(at, care);
            // Ground is a stitch's own: another that reaches over it brings its strands alone.
            if best.is_none_or(|b| high > b.2 && high > GROUND * layer.by) {
                best = Some((layer, at, high));
            }
        }
        let (layer, at, _) = best?;
        let [_, across, up, light] = layer.sample(at, care);
        let slope = |per_mm: [f32; 2]| layer.by * (across * per_mm[0] + up * per_mm[1]);
        Some(Top {
            round: layer.round,
            stitch: layer.stitch,
            slope: [slope(layer.around), slope(layer.along)],
            light,
        })
    }
}

impl Layer {
    /// Where in the stitch the place `aside` mm around and along the profile is.
    fn at(&self, aside: [f32; 2]) -> [f32; 2] {
        [
            self.at[0] + self.around[0] * aside[0] + self.along[0] * aside[1],
            self.at[1] + self.around[1] * aside[0] + self.along[1] * aside[1],
        ]
    }

    fn high(&self, [a, b]: [f32; 2], care: Care) -> f32 {
        let own = self.tile.height(care.level, a, b);
        self.by * if care.melted > 0.0 { mix(own, self.tile.mean[0], care.melted) } else { own }
    }

    fn sample(&self, [a, b]: [f32; 2], care: Care) -> Sample {
        let own = self.tile.sample(care.level, a, b);
        if care.melted <= 0.0 {
            return own;
        }
        std::array::from_fn(|c| mix(own[c], self.tile.mean[c], care.melted))
    }
}
