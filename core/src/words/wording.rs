//! Wording: a planned piece in words that a stranger can follow. What a round is worked as
//! comes from [`crate::words::from_plan`], its words from [`crate::words::write`]; here they
//! are joined into lines, with what is read before and after them.

use serde::Serialize;

use crate::piece::cloth::{Hand, Kind, Working};
use crate::plan::counts::Start;
use crate::plan::placement::Placement;
use crate::words::StitchKind;
use crate::words::from_plan::work;
use crate::words::write::{Below, Writer};

/// One line of the pattern: a round, or several identical rounds joined.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
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
    pub lines: Vec<Line>,
    /// Stuff the piece after this round, while the opening still lets a hand in.
    pub stuff_after: Option<u32>,
    /// What to do at that place.
    pub stuff_text: String,
    /// After the last round.
    pub closing: Vec<String>,
}

impl Wording {
    /// The line that words round `round`.
    pub fn line_of(&self, round: u32) -> Option<&Line> {
        let i = self.lines.partition_point(|line| line.last < round);
        self.lines.get(i).filter(|line| line.first <= round)
    }
}

/// What the wording needs to know of a round.
#[derive(Debug, Clone)]
pub struct Worded {
    /// What to work.
    pub text: String,
    /// Its stitch count.
    pub count: u32,
    /// Its yarn.
    pub yarn: usize,
}

/// How the piece is worked from one end to the other, for the lines around the rounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Manner {
    /// How it begins.
    pub start: Start,
    /// Whether the last round is drawn shut.
    pub drawn: bool,
    /// Spiral or joined rounds.
    pub working: Working,
    /// The hand that holds the hook.
    pub hand: Hand,
    /// Kind of stitch of round 1, which a turning chain must match.
    pub kind: Kind,
}

/// The wording of a whole piece, its rounds worded by `writer`. `stuff_after` as
/// [`stuff_after`] finds it.
pub fn word(
    rounds: Vec<Worded>,
    manner: Manner,
    stuff_after: Option<u32>,
    writer: &Writer<'_>,
) -> Wording {
    let last = rounds.last().map_or(0, |r| r.count);
    let phrases = writer.phrases();
    let stuff_text = match stuff_after {
        Some(n) if n as usize == rounds.len() => &phrases.stuff_last,
        _ if manner.drawn => &phrases.stuff_then_close,
        _ => &phrases.stuff_then_sew,
    };
    Wording {
        opening: opening(manner, writer),
        lines: join(rounds, stuff_after, writer),
        stuff_after,
        stuff_text: stuff_text.clone(),
        closing: closing(manner, last, writer),
    }
}

/// Lines of the rounds, identical neighbours joined, but not where something has to be done
/// in between.
fn join(rounds: Vec<Worded>, stuff_after: Option<u32>, writer: &Writer<'_>) -> Vec<Line> {
    let alike = writer.style().join_alike;
    let mut lines: Vec<Line> = Vec::new();
    for (number, round) in (1..).zip(rounds) {
        match lines.last_mut() {
            Some(line)
                if alike
                    && line.text == round.text
                    && line.count == round.count
                    && line.yarn == round.yarn
                    && stuff_after != Some(line.last) =>
            {
                line.last = number;
            }
            _ => lines.push(Line {
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

/// The words of one round in single crochet, into both loops.
pub fn round_text(placement: &Placement) -> String {
    Writer::bench().text(&work(placement, StitchKind::Single, None), Below::default())
}

fn opening(manner: Manner, writer: &Writer<'_>) -> Vec<String> {
    let phrases = writer.phrases();
    let kind = manner.kind.into();
    let say = |phrase: &str, n: u32| writer.sentence(phrase, n, kind);
    let mut lines = vec![match manner.working {
        Working::Spiral => say(&phrases.spiral, 1),
        Working::Joined { chain_counts } => {
            let chain = manner.kind.turning_chain();
            let counts = match chain_counts {
                true => &phrases.chain_counts,
                false => &phrases.chain_does_not_count,
            };
            format!("{} {}", say(&phrases.joined, chain), say(counts, chain))
        }
    }];
    if manner.hand == Hand::Left {
        lines.push(say(&phrases.left_handed, 1));
    }
    match manner.start {
        Start::Ring => {}
        Start::Chain(chain) => lines.push(say(&phrases.foundation_ring, chain)),
        Start::Oval(chain) => lines.push(say(&phrases.foundation, chain + 1)),
    }
    lines
}

fn closing(manner: Manner, last: u32, writer: &Writer<'_>) -> Vec<String> {
    let phrases = writer.phrases();
    let phrase = match (manner.drawn, manner.start) {
        (true, Start::Oval(_)) => &phrases.close_flat,
        (true, _) => &phrases.close_drawn,
        (false, _) => &phrases.close_open,
    };
    vec![writer.sentence(phrase, last, manner.kind.into())]
}

/// The round after which to stuff: the last one, going on from the widest, whose opening is
/// still at least 18 stitches and 60 mm around at rest. A neck further on does not count: a
/// hand has to pass it. Where the opening is never that wide, the widest round.
pub fn stuff_after(counts: &[u32], stitch_width_mm: f64) -> Option<u32> {
    let most = *counts.iter().max()?;
    let widest = counts.iter().position(|&n| n == most)?;
    let open = |&&n: &&u32| n >= 18 && f64::from(n) * stitch_width_mm >= 60.0;
    let on = counts[widest..].iter().take_while(open).count();
    Some((widest + on.max(1)) as u32)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::Spread;
    use crate::plan::placement::{Placer, Run, Stitch};

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
        let joined = word(rounds.clone(), manner, None, &Writer::bench());
        assert_eq!(joined.lines.len(), 1);
        assert_eq!(joined.lines[0].heading, "Rnds 1–5");
        assert_eq!(word(rounds, manner, Some(3), &Writer::bench()).lines.len(), 2);
        assert_eq!(joined.line_of(4).map(|l| l.first), Some(1));
        assert!(joined.line_of(6).is_none());
    }

    #[test]
    fn stuffing_comes_while_the_opening_is_wide_enough() {
        assert_eq!(stuff_after(&[6, 12, 18, 24, 18, 12, 6], 4.6), Some(5));
        assert_eq!(stuff_after(&[6, 12, 18, 24, 30, 24, 18, 12, 6], 2.4), Some(5));
        assert_eq!(stuff_after(&[6, 12, 24, 24, 14, 20, 24], 4.6), Some(4));
        assert_eq!(stuff_after(&[6, 10, 12, 12, 6], 4.0), Some(3));
    }
}
