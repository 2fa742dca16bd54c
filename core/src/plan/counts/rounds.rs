//! What every round may be: its range of counts, the rules between neighbours, and what each
//! choice costs. The dynamic programme and the beam search both ask here.

use std::ops::RangeInclusive;

use super::rules::{GaveWay, Price, STRAY, Start, Targets, workable};
use crate::piece::Piece;
use crate::plan::placement::{Stitch, oval_change};

/// What a pin costs a stitch squared: more than any misfit, less than an unworkable round.
const PIN_WEIGHT: f64 = 1e5;

/// What a ring of other than the usual costs, a squared stitch, and how much more at full
/// ease.
const RING_WEIGHT: (f64, f64) = (0.02, 0.2);

/// What a gathered round of other than the usual costs: it settles ties only.
const GATHER_WEIGHT: f64 = 0.02;

/// What rounds a piece may have: ranges, directions, prices, ready for search.
#[derive(Debug, Clone)]
pub struct Rounds {
    pub(super) targets: Targets,
    price: Price,
    ring_weight: f64,
    neck: u32,
    multiple: u32,
    largest_change: u32,
    /// Whether round k must be plain, at index k − 1.
    face: Vec<bool>,
    symmetric: bool,
    pins: Vec<Option<u32>>,
    ranges: Vec<RangeInclusive<u32>>,
    kept: Kept,
}

/// What follows a round that is being chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum After {
    /// A round of so many stitches.
    Round(u32),
    /// The last round, gathered or held at so many.
    Last(u32),
    /// The other half of a symmetric piece.
    Mirror,
}

/// What a round that is being chosen is worked on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Below {
    /// Not chosen yet.
    Open,
    /// The ring or the foundation chain.
    Start,
    /// A round of so many stitches.
    Round(u32),
}

/// A count a round may be given, and its price.
#[derive(Debug, Clone, Copy)]
pub(super) struct Choice {
    /// Stitches.
    pub(super) count: u32,
    /// What it costs between its neighbours.
    pub(super) price: f64,
    /// The last round that goes with it, where it is the last but one.
    pub(super) last: Option<u32>,
}

/// How many rounds shape, and how many of those ask for attention.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Shaping {
    /// Rounds that gain or lose stitches.
    pub(super) rounds: u32,
    /// Those whose shaping is unevenly spread.
    pub(super) uneven: u32,
}

impl Shaping {
    /// Whether this is as easy to work as `other`: no more uneven rounds, and no greater a
    /// share of them among the shaping rounds.
    pub(super) fn is_no_harder_than(self, other: Self) -> bool {
        self.uneven <= other.uneven && self.uneven * other.rounds <= other.uneven * self.rounds
    }
}

/// Rules still kept; they give way in this order, least harm first.
#[derive(Debug, Clone, Copy)]
struct Kept {
    multiples: bool,
    change: bool,
    directions: bool,
    ends: bool,
}

impl Rounds {
    /// The search space of `piece` for `targets`.
    pub fn new(piece: &Piece, targets: Targets) -> Self {
        let rounds = targets.rounds();
        let numbers = 1..=rounds as u32;
        let pins: Vec<Option<u32>> =
            numbers.clone().map(|k| piece.pins.get(&k).copied()).collect();
        Self {
            price: Price::of_piece(piece, piece.ease),
            ring_weight: ring_weight(piece.ease),
            neck: piece.rules.smallest_neck,
            multiple: piece.rules.multiple_of.max(1),
            largest_change: piece.rules.largest_change.unwrap_or(u32::MAX),
            face: numbers.map(|k| piece.is_in_face(k)).collect(),
            symmetric: piece.rules.symmetric,
            ranges: ranges(&targets, &pins),
            pins,
            targets,
            kept: Kept { multiples: true, change: true, directions: true, ends: true },
        }
    }

    /// The same rounds of `piece` at another ease: other prices, the same rules.
    pub(super) fn set_ease(&mut self, piece: &Piece, ease: f64) {
        self.price = Price::of_piece(piece, ease);
        self.ring_weight = ring_weight(ease);
    }

    /// Shaping rounds among `counts`, and how many of them are unevenly spread: neither one
    /// repeat nor the same stitch throughout. A ring's first round shapes nothing.
    pub(super) fn shaping(&self, counts: &[u32]) -> Shaping {
        let mut shaping = Shaping::default();
        let mut below = self.targets.start.joined();
        for &count in counts {
            if let Some(below) = below.replace(count).filter(|&below| below != count) {
                let shaped = below.abs_diff(count);
                let even = match self.targets.start.side() {
                    Some(_) => shaped == 2,
                    None => shaped > 1 && below.is_multiple_of(shaped),
                };
                shaping.rounds += 1;
                shaping.uneven += u32::from(!even);
            }
        }
        shaping
    }

    /// Whether round `k` (from 1) may have `count` stitches, whatever its neighbours.
    pub fn allows(&self, k: usize, count: u32) -> bool {
        if count == 0 {
            return false;
        }
        if self.pins[k - 1] == Some(count) {
            return true;
        }
        let ring = k == 1 && self.targets.start == Start::Ring;
        let gathered = self.targets.drawn && k == self.targets.rounds();
        let within = |(least, _, most): (u32, u32, u32)| (least..=most).contains(&count);
        let end_ok = match (ring, gathered) {
            (true, _) => within(self.targets.ring),
            (_, true) => within(self.targets.gathered),
            _ => count >= self.neck,
        };
        let divides = ring || gathered || count.is_multiple_of(self.multiple);
        let even = self.targets.start.side().is_none() || count.is_multiple_of(2);
        even && (end_ok || !self.kept.ends) && (divides || !self.kept.multiples)
    }

    /// Whether round `k` may have `count` stitches on `below`.
    pub fn allows_step(&self, k: usize, below: u32, count: u32) -> bool {
        if !workable(below, count) {
            return false;
        }
        let pinned = |i: usize| self.pins.get(i).is_some_and(Option::is_some);
        let forced = pinned(k - 1) || (k > 1 && pinned(k - 2));
        let change = below.abs_diff(count);
        if let (Some(side), true) = (self.targets.start.side(), k > 1) {
            let shaping = if count > below { Stitch::Increase } else { Stitch::Decrease };
            if !change.is_multiple_of(2) || change > oval_change(below, side, shaping) {
                return false;
            }
        }
        if k > 1 && k == self.targets.rounds() && self.targets.drawn && self.kept.ends {
            return count < below || forced; // The gathered round is a decrease round.
        }
        if self.kept.change && !forced {
            if self.face[k - 1] && change > 0 {
                return false;
            }
            if change > self.largest_change {
                return false;
            }
        }
        if !self.kept.directions || forced {
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
        let usual = f64::from(self.targets.gathered.1);
        let own = if gathered { anchored((GATHER_WEIGHT, usual)) } else { off * off };
        own + self.anchors(k).map(anchored).sum::<f64>()
    }

    /// What draws round `k` to a count whatever the outline: a pin, the usual ring. Weights
    /// a squared stitch, and counts.
    pub(super) fn anchors(&self, k: usize) -> impl Iterator<Item = (f64, f64)> {
        let pin = self.pins[k - 1].map(|pin| (PIN_WEIGHT, f64::from(pin)));
        let ring = (k == 1 && self.targets.start == Start::Ring)
            .then_some((self.ring_weight, f64::from(self.targets.ring.1)));
        pin.into_iter().chain(ring)
    }

    /// What the maker pays for round `k` on `below`; a round worked into a ring or along a
    /// chain is free.
    pub fn price(&self, k: usize, below: Option<u32>, count: u32) -> f64 {
        let below = if k == 1 { self.targets.start.joined() } else { below };
        below.map_or(0.0, |below| self.price.of(below, count))
    }

    /// What it costs where round `k + 1` follows round `k`: only where plain rounds are
    /// wanted together, and never at the ends.
    pub(super) fn switch(&self, k: usize, plain: bool, next_plain: bool) -> f64 {
        let inner = k > 1 && k + 1 < self.targets.rounds();
        if inner { self.price.of_switch(plain, next_plain) } else { 0.0 }
    }

    /// What counts are multiples of, while that rule is kept.
    pub(super) fn multiple(&self) -> u32 {
        if self.kept.multiples { self.multiple } else { 1 }
    }

    /// Whether nothing is charged.
    pub(super) fn is_free(&self) -> bool {
        self.price.is_free()
    }

    /// How many rounds are chosen freely: all but the last, or half of those where the other
    /// half mirrors them.
    pub(super) fn free_rounds(&self) -> usize {
        let movable = self.targets.rounds() - 1;
        if self.symmetric { movable.div_ceil(2) } else { movable }
    }

    /// The round that must have as many stitches as round `k` in a symmetric piece.
    pub(super) fn mirror(&self, k: usize) -> Option<usize> {
        let other = self.targets.rounds() - k;
        (self.symmetric && other != k && other >= 1).then_some(other)
    }

    /// Whether round `k`, and its mirror where there is one, may have `count` stitches.
    pub(super) fn allows_both(&self, k: usize, count: u32) -> bool {
        self.allows(k, count) && self.mirror(k).is_none_or(|m| self.allows(m, count))
    }

    /// Whether round `k` of `count` may follow `below`, and their mirrors each other.
    pub(super) fn allows_both_steps(&self, k: usize, below: u32, count: u32) -> bool {
        // Round k − 1 mirrors M − k + 1, which follows the mirror of round k.
        let back = self.targets.rounds() - k + 1;
        let mirrored = self.symmetric && k > 1 && back != k;
        self.allows_step(k, below, count) && (!mirrored || self.allows_step(back, count, below))
    }

    /// Adds to `choices` the counts that round `k` may be given, growing, with what they cost
    /// between their neighbours: `after` is the round after it, `below` the one before where that is
    /// settled. None moves further than `reach` from `start`; a pinned round has one.
    pub(super) fn choices(
        &self,
        k: usize,
        start: u32,
        reach: u32,
        after: After,
        below: Below,
        choices: &mut Vec<Choice>,
    ) {
        let range = &self.ranges[k - 1];
        let (low, high) = match self.pins[k - 1] {
            Some(pin) => (pin, pin),
            None => (
                (*range.start()).max(start.saturating_sub(reach)),
                (*range.end()).min(start + reach),
            ),
        };
        let choice = |count: u32| {
            let (price, last) = match after {
                After::Round(above) => (self.step_price(k + 1, count, above)?, None),
                After::Last(held) => {
                    self.best_last(count, held).map(|(price, last)| (price, Some(last)))?
                }
                After::Mirror => (0.0, None),
            };
            let first = match below {
                Below::Open => 0.0,
                Below::Start => self.first_price(count)?,
                Below::Round(below) => self.step_price(k, below, count)?,
            };
            Some(Choice { count, price: price + first, last })
        };
        let allowed = (low..=high).filter(|&count| self.allows_both(k, count));
        choices.extend(allowed.filter_map(choice));
    }

    /// The price of round `k`, or `None` if it may not be worked.
    fn step_price(&self, k: usize, below: u32, count: u32) -> Option<f64> {
        let allowed = self.allows_both_steps(k, below, count);
        allowed.then(|| self.price(k, Some(below), count))
    }

    /// The price of round 1 on the foundation chain; free in a ring or along a chain.
    pub(super) fn first_price(&self, count: u32) -> Option<f64> {
        match self.targets.start.joined() {
            Some(chain) => self.step_price(1, chain, count),
            None => Some(0.0),
        }
    }

    /// The best last round on `below` and its price: gathered as few as rules and ease like
    /// best, or `held` at an open edge.
    pub(super) fn best_last(&self, below: u32, held: u32) -> Option<(f64, u32)> {
        let k = self.targets.rounds();
        let (least, usual, most) = self.targets.gathered;
        let candidates = if self.targets.drawn { least..=most } else { held..=held };
        candidates
            .filter(|&count| self.allows(k, count))
            .filter(|&count| self.allows_step(k, below, count))
            .map(|count| {
                let odd = GATHER_WEIGHT * (f64::from(count) - f64::from(usual)).powi(2);
                (self.price(k, Some(below), count) + odd, count)
            })
            .min_by(|a, b| a.0.total_cmp(&b.0))
    }

    /// The whole objective of `counts`; infinite where a rule is broken.
    pub fn cost(&self, counts: &[u32]) -> f64 {
        let mut cost = 0.0;
        let mut below = self.targets.start.joined();
        let mut plain = None;
        for (i, &count) in counts.iter().enumerate() {
            let k = i + 1;
            let mirrored = self.mirror(k).is_none_or(|m| counts[m - 1] == count);
            let steps = below.is_none_or(|below| self.allows_step(k, below, count));
            if !(self.allows(k, count) && mirrored && steps) {
                return f64::INFINITY;
            }
            let is_plain = below == Some(count);
            cost += plain.map_or(0.0, |was| self.switch(k - 1, was, is_plain));
            cost += self.price(k, below, count) + self.misfit(k, count);
            (below, plain) = (Some(count), Some(is_plain));
        }
        cost
    }

    /// Drops one more rule, least harm first, and names it if it was in force. With none left
    /// the ranges are opened: every round can be worked on the one below, so there is always
    /// an answer.
    pub(super) fn give_way(&mut self) -> Option<GaveWay> {
        let kept = &mut self.kept;
        if std::mem::take(&mut kept.multiples) && self.multiple > 1 {
            return Some(GaveWay::Multiples);
        }
        if std::mem::take(&mut kept.change) {
            let in_force = self.largest_change < u32::MAX || self.face.contains(&true);
            return in_force.then_some(GaveWay::Change);
        }
        if std::mem::take(&mut kept.directions) {
            return Some(GaveWay::Direction);
        }
        if std::mem::take(&mut kept.ends) {
            return Some(GaveWay::Ends);
        }
        if std::mem::take(&mut self.symmetric) {
            return Some(GaveWay::Symmetry);
        }
        let most = self.ranges.iter().map(|r| *r.end()).max().unwrap_or(12).max(12);
        self.ranges.iter_mut().for_each(|r| *r = 1..=most);
        None
    }

    /// The counts round `k` may take at all.
    pub(super) fn range(&self, k: usize) -> RangeInclusive<u32> {
        self.ranges[k - 1].clone()
    }

    /// Whether the second half mirrors the first.
    pub(super) fn is_symmetric(&self) -> bool {
        self.symmetric
    }

    /// Whether changes between plain and shaping rounds are charged.
    pub(super) fn minds_switches(&self) -> bool {
        self.price.minds_switches()
    }
}

fn ring_weight(ease: f64) -> f64 {
    RING_WEIGHT.0 + RING_WEIGHT.1 * ease
}

/// The counts each round may take: ±8 around the ideal, stretched towards what pins need.
fn ranges(targets: &Targets, pins: &[Option<u32>]) -> Vec<RangeInclusive<u32>> {
    let gathered = f64::from(targets.gathered.2);
    let mut bounds: Vec<(f64, f64)> = targets
        .ideal
        .iter()
        .map(|n| ((n - STRAY).floor().max(1.0), (n + STRAY).ceil().max(gathered)))
        .collect();
    for (i, pin) in pins.iter().enumerate() {
        let Some(pin) = pin.map(f64::from) else { continue };
        for (j, bound) in bounds.iter_mut().enumerate() {
            // What a round this far from the pin must come to at least and at most.
            let factor = 2_f64.powi(i.abs_diff(j).min(30) as i32);
            bound.0 = bound.0.min((pin * factor).floor());
            bound.1 = bound.1.max((pin / factor).ceil());
        }
    }
    bounds.into_iter().map(|(low, high)| low.max(1.0) as u32..=high.max(1.0) as u32).collect()
}
