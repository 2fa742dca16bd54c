//! Makers sampled by chance, and how near the outline their pieces come: the expectation that
//! a likely fit stands for, without linearising anything.

use plumpline_core::counts::{Holds, skin_of};
use plumpline_core::forecast::fit::{Trail, measure};
use plumpline_core::forecast::{Energy, pressure_for_skin, settle, settled_gradient};
use plumpline_core::{Firmness, Piece, Plan};

use crate::any::rest_of;
use crate::rng::Rng;

/// RMS distance to the outline of `plan`, which is of `piece`, in `many` hands, stitch widths.
/// Hands that the forecast does not settle for are left out.
pub fn distances(piece: &Piece, plan: &Plan, many: usize, seed: u64) -> Vec<f64> {
    let mut rng = Rng::new(seed);
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let trail = Trail::new(profile.places());
    let counts = plan.counts();
    let holds = Holds::new(piece, &profile, &rest, counts.len());
    let spread = piece.variation;
    let width = piece.gauge.stitch_width_mm();
    let mut found = Vec::with_capacity(many);
    for _ in 0..many {
        let mut hand = piece.clone();
        hand.gauge.across_mm *= 1.0 + spread.gauge * rng.normal();
        hand.gauge.along_mm *= 1.0 + spread.gauge * rng.normal();
        hand.firmness = Firmness(piece.firmness.0 * (spread.firmness * rng.normal()).exp());
        hand.stiffness_along *= (spread.stiffness * rng.normal()).exp();
        let mut skin = skin_of(&hand, plan.start, &counts, &holds);
        let pressure = pressure_for_skin(hand.firmness.0, skin.largest_radius_mm());
        for around in &mut skin.around_mm {
            *around *= 1.0 + spread.pull * rng.normal();
        }
        let energy = Energy::new(&skin, pressure);
        let mut start = energy.flatten(&plan.forecast[..=counts.len()]);
        energy.hold(&mut start);
        let settled = settle(&energy, &start, settled_gradient(&skin));
        if settled.is_settled() {
            found.push(measure(&skin.closed(&settled.nodes), &trail, width).rms_stitches);
        }
    }
    found
}
