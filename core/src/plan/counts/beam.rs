//! Beam search for the whole counts that make a quadratic misfit and the prices of the
//! rounds least.
//!
//! With the form's matrix factored as L Lᵀ the misfit is a sum of squares, one a round, each
//! of that round and the rounds after it. So rounds are chosen from the last to the first,
//! and of all the beginnings made so far only the cheapest few are carried on. Rules and
//! prices tie neighbouring rounds only, so they are known as soon as the earlier of the two
//! is chosen.

use std::ops::Range;

use super::form::Form;
use super::rounds::{After, Below, Choice, Rounds};

/// Beginnings carried from round to round.
const WIDTH: usize = 10;

/// One beginning: the rounds chosen so far, from the last to the first.
#[derive(Clone, Copy)]
struct Beginning {
    cost: f64,
    /// Which beginning of the round after it goes on.
    parent: usize,
    /// Count of the earliest round chosen.
    count: u32,
    /// Whether the round after that is plain; `None` where nothing depends on it.
    next_plain: Option<bool>,
    /// Count of the gathered or held last round.
    last: u32,
}

/// The cheapest counts found for the rounds of `window` (indices), all others as in
/// `start` (the mirrored half of a symmetric piece too). `form` is the misfit by stitches added there, `per_price` what a unit of price
/// costs in the form's own unit, and no round moves further than `reach` stitches. `None`
/// where no counts keep to the rules.
pub(super) fn search(
    form: Form,
    rounds: &Rounds,
    start: &[u32],
    window: Range<usize>,
    per_price: f64,
    reach: u32,
) -> Option<Vec<u32>> {
    let (upper, wanted) = form.factor()?;
    let width = window.len();
    let gathered = start.len() - 1;
    let whole = rounds.free_rounds();
    // Prices can make a count worth while that the misfit alone would not.
    let spread = if rounds.is_free() { 1.5 } else { f64::INFINITY };
    let spread = spread.max(f64::from(rounds.multiple()));
    let mut beam: Vec<Beginning> = Vec::with_capacity(WIDTH);
    let mut next: Vec<Beginning> = Vec::new();
    // Stitches added so far, one row a beginning.
    let mut added = vec![0.0; WIDTH * width];
    let mut added_next = added.clone();
    let mut known: Vec<(After, Range<usize>)> = Vec::new();
    let mut listed: Vec<Choice> = Vec::new();
    for i in (0..width).rev() {
        next.clear();
        let row = &upper[i];
        let (index, k) = (window.start + i, window.start + i + 1);
        let below = match (i, index) {
            (0, 0) => Below::Start,
            (0, _) => Below::Round(start[index - 1]),
            _ => Below::Open,
        };
        // The round after the window: settled, gathered, or the mirror's.
        let beyond = match k {
            k if k < whole && k < gathered => After::Round(start[k]),
            k if k == gathered => After::Last(start[gathered]),
            _ => After::Mirror,
        };
        // Beginnings often agree on the round after, and then have the same choices.
        known.clear();
        listed.clear();
        for p in 0..beam.len().max(1) {
            let parent = beam.get(p);
            let carried = parent
                .map_or(0.0, |_| dot(&row[1..], &added[p * width + i + 1..(p + 1) * width]));
            let after = parent.map_or(beyond, |b| After::Round(b.count));
            let known_range = known.iter().find(|(a, _)| *a == after).map(|(_, r)| r.clone());
            let range = known_range.unwrap_or_else(|| {
                let from = listed.len();
                rounds.choices(k, start[index], reach, after, below, &mut listed);
                known.push((after, from..listed.len()));
                from..listed.len()
            });
            let choices = &listed[range];
            let (Some(least), Some(most)) = (choices.first(), choices.last()) else { continue };
            // The count that costs nothing more given the rounds after it. Where a round
            // hardly matters that may lie far outside what it may be.
            let best = (wanted[i] - carried) / row[0] + f64::from(start[index]);
            let best = best.clamp(f64::from(least.count), f64::from(most.count));
            let near = |c: &&Choice| (f64::from(c.count) - best).abs() <= spread;
            for choice in choices.iter().filter(near) {
                let count = choice.count;
                let stitches = f64::from(count) - f64::from(start[index]);
                let off = row[0] * stitches + carried - wanted[i];
                let next_plain = plain(after, count);
                let before = parent.map_or(0.0, |b| b.cost);
                let mut price = choice.price;
                if rounds.minds_switches() {
                    let later = parent.map_or_else(
                        || (k + 1 < gathered).then(|| start[k + 1] == start[k]),
                        |b| b.next_plain,
                    );
                    price += switches(rounds, k, below, count, next_plain, later);
                }
                next.push(Beginning {
                    cost: before + off * off + per_price * price,
                    parent: p,
                    count,
                    next_plain,
                    last: choice.last.or(parent.map(|b| b.last)).unwrap_or(start[gathered]),
                });
            }
        }
        if next.is_empty() {
            return None;
        }
        if next.len() > WIDTH {
            next.select_nth_unstable_by(WIDTH, |a, b| a.cost.total_cmp(&b.cost));
            next.truncate(WIDTH);
        }
        for (row, b) in added_next.chunks_exact_mut(width).zip(&next) {
            let from = &added[b.parent * width..(b.parent + 1) * width];
            row[i + 1..].copy_from_slice(&from[i + 1..]);
            row[i] = f64::from(b.count) - f64::from(start[index]);
        }
        std::mem::swap(&mut added, &mut added_next);
        std::mem::swap(&mut beam, &mut next);
    }
    let (best, chosen) =
        beam.iter().enumerate().min_by(|a, b| a.1.cost.total_cmp(&b.1.cost))?;
    let mut counts: Vec<u32> = start.to_vec();
    let row = &added[best * width..(best + 1) * width];
    for (count, &stitches) in counts[window].iter_mut().zip(row) {
        *count = count.saturating_add_signed(stitches as i32);
    }
    counts[gathered] = chosen.last;
    Some(counts)
}

/// Whether the round `after` one of `count` is plain; `None` where nothing depends on it.
fn plain(after: After, count: u32) -> Option<bool> {
    match after {
        After::Round(above) => Some(above == count),
        After::Last(_) | After::Mirror => None,
    }
}

/// What changes between plain and shaping cost around round `k` of `count`: between the two
/// rounds after it (`next` and `later` say whether they are plain), and between it and the
/// next where what it is worked on is settled.
fn switches(
    rounds: &Rounds,
    k: usize,
    below: Below,
    count: u32,
    next: Option<bool>,
    later: Option<bool>,
) -> f64 {
    let ahead = next.zip(later).map_or(0.0, |(next, later)| rounds.switch(k + 1, next, later));
    let here = match (below, next) {
        (Below::Round(below), Some(next)) => rounds.switch(k, below == count, next),
        _ => 0.0,
    };
    ahead + here
}

/// Σ aᵢbᵢ, in eight running sums so that it can be worked out side by side.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 8];
    let (mut left, mut right) = (a.chunks_exact(8), b.chunks_exact(8));
    for (x, y) in left.by_ref().zip(right.by_ref()) {
        for ((sum, x), y) in sums.iter_mut().zip(x).zip(y) {
            *sum += x * y;
        }
    }
    let rest: f64 = left.remainder().iter().zip(right.remainder()).map(|(x, y)| x * y).sum();
    sums.iter().sum::<f64>() + rest
}
