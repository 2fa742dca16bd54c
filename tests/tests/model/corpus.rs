//! Every pattern of the corpus reads as the tree that was typed for it by hand.

use plumpline_core::pattern::read::{TermsFound, TermsWish, read};
use plumpline_core::pattern::{Line, Placed};
use plumpline_tests::corpus::{Clean, clean};
use plumpline_tests::trees::{DC, HDC, essence, ring, rnd, show_line};

/// What differs first between a pattern and what was read: style, line, expected, got.
fn difference(pattern: &Clean) -> Option<String> {
    let reading = read(pattern.text, TermsWish::Infer);
    let name = pattern.name;
    if reading.lexicon != pattern.lexicon {
        return Some(format!("{name}: in {}, read in {}", pattern.lexicon, reading.lexicon));
    }
    let got = essence(&reading.pattern.lines);
    let longer = got.len().max(pattern.lines.len());
    let i = (0..longer).find(|&i| got.get(i).map(|line| &line.it) != pattern.lines.get(i))?;
    let expected = pattern.lines.get(i).map_or("nothing".into(), show_line);
    let (text, read) = got.get(i).map_or(("", "nothing".into()), |line| {
        (pattern.text.get(line.at.clone()).unwrap_or_default(), show_line(&line.it))
    });
    Some(format!("{name}: “{text}”\n  expected {expected}\n  got      {read}"))
}

#[test]
fn clean_patterns_read_as_typed() {
    let patterns = clean();
    let wrong: Vec<String> = patterns.iter().filter_map(difference).collect();
    assert!(wrong.is_empty(), "{} styles differ:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn nothing_of_a_clean_pattern_is_unread() {
    for pattern in clean() {
        let reading = read(pattern.text, TermsWish::Infer);
        let unread: Vec<&str> =
            reading.unread.iter().map(|at| &pattern.text[at.clone()]).collect();
        assert!(unread.is_empty(), "{}: {unread:?}", pattern.name);
    }
}

#[test]
fn terms_are_inferred_or_said_but_never_guessed() {
    for pattern in clean() {
        let reading = read(pattern.text, TermsWish::Infer);
        let said = ["UK terms", "US terms"].iter().any(|words| pattern.text.contains(words));
        match reading.terms {
            TermsFound::Said(_) => {}
            TermsFound::Wished => panic!("nobody wished {} so", pattern.name),
            TermsFound::Inferred { .. } => assert!(!said, "{} says it", pattern.name),
            TermsFound::Undecided { .. } => panic!("{} is decidable", pattern.name),
        }
    }
    // These words are in use on both sides, and nine stitches in a ring suit either.
    let either =
        "Rnd 1: 9 dc in magic ring (9)\nRnd 2: 2 dc in each st (18)\nRnd 3: tr around (18)\n";
    let reading = read(either, TermsWish::Infer);
    assert!(matches!(reading.terms, TermsFound::Undecided { .. }), "{:?}", reading.terms);
}

#[test]
fn a_wished_lexicon_is_kept_to() {
    let pebble = clean().into_iter().find(|pattern| pattern.name == "pebble");
    let pebble = pebble.expect("the corpus has a pebble").text;
    let reading = read(pebble, TermsWish::Lexicon("en-us"));
    assert_eq!(reading.lexicon, "en-us");
    let first = first_round(&reading.pattern.lines);
    assert_eq!(first, Some(&rnd(1, [ring(DC, 6)], 6)));
    let basket = "Rnd 1: 8 htr in magic ring (8)\n";
    let reading = read(basket, TermsWish::Lexicon("en-uk"));
    assert_eq!(first_round(&reading.pattern.lines), Some(&rnd(1, [ring(HDC, 8)], 8)));
}

fn first_round(lines: &[Placed<Line>]) -> Option<&Line> {
    lines.iter().map(|line| &line.it).find(|line| matches!(line, Line::Rounds(_)))
}
