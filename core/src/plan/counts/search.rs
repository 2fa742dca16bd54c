//! The search for the answers of one number of rounds.

use super::candidate::{Candidate, IDEAL_STEPS, Near, Stuffed, Wish};
use super::family::{Family, LEAST_UNEVEN_UNIT};
use super::likely::likely_rms;
use super::repeats::Prices;
use super::shape::SettledShape;

/// Prices at which patterns are sought where no simplicity is chosen, squared stitches a new
/// number of repeats: about where a likely fit cannot be told from the best.
const DEFAULT_UNITS: &[f64] = &[LEAST_UNIT, 4e-4, 1e-3, 2.5e-3];

/// The least of them.
pub(super) const LEAST_UNIT: f64 = 1e-4;

/// The same where one is chosen, from nearly free to so dear that only what shape there is
/// counts.
const LADDER: &[f64] = &[2e-4, 8e-4, 1.6e-3, 5e-3, 2e-2];

/// The price by which numbers of rounds are compared.
pub(super) const MIDDLE: f64 = 1.5e-3;

/// How much further than the ideal's the mean square misfit of all full repeats may be before
/// one uneven round is tried, squared stitches.
const COARSE: f64 = 0.012;

/// How many times what was predicted a pattern may cost, and how much more, squared stitches,
/// before the form is made anew there.
const MISJUDGED: (f64, f64) = (1.25, 3e-3);

/// A number of rounds: its ideal shape, the search near that, and the pattern at the middle
/// price.
pub(super) struct Tried<'a> {
    candidate: Candidate<'a>,
    family: Family,
    ideal: (Vec<f64>, SettledShape),
    near: Near,
    found: Vec<Stuffed>,
    /// What that pattern was predicted to cost.
    predicted: f64,
}

impl<'a> Tried<'a> {
    pub(super) fn new(wish: &'a Wish<'a>, rounds: usize) -> Self {
        let candidate = Candidate::new(wish, rounds);
        let family = Family::new(&candidate);
        let ideal = candidate.ideal();
        let mut near = candidate.near(&ideal.0, &ideal.1, &family.rounds);
        let pattern = family.best(&mut near, MIDDLE);
        let predicted = pattern.as_ref().map_or(0.0, |p| p.1);
        let found: Vec<Stuffed> =
            pattern.map(|(counts, _)| candidate.stuff(counts, &ideal.1)).into_iter().collect();
        Self { candidate, family, ideal, near, found, predicted }
    }

    /// Whether the form near the ideal does not hold where patterns are: cloth went slack, or a
    /// corner bulges.
    fn is_misjudged(&self) -> bool {
        self.cost() > MISJUDGED.0 * self.predicted + MISJUDGED.1
    }

    /// Forecasts solved so far.
    pub(super) fn forecasts(&self) -> usize {
        1 + IDEAL_STEPS + self.found.len()
    }

    /// What its pattern costs at the middle price, squared stitches.
    pub(super) fn cost(&self) -> f64 {
        self.found.first().map_or(f64::INFINITY, |m| self.family.cost(m, MIDDLE))
    }

    /// Seeks answers of this number of rounds until `budget` forecasts are spent in all.
    pub(super) fn seek(
        self,
        forecasts: &mut usize,
        budget: usize,
    ) -> (Sought<'a>, Vec<Stuffed>) {
        let misjudged = self.is_misjudged();
        let Self { candidate, family, ideal, near, found, .. } = self;
        let piece = candidate.wish.piece;
        let free = piece.simplicity.is_some();
        let units = if free { LADDER } else { DEFAULT_UNITS };
        let mut search = Search {
            candidate: &candidate,
            family,
            found,
            forecasts: *forecasts,
            budget,
            free,
        };
        if misjudged {
            let from = search.found[0].clone();
            let near = candidate.near_stuffed(&from, &search.family.rounds);
            search.first(&from.counts_as_real(), &from.shape, near, units);
        } else {
            search.first(&ideal.0, &ideal.1, near, units);
        }
        let square = ideal.1.misfit.whole_square;
        let pulls = search.again(units, square);
        *forecasts = search.forecasts;
        let Search { family, found, .. } = search;
        let width = piece.gauge.stitch_width_mm();
        let ideal = likely_rms(&ideal.1, &piece.variation, square, pulls, width);
        (Sought { candidate, family, pulls, ideal }, found)
    }
}

/// A number of rounds whose answers were sought.
pub(super) struct Sought<'a> {
    pub(super) candidate: Candidate<'a>,
    pub(super) family: Family,
    /// What the pulls of single rounds add to the mean square distance, squared stitches.
    pub(super) pulls: f64,
    /// Expected RMS distance of the ideal counts, stitch widths: about the best there is.
    pub(super) ideal: f64,
}

/// Answers to one number of rounds, as they are found.
struct Search<'c, 'a> {
    candidate: &'c Candidate<'a>,
    family: Family,
    found: Vec<Stuffed>,
    forecasts: usize,
    budget: usize,
    /// Whether free counts are wished, beside patterns.
    free: bool,
}

impl Search<'_, '_> {
    /// Patterns near the `shape` of `counts` at the prices of `units`, and free counts if they
    /// are wished.
    fn first(&mut self, counts: &[f64], shape: &SettledShape, mut near: Near, units: &[f64]) {
        let Candidate { rounds, steps, .. } = self.candidate;
        let free = Prices::at(0.0, false);
        let free = match (self.free, self.is_mirrored()) {
            (false, _) => None,
            (true, true) => {
                self.candidate.near(counts, shape, rounds).best(rounds, steps, free)
            }
            (true, false) => near.best(rounds, steps, free),
        };
        let patterns = units.iter().map(|&unit| self.family.best(&mut near, unit));
        let wished: Vec<_> = std::iter::once(free).chain(patterns).flatten().collect();
        for (counts, _) in wished {
            self.forecast(counts, shape);
        }
    }

    /// What is left of the forecasts goes to free counts near the closest answer, if they are
    /// wished, and to patterns near the cheapest. Returns what the pulls of single rounds add
    /// there, as in [`Sought`].
    fn again(&mut self, units: &[f64], ideal: f64) -> f64 {
        let Candidate { rounds, steps, .. } = self.candidate;
        let closest = self.found[closest(&self.found)].clone();
        let mut near = self.candidate.near_stuffed(&closest, rounds);
        let pull = self.candidate.wish.piece.variation.pull;
        let pulls = near.model.spread_by_pulls(&closest.counts, pull);
        if self.free
            && let Some((counts, _)) = near.best(rounds, steps, Prices::at(0.0, false))
        {
            self.forecast(counts, &closest.shape);
        }
        let from =
            if self.free { self.found[self.cheapest()].clone() } else { closest.clone() };
        let mut near = match from.counts == closest.counts && !self.is_mirrored() {
            true => near,
            false => self.candidate.near_stuffed(&from, &self.family.rounds),
        };
        // In a thin piece full repeats come in few counts: one round that is none helps there.
        let least = self.found.iter().map(|s| s.shape.misfit.whole_square);
        let least = least.fold(f64::INFINITY, f64::min);
        if !self.free && !self.is_mirrored() && least > ideal + COARSE {
            let prices = Prices::at(LEAST_UNEVEN_UNIT, false);
            if let Some((counts, _)) = near.best(rounds, steps, prices) {
                self.forecast(counts, &from.shape);
            }
        }
        for &unit in units {
            if self.forecasts >= self.budget {
                break;
            }
            if let Some((counts, _)) = self.family.best(&mut near, unit) {
                self.forecast(counts, &from.shape);
            }
        }
        pulls
    }

    fn is_mirrored(&self) -> bool {
        self.family.rounds.is_mirrored()
    }

    /// Forecasts `counts`, setting out from `near`, if they are new and the budget is not
    /// spent.
    fn forecast(&mut self, counts: Vec<u32>, near: &SettledShape) {
        let spent = self.forecasts >= self.budget && !self.found.is_empty();
        if !spent && self.found.iter().all(|s| s.counts != counts) {
            self.forecasts += 1;
            self.found.push(self.candidate.stuff(counts, near));
        }
    }

    /// The answer that is cheapest at the middle price.
    fn cheapest(&self) -> usize {
        let costs = self.found.iter().map(|s| self.family.cost(s, MIDDLE)).enumerate();
        costs.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(i, _)| i)
    }
}

/// The index of the one that lies closest, what its slack costs counted in; 0 where there is
/// none.
pub(super) fn closest<'s>(found: impl IntoIterator<Item = &'s Stuffed>) -> usize {
    let costs = found.into_iter().map(Stuffed::cost).enumerate();
    costs.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(i, _)| i)
}
