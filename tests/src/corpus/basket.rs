//! Taller stitches, three in one and three together, skipped stitches, an open end.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Basket"),
        rnd(1, [ring(HDC, 8)], 8),
        rnd(2, [around([into(HDC, 2)])], 16),
        rnd(3, [group(8, [each(HDC, 1), into(HDC, 2)])], 24),
        rnd(
            4,
            [
                into(SC, 3),
                each(SC, 5),
                group(2, [into(SC, 3), each(SC, 7)]),
                into(SC, 3),
                each(SC, 1),
            ],
            32,
        ),
        rnd(5, [back([around([each(DC, 1)])])], 32),
        rnd(6, [group(8, [together(DC, 2), each(DC, 2)])], 24),
        rnds(7..=8, [around([each(TR, 1)])], 24),
        rnd(
            9,
            [each(HDC, 1), into(HDC, 2), group(4, [each(HDC, 4), into(HDC, 2)]), each(HDC, 2)],
            29,
        ),
        rnd(10, [group(5, [each(HDC, 3), together(HDC, 2)]), each(HDC, 4)], 24),
        rnd(11, [group(4, [together(SC, 3), each(SC, 3)])], 16),
        rnd(12, [group(4, [each(SC, 3), Op::Skip(1)])], 12),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/basket.txt");
    Clean { name: "basket", lexicon: "en-us", text, lines }
}
