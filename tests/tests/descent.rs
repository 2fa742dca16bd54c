//! The descent to the faithful end: never further from the outline than what a drag shows,
//! and never more forecasts than either may take.

use plumpline_core::counts::{Holds, MOST_FORECASTS, skin_of};
use plumpline_core::forecast::{Energy, Skin, pressure_for_skin, settle, settled_gradient};
use plumpline_core::{Piece, plan, plan_draft};
use plumpline_tests::any::any_piece;
use plumpline_tests::fit_set::SHAPES;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// What less slack cloth may be worth in likely fit, stitch widths.
const SLACK_STITCHES: f64 = 0.04;

/// One stitch more or fewer, from the settled shape: how a dragged count is answered.
#[test]
fn a_changed_stitch_settles_at_once() {
    let mut worst = 0;
    for shape in &SHAPES {
        let piece = shape.piece(0.0, 1.0);
        let plan = plan(&piece).expect("the set can be planned");
        let skin = |counts: &[u32]| skin_of(&piece, plan.start, counts, &Holds::default());
        let pressure =
            |skin: &Skin| pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
        let counts = plan.counts();
        let settled = skin(&counts);
        let energy = Energy::new(&settled, pressure(&settled));
        let start = energy.flatten(&settled.slack_shape());
        let start = settle(&energy, &start, settled_gradient(&settled)).nodes;
        for i in 0..counts.len() - 1 {
            for by in [-1, 1] {
                let mut counts = counts.clone();
                counts[i] = counts[i].saturating_add_signed(by);
                let skin = skin(&counts);
                let energy = Energy::new(&skin, pressure(&skin));
                let start = energy.flatten(&start);
                let settled = settle(&energy, &start, settled_gradient(&skin));
                assert!(settled.is_settled(), "{} round {}", shape.name, i + 1);
                assert!(
                    settled.gradients <= 25,
                    "{} round {} {by:+}: {} gradients",
                    shape.name,
                    i + 1,
                    settled.gradients
                );
                worst = worst.max(settled.gradients);
            }
        }
    }
    println!("at most {worst} gradients");
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 96,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x0070_6f6c),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// The answer a drag shows is gone on from.
    #[test]
    fn the_descent_never_leads_away(piece in any_piece()) {
        let piece = Piece { simplicity: Some(0.0), ..piece };
        let full = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        let draft = plan_draft(&piece).expect("a valid outline of 2 to 300 rounds");
        let (full, draft) = (full.likely_rms_stitches, draft.likely_rms_stitches);
        // What is gone down is distance and what slack cloth costs together.
        prop_assert!(full <= draft + SLACK_STITCHES, "{} → {}", draft, full);
    }

    #[test]
    fn no_plan_takes_more_forecasts_than_it_may(piece in any_piece()) {
        let draft = plan_draft(&piece).expect("a valid outline of 2 to 300 rounds");
        prop_assert!((1..=MOST_FORECASTS).contains(&draft.forecasts), "{}", draft.forecasts);
        let usual = Piece { simplicity: None, ..piece };
        let usual = plan_draft(&usual).expect("a valid outline of 2 to 300 rounds");
        prop_assert!((1..=MOST_FORECASTS).contains(&usual.forecasts), "{}", usual.forecasts);
    }
}
