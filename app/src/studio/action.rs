//! What panels ask for. They change nothing themselves.

use plumpline_core::pattern::Span;
use plumpline_core::piece::Picture;
use plumpline_core::project::shape::Shaped;
use plumpline_core::{Firmness, Gauge, Outline, Project, WordingChoice, Yarn};

use super::board_view::Drag;
use super::choice::Choice;
use super::command::Command;
use super::home::DeskAction;
use super::making::Make;
use super::pieces::PieceEdit;
use super::prefs::Prefs;
use super::printing::SheetView;
use super::sizing::{SizeEdit, SizesView};
use super::view::{BoardFace, Card, Dimension, Lens, Over, Turned, Typing};

/// A request from a panel.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// A command, as from a menu or a key.
    Command(Command),
    /// A change of the piece in hand.
    Edit(Edit),
    /// A gesture begins: what follows is one step.
    Begin,
    /// The gesture ends.
    Commit,
    /// Takes steps back, or again, until so many stand.
    GoToStep(usize),
    /// Something with files, recovery or the first steps.
    Desk(DeskAction),
    /// A change of what is looked at.
    Look(Look),
    /// A change of the pattern that is proofread.
    Proofread(Proofread),
    /// Something done in the Make stage.
    Make(Make),
}

/// A change of the project.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// Gives the project a title.
    Title(String),
    /// Moves knots.
    MoveKnots {
        /// Index of the one in hand.
        lead: usize,
        /// The outline with all of them moved.
        outline: Outline,
    },
    /// Adds a knot before the one that now has this index.
    AddKnot {
        /// Index it will have.
        knot: usize,
        /// Radius, mm.
        radius_mm: f64,
        /// Height, mm.
        height_mm: f64,
    },
    /// Removes a knot.
    RemoveKnot(usize),
    /// Turns a smooth knot into a corner, or back.
    ToggleCorner(usize),
    /// Opens a closed end, or closes an open one.
    ToggleEnd(usize),
    /// Holds the count of a round.
    Pin {
        /// The round.
        round: u32,
        /// Its stitches.
        count: u32,
    },
    /// Lets the count of a round go.
    Unpin(u32),
    /// Another swatch.
    Gauge(Gauge),
    /// Another firmness.
    Firmness(Firmness),
    /// Another ease.
    Ease(f64),
    /// Another name, colour or length of a yarn.
    Yarn {
        /// Index of the yarn.
        index: usize,
        /// What it is now.
        yarn: Yarn,
    },
    /// From this round on, work in this yarn.
    Band {
        /// First round.
        round: u32,
        /// Index of the yarn.
        yarn: usize,
    },
    /// Adds a yarn and works in it from this round on.
    NewYarn {
        /// First round.
        round: u32,
    },
    /// No longer changes yarn at this round.
    ClearBand(u32),
    /// Another outline.
    Outline(Outline),
    /// Another picture to trace, or none.
    Picture(Option<Picture>),
    /// Changes the outline so that a measure comes to this, mm.
    Resize(Dimension, f64),
    /// Adds pieces made of a written pattern, and takes the first in hand.
    AddPieces(Vec<Shaped>),
    /// A choice about the piece: its rules, its cloth, what holds it.
    Choice(Choice),
    /// Another text of the designer's on the sheet.
    Sheet(SheetText, String),
    /// A change of sizes, seams or cloth.
    Sizes(SizeEdit),
    /// A change of the list of pieces.
    Piece(PieceEdit),
    /// Other words for the pattern.
    Wording(WordingChoice),
}

/// A text that the designer adds to the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetText {
    /// Who designed it.
    Designer,
    /// Under which terms it may be used.
    Licence,
    /// What stands under the title.
    Notes,
    /// How the pieces are put together.
    Assembly,
}

impl SheetText {
    /// All of them, in the order of the card.
    pub const ALL: [Self; 4] = [Self::Designer, Self::Licence, Self::Notes, Self::Assembly];

    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Designer => "Designer",
            Self::Licence => "Licence line",
            Self::Notes => "Notes",
            Self::Assembly => "Putting it together",
        }
    }

    /// What to write there.
    pub const fn hint(self) -> &'static str {
        match self {
            Self::Designer => "your name",
            Self::Licence => "for your own use; do not resell the pattern",
            Self::Notes => "what it is for, how it came about",
            Self::Assembly => "what is sewn where, a paragraph each",
        }
    }

    /// Whether it may run to paragraphs.
    pub const fn is_long(self) -> bool {
        matches!(self, Self::Notes | Self::Assembly)
    }

    /// The text as the project has it.
    pub fn of(self, project: &Project) -> &str {
        match self {
            Self::Designer => &project.designer,
            Self::Licence => &project.licence,
            Self::Notes => &project.notes,
            Self::Assembly => &project.assembly,
        }
    }

    /// Puts `words` in its place.
    pub(super) fn set(self, project: &mut Project, words: String) {
        match self {
            Self::Designer => project.designer = words,
            Self::Licence => project.licence = words,
            Self::Notes => project.notes = words,
            Self::Assembly => project.assembly = words,
        }
    }
}

impl Edit {
    /// What a run of edits has in common that is undone as one: typing a title, say.
    pub fn run(&self) -> Option<(&'static str, usize)> {
        match self {
            Self::Title(_) => Some(("title", 0)),
            Self::Yarn { index, .. } => Some(("yarn", *index)),
            Self::Piece(PieceEdit::Name(_)) => Some(("piece name", 0)),
            Self::Sheet(text, _) => Some(("sheet", *text as usize)),
            Self::Sizes(SizeEdit::Change(size, _)) => Some(("size", *size)),
            Self::Sizes(SizeEdit::ChangeSeam(seam, _)) => Some(("seam", *seam)),
            // Nudges by the arrow keys; a drag is a gesture, which no run goes beyond.
            Self::MoveKnots { lead, .. } => Some(("knot", *lead)),
            _ => None,
        }
    }
}

/// A change of the pattern that is proofread.
#[derive(Debug, Clone, PartialEq)]
pub enum Proofread {
    /// Another text.
    Text(String),
    /// Terms to read it in, by their code; found out from the text if `None`.
    Terms(Option<&'static str>),
    /// Takes a finding in hand, and shows its place.
    Take(usize),
    /// The place has been shown.
    Shown,
    /// Replaces these bytes by this.
    Mend(Span, String),
}

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
    /// Tells a knot's place by its width, or by its radius.
    ByWidth(bool),
    /// Tells what went wrong.
    Warn(String),
    /// Another view of the Sheet stage.
    Sheet(SheetView),
    /// Another view of the Sizes stage.
    Sizes(Box<SizesView>),
    /// A bar is dragged (round, points a stitch), or no longer.
    DragBar(Option<(u32, f32)>),
    /// A dimension is being typed, or no longer.
    Type(Option<Typing>),
    /// Takes another piece in hand.
    Piece(usize),
    /// Clears the line for the person.
    Dismiss,
    /// Turns the card of notes, rules and ease to one of them.
    Card(Card),
    /// Turns the body.
    Turn(Turned),
    /// Puts the outline or the body on the board.
    Board(BoardFace),
    /// Shows the rounds of a step of ease.
    Step(Option<usize>),
    /// These notes have been seen, by their codes.
    Read(Vec<&'static str>),
    /// Lays a card over the window, or puts it away.
    Over(Option<Over>),
    /// Settles something for every project.
    Prefs(Prefs),
}

/// The requests of one frame, in order.
#[derive(Debug, Default)]
pub struct Actions {
    list: Vec<Action>,
}

impl Actions {
    /// Adds a request.
    pub fn push(&mut self, action: Action) {
        self.list.push(action);
    }

    /// Asks for a command.
    pub fn command(&mut self, command: Command) {
        self.push(Action::Command(command));
    }

    /// Asks for a change of the project.
    pub fn edit(&mut self, edit: Edit) {
        self.push(Action::Edit(edit));
    }

    /// Makes a choice about the piece in hand.
    pub fn choose(&mut self, choice: Choice) {
        self.edit(Edit::Choice(choice));
    }

    /// Asks for a change of what is looked at.
    pub fn look(&mut self, look: Look) {
        self.push(Action::Look(look));
    }

    /// Asks for something in the Make stage.
    pub fn make(&mut self, make: Make) {
        self.push(Action::Make(make));
    }

    /// Asks for something with files, recovery, the gauge book or the first steps.
    pub fn desk(&mut self, action: DeskAction) {
        self.push(Action::Desk(action));
    }

    /// Takes all requests out.
    pub fn take(&mut self) -> Vec<Action> {
        std::mem::take(&mut self.list)
    }
}
