//! French: “R3”, a space before the colon, a range told by “à”.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Cloche"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [each(SC, 2), inc()])], 24),
        rnd(5, [back([even()])], 24),
        rnds(6..=10, [even()], 24),
        rnd(11, [each(SC, 2), inc(), group(4, [each(SC, 4), inc()]), each(SC, 1)], 29),
        rnd(12, [even()], 29),
        rnd(13, [group(5, [each(SC, 3), dec()]), each(SC, 4)], 24),
        act(Op::Stuff),
        rnd(14, [group(6, [each(SC, 2), dec()])], 18),
        rnd(15, [group(6, [each(SC, 1), dec()])], 12),
        rnd(16, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/cloche.txt");
    Clean { name: "cloche", lexicon: "fr", text, lines }
}
