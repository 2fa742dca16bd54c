//! Family likeness: a size shaped in as many repeats as the piece itself, and plain where
//! that is plain.

use crate::piece::{Face, Piece};
use crate::plan::{Plan, Round};
use crate::sentence::Sentence;

/// Plain rounds together make a zone from this many on.
const ZONE: usize = 3;

/// Most repeats that counts can be held to be multiples of.
const MOST_REPEATS: u32 = 24;

/// What members of a family share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Likeness {
    /// Repeats in a shaping round.
    repeats: Option<u32>,
    /// First and last round of the longest plain zone.
    plain: Option<(u32, u32)>,
}

/// How often a shaping round repeats, where it is one repeat.
fn repeats(round: &Round, below: u32) -> Option<u32> {
    let even = round.count != below && round.placement.is_single_repeat();
    // “inc around” counts by its increases.
    even.then(|| match round.placement.repeats {
        1 => round.count.abs_diff(below),
        n => n,
    })
}

/// The shaping rounds of `plan` after the first: number, stitches below, the round.
fn shaping(plan: &Plan) -> impl Iterator<Item = (u32, u32, &Round)> {
    let pairs = plan.rounds.windows(2).zip(2..);
    pairs
        .filter(|(pair, _)| pair[0].count != pair[1].count)
        .map(|(pair, number)| (number, pair[0].count, &pair[1]))
}

impl Likeness {
    /// What sizes of the piece planned as `plan` are to share.
    pub(super) fn of(plan: &Plan) -> Self {
        let mut tally = std::collections::BTreeMap::<u32, usize>::new();
        for (_, below, round) in shaping(plan) {
            if let Some(k) = repeats(round, below).filter(|k| (2..=MOST_REPEATS).contains(k)) {
                *tally.entry(k).or_default() += 1;
            }
        }
        // Of equals the fewest repeats, which leave the size the most freedom.
        let most = tally.iter().max_by_key(|&(&k, &n)| (n, std::cmp::Reverse(k)));
        Self { repeats: most.map(|(&k, _)| k), plain: plain_zone(plan) }
    }

    /// Asks the same of `piece`, to be worked in `to` rounds where the first had `from`.
    pub(super) fn ask(&self, piece: &mut Piece, from: u32, to: u32) {
        if let Some(k) = self.repeats {
            piece.rules.multiple_of = k;
        }
        let Some((first, last)) = self.plain else { return };
        let share = |round: u32| f64::from(round) / f64::from(from) * f64::from(to);
        let from_round = share(first - 1).round() as u32 + 1;
        let to_round = (share(last).round() as u32).min(to.saturating_sub(1));
        if from_round <= to_round && !piece.faces.iter().any(|f| f.from_round == from_round) {
            piece.faces.push(Face { from_round, to_round });
        }
    }

    /// Where `plan`, of a piece that was asked, is not alike, a sentence each.
    pub(super) fn notes(&self, piece: &Piece, plan: &Plan) -> Vec<Sentence> {
        let mut notes = Vec::new();
        if let Some(k) = self.repeats {
            let gathered = plan.rounds.len() as u32;
            let odd: Vec<u32> = shaping(plan)
                .filter(|&(number, ..)| number != gathered)
                .filter(|&(_, below, round)| repeats(round, below) != Some(k))
                .map(|(number, ..)| number)
                .collect();
            if let (Some(&first), Some(&last)) = (odd.first(), odd.last()) {
                let k = ("repeats", k.into());
                notes.push(match first == last {
                    true => {
                        Sentence::note("round_not_in_repeats", [("round", first.into()), k])
                    }
                    false => Sentence::note(
                        "rounds_not_in_repeats",
                        [
                            ("many", (odd.len() as u32).into()),
                            ("first", first.into()),
                            ("last", last.into()),
                            k,
                        ],
                    ),
                });
            }
        }
        let shaped = shaping(plan).map(|(number, ..)| number).find(|&k| piece.is_in_face(k));
        if let (Some(round), Some(_)) = (shaped, self.plain) {
            notes.push(Sentence::note("plain_zone_shaped", [("round", round.into())]));
        }
        notes
    }
}

/// First and last round of the longest run of plain rounds, where it is long enough.
fn plain_zone(plan: &Plan) -> Option<(u32, u32)> {
    let mut best: Option<(usize, usize)> = None;
    let mut start = 0;
    for i in 1..=plan.rounds.len() {
        let ends = i == plan.rounds.len() || plan.rounds[i].count != plan.rounds[i - 1].count;
        if ends {
            // Round `start` shapes; those after it up to here are plain.
            let many = i - start - 1;
            if many >= ZONE && best.is_none_or(|(a, b)| many > b - a) {
                best = Some((start + 1, i));
            }
            start = i;
        }
    }
    best.map(|(a, b)| (a as u32 + 1, b as u32))
}
