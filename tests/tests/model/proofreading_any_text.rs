//! Whatever a text holds, the proofreader answers, its places lie in the text, and no edit it
//! offers cuts a character.

use plumpline_core::pattern::proofread::{proofread, summary};
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::project::shape::shape;
use plumpline_core::{Firmness, Gauge};
use plumpline_tests::corpus::clean;

fn answers(text: &str) {
    let reading = read(text, TermsWish::Infer);
    for finding in proofread(text, &reading) {
        assert!(text.get(finding.at.clone()).is_some(), "{finding:?} in\n{text}");
        if let Some((at, _)) = finding.mend.and_then(|mend| mend.edit) {
            assert!(text.get(at.clone()).is_some(), "{at:?} in\n{text}");
        }
    }
    summary(&reading);
}

#[test]
fn patterns_with_pieces_cut_out_or_doubled() {
    for pattern in clean() {
        let bounds: Vec<usize> = pattern.text.char_indices().map(|(i, _)| i).collect();
        for (i, &from) in bounds.iter().enumerate().step_by(11) {
            let to = bounds[(i + 1 + i % 9).min(bounds.len() - 1)].max(from);
            let (before, after) = (&pattern.text[..from], &pattern.text[to..]);
            answers(&format!("{before}{after}"));
            answers(&format!("{before}{0}{0}{after}", &pattern.text[from..to]));
        }
    }
}

#[test]
fn numbers_beyond_all_measure() {
    for text in [
        "Rnds 1-4000000000: 4000000000 sc in magic ring (4000000000)",
        "Rnd 4294967295: (sc 4294967295, inc) x 4294967295 (1)\nRnd 4294967295: dec around (2)",
        "Rnd 0: 6 sc in magic ring (6)\nRnds 9-2: inc around (12)\nRnd 1: (ch 3) around (12)",
    ] {
        answers(text);
        let reading = read(text, TermsWish::Infer);
        let gauge = Gauge::per(22.0, 24.0, 100.0);
        let shaped = shape(&reading.pattern, &reading.unread, "x", gauge, Firmness::MEDIUM);
        assert!(shaped.is_err(), "{text}");
    }
}
