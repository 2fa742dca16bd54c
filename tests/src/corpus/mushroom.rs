//! Its own list of abbreviations, “5 more times”, an open end.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        abbr("Rnd", "round"),
        abbr("st", "stitch"),
        abbr("sc", "single crochet"),
        abbr("inc", "2 sc in the same stitch"),
        abbr("dec", "decrease"),
        abbr("BLO", "back loop only"),
        abbr("rep", "repeat"),
        abbr("MR", "magic ring"),
        piece("Foot"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [around([inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [back([even()])], 18),
        rnds(5..=9, [even()], 18),
        rnd(10, [group(3, [each(SC, 4), dec()])], 15),
        rnd(11, [even()], 15),
        rnd(12, [inc(), group(2, [each(SC, 4), inc()]), each(SC, 4)], 18),
        rnd(13, [around([each(SC, 2), inc()])], 24),
        rnd(14, [each(SC, 3), inc(), group(4, [each(SC, 4), inc()])], 29),
        rnds(15..=16, [even()], 29),
        act(Op::Stuff),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/mushroom.txt");
    Clean { name: "mushroom", lexicon: "en-us", text, lines }
}
