//! Beam search for the whole counts that make a quadratic misfit and the prices of the
//! rounds least.
//!
//! With the form's matrix factored as L Lᵀ the misfit is a sum of squares, one a round, each
//! of that round and the rounds after it. So rounds are chosen from the last to the first,
//! and of all the beginnings made so far only the cheapest few are carried on. Rules and
//! prices tie neighbouring rounds only, so they are known as soon as the earlier of the two
//! is chosen.

use super::programme::Rounds;

/// Beginnings carried from round to round.
const WIDTH: usize = 32;

/// A misfit as a function of stitches added to each round: δᵀ B δ + 2 gᵀ δ.
pub(super) struct Form {
    /// B, symmetric and positive definite, row by row.
    pub(super) bend: Vec<Vec<f64>>,
    /// g.
    pub(super) slope: Vec<f64>,
}

/// One beginning: the counts of the rounds chosen so far, last round first.
#[derive(Clone)]
struct Beginning {
    cost: f64,
    /// Stitches added, by round index; those not chosen yet are 0.
    added: Vec<f64>,
    /// Count of the earliest round chosen.
    count: u32,
    /// Count of the gathered or held last round.
    last: u32,
}

/// The cheapest counts found: `form` counts from `start`, `per_round` is what a unit of
/// price costs in the form's own unit, and no round moves further than `reach` stitches
/// from `start`. `None` where no counts keep to the rules.
pub(super) fn search(
    form: &Form,
    rounds: &Rounds<'_>,
    start: &[u32],
    per_round: f64,
    reach: u32,
) -> Option<Vec<u32>> {
    let movable = form.slope.len();
    let (upper, wanted) = factor(form)?;
    let spread = if rounds.is_free() { 1.5 } else { 4.0 };
    let mut beam: Vec<Beginning> = Vec::new();
    let mut next: Vec<(f64, usize, u32, u32)> = Vec::new();
    for i in (0..movable).rev() {
        next.clear();
        let row = &upper[i];
        let parents = beam.len().max(1);
        for p in 0..parents {
            let parent = beam.get(p);
            let carried: f64 = parent.map_or(0.0, |b| {
                row[1..].iter().zip(&b.added[i + 1..]).map(|(u, d)| u * d).sum()
            });
            // The count that would cost nothing more, given the rounds after it.
            let best = (wanted[i] - carried) / row[0];
            let above = parent.map(|b| b.count);
            let Some((low, high)) =
                rounds.bounds(i + 1, start[i], reach, above, start[movable])
            else {
                continue;
            };
            // Where a round hardly matters the best may lie far outside what it may be.
            let best = (best + f64::from(start[i])).clamp(f64::from(low), f64::from(high));
            let from = ((best - spread).ceil() as u32).max(low);
            let to = ((best + spread).floor() as u32).min(high);
            for count in from..=to {
                let added = f64::from(count) - f64::from(start[i]);
                let off = row[0] * added + carried - wanted[i];
                let above = match parent {
                    Some(b) => rounds.step_price(i + 2, count, b.count).map(|p| (p, b.last)),
                    None => rounds.best_last(count, start[movable]),
                };
                let Some((price, last)) = above else { continue };
                let first = if i == 0 { rounds.first_price(count) } else { Some(0.0) };
                let Some(first) = first else { continue };
                let cost =
                    parent.map_or(0.0, |b| b.cost) + off * off + per_round * (price + first);
                next.push((cost, p, count, last));
            }
        }
        if next.is_empty() {
            return None;
        }
        if next.len() > WIDTH {
            next.select_nth_unstable_by(WIDTH, |a, b| a.0.total_cmp(&b.0));
            next.truncate(WIDTH);
        }
        beam = next
            .iter()
            .map(|&(cost, p, count, last)| {
                let mut added =
                    beam.get(p).map_or_else(|| vec![0.0; movable], |b| b.added.clone());
                added[i] = f64::from(count) - f64::from(start[i]);
                Beginning { cost, added, count, last }
            })
            .collect();
    }
    let best = beam.into_iter().min_by(|a, b| a.cost.total_cmp(&b.cost))?;
    let mut counts: Vec<u32> = start[..movable]
        .iter()
        .zip(&best.added)
        .map(|(&n, &d)| n.saturating_add_signed(d as i32))
        .collect();
    counts.push(best.last);
    Some(counts)
}

/// Rows of Lᵀ from the diagonal on, and y with L y = −g. `None` if the form is not positive
/// definite.
fn factor(form: &Form) -> Option<(Vec<Vec<f64>>, Vec<f64>)> {
    let n = form.slope.len();
    // upper[i][j − i] = L[j][i].
    let mut upper: Vec<Vec<f64>> =
        form.bend.iter().enumerate().map(|(i, r)| r[i..].to_vec()).collect();
    for i in 0..n {
        let (done, rest) = upper.split_at_mut(i + 1);
        let row = &mut done[i];
        if row[0] <= 0.0 || !row[0].is_finite() {
            return None;
        }
        let pivot = row[0].sqrt();
        row.iter_mut().for_each(|v| *v /= pivot);
        for (ahead, below) in rest.iter_mut().enumerate() {
            let factor = row[ahead + 1];
            for (v, u) in below.iter_mut().zip(&row[ahead + 1..]) {
                *v -= factor * u;
            }
        }
    }
    let mut wanted: Vec<f64> = form.slope.iter().map(|g| -g).collect();
    for i in 0..n {
        wanted[i] /= upper[i][0];
        let y = wanted[i];
        for (w, u) in wanted[i + 1..].iter_mut().zip(&upper[i][1..]) {
            *w -= y * u;
        }
    }
    Some((upper, wanted))
}
