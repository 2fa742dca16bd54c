//! One answer: counts, and how near they come in hands that differ.

use super::candidate::Stuffed;
use super::family::{is_pattern, trouble};
use super::likely::likely_rms;
use super::search::Sought;
use crate::plan::forecast::fit::Fit;

/// How much further than the best a likely fit may be and still be taken for its simplicity,
/// stitch widths: less than hands can tell.
pub const INDIFFERENT_STITCHES: f64 = 0.03;

/// How much of that is kept for what the descent to the faithful end might still find.
const RESERVE_STITCHES: f64 = 0.004;

/// One answer: counts, how near they come, what they ask of the maker. Distances are of its
/// nodes: the fit along the whole curve is measured of what is taken, see [`CountsAnswer::measured`].
#[derive(Debug, Clone)]
pub(super) struct CountsAnswer {
    pub(super) stuffed: Stuffed,
    /// Expected RMS distance over hands, stitch widths.
    pub(super) likely_rms_stitches: f64,
    /// What its pattern costs the maker, in new numbers of repeats.
    pub(super) trouble: f64,
    /// Whether it is written in full repeats, of few numbers; see [`is_pattern`].
    pub(super) is_pattern: bool,
    /// Which of the numbers of rounds that were sought it has, as an index.
    pub(super) of: usize,
}

impl CountsAnswer {
    /// Its distance along the whole curve, nominal and over hands, as one of `sought`.
    pub(super) fn measured(&self, Sought { candidate, pulls, .. }: &Sought<'_>) -> (Fit, f64) {
        let wish = candidate.wish;
        let fit = self.stuffed.fit(wish);
        let (piece, square) = (wish.piece, fit.rms_stitches * fit.rms_stitches);
        let width = piece.gauge.stitch_width_mm();
        let shape = &self.stuffed.shape;
        (fit, likely_rms(shape, &piece.variation, square, *pulls, width))
    }

    /// Whether it is a pattern whose likely fit no hand could tell from the `best` there is.
    pub(super) fn is_near(&self, best: f64) -> bool {
        let most = best + INDIFFERENT_STITCHES - RESERVE_STITCHES;
        self.is_pattern && self.likely_rms_stitches <= most
    }

    /// What it costs at a `unit` of trouble, squared stitches.
    pub(super) fn cost(&self, unit: f64) -> f64 {
        self.likely_rms_stitches * self.likely_rms_stitches + unit * self.trouble
    }
}

/// About the best likely fit there is among numbers of rounds that were `sought`, stitch widths.
pub(super) fn best(sought: &[Sought<'_>], answers: &[CountsAnswer]) -> f64 {
    let found = answers.iter().map(|a| a.likely_rms_stitches);
    sought.iter().map(|s| s.ideal).chain(found).fold(f64::INFINITY, f64::min)
}

/// `stuffed` as an answer of `sought`, which has the index `of`.
pub(super) fn judged(sought: &Sought<'_>, of: usize, stuffed: Stuffed) -> CountsAnswer {
    let Sought { candidate, pulls, .. } = sought;
    let piece = candidate.wish.piece;
    let square = stuffed.shape.misfit.whole_square + stuffed.slack;
    let width = piece.gauge.stitch_width_mm();
    let likely_rms_stitches =
        likely_rms(&stuffed.shape, &piece.variation, square, *pulls, width);
    let together = piece.rules.plain_together;
    let trouble = trouble(&candidate.rounds, &stuffed.counts, together);
    let is_pattern = is_pattern(&candidate.rounds, &stuffed.counts);
    CountsAnswer { stuffed, likely_rms_stitches, trouble, is_pattern, of }
}
