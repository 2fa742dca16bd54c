//! What is known of an edge once its piece is planned.

use std::f64::consts::PI;

use super::{At, Edge};
use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::plan::Plan;
use crate::sentence::Sentence;

/// An edge of a planned piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeFacts {
    /// The edge.
    pub edge: Edge,
    /// Its round, counted from 1; 0 for a foundation chain.
    pub round: u32,
    /// Its stitches.
    pub stitches: u32,
    /// Its width across when stuffed, by forecast, mm: circumference over π.
    pub stuffed_mm: f64,
    /// The same of the unstuffed cloth, mm.
    pub slack_mm: f64,
    /// Width of one of its stitches, mm.
    pub stitch_mm: f64,
}

/// The facts of `edge`, of `piece` planned as `plan`.
///
/// # Errors
/// Where the piece has no such round, or is closed at that end.
pub fn edge(piece: &Piece, plan: &Plan, edge: Edge) -> Result<EdgeFacts> {
    let place = || format!("piece “{}”", piece.name);
    let last = plan.rounds.len() as u32;
    let closed = |end: &str| {
        Err(Error::new(
            place(),
            format!("its {end} is closed, so it has no open edge there"),
            "name a round instead",
        ))
    };
    let (round, stitches) = match (edge.at, plan.chain) {
        (At::OpenStart, Some(chain)) => (0, chain),
        (At::OpenStart, None) => return closed("start"),
        (At::OpenEnd, _) if piece.outline.finishes_closed() => return closed("end"),
        (At::OpenEnd, _) => (last, plan.rounds[last as usize - 1].count),
        (At::Round(k), _) if (1..=last).contains(&k) => (k, plan.rounds[k as usize - 1].count),
        (At::Round(k), _) => {
            let what = format!("it has no Rnd {k}");
            return Err(Error::new(place(), what, format!("its last is Rnd {last}")));
        }
    };
    let stitch_mm = piece.cloth_of_round(round.max(1)).width;
    let straight = if plan.depth_mm.is_some() { 2.0 * piece.straight_mm } else { 0.0 };
    let drawn = round == last && piece.outline.finishes_closed();
    Ok(EdgeFacts {
        edge,
        round,
        stitches,
        stuffed_mm: match drawn {
            true => 0.0,
            false => 2.0 * plan.forecast[round as usize].r + straight / PI,
        },
        slack_mm: f64::from(stitches) * stitch_mm / PI,
        stitch_mm,
    })
}

/// The edge in words: `Rnd 12`, `the last round`, `the foundation chain`.
pub(super) fn named(at: At) -> Sentence {
    match at {
        At::OpenStart => Sentence::note("foundation_chain", []),
        At::OpenEnd => Sentence::note("last_round", []),
        At::Round(k) => Sentence::note("round", [("n", k.into())]),
    }
}
