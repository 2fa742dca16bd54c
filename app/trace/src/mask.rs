//! Which pixels belong to the thing, and how far each lies from its edge.

use crate::distance;
use crate::pieces::Pieces;

/// A pixel set; row by row from the upper left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Mask {
    pub(crate) width: usize,
    pub(crate) height: usize,
    pub(crate) bits: Vec<bool>,
}

impl Mask {
    pub(crate) fn from_fn(
        (width, height): (usize, usize),
        holds: impl Fn(usize) -> bool,
    ) -> Self {
        Self { width, height, bits: (0..width * height).map(holds).collect() }
    }

    /// How many pixels it has.
    pub(crate) fn area(&self) -> usize {
        self.bits.iter().filter(|&&bit| bit).count()
    }

    /// The largest piece alone, and the share of that area which the next largest has.
    pub(crate) fn largest(&self) -> (Self, f64) {
        let pieces = Pieces::of(&self.bits, self.width, true);
        let areas = &pieces.areas;
        let ranked = |but: Option<usize>| {
            let others = (0..areas.len()).filter(|&i| Some(i) != but);
            others.max_by_key(|&i| (areas[i], usize::MAX - i))
        };
        let Some(first) = ranked(None) else { return (self.clone(), 0.0) };
        let next = ranked(Some(first)).map_or(0, |i| areas[i]);
        let bits = pieces.taken(self.bits.len(), |piece| piece == first);
        (Self { bits, ..*self }, next as f64 / areas[first] as f64)
    }

    /// The same with every hole filled: whatever is outside and does not reach the border.
    pub(crate) fn filled(&self) -> Self {
        let outside = Pieces::of(&self.bits, self.width, false);
        let open = outside.at_border((self.width, self.height));
        let holes = outside.taken(self.bits.len(), |piece| !open[piece]);
        let bits = self.bits.iter().zip(holes).map(|(&bit, hole)| bit || hole).collect();
        Self { bits, ..*self }
    }

    /// Which of the picture's edges it reaches: upper, right, lower, left.
    pub(crate) fn edges_reached(&self) -> [bool; 4] {
        let (width, height) = (self.width, self.height);
        // Two pixels of border may be dark from the scanner or soft from reduction.
        let within = |side: usize| 2..side.saturating_sub(2);
        let row = |y: usize| within(width).any(|x| self.bits[y * width + x]);
        let column = |x: usize| within(height).any(|y| self.bits[y * width + x]);
        [row(0), column(width - 1), row(height - 1), column(0)]
    }

    /// Distance of every pixel from the edge, pixels: positive inside.
    pub(crate) fn field(&self) -> Field {
        let far = (self.width + self.height) as f32;
        let away = |square: i32| (square as f32).sqrt().min(far) - 0.5;
        let squared = distance::squared(&self.bits, (self.width, self.height));
        let signed = |(&bit, square)| if bit { away(square) } else { -away(square) };
        let values = self.bits.iter().zip(squared).map(signed).collect();
        Field { width: self.width, height: self.height, values }
    }

    /// The middles of the pixels inside that have a neighbour outside, at most about `most`.
    pub(crate) fn rim(&self, most: usize) -> Vec<(f64, f64)> {
        let (width, height) = (self.width, self.height);
        let mut rim = Vec::new();
        for y in 0..height {
            for x in 0..width {
                let i = y * width + x;
                let inner = x > 0 && x + 1 < width && y > 0 && y + 1 < height;
                let outside = |j: usize| !self.bits[j];
                let on_rim = self.bits[i]
                    && (!inner
                        || [i - 1, i + 1, i - width, i + width].into_iter().any(outside));
                if on_rim {
                    rim.push((x as f64, y as f64));
                }
            }
        }
        let every = rim.len().div_ceil(most.max(1)).max(1);
        rim.into_iter().step_by(every).collect()
    }
}

/// A number a pixel, read between the middles of pixels too.
#[derive(Debug, Clone)]
pub(crate) struct Field {
    pub(crate) width: usize,
    pub(crate) height: usize,
    pub(crate) values: Vec<f32>,
}

impl Field {
    /// The value at a place, pixels; beyond the picture that of its border, less the distance
    /// from there.
    pub(crate) fn at(&self, x: f64, y: f64) -> f64 {
        let (right, low) = ((self.width - 1) as f64, (self.height - 1) as f64);
        let (inx, iny) = (x.clamp(0.0, right), y.clamp(0.0, low));
        let beyond = if inx == x && iny == y { 0.0 } else { (x - inx).hypot(y - iny) };
        let (x0, y0) = (inx.floor() as usize, iny.floor() as usize);
        let (x1, y1) = ((x0 + 1).min(self.width - 1), (y0 + 1).min(self.height - 1));
        let (fx, fy) = (inx - x0 as f64, iny - y0 as f64);
        let value = |x: usize, y: usize| f64::from(self.values[y * self.width + x]);
        let upper = value(x0, y0) * (1.0 - fx) + value(x1, y0) * fx;
        let lower = value(x0, y1) * (1.0 - fx) + value(x1, y1) * fx;
        upper * (1.0 - fy) + lower * fy - beyond
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(rows: &[&str]) -> Mask {
        let bits: Vec<bool> =
            rows.iter().flat_map(|row| row.bytes().map(|b| b == b'#')).collect();
        Mask { width: rows[0].len(), height: rows.len(), bits }
    }

    #[test]
    fn the_largest_piece_is_kept_and_its_holes_filled() {
        let mask = drawn(&["#.....", "..####", "..#..#", "..####", "......"]);
        let (largest, next) = mask.largest();
        assert_eq!(largest, drawn(&["......", "..####", "..#..#", "..####", "......"]));
        assert!((next - 0.1).abs() < 1e-12);
        assert_eq!(
            largest.filled(),
            drawn(&["......", "..####", "..####", "..####", "......"])
        );
    }

    #[test]
    fn distances_count_from_the_edge_between_pixels() {
        let mask = drawn(&[".....", ".###.", ".###.", ".###.", "....."]);
        let field = mask.field();
        assert!((field.at(2.0, 2.0) - 1.5).abs() < 1e-6);
        assert!((field.at(1.0, 2.0) - 0.5).abs() < 1e-6);
        assert!((field.at(0.5, 2.0)).abs() < 1e-6);
        assert!((field.at(-3.0, 2.0) + 3.5).abs() < 1e-6);
    }

    #[test]
    fn a_mask_of_nothing_and_of_everything_has_no_edge_to_trip_over() {
        for bit in [false, true] {
            let mask = Mask::from_fn((7, 5), |_| bit);
            assert_eq!(mask.largest().0, mask);
            assert_eq!(mask.filled(), mask);
            assert!(mask.field().values.iter().all(|v| v.is_finite()));
        }
    }
}
