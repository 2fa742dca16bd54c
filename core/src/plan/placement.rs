//! Placement: which stitch of each round is an increase, a decrease, a plain one.
//!
//! Shaping is spread as evenly as whole stitches allow (every gap differs by at most one, in
//! the order of the Euclidean rhythms: Toussaint, “The Euclidean algorithm generates
//! traditional musical rhythms”, BRIDGES 2005) and turned from round to round so that it
//! does not stack into corners. A round is stored as runs, never stitch by stitch.

use crate::piece::Spread;

pub use crate::piece::stitch::{Placement, Run, Stitch};

/// The rhythm of `k` onsets among `n` places: how far each onset is from the next. Gaps
/// differ by at most one and are ordered as evenly as can be; `1 ≤ k ≤ n`.
pub fn even_gaps(k: u32, n: u32) -> impl Iterator<Item = u32> {
    let (k, n) = (u64::from(k), u64::from(n));
    (0..k).map(move |i| (((i + 1) * n) / k - (i * n) / k) as u32)
}

/// Places rounds one after the other, remembering where shaping last fell.
#[derive(Debug)]
pub struct Placer {
    spread: Spread,
    drift: f64,
    /// Where the round to come begins, in turns, the lean of a spiral counted in.
    begins: f64,
    /// Kind, first place (turns) and number of the last shaping.
    last: Option<(Stitch, f64, u32)>,
}

impl Placer {
    /// A placer for rounds that lean `drift` stitches each (see
    /// [`crate::piece::Rules::spiral_drift`]).
    pub fn new(spread: Spread, drift: f64) -> Self {
        Self { spread, drift, begins: 0.0, last: None }
    }

    /// Takes note of a round on `below` that keeps its own work, so that rounds after it turn
    /// away from its shaping.
    pub fn worked(&mut self, below: u32, work: &Placement) {
        let begins = self.begins;
        self.begins = (begins + self.drift / f64::from(below)).rem_euclid(1.0);
        let shaping = work.motif.iter().map(|run| run.shaping).find(|&s| s != Stitch::Plain);
        let Some((shaping, first)) = shaping.zip(work.shaping_turns().next()) else { return };
        self.last = Some((shaping, begins + first, work.number_of(shaping)));
    }

    /// The placement of a round of `count` stitches on one of `below`.
    ///
    /// Needs `below/2 ≤ count ≤ 2·below`, which the counts keep to.
    pub fn place(&mut self, below: u32, count: u32) -> Placement {
        let begins = self.begins;
        self.begins = (begins + self.drift / f64::from(below)).rem_euclid(1.0);
        if count == below {
            return Placement::plain(count);
        }
        let (shaping, k) = if count > below {
            (Stitch::Increase, count - below)
        } else {
            (Stitch::Decrease, below - count)
        };
        let repeats = gcd(k, below);
        let gaps = || even_gaps(k / repeats, below / repeats);
        let widest_turn = below / k - shaping.consumes();
        let first_gap = below / k;
        let place = |turn: u32| {
            let centre = f64::from(first_gap - turn) - 0.5 * f64::from(shaping.consumes());
            begins + centre / f64::from(below)
        };
        let turn = match (self.spread, self.last) {
            (Spread::Turned, Some((kind, at, number))) if kind == shaping => {
                turn_away(widest_turn, |turn| clearance(place(turn), k, at, number))
            }
            _ => 0,
        };
        self.last = Some((shaping, place(turn), k));
        let mut motif: Vec<Run> = Vec::new();
        for gap in gaps() {
            let before = gap - shaping.consumes() - turn;
            match motif.last_mut() {
                Some(run) if run.before == before => run.times += 1,
                _ => motif.push(Run { before, shaping, after: turn, times: 1 }),
            }
        }
        let (motif, repeats) = match motif.as_slice() {
            // One gap throughout: the repeat is that gap.
            [run] => (vec![Run { times: 1, ..*run }], repeats * run.times),
            _ => (motif, repeats),
        };
        Placement { motif, repeats }
    }
}

/// The placement of a round of `count` on one of `below` in an oval whose straight sides take
/// `side` stitches each: both half rounds are shaped alike, the sides stay plain. Every other
/// round (`turned`) starts its gaps half-way.
///
/// Needs even counts and half rounds long enough for the shaping, which the counts keep to.
pub fn place_oval(below: u32, count: u32, side: u32, turned: bool) -> Placement {
    if count == below {
        return Placement::plain(count);
    }
    let shaping = if count > below { Stitch::Increase } else { Stitch::Decrease };
    let each = below.abs_diff(count) / 2;
    let arc = below / 2 - side;
    let turn = if turned { (arc / each - shaping.consumes()) / 2 } else { 0 };
    let mut motif: Vec<Run> = even_gaps(each, arc)
        .map(|gap| Run {
            before: gap - shaping.consumes() - turn,
            shaping,
            after: turn,
            times: 1,
        })
        .collect();
    if let Some(last) = motif.last_mut() {
        last.after += side;
    }
    Placement { motif, repeats: 2 }
}

/// Most stitches a round of an oval may gain or lose on `below`, sides of `side` stitches.
pub fn oval_change(below: u32, side: u32, shaping: Stitch) -> u32 {
    2 * ((below / 2).saturating_sub(side) / shaping.consumes())
}

/// The turn, up to `widest`, whose shaping stays clearest of the shaping below; the least
/// such turn. Clearances within a hair of one another count as equal.
fn turn_away(widest: u32, clearance: impl Fn(u32) -> f64) -> u32 {
    let mut best = (0, clearance(0));
    for turn in 1..=widest {
        let clear = clearance(turn);
        if clear > best.1 + 1e-9 {
            best = (turn, clear);
        }
    }
    best.0
}

/// How clear `k` even places from `at` are of `number` even places from `other`, as the
/// mean distance to the nearest, in turns.
fn clearance(at: f64, k: u32, other: f64, number: u32) -> f64 {
    let spacing = 1.0 / f64::from(number);
    let total: f64 = (0..k)
        .map(|i| {
            let apart = (at + f64::from(i) / f64::from(k) - other).rem_euclid(spacing);
            apart.min(spacing - apart)
        })
        .sum();
    total / f64::from(k)
}

/// Greatest common divisor.
pub(crate) fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_round_takes_and_leaves_what_it_should() {
        for below in 4..60_u32 {
            for count in below.div_ceil(2)..=2 * below {
                let mut placer = Placer::new(Spread::Turned, 0.17);
                for _ in 0..3 {
                    let round = placer.place(below, count);
                    assert_eq!((round.consumed(), round.produced()), (below, count));
                    let listed: u32 = round.stitches().map(Stitch::produces).sum();
                    assert_eq!(listed, count);
                }
            }
        }
    }

    #[test]
    fn gaps_differ_by_at_most_one() {
        for n in 1..80 {
            for k in 1..=n {
                let gaps: Vec<u32> = even_gaps(k, n).collect();
                assert_eq!(gaps.iter().sum::<u32>(), n);
                assert!(gaps.iter().all(|&g| g == n / k || g == n.div_ceil(k)), "{k} in {n}");
            }
        }
    }

    #[test]
    fn a_turned_round_starts_part_way_and_is_still_one_repeat() {
        let mut placer = Placer::new(Spread::Turned, 0.17);
        let first = placer.place(24, 30);
        let second = placer.place(30, 36);
        assert_eq!(
            first.motif,
            [Run { before: 3, shaping: Stitch::Increase, after: 0, times: 1 }]
        );
        assert_eq!(second.motif.len(), 1);
        assert_eq!(second.repeats, 6);
        let run = second.motif[0];
        assert_eq!(run.before + run.after, 4);
        // The first increase moves from 3½ of 24 to 1½ of 30: as near half a gap as can be.
        assert_eq!(run.after, 3);
    }

    #[test]
    fn stacked_rounds_line_up() {
        let mut placer = Placer::new(Spread::Stacked, 0.17);
        for below in [12, 18, 24, 30] {
            assert!(placer.place(below, below + 6).motif.iter().all(|r| r.after == 0));
        }
    }
}
