//! The count that a line states: “(18)”, “= 18 sts”, “– 18 –”, “18 sts total”.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::token::{one_of, take};

use super::input::{Input, ReadResult, fail, number, peek, rest, tok};
use super::place::stitch_word;
use super::token::{Say, Tok, Token, span};
use crate::words::tree::{Placed, StitchKind};

/// Most tokens between the brackets of a count.
const WITHIN: usize = 24;

/// A stated count, if one stands here. `has_work`: whether work came before it in the line,
/// which tells “…, inc (6 sc)” from “(6 sc) in mr”.
/// `parted` is the sign that stands just before.
pub(super) fn stated(
    input: &mut Input<'_>,
    has_work: bool,
    parted: Option<Tok>,
) -> ReadResult<Placed<u32>> {
    let found = match peek(input, 0) {
        Some(Tok::Open(n)) => {
            if !(2..=WITHIN).contains(&n) {
                return fail(input);
            }
            let inside = &rest(input)[1..n];
            let Some((count, kind_named)) = figure_of(inside) else { return fail(input) };
            let ends = ends_line(input, n + 1);
            let closes = ends || peek(input, n + 1) == Some(Tok::Comma);
            if (kind_named && !(has_work && closes)) || multiplied(input, n + 1) {
                return fail(input);
            }
            take(n + 1).parse_next(input)?;
            opt(tok(Tok::Stitch)).parse_next(input)?;
            return Ok(Placed::at(count, span(inside)));
        }
        Some(Tok::Equals) => {
            let sign = one_of(|t: &Token| {
                matches!(
                    t.tok,
                    Tok::Equals | Tok::Colon | Tok::Say(Say::Total | Say::The | Say::Only)
                )
            });
            repeat::<_, _, (), _, _>(1..=4, sign).parse_next(input)?;
            open_count(input)?
        }
        Some(Tok::Dash) if has_work => {
            let dashes = repeat::<_, _, (), _, _>(1..=3, tok(Tok::Dash));
            let found = (dashes, open_count, opt(tok(Tok::Dash)), opt(remark))
                .map(|(_, n, ..)| n)
                .parse_next(input)?;
            if !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        // “… around / 18”
        Some(Tok::Slash) if has_work && matches!(peek(input, 1), Some(Tok::Number(_))) => {
            let found = (tok(Tok::Slash), open_count).map(|(_, n)| n).parse_next(input)?;
            if !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        // “… around: 10 sc.”
        Some(Tok::Colon)
            if has_work
                && matches!(peek(input, 1), Some(Tok::Number(_)))
                && matches!(peek(input, 2), Some(Tok::Stitch | Tok::Kind(_))) =>
        {
            let found = (tok(Tok::Colon), open_count).map(|(_, n)| n).parse_next(input)?;
            if !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        Some(Tok::Number(_)) if has_work => {
            let word = peek(input, 1);
            let found = open_count(input)?;
            let worded = matches!(word, Some(Tok::Stitch | Tok::Say(Say::Total)));
            // “…, 18.” and “…. 18 sc”: behind a comma or a full stop, at the end of a line.
            let apart = match parted {
                Some(Tok::Stop) => matches!(word, None | Some(Tok::Stop | Tok::Kind(_))),
                Some(Tok::Comma) => matches!(word, None | Some(Tok::Stop)),
                Some(Tok::Bar) => matches!(word, None | Some(Tok::Bar)),
                _ => false,
            };
            if !(worded || apart) || !ends_line(input, 0) {
                return fail(input);
            }
            found
        }
        // “… and so on to 28 sts”
        Some(Tok::Say(Say::To | Say::Until))
            if has_work
                && matches!(peek(input, 1), Some(Tok::Number(3..)))
                && matches!(peek(input, 2), Some(Tok::Stitch | Tok::Kind(_)))
                && (ends_line(input, 3)
                    || peek(input, 3) == Some(Tok::Say(Say::Total)) && ends_line(input, 4)) =>
        {
            take(1_usize).void().parse_next(input)?;
            open_count(input)?
        }
        // “… until 6 remain”, “bis 6 übrig sind”
        Some(Tok::Say(Say::To | Say::Until))
            if has_work
                && matches!(peek(input, 1), Some(Tok::Number(3..)))
                && peek(input, 2) == Some(Tok::Say(Say::Total))
                && ends_line(input, 3) =>
        {
            take(1_usize).void().parse_next(input)?;
            open_count(input)?
        }
        // “(sc, inc) all the way around for 18,”
        Some(Tok::Say(Say::For))
            if has_work
                && matches!(peek(input, 1), Some(Tok::Number(3..)))
                && (ends_line(input, 2)
                    || peek(input, 2) == Some(Tok::Comma) && peek(input, 3).is_none()) =>
        {
            take(1_usize).void().parse_next(input)?;
            open_count(input)?
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

/// “(9 petals)”: a remark on the count.
fn remark(input: &mut Input<'_>) -> ReadResult<()> {
    let Some(Tok::Open(n @ 2..=6)) = peek(input, 0) else { return fail(input) };
    let inside = &rest(input)[1..n];
    if inside.iter().any(|t| t.tok.is_work() || t.tok == Tok::Times) || !ends_line(input, n + 1)
    {
        return fail(input);
    }
    take(n + 1).void().parse_next(input)
}

fn open_count(input: &mut Input<'_>) -> ReadResult<Placed<u32>> {
    let (n, taken) = number.with_taken().parse_next(input)?;
    repeat::<_, _, (), _, _>(0..=3, counted_word).parse_next(input)?;
    Ok(Placed::at(n, span(taken)))
}

fn counted_word(input: &mut Input<'_>) -> ReadResult<()> {
    let total =
        one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::Total | Say::Around | Say::Each)));
    // “54 sl sts”
    let slips = (tok(Tok::Kind(StitchKind::Slip)), tok(Tok::Stitch));
    alt((slips.void(), stitch_word.void(), total.void())).parse_next(input)
}

/// The number inside brackets that hold nothing but a count, and whether a kind of stitch is
/// named with it: “18”, “18 sts made”, “you should have 14 stitches now”,
/// “12 – from here each half by itself”.
pub(super) fn figure_of(inside: &[Token]) -> Option<(u32, bool)> {
    // “(+6 = 18)”: what it comes to stands behind the sign.
    let figures = |t: &Token| matches!(t.tok, Tok::Number(_) | Tok::Comma | Tok::Dash);
    let inside = match inside.iter().position(|t| t.tok == Tok::Equals) {
        Some(at) if at > 0 && inside[..at].iter().all(figures) => &inside[at + 1..],
        _ => inside,
    };
    let numbers = || inside.iter().enumerate().filter(|(_, t)| t.tok.counts());
    let (at, first) = numbers().next()?;
    let Tok::Number(count @ 1..) = first.tok else { return None };
    let after = inside.get(at + 1).map(|t| t.tok);
    // “12 – from here on …”: what follows a dash is a remark.
    let works = after == Some(Tok::Comma)
        && inside
            .get(at + 2)
            .is_some_and(|t| matches!(t.tok, Tok::Increase(_) | Tok::Decrease(..)));
    let remarked = matches!(after, Some(Tok::Dash | Tok::Comma | Tok::Colon | Tok::Stop))
        && !works
        && at <= 1
        && inside.len() > at + 2;
    let own = if remarked { &inside[..at + 1] } else { inside };
    if !remarked && numbers().count() > 1 {
        return None;
    }
    let shapes = own.iter().any(|t| {
        matches!(
            t.tok,
            Tok::Increase(_)
                | Tok::Decrease(..)
                | Tok::Times
                | Tok::Skip
                | Tok::Ring
                | Tok::Open(_)
                | Tok::Close
                | Tok::Star
                | Tok::TwoStars
                | Tok::Ordinal(_)
                | Tok::Gauge
                | Tok::Hook
                | Tok::Yarn
                | Tok::Say(Say::Make | Say::Repeat | Say::Together | Say::More | Say::Next)
        )
    });
    let kind_named = own.iter().any(|t| matches!(t.tok, Tok::Kind(_) | Tok::Chain));
    let stitches = own.iter().any(|t| matches!(t.tok, Tok::Stitch)) || kind_named;
    let worded = own.iter().any(|t| matches!(t.tok, Tok::Unknown));
    let rounds = own.iter().any(|t| matches!(t.tok, Tok::Round | Tok::Say(Say::Row)));
    if shapes || (worded || rounds) && !stitches {
        return None;
    }
    // “6 sc” is a count only where work came before; “1 sc in each” is work.
    let placed = own.iter().any(|t| matches!(t.tok, Tok::InEach));
    (!placed).then_some((count, kind_named))
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
