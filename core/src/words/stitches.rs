//! A written round stitch by stitch: where its text puts increases and decreases.

use super::tally::tally;
use super::tree::{Op, Placed, StitchKind, Times};
use crate::piece::stitch::{Placement, Stitch};

/// Most stitches a round is written out to.
const MOST_STITCHES: usize = 40_000;

/// The stitches of `work` on a round of `below`, as its shortest repeat. `None` where it has
/// more than plain stitches, two in one and two together, or does not take just the stitches
/// there are.
pub fn placement(work: &[Placed<Op>], below: u32) -> Option<Placement> {
    let mut stitches = Vec::new();
    write_out(work, below, &mut stitches)?;
    let taken: u32 = stitches.iter().map(|s: &Stitch| s.consumes()).sum();
    if taken == below { Placement::of_stitches(&stitches) } else { None }
}

fn write_out(work: &[Placed<Op>], available: u32, out: &mut Vec<Stitch>) -> Option<()> {
    let mut left = available;
    for (i, op) in work.iter().enumerate() {
        let begun = out.len();
        match &op.it {
            Op::Each { kind: StitchKind::Slip, .. } | Op::Skip(_) => return None,
            Op::Each { count, .. } => put(out, Stitch::Plain, *count)?,
            Op::Into { many: 2, .. } => put(out, Stitch::Increase, 1)?,
            Op::Together { many: 2, .. } => put(out, Stitch::Decrease, 1)?,
            Op::Only { body, .. } => write_out(body, left, out)?,
            Op::Group { body, times } => {
                let each = tally(body, Some(left)).ok()?.taken.max(1);
                let times = match times {
                    Times::In(n) => *n,
                    Times::Around => {
                        let later = tally(&work[i + 1..], None).map_or(0, |t| t.taken);
                        left.saturating_sub(later) / each
                    }
                };
                let mut once = Vec::new();
                write_out(body, left.min(each), &mut once)?;
                if once.len().checked_mul(times as usize)? > MOST_STITCHES {
                    return None;
                }
                (0..times).for_each(|_| out.extend_from_slice(&once));
            }
            Op::Into { .. }
            | Op::Together { .. }
            | Op::Ring { .. }
            | Op::IntoChain { .. }
            | Op::OtherSide => return None,
            Op::Chain(_)
            | Op::Join
            | Op::Turn
            | Op::Marker
            | Op::Colour(_)
            | Op::Stuff
            | Op::FastenOff
            | Op::Note(_) => {}
        }
        let taken: u32 = out[begun..].iter().map(|s| s.consumes()).sum();
        left = left.saturating_sub(taken);
    }
    Some(())
}

fn put(out: &mut Vec<Stitch>, stitch: Stitch, times: u32) -> Option<()> {
    if out.len() + times as usize > MOST_STITCHES {
        return None;
    }
    out.extend(std::iter::repeat_n(stitch, times as usize));
    Some(())
}
