//! US terms, round brackets, number after the stitch, a count in brackets.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Float"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [each(SC, 2), inc()])], 24),
        rnd(5, [each(SC, 2), inc(), group(4, [each(SC, 4), inc()]), each(SC, 1)], 29),
        rnds(6..=9, [even()], 29),
        rnd(10, [each(SC, 2), dec(), group(5, [each(SC, 3), dec()])], 23),
        rnd(11, [even()], 23),
        act(Op::Colour("cream".into())),
        rnd(12, [group(5, [each(SC, 2), dec()]), each(SC, 3)], 18),
        act(Op::Stuff),
        rnd(13, [group(6, [each(SC, 1), dec()])], 12),
        rnd(14, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/float.txt");
    Clean { name: "float", lexicon: "en-us", text, lines }
}
