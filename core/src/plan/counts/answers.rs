//! The answers to one wish, from faithful to simple, and the one that is taken.

use super::answer::{CountsAnswer, INDIFFERENT_STITCHES, best, judged};
use super::candidate::{Candidate, Stuffed, Wish};
use super::descent;
use super::effort::{Effort, MOST_FORECASTS};
use super::further;
use super::rules::worked_length_mm;
use super::search::{LEAST_UNIT, MIDDLE, Sought, Tried, closest};
use crate::piece::{Accepted, MOST_ROUNDS, Piece, Rules};

/// Numbers of which designers like every round to be a multiple.
const PLAIN_FAMILIES: [u32; 3] = [2, 3, 6];

/// Forecasts of a full search before its descent: enough for every price twice.
const FULL_FORECASTS: usize = 32;

/// How much further than a fresh answer's the likely fit of counts accepted before may be for
/// them to be kept, stitch widths.
const CALM_STITCHES: f64 = 0.01;

/// Forecasts kept for judging accepted counts.
const CALM_FORECASTS: usize = 2;

/// Prices of trouble between the faithful and the simple end, squared stitches.
const UNITS: std::ops::Range<f64> = 1e-7..10.0;

/// The price of trouble that a chosen simplicity stands for: none at the faithful end, above
/// everything at the simple one.
fn unit_of(simplicity: f64) -> f64 {
    match simplicity {
        s if s <= 0.0 => 0.0,
        s if s >= 1.0 => 1e6,
        s => UNITS.start * (UNITS.end / UNITS.start).powf(s),
    }
}

/// The simplicity that stands for a price of trouble: see [`unit_of`].
fn simplicity_of(unit: f64) -> f64 {
    ((unit / UNITS.start).ln() / (UNITS.end / UNITS.start).ln()).clamp(0.01, 0.99)
}

/// The answers found, from the most faithful to the simplest; none is beaten by another in
/// both likely fit and trouble.
pub(super) struct Front<'a> {
    /// The numbers of rounds they have.
    pub(super) sought: Vec<Sought<'a>>,
    pub(super) answers: Vec<CountsAnswer>,
    /// About the best likely fit there is, stitch widths.
    best: f64,
    /// Forecasts solved.
    pub(super) forecasts: usize,
}

impl<'a> Front<'a> {
    /// The front of `wish`: the same for every chosen simplicity. Where none is chosen only
    /// patterns are sought, of the number of rounds whose pattern is cheapest at the middle
    /// price first; and while a hand drags, of that number alone.
    pub(super) fn of(wish: &'a Wish<'a>, effort: Effort) -> Self {
        let piece = wish.piece;
        let draft = effort == Effort::Draft;
        let full = !draft && piece.simplicity.is_some();
        let lengths = lengths(piece, worked_length_mm(piece, wish.rest));
        let mut tried: Vec<Tried<'a>> = lengths.iter().map(|&n| Tried::new(wish, n)).collect();
        let mut forecasts = tried.iter().map(Tried::forecasts).sum();
        tried.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
        if draft {
            tried.truncate(1);
        }
        let calm = if draft && piece.accepted.is_some() { CALM_FORECASTS } else { 0 };
        let mut sought = Vec::with_capacity(tried.len());
        let mut found: Vec<(usize, Stuffed)> = Vec::new();
        for (of, tried) in tried.into_iter().enumerate() {
            // One is kept for finding what is taken afresh.
            let budget = match (full, of) {
                (true, _) => forecasts + FULL_FORECASTS,
                (false, 0) => MOST_FORECASTS - 1 - calm,
                (false, _) => 0,
            };
            let (one, its) = tried.seek(&mut forecasts, budget);
            sought.push(one);
            found.extend(its.into_iter().map(|stuffed| (of, stuffed)));
        }
        if full {
            let (of, closest) =
                found[closest(found.iter().map(|(_, stuffed)| stuffed))].clone();
            let best = descent::descend(
                &sought[of].candidate,
                closest,
                descent::ROUNDS_FORECAST,
                &mut forecasts,
            );
            found.push((of, best));
        }
        let mut answers: Vec<CountsAnswer> =
            found.into_iter().map(|(of, stuffed)| judged(&sought[of], of, stuffed)).collect();
        if !draft && piece.simplicity.is_none() {
            forecasts += further::seek(&sought, &mut answers);
        }
        let best = best(&sought, &answers);
        // Where no simplicity is chosen, free counts only tell how near anything comes.
        if piece.simplicity.is_none() && answers.iter().any(|a| a.is_pattern) {
            answers.retain(|a| a.is_pattern);
        }
        let mut all = Self { sought, best, answers: front(answers), forecasts };
        if full {
            let faithful = all.answers[0].clone();
            let square = |answer: &CountsAnswer| answer.stuffed.shape.misfit.whole_square;
            for multiple in PLAIN_FAMILIES {
                let plain = plain_family(&all.sought, multiple, &mut all.forecasts);
                let Some((of, stuffed)) = plain else { continue };
                let plain = judged(&all.sought[of], of, stuffed);
                // The faithful end is asked for the line itself: what hands may work no further
                // off, but lies further off as it is written, does not take its place.
                let displaces = plain.likely_rms_stitches < faithful.likely_rms_stitches;
                if !(displaces && square(&plain) > square(&faithful)) {
                    // None of those found gives way to it before both are measured.
                    all.answers.push(plain);
                }
            }
            all.settle_order();
        }
        all
    }

    /// Puts the answers in the order in which they are shown: by what each is measured to be,
    /// found anew from its counts alone.
    fn settle_order(&mut self) {
        let answers = std::mem::take(&mut self.answers);
        self.forecasts += answers.len();
        let measured = |answer: CountsAnswer| {
            let answer = self.afresh(answer);
            let (_, likely_rms_stitches) = answer.measured(&self.sought[answer.of]);
            CountsAnswer { likely_rms_stitches, ..answer }
        };
        let mut kept = front(answers.into_iter().map(measured).collect());
        // A simpler answer that lies nearer, however much less slack costs it.
        let mut nearest = f64::INFINITY;
        for at in (0..kept.len()).rev() {
            if kept[at].likely_rms_stitches < nearest {
                nearest = kept[at].likely_rms_stitches;
            } else {
                kept.remove(at);
            }
        }
        self.answers = kept;
    }

    /// The answer that is taken. What was accepted before is kept while no hand could tell the
    /// fresh answer from it; failing that, what changes the fewest of its rounds.
    pub(super) fn take(mut self) -> (Self, CountsAnswer) {
        let piece = self.sought[0].candidate.wish.piece;
        let best = self.best;
        let fresh = self.answers.swap_remove(self.pick(piece.simplicity));
        let of = fresh.of;
        let sought = &self.sought[of];
        let candidate = &sought.candidate;
        let accepted = piece.accepted.as_ref().filter(|a| a.simplicity == piece.simplicity);
        let Some(Accepted { counts, .. }) = accepted else {
            return (self, fresh);
        };
        let rounds = &candidate.rounds;
        if *counts == fresh.stuffed.counts || !rounds.allows_all(counts) {
            return (self, fresh);
        }
        let mut most = fresh.likely_rms_stitches + CALM_STITCHES;
        if piece.simplicity.is_none() {
            most = most.max(best + INDIFFERENT_STITCHES);
        }
        let calm = |answer: &CountsAnswer| {
            answer.stuffed.shape.settled.is_settled()
                && answer.likely_rms_stitches <= most
                && (answer.is_pattern || !fresh.is_pattern)
        };
        let kept = candidate.stuff(counts.clone(), &fresh.stuffed.shape);
        self.forecasts += 1;
        let kept = judged(sought, of, kept);
        if calm(&kept) {
            return (self, kept);
        }
        let family = &sought.family;
        let mut near = candidate.near_stuffed(&kept.stuffed, &family.rounds);
        let unit = piece.simplicity.map_or(MIDDLE, unit_of).clamp(LEAST_UNIT, MIDDLE);
        if let Some((counts, _)) = family.mended(&mut near, unit) {
            let mended = candidate.stuff(counts, &kept.stuffed.shape);
            self.forecasts += 1;
            let mended = judged(sought, of, mended);
            if calm(&mended) {
                return (self, mended);
            }
        }
        (self, fresh)
    }

    /// `answer` with its forecast found anew from its counts alone, so that the same counts
    /// always have the same forecast, to the last bit.
    pub(super) fn afresh(&self, answer: CountsAnswer) -> CountsAnswer {
        let sought = &self.sought[answer.of];
        let stuffed = sought.candidate.stuff_afresh(answer.stuffed.counts);
        judged(sought, answer.of, stuffed)
    }

    /// The simplicities by which the answers are taken.
    pub(super) fn simplicities(&self) -> Vec<f64> {
        let prices = self.answers.windows(2).map(|p| price_between(&p[0], &p[1]));
        let prices: Vec<f64> = prices.collect();
        let last = self.answers.len() - 1;
        let simplicity = |i: usize| match i {
            0 => 0.0,
            i if i == last => 1.0,
            i => simplicity_of((prices[i - 1] * prices[i]).sqrt()),
        };
        (0..=last).map(simplicity).collect()
    }

    /// The index of the answer for `simplicity`: 0 the most faithful, 1 the simplest. Without
    /// one, the simplest pattern of full repeats whose likely fit is within
    /// [`INDIFFERENT_STITCHES`] of the best; the most faithful of such patterns where none is.
    fn pick(&self, simplicity: Option<f64>) -> usize {
        let last = self.answers.len() - 1;
        if let Some(simplicity) = simplicity {
            let unit = unit_of(simplicity);
            let costs = self.answers.iter().map(|a| a.cost(unit)).enumerate();
            return costs.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(last, |(i, _)| i);
        }
        let first = || self.answers.iter().position(|a| a.is_pattern).unwrap_or(last);
        self.answers.iter().rposition(|a| a.is_near(self.best)).unwrap_or_else(first)
    }
}

/// What the same wish would come to if every round were to be a multiple of `multiple`: a
/// search of its own, for what it finds may lie far from all else that is found. Nothing where
/// that would have another number of rounds than those that are `sought`.
fn plain_family(
    sought: &[Sought<'_>],
    multiple: u32,
    forecasts: &mut usize,
) -> Option<(usize, Stuffed)> {
    let wish = sought[0].candidate.wish;
    let rules = Rules { multiple_of: multiple, ..wish.piece.rules };
    let plain = Piece { rules, simplicity: None, accepted: None, ..wish.piece.clone() };
    let plain = Wish { piece: &plain, ..*wish };
    let (front, answer) = Front::of(&plain, Effort::Full).take();
    *forecasts += front.forecasts;
    let Stuffed { counts, shape, .. } = answer.stuffed;
    let fits = |one: &Sought<'_>| {
        let Candidate { widths, rounds, .. } = &one.candidate;
        widths.len() == counts.len() && rounds.allows_all(&counts)
    };
    let of = sought.iter().position(fits)?;
    *forecasts += 1;
    Some((of, sought[of].candidate.stuff(counts, &shape)))
}

/// Those of `answers` that no other beats in both likely fit and trouble, the most faithful
/// first.
fn front(mut answers: Vec<CountsAnswer>) -> Vec<CountsAnswer> {
    answers.sort_by(|a, b| {
        let likely = a.likely_rms_stitches.total_cmp(&b.likely_rms_stitches);
        likely.then(a.trouble.total_cmp(&b.trouble))
    });
    let mut front: Vec<CountsAnswer> = Vec::with_capacity(answers.len());
    for answer in answers {
        if front.last().is_some_and(|last| answer.trouble > last.trouble - 1e-9) {
            continue;
        }
        // What a mean of its neighbours would beat is no answer at any price of trouble.
        while let [.., before, last] = front.as_slice() {
            if price_between(before, last) < price_between(last, &answer) {
                break;
            }
            front.pop();
        }
        front.push(answer);
    }
    front
}

/// The price of trouble at which two answers cost the same, squared stitches.
fn price_between(faithful: &CountsAnswer, simple: &CountsAnswer) -> f64 {
    (simple.cost(0.0) - faithful.cost(0.0)) / (faithful.trouble - simple.trouble)
}

/// The numbers of rounds that a piece may have: what the rest length comes to, rounded either
/// way, unless pins hold them all.
fn lengths(piece: &Piece, worked_mm: f64) -> Vec<usize> {
    let rounds = piece.rounds_in(worked_mm, MOST_ROUNDS);
    let nearest = (rounds.round() as usize).clamp(2, MOST_ROUNDS);
    let all_held = piece.pins.len() == nearest
        && (1..).zip(piece.pins.keys()).all(|(round, &held)| round == held);
    let other = if rounds > nearest as f64 { nearest + 1 } else { nearest - 1 };
    let tried = if all_held { 1 } else { 2 };
    [nearest, other.clamp(2, MOST_ROUNDS)].into_iter().take(tried).collect()
}
