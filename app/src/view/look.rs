//! What can be changed of what is looked at.

use super::board::Drag;
use super::lesson::LessonView;
use super::prefs::Prefs;
use super::present::Presented;
use super::sheet::SheetView;
use super::sizes::SizesView;
use super::toy::ToyView;
use super::tracing::TraceView;
use super::{BoardFace, Card, Lens, MadeBall, Over, Turned, Typing};
use plumpline_core::PieceId;
use plumpline_core::warning::WarningKind;

/// A change of what is looked at.
#[derive(Debug, Clone, PartialEq)]
pub enum Look {
    /// Takes a round, or lets it go.
    Select(Option<u32>),
    /// Takes these knots, the first one first, or lets all go.
    Knots(Vec<usize>),
    /// Something is dragged on the board, or no longer.
    Drag(Option<Drag>),
    /// A frame is drawn round knots, or no longer.
    Band(bool),
    /// Another look at the board; none fits it.
    Lens(Option<Lens>),
    /// The hand is on the picture, or on the knots again.
    Picture(bool),
    /// Fills the body over a picture, or leaves it out.
    Bare(bool),
    /// Tells a knot's place by its width, or by its radius.
    ByWidth(bool),
    /// Tells what went wrong.
    Warn(String),
    /// Tells what was done.
    Tell(String),
    /// Another view of the Sheet stage.
    Sheet(SheetView),
    /// Another view of the Sizes stage.
    Sizes(Box<SizesView>),
    /// Another view of the Assembly stage.
    Toy(Box<ToyView>),
    /// Another view of the Lesson stage.
    Lesson(Box<LessonView>),
    /// A bar is dragged (round, points a stitch), or no longer.
    DragBar(Option<(u32, f32)>),
    /// A dimension is being typed, or no longer.
    Type(Option<Typing>),
    /// Selects another piece.
    Piece(PieceId),
    /// Keeps a piece off the strip, or shows it there again.
    Hide(PieceId, bool),
    /// Clears the line for the person.
    Dismiss,
    /// Turns the card of notes, rules and simplicity to one of them.
    Card(Card),
    /// The ball that a gauge is checked by, as it was made.
    Ball(MadeBall),
    /// Turns the body.
    Turn(Turned),
    /// Puts the outline or the body on the board.
    Board(BoardFace),
    /// Presents other views, or no longer.
    Present(Presented),
    /// Shows the rounds of an answer.
    Answer(Option<usize>),
    /// These notes have been seen, by their codes.
    Read(Vec<WarningKind>),
    /// Lays a card over the window, or puts it away.
    Over(Option<Over>),
    /// Another way to trace the picture.
    Trace(Box<TraceView>),
    /// Settles something for every project.
    Prefs(Prefs),
}
