//! Every step from round to round that rules and repeats allow, so that a search never runs
//! into a dead end: only counts that can be reached from the start are listed.

use super::repeats::Shaping;
use super::rounds::AllowedRounds;

/// A count a round may have, and how the round after it is shaped then.
#[derive(Debug, Clone, Copy)]
pub(super) struct Before {
    pub(super) count: u32,
    pub(super) shaping: Shaping,
}

/// The steps of one round: for every count it may have, the counts of the round before.
#[derive(Debug, Clone, Default)]
struct RoundSteps {
    /// Counts it may have, growing.
    counts: Vec<u32>,
    /// Where the counts before each of them end in `before`.
    ends: Vec<usize>,
    before: Vec<Before>,
}

/// The steps of all rounds that are searched.
#[derive(Debug, Clone, Default)]
pub(super) struct Steps {
    /// Row k − 1 is round k's.
    rows: Vec<RoundSteps>,
}

impl Steps {
    /// The steps of `rounds`; only full repeats unless `uneven`, where the rules leave a
    /// choice. `None` where the last round cannot be reached.
    pub(super) fn new(rounds: &AllowedRounds, uneven: bool) -> Option<Self> {
        let mut rows: Vec<RoundSteps> = Vec::with_capacity(rounds.searched());
        let full = |k: usize, below: u32, count: u32| {
            let shaping = rounds.shaping(below, count);
            let ok = uneven || rounds.is_forced(k) || shaping != Shaping::Uneven;
            (ok && rounds.allows_both_steps(k, below, count)).then_some(shaping)
        };
        for k in 1..=rounds.searched() {
            let mut row = RoundSteps::default();
            let before: &[u32] = rows.last().map_or(&[], |row| &row.counts);
            for count in rounds.range(k).filter(|&count| rounds.allows_both(k, count)) {
                match (k, rounds.targets.start.joined()) {
                    (1, None) => {}
                    (1, Some(chain)) => {
                        let step = full(k, chain, count);
                        row.before.extend(step.map(|shaping| Before { count: chain, shaping }));
                    }
                    _ => {
                        let most = match rounds.is_forced(k) {
                            true => u32::MAX,
                            // It may fall to `count`, or rise to it from half as many.
                            false => rounds
                                .most_change(k, count)
                                .max(rounds.most_change(k, count.div_ceil(2))),
                        };
                        let from = before.partition_point(|&b| b < count.saturating_sub(most));
                        let near = before[from..].iter();
                        let near = near.take_while(|&&b| b <= count.saturating_add(most));
                        row.before.extend(near.filter_map(|&below| {
                            let shaping = full(k, below, count)?;
                            Some(Before { count: below, shaping })
                        }));
                    }
                }
                let reached = row.before.len() > row.ends.last().copied().unwrap_or(0);
                if reached || (k == 1 && rounds.targets.start.joined().is_none()) {
                    row.counts.push(count);
                    row.ends.push(row.before.len());
                }
            }
            if row.counts.is_empty() {
                return None;
            }
            rows.push(row);
        }
        Some(Self { rows })
    }

    /// Number of rounds searched.
    pub(super) fn rounds(&self) -> usize {
        self.rows.len()
    }

    /// Counts the last round may have.
    pub(super) fn last(&self) -> &[u32] {
        self.rows.last().map_or(&[], |row| &row.counts)
    }

    /// Counts round `k − 1` may have where round `k` has `count`; for round 1 the chain it is
    /// worked on, if it is.
    pub(super) fn before(&self, k: usize, count: u32) -> &[Before] {
        let row = &self.rows[k - 1];
        let Ok(at) = row.counts.binary_search(&count) else { return &[] };
        let from = if at > 0 { row.ends[at - 1] } else { 0 };
        &row.before[from..row.ends[at]]
    }
}
