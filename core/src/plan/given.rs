//! A piece given by its rounds: its outline is the forecast of them. And the way from either
//! kind of piece to the other.

use super::counts::{Chosen, worked};
use super::skin::RestSkin;
use super::{Plan, plan};
use crate::error::Result;
use crate::piece::given::{Given, GivenRound};
use crate::piece::outline::{Knot, Outline, Rz};
use crate::piece::{Accepted, Piece};

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

/// `piece` given by the rounds of its `plan`, and no longer by its outline.
#[must_use]
pub fn keep_rounds(piece: &Piece, plan: &Plan) -> Piece {
    let round = |round: &super::Round| GivenRound {
        count: round.count,
        work: Some(round.placement.clone()),
        remark: String::new(),
    };
    let rounds = plan.rounds.iter().map(round).collect();
    let stuff_after = plan.stuff_after.into_iter().collect();
    let given = Some(Given { start: plan.start, rounds, stuff_after });
    Piece { given, accepted: None, ..piece.clone() }
}

/// `piece` given by an outline again, the shape of its rounds: they may change from here on,
/// but are kept while no hand could tell fresh ones from them.
///
/// # Errors
/// As [`plan`], and where that shape cannot be drawn as an outline.
pub fn plan_anew(piece: &Piece) -> Result<Piece> {
    let Some(given) = &piece.given else { return Ok(piece.clone()) };
    let plan = plan(piece)?;
    let outline = outline_of(&plan.forecast, piece.gauge.stitch_width_mm())?;
    let accepted = Some(Accepted { simplicity: piece.simplicity, counts: given.counts() });
    let anew = Piece { outline, given: None, accepted, ..piece.clone() };
    anew.validate()?;
    Ok(anew)
}

/// How a piece is given, for a person to read.
pub fn given_by(piece: &Piece) -> &'static str {
    match piece.given {
        Some(_) => "given by its rounds",
        None => "given by its outline",
    }
}
