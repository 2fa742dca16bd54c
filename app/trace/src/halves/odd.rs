//! What of a shape no turned shape has.

use super::Halves;
use crate::axis::Axis;
use crate::mask::Field;

/// What no turned shape has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OddKind {
    /// It stands out on the left alone.
    Left,
    /// It stands out on the right alone.
    Right,
    /// It stands off the body on both sides, with a gap between.
    Pair,
    /// At one end the shape parts in two, as ears do.
    Fork,
}

/// A part that no turned shape has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Odd {
    pub(crate) kind: OddKind,
    /// First and last row of it.
    pub(crate) rows: (usize, usize),
    /// How far it stands out, pixels.
    pub(crate) out: f64,
}

impl Halves {
    /// The parts that no turned shape has, found on the mask with its holes, whose distances
    /// are `pierced`.
    pub(crate) fn odd(&self, pierced: &Field, axis: Axis) -> Vec<Odd> {
        let at = |row: usize, across: f64| {
            let (x, y) = axis.place(self.first + row as f64, across);
            pierced.at(x, y)
        };
        let mut odd = self.one_sided();
        odd.extend(self.paired(&at));
        odd.extend(self.forked(&at));
        odd
    }

    /// What stands out on one side: at most by a twentieth of the widest radius it may, and
    /// not along most of the height, where the two sides are simply unlike.
    fn one_sided(&self) -> Vec<Odd> {
        let widest = self.widest();
        let apart = |i: usize| self.rows[i].right - self.rows[i].left;
        let mut odd = Vec::new();
        for (kind, sign) in [(OddKind::Right, 1.0), (OddKind::Left, -1.0)] {
            for (from, to) in runs(self.rows.len(), |i| sign * apart(i) > 0.012 * widest) {
                let out = (from..=to).map(|i| sign * apart(i)).fold(0.0, f64::max);
                let share = (to - from + 1) as f64 / self.rows.len() as f64;
                if out > 0.06 * widest && share > 0.015 && share < 0.8 {
                    odd.push(Odd { kind, rows: (from, to), out });
                }
            }
        }
        odd
    }

    /// What stands off the body on both sides.
    fn paired(&self, at: &impl Fn(usize, f64) -> f64) -> Option<Odd> {
        let gaps: Vec<bool> = (0..self.rows.len())
            .map(|i| [1.0, -1.0].into_iter().all(|sign| self.gap(i, sign, at).is_some()))
            .collect();
        let (from, to) =
            runs(gaps.len(), |i| gaps[i]).into_iter().max_by_key(|(from, to)| to - from)?;
        if to - from < self.rows.len() / 50 + 3 {
            return None;
        }
        let middle = usize::midpoint(from, to);
        let thick = |sign: f64| {
            let (_, beyond) = self.gap(middle, sign, at).unwrap_or((0.0, 0.0));
            (if sign > 0.0 { self.rows[middle].right } else { self.rows[middle].left }) - beyond
        };
        // Above and below its gap the part is about as thick as beside it.
        let more = (1.5 * thick(1.0).max(thick(-1.0))) as usize + 2;
        let rows = (from.saturating_sub(more), (to + more).min(self.rows.len() - 1));
        let out = (from..=to)
            .filter_map(|i| Some(self.rows[i].right - self.gap(i, 1.0, at)?.0))
            .fold(0.0, f64::max);
        Some(Odd { kind: OddKind::Pair, rows, out })
    }

    /// Where a gap begins and ends on one side of a row, pixels from the axis, if what is
    /// beyond it is thin.
    pub(super) fn gap(
        &self,
        row: usize,
        sign: f64,
        at: &impl Fn(usize, f64) -> f64,
    ) -> Option<(f64, f64)> {
        let outer = if sign > 0.0 { self.rows[row].right } else { self.rows[row].left };
        if outer < 8.0 || at(row, 0.0) <= 0.0 {
            return None;
        }
        let reach = outer as usize;
        let begins = (1..reach).find(|&x| at(row, sign * x as f64) < -0.7)?;
        let ends = (begins..=reach).rev().find(|&x| at(row, sign * x as f64) < -0.7)?;
        let thin = outer - ends as f64 <= 0.35 * outer && ends >= begins + 2;
        thin.then_some((begins as f64, ends as f64))
    }

    /// Where the shape parts in two at an end.
    fn forked(&self, at: &impl Fn(usize, f64) -> f64) -> Vec<Odd> {
        let parted = |i: usize| {
            let row = self.rows[i];
            at(i, 0.0) < -1.0 && row.left > 2.0 && row.right > 2.0
        };
        let least = self.rows.len() / 40 + 3;
        let last = self.rows.len() - 1;
        runs(self.rows.len(), parted)
            .into_iter()
            .filter(|&(from, to)| to - from >= least && (from < least || to + least > last))
            .map(|(from, to)| {
                let rows = if from < least { (0, to) } else { (from, last) };
                Odd { kind: OddKind::Fork, rows, out: (to - from) as f64 }
            })
            .collect()
    }
}

/// The runs of 0 … `count` that `holds`, each from its first to its last.
fn runs(count: usize, holds: impl Fn(usize) -> bool) -> Vec<(usize, usize)> {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for i in (0..count).filter(|&i| holds(i)) {
        match runs.last_mut() {
            // A row or two between is noise.
            Some(run) if i - run.1 <= 3 => run.1 = i,
            _ => runs.push((i, i)),
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_bridge_a_row_or_two() {
        let holds = [1, 2, 3, 5, 6, 20, 21];
        assert_eq!(runs(30, |i| holds.contains(&i)), vec![(1, 6), (20, 21)]);
        assert!(runs(0, |_| true).is_empty());
    }
}
