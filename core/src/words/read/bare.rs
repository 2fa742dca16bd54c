//! A stitch before it is known where and how often it is worked, and what it comes to then.

use super::place::{Turns, Where};
use crate::words::tree::{Decrease, Op, Placed, Span, StitchKind, Times};

/// What is worked, before it is known where and how often.
#[derive(Debug, Clone)]
pub(super) enum BareStitch {
    /// So many stitches of a kind, if a number is said.
    Plain(StitchKind, Option<u32>),
    /// An increase or a decrease, and how many of them if a number is said.
    Shaping(Op, Option<u32>),
    /// An increase or a decrease once in every so many stitches.
    Every(Op, u32),
    /// One stitch left out, between stitches of a kind.
    Skipped(StitchKind),
}

/// `many` stitches of a kind worked together.
pub(super) fn together(kind: StitchKind, many: u32) -> Op {
    Op::Together { kind, many, how: Decrease::Plain }
}

/// One shaping once in every `period` stitches.
fn every_nth(period: u32, op: &Op, at: &Span) -> Option<Op> {
    let (kind, takes) = match op {
        Op::Each { kind, .. } => (*kind, 1),
        Op::Into { kind, .. } => (*kind, 1),
        Op::Together { kind, many, .. } => (*kind, *many),
        _ => return None,
    };
    let plain = period.checked_sub(takes)?;
    let plain = (plain > 0).then_some(Op::Each { kind, count: plain });
    let body = plain.into_iter().chain([op.clone()]).map(|op| Placed::at(op, at.clone()));
    Some(Op::Group { body: body.collect(), times: Times::Around })
}

/// What is worked where and how often; none where that makes no sense.
pub(super) fn built(
    base: &BareStitch,
    place: Option<Where>,
    turns: Option<Turns>,
    at: &Span,
) -> Option<Op> {
    let times = turns.map(Turns::times);
    let group = |op, times| Op::Group { body: vec![Placed::at(op, at.clone())], times };
    // In every so many-th stitch: the third of every three.
    let every = |period: u32, kind, op| {
        let plain = (period > 1).then(|| Op::Each { kind, count: period - 1 });
        let body = plain.into_iter().chain([op]).map(|op| Placed::at(op, at.clone()));
        Op::Group { body: body.collect(), times: Times::Around }
    };
    let op = match base {
        BareStitch::Plain(kind, count) => {
            let (kind, n) = (*kind, count.unwrap_or(1));
            let one =
                if n > 1 { Op::Into { kind, many: n } } else { Op::Each { kind, count: 1 } };
            match place {
                // “sc x 6” is six stitches, not a group of one.
                None if count.is_none() && matches!(times, Some(Times::In(_))) => {
                    let Some(Times::In(count)) = times else { return None };
                    return Some(Op::Each { kind, count });
                }
                None => Op::Each { kind, count: n },
                Some(Where::One) => one,
                Some(Where::Even) if n > 1 => Op::Each { kind, count: n },
                Some(Where::Even) => group(one, Times::Around),
                Some(Where::Next(m)) if n == 1 => Op::Each { kind, count: m },
                Some(Where::Next(m)) if n == m && n > 4 => Op::Each { kind, count: m },
                Some(Where::Next(1)) => one,
                Some(Where::Next(m)) => group(one, Times::In(m)),
                Some(Where::EachAround) => group(one, Times::Around),
                Some(Where::Around) if n == 1 => group(one, Times::Around),
                Some(Where::Around) => Op::Each { kind, count: n },
                Some(Where::Every(period)) if n > 1 => every(period, kind, one),
                Some(Where::Every(_) | Where::Pair(_)) => return None,
                Some(Where::Chain(nth)) => Op::IntoChain { kind, count: n, nth },
                Some(Where::Ring) => Op::Ring { kind, count: n },
            }
        }
        BareStitch::Every(op, period) => every_nth(*period, op, at)?,
        BareStitch::Skipped(kind) => match place {
            Some(Where::Every(period)) => every(period, *kind, Op::Skip(1)),
            _ => return None,
        },
        BareStitch::Shaping(op, count) => {
            let (kind, takes) = match op {
                Op::Into { kind, .. } => (*kind, 1),
                Op::Together { kind, many, .. } => (*kind, *many),
                _ => return None,
            };
            let counted = match count {
                Some(n) if *n > 1 => group(op.clone(), Times::In(*n)),
                _ => op.clone(),
            };
            match place {
                None | Some(Where::One) => counted,
                Some(Where::Next(m)) if m == takes.saturating_mul(count.unwrap_or(1)) => {
                    counted
                }
                Some(Where::Next(m)) if takes == 1 && count.is_none_or(|n| n == 1) => {
                    group(op.clone(), Times::In(m))
                }
                Some(Where::EachAround | Where::Around | Where::Even)
                    if count.is_none_or(|n| n == 1) =>
                {
                    group(op.clone(), Times::Around)
                }
                // “6 inc around” says again that they lie all around.
                Some(Where::Around) => counted,
                Some(Where::Every(period)) => every(period, kind, op.clone()),
                Some(Where::Pair(last)) if takes == 2 => every_nth(last, op, at)?,
                _ => return None,
            }
        }
    };
    Some(match times {
        Some(times) => group(op, times),
        None => op,
    })
}
