//! The least-squares fit: Gauss–Newton in the logarithms of the five quantities, what was
//! known before among the residuals, steps halved until they help.

use super::{MakersCloth, Measured, Quantity};

/// Quantities fitted.
const N: usize = 5;

/// Most Gauss–Newton steps. The measures are nearly linear in the logarithms: four do.
const MOST_STEPS: usize = 12;

/// Difference of a logarithm by which slopes are taken.
const NUDGE: f64 = 1e-4;

/// A step shorter than this in every logarithm, and the fit is found.
const FOUND: f64 = 1e-7;

/// Where the fit begins besides at what was known, in logarithms of the stiffness.
const OTHER_STARTS: [f64; 2] = [-0.5, 0.5];

/// A quantity whose uncertainty is still more than this share of what it was before is not
/// told by the measures.
const UNTOLD: f64 = 0.95;

type Matrix = [[f64; N]; N];

/// What the fit found.
pub(super) struct LearnedCloth {
    pub(super) cloth: MakersCloth,
    /// Standard deviation of each logarithm, what is untold counted in.
    pub(super) spread: [f64; N],
    /// Whether the measures tell each.
    pub(super) learned: [bool; N],
    /// The sum of squares that is least here: what is left of the measures, in errors, and how
    /// far the cloth is from what was known.
    cost: f64,
}

/// What is to be explained, and by what.
pub(super) struct Evidence<'a> {
    /// What was known before.
    pub(super) prior: MakersCloth,
    pub(super) measures: &'a [Measured],
    /// What the measures would come to in a cloth.
    pub(super) predict: &'a dyn Fn(&MakersCloth) -> Vec<f64>,
}

/// The cloth that explains the measures best.
pub(super) fn fit(asked: &Evidence<'_>) -> LearnedCloth {
    let all = lowest(asked, [true; N]);
    let learned =
        std::array::from_fn(|i| all.spread[i] <= UNTOLD * Quantity::ALL[i].prior_spread());
    if learned == [true; N] {
        return LearnedCloth { learned, ..all };
    }
    // What is not told keeps its prior, and the others are found with it there.
    let told = lowest(asked, learned);
    LearnedCloth { spread: all.spread, learned, ..told }
}

/// The best fit of the quantities that are `free`. Soft cloth stuffed gently and stiff cloth
/// stuffed hard can measure nearly the same, each a minimum of its own.
fn lowest(asked: &Evidence<'_>, free: [bool; N]) -> LearnedCloth {
    let stiffness = Quantity::StiffnessAlong as usize;
    let from = |log: f64| {
        let mut logs = [0.0; N];
        logs[stiffness] = log;
        settle(asked, free, logs)
    };
    let known = from(0.0);
    if !free[stiffness] {
        return known;
    }
    let lower = |best: LearnedCloth, next: LearnedCloth| {
        if next.cost < best.cost { next } else { best }
    };
    OTHER_STARTS.into_iter().map(from).fold(known, lower)
}

/// The fit of the quantities that are `free`, from `logs`.
fn settle(asked: &Evidence<'_>, free: [bool; N], mut logs: [f64; N]) -> LearnedCloth {
    let &Evidence { prior, measures, predict } = asked;
    let cloth = |logs: &[f64; N]| {
        Quantity::ALL.iter().zip(logs).fold(prior, |cloth, (&quantity, log)| {
            cloth.with(quantity, prior.get(quantity) * log.exp())
        })
    };
    let residuals = |predicted: &[f64]| -> Vec<f64> {
        let one = |(m, p): (&Measured, &f64)| (p - m.measure.value()) / m.error;
        measures.iter().zip(predicted).map(one).collect()
    };
    let known = |logs: &[f64; N]| -> f64 {
        let one = |(q, log): (&Quantity, &f64)| (log / q.prior_spread()).powi(2);
        Quantity::ALL.iter().zip(logs).map(one).sum()
    };
    let square = |r: &[f64]| r.iter().map(|r| r * r).sum::<f64>();
    let mut off = residuals(&predict(&cloth(&logs)));
    let mut cost = square(&off) + known(&logs);
    let slopes_of = |logs: &[f64; N], off: &[f64], nudge: f64| {
        let mut slopes = vec![[0.0; N]; measures.len()];
        for i in (0..N).filter(|&i| free[i]) {
            let mut nudged = *logs;
            nudged[i] += nudge;
            let there = residuals(&predict(&cloth(&nudged)));
            for (row, (new, old)) in slopes.iter_mut().zip(there.iter().zip(off)) {
                row[i] = (new - old) / nudge;
            }
        }
        slopes
    };
    for _ in 0..MOST_STEPS {
        let slopes = slopes_of(&logs, &off, NUDGE);
        let mut pull: [f64; N] =
            std::array::from_fn(|i| -Quantity::ALL[i].prior_spread().powi(-2) * logs[i]);
        for (row, r) in slopes.iter().zip(&off) {
            for i in 0..N {
                pull[i] -= row[i] * r;
            }
        }
        let mut step = solve(&normal_of(&slopes), pull);
        let mut better = false;
        for _ in 0..12 {
            let mut next = logs;
            for i in (0..N).filter(|&i| free[i]) {
                next[i] += step[i];
            }
            let there = residuals(&predict(&cloth(&next)));
            let next_cost = square(&there) + known(&next);
            if next_cost < cost {
                (logs, off, cost, better) = (next, there, next_cost, true);
                break;
            }
            step = step.map(|s| 0.5 * s);
        }
        if !better || step.iter().all(|s| s.abs() < FOUND) {
            break;
        }
    }
    // Stuffed cloth may snap from one shape to another: a slope taken across such a jump would
    // make the measures tell far more than they do. Of the slopes to either side, the lesser.
    let mut slopes = slopes_of(&logs, &off, NUDGE);
    for (row, other) in slopes.iter_mut().zip(slopes_of(&logs, &off, -NUDGE)) {
        for (slope, other) in row.iter_mut().zip(other) {
            *slope = if other.abs() < slope.abs() { other } else { *slope };
        }
    }
    let normal = normal_of(&slopes);
    let spread = std::array::from_fn(|i| {
        let mut unit = [0.0; N];
        unit[i] = 1.0;
        solve(&normal, unit)[i].max(0.0).sqrt()
    });
    LearnedCloth { cloth: cloth(&logs), spread, learned: free, cost }
}

/// The normal equations of measures with these slopes, what was known before among them.
fn normal_of(slopes: &[[f64; N]]) -> Matrix {
    let mut normal = [[0.0; N]; N];
    for (i, row) in normal.iter_mut().enumerate() {
        row[i] = Quantity::ALL[i].prior_spread().powi(-2);
        for (j, sum) in row.iter_mut().enumerate() {
            *sum += slopes.iter().map(|slope| slope[i] * slope[j]).sum::<f64>();
        }
    }
    normal
}

/// Solves A x = b for a symmetric positive definite A, by its Cholesky factor. The priors on
/// its diagonal keep it so.
fn solve(a: &Matrix, mut b: [f64; N]) -> [f64; N] {
    let mut l = [[0.0; N]; N];
    for i in 0..N {
        for j in 0..=i {
            let sum: f64 = (0..j).map(|k| l[i][k] * l[j][k]).sum();
            l[i][j] = match i == j {
                true => (a[i][i] - sum).max(f64::MIN_POSITIVE).sqrt(),
                false => (a[i][j] - sum) / l[j][j],
            };
        }
    }
    for i in 0..N {
        let sum: f64 = (0..i).map(|k| l[i][k] * b[k]).sum();
        b[i] = (b[i] - sum) / l[i][i];
    }
    for i in (0..N).rev() {
        let sum: f64 = (i + 1..N).map(|k| l[k][i] * b[k]).sum();
        b[i] = (b[i] - sum) / l[i][i];
    }
    b
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_small_system_is_solved() {
        let outer = |i: usize, j: usize| 0.1 * (i + 1) as f64 * (j + 1) as f64;
        let one = |i: usize, j: usize| f64::from(u8::from(i == j));
        let a: Matrix =
            std::array::from_fn(|i| std::array::from_fn(|j| one(i, j) + outer(i, j)));
        let x = [1.0, -2.0, 3.0, 0.5, 4.0];
        let b: [f64; N] = std::array::from_fn(|i| (0..N).map(|j| a[i][j] * x[j]).sum::<f64>());
        let found = solve(&a, b);
        for (f, x) in found.iter().zip(x) {
            assert!((f - x).abs() < 1e-12, "{found:?}");
        }
    }
}
