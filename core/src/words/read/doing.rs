//! What is done between stitches: chains, joins, turns, markers, colours, stuffing.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::token::{any, one_of};

use super::input::{Input, ReadResult, fail, fillers, number, peek, say, tok};
use super::place::stitch_word;
use super::token::{Say, Tok, Token, span};
use crate::words::tree::{Op, Placed, StitchKind};

/// Longest name of a yarn, in words.
const NAME_WORDS: usize = 4;

/// One thing done, appended to `out`.
pub(super) fn doing(input: &mut Input<'_>, out: &mut Vec<Placed<Op>>) -> ReadResult<()> {
    let (op, taken) = alt((other_side, colour, chain, skip, join, marker, plain))
        .with_taken()
        .parse_next(input)?;
    out.push(Placed::at(op, span(taken)));
    Ok(())
}

fn plain(input: &mut Input<'_>) -> ReadResult<Op> {
    let op = any
        .verify_map(|t: &Token| match t.tok {
            Tok::Turn => Some(Op::Turn),
            Tok::FastenOff => Some(Op::FastenOff),
            Tok::Stuff => Some(Op::Stuff),
            _ => None,
        })
        .parse_next(input)?;
    Ok(op)
}

/// “ch 2”, “2 ch”, “chain 2”.
fn chain(input: &mut Input<'_>) -> ReadResult<Op> {
    let lead = opt(number).parse_next(input)?;
    tok(Tok::Chain).parse_next(input)?;
    fillers(input)?;
    let n = match lead {
        Some(n) => n,
        None => opt(number).parse_next(input)?.unwrap_or(1),
    };
    opt(tok(Tok::Stitch)).parse_next(input)?;
    Ok(Op::Chain(n))
}

/// “skip 1 st”, “sk next 2 sts”, “1 M auslassen”.
fn skip(input: &mut Input<'_>) -> ReadResult<Op> {
    let before = (number, stitch_word, tok(Tok::Skip)).map(|(n, ..)| n);
    let after = (
        tok(Tok::Skip),
        fillers,
        opt(say(Say::Next)),
        opt(number),
        opt(tok(Tok::Ordinal(1))),
        opt(stitch_word),
    )
        .map(|(_, _, _, n, ..)| n.unwrap_or(1));
    alt((before, after)).map(Op::Skip).parse_next(input)
}

/// “join with sl st to first sc”, “sl st in first st”.
fn join(input: &mut Input<'_>) -> ReadResult<Op> {
    let first = |input: &mut Input<'_>| {
        let at = alt((say(Say::In), say(Say::To)));
        let which = alt((
            (any.verify(|t: &&Token| matches!(t.tok, Tok::Ordinal(_))), tok(Tok::Chain)).void(),
            tok(Tok::Ordinal(1)).void(),
            (say(Say::Over), fillers, tok(Tok::Chain)).void(),
        ));
        (at, fillers, which, opt(stitch_word), opt((say(Say::To), tok(Tok::Join))))
            .void()
            .parse_next(input)
    };
    let slip = || (opt(number), tok(Tok::Kind(StitchKind::Slip)), opt(tok(Tok::Stitch))).void();
    let said = (
        tok(Tok::Join),
        opt((opt(say(Say::With)), fillers, slip())),
        opt(first),
        opt((say(Say::To), fillers, tok(Tok::Chain), opt(number))),
        opt((say(Say::To), tok(Tok::Join))),
    )
        .void();
    let meant = (slip(), alt((first, (say(Say::To), tok(Tok::Join)).void()))).void();
    alt((said, meant)).value(Op::Join).parse_next(input)
}

fn marker(input: &mut Input<'_>) -> ReadResult<Op> {
    let where_to = (say(Say::In), fillers, opt(tok(Tok::Ordinal(1))), stitch_word).void();
    (tok(Tok::Marker), opt(where_to)).value(Op::Marker).parse_next(input)
}

/// “along the other side of the chain”.
fn other_side(input: &mut Input<'_>) -> ReadResult<Op> {
    let toward = one_of(|t: &Token| {
        matches!(t.tok, Tok::Say(Say::The | Say::Work | Say::Over | Say::In))
    });
    (
        repeat::<_, _, (), _, _>(0..=4, toward),
        say(Say::OtherSide),
        fillers,
        opt(tok(Tok::Chain)),
    )
        .value(Op::OtherSide)
        .parse_next(input)
}

/// “change to green”, “with yarn B”, “in green” in brackets.
fn colour(input: &mut Input<'_>) -> ReadResult<Op> {
    let yarn = |input: &mut Input<'_>| {
        alt((tok(Tok::Yarn), say(Say::Colour))).void().parse_next(input)
    };
    let change = (say(Say::Change), fillers, opt(yarn)).void();
    let with =
        (alt((say(Say::With), say(Say::In), say(Say::Over), tok(Tok::Join))), fillers, yarn)
            .void();
    let of_word = |input: &mut Input<'_>| match (peek(input, 0), peek(input, 1)) {
        (Some(Tok::Say(Say::In | Say::With)), Some(Tok::Unknown))
            if !matches!(peek(input, 2), Some(Tok::Stuff | Tok::FastenOff)) =>
        {
            any.void().parse_next(input)
        }
        _ => fail(input),
    };
    let first = one_of(|t: &Token| {
        !t.tok.parts() && !matches!(t.tok, Tok::Open(_) | Tok::Close | Tok::Number(_))
    });
    let more = one_of(|t: &Token| t.tok == Tok::Unknown);
    let name = (first, repeat::<_, _, (), _, _>(0..NAME_WORDS, more)).take();
    let (_, taken) = (alt((change, with, yarn, of_word)), name).parse_next(input)?;
    // “Join color B in any sc”
    opt((say(Say::In), tok(Tok::Unknown), stitch_word)).parse_next(input)?;
    let name = input.state.text.get(span(taken)).unwrap_or_default();
    Ok(Op::Colour(name.to_owned()))
}
