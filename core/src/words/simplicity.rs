//! The trade-off: every answer to a piece worth choosing, from faithful to simple.

use crate::error::Result;
use crate::piece::{Accepted, Piece};
use crate::plan::{self, Plan};
use crate::words::wording::{WrittenLine, words};
use crate::words::write::Writer;

/// One answer and what it costs.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The simplicity by which a plan takes it: 0 the most faithful … 1 the simplest.
    pub simplicity: f64,
    /// Stitches of each round.
    pub counts: Vec<u32>,
    /// Expected RMS distance to the outline over hands, stitch widths.
    pub likely_rms_stitches: f64,
    /// Nominal RMS distance, stitch widths.
    pub rms_stitches: f64,
    /// What its pattern costs the maker, in new numbers of repeats.
    pub trouble: f64,
    /// Share of its rounds that are plain or a single repeat, 0 to 1.
    pub simple_share: f64,
    /// Lines to read that differ from one another.
    pub distinct_lines: usize,
    /// Its rounds, worded.
    pub lines: Vec<WrittenLine>,
}

impl Answer {
    /// The answer that `plan` of `piece` is, taken at `simplicity`, worded as the bench words
    /// it.
    pub fn of(simplicity: f64, piece: &Piece, plan: &Plan) -> Self {
        let words = words(plan, piece, &Writer::bench());
        Self {
            simplicity,
            counts: plan.counts(),
            likely_rms_stitches: plan.likely_rms_stitches,
            rms_stitches: plan.fit.map_or(0.0, |fit| fit.rms_stitches),
            trouble: plan.trouble,
            simple_share: plan.simple_share(),
            distinct_lines: words.distinct_lines(),
            lines: words.lines,
        }
    }

    /// `piece` with this answer chosen.
    #[must_use]
    pub fn chosen(&self, piece: &Piece) -> Piece {
        let simplicity = Some(self.simplicity);
        let accepted = Some(Accepted { simplicity, counts: self.counts.clone() });
        Piece { simplicity, accepted, ..piece.clone() }
    }
}

/// Every answer to `piece` worth choosing, from the most faithful to the simplest. None is
/// beaten by another in both likely fit and trouble, and [`plan`](crate::plan()) at an answer's
/// simplicity takes that answer.
///
/// Takes as long as some tens of plans: not for every frame.
///
/// # Errors
/// As [`plan`](crate::plan()).
pub fn answers(piece: &Piece) -> Result<Vec<Answer>> {
    let plans = plan::answers(piece)?;
    Ok(plans.iter().map(|(simplicity, plan)| Answer::of(*simplicity, piece, plan)).collect())
}
