//! What can be told of a line only when all of it is read.

use crate::words::tally::tally;
use crate::words::tree::{Op, Placed, Span, Times};

/// Whether it works stitches, rather than readying for them.
pub(super) fn is_worked(op: &Op) -> bool {
    use Op::{Chain, Colour, FastenOff, Join, Marker, Note, Stuff, Turn};
    !matches!(op, Chain(_) | Colour(_) | FastenOff | Join | Marker | Note(_) | Stuff | Turn)
}

/// A group that says not how often is worked around where it is all the work of the line
/// (as Spanish patterns write it), and once otherwise.
pub(super) fn settle_bare(ops: &mut [Placed<Op>], bare: &[usize]) {
    let mut worked = ops.iter_mut().filter(|op| is_worked(&op.it));
    if let (Some(only), None) = (worked.next(), worked.next())
        && bare.contains(&only.at.start)
        && let Op::Group { times, .. } = &mut only.it
    {
        *times = Times::Around;
    }
}

/// Whether what comes after the operation that says so at `at` takes up `left` stitches, so
/// that “to last 2 sts” is all said by working around.
pub(super) fn leaves(ops: &[Placed<Op>], left: u32, at: &Span) -> bool {
    let said = ops.iter().position(|op| op.at.start <= at.start && at.end <= op.at.end);
    said.is_some_and(|i| tally(&ops[i + 1..], None).is_ok_and(|t| t.taken == left))
}

/// Where the stated count comes out with one working less, “n times” counted all of them.
pub(super) fn settle_unsure(
    ops: &mut [Placed<Op>],
    unsure: Option<usize>,
    stated: Option<&Placed<u32>>,
) {
    let (Some(start), Some(stated)) = (unsure, stated) else { return };
    let comes_out = |ops: &[Placed<Op>]| tally(ops, None).is_ok_and(|t| t.left == stated.it);
    if comes_out(ops) {
        return;
    }
    let add = |ops: &mut [Placed<Op>], by: i64| {
        if let Some(Placed { it: Op::Group { times: Times::In(n), .. }, .. }) =
            ops.iter_mut().find(|op| op.at.start == start)
        {
            *n = n.saturating_add_signed(if by < 0 { -1 } else { 1 });
        }
    };
    add(ops, -1);
    if !comes_out(ops) {
        add(ops, 1);
    }
}

/// How often, said apart from what it belongs to: the last brackets that say none, else all
/// the work before.
pub(super) fn settle_stray(ops: &mut Vec<Placed<Op>>, bare: &mut Vec<usize>, how: Times) {
    let group = ops.iter_mut().rev().find(|op| {
        matches!(op.it, Op::Group { times: Times::In(1), .. }) && bare.contains(&op.at.start)
    });
    if let Some(Placed { it: Op::Group { times, .. }, at }) = group {
        *times = how;
        bare.retain(|start| *start != at.start);
        return;
    }
    let worked = |op: &Placed<Op>| is_worked(&op.it);
    let (Some(first), Some(last)) = (ops.iter().position(worked), ops.iter().rposition(worked))
    else {
        return;
    };
    let body: Vec<_> = ops.drain(first..=last).collect();
    let start = body[0].at.start;
    let end = body.iter().map(|op| op.at.end).max().unwrap_or(start);
    ops.insert(first, Placed::at(Op::Group { body, times: how }, start..end));
}
