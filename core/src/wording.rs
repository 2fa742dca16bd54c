//! Wording: the rounds in words that a stranger can follow, in US terms.

use serde::Serialize;

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
#[derive(Debug, Clone, Copy)]
pub struct Worded<'a> {
    /// Its placement.
    pub placement: &'a Placement,
    /// Its stitch count.
    pub count: u32,
    /// Its yarn.
    pub yarn: usize,
}

/// How the piece begins and ends, for the opening and closing lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ends {
    /// Stitches of the foundation chain; `None` for a magic ring.
    pub chain: Option<u32>,
    /// Whether the last round is drawn shut.
    pub drawn: bool,
}

/// The wording of a whole piece. `stuff_after` as [`stuff_after`] finds it.
pub fn word(rounds: &[Worded<'_>], ends: Ends, stuff_after: Option<u32>) -> Wording {
    let mut lines: Vec<Line> = Vec::new();
    for (i, round) in rounds.iter().enumerate() {
        let number = i as u32 + 1;
        let text = if i == 0 && ends.chain.is_none() {
            format!("{} sc in magic ring", round.count)
        } else {
            round_text(round.placement)
        };
        // Joined only where the words are the same and nothing has to be done in between.
        let joins = lines.last().is_some_and(|line| {
            line.text == text
                && line.count == round.count
                && line.yarn == round.yarn
                && stuff_after != Some(line.last)
        });
        match lines.last_mut() {
            Some(line) if joins => line.last = number,
            _ => lines.push(Line {
                first: number,
                last: number,
                text,
                count: round.count,
                yarn: round.yarn,
            }),
        }
    }
    let last = rounds.last().map_or(0, |r| r.count);
    let stuff_text = match stuff_after {
        Some(n) if n as usize == rounds.len() => "Stuff now.",
        _ if ends.drawn => "Stuff now. Top up before the last round.",
        _ => "Stuff now. Top up before sewing on.",
    };
    Wording {
        opening: opening(ends),
        lines,
        stuff_after,
        stuff_text: stuff_text.into(),
        closing: closing(ends, last),
    }
}

/// The words of one round.
pub fn round_text(placement: &Placement) -> String {
    if let [Run { shaping: Stitch::Plain, .. }] = placement.motif.as_slice() {
        return "sc in each st".into();
    }
    let motif = motif_text(&placement.motif);
    match placement.repeats {
        1 => motif,
        k if !motif.contains([',', '×']) => format!("{motif} × {k}"),
        k if motif.contains('(') => format!("[{motif}] × {k}"),
        k => format!("({motif}) × {k}"),
    }
}

/// One pass of a motif. Plain stitches that meet are counted together, and what is worked
/// three times or more in a row stands in brackets once.
fn motif_text(motif: &[Run]) -> String {
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
        let one: Vec<String> =
            plain_text(plain).into_iter().chain([shaping.code().to_owned()]).collect();
        match times {
            1..=2 => parts.extend((0..times).flat_map(|_| one.clone())),
            n if plain == 0 => parts.push(format!("{} × {n}", shaping.code())),
            n => parts.push(format!("({}) × {n}", one.join(", "))),
        }
    }
    parts.extend(plain_text(carried));
    parts.join(", ")
}

/// `sc 4`, `sc`, or nothing.
fn plain_text(count: u32) -> Option<String> {
    match count {
        0 => None,
        1 => Some("sc".to_owned()),
        n => Some(format!("sc {n}")),
    }
}

fn opening(ends: Ends) -> Vec<String> {
    let mut lines = vec![
        "Work right side out in a continuous spiral; do not join. Mark the first st of each \
         round and move the marker up."
            .to_owned(),
    ];
    if let Some(chain) = ends.chain {
        lines.push(format!(
            "Ch {chain}; join with sl st into a ring without twisting. Rnd 1 is worked into \
             the chains."
        ));
    }
    lines
}

fn closing(ends: Ends, last: u32) -> Vec<String> {
    if ends.drawn {
        vec![format!(
            "Fasten off. With a needle take the tail through the front loops of the last \
             {last} sts, pull shut, and bury the end inside."
        )]
    } else {
        vec!["Sl st in the next st; fasten off, leaving a 30 cm tail for sewing.".to_owned()]
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
        let placements: Vec<Placement> = (0..5).map(|_| Placement::plain(20)).collect();
        let rounds: Vec<Worded<'_>> = placements
            .iter()
            .map(|placement| Worded { placement, count: 20, yarn: 0 })
            .collect();
        let ends = Ends { chain: Some(20), drawn: false };
        let joined = word(&rounds, ends, None);
        assert_eq!(joined.lines.len(), 1);
        assert_eq!(joined.lines[0].heading(), "Rnds 1–5");
        assert_eq!(word(&rounds, ends, Some(3)).lines.len(), 2);
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
