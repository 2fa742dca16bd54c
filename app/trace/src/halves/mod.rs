//! How far the thing reaches to either side of its axis, row by row along it, what of it no
//! turned shape has ([`odd`]), and the same without that ([`cut`]).

mod cut;
mod odd;

pub(crate) use odd::Odd;
pub use odd::OddKind;

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
}
