//! What is looked at: never saved with the project, never undone.

pub mod apply;
pub mod board;
pub mod ids;
pub mod lesson;
pub mod look;
pub mod prefs;
pub mod present;
pub mod sheet;
pub mod sizes;
pub mod toy;
pub mod tracing;

use std::collections::BTreeSet;

use plumpline_core::plan::ball::TradeBall;
use plumpline_core::warning::WarningKind;
use plumpline_core::{Extent, PieceId, Unit};

use crate::document::measure::{self, BoardDimension};
use board::BoardView;
use lesson::LessonView;
use prefs::Prefs;
use present::Presented;
use sheet::SheetView;
use sizes::SizesView;
use toy::ToyView;
use tracing::TraceView;

/// What the main part of the window shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stage {
    /// The outline board and the round bars.
    #[default]
    Shape,
    /// The pieces put together.
    Assembly,
    /// The sizes of the piece, and what it meets.
    Sizes,
    /// The pattern to read.
    Sheet,
    /// Why an increase bends cloth.
    Lesson,
    /// Someone's written pattern, checked.
    Proofread,
    /// The round under the hook.
    Make,
}

impl Stage {
    /// The stages, in the order of the thread they are strung on.
    pub const ALL: [Self; 7] = [
        Self::Shape,
        Self::Assembly,
        Self::Sizes,
        Self::Sheet,
        Self::Lesson,
        Self::Proofread,
        Self::Make,
    ];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Shape => say!("stage-shape"),
            Self::Assembly => say!("stage-assembly"),
            Self::Sizes => say!("stage-sizes"),
            Self::Sheet => say!("stage-sheet"),
            Self::Lesson => say!("stage-lesson"),
            Self::Proofread => say!("stage-proofread"),
            Self::Make => say!("stage-make"),
        }
    }
}

/// What stands on the board, where outline and body share it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BoardFace {
    /// The outline with its knots.
    #[default]
    Outline,
    /// The body.
    Body,
}

impl BoardFace {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Outline, Self::Body];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Outline => say!("board-outline"),
            Self::Body => say!("board-body"),
        }
    }

    /// What assistive tools read.
    pub fn name(self) -> &'static str {
        match self {
            Self::Outline => say!("board-show-outline"),
            Self::Body => say!("board-show-body"),
        }
    }
}

/// How the body is turned, and how much of it is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turned {
    /// About its axis, degrees.
    pub turn_deg: f32,
    /// From above, degrees.
    pub tilt_deg: f32,
    /// Against the size at which it fits its place.
    pub zoom: f32,
    /// Whether its front half is taken away.
    pub cutaway: bool,
    /// Whether every stitch is let go to find its own place, not only every round.
    pub let_go: bool,
}

impl Default for Turned {
    fn default() -> Self {
        let look = plumpline_core::picture::Viewpoint::default();
        Self {
            turn_deg: look.turn_deg,
            tilt_deg: look.tilt_deg,
            zoom: 1.0,
            cutaway: look.cutaway,
            let_go: false,
        }
    }
}

impl Turned {
    /// Turned and tilted by so many degrees more; never over its head.
    #[must_use]
    pub fn moved(self, turn_deg: f32, tilt_deg: f32) -> Self {
        Self {
            turn_deg: (self.turn_deg + turn_deg).rem_euclid(360.0),
            tilt_deg: (self.tilt_deg + tilt_deg).clamp(-90.0, 90.0),
            ..self
        }
    }

    /// `times` as large, within reason.
    #[must_use]
    pub fn zoomed(self, times: f32) -> Self {
        Self { zoom: (self.zoom * times).clamp(0.5, 6.0), ..self }
    }
}

/// What the card beside the sheet shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Card {
    /// Size, yarn, fit: where the body has the place of the figures.
    #[default]
    Figures,
    /// What the maker should know.
    Notes,
    /// What every round must keep to.
    Rules,
    /// The answers to choose from, and what each costs and saves.
    Simplicity,
}

impl Card {
    /// All of them, in the order of their thread.
    pub const ALL: [Self; 4] = [Self::Figures, Self::Notes, Self::Rules, Self::Simplicity];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Figures => say!("card-figures"),
            Self::Notes => say!("card-checks"),
            Self::Rules => say!("card-rules"),
            Self::Simplicity => say!("card-simplicity"),
        }
    }
}

/// A card over the window, which waits to be put away.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Over {
    /// What is settled for every project.
    Settings,
    /// Every command with its key, narrowed to what holds these words.
    Keys(String),
    /// The picture traced, to look at before its outline is taken.
    Trace,
}

/// A dimension being typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Typing {
    /// Which.
    pub dimension: BoardDimension,
    /// What stands in the field.
    pub text: String,
    /// What stood there first.
    pub was: String,
    /// The unit of a number without one.
    pub unit: Unit,
    /// Whether the field has yet to take the keyboard.
    pub fresh: bool,
}

impl Typing {
    /// What the field asks for, mm; `None` where it was left as it was found, for the number
    /// in it is a rounded one.
    pub(crate) fn entered(&self) -> Option<Result<f64, String>> {
        let read = |text: &str| measure::read(self.dimension, text, self.unit);
        let now = read(&self.text);
        let same =
            self.text.trim() == self.was.trim() || (now.is_ok() && now == read(&self.was));
        (!same).then_some(now)
    }
}

/// How millimetres fall on the outline board. Kept while something is dragged, so that the
/// ground does not move under the hand, and once a hand has chosen it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Lens {
    /// Points a millimetre.
    pub scale: f32,
    /// Height of the piece at the middle of the board, mm.
    pub middle_mm: f64,
    /// Distance from the axis at the middle of the board, mm; positive to the right.
    pub across_mm: f64,
    /// Whether it was zoomed or panned to, and so stays.
    pub by_hand: bool,
}

/// What the window shows and what is selected.
#[derive(Debug, Clone, Default)]
pub struct View {
    /// The stage.
    pub stage: Stage,
    /// Pieces that are kept off the strip.
    pub hidden: BTreeSet<PieceId>,
    /// The round a click has taken.
    pub selected: Option<u32>,
    /// The round the pointer is on, in whichever view.
    pub hovered: Option<u32>,
    /// The selected knot.
    pub knot: Option<usize>,
    /// The knot being dragged.
    pub dragged_knot: Option<usize>,
    /// The round whose bar is being dragged, and points a stitch while it is.
    pub dragged_bar: Option<(u32, f32)>,
    /// A dimension being typed.
    pub typing: Option<Typing>,
    /// How millimetres fall on the board.
    pub lens: Option<Lens>,
    /// What the outline board shows beside the selected knot.
    pub board: BoardView,
    /// Brings this round into sight in the bars.
    pub show_round: Option<u32>,
    /// What the card beside the sheet shows.
    pub card: Card,
    /// The answer whose rounds are shown, if not that in use.
    pub answer: Option<usize>,
    /// Codes of the notes that have been seen, in order.
    pub read: Vec<WarningKind>,
    /// What stands on the board.
    pub face: BoardFace,
    /// How the body is turned.
    pub turned: Turned,
    /// Whether the Shape stage is presented, and what of it.
    pub present: Presented,
    /// A line for the person: what went wrong, or what was done.
    pub notice: Option<Notice>,
    /// What the person has settled for every project.
    pub prefs: Prefs,
    /// The card that lies over the window.
    pub over: Option<Over>,
    /// What the Sheet stage shows.
    pub sheet: SheetView,
    /// What the Assembly stage shows.
    pub toy: ToyView,
    /// What the Sizes stage shows.
    pub sizes: SizesView,
    /// What the Lesson stage shows.
    pub lesson: LessonView,
    /// The ball that a gauge is checked by.
    pub ball: MadeBall,
    /// How the picture is to be traced.
    pub tracing: TraceView,
}

/// A ball that was made, and its measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MadeBall {
    /// How it was worked.
    pub ball: TradeBall,
    /// Height and width, mm; none until they are measured.
    pub size_mm: Option<Extent>,
}

impl Default for MadeBall {
    fn default() -> Self {
        Self { ball: TradeBall::usual(36), size_mm: None }
    }
}

/// A line for the person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// The line.
    pub text: String,
    /// Whether something went wrong.
    pub wrong: bool,
    /// Whether it tells of a step that can be taken back beside it.
    pub undo: bool,
}

impl View {
    /// The selected round, else the one pointed at.
    pub fn current_round(&self) -> Option<u32> {
        self.selected.or(self.hovered)
    }

    /// A round pointed at while another is selected.
    pub fn washed(&self) -> Option<u32> {
        self.hovered.filter(|&r| self.selected.is_some_and(|s| s != r))
    }

    /// Whether a round or a knot has been taken.
    pub fn holds_something(&self) -> bool {
        self.selected.is_some() || self.knot.is_some()
    }

    /// Whether a hand holds something: nothing may move by itself then.
    pub fn is_dragging(&self) -> bool {
        self.dragged_knot.is_some()
            || self.dragged_bar.is_some()
            || self.board.drag.is_some()
            || self.toy.drag.is_some()
    }

    /// The hand holds nothing any more.
    pub fn hands_off(&mut self) {
        self.dragged_knot = None;
        self.dragged_bar = None;
        self.board.drag = None;
        self.toy.drag = None;
    }

    /// The selected knots, the first one first.
    pub fn knots(&self) -> Vec<usize> {
        self.knot.into_iter().chain(self.board.also.iter().copied()).collect()
    }

    /// Selects these knots, the first as the first, and nothing else.
    pub fn select_knots(&mut self, knots: &[usize]) {
        self.knot = knots.first().copied();
        self.board.also = knots.iter().skip(1).copied().collect();
        if let Some(first) = self.knot {
            self.board.also.remove(&first);
            self.selected = None;
        }
    }

    /// Whether the Shape stage fills the window.
    pub fn presents(&self) -> bool {
        self.stage == Stage::Shape && self.present.on
    }

    /// Turns to a stage. What was done in another is old news there; what went wrong is not.
    pub fn turn_to(&mut self, stage: Stage) {
        if self.stage != stage {
            self.stage = stage;
            self.present.on = false;
            self.notice.take_if(|notice| !notice.wrong);
        }
    }

    /// Lets go of all that belongs to one piece.
    pub fn let_go(&mut self) {
        self.selected = None;
        self.hovered = None;
        self.knot = None;
        self.board.let_go();
        self.dragged_knot = None;
        self.dragged_bar = None;
        self.typing = None;
        self.answer = None;
        self.lens = None;
    }
}
