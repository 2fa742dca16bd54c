//! Counts: whole stitches for every round.
//!
//! [`Targets`] are the stitches the closed-form skin would have if stitches could be split;
//! [`programme`] rounds them by dynamic programming under the [`rules`]; [`polish`] then
//! moves stitches one or two at a time towards the outline, by what the forecast says each
//! stitch does. The number of rounds is the rest length over the round height, rounded, and
//! one either side; the best of the three is kept.

mod beam;
mod model;
mod polish;
pub mod programme;
pub mod rules;

use crate::forecast::fit::{self, Fit, Trail};
use crate::forecast::settle::{SETTLED_GRADIENT, Settled, settle};
use crate::forecast::{Cloth, Energy, Finish, Skin};
use crate::outline::{POLE_MM, Profile};
use crate::piece::{MOST_ROUNDS, Piece};
use crate::skin::RestSkin;

pub use rules::{Price, Targets};

/// The counts chosen for a piece and the forecast they were judged by.
#[derive(Debug, Clone)]
pub struct Chosen {
    /// Foundation chain at an open start.
    pub chain: Option<u32>,
    /// Stitches of each round.
    pub counts: Vec<u32>,
    /// Stitches the closed-form skin would have, per round.
    pub ideal: Vec<f64>,
    /// The settled forecast.
    pub settled: Settled,
    /// Its distance from the outline.
    pub fit: Fit,
    /// Forecasts solved on the way.
    pub forecasts: usize,
    /// Rules that had to give way.
    pub gave_way: Vec<rules::GaveWay>,
}

/// Forecasts a plan may solve: three numbers of rounds, each once and re-solved up to
/// three times.
pub const MOST_FORECASTS: usize = 12;

/// How many times the leader's cost a number of rounds may have and still be tried further.
const HOPELESS: f64 = 6.0;

/// Whole stitches for `piece`, whose outline is `profile` and whose closed-form skin is
/// `rest`.
pub fn choose(piece: &Piece, profile: &Profile, rest: &RestSkin) -> Chosen {
    let trail = Trail::new(profile.places());
    let middle = rest.length_mm() / piece.gauge.round_height_mm();
    let middle = (middle.round() as usize).clamp(2, MOST_ROUNDS);
    let mut candidates: Vec<polish::Candidate<'_>> = (middle - 1..=middle + 1)
        .filter(|&rounds| rounds >= 2)
        .map(|rounds| polish::Candidate::new(piece, profile, rest, &trail, rounds))
        .collect();
    // A number of rounds far behind after its first forecast never catches up.
    let leading = candidates.iter().map(polish::Candidate::cost).fold(f64::INFINITY, f64::min);
    for candidate in candidates.iter_mut().filter(|c| c.cost() <= HOPELESS * leading) {
        candidate.improve();
    }
    candidates.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    let mut best = candidates.swap_remove(0);
    let others: usize = candidates.iter().map(|c| c.forecasts).sum();
    while others + best.forecasts < MOST_FORECASTS && best.improve() != polish::Step::Done {}
    best.finish(others)
}

/// The skin of these whole stitches: every round of the gauge's width and height.
pub fn skin_of(piece: &Piece, chain: Option<u32>, counts: &[u32]) -> Skin {
    let width = piece.gauge.stitch_width_mm();
    let drawn = piece.outline.finishes_closed();
    Skin {
        start_mm: chain.map_or(0.0, |n| f64::from(n) * width),
        around_mm: counts.iter().map(|&n| f64::from(n) * width).collect(),
        height_mm: vec![piece.gauge.round_height_mm(); counts.len()],
        finish: if drawn { Finish::Drawn } else { Finish::Open },
        cloth: Cloth { along: piece.stiffness_along, ..Cloth::default() },
    }
}

/// The forecast of these whole stitches from the slack skin, at `pressure`.
pub fn forecast(piece: &Piece, chain: Option<u32>, counts: &[u32], pressure: f64) -> Settled {
    let skin = skin_of(piece, chain, counts);
    let energy = Energy::new(&skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    settle(&energy, &start, SETTLED_GRADIENT)
}

/// The rule of thumb that plans are compared with: `round(2πr/w)` at equal steps `h` of the
/// outline itself, a ring of six, never more than double nor less than half the round below.
/// Common practice, no source.
pub fn rule_of_thumb(piece: &Piece, profile: &Profile) -> Vec<u32> {
    let (w, h) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
    let rounds = ((profile.length_mm() / h).round() as usize).clamp(2, MOST_ROUNDS);
    let last = profile.stations.len() - 1;
    let mut counts: Vec<u32> = Vec::with_capacity(rounds);
    for k in 1..=rounds {
        let place = (k as f64 * h / profile.length_mm() * last as f64).min(last as f64);
        let (i, u) = ((place as usize).min(last - 1), place.fract());
        let (a, b) = (profile.stations[i].at.r, profile.stations[i + 1].at.r);
        let r = if place >= last as f64 { b } else { a + u * (b - a) };
        let wanted = (std::f64::consts::TAU * r / w).round() as u32;
        counts.push(match counts.last() {
            None if profile.stations[0].at.r <= POLE_MM => 6,
            None => wanted.max(3),
            Some(&below) => wanted.clamp(below.div_ceil(2), 2 * below),
        });
    }
    counts
}

/// The fit of whole counts, by the same forecast and the same measure as a plan's.
pub fn fit_of(piece: &Piece, profile: &Profile, counts: &[u32], pressure: f64) -> Fit {
    let chain = rules::chain_of(piece, profile);
    let settled = forecast(piece, chain, counts, pressure);
    let trail = Trail::new(profile.places());
    fit::measure(&settled.nodes, &trail, piece.gauge.stitch_width_mm())
}
