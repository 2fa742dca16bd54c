//! What whole stitches must keep to, and what a round costs the maker's patience.

use crate::bend::FLAT_BAND;
use crate::outline::Profile;
use crate::piece::Piece;
use crate::skin::RestSkin;

/// How far from the ideal a count may stray unless a rule forces it further.
pub(super) const STRAY: f64 = 8.0;

/// Stitches left when a piece is drawn shut.
pub(super) const GATHERED: std::ops::RangeInclusive<u32> = 5..=8;

/// Price of an unevenly spread round at full ease.
const FULL_PRICE: f64 = 10.0;

/// What each stitch beyond flat adds to a round's trouble.
const RUFFLE: f64 = 0.1;

/// A rule that could not be kept, with the rounds it concerns.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaveWay {
    /// A pin asked for more stitches than double, or fewer than half, what can be reached.
    Pin {
        /// The pinned round.
        round: u32,
        /// The count it was pinned to.
        wanted: u32,
        /// The count it got.
        given: u32,
    },
    /// A pin on a round the piece does not have.
    PinBeyondEnd {
        /// The pinned round.
        round: u32,
    },
    /// Counts had to turn back on a stretch that only widens or only narrows.
    Direction,
    /// The wanted ring, neck or last round could not be reached.
    Ends,
}

/// The ideal stitches of every round and which way each round may go.
#[derive(Debug, Clone)]
pub struct Targets {
    /// Foundation chain at an open start; `None` for a magic ring.
    pub chain: Option<u32>,
    /// Whether the last round is gathered shut.
    pub drawn: bool,
    /// Ideal stitches at the top of round k at index k − 1; not whole.
    pub ideal: Vec<f64>,
    /// Whether round k may gain stitches, at index k − 1.
    pub may_widen: Vec<bool>,
    /// Whether round k may lose stitches.
    pub may_narrow: Vec<bool>,
}

/// Stitches of the foundation chain of a piece that starts open.
pub(crate) fn chain_of(piece: &Piece, profile: &Profile) -> Option<u32> {
    let width = piece.gauge.stitch_width_mm();
    let around = std::f64::consts::TAU * profile.stations[0].at.r;
    (!piece.outline.starts_closed()).then(|| ((around / width).round() as u32).max(3))
}

impl Targets {
    /// The targets of `piece` worked in `rounds` rounds.
    pub fn new(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> Self {
        let width = piece.gauge.stitch_width_mm();
        let around = rest.around_at(rounds);
        let drawn = piece.outline.finishes_closed();
        let mut ideal: Vec<f64> = around[1..].iter().map(|a| a / width).collect();
        if let (false, Some(end)) = (drawn, profile.stations.last()) {
            // An open edge is held at its rest radius, so it is not stretched.
            ideal[rounds - 1] = std::f64::consts::TAU * end.at.r / width;
        }
        let (may_widen, may_narrow) = directions(rest, rounds, width);
        Self { chain: chain_of(piece, profile), drawn, ideal, may_widen, may_narrow }
    }

    /// Number of rounds.
    pub fn rounds(&self) -> usize {
        self.ideal.len()
    }
}

/// Which way each round may go: counts never reverse between the turning points of the rest
/// circumference. Waves of less than a stitch are not turning points, but a round on the
/// wrong side of such a wave stays plain.
fn directions(rest: &RestSkin, rounds: usize, width: f64) -> (Vec<bool>, Vec<bool>) {
    let around = &rest.around_mm;
    // +1 where a stretch between turning points widens, −1 where it narrows.
    let stretch = stretches(around, width);
    let mut widen = vec![false; rounds];
    let mut narrow = vec![false; rounds];
    for i in 0..around.len() - 1 {
        let place = |along: f64| along / rest.length_mm() * rounds as f64;
        // A sliver of a round at a turning point does not make it one.
        let from = (place(rest.along_mm[i]) + 1e-6) as usize;
        let to = ((place(rest.along_mm[i + 1]) - 1e-6).max(0.0) as usize).min(rounds - 1);
        let grows = around[i + 1] > around[i] && stretch[i] > 0;
        let shrinks = around[i + 1] < around[i] && stretch[i] < 0;
        for k in from.min(rounds - 1)..=to {
            widen[k] |= grows;
            narrow[k] |= shrinks;
        }
    }
    (widen, narrow)
}

/// Direction of every interval of `around` once waves of less than `least` are ignored.
fn stretches(around: &[f64], least: f64) -> Vec<i8> {
    let n = around.len();
    let mut turns: Vec<usize> = Vec::new();
    let (mut direction, mut extreme) = (0_i8, 0_usize);
    for i in 1..n {
        let ahead = around[i] - around[extreme];
        match direction {
            0 if ahead.abs() >= least => direction = if ahead > 0.0 { 1 } else { -1 },
            0 => continue,
            d if f64::from(d) * ahead >= 0.0 => extreme = i,
            d if f64::from(-d) * ahead >= least => {
                turns.push(extreme);
                direction = -d;
                extreme = i;
            }
            _ => {}
        }
        if direction != 0 && turns.is_empty() && f64::from(direction) * ahead > 0.0 {
            extreme = i;
        }
    }
    let total = around[n - 1] - around[0];
    let first = match (direction, turns.len() % 2) {
        (0, _) => {
            if total >= 0.0 {
                1
            } else {
                -1
            }
        }
        (d, 0) => d,
        (d, _) => -d,
    };
    let mut directions = Vec::with_capacity(n - 1);
    let (mut now, mut next) = (first, turns.iter().peekable());
    for i in 0..n - 1 {
        if next.next_if(|&&t| t == i).is_some() {
            now = -now;
        }
        directions.push(now);
    }
    directions
}

/// What ease charges for a round, in squared stitches of misfit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Price {
    weight: f64,
    /// Stitches a round gains where cloth lies flat; more ruffles, as many fewer pucker.
    flat: f64,
}

impl Price {
    /// The price list of `piece`: nothing at ease 0, most at ease 1.
    pub fn of_piece(piece: &Piece) -> Self {
        let weight = FULL_PRICE * piece.ease * piece.ease;
        Self { weight, flat: piece.gauge.flat_increase() }
    }

    /// Whether nothing is charged.
    pub fn is_free(self) -> bool {
        self.weight == 0.0
    }

    /// The charge for a round of `count` on one of `below`.
    pub fn of(self, below: u32, count: u32) -> f64 {
        if self.weight == 0.0 { 0.0 } else { self.weight * self.trouble(below, count) }
    }

    /// How much attention a round asks of the maker: 0 where it is plain, 1 where its
    /// shaping is unevenly spread, more where it gains or loses more than lies flat.
    fn trouble(self, below: u32, count: u32) -> f64 {
        let shaped = below.abs_diff(count);
        let spread = match shaped {
            0 => 0.0,
            1 => 0.8,
            _ if below.is_multiple_of(shaped) => 0.15,
            _ => 1.0,
        };
        spread + RUFFLE * (f64::from(shaped) - self.flat - FLAT_BAND).max(0.0)
    }
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
    }

    #[test]
    fn an_even_repeat_is_cheaper_than_an_odd_spread() {
        let price = Price { weight: 1.0, flat: 5.7 };
        assert!(price.of(24, 30) > price.of(24, 24));
        assert!(price.of(31, 36) > price.of(30, 36));
        assert!(price.of(6, 12) < price.of(6, 7));
        assert!(price.of(18, 27) > price.of(18, 24));
        assert!(Price { weight: 0.0, ..price }.is_free());
    }
}
