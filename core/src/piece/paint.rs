//! Colour work: stitches that are worked in another yarn than their round.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result};

/// Most rounds that are painted, and most runs in one: more than any piece has stitches for.
const MOST_ROUNDS: usize = 1200;
const MOST_RUNS: usize = 2000;

/// Stitches side by side in one yarn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PaintRun {
    /// First stitch, counted from 1 in working order.
    pub from: u32,
    /// Last stitch.
    pub to: u32,
    /// The yarn, an index into the project's.
    pub yarn: usize,
}

/// What is painted in one round.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PaintedRound {
    /// How many stitches the round had: in a round of another count each stitch takes the
    /// colour at the same share of the way around.
    pub of: u32,
    /// The runs, in order, none over another.
    pub runs: Vec<PaintRun>,
}

/// The painted stitches of a piece, by round, counted from 1. What is not painted is worked in
/// the yarn of its round.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Paint {
    rounds: BTreeMap<u32, PaintedRound>,
}

impl PaintedRound {
    /// The yarn painted on stitch `index`, from 0, of a round that has `count` stitches now.
    pub fn yarn(&self, index: u32, count: u32) -> Option<usize> {
        let share = (f64::from(index) + 0.5) / f64::from(count.max(1));
        let stitch = (share * f64::from(self.of)).floor() as u32 + 1;
        self.runs.iter().find(|run| (run.from..=run.to).contains(&stitch)).map(|run| run.yarn)
    }
}

impl Paint {
    /// Whether nothing is painted.
    pub fn is_empty(&self) -> bool {
        self.rounds.is_empty()
    }

    /// What is painted in `round`, counted from 1.
    pub fn round(&self, round: u32) -> Option<&PaintedRound> {
        self.rounds.get(&round)
    }

    /// The painted rounds, in order.
    pub fn rounds(&self) -> impl Iterator<Item = u32> + '_ {
        self.rounds.keys().copied()
    }

    /// Paints stitches `from` to `to`, counted from 1, of `round`, which has `count` of them;
    /// with no yarn, takes the paint off them.
    pub fn put(&mut self, round: u32, count: u32, (from, to): (u32, u32), yarn: Option<usize>) {
        let old = self.rounds.get(&round);
        let stitches = (0..count).map(|index| match (from..=to).contains(&(index + 1)) {
            true => yarn,
            false => old.and_then(|painted| painted.yarn(index, count)),
        });
        let runs = runs(stitches);
        if runs.is_empty() {
            self.rounds.remove(&round);
        } else {
            self.rounds.insert(round, PaintedRound { of: count, runs });
        }
    }

    /// The same paint on a piece of `to` rounds that had `from`: each round takes that of the
    /// round at the same share of the working.
    #[must_use]
    pub fn carried(&self, from: u32, to: u32) -> Self {
        if from == to {
            return self.clone();
        }
        let source = |round: u32| {
            let share = (f64::from(round) - 0.5) / f64::from(to.max(1));
            (share * f64::from(from)).floor() as u32 + 1
        };
        let rounds = (1..=to).filter_map(|k| Some((k, self.rounds.get(&source(k))?.clone())));
        Self { rounds: rounds.collect() }
    }

    /// The same paint on the piece worked from its other end, in `rounds` rounds: later rounds
    /// are earlier ones, and further stitches lie the other way.
    #[must_use]
    pub fn reversed(&self, rounds: u32) -> Self {
        let turned = self.rounds.iter().filter_map(|(&round, painted)| {
            let round = (rounds + 1).checked_sub(round).filter(|&round| round > 0)?;
            let of = painted.of;
            let over = |run: &PaintRun| PaintRun {
                from: of + 1 - run.to,
                to: of + 1 - run.from,
                ..*run
            };
            let runs = painted.runs.iter().rev().map(over).collect();
            Some((round, PaintedRound { of, runs }))
        });
        Self { rounds: turned.collect() }
    }

    /// The yarns used, each once, in order.
    pub fn yarns(&self) -> Vec<usize> {
        let mut used: Vec<usize> =
            self.rounds.values().flat_map(|r| &r.runs).map(|run| run.yarn).collect();
        used.sort_unstable();
        used.dedup();
        used
    }

    /// Every yarn by another number: where yarns are taken away or come in between.
    pub fn renumber(&mut self, to: impl Fn(usize) -> usize) {
        for run in self.rounds.values_mut().flat_map(|round| &mut round.runs) {
            run.yarn = to(run.yarn);
        }
    }

    pub(super) fn validate(&self) -> Result<()> {
        if self.rounds.len() > MOST_ROUNDS {
            let what = format!("{} rounds are painted", self.rounds.len());
            return Err(Error::new("paint", what, format!("paint at most {MOST_ROUNDS}")));
        }
        for (&round, painted) in &self.rounds {
            let place = format!("paint, round {round}");
            let in_order = painted.runs.windows(2).all(|pair| pair[0].to < pair[1].from);
            let within = painted
                .runs
                .iter()
                .all(|r| r.from >= 1 && r.from <= r.to && r.to <= painted.of);
            if round == 0 || painted.runs.is_empty() || painted.runs.len() > MOST_RUNS {
                let what = format!("it has {} runs", painted.runs.len());
                return Err(Error::new(place, what, "list 1 to 2000 runs of rounds from 1 on"));
            }
            if !in_order || !within || painted.of > 20_000 {
                let what = format!("its runs do not lie in {} stitches, in order", painted.of);
                return Err(Error::new(place, what, "count stitches from 1, first to last"));
            }
        }
        Ok(())
    }
}

/// Stitches as runs of one yarn; those without any are left out.
fn runs(stitches: impl Iterator<Item = Option<usize>>) -> Vec<PaintRun> {
    let mut runs: Vec<PaintRun> = Vec::new();
    for (stitch, yarn) in (1..).zip(stitches) {
        let Some(yarn) = yarn else { continue };
        match runs.last_mut() {
            Some(run) if run.yarn == yarn && run.to + 1 == stitch => run.to = stitch,
            _ => runs.push(PaintRun { from: stitch, to: stitch, yarn }),
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paint_is_put_on_and_taken_off_stitch_by_stitch() {
        let mut paint = Paint::default();
        paint.put(4, 12, (3, 6), Some(1));
        paint.put(4, 12, (5, 8), Some(2));
        let run = |from, to, yarn| PaintRun { from, to, yarn };
        assert_eq!(paint.round(4).expect("painted").runs, [run(3, 4, 1), run(5, 8, 2)]);
        assert_eq!(paint.yarns(), [1, 2]);
        paint.validate().expect("in order");
        paint.put(4, 12, (1, 12), None);
        assert!(paint.is_empty());
    }

    #[test]
    fn a_round_of_twice_the_stitches_has_twice_the_painted_ones() {
        let mut paint = Paint::default();
        paint.put(2, 6, (2, 3), Some(1));
        let painted = paint.round(2).expect("painted");
        let on = |count: u32| (0..count).filter(|&i| painted.yarn(i, count) == Some(1)).count();
        assert_eq!((on(6), on(12), on(3)), (2, 4, 1));
        let twice = paint.carried(5, 10);
        assert_eq!(twice.rounds().collect::<Vec<_>>(), [3, 4]);
    }
}
