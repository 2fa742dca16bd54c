//! Where a stitch is worked and how often: “in each of next 3 sts”, “around”, “5 more times”.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::token::{any, one_of};

use super::input::{Input, ReadResult, fail, fillers, number, peek, rest, say, tok};
use super::token::{Say, Tok, Token, span};
use crate::piece::cloth::Loop;
use crate::words::tree::{StitchKind, Times};

/// How often, as it is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Turns {
    /// In all.
    In(u32),
    /// Beside the first.
    More(u32),
    /// As often as it goes.
    Around,
}

impl Turns {
    pub(super) fn times(self) -> Times {
        match self {
            Self::In(n) => Times::In(n),
            Self::More(n) => Times::In(n.saturating_add(1)),
            Self::Around => Times::Around,
        }
    }
}

/// “× 6”, “6 times”, “twice”, “5 more times”, “for a total of 6 times”, “around”.
pub(super) fn turns(input: &mut Input<'_>) -> ReadResult<Turns> {
    let counted = |(n, more): (u32, bool)| if more { Turns::More(n) } else { Turns::In(n) };
    let more = || opt(say(Say::More)).map(|m| m.is_some());
    let star = !input.state.in_star
        && peek(input, 0) == Some(Tok::Star)
        && !matches!(peek(input, 2), Some(t) if t.is_work());
    let star_times = move |input: &mut Input<'_>| {
        if star {
            (tok(Tok::Star), number).map(|(_, n)| Turns::In(n)).parse_next(input)
        } else {
            fail(input)
        }
    };
    let once = any.verify_map(|t: &Token| match t.tok {
        Tok::Turns(n) => Some(n),
        _ => None,
    });
    let found = alt((
        // “x 6”, “x 6 times”
        (tok(Tok::Times), number, more(), opt(tok(Tok::Times)))
            .map(|(_, n, more, _)| counted((n, more))),
        (number, tok(Tok::Times), opt(say(Say::Repeat)), more())
            .map(|(n, _, _, more)| counted((n, more))),
        (number, say(Say::More), opt(tok(Tok::Times)), opt(say(Say::Repeat)))
            .map(|(n, ..)| Turns::More(n)),
        (say(Say::More), number, tok(Tok::Times), opt(say(Say::Repeat)))
            .map(|(_, n, ..)| Turns::More(n)),
        (fillers, say(Say::Total), fillers, number, tok(Tok::Times))
            .map(|(_, _, _, n, _)| Turns::In(n)),
        (once, more()).map(counted),
        alt((star_times, bracketed)),
        around,
        to_last.value(Turns::Around),
    ))
    .parse_next(input)?;
    opt((fillers, say(Say::Total))).parse_next(input)?;
    Ok(found)
}

/// “(2 times)”, after what is worked so often.
fn bracketed(input: &mut Input<'_>) -> ReadResult<Turns> {
    let Some(Tok::Open(n @ 2..=5)) = peek(input, 0) else { return fail(input) };
    if peek(input, n) != Some(Tok::Close) {
        return fail(input);
    }
    any.parse_next(input)?;
    let before = input.eof_offset();
    let found = turns(input)?;
    if before - input.eof_offset() != n - 1 {
        return fail(input);
    }
    any.parse_next(input)?;
    Ok(found)
}

fn around(input: &mut Input<'_>) -> ReadResult<Turns> {
    (say(Say::Around), opt((fillers, tok(Tok::Round)))).value(Turns::Around).parse_next(input)
}

/// “to last 2 sts”: around, but for what comes after.
fn to_last(input: &mut Input<'_>) -> ReadResult<()> {
    let said = (say(Say::To), fillers, say(Say::Last), opt(number), stitch_word);
    let ((.., n, _), taken) = said.with_taken().parse_next(input)?;
    input.state.to_last.push((n.unwrap_or(1), span(taken)));
    Ok(())
}

/// Where stitches go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Where {
    /// The next stitch, or the same: one place.
    One,
    /// Each of so many stitches.
    Next(u32),
    /// Every stitch.
    EachAround,
    /// Every so many-th stitch.
    Every(u32),
    /// “around”, without a word on how many a stitch.
    Around,
    /// “even”: one in each, however many are named.
    Even,
    /// “the 3rd and 4th”: two that stand last in every so many.
    Pair(u32),
    /// The so many-th chain from the hook; 0 is the last.
    Chain(u32),
    /// The ring.
    Ring,
}

/// Where a stitch is worked, and the loop if one is said.
pub(super) fn place(input: &mut Input<'_>) -> ReadResult<(Where, Option<Loop>)> {
    let mut into = opt(alt((say(Say::In), say(Say::Over)))).parse_next(input)?.is_some();
    fillers(input)?;
    let mut only = None;
    let looped = peek(input, 0).zip(peek(input, 1));
    if let Some((Tok::Loop(l), Tok::Say(_) | Tok::InEach | Tok::Number(_))) = looped {
        let before = input.checkpoint();
        any.parse_next(input)?;
        opt(say(Say::Only)).parse_next(input)?;
        fillers(input)?;
        into |= opt(say(Say::In)).parse_next(input)?.is_some();
        only = Some(l);
        if matches!(peek(input, 0), None | Some(Tok::Number(_))) {
            input.reset(&before);
            return fail(input);
        }
    }
    if peek(input, 1) == Some(Tok::Ring) {
        // “dans un cercle”: the article is a number word as well.
        opt(tok(Tok::Number(1))).parse_next(input)?;
    }
    let whole_round = (fillers, tok(Tok::Round)).void();
    if let Some(pair) = opt(pair).parse_next(input)? {
        return Ok((Where::Pair(pair), only));
    }
    let found = match peek(input, 0) {
        Some(Tok::Ring) => tok(Tok::Ring).value(Where::Ring).parse_next(input)?,
        // “toutes les 3 mailles”: so far apart, as the plural tells.
        Some(Tok::Say(Say::Each))
            if !into
                && rest(input).first().is_some_and(|t| t.plural)
                && matches!(peek(input, 1), Some(Tok::Number(2..))) =>
        {
            any.parse_next(input)?;
            let n = number(input)?;
            opt(stitch_word).parse_next(input)?;
            input.state.every = true;
            Where::Every(n)
        }
        // “nach jeder 3. M”: so many between.
        Some(Tok::Say(Say::After)) => {
            any.parse_next(input)?;
            let nth = |t: &Token| match t.tok {
                Tok::Number(n) | Tok::Ordinal(n) if n > 0 => Some(n),
                _ => None,
            };
            let n = opt(any.verify_map(nth)).parse_next(input)?.unwrap_or(1);
            (opt(tok(Tok::Stop)), opt(stitch_word)).parse_next(input)?;
            Where::Every(n.saturating_add(1))
        }
        Some(Tok::InEach | Tok::Say(Say::Each)) => each(input)?,
        Some(Tok::Say(Say::Alternate)) => any.value(Where::Every(2)).parse_next(input)?,
        Some(Tok::Say(Say::Around)) => around.value(Where::Around).parse_next(input)?,
        Some(Tok::Even(_)) => any.value(Where::Even).parse_next(input)?,
        // A number and a full stop is how German writes an ordinal.
        Some(Tok::Number(n))
            if into
                && peek(input, 1) == Some(Tok::Stop)
                && peek(input, 2) == Some(Tok::Chain) =>
        {
            (any, any).void().parse_next(input)?;
            chain_from_hook(input)?;
            Where::Chain(n)
        }
        Some(Tok::Ordinal(n)) if into => {
            any.parse_next(input)?;
            // “in die erste der beiden Lm”
            let of_several = (say(Say::The), fillers, number, tok(Tok::Chain));
            if opt(of_several).parse_next(input)?.is_some() {
                return Ok((Where::Chain(n), only));
            }
            match peek(input, 0) {
                Some(Tok::Chain) => {
                    chain_from_hook(input)?;
                    Where::Chain(n)
                }
                Some(Tok::Number(m)) if n == 1 => {
                    (any, stitch_word).parse_next(input)?;
                    Where::Next(m)
                }
                _ => {
                    let word = opt(stitch_word).parse_next(input)?;
                    let ends = peek(input, 0).is_none_or(Tok::parts)
                        || matches!(peek(input, 0), Some(Tok::Close | Tok::Star));
                    if word.is_none() && !ends {
                        return fail(input);
                    }
                    Where::One
                }
            }
        }
        Some(Tok::Say(say @ (Say::Next | Say::Last | Say::Same))) => {
            any.parse_next(input)?;
            let n = opt(number).parse_next(input)?;
            let word =
                if n.is_none() && !into { None } else { opt(stitch_word).parse_next(input)? };
            // “in same st as joining”, “dans la même m que la mc”
            if say == Say::Same && peek(input, 0) == Some(Tok::Say(Say::As)) {
                let named = one_of(|t: &Token| {
                    matches!(
                        t.tok,
                        Tok::Unknown
                            | Tok::Join
                            | Tok::Chain
                            | Tok::Stitch
                            | Tok::Kind(StitchKind::Slip)
                            | Tok::Ordinal(1)
                            | Tok::Say(Say::The | Say::Last)
                    )
                });
                let as_joined = (any, repeat::<_, _, (), _, _>(1..=3, named));
                opt(as_joined).parse_next(input)?;
            }
            match (say, word, n) {
                (Say::Last, Some(Tok::Chain), None) => Where::Chain(0),
                (_, _, Some(n)) => Where::Next(n),
                (Say::Next, None, None) if !into => {
                    stitch_word.value(Where::One).parse_next(input)?
                }
                _ => Where::One,
            }
        }
        Some(Tok::Number(n)) if into => {
            any.parse_next(input)?;
            let which = |input: &mut Input<'_>| {
                let named = one_of(|t: &Token| {
                    matches!(t.tok, Tok::Say(Say::Next | Say::Others) | Tok::Ordinal(1))
                });
                opt(named).map(|t| t.is_some()).parse_next(input)
            };
            let before_word = which(input)?;
            let word = opt(stitch_word).parse_next(input)?;
            let named = before_word || which(input)?;
            match word {
                None if named => Where::Next(n),
                None if peek(input, 0).is_some_and(|t| !t.parts()) => return fail(input),
                _ if n == 1 => Where::One,
                _ => Where::Next(n),
            }
        }
        Some(Tok::Say(Say::Others)) if into => {
            any.value(Where::EachAround).parse_next(input)?
        }
        Some(Tok::Kind(_)) if into && peek(input, 1) == Some(Tok::Say(Say::Next)) => {
            (any, any).void().parse_next(input)?;
            Where::One
        }
        Some(Tok::Stitch) if into => {
            any.parse_next(input)?;
            opt(say(Say::Next)).parse_next(input)?;
            Where::One
        }
        _ => return fail(input),
    };
    opt(whole_round).parse_next(input)?;
    // “in next 3 sts around” says no more than “in next 3 sts”, but “in each st around” does.
    if matches!(found, Where::EachAround | Where::Even | Where::Every(_)) {
        opt(around).parse_next(input)?;
        opt(to_last).parse_next(input)?;
    }
    Ok((found, only))
}

/// “jede 3. und 4. M”, “every 3rd and 4th st”: the second number.
fn pair(input: &mut Input<'_>) -> ReadResult<u32> {
    // “hdc in 1st, 2 hdc in next”: a number behind a comma counts what comes next.
    let lead = (0..3)
        .take_while(|&at| {
            matches!(peek(input, at), Some(Tok::InEach | Tok::Say(Say::Each | Say::The)))
        })
        .count();
    let comma =
        rest(input).get(lead + 1).is_some_and(|t| input.state.text.get(t.at()) == Some(","));
    if comma
        && matches!(peek(input, lead + 2), Some(Tok::Number(_)))
        && peek(input, lead + 3).is_some_and(Tok::is_work)
    {
        return fail(input);
    }
    let nth = |input: &mut Input<'_>| {
        let found = any
            .verify_map(|t: &Token| match t.tok {
                Tok::Number(n) | Tok::Ordinal(n) if n > 0 => Some(n),
                _ => None,
            })
            .parse_next(input)?;
        opt(tok(Tok::Stop)).parse_next(input)?;
        Ok(found)
    };
    opt(alt((say(Say::Each), tok(Tok::InEach)))).parse_next(input)?;
    fillers(input)?;
    let sep = alt((tok(Tok::Comma), say(Say::Then)));
    let (first, _, second) = (nth, sep, nth).parse_next(input)?;
    opt(tok(Tok::Stitch)).parse_next(input)?;
    if second != first.saturating_add(1) {
        return fail(input);
    }
    Ok(second)
}

/// “each st around”, “each of next 3 sts”, “every 3rd st”, “in each of the 6 sts”.
fn each(input: &mut Input<'_>) -> ReadResult<Where> {
    // “in jede Masche eine feste Masche”: the article is that of the stitch to come.
    let names_stitch = |t: &Token| {
        let words = input.state.text.get(t.at()).unwrap_or_default();
        t.tok == Tok::InEach && words.split_whitespace().count() > 2
    };
    if rest(input).first().is_some_and(names_stitch)
        && peek(input, 1) == Some(Tok::Say(Say::The))
        && matches!(peek(input, 2), Some(Tok::Kind(_) | Tok::Increase(_)))
    {
        return any.value(Where::EachAround).parse_next(input);
    }
    let whole = any.parse_next(input)?.tok == Tok::InEach
        && opt(say(Say::The)).parse_next(input)?.is_none();
    fillers(input)?;
    // “in every stitch of the ring”
    if !whole && opt(tok(Tok::Ring)).parse_next(input)?.is_some() {
        return Ok(Where::EachAround);
    }
    if let Some(Tok::Number(n)) = peek(input, 0)
        && matches!(peek(input, 1), Some(Tok::Stop))
        && matches!(
            peek(input, 2),
            Some(
                Tok::Stitch
                    | Tok::Increase(_)
                    | Tok::Kind(_)
                    | Tok::Skip
                    | Tok::Say(Say::Doubled)
            )
        )
    {
        // A number and a full stop is how German writes an ordinal.
        (any, any, opt(stitch_word)).parse_next(input)?;
        input.state.every_nth = true;
        return if n > 0 { Ok(Where::Every(n)) } else { fail(input) };
    }
    if let Some(Tok::Ordinal(n)) = peek(input, 0) {
        (any, opt(stitch_word)).parse_next(input)?;
        input.state.every_nth = true;
        return if n > 0 { Ok(Where::Every(n)) } else { fail(input) };
    }
    if opt(say(Say::Other)).parse_next(input)?.is_some() {
        opt(stitch_word).parse_next(input)?;
        return Ok(Where::Every(2));
    }
    let next = opt(say(Say::Next)).parse_next(input)?.is_some();
    fillers(input)?;
    // “in jede M 1 fM”: the number is that of the stitches to come.
    let counted = matches!(peek(input, 2), None | Some(Tok::Stop));
    let of_place = !whole || next || peek(input, 1) == Some(Tok::Stitch) && !counted;
    let n = if of_place { opt(number).parse_next(input)? } else { None };
    // “inc in every 3 sts” may say how far apart.
    input.state.every |= n.is_some_and(|n| n > 1) && !next;
    if !of_place && matches!(peek(input, 0), Some(Tok::Number(_))) {
        return Ok(Where::EachAround);
    }
    let word = opt(stitch_word).parse_next(input)?;
    opt(say(Say::Next)).parse_next(input)?;
    match (n, word) {
        (Some(n), _) => Ok(Where::Next(n)),
        (None, None)
            if matches!(peek(input, 0), Some(Tok::Increase(_) | Tok::Decrease(..))) =>
        {
            Ok(Where::EachAround)
        }
        (None, None) if !whole && !next => fail(input),
        (None, _) => Ok(Where::EachAround),
    }
}

/// “ch from hook”, after a number.
fn chain_from_hook(input: &mut Input<'_>) -> ReadResult<()> {
    // “ab der Nadel”, “von der Nadel aus”
    let toward = one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::From | Say::The | Say::In)));
    let from_hook =
        opt((repeat::<_, _, (), _, _>(0..=4, toward), tok(Tok::Hook), opt(say(Say::Work))));
    (tok(Tok::Chain), from_hook).void().parse_next(input)
}

/// “st”, or a kind of stitch or a chain in its place: “in next sc”.
pub(super) fn stitch_word(input: &mut Input<'_>) -> ReadResult<Tok> {
    any.verify_map(|t: &Token| {
        matches!(t.tok, Tok::Stitch | Tok::Kind(_) | Tok::Chain).then_some(t.tok)
    })
    .parse_next(input)
}
