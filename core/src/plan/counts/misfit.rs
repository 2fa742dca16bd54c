//! How far a settled shape is from the outline, node by node.

use crate::piece::outline::Rz;
use crate::plan::forecast::fit::{self, Seeker, Trail};

/// Beyond this misfit, in stitches, cloth cannot follow the outline (a corner that nothing
/// holds, say), and bending every other round to come a little nearer would only spoil
/// them: such nodes count by their distance, not its square.
const REACHED_STITCHES: f64 = 0.5;

/// Distance of a settled shape to the outline, node by node.
#[derive(Debug, Clone)]
pub(super) struct NodeMisfit {
    /// Signed distance outwards, less what the chords' sag needs, mm.
    pub(super) off: Vec<f64>,
    /// Unit normal of the outline at each node's foot.
    pub(super) normal: Vec<Rz>,
    /// Share of the meridian each node stands for, less where it is out of reach.
    pub(super) share: Vec<f64>,
    /// Σ share·off² at the best shift, stitches²; beyond reach linear in off.
    pub(super) mean_square: f64,
    /// The same, the square throughout: about the square of the fit.
    pub(super) whole_square: f64,
    /// What to add to the forecast's z to lay it on the outline, mm.
    pub(super) shift: f64,
    /// How much further the outline lies from the shape than the shape from the outline,
    /// squared stitches; part of both squares.
    pub(super) uncovered: f64,
}

impl NodeMisfit {
    /// No misfit at any of `nodes` nodes, every normal outwards, for tests of the model.
    #[cfg(test)]
    pub(super) fn level(nodes: usize) -> Self {
        Self {
            off: vec![0.0; nodes],
            normal: vec![Rz::new(1.0, 0.0); nodes],
            share: vec![1.0 / nodes as f64; nodes],
            mean_square: 0.0,
            whole_square: 0.0,
            shift: 0.0,
            uncovered: 0.0,
        }
    }

    /// The misfit of a shape's `nodes` to the outline, at the best shift along the axis;
    /// `width` is a stitch, mm.
    pub(super) fn of(nodes: &[Rz], trail: &Trail, width: f64) -> Self {
        let n = nodes.len();
        let lengths: Vec<f64> = nodes.windows(2).map(|p| p[0].distance(p[1])).collect();
        let total: f64 = lengths.iter().sum();
        let share: Vec<f64> = (0..n)
            .map(|k| {
                let below = if k > 0 { lengths[k - 1] } else { 0.0 };
                let above = if k + 1 < n { lengths[k] } else { 0.0 };
                0.5 * (below + above) / total
            })
            .collect();
        let mut misfit = Self {
            off: vec![0.0; n],
            normal: vec![Rz::default(); n],
            share: vec![0.0; n],
            mean_square: 0.0,
            whole_square: 0.0,
            shift: trail.middle() - fit::middle(nodes),
            uncovered: 0.0,
        };
        let sag = sags(nodes);
        let mut seeker = Seeker::new(trail);
        let mut feet = vec![0; n];
        for round in 0..4 {
            let (mut pull, mut weight, mut square, mut whole) = (0.0, 0.0, 0.0, 0.0);
            for k in 0..n {
                if round > 0 {
                    seeker.segment = feet[k]; // The foot of the round before is close by.
                }
                let foot = seeker.nearest(Rz::new(nodes[k].r, nodes[k].z + misfit.shift));
                let off = foot.out - sag[k];
                feet[k] = seeker.segment;
                misfit.off[k] = off;
                misfit.normal[k] = foot.normal;
                let reached = (REACHED_STITCHES * width / off.abs().max(1e-12)).min(1.0);
                misfit.share[k] = share[k] * reached;
                pull += misfit.share[k] * off * foot.normal.z;
                weight += misfit.share[k] * foot.normal.z * foot.normal.z;
                // Huber's loss: off² near, 2c|off| − c² far.
                square += share[k] * off * off * reached * (2.0 - reached);
                whole += share[k] * off * off;
            }
            misfit.mean_square = square / (width * width);
            misfit.whole_square = whole / (width * width);
            let step = if weight > 0.0 { -pull / weight } else { 0.0 };
            if step.abs() < 1e-5 * width {
                break;
            }
            misfit.shift += step;
        }
        misfit
    }

    /// Counts what of the outline the whole `profile` of the shape leaves uncovered: where it
    /// ends short, every node may lie well and the fit be poor.
    pub(super) fn cover(&mut self, profile: &[Rz], trail: &Trail, width: f64) {
        let back = fit::square_from_outline(profile, trail, width, self.shift);
        self.uncovered = (back - self.whole_square).max(0.0);
        self.mean_square += self.uncovered;
        self.whole_square += self.uncovered;
    }
}

/// How far outside the outline each node should lie for the chords beside it to lie on it
/// on average: a chord of length ℓ sags by κℓ²/8, two thirds of that in the mean.
fn sags(nodes: &[Rz]) -> Vec<f64> {
    let mut sags = vec![0.0; nodes.len()];
    for k in 1..nodes.len() - 1 {
        let (a, b, c) = (nodes[k - 1], nodes[k], nodes[k + 1]);
        let (ar, az, br, bz) = (b.r - a.r, b.z - a.z, c.r - b.r, c.z - b.z);
        let (before, after) = (a.distance(b), b.distance(c));
        // Sine of the turn over the mean length is the curvature, to second order.
        let turn = (ar * bz - az * br) / (before * after).max(1e-12);
        sags[k] = turn * 0.5 * (before + after) / 12.0;
    }
    sags
}
