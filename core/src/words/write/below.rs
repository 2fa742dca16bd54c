//! The round below the one that is written.

use super::terms::NamedKinds;
use crate::words::tally::tally;
use crate::words::tree::{Op, Placed, StitchKind};

/// What the words of a round need to know of the round below it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Below {
    /// The kind of stitch it is worked in; `None` where it has several.
    pub kind: Option<StitchKind>,
    /// Its stitches, where they are known.
    pub count: Option<u32>,
}

/// Below the first round nothing is known, and stitches are single crochet until a text says
/// otherwise.
impl Default for Below {
    fn default() -> Self {
        Self { kind: Some(StitchKind::Single), count: None }
    }
}

impl Below {
    /// The round below the one that follows `rounds` rounds of `work`, and the stitches
    /// worked in them all, where they can be counted.
    pub(super) fn after(self, work: &[Placed<Op>], rounds: u64) -> (Self, Option<u64>) {
        /// Rounds that are counted one by one; where they still change after so many, their
        /// text is not a pattern.
        const MOST: u64 = 1 << 12;
        let kind = NamedKinds::in_work(work).kind();
        let (mut count, mut total) = (self.count, 0_u64);
        let mut left = rounds;
        while left > 0 {
            let before = count;
            let Ok(worked) = tally(work, before) else {
                return (Self { kind, count: None }, None);
            };
            // Rounds alike from here on are counted at once.
            let alike = before == Some(worked.left);
            if !alike && rounds - left >= MOST {
                return (Self { kind, count: None }, None);
            }
            let times = if alike { left } else { 1 };
            total = total.saturating_add(times.saturating_mul(worked.left.into()));
            count = Some(worked.left);
            left -= times;
        }
        (Self { kind, count }, Some(total))
    }
}
