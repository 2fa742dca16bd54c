//! The corpus keeps its own rules: its patterns add up stitch by stitch, and every planted
//! error stands in one of them.

use std::collections::BTreeSet;

use plumpline_core::pattern::{Line, Op, Placed, Rounds, Times, tally};
use plumpline_tests::corpus::clean;
use plumpline_tests::planted::planted;
use plumpline_tests::trees::{lines_of, show};

fn rounds(lines: &[Line]) -> impl Iterator<Item = &Rounds> {
    lines.iter().filter_map(|line| match line {
        Line::Rounds(rounds) => Some(rounds),
        _ => None,
    })
}

#[test]
fn every_clean_pattern_adds_up() {
    for pattern in clean() {
        let mut below = None;
        let mut next = 1;
        for line in &pattern.lines {
            let round = match line {
                Line::Piece(_) => {
                    (below, next) = (None, 1);
                    continue;
                }
                Line::Rounds(round) => round,
                _ => continue,
            };
            let place = format!("{} Rnd {}: {}", pattern.name, round.first, show(&round.work));
            assert_eq!(round.first, next, "{place}: numbered on");
            assert!(round.last >= round.first, "{place}: first round before last");
            next = round.last + 1;
            for _ in round.first..=round.last {
                let sum = tally::tally(&round.work, below).expect(&place);
                if let Some(below) = below {
                    assert_eq!(sum.taken, below, "{place}: takes what is there");
                }
                if let Some(stated) = &round.stated {
                    assert_eq!(sum.left, stated.it, "{place}: leaves what is stated");
                }
                below = Some(sum.left);
            }
        }
    }
}

#[test]
fn every_round_line_of_the_texts_is_typed() {
    let mut total = 0;
    for pattern in clean() {
        let typed = rounds(&pattern.lines).count();
        let heads = pattern.text.lines().filter(|line| is_round_line(line)).count();
        assert_eq!(typed, heads, "{}: round lines typed and written", pattern.name);
        total += typed;
    }
    assert!(total >= 130, "{total} round lines");
}

/// Whether a line of the corpus is the first of a round: a colon or dash soon after a number,
/// which nothing else in these texts has.
fn is_round_line(line: &str) -> bool {
    const HEADS: [&str; 11] = [
        "rnd", "round", "rounds", "runde", "runden", "tour", "tours", "vuelta", "vueltas", "r",
        "v",
    ];
    let line = line.trim_start_matches("- ").to_lowercase();
    let word: String = line.chars().take_while(|c| c.is_alphabetic()).collect();
    let numbered = line[word.len()..].trim_start().starts_with(|c: char| c.is_ascii_digit());
    let counted_in_words = word.starts_with("round") && line.contains(": ");
    let headed = HEADS.contains(&word.as_str()) || word == "rnds";
    (numbered && (headed || word.is_empty())) || counted_in_words
}

#[test]
fn every_style_has_a_range_an_odd_spread_and_a_decrease() {
    for pattern in clean() {
        let any = |has: &dyn Fn(&Rounds) -> bool| rounds(&pattern.lines).any(has);
        assert!(any(&|r| r.last > r.first), "{}: rounds worked alike", pattern.name);
        assert!(any(&|r| is_odd_spread(&r.work)), "{}: an odd spread", pattern.name);
        let narrows = any(&|r| has(&r.work, &|op| matches!(op, Op::Together { .. })));
        assert!(narrows, "{}: a decrease", pattern.name);
    }
    assert!(clean().len() >= 13, "{} house styles", clean().len());
}

/// Whether increases stand outside any one repeat: at least two steps and no group that is
/// the whole round.
fn is_odd_spread(work: &[Placed<Op>]) -> bool {
    let grouped = |op: &Placed<Op>| matches!(&op.it, Op::Group { times: Times::In(_), .. });
    let increase = |op: &Op| matches!(op, Op::Into { .. });
    work.len() > 2
        && has(work, &increase)
        && (work.iter().any(grouped) || work.iter().filter(|op| increase(&op.it)).count() > 1)
}

fn has(work: &[Placed<Op>], wanted: &dyn Fn(&Op) -> bool) -> bool {
    work.iter().any(|op| {
        wanted(&op.it)
            || match &op.it {
                Op::Group { body, .. } | Op::Only { body, .. } => has(body, wanted),
                _ => false,
            }
    })
}

#[test]
fn every_planted_error_stands_in_a_clean_pattern() {
    let mut seen = BTreeSet::new();
    let cases = planted();
    for case in &cases {
        let place = case.place();
        assert!(seen.insert(case.text.clone()), "{place}: planted twice");
        assert!(!case.at.is_empty(), "{place}: marks something");
        let (first, last) = lines_of(&case.text, &case.at);
        let marked = &case.text[case.at.clone()];
        assert_eq!(marked.trim(), marked, "{place}: marks words, not the space around them");
        let lines: Vec<&str> = case.text.lines().collect();
        let from = lines[..=first].iter().rposition(|line| is_round_line(line));
        if let Some(round) = case.round {
            let heading = lines[from.expect(&place)];
            let word = WORDS.get(round as usize).is_some_and(|&word| heading.contains(word));
            let stands = heading.contains(&round.to_string()) || word;
            assert!(stands, "{place}: round {round} is marked, not “{heading}”");
        }
        assert!(last - first <= 1, "{place}: marks one line");
    }
    assert!(cases.len() >= 65, "{} planted errors", cases.len());
    let kinds: BTreeSet<_> = cases.iter().map(|case| case.kind).collect();
    assert_eq!(kinds.len(), 9, "{kinds:?}");
}

/// Numbers as the pattern in words writes them.
const WORDS: [&str; 22] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
    "twenty-one",
];
