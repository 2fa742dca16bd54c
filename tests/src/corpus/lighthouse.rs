//! Rounds written out over several lines, remarks between them.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Lamp"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(
            3,
            [
                each(SC, 1),
                inc(),
                each(SC, 1),
                inc(),
                each(SC, 1),
                inc(),
                each(SC, 1),
                inc(),
                each(SC, 1),
                inc(),
                each(SC, 1),
                inc(),
            ],
            18,
        ),
        rnd(4, [each(SC, 5), inc(), each(SC, 4), inc(), each(SC, 5), inc(), each(SC, 1)], 21),
        rnds(5..=7, [each(SC, 21)], 21),
        rnd(8, [each(SC, 5), dec(), each(SC, 5), dec(), each(SC, 5), dec()], 18),
        rnds(9..=12, [each(SC, 18)], 18),
        rnd(13, [front([around([inc()])])], 36),
        rnd(14, [each(SC, 36)], 36),
        rnd(15, [group(6, [each(SC, 4), dec()])], 30),
        act(Op::Stuff),
        rnd(16, [group(6, [each(SC, 3), dec()])], 24),
        rnd(17, [group(6, [each(SC, 2), dec()])], 18),
        rnd(18, [group(6, [each(SC, 1), dec()])], 12),
        rnd(19, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/lighthouse.txt");
    Clean { name: "lighthouse", lexicon: "en-us", text, lines }
}
