//! A list of operations, read one after another: a line, or what stands in brackets.

use winnow::combinator::{opt, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use winnow::token::{any, one_of, take};

use super::count::stated;
use super::doing::doing;
use super::input::{Input, LineMemo, ReadResult, fail, fillers, peek, rest, say, since, tok};
use super::ring::{ring, work_ends};
use super::stitch::{stitches, trails};
use super::token::{Say, Tok, Token, span};
use crate::words::tree::{Op, Placed, StitchKind, Times};

/// Brackets deeper than this are kept as text.
pub(super) const DEEPEST: usize = 16;

/// A list of operations while it is read: a line, or what stands in brackets or between
/// asterisks.
#[derive(Debug, Default)]
pub(super) struct OpList {
    pub(super) ops: Vec<Placed<Op>>,
    /// Whether this is the line itself, where a count may be stated.
    pub(super) top: bool,
    /// The counts stated, one after another.
    pub(super) counts: Vec<Placed<u32>>,
    /// How many operations and unread places there were when the last count was read.
    pub(super) counted: Option<(usize, usize)>,
    /// The sign that was read just before.
    pub(super) parted: Option<Tok>,
    pub(super) wraps: usize,
    /// Whether a sentence or a thing done came just before, so that words are a remark.
    pub(super) remark: bool,
}

impl OpList {
    /// Reads one thing, consuming at least one token.
    pub(super) fn step(&mut self, input: &mut Input<'_>) {
        if self.top && self.count(input, !self.ops.is_empty()) {
            return;
        }
        let before = input.checkpoint();
        // A semicolon parts a count from the work as a full stop does.
        let semicolon = rest(input)
            .first()
            .is_some_and(|t| input.state.text.get(t.at()).is_some_and(|word| word == ";"));
        let parted = peek(input, 0).filter(|tok| tok.parts());
        let parted = if semicolon { Some(Tok::Stop) } else { parted };
        // “between 7 & 8” parts no count from the work.
        let joined = rest(input)
            .first()
            .is_some_and(|t| matches!(input.state.text.get(t.at()), Some("&" | "+")));
        let parted = if joined { Some(Tok::Say(Say::Then)) } else { parted };
        let read = match peek(input, 0) {
            None => return,
            Some(tok) if tok.parts() || tok == Tok::Equals => {
                self.remark |= tok == Tok::Stop;
                opt(any).parse_next(input).map(|_| ())
            }
            Some(Tok::Say(Say::Spread)) => {
                input.state.spread = true;
                opt(any).parse_next(input).map(|_| ())
            }
            // “8 ms dedans”, “24 fM häkeln”
            Some(Tok::Say(Say::In | Say::Work | Say::Only)) if trails(input) => {
                let it = usize::from(peek(input, 1) == Some(Tok::Say(Say::The)));
                take(1 + it).void().parse_next(input)
            }
            Some(Tok::Star | Tok::Times | Tok::Number(_)) if self.strays(input) => Ok(()),
            Some(Tok::Star) if self.top && self.footnote(input) => Ok(()),
            Some(Tok::Say(Say::Repeat)) => self.repeated(input),
            // “3 sc then inc, around”
            Some(Tok::Say(Say::Around))
                if self.top && self.parted == Some(Tok::Comma) && work_ends(peek(input, 1)) =>
            {
                let end = rest(input).first().map_or(0, |t| t.end);
                let around = opt(any).parse_next(input).map(|_: Option<&Token>| ());
                around.and_then(|()| self.wrapped(input, Times::Around, end))
            }
            // “*repeat around*”
            Some(Tok::Star) if peek(input, 1) == Some(Tok::Say(Say::Repeat)) => {
                let star = opt(any).parse_next(input).map(|_: Option<&Token>| ());
                star.and_then(|()| self.repeated(input))
                    .and_then(|()| opt(tok(Tok::Star)).void().parse_next(input))
            }
            Some(Tok::Open(n)) if n > 0 => self.bracket(input),
            Some(Tok::Star | Tok::TwoStars) => self.star(input),
            Some(Tok::Number(_) | Tok::Turns(_)) if prefix(input).is_some() => {
                self.multiplied(input)
            }
            // “(2, inc) x 6”
            Some(Tok::Number(count @ 1..))
                if !self.top && matches!(peek(input, 1), None | Some(Tok::Comma)) =>
            {
                let kind = input.state.kind.unwrap_or(StitchKind::Single);
                let at = rest(input).first().map(Token::at).unwrap_or_default();
                self.ops.push(Placed::at(Op::Each { kind, count }, at));
                opt(any).parse_next(input).map(|_| ())
            }
            Some(Tok::Number(n)) if item_ahead(input) => self.item_times(input, n),
            _ => self.item(input),
        };
        if read.is_err() {
            input.reset(&before);
            self.note(input);
        }
        self.parted = parted;
    }

    /// “* leave out what is too much”: a star behind the work, and words to the end.
    fn footnote(&mut self, input: &mut Input<'_>) -> bool {
        let tokens = rest(input);
        let works = |t: &Token| {
            t.tok.is_work() || matches!(t.tok, Tok::Star | Tok::TwoStars | Tok::Times)
        };
        if self.ops.is_empty() || tokens.len() < 4 || tokens[1..].iter().any(works) {
            return false;
        }
        let at = span(tokens);
        let text = input.state.text.get(at.clone()).unwrap_or_default().to_owned();
        self.ops.push(Placed::at(Op::Note(text), at));
        take::<_, _, winnow::error::EmptyError>(tokens.len()).parse_next(input).is_ok()
    }

    /// “*x 7”, “× 7” where nothing stands before that it belongs to.
    fn strays(&mut self, input: &mut Input<'_>) -> bool {
        let star = usize::from(peek(input, 0) == Some(Tok::Star));
        let times = (peek(input, star), peek(input, star + 1));
        let n = match times {
            (Some(Tok::Times), Some(Tok::Number(n @ 1..))) => n,
            (Some(Tok::Number(n @ 1..)), Some(Tok::Times)) => n,
            _ => return false,
        };
        if n < 2
            || self.ops.is_empty()
            || input.input.get(star + 2).is_some_and(|t| t.tok.is_work())
            || item_ahead(input)
        {
            return false;
        }
        input.state.stray = Some(Times::In(n));
        // “– 6 mal wiederholen”
        let again = usize::from(
            peek(input, star + 2) == Some(Tok::Say(Say::Repeat))
                && peek(input, star + 3)
                    .is_none_or(|t| t.parts() || matches!(t, Tok::Open(_) | Tok::Equals)),
        );
        take::<_, _, winnow::error::EmptyError>(star + 2 + again).parse_next(input).is_ok()
    }

    /// “6 x 2 fM in eine M”: one item, so often.
    fn item_times(&mut self, input: &mut Input<'_>, n: u32) -> ReadResult<()> {
        let from = rest(input);
        take(2_usize).parse_next(input)?;
        fillers(input)?;
        let mut inner = Self::default();
        inner.item(input)?;
        let [one] = inner.ops.as_slice() else { return fail(input) };
        let body = vec![one.clone()];
        let at = since(from, input);
        self.ops.push(Placed::at(Op::Group { body, times: Times::In(n) }, at));
        self.remark = false;
        Ok(())
    }

    pub(super) fn count(&mut self, input: &mut Input<'_>, has_work: bool) -> bool {
        let parted = self.parted;
        let Ok(Some(count)) =
            opt(|i: &mut Input<'_>| stated(i, has_work, parted)).parse_next(input)
        else {
            return false;
        };
        self.remark = true;
        let now = (self.ops.len(), input.state.unread.len());
        if let Some(then) = self.counted {
            let more = &self.ops[then.0.min(self.ops.len())..];
            let worked = more.iter().any(|op| op.it.works_stitches());
            // A number in a remark behind the count is none; one behind more work is.
            if !worked && then != now {
                return true;
            }
            if worked {
                self.counts.clear();
            }
        }
        self.counted = Some(now);
        self.counts.push(count);
        true
    }

    fn item(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
        let before = self.ops.len();
        if opt(|i: &mut Input<'_>| self.looped(i)).parse_next(input)?.is_some() {
            return Ok(());
        }
        if let Some(stitches) = opt(ring).parse_next(input)? {
            self.ops.extend(stitches);
            return Ok(());
        }
        let skipped = || {
            repeat::<_, _, (), _, _>(
                0..=4,
                one_of(|t: &Token| {
                    matches!(t.tok, Tok::Say(Say::Work | Say::The | Say::Make | Say::Only))
                }),
            )
        };
        let ops = &mut self.ops;
        let done = opt((|i: &mut Input<'_>| doing(i, ops)).void()).parse_next(input)?.is_some()
            || opt((skipped(), |i: &mut Input<'_>| doing(i, ops)).void())
                .parse_next(input)?
                .is_some();
        if done {
            self.remark = !matches!(self.ops.last().map(|op| &op.it), Some(Op::Skip(_)));
            return Ok(());
        }
        (skipped(), |i: &mut Input<'_>| stitches(i, ops)).void().parse_next(input)?;
        self.remark = false;
        if std::mem::take(&mut input.state.collect) {
            self.collected();
        }
        if let (Some(_), Some(first)) = (&input.state.ring, self.ops.get_mut(before)) {
            match first.it {
                // A slip stitch only closes it.
                Op::Each { kind: StitchKind::Slip, .. } => return Ok(()),
                Op::Each { kind, count } => first.it = Op::Ring { kind, count },
                Op::Ring { .. } => {}
                _ => return Ok(()),
            }
            input.state.ring = None;
        }
        Ok(())
    }

    /// “FLO: …”, “in BLO, …”, “FLO sc 3”, “…, all in BLO”.
    fn looped(&mut self, input: &mut Input<'_>) -> ReadResult<()> {
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
            Some(Tok::Star | Tok::TwoStars) => inner.star(input),
            _ => inner.item(input),
        };
        input.state.depth -= 1;
        read?;
        if inner.ops.is_empty() {
            return fail(input);
        }
        let at = since(from, input);
        let body = match <[_; 1]>::try_from(inner.ops) {
            // Brackets that say not how often only hold together what the loop is for.
            Ok([Placed { it: Op::Group { body, .. }, at }])
                if input.state.bare.last() == Some(&at.start) =>
            {
                input.state.bare.pop();
                body
            }
            Ok(one) => one.into(),
            Err(several) => several,
        };
        self.ops.push(Placed::at(Op::Only { only, body }, at));
        Ok(())
    }

    /// Makes one of the plain stitches just read: all of them go into one stitch.
    fn collected(&mut self) {
        let plain = |op: &&Placed<Op>| matches!(op.it, Op::Each { .. });
        let many = self.ops.iter().rev().take_while(plain).count();
        let from = self.ops.len() - many;
        let Some(Placed { it: Op::Each { kind, .. }, .. }) = self.ops.get(from) else { return };
        let kind = *kind;
        let gone = self.ops.split_off(from);
        let count =
            |op: &Placed<Op>| if let Op::Each { count, .. } = op.it { count } else { 0 };
        let many = gone.iter().map(count).fold(0, u32::saturating_add);
        let at = gone[0].at.start..gone[gone.len() - 1].at.end;
        let op = if many > 1 { Op::Into { kind, many } } else { Op::Each { kind, count: 1 } };
        self.ops.push(Placed::at(op, at));
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
                        state: LineMemo::default(),
                    };
                    self.top && stated(&mut ahead, true, None).is_ok()
                }
                Tok::Equals | Tok::Stuff | Tok::FastenOff => n > 0,
                tok => tok.parts() || n > 0 && work_begins(tokens, n),
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

    pub(super) fn push_note(&mut self, input: &mut Input<'_>, words: &[Token]) {
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

/// Whether work may begin at token `n`, behind words that were not understood: a stitch, or
/// a number of them, that is not the place of another.
fn work_begins(tokens: &[Token], n: usize) -> bool {
    let kind =
        |tok| matches!(tok, Tok::Kind(_) | Tok::Increase(_) | Tok::Decrease(..) | Tok::Fancy);
    let begins = match tokens[n].tok {
        Tok::Number(_) => {
            tokens.get(n + 1).is_some_and(|t| kind(t.tok))
                && !tokens
                    .get(n + 2)
                    .is_some_and(|t| matches!(t.tok, Tok::Number(_)) && t.glued)
        }
        tok => kind(tok),
    };
    if !begins && tokens[n].tok != Tok::Ring {
        return false;
    }
    let filler = |t: &&Token| matches!(t.tok, Tok::Say(Say::The));
    let before = tokens[..n].iter().rev().find(|t| !filler(t)).map(|t| t.tok);
    let placed = matches!(
        before,
        Some(
            Tok::Say(
                Say::In
                    | Say::Each
                    | Say::Next
                    | Say::Last
                    | Say::Same
                    | Say::From
                    | Say::To
                    | Say::Over
                    | Say::For
                    | Say::As
                    | Say::Without
            ) | Tok::InEach
                | Tok::Number(_)
                | Tok::OddNumber
                | Tok::Kind(_)
                | Tok::Increase(_)
                | Tok::Decrease(..)
        )
    );
    let nth = matches!(before, Some(Tok::Ordinal(_))) && tokens[n].tok != Tok::Ring;
    !placed && !nth
}

/// Whether “6 x 2 fM” stands here: a number of times before an item that has a number too.
fn item_ahead(input: &Input<'_>) -> bool {
    let fillers = (2..5).take_while(|&i| peek(input, i) == Some(Tok::Say(Say::The))).count();
    let at = 2 + fillers;
    matches!(peek(input, 0), Some(Tok::Number(2..)))
        && peek(input, 1) == Some(Tok::Times)
        && matches!(peek(input, at), Some(Tok::Number(_)))
        && matches!(
            peek(input, at + 1),
            Some(Tok::Kind(_) | Tok::Increase(_) | Tok::Decrease(..))
        )
}

/// “6 x (”, “6 times [”, “6*(”, “6(”: how often the brackets that follow are worked.
pub(super) fn prefix(input: &Input<'_>) -> Option<u32> {
    let (Tok::Number(times) | Tok::Turns(times)) = peek(input, 0)? else { return None };
    let once = matches!(peek(input, 0), Some(Tok::Turns(_)));
    let open = match peek(input, 1)? {
        // “dreimal (…)”, “three times: (…)”
        Tok::Open(_) if once => 1,
        Tok::Colon if once => 2,
        Tok::Times if peek(input, 2) == Some(Tok::Colon) => 3,
        Tok::Times => 2,
        // “5*(1, V)”
        Tok::Star if !input.state.in_star && matches!(peek(input, 2), Some(Tok::Open(_))) => 2,
        _ if input.input.get(1).is_some_and(|t| t.glued) => 1,
        _ => return None,
    };
    let Tok::Open(n) = peek(input, open)? else { return None };
    let inside = input.input.get(open + 1..open + n)?;
    (times > 0 && inside.iter().take(8).any(|t| t.tok.is_work())).then_some(times)
}
