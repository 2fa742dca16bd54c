//! The background's colour as a smooth surface over the picture: light that falls off.

use nalgebra::{Matrix6, Matrix6x3, Vector6};

/// A quadratic in x and y for each of red, green and blue.
#[derive(Debug, Clone)]
pub(super) struct ColourSurface {
    of: Matrix6x3<f64>,
    size: (usize, usize),
}

impl ColourSurface {
    /// The surface through most of the colours at `places` (indices of pixels), by least
    /// squares that leave out what lies far off (Tukey's biweight, five rounds), and how far
    /// the rest strays from it (1.4826 times the median distance, at least a twentieth of a
    /// grey level). `None` for too few places.
    pub(super) fn fit(
        colours: &[[f32; 3]],
        size: (usize, usize),
        places: &[usize],
    ) -> Option<(Self, f64)> {
        if places.len() < 12 {
            return None;
        }
        let middle = |c: usize| {
            median(&mut places.iter().map(|&i| f64::from(colours[i][c])).collect::<Vec<_>>())
        };
        let mut of = Matrix6x3::zeros();
        for c in 0..3 {
            of[(0, c)] = middle(c);
        }
        let mut surface = Self { of, size };
        let mut spread = 0.0;
        for _ in 0..6 {
            let offs: Vec<f64> =
                places.iter().map(|&i| surface.off(i, colours[i]).max(0.0)).collect();
            spread = (1.4826 * median(&mut offs.clone())).max(0.05);
            let (mut normal, mut right) = (Matrix6::zeros(), Matrix6x3::zeros());
            for (&i, off) in places.iter().zip(&offs) {
                let share = off / (4.685 * spread);
                if share >= 1.0 {
                    continue;
                }
                let weight = (1.0 - share * share).powi(2);
                let terms = surface.terms(i);
                normal += weight * terms * terms.transpose();
                for (c, &level) in colours[i].iter().enumerate() {
                    let along = weight * f64::from(level) * terms;
                    right.set_column(c, &(right.column(c) + along));
                }
            }
            // Where few places remain, the surface stays as level as they allow.
            for k in 0..6 {
                normal[(k, k)] += 1e-9 * places.len() as f64;
            }
            surface.of = normal.cholesky()?.solve(&right);
        }
        Some((surface, spread))
    }

    fn terms(&self, i: usize) -> Vector6<f64> {
        let (width, height) = self.size;
        let x = 2.0 * (i % width) as f64 / width as f64 - 1.0;
        let y = 2.0 * (i / width) as f64 / height as f64 - 1.0;
        Vector6::new(1.0, x, y, x * x, x * y, y * y)
    }

    /// The background's colour at a pixel.
    fn at(&self, i: usize) -> [f32; 3] {
        let colour = self.of.transpose() * self.terms(i);
        [colour[0] as f32, colour[1] as f32, colour[2] as f32]
    }

    /// The background's colour at every pixel.
    pub(super) fn everywhere(&self) -> Vec<[f32; 3]> {
        let (width, height) = self.size;
        let mut out = Vec::with_capacity(width * height);
        for y in 0..height {
            let v = 2.0 * y as f64 / height as f64 - 1.0;
            // Along a row it is a quadratic in x alone.
            let row = [0, 1, 2].map(|c| {
                let of = |k: usize| self.of[(k, c)];
                (of(0) + v * (of(2) + v * of(5)), of(1) + v * of(4), of(3))
            });
            out.extend((0..width).map(|x| {
                let u = 2.0 * x as f64 / width as f64 - 1.0;
                row.map(|(level, slope, bend)| (level + u * (slope + u * bend)) as f32)
            }));
        }
        out
    }

    /// How far a colour is from the background's at a pixel.
    pub(super) fn off(&self, i: usize, colour: [f32; 3]) -> f64 {
        distance(self.at(i), colour)
    }
}

/// Distance of two colours, grey levels.
pub(super) fn distance(a: [f32; 3], b: [f32; 3]) -> f64 {
    let square = |c: usize| f64::from(a[c] - b[c]).powi(2);
    (square(0) + square(1) + square(2)).sqrt()
}

/// The middle one of `values`, which are left in another order; 0 for none.
pub(super) fn median(values: &mut [f64]) -> f64 {
    if values.is_empty() {
        return 0.0;
    }
    let middle = values.len() / 2;
    *values.select_nth_unstable_by(middle, f64::total_cmp).1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gradient_is_followed_through_a_third_of_strangers() {
        let size = (60, 40);
        let light = |i: usize| 200.0 - (i % 60) as f32 + 0.5 * (i / 60) as f32;
        let colours: Vec<[f32; 3]> = (0..2400)
            .map(|i| if i % 3 == 0 { [20.0, 40.0, 10.0] } else { [light(i), 150.0, 90.0] })
            .collect();
        let places: Vec<usize> = (0..2400).collect();
        let (surface, spread) = ColourSurface::fit(&colours, size, &places).expect("a surface");
        assert!(spread < 1.0, "{spread}");
        let everywhere = surface.everywhere();
        assert_eq!(everywhere.len(), 2400);
        for i in [1, 700, 1501, 2399] {
            assert!(distance(surface.at(i), [light(i), 150.0, 90.0]) < 1.0, "{i}");
            assert!(distance(surface.at(i), everywhere[i]) < 1e-3, "{i}");
        }
    }
}
