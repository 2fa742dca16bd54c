//! What shapes a piece from inside, as work for the hands: card laid in, a thread drawn through
//! a round, a round sewn down. The forecast holds the cloth where these do.

use super::knot_edges::knot_edges;
use super::skin::RestSkin;
use crate::piece::Piece;
use crate::piece::outline::{Hold, Profile, Rz};

/// Least hole of a flat ring of card, mm across: a smaller one is cut as a disc.
const LEAST_HOLE_MM: f64 = 8.0;

/// Something that is done inside a piece, after one of its rounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InsideStop {
    /// The round after which it is done, counted from 1.
    pub after: u32,
    /// What is done.
    pub what: Inside,
}

/// What is done inside a piece. Measures are those of the stuffed cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Inside {
    /// Card is laid in.
    Card {
        /// How wide it is, mm.
        across_mm: f64,
        /// How wide its hole is, mm; none for a disc.
        hole_mm: Option<f64>,
        /// Whether it closes the piece, and so goes in on top of the stuffing.
        on_top: bool,
    },
    /// A thread is drawn through the stitches of the round, and pulled once all is stuffed.
    Thread {
        /// How wide the cloth is there then, mm.
        across_mm: f64,
    },
    /// The round is sewn to what it meets, once the piece is made.
    Sewn {
        /// How wide it is there, mm.
        across_mm: f64,
    },
}

/// What is done inside `piece`, in working order; `forecast` is its stuffed profile, a node a
/// round edge. Nothing in one given by its rounds, whose knots are its forecast.
pub(super) fn inside_stops(
    piece: &Piece,
    rest: &RestSkin,
    forecast: &[Rz],
    rounds: usize,
    profile: impl FnOnce() -> Profile,
) -> Vec<InsideStop> {
    let knots = &piece.outline.knots;
    if piece.given.is_some() || knots.iter().all(|k| k.hold.is_none() && !k.card) {
        return Vec::new();
    }
    let edges = knot_edges(piece, &profile(), rest, rounds);
    let across = |edge: usize| 2.0 * forecast.get(edge).map_or(0.0, |node| node.r.max(0.0));
    let after = |edge: usize| edge.clamp(1, rounds.max(1)) as u32;
    let mut stops: Vec<InsideStop> = Vec::new();
    for (knot, &edge) in knots.iter().zip(&edges) {
        let what = match knot.hold {
            Some(Hold::Cinched) => Inside::Thread { across_mm: across(edge) },
            Some(Hold::Sewn) => Inside::Sewn { across_mm: across(edge) },
            None => continue,
        };
        stops.push(InsideStop { after: after(edge), what });
    }
    let spans = knots.iter().zip(edges.windows(2));
    for ends in spans.filter(|(knot, _)| knot.card).map(|(_, ends)| ends) {
        let [from, to] = [ends[0], ends[1]].map(across);
        let hole = from.min(to);
        let what = Inside::Card {
            across_mm: from.max(to),
            hole_mm: (hole >= LEAST_HOLE_MM).then_some(hole),
            on_top: from > to,
        };
        // It goes in while the opening is still as wide as it is.
        stops
            .push(InsideStop { after: after(if from > to { ends[0] } else { ends[1] }), what });
    }
    stops.sort_by_key(|stop| (stop.after, !stop.what.is_under_stuffing()));
    stops
}

impl Inside {
    /// Whether it is done before the stuffing that goes in after the same round.
    pub fn is_under_stuffing(self) -> bool {
        !matches!(self, Self::Card { on_top: true, .. })
    }
}
