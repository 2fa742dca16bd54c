//! The ideal stitches of every round, which way each round may go, and how many stitches it
//! may gain.

use std::f64::consts::TAU;

use crate::extent::StitchSize;
use crate::piece::Piece;
use crate::piece::cloth::Kind;
use crate::piece::outline::Profile;
use crate::plan::forecast::GATHERED_WIDTH;
use crate::plan::skin::RestSkin;

pub use crate::piece::given::Start;

/// How far from the ideal a count may stray unless a rule forces it further.
pub(super) const STRAY: f64 = 8.0;

/// A rule that could not be kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaveWay {
    /// Stitches in multiples could not be kept.
    Multiples,
    /// The largest change a round, or a face without shaping, could not be kept.
    Change,
    /// Some rounds had to gain more than lies flat.
    Flat,
    /// The halves of the piece could not be made alike.
    Symmetry,
    /// Counts had to turn back on a stretch that only widens or only narrows.
    Direction,
    /// The wanted ring, neck or last round could not be reached.
    Ends,
}

/// The ideal stitches of every round and which way each round may go.
#[derive(Debug, Clone)]
pub struct Targets {
    /// How the piece begins.
    pub start: Start,
    /// Whether the last round is gathered shut.
    pub drawn: bool,
    /// Ideal stitches at the top of round k at index k − 1; not whole.
    pub ideal: Vec<f64>,
    /// The ideal as far as rounds that lie flat can follow it.
    pub reachable: Vec<f64>,
    /// Stitches that just go around the wanted shape, unstretched, at index k − 1.
    pub filled: Vec<f64>,
    /// Most stitches round k may gain or lose, at index k − 1: what lies flat, rounded up.
    pub flat: Vec<u32>,
    /// Whether round k may gain stitches, at index k − 1.
    pub may_widen: Vec<bool>,
    /// Whether round k may lose stitches.
    pub may_narrow: Vec<bool>,
    /// Fewest, usual and most stitches of a magic ring.
    pub ring: (u32, u32, u32),
    /// Fewest, usual and most stitches of the gathered round.
    pub gathered: (u32, u32, u32),
    /// Most stitches of the ring and of the gathered round, where there are such; `None` where
    /// flat rounds are no bound.
    ends: Option<(Option<u32>, Option<u32>)>,
}

/// How `piece` begins.
pub(crate) fn start_of(piece: &Piece, profile: &Profile) -> Start {
    let width = piece.cloth_of_round(1).width;
    let around = TAU * profile.stations[0].at.r + 2.0 * piece.straight_mm;
    if !piece.outline.starts_closed() {
        Start::Chain(chain_of(around / width))
    } else if piece.straight_mm > 0.0 {
        Start::Oval(((piece.straight_mm / width).round() as u32 + 1).max(2))
    } else {
        Start::Ring
    }
}

/// Beyond this share of a stitch a wanted chain is not meant to the stitch.
const MEANT: f64 = 0.05;

/// Whole stitches of a foundation chain of `wanted`, not whole: the nearest, unless one nearly
/// as near divides into repeats that makers know and this one does not.
fn chain_of(wanted: f64) -> u32 {
    let nearest = (wanted.round() as u32).max(3);
    if (wanted - f64::from(nearest)).abs() < MEANT || nearest < 8 {
        return nearest;
    }
    let odd = |n: u32| match n {
        n if n.is_multiple_of(6) => 0.0,
        n if [4, 5, 7].iter().any(|&k| n.is_multiple_of(k)) => 0.5,
        n if n.is_multiple_of(3) => 1.0,
        _ => 3.0,
    };
    let cost = |n: u32| (f64::from(n) - wanted).powi(2) + odd(n);
    (nearest - 2..=nearest + 2).min_by(|&a, &b| cost(a).total_cmp(&cost(b))).unwrap_or(nearest)
}

/// Fewest, usual and most stitches of a ring. Common practice, no source: six single
/// crochets, eight half double, twelve double; four to six at a tip.
fn ring_of(piece: &Piece) -> (u32, u32, u32) {
    if let Some(held) = piece.rules.ring {
        return (held, held, held);
    }
    let tip = piece.outline.knots.first().is_some_and(|k| k.corner);
    match (piece.kind_of_round(1), tip) {
        (Kind::Single, false) => (6, 6, 6),
        (Kind::Single, true) => (4, 4, 6),
        (Kind::HalfDouble, _) => (8, 8, 8),
        (Kind::Double, _) => (12, 12, 12),
    }
}

/// Fewest, usual and most stitches of the round that is drawn shut: as many as a ring has,
/// four to eight at a tip, and those along the straight sides of an oval.
fn gathered_of(piece: &Piece, straight: u32) -> (u32, u32, u32) {
    if let Some(held) = piece.rules.last {
        return (held, held, held);
    }
    let tip = piece.outline.knots.last().is_some_and(|k| k.corner);
    let (least, most) = if tip { (4, 8) } else { (6, 6) };
    (least + straight, 6 + straight, most + straight)
}

/// Rest length that the rounds of `piece` cover, mm: all of `rest` but the disc of gathered
/// loops that closes a drawn end.
pub(crate) fn worked_length_mm(piece: &Piece, rest: &RestSkin) -> f64 {
    if !piece.outline.finishes_closed() {
        return rest.length_mm();
    }
    let width = piece.gauge.stitch_width_mm();
    let loops = f64::from(gathered_of(piece, 0).1);
    (rest.length_mm() - GATHERED_WIDTH * loops * width / TAU).max(0.5 * rest.length_mm())
}

/// A change of what can be reached that lets a round go that way, stitches.
const LAG: f64 = 1.0;

/// Most stitches a round may gain or lose and still lie flat, 2πh/w rounded up.
pub(super) fn flat_of_round(piece: &Piece, round: u32) -> u32 {
    let StitchSize { width, height } = piece.cloth_of_round(round);
    (TAU * height / width - 1e-9).ceil() as u32
}

/// A round of at most so many stitches may be doubled, however much that is above flat.
const MAY_DOUBLE: u32 = 8;

/// Most stitches a round may gain on one of `below`, where `flat` lie flat: as many again in a
/// small round and on a ring of `ring`.
pub(super) fn most_gain(flat: u32, below: u32, ring: u32) -> u32 {
    if below <= MAY_DOUBLE.max(ring) { flat.max(below) } else { flat }
}

/// `ideal` lowered to where no round gains or loses more than `flat`, from `ring` on and
/// towards `last`: too few stitches stretch, too many would stand in folds.
fn reachable(ideal: &[f64], flat: &[u32], ring: Option<u32>, last: Option<u32>) -> Vec<f64> {
    let gain = |k: usize, n: f64| f64::from(most_gain(flat[k], n.round() as u32, 0));
    let mut reach = ideal.to_vec();
    let mut most = ring.map_or(f64::INFINITY, f64::from);
    for (k, n) in reach.iter_mut().enumerate() {
        *n = n.min(most);
        most = *n + gain(k, *n);
    }
    // Nor are the ends drawn in further than their first and last rounds.
    let small = |end: Option<u32>| move |n: &&mut f64| end.is_some_and(|e| **n < f64::from(e));
    reach.iter_mut().take_while(small(ring)).for_each(|n| *n = ring.map_or(*n, f64::from));
    reach
        .iter_mut()
        .rev()
        .skip(1)
        .take_while(small(last))
        .for_each(|n| *n = last.map_or(*n, f64::from));
    let mut most = last.map_or(f64::INFINITY, f64::from);
    for (k, n) in reach.iter_mut().enumerate().rev() {
        *n = n.min(most);
        most = *n + gain(k, *n);
    }
    if last.is_none() {
        meet_edge(&mut reach, ideal, gain);
    }
    reach
}

/// Lets an open edge that flares and the rounds before it meet halfway: the edge is not
/// stretched and wants more stitches than rounds that lie flat can lead to from below, and as
/// many as lead to it would stand in folds.
fn meet_edge(reach: &mut [f64], ideal: &[f64], gain: impl Fn(usize, f64) -> f64) {
    let mut least = ideal.last().copied().unwrap_or(0.0);
    for (k, n) in reach.iter_mut().enumerate().rev() {
        if *n >= least {
            break;
        }
        (*n, least) = (0.5 * (*n + least), least - gain(k, least));
    }
}

impl Targets {
    /// The targets of `piece` worked in `rounds` rounds.
    pub fn new(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> Self {
        let places = piece.edges_mm(rounds, worked_length_mm(piece, rest));
        let around = rest.around_at(&places);
        let width = |k: usize| piece.cloth_of_round(k as u32).width;
        let drawn = piece.outline.finishes_closed();
        let girth = rest.girth_at(&places);
        let filled: Vec<f64> = (1..=rounds).map(|k| girth[k] / width(k)).collect();
        let mut ideal: Vec<f64> = (1..=rounds).map(|k| around[k] / width(k)).collect();
        let straight = 2.0 * piece.straight_mm;
        let gathered = gathered_of(piece, (straight / width(rounds)).round() as u32);
        if drawn {
            ideal[rounds - 1] = f64::from(gathered.1);
        } else if let Some(end) = profile.stations.last() {
            // An open edge is held at its rest radius, so it is not stretched.
            ideal[rounds - 1] = (TAU * end.at.r + straight) / width(rounds);
        }
        let (mut may_widen, mut may_narrow) =
            directions(rest, &places, piece.gauge.stitch_width_mm());
        let flat: Vec<u32> = (1..=rounds as u32).map(|k| flat_of_round(piece, k)).collect();
        let start = start_of(piece, profile);
        let ring = ring_of(piece);
        // Cloth that would stand slack in the wanted shape does not hold it.
        let inner = ideal.iter().zip(&filled).map(|(n, filled)| n.min(*filled));
        let filling: Vec<f64> = inner.take(rounds - 1).chain(ideal.last().copied()).collect();
        let ends = match start {
            Start::Oval(_) => None,
            _ => Some(((start == Start::Ring).then_some(ring.2), drawn.then_some(gathered.2))),
        };
        let reachable = ends.map_or_else(
            || ideal.clone(),
            |(ring, last)| reachable(&filling, &flat, ring, last),
        );
        // Rounds that lag behind a rim still widen where the outline has turned.
        for (k, pair) in reachable.windows(2).enumerate() {
            may_widen[k + 1] |= pair[1] > pair[0] + LAG;
            may_narrow[k + 1] |= pair[1] < pair[0] - LAG;
        }
        Self {
            start,
            drawn,
            ideal,
            reachable,
            filled,
            flat,
            may_widen,
            may_narrow,
            ring,
            gathered,
            ends,
        }
    }

    /// `counts` lowered to where rounds that lie flat can follow them.
    pub(super) fn followed(&self, counts: &[f64]) -> Vec<f64> {
        match self.ends {
            Some((ring, last)) => reachable(counts, &self.flat, ring, last),
            None => counts.to_vec(),
        }
    }

    /// Whether the cloth is as narrow as its close a round before it, so that what is drawn shut
    /// need not be a round of decreases.
    pub(super) fn closes_plain(&self) -> bool {
        let below = self.reachable.len().checked_sub(2).map(|k| self.reachable[k]);
        self.drawn && below.is_some_and(|n| n < f64::from(self.gathered.1) + 0.5)
    }

    /// Number of rounds.
    pub fn rounds(&self) -> usize {
        self.ideal.len()
    }
}

/// Which way each round may go: counts never reverse between the turning points of the rest
/// circumference. Waves of less than a stitch are not turning points, but a round on the
/// wrong side of such a wave stays plain. `places` are the round edges by rest length.
fn directions(rest: &RestSkin, places: &[f64], width: f64) -> (Vec<bool>, Vec<bool>) {
    let around = &rest.around_mm;
    let rounds = places.len() - 1;
    let stretch = stretches(around, width);
    let mut widen = vec![false; rounds];
    let mut narrow = vec![false; rounds];
    // A sliver of a round beside a turning point does not make it one.
    let sliver = 1e-6 * rest.length_mm();
    let mut k = 0;
    for (i, &direction) in stretch.iter().enumerate() {
        let (from, to) = (rest.along_mm[i] + sliver, rest.along_mm[i + 1] - sliver);
        while k + 1 < rounds && places[k + 1] <= from {
            k += 1;
        }
        let mut touched = k;
        while touched < rounds && places[touched] < to {
            widen[touched] |= around[i + 1] > around[i] && direction > 0;
            narrow[touched] |= around[i + 1] < around[i] && direction < 0;
            touched += 1;
        }
    }
    (widen, narrow)
}

/// Direction of every interval of `around`, +1 widening or −1 narrowing, once waves of less
/// than `least` are ignored.
fn stretches(around: &[f64], least: f64) -> Vec<i8> {
    let n = around.len();
    let mut turns: Vec<usize> = Vec::new();
    let (mut direction, mut extreme) = (0_i8, 0_usize);
    let (mut lowest, mut highest) = (around[0], around[0]);
    for i in 1..n {
        let ahead = around[i] - around[extreme];
        match direction {
            0 => {
                lowest = around[i].min(lowest);
                highest = around[i].max(highest);
                if around[i] - lowest >= least {
                    (direction, extreme) = (1, i);
                } else if highest - around[i] >= least {
                    (direction, extreme) = (-1, i);
                }
            }
            d if f64::from(d) * ahead >= 0.0 => extreme = i,
            d if f64::from(-d) * ahead >= least => {
                turns.push(extreme);
                direction = -d;
                extreme = i;
            }
            _ => {}
        }
    }
    let rises = around[n - 1] >= around[0];
    let first = match (direction, turns.len() % 2) {
        (0, _) if rises => 1,
        (0, _) => -1,
        (d, 0) => d,
        (d, _) => -d,
    };
    let mut now = first;
    let mut next = turns.iter().peekable();
    (0..n - 1)
        .map(|i| {
            if next.next_if(|&&turn| turn == i).is_some() {
                now = -now;
            }
            now
        })
        .collect()
}

/// Whether a round of `count` can be worked on one of `below`: at most double, at least half.
pub(super) fn workable(below: u32, count: u32) -> bool {
    count <= 2 * below && below <= 2 * count
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_waves_are_not_turning_points() {
        let wave: Vec<f64> = vec![0.0, 4.0, 8.0, 7.5, 8.5, 12.0, 11.0, 7.0, 7.2, 3.0];
        assert_eq!(stretches(&wave, 1.0), [1, 1, 1, 1, 1, -1, -1, -1, -1]);
        assert_eq!(stretches(&[9.0, 5.0, 1.0], 1.0), [-1, -1]);
        assert_eq!(stretches(&[5.0, 5.1, 5.0, 5.2], 1.0), [1, 1, 1]);
        assert_eq!(stretches(&[5.0, 5.9, 4.5, 10.0], 1.0), [-1, -1, 1]);
    }
}
