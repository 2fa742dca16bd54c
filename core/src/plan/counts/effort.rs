//! How long a plan may take.

/// How long a plan may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Effort {
    /// At most [`MOST_FORECASTS`]: what a hand that drags can wait for.
    #[default]
    Draft,
    /// The faithful end is gone down to the last stitch on the true forecast.
    Full,
}

/// Forecasts a plan may solve, the descent to the faithful end apart.
pub const MOST_FORECASTS: usize = 12;
