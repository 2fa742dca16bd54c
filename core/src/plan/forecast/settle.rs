//! From a start shape to the minimum nearest it: Newton's method with a line search, and a
//! shift of the diagonal where the Hessian is indefinite.

use super::banded::{Banded, Factor};
use super::{Energy, Skin};
use crate::piece::outline::Rz;

/// Most Newton steps before a shape counts as unsettled. Pieces take 5–20; inextensible
/// limits with hundreds of rounds take more.
const MOST_STEPS: usize = 400;

/// Largest entry of the gradient at which a shape counts as settled, as a share of the
/// largest rest radius (Eθ·mm a mm): forces are then below a billionth of the cloth's own.
const SETTLED_SHARE: f64 = 2.5e-9;

/// How far past that a shape may stop and still be a forecast.
const USABLE: f64 = 1e3;

/// A radius this many times the largest at rest means that the cloth has burst.
const BURST: f64 = 3.0;

/// The gradient to which a plan settles `skin`, Eθ·mm. Relative, so that a piece and its
/// image at another scale take the same steps.
pub fn settled_gradient(skin: &Skin) -> f64 {
    SETTLED_SHARE * skin.largest_radius_mm()
}

/// A settled shape and what it took to find it.
#[derive(Debug, Clone)]
pub struct Settled {
    /// The M + 1 nodes; z = 0 at the start.
    pub nodes: Vec<Rz>,
    /// The unknowns the nodes stand for, [`Energy`]'s order.
    pub(crate) x: Vec<f64>,
    /// The factor of the Hessian at the last point, for sensitivities.
    pub(crate) factor: Factor,
    /// Newton steps taken.
    pub steps: usize,
    /// Evaluations of the gradient.
    pub gradients: usize,
    /// Largest entry of the gradient where it stopped, Eθ·mm.
    pub residual: f64,
    /// What it was to settle to, Eθ·mm.
    pub tolerance: f64,
}

impl Settled {
    /// Whether the gradient fell to what was asked, or near enough for a forecast.
    pub fn is_settled(&self) -> bool {
        self.residual <= USABLE * self.tolerance
    }
}

/// Steps in which a piece is filled where it does not settle at once.
const FILLINGS: u32 = 12;

/// How many times its cloth's length a settled profile may be before it is called burst.
const LONGEST: f64 = 2.0;

/// The shape of `skin` under `pressure`, settled from the slack skin: the forecast of whoever
/// worked it, whatever it was sought from.
///
/// The energy has no lower bound, and from the slack skin a step may lead past its minimum:
/// filled little by little, the piece stays near it.
pub fn stuffed(skin: &Skin, pressure: f64) -> Settled {
    let tolerance = settled_gradient(skin);
    let energy = Energy::new(skin, pressure);
    let slack = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &slack, tolerance);
    if is_whole(skin, &settled) {
        return settled;
    }
    let mut x = slack;
    for step in 1..FILLINGS {
        let share = f64::from(step) / f64::from(FILLINGS);
        let part = settle(&Energy::new(skin, share * pressure), &x, tolerance);
        if !is_whole(skin, &part) {
            return settled;
        }
        x = part.x;
    }
    settle(&energy, &x, tolerance)
}

/// Whether a shape settled, and no longer than cloth stretches.
fn is_whole(skin: &Skin, settled: &Settled) -> bool {
    let long: f64 = settled.nodes.windows(2).map(|p| p[0].distance(p[1])).sum();
    settled.is_settled() && long <= LONGEST * skin.height_mm.iter().sum::<f64>()
}

/// The local minimum of `energy` reached from `start` (unknowns as [`Energy::flatten`]
/// gives them), to |g|∞ ≤ `tolerance` (Eθ·mm).
///
/// Never fails: if no step lowers the energy any more, or after 400 steps, it returns the
/// best shape found with its `residual`, and the caller says so. It also stops where the
/// pressure is more than the cloth can hold and a radius runs away: the energy has no
/// minimum to find then.
pub fn settle(energy: &Energy<'_>, start: &[f64], tolerance: f64) -> Settled {
    let n = energy.unknowns();
    let mut x = start.to_vec();
    let mut gradient = vec![0.0; n];
    let mut step = vec![0.0; n];
    let mut trial = vec![0.0; n];
    let mut trial_gradient = vec![0.0; n];
    let mut hessian = Banded::default();
    let mut trial_hessian = Banded::default();
    let mut factor = Factor::default();
    let mut shift = 0.0;
    let widest = BURST * energy.skin().largest_radius_mm();
    let burst = |x: &[f64]| x.chunks_exact(2).any(|node| node[0] > widest);
    let (mut steps, mut gradients) = (0, 1);
    let mut value = energy.all(&x, &mut gradient, &mut hessian);
    let mut residual = largest(&gradient);
    loop {
        shift = shifted_factor(&hessian, shift, &mut factor);
        if residual <= tolerance || steps >= MOST_STEPS || burst(&x) {
            break;
        }
        for (s, g) in step.iter_mut().zip(&gradient) {
            *s = -g;
        }
        factor.solve(&mut step);
        let slope: f64 = step.iter().zip(&gradient).map(|(s, g)| s * g).sum();
        let mut length = longest_step(&x, &step);
        let mut moved = false;
        for _ in 0..40 {
            for ((t, &x0), &s) in trial.iter_mut().zip(&x).zip(&step) {
                *t = x0 + length * s;
            }
            // Nearly every first trial is taken, so its Hessian is seldom for nothing.
            let next = energy.all(&trial, &mut trial_gradient, &mut trial_hessian);
            gradients += 1;
            let next_residual = largest(&trial_gradient);
            // Close to the minimum the energy no longer resolves the gain; the gradient does.
            let lower = next <= value + 1e-4 * length * slope;
            let flat = (next - value).abs() <= 1e-12 * value.abs();
            if lower || (flat && next_residual < residual) {
                moved = true;
                value = next;
                residual = next_residual;
                break;
            }
            length *= 0.5;
        }
        if !moved {
            break;
        }
        std::mem::swap(&mut x, &mut trial);
        std::mem::swap(&mut gradient, &mut trial_gradient);
        std::mem::swap(&mut hessian, &mut trial_hessian);
        steps += 1;
    }
    Settled { nodes: energy.nodes(&x), x, factor, steps, gradients, residual, tolerance }
}

/// Factors the Hessian, shifted as little as makes it positive definite; returns the shift.
fn shifted_factor(hessian: &Banded, last: f64, factor: &mut Factor) -> f64 {
    if hessian.factor(0.0, factor) {
        return 0.0;
    }
    let diagonal: f64 = hessian.columns.iter().map(|c| c[0].abs()).sum();
    let typical = (diagonal / hessian.columns.len() as f64).max(1e-12);
    let mut shift = if last > 0.0 { last / 8.0 } else { 1e-3 * typical };
    // No shift mends what is not a number.
    while shift.is_finite() && !hessian.factor(shift, factor) {
        shift *= 4.0;
    }
    shift
}

/// The longest multiple of `step`, at most 1, that keeps every radius above a tenth of
/// what it was.
fn longest_step(x: &[f64], step: &[f64]) -> f64 {
    let mut length = 1.0_f64;
    for (x, s) in x.chunks_exact(2).zip(step.chunks_exact(2)) {
        if s[0] < 0.0 && x[0] > 0.0 {
            length = length.min(0.9 * x[0] / -s[0]);
        }
    }
    length
}

fn largest(v: &[f64]) -> f64 {
    v.iter().fold(0.0, |most, g| g.abs().max(most))
}
