//! A shape without what no turned shape has.

use super::odd::{Odd, OddKind};
use super::{HalfRow, Halves};
use crate::axis::Axis;
use crate::mask::Field;

/// Of a shape that parts in two at an end, the body begins again within this share of the
/// height beyond.
const ROOT: f64 = 0.3;
/// A side that comes so far back is no longer the body, pixels.
const RISES: f64 = 2.0;
/// What remains has at least so many rows.
const LEAST_ROWS: usize = 8;

impl Halves {
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
        // Ends last, the lower one first: rows are counted from the upper.
        let forks = odd.iter().filter(|part| part.kind == OddKind::Fork);
        for part in forks.clone().filter(|part| part.rows.0 > 0) {
            let turned = self.turned_over();
            let last = self.rows.len() - 1;
            let end = turned.end_of_body(last - part.rows.0, &|row, x| at(last - row, x));
            cut = cut.turned_over().begun_at(&end).turned_over();
        }
        for part in forks.filter(|part| part.rows.0 == 0) {
            cut = cut.begun_at(&self.end_of_body(part.rows.1, &at));
        }
        cut.trimmed().turned_over().trimmed().turned_over()
    }

    /// The same upside down.
    fn turned_over(&self) -> Self {
        let mut rows = self.rows.clone();
        rows.reverse();
        Self {
            first: -(self.first + self.rows.len() as f64 - 1.0),
            ends: (-self.ends.1, -self.ends.0),
            rows,
        }
    }

    /// Radius by row of the body's own end between two parts that stand on it, the last row of
    /// whose gap on the axis is `gap`: what is seen of it between them, and straight on to
    /// where it is seen again beside them.
    fn end_of_body(&self, gap: usize, at: &impl Fn(usize, f64) -> f64) -> Vec<(f64, f64)> {
        let last = self.rows.len() - 1;
        let inside = |row: usize, across: f64| at(row, across) > 0.0;
        let Some(begins) = (gap + 1..=last).find(|&row| inside(row, 0.0)) else {
            return Vec::new();
        };
        let (here, before) = (at(begins, 0.0), at(begins - 1, 0.0));
        let top = begins as f64 - (here / (here - before).max(1e-9)).clamp(0.0, 1.0);
        let mut end = vec![(top, 0.0)];
        let mut sides = [begins; 2];
        let reach = self.rows[begins].mean().max(0.0) as usize;
        for across in 1..reach {
            for (side, sign) in sides.iter_mut().zip([-1.0, 1.0]) {
                let x = sign * across as f64;
                while *side > 0 && inside(*side - 1, x) {
                    *side -= 1;
                }
                while *side < last && !inside(*side, x) {
                    *side += 1;
                }
            }
            let deep = 0.5 * (sides[0] + sides[1]) as f64;
            let deepest = end[end.len() - 1].0;
            if sides.iter().any(|&side| (side as f64) < deepest - RISES) {
                break;
            }
            end.push((deep.max(deepest), across as f64));
        }
        let (deep, wide) = end[end.len() - 1];
        // Where a part's outer side meets the body it is narrowest.
        let mut root = (0, f64::INFINITY);
        let far = deep + ROOT * self.rows.len() as f64;
        for row in deep.ceil() as usize..=last.min(far as usize) {
            let reach = self.rows[row].mean();
            if reach < root.1 {
                root = (row, reach);
            } else if reach > root.1 + RISES && root.1 >= wide {
                end.push((root.0 as f64, root.1));
                break;
            }
        }
        end
    }

    /// The same shape with this beginning: radius by row.
    fn begun_at(&self, end: &[(f64, f64)]) -> Self {
        let (Some(&(top, _)), Some(&(deep, _))) = (end.first(), end.last()) else {
            return self.clone();
        };
        let kept = top.ceil() as usize;
        if kept + LEAST_ROWS > self.rows.len() {
            return self.clone();
        }
        let radius = |row: f64| -> Option<f64> {
            let next = end.partition_point(|&(at, _)| at <= row);
            let ((from, a), (to, b)) = (end[next.checked_sub(1)?], *end.get(next)?);
            Some(a + (b - a) * (row - from) / (to - from).max(1e-9))
        };
        let mut rows = self.rows.clone();
        for (i, row) in rows.iter_mut().enumerate().take_while(|(i, _)| (*i as f64) < deep) {
            if let Some(reach) = radius(i as f64) {
                *row = HalfRow { left: reach, right: reach };
            }
        }
        Self {
            first: self.first + kept as f64,
            ends: (self.first + top, self.ends.1),
            rows: rows.split_off(kept),
        }
    }

    /// The same without rows at its beginning that are on neither side of the axis, which a
    /// part that was cut off has left.
    fn trimmed(&self) -> Self {
        let empty = self.rows.iter().take_while(|row| row.mean() <= 0.0).count();
        if empty == 0 || empty + LEAST_ROWS > self.rows.len() {
            return self.clone();
        }
        let (before, here) = (self.rows[empty - 1].mean(), self.rows[empty].mean());
        let first = self.first + empty as f64;
        Self {
            first,
            ends: (first - here / (here - before).max(1e-9), self.ends.1),
            rows: self.rows[empty..].to_vec(),
        }
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
