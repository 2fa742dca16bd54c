//! A piece given by its rounds: its outline is the forecast of them.

use super::counts::{Chosen, worked};
use super::skin::RestSkin;
use crate::error::Result;
use crate::piece::Piece;
use crate::piece::given::Given;
use crate::piece::outline::{Knot, Outline, Rz};

/// How far the knots' curve may be from the forecast, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// Places on the smooth curve through the forecast that knots are then fitted to.
const SAMPLES: usize = 400;

/// Nodes nearer than this are one knot of the smooth curve, mm.
const APART_MM: f64 = 0.05;

/// What `given` comes to in `piece`'s cloth: its outline, which is its forecast, the unstuffed
/// skin, and the rounds with their forecast.
pub(super) fn settled(piece: &Piece, given: &Given) -> (Vec<Rz>, RestSkin, Chosen) {
    let (skin, chosen) = worked(piece, given.start, &given.counts());
    let outline = skin.closed(&chosen.settled.nodes);
    (outline, RestSkin::of_skin(&skin), chosen)
}

/// The curve through a forecast's nodes, as knots.
///
/// The nodes of a small piece turn sharply from one to the next; the cloth does not, so knots
/// are fitted to the smooth curve through them.
///
/// # Errors
/// If no outline passes there: a forecast that crosses itself, say.
pub fn outline_of(nodes: &[Rz], stitch_width_mm: f64) -> Result<Outline> {
    let mut knots: Vec<Knot> = Vec::with_capacity(nodes.len());
    for node in nodes {
        let apart = |knot: &Knot| knot.place().distance(*node) > APART_MM;
        if knots.last().is_none_or(apart) {
            knots.push(Knot::new(node.r, node.z));
        }
    }
    let smooth = Outline { knots };
    let mut places: Vec<Rz> = smooth.profile(SAMPLES).places();
    places.iter_mut().for_each(|p| p.r = p.r.max(0.0));
    Outline::through_points(&places, TOLERANCE_STITCHES * stitch_width_mm)
}
