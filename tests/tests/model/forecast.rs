//! The forecast against a general minimiser, and its gradient against differences.

use plumpline_core::Firmness;
use plumpline_core::forecast::{Cloth, Energy, Finish, Skin, settle};
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::lbfgs::{lbfgs_forecast, newton_forecast, pear_skin};
use plumpline_tests::shapes::unrounded_skin;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Greatest difference between two shapes, mm.
fn apart(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| (x - y).abs()).fold(0.0, f64::max)
}

/// Both methods minimise one energy from one start, so they must find one shape. L-BFGS
/// (Nocedal and Wright, Numerical Optimization, section 7.2) knows nothing of bands or
/// Hessians. Its line search compares energies, whose rounding ends it near the tolerances
/// given here; the shapes agree to about tolerance over the softest stiffness.
#[test]
fn the_forecast_is_the_minimum_a_general_minimiser_finds() {
    for (rounds, tolerance, agreement) in
        [(25, 1e-6, 1e-5), (80, 1e-5, 1e-3), (160, 1e-5, 1e-3)]
    {
        let (skin, pressure) = pear_skin(rounds);
        let own = newton_forecast(&skin, pressure, 1e-9);
        let other = lbfgs_forecast(&skin, pressure, tolerance);
        let off = apart(&own, &other);
        println!("{rounds} rounds: {off:.2e} mm apart");
        assert!(off < agreement, "{rounds} rounds: {off} mm apart");
        let slack = Energy::new(&skin, pressure).flatten(&skin.slack_shape());
        assert!(apart(&own, &slack) > 1.0, "the start was no answer already");
    }
}

/// Newton's method doubles its right digits at every step near the answer, if its Hessian is
/// the exact one. A ball stretched all over has no kink in its stiffness on the way.
#[test]
fn the_last_steps_of_the_forecast_converge_at_second_order() {
    const ROUNDING: f64 = 1e-11;
    for rounds in [25, 80, 160] {
        let mut ball = SHAPES[0].piece(0.0, 1.0);
        ball.firmness = Firmness::FIRM;
        let (skin, pressure) = unrounded_skin(&ball, rounds);
        let energy = Energy::new(&skin, pressure);
        let start = energy.flatten(&skin.slack_shape());
        let mut residuals: Vec<f64> = std::iter::successors(Some(1e-2), |r| Some(r * 0.5))
            .map(|tolerance| settle(&energy, &start, tolerance).residual)
            .take_while(|residual| *residual > ROUNDING)
            .collect();
        residuals.dedup();
        println!("{rounds} rounds: {residuals:?}");
        assert!(residuals.len() >= 2, "{residuals:?}");
        let last = residuals[residuals.len() - 1];
        residuals.push(settle(&energy, &start, 0.5 * last).residual);
        for pair in residuals.windows(2) {
            assert!(pair[1] < (5.0 * pair[0] * pair[0]).max(ROUNDING), "{residuals:?}");
        }
    }
}

prop_compose! {
    /// Rest sizes as uneven as any, either finish, either start, and a shape near slack.
    fn skins()(
        rounds in 2_usize..30,
    )(
        around_mm in prop::collection::vec(15.0..400.0, rounds),
        height_mm in prop::collection::vec(2.0..12.0, rounds),
        start_mm in prop_oneof![Just(0.0), 15.0..300.0],
        drawn in any::<bool>(),
        along in 0.2..4.0,
        slack in 0.01..1.0,
        moves in prop::collection::vec(-3.0..3.0, 2 * rounds),
        pressure in 0.0..0.01,
    ) -> (Skin, Vec<f64>, f64) {
        let finish = if drawn { Finish::Drawn } else { Finish::Open };
        let cloth = Cloth { along, slack };
        let skin = Skin::new(start_mm, around_mm, height_mm, finish, cloth);
        (skin, moves, pressure)
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 128,
        rng_seed: RngSeed::Fixed(8),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Central differences are exact to second order, and to first across the kink in the
    /// cloth's stiffness.
    #[test]
    fn the_gradient_is_the_slope_of_the_energy((skin, moves, pressure) in skins()) {
        const STEP: f64 = 1e-5;
        let energy = Energy::new(&skin, pressure);
        let mut x = energy.flatten(&skin.slack_shape());
        let held = x.len() - 2;
        for (i, (x, by)) in x.iter_mut().zip(&moves).enumerate() {
            if i != held {
                *x += by;
            }
        }
        let mut gradient = vec![f64::NAN; x.len()];
        let value = energy.value_and_gradient(&x, &mut gradient);
        prop_assert_eq!(value, energy.value(&x));
        let largest = gradient.iter().fold(1.0_f64, |most, g| most.max(g.abs()));
        for i in 0..x.len() {
            let mut at = |by: f64| {
                let kept = x[i];
                x[i] = kept + by;
                let value = energy.value(&x);
                x[i] = kept;
                value
            };
            let slope = if i == held { 0.0 } else { (at(STEP) - at(-STEP)) / (2.0 * STEP) };
            prop_assert!(
                (slope - gradient[i]).abs() < 1e-5 * largest,
                "unknown {}: slope {}, gradient {}, largest {}", i, slope, gradient[i], largest
            );
        }
    }
}
