//! French: “Tour 3”, groups between asterisks, “5 fois de plus”, words in full.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Noix"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [around([inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [each(SC, 2), inc()])], 24),
        rnd(5, [each(SC, 3), inc(), group(3, [each(SC, 5), inc()]), each(SC, 2)], 28),
        rnds(6..=8, [even()], 28),
        rnd(9, [group(4, [each(SC, 5), dec()])], 24),
        rnd(10, [around([each(SC, 2), dec()])], 18),
        act(Op::Stuff),
        rnd(11, [around([each(SC, 1), dec()])], 12),
        rnd(12, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/noix.txt");
    Clean { name: "noix", lexicon: "fr", text, lines }
}
