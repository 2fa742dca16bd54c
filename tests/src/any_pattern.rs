//! Any written pattern, for checks of what the writer and the reader must keep to: groups in
//! groups, loops, every kind of stitch, ranges, joined rounds, beginnings in a ring, on a chain
//! and along both its sides.

use plumpline_core::Loop;
use plumpline_core::pattern::tally::tally;
use plumpline_core::pattern::{Decrease, Line, Op, Pattern, Placed, Rounds, StitchKind, Times};
use proptest::prelude::*;

fn work(ops: impl IntoIterator<Item = Op>) -> Vec<Placed<Op>> {
    ops.into_iter().map(Placed::unread).collect()
}

/// Any kind of stitch, single crochet most often.
pub fn kinds() -> impl Strategy<Value = StitchKind> {
    prop_oneof![
        6 => Just(StitchKind::Single),
        2 => Just(StitchKind::HalfDouble),
        1 => Just(StitchKind::Double),
        1 => Just(StitchKind::Treble),
    ]
}

fn loops() -> impl Strategy<Value = Loop> {
    prop::sample::select(vec![Loop::Front, Loop::Back])
}

/// Plain stitches or one shaping stitch.
fn stitches() -> impl Strategy<Value = Op> {
    let how = prop::sample::select(vec![Decrease::Plain, Decrease::Invisible]);
    prop_oneof![
        4 => (kinds(), 1_u32..12).prop_map(|(kind, count)| Op::Each { kind, count }),
        3 => kinds().prop_map(|kind| Op::Into { kind, many: 2 }),
        1 => (kinds(), 3_u32..5).prop_map(|(kind, many)| Op::Into { kind, many }),
        2 => kinds()
            .prop_map(|kind| Op::Together { kind, many: 2, how: Decrease::Plain }),
        1 => (kinds(), how).prop_map(|(kind, how)| Op::Together { kind, many: 2, how }),
        1 => (kinds(), 3_u32..4)
            .prop_map(|(kind, many)| Op::Together { kind, many, how: Decrease::Plain }),
    ]
}

/// Stitches, groups of them up to two deep, and what is worked in one loop.
pub fn items() -> impl Strategy<Value = Op> {
    stitches().prop_recursive(2, 12, 4, |inner| {
        let body = prop::collection::vec(inner.clone(), 1..4);
        prop_oneof![
            3 => (body.clone(), 1_u32..9)
                .prop_map(|(body, n)| Op::Group { body: work(body), times: Times::In(n) }),
            1 => (loops(), body).prop_map(|(only, body)| Op::Only { only, body: work(body) }),
        ]
    })
}

/// The work of one round on `below` stitches, and what it leaves: items as they come, or one
/// thing to the end of the round.
fn round_on(below: u32) -> impl Strategy<Value = Vec<Placed<Op>>> {
    let listed = prop::collection::vec(items(), 1..5).prop_map(work);
    let plain =
        |kind| Op::Group { body: work([Op::Each { kind, count: 1 }]), times: Times::Around };
    let even = kinds().prop_map(move |kind| work([plain(kind)]));
    let all_increased = kinds().prop_map(|kind| {
        let body = work([Op::Into { kind, many: 2 }]);
        work([Op::Group { body, times: Times::Around }])
    });
    let spread = (kinds(), 1_u32..8).prop_map(move |(kind, gap)| {
        // The gap that leaves nothing over, from the one asked for down to none.
        let gap = (0..=gap).rev().find(|gap| below.is_multiple_of(gap + 1)).unwrap_or(0);
        let body = match gap {
            0 => work([Op::Into { kind, many: 2 }]),
            gap => work([Op::Each { kind, count: gap }, Op::Into { kind, many: 2 }]),
        };
        work([Op::Group { body, times: Times::Around }])
    });
    let looped = (loops(), kinds())
        .prop_map(move |(only, kind)| work([Op::Only { only, body: work([plain(kind)]) }]));
    prop_oneof![4 => listed, 3 => even, 1 => all_increased, 2 => spread, 1 => looped]
}

/// How a pattern begins: lines before its rounds, the first round, and its stitches.
fn beginnings() -> impl Strategy<Value = (Vec<Line>, Vec<Placed<Op>>)> {
    let ring = (kinds(), 4_u32..10)
        .prop_map(|(kind, count)| (vec![], work([Op::Ring { kind, count }])));
    let into_chain = (kinds(), 4_u32..10).prop_map(|(kind, count)| {
        (vec![], work([Op::Chain(2), Op::IntoChain { kind, count, nth: 2 }]))
    });
    let joined_chain = (kinds(), 6_u32..40).prop_map(|(kind, count)| {
        let plain =
            Op::Group { body: work([Op::Each { kind, count: 1 }]), times: Times::Around };
        (vec![Line::Do(work([Op::Chain(count), Op::Join]))], work([plain]))
    });
    let oval = (kinds(), 1_u32..12, 2_u32..5).prop_map(|(kind, side, end)| {
        let along = Op::Each { kind, count: side };
        let first = Op::IntoChain { kind, count: end, nth: 2 };
        let last = Op::IntoChain { kind, count: end, nth: 0 };
        let round = work([first, along.clone(), last, Op::OtherSide, along]);
        (vec![Line::Do(work([Op::Chain(side + 3)]))], round)
    });
    prop_oneof![4 => ring, 1 => into_chain, 1 => joined_chain, 1 => oval]
}

/// A whole pattern of `rounds` rounds and what is done between them.
pub fn patterns() -> impl Strategy<Value = Pattern> {
    (beginnings(), 1_usize..9, any::<bool>(), any::<bool>())
        .prop_flat_map(|((before, first), rounds, joined, stated)| {
            let start = lines_of(before, first, joined, stated);
            (0..rounds).fold(Just(start).boxed(), |so_far, _| {
                so_far
                    .prop_flat_map(move |state| {
                        let next = (round_on(state.count.max(1)), 1_u32..5, 0_u32..8);
                        next.prop_map(move |(work, many, after)| {
                            state.clone().and(work, many, after, joined, stated)
                        })
                    })
                    .boxed()
            })
        })
        .prop_map(|state| {
            let mut lines = state.lines;
            lines.push(Line::Do(work([Op::FastenOff])));
            Pattern { lines: lines.into_iter().map(Placed::unread).collect() }
        })
}

/// A pattern in the making: its lines, the last round's number and stitches.
#[derive(Debug, Clone)]
struct Making {
    lines: Vec<Line>,
    last: u32,
    count: u32,
}

fn lines_of(before: Vec<Line>, first: Vec<Placed<Op>>, joined: bool, stated: bool) -> Making {
    let chained = before.iter().find_map(|line| match line {
        Line::Do(ops) if ops.iter().any(|op| op.it == Op::Join) => {
            ops.iter().find_map(|op| if let Op::Chain(n) = op.it { Some(n) } else { None })
        }
        _ => None,
    });
    let made = Making { lines: before, last: 0, count: chained.unwrap_or(0) };
    made.and(first, 1, 0, joined, stated)
}

impl Making {
    /// This and a round more, or `many` where the round leaves what it takes.
    fn and(
        mut self,
        mut worked: Vec<Placed<Op>>,
        many: u32,
        after: u32,
        joined: bool,
        stated: bool,
    ) -> Self {
        let Ok(sum) = tally(&worked, Some(self.count)) else { return self };
        // As every round of a range states the same count.
        let many = if sum.left == self.count { many } else { 1 };
        if joined {
            worked.push(Placed::unread(Op::Join));
        }
        let (first, last) = (self.last + 1, self.last + many);
        let count = stated.then(|| Placed::unread(sum.left));
        self.lines.push(Line::Rounds(Rounds { first, last, work: worked, stated: count }));
        if after == 0 {
            self.lines.push(Line::Do(work([Op::Stuff])));
        }
        Self { last, count: sum.left, ..self }
    }
}
