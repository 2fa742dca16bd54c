//! The measures of a piece's rounds: which kind of stitch, how wide, how high.

use super::Piece;
use crate::extent::StitchSize;
use crate::piece::cloth::{Kind, Working};

impl Piece {
    /// The kind of stitch of round `round` (from 1).
    pub fn kind_of_round(&self, round: u32) -> Kind {
        self.kinds
            .iter()
            .filter(|from| from.from_round <= round)
            .max_by_key(|from| from.from_round)
            .map_or(Kind::Single, |from| from.kind)
    }

    /// Stitches each round leans against the one below: those of a spiral; joined rounds
    /// begin where they ended.
    pub fn drift(&self) -> f64 {
        match self.working {
            Working::Spiral => self.rules.spiral_drift,
            Working::Joined { .. } => 0.0,
        }
    }

    /// Whether a face keeps round `round` (from 1) plain.
    pub fn is_in_face(&self, round: u32) -> bool {
        self.faces.iter().any(|f| (f.from_round..=f.to_round).contains(&round))
    }

    /// Width and height of a stitch of round `round` (from 1), mm, unstuffed.
    pub fn cloth_of_round(&self, round: u32) -> StitchSize {
        let StitchSize { width, height } = self.cloth_of_kind(self.kind_of_round(round));
        let only = self.loops.contains_key(&round);
        let loop_height = self.swatches.loop_only_height.filter(|_| only).unwrap_or(1.0);
        StitchSize { width, height: height * loop_height }
    }

    fn cloth_of_kind(&self, kind: Kind) -> StitchSize {
        let swatch = match kind {
            Kind::Single => Some(self.gauge),
            Kind::HalfDouble => self.swatches.half_double,
            Kind::Double => self.swatches.double,
        };
        match swatch {
            Some(gauge) => gauge.stitch_size(),
            None => {
                let StitchSize { width, height } = self.gauge.stitch_size();
                StitchSize { width, height: height * kind.default_height() }
            }
        }
    }

    /// Kinds the piece uses whose swatch is missing.
    pub fn unmeasured_kinds(&self) -> Vec<Kind> {
        let uses = |kind| self.kinds.iter().any(|from| from.kind == kind);
        let missing = [
            (Kind::HalfDouble, self.swatches.half_double.is_none()),
            (Kind::Double, self.swatches.double.is_none()),
        ];
        missing.iter().filter(|&&(kind, none)| none && uses(kind)).map(|&(k, _)| k).collect()
    }

    /// Where the edges of `rounds` rounds lie, from 0 to `length_mm` of rest length: shared
    /// out by their heights.
    pub(crate) fn edges_mm(&self, rounds: usize, length_mm: f64) -> Vec<f64> {
        let mut edges = Vec::with_capacity(rounds + 1);
        let mut at = 0.0;
        edges.push(at);
        for k in 1..=rounds as u32 {
            at += self.cloth_of_round(k).height;
            edges.push(at);
        }
        let scale = length_mm / at;
        edges.iter_mut().for_each(|edge| *edge *= scale);
        edges
    }

    /// Number of rounds, not whole, whose heights add up to `length_mm`; `most` at most.
    pub(crate) fn rounds_in(&self, length_mm: f64, most: usize) -> f64 {
        if self.kinds.is_empty() && self.loops.is_empty() {
            return length_mm / self.gauge.round_height_mm();
        }
        let mut left = length_mm;
        for k in 1..=most as u32 + 1 {
            let height = self.cloth_of_round(k).height;
            if left <= height {
                return f64::from(k - 1) + left / height;
            }
            left -= height;
        }
        most as f64 + 1.0
    }
}
