//! Bare numbers for headings, an arrow before the count, loops, a list in one line.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        abbr("sc", "single crochet"),
        abbr("hdc", "half double crochet"),
        abbr("inc", "increase"),
        abbr("dec", "decrease"),
        abbr("sl st", "slip stitch"),
        abbr("FLO", "front loop only"),
        abbr("BLO", "back loop only"),
        piece("Buoy"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [around([inc()])], 12),
        rnd(3, [around([each(HDC, 1), into(HDC, 2)])], 18),
        rnd(
            4,
            [each(HDC, 4), into(HDC, 2), group(2, [each(HDC, 5), into(HDC, 2)]), each(HDC, 1)],
            21,
        ),
        rnd(5, [back([even()])], 21),
        rnds(6..=8, [even()], 21),
        rnd(9, [front([each(SC, 3)]), each(SC, 18)], 21),
        rnd(10, [group(3, [each(SC, 5), dec()])], 18),
        rnd(11, [around([each(SLIP, 1)])], 18),
        rnd(12, [back([even()])], 18),
        act(Op::Stuff),
        rnd(13, [around([each(SC, 1), dec()])], 12),
        rnd(14, [around([dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/buoy.txt");
    Clean { name: "buoy", lexicon: "en-us", text, lines }
}
