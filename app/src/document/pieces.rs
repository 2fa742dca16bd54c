//! Changes of the list of pieces: which there are, what they are called, how many are made.

use plumpline_core::piece::MOST_COPIES;
use plumpline_core::starter::Starter;
use plumpline_core::{Piece, PieceId, Project};

use super::first::usual;

/// Most pieces a project may have.
pub const MOST_PIECES: usize = 200;

/// A change of the list of pieces.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceEdit {
    /// A starter at its usual size after the selected piece, at its gauge.
    Add(Starter),
    /// This piece, made elsewhere, after the selected one.
    Bring(Box<Piece>),
    /// Another piece just like the selected one, to be changed.
    Duplicate,
    /// No longer this piece; the last one stays.
    Remove,
    /// Another name for the selected piece.
    Name(String),
    /// How many of the selected piece are made.
    Copies(u32),
    /// The selected piece one place earlier in the list, or later.
    Move(ListWay),
}

/// Which way in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ListWay {
    /// Towards its beginning.
    Earlier,
    /// Towards its end.
    Later,
}

impl PieceEdit {
    /// Makes the change; `id` is the selected piece. Returns the piece to select.
    pub(crate) fn make(self, project: &mut Project, id: PieceId) -> PieceId {
        let Some(index) = project.position(id) else { return id };
        let pieces = &mut project.pieces;
        let full = pieces.len() >= MOST_PIECES;
        match self {
            Self::Add(_) | Self::Bring(_) | Self::Duplicate if full => {}
            Self::Bring(piece) => {
                let name = free_name(pieces, &piece.name);
                return project.insert(index + 1, Piece { name, ..*piece });
            }
            Self::Add(starter) => {
                let now = &pieces[index];
                let mut piece = usual(starter, now.gauge);
                (piece.firmness, piece.habits) = (now.firmness, now.habits);
                (piece.working, piece.hand) = (now.working, now.hand);
                piece.name = free_name(pieces, &piece.name);
                return project.insert(index + 1, piece);
            }
            Self::Duplicate => {
                let name = free_name(pieces, &pieces[index].name);
                let another = Piece { name, ..pieces[index].clone() };
                return project.insert(index + 1, another);
            }
            Self::Remove if pieces.len() > 1 => {
                project.remove(id);
                return project.pieces[index.min(project.pieces.len() - 1)].id;
            }
            Self::Remove => {}
            Self::Name(name) => pieces[index].name = name,
            Self::Move(ListWay::Earlier) if index > 0 => pieces.swap(index, index - 1),
            Self::Move(ListWay::Later) if index + 1 < pieces.len() => {
                pieces.swap(index, index + 1);
            }
            Self::Move(_) => {}
            Self::Copies(copies) => pieces[index].copies = copies.clamp(1, MOST_COPIES),
        }
        id
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
        let [first, second, third] = [0, 1, 2].map(PieceId::new);
        assert_eq!(PieceEdit::Duplicate.make(&mut project, first), second);
        assert_eq!(PieceEdit::Add(Starter::Ball).make(&mut project, first), third);
        assert_eq!(names(&project), ["Ball", "Ball 3", "Ball 2"]);
        assert_eq!(PieceEdit::Name("Cap".into()).make(&mut project, second), second);
        assert_eq!(PieceEdit::Remove.make(&mut project, third), second);
        assert_eq!(names(&project), ["Ball", "Cap"]);
        assert_eq!(PieceEdit::Copies(0).make(&mut project, second), second);
        assert_eq!(project.pieces[1].copies, 1);
        assert!(project.validate().is_ok());
    }

    #[test]
    fn every_starter_can_be_added_and_pieces_change_places() {
        let (mut project, first) = (project(), PieceId::new(0));
        for starter in Starter::ALL {
            PieceEdit::Add(starter).make(&mut project, first);
        }
        assert_eq!(names(&project)[..3], ["Ball", "Float", "Dish"]);
        assert!(project.validate().is_ok());
        let way = |project: &mut Project, way| PieceEdit::Move(way).make(project, first);
        assert_eq!(way(&mut project, ListWay::Earlier), first, "it is the first");
        assert_eq!(names(&project)[0], "Ball");
        way(&mut project, ListWay::Later);
        assert_eq!(names(&project)[..2], ["Float", "Ball"]);
        way(&mut project, ListWay::Earlier);
        assert_eq!(names(&project)[..2], ["Ball", "Float"]);
    }

    #[test]
    fn the_last_piece_stays_and_there_is_an_end_of_pieces() {
        let (mut project, only) = (project(), PieceId::default());
        assert_eq!(PieceEdit::Remove.make(&mut project, only), only);
        assert_eq!(project.pieces.len(), 1);
        for _ in 0..MOST_PIECES + 5 {
            PieceEdit::Duplicate.make(&mut project, only);
        }
        assert_eq!(project.pieces.len(), MOST_PIECES);
        assert!(project.validate().is_ok());
    }
}
