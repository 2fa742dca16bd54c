//! The count that a line states: “(18)”, “= 18 sts”, “– 18 –”, “18 sts total”.

use winnow::combinator::{alt, eof, opt, repeat};
use winnow::error::EmptyError;
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{one_of, take};

use super::place::{Desk, Input, Read, fail, number, peek, rest, stitch_word, tok};
use super::tokens::{Tok, Token, span};
use super::words::Say;
use crate::words::tree::Placed;

/// Most tokens between the brackets of a count.
const WITHIN: usize = 9;

/// A stated count, if one stands here. `has_work`: whether work came before it in the line,
/// which tells “…, inc (6 sc)” from “(6 sc) in mr”.
pub(super) fn stated(input: &mut Input<'_>, has_work: bool) -> Read<Placed<u32>> {
    let found = match peek(input, 0) {
        Some(Tok::Open(n)) => {
            if !(2..=WITHIN).contains(&n) {
                return fail(input);
            }
            let inside = &rest(input)[1..n];
            let Some((count, kind_named)) = figure(inside) else { return fail(input) };
            let ends = ends_line(input, n + 1);
            if (kind_named && !(has_work && ends)) || multiplied(input, n + 1) {
                return fail(input);
            }
            take(n + 1).parse_next(input)?;
            opt(tok(Tok::Stitch)).parse_next(input)?;
            return Ok(Placed::at(count, span(inside)));
        }
        Some(Tok::Equals) => {
            (tok(Tok::Equals), open_count).map(|(_, n)| n).parse_next(input)?
        }
        Some(Tok::Dash) if has_work => {
            let found = (tok(Tok::Dash), open_count, opt(tok(Tok::Dash)))
                .map(|(_, n, _)| n)
                .parse_next(input)?;
            if !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        Some(Tok::Number(_)) if has_work => {
            let word = peek(input, 1);
            let found = open_count(input)?;
            let worded = matches!(word, Some(Tok::Stitch | Tok::Say(Say::Total)));
            if !worded || !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        Some(Tok::Say(Say::Total)) => {
            let sign = one_of(|t: &Token| {
                matches!(t.tok, Tok::Say(Say::Total | Say::The) | Tok::Colon | Tok::Equals)
            });
            repeat::<_, _, (), _, _>(1..=3, sign).parse_next(input)?;
            open_count(input)?
        }
        _ => return fail(input),
    };
    Ok(found)
}

fn open_count(input: &mut Input<'_>) -> Read<Placed<u32>> {
    let (n, taken) = number.with_taken().parse_next(input)?;
    repeat::<_, _, (), _, _>(0..=3, counted_word).parse_next(input)?;
    Ok(Placed::at(n, span(taken)))
}

fn counted_word(input: &mut Input<'_>) -> Read<()> {
    let total = one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::Total | Say::Around)));
    alt((stitch_word.void(), total.void())).parse_next(input)
}

/// The number inside brackets that hold nothing but a count, and whether a kind of stitch is
/// named with it.
fn figure(inside: &[Token]) -> Option<(u32, bool)> {
    let mut input: Input<'_> =
        Stateful { input: TokenSlice::new(inside), state: Desk::default() };
    let lead = one_of(|t: &Token| {
        matches!(t.tok, Tok::Equals | Tok::Dash | Tok::Colon | Tok::Say(Say::Total | Say::The))
    });
    let tail = one_of(|t: &Token| {
        matches!(
            t.tok,
            Tok::Stop | Tok::Dash | Tok::Round | Tok::Say(Say::Each | Say::In | Say::The)
        )
    });
    let tail = alt((counted_word, tail.void()));
    let kind_named = inside.iter().any(|t| matches!(t.tok, Tok::Kind(_) | Tok::Chain));
    (
        repeat::<_, _, (), EmptyError, _>(0..=2, lead),
        number,
        repeat::<_, _, (), _, _>(0..=4, tail),
        eof,
    )
        .map(|(_, n, ..)| (n, kind_named))
        .parse_next(&mut input)
        .ok()
}

/// Whether the line, or its sentence, ends `ahead` of here.
fn ends_line(input: &Input<'_>, ahead: usize) -> bool {
    matches!(peek(input, ahead), None | Some(Tok::Stop | Tok::Bullet))
}

/// Whether what stands `ahead` of here says how often or where: then brackets before it held
/// work.
fn multiplied(input: &Input<'_>, ahead: usize) -> bool {
    matches!(
        (peek(input, ahead), peek(input, ahead + 1)),
        (Some(Tok::Times | Tok::Turns(_) | Tok::InEach), _)
            | (Some(Tok::Say(Say::In | Say::Around | Say::Each)), _)
            | (Some(Tok::Number(_)), Some(Tok::Times | Tok::Say(Say::More)))
            | (Some(Tok::Star), Some(Tok::Number(_)))
    )
}
