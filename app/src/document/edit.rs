//! What can be changed of the project, one step of undo each.

use plumpline_core::piece::{Accepted, Picture};
use plumpline_core::project::shape::Shaped;
use plumpline_core::{Firmness, Gauge, Outline, PieceId, Project, WordingChoice, Yarn};

use super::choice::Choice;
use super::measure::BoardDimension;
use super::pieces::PieceEdit;
use super::sizes::SizeEdit;
use super::toy::ToyEdit;

/// A change of the project.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// Gives the project a title.
    Title(String),
    /// Moves knots.
    MoveKnots {
        /// Index of the selected one.
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
    /// Another simplicity; none is the default answer.
    Simplicity(Option<f64>),
    /// Takes these counts, the answer to a simplicity.
    Answer(Accepted),
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
    /// Paints stitches of a round in a yarn, or takes paint off them.
    Paint {
        /// The piece.
        piece: PieceId,
        /// The round.
        round: u32,
        /// How many stitches it has.
        count: u32,
        /// First and last stitch, counted from 1.
        stitches: (u32, u32),
        /// Index of the yarn; one past the last is a new one. None takes paint off.
        yarn: Option<usize>,
    },
    /// Another outline.
    Outline(Outline),
    /// Another picture to trace, or none.
    Picture(Option<Picture>),
    /// Changes the outline so that a measure comes to this, mm.
    Resize(BoardDimension, f64),
    /// Adds pieces made of a written pattern, and selects the first.
    AddPieces(Vec<Shaped>),
    /// A choice about the piece: its rules, its cloth, what holds it.
    Choice(Choice),
    /// Another text of the designer's on the sheet.
    Sheet(SheetText, String),
    /// A change of sizes, seams or cloth.
    Sizes(SizeEdit),
    /// A change of the list of pieces.
    Piece(PieceEdit),
    /// A change of the toy.
    Toy(ToyEdit),
    /// Other words for the pattern.
    Wording(WordingChoice),
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
            Self::Toy(edit) => edit.run(),
            // Nudges by the arrow keys; a drag is a gesture, which no run goes beyond.
            Self::MoveKnots { lead, .. } => Some(("knot", *lead)),
            _ => None,
        }
    }
}

/// A text that the designer adds to the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetText {
    /// Who designed it.
    Designer,
    /// Under which terms it may be used.
    Licence,
    /// Which version it is, and of which day.
    Version,
    /// What stands under the title.
    Notes,
    /// How the pieces are put together.
    Assembly,
}

impl SheetText {
    /// All of them, in the order of the card.
    pub const ALL: [Self; 5] =
        [Self::Designer, Self::Version, Self::Licence, Self::Notes, Self::Assembly];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Designer => say!("entry-designer"),
            Self::Version => say!("entry-version"),
            Self::Licence => say!("entry-license-line"),
            Self::Notes => say!("entry-notes"),
            Self::Assembly => say!("entry-assembly"),
        }
    }

    /// What to write there.
    pub fn hint(self) -> &'static str {
        match self {
            Self::Designer => say!("entry-your-name"),
            Self::Version => say!("entry-2-28-november-2026"),
            Self::Licence => say!("entry-for-your-own-use-do-not-resell-the"),
            Self::Notes => say!("entry-what-it-is-for-how-it-came-to-be"),
            Self::Assembly => say!("entry-what-is-sewn-where-one-paragraph-for"),
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
            Self::Version => &project.version,
            Self::Licence => &project.licence,
            Self::Notes => &project.notes,
            Self::Assembly => &project.assembly,
        }
    }

    /// Puts `words` in its place.
    pub(crate) fn set(self, project: &mut Project, words: String) {
        match self {
            Self::Designer => project.designer = words,
            Self::Version => project.version = words,
            Self::Licence => project.licence = words,
            Self::Notes => project.notes = words,
            Self::Assembly => project.assembly = words,
        }
    }
}
