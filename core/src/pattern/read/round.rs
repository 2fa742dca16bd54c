//! What is worked in one line: items, brackets, asterisks, repeats and the stated count.

use winnow::combinator::{alt, opt, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{any, one_of, take};

use super::count::stated;
use super::doing::doing;
use super::place::{
    Desk, Input, Read, Turns, fail, fillers, number, peek, rest, say, since, tok, turns,
};
use super::stitch::stitches;
use super::tokens::{Tok, Token, span};
use super::words::Say;
use crate::pattern::tally::tally;
use crate::pattern::tree::{Op, Placed, Span, StitchKind, Times};

/// Brackets deeper than this are kept as text.
const DEEPEST: usize = 16;
/// How often one list is wrapped by “repeat” before it is kept as text.
const WRAPS: usize = 4;

/// What a line was read as.
#[derive(Debug, Default)]
pub(super) struct Worked {
    pub(super) work: Vec<Placed<Op>>,
    pub(super) stated: Option<Placed<u32>>,
    pub(super) unread: Vec<Span>,
}

/// Reads the prepared tokens of one line, without its heading. `kind` is the kind of stitch
/// where none is named.
pub(super) fn work(tokens: &[Token], text: &str, kind: StitchKind) -> Worked {
    let state = Desk { text, kind: Some(kind), ..Desk::default() };
    let mut input = Stateful { input: TokenSlice::new(tokens), state };
    let mut line = Line { top: true, ..Line::default() };
    while !input.input.is_empty() {
        line.step(&mut input);
    }
    let mut desk = input.state;
    if let Some(ring) = desk.ring.take() {
        desk.unread.push(ring);
    }
    let Line { mut ops, stated, .. } = line;
    for (left, at) in &desk.to_last {
        if !leaves(&ops, *left, at) {
            desk.unread.push(at.clone());
        }
    }
    settle_bare(&mut ops, &desk.bare);
    settle_unsure(&mut ops, desk.unsure, stated.as_ref());
    if let Some((only, from)) = desk.loop_from
        && from < ops.len()
    {
        let body = ops.split_off(from);
        let at = body[0].at.start..body.iter().map(|op| op.at.end).max().unwrap_or_default();
        ops.push(Placed::at(Op::Only { only, body }, at));
    }
    desk.unread.sort_by_key(|at| (at.start, at.end));
    desk.unread.dedup();
    Worked { work: ops, stated, unread: desk.unread }
}

/// A list of operations while it is read: a line, or what stands in brackets or between
/// asterisks.
#[derive(Debug, Default)]
struct Line {
    ops: Vec<Placed<Op>>,
    /// Whether this is the line itself, where a count may be stated.
    top: bool,
    stated: Option<Placed<u32>>,
    wraps: usize,
    /// Whether a sentence or a thing done came just before, so that words are a remark.
    remark: bool,
}

impl Line {
    /// Reads one thing, consuming at least one token.
    fn step(&mut self, input: &mut Input<'_>) {
        if self.top && self.count(input, !self.ops.is_empty()) {
            return;
        }
        let before = input.checkpoint();
        let read = match peek(input, 0) {
            None => return,
            Some(tok) if tok.parts() || tok == Tok::Equals => {
                self.remark |= tok == Tok::Stop;
                opt(any).parse_next(input).map(|_| ())
            }
            Some(Tok::Say(Say::Repeat)) => self.repeated(input),
            Some(Tok::Open(n)) if n > 0 => self.bracket(input),
            Some(Tok::Star | Tok::TwoStars) => self.star(input),
            Some(Tok::Number(_)) if prefix(input).is_some() => self.multiplied(input),
            _ => self.item(input),
        };
        if read.is_err() {
            input.reset(&before);
            self.note(input);
        }
    }

    fn count(&mut self, input: &mut Input<'_>, has_work: bool) -> bool {
        let Ok(Some(count)) = opt(|i: &mut Input<'_>| stated(i, has_work)).parse_next(input)
        else {
            return false;
        };
        self.remark = true;
        if let Some(other) = self.stated.replace(count)
            && Some(other.it) != self.stated.as_ref().map(|s| s.it)
        {
            input.state.unread.push(other.at);
        }
        true
    }

    fn item(&mut self, input: &mut Input<'_>) -> Read<()> {
        let before = self.ops.len();
        if opt(|i: &mut Input<'_>| self.looped(i)).parse_next(input)?.is_some() {
            return Ok(());
        }
        if let Some(stitches) = opt(ring).parse_next(input)? {
            self.ops.extend(stitches);
            return Ok(());
        }
        let skipped = repeat::<_, _, (), _, _>(
            0..=4,
            one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::Work | Say::The | Say::Make))),
        );
        let ops = &mut self.ops;
        let done = opt((|i: &mut Input<'_>| doing(i, ops)).void()).parse_next(input)?.is_some();
        if done {
            self.remark = !matches!(self.ops.last().map(|op| &op.it), Some(Op::Skip(_)));
            return Ok(());
        }
        (skipped, |i: &mut Input<'_>| stitches(i, ops)).void().parse_next(input)?;
        self.remark = false;
        if let (Some(_), Some(first)) = (&input.state.ring, self.ops.get_mut(before)) {
            match first.it {
                Op::Each { kind, count } => first.it = Op::Ring { kind, count },
                Op::Ring { .. } => {}
                _ => return Ok(()),
            }
            input.state.ring = None;
        }
        Ok(())
    }

    /// “FLO: …”, “in BLO, …”, “FLO sc 3”, “…, all in BLO”.
    fn looped(&mut self, input: &mut Input<'_>) -> Read<()> {
        let from = rest(input);
        let lead = repeat::<_, _, usize, _, _>(
            0..=3,
            one_of(|t: &Token| matches!(t.tok, Tok::Say(Say::In | Say::Work | Say::The))),
        )
        .parse_next(input)?;
        let Some(Tok::Loop(only)) = peek(input, 0) else { return fail(input) };
        any.parse_next(input)?;
        opt(say(Say::Only)).parse_next(input)?;
        let rest_of_line = match peek(input, 0) {
            None | Some(Tok::Stop) if self.top && !self.ops.is_empty() => {
                input.state.loop_from = Some((only, 0));
                return Ok(());
            }
            Some(Tok::Colon) => true,
            Some(Tok::Comma) => lead > 0,
            _ => lead > 0 && self.ops.is_empty(),
        };
        if self.top && rest_of_line && input.state.loop_from.is_none() {
            input.state.loop_from = Some((only, self.ops.len()));
            return Ok(());
        }
        if input.state.depth >= DEEPEST {
            return fail(input);
        }
        opt(tok(Tok::Colon)).parse_next(input)?;
        input.state.depth += 1;
        let mut inner = Self::default();
        let read = match peek(input, 0) {
            Some(Tok::Open(n)) if n > 0 => inner.bracket(input),
            _ => inner.item(input),
        };
        input.state.depth -= 1;
        read?;
        if inner.ops.is_empty() {
            return fail(input);
        }
        let at = since(from, input);
        self.ops.push(Placed::at(Op::Only { only, body: inner.ops }, at));
        Ok(())
    }

    /// “6 x (sc, inc)”.
    fn multiplied(&mut self, input: &mut Input<'_>) -> Read<()> {
        let from = rest(input);
        let Some(times) = prefix(input) else { return fail(input) };
        (number, opt(tok(Tok::Times))).parse_next(input)?;
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

    fn bracket(&mut self, input: &mut Input<'_>) -> Read<()> {
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
    fn star(&mut self, input: &mut Input<'_>) -> Read<()> {
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
    fn repeated(&mut self, input: &mut Input<'_>) -> Read<()> {
        let from = rest(input);
        let (turns, _) = clause(input)?;
        let end = since(from, input).end;
        let times = turns.unwrap_or(Turns::Around).times();
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
        self.ops.push(Placed::at(Op::Group { body, times }, at));
        Ok(())
    }

    /// Keeps words as they stand, up to what parts them from the next instruction.
    fn note(&mut self, input: &mut Input<'_>) {
        let tokens = rest(input);
        // A bracket or an asterisk without its fellow stands for itself.
        let lone = matches!(
            tokens.first().map(|t| t.tok),
            Some(Tok::Open(0) | Tok::Close | Tok::Star | Tok::TwoStars)
        );
        let mut n = usize::from(lone);
        while let Some(token) = tokens.get(n).filter(|_| !lone) {
            let parted = match token.tok {
                Tok::Dash => !(token.glued && tokens.get(n + 1).is_some_and(|t| t.glued)),
                Tok::Star | Tok::TwoStars => true,
                Tok::Open(_) if n > 0 => {
                    let mut ahead = Stateful {
                        input: TokenSlice::new(&tokens[n..]),
                        state: Desk::default(),
                    };
                    self.top && stated(&mut ahead, true).is_ok()
                }
                Tok::Equals | Tok::Stuff | Tok::FastenOff => n > 0,
                tok => tok.parts(),
            };
            if parted && n > 0 {
                break;
            }
            n += 1 + if let Tok::Open(inside) = token.tok { inside } else { 0 };
        }
        let words = &tokens[..n.clamp(1, tokens.len())];
        // Words before a verb that stands last say how.
        self.remark |=
            matches!(tokens.get(n).map(|t| t.tok), Some(Tok::Stuff | Tok::FastenOff));
        if take::<_, _, winnow::error::EmptyError>(words.len()).parse_next(input).is_ok() {
            self.push_note(input, words);
        }
    }

    fn push_note(&mut self, input: &mut Input<'_>, words: &[Token]) {
        let at = span(words);
        let bracketed = matches!(words, [Token { tok: Tok::Open(n), .. }, ..] if *n > 0);
        let counts = words.iter().any(|t| t.tok.is_work() || t.tok.counts());
        if counts || !(self.remark || bracketed) {
            input.state.unread.push(at.clone());
        }
        let text = input.state.text.get(at.clone()).unwrap_or_default().to_owned();
        self.ops.push(Placed::at(Op::Note(text), at));
    }
}

/// Reads what stands in brackets.
fn nested<'a>(input: &mut Input<'a>, inside: &'a [Token], line: &mut Line) -> Vec<Placed<Op>> {
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

/// “6 x (”, “6 times [”, “6(”: how often the brackets that follow are worked.
fn prefix(input: &Input<'_>) -> Option<u32> {
    let Tok::Number(times) = peek(input, 0)? else { return None };
    let open = match peek(input, 1)? {
        Tok::Times => 2,
        _ if input.input.get(1).is_some_and(|t| t.glued) => 1,
        _ => return None,
    };
    let Tok::Open(n) = peek(input, open)? else { return None };
    let inside = input.input.get(open + 1..open + n)?;
    (times > 0 && inside.iter().take(8).any(|t| t.tok.is_work())).then_some(times)
}

/// “(sc, inc) 6”, with nothing to say that it is a count of something else.
fn bare_number(input: &mut Input<'_>) -> Read<Turns> {
    match peek(input, 1) {
        None | Some(Tok::Open(_) | Tok::Equals) => number.map(Turns::In).parse_next(input),
        Some(tok) if tok.parts() => number.map(Turns::In).parse_next(input),
        _ => fail(input),
    }
}

/// “repeat from * to * 5 more times”, “rep around”, “ab * noch 5 x wiederholen”: how often,
/// if that is said, and whether it says from where.
fn clause(input: &mut Input<'_>) -> Read<(Option<Turns>, bool)> {
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
    fillers(input)?;
    match (how_often, peek(input, 0)) {
        (Some(_), _) => {}
        (None, None | Some(Tok::Open(_) | Tok::Equals)) => {}
        (None, Some(tok)) if tok.parts() => {}
        _ => return fail(input),
    }
    Ok((how_often, said_from))
}

/// A ring that is named before the stitches worked into it: “MR, 6 sc”. Those of “MR 6” are
/// returned.
fn ring(input: &mut Input<'_>) -> Read<Option<Placed<Op>>> {
    let lead = one_of(|t: &Token| {
        matches!(t.tok, Tok::Say(Say::In | Say::Work | Say::The | Say::Make | Say::With))
    });
    repeat::<_, _, (), _, _>(0..=3, lead).parse_next(input)?;
    let from = rest(input);
    tok(Tok::Ring).parse_next(input)?;
    let named = since(from, input);
    opt(say(Say::With)).parse_next(input)?;
    let alone =
        !peek(input, 1).is_some_and(|t| t.is_work() || matches!(t, Tok::Times | Tok::Stitch));
    if alone && let Some(count) = opt(number).parse_next(input)? {
        let kind = input.state.kind.unwrap_or(StitchKind::Single);
        return Ok(Some(Placed::at(Op::Ring { kind, count }, since(from, input))));
    }
    input.state.ring = Some(named);
    Ok(None)
}

fn names_colour(inside: &[Token]) -> bool {
    matches!(inside, [first, ..] if matches!(first.tok, Tok::Say(Say::In | Say::With)))
}

/// “(sc, sc) in next st”: the same as two in one; different kinds cannot be told in one.
fn in_one_place(body: &[Placed<Op>], input: &mut Input<'_>) -> Read<Op> {
    use super::place::{Place, place};
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
        (Place::One, Some(kind)) if many > 1 => Ok(Op::Into { kind, many }),
        (Place::Ring, Some(kind)) => Ok(Op::Ring { kind, count: many }),
        (Place::Chain(nth), Some(kind)) => Ok(Op::IntoChain { kind, count: many, nth }),
        _ => fail(input),
    }
}

fn is_worked(op: &Op) -> bool {
    use Op::{Chain, Colour, FastenOff, Join, Marker, Note, Stuff, Turn};
    !matches!(op, Chain(_) | Colour(_) | FastenOff | Join | Marker | Note(_) | Stuff | Turn)
}

/// A group that says not how often is worked around where it is all the work of the line
/// (as Spanish patterns write it), and once otherwise.
fn settle_bare(ops: &mut [Placed<Op>], bare: &[usize]) {
    let mut worked = ops.iter_mut().filter(|op| is_worked(&op.it));
    if let (Some(only), None) = (worked.next(), worked.next())
        && bare.contains(&only.at.start)
        && let Op::Group { times, .. } = &mut only.it
    {
        *times = Times::Around;
    }
}

/// Whether what comes after the operation that says so at `at` takes up `left` stitches, so
/// that “to last 2 sts” is all said by working around.
fn leaves(ops: &[Placed<Op>], left: u32, at: &Span) -> bool {
    let said = ops.iter().position(|op| op.at.start <= at.start && at.end <= op.at.end);
    said.is_some_and(|i| tally(&ops[i + 1..], None).is_ok_and(|t| t.taken == left))
}

/// Where the stated count comes out with one working less, “n times” counted all of them.
fn settle_unsure(ops: &mut [Placed<Op>], unsure: Option<usize>, stated: Option<&Placed<u32>>) {
    let (Some(start), Some(stated)) = (unsure, stated) else { return };
    let comes_out = |ops: &[Placed<Op>]| tally(ops, None).is_ok_and(|t| t.left == stated.it);
    if comes_out(ops) {
        return;
    }
    let add = |ops: &mut [Placed<Op>], by: i64| {
        if let Some(Placed { it: Op::Group { times: Times::In(n), .. }, .. }) =
            ops.iter_mut().find(|op| op.at.start == start)
        {
            *n = n.saturating_add_signed(if by < 0 { -1 } else { 1 });
        }
    };
    add(ops, -1);
    if !comes_out(ops) {
        add(ops, 1);
    }
}
