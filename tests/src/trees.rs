//! Terse words for trees of written patterns, so that what a text should read as can be typed
//! by hand beside it; and a terse way to show them when a check fails.

use std::fmt::Write as _;
use std::ops::RangeInclusive;

use plumpline_core::Loop;
use plumpline_core::pattern::{Decrease, Line, Op, Placed, Rounds, Span, StitchKind, Times};

/// Slip stitch.
pub const SLIP: StitchKind = StitchKind::Slip;
/// US single crochet.
pub const SC: StitchKind = StitchKind::Single;
/// US half double crochet.
pub const HDC: StitchKind = StitchKind::HalfDouble;
/// US double crochet.
pub const DC: StitchKind = StitchKind::Double;
/// US treble.
pub const TR: StitchKind = StitchKind::Treble;

/// Work in order, with no place in any text.
pub fn work<const N: usize>(ops: [Op; N]) -> Vec<Placed<Op>> {
    ops.into_iter().map(Placed::unread).collect()
}

/// One stitch in each of the next `count`.
pub fn each(kind: StitchKind, count: u32) -> Op {
    Op::Each { kind, count }
}

/// `many` stitches in one.
pub fn into(kind: StitchKind, many: u32) -> Op {
    Op::Into { kind, many }
}

/// A single crochet increase.
pub fn inc() -> Op {
    into(SC, 2)
}

/// `many` stitches worked together, through both loops.
pub fn together(kind: StitchKind, many: u32) -> Op {
    Op::Together { kind, many, how: Decrease::Plain }
}

/// A single crochet decrease.
pub fn dec() -> Op {
    together(SC, 2)
}

/// An invisible single crochet decrease.
pub fn invdec() -> Op {
    Op::Together { kind: SC, many: 2, how: Decrease::Invisible }
}

/// A group worked `times` times in all.
pub fn group<const N: usize>(times: u32, body: [Op; N]) -> Op {
    Op::Group { body: work(body), times: Times::In(times) }
}

/// A group worked around.
pub fn around<const N: usize>(body: [Op; N]) -> Op {
    Op::Group { body: work(body), times: Times::Around }
}

/// One single crochet in each stitch around.
pub fn even() -> Op {
    around([each(SC, 1)])
}

/// Work into front loops only.
pub fn front<const N: usize>(body: [Op; N]) -> Op {
    Op::Only { only: Loop::Front, body: work(body) }
}

/// Work into back loops only.
pub fn back<const N: usize>(body: [Op; N]) -> Op {
    Op::Only { only: Loop::Back, body: work(body) }
}

/// `count` stitches into a magic ring.
pub fn ring(kind: StitchKind, count: u32) -> Op {
    Op::Ring { kind, count }
}

/// `count` stitches into the `nth` chain from the hook, 0 for the last chain.
pub fn in_chain(kind: StitchKind, count: u32, nth: u32) -> Op {
    Op::IntoChain { kind, count, nth }
}

/// A numbered round.
pub fn rnd<const N: usize>(round: u32, ops: [Op; N], stated: impl Into<Option<u32>>) -> Line {
    rnds(round..=round, ops, stated)
}

/// Rounds worked alike.
pub fn rnds<const N: usize>(
    rounds: RangeInclusive<u32>,
    ops: [Op; N],
    stated: impl Into<Option<u32>>,
) -> Line {
    Line::Rounds(Rounds {
        first: *rounds.start(),
        last: *rounds.end(),
        work: work(ops),
        stated: stated.into().map(Placed::unread),
    })
}

/// The name of a piece.
pub fn piece(name: &str) -> Line {
    Line::Piece(name.into())
}

/// Something done outside the numbered rounds.
pub fn act(op: Op) -> Line {
    Line::Do(work([op]))
}

/// An entry of an abbreviation list.
pub fn abbr(short: &str, meaning: &str) -> Line {
    Line::Abbreviation { short: short.into(), meaning: meaning.into() }
}

/// What is to be compared of the lines read: remarks, and what a line of doing says beyond
/// what is done, may be kept in any words, and a piece's name with any decoration. A round,
/// or a line that could not be read, is never left out.
pub fn essence(lines: &[Placed<Line>]) -> Vec<Placed<Line>> {
    let remark = |op: &Placed<Op>| matches!(op.it, Op::Note(_));
    let kept = lines.iter().filter_map(|line| match &line.it {
        Line::Note { unread: false, .. } => None,
        Line::Do(ops) => {
            let done: Vec<_> = ops.iter().filter(|op| !remark(op)).cloned().collect();
            (!done.is_empty()).then_some((Line::Do(done), &line.at))
        }
        Line::Piece(name) => {
            let bare = name.trim_matches(|c: char| !c.is_alphanumeric());
            Some((Line::Piece(bare.into()), &line.at))
        }
        other => Some((other.clone(), &line.at)),
    });
    kept.map(|(line, at)| Placed::at(line, at.clone())).collect()
}

/// A line on one line: `Rnd 3: (sc 1, sc↑2)×6 = 18`.
pub fn show_line(line: &Line) -> String {
    match line {
        Line::Piece(name) => format!("piece “{name}”"),
        Line::Rounds(r) => {
            let stated =
                r.stated.as_ref().map_or("no count".into(), |count| count.it.to_string());
            format!("Rnd {}–{}: {} = {stated}", r.first, r.last, show(&r.work))
        }
        Line::Do(ops) => format!("do {}", show(ops)),
        Line::Abbreviation { short, meaning } => format!("abbreviation “{short}” “{meaning}”"),
        Line::Note { text, unread: true } => format!("not understood “{text}”"),
        Line::Note { text, .. } => format!("remark “{text}”"),
    }
}

/// Work on one line: `sc 3, sc↑2, (sc↓2)×6` (↑ an increase, ↓ a decrease, ⇓ an invisible
/// one, ∞ around).
pub fn show(ops: &[Placed<Op>]) -> String {
    let mut text = String::new();
    for (i, op) in ops.iter().enumerate() {
        let comma = if i > 0 { ", " } else { "" };
        write!(text, "{comma}{}", show_op(&op.it)).expect("a string takes any text");
    }
    text
}

fn show_op(op: &Op) -> String {
    match op {
        Op::Each { kind, count } => format!("{} {count}", short(*kind)),
        Op::Into { kind, many } => format!("{}↑{many}", short(*kind)),
        Op::Together { kind, many, how: Decrease::Plain } => {
            format!("{}↓{many}", short(*kind))
        }
        Op::Together { kind, many, how: Decrease::Invisible } => {
            format!("{}⇓{many}", short(*kind))
        }
        Op::Group { body, times: Times::In(n) } => format!("({})×{n}", show(body)),
        Op::Group { body, times: Times::Around } => format!("({})×∞", show(body)),
        Op::Only { only, body } => format!("{}[{}]", only.code(), show(body)),
        Op::Ring { kind, count } => format!("ring of {} {count}", short(*kind)),
        Op::IntoChain { kind, count, nth } => {
            format!("{} {count} in chain {nth}", short(*kind))
        }
        other => format!("{other:?}"),
    }
}

fn short(kind: StitchKind) -> &'static str {
    match kind {
        SLIP => "sl st",
        SC => "sc",
        HDC => "hdc",
        DC => "dc",
        TR => "tr",
    }
}

/// The lines of a text that `span` touches, counted from 0: first and last.
pub fn lines_of(text: &str, span: &Span) -> (usize, usize) {
    let line = |at: usize| text.bytes().take(at).filter(|&b| b == b'\n').count();
    (line(span.start), line(span.end.max(span.start + 1) - 1))
}
