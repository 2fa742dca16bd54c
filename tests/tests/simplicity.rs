//! The trade-off of simplicity: answers to pick from, none beaten by another, each the one
//! that its simplicity takes.

use plumpline_core::simplicity::{Answer, answers};
use plumpline_core::warning::WarningKind;
use plumpline_core::{Piece, plan};
use plumpline_tests::any::any_piece;
use plumpline_tests::designer::Reading;
use plumpline_tests::drawn::drawn;
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::sweep::INDIFFERENT;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Rounding of a likely fit, stitch widths.
const ROUNDING: f64 = 1e-9;

fn of(piece: &Piece) -> Vec<Answer> {
    let answers = answers(piece).expect("it can be planned");
    assert!(!answers.is_empty(), "{}", piece.name);
    answers
}

/// From faithful to simple each answer is further in likely fit and less trouble.
fn check_order(name: &str, answers: &[Answer]) {
    for pair in answers.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        let told = format!("{name}: {:.3} and {:.3}", a.simplicity, b.simplicity);
        assert!(a.simplicity < b.simplicity, "{told}");
        assert!(b.likely_rms_stitches >= a.likely_rms_stitches - ROUNDING, "{told}");
        assert!(b.trouble < a.trouble, "{told}");
        assert!(a.counts != b.counts, "{told}");
    }
}

/// A plan at an answer's simplicity takes that answer.
fn check_taken(piece: &Piece, answers: &[Answer]) {
    for answer in answers {
        let chosen = Piece { simplicity: Some(answer.simplicity), ..piece.clone() };
        let plan = plan(&chosen).expect("it can be planned");
        let at = answer.simplicity;
        assert_eq!(plan.counts(), answer.counts, "{} at {at}", piece.name);
        let off = plan.likely_rms_stitches - answer.likely_rms_stitches;
        assert!(off.abs() < 1e-6, "{} at {at}: {off}", piece.name);
    }
}

#[test]
fn answers_run_from_faithful_to_simple_and_are_what_a_plan_takes() {
    for shape in &SHAPES {
        let piece = shape.piece(None, 1.0);
        let answers = of(&piece);
        for answer in &answers {
            println!(
                "{:10} {:.2} likely {:.4} rms {:.4} trouble {:.2} lines {}",
                shape.name,
                answer.simplicity,
                answer.likely_rms_stitches,
                answer.rms_stitches,
                answer.trouble,
                answer.distinct_lines
            );
        }
        check_order(shape.name, &answers);
        check_taken(&piece, &answers);
    }
}

#[test]
fn so_do_those_of_outlines_drawn_by_chance() {
    for seed in 601..=624 {
        let piece = drawn(seed).piece;
        let answers = of(&piece);
        check_order(&piece.name, &answers);
        check_taken(&piece, &answers);
    }
}

/// Whatever stop the slider is moved from and to: no stop is beaten by another in both likely
/// fit and trouble.
#[test]
fn no_stop_is_beaten_by_another() {
    let pieces = SHAPES.iter().map(|shape| shape.piece(None, 1.0));
    for piece in pieces.chain((631..=642).map(|seed| drawn(seed).piece)) {
        let stops: Vec<_> = (0..=20)
            .map(|i| {
                let simplicity = Some(f64::from(i) / 20.0);
                let plan = plan(&Piece { simplicity, ..piece.clone() }).expect("it plans");
                (i, plan.likely_rms_stitches, plan.trouble)
            })
            .collect();
        for (i, likely, trouble) in &stops {
            for (j, other_likely, other_trouble) in &stops {
                let beaten =
                    other_likely < &(likely - 1e-6) && other_trouble < &(trouble - 1e-6);
                assert!(!beaten, "{}: stop {i} by stop {j}, {stops:?}", piece.name);
            }
        }
    }
}

/// Every round a multiple of two or of six is a plain family: no answer may be beaten by it in
/// trouble and by more than hands can tell in likely fit.
#[test]
fn no_plain_family_beats_the_answers() {
    let pieces = SHAPES.iter().map(|shape| shape.piece(None, 1.0));
    for piece in pieces.chain((651..=690).map(|seed| drawn(seed).piece)) {
        let answers = of(&piece);
        for multiple in [2, 3, 6] {
            let mut plain = piece.clone();
            plain.rules.multiple_of = multiple;
            let plain = plan(&plain).expect("it plans");
            if plain.warnings.iter().any(|w| w.kind == WarningKind::Multiples) {
                continue;
            }
            for answer in &answers {
                let beaten = plain.likely_rms_stitches
                    < answer.likely_rms_stitches - INDIFFERENT
                    && plain.trouble < answer.trouble - 1e-6;
                assert!(
                    !beaten,
                    "{} at {:.2} ({:.4}, {:.2}) by multiples of {multiple} ({:.4}, {:.2})",
                    piece.name,
                    answer.simplicity,
                    answer.likely_rms_stitches,
                    answer.trouble,
                    plain.likely_rms_stitches,
                    plain.trouble
                );
            }
        }
    }
}

#[test]
fn the_default_is_indistinguishable_from_the_best_and_the_simple_end_all_repeats() {
    for shape in &SHAPES {
        let piece = shape.piece(None, 1.0);
        let default = plan(&piece).expect("the set can be planned");
        let best = of(&piece)[0].likely_rms_stitches;
        let simple = plan(&shape.piece(1.0, 1.0)).expect("the set can be planned");
        let (reads, easiest) = (Reading::of(&piece, &default), Reading::of(&piece, &simple));
        println!(
            "{:10} likely {:.3} best {best:.3}, {}/{} full, numbers {:?}; simple {:.3} {:?}",
            shape.name,
            default.likely_rms_stitches,
            reads.full,
            reads.shaping,
            reads.numbers,
            simple.likely_rms_stitches,
            easiest.numbers
        );
        assert!(default.likely_rms_stitches <= best + INDIFFERENT, "{}", shape.name);
        assert!(reads.share() >= 0.9, "{}", shape.name);
        assert_eq!(easiest.full, easiest.shaping, "{}", shape.name);
    }
}

/// An answer that is chosen is the plan, and asks for nothing else.
#[test]
fn a_chosen_answer_is_the_plan() {
    for shape in &SHAPES {
        let piece = shape.piece(None, 1.0);
        for answer in of(&piece) {
            let chosen = answer.chosen(&piece);
            assert_eq!(plan(&chosen).expect("it plans").counts(), answer.counts);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 32,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x6561_7365),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn answers_are_in_order_on_any_outline(piece in any_piece()) {
        check_order("any", &of(&piece));
    }
}
