//! Capitals, square brackets, two pieces that are numbered anew.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("CAP"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [inc(), each(SC, 2)])], 24),
        rnd(5, [group(3, [each(SC, 7), inc()])], 27),
        rnd(6, [back([even()])], 27),
        rnds(7..=9, [even()], 27),
        rnd(10, [group(3, [each(SC, 7), dec()])], 24),
        act(Op::FastenOff),
        piece("NUT"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [each(SC, 4), inc(), group(3, [each(SC, 3), inc()]), each(SC, 1)], 22),
        rnds(5..=10, [even()], 22),
        act(Op::Stuff),
        rnd(11, [each(SC, 2), dec(), group(3, [each(SC, 4), dec()])], 18),
        rnd(12, [group(6, [each(SC, 1), dec()])], 12),
        rnd(13, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/acorn.txt");
    Clean { name: "acorn", lexicon: "en-us", text, lines }
}
