//! A piece at another gauge, its rounds kept.

use crate::error::Result;
use crate::piece::Piece;
use crate::piece::cloth::Swatches;
use crate::piece::gauge::Gauge;
use crate::plan::{Plan, plan};
use crate::project::given::keep_rounds;

/// Works `piece` at `gauge`; swatches of other kinds of stitch become as much wider and
/// higher as that of single crochet, until they are worked anew.
pub(crate) fn set_gauge(piece: &mut Piece, gauge: Gauge) {
    let wider = gauge.stitch_width_mm() / piece.gauge.stitch_width_mm();
    let higher = gauge.round_height_mm() / piece.gauge.round_height_mm();
    let grown = |swatch: Option<Gauge>| {
        swatch.map(|s| Gauge {
            across_mm: s.across_mm * wider,
            along_mm: s.along_mm * higher,
            hook_mm: gauge.hook_mm,
            ..s
        })
    };
    piece.gauge = gauge;
    piece.swatches = Swatches {
        half_double: grown(piece.swatches.half_double),
        double: grown(piece.swatches.double),
        ..piece.swatches
    };
}

/// The rounds of `piece`, planned as `plan`, at `gauge`: the piece is given by them from then
/// on, and comes out as large as those stitches stuff to.
pub(crate) fn same_rounds(
    piece: &Piece,
    planned: &Plan,
    gauge: Gauge,
) -> Result<(Piece, Plan)> {
    gauge.validate()?;
    let mut made = keep_rounds(piece, planned);
    set_gauge(&mut made, gauge);
    let wider = gauge.stitch_width_mm() / piece.gauge.stitch_width_mm();
    let higher = gauge.round_height_mm() / piece.gauge.round_height_mm();
    made.straight_mm *= wider;
    made.outline = piece.outline.scaled(wider, higher);
    made.pins.clear();
    let remade = plan(&made)?;
    Ok((made, remade))
}
