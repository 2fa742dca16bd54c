//! What the parts of the Make stage draw from, and how large.

use plumpline_core::making::{CourseRound, Progress, Stand, WorkedPiece};
use plumpline_core::{Piece, Yarn};

use crate::bench::Bench;
use crate::kit::type_faces;

/// Size of the round's number at full size, points.
pub(super) const NUMBER: f32 = 108.0;
/// Size of its words.
pub(super) const WORDS: f32 = 54.0;
/// Size of the stitch that is next.
pub(super) const NEXT: f32 = 34.0;
/// Size of what stands beside these.
pub(super) const ASIDE: f32 = 18.0;

/// Everything the parts of the stage draw from.
#[derive(Clone, Copy)]
pub(super) struct Hook<'a> {
    pub(super) bench: &'a Bench<'a>,
    pub(super) piece: &'a Piece,
    /// What the copy under the hook is called.
    pub(super) name: &'a str,
    pub(super) course: &'a WorkedPiece,
    pub(super) progress: &'a Progress,
    pub(super) stand: Stand,
    /// Size of type against full size.
    pub(super) scale: f32,
}

impl<'a> Hook<'a> {
    /// The round under the hook, with its number and how many of its steps are worked.
    pub(super) fn round(&self) -> Option<(u32, u32, &'a CourseRound)> {
        let Stand::Stitch { round, done } = self.stand else { return None };
        Some((round, done, self.course.round(round)?))
    }

    /// A size of type, never too small to read.
    pub(super) fn size(&self, full: f32) -> f32 {
        (full * self.scale).max(type_faces::BODY).round()
    }

    /// `B (Oat)`.
    pub(super) fn yarn_name(&self, yarn: usize) -> String {
        let name = self.bench.document.project().yarns.get(yarn).map_or("", |y| &y.name);
        format!("{} ({name})", Yarn::letter(yarn))
    }

    /// Whether the piece is worked in more than one yarn.
    pub(super) fn has_yarns(&self) -> bool {
        self.course.rounds.iter().any(|r| r.yarn != self.course.rounds[0].yarn)
    }
}
