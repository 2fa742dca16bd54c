//! Slack cloth: rings that the stuffing does not fill.
//!
//! The energy gives compression nearly away, since cloth buckles; hands make a ruffle of it.
//! So counts may not buy shape with slack: what a ring has beyond 3 % more cloth than the
//! stuffed shape takes up costs, and beyond 5 % it costs more than any shape is worth.

use super::rules::{Start, Targets};
use crate::piece::outline::Rz;

/// Slack that neither eye nor finger finds: compression that costs nothing.
pub const FREE_SLACK: f64 = 0.03;

/// Slack that shows: beyond it a ring is flagged.
pub const SHOWING_SLACK: f64 = 0.05;

/// What slack past [`FREE_SLACK`] costs, squared stitches a squared strain.
const WEIGHT: f64 = 300.0;

/// What slack past [`SHOWING_SLACK`] costs on top.
const SHOWING_WEIGHT: f64 = 1e4;

/// How much more the starting ring may have: its own loop draws it together. A ring of six at
/// the tip of a cone has no choice.
const RING_SLACK: f64 = 0.018;

/// Rings below a drawn end that its gathering pleats anyway.
pub const PLEATED: usize = 3;

/// How many stitches fill each ring, and what more of them cost.
#[derive(Debug, Clone)]
pub(super) struct Slack {
    /// Stitches that just go around the stuffed shape, at index k − 1; infinite where slack is
    /// free.
    filled: Vec<f64>,
}

impl Slack {
    /// Slack against the stuffed shape of `nodes`, whose stitches are `widths` wide; the
    /// straight sides of an oval are `straight_mm` long.
    pub(super) fn at(
        nodes: &[Rz],
        widths: &[f64],
        straight_mm: f64,
        targets: &Targets,
        frills: bool,
    ) -> Self {
        let ring = |(node, width): (&Rz, &f64)| {
            (std::f64::consts::TAU * node.r + 2.0 * straight_mm) / width
        };
        let mut filled: Vec<f64> = nodes[1..].iter().zip(widths).map(ring).collect();
        let rounds = filled.len();
        // Open edges are held at their rest size; the close pleats what is below it.
        let free = if targets.drawn { PLEATED + 1 } else { 1 };
        for n in &mut filled[rounds.saturating_sub(free)..] {
            *n = f64::INFINITY;
        }
        if targets.start == Start::Ring {
            filled[0] *= 1.0 + RING_SLACK;
        }
        if frills {
            filled.fill(f64::INFINITY);
        }
        Self { filled }
    }

    /// What `count` stitches in round `k` cost, squared stitches of the mean misfit.
    pub(super) fn cost(&self, k: usize, count: u32) -> f64 {
        let filled = self.filled[k - 1];
        if f64::from(count) <= (1.0 + FREE_SLACK) * filled {
            return 0.0;
        }
        let slack = f64::from(count) / filled - 1.0;
        let free = slack - FREE_SLACK;
        let showing = (slack - SHOWING_SLACK).max(0.0);
        (WEIGHT * free * free + SHOWING_WEIGHT * showing * showing) / self.filled.len() as f64
    }

    /// The cost of a slack round `k` of `count` as a square: its weight, and the count up to
    /// which slack is free. `None` where it is not slack.
    pub(super) fn pull(&self, k: usize, count: f64) -> Option<(f64, f64)> {
        let filled = self.filled[k - 1];
        let most = (1.0 + FREE_SLACK) * filled;
        let weight = WEIGHT / (filled * filled * self.filled.len() as f64);
        (count > most).then_some((weight, most))
    }

    /// What all of `counts` cost.
    pub(super) fn cost_of(&self, counts: &[u32]) -> f64 {
        (1..).zip(counts).map(|(k, &count)| self.cost(k, count)).sum()
    }
}
