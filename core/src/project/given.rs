//! From a piece given by its outline to one given by its rounds, and back.

use crate::error::Result;
use crate::piece::given::{Given, GivenRound};
use crate::piece::{Accepted, Piece};
use crate::plan::given::outline_of;
use crate::plan::{Plan, Round, plan};

/// `piece` given by the rounds of its `plan`, and no longer by its outline.
#[must_use]
pub fn keep_rounds(piece: &Piece, plan: &Plan) -> Piece {
    let round = |round: &Round| GivenRound {
        count: round.count,
        work: Some(round.placement.clone()),
        remark: String::new(),
    };
    let rounds = plan.rounds.iter().map(round).collect();
    let stuff_after = plan.stuffing.iter().map(|stop| stop.after).collect();
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
