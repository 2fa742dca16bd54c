//! Spanish: “V3” and short forms.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Sombrero"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [each(SC, 2), inc()])], 24),
        rnd(5, [each(SC, 1), inc(), group(4, [each(SC, 4), inc()]), each(SC, 2)], 29),
        rnds(6..=9, [even()], 29),
        rnd(10, [group(5, [each(SC, 3), dec()]), each(SC, 4)], 24),
        rnd(11, [group(6, [each(SC, 2), dec()])], 18),
        act(Op::Stuff),
        rnd(12, [group(6, [each(SC, 1), dec()])], 12),
        rnd(13, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/seta.txt");
    Clean { name: "seta", lexicon: "es", text, lines }
}
