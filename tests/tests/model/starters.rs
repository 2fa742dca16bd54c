//! Any starter at any size it allows: as large as asked, and a plan of every round.

use plumpline_core::starter::{Dimensions, LEAST_MM, Starter, Third};
use plumpline_core::{Gauge, plan};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// A starter and dimensions within its ranges, sizes as often small as large.
fn any() -> impl Strategy<Value = (Starter, Dimensions)> {
    let starter = prop::sample::select(Starter::ALL.to_vec());
    let share = 0.0..=1.0_f64;
    (starter, LEAST_MM.ln()..400.0_f64.ln(), share.clone(), share).prop_map(
        |(starter, log_width, tall, third)| {
            let width = log_width.exp();
            let between = |(low, high): (f64, f64), share: f64| low + share * (high - low);
            let heights = starter.heights_mm(width);
            let height = between((heights.low, heights.high), tall);
            let mut size = Dimensions::new(height, width);
            if let Some((low, _, high)) = starter.thirds_mm(width) {
                let mm = Some(between((low, high), third));
                match starter.third() {
                    Some(Third::Neck) => size.neck_mm = mm,
                    _ => size.length_mm = mm,
                }
            }
            (starter, size)
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 128,
        rng_seed: RngSeed::Fixed(0x7374_6172),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn any_allowed_size_is_met_and_can_be_worked((starter, size) in any()) {
        let heights = starter.heights_mm(size.width_mm);
        prop_assume!(heights.low <= heights.high);
        let piece = starter.piece(&size, Gauge::default()).expect("a size it allows");
        let profile = piece.outline.profile(3000);
        let (height, width) = (profile.height_mm(), 2.0 * profile.widest_mm());
        prop_assert!((height - size.height_mm).abs() < 0.1, "{height} for {size:?}");
        prop_assert!((width - size.width_mm).abs() < 0.1, "{width} for {size:?}");
        if let Some(length) = size.length_mm {
            prop_assert!((piece.straight_mm + width - length).abs() < 0.1);
        }
        if let Some(neck) = size.neck_mm {
            // The curve may swing a little inside its knot.
            let narrow = profile.stations.iter().filter(|s| s.at.z > 0.8 * height);
            let got = 2.0 * narrow.fold(f64::INFINITY, |least, s| s.at.r.min(least));
            prop_assert!((got - neck).abs() < 0.06 * size.width_mm, "{got} for {size:?}");
        }
        let plan = plan(&piece).map_err(|e| TestCaseError::fail(format!("{e} for {size:?}")))?;
        prop_assert!(plan.rounds.len() >= 2, "{size:?}");
    }

    /// Numbers of any kind are answered, never with a panic.
    #[test]
    fn any_numbers_are_answered(
        starter in prop::sample::select(Starter::ALL.to_vec()),
        height in prop::num::f64::ANY,
        width in prop_oneof![prop::num::f64::ANY, 0.0..2000.0_f64],
        third in prop::option::of(prop::num::f64::ANY),
    ) {
        let size = Dimensions {
            neck_mm: third.filter(|_| starter == Starter::Float),
            length_mm: third.filter(|_| starter == Starter::Bean),
            ..Dimensions::new(height, width)
        };
        if let Err(error) = starter.shape(&size) {
            prop_assert_eq!(error.to_string().lines().count(), 1);
        }
    }
}
