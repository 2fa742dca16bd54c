//! What a proofreader says of one place of a text.

use serde::Serialize;

use crate::words::tree::Span;

/// What is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FindingKind {
    /// A round takes other stitches than there are.
    Takes,
    /// A round comes to another count than it states.
    Count,
    /// A repeat worked around does not divide the stitches there are.
    Repeat,
    /// A round number is left out.
    Skipped,
    /// A round number is there twice.
    Doubled,
    /// An abbreviation is not in the pattern's own list.
    Undefined,
    /// Stuffing comes when the opening is too small for it.
    StuffLate,
    /// A place is named where the counts do not have it.
    Reference,
    /// Something looks like a round and cannot be read.
    Unread,
}

/// One thing to look at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// What is wrong.
    pub kind: FindingKind,
    /// The round it is in, by its printed number.
    pub round: Option<u32>,
    /// Where, in bytes of the text.
    pub at: Span,
    /// What was found and what was expected, one sentence.
    pub message: String,
    /// The likeliest mend, where there is one.
    pub mend: Option<Mend>,
}

/// How a finding can be mended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mend {
    /// In words, one sentence.
    pub text: String,
    /// Replace these bytes by this; read again before it is offered.
    pub edit: Option<(Span, String)>,
}
