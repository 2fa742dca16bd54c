//! The polish: never further from the outline than the counts it began with, and never more
//! forecasts than it may.

use plumpline_core::counts::{Holds, MOST_FORECASTS, Rounds, Targets, fit_of, skin_of};
use plumpline_core::forecast::{Energy, settle, settled_gradient};
use plumpline_core::{Piece, Plan, plan};
use plumpline_tests::any::{any_piece, rest_of};
use plumpline_tests::fit_set::SHAPES;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// RMS distance of the plan, and of the programme's own counts in as many rounds, stitches.
fn polished_and_not(piece: &Piece, plan: &Plan) -> (f64, f64) {
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let targets = Targets::new(piece, &profile, &rest, plan.rounds.len());
    let (counts, _) = Rounds::new(piece, targets).solve();
    let polished = plan.fit.expect("it has an outline").rms_stitches;
    (polished, fit_of(piece, &profile, &rest, &counts).rms_stitches)
}

#[test]
fn the_polish_brings_every_shape_of_the_set_closer() {
    for shape in &SHAPES {
        let piece = shape.piece(0.0, 1.0);
        let plan = plan(&piece).expect("the set can be planned");
        let (polished, not) = polished_and_not(&piece, &plan);
        println!("{:10} {not:.4} → {polished:.4}, {} forecasts", shape.name, plan.forecasts);
        assert!(polished <= not, "{}: {not} → {polished}", shape.name);
    }
}

/// One stitch more or fewer, from the settled shape: how a dragged count is answered.
#[test]
fn a_changed_stitch_settles_at_once() {
    let mut worst = 0;
    for shape in &SHAPES {
        let piece = shape.piece(0.0, 1.0);
        let plan = plan(&piece).expect("the set can be planned");
        let rest = rest_of(&piece);
        let skin = |counts: &[u32]| skin_of(&piece, plan.start, counts, &Holds::default());
        let counts = plan.counts();
        let settled = skin(&counts);
        let energy = Energy::new(&settled, rest.pressure);
        let start = energy.flatten(&settled.slack_shape());
        let start = settle(&energy, &start, settled_gradient(&settled)).nodes;
        for i in 0..counts.len() - 1 {
            for by in [-1, 1] {
                let mut counts = counts.clone();
                counts[i] = counts[i].saturating_add_signed(by);
                let skin = skin(&counts);
                let energy = Energy::new(&skin, rest.pressure);
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

    #[test]
    fn the_polish_never_leads_away(piece in any_piece()) {
        let mut piece = piece;
        piece.ease = 0.0;
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        let (polished, not) = polished_and_not(&piece, &plan);
        // The two are settled and laid on the outline from other starts.
        prop_assert!(polished <= not + 3e-4, "{} → {}", not, polished);
    }

    #[test]
    fn no_plan_takes_more_forecasts_than_it_may(piece in any_piece()) {
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        prop_assert!((1..=MOST_FORECASTS).contains(&plan.forecasts), "{}", plan.forecasts);
    }
}
