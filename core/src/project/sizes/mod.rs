//! Sizes: a piece planned anew at another height, width, scale or gauge, or so that it meets
//! a companion.
//!
//! A size is never made by multiplying counts. The outline is scaled (`scale`), what has to keep
//! its stitches is widened again (`features`), what belongs to single rounds is carried to the
//! same share of the working (`carry`), and the piece is planned. The scale is moved
//! until the *forecast* has the wanted measure, so a size holds what it says even where cloth
//! bulges. [`size_table`] sets the sizes of a piece side by side.

mod carry;
mod family;
mod features;
mod project;
mod scale;
mod table;

use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::plan::{Plan, plan};

pub use crate::piece::size::{ASKED_FACTOR, ASKED_MM, Keeps, MOST_SIZES, Size, SizeBy};
pub use features::{Feature, FeatureKind, features};
pub use project::{AtSize, ResizedProject, at_size, put, resize, size_names, sized};
pub use table::{Made, SizeRow, size_table, written, written_as};

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
            Self::Height => plan.size_mm.0,
            Self::Width => plan.size_mm.1,
            Self::Both => (plan.size_mm.0 * plan.size_mm.1).sqrt(),
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
    pub notes: Vec<String>,
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

/// `piece` at `size`, its outline scaled until the forecast has the wanted measure.
///
/// Pins, plain faces, loops, kinds of stitch and yarns go to the same share of the working;
/// what found no round is named in [`Resized::notes`]. Where a measure cannot be met, the
/// nearest is given and the notes say why. At factor 1 it is the piece itself.
///
/// # Errors
/// For a piece that cannot be planned, a size that [`Size::validate`] refuses, and
/// [`SizeBy::Meet`], which only [`sized`] can answer: it takes the whole project.
pub fn sized_piece(piece: &Piece, size: &Size) -> Result<Resized> {
    size.validate()?;
    let base = scale::Base::new(piece, plan(piece)?, size);
    match size.by {
        SizeBy::Height(mm) => base.to_measure(Dimension::Height, mm, piece.gauge),
        SizeBy::Width(mm) => base.to_measure(Dimension::Width, mm, piece.gauge),
        SizeBy::Factor(factor) => base.times(factor),
        SizeBy::Gauge { gauge, keeps: Keeps::Size } => {
            base.to_measure(Dimension::Height, base.plan.size_mm.0, gauge)
        }
        SizeBy::Gauge { gauge, keeps: Keeps::Rounds } => {
            let kept = crate::project::another_yarn::same_rounds(piece, &base.plan, gauge)?;
            let scale = kept.1.size_mm.0 / base.plan.size_mm.0;
            let base_rounds = base.plan.rounds.len() as u32;
            let (piece, plan) = kept;
            let notes = Vec::new();
            Ok(Resized { piece, plan, scale, base_rounds, wanted: None, notes })
        }
        SizeBy::Meet { .. } => Err(Error::new(
            format!("size “{}”", size.name),
            "what it meets is in another piece",
            "ask for the size of the whole project",
        )),
    }
}

/// `piece`, planned as `plan`, with its outline times `scale` and everything else carried; it
/// keeps what `size` keeps.
///
/// # Errors
/// Where it cannot be planned at that scale.
pub(crate) fn scaled_by(
    piece: &Piece,
    plan: &Plan,
    scale: f64,
    size: &Size,
) -> Result<Resized> {
    scale::Base::new(piece, plan.clone(), size).at(scale)
}
