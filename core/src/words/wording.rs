//! Wording: a planned piece in words that a stranger can follow. What a round is worked as
//! comes from [`crate::words::from_plan`], its words from [`crate::words::write`]; here they
//! are joined into lines, with what is read before and after them.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::piece::Piece;
use crate::piece::cloth::{Hand, Kind, Working};
use crate::plan::Plan;
use crate::plan::counts::Start;
use crate::plan::inside::{Inside, InsideStop};
use crate::plan::stuffing::{StuffHow, StuffingStop};
use crate::words::from_plan::planned_work;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Below, Writer, capitalised};

/// One line of the pattern: a round, or several identical rounds joined.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WrittenLine {
    /// First round of the line, counted from 1.
    pub first: u32,
    /// Last round of the line.
    pub last: u32,
    /// Its rounds by name: `Rnd 9`, `Rnds 12–16`.
    pub heading: String,
    /// What to work, without the round number and the count.
    pub text: String,
    /// Stitches at the end of each round of the line.
    pub count: u32,
    /// Yarn the line is worked in.
    pub yarn: usize,
}

/// All that is read while working the piece, but for materials and figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// Before the first round: how the piece is worked, and the foundation chain if any.
    pub opening: Vec<String>,
    /// The rounds.
    pub lines: Vec<WrittenLine>,
    /// Where stuffing goes in, in working order, and what to do there.
    pub stuffing: Vec<StuffingLine>,
    /// What is done inside the piece, in working order.
    pub inside: Vec<InsideLine>,
    /// After the last round.
    pub closing: Vec<String>,
}

impl Wording {
    /// The line that words round `round`.
    pub fn line_of(&self, round: u32) -> Option<&WrittenLine> {
        let i = self.lines.partition_point(|line| line.last < round);
        self.lines.get(i).filter(|line| line.first <= round)
    }

    /// What to work in round `round`; empty where there is no such round.
    pub fn text_of(&self, round: u32) -> &str {
        self.line_of(round).map_or("", |line| line.text.as_str())
    }

    /// Lines that differ from one another.
    pub fn distinct_lines(&self) -> usize {
        self.lines.iter().map(|line| line.text.as_str()).collect::<BTreeSet<_>>().len()
    }
}

/// What is read where stuffing goes in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StuffingLine {
    /// The round after which it goes in.
    pub after: u32,
    /// What to do.
    pub text: String,
}

/// What is read where something is done inside the piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InsideLine {
    /// The round after which it is done.
    pub after: u32,
    /// What to do.
    pub text: String,
    /// Whether it comes before the stuffing that goes in after the same round.
    pub under_stuffing: bool,
}

/// What the lines need to know of a round.
#[derive(Debug, Clone)]
struct Worded {
    text: String,
    count: u32,
    yarn: usize,
}

/// How the piece is worked from one end to the other, for the lines around the rounds.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Manner {
    start: Start,
    /// Whether the last round is drawn shut.
    drawn: bool,
    working: Working,
    hand: Hand,
    /// Kind of stitch of round 1, which a turning chain must match.
    kind: Kind,
}

/// `plan` in the words of `writer`; `piece` is the one that was planned.
pub fn words(plan: &Plan, piece: &Piece, writer: &Writer<'_>) -> Wording {
    let mut below = Below { count: plan.start.joined(), ..Below::default() };
    let rounds = (1..)
        .zip(&plan.rounds)
        .map(|(number, round)| {
            let (kind, count) = (round.kind.into(), round.count);
            let work = planned_work(piece, plan, number);
            let text = writer.text(&work, below);
            below = Below { kind: Some(kind), count: Some(count) };
            Worded { text, count, yarn: round.yarn }
        })
        .collect();
    let manner = Manner {
        start: plan.start,
        drawn: piece.outline.finishes_closed(),
        working: piece.working,
        hand: piece.hand,
        kind: piece.kind_of_round(1),
    };
    joined(rounds, manner, (&plan.stuffing, &plan.inside), writer)
}

/// The wording of a whole piece, its rounds worded already.
fn joined(
    rounds: Vec<Worded>,
    manner: Manner,
    (stops, inside): (&[StuffingStop], &[InsideStop]),
    writer: &Writer<'_>,
) -> Wording {
    let last = rounds.last().map_or(0, |r| r.count);
    let phrases = writer.phrases();
    let text = |i: usize, stop: &StuffingStop| match stop.how {
        StuffHow::AsYouGo => &phrases.stuff_as_you_go,
        StuffHow::Filled if i + 1 < stops.len() => &phrases.stuff_part,
        StuffHow::Filled if stop.after as usize == rounds.len() => &phrases.stuff_last,
        StuffHow::Filled if manner.drawn => &phrases.stuff_then_close,
        StuffHow::Filled => &phrases.stuff_then_sew,
    };
    let stuffing: Vec<StuffingLine> = stops
        .iter()
        .enumerate()
        .map(|(i, stop)| StuffingLine { after: stop.after, text: text(i, stop).clone() })
        .collect();
    let inner = inside_lines(inside, writer);
    let stops: Vec<u32> =
        stuffing.iter().map(|s| s.after).chain(inner.iter().map(|i| i.after)).collect();
    let mut closing = closing(manner, last, writer);
    closing.extend(inside.iter().filter_map(|stop| afterwards(stop, writer)));
    Wording {
        opening: opening(manner, writer),
        lines: join(rounds, &stops, writer),
        stuffing,
        inside: inner,
        closing,
    }
}

/// Whole millimetres, cut rather than rounded: card that is too wide shows.
fn whole_mm(mm: f64) -> String {
    format!("{:.0}", mm.floor().max(1.0))
}

/// What is done inside while the piece is worked.
fn inside_lines(stops: &[InsideStop], writer: &Writer<'_>) -> Vec<InsideLine> {
    let line = |stop: &InsideStop| {
        let text = match stop.what {
            Inside::Card { across_mm, hole_mm, .. } => {
                let (mm, hole) = (whole_mm(across_mm), whole_mm(hole_mm.unwrap_or(0.0)));
                let name = if hole_mm.is_some() { "flat_ring_laid" } else { "disc_laid" };
                writer.say_of(name, &[("mm", Words(&mm)), ("hole", Words(&hole))])
            }
            Inside::Thread { .. } => writer
                .say_of("thread_laid", &[("number", Number(stop.after)), ("n", Number(1))]),
            Inside::Sewn { .. } => return None,
        };
        let under_stuffing = stop.what.is_under_stuffing();
        Some(InsideLine { after: stop.after, text, under_stuffing })
    };
    stops.iter().filter_map(line).collect()
}

/// What of it is done once the piece is worked and stuffed.
fn afterwards(stop: &InsideStop, writer: &Writer<'_>) -> Option<String> {
    let (name, across) = match stop.what {
        Inside::Thread { across_mm } => ("thread_drawn", across_mm),
        Inside::Sewn { across_mm } => ("round_sewn", across_mm),
        Inside::Card { .. } => return None,
    };
    let (mm, around) =
        (format!("{across:.0}"), format!("{:.0}", std::f64::consts::PI * across));
    let values = [
        ("number", Number(stop.after)),
        ("n", Number(1)),
        ("mm", Words(&mm)),
        ("around", Words(&around)),
    ];
    Some(writer.say_of(name, &values))
}

/// Lines of the rounds, identical neighbours joined, but not where something has to be done
/// in between.
fn join(rounds: Vec<Worded>, stops: &[u32], writer: &Writer<'_>) -> Vec<WrittenLine> {
    let alike = writer.style().join_alike;
    let mut lines: Vec<WrittenLine> = Vec::new();
    for (number, round) in (1..).zip(rounds) {
        match lines.last_mut() {
            Some(line)
                if alike
                    && line.text == round.text
                    && line.count == round.count
                    && line.yarn == round.yarn
                    && stops.iter().all(|&after| after != line.last) =>
            {
                line.last = number;
            }
            _ => lines.push(WrittenLine {
                first: number,
                last: number,
                heading: String::new(),
                text: round.text,
                count: round.count,
                yarn: round.yarn,
            }),
        }
    }
    for line in &mut lines {
        line.heading = writer.round_name(line.first, line.last);
    }
    lines
}

fn opening(manner: Manner, writer: &Writer<'_>) -> Vec<String> {
    let phrases = writer.phrases();
    let kind = manner.kind.into();
    let say = |phrase: &str, n: u32| writer.sentence(phrase, n, kind);
    let mut lines = vec![match manner.working {
        Working::Spiral => say(&phrases.spiral, 1),
        Working::Joined { chain_counts } => {
            let chain = manner.kind.turning_chain();
            let (joined, counts) = match chain_counts {
                true => (&phrases.joined_top, phrases.chain_counts.of(chain)),
                false => (&phrases.joined_first, phrases.chain_does_not_count.as_str()),
            };
            format!("{} {}", say(joined, chain), capitalised(&say(counts, chain)))
        }
    }];
    if manner.hand == Hand::Left {
        lines.push(say(&phrases.left_handed, 1));
    }
    match manner.start {
        Start::Ring => {}
        Start::Chain(chain) => lines.push(say(&phrases.foundation_ring, chain)),
        Start::Oval(chain) => {
            lines.push(say(&phrases.foundation, chain + manner.kind.turning_chain()));
        }
    }
    lines
}

fn closing(manner: Manner, last: u32, writer: &Writer<'_>) -> Vec<String> {
    let phrases = writer.phrases();
    let phrase = match (manner.drawn, manner.start) {
        (true, Start::Oval(_)) => &phrases.close_flat,
        (true, _) => &phrases.close_drawn,
        // Its last round is closed by a slip stitch already.
        (false, _) if manner.working != Working::Spiral => &phrases.close_joined,
        (false, _) => &phrases.close_open,
    };
    vec![writer.sentence(phrase, last, manner.kind.into())]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::Spread;
    use crate::plan::placement::{Placement, Placer, Run, Stitch};
    use crate::words::StitchKind;
    use crate::words::from_plan::work;

    fn round_text(placement: &Placement) -> String {
        Writer::bench().text(&work(placement, StitchKind::Single, None), Below::default())
    }

    fn text(below: u32, count: u32) -> String {
        round_text(&Placer::new(Spread::Turned, 0.0).place(below, count))
    }

    #[test]
    fn rounds_read_as_the_trade_writes_them() {
        assert_eq!(text(6, 12), "inc × 6");
        assert_eq!(text(12, 18), "(sc, inc) × 6");
        assert_eq!(text(24, 30), "(sc 3, inc) × 6");
        assert_eq!(text(30, 30), "sc in each st");
        assert_eq!(text(48, 49), "sc 47, inc");
        assert_eq!(text(50, 48), "(sc 23, dec) × 2");
        assert_eq!(text(12, 6), "dec × 6");
        assert_eq!(text(34, 30), "(sc 6, dec, sc 7, dec) × 2");
        assert_eq!(text(31, 36), "(sc 5, inc) × 4, sc 6, inc");
        assert_eq!(text(6, 11), "inc × 4, sc, inc");
        let twice =
            |before, after, times| Run { before, shaping: Stitch::Decrease, after, times };
        let turned = Placement { motif: vec![twice(6, 2, 1), twice(7, 2, 2)], repeats: 1 };
        assert_eq!(round_text(&turned), "sc 6, dec, sc 9, dec, sc 9, dec, sc 2");
    }

    #[test]
    fn identical_plain_rounds_are_joined_but_not_across_the_stuffing() {
        let round = Worded { text: "sc in each st".into(), count: 20, yarn: 0 };
        let rounds = vec![round; 5];
        let manner = Manner {
            start: Start::Chain(20),
            drawn: false,
            working: Working::Spiral,
            hand: Hand::Right,
            kind: Kind::Single,
        };
        let lines = joined(rounds.clone(), manner, (&[], &[]), &Writer::bench());
        assert_eq!(lines.lines.len(), 1);
        assert_eq!(lines.lines[0].heading, "Rnds 1–5");
        let stop = StuffingStop { after: 3, how: StuffHow::Filled };
        assert_eq!(
            joined(rounds.clone(), manner, (&[stop], &[]), &Writer::bench()).lines.len(),
            2
        );
        let card = Inside::Card { across_mm: 46.7, hole_mm: None, on_top: false };
        let card = InsideStop { after: 4, what: card };
        let with_card = joined(rounds, manner, (&[stop], &[card]), &Writer::bench());
        assert_eq!(with_card.lines.len(), 3);
        let laid = "Lay in a disc of card or plastic 46 mm across.";
        assert_eq!(with_card.inside[0].text, laid);
        assert_eq!(lines.line_of(4).map(|l| l.first), Some(1));
        assert!(lines.line_of(6).is_none());
    }
}
