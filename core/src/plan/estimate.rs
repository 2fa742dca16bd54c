//! Estimates: yarn, stuffing and time from the stitches and the forecast.

use crate::extent::{Bounds, StitchSize};
use crate::piece::{Firmness, Habits};

/// How far a yarn estimate may be off either way: it rests on one published set of swatches,
/// 785.5 in of yarn in 5 × 5 in of single crochet.
pub const YARN_TOLERANCE: f64 = 0.20;

/// Yarn one yarn of the project will take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct YarnUse {
    /// Index into the project's yarns.
    pub yarn: usize,
    /// Single crochets worked in it (an increase is two).
    pub stitches: u32,
    /// Metres expected.
    pub metres: f64,
}

impl YarnUse {
    /// Metres at the low and high end of the estimate.
    pub fn range(&self) -> Bounds {
        Bounds::new(1.0 - YARN_TOLERANCE, 1.0 + YARN_TOLERANCE).times(self.metres)
    }
}

/// What a piece needs. All of it estimated.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimate {
    /// Stitches of all rounds together, as their counts add up.
    pub stitches: u32,
    /// Yarn, in the order of the project's yarns; only those used.
    pub yarn: Vec<YarnUse>,
    /// Volume inside the forecast, ml.
    pub volume_ml: f64,
    /// Stuffing, g, least and most.
    pub stuffing_g: Bounds,
    /// Working time, minutes.
    pub minutes: f64,
}

impl Estimate {
    /// What `copies` of the piece need together.
    #[must_use]
    pub fn times(&self, copies: u32) -> Self {
        let n = f64::from(copies);
        let all = |used: &YarnUse| YarnUse {
            stitches: used.stitches.saturating_mul(copies),
            metres: n * used.metres,
            ..*used
        };
        Self {
            stitches: self.stitches.saturating_mul(copies),
            yarn: self.yarn.iter().map(all).collect(),
            volume_ml: n * self.volume_ml,
            stuffing_g: self.stuffing_g.times(n),
            minutes: n * self.minutes,
        }
    }
}

/// What an estimate reads of one round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worked {
    /// Stitches at its end.
    pub count: u32,
    /// Its yarn.
    pub yarn: usize,
    /// Area of one of its stitches, mm².
    pub stitch_mm2: f64,
    /// Slip stitches and chains between it and the next.
    pub joining: u32,
}

/// The estimate for `rounds` whose forecast holds `volume_ml`; `stitch_mm` is the swatch's
/// stitch, width and height.
///
/// Yarn counts every single crochet at the maker's length; a decrease counts as the one
/// stitch it leaves. Other kinds take yarn by their area: the same published swatches of
/// 5 × 5 in took 785.5 in in single, 802 in half double and 790 in double crochet. Chains take
/// half a stitch each (25.5 in for a 5 in chain against 53 in for a row, there). Stuffing goes
/// by the maker's packing at that firmness.
pub fn estimate(
    rounds: impl Iterator<Item = Worked>,
    stitch_mm: StitchSize,
    volume_ml: f64,
    firmness: Firmness,
    habits: &Habits,
) -> Estimate {
    let mut by_yarn = std::collections::BTreeMap::<usize, YarnUse>::new();
    let per_stitch_m = habits.yarn_per_stitch * stitch_mm.width / 1000.0;
    let mut joining = 0;
    for round in rounds {
        let used = by_yarn.entry(round.yarn).or_insert(YarnUse {
            yarn: round.yarn,
            stitches: 0,
            metres: 0.0,
        });
        let area = round.stitch_mm2 / (stitch_mm.width * stitch_mm.height);
        used.stitches += round.count;
        used.metres += per_stitch_m * f64::from(round.count) * area;
        used.metres += per_stitch_m * CHAIN_YARN * f64::from(round.joining);
        joining += round.joining;
    }
    let yarn: Vec<YarnUse> = by_yarn.into_values().collect();
    let stitches = yarn.iter().map(|y| y.stitches).sum::<u32>();
    let grams = habits.stuffing_g_per_litre.at(firmness) * volume_ml / 1000.0;
    Estimate {
        stitches,
        yarn,
        volume_ml,
        stuffing_g: Bounds::new(grams / STUFFING_SPREAD, grams * STUFFING_SPREAD),
        minutes: f64::from(stitches + joining) / habits.stitches_per_minute,
    }
}

/// Yarn of a chain or slip stitch against a single crochet.
const CHAIN_YARN: f64 = 25.5 / 53.0;

/// What hands differ by in how densely they pack at one word of firmness, as a factor. Common
/// practice, no source.
pub const STUFFING_SPREAD: f64 = 1.25;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn yarn_is_counted_by_colour_and_adds_up() {
        let worked = |(count, yarn)| Worked { count, yarn, stitch_mm2: 5.0 * 4.0, joining: 0 };
        let rounds = [(6, 0), (12, 0), (18, 2), (12, 0)].map(worked);
        let habits = Habits::default();
        let size = StitchSize { width: 5.0, height: 4.0 };
        let made = estimate(rounds.into_iter(), size, 200.0, Firmness::MEDIUM, &habits);
        assert_eq!(made.stitches, 48);
        assert_eq!(
            made.yarn.iter().map(|y| (y.yarn, y.stitches)).collect::<Vec<_>>(),
            [(0, 30), (2, 18)]
        );
        assert!((made.yarn[0].metres - 1.5).abs() < 1e-12);
        // 35 g a litre, a quarter more or less.
        assert!(
            (made.stuffing_g.low - 5.6).abs() < 1e-9
                && (made.stuffing_g.high - 8.75).abs() < 1e-9
        );
        assert!((made.minutes - 4.0).abs() < 1e-12);
    }
}
