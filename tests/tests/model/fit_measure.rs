//! The fit against brute force: every point against every segment, every shift.

use plumpline_core::plan;
use plumpline_tests::any::any_piece;
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::measure::brute_rms;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

#[test]
fn over_the_fit_set_the_measure_is_exact() {
    for shape in &SHAPES {
        let plan = plan(&shape.piece(None, 1.0)).expect("the set can be planned");
        let fit = plan.fit.expect("it has an outline").rms_stitches;
        let (brute, _) = brute_rms(&plan.forecast, &plan.outline);
        let brute = brute / plan.stitch_mm.width;
        assert!((fit - brute).abs() < 1e-3, "{}: {fit}, by brute force {brute}", shape.name);
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 64,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x6272_7574),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Never less than the least there is; and as little, of outlines without a lip (which
    /// brute force jumps across) that the forecast comes near.
    #[test]
    fn the_measure_finds_the_nearest_places_and_the_best_shift(piece in any_piece()) {
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        let fit = plan.fit.expect("it has an outline").rms_stitches;
        let brute = brute_rms(&plan.forecast, &plan.outline).0 / plan.stitch_mm.width;
        prop_assert!(fit > 0.95 * brute - 1e-2, "{}, by brute force {}", fit, brute);
        let rises = piece.outline.knots.windows(2).all(|k| k[1].height_mm > k[0].height_mm);
        if rises && brute < 0.5 {
            prop_assert!(fit < brute + 1e-2, "{}, by brute force {}", fit, brute);
        }
    }
}
