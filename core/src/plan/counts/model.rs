//! The misfit near a settled shape as a quadratic form in whole stitches.
//!
//! A stitch more in round k moves the nodes by ∂x/∂N_k = −H⁻¹ ∂g/∂N_k, and the distance of
//! node j to the outline by that movement along the outline's normal. H⁻¹ is symmetric, so
//! one solve a *node* (with its normal as right-hand side) serves all rounds at once; and a
//! stitch is felt over a length of about R√ε, so in large pieces every few nodes will do.

use std::ops::Range;

use super::form::{BAND, Quadratic, add_scaled};
use super::misfit::NodeMisfit;
use super::shape::SettledShape;
use crate::piece::outline::Rz;
use crate::plan::forecast::Energy;
use crate::plan::forecast::settle::Settled;

/// Nodes looked at within the length over which a stitch is felt.
const NODES_A_LENGTH: f64 = 4.0;

/// The change of the gradient by one stitch more in a round: entries from `first` on.
struct Pull {
    first: usize,
    entries: [f64; 6],
}

/// Stitches more, or fewer, in each of a run of rounds.
#[derive(Debug, Clone)]
pub(super) struct RunChange {
    /// The rounds, by index.
    pub(super) run: Range<usize>,
    pub(super) by: i32,
}

/// What changes of whole runs do to the misfit.
pub(super) struct RunModel {
    /// By sampled node, what a stitch more in all rounds before each adds to its distance; and
    /// that distance.
    rows: Vec<(Vec<f64>, f64)>,
}

impl RunModel {
    /// The mean square misfit after `change`.
    pub(super) fn predicted(&self, change: &RunChange) -> f64 {
        let square = |(sums, off): &(Vec<f64>, f64)| {
            let added = sums[change.run.end] - sums[change.run.start];
            (off + added * f64::from(change.by)).powi(2)
        };
        self.rows.iter().map(square).sum()
    }
}

/// What stitches added do to the misfit, and to the unknowns.
pub(super) struct Model {
    /// The nodes sampled.
    nodes: Vec<usize>,
    /// By sampled node, what a stitch more in each round adds to its distance; scaled so
    /// that squares sum to the mean square misfit in stitches.
    gains: Vec<Vec<f64>>,
    /// Distance of each sampled node, in the same scale.
    off: Vec<f64>,
}

impl Model {
    /// The model at `shape`; `widths` are the stitch widths of the rounds and `width` that of
    /// the swatch, mm, and `felt_mm` the length over which a stitch is felt.
    pub(super) fn new(shape: &SettledShape, widths: &[f64], width: f64, felt_mm: f64) -> Self {
        let SettledShape { skin, pressure, settled, misfit } = shape;
        let energy = Energy::new(skin, *pressure);
        let rounds = skin.rounds();
        let pulls: Vec<Pull> = (1..=rounds)
            .map(|k| {
                if k == rounds {
                    return Pull { first: 0, entries: [0.0; 6] }; // Gathered or held.
                }
                let (first, mut entries) = energy.gradient_by_around(k, &settled.x);
                entries.iter_mut().for_each(|e| *e *= widths[k - 1]);
                Pull { first, entries }
            })
            .collect();
        let stride = (felt_mm / (NODES_A_LENGTH * skin.height_mm[0])).max(1.0) as usize;
        let nodes = sampled(rounds, stride);
        let share = shares(&misfit.share, &nodes);
        let mut gains = gains(&nodes, misfit, settled, &pulls);
        // At every count the piece lies at its best place along the axis.
        let normal = |row: usize| misfit.normal[nodes[row]];
        let weight: f64 = (0..nodes.len()).map(|i| share[i] * normal(i).z * normal(i).z).sum();
        let mut lift = vec![0.0; rounds];
        for (i, row) in gains.iter().enumerate() {
            add_scaled(&mut lift, row, share[i] * normal(i).z / weight.max(1e-12));
        }
        let mut off = Vec::with_capacity(nodes.len());
        for (i, row) in gains.iter_mut().enumerate() {
            add_scaled(row, &lift, -normal(i).z);
            let scale = share[i].sqrt() / width;
            row.iter_mut().for_each(|g| *g *= scale);
            off.push(misfit.off[nodes[i]] * scale);
        }
        Self { nodes, gains, off }
    }

    /// Ties each round to its mirror, as `mirror` gives it by number: a stitch in one is a
    /// stitch in both.
    pub(super) fn fold(&mut self, free: usize, mirror: impl Fn(usize) -> Option<usize>) {
        for row in &mut self.gains {
            for i in 0..free {
                let other = mirror(i + 1).filter(|&m| m >= 1 && m != i + 1);
                row[i] += other.map_or(0.0, |m| row[m - 1]);
            }
            row.truncate(free);
        }
    }

    /// The mean square misfit by stitches added to the rounds.
    pub(super) fn form(&self) -> Quadratic {
        let rounds = self.gains.first().map_or(0, Vec::len);
        let mut form = Quadratic::new(rounds);
        for ((row, &off), &node) in self.gains.iter().zip(&self.off).zip(&self.nodes) {
            // Node k is felt by the rounds about it; in a folded form it may be a mirror's.
            let at = if node > rounds { (2 * rounds).saturating_sub(node) } else { node };
            let first = at.saturating_sub(BAND / 2).min(rounds.saturating_sub(BAND));
            let last = (first + BAND).min(rounds);
            form.add_square(first, &row[first..last], off);
        }
        form
    }

    /// The mean square misfit after `step`: stitches added to rounds, by index.
    pub(super) fn predicted(&self, step: &[(usize, i32)]) -> f64 {
        let added = |row: &Vec<f64>| -> f64 {
            step.iter().map(|&(i, stitches)| row[i] * f64::from(stitches)).sum()
        };
        self.gains.iter().zip(&self.off).map(|(row, off)| (off + added(row)).powi(2)).sum()
    }

    /// The same for whole runs of rounds.
    pub(super) fn runs(&self) -> RunModel {
        let sums = |row: &Vec<f64>| {
            let mut sum = 0.0;
            let later = row.iter().map(|gain| {
                sum += gain;
                sum
            });
            std::iter::once(0.0).chain(later).collect()
        };
        RunModel { rows: self.gains.iter().map(sums).zip(self.off.iter().copied()).collect() }
    }

    /// What the mean square misfit grows by where every round is worked `pull` tighter or
    /// looser than meant, as a share, each for itself: squared stitches.
    pub(super) fn spread_by_pulls(&self, counts: &[u32], pull: f64) -> f64 {
        let square = |row: &Vec<f64>| -> f64 {
            row.iter().zip(counts).map(|(g, &n)| (g * f64::from(n) * pull).powi(2)).sum()
        };
        self.gains.iter().map(square).sum()
    }
}

/// Right-hand sides solved side by side.
const LANES: usize = 4;

/// Distance outwards gained by each sampled node per stitch in each round, mm.
fn gains(
    nodes: &[usize],
    misfit: &NodeMisfit,
    settled: &Settled,
    pulls: &[Pull],
) -> Vec<Vec<f64>> {
    let mut gains = vec![vec![0.0; pulls.len()]; nodes.len()];
    let mut answer = vec![[0.0; LANES]; settled.x.len()];
    for (group, rows) in nodes.chunks(LANES).zip(gains.chunks_mut(LANES)) {
        answer.fill([0.0; LANES]);
        // The start stays where it is.
        let moving = || group.iter().enumerate().filter(|&(_, &j)| j > 0);
        for (lane, &j) in moving() {
            let Rz { r, z } = misfit.normal[j];
            answer[2 * j - 2][lane] = r;
            answer[2 * j - 1][lane] = z;
        }
        let first = moving().map(|(_, &j)| 2 * j - 2).next().unwrap_or(0);
        settled.factor.solve_lanes(first, &mut answer);
        for (k, pull) in pulls.iter().enumerate() {
            let mut felt = [0.0; LANES];
            for (a, e) in answer[pull.first..].iter().zip(&pull.entries) {
                for (f, a) in felt.iter_mut().zip(a) {
                    *f -= a * e;
                }
            }
            for (row, f) in rows.iter_mut().zip(felt) {
                row[k] = f;
            }
        }
    }
    gains
}

/// Every `stride`-th node from 0 to `last`, both ends included.
fn sampled(last: usize, stride: usize) -> Vec<usize> {
    let mut nodes: Vec<usize> = (0..last).step_by(stride).collect();
    nodes.push(last);
    nodes
}

/// The share of the meridian each sampled node stands for: every node's own share goes to
/// the sampled nodes either side of it, the nearer the more.
fn shares(all: &[f64], nodes: &[usize]) -> Vec<f64> {
    let mut share = vec![0.0; nodes.len()];
    for (i, pair) in nodes.windows(2).enumerate() {
        let gap = (pair[1] - pair[0]) as f64;
        for (step, own) in all[pair[0]..pair[1]].iter().enumerate() {
            let along = step as f64 / gap;
            share[i] += (1.0 - along) * own;
            share[i + 1] += along * own;
        }
    }
    share[nodes.len() - 1] += all[all.len() - 1];
    share
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::forecast::{Cloth, Finish, Skin, settle};

    /// A ball of real, not whole, stitches at hoop strain 0.08: every ring and band is in
    /// tension by far more than 1e-3, so the kink of φ at zero is nowhere near.
    fn ball() -> (Skin, f64) {
        let (radius, rounds, strain) = (40.0, 28, 0.08);
        let rest = radius / (1.0 + strain);
        let height = std::f64::consts::PI * rest / f64::from(rounds);
        let around = |k: i32| {
            let turn = std::f64::consts::PI * f64::from(k) / f64::from(rounds);
            std::f64::consts::TAU * rest * turn.sin().max(0.01)
        };
        let skin = Skin::new(
            0.0,
            (1..=rounds).map(around).collect(),
            vec![height; rounds as usize],
            Finish::Drawn,
            Cloth::default(),
        );
        (skin, crate::plan::forecast::pressure_for_outline(strain, radius))
    }

    fn settled(skin: &Skin, pressure: f64) -> Settled {
        let energy = Energy::new(skin, pressure);
        settle(&energy, &energy.flatten(&skin.slack_shape()), 1e-11)
    }

    #[test]
    fn sensitivities_match_central_differences() {
        let (skin, pressure) = ball();
        let width = 4.6;
        let at = settled(&skin, pressure);
        let rounds = skin.rounds();
        let widths = vec![width; rounds];
        let misfit = NodeMisfit::level(rounds + 1);
        let shape = SettledShape { skin: skin.clone(), pressure, settled: at, misfit };
        let model = Model::new(&shape, &widths, width, 1.0);
        // Every normal points outwards, so a node's distance is its radius; rows are scaled by
        // the root of the node's share over the width.
        let scale = shape.misfit.share[0].sqrt() / width;
        for k in [1, 2, 5, 14, 20, 26, 27] {
            let stretched = |stitches: f64| {
                let mut skin = skin.clone();
                skin.around_mm[k - 1] += stitches * width;
                settled(&skin, pressure).nodes
            };
            let h = 1e-4;
            let (more, fewer) = (stretched(h), stretched(-h));
            let slope = |j: usize| (more[j].r - fewer[j].r) / (2.0 * h);
            let largest = (0..=rounds).map(|j| slope(j).abs()).fold(0.0, f64::max);
            for (row, &j) in model.gains.iter().zip(&model.nodes) {
                let off = (row[k - 1] / scale - slope(j)).abs();
                assert!(off <= 1e-5 * largest, "round {k}, node {j}: off by {off:e}");
            }
        }
    }

    #[test]
    fn sampled_nodes_share_the_whole_meridian() {
        let all = vec![0.125; 8];
        for stride in 1..9 {
            let nodes = sampled(7, stride);
            let share = shares(&all, &nodes);
            assert!((share.iter().sum::<f64>() - 1.0).abs() < 1e-12, "stride {stride}");
        }
    }
}
