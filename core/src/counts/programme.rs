//! The dynamic programme: the whole stitches nearest the ideal that keep to every rule.
//!
//! It minimises Σ (N_k − n_k)² plus the price of each round, over all counts within ±8 of
//! the ideal (further where a pin forces it). State: the count of a round; the rules tie
//! only neighbours, so the answer is exact.

use std::ops::RangeInclusive;

use super::rules::{GATHERED, GaveWay, Price, STRAY, Targets, workable};
use crate::piece::Piece;

/// What a pin costs a stitch squared: more than any misfit, less than an unworkable round.
const PIN_WEIGHT: f64 = 1e5;

/// What a ring of other than six costs, a squared stitch, and how much more at full ease.
const RING_WEIGHT: (f64, f64) = (0.02, 0.2);

/// What a gathered round of other than six costs: it settles ties only.
const GATHER_WEIGHT: f64 = 0.02;

/// Stitches of the usual ring, and of the usual gathered round.
const USUAL: f64 = 6.0;

/// What rounds a piece may have: ranges, directions, prices, ready for search.
#[derive(Debug, Clone)]
pub struct Rounds<'a> {
    pub(super) targets: &'a Targets,
    pub(super) price: Price,
    ring: (u32, u32),
    ring_weight: f64,
    neck: u32,
    pub(super) pins: Vec<Option<u32>>,
    ranges: Vec<RangeInclusive<u32>>,
    keep_directions: bool,
    keep_ends: bool,
}

impl<'a> Rounds<'a> {
    /// The search space of `piece` for `targets`, prices as `price` lists them.
    pub fn new(piece: &Piece, targets: &'a Targets, price: Price) -> Self {
        let rounds = targets.rounds();
        let pins: Vec<Option<u32>> =
            (1..=rounds as u32).map(|k| piece.pins.get(&k).copied()).collect();
        let ranges = ranges(targets, &pins);
        Self {
            targets,
            price,
            ring: (piece.rules.ring_least, piece.rules.ring_most),
            ring_weight: RING_WEIGHT.0 + RING_WEIGHT.1 * piece.ease,
            neck: piece.rules.smallest_neck,
            pins,
            ranges,
            keep_directions: true,
            keep_ends: true,
        }
    }

    /// Whether round `k` (from 1) may have `count` stitches, whatever its neighbours.
    pub fn allows(&self, k: usize, count: u32) -> bool {
        let last = k == self.targets.rounds();
        let at_end = if k == 1 && self.targets.chain.is_none() {
            (self.ring.0..=self.ring.1).contains(&count)
        } else if last && self.targets.drawn {
            GATHERED.contains(&count)
        } else {
            count >= self.neck
        };
        count >= 1 && (at_end || !self.keep_ends || self.pins[k - 1] == Some(count))
    }

    /// Whether round `k` may have `count` stitches on `below`.
    pub fn allows_step(&self, k: usize, below: u32, count: u32) -> bool {
        if !workable(below, count) {
            return false;
        }
        if k == self.targets.rounds() && self.targets.drawn && self.keep_ends && k > 1 {
            return count < below; // The gathered round is a decrease round.
        }
        let forced = |i: usize| self.pins.get(i).is_some_and(Option::is_some);
        if !self.keep_directions || forced(k - 1) || (k > 1 && forced(k - 2)) {
            return true;
        }
        (count <= below || self.targets.may_widen[k - 1])
            && (count >= below || self.targets.may_narrow[k - 1])
    }

    /// Misfit of `count` in round `k`, squared stitches; pins and the usual ring weighed in.
    pub fn misfit(&self, k: usize, count: u32) -> f64 {
        let gathered = self.targets.drawn && k == self.targets.rounds();
        let off = f64::from(count) - self.targets.ideal[k - 1];
        let anchored = |(weight, at): (f64, f64)| weight * (f64::from(count) - at).powi(2);
        let own = if gathered { anchored((GATHER_WEIGHT, USUAL)) } else { off * off };
        own + self.anchors(k).map(anchored).sum::<f64>()
    }

    /// What draws round `k` to a count whatever the outline: a pin, the usual ring. Weights
    /// a squared stitch, and counts.
    pub(super) fn anchors(&self, k: usize) -> impl Iterator<Item = (f64, f64)> {
        let pin = self.pins[k - 1].map(|pin| (PIN_WEIGHT, f64::from(pin)));
        let ring =
            (k == 1 && self.targets.chain.is_none()).then_some((self.ring_weight, USUAL));
        pin.into_iter().chain(ring)
    }

    /// What the maker pays for round `k`; a ring is free.
    pub fn price(&self, k: usize, below: u32, count: u32) -> f64 {
        if k == 1 && self.targets.chain.is_none() { 0.0 } else { self.price.of(below, count) }
    }

    /// The counts `low..=high` that round `k` may be given with `above` stitches in the round
    /// after it (or that last round `held` or gathered), no further than `reach` from `start`; a pinned round has one. `None` if
    /// there is none.
    pub(super) fn bounds(
        &self,
        k: usize,
        start: u32,
        reach: u32,
        above: Option<u32>,
        held: u32,
    ) -> Option<(u32, u32)> {
        let range = &self.ranges[k - 1];
        let (low, high) = match self.pins[k - 1] {
            Some(pin) => (pin, pin),
            None => (
                (*range.start()).max(start.saturating_sub(reach)),
                (*range.end()).min(start + reach),
            ),
        };
        let allowed = |count: &u32| {
            self.allows(k, *count)
                && match above {
                    Some(above) => self.allows_step(k + 1, *count, above),
                    None => self.best_last(*count, held).is_some(),
                }
        };
        let low = (low..=high).find(allowed)?;
        let high = (low..=high).rev().find(allowed)?;
        Some((low, high))
    }

    /// The price of round `k`, or `None` if it may not be worked.
    pub(super) fn step_price(&self, k: usize, below: u32, count: u32) -> Option<f64> {
        self.allows_step(k, below, count).then(|| self.price(k, below, count))
    }

    /// The price of round 1 on the foundation chain or in the ring.
    pub(super) fn first_price(&self, count: u32) -> Option<f64> {
        match self.targets.chain {
            Some(chain) => self.step_price(1, chain, count),
            None => Some(0.0),
        }
    }

    /// The best last round on `below` and its price: gathered as few as rules and ease like
    /// best, or `held` at an open edge.
    pub(super) fn best_last(&self, below: u32, held: u32) -> Option<(f64, u32)> {
        let k = self.targets.rounds();
        let candidates = if self.targets.drawn { GATHERED } else { held..=held };
        candidates
            .filter(|&count| self.allows(k, count))
            .filter_map(|count| {
                let price = self.step_price(k, below, count)?;
                Some((price + GATHER_WEIGHT * (f64::from(count) - USUAL).powi(2), count))
            })
            .min_by(|a, b| a.0.total_cmp(&b.0))
    }

    /// Whether ease charges nothing.
    pub(super) fn is_free(&self) -> bool {
        self.price.is_free()
    }

    /// The whole objective of `counts`; infinite where a rule is broken.
    pub fn cost(&self, counts: &[u32]) -> f64 {
        let mut cost = 0.0;
        let mut below = self.targets.chain;
        for (i, &count) in counts.iter().enumerate() {
            let k = i + 1;
            if !self.allows(k, count) {
                return f64::INFINITY;
            }
            if let Some(below) = below {
                if !self.allows_step(k, below, count) {
                    return f64::INFINITY;
                }
                cost += self.price(k, below, count);
            }
            cost += self.misfit(k, count);
            below = Some(count);
        }
        cost
    }

    /// The best counts, and which rules had to give way for there to be any.
    pub fn solve(mut self) -> (Vec<u32>, Vec<GaveWay>) {
        let mut gave_way = Vec::new();
        loop {
            if let Some(counts) = self.best() {
                return (counts, gave_way);
            }
            // Loosen one rule at a time, least harm first; with none left every round may
            // be worked on the one below, so there is always an answer.
            if self.keep_directions {
                self.keep_directions = false;
                gave_way.push(GaveWay::Direction);
            } else if self.keep_ends {
                self.keep_ends = false;
                gave_way.push(GaveWay::Ends);
            } else {
                let most = self.ranges.iter().map(|r| *r.end()).max().unwrap_or(12).max(12);
                self.ranges.iter_mut().for_each(|r| *r = 1..=most);
            }
        }
    }

    fn best(&self) -> Option<Vec<u32>> {
        let rounds = self.targets.rounds();
        // Least cost of reaching each count of the round, and the count below it.
        let mut from: Vec<Vec<(u32, u32)>> = Vec::with_capacity(rounds);
        let mut reached = vec![(self.targets.chain.unwrap_or(0), 0.0)];
        for k in 1..=rounds {
            let ring = k == 1 && self.targets.chain.is_none();
            let mut here = Vec::new();
            let mut below_of = Vec::new();
            for count in self.ranges[k - 1].clone().filter(|&count| self.allows(k, count)) {
                let mut best = (f64::INFINITY, 0);
                for &(below, cost) in &reached {
                    if cost >= best.0 || !(ring || self.allows_step(k, below, count)) {
                        continue;
                    }
                    let cost = cost + self.price(k, below, count);
                    if cost < best.0 {
                        best = (cost, below);
                    }
                }
                if best.0 < f64::INFINITY {
                    here.push((count, best.0 + self.misfit(k, count)));
                    below_of.push((count, best.1));
                }
            }
            from.push(below_of);
            reached = here;
        }
        let mut count = reached.iter().min_by(|a, b| a.1.total_cmp(&b.1))?.0;
        let mut counts = vec![0; rounds];
        for k in (0..rounds).rev() {
            counts[k] = count;
            count = from[k].iter().find(|&&(at, _)| at == count)?.1;
        }
        Some(counts)
    }
}

/// The counts each round may take: ±8 around the ideal, stretched towards what pins need.
fn ranges(targets: &Targets, pins: &[Option<u32>]) -> Vec<RangeInclusive<u32>> {
    let rounds = targets.rounds();
    let mut bounds: Vec<(f64, f64)> = targets
        .ideal
        .iter()
        .map(|n| {
            ((n - STRAY).floor().max(1.0), (n + STRAY).ceil().max(f64::from(*GATHERED.end())))
        })
        .collect();
    for (i, pin) in pins.iter().enumerate() {
        let Some(pin) = pin.map(f64::from) else { continue };
        for (j, bound) in bounds.iter_mut().enumerate().take(rounds) {
            // What a round this far from the pin must come to at least and at most.
            let factor = 2_f64.powi(i.abs_diff(j).min(30) as i32);
            bound.0 = bound.0.min((pin * factor).floor());
            bound.1 = bound.1.max((pin / factor).ceil());
        }
    }
    bounds.into_iter().map(|(low, high)| low.max(1.0) as u32..=high.max(1.0) as u32).collect()
}
