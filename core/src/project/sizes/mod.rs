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
mod regauge;
mod resized;
mod scale;
mod table;

use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::plan::{Plan, plan};
use crate::project::given::plan_anew;
use crate::sentence::Sentence;
pub(crate) use regauge::{same_rounds, set_gauge};

pub use crate::piece::size::{ASKED_FACTOR, ASKED_MM, Keeps, MOST_SIZES, Size, SizeBy};
pub use features::{Feature, FeatureKind, features};
pub use project::{
    AtSize, MOST_AT_SIZES, ResizedProject, at_all_sizes, at_size, put, resize, size_names,
    sized,
};
pub use resized::{Dimension, Resized, Wanted, tolerance_mm};
pub use table::{MadeSize, SizeRow, size_table, written, written_as};

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
    sized_piece_from(piece, size, None)
}

/// As [`sized_piece`]; `base` is the plan of the piece, where it is known.
fn sized_piece_from(piece: &Piece, size: &Size, base: Option<&Plan>) -> Result<Resized> {
    size.validate()?;
    let keeps_rounds = matches!(size.by, SizeBy::Gauge { keeps: Keeps::Rounds, .. });
    if piece.given.is_some() && !keeps_rounds && size.by != SizeBy::Factor(1.0) {
        // Rounds that are given have one size at one gauge: another takes other rounds.
        let mut made = sized_piece(&plan_anew(piece)?, size)?;
        made.notes.insert(0, Sentence::note("planned_anew", []));
        return Ok(made);
    }
    let base = base.cloned().map_or_else(|| plan(piece), Ok)?;
    let base = scale::Base::new(piece, base, size);
    match size.by {
        SizeBy::Height(mm) => base.to_measure(Dimension::Height, mm, piece.gauge),
        SizeBy::Width(mm) => base.to_measure(Dimension::Width, mm, piece.gauge),
        SizeBy::Factor(factor) => base.times(factor),
        SizeBy::Gauge { gauge, keeps: Keeps::Size } => {
            base.to_measure(Dimension::Height, base.plan.size_mm.height, gauge)
        }
        SizeBy::Gauge { gauge, keeps: Keeps::Rounds } => {
            let kept = same_rounds(piece, &base.plan, gauge)?;
            let scale = kept.1.size_mm.height / base.plan.size_mm.height;
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
