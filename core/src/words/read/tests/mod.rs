//! Every form that the reader has to read, against a short notation of the tree.

mod forms;
mod lines;
mod sense;
mod terms;

use super::{TermsWish, read};
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Line, Op, Placed, Rounds, StitchKind, Times};

/// The tree in short: `sc3` three plain stitches, `inc` and `dec` the shapings of single
/// crochet, `(…)6` a group, `(…)~` a group worked around, `blo{…}` a loop.
fn short(ops: &[Placed<Op>]) -> String {
    let kind = |kind: StitchKind| match kind {
        StitchKind::Slip => "ss",
        StitchKind::Single => "sc",
        StitchKind::HalfDouble => "hdc",
        StitchKind::Double => "dc",
        StitchKind::Treble => "tr",
    };
    let one = |op: &Op| match op {
        Op::Each { kind: k, count } => format!("{}{count}", kind(*k)),
        Op::Into { kind: StitchKind::Single, many: 2 } => "inc".into(),
        Op::Into { kind: k, many } => format!("{many}{}in1", kind(*k)),
        Op::Together { kind: StitchKind::Single, many: 2, how } => match how {
            Decrease::Plain => "dec".into(),
            Decrease::Invisible => "invdec".into(),
        },
        Op::Together { kind: k, many, .. } => format!("{}{many}tog", kind(*k)),
        Op::Group { body, times: Times::In(n) } => format!("({}){n}", short(body)),
        Op::Group { body, times: Times::Around } => format!("({})~", short(body)),
        Op::Only { only: Loop::Front, body } => format!("flo{{{}}}", short(body)),
        Op::Only { only: Loop::Back, body } => format!("blo{{{}}}", short(body)),
        Op::Ring { kind: k, count } => format!("ring:{count}{}", kind(*k)),
        Op::IntoChain { kind: k, count, nth } => format!("ch[{nth}]:{count}{}", kind(*k)),
        Op::Chain(n) => format!("ch{n}"),
        Op::Skip(n) => format!("sk{n}"),
        Op::Join => "join".into(),
        Op::OtherSide => "other side".into(),
        Op::Turn => "turn".into(),
        Op::Marker => "marker".into(),
        Op::Colour(name) => format!("<{name}>"),
        Op::Stuff => "stuff".into(),
        Op::FastenOff => "off".into(),
        Op::Note(text) => format!("“{text}”"),
    };
    ops.iter().map(|op| one(&op.it)).collect::<Vec<_>>().join(" ")
}

fn short_line(line: &Line) -> String {
    match line {
        Line::Piece(name) => format!("# {name}"),
        Line::Rounds(Rounds { first, last, work, stated }) => {
            let to = if first == last { String::new() } else { format!("-{last}") };
            let count = stated.as_ref().map_or(String::new(), |n| format!(" ={}", n.it));
            format!("{first}{to}: {}{count}", short(work))
        }
        Line::Do(work) => format!("do {}", short(work)),
        Line::Abbreviation { short, meaning } => format!("{short} := {meaning}"),
        Line::Note { text, unread: false } => format!("note {text}"),
        Line::Note { text, unread: true } => format!("UNREAD {text}"),
    }
}

fn in_terms(text: &str, code: &str) -> String {
    let reading = read(text, TermsWish::Lexicon(code));
    let lines: Vec<String> =
        reading.pattern.lines.iter().map(|line| short_line(&line.it)).collect();
    lines.join("\n")
}

fn us(text: &str) -> String {
    in_terms(text, "en-us")
}

/// What `work` is read as in a round, in US terms.
fn round(work: &str) -> String {
    let read = us(&format!("Rnd 9: {work}"));
    read.strip_prefix("9: ").unwrap_or(&read).to_owned()
}

/// Asserts that every text reads as wanted, and names all that do not.
fn all_read(reads: impl Fn(&str) -> String, cases: &[(&str, &str)]) {
    let wrong: Vec<String> = cases
        .iter()
        .map(|&(text, want)| (text, want, reads(text)))
        .filter(|(_, want, got)| want != got)
        .map(|(text, want, got)| format!("{text}\n  wanted {want}\n  read   {got}"))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
