//! UK terms left unsaid, numbers joined to the stitch, groups between asterisks.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Pebble"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [around([inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [inc(), each(SC, 2)])], 24),
        rnd(5, [around([each(HDC, 1)])], 24),
        rnd(6, [each(SC, 3), inc(), group(3, [each(SC, 5), inc()]), each(SC, 2)], 28),
        rnds(7..=9, [even()], 28),
        rnd(10, [group(4, [each(SC, 5), dec()])], 24),
        act(Op::Stuff),
        rnd(11, [group(6, [each(SC, 2), dec()])], 18),
        rnd(12, [group(6, [dec(), each(SC, 1)])], 12),
        rnd(13, [group(6, [dec()])], 6),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/pebble.txt");
    Clean { name: "pebble", lexicon: "en-uk", text, lines }
}
