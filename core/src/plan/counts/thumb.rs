//! The rule of thumb that plans are compared with, and the fit of any counts.

use super::holds::{Holds, skin_of};
use super::rules;
use crate::piece::outline::{POLE_MM, Profile};
use crate::piece::{MOST_ROUNDS, Piece};
use crate::plan::forecast::fit::{self, Fit, Trail};
use crate::plan::forecast::settle::{settle, settled_gradient};
use crate::plan::forecast::{Energy, pressure_for_skin};
use crate::plan::skin::RestSkin;

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

/// The fit of whole counts, by the same forecast from the slack skin and the same measure as
/// a plan's.
pub fn fit_of(piece: &Piece, profile: &Profile, rest: &RestSkin, counts: &[u32]) -> Fit {
    let start = rules::start_of(piece, profile);
    let holds = Holds::new(piece, profile, rest, counts.len());
    let skin = skin_of(piece, start, counts, &holds);
    let energy =
        Energy::new(&skin, pressure_for_skin(piece.firmness.0, skin.largest_radius_mm()));
    let start = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &start, settled_gradient(&skin));
    let trail = Trail::new(profile.places());
    fit::measure(&skin.closed(&settled.nodes), &trail, piece.gauge.stitch_width_mm())
}
