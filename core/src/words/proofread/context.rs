//! What the checks of one text share.

use std::cell::Cell;

use crate::words::course::Course;
use crate::words::lexicon::Lexicon;
use crate::words::read::{Reading, Understanding};
use crate::words::tree::Span;

/// What is at hand while a pattern is proofread.
pub(super) struct ProofContext<'a> {
    pub(super) text: &'a str,
    pub(super) reading: &'a Reading,
    pub(super) lexicon: &'a Lexicon,
    pub(super) courses: &'a [Course<'a>],
    /// How many more mends are looked for.
    pub(super) mends: Cell<usize>,
}

impl ProofContext<'_> {
    /// How the line of rounds at `at` was understood.
    pub(super) fn understood(&self, at: &Span) -> Option<&Understanding> {
        let lines = &self.reading.pattern.lines;
        self.reading.understood.get(&lines.partition_point(|l| l.at.start < at.start))
    }

    /// Whether one more mend may be looked for.
    pub(super) fn may_mend(&self) -> bool {
        let left = self.mends.get();
        self.mends.set(left.saturating_sub(1));
        left > 0
    }

    pub(super) fn words(&self, at: &Span) -> &str {
        self.text.get(at.clone()).unwrap_or_default()
    }
}
