//! A list with bullets, lower case, long dashes, invisible decreases, “even”.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("bell"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [group(6, [inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [each(SC, 1), inc(), each(SC, 1)])], 24),
        rnd(5, [front([even()])], 24),
        rnds(6..=8, [even()], 24),
        rnd(9, [each(SC, 4), inc(), group(3, [each(SC, 5), inc()]), each(SC, 1)], 28),
        rnd(10, [each(SC, 28)], 28),
        rnd(11, [group(4, [each(SC, 5), invdec()])], 24),
        act(Op::Stuff),
        rnd(12, [group(6, [each(SC, 2), invdec()])], 18),
        rnd(13, [group(6, [each(SC, 1), invdec()])], 12),
        rnd(14, [group(6, [invdec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/bell.txt");
    Clean { name: "bell", lexicon: "en-us", text, lines }
}
