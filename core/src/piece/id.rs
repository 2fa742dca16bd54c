//! Which piece of its project a piece is.

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result};

/// Tells a piece from the others of its project, whatever it is called, wherever it stands
/// among them and however it is changed. A copy of a piece is another piece, with an id of its
/// own, which the project gives it when it is added.
///
/// In a file of a version that had no ids a piece's place among the others is its id, which is
/// how such a file speaks of its pieces.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct PieceId(u32);

impl PieceId {
    /// The id with this number: what a file or a test calls a piece.
    pub const fn new(number: u32) -> Self {
        Self(number)
    }

    /// Refuses what speaks of a piece that is not among those `known`.
    ///
    /// # Errors
    /// As [`Self::missing`].
    pub(crate) fn among(self, known: impl Iterator<Item = Self> + Clone) -> Result<()> {
        if known.clone().any(|id| id == self) { Ok(()) } else { Err(self.missing(known)) }
    }

    /// That there is no such piece among those `known`.
    pub(crate) fn missing(self, known: impl Iterator<Item = Self>) -> Error {
        let known: Vec<String> = known.map(|id| id.to_string()).collect();
        let mend = format!("the pieces have the ids {}", known.join(", "));
        Error::new("pieces", format!("there is no piece {self}"), mend)
    }

    /// One that none of `taken` is.
    pub(crate) fn free(taken: impl Iterator<Item = Self>) -> Self {
        Self(taken.map(|id| id.0.saturating_add(1)).max().unwrap_or(0))
    }
}

impl std::fmt::Display for PieceId {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.0.fmt(f)
    }
}
