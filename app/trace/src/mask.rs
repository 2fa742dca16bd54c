//! Which pixels belong to the thing, and how far each lies from its edge.

use image::{GrayImage, Luma};
use imageproc::distance_transform::euclidean_squared_distance_transform;
use imageproc::region_labelling::{Connectivity, connected_components};

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

    fn to_gray(&self, inside: bool) -> GrayImage {
        let bit = |x: u32, y: u32| self.bits[y as usize * self.width + x as usize];
        GrayImage::from_fn(self.width as u32, self.height as u32, |x, y| {
            Luma([if bit(x, y) == inside { 255 } else { 0 }])
        })
    }

    /// Its pieces: the number of each pixel's piece (0 for none), and the area of each by
    /// number. Pieces of the outside are told by `inside: false`.
    fn pieces(&self, inside: bool) -> (Vec<u32>, Vec<usize>) {
        // Inside, pixels hang together by their sides alone, and outside by corners too, so
        // that no line of pixels both joins and divides.
        let by = if inside { Connectivity::Four } else { Connectivity::Eight };
        let labels = connected_components(&self.to_gray(inside), by, Luma([0])).into_raw();
        let most = labels.iter().max().copied().unwrap_or(0) as usize;
        let mut areas = vec![0; most + 1];
        for &label in labels.iter().filter(|&&label| label > 0) {
            areas[label as usize] += 1;
        }
        (labels, areas)
    }

    /// The largest piece alone, and the share of that area which the next largest has.
    pub(crate) fn largest(&self) -> (Self, f64) {
        let (labels, areas) = self.pieces(true);
        let ranked = |but: usize| {
            (1..areas.len()).filter(|&i| i != but).max_by_key(|&i| (areas[i], usize::MAX - i))
        };
        let Some(first) = ranked(0) else { return (self.clone(), 0.0) };
        let next = ranked(first).map_or(0, |i| areas[i]);
        let bits = labels.iter().map(|&label| label as usize == first).collect();
        (Self { bits, ..*self }, next as f64 / areas[first] as f64)
    }

    /// The same with every hole filled: whatever is outside and does not reach the border.
    pub(crate) fn filled(&self) -> Self {
        let (labels, areas) = self.pieces(false);
        let mut open = vec![false; areas.len()];
        for i in self.border() {
            open[labels[i] as usize] = true;
        }
        open[0] = false;
        let bits = labels.iter().map(|&label| !open[label as usize]).collect();
        Self { bits, ..*self }
    }

    /// The places of the pixels along the border of the picture.
    fn border(&self) -> impl Iterator<Item = usize> + use<> {
        let (width, height) = (self.width, self.height);
        let rows = (0..width).flat_map(move |x| [x, (height - 1) * width + x]);
        rows.chain((0..height).flat_map(move |y| [y * width, y * width + width - 1]))
    }

    /// Which of the picture's edges it reaches: upper, right, lower, left.
    pub(crate) fn edges_reached(&self) -> [bool; 4] {
        let (width, height) = (self.width, self.height);
        // Two pixels of border may be dark from the scanner or soft from reduction.
        let row = |y: usize| (2..width - 2).any(|x| self.bits[y * width + x]);
        let column = |x: usize| (2..height - 2).any(|y| self.bits[y * width + x]);
        [row(0), column(width - 1), row(height - 1), column(0)]
    }

    /// Distance of every pixel from the edge, pixels: positive inside.
    pub(crate) fn field(&self) -> Field {
        let squared = |to_inside| {
            euclidean_squared_distance_transform(&self.to_gray(to_inside)).into_raw()
        };
        let (to_inside, to_outside) = (squared(true), squared(false));
        let far = (self.width + self.height) as f64;
        let away = |d2: f64| (d2.sqrt().min(far) - 0.5) as f32;
        let at = |i: usize| {
            if self.bits[i] { away(to_outside[i]) } else { -away(to_inside[i]) }
        };
        let values = (0..self.bits.len()).map(at).collect();
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
