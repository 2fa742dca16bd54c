//! How far the thing reaches to either side of its axis, row by row along it, and what of it
//! no turned shape has.

use crate::axis::Axis;
use crate::mask::{Field, Mask};

/// The two sides of a shape by rows a pixel apart along its axis.
#[derive(Debug, Clone)]
pub(crate) struct Halves {
    /// Along the axis, of the first row, pixels.
    pub(crate) first: f64,
    /// Where the shape begins and ends along the axis, pixels: up to a row before the first
    /// and beyond the last.
    pub(crate) ends: (f64, f64),
    /// Reach of each row to the left and to the right, pixels; below 0 on a row that lies on
    /// the other side altogether.
    pub(crate) rows: Vec<HalfRow>,
}

/// One row across the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct HalfRow {
    pub(crate) left: f64,
    pub(crate) right: f64,
}

impl HalfRow {
    /// Half its width, pixels.
    pub(crate) fn mean(self) -> f64 {
        0.5 * (self.left + self.right)
    }
}

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

/// Reach of the shape with distances `field` about `axis`; `None` where nothing lies on it.
pub(crate) fn measure(mask: &Mask, field: &Field, axis: Axis) -> Option<Halves> {
    let rim = mask.rim(usize::MAX);
    let (mut low, mut high, mut wide) = (f64::MAX, f64::MIN, 0.0_f64);
    for &p in &rim {
        let (along, across) = axis.measure(p);
        (low, high, wide) = (low.min(along), high.max(along), wide.max(across.abs()));
    }
    if low > high {
        return None;
    }
    let (first, wide) = ((low - 2.0).floor(), (wide + 3.0).ceil());
    let count = (high - first + 3.0) as usize;
    let at = |row: usize, across: f64| {
        let (x, y) = axis.place(first + row as f64, across);
        field.at(x, y)
    };
    let reach = |row: usize, sign: f64| -> Option<f64> {
        let mut outer = at(row, sign * wide);
        let mut across = wide;
        while across > -wide {
            // Nothing is nearer than the distance says.
            let step = if outer < -3.0 { (-outer - 1.0).floor() } else { 1.0 };
            across -= step;
            let inner = at(row, sign * across);
            if inner > 0.0 {
                return Some(across + step * inner / (inner - outer).max(1e-9));
            }
            outer = inner;
        }
        None
    };
    let found: Vec<Option<HalfRow>> = (0..count)
        .map(|row| Some(HalfRow { right: reach(row, 1.0)?, left: reach(row, -1.0)? }))
        .collect();
    let begins = found.iter().position(Option::is_some)?;
    let ends = found.iter().rposition(Option::is_some)?;
    let deepest = |row: usize| {
        let steps = (2.0 * wide) as usize;
        (0..=steps).map(|i| at(row, i as f64 - wide)).fold(f64::MIN, f64::max)
    };
    // Between the last row that is empty and the first that is not.
    let edge = |inside: usize, outside: usize| {
        let (deep, before) = (deepest(inside), deepest(outside));
        let share = (deep / (deep - before).max(1e-9)).clamp(0.0, 1.0);
        first + inside as f64 + share * (outside as f64 - inside as f64)
    };
    let start = edge(begins, begins.saturating_sub(1));
    let finish = edge(ends, (ends + 1).min(count - 1));
    let mut last = HalfRow { left: 0.0, right: 0.0 };
    // A row between that has nothing on it is one that noise hid.
    let rows = (begins..=ends)
        .map(|i| {
            last = found[i].unwrap_or(last);
            last
        })
        .collect();
    Some(Halves { first: first + begins as f64, ends: (start, finish), rows })
}

impl Halves {
    /// The widest radius, pixels.
    pub(crate) fn widest(&self) -> f64 {
        self.rows.iter().map(|row| row.mean()).fold(0.0, f64::max)
    }

    /// The area both sides share when one is laid on the other, as a share of what they cover
    /// together, 0 … 1.
    pub(crate) fn symmetry(&self) -> f64 {
        let (mut both, mut all) = (0.0, 0.0);
        for row in &self.rows {
            both += row.left.min(row.right).max(0.0);
            all += row.left.max(row.right).max(0.0);
        }
        if all > 0.0 { both / all } else { 0.0 }
    }

    /// Root mean square of half the difference between both sides, pixels.
    pub(crate) fn unlike(&self) -> f64 {
        let square = |row: &HalfRow| (0.5 * (row.left - row.right)).powi(2);
        (self.rows.iter().map(square).sum::<f64>() / self.rows.len().max(1) as f64).sqrt()
    }

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
    fn gap(
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

    /// The same shape without these parts.
    pub(crate) fn without(&self, odd: &[Odd], pierced: &Field, axis: Axis) -> Self {
        let mut cut = self.clone();
        let at = |row: usize, across: f64| {
            let (x, y) = axis.place(self.first + row as f64, across);
            pierced.at(x, y)
        };
        for part in odd {
            let rows = part.rows.0..=part.rows.1;
            match part.kind {
                OddKind::Left => rows.for_each(|i| cut.rows[i].left = cut.rows[i].right),
                OddKind::Right => rows.for_each(|i| cut.rows[i].right = cut.rows[i].left),
                OddKind::Pair => self.bridge(part, &at, &mut cut),
                OddKind::Fork => {}
            }
        }
        // Ends last: rows are counted from the first.
        for part in odd.iter().filter(|part| part.kind == OddKind::Fork) {
            let kept =
                if part.rows.0 == 0 { part.rows.1 + 1..cut.rows.len() } else { 0..part.rows.0 };
            if kept.len() < 8 {
                continue;
            }
            let from = cut.first + kept.start as f64;
            let to = cut.first + kept.end as f64 - 1.0;
            if kept.start > 0 {
                cut.ends.0 = from;
            } else {
                cut.ends.1 = to;
            }
            cut.rows = cut.rows[kept].to_vec();
            cut.first = from;
        }
        cut
    }

    /// The body behind parts on both sides: up to the gap beside it, and straight on where
    /// the parts are joined to it.
    fn bridge(&self, part: &Odd, at: &impl Fn(usize, f64) -> f64, cut: &mut Self) {
        let (from, to) = part.rows;
        let mut known: Vec<(usize, f64)> = vec![(from, self.rows[from].mean())];
        known.extend((from + 1..to).filter_map(|i| {
            let (right, left) = (self.gap(i, 1.0, at)?, self.gap(i, -1.0, at)?);
            Some((i, 0.5 * (right.0 + left.0)))
        }));
        known.push((to, self.rows[to].mean()));
        for pair in known.windows(2) {
            let ((i, a), (j, b)) = (pair[0], pair[1]);
            for row in i..=j {
                let share = (row - i) as f64 / (j - i).max(1) as f64;
                let reach = a + share * (b - a);
                cut.rows[row] = HalfRow { left: reach, right: reach };
            }
        }
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
