//! The skin of a piece's stitches, and what holds it besides its cloth.

use super::rules::Start;
use crate::extent::StitchSize;
use crate::piece::Piece;
use crate::piece::outline::Profile;
use crate::plan::forecast::{Cloth, Finish, Skin};
use crate::plan::knot_edges::knot_edges;
use crate::plan::skin::RestSkin;

/// What holds a piece besides its cloth, by round.
#[derive(Debug, Clone, Default)]
pub struct Holds {
    /// Rounds held at a radius, mm.
    held: Vec<(usize, f64)>,
    /// Rounds kept level by a card insert.
    level: Vec<usize>,
}

impl Holds {
    /// The holds of `piece` worked in `rounds` rounds: each knot's hold at the round edge
    /// nearest it, each card under the rounds that lie on it.
    pub fn new(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> Self {
        let knots = &piece.outline.knots;
        if knots.iter().all(|k| k.hold.is_none() && !k.card) {
            return Self::default();
        }
        let edges = knot_edges(piece, profile, rest, rounds);
        let mut holds = Self::default();
        for (knot, &edge) in knots.iter().zip(&edges) {
            if knot.hold.is_some() {
                holds.held.push((edge, knot.radius_mm));
            }
        }
        let spans = knots.iter().zip(edges.windows(2));
        for ends in spans.filter(|(knot, _)| knot.card).map(|(_, ends)| ends) {
            holds.level.extend(ends[0] + 1..=ends[1]);
        }
        holds
    }
}

/// The skin of these stitches, whole or not.
pub fn skin_of<N: Copy + Into<f64>>(
    piece: &Piece,
    start: Start,
    counts: &[N],
    holds: &Holds,
) -> Skin {
    let cloth: Vec<StitchSize> =
        (1..=counts.len() as u32).map(|k| piece.cloth_of_round(k)).collect();
    let drawn = piece.outline.finishes_closed();
    let width = |k: usize| cloth[k].width;
    let start_mm = match start {
        Start::Ring => 0.0,
        Start::Chain(n) => f64::from(n) * width(0),
        Start::Oval(_) => 2.0 * piece.straight_mm,
    };
    let around = counts.iter().zip(&cloth).map(|(&n, c)| n.into() * c.width).collect();
    let height = cloth.iter().map(|c| c.height).collect();
    let finish = if drawn { Finish::Drawn } else { Finish::Open };
    let stiffness = Cloth { along: piece.stiffness_along, ..Cloth::default() };
    Skin {
        straight_mm: if matches!(start, Start::Oval(_)) { piece.straight_mm } else { 0.0 },
        held: holds.held.clone(),
        level: holds.level.clone(),
        ..Skin::new(start_mm, around, height, finish, stiffness)
    }
}
