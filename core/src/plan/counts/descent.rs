//! The faithful end: single stitches and pairs moved on the true forecast until none helps.

use super::candidate::{Candidate, Stuffed};
use super::repeats::Prices;

/// Moves tried on the true forecast in each pass, the most promising first.
const TRIED: usize = 48;

/// Most passes.
const PASSES: usize = 24;

/// Most rounds from one round of a pair that trade a stitch to the other, in a piece of up to
/// [`LONG`] rounds and in a longer one.
const APART: (usize, usize) = (8, 2);

/// More rounds than this are a long piece: its pairs are too many to try those far apart.
const LONG: usize = 80;

/// Rounds forecast, over all forecasts: what may be waited for when an edit ends.
pub(super) const ROUNDS_FORECAST: usize = 12_000;

/// Fewest forecasts, in however long a piece.
const LEAST_FORECASTS: usize = 10;

/// Stitches a pass must bring the piece nearer for another to be worth its forecasts,
/// squared.
const LEAST_GAIN: f64 = 1e-7;

/// A move: the rounds (as indices) that gain or lose stitches.
type Move = Vec<(usize, i32)>;

/// Goes down from `best` by the single stitches and pairs that the true forecast says help
/// most, until none does. Each pass asks the model which moves promise most, and tries those.
pub(super) fn descend(
    candidate: &Candidate<'_>,
    mut best: Stuffed,
    rounds_forecast: usize,
    forecasts: &mut usize,
) -> Stuffed {
    let budget = (rounds_forecast / best.counts.len()).max(LEAST_FORECASTS);
    let most = *forecasts + budget;
    for _ in 0..PASSES {
        let Some(better) = pass(candidate, &best, forecasts, most) else { break };
        best = better;
    }
    best
}

/// One pass, within `most` forecasts in all.
fn pass(
    candidate: &Candidate<'_>,
    best: &Stuffed,
    forecasts: &mut usize,
    most: usize,
) -> Option<Stuffed> {
    let mut ranked: Vec<(f64, Vec<u32>)> = Vec::new();
    let mut near = candidate.near_stuffed(best, &candidate.rounds);
    if let Some((counts, cost)) =
        near.best(&candidate.rounds, &candidate.steps, Prices::at(0.0, false))
        && counts != best.counts
    {
        ranked.push((cost, counts));
    }
    let model = &near.model;
    let rounds = &candidate.rounds;
    for step in moves(rounds.searched()) {
        let Some(counts) = moved(&best.counts[..rounds.searched()], step.iter().copied())
        else {
            continue;
        };
        let counts = rounds.unfold(&counts);
        if candidate.rounds.allows_all(&counts) {
            ranked.push((model.predicted(&step), counts));
        }
    }
    ranked.sort_by(|a, b| a.0.total_cmp(&b.0));
    ranked.truncate(TRIED);
    for (_, counts) in ranked {
        if *forecasts >= most {
            break;
        }
        *forecasts += 1;
        let stuffed = candidate.stuff(counts, &best.shape);
        if stuffed.shape.settled.is_settled() && stuffed.cost() < best.cost() - LEAST_GAIN {
            return Some(stuffed);
        }
    }
    None
}

/// Every single stitch more or fewer, and every pair of them not too far apart.
fn moves(rounds: usize) -> impl Iterator<Item = Move> {
    let apart = if rounds > LONG { APART.1 } else { APART.0 };
    let singles = (0..rounds).flat_map(|i| [vec![(i, 1)], vec![(i, -1)]]);
    let pairs = (0..rounds).flat_map(move |i| {
        (i + 1..rounds.min(i + 1 + apart)).flat_map(move |j| {
            [(1, 1), (1, -1), (-1, 1), (-1, -1)].map(|(a, b)| vec![(i, a), (j, b)])
        })
    });
    singles.chain(pairs)
}

/// `counts` after `step`; nothing where a round would have no stitch left.
pub(super) fn moved(
    counts: &[u32],
    step: impl IntoIterator<Item = (usize, i32)>,
) -> Option<Vec<u32>> {
    let mut counts = counts.to_vec();
    for (i, by) in step {
        counts[i] = counts[i].checked_add_signed(by).filter(|&n| n > 0)?;
    }
    Some(counts)
}
