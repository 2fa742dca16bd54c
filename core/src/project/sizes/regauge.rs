//! A piece at another gauge, its rounds kept.

use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::piece::cloth::Swatches;
use crate::piece::gauge::Gauge;
use crate::plan::counts::Start;
use crate::plan::{Plan, plan, skin};

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

/// The rounds of `piece`, planned as `plan`, at `gauge`: every count pinned, the outline
/// drawn as wide and as high as those stitches stuff to.
pub(crate) fn same_rounds(
    piece: &Piece,
    planned: &Plan,
    gauge: Gauge,
) -> Result<(Piece, Plan)> {
    gauge.validate()?;
    let mut made = piece.clone();
    set_gauge(&mut made, gauge);
    let counts = planned.counts();
    made.pins = (1..).zip(counts.iter().copied()).collect();
    let (first, last) = (counts[0], counts[counts.len() - 1]);
    if planned.start == Start::Ring && (3..=24).contains(&first) {
        made.rules.ring = Some(first);
    }
    if piece.outline.finishes_closed() && (3..=200).contains(&last) {
        made.rules.last = Some(last);
    }
    let wider = gauge.stitch_width_mm() / piece.gauge.stitch_width_mm();
    made.straight_mm *= wider;
    let length: f64 = (1..=counts.len() as u32).map(|k| made.cloth_of_round(k).1).sum();
    stretch(&mut made, piece, wider, length);
    let remade = plan(&made)?;
    if remade.counts() != counts || remade.chain != planned.chain {
        return Err(Error::new(
            format!("piece “{}”", piece.name),
            "at that gauge its rounds no longer make the outline",
            "keep the size instead, or choose a gauge nearer to its own",
        ));
    }
    Ok((made, remade))
}

/// Gives `made` the outline of `piece` made `wider`, and as much higher as lets its cloth be
/// `length_mm` long unstuffed.
fn stretch(made: &mut Piece, piece: &Piece, wider: f64, length_mm: f64) {
    let mut at = |higher: f64| {
        made.outline = piece.outline.scaled(wider, higher);
        skin(made).1.length_mm()
    };
    // A flat piece's cloth hardly depends on its height, so the answer is bracketed.
    let (mut low, mut high) = (0.05 * wider, 20.0 * wider);
    for _ in 0..50 {
        let middle = (low * high).sqrt();
        match at(middle) < length_mm {
            true => low = middle,
            false => high = middle,
        }
    }
    at((low * high).sqrt());
}
