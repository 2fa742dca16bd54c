//! UK terms that the text declares, dashes after the heading, “= 18” for the count.

use plumpline_core::pattern::Op;

use super::Clean;
use crate::trees::*;

pub(super) fn clean() -> Clean {
    let lines = vec![
        piece("Pear"),
        rnd(1, [ring(SC, 6)], 6),
        rnd(2, [around([inc()])], 12),
        rnd(3, [group(6, [each(SC, 1), inc()])], 18),
        rnd(4, [group(6, [inc(), each(SC, 2)])], 24),
        rnd(5, [each(SC, 3), inc(), group(3, [each(SC, 4), inc()]), each(SC, 5)], 28),
        rnds(6..=10, [even()], 28),
        rnd(11, [group(4, [each(SC, 5), dec()])], 24),
        rnds(12..=13, [even()], 24),
        act(Op::Stuff),
        rnd(14, [each(SC, 3), dec(), group(3, [each(SC, 4), dec()]), each(SC, 1)], 20),
        rnd(15, [even()], 20),
        rnd(16, [group(10, [dec()])], 10),
        rnd(17, [group(5, [dec()])], 5),
        act(Op::FastenOff),
    ];
    let text = include_str!("../../corpus/clean/pear.txt");
    Clean { name: "pear", lexicon: "en-uk", text, lines }
}
