//! Beam search for the whole counts that make a quadratic misfit, slack cloth and the prices
//! of the pattern least.
//!
//! With the form's matrix factored as L Lᵀ the misfit is a sum of squares, one a round, each
//! of that round and the rounds after it. So rounds are chosen from the last to the first,
//! and of all the beginnings made so far only the cheapest few are carried on. Rules tie
//! neighbouring rounds only, and prices what is written after: both are known as soon as the
//! earlier of two rounds is chosen.

use super::form::Factored;
use super::repeats::{MOST_NUMBERS, Prices, RepeatRun, Shaping};
use super::rounds::AllowedRounds;
use super::slack::Slack;
use super::steps::Steps;

/// Beginnings carried from round to round where only counts near the cheapest are tried, and
/// where all are: those differ in more than their cost.
const WIDTHS: (usize, usize) = (10, 24);

/// What each number of repeats beyond [`MOST_NUMBERS`] costs, squared stitches: more than any misfit, so that they
/// are used only where pins and rules leave nothing else.
const TOO_MANY: f64 = 1.0;

/// What is searched.
pub(super) struct BeamTask<'a> {
    /// What rounds may be.
    pub(super) rounds: &'a AllowedRounds,
    /// The steps between them.
    pub(super) steps: &'a Steps,
    /// What the pattern costs.
    pub(super) prices: Prices,
    /// What slack cloth costs.
    pub(super) slack: &'a Slack,
    /// The counts the form counts from.
    pub(super) from: &'a [f64],
    /// Stitches either side of the cheapest count that are tried.
    pub(super) reach: f64,
}

/// One beginning: the rounds chosen so far, from the last to the first.
#[derive(Clone, Copy)]
struct Beginning {
    cost: f64,
    /// Which beginning of the round after it goes on.
    parent: usize,
    /// Count of the earliest round chosen.
    count: u32,
    /// The numbers of repeats of all rounds after it.
    run: RepeatRun,
    /// Whether the round after it is plain.
    next_plain: Option<bool>,
}

impl BeamTask<'_> {
    /// The cheapest counts found, all of them, and their predicted cost: misfit, slack and
    /// prices. `None` where no count near the cheapest keeps to the rules.
    pub(super) fn best(&self, form: &Factored) -> Option<(Vec<u32>, f64)> {
        let length = self.steps.rounds();
        let width = if self.reach.is_finite() { WIDTHS.0 } else { WIDTHS.1 };
        let mut beam: Vec<Beginning> = Vec::with_capacity(width);
        let mut next: Vec<Beginning> = Vec::new();
        // Stitches added so far, one row a beginning.
        let mut added = vec![0.0; width * length];
        let mut added_next = added.clone();
        let mut trail: Vec<Vec<(u32, usize)>> = Vec::with_capacity(length);
        for i in (0..length).rev() {
            next.clear();
            let row = &form.upper[i];
            let off = |tail: &[f64]| form.wanted[i] - dot(&row[1..], &tail[..row.len() - 1]);
            if i + 1 == length {
                self.begin(row[0], form.wanted[i], &mut next);
            }
            for (parent, before) in beam.iter().enumerate() {
                let wanted = off(&added[parent * length + i + 1..(parent + 1) * length]);
                self.go_on(i, row[0], wanted, (parent, before), &mut next);
            }
            if next.is_empty() {
                return None;
            }
            if next.len() > width {
                next.select_nth_unstable_by(width, |a, b| a.cost.total_cmp(&b.cost));
                next.truncate(width);
            }
            let from = self.from[i];
            let kept = (i + form.upper[i].len()).min(length);
            for (row, b) in added_next.chunks_exact_mut(length).zip(&next) {
                let parent = b.parent * length;
                row[i + 1..kept].copy_from_slice(&added[parent + i + 1..parent + kept]);
                row[i] = f64::from(b.count) - from;
            }
            trail.push(next.iter().map(|b| (b.count, b.parent)).collect());
            std::mem::swap(&mut added, &mut added_next);
            std::mem::swap(&mut beam, &mut next);
        }
        let best = beam.iter().enumerate().min_by(|a, b| a.1.cost.total_cmp(&b.1.cost))?;
        let cost = best.1.cost + form.constant;
        let mut at = best.0;
        let searched = trail.iter().rev().map(|round: &Vec<(u32, usize)>| {
            let (count, parent) = round[at];
            at = parent;
            count
        });
        let searched: Vec<u32> = searched.collect();
        Some((self.rounds.unfold(&searched), cost))
    }

    /// Lists what the last round may be, with its row's `pivot` and `wanted`.
    fn begin(&self, pivot: f64, wanted: f64, next: &mut Vec<Beginning>) {
        let k = self.steps.rounds();
        let from = self.from[k - 1];
        for &count in self.steps.last() {
            let off = pivot * (f64::from(count) - from) - wanted;
            let (run, next_plain) = (RepeatRun::default(), None);
            let mut cost = off * off + self.slack.cost(k, count);
            cost += self.first(k, count, run);
            cost += if f64::from(count) == from { 0.0 } else { self.prices.change };
            next.push(Beginning { cost, parent: 0, count, run, next_plain });
        }
    }

    /// Lists what the round at index `i` may be before the beginning `before`, with its row's
    /// `pivot` and `wanted`, less what is carried from later rounds.
    fn go_on(
        &self,
        i: usize,
        pivot: f64,
        wanted: f64,
        (parent, before): (usize, &Beginning),
        next: &mut Vec<Beginning>,
    ) {
        let choices = self.steps.before(i + 2, before.count);
        let (Some(least), Some(most)) = (choices.first(), choices.last()) else { return };
        let from = self.from[i];
        // The count that costs nothing more given the rounds after it. Where a round hardly
        // matters that may lie far outside what it may be.
        let best = (wanted / pivot + from).clamp(f64::from(least.count), f64::from(most.count));
        for choice in choices {
            let count = f64::from(choice.count);
            if (count - best).abs() > self.reach {
                continue;
            }
            let off = pivot * (count - from) - wanted;
            let plain = choice.shaping == Shaping::Plain;
            let mut price = self.prices.of(choice.shaping, choice.count, before.run);
            price += before.next_plain.map_or(0.0, |b| self.prices.of_alternation(b, plain));
            let run = before.run.then(choice.shaping);
            let more = run.numbers() > MOST_NUMBERS.max(before.run.numbers());
            let too_many = if more && !self.prices.is_free() { TOO_MANY } else { 0.0 };
            let mut cost =
                too_many + before.cost + off * off + self.slack.cost(i + 1, choice.count);
            cost += self.prices.charge(price) + self.first(i + 1, choice.count, run);
            cost += if count == from { 0.0 } else { self.prices.change };
            let next_plain = Some(plain);
            next.push(Beginning { cost, parent, count: choice.count, run, next_plain });
        }
    }

    /// What round `k` of `count` costs on a foundation chain, if it is the first on one.
    fn first(&self, k: usize, count: u32, run: RepeatRun) -> f64 {
        let chain = if k == 1 { self.steps.before(1, count).first() } else { None };
        chain.map_or(0.0, |c| self.prices.charge(self.prices.of(c.shaping, c.count, run)))
    }
}

/// Σ aᵢbᵢ, in eight running sums so that it can be worked out side by side.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 8];
    let (mut left, mut right) = (a.chunks_exact(8), b.chunks_exact(8));
    for (x, y) in left.by_ref().zip(right.by_ref()) {
        for ((sum, x), y) in sums.iter_mut().zip(x).zip(y) {
            *sum += x * y;
        }
    }
    let rest: f64 = left.remainder().iter().zip(right.remainder()).map(|(x, y)| x * y).sum();
    sums.iter().sum::<f64>() + rest
}
