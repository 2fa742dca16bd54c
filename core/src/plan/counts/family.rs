//! Patterns: counts written in full repeats, both halves alike where the outline's are.

use super::candidate::{Candidate, Near, Stuffed};
use super::repeats::{MOST_NUMBERS, Prices, RepeatRun, Shaping};
use super::rounds::AllowedRounds;
use super::rules::Start;
use super::steps::Steps;
use crate::piece::Piece;
use crate::piece::outline::Profile;

/// What a round costs whose count is not the one it had, squared stitches.
const MENDED: f64 = 4e-4;

/// The unit at which patterns are sought where no full repeats keep to the rules.
pub(super) const LEAST_UNEVEN_UNIT: f64 = 2e-3;

/// The rounds that patterns are sought in: as the candidate's, both halves alike where the
/// outline's are; and the steps between them that are full repeats.
pub(super) struct Family {
    pub(super) rounds: AllowedRounds,
    pub(super) steps: Steps,
    pub(super) together: bool,
    /// The least unit at which patterns are sought: where no full repeats keep to the rules,
    /// as few uneven rounds as can be.
    least_unit: f64,
}

impl Family {
    pub(super) fn new(candidate: &Candidate<'_>) -> Self {
        let piece = candidate.wish.piece;
        let halves = mirrors(piece, candidate.wish.profile, candidate.rounds.rounds());
        let alike = halves && !candidate.rounds.is_mirrored();
        let together = piece.rules.plain_together;
        let full = |rounds: AllowedRounds| {
            let steps = Steps::new(&rounds, false)?;
            Some(Self { rounds, steps, together, least_unit: 0.0 })
        };
        let mirrored = if alike { full(candidate.rounds.clone().mirrored()) } else { None };
        mirrored.or_else(|| full(candidate.rounds.clone())).unwrap_or_else(|| Self {
            rounds: candidate.rounds.clone(),
            steps: candidate.steps.clone(),
            together,
            least_unit: LEAST_UNEVEN_UNIT,
        })
    }

    /// The best pattern near `near` at `unit`, and its predicted cost.
    pub(super) fn best(&self, near: &mut Near, unit: f64) -> Option<(Vec<u32>, f64)> {
        self.changed_best(near, unit, 0.0)
    }

    /// The best pattern near `near` at `unit` that leaves as many of its rounds as they are as
    /// can be, and its predicted cost.
    pub(super) fn mended(&self, near: &mut Near, unit: f64) -> Option<(Vec<u32>, f64)> {
        self.changed_best(near, unit, MENDED)
    }

    /// The best pattern near `near` at `unit` where a round whose count changes costs `change`,
    /// squared stitches; and its predicted cost.
    pub(super) fn changed_best(
        &self,
        near: &mut Near,
        unit: f64,
        change: f64,
    ) -> Option<(Vec<u32>, f64)> {
        let prices = Prices::at(unit.max(self.least_unit), self.together);
        near.best(&self.rounds, &self.steps, Prices { change, ..prices })
    }

    /// Misfit, slack and prices at `unit`, squared stitches.
    pub(super) fn cost(&self, stuffed: &Stuffed, unit: f64) -> f64 {
        stuffed.cost() + unit * trouble(&self.rounds, &stuffed.counts, self.together)
    }
}

/// What the pattern of `counts` costs the maker, in new numbers of repeats.
pub(super) fn trouble(rounds: &AllowedRounds, counts: &[u32], together: bool) -> f64 {
    trouble_at(Prices::at(1.0, together), rounds.targets.start, counts)
}

/// The same where nothing is wanted of plain rounds.
pub(super) fn trouble_of(start: Start, counts: &[u32]) -> f64 {
    trouble_at(Prices::at(1.0, false), start, counts)
}

fn trouble_at(prices: Prices, start: Start, counts: &[u32]) -> f64 {
    let (mut run, mut all) = (RepeatRun::default(), 0.0);
    let mut below = start.joined();
    let mut was_plain = None;
    for &count in counts {
        if let Some(below) = below.replace(count) {
            let shaping = Shaping::in_piece(start, below, count);
            all += prices.of(shaping, below, run);
            run = run.then(shaping);
            let plain = below == count;
            all +=
                was_plain.replace(plain).map_or(0.0, |was| prices.of_alternation(was, plain));
        }
    }
    all
}

/// Stitches around from which a piece is a body, where a lone increase or decrease shows unless
/// its round has less than half as many.
const BODY: u32 = 24;

/// Shaping rounds to each that may be no full repeat in a pattern.
const SHAPING_TO_AN_UNEVEN: usize = 10;

/// Whether `counts` are written in full repeats, of few numbers: nine of ten of the shaping
/// rounds.
pub(super) fn is_pattern(rounds: &AllowedRounds, counts: &[u32]) -> bool {
    let start = rounds.targets.start.joined().into_iter();
    let all: Vec<u32> = start.chain(counts.iter().copied()).collect();
    let (mut shaping, mut uneven, mut closes) = (0, 0, true);
    let mut run = RepeatRun::default();
    let body = all.iter().max().is_some_and(|&most| most >= BODY);
    for pair in all.windows(2) {
        let shaped = rounds.shaping(pair[0], pair[1]);
        if shaped == Shaping::Plain {
            continue;
        }
        run = run.then(shaped);
        shaping += 1;
        uneven += usize::from(shaped == Shaping::Uneven);
        closes = shaped != Shaping::Uneven;
        if body && pair[0].abs_diff(pair[1]) == 1 && pair[1] >= BODY / 2 {
            return false;
        }
    }
    let numbers = run.numbers() + u32::from(uneven > 0);
    // Halves alike have theirs twice.
    let most = if rounds.is_mirrored() { 0 } else { shaping / SHAPING_TO_AN_UNEVEN };
    let few = uneven <= most && numbers <= MOST_NUMBERS;
    few && (closes || !rounds.targets.drawn)
}

/// How far the two halves of an outline that is called symmetric may differ, in stitches.
const ALIKE_STITCHES: f64 = 0.05;

/// Whether the second half of the outline mirrors the first, and nothing else tells the two
/// apart.
fn mirrors(piece: &Piece, profile: &Profile, rounds: usize) -> bool {
    let rules = &piece.rules;
    let ends = piece.outline.starts_closed() == piece.outline.finishes_closed()
        && rules.ring == rules.last
        && piece.straight_mm == 0.0;
    let last = rounds as u32 + 1;
    let plain = piece.pins.is_empty()
        && piece.faces.is_empty()
        && (1..last).all(|k| piece.cloth_of_round(k) == piece.cloth_of_round(last - k))
        && piece.outline.knots.iter().all(|k| k.hold.is_none() && !k.card);
    let most = ALIKE_STITCHES * piece.gauge.stitch_width_mm();
    let stations = &profile.stations;
    let pairs = stations.iter().zip(stations.iter().rev()).take(stations.len() / 2);
    let length = |a: f64, b: f64| (a - b).abs() <= most;
    let middle = stations[0].at.z + stations[stations.len() - 1].at.z;
    ends && plain
        && pairs
            .into_iter()
            .all(|(a, b)| length(a.at.r, b.at.r) && length(a.at.z, middle - b.at.z))
}
