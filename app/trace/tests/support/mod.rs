//! Pictures whose truth is known: turned shapes by formula, drawn with everything that a
//! photograph does to them, and how far a traced outline lies from the truth.

#![expect(unreachable_pub, reason = "two programs share it")]

mod camera;
mod shapes;

pub use camera::{Conditions, OddShape, draw};
pub use shapes::{Shape, shapes};

use plumpline_core::{Outline, Rz};

/// Chance that is the same every time (SplitMix64: Steele, Lea and Flood, 2014).
#[derive(Debug, Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// Evenly from `low` to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// About 0 with standard deviation 1 (the sum of twelve, less six).
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.between(0.0, 1.0)).sum::<f64>() - 6.0
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }
}

/// Root mean square distance between an outline and a shape of `height` mm, each measured at
/// 400 places evenly along the one from the other; the larger of the two. mm.
pub fn off_mm(outline: &Outline, shape: &Shape, height: f64) -> f64 {
    let truth = evenly(&shape.line(height), 2000);
    let traced = outline.profile(2000).places();
    let one_way = |from: &[Rz], to: &[Rz]| {
        let nearest = |p: &Rz| to.iter().map(|q| p.distance(*q)).fold(f64::INFINITY, f64::min);
        let some = from.iter().step_by(5);
        let count = some.len() as f64;
        (some.map(|p| nearest(p).powi(2)).sum::<f64>() / count).sqrt()
    };
    one_way(&truth, &traced).max(one_way(&traced, &truth))
}

fn evenly(line: &[Rz], count: usize) -> Vec<Rz> {
    let mut along = vec![0.0];
    for pair in line.windows(2) {
        along.push(along[along.len() - 1] + pair[0].distance(pair[1]));
    }
    let length = along[along.len() - 1];
    let mut i = 0;
    (0..=count)
        .map(|k| {
            let s = length * k as f64 / count as f64;
            while i + 2 < along.len() && along[i + 1] < s {
                i += 1;
            }
            let t = ((s - along[i]) / (along[i + 1] - along[i]).max(1e-12)).clamp(0.0, 1.0);
            let (a, b) = (line[i], line[i + 1]);
            Rz::new(a.r + t * (b.r - a.r), a.z + t * (b.z - a.z))
        })
        .collect()
}
