//! The course of every piece as it is designed, worked out anew when its piece or the words
//! change.

use std::sync::Arc;

use plumpline_core::making::WorkedPiece;
use plumpline_core::{Piece, PieceId, Project, WordingChoice};

use crate::document::{Document, Revision};

/// A piece and what follows from it.
#[derive(Debug)]
struct KnownPiece {
    piece: Piece,
    /// Whether there is stuffing in it.
    stuffed: bool,
    course: Result<Arc<WorkedPiece>, String>,
}

/// The courses of a project as it is designed, in the order of its pieces.
#[derive(Debug, Default)]
pub(crate) struct Courses {
    seen: Option<Revision>,
    wording: Option<WordingChoice>,
    known: Vec<KnownPiece>,
}

impl Courses {
    /// Follows the document; returns whether any course is another.
    pub(crate) fn update(&mut self, document: &Document) -> bool {
        let revision = document.revision();
        self.seen.replace(revision) != Some(revision) && self.follow(document.project())
    }

    fn follow(&mut self, project: &Project) -> bool {
        let mut changed = self.known.len() != project.pieces.len();
        if self.wording.as_ref() != Some(&project.wording) {
            self.known.clear();
            self.wording = Some(project.wording.clone());
        }
        self.known.truncate(project.pieces.len());
        for (i, piece) in project.pieces.iter().enumerate() {
            let stuffed = project.stuffs(piece.id);
            let same =
                |known: &KnownPiece| known.stuffed == stuffed && is_same(&known.piece, piece);
            if self.known.get(i).is_some_and(same) {
                continue;
            }
            let writer = project.wording.writer();
            let course = writer.and_then(|writer| WorkedPiece::of_piece(piece, &writer));
            let course = course.map(|course| course.stuffed_if(stuffed));
            let course = course.map(Arc::new).map_err(|e| e.to_string());
            let known =
                KnownPiece { piece: Piece { picture: None, ..piece.clone() }, stuffed, course };
            changed = true;
            match self.known.get_mut(i) {
                Some(place) => *place = known,
                None => self.known.push(known),
            }
        }
        changed
    }

    /// The course of a piece, or why it has none.
    pub(crate) fn of(&self, piece: PieceId) -> Option<Result<&Arc<WorkedPiece>, &str>> {
        let known = self.known.iter().find(|known| known.piece.id == piece)?;
        Some(known.course.as_ref().map_err(String::as_str))
    }
}

/// Whether two pieces are worked alike; a picture, which `known` has none of, is only looked
/// at.
pub(crate) fn is_same(known: &Piece, piece: &Piece) -> bool {
    match piece.picture {
        None => known == piece,
        Some(_) => *known == Piece { picture: None, ..piece.clone() },
    }
}
