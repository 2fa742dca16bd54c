//! Wording: the rounds in words that a stranger can follow, in US terms.

use serde::Serialize;

use crate::cloth::{Hand, Kind, Loop, Working};
use crate::counts::Start;
use crate::placement::{Placement, Run, Stitch};

/// One line of the pattern: a round, or several identical rounds joined.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// First round of the line, counted from 1.
    pub first: u32,
    /// Last round of the line.
    pub last: u32,
    /// What to work, without the round number and the count.
    pub text: String,
    /// Stitches at the end of each round of the line.
    pub count: u32,
    /// Yarn the line is worked in.
    pub yarn: usize,
}

impl Line {
    /// `Rnd 9` or `Rnds 12–16`.
    pub fn heading(&self) -> String {
        if self.first == self.last {
            format!("Rnd {}", self.first)
        } else {
            format!("Rnds {}–{}", self.first, self.last)
        }
    }
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
    /// What to work, as [`round_text`] and its kin say it.
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

/// The wording of a whole piece. `stuff_after` as [`stuff_after`] finds it.
pub fn word(rounds: Vec<Worded>, manner: Manner, stuff_after: Option<u32>) -> Wording {
    let last = rounds.last().map_or(0, |r| r.count);
    let stuff_text = match stuff_after {
        Some(n) if n as usize == rounds.len() => "Stuff now.",
        _ if manner.drawn => "Stuff now. Top up before the last round.",
        _ => "Stuff now. Top up before sewing on.",
    };
    Wording {
        opening: opening(manner),
        lines: join(rounds, stuff_after),
        stuff_after,
        stuff_text: stuff_text.into(),
        closing: closing(manner, last),
    }
}

/// Lines of the rounds, identical neighbours joined, but not where something has to be done
/// in between.
fn join(rounds: Vec<Worded>, stuff_after: Option<u32>) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for (number, round) in (1..).zip(rounds) {
        match lines.last_mut() {
            Some(line)
                if line.text == round.text
                    && line.count == round.count
                    && line.yarn == round.yarn
                    && stuff_after != Some(line.last) =>
            {
                line.last = number;
            }
            _ => lines.push(Line {
                first: number,
                last: number,
                text: round.text,
                count: round.count,
                yarn: round.yarn,
            }),
        }
    }
    lines
}

/// The words of the first round, worked into a ring or along both sides of a chain.
pub fn first_round_text(start: Start, count: u32, kind: Kind) -> Option<String> {
    let code = kind.code();
    match start {
        Start::Chain(_) => None,
        Start::Ring => Some(format!("{count} {code} in magic ring")),
        Start::Oval(chain) => {
            let side = chain - 2;
            let end = (count - 2 * side) / 2;
            let ends = format!("{end} {code} in 2nd ch from hook");
            Some(match side {
                0 => format!("{ends}, {end} {code} in last ch"),
                _ => {
                    let along = plain_text(side, code);
                    format!(
                        "{ends}, {along}, {end} {code} in last ch, then along the other side \
                         of the chain {along}"
                    )
                }
            })
        }
    }
}

/// The words of one round in single crochet, into both loops.
pub fn round_text(placement: &Placement) -> String {
    round_text_in(placement, Kind::Single, None)
}

/// The words of one round in any kind of stitch, into both loops or one.
pub fn round_text_in(placement: &Placement, kind: Kind, only: Option<Loop>) -> String {
    let code = kind.code();
    let text = match placement.motif.as_slice() {
        [Run { shaping: Stitch::Plain, .. }] => format!("{code} in each st"),
        motif => {
            let motif = motif_text(motif, code);
            match placement.repeats {
                1 => motif,
                k if !motif.contains([',', '×']) => format!("{motif} × {k}"),
                k if motif.contains('(') => format!("[{motif}] × {k}"),
                k => format!("({motif}) × {k}"),
            }
        }
    };
    match only {
        Some(only) => format!("{}: {text}", only.code()),
        None => text,
    }
}

/// One pass of a motif. Plain stitches that meet are counted together, and what is worked
/// three times or more in a row stands in brackets once.
fn motif_text(motif: &[Run], code: &str) -> String {
    // Each group: plain stitches, then a shaping stitch, so many times in a row.
    let mut groups: Vec<(u32, Stitch, u32)> = Vec::new();
    let mut carried = 0;
    for run in motif {
        let again = run.before + run.after;
        for (plain, times) in [(carried + run.before, 1), (again, run.times - 1)] {
            match groups.last_mut() {
                _ if times == 0 => {}
                Some((p, s, n)) if (*p, *s) == (plain, run.shaping) => *n += times,
                _ => groups.push((plain, run.shaping, times)),
            }
        }
        carried = run.after;
    }
    let mut parts = Vec::new();
    for (plain, shaping, times) in groups {
        let mut one = Vec::new();
        if plain > 0 {
            one.push(plain_text(plain, code));
        }
        one.push(shaping.code(Kind::Single).to_owned());
        match times {
            1..=2 => parts.extend((0..times).flat_map(|_| one.clone())),
            n if plain == 0 => parts.push(format!("{} × {n}", shaping.code(Kind::Single))),
            n => parts.push(format!("({}) × {n}", one.join(", "))),
        }
    }
    if carried > 0 {
        parts.push(plain_text(carried, code));
    }
    parts.join(", ")
}

/// `sc 4`, or `sc` for one.
fn plain_text(count: u32, code: &str) -> String {
    if count == 1 { code.to_owned() } else { format!("{code} {count}") }
}

fn opening(manner: Manner) -> Vec<String> {
    let mut lines = vec![match manner.working {
        Working::Spiral => "Work right side out in a continuous spiral; do not join. Mark the \
                            first st of each round and move the marker up."
            .to_owned(),
        Working::Joined { chain_counts } => joined_text(manner.kind, chain_counts),
    }];
    if manner.hand == Hand::Left {
        lines.push(
            "Worked left-handed: rounds run clockwise seen from outside; the words are the \
             same."
                .to_owned(),
        );
    }
    match manner.start {
        Start::Ring => {}
        Start::Chain(chain) => lines.push(format!(
            "Ch {chain}; join with sl st into a ring without twisting. Rnd 1 is worked into \
             the chains."
        )),
        Start::Oval(chain) => lines.push(format!("Ch {}.", chain + 1)),
    }
    lines
}

fn joined_text(kind: Kind, chain_counts: bool) -> String {
    let chain = kind.turning_chain();
    let counts = if chain_counts {
        format!("Ch {chain} counts as the first {}", kind.code())
    } else {
        "The chain does not count as a st".to_owned()
    };
    format!(
        "Work right side out in joined rounds: begin each with ch {chain} and end it with sl \
         st in the first st. {counts}."
    )
}

fn closing(manner: Manner, last: u32) -> Vec<String> {
    match (manner.drawn, manner.start) {
        (true, Start::Oval(_)) => vec![format!(
            "Fasten off, leaving a 30 cm tail. Lay the edge flat and sew the last {last} sts \
             together, front to back; bury the end inside."
        )],
        (true, _) => vec![format!(
            "Fasten off. With a needle take the tail through the front loops of the last \
             {last} sts, pull shut, and bury the end inside."
        )],
        (false, _) => {
            vec![
                "Sl st in the next st; fasten off, leaving a 30 cm tail for sewing.".to_owned(),
            ]
        }
    }
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
    use crate::placement::Placer;

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
        let joined = word(rounds.clone(), manner, None);
        assert_eq!(joined.lines.len(), 1);
        assert_eq!(joined.lines[0].heading(), "Rnds 1–5");
        assert_eq!(word(rounds, manner, Some(3)).lines.len(), 2);
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
