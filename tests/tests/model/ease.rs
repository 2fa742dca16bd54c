//! The trade-off of ease over the fit set: what each step costs and what it saves.

use std::ops::ControlFlow;

use plumpline_core::ease::{EaseStep, STEPS, ease_steps};
use plumpline_core::placement::Stitch;
use plumpline_core::{Plan, plan};
use plumpline_tests::any::any_piece;
use plumpline_tests::fit_set::SHAPES;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Shaping rounds of a plan, the ring excluded, and how many of them are a single repeat, at
/// least twice over, or the same stitch in every stitch.
fn shaping(plan: &Plan) -> (usize, usize) {
    let shaped = plan.rounds.iter().skip(1).map(|round| {
        let stitches: Vec<Stitch> = round.placement.stitches().collect();
        let of = |kind| stitches.iter().filter(|&&s| s == kind).count();
        (of(Stitch::Plain) < stitches.len()).then(|| {
            // A repeat of the list of stitches that is shorter than it.
            let n = stitches.len();
            (1..n).any(|period| {
                n.is_multiple_of(period)
                    && stitches[..period].iter().filter(|&&s| s != Stitch::Plain).count() == 1
                    && (period..n).all(|i| stitches[i] == stitches[i - period])
            })
        })
    });
    let found: Vec<bool> = shaped.flatten().collect();
    (found.len(), found.iter().filter(|&&simple| simple).count())
}

fn steps(shape: &plumpline_tests::fit_set::Shape) -> Vec<EaseStep> {
    ease_steps(&shape.piece(0.3, 1.0), &mut |_| ControlFlow::Continue(()))
        .expect("the set can be planned")
}

fn rms(step: &EaseStep) -> f64 {
    step.fit.expect("it has an outline").rms_stitches
}

#[test]
fn full_ease_is_simple_and_still_close() {
    let (mut all, mut simple) = (0, 0);
    for shape in &SHAPES {
        let plan = plan(&shape.piece(1.0, 1.0)).expect("the set can be planned");
        let fit = plan.fit.expect("it has an outline");
        let (rounds, single) = shaping(&plan);
        println!("{:10} {single}/{rounds} rms {:.3}", shape.name, fit.rms_stitches);
        assert!(fit.rms_stitches <= 0.25, "{}: {fit:?}", shape.name);
        (all, simple) = (all + rounds, simple + single);
    }
    println!("{simple} of {all}, {:.3}", f64::from(simple as u32) / f64::from(all as u32));
    assert!(simple * 100 >= all * 95, "{simple} of {all}");
}

#[test]
fn every_step_of_ease_lies_between_the_faithful_and_the_easy_end() {
    for shape in &SHAPES {
        let steps = steps(shape);
        assert_eq!(steps.len(), STEPS as usize);
        for step in &steps {
            println!(
                "{:10} {:.1} rms {:.4} simple {:.3} distinct {}",
                shape.name,
                step.ease,
                rms(step),
                step.simple_share,
                step.distinct_lines
            );
        }
        let (first, last) = (&steps[0], &steps[steps.len() - 1]);
        for step in &steps {
            let between = first.simple_share..=last.simple_share;
            assert!(between.contains(&step.simple_share), "{} at {}", shape.name, step.ease);
            assert!(step.distinct_lines <= first.distinct_lines, "{}", shape.name);
        }
    }
}

#[test]
fn no_step_of_ease_is_worse_in_fit_and_in_simple_rounds_at_once() {
    let scales = [0.7, 1.0, 1.6];
    for (shape, scale) in SHAPES.iter().flat_map(|s| scales.map(|scale| (s, scale))) {
        let steps = ease_steps(&shape.piece(0.3, scale), &mut |_| ControlFlow::Continue(()))
            .expect("the set can be planned");
        never_both_worse(shape.name, &steps);
    }
}

/// Whatever step the slider is moved from and to.
fn never_both_worse(name: &str, steps: &[EaseStep]) {
    for (i, from) in steps.iter().enumerate() {
        for to in &steps[i + 1..] {
            let less_close = rms(to) > rms(from) + 1e-12;
            let less_simple = to.simple_share < from.simple_share;
            let (a, b) = (from.ease, to.ease);
            assert!(!(less_close && less_simple), "{name}, {a} to {b}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 48,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x6561_7365),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn no_step_is_both_worse_on_any_outline(piece in any_piece()) {
        let steps = ease_steps(&piece, &mut |_| ControlFlow::Continue(()));
        never_both_worse("any", &steps.expect("a valid outline of 2 to 300 rounds"));
    }
}

#[test]
fn the_faithful_end_is_as_close_as_whole_stitches_come() {
    let faithful: Vec<f64> = SHAPES.iter().map(|shape| rms(&steps(shape)[0])).collect();
    let mean = faithful.iter().sum::<f64>() / faithful.len() as f64;
    assert!(faithful.iter().all(|&rms| rms <= 0.065), "{faithful:?}");
    assert!(mean <= 0.028, "{mean}");
}

#[test]
fn the_steps_can_be_broken_off() {
    let go_on =
        &mut |step| if step < 2 { ControlFlow::Continue(()) } else { ControlFlow::Break(()) };
    let steps = ease_steps(&SHAPES[0].piece(0.3, 1.0), go_on).expect("the ball can be planned");
    assert_eq!(steps.iter().map(|s| s.ease).collect::<Vec<_>>(), [0.0, 0.15]);
}
