//! What is worked in one line: items, brackets, asterisks, repeats and the stated count.

use winnow::stream::{Stateful, TokenSlice};

use super::input::LineMemo;
use super::op_list::OpList;
use super::settle::{is_worked, leaves, settle_bare, settle_stray, settle_unsure};
use super::token::Token;
use crate::words::tree::{Op, Placed, Span, StitchKind, Times};

/// What a line was read as.
#[derive(Debug, Clone, Default)]
pub(super) struct LineReading {
    pub(super) work: Vec<Placed<Op>>,
    pub(super) stated: Option<Placed<u32>>,
    pub(super) unread: Vec<Span>,
    /// Counts that stand one after another at the end, where there are several.
    pub(super) stated_each: Vec<u32>,
    pub(super) hints: Hints,
}

/// What the words of a line leave to its sums.
#[derive(Debug, Clone, Default)]
pub(super) struct Hints {
    /// “evenly spaced” was said.
    pub(super) spread: bool,
    /// “every 2 stitches” was said, without an ordinal.
    pub(super) every: bool,
    /// “every 2nd stitch” was said.
    pub(super) every_nth: bool,
    /// A stitch of its own kind was taken for a plain one.
    pub(super) fancy: bool,
    /// How often, said where nothing stands that it belongs to.
    pub(super) stray: Option<Times>,
    /// Where the group starts of which “repeat n times” may or may not count the first.
    pub(super) unsure: Option<usize>,
    /// Where groups start that were said without how often.
    pub(super) bare: Vec<usize>,
}

/// Reads the prepared tokens of one line, without its heading. `kind` is the kind of stitch
/// where none is named.
pub(super) fn work(tokens: &[Token], text: &str, kind: StitchKind) -> LineReading {
    let state = LineMemo { text, kind: Some(kind), ..LineMemo::default() };
    let mut input = Stateful { input: TokenSlice::new(tokens), state };
    let mut line = OpList { top: true, ..OpList::default() };
    while !input.input.is_empty() {
        line.step(&mut input);
    }
    let mut desk = input.state;
    if let Some(ring) = desk.ring.take() {
        desk.unread.push(ring);
    }
    let OpList { mut ops, mut counts, mut counted, .. } = line;
    // “Peas (3): 6 sc in ring”: a number before all work is no count of it.
    let works = |op: &Placed<Op>| is_worked(&op.it);
    if let Some((done, _)) = counted
        && !ops.iter().take(done).any(works)
        && ops.iter().skip(done).any(works)
    {
        counted = None;
        // “Rnd 3 (18) sc, inc” begins with its own.
        if done > 0 {
            counts.clear();
        }
    }
    let stated = counts.last().cloned();
    let stated_each = counts.drain(..).map(|c| c.it).collect();
    // What stands behind the count is no work of the round.
    if let Some((done, unread)) = counted {
        let mut at = 0;
        ops.retain(|op| {
            at += 1;
            at <= done
                || matches!(op.it, Op::Note(_))
                || !(op.it.works_stitches() || is_worked(&op.it))
        });
        desk.unread.truncate(unread);
    }
    for (left, at) in &desk.to_last {
        if !leaves(&ops, *left, at) {
            desk.unread.push(at.clone());
        }
    }
    let hints = Hints {
        spread: desk.spread,
        every: desk.every,
        every_nth: desk.every_nth,
        fancy: desk.fancy,
        stray: desk.stray,
        unsure: desk.unsure,
        bare: desk.bare.clone(),
    };
    if let Some(times) = desk.stray {
        settle_stray(&mut ops, &mut desk.bare, times);
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
    LineReading { work: ops, stated, unread: desk.unread, stated_each, hints }
}
