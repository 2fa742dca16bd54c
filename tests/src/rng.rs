//! A small generator of repeatable random numbers for trials.
//!
//! SplitMix64: G. L. Steele, D. Lea and C. H. Flood, “Fast splittable pseudorandom number
//! generators”, OOPSLA 2014 (constants from memory; any that mix well would do).

/// Repeatable random numbers.
#[derive(Debug, Clone)]
pub struct Rng(u64);

impl Rng {
    /// A generator that always gives the same numbers for one `seed`.
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// Evenly spread between 0 and 1.
    pub fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Evenly spread between `low` and `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Between `low` and `high`, both above 0, evenly spread by ratio.
    pub fn by_ratio(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.unit())
    }

    /// Normally distributed about 0 with standard deviation 1, by Box and Muller's method.
    pub fn normal(&mut self) -> f64 {
        let (u, v) = (self.unit().max(1e-300), self.unit());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }
}
