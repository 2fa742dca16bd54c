//! Stitches: “sc 3”, “2 hdc in each of next 3 sts”, “sc2tog”, “inc around”.

use winnow::combinator::{alt, opt};
use winnow::prelude::*;
use winnow::token::{any, one_of};

use super::place::{
    Input, ReadResult, Turns, Where, fail, fillers, number, peek, place, rest, say, since,
    stitch_word, tok, turns,
};
use super::token::{Say, Tok, Token, span};
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Op, Placed, Span, StitchKind, Times};

/// What is worked, before it is known where and how often.
#[derive(Debug, Clone)]
enum BareStitch {
    /// So many stitches of a kind, if a number is said.
    Plain(StitchKind, Option<u32>),
    /// An increase or a decrease, and how many of them if a number is said.
    Shaping(Op, Option<u32>),
    /// An increase or a decrease once in every so many stitches.
    Every(Op, u32),
}

/// One or more stitches, appended to `out`. Fails, appending nothing, where words follow
/// that change what is meant.
pub(super) fn stitches(input: &mut Input<'_>, out: &mut Vec<Placed<Op>>) -> ReadResult<()> {
    let from = rest(input);
    input.state.placed = false;
    let first_place = match peek(input, 0) {
        Some(Tok::InEach | Tok::Say(Say::In | Say::Each | Say::Next))
        | Some(Tok::Ordinal(_) | Tok::Say(Say::The | Say::Around))
            if !matches!(
                peek(input, 0),
                Some(Tok::Ordinal(_) | Tok::Say(Say::The | Say::Around))
            ) || pair_ahead(input)
                || peek(input, 0) == Some(Tok::Say(Say::Around))
                    && !peek(input, 1).is_none_or(Tok::parts) =>
        {
            let found = place(input)?;
            input.state.everywhere = found.0 == Where::EachAround;
            input.state.placed = matches!(found.0, Where::EachAround | Where::Every(_));
            opt(tok(Tok::Comma)).parse_next(input)?;
            opt(say(Say::Only)).parse_next(input)?;
            input.state.paired = match found.0 {
                Where::Pair(_) => true,
                Where::Every(n) => n > 1,
                _ => false,
            };
            Some(found)
        }
        _ => None,
    };
    if first_place.is_some() {
        // “in die nächsten 5 M je 1 fM”
        fillers(input)?;
    }
    let mut base = base(input)?;
    input.state.spread |= opt(say(Say::Spread)).parse_next(input)?.is_some();
    if let BareStitch::Shaping(Op::Together { how, .. }, _) = &mut base
        && opt(say(Say::ThroughFront)).parse_next(input)?.is_some()
    {
        *how = Decrease::Invisible;
    }
    // “20 sc in each round” says again that it is every round.
    let in_each = alt((tok(Tok::InEach).void(), (opt(say(Say::In)), say(Say::Each)).void()));
    opt((in_each, tok(Tok::Round))).parse_next(input)?;
    // “1 sc, 1 dc, 1 sc all in one st”
    let one =
        alt((number.verify(|&n| n == 1).void(), say(Say::Same).void(), say(Say::Next).void()));
    let together = (say(Say::The), say(Say::In), fillers, one, stitch_word);
    if first_place.is_none() && opt(together).parse_next(input)?.is_some() {
        input.state.collect = true;
    }
    let (place, only) = match first_place {
        Some((place, only)) => (Some(place), only),
        None => opt(place).parse_next(input)?.map_or((None, None), |(p, l)| (Some(p), l)),
    };
    // “sc next 2 sts tog for a dec” says again what it makes.
    let for_shaping = one_of(|t: &Token| matches!(t.tok, Tok::Decrease(..) | Tok::Increase(_)));
    opt((say(Say::For), fillers, for_shaping)).parse_next(input)?;
    input.state.spread |= opt(say(Say::Spread)).parse_next(input)?.is_some();
    let suffix = opt(loop_suffix).parse_next(input)?;
    let turns =
        if place == Some(Where::Around) { None } else { opt(turns).parse_next(input)? };
    let late = opt(loop_suffix).parse_next(input)?;
    let everywhere = matches!(place, Some(Where::Around | Where::EachAround));
    if !ends_well(input, everywhere) {
        return fail(input);
    }
    let at = since(from, input);
    let Some(op) = built(&base, place, turns, &at) else { return fail(input) };
    let op = match only.or(suffix).or(late) {
        None => op,
        Some(only) => Op::Only { only, body: vec![Placed::at(op, at.clone())] },
    };
    out.push(Placed::at(op, at));
    if matches!(base, BareStitch::Plain(..)) && place.is_some() {
        while continued(input, &base, out)? {}
    }
    Ok(())
}

/// Whether “3. und 4. M” or “die 3. und 4. M” stands here.
fn pair_ahead(input: &Input<'_>) -> bool {
    let from = usize::from(peek(input, 0) == Some(Tok::Say(Say::The)));
    let ordinal = |at| matches!(peek(input, at), Some(Tok::Ordinal(_)));
    ordinal(from)
        && matches!(peek(input, from + 1), Some(Tok::Comma | Tok::Say(Say::Then)))
        && ordinal(from + 2)
}

/// “… and in each of next 3 sts”: the same stitches at another place.
fn continued(
    input: &mut Input<'_>,
    base: &BareStitch,
    out: &mut Vec<Placed<Op>>,
) -> ReadResult<bool> {
    let before = input.checkpoint();
    let again = (
        say(Say::Then),
        (|input: &mut Input<'_>| match peek(input, 0) {
            Some(Tok::InEach | Tok::Say(Say::In | Say::Each)) => place(input),
            _ => fail(input),
        })
        .with_taken(),
    );
    if let Some((_, ((place, None), taken))) = opt(again).parse_next(input)?
        && ends_well(input, false)
        && let Some(op) = built(base, Some(place), None, &span(taken))
    {
        out.push(Placed::at(op, span(taken)));
        return Ok(true);
    }
    input.reset(&before);
    Ok(false)
}

/// Whether “dedans”, “into it” or another word on the place ends the sentence here.
pub(super) fn trails(input: &Input<'_>) -> bool {
    let it = usize::from(peek(input, 1) == Some(Tok::Say(Say::The)));
    peek(input, 1 + it).is_none_or(|t| t.parts() || matches!(t, Tok::Open(_) | Tok::Equals))
}

/// Whether what was read ends here: a word on place or manner that follows would change it.
fn ends_well(input: &Input<'_>, everywhere: bool) -> bool {
    let coloured = matches!(peek(input, 1), Some(Tok::Yarn | Tok::Say(Say::Colour)))
        || everywhere && matches!(peek(input, 1), Some(Tok::Unknown));
    match peek(input, 0) {
        // “8 ms dedans”
        Some(Tok::Say(Say::In)) if trails(input) => true,
        // “5 sc with the first wing”
        Some(Tok::Say(Say::With)) => true,
        Some(Tok::Say(Say::In)) => coloured,
        Some(Tok::Say(
            Say::Each
            | Say::Next
            | Say::Same
            | Say::Last
            | Say::Together
            | Say::From
            | Say::To
            | Say::Doubled
            | Say::Over,
        ))
        | Some(Tok::InEach | Tok::Ring | Tok::Times | Tok::Ordinal(_)) => false,
        _ => true,
    }
}

fn loop_suffix(input: &mut Input<'_>) -> ReadResult<Loop> {
    opt(alt((say(Say::In), say(Say::Work)))).parse_next(input)?;
    fillers(input)?;
    let Some(Tok::Loop(only)) = peek(input, 0) else { return fail(input) };
    any.parse_next(input)?;
    opt(say(Say::Only)).parse_next(input)?;
    match peek(input, 0) {
        // “BLO sc 3”: the loop of what follows, not of what came before.
        Some(tok) if tok.is_work() || matches!(tok, Tok::Number(_) | Tok::Colon) => fail(input),
        _ => Ok(only),
    }
}

fn base(input: &mut Input<'_>) -> ReadResult<BareStitch> {
    // After “jede 3. und 4. M” the verb alone says what is done.
    if input.state.paired && peek(input, 0) == Some(Tok::Say(Say::Together)) {
        any.parse_next(input)?;
        let kind = input.state.kind.unwrap_or(StitchKind::Single);
        return Ok(BareStitch::Shaping(together(kind, 2), None));
    }
    let lead = opt(number).parse_next(input)?;
    if lead.is_some() && matches!(peek(input, 1), Some(tok) if tok.is_work()) {
        opt(tok(Tok::Times)).parse_next(input)?;
    }
    match peek(input, 0) {
        // “6x verd.” names no stitch.
        Some(Tok::Times)
            if lead.is_some() && peek(input, 1) == Some(Tok::Say(Say::Doubled)) =>
        {
            (any, any).void().parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Shaping(Op::Into { kind, many: 2 }, lead))
        }
        Some(Tok::Say(Say::Doubled)) => {
            any.parse_next(input)?;
            opt(tok(Tok::Stop)).parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Shaping(Op::Into { kind, many: 2 }, lead))
        }
        // “every third stitch twice”
        Some(Tok::Turns(2)) if input.state.placed && lead.is_none() => {
            any.parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Shaping(Op::Into { kind, many: 2 }, None))
        }
        // “jede fM häkeln”
        Some(Tok::Say(Say::Work)) if lead.is_none() && input.state.everywhere => {
            any.parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Plain(kind, None))
        }
        Some(Tok::Kind(kind)) => {
            any.parse_next(input)?;
            of_kind(input, kind, lead)
        }
        Some(Tok::Increase(kind)) => {
            any.parse_next(input)?;
            shaping(input, Op::Into { kind, many: 2 }, lead)
        }
        Some(Tok::Decrease(kind, how)) => {
            any.parse_next(input)?;
            shaping(input, Op::Together { kind, many: 2, how }, lead)
        }
        Some(Tok::Fancy) => {
            any.parse_next(input)?;
            input.state.fancy = true;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Plain(kind, lead))
        }
        // “3 sts together”
        Some(Tok::Stitch | Tok::Say(Say::Together)) if lead.is_some_and(|n| n > 1) => {
            opt(tok(Tok::Stitch)).parse_next(input)?;
            say(Say::Together).parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Shaping(together(kind, lead.unwrap_or(2)), None))
        }
        // “even” stays, and says the place as well; “even 35 sc” says how many beside.
        Some(Tok::Even(kind)) if lead.is_none() => {
            if matches!(peek(input, 1), Some(Tok::Number(_) | Tok::Kind(_))) {
                any.parse_next(input)?;
                return base(input);
            }
            // “ohne Zunahmen in fM”
            let (after, named) = (peek(input, 1), peek(input, 2));
            if let (Some(Tok::Say(Say::In)), Some(Tok::Kind(kind))) = (after, named) {
                (any, any, any).void().parse_next(input)?;
                let one = Op::Each { kind, count: 1 };
                return Ok(BareStitch::Every(one, 1));
            }
            Ok(BareStitch::Plain(kind, None))
        }
        _ => fail(input),
    }
}

fn together(kind: StitchKind, many: u32) -> Op {
    Op::Together { kind, many, how: Decrease::Plain }
}

/// What follows “sc”.
fn of_kind(
    input: &mut Input<'_>,
    kind: StitchKind,
    lead: Option<u32>,
) -> ReadResult<BareStitch> {
    if opt(say(Say::Doubled)).parse_next(input)?.is_some() {
        return Ok(BareStitch::Shaping(Op::Into { kind, many: 2 }, lead));
    }
    // “2 sc together” takes two; “sc2tog”, “sc next 2 sts together”.
    if lead.is_some_and(|n| n > 1) && opt(say(Say::Together)).parse_next(input)?.is_some() {
        return Ok(BareStitch::Shaping(together(kind, lead.unwrap_or(2)), None));
    }
    let tog = (
        opt(alt((say(Say::In), say(Say::Over)))),
        fillers,
        opt(say(Say::Next)),
        number.verify(|&n| n > 1),
        opt(tok(Tok::Stitch)),
        say(Say::Together),
    );
    if let Some((_, _, _, many, ..)) = opt(tog).parse_next(input)? {
        let over = (
            alt((say(Say::In), say(Say::Over))),
            fillers,
            opt(say(Say::Next)),
            number.verify(move |&n| n == many),
            tok(Tok::Stitch),
        );
        opt(over).parse_next(input)?;
        return shaping(input, together(kind, many), lead);
    }
    if lead.is_some() {
        return Ok(BareStitch::Plain(kind, lead));
    }
    let count = match (peek(input, 0), peek(input, 1)) {
        (Some(Tok::Number(_)), Some(Tok::Times | Tok::Say(Say::More))) => None,
        (Some(Tok::Number(n)), _) if n > 0 => {
            any.parse_next(input)?;
            opt(tok(Tok::Stitch)).parse_next(input)?;
            Some(n)
        }
        (
            Some(Tok::Turns(n)),
            Some(Tok::Say(Say::In | Say::Same | Say::Each) | Tok::InEach),
        ) => {
            any.parse_next(input)?;
            Some(n)
        }
        _ => None,
    };
    Ok(BareStitch::Plain(kind, count))
}

/// What follows “inc”: “inc 6” is six of them.
fn shaping(input: &mut Input<'_>, op: Op, lead: Option<u32>) -> ReadResult<BareStitch> {
    let counts = match (peek(input, 0), peek(input, 1)) {
        (Some(Tok::Number(n)), after) => {
            let next_item = matches!(after, Some(t) if t.is_work()
                || matches!(t, Tok::Times | Tok::Stitch | Tok::Say(Say::More | Say::Total)));
            // “dec 4 sts evenly spaced”
            let spread = matches!(after, Some(Tok::Stitch))
                && matches!(peek(input, 2), Some(Tok::Say(Say::Spread)));
            n > 0 && (!next_item || spread)
        }
        _ => false,
    };
    let count = if lead.is_none() && counts { Some(number(input)?) } else { lead };
    if matches!(peek(input, 1), Some(Tok::Say(Say::Spread))) {
        opt(tok(Tok::Stitch)).parse_next(input)?;
    }
    // “aumentar 1 punto cada 3”: one stitch is what an increase is worked in.
    let told = (number.verify(|&n| n == 1), tok(Tok::Stitch));
    if matches!(peek(input, 2), Some(Tok::Say(Say::Each | Say::In) | Tok::InEach)) {
        opt(told).parse_next(input)?;
    }
    // “aumentar 1 punto, …”, “zunehmen 6 M”: stitches are what shaping is counted in.
    let ends = |tok: Option<Tok>| {
        tok.is_none_or(|t| {
            t.parts() || matches!(t, Tok::Close | Tok::Star | Tok::Open(_) | Tok::Equals)
        })
    };
    if count.is_none()
        && peek(input, 1) == Some(Tok::Stitch)
        && ends(peek(input, 2))
        && let Some(Tok::Number(n)) = peek(input, 0)
    {
        (any, any).void().parse_next(input)?;
        return Ok(BareStitch::Shaping(op, (n > 1).then_some(n)));
    }
    // “augmenter une maille sur deux”
    let one_in = (
        opt(number.verify(|&n| n == 1)),
        fillers,
        tok(Tok::Stitch),
        say(Say::Over),
        number.verify(|&n| n > 1),
    );
    if count.is_none_or(|n| n == 1)
        && let Some((.., n)) = opt(one_in).parse_next(input)?
    {
        return Ok(BareStitch::Every(op, n));
    }
    if let (Some(Tok::Say(Say::Each)), Some(Tok::Number(n @ 2..))) =
        (peek(input, 0), peek(input, 1))
        && count.is_none_or(|n| n == 1)
    {
        (any, any, opt(stitch_word)).parse_next(input)?;
        input.state.every = true;
        return Ok(BareStitch::Every(op, n));
    }
    Ok(BareStitch::Shaping(op, count))
}

/// One shaping once in every `period` stitches.
fn every_nth(period: u32, op: &Op, at: &Span) -> Option<Op> {
    let (kind, takes) = match op {
        Op::Each { kind, .. } => (*kind, 1),
        Op::Into { kind, .. } => (*kind, 1),
        Op::Together { kind, many, .. } => (*kind, *many),
        _ => return None,
    };
    let plain = period.checked_sub(takes)?;
    let plain = (plain > 0).then_some(Op::Each { kind, count: plain });
    let body = plain.into_iter().chain([op.clone()]).map(|op| Placed::at(op, at.clone()));
    Some(Op::Group { body: body.collect(), times: Times::Around })
}

/// What is worked where and how often; none where that makes no sense.
fn built(
    base: &BareStitch,
    place: Option<Where>,
    turns: Option<Turns>,
    at: &Span,
) -> Option<Op> {
    let times = turns.map(Turns::times);
    let group = |op, times| Op::Group { body: vec![Placed::at(op, at.clone())], times };
    // In every so many-th stitch: the third of every three.
    let every = |period: u32, kind, op| {
        let plain = (period > 1).then(|| Op::Each { kind, count: period - 1 });
        let body = plain.into_iter().chain([op]).map(|op| Placed::at(op, at.clone()));
        Op::Group { body: body.collect(), times: Times::Around }
    };
    let op = match base {
        BareStitch::Plain(kind, count) => {
            let (kind, n) = (*kind, count.unwrap_or(1));
            let one =
                if n > 1 { Op::Into { kind, many: n } } else { Op::Each { kind, count: 1 } };
            match place {
                // “sc x 6” is six stitches, not a group of one.
                None if count.is_none() && matches!(times, Some(Times::In(_))) => {
                    let Some(Times::In(count)) = times else { return None };
                    return Some(Op::Each { kind, count });
                }
                None => Op::Each { kind, count: n },
                Some(Where::One) => one,
                Some(Where::Even) if n > 1 => Op::Each { kind, count: n },
                Some(Where::Even) => group(one, Times::Around),
                Some(Where::Next(m)) if n == 1 => Op::Each { kind, count: m },
                Some(Where::Next(m)) if n == m && n > 4 => Op::Each { kind, count: m },
                Some(Where::Next(1)) => one,
                Some(Where::Next(m)) => group(one, Times::In(m)),
                Some(Where::EachAround) => group(one, Times::Around),
                Some(Where::Around) if n == 1 => group(one, Times::Around),
                Some(Where::Around) => Op::Each { kind, count: n },
                Some(Where::Every(period)) if n > 1 => every(period, kind, one),
                Some(Where::Every(_) | Where::Pair(_)) => return None,
                Some(Where::Chain(nth)) => Op::IntoChain { kind, count: n, nth },
                Some(Where::Ring) => Op::Ring { kind, count: n },
            }
        }
        BareStitch::Every(op, period) => every_nth(*period, op, at)?,
        BareStitch::Shaping(op, count) => {
            let (kind, takes) = match op {
                Op::Into { kind, .. } => (*kind, 1),
                Op::Together { kind, many, .. } => (*kind, *many),
                _ => return None,
            };
            let counted = match count {
                Some(n) if *n > 1 => group(op.clone(), Times::In(*n)),
                _ => op.clone(),
            };
            match place {
                None | Some(Where::One) => counted,
                Some(Where::Next(m)) if m == takes.saturating_mul(count.unwrap_or(1)) => {
                    counted
                }
                Some(Where::Next(m)) if takes == 1 && count.is_none_or(|n| n == 1) => {
                    group(op.clone(), Times::In(m))
                }
                Some(Where::EachAround | Where::Around | Where::Even)
                    if count.is_none_or(|n| n == 1) =>
                {
                    group(op.clone(), Times::Around)
                }
                // “6 inc around” says again that they lie all around.
                Some(Where::Around) => counted,
                Some(Where::Every(period)) => every(period, kind, op.clone()),
                Some(Where::Pair(last)) if takes == 2 => every_nth(last, op, at)?,
                _ => return None,
            }
        }
    };
    Some(match times {
        Some(times) => group(op, times),
        None => op,
    })
}
