//! The relief of the cloth at a place of it: which stitch lies uppermost and how high.

use super::Relief;
use super::curve::{Near, Stretch};
use super::fabric::Cell;
use super::space::{chance, eased, mix};
use super::tile::{REACH, Sample, Shape, Tile, tile};

/// How wide a sample may be, in stitches, before stitches begin to melt, and when they are
/// one tone.
const MELTS: (f32, f32) = (0.42, 0.80);
/// How much one stitch is higher than another: hands are never even.
const UNEVEN: f32 = 0.07;
/// How deep the ring that a piece starts from is drawn in, in stitch widths, and how wide.
const DIMPLE: (f32, f32) = (0.45, 0.55);
/// Layers that may lie over one another at a place.
const LAYERS: usize = 3;

/// A stitch that lies at a place of the cloth, perhaps under another.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layer {
    pub(super) cell: Cell,
    tile: &'static Tile,
    /// Stitch width that its relief is as high as, mm.
    by: f32,
}

/// All stitches at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    all: [Option<Layer>; LAYERS],
    /// How far the cloth is drawn in there, mm.
    sunk: f32,
    /// Turns and rounds a mm around and along.
    per_mm: [f32; 2],
}

/// How closely the cloth is looked at.
#[derive(Debug, Clone, Copy)]
pub(super) struct Care {
    level: usize,
    /// 0 where every stitch is seen, 1 where they are one tone.
    pub(super) melted: f32,
}

impl Care {
    /// For samples `wide` mm wide on stitches `stitch` mm wide.
    pub(super) fn new(wide: f32, stitch: f32) -> Self {
        let stitches = wide / stitch;
        Self { level: Tile::level_for(stitches), melted: eased(MELTS.0, MELTS.1, stitches) }
    }
}

impl Relief {
    /// What lies at `turn` around beside `near`, `r` from the axis, and `ahead` mm along the
    /// profile from there; nothing where that is no cloth.
    pub(super) fn layers(&self, near: &Near, turn: f32, r: f32, ahead: f32) -> Option<Layers> {
        let segment = self.curve.segment(near.segment?);
        let along = match segment.stretch {
            Stretch::Outside | Stretch::Within => near.along,
            Stretch::Rim { start: true } => 0.0,
            Stretch::Rim { start: false } => self.fabric.rounds() as f32 - 1e-3,
            Stretch::Stuffing => return None,
        };
        let girth = self.girth(r).max(1e-3);
        let spot = self.fabric.spot(along, turn);
        let mut cell = self.fabric.cell(spot);
        let mut all = [None; LAYERS];
        match segment.stretch {
            Stretch::Outside => {
                all[0] = Some(self.layer(cell, cell.shape, girth));
                // Where rounds meet, one lies over the other.
                let middle = cell.b + 0.5 * ahead * segment.per_mm * cell.per_round[1];
                let above = middle > 0.5;
                let off = (middle - 0.5).abs() + (middle - cell.b).abs();
                if off > 0.5 - REACH
                    && let Some(beside) = self.fabric.beside(spot, above)
                {
                    let b = self.fabric.up(beside).0;
                    if b > -1.0 && b < 2.0 {
                        let other = self.fabric.cell(beside);
                        all[1] = Some(self.layer(other, other.shape, girth));
                        if !above && self.fabric.has_ridge(other.round) {
                            all[2] = Some(self.layer(other, Shape::RIDGE, girth));
                        }
                    }
                }
                if cell.b > 1.0 - REACH && self.fabric.has_ridge(cell.round) {
                    all[2] = Some(self.layer(cell, Shape::RIDGE, girth));
                }
            }
            Stretch::Rim { .. } => {
                cell.b = near.along;
                cell.per_turn = [1.0 / cell.width, 0.0];
                cell.per_round = [0.0, 1.0];
                all[0] = Some(self.layer(cell, Shape::RIM, girth));
            }
            _ => all[0] = Some(self.layer(cell, Shape::WITHIN, girth)),
        }
        Some(Layers { all, sunk: self.dimple(near, r), per_mm: [1.0 / girth, segment.per_mm] })
    }

    fn layer(&self, cell: Cell, shape: Shape, girth: f32) -> Layer {
        // Near a pole stitches are narrow, but the yarn stays as thick as it is.
        let own = cell.width * girth / self.stitch;
        let uneven = 1.0 + UNEVEN * chance(cell.round, cell.stitch);
        Layer { cell, tile: tile(shape), by: self.stitch * own.clamp(0.45, 1.1) * uneven }
    }

    /// The hole of a ring drawn tight.
    fn dimple(&self, near: &Near, r: f32) -> f32 {
        let (deep, wide) = (DIMPLE.0 * self.stitch, DIMPLE.1 * self.stitch);
        if near.along > 1.0 || r > wide {
            return 0.0;
        }
        let part = 1.0 - r / wide;
        deep * part * part
    }
}

impl Layers {
    /// Height of what lies uppermost `aside` mm around and along the profile, mm: 0 at the
    /// crests, negative below.
    pub(super) fn high(&self, aside: [f32; 2], care: Care) -> f32 {
        let (turn, round) = (aside[0] * self.per_mm[0], aside[1] * self.per_mm[1]);
        let mut best = f32::NEG_INFINITY;
        for layer in self.all.iter().flatten() {
            let cell = &layer.cell;
            let a = cell.a + cell.per_turn[0] * turn + cell.per_round[0] * round;
            let b = cell.b + cell.per_turn[1] * turn + cell.per_round[1] * round;
            best = best.max(layer.high(a, b, care));
        }
        best - self.sunk
    }

    /// How often one may go `step` mm around and along the profile before one comes to other
    /// stitches than these.
    pub(super) fn room(&self, step: [f32; 2]) -> f32 {
        let (turn, round) = (step[0] * self.per_mm[0], step[1] * self.per_mm[1]);
        let mut room = f32::INFINITY;
        for layer in self.all.iter().flatten() {
            let cell = &layer.cell;
            let a = cell.per_turn[0] * turn + cell.per_round[0] * round;
            let left = if a > 0.0 { 0.5 - cell.a } else { 0.5 + cell.a };
            room = room.min(left / a.abs().max(1e-6));
        }
        room
    }

    /// What lies uppermost at the place itself.
    pub(super) fn top(&self, care: Care) -> Option<&Layer> {
        let mut best: Option<(&Layer, f32)> = None;
        for layer in self.all.iter().flatten() {
            let high = layer.high(layer.cell.a, layer.cell.b, care);
            if best.is_none_or(|b| high > b.1) {
                best = Some((layer, high));
            }
        }
        best.map(|b| b.0)
    }

    /// How height grows around and along the profile on `layer`, where its tile is `sample`:
    /// mm a mm.
    pub(super) fn slope(&self, layer: &Layer, sample: &Sample) -> [f32; 2] {
        let (across, up, cell) = (sample[1], sample[2], &layer.cell);
        [
            layer.by * self.per_mm[0] * (across * cell.per_turn[0] + up * cell.per_turn[1]),
            layer.by * self.per_mm[1] * (across * cell.per_round[0] + up * cell.per_round[1]),
        ]
    }
}

impl Layer {
    fn high(&self, a: f32, b: f32, care: Care) -> f32 {
        let own = self.tile.height(care.level, a, b);
        self.by * if care.melted > 0.0 { mix(own, self.tile.mean[0], care.melted) } else { own }
    }

    /// The sample of its tile at the place itself.
    pub(super) fn sample(&self, care: Care) -> Sample {
        let own = self.tile.sample(care.level, self.cell.a, self.cell.b);
        [0, 1, 2, 3].map(|c| mix(own[c], self.tile.mean[c], care.melted))
    }
}
