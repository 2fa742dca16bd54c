//! A written pattern made a piece plans to the very counts it was written with.

use plumpline_core::pattern::course::courses;
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::project::shape::{MadeProject, project_of, shape};
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
