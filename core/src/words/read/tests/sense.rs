//! What is read from where rounds lie and what they come to, rather than from their words.

use super::short_line;
use crate::words::read::{Inferred, Reading, Saying, Sure, TermsWish, read, read_with};
use crate::words::tree::Line;

fn lines(reading: &Reading) -> Vec<String> {
    let rounds = reading.pattern.lines.iter().filter(|l| matches!(l.it, Line::Rounds(_)));
    rounds.map(|line| short_line(&line.it)).collect()
}

const BUD: [&str; 3] = ["1: ring:6sc =6", "2: (inc)6 =12", "3: (sc1 inc)6 =18"];

#[test]
fn rounds_of_one_paragraph_are_told_apart_by_their_numbers() {
    for text in [
        "R1 6 sc in mr (6) R2 inc x 6 (12) R3 (sc 1, inc) x 6 (18)",
        "R1. 6 sc in mr (6). R2. inc x 6 (12). R3. (sc 1, inc) x 6 (18).",
        "Round 1 - 6 sc in mr (6), Round 2 - inc x 6 (12), Round 3 - (sc 1, inc) x 6 (18)",
        "[R1] 6 sc in mr (6) [R2] inc x 6 (12) [R3] (sc 1, inc) x 6 (18)",
        "Bud: R1- 6 sc in mr (6) R2- inc x 6 (12) R3- (sc 1, inc) x 6 (18)",
    ] {
        assert_eq!(lines(&read(text, TermsWish::Lexicon("en-us"))), BUD, "{text}");
    }
    // A round that only speaks of the next is one.
    let text = "R1: 6 sc in mr (6)\nR2: inc x 6, place eyes between R2 and R3 (12)";
    assert_eq!(lines(&read(text, TermsWish::Lexicon("en-us"))).len(), 2);
}

#[test]
fn words_that_say_nothing_lose_no_round_whose_counts_fit() {
    let text = "R1: 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: zig and zag merrily (18)\n\
                R4: (sc 2, inc) x 6 (24)";
    let reading = read(text, TermsWish::Lexicon("en-us"));
    assert_eq!(lines(&reading)[2], "3: (sc1 inc)6 =18");
    let third = reading.understood.values().nth(2).expect("it is there");
    assert_eq!((third.sure, third.inferred.contains(&Inferred::Counts)), (Sure::Fits, true));
    // Where the next round speaks against the count, it stays unread.
    let text = text.replace("(18)", "(17)");
    let reading = read(&text, TermsWish::Lexicon("en-us"));
    let third = reading.understood.values().nth(2).expect("it is there");
    assert_eq!(third.sure, Sure::Unread);
}

#[test]
fn sentences_tell_the_rounds_of_a_text_without_numbers() {
    let text = "Begin with a magic ring and work six single crochet into it.\n\
                Now double every stitch.\nAfter that, increase in every second stitch.\n\
                Crochet four rounds without increasing.\n";
    let rounds = lines(&read(text, TermsWish::Lexicon("en-us")));
    assert_eq!(rounds.len(), 4, "{rounds:?}");
    assert!(rounds[3].starts_with("4-7:"), "{rounds:?}");
}

#[test]
fn what_a_person_says_holds_for_the_rest_of_the_text() {
    let text = "R1: 6 sc in mr (6)\nR2: bloom all round (12)\nR3: 1 calm then a bloom (18)\n\
                R4: 2 calm then a bloom (24)\nR5: 3 calm then a bloom (30)";
    let saying = |words: &str, means: &str| Saying { words: words.into(), means: means.into() };
    let said = [
        saying("bloom all round", "inc in each st around"),
        saying("9 calm then a bloom", "(9 sc, inc) x 6"),
    ];
    let reading = read_with(text, TermsWish::Lexicon("en-us"), &said);
    let rounds = lines(&reading);
    assert_eq!(rounds[1], "2: (inc)~ =12");
    assert_eq!(rounds[4], "5: (sc3 inc)6 =30");
    assert!(reading.understood.values().all(|u| u.sure == Sure::Certain), "{rounds:?}");
    // Words alone are explained, never figures alone, and nothing may be empty.
    for (words, means) in [("3", "4"), ("", "sc"), ("bloom", "")] {
        let same = read_with(text, TermsWish::Lexicon("en-us"), &[saying(words, means)]);
        assert_eq!(lines(&same), lines(&read(text, TermsWish::Lexicon("en-us"))));
    }
}
