//! The tokens of a line on their way through the grammar, and what reading them leaves beside
//! the tree.

use winnow::combinator::repeat;
use winnow::error::{EmptyError, ParserError as _};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{any, one_of};

use super::token::{Say, Tok, Token, span};
use crate::piece::cloth::Loop;
use crate::words::tree::{Span, StitchKind, Times};

/// The tokens of a line and what reading them leaves beside the tree.
pub(super) type Input<'a> = Stateful<TokenSlice<'a, Token>, LineMemo<'a>>;
/// What a parser returns; why one fails is never told, as what fails is kept as text.
pub(super) type ReadResult<T> = Result<T, EmptyError>;

/// What reading a line keeps beside the tree.
#[derive(Debug, Default)]
pub(super) struct LineMemo<'a> {
    /// The text that the tokens are of.
    pub(super) text: &'a str,
    /// Places that could not be read.
    pub(super) unread: Vec<Span>,
    /// The kind of stitch where none is named.
    pub(super) kind: Option<StitchKind>,
    /// Brackets and loops that are open.
    pub(super) depth: usize,
    /// Whether an asterisk is open, so that the next one closes it.
    pub(super) in_star: bool,
    /// A ring was named, and the stitches worked into it follow.
    pub(super) ring: Option<Span>,
    /// The loop that the rest of the line is worked in, and how many operations of the line
    /// came before.
    pub(super) loop_from: Option<(Loop, usize)>,
    /// “to last 2 sts”: how many stitches are left to what comes after, and where it says so.
    pub(super) to_last: Vec<(u32, Span)>,
    /// Where groups start that are said without how often.
    pub(super) bare: Vec<usize>,
    /// Where a group starts of which “repeat from * n times” may or may not count the first.
    pub(super) unsure: Option<usize>,
    /// “evenly spaced” was said.
    pub(super) spread: bool,
    /// “every 2 stitches” was said, without an ordinal.
    pub(super) every: bool,
    /// “every 2nd stitch” was said.
    pub(super) every_nth: bool,
    /// Two neighbouring places were just named, and the verb follows.
    pub(super) paired: bool,
    /// Every stitch was just named as the place, and the verb follows.
    pub(super) everywhere: bool,
    /// Every stitch, or every so many-th, was just named as the place.
    pub(super) placed: bool,
    /// What was worked just before goes into one stitch, all of it.
    pub(super) collect: bool,
    /// A stitch of its own kind was taken for a plain one.
    pub(super) fancy: bool,
    /// How often, said where nothing stands that it belongs to.
    pub(super) stray: Option<Times>,
}

pub(super) fn tok<'a>(want: Tok) -> impl Parser<Input<'a>, &'a Token, EmptyError> {
    one_of(move |t: &Token| t.tok == want)
}

pub(super) fn say<'a>(want: Say) -> impl Parser<Input<'a>, &'a Token, EmptyError> {
    tok(Tok::Say(want))
}

pub(super) fn number(input: &mut Input<'_>) -> ReadResult<u32> {
    any.verify_map(|t: &Token| match t.tok {
        Tok::Number(n) if n > 0 => Some(n),
        _ => None,
    })
    .parse_next(input)
}

/// “the”, “of”: words that say nothing.
pub(super) fn fillers(input: &mut Input<'_>) -> ReadResult<()> {
    repeat(0..=4, say(Say::The)).parse_next(input)
}

/// The tokens that are left.
pub(super) fn rest<'a>(input: &Input<'a>) -> &'a [Token] {
    input.peek_slice(input.eof_offset())
}

/// From the first of the tokens `from` to the last one that has been read since.
pub(super) fn since(from: &[Token], input: &Input<'_>) -> Span {
    span(&from[..from.len() - input.eof_offset()])
}

/// The token `ahead` of the next one.
pub(super) fn peek(input: &Input<'_>, ahead: usize) -> Option<Tok> {
    input.input.get(ahead).map(|t| t.tok)
}

pub(super) fn fail<T>(input: &Input<'_>) -> ReadResult<T> {
    Err(EmptyError::from_input(input))
}
