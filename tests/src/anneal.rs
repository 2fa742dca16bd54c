//! Simulated annealing of counts on the true forecast: what patience finds beyond a plan's
//! faithful answer (Kirkpatrick, Gelatt and Vecchi, “Optimization by simulated annealing”,
//! Science 220, 1983).

use std::f64::consts::TAU;

use plumpline_core::counts::slack::FREE_SLACK;
use plumpline_core::counts::{AllowedRounds, Holds, Start, Targets, skin_of};
use plumpline_core::forecast::fit::{Trail, measure};
use plumpline_core::forecast::{Energy, pressure_for_skin, settle, settled_gradient};
use plumpline_core::{Piece, Plan, Rz};

use crate::any::rest_of;
use crate::rng::Rng;

/// Mean square distances by which the first and the last move may lead away, squared stitches.
const HEAT: (f64, f64) = (3e-5, 1e-7);

/// Rings below a close that its gathering pleats anyway.
const PLEATED: usize = 4;

/// What annealing came to.
#[derive(Debug, Clone)]
pub struct Annealed {
    /// RMS distance of the counts it set out from, stitch widths.
    pub before: f64,
    /// The least it found.
    pub after: f64,
    /// The counts with it.
    pub counts: Vec<u32>,
}

/// Counts under trial: the rules they must keep and the slack their rings may have.
struct Trial<'a> {
    piece: &'a Piece,
    start: Start,
    rules: AllowedRounds,
    holds: Holds,
    trail: Trail,
    /// Most slack of each ring: none to speak of, or what it had.
    most_slack: Vec<f64>,
}

impl Trial<'_> {
    fn allows(&self, counts: &[u32]) -> bool {
        let mut below = self.start.joined();
        (1..).zip(counts).all(|(k, &count)| {
            let step = below.replace(count).is_none_or(|b| self.rules.allows_step(k, b, count));
            step && self.rules.allows(k, count)
        })
    }

    fn slack(&self, counts: &[u32], nodes: &[Rz]) -> Vec<f64> {
        let ring = |(k, &count): (u32, &u32)| {
            let width = self.piece.cloth_of_round(k).width;
            1.0 - TAU * nodes[k as usize].r / (f64::from(count) * width)
        };
        (1..).zip(counts).map(ring).collect()
    }

    /// RMS distance and the shape; `near` is a shape to set out from.
    fn forecast(&self, counts: &[u32], near: Option<&[Rz]>) -> Option<(f64, Vec<Rz>)> {
        let skin = skin_of(self.piece, self.start, counts, &self.holds);
        let pressure = pressure_for_skin(self.piece.firmness.0, skin.largest_radius_mm());
        let energy = Energy::new(&skin, pressure);
        let mut x = match near {
            Some(nodes) => energy.flatten(nodes),
            None => energy.flatten(&skin.slack_shape()),
        };
        energy.hold(&mut x);
        let settled = settle(&energy, &x, settled_gradient(&skin));
        if !settled.is_settled() {
            return None;
        }
        let width = self.piece.gauge.stitch_width_mm();
        let fit = measure(&skin.closed(&settled.nodes), &self.trail, width);
        Some((fit.rms_stitches, settled.nodes))
    }
}

/// Anneals the counts of `plan` with so many `forecasts`: single stitches and pairs, under the
/// plan's rules and with no more slack. `None` where the plan had to give a rule up.
pub fn anneal(piece: &Piece, plan: &Plan, forecasts: usize, seed: u64) -> Option<Annealed> {
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let rounds = plan.rounds.len();
    let targets = Targets::new(piece, &profile, &rest, rounds);
    let mut counts = plan.counts();
    let mut trial = Trial {
        piece,
        start: plan.start,
        rules: AllowedRounds::new(piece, targets),
        holds: Holds::new(piece, &profile, &rest, rounds),
        trail: Trail::new(profile.places()),
        most_slack: vec![f64::INFINITY; rounds],
    };
    if !trial.allows(&counts) {
        return None;
    }
    let (before, mut nodes) = trial.forecast(&counts, None)?;
    let free = if piece.outline.finishes_closed() { PLEATED } else { 1 };
    let slack = trial.slack(&counts, &nodes);
    for (most, had) in trial.most_slack.iter_mut().zip(slack).take(rounds - free) {
        *most = had.max(FREE_SLACK);
    }
    let mut rng = Rng::new(seed);
    let mut now = before;
    let (mut best, mut best_counts) = (before, counts.clone());
    let mut done = 0;
    let mut tries = 0;
    while done < forecasts && tries < 100 * forecasts {
        tries += 1;
        let mut tried = counts.clone();
        let many = 1 + (rng.unit() * 2.5) as usize;
        let at = (rng.unit() * rounds as f64) as usize;
        for i in 0..many {
            let round = if i == 0 { at } else { at + (rng.unit() * 9.0) as usize };
            let by = if rng.unit() < 0.5 { -1 } else { 1 };
            if let Some(count) = tried.get_mut(round) {
                *count = count.saturating_add_signed(by);
            }
        }
        if tried == counts || !trial.allows(&tried) {
            continue;
        }
        let share = done as f64 / forecasts as f64;
        done += 1;
        let heat = HEAT.0 * (HEAT.1 / HEAT.0).powf(share);
        let Some((rms, shape)) = trial.forecast(&tried, Some(&nodes)) else { continue };
        let slack = trial.slack(&tried, &shape);
        if slack.iter().zip(&trial.most_slack).any(|(s, most)| s > most) {
            continue;
        }
        let worse = rms * rms - now * now;
        if worse <= 0.0 || rng.unit() < (-worse / heat).exp() {
            (now, nodes, counts) = (rms, shape, tried);
            if now < best {
                (best, best_counts) = (now, counts.clone());
            }
        }
    }
    Some(Annealed { before, after: best, counts: best_counts })
}
