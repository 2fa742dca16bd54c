//! Placement, measured: how even the gaps are, and how clear each round's shaping keeps of
//! the shaping below it, turned and stacked.

use plumpline_core::{Spread, plan};
use plumpline_tests::any::any_piece;
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::stacking::{Stacking, stacking};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Over the fit set at the default and at either end of simplicity.
#[test]
fn turned_rounds_keep_clear_of_the_shaping_below_and_stacked_ones_do_not() {
    let mut all = [Stacking::default(); 2];
    println!(
        "{:12} {:>5} {:>8} {:>8} {:>8} {:>5}",
        "", "pairs", "stacked", "turned", "best", "gaps"
    );
    for shape in &SHAPES {
        for simplicity in [Some(0.0), None, Some(1.0)] {
            let measured = [Spread::Stacked, Spread::Turned].map(|spread| {
                let mut piece = shape.piece(simplicity, 1.0);
                piece.spread = spread;
                let plan = plan(&piece).expect("the set can be planned");
                stacking(&plan, piece.rules.spiral_drift)
            });
            let [stacked, turned] = measured;
            println!(
                "{:12} {:5} {:8.3} {:8.3} {:8.3} {:5}",
                format!(
                    "{} {}",
                    shape.name,
                    simplicity.map_or("usual".into(), |s| s.to_string())
                ),
                turned.pairs,
                stacked.mean(),
                turned.mean(),
                turned.best_mean(),
                turned.gap_spread.max(stacked.gap_spread),
            );
            assert_eq!(stacked.pairs, turned.pairs);
            all = [all[0].and(stacked), all[1].and(turned)];
        }
    }
    let [stacked, turned] = all;
    println!(
        "{:12} {:5} {:8.3} {:8.3} {:8.3} {:5}",
        "all",
        turned.pairs,
        stacked.mean(),
        turned.mean(),
        turned.best_mean(),
        turned.gap_spread
    );
    assert!(turned.gap_spread <= 1 && stacked.gap_spread <= 1, "{turned:?}, {stacked:?}");
    assert!(turned.mean() >= 1.8 * stacked.mean(), "{turned:?}, {stacked:?}");
    assert!(turned.apart >= 0.93 * turned.best, "{turned:?}");
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 64,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x7477_6973),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Whatever the outline, the drift and the way of spreading.
    #[test]
    fn gaps_of_a_round_differ_by_at_most_one(
        piece in any_piece(),
        drift in -1.0..1.0_f64,
        stacked in any::<bool>(),
    ) {
        let mut piece = piece;
        piece.rules.spiral_drift = drift;
        piece.spread = if stacked { Spread::Stacked } else { Spread::Turned };
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        prop_assert!(stacking(&plan, drift).gap_spread <= 1);
    }
}
