//! What is written reads back as the same tree, in every house style and lexicon.

use plumpline_core::pattern::read::{Wish, read};
use plumpline_core::pattern::tally::tally;
use plumpline_core::pattern::write::{style, write};
use plumpline_core::pattern::{Line, Op, Pattern, Placed, Rounds, Times, lexicon};
use plumpline_tests::any_pattern::patterns;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// What a text must keep of a pattern, whatever house writes it: every round by itself, so
/// that joined rounds and rounds written out are alike; no list of abbreviations, no remarks;
/// and where a house counts plain rounds (“24 sc”), their number for “in each st”.
fn kept(pattern: &Pattern, counted: bool) -> Vec<Line> {
    let mut below = None;
    let mut lines = Vec::new();
    for line in &pattern.lines {
        match &line.it {
            Line::Rounds(rounds) => {
                for number in rounds.first..=rounds.last {
                    let left = tally(&rounds.work, below).ok().map(|t| t.left);
                    let work = match below {
                        Some(below) if counted => plain_counted(&rounds.work, below),
                        _ => rounds.work.clone(),
                    };
                    lines.push(Line::Rounds(Rounds {
                        first: number,
                        last: number,
                        work,
                        stated: rounds.stated.clone(),
                    }));
                    below = left.or(rounds.stated.as_ref().map(|n| n.it));
                }
            }
            Line::Do(work) => {
                let chain = work.iter().find_map(|op| match op.it {
                    Op::Chain(n) => Some(n),
                    _ => None,
                });
                if chain.is_some() {
                    below = chain.filter(|_| work.iter().any(|op| op.it == Op::Join));
                }
                lines.push(line.it.clone());
            }
            Line::Piece(_) => lines.push(line.it.clone()),
            Line::Abbreviation { .. } | Line::Note { .. } => {}
        }
    }
    lines
}

/// A round that is plain throughout, by its number of stitches.
fn plain_counted(work: &[Placed<Op>], below: u32) -> Vec<Placed<Op>> {
    match work {
        [Placed { it: Op::Group { body, times: Times::Around }, .. }] => {
            match body.as_slice() {
                [Placed { it: Op::Each { kind, count: 1 }, .. }] => {
                    vec![Placed::unread(Op::Each { kind: *kind, count: below })]
                }
                _ => work.to_vec(),
            }
        }
        [Placed { it: Op::Only { only, body }, .. }] => {
            let body = plain_counted(body, below);
            vec![Placed::unread(Op::Only { only: *only, body })]
        }
        _ => work.to_vec(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 96,
        rng_seed: RngSeed::Fixed(0x6964_656e),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Read in the words it was written in, and read without being told them.
    #[test]
    fn what_is_written_reads_back(pattern in patterns()) {
        for lexicon in lexicon::all() {
            for style in style::all() {
                let text = write(&pattern, style, lexicon);
                let counted = style.even == style::EvenForm::Counted;
                let wanted = kept(&pattern, counted);
                let told = read(&text, Wish::Lexicon(&lexicon.code));
                prop_assert_eq!(
                    kept(&told.pattern, counted), wanted.clone(),
                    "{}, {}:\n{}", style.name, lexicon.code, text
                );
                let inferred = read(&text, Wish::Infer);
                prop_assert_eq!(inferred.lexicon, lexicon.code.as_str(), "{}", text);
                prop_assert_eq!(
                    kept(&inferred.pattern, counted), wanted,
                    "{}, {}:\n{}", style.name, lexicon.code, text
                );
            }
        }
    }
}
