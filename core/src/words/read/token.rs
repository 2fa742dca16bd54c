//! What a word, a number or a sign of a text means, and where it stands.

use serde::Deserialize;

use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Span, StitchKind};

/// A word that says where, how often or in what order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub(super) enum Say {
    /// “next”
    Next,
    /// “in”, “into”
    In,
    /// “each”, “every”
    Each,
    /// “around”, “to end”
    Around,
    /// “the”, “of”: says nothing by itself
    The,
    /// “work”, “crochet”: says nothing before a stitch
    Work,
    /// “repeat”
    Repeat,
    /// “as”, “same as”, before a round
    As,
    /// “from”
    From,
    /// “to”, “until”
    To,
    /// “more”
    More,
    /// “then”, “and”
    Then,
    /// “last”
    Last,
    /// “same”
    Same,
    /// “together”
    Together,
    /// “over”
    Over,
    /// “row”
    Row,
    /// “total”
    Total,
    /// “make”
    Make,
    /// “change to”
    Change,
    /// “with”
    With,
    /// “colour”
    Colour,
    /// “other side”, of a foundation chain
    OtherSide,
    /// “only”, after a loop
    Only,
    /// “through front loops”: how an invisible decrease is worked
    ThroughFront,
    /// “verdoppeln”: worked twice into
    Doubled,
    /// “materials”, “notes”: heads a part of a pattern that is no piece
    Section,
    /// “foundation round”: heads a round that has no number
    Unnumbered,
    /// “evenly spaced”
    Spread,
    /// “without”
    Without,
    /// “for”, before how many rounds
    For,
    /// “the others”
    Others,
    /// “other”, after “every”
    Other,
    /// “until it is closed”: how far is left to the maker
    Until,
    /// “or”
    Or,
    /// “n°”, before the number of a round
    Numbered,
    /// “do not stuff”: what is not done
    Not,
    /// “one yes, one no”: every other stitch
    Alternate,
    /// “after every”, before the stitches that stand between
    After,
    /// “does not count”: a remark on how the work is counted
    Remark,
}

/// What a word, number or sign means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tok {
    /// A number up to [`MAX_NUMBER`].
    Number(u32),
    /// A number that counts nothing here: with decimals, or beyond [`MAX_NUMBER`].
    OddNumber,
    /// “2nd”
    Ordinal(u32),
    /// “twice”
    Turns(u32),
    Kind(StitchKind),
    /// A bare “inc”, and the kind it is of.
    Increase(StitchKind),
    /// A bare “dec”, and the kind it is of.
    Decrease(StitchKind, Decrease),
    /// “even”, and the kind it is of.
    Even(StitchKind),
    Chain,
    /// “popcorn”: a stitch of its own kind that takes one and leaves one.
    Fancy,
    Ring,
    Round,
    Stitch,
    Loop(Loop),
    Skip,
    Turn,
    Join,
    FastenOff,
    Stuff,
    Marker,
    Yarn,
    Hook,
    Gauge,
    /// “in each st around”
    InEach,
    /// “times”, “×”
    Times,
    Say(Say),
    /// A bracket, and how many tokens further on its fellow stands; 0 where it has none.
    Open(usize),
    Close,
    Star,
    TwoStars,
    Comma,
    /// “/”
    Slash,
    /// “|”
    Bar,
    Stop,
    Colon,
    Dash,
    Equals,
    Bullet,
    Newline,
    Unknown,
}

impl Tok {
    /// Whether it parts one instruction from the next.
    pub(super) fn parts(self) -> bool {
        use Tok::{Bar, Bullet, Colon, Comma, Dash, Say as Word, Slash, Stop};
        matches!(self, Comma | Slash | Bar | Stop | Colon | Dash | Bullet | Word(Say::Then))
    }

    /// Whether it names something that is worked.
    pub(super) fn is_work(self) -> bool {
        use Tok::{Chain, Decrease, Even, Fancy, Increase, Kind, Skip};
        matches!(self, Kind(_) | Increase(_) | Decrease(..) | Even(_) | Chain | Skip | Fancy)
    }

    /// Whether it counts: words with it are more than a remark.
    pub(super) fn counts(self) -> bool {
        matches!(self, Self::Number(_) | Self::OddNumber | Self::Turns(_))
    }
}

/// A token and where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Token {
    pub(super) tok: Tok,
    pub(super) start: usize,
    pub(super) end: usize,
    /// Whether nothing parts it from the token before.
    pub(super) glued: bool,
    /// Whether it is spelt out rather than written in digits or signs.
    pub(super) spelt: bool,
    /// Whether it is a word in the plural, as far as an “s” tells.
    pub(super) plural: bool,
}

impl Token {
    pub(super) fn at(&self) -> Span {
        self.start..self.end
    }

    /// This place with another meaning.
    pub(super) fn meaning(self, tok: Tok) -> Self {
        Self { tok, ..self }
    }
}

/// From the first of `tokens` to the last; empty for none.
pub(super) fn span(tokens: &[Token]) -> Span {
    match (tokens.first(), tokens.last()) {
        (Some(first), Some(last)) => first.start..last.end,
        _ => 0..0,
    }
}

/// The largest number that counts something; larger ones are kept as text.
pub(super) const MAX_NUMBER: u32 = 99_999;
