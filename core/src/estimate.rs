//! Estimates: yarn, stuffing and time from the stitches and the forecast.

use crate::piece::{Firmness, Habits};

/// How far a yarn estimate may be off either way: one measured source (FACTS.md section 7).
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
    pub fn range(&self) -> (f64, f64) {
        (self.metres * (1.0 - YARN_TOLERANCE), self.metres * (1.0 + YARN_TOLERANCE))
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
    pub stuffing_g: (f64, f64),
    /// Working time, minutes.
    pub minutes: f64,
}

/// The estimate for rounds of `(count, yarn)` whose forecast holds `volume_ml`.
///
/// Yarn counts every single crochet at the maker's length; a decrease counts as the one
/// stitch it leaves. Stuffing scales with firmness, medium being what the maker stated.
pub fn estimate(
    rounds: impl Iterator<Item = (u32, usize)>,
    stitch_width_mm: f64,
    volume_ml: f64,
    firmness: Firmness,
    habits: &Habits,
) -> Estimate {
    let mut by_yarn = std::collections::BTreeMap::<usize, u32>::new();
    for (count, yarn) in rounds {
        *by_yarn.entry(yarn).or_default() += count;
    }
    let per_stitch_m = habits.yarn_per_stitch * stitch_width_mm / 1000.0;
    let yarn: Vec<YarnUse> = by_yarn
        .into_iter()
        .map(|(yarn, stitches)| YarnUse {
            yarn,
            stitches,
            metres: f64::from(stitches) * per_stitch_m,
        })
        .collect();
    let stitches = yarn.iter().map(|y| y.stitches).sum::<u32>();
    let pack = packing(firmness);
    let (low, high) = habits.stuffing_g_per_litre;
    let per_g = volume_ml / 1000.0 * pack;
    Estimate {
        stitches,
        yarn,
        volume_ml,
        stuffing_g: (low * per_g, high * per_g),
        minutes: f64::from(stitches) / habits.stitches_per_minute,
    }
}

/// How densely a firmness is packed against medium: 0.8 soft, 1 medium, 1.2 firm.
///
/// A filling trade's figures for cushions (soft 80–90 %, firm 110–120 % of medium; FACTS.md
/// section 7), joined by a straight line in strain.
fn packing(firmness: Firmness) -> f64 {
    (1.0 + 0.2 * (firmness.0 - Firmness::MEDIUM.0) / 0.03).clamp(0.7, 1.5)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn yarn_is_counted_by_colour_and_adds_up() {
        let rounds = [(6, 0), (12, 0), (18, 2), (12, 0)];
        let made =
            estimate(rounds.into_iter(), 5.0, 200.0, Firmness::MEDIUM, &Habits::default());
        assert_eq!(made.stitches, 48);
        assert_eq!(
            made.yarn.iter().map(|y| (y.yarn, y.stitches)).collect::<Vec<_>>(),
            [(0, 30), (2, 18)]
        );
        assert!((made.yarn[0].metres - 1.5).abs() < 1e-12);
        assert!(
            (made.stuffing_g.0 - 3.2).abs() < 1e-9 && (made.stuffing_g.1 - 7.0).abs() < 1e-9
        );
        assert!((made.minutes - 4.0).abs() < 1e-12);
    }
}
