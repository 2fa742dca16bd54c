//! The tree of a written pattern, down to the stitch.
//!
//! A reader makes it from anyone's text and a writer turns it into words; both share it, so
//! that what is written reads back as the same tree. What a round takes and leaves is always
//! computed from its stitches ([`super::tally`]), never taken from what the text states.

use std::ops::Range;

use crate::piece::cloth::Loop;

/// Bytes of a text, from the start of the text. Empty where the tree was not read.
pub type Span = Range<usize>;

/// Something and its place in the text it was read from. Two are equal when what they hold
/// is equal, wherever it stands.
#[derive(Debug, Clone, Eq)]
pub struct Placed<T> {
    /// What stands there.
    pub it: T,
    /// Where it stands.
    pub at: Span,
}

impl<T> Placed<T> {
    /// `it`, read at `at`.
    pub fn at(it: T, at: Span) -> Self {
        Self { it, at }
    }

    /// `it`, not read from any text.
    pub fn unread(it: T) -> Self {
        Self { it, at: 0..0 }
    }
}

impl<T: PartialEq> PartialEq for Placed<T> {
    fn eq(&self, other: &Self) -> bool {
        self.it == other.it
    }
}

/// A pattern: lines in the order in which they are read and worked.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Pattern {
    /// The lines.
    pub lines: Vec<Placed<Line>>,
}

/// One line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Line {
    /// The name of a piece; its rounds follow and are numbered anew.
    Piece(String),
    /// A round, or several worked alike.
    Rounds(Rounds),
    /// Something worked or done outside the numbered rounds: the foundation chain, “stuff
    /// now”, “fasten off”.
    Do(Vec<Placed<Op>>),
    /// An abbreviation and what it means, as a list at the head of a pattern has it.
    Abbreviation {
        /// The short form, as printed.
        short: String,
        /// Its meaning, as printed.
        meaning: String,
    },
    /// Words kept as they stand: a remark, a heading, a size, or what could not be read.
    Note {
        /// The words.
        text: String,
        /// Whether they look like a round that could not be read, rather than a remark.
        unread: bool,
    },
}

/// A numbered round, or a range of rounds worked alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rounds {
    /// First round, counted from 1, as the text numbers it.
    pub first: u32,
    /// Last round; equal to `first` for one round.
    pub last: u32,
    /// What is worked, in order.
    pub work: Vec<Placed<Op>>,
    /// The count printed at the end of the line, if any.
    pub stated: Option<Placed<u32>>,
}

/// A kind of stitch, by its US name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum StitchKind {
    /// Slip stitch.
    Slip,
    /// Single crochet (UK double crochet).
    Single,
    /// Half double crochet (UK half treble).
    HalfDouble,
    /// Double crochet (UK treble).
    Double,
    /// Treble (UK double treble).
    Treble,
}

/// How stitches are worked together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Decrease {
    /// Through both loops, or however the maker is used to.
    Plain,
    /// Through the front loops, so that it does not show. The sums are the same.
    Invisible,
}

/// How often a group is worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Times {
    /// So many times in all, the first included: “rep from * 5 more times” is 6.
    In(u32),
    /// As often as the stitches of the round below allow: “around”, “to end”.
    Around,
}

/// One thing worked or done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Op {
    /// One stitch of `kind` in each of the next `count` stitches: “sc 3”, “3 sc”.
    Each {
        /// Kind of stitch.
        kind: StitchKind,
        /// Stitches of the round below.
        count: u32,
    },
    /// `many` stitches of `kind` in one stitch: “inc”, “2 sc in next st”, “3 sc in next st”.
    Into {
        /// Kind of stitch.
        kind: StitchKind,
        /// Stitches worked there, two or more.
        many: u32,
    },
    /// `many` stitches of the round below worked together into one: “dec”, “sc2tog”.
    Together {
        /// Kind of stitch.
        kind: StitchKind,
        /// Stitches of the round below, two or more.
        many: u32,
        /// How.
        how: Decrease,
    },
    /// A group in brackets or between asterisks. “inc × 6” is a group of one; “sc in each st
    /// around” is a group of one worked around.
    Group {
        /// One working of it; never empty.
        body: Vec<Placed<Self>>,
        /// How often.
        times: Times,
    },
    /// What follows in brackets, or the rest of the line, is worked into one loop only.
    Only {
        /// The loop.
        only: Loop,
        /// What is worked so; never empty.
        body: Vec<Placed<Self>>,
    },
    /// `count` stitches of `kind` into a magic ring.
    Ring {
        /// Kind of stitch.
        kind: StitchKind,
        /// Stitches worked into the ring.
        count: u32,
    },
    /// `count` stitches of `kind` into the `nth` chain from the hook. After “ch 2” and at the
    /// very start this makes a round 1; further on it works one chain of a foundation.
    IntoChain {
        /// Kind of stitch.
        kind: StitchKind,
        /// Stitches worked there.
        count: u32,
        /// Which chain, counted from the hook; 0 stands for the last chain.
        nth: u32,
    },
    /// So many chains.
    Chain(u32),
    /// So many stitches of the round below left unworked.
    Skip(u32),
    /// Closing a round with a slip stitch into its first stitch: no stitch gained.
    Join,
    /// Going round to the other side of a foundation chain.
    OtherSide,
    /// Turning the work.
    Turn,
    /// Placing or moving up the marker.
    Marker,
    /// Changing to this yarn, by the name or letter the text gives it.
    Colour(String),
    /// Stuffing.
    Stuff,
    /// Fastening off.
    FastenOff,
    /// Words kept as they stand inside a line.
    Note(String),
}

impl Op {
    /// Whether it works into stitches of the round below.
    pub fn works_stitches(&self) -> bool {
        use Op::{Each, Group, Into, Only, Together};
        matches!(self, Each { .. } | Into { .. } | Together { .. } | Group { .. } | Only { .. })
    }
}
