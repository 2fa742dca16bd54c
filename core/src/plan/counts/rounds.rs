//! What every round may be: its range of counts and the rules between neighbours. Every
//! search over counts asks here.

use std::ops::RangeInclusive;

use super::repeats::Shaping;
use super::rules::{GaveWay, STRAY, Start, Targets, most_gain, workable};
use crate::piece::Piece;
use crate::plan::placement::{Stitch, oval_change};

/// What rounds a piece may have: ranges, directions, rules, ready for search.
#[derive(Debug, Clone)]
pub struct AllowedRounds {
    pub(super) targets: Targets,
    neck: u32,
    multiple: u32,
    largest_change: u32,
    /// Whether rounds may gain more than lies flat.
    frills: bool,
    /// Whether round k must be plain, at index k − 1.
    face: Vec<bool>,
    /// Rounds from the start that go by sixes: see [`by_sixes`].
    sixes: usize,
    /// Round k has as many stitches as round `mirror − k`.
    mirror: Option<usize>,
    pins: Vec<Option<u32>>,
    ranges: Vec<RangeInclusive<u32>>,
    kept: KeptRules,
}

/// Rules still kept; they give way in this order, least harm first.
#[derive(Debug, Clone, Copy)]
struct KeptRules {
    multiples: bool,
    change: bool,
    flat: bool,
    directions: bool,
    ends: bool,
}

impl AllowedRounds {
    /// The search space of `piece` for `targets`. Both halves are held alike where the piece's
    /// rules say so.
    pub fn new(piece: &Piece, targets: Targets) -> Self {
        let rounds = targets.rounds();
        let numbers = 1..=rounds as u32;
        let pins: Vec<Option<u32>> =
            numbers.clone().map(|k| piece.pins.get(&k).copied()).collect();
        let rounds = Self {
            neck: piece.rules.smallest_neck,
            multiple: piece.rules.multiple_of.max(1),
            largest_change: piece.rules.largest_change.unwrap_or(u32::MAX),
            frills: piece.rules.frills,
            face: numbers.map(|k| piece.is_in_face(k)).collect(),
            sixes: by_sixes(piece, &targets),
            mirror: None,
            ranges: ranges(&targets, &pins),
            pins,
            targets,
            kept: KeptRules {
                multiples: true,
                change: true,
                flat: true,
                directions: true,
                ends: true,
            },
        };
        if piece.rules.symmetric { rounds.mirrored() } else { rounds }
    }

    /// The same rounds with both halves alike: N_k = N_{M+1−k}, ring and gathered round
    /// included; in a piece open at both ends the last round mirrors the chain.
    pub(super) fn mirrored(mut self) -> Self {
        let rounds = self.targets.rounds();
        self.mirror = match self.targets.start {
            Start::Chain(_) => Some(rounds),
            Start::Ring | Start::Oval(_) => Some(rounds + 1),
        };
        self
    }

    /// Whether both halves are held alike.
    pub(super) fn is_mirrored(&self) -> bool {
        self.mirror.is_some()
    }

    /// Number of rounds, M.
    pub(super) fn rounds(&self) -> usize {
        self.targets.rounds()
    }

    /// The round that must have as many stitches as round `k`: itself in the middle, round 0
    /// is the chain.
    pub(super) fn mirror(&self, k: usize) -> Option<usize> {
        self.mirror.map(|sum| sum - k)
    }

    /// How many rounds are searched: all, or the first half of those that mirror each other.
    pub(super) fn searched(&self) -> usize {
        let rounds = self.rounds();
        self.mirror.map_or(rounds, |sum| sum / 2)
    }

    /// All counts from those of the rounds that are searched.
    pub(super) fn unfold<N: Copy + From<u32>>(&self, searched: &[N]) -> Vec<N> {
        let mut counts = searched.to_vec();
        for k in searched.len() + 1..=self.rounds() {
            let mirror = self.mirror(k).unwrap_or(k);
            counts.push(match mirror {
                0 => N::from(self.targets.start.joined().unwrap_or(0)),
                m => searched[m - 1],
            });
        }
        counts
    }

    /// The shaping of a round of `count` on `below`.
    pub(super) fn shaping(&self, below: u32, count: u32) -> Shaping {
        Shaping::in_piece(self.targets.start, below, count)
    }

    /// Whether the count of round `k` is held.
    pub(super) fn is_pinned(&self, k: usize) -> bool {
        self.pins.get(k.wrapping_sub(1)).is_some_and(Option::is_some)
    }

    /// Whether round `k` (from 1) may have `count` stitches, whatever its neighbours.
    pub fn allows(&self, k: usize, count: u32) -> bool {
        if count == 0 || !self.is_oval_round(count) {
            return false;
        }
        if let (Some(pin), true) = (self.pins[k - 1], self.kept.ends) {
            return pin == count;
        }
        if k <= self.sixes && self.kept.multiples && count != SIX * k as u32 {
            return false;
        }
        let ring = k == 1 && self.targets.start == Start::Ring;
        let gathered = self.targets.drawn && k == self.rounds();
        let within = |(least, _, most): (u32, u32, u32)| (least..=most).contains(&count);
        let end_ok = match (ring, gathered) {
            (true, _) => within(self.targets.ring),
            (_, true) => within(self.targets.gathered),
            _ => count >= self.neck,
        };
        let divides = ring || gathered || count.is_multiple_of(self.multiple);
        (end_ok || !self.kept.ends) && (divides || !self.kept.multiples)
    }

    /// Whether an oval can have a round of `count`: two halves alike, with a stitch at either
    /// end at least. True of anything that is no oval.
    fn is_oval_round(&self, count: u32) -> bool {
        let side = self.targets.start.side();
        side.is_none_or(|side| count.is_multiple_of(2) && count >= 2 * side + 2)
    }

    /// Whether round `k`, and its mirror where there is one, may have `count` stitches.
    pub(super) fn allows_both(&self, k: usize, count: u32) -> bool {
        let mirror = self.mirror(k).filter(|&m| (1..=self.rounds()).contains(&m) && m != k);
        self.allows(k, count)
            && mirror.is_none_or(|m| self.allows(m, count))
            && (k > 1 || self.allows_mirrored_chain())
    }

    /// Whether the round that mirrors the foundation chain may have as many stitches; true
    /// where there is no such round.
    fn allows_mirrored_chain(&self) -> bool {
        let last = self.rounds();
        let chain = self.targets.start.joined().filter(|_| self.mirror == Some(last));
        chain.is_none_or(|chain| self.allows(last, chain))
    }

    /// Whether round `k` may have `count` stitches on `below`.
    pub fn allows_step(&self, k: usize, below: u32, count: u32) -> bool {
        if !workable(below, count) {
            return false;
        }
        let forced = self.is_pinned(k) || self.is_pinned(k - 1);
        let change = below.abs_diff(count);
        if let (Some(side), true) = (self.targets.start.side(), k > 1) {
            let shaping = if count > below { Stitch::Increase } else { Stitch::Decrease };
            if !change.is_multiple_of(2) || change > oval_change(below, side, shaping) {
                return false;
            }
        }
        if k > 1 && k == self.rounds() && self.targets.drawn && self.kept.ends {
            // The gathered round is a decrease round, but at the end of a narrow limb.
            return count < below || forced || (count == below && self.targets.closes_plain());
        }
        if self.kept.change && !forced {
            if self.face[k - 1] && change > 0 {
                return false;
            }
            if change > self.largest_change {
                return false;
            }
        }
        if !forced && change > self.most_change(k, below.min(count)) {
            return false;
        }
        if !self.kept.directions || forced {
            return true;
        }
        (count <= below || self.targets.may_widen[k - 1])
            && (count >= below || self.targets.may_narrow[k - 1])
    }

    /// Most stitches round `k` may gain or lose where the smaller of the two counts is
    /// `least`: what lies flat, or as many again in a small round.
    pub(super) fn most_change(&self, k: usize, least: u32) -> u32 {
        if self.frills || !self.kept.flat || self.targets.start.side().is_some() {
            return u32::MAX;
        }
        let ring = if self.targets.start == Start::Ring { self.targets.ring.2 } else { 0 };
        most_gain(self.targets.flat[k - 1], least, ring)
    }

    /// Whether round `k` of `count` may follow `below`, and their mirrors each other.
    pub(super) fn allows_both_steps(&self, k: usize, below: u32, count: u32) -> bool {
        // Round k − 1 mirrors one that follows the mirror of round k.
        let back = self.mirror(k).map(|m| m + 1).filter(|&b| b != k && b <= self.rounds());
        self.allows_step(k, below, count)
            && back.is_none_or(|back| self.allows_step(back, count, below))
    }

    /// Whether `counts` keep to every rule still kept.
    pub(super) fn allows_all(&self, counts: &[u32]) -> bool {
        let mut below = self.targets.start.joined();
        counts.len() == self.rounds()
            && (1..).zip(counts).all(|(k, &count)| {
                let step = below.replace(count).is_none_or(|b| self.allows_step(k, b, count));
                step && self.allows(k, count)
            })
    }

    /// The counts round `k` may take at all.
    pub(super) fn range(&self, k: usize) -> RangeInclusive<u32> {
        self.ranges[k - 1].clone()
    }

    /// Whether round `k` has no choice or a choice that no full repeat may reach: pinned, or
    /// next to a pinned round.
    pub(super) fn is_forced(&self, k: usize) -> bool {
        self.is_pinned(k) || self.is_pinned(k - 1)
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
        if std::mem::take(&mut kept.flat) {
            return Some(GaveWay::Flat);
        }
        if std::mem::take(&mut kept.directions) {
            return Some(GaveWay::Direction);
        }
        if self.mirror.take().is_some() {
            return Some(GaveWay::Symmetry);
        }
        if std::mem::take(&mut kept.ends) {
            return Some(GaveWay::Ends);
        }
        // Pins too far apart to be worked one on the other hold no longer.
        self.pins.fill(None);
        self.ranges = ranges(&self.targets, &self.pins);
        for range in &mut self.ranges {
            let (low, high) = (*range.start(), *range.end());
            *range = low.saturating_sub(WIDER).max(1)..=high.saturating_add(WIDER);
        }
        None
    }
}

/// Stitches of a ring, and what a round gains on it that lies flat.
const SIX: u32 = 6;

/// Most rounds that go by sixes.
const BY_SIXES: usize = 5;

/// Stitches by which the wanted count may differ from six more a round for that.
const NEAR_SIXES: f64 = 2.0;

/// Rounds from the start that go 6, 12, 18: where a piece begins flat, or nearly, every maker
/// expects them. Common practice, no source. None where a pin, a rule or the outline asks for
/// something else.
fn by_sixes(piece: &Piece, targets: &Targets) -> usize {
    let rules = &piece.rules;
    let free = piece.pins.keys().all(|&k| k as usize > BY_SIXES + 1)
        && rules.largest_change.is_none_or(|most| most >= SIX)
        && SIX.is_multiple_of(rules.multiple_of.max(1));
    let ring = (SIX, SIX, SIX);
    if !free || targets.start != Start::Ring || targets.ring != ring {
        return 0;
    }
    let is = |k: usize| {
        let wanted = targets.reachable[k - 1];
        targets.flat[k - 1] >= SIX
            && !piece.is_in_face(k as u32)
            && (wanted - f64::from(SIX * k as u32)).abs() <= NEAR_SIXES
    };
    let last = targets.rounds().saturating_sub(2).min(BY_SIXES);
    (2..=last).take_while(|&k| is(k)).last().unwrap_or(0)
}

/// Stitches by which every range is widened where no rule is left that could give way.
const WIDER: u32 = 24;

/// The counts each round may take: ±8 around what can be reached, no fewer than the ends need,
/// moved to where pins can be met.
fn ranges(targets: &Targets, pins: &[Option<u32>]) -> Vec<RangeInclusive<u32>> {
    let rounds = targets.rounds();
    let mut bounds: Vec<(f64, f64)> = targets
        .reachable
        .iter()
        .map(|n| ((n - STRAY).floor().max(1.0), (n + STRAY).ceil()))
        .collect();
    // A ring is never narrowed before the outline is, nor a close widened after it.
    if targets.start == Start::Ring {
        let first = targets.may_narrow.iter().position(|&narrow| narrow).unwrap_or(rounds);
        at_least(&mut bounds[..first], f64::from(targets.ring.0));
    }
    if targets.drawn {
        let last = targets.may_widen.iter().rposition(|&widen| widen).map_or(0, |k| k + 1);
        at_least(&mut bounds[last.min(rounds - 1)..], f64::from(targets.gathered.0));
        let decrease = if targets.closes_plain() { 0 } else { 1 };
        at_least(&mut bounds[rounds - 2..rounds - 1], f64::from(targets.gathered.0 + decrease));
    }
    // Where a pin needs more or fewer stitches than that, the range moves to where it begins to
    // be met, no wider than before.
    for (i, pin) in pins.iter().enumerate() {
        let Some(pin) = pin.map(f64::from) else { continue };
        for (j, bound) in bounds.iter_mut().enumerate() {
            // What a round this far from the pin must come to at least and at most.
            let factor = 2_f64.powi(i.abs_diff(j).min(30) as i32);
            let (least, most) = ((pin / factor).ceil(), pin * factor);
            if bound.1 < least {
                *bound = (least, least + 2.0 * STRAY);
            } else if bound.0 > most {
                *bound = ((most - 2.0 * STRAY).max(1.0), most);
            }
        }
    }
    bounds.into_iter().map(|(low, high)| low.max(1.0) as u32..=high.max(1.0) as u32).collect()
}

/// Raises `bounds` so that every round may have `least` stitches and none fewer.
fn at_least(bounds: &mut [(f64, f64)], least: f64) {
    for (low, high) in bounds {
        *low = low.max(least);
        *high = high.max(2.0 * least);
    }
}
