//! Joined rounds, repeats from an asterisk, stitches told one place at a time.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Button"),
        rnd(1, [Op::Chain(2), in_chain(SC, 6, 2), Op::Join], 6),
        rnd(2, [Op::Chain(1), around([inc()]), Op::Join], 12),
        rnd(3, [Op::Chain(1), around([each(SC, 1), inc()]), Op::Join], 18),
        rnd(4, [Op::Chain(1), around([inc(), each(SC, 2)]), Op::Join], 24),
        rnd(
            5,
            [Op::Chain(1), each(SC, 2), inc(), group(3, [each(SC, 6), inc()]), Op::Join],
            28,
        ),
        rnd(6, [Op::Chain(1), around([each(HDC, 1)]), Op::Join], 28),
        rnds(7..=8, [Op::Chain(1), even(), Op::Join], 28),
        rnd(9, [Op::Chain(1), around([each(SC, 5), dec()]), Op::Join], 24),
        rnd(10, [Op::Chain(1), around([dec(), each(SC, 2)]), Op::Join], 18),
        act(Op::Stuff),
        rnd(11, [Op::Chain(1), around([each(SC, 1), dec()]), Op::Join], 12),
        rnd(12, [Op::Chain(1), group(6, [dec()]), Op::Join], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/button.txt");
    Clean { name: "button", lexicon: "en-us", text, lines }
}
