//! How long a plan may take.

/// How long a plan may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Effort {
    /// At most [`MOST_FORECASTS`]: what a hand that drags can wait for.
    #[default]
    Draft,
    /// What may be waited for when an edit ends: patterns are sought further while none is near
    /// enough, and the faithful end is gone down to the last stitch on the true forecast.
    Full,
}

/// Forecasts a draft may solve.
pub const MOST_FORECASTS: usize = 12;
