//! Lower case, an oval begun on a chain, “6x” after the group.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("bean"),
        act(Op::Chain(7)),
        rnd(
            1,
            [
                in_chain(SC, 1, 2),
                each(SC, 4),
                in_chain(SC, 3, 0),
                Op::OtherSide,
                each(SC, 4),
                in_chain(SC, 2, 0),
            ],
            14,
        ),
        rnd(2, [inc(), each(SC, 4), group(3, [inc()]), each(SC, 4), group(2, [inc()])], 20),
        rnd(
            3,
            [
                inc(),
                each(SC, 5),
                group(2, [inc(), each(SC, 1)]),
                inc(),
                each(SC, 5),
                group(2, [inc(), each(SC, 1)]),
            ],
            26,
        ),
        rnd(4, [each(SC, 8), inc(), each(SC, 12), inc(), each(SC, 4)], 28),
        rnds(5..=8, [even()], 28),
        rnd(9, [group(4, [each(SC, 5), dec()])], 24),
        rnd(10, [even()], 24),
        act(Op::Stuff),
        rnd(11, [group(6, [each(SC, 2), dec()])], 18),
        rnd(12, [group(6, [each(SC, 1), dec()])], 12),
        rnd(13, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/bean.txt");
    Clean { name: "bean", lexicon: "en-us", text, lines }
}
