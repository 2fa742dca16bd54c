//! What stitches take of the round below and leave for the round above, computed.

use super::tree::{Op, Placed, Span, Times};

/// Stitches taken and left. Saturates rather than overflows: a text may state any number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Stitches of the round below that are taken up.
    pub taken: u32,
    /// Stitches left for the round above.
    pub left: u32,
}

impl Tally {
    /// This and then `other`.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            taken: self.taken.saturating_add(other.taken),
            left: self.left.saturating_add(other.left),
        }
    }

    /// This, `n` times over.
    #[must_use]
    pub fn times(self, n: u32) -> Self {
        Self { taken: self.taken.saturating_mul(n), left: self.left.saturating_mul(n) }
    }
}

/// Why work cannot be tallied on the stitches that are there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TallyError {
    /// A group worked around does not come out even: `over` stitches remain of `available`
    /// when it has been worked as often as it goes.
    Uneven {
        /// The group.
        at: Span,
        /// Stitches one working takes.
        each: u32,
        /// Stitches there were for it.
        available: u32,
        /// Stitches that remain.
        over: u32,
    },
    /// A group worked around takes no stitches, so it never ends.
    Endless {
        /// The group.
        at: Span,
    },
    /// The round below has no known count, and something is worked around it.
    Unknown {
        /// What is worked around.
        at: Span,
    },
}

/// What `work` takes and leaves on a round of `available` stitches (`None` where that is not
/// known, as before a first round).
///
/// # Errors
/// [`TallyError`] where a group worked around does not fit.
pub fn tally(work: &[Placed<Op>], available: Option<u32>) -> Result<Tally, TallyError> {
    let mut sum = Tally::default();
    // What is worked around leaves room for what comes after it in the same round.
    let after = available.map(|_| taken_after(work));
    for (i, op) in work.iter().enumerate() {
        let remaining = available.map(|a| a.saturating_sub(sum.taken));
        let after = after.as_ref().and_then(|a| a.get(i)).copied().unwrap_or_default();
        let room = remaining.map(|r| r.saturating_sub(after));
        sum = sum.and(tally_op(op, room)?);
    }
    Ok(sum)
}

/// What is taken behind each operation; nothing where some of that cannot be told by itself.
/// Reckoned from the end, so that a long line takes no longer than its length.
fn taken_after(work: &[Placed<Op>]) -> Vec<u32> {
    let mut after = vec![0; work.len()];
    let mut sum = Some(0_u32);
    for (i, op) in work.iter().enumerate().rev() {
        after[i] = sum.unwrap_or_default();
        sum = match (sum, tally_op(op, None)) {
            (Some(sum), Ok(own)) => Some(sum.saturating_add(own.taken)),
            _ => None,
        };
    }
    after
}

fn tally_op(op: &Placed<Op>, room: Option<u32>) -> Result<Tally, TallyError> {
    let of = |taken, left| Ok(Tally { taken, left });
    match &op.it {
        Op::Each { count, .. } => of(*count, *count),
        Op::Into { many, .. } => of(1, *many),
        Op::Together { many, .. } => of(*many, 1),
        Op::Ring { count, .. } => of(0, *count),
        Op::IntoChain { count, .. } => of(0, *count),
        Op::Skip(n) => of(*n, 0),
        Op::Only { body, .. } => tally(body, room),
        Op::Group { body, times: Times::In(n) } => Ok(tally(body, None)?.times(*n)),
        Op::Group { body, times: Times::Around } => {
            let once = tally(body, None)?;
            if once.taken == 0 {
                return Err(TallyError::Endless { at: op.at.clone() });
            }
            let Some(room) = room else {
                return Err(TallyError::Unknown { at: op.at.clone() });
            };
            match room % once.taken {
                0 => Ok(once.times(room / once.taken)),
                over => Err(TallyError::Uneven {
                    at: op.at.clone(),
                    each: once.taken,
                    available: room,
                    over,
                }),
            }
        }
        Op::Chain(_)
        | Op::Join
        | Op::OtherSide
        | Op::Turn
        | Op::Marker
        | Op::Colour(_)
        | Op::Stuff
        | Op::FastenOff
        | Op::Note(_) => of(0, 0),
    }
}
