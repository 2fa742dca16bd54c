//! Stitches: “sc 3”, “2 hdc in each of next 3 sts”, “sc2tog”, “inc around”.

use winnow::combinator::{alt, opt};
use winnow::prelude::*;
use winnow::token::{any, one_of, take};

use super::bare::{BareStitch, built, together};
use super::input::{Input, ReadResult, fail, fillers, number, peek, rest, say, since, tok};
use super::place::{Where, place, stitch_word, turns};
use super::ring::work_ends;
use super::token::{Say, Tok, Token, span};
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Op, Placed, StitchKind};

/// One or more stitches, appended to `out`. Fails, appending nothing, where words follow
/// that change what is meant.
pub(super) fn stitches(input: &mut Input<'_>, out: &mut Vec<Placed<Op>>) -> ReadResult<()> {
    let from = rest(input);
    input.state.placed = false;
    let first_place = match peek(input, 0) {
        Some(
            Tok::InEach
            | Tok::Say(Say::In | Say::Each | Say::Next | Say::Alternate | Say::After),
        )
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
            // “Dans la 2e ml à partir du crochet : 6 ms”
            opt(alt((tok(Tok::Comma), tok(Tok::Colon)))).parse_next(input)?;
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
        // “jede M bekommt 2 fM”, “in jede M kommen jetzt 2 fM”
        let idle = |tok: Option<Tok>| matches!(tok, Some(Tok::Say(Say::Work | Say::The)));
        let lead = (0..4).take_while(|&n| idle(peek(input, n))).count();
        if matches!(peek(input, lead), Some(Tok::Number(_))) {
            take(lead).void().parse_next(input)?;
        }
    }
    // “the next 2 sts together”
    let (mut base, first_place) = match first_place {
        Some((Where::Next(many @ 2..=4), only))
            if peek(input, 0) == Some(Tok::Say(Say::Together)) =>
        {
            any.parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            let shaping = BareStitch::Shaping(together(kind, many), None);
            (shaping, only.map(|only| (Where::One, Some(only))))
        }
        first_place => (base(input)?, first_place),
    };
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
    // “dec all”: of shaping alone, and nothing behind it.
    let all = matches!(base, BareStitch::Shaping(_, None))
        && peek(input, 0) == Some(Tok::Say(Say::The))
        && work_ends(peek(input, 1));
    let (place, only) = match first_place {
        Some((place, only)) => (Some(place), only),
        None if all => any.value((Some(Where::EachAround), None)).parse_next(input)?,
        None => opt(place).parse_next(input)?.map_or((None, None), |(p, l)| (Some(p), l)),
    };
    // “sc next 2 sts tog for a dec” says again what it makes.
    let for_shaping = one_of(|t: &Token| matches!(t.tok, Tok::Decrease(..) | Tok::Increase(_)));
    opt((say(Say::For), fillers, for_shaping)).parse_next(input)?;
    input.state.spread |= opt(say(Say::Spread)).parse_next(input)?.is_some();
    let suffix = opt(loop_suffix).parse_next(input)?;
    let turns =
        if place == Some(Where::Around) { None } else { opt(turns).parse_next(input)? };
    // “inc 6 times evenly around”
    if turns.is_some() && opt(say(Say::Spread)).parse_next(input)?.is_some() {
        input.state.spread = true;
        opt(say(Say::Around)).parse_next(input)?;
    }
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
        // “6 x inc”, “9 more dc”
        opt(alt((tok(Tok::Times), say(Say::More)))).parse_next(input)?;
    }
    // “6 M gleichmäßig zunehmen”
    if let (Some(_), Some(Tok::Say(Say::Spread)), Some(Tok::Increase(_) | Tok::Decrease(..))) = (
        lead,
        peek(input, usize::from(peek(input, 0) == Some(Tok::Stitch))),
        peek(input, 1 + usize::from(peek(input, 0) == Some(Tok::Stitch))),
    ) {
        (opt(tok(Tok::Stitch)), any).void().parse_next(input)?;
        input.state.spread = true;
    }
    match peek(input, 0) {
        // “2 fM, 1 abm.”
        Some(Tok::Say(Say::Together)) if lead == Some(1) => {
            (any, opt(tok(Tok::Stop))).void().parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Shaping(together(kind, 2), None))
        }
        // “jede 4. Masche überspringen”
        Some(Tok::Skip) if input.state.paired && lead.is_none() => {
            any.parse_next(input)?;
            let kind = input.state.kind.unwrap_or(StitchKind::Single);
            Ok(BareStitch::Skipped(kind))
        }
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
            let op = Op::Into { kind, many: 2 };
            // “doubler une maille sur deux”
            if lead.is_none()
                && let Some(n) = opt(one_in).parse_next(input)?
            {
                return Ok(BareStitch::Every(op, n));
            }
            Ok(BareStitch::Shaping(op, lead))
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
        // “dc2inc”, “sc2dec”: as one word.
        Some(Tok::Kind(kind))
            if matches!(peek(input, 1), Some(Tok::Number(2)))
                && matches!(peek(input, 2), Some(Tok::Increase(_) | Tok::Decrease(..)))
                && rest(input).iter().skip(1).take(2).all(|t| t.glued)
                // “sc2inc1x6” is two stitches and an increase.
                && !rest(input)
                    .get(3)
                    .is_some_and(|t| t.glued && matches!(t.tok, Tok::Number(_))) =>
        {
            let increases = matches!(peek(input, 2), Some(Tok::Increase(_)));
            (any, any, any).void().parse_next(input)?;
            let op = if increases { Op::Into { kind, many: 2 } } else { together(kind, 2) };
            shaping(input, op, lead)
        }
        // “5 dc cluster” is one stitch.
        Some(Tok::Kind(kind)) if lead.is_some() && peek(input, 1) == Some(Tok::Fancy) => {
            (any, any).void().parse_next(input)?;
            input.state.fancy = true;
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
        // “five plain, two together”
        Some(Tok::Even(kind))
            if lead.is_some()
                && peek(input, 1).is_none_or(|t| t.parts() || matches!(t, Tok::Close)) =>
        {
            any.parse_next(input)?;
            Ok(BareStitch::Plain(kind, lead))
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
        opt(stitch_word),
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

/// “(augmenter) une maille sur deux”: in how many one.
fn one_in(input: &mut Input<'_>) -> ReadResult<u32> {
    let (.., n) = (
        opt(number.verify(|&n| n == 1)),
        fillers,
        tok(Tok::Stitch),
        say(Say::Over),
        number.verify(|&n| n > 1),
    )
        .parse_next(input)?;
    input.state.every = true;
    Ok(n)
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
    if count.is_none_or(|n| n == 1)
        && let Some(n) = opt(one_in).parse_next(input)?
    {
        return Ok(BareStitch::Every(op, n));
    }
    // “aumentar 1 de cada 3”
    let of = usize::from(count == Some(1) && peek(input, 0) == Some(Tok::Say(Say::The)));
    if let (Some(Tok::Say(Say::Each)), Some(Tok::Number(n @ 2..))) =
        (peek(input, of), peek(input, of + 1))
        && count.is_none_or(|n| n == 1)
    {
        (take(2 + of), opt(stitch_word)).void().parse_next(input)?;
        input.state.every = true;
        return Ok(BareStitch::Every(op, n));
    }
    Ok(BareStitch::Shaping(op, count))
}
