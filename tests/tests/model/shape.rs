//! A written pattern made a piece plans to the very counts it was written with.

use plumpline_core::pattern::course::courses;
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::project::shape::{
    MadeProject, MissingCounts, ToldCount, missing_counts, project_of, shape, shape_told,
};
use plumpline_core::{Firmness, Gauge, plan};
use plumpline_tests::corpus::clean;

#[test]
fn clean_patterns_plan_to_their_own_counts() {
    let mut wrong = Vec::new();
    for pattern in clean() {
        let reading = read(pattern.text, TermsWish::Infer);
        let shaped = shape(
            &reading.pattern,
            &reading.unread,
            pattern.name,
            Gauge::per(22.0, 24.0, 100.0),
            Firmness::MEDIUM,
        );
        let shaped = match shaped {
            Ok(made) => {
                assert!(made.left_out.is_empty(), "{}: {:?}", pattern.name, made.left_out);
                made.pieces
            }
            Err(error) => {
                wrong.push(format!("{}: {error}", pattern.name));
                continue;
            }
        };
        let written: Vec<Vec<u32>> = courses(&reading.pattern, &reading.unread)
            .iter()
            .map(|c| c.steps.iter().flat_map(|s| s.counted()).filter_map(|(_, n)| n).collect())
            .collect();
        for (one, written) in shaped.iter().zip(&written) {
            let planned = plan(&one.piece).expect("it was planned before").counts();
            if planned != *written {
                wrong.push(format!("{}: {written:?} becomes {planned:?}", pattern.name));
            }
        }
        assert_eq!(shaped.len(), written.len(), "{}", pattern.name);
        let project = project_of(shaped).expect("it has pieces");
        assert_eq!(project.validate(), Ok(()), "{}", pattern.name);
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn made(text: &str) -> plumpline_core::Result<MadeProject> {
    let reading = read(text, TermsWish::Lexicon("en-us"));
    let gauge = Gauge::per(22.0, 24.0, 100.0);
    shape(&reading.pattern, &reading.unread, "x", gauge, Firmness::MEDIUM)
}

#[test]
fn no_round_is_dropped_silently() {
    let gap = "Rnd 1: 6 sc in mr (6)\nRnd 2: inc x 6 (12)\nRnd 5: sc around (12)\n";
    let error = made(gap).expect_err("rounds 3 and 4 are missing").to_string();
    assert!(error.contains("Rnds 3–4 are missing"), "{error}");
    let open = "Rnd 1: 6 sc in mr (6)\nRnd 2: wobble all over\nRnd 3: sc around (12)\n";
    let error = made(open).expect_err("nobody can count round 2").to_string();
    assert!(error.contains("Rnd 2"), "{error}");
    // What it comes to is stated: that is enough to go on.
    let stated = "Rnd 1: 6 sc in mr (6)\nRnd 2: wobble all over (12)\nRnd 3: sc around (12)\n";
    let counts =
        plan(&made(stated).expect("a piece").pieces[0].piece).expect("a plan").counts();
    assert_eq!(counts, [6, 12, 12]);
}

#[test]
fn a_small_part_that_cannot_be_read_does_not_refuse_the_whole() {
    let text = "BODY\nRnd 1: 6 sc in mr (6)\nRnd 2: inc x 6 (12)\nRnds 3-5: sc around (12)\n\
                Rnd 6: dec x 6 (6)\n\nTUFT\nRnd 1: 6 sc in mr (6)\nRnd 2: wobble all over\n";
    let made = made(text).expect("the body is sound");
    assert_eq!(made.pieces.len(), 1);
    assert_eq!(made.pieces[0].piece.name, "BODY");
    assert!(made.left_out[0].to_string().contains("TUFT"), "{:?}", made.left_out);
}

#[test]
fn counts_that_a_person_tells_fill_the_gaps() {
    let text = "Rnd 1: 6 sc in mr (6)\nRnd 2: inc x 6 (12)\nRnd 5: sc around (18)\n\
                Rnd 6: wobble all over\nRnd 7: sc around (15)\n";
    let reading = read(text, TermsWish::Lexicon("en-us"));
    let (pattern, unread) = (&reading.pattern, &reading.unread);
    let missing = |first, last| MissingCounts { part: 1, name: None, first, last };
    assert_eq!(missing_counts(pattern, unread), [missing(3, 4), missing(6, 6)]);
    let gauge = Gauge::per(22.0, 24.0, 100.0);
    let told = |counts: &[(u32, u32)]| {
        let told: Vec<ToldCount> =
            counts.iter().map(|&(round, count)| ToldCount { part: 1, round, count }).collect();
        shape_told(pattern, unread, &told, "x", gauge, Firmness::MEDIUM)
    };
    let error = told(&[(3, 15), (4, 18)]).expect_err("round 6 is not told").to_string();
    assert!(error.contains("Rnd 6"), "{error}");
    let made = told(&[(3, 15), (4, 18), (6, 15)]).expect("every round is told");
    let counts = plan(&made.pieces[0].piece).expect("a plan").counts();
    assert_eq!(counts, [6, 12, 15, 18, 18, 15, 15]);
}

#[test]
fn a_few_small_rounds_make_a_piece() {
    let text = "Rnd 1: 4 sc in mr (4)\nRnd 2: (sc, inc) x 2 (6)\nRnd 3: (sc, inc) x 3 (9)\n\
                Rnd 4: (2 sc, inc) x 3 (12)\nRnd 5: (2 sc, dec) x 3 (9)\n";
    let made = made(text).expect("a small piece");
    let counts = plan(&made.pieces[0].piece).expect("a plan").counts();
    assert_eq!(counts, [4, 6, 9, 12, 9]);
}
