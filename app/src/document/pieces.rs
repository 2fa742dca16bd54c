//! Changes of the list of pieces: which there are, what they are called, how many are made.

use plumpline_core::companion;
use plumpline_core::piece::MOST_COPIES;
use plumpline_core::{Piece, Project};

use super::plain_ball;

/// Most pieces a project may have.
pub const MOST_PIECES: usize = 200;

/// A change of the list of pieces.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceEdit {
    /// A plain ball after the selected piece, at its gauge.
    Add,
    /// Another piece just like the selected one, to be changed.
    Duplicate,
    /// No longer this piece; the last one stays.
    Remove,
    /// Another name for the selected piece.
    Name(String),
    /// How many of the selected piece are made.
    Copies(u32),
}

impl PieceEdit {
    /// Makes the change; `index` is the selected piece. Returns the piece to select.
    pub(crate) fn make(self, project: &mut Project, index: usize) -> usize {
        let pieces = &mut project.pieces;
        let full = pieces.len() >= MOST_PIECES;
        match self {
            Self::Add | Self::Duplicate if full => index,
            Self::Add => {
                let now = &pieces[index];
                let mut ball = plain_ball(now.gauge);
                (ball.firmness, ball.habits) = (now.firmness, now.habits);
                (ball.working, ball.hand) = (now.working, now.hand);
                ball.name = free_name(pieces, &ball.name);
                pieces.insert(index + 1, ball);
                companion::inserted(project, index + 1);
                index + 1
            }
            Self::Duplicate => {
                let name = free_name(pieces, &pieces[index].name);
                pieces.insert(index + 1, Piece { name, ..pieces[index].clone() });
                companion::inserted(project, index + 1);
                index + 1
            }
            Self::Remove => {
                if pieces.len() > 1 {
                    pieces.remove(index);
                    companion::removed(project, index);
                }
                index.min(project.pieces.len() - 1)
            }
            Self::Name(name) => {
                pieces[index].name = name;
                index
            }
            Self::Copies(copies) => {
                pieces[index].copies = copies.clamp(1, MOST_COPIES);
                index
            }
        }
    }
}

/// `name` if no piece has it, or with the first number that makes it another.
fn free_name(pieces: &[Piece], name: &str) -> String {
    let taken = |name: &str| pieces.iter().any(|p| p.name == name);
    if !taken(name) {
        return name.to_owned();
    }
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let stem = if stem.is_empty() { name } else { stem };
    (2..).map(|n| format!("{stem} {n}")).find(|n| !taken(n)).unwrap_or_else(|| name.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    fn project() -> Project {
        Document::blank().project().clone()
    }

    fn names(project: &Project) -> Vec<&str> {
        project.pieces.iter().map(|p| p.name.as_str()).collect()
    }

    #[test]
    fn pieces_come_and_go_under_names_of_their_own() {
        let mut project = project();
        assert_eq!(PieceEdit::Duplicate.make(&mut project, 0), 1);
        assert_eq!(PieceEdit::Add.make(&mut project, 1), 2);
        assert_eq!(names(&project), ["Ball", "Ball 2", "Ball 3"]);
        assert_eq!(PieceEdit::Name("Cap".into()).make(&mut project, 1), 1);
        assert_eq!(PieceEdit::Remove.make(&mut project, 2), 1);
        assert_eq!(names(&project), ["Ball", "Cap"]);
        assert_eq!(PieceEdit::Copies(0).make(&mut project, 1), 1);
        assert_eq!(project.pieces[1].copies, 1);
        assert!(project.validate().is_ok());
    }

    #[test]
    fn the_last_piece_stays_and_there_is_an_end_of_pieces() {
        let mut project = project();
        assert_eq!(PieceEdit::Remove.make(&mut project, 0), 0);
        assert_eq!(project.pieces.len(), 1);
        for _ in 0..MOST_PIECES + 5 {
            PieceEdit::Duplicate.make(&mut project, 0);
        }
        assert_eq!(project.pieces.len(), MOST_PIECES);
        assert!(project.validate().is_ok());
    }
}
