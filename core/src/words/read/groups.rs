//! What is worked more than once: brackets, asterisks, repeats.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{any, one_of, take};

use super::input::{Input, LineMemo, ReadResult, fail, number, peek, rest, say, since, tok};
use super::op_list::{DEEPEST, OpList, prefix};
use super::place::{Turns, Where, place, turns};
use super::settle::is_worked;
use super::token::{Say, Tok, Token, span};
use crate::words::tree::{Op, Placed, Times};

/// How often one list is wrapped by “repeat” before it is kept as text.
const WRAPS: usize = 4;

impl OpList {
    /// “6 x (sc, inc)”.
    pub(super) fn multiplied(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
        let from = rest(input);
        let Some(times) = prefix(input) else { return fail(input) };
        (any, opt(alt((tok(Tok::Times), tok(Tok::Star)))), opt(tok(Tok::Colon)))
            .void()
            .parse_next(input)?;
        let mut inner = Self::default();
        inner.bracket(input)?;
        let at = since(from, input);
        match inner.ops.pop() {
            Some(Placed { it: Op::Group { body, .. }, .. }) if inner.ops.is_empty() => {
                input.state.bare.pop();
                self.ops.push(Placed::at(Op::Group { body, times: Times::In(times) }, at));
                Ok(())
            }
            Some(one) if inner.ops.is_empty() && !matches!(one.it, Op::Note(_)) => {
                self.ops.push(Placed::at(
                    Op::Group { body: vec![one], times: Times::In(times) },
                    at,
                ));
                Ok(())
            }
            _ => fail(input),
        }
    }

    pub(super) fn bracket(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
        let Some(Tok::Open(n)) = peek(input, 0) else { return fail(input) };
        let from = rest(input);
        if input.state.depth >= DEEPEST {
            return fail(input);
        }
        let inside = &from[1..n];
        if inside.is_empty() {
            return take(2_usize).void().parse_next(input);
        }
        if let [Token { tok: Tok::Loop(only), .. }] = inside {
            input.state.loop_from = Some((*only, 0));
            return take(n + 1).void().parse_next(input);
        }
        if inside.iter().all(|t| {
            t.tok.parts() || matches!(t.tok, Tok::Say(Say::Repeat | Say::Around | Say::The))
        }) && inside.iter().any(|t| t.tok == Tok::Say(Say::Repeat))
        {
            // “… (repeat)”
            take(n + 1).void().parse_next(input)?;
            return self.wrapped(input, Times::Around, span(&from[..=n]).end);
        }
        // “… (repeat 6 times)”
        if inside[0].tok == Tok::Say(Say::Repeat) && !self.ops.is_empty() {
            let state = LineMemo { text: input.state.text, ..LineMemo::default() };
            let mut own = Stateful { input: TokenSlice::new(inside), state };
            if let Ok((turns, _)) = clause(&mut own)
                && own.input.is_empty()
            {
                take(n + 1).void().parse_next(input)?;
                let times = turns.unwrap_or(Turns::Around).times();
                return self.wrapped(input, times, span(&from[..=n]).end);
            }
        }
        if !inside.iter().any(|t| t.tok.is_work() || t.tok.counts()) && !names_colour(inside) {
            let words = take(n + 1).parse_next(input)?;
            self.push_note(input, words);
            return Ok(());
        }
        let body = nested(input, inside, &mut Self::default());
        take(n + 1).parse_next(input)?;
        let how_often = opt(alt((turns, bare_number))).parse_next(input)?;
        let after = peek(input, 0);
        let at = |input: &Input<'_>| since(from, input);
        match how_often {
            _ if body.is_empty() => return Ok(()),
            Some(turns) => {
                let group = Op::Group { body, times: turns.times() };
                self.ops.push(Placed::at(group, at(input)));
            }
            None if matches!(after, Some(Tok::Say(Say::In | Say::Over) | Tok::InEach)) => {
                let one = in_one_place(&body, input)?;
                self.ops.push(Placed::at(one, at(input)));
            }
            // Brackets that only set one thing off are no group.
            None if body.len() == 1 => self.ops.extend(body),
            None => {
                let at = at(input);
                input.state.bare.push(at.start);
                self.ops.push(Placed::at(Op::Group { body, times: Times::In(1) }, at));
            }
        }
        self.remark = false;
        Ok(())
    }

    /// “*sc 1, inc* x 6”, “*sc 1, inc; rep from * 5 more times”.
    pub(super) fn star(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
        let from = rest(input);
        let opening = span(take(1_usize).parse_next(input)?);
        if input.state.in_star || input.state.depth >= DEEPEST {
            return fail(input);
        }
        input.state.in_star = true;
        input.state.depth += 1;
        let mut inner = Self::default();
        loop {
            match (peek(input, 0), peek(input, 1)) {
                (None | Some(Tok::Star | Tok::TwoStars), _) => break,
                (Some(Tok::Say(Say::Repeat)), _) => break,
                (Some(Tok::Say(Say::From)), Some(Tok::Star)) => break,
                // A count ends the line even where the asterisk stays open.
                _ if self.top && self.count(input, true) => {}
                _ => inner.step(input),
            }
        }
        input.state.in_star = false;
        input.state.depth -= 1;
        let body = inner.ops;
        let closed =
            opt(alt((tok(Tok::Star), tok(Tok::TwoStars)))).parse_next(input)?.is_some();
        let direct = if closed { opt(turns).parse_next(input)? } else { None };
        let (how_often, said_from) = match direct {
            Some(turns) => (Some(turns), false),
            None => {
                let clause = (
                    repeat::<_, _, (), _, _>(0..=3, one_of(|t: &Token| t.tok.parts())),
                    clause,
                );
                match opt(clause).parse_next(input)? {
                    Some((_, (turns, said_from))) => {
                        (Some(turns.unwrap_or(Turns::Around)), said_from)
                    }
                    None => (None, false),
                }
            }
        };
        let at = since(from, input);
        match how_often {
            _ if body.is_empty() => input.state.unread.push(opening),
            Some(Turns::In(n)) if said_from => {
                // “Repeat from * 5 times” counts the repeats, not the first working; some
                // count all. What the line states decides, where it can.
                input.state.unsure = Some(at.start);
                let times = Times::In(n.saturating_add(1));
                self.ops.push(Placed::at(Op::Group { body, times }, at));
            }
            Some(turns) => {
                self.ops.push(Placed::at(Op::Group { body, times: turns.times() }, at))
            }
            None if closed => {
                input.state.bare.push(at.start);
                self.ops.push(Placed::at(Op::Group { body, times: Times::In(1) }, at));
            }
            None => {
                input.state.unread.push(opening);
                self.ops.extend(body);
            }
        }
        self.remark = false;
        Ok(())
    }

    /// “…, repeat 6 times”: the brackets just before, or all of the list so far.
    pub(super) fn repeated(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
        let from = rest(input);
        let (turns, _) = clause(input)?;
        let end = since(from, input).end;
        self.wrapped(input, turns.unwrap_or(Turns::Around).times(), end)
    }

    /// Works the brackets just before, or all of the list so far, `times` often.
    pub(super) fn wrapped(
        &mut self,
        input: &mut Input<'_>,
        times: Times,
        end: usize,
    ) -> ReadResult<()> {
        let bare = &mut input.state.bare;
        if let Some(last) = self.ops.last_mut()
            && bare.last() == Some(&last.at.start)
            && let Op::Group { times: of_last, .. } = &mut last.it
        {
            bare.pop();
            *of_last = times;
            last.at.end = end;
            return Ok(());
        }
        let first = self.ops.iter().position(|op| is_worked(&op.it));
        let Some(first) = first.filter(|_| self.wraps < WRAPS) else { return fail(input) };
        self.wraps += 1;
        let body = self.ops.split_off(first);
        let at = body[0].at.start..end;
        // What goes all around is not repeated around.
        if let ([Placed { it: Op::Group { times: Times::Around, .. }, .. }], Times::Around) =
            (body.as_slice(), times)
        {
            self.ops.extend(body);
            return Ok(());
        }
        self.ops.push(Placed::at(Op::Group { body, times }, at));
        Ok(())
    }
}

/// Reads what stands in brackets.
fn nested<'a>(
    input: &mut Input<'a>,
    inside: &'a [Token],
    line: &mut OpList,
) -> Vec<Placed<Op>> {
    let mut state = std::mem::take(&mut input.state);
    let in_star = std::mem::replace(&mut state.in_star, false);
    state.depth += 1;
    let mut inner = Stateful { input: TokenSlice::new(inside), state };
    while !inner.input.is_empty() {
        line.step(&mut inner);
    }
    input.state = inner.state;
    input.state.depth -= 1;
    input.state.in_star = in_star;
    std::mem::take(&mut line.ops)
}

/// “(sc, inc) 6”, with nothing to say that it is a count of something else.
fn bare_number(input: &mut Input<'_>) -> ReadResult<Turns> {
    // “(x, a)·6”
    let dotted = rest(input).iter().take(2).all(|t| t.glued)
        && peek(input, 0) == Some(Tok::Bullet)
        && matches!(peek(input, 1), Some(Tok::Number(1..)));
    if dotted {
        any.parse_next(input)?;
        return number.map(Turns::In).parse_next(input);
    }
    match peek(input, 1) {
        None | Some(Tok::Open(_) | Tok::Equals) => number.map(Turns::In).parse_next(input),
        Some(tok) if tok.parts() => number.map(Turns::In).parse_next(input),
        _ => fail(input),
    }
}

/// “repeat from * to * 5 more times”, “rep around”, “ab * noch 5 x wiederholen”: how often,
/// if that is said, and whether it says from where.
fn clause(input: &mut Input<'_>) -> ReadResult<(Option<Turns>, bool)> {
    let from_first = peek(input, 0) == Some(Tok::Say(Say::From));
    if !from_first {
        say(Say::Repeat).parse_next(input)?;
    }
    let mut said_from = false;
    for _ in 0..8 {
        match (peek(input, 0), peek(input, 1)) {
            (Some(Tok::Star | Tok::TwoStars), _) => said_from = true,
            (Some(Tok::Say(Say::From | Say::The)), _) => {}
            (Some(Tok::Dash | Tok::Say(Say::To)), Some(Tok::Star | Tok::TwoStars)) => {}
            (Some(Tok::Open(1)), _) => {
                any.parse_next(input)?;
            }
            _ => break,
        }
        any.parse_next(input)?;
    }
    let how_often = opt(turns).parse_next(input)?;
    if from_first {
        opt(say(Say::Repeat)).parse_next(input)?;
    }
    let idle = one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::The | Say::Work)));
    repeat::<_, _, (), _, _>(0..=4, idle).parse_next(input)?;
    match (how_often, peek(input, 0)) {
        (Some(_), _) => {}
        (None, None | Some(Tok::Open(_) | Tok::Equals)) => {}
        (None, Some(tok)) if tok.parts() => {}
        // “…, usw.   24 M”
        (None, Some(Tok::Number(_)))
            if matches!(peek(input, 1), Some(Tok::Stitch))
                && matches!(peek(input, 2), None | Some(Tok::Stop)) => {}
        // “…, and so on to 28 sts”
        (None, Some(Tok::Say(Say::To | Say::Until)))
            if matches!(peek(input, 1), Some(Tok::Number(_)))
                && matches!(peek(input, 2), Some(Tok::Stitch | Tok::Kind(_))) => {}
        _ => return fail(input),
    }
    Ok((how_often, said_from))
}

fn names_colour(inside: &[Token]) -> bool {
    matches!(inside, [first, ..] if matches!(first.tok, Tok::Say(Say::In | Say::With)))
}

/// “(sc, sc) in next st”: the same as two in one; different kinds cannot be told in one.
fn in_one_place(body: &[Placed<Op>], input: &mut Input<'_>) -> ReadResult<Op> {
    let (place, None) = place(input)? else { return fail(input) };
    let mut all = None;
    let mut many = 0_u32;
    for op in body {
        match op.it {
            Op::Each { kind, count } if all.is_none_or(|k| k == kind) => {
                all = Some(kind);
                many = many.saturating_add(count);
            }
            _ => return fail(input),
        }
    }
    match (place, all) {
        (Where::One, Some(kind)) if many > 1 => Ok(Op::Into { kind, many }),
        (Where::Ring, Some(kind)) => Ok(Op::Ring { kind, count: many }),
        (Where::Chain(nth), Some(kind)) => Ok(Op::IntoChain { kind, count: many, nth }),
        _ => fail(input),
    }
}
