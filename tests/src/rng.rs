//! Repeatable random numbers for trials.

/// A generator that gives the same numbers for one seed, in the spreads that trials ask for.
#[derive(Debug, Clone)]
pub struct Rng(fastrand::Rng);

impl Rng {
    /// A generator that always gives the same numbers for one `seed`.
    pub fn new(seed: u64) -> Self {
        Self(fastrand::Rng::with_seed(seed))
    }

    /// Evenly spread between 0 and 1.
    pub fn unit(&mut self) -> f64 {
        self.0.f64()
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
