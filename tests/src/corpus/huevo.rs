//! Spanish: words in full, “5 veces más”.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Huevo"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(2, [each(SC, 8), inc()])], 20),
        rnds(5..=8, [even()], 20),
        rnd(9, [each(SC, 2), inc(), group(3, [each(SC, 4), inc()]), each(SC, 2)], 24),
        rnd(10, [even()], 24),
        rnd(11, [group(6, [each(SC, 2), dec()])], 18),
        act(Op::Stuff),
        rnd(12, [group(6, [each(SC, 1), dec()])], 12),
        rnd(13, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/huevo.txt");
    Clean { name: "huevo", lexicon: "es", text, lines }
}
