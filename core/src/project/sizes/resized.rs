//! What a size comes to: a piece planned anew, and how near it is to what was wanted.

use super::carry;
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::plan::Plan;
use crate::sentence::Sentence;

/// A measure of the stuffed piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dimension {
    /// Along the axis.
    Height,
    /// Across it, at the widest.
    Width,
    /// Both, as their geometric mean.
    Both,
}

impl Dimension {
    /// This measure of a plan's forecast, mm.
    pub fn of(self, plan: &Plan) -> f64 {
        match self {
            Self::Height => plan.size_mm.height,
            Self::Width => plan.size_mm.width,
            Self::Both => (plan.size_mm.height * plan.size_mm.width).sqrt(),
        }
    }

    /// `high`, `wide` or `on average`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Height => "high",
            Self::Width => "wide",
            Self::Both => "on average",
        }
    }
}

/// A measure that a size is to have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Which measure.
    pub dimension: Dimension,
    /// What it is to be, mm.
    pub mm: f64,
}

impl Wanted {
    /// How far off a finished size may be and still be called met, mm; see [`tolerance_mm`].
    pub fn tolerance_mm(&self, gauge: &Gauge) -> f64 {
        tolerance_mm(self.mm, gauge)
    }
}

/// How far a measure may be off the `wanted_mm` and still be called met: one in a hundred or
/// half a round, whichever is more. mm.
pub fn tolerance_mm(wanted_mm: f64, gauge: &Gauge) -> f64 {
    (0.01 * wanted_mm).max(0.5 * gauge.round_height_mm())
}

/// A piece at a size: planned anew, with what has to be said about it.
#[derive(Debug, Clone)]
pub struct Resized {
    /// The piece at that size, ready to be saved or planned.
    pub piece: Piece,
    /// Its plan.
    pub plan: Plan,
    /// What its outline was multiplied by.
    pub scale: f64,
    /// Rounds of the piece it was made from.
    pub base_rounds: u32,
    /// The measure it was to have, where it was to have one.
    pub wanted: Option<Wanted>,
    /// What could not be carried over, kept or met, a sentence each.
    pub notes: Vec<Sentence>,
}

impl Resized {
    /// The round, from 1, at the same share of the working as round `round` of the piece it
    /// was made from.
    pub fn round_for(&self, round: u32) -> u32 {
        carry::round_for(round, self.base_rounds, self.plan.rounds.len() as u32)
    }

    /// How far the finished size is from what was wanted, mm; 0 where no measure was.
    pub fn off_mm(&self) -> f64 {
        self.wanted.map_or(0.0, |w| (w.dimension.of(&self.plan) - w.mm).abs())
    }

    /// Whether the finished size is what was wanted, within [`Wanted::tolerance_mm`].
    pub fn is_met(&self) -> bool {
        self.wanted.is_none_or(|w| self.off_mm() <= w.tolerance_mm(&self.piece.gauge))
    }
}
