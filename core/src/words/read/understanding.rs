//! How a round was understood: what is kept with the reading beside its work.

use super::token::{Say, Tok};
use crate::words::tree::{Placed, Span};

/// What a word that nobody explains was found to mean.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Learnt {
    /// Two stitches in one.
    Increase,
    /// Two stitches together.
    Decrease,
    /// A plain stitch.
    Stitch,
}

impl Learnt {
    pub(super) fn of(tok: Tok) -> Self {
        match tok {
            Tok::Increase(_) => Self::Increase,
            Tok::Decrease(..) | Tok::Say(Say::Together) => Self::Decrease,
            _ => Self::Stitch,
        }
    }

    /// What it means, in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Increase => "an increase",
            Self::Decrease => "a decrease",
            Self::Stitch => "a plain stitch",
        }
    }
}

/// How sure the reading of a round is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sure {
    /// Every word of it was understood, whatever its sums come to.
    Certain,
    /// One of several readings, or a reading around words not understood, that fits the
    /// stitches there are and the count stated, or the round after.
    Fits,
    /// Its work could not be counted. It keeps the count it states.
    Unread,
}

impl Sure {
    /// The word for it in lists.
    pub fn word(self) -> &'static str {
        match self {
            Self::Certain => "certain",
            Self::Fits => "fits",
            Self::Unread => "unread",
        }
    }
}

/// Something that a text does not say and its sums do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Inferred {
    /// All of the work is repeated around.
    Repeat,
    /// A bracket that does not say how often is repeated around.
    BracketRepeat,
    /// How often, said last, holds for all that stands before it.
    RepeatOfAll,
    /// “Repeat n times” counts the first time too, or does not.
    OtherTimes,
    /// The chain at the start counts as a stitch.
    ChainCounts,
    /// The slip stitch at the end only closes the round.
    SlipCloses,
    /// Chains over stitches that are left out stand in their place.
    ChainOverSkip,
    /// So many go into every stitch.
    IntoEvery,
    /// A round of plain stitches: only its count, its loop or its colour is told.
    Even,
    /// The ring takes the stitches that are stated.
    RingOfCount,
    /// So many go into the next stitch.
    IntoNext,
    /// Plain stitches fill the places between what is evenly spaced.
    PlainBetween,
    /// The kind of stitch before “inc” or “dec” says of what kind that is.
    KindOfShaping,
    /// What stands in brackets is a remark.
    BracketIsRemark,
    /// Words that were not understood are a remark.
    Remark,
    /// A stitch of its own kind takes one stitch and leaves one.
    Fancy,
    /// “Row” means round.
    Row,
    /// Words before the work that were not understood hold its first stitch.
    StitchInWords,
    /// “Every 2 stitches” leaves two between.
    Between,
    /// It goes over other pieces and chains; their stitches come to the count.
    Joined,
    /// What is done in the places named: increasing or decreasing.
    Verb,
    /// Stitches that are only counted are plain ones.
    PlainStitches,
    /// What is worked around ends where the stitches end.
    CutShort,
    /// Words that were not all understood, and the round that its counts come to.
    Sums,
    /// Words that were not understood; the stitches before and after tell how many are
    /// gained or lost, and nothing tells where.
    Counts,
}

impl Inferred {
    /// What was supplied, as part of a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Repeat => "repeated around",
            Self::BracketRepeat => "the bracket repeated around",
            Self::RepeatOfAll => "the repeat holding for all before it",
            Self::OtherTimes => "the other way of counting the repeats",
            Self::ChainCounts => "the chain at the start counted as a stitch",
            Self::SlipCloses => "the slip stitch closing the round",
            Self::ChainOverSkip => "chains in the place of the stitches left out",
            Self::IntoEvery => "worked into every stitch",
            Self::IntoNext => "worked into the next stitch",
            Self::Even => "one stitch in each",
            Self::RingOfCount => "the stated stitches worked into the ring",
            Self::PlainBetween => "plain stitches between",
            Self::KindOfShaping => "the stitch named with the shaping",
            Self::BracketIsRemark => "the brackets as a remark",
            Self::Remark => "words beside the work left out",
            Self::Fancy => "the special stitch counted as one",
            Self::Row => "the row as a round",
            Self::StitchInWords => "the words before it as one stitch",
            Self::Between => "so many stitches between",
            Self::Joined => "worked over the pieces that are joined",
            Self::Verb => "shaping in the places named",
            Self::PlainStitches => "the stitches named taken as plain ones",
            Self::CutShort => "the last repeat as far as the stitches reach",
            Self::Sums => "the round that its counts come to",
            Self::Counts => {
                "its words were not understood, its counts fit the rounds around it"
            }
        }
    }
}

/// What is known of a line of rounds beside its work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Understanding {
    /// How sure its reading is.
    pub sure: Sure,
    /// What the text leaves to its sums.
    pub inferred: Vec<Inferred>,
    /// Whether the text numbers it.
    pub numbered: bool,
    /// Whether it leaves open how far it goes.
    pub open: bool,
    /// How many rounds it is said to be, beside its numbers.
    pub told: Option<Placed<u32>>,
    /// Where its work stands: the line without its heading and its count.
    pub work: Span,
    /// Counts it states for each of several rounds: “(10) (20) (40)”.
    pub stated_each: Vec<u32>,
    /// Words in it that look mistyped, though its sums fit.
    pub slips: Vec<Span>,
}
