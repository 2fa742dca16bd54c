//! Another yarn: the same piece at another gauge, with its rounds kept or its size kept, side
//! by side.

use crate::error::Result;
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::plan::{Plan, plan};
use crate::project::sizes::{Keeps, Resized, Size, SizeBy, same_rounds, sized_piece};

/// A piece at its own gauge and what becomes of it at another.
#[derive(Debug, Clone)]
pub struct Comparison {
    /// The plan at the gauge it has.
    pub now: Plan,
    /// The same rounds at the other gauge: the piece, given by them, and its plan. It
    /// comes out larger or smaller.
    pub same_rounds: Result<(Piece, Plan)>,
    /// The same size at the other gauge: other rounds.
    pub same_size: Result<Resized>,
}

/// `piece` at `gauge`, both ways.
///
/// # Errors
/// For a gauge that [`Gauge::validate`] refuses and a piece that cannot be planned as it is;
/// what cannot be planned at the other gauge has its reason in its place.
pub fn compare(piece: &Piece, gauge: Gauge) -> Result<Comparison> {
    gauge.validate()?;
    let now = plan(piece)?;
    let same_rounds = same_rounds(piece, &now, gauge);
    let by = SizeBy::Gauge { gauge, keeps: Keeps::Size };
    let same_size = sized_piece(piece, &Size::new("same size", by));
    Ok(Comparison { now, same_rounds, same_size })
}
