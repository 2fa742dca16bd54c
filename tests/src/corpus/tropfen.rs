//! German: “Runde 3”, increases and decreases by name, one count left out.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Tropfen"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(3, [each(SC, 5), inc()])], 21),
        rnds(5..=7, [even()], 21),
        rnd(8, [each(SC, 3), inc(), group(2, [each(SC, 6), inc()]), each(SC, 3)], 24),
        rnd(9, [even()], None),
        rnd(10, [group(6, [each(SC, 2), dec()])], 18),
        act(Op::Stuff),
        rnd(11, [group(6, [each(SC, 1), dec()])], 12),
        rnd(12, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/tropfen.txt");
    Clean { name: "tropfen", lexicon: "de", text, lines }
}
