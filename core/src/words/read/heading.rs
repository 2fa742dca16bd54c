//! The number of a round: “R3:”, “Rnds 5–9”, “Round 3 –”, “3)”, “3. Rd”, “Rnd 7, 8, 9:”.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{any, one_of};

use super::place::{Desk, Input, Read, fail, number, peek, say, tok};
use super::tokens::{Tok, Token};
use super::words::Say;

/// The number of a round, or of several worked alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Heading {
    pub(super) first: u32,
    pub(super) last: u32,
    /// Whether it says “row”.
    pub(super) row: bool,
    /// Whether it is a number alone, which heads a round only where work follows.
    pub(super) bare: bool,
    /// How many tokens it takes up, bullets included.
    pub(super) tokens: usize,
}

/// The heading that `line` begins with.
pub(super) fn heading(line: &[Token]) -> Option<Heading> {
    let mut input = Stateful { input: TokenSlice::new(line), state: Desk::default() };
    bullets(&mut input).ok()?;
    let mut found = alt((worded, counted, bare)).parse_next(&mut input).ok()?;
    found.tokens = line.len() - input.input.len();
    (found.first <= found.last).then_some(found)
}

/// How many tokens of bullets and tick boxes `line` begins with.
pub(super) fn bullets_of(line: &[Token]) -> usize {
    let mut input = Stateful { input: TokenSlice::new(line), state: Desk::default() };
    let sign = one_of(|t: &Token| matches!(t.tok, Tok::Bullet | Tok::Dash));
    let skipped: Read<()> = repeat(0..=3, alt((sign.void(), tick_box))).parse_next(&mut input);
    skipped.map_or(0, |()| line.len() - input.input.len())
}

fn bullets(input: &mut Input<'_>) -> Read<()> {
    let sign = one_of(|t: &Token| {
        matches!(t.tok, Tok::Bullet | Tok::Dash | Tok::Star | Tok::TwoStars)
    });
    repeat(0..=4, alt((sign.void(), tick_box))).parse_next(input)
}

fn tick_box(input: &mut Input<'_>) -> Read<()> {
    (tok(Tok::Open(0)), opt(tok(Tok::Times)), tok(Tok::Close)).void().parse_next(input)
}

fn round_word(input: &mut Input<'_>) -> Read<(bool, bool)> {
    any.verify_map(|t: &Token| match t.tok {
        Tok::Round => Some((false, t.plural)),
        Tok::Say(Say::Row) => Some((true, t.plural)),
        _ => None,
    })
    .parse_next(input)
}

/// “Rnd 3”, “1. Rnd 1”, “Rd. 3”, “Rounds 5 to 9”.
fn worded(input: &mut Input<'_>) -> Read<Heading> {
    let (item, (row, plural), _, first) = (
        opt((number, alt((tok(Tok::Stop), tok(Tok::Close))))),
        round_word,
        opt(tok(Tok::Stop)),
        number,
    )
        .parse_next(input)?;
    let last = further(input, first, plural)?;
    // “1. Rd. 9 fM” has its number before the word.
    if item.is_some() && peek(input, 0).is_some_and(Tok::is_work) {
        return fail(input);
    }
    opt(tok(Tok::Close)).parse_next(input)?;
    Ok(Heading { first, last, row, bare: false, tokens: 0 })
}

/// The last number of “5–9”, “5 to 9” or “7, 8, 9”; `first` where there is one number only.
fn further(input: &mut Input<'_>, first: u32, plural: bool) -> Read<u32> {
    let mut last = first;
    loop {
        // “R5–R9” says the word again.
        let again = usize::from(peek(input, 1) == Some(Tok::Round));
        let Some(Tok::Number(next)) = peek(input, 1 + again) else { return Ok(last) };
        let after = peek(input, 2 + again);
        let heads = matches!(
            after,
            None | Some(
                Tok::Colon
                    | Tok::Close
                    | Tok::Stop
                    | Tok::Open(_)
                    | Tok::Equals
                    | Tok::Dash
                    | Tok::Newline
            )
        );
        let glued = input.input.iter().take(2).all(|t| t.glued);
        match peek(input, 0) {
            Some(Tok::Dash) if last == first && (heads || glued || plural) => {
                (any, opt(round_word), any).parse_next(input)?;
                return Ok(next);
            }
            Some(Tok::Say(Say::To | Say::Work)) if last == first => {
                (any, opt(round_word), any).parse_next(input)?;
                return Ok(next);
            }
            Some(Tok::Comma | Tok::Say(Say::Then))
                if heads || matches!(after, Some(Tok::Comma | Tok::Say(Say::Then))) =>
            {
                // Rounds that are not neighbours are no range.
                if next != last.saturating_add(1) {
                    return fail(input);
                }
                (any, opt(round_word), any).parse_next(input)?;
                last = next;
            }
            _ => return Ok(last),
        }
    }
}

/// “3. Rd”, “1.–3. Runde”, “3rd round”.
fn counted(input: &mut Input<'_>) -> Read<Heading> {
    let ordinal = any.verify_map(|t: &Token| match t.tok {
        Tok::Number(n) | Tok::Ordinal(n) if n > 0 => Some(n),
        _ => None,
    });
    let mut numbered = (ordinal, opt(tok(Tok::Stop))).map(|(n, _)| n);
    let first = numbered.parse_next(input)?;
    let to = alt((tok(Tok::Dash), say(Say::To)));
    let last = opt((to, numbered)).parse_next(input)?.map_or(first, |(_, last)| last);
    let (row, _) = round_word(input)?;
    if matches!(peek(input, 0), Some(Tok::Number(_))) {
        return fail(input);
    }
    Ok(Heading { first, last, row, bare: false, tokens: 0 })
}

/// “3)”, “3.”, “3:”, “6-10:”, “2.–5.)”.
fn bare(input: &mut Input<'_>) -> Read<Heading> {
    let first = number(input)?;
    // The point of a German ordinal, where more of the heading follows.
    let pointed = matches!(
        (peek(input, 0), peek(input, 1), peek(input, 2), peek(input, 3)),
        (Some(Tok::Stop), Some(Tok::Close), ..)
            | (Some(Tok::Stop), Some(Tok::Dash), Some(Tok::Number(_)), Some(Tok::Stop))
    );
    if pointed {
        any.void().parse_next(input)?;
    }
    let before = input.checkpoint();
    let last = match opt((alt((tok(Tok::Dash), say(Say::To))), number)).parse_next(input)? {
        Some((_, last))
            if matches!(peek(input, 0), Some(Tok::Colon | Tok::Close | Tok::Stop)) =>
        {
            last
        }
        Some(_) => {
            input.reset(&before);
            first
        }
        None => first,
    };
    one_of(|t: &Token| matches!(t.tok, Tok::Colon | Tok::Close | Tok::Stop))
        .parse_next(input)?;
    if pointed {
        opt(tok(Tok::Close)).parse_next(input)?;
    }
    Ok(Heading { first, last, row: false, bare: true, tokens: 0 })
}
