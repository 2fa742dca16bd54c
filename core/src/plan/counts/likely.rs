//! Likely fit: how near the outline a piece comes in hands that differ.
//!
//! A forecast is for one cloth. Variation differ from their swatch, stuffing from its word, and
//! nobody works two rounds with quite the same pull. Each of these moves the shape a little;
//! to first order by −H⁻¹ ∂g/∂p, with the factor that the forecast left behind. The mean
//! square distance over hands is then the nominal one and the sum of the squares of those
//! movements, and the expected distance follows from the mean and variance of that square.

use super::shape::SettledShape;
use crate::piece::Variation;
use crate::piece::outline::Rz;
use crate::plan::forecast::Energy;

/// Step of the differences by which the gradient is differentiated, as a share.
const STEP: f64 = 1e-5;

/// The expected RMS distance to the outline over `hands`, stitch widths of `width` mm.
///
/// `square` is the nominal mean square distance, `pulls` what the rounds' pulls add to its mean square (see
/// [`super::model::Model::spread_by_pulls`]), both in squared stitches.
pub(super) fn likely_rms(
    shape: &SettledShape,
    hands: &Variation,
    square: f64,
    pulls: f64,
    width: f64,
) -> f64 {
    let share: Vec<f64> = shape.misfit.share.iter().map(|s| s.sqrt() / width).collect();
    let moves = movements(shape, hands);
    let moves: Vec<Vec<f64>> = moves.iter().map(|m| distances(shape, m, &share)).collect();
    let off: Vec<f64> =
        shape.misfit.off.iter().zip(&share).map(|(off, share)| off * share).collect();
    let mut mean = square + pulls;
    let mut variance = 0.0;
    for (i, a) in moves.iter().enumerate() {
        mean += dot(a, a);
        variance += 4.0 * dot(&off, a).powi(2);
        for (j, b) in moves[..=i].iter().enumerate() {
            let twice = if i == j { 1.0 } else { 2.0 };
            variance += 2.0 * twice * dot(a, b).powi(2);
        }
    }
    mean.sqrt() * root_mean(mean, variance)
}

/// Mean of the root of a square, over the root of its mean: that of a gamma distribution with
/// this mean and variance, which sums of squares of normal movements come close to.
fn root_mean(mean: f64, variance: f64) -> f64 {
    let per_shape = variance / (mean * mean).max(1e-30);
    (1.0 - per_shape / 4.0 + per_shape * per_shape / 32.0).max(0.5).sqrt()
}

/// Where the nodes go for one standard deviation of each thing in which hands differ, mm.
fn movements(shape: &SettledShape, hands: &Variation) -> [Vec<Rz>; 4] {
    let energy = Energy::new(&shape.skin, shape.pressure);
    let x = &shape.settled.x;
    let mut at = vec![0.0; x.len()];
    energy.value_and_gradient(x, &mut at);
    let moved = |energy: &Energy<'_>, by: f64| -> Vec<Rz> {
        let mut step = vec![0.0; x.len()];
        energy.value_and_gradient(x, &mut step);
        for (s, g) in step.iter_mut().zip(&at) {
            *s = by * (g - *s) / STEP;
        }
        shape.settled.factor.solve(&mut step);
        let start = std::iter::once(Rz::default());
        start.chain(step.chunks_exact(2).map(|p| Rz::new(p[0], p[1]))).collect()
    };
    let more = 1.0 + STEP;
    let mut taller = shape.skin.clone();
    taller.height_mm.iter_mut().for_each(|h| *h *= more);
    let mut stiffer = shape.skin.clone();
    stiffer.cloth.along *= more;
    let height = moved(&Energy::new(&taller, shape.pressure), 1.0);
    let stiffness = moved(&Energy::new(&stiffer, shape.pressure), hands.stiffness);
    let firmness = moved(&Energy::new(&shape.skin, more * shape.pressure), hands.firmness);
    // Only ratios matter: wider and taller by the same share, the shape grows by it.
    let scale =
        |(n, h): (&Rz, &Rz)| Rz::new(hands.gauge * (n.r - h.r), hands.gauge * (n.z - h.z));
    let wider: Vec<Rz> = shape.settled.nodes.iter().zip(&height).map(scale).collect();
    let height = height.iter().map(|n| Rz::new(hands.gauge * n.r, hands.gauge * n.z)).collect();
    [wider, height, stiffness, firmness]
}

/// What `moves` of the nodes do to their distances from the outline, at the best place along
/// the axis, each times the root of its `share`.
fn distances(shape: &SettledShape, moves: &[Rz], share: &[f64]) -> Vec<f64> {
    let normal = &shape.misfit.normal;
    let (mut pull, mut weight) = (0.0, 0.0);
    let mut out: Vec<f64> = Vec::with_capacity(moves.len());
    for ((m, n), s) in moves.iter().zip(normal).zip(share) {
        let distance = m.r * n.r + m.z * n.z;
        pull += s * s * distance * n.z;
        weight += s * s * n.z * n.z;
        out.push(distance);
    }
    let lift = pull / weight.max(1e-12);
    for ((d, n), s) in out.iter_mut().zip(normal).zip(share) {
        *d = (*d - lift * n.z) * s;
    }
    out
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
