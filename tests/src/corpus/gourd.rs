//! “then” and “and” between stitches, ranges told by “through”, fives.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Gourd"),
        act(Op::Marker),
        rnd(1, [ring(SC, 5)], 5),
        rnd(2, [around([inc()])], 10),
        rnd(3, [group(5, [each(SC, 1), inc()])], 15),
        rnd(4, [group(5, [inc(), each(SC, 2)])], 20),
        rnd(5, [each(SC, 2), inc(), group(2, [each(SC, 5), inc()]), each(SC, 5)], 23),
        rnds(6..=10, [even()], 23),
        rnd(11, [each(SC, 1), group(5, [dec(), each(SC, 2)]), dec()], 17),
        rnd(12, [group(2, [each(SC, 4), dec()]), each(SC, 5)], 15),
        rnds(13..=14, [even()], 15),
        rnd(15, [group(5, [each(SC, 2), inc()])], 20),
        rnds(16..=18, [even()], 20),
        act(Op::Stuff),
        rnd(19, [group(5, [each(SC, 2), dec()])], 15),
        rnd(20, [group(5, [each(SC, 1), dec()])], 10),
        rnd(21, [group(5, [dec()])], 5),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/gourd.txt");
    Clean { name: "gourd", lexicon: "en-us", text, lines }
}
