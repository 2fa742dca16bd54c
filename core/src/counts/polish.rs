//! The polish: stitches moved towards the outline by what the forecast says each one does.
//!
//! Near a settled shape the distance of every node to the outline is linear in the counts,
//! with slopes ∂x/∂N = −H⁻¹ ∂g/∂N from the Hessian's factor that Newton's method leaves
//! behind. Squared and summed that gives a quadratic form in whole stitches; descent by
//! single stitches and by pairs finds its minimum under the same rules and prices as the
//! dynamic programme. Then the shape is settled anew, and the step is kept only if the
//! forecast really came closer.

use super::programme::Rounds;
use super::rules::{GaveWay, Price, Targets};
use super::{Chosen, skin_of};
use crate::forecast::Energy;
use crate::forecast::fit::{self, Seeker, Trail};
use crate::forecast::settle::{SETTLED_GRADIENT, Settled, settle};
use crate::outline::{Profile, Rz};
use crate::piece::Piece;
use crate::skin::RestSkin;

/// How far apart the two stitches of a pair move may be, in rounds.
const PAIR_REACH: usize = 10;

/// What ease charges per round, against the mean square misfit in stitches.
const EASE_SHARE: f64 = 0.02;

/// One number of rounds being tried: its counts, their forecast and their cost.
pub(super) struct Candidate<'a> {
    piece: &'a Piece,
    trail: &'a Trail,
    targets: Targets,
    pressure: f64,
    counts: Vec<u32>,
    settled: Settled,
    misfit: Misfit,
    price: f64,
    gave_way: Vec<GaveWay>,
    /// Forecasts solved so far.
    pub(super) forecasts: usize,
}

/// Distance of a settled shape to the outline, node by node.
struct Misfit {
    /// Signed distance outwards, less what the chords' sag needs, mm.
    off: Vec<f64>,
    /// Unit normal of the outline at each node's foot.
    normal: Vec<Rz>,
    /// Share of the meridian each node stands for; sums to 1.
    share: Vec<f64>,
    /// Σ share·off² at the best shift, stitches².
    mean_square: f64,
    shift: f64,
}

impl<'a> Candidate<'a> {
    pub(super) fn new(
        piece: &'a Piece,
        profile: &'a Profile,
        rest: &RestSkin,
        trail: &'a Trail,
        rounds: usize,
    ) -> Self {
        let targets = Targets::new(piece, profile, rest, rounds);
        // The programme's misfit is a sum over rounds of squared stitches of circumference.
        let price = Price::at(piece.ease);
        let (counts, gave_way) = Rounds::new(piece, &targets, price).solve();
        let skin = skin_of(piece, targets.chain, &counts);
        let energy = Energy::new(&skin, rest.pressure);
        let start = energy.flatten(&skin.slack_shape());
        let settled = settle(&energy, &start, SETTLED_GRADIENT);
        let width = piece.gauge.stitch_width_mm();
        let misfit = Misfit::of(&settled.nodes, trail, width);
        let mut candidate = Self {
            piece,
            trail,
            targets,
            pressure: rest.pressure,
            counts,
            settled,
            misfit,
            price: 0.0,
            gave_way,
            forecasts: 1,
        };
        candidate.price = candidate.price_of(&candidate.counts);
        candidate
    }

    /// What the descent lowers: mean square misfit in stitches, and the price of ease.
    pub(super) fn cost(&self) -> f64 {
        self.misfit.mean_square + self.price
    }

    fn price_of(&self, counts: &[u32]) -> f64 {
        let price = Price::at(self.piece.ease);
        let rounds = Rounds::new(self.piece, &self.targets, price);
        let chain = self.targets.chain;
        let below = |k: usize| if k == 1 { chain.unwrap_or(0) } else { counts[k - 2] };
        let all: f64 =
            (1..=counts.len()).map(|k| rounds.price(k, below(k), counts[k - 1])).sum();
        EASE_SHARE * all / counts.len() as f64
    }

    /// One descent and one new forecast; false if nothing better was found.
    pub(super) fn improve(&mut self) -> bool {
        let width = self.piece.gauge.stitch_width_mm();
        let skin = skin_of(self.piece, self.targets.chain, &self.counts);
        let energy = Energy::new(&skin, self.pressure);
        let model = Quadratic::new(&energy, &self.settled, &self.misfit, width);
        let rounds = Rounds::new(self.piece, &self.targets, Price::at(self.piece.ease));
        let counts = descend(&model, &rounds, &self.counts);
        if counts == self.counts {
            return false;
        }
        let mut start = self.settled.x.clone();
        for (k, (&new, &old)) in counts.iter().zip(&self.counts).enumerate() {
            let moved = f64::from(new) - f64::from(old);
            if moved != 0.0 && k < model.moves.len() {
                for (x, by) in start.iter_mut().zip(&model.moves[k]) {
                    *x += moved * by;
                }
            }
        }
        let skin = skin_of(self.piece, self.targets.chain, &counts);
        let energy = Energy::new(&skin, self.pressure);
        let settled = settle(&energy, &start, SETTLED_GRADIENT);
        self.forecasts += 1;
        let misfit = Misfit::of(&settled.nodes, self.trail, width);
        let price = self.price_of(&counts);
        if misfit.mean_square + price >= self.cost() {
            return false;
        }
        (self.counts, self.settled, self.misfit, self.price) = (counts, settled, misfit, price);
        true
    }

    pub(super) fn finish(self, forecasts: usize) -> Chosen {
        let width = self.piece.gauge.stitch_width_mm();
        let fit = fit::measure(&self.settled.nodes, self.trail, width);
        Chosen {
            chain: self.targets.chain,
            counts: self.counts,
            ideal: self.targets.ideal,
            settled: self.settled,
            fit,
            forecasts,
            gave_way: self.gave_way,
        }
    }
}

impl Misfit {
    fn of(nodes: &[Rz], trail: &Trail, width: f64) -> Self {
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
            share,
            mean_square: 0.0,
            shift: trail.middle() - fit::middle(nodes),
        };
        let sag = sags(nodes);
        for _ in 0..4 {
            let mut seeker = Seeker::new(trail.line());
            let (mut pull, mut weight, mut square) = (0.0, 0.0, 0.0);
            for k in 0..n {
                let foot = seeker.nearest(Rz::new(nodes[k].r, nodes[k].z + misfit.shift));
                let off = foot.out - sag[k];
                misfit.off[k] = off;
                misfit.normal[k] = foot.normal;
                pull += misfit.share[k] * off * foot.normal.z;
                weight += misfit.share[k] * foot.normal.z * foot.normal.z;
                square += misfit.share[k] * off * off;
            }
            misfit.mean_square = square / (width * width);
            let step = if weight > 0.0 { -pull / weight } else { 0.0 };
            if step.abs() < 1e-5 * width {
                break;
            }
            misfit.shift += step;
        }
        misfit
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

/// The misfit as a quadratic form in the stitches added to each round.
struct Quadratic {
    /// ∂x/∂N of every round, mm a stitch.
    moves: Vec<Vec<f64>>,
    /// Half the slope of the mean square misfit by each round's count, stitches².
    slope: Vec<f64>,
    /// Its curvature matrix, row by row.
    bend: Vec<Vec<f64>>,
}

impl Quadratic {
    fn new(energy: &Energy<'_>, settled: &Settled, misfit: &Misfit, width: f64) -> Self {
        let rounds = settled.nodes.len() - 1;
        let movable = rounds - 1; // The last round is gathered or held.
        let share = &misfit.share;
        let normal = &misfit.normal;
        let weight: f64 = share.iter().zip(normal).map(|(s, n)| s * n.z * n.z).sum();
        let mut moves = Vec::with_capacity(movable);
        // Distance outwards gained by each node, per stitch, at the best shift, in stitches.
        let mut gains: Vec<Vec<f64>> = Vec::with_capacity(movable);
        for k in 1..=movable {
            let mut x = vec![0.0; energy.unknowns()];
            let first = energy.gradient_by_around(k, &settled.x, &mut x);
            for v in &mut x[first..] {
                *v *= -width;
            }
            settled.factor.solve_from(first, &mut x);
            let mut gain: Vec<f64> = std::iter::once(0.0)
                .chain(
                    x.chunks_exact(2).zip(&normal[1..]).map(|(d, n)| d[0] * n.r + d[1] * n.z),
                )
                .collect();
            let pull: f64 =
                gain.iter().zip(share).zip(normal).map(|((g, s), n)| g * s * n.z).sum();
            let lift = if weight > 0.0 { pull / weight } else { 0.0 };
            for ((g, n), s) in gain.iter_mut().zip(normal).zip(share) {
                *g = (*g - lift * n.z) * s.sqrt() / width;
            }
            gains.push(gain);
            moves.push(x);
        }
        let off: Vec<f64> =
            misfit.off.iter().zip(share).map(|(d, s)| d * s.sqrt() / width).collect();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
        let slope = gains.iter().map(|g| dot(g, &off)).collect();
        let mut bend = vec![vec![0.0; movable]; movable];
        for i in 0..movable {
            for j in i..movable {
                let value = dot(&gains[i], &gains[j]);
                bend[i][j] = value;
                bend[j][i] = value;
            }
        }
        Self { moves, slope, bend }
    }
}

/// Whole counts that no single stitch and no pair of stitches improves by the model.
fn descend(model: &Quadratic, rounds: &Rounds<'_>, start: &[u32]) -> Vec<u32> {
    let mut walk = Walk { model, rounds, counts: start.to_vec(), slope: model.slope.clone() };
    let movable = model.slope.len();
    for _ in 0..200 {
        let mut moved = false;
        for k in 0..movable {
            for by in [1, -1] {
                moved |= walk.try_moves(&[(k, by)]);
            }
        }
        if moved {
            continue;
        }
        for k in 0..movable {
            for j in k + 1..movable.min(k + 1 + PAIR_REACH) {
                for (a, b) in [(1, -1), (-1, 1), (1, 1), (-1, -1)] {
                    moved |= walk.try_moves(&[(k, a), (j, b)]);
                }
            }
        }
        if !moved {
            break;
        }
    }
    walk.counts
}

/// Counts on their way down the quadratic form.
struct Walk<'m> {
    model: &'m Quadratic,
    rounds: &'m Rounds<'m>,
    counts: Vec<u32>,
    /// Half the slope of the form at the counts.
    slope: Vec<f64>,
}

impl Walk<'_> {
    /// Makes the moves `(round index, stitches)` if they lower the cost and break no rule.
    fn try_moves(&mut self, moves: &[(usize, i32)]) -> bool {
        let mut gain = 0.0;
        for (n, &(k, by)) in moves.iter().enumerate() {
            let by = f64::from(by);
            gain += by * (2.0 * self.slope[k] + by * self.model.bend[k][k]);
            for &(j, other) in &moves[..n] {
                gain += 2.0 * by * f64::from(other) * self.model.bend[k][j];
            }
        }
        // Prices only ever help by what they already charge nearby; a hopeless move is left
        // before its rules are looked at.
        let charged = |walk: &Self| -> f64 {
            let mut touched: Vec<usize> = moves.iter().flat_map(|&(k, _)| [k, k + 1]).collect();
            touched.dedup();
            touched.iter().filter(|&&k| k < walk.counts.len()).map(|&k| walk.charge(k)).sum()
        };
        let free = self.rounds.is_free();
        if free && gain >= -1e-9 && self.held_is_flat(moves) {
            return false;
        }
        let before = charged(self);
        self.shift(moves, 1);
        let after = if self.breaks_rules(moves) { f64::INFINITY } else { charged(self) };
        if gain + after - before >= -1e-9 {
            self.shift(moves, -1);
            return false;
        }
        for &(k, by) in moves {
            for (slope, bend) in self.slope.iter_mut().zip(&self.model.bend[k]) {
                *slope += f64::from(by) * bend;
            }
        }
        true
    }

    fn held_is_flat(&self, moves: &[(usize, i32)]) -> bool {
        moves.iter().all(|&(k, _)| self.rounds.held(k + 1, self.counts[k]) == 0.0)
    }

    /// Price and pins of round index `k` as it stands.
    fn charge(&self, k: usize) -> f64 {
        let rounds = self.counts.len() as f64;
        let held = self.rounds.held(k + 1, self.counts[k]);
        match self.below(k) {
            Some(below) => {
                (held + EASE_SHARE * self.rounds.price(k + 1, below, self.counts[k])) / rounds
            }
            None => held / rounds,
        }
    }

    fn below(&self, k: usize) -> Option<u32> {
        if k == 0 { self.rounds.targets.chain } else { Some(self.counts[k - 1]) }
    }

    fn shift(&mut self, moves: &[(usize, i32)], sign: i32) {
        for &(k, by) in moves {
            self.counts[k] = self.counts[k].saturating_add_signed(by * sign);
        }
    }

    fn breaks_rules(&self, moves: &[(usize, i32)]) -> bool {
        let step_ok = |k: usize| {
            k >= self.counts.len()
                || self
                    .below(k)
                    .is_none_or(|below| self.rounds.allows_step(k + 1, below, self.counts[k]))
        };
        moves.iter().any(|&(k, _)| {
            !self.rounds.allows(k + 1, self.counts[k]) || !step_ok(k) || !step_ok(k + 1)
        })
    }
}
