//! The round chart: every stitch as the trade's symbol, on the round before it.
//!
//! Symbols are those of the trade (JIS L 0201-1995, “Letter symbols for knitting stitch”, and common use): × or + for
//! single crochet, a T for half double and one with a stroke for double, two joined at the
//! base for an increase and at the top for a decrease, an open oval for a chain and a filled
//! dot for a slip stitch.
//!
//! 1. `rings`: the rounds of a plan as rings, plain neighbours joined, and how they are
//!    divided into charts;
//! 2. `track`: where along a round and how far out a stitch stands;
//! 3. `symbols`: what is drawn there;
//! 4. `draw`: one chart; `page`: all of them and their key as one drawing.
//!
//! A start chart grows outward, as seen from outside: a right-hander works it
//! counter-clockwise from the left of the round's number. The closing end is looked at from
//! its own outside, so its chart grows inward and clockwise, from the right of the number. A
//! left-hander's charts are mirrored.

mod draw;
mod page;
mod parts;
mod rings;
mod symbols;
mod track;

use crate::piece::Piece;
use crate::piece::cloth::{Hand, Kind, Loop};
use crate::plan::Plan;
use crate::plan::placement::Stitch;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::Writer;
pub use page::chart_page;
pub(crate) use parts::rounds_named;
pub use parts::{
    Chart, ChartLook, Charts, KeyEntry, LEAST_SCALE, PAGE_MM, SLOT_MM, Shown, SingleSymbol,
    Symbol,
};

/// Most charts of one piece; a longer one has the rounds between them in words alone.
const MOST_CHARTS: usize = 6;

/// The charts of `plan`, which must be the plan of `piece`.
pub fn charts(piece: &Piece, plan: &Plan, look: &ChartLook<'_>) -> Charts {
    let rings = rings::rings(piece, plan);
    let left_handed = piece.hand == Hand::Left;
    let mut charts = Vec::new();
    let mut remarks = Vec::new();
    let parts = rings::divided(&rings);
    let skipped = parts.len().saturating_sub(MOST_CHARTS);
    let (from, to) = (MOST_CHARTS / 2, MOST_CHARTS / 2 + skipped);
    if let (true, Some(a), Some(b)) = (skipped > 0, parts.get(from), parts.get(to - 1)) {
        let last = b.rings[b.rings.len() - 1].last;
        let named = rounds_named(a.rings[0].first, last, look.writer);
        remarks.push(look.writer.say_of("long_piece", &[("rounds", Words(&named))]));
    }
    let drawn =
        parts.iter().enumerate().filter(|(i, _)| !(from..to).contains(i) || skipped == 0);
    for (_, part) in drawn {
        let drawn = draw::charts(part, plan, look, left_handed);
        if drawn.is_empty() {
            let (a, b) = (&part.rings[0], &part.rings[part.rings.len() - 1]);
            let most = part.rings.iter().map(|r| r.count).max().unwrap_or(0);
            let named = rounds_named(a.first, b.last, look.writer);
            let values = [("rounds", Words(&named)), ("n", Number(most))];
            remarks.push(look.writer.say_of("too_many", &values));
        }
        charts.extend(drawn.into_iter().map(|chart| chart.named(look.writer)));
    }
    let mut all = Charts { charts, key: Vec::new(), reading: Vec::new(), remarks };
    if !all.charts.is_empty() {
        all.key = key(piece, plan, &rings, look);
        all.reading = how_to_read(&all.charts, &rings, left_handed, look.writer);
    }
    all
}

fn how_to_read(
    charts: &[Chart],
    rings: &[rings::Ring],
    left: bool,
    writer: &Writer<'_>,
) -> Vec<String> {
    let mut said = Vec::new();
    if charts.iter().any(|c| !c.inward) {
        said.push(writer.say(if left { "read_left" } else { "read_right" }));
    }
    if charts.iter().any(|c| c.inward) {
        said.push(writer.say(if left { "inward_left" } else { "inward_right" }));
    }
    said.push(writer.say("each_symbol"));
    if rings.iter().any(|r| r.first < r.last) {
        said.push(writer.say("two_numbers"));
    }
    said
}

/// The symbols that the rings use and what they mean.
fn key(
    piece: &Piece,
    plan: &Plan,
    rings: &[rings::Ring],
    look: &ChartLook<'_>,
) -> Vec<KeyEntry> {
    let mut key = Vec::new();
    let lexicon = look.writer.lexicon();
    let uses = |kind: Kind, stitch: Stitch| {
        rings.iter().any(|r| r.kind == kind && r.placement.number_of(stitch) > 0)
    };
    for kind in [Kind::Single, Kind::HalfDouble, Kind::Double] {
        let term = lexicon.kind(kind.into());
        let two = [("kind", Words(term.brief(2)))];
        for (stitch, text) in [
            (Stitch::Plain, term.brief(1).to_owned()),
            (Stitch::Increase, look.writer.say_of("key_increase", &two)),
            (Stitch::Decrease, look.writer.say_of("key_decrease", &two)),
        ] {
            if uses(kind, stitch) {
                let drawing = symbols::sample(stitch, kind, look.single);
                key.push(KeyEntry { drawing, text });
            }
        }
    }
    for (only, text) in [(Loop::Back, "key_back"), (Loop::Front, "key_front")] {
        let first = rings.iter().find(|r| r.only == Some(only));
        if let Some(ring) = first {
            let mut drawing = symbols::sample(Stitch::Plain, ring.kind, look.single);
            symbols::sample_underline(&mut drawing, only);
            key.push(KeyEntry { drawing, text: look.writer.say(text) });
        }
    }
    let joined = matches!(piece.working, crate::piece::cloth::Working::Joined { .. });
    if joined || plan.start != crate::plan::counts::Start::Ring {
        let text = lexicon.chain.brief(1).to_owned();
        key.push(KeyEntry { drawing: symbols::sample_chain(), text });
    }
    if joined || matches!(plan.start, crate::plan::counts::Start::Chain(_)) {
        let text = look.writer.say("key_slip");
        key.push(KeyEntry { drawing: symbols::sample_slip(), text });
    }
    if plan.start == crate::plan::counts::Start::Ring {
        let text = lexicon.ring.brief(1).to_owned();
        key.push(KeyEntry { drawing: symbols::sample_ring(), text });
    }
    key
}
