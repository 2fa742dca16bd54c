//! The ring that a piece begins in: “MR, 6 sc”, “ring of 6”, “6 M in den Fadenring”.

use winnow::combinator::{opt, repeat};
use winnow::prelude::*;
use winnow::token::{any, one_of};

use super::input::{Input, ReadResult, fillers, number, peek, rest, say, since, tok};
use super::token::{Say, Tok, Token};
use crate::words::tree::{Op, Placed, StitchKind};

/// A ring that is named before the stitches worked into it: “MR, 6 sc”. Those of “MR 6” are
/// returned.
pub(super) fn ring(input: &mut Input<'_>) -> ReadResult<Option<Placed<Op>>> {
    // “6 M in den Fadenring”
    let start = rest(input);
    let begun = one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::Work | Say::The | Say::Make)));
    let stitches = (
        repeat::<_, _, (), _, _>(0..=2, begun),
        number,
        tok(Tok::Stitch),
        opt(say(Say::In)),
        fillers,
        tok(Tok::Ring),
    )
        .map(|(_, n, ..)| n);
    if let Some(count) = opt(stitches).parse_next(input)? {
        let kind = input.state.kind.unwrap_or(StitchKind::Single);
        return Ok(Some(Placed::at(Op::Ring { kind, count }, since(start, input))));
    }
    let lead = one_of(|t: &Token| {
        let article = matches!(t.tok, Tok::Number(1));
        article
            || matches!(t.tok, Tok::Say(Say::In | Say::Work | Say::The | Say::Make | Say::With))
    });
    repeat::<_, _, (), _, _>(0..=3, lead).parse_next(input)?;
    let from = rest(input);
    tok(Tok::Ring).parse_next(input)?;
    let named = since(from, input);
    opt(say(Say::With)).parse_next(input)?;
    // “anillo mágico de 7 puntos”, “ring with 6 stitches”
    let of = repeat::<_, _, (), _, _>(
        0..=3,
        one_of(|t: &Token| {
            matches!(t.tok, Tok::Colon | Tok::Dash | Tok::Say(Say::The | Say::With | Say::In))
        }),
    );
    let kind = input.state.kind.unwrap_or(StitchKind::Single);
    let word = any.verify_map(move |t: &Token| match t.tok {
        Tok::Stitch => Some(kind),
        Tok::Kind(kind) if kind != StitchKind::Slip => Some(kind),
        _ => None,
    });
    let told = (of, number, word).map(|(_, n, kind)| (n, kind));
    if let Some((count, kind)) = opt(told).parse_next(input)? {
        return Ok(Some(Placed::at(Op::Ring { kind, count }, since(from, input))));
    }
    // “ring of 6”
    let of_number = (say(Say::The), fillers, number).map(|(.., n)| n);
    let before = input.checkpoint();
    if let Some(count) = opt(of_number).parse_next(input)? {
        if work_ends(peek(input, 0)) {
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            return Ok(Some(Placed::at(Op::Ring { kind, count }, since(from, input))));
        }
        input.reset(&before);
    }
    let alone =
        !peek(input, 1).is_some_and(|t| t.is_work() || matches!(t, Tok::Times | Tok::Stitch));
    if alone && let Some(count) = opt(number).parse_next(input)? {
        let kind = input.state.kind.unwrap_or(StitchKind::Single);
        return Ok(Some(Placed::at(Op::Ring { kind, count }, since(from, input))));
    }
    input.state.ring = Some(named);
    Ok(None)
}

/// Whether the work ends before `next`: at the end, or at a count.
pub(super) fn work_ends(next: Option<Tok>) -> bool {
    next.is_none_or(|t| t.parts() || matches!(t, Tok::Open(_) | Tok::Equals))
}
