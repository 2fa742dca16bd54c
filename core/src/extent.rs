//! Measures that go in pairs, by name, so that no pair is read the wrong way round.

use serde::Serialize;

/// Height and width of something stuffed, mm.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Extent {
    /// Along the axis.
    pub height: f64,
    /// Where it is widest.
    pub width: f64,
}

/// Width and height of one stitch, mm, unstuffed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StitchSize {
    /// Along the round.
    pub width: f64,
    /// From round to round.
    pub height: f64,
}

/// The least and the greatest that something may be, or is likely to be.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bounds {
    /// The least.
    pub low: f64,
    /// The greatest.
    pub high: f64,
}

impl Bounds {
    /// From `low` to `high`, both within.
    pub const fn new(low: f64, high: f64) -> Self {
        Self { low, high }
    }

    /// Whether `value` lies within; what is no number never does.
    pub fn contains(self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// The nearest to `value` that lies within.
    pub fn nearest(self, value: f64) -> f64 {
        value.clamp(self.low, self.high)
    }

    /// Both ends times `factor`, not below nought.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::new(self.low * factor, self.high * factor)
    }
}
