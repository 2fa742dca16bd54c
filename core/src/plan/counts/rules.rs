//! The ideal stitches of every round, which way each round may go, and what a round costs
//! the maker's patience.

use crate::piece::Piece;
use crate::piece::cloth::Kind;
use crate::piece::outline::Profile;
use crate::plan::bend::FLAT_BAND;
use crate::plan::skin::RestSkin;

/// How far from the ideal a count may stray unless a rule forces it further.
pub(super) const STRAY: f64 = 8.0;

/// Price of an unevenly spread round at full ease.
const FULL_PRICE: f64 = 16.0;

/// What each stitch beyond flat adds to a round's trouble.
const RUFFLE: f64 = 0.3;

/// What changing between plain and shaping rounds costs where plain rounds are wanted
/// together, whatever the ease.
const SWITCH_PRICE: f64 = 4.0;

/// What a shaping round costs there: more shaping in fewer rounds leaves plain ones over.
const SHAPING_PRICE: f64 = 2.0;

/// A rule that could not be kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaveWay {
    /// Stitches in multiples could not be kept.
    Multiples,
    /// The largest change a round, or a face without shaping, could not be kept.
    Change,
    /// The halves of the piece could not be made alike.
    Symmetry,
    /// Counts had to turn back on a stretch that only widens or only narrows.
    Direction,
    /// The wanted ring, neck or last round could not be reached.
    Ends,
}

/// How a piece begins, in stitches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// A magic ring.
    Ring,
    /// A chain of so many stitches joined into a ring: an open edge.
    Chain(u32),
    /// A chain of so many stitches worked along both its sides: an oval.
    Oval(u32),
}

impl Start {
    /// Stitches of an oval's straight side.
    pub fn side(self) -> Option<u32> {
        match self {
            Self::Oval(chain) => Some(chain - 1),
            Self::Ring | Self::Chain(_) => None,
        }
    }

    /// Stitches round 1 is worked on, where it is worked on a closed round of them.
    pub fn joined(self) -> Option<u32> {
        match self {
            Self::Chain(n) => Some(n),
            Self::Ring | Self::Oval(_) => None,
        }
    }
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
    /// Whether round k may gain stitches, at index k − 1.
    pub may_widen: Vec<bool>,
    /// Whether round k may lose stitches.
    pub may_narrow: Vec<bool>,
    /// Fewest, usual and most stitches of a magic ring.
    pub ring: (u32, u32, u32),
    /// Fewest, usual and most stitches of the gathered round.
    pub gathered: (u32, u32, u32),
}

/// How `piece` begins.
pub(crate) fn start_of(piece: &Piece, profile: &Profile) -> Start {
    let width = piece.cloth_of_round(1).0;
    let around = std::f64::consts::TAU * profile.stations[0].at.r + 2.0 * piece.straight_mm;
    if !piece.outline.starts_closed() {
        Start::Chain(((around / width).round() as u32).max(3))
    } else if piece.straight_mm > 0.0 {
        Start::Oval(((piece.straight_mm / width).round() as u32 + 1).max(2))
    } else {
        Start::Ring
    }
}

/// Fewest, usual and most stitches of a ring. Common practice, no source: six single
/// crochets, eight half double, twelve double; four at a tip.
fn ring_of(piece: &Piece) -> (u32, u32, u32) {
    if let Some(held) = piece.rules.ring {
        return (held, held, held);
    }
    let tip = piece.outline.knots.first().is_some_and(|k| k.corner);
    match (piece.kind_of_round(1), tip) {
        (Kind::Single, false) => (4, 6, 8),
        (Kind::Single, true) => (4, 4, 8),
        (Kind::HalfDouble, _) => (6, 8, 10),
        (Kind::Double, _) => (10, 12, 14),
    }
}

impl Targets {
    /// The targets of `piece` worked in `rounds` rounds.
    pub fn new(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> Self {
        let places = piece.edges_mm(rounds, rest.length_mm());
        let around = rest.around_at(&places);
        let width = |k: usize| piece.cloth_of_round(k as u32).0;
        let drawn = piece.outline.finishes_closed();
        let mut ideal: Vec<f64> = (1..=rounds).map(|k| around[k] / width(k)).collect();
        let straight = 2.0 * piece.straight_mm;
        if let (false, Some(end)) = (drawn, profile.stations.last()) {
            // An open edge is held at its rest radius, so it is not stretched.
            ideal[rounds - 1] = (std::f64::consts::TAU * end.at.r + straight) / width(rounds);
        }
        let (may_widen, may_narrow) = directions(rest, &places, piece.gauge.stitch_width_mm());
        let flat = (straight / width(rounds)).round() as u32;
        let gathered = match piece.rules.last {
            Some(held) => (held, held, held),
            None => (5 + flat, 6 + flat, 8 + flat),
        };
        Self {
            start: start_of(piece, profile),
            drawn,
            ideal,
            may_widen,
            may_narrow,
            ring: ring_of(piece),
            gathered,
        }
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

/// What ease charges for a round, in squared stitches of misfit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Price {
    weight: f64,
    /// Stitches a round gains where cloth lies flat; more ruffles, as many fewer pucker.
    flat: f64,
    switch: f64,
    /// What any shaping round costs, so that plain rounds are not simply done without.
    shaping: f64,
}

impl Price {
    /// The price list of `piece` at `ease`: nothing at 0, most at 1.
    pub fn of_piece(piece: &Piece, ease: f64) -> Self {
        Self {
            weight: FULL_PRICE * ease * ease,
            flat: piece.gauge.flat_increase(),
            switch: if piece.rules.plain_together { SWITCH_PRICE } else { 0.0 },
            shaping: if piece.rules.plain_together { SHAPING_PRICE } else { 0.0 },
        }
    }

    /// Whether nothing is charged.
    pub fn is_free(self) -> bool {
        self.weight == 0.0 && self.switch == 0.0
    }

    /// The charge for a round of `count` on one of `below`.
    pub fn of(self, below: u32, count: u32) -> f64 {
        let shaping = if below == count { 0.0 } else { self.shaping };
        if self.weight == 0.0 {
            shaping
        } else {
            self.weight * self.trouble(below, count) + shaping
        }
    }

    /// The charge where a plain round meets a shaping one.
    pub fn of_switch(self, one_is_plain: bool, other_is_plain: bool) -> f64 {
        if one_is_plain == other_is_plain { 0.0 } else { self.switch }
    }

    /// Whether changes between plain and shaping rounds are charged at all.
    pub(super) fn minds_switches(self) -> bool {
        self.switch > 0.0
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
        assert_eq!(stretches(&[5.0, 5.9, 4.5, 10.0], 1.0), [-1, -1, 1]);
    }

    #[test]
    fn an_even_repeat_is_cheaper_than_an_odd_spread() {
        let price = Price { weight: 1.0, flat: 5.7, switch: 0.0, shaping: 0.0 };
        assert!(price.of(24, 30) > price.of(24, 24));
        assert!(price.of(31, 36) > price.of(30, 36));
        assert!(price.of(6, 12) < price.of(6, 7));
        assert!(price.of(18, 27) > price.of(18, 24));
        assert!(Price { weight: 0.0, ..price }.is_free());
    }
}
