//! Where pieces meet, as it is saved. Whether a seam holds, and what makes it, is worked out in
//! [`crate::project::companion`].

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};
use crate::piece::size::SizeBy;
use crate::piece::{Piece, PieceId};

/// Two edges that meet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seam {
    /// One edge; the inner one, where the other goes over it.
    pub a: Edge,
    /// The other edge; the outer one, where it goes over.
    pub b: Edge,
    /// How they meet.
    pub kind: SeamKind,
    /// Which side may be changed so that they do.
    #[serde(default)]
    pub moves: Side,
    /// The pin that holds the seam, put there when it was last met. A pin of the same round
    /// with another count is the maker's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held: Option<Held>,
}

/// A place of a piece where it meets another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Edge {
    /// The piece.
    pub piece: PieceId,
    /// Where on it.
    pub at: At,
}

/// Where on a piece an edge is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum At {
    /// The foundation chain of an open start.
    OpenStart,
    /// The last round of an open end.
    OpenEnd,
    /// The top of this round, counted from 1.
    Round(u32),
}

/// How two edges meet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum SeamKind {
    /// Sewn stitch to stitch: both have as many.
    SewnEqual,
    /// `b` goes over `a`, a cap over a nut, a jar round its lid.
    Clearance {
        /// How much wider `b` is than `a`, mm across; negative where it is to stretch.
        mm: f64,
        /// Whether `b` is stuffed when they meet; `a` always is.
        stuffed: bool,
    },
}

/// A side of a seam.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Side {
    /// That of [`Seam::a`].
    A,
    /// That of [`Seam::b`].
    B,
    /// Whichever has to change less.
    #[default]
    Either,
}

/// A pin that a seam put.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Held {
    /// The piece it is in.
    pub piece: PieceId,
    /// The round it holds.
    pub round: u32,
    /// At so many stitches.
    pub count: u32,
}

/// Most seams of a project.
pub const MOST_SEAMS: usize = 400;

/// Most room a seam may have, either way, mm.
pub const MOST_CLEARANCE_MM: f64 = 1000.0;

impl Seam {
    /// A seam of this kind in which either side may move.
    pub fn new(a: Edge, b: Edge, kind: SeamKind) -> Self {
        Self { a, b, kind, moves: Side::Either, held: None }
    }

    /// Whether it joins these two pieces, whichever is which.
    pub fn joins(&self, one: PieceId, other: PieceId) -> bool {
        (self.a.piece, self.b.piece) == (one, other)
            || (self.b.piece, self.a.piece) == (one, other)
    }

    /// Whether `piece` is one of the two.
    pub fn touches(&self, piece: PieceId) -> bool {
        self.a.piece == piece || self.b.piece == piece
    }

    /// The edge of a side, and the edge it meets; of [`Side::Either`] those of `a`.
    pub(crate) fn edges(&self, side: Side) -> (Edge, Edge) {
        if side == Side::B { (self.b, self.a) } else { (self.a, self.b) }
    }
}

/// Refuses seams between pieces that are not there, of a piece with itself, and room no seam
/// has; sizes that meet no piece.
///
/// # Errors
/// Names the seam, counted from 1, or the size.
pub(crate) fn validate(pieces: &[Piece], seams: &[Seam]) -> Result<()> {
    if seams.len() > MOST_SEAMS {
        let what = format!("{} seams", seams.len());
        return Err(Error::new("seams", what, format!("list at most {MOST_SEAMS}")));
    }
    let there = |place: &str, piece: PieceId| {
        piece.among(pieces.iter().map(|piece| piece.id)).map_err(|e| e.within(place))
    };
    for (number, seam) in (1..).zip(seams) {
        let place = format!("seam {number}");
        for edge in [seam.a, seam.b] {
            there(&place, edge.piece)?;
            if edge.at == At::Round(0) {
                return Err(Error::new(place, "it is at round 0", "count rounds from 1"));
            }
        }
        if seam.a.piece == seam.b.piece {
            let what = "both its edges are of one piece";
            return Err(Error::new(place, what, "join two pieces"));
        }
        if let SeamKind::Clearance { mm, .. } = seam.kind {
            let place = format!("{place}, clearance");
            within(&place, mm, -MOST_CLEARANCE_MM, MOST_CLEARANCE_MM, "mm")?;
        }
    }
    for piece in pieces {
        for size in &piece.sizes {
            if let SizeBy::Meet { companion } = size.by {
                let place = format!("piece “{}”, size “{}”", piece.name, size.name);
                there(&place, companion)?;
            }
        }
    }
    Ok(())
}
