//! How the Shape stage is divided.

use egui::{Rect, pos2, vec2};

use super::{body, card, figures};
use crate::kit::divide::{Divided, mirrored};
use crate::kit::tokens::{GAP, NARROW, PAD};
use crate::view::BoardFace;

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub struct ShapeLayout {
    /// The sheet of paper that holds board and bars.
    pub main: Rect,
    /// Figures, and the card of notes, rules and simplicity.
    pub side: SideColumn,
    /// The bend strip.
    pub bend: Rect,
    /// The gauge card.
    pub gauge: Rect,
    /// The outline board.
    pub board: Rect,
    /// The round bars, their heading included.
    pub bars: Rect,
    /// The heading over gauge card and board.
    pub heading: Rect,
}

/// Figures and the card: a column, or one line where the window is narrow.
#[derive(Debug, Clone, Copy)]
pub enum SideColumn {
    /// Side by side with the main part.
    Column {
        /// The figures.
        figures: Rect,
        /// Notes, rules and simplicity.
        card: Rect,
    },
    /// Side by side with the main part, the body on top.
    Body {
        /// The body.
        body: Rect,
        /// Figures, notes, rules and simplicity.
        card: Rect,
    },
    /// One line below it.
    Line(Rect),
}

/// Height of the bend strip.
const BEND: f32 = 132.0;
/// Width of the gauge card.
const GAUGE: f32 = 136.0;
/// Height of a panel's heading.
const HEADING: f32 = 40.0;
/// Height of the folded figures.
const FOLDED: f32 = 44.0;
/// Least height in which the body is worth a panel of its own; lower, it shares the board.
const BODY: f32 = 240.0;
/// Width of the fan of lines between board and bars.
const FAN: f32 = 34.0;

/// Divides `room`, the stage's part of the window; `yarns` is how many yarns the figures list.
/// With the body as the board's `face`, the column beside it needs no room for one.
pub fn layout(window: Rect, room: Rect, yarns: usize, face: BoardFace) -> ShapeLayout {
    let bend_height = if window.height() < 800.0 { 112.0 } else { BEND };
    let Divided { main: rest, side: bend } = Divided::above(room, bend_height);
    let (side, main) = if window.width() < NARROW {
        let Divided { main, side: line } = Divided::above(rest, FOLDED);
        (SideColumn::Line(line), main)
    } else {
        let width = if window.width() < 1400.0 {
            300.0
        } else {
            (0.18 * window.width()).clamp(344.0, 620.0)
        };
        let Divided { main, side: column } = Divided::beside(rest, width);
        (column_of(column, yarns, face), main)
    };
    let below = Rect::from_min_max(
        pos2(main.left() + GAP, main.top() + HEADING),
        main.max - vec2(PAD, 10.0),
    );
    let bars_width = (0.455 * below.width()).clamp(432.0, 640.0);
    let bars = Rect::from_min_max(pos2(below.right() - bars_width, main.top()), below.max);
    let gauge = Rect::from_min_max(below.min, pos2(below.left() + GAUGE, below.bottom()));
    let board = Rect::from_min_max(
        pos2(gauge.right() + GAP, below.top()),
        pos2(bars.left() - FAN, below.bottom()),
    );
    let heading = Rect::from_min_max(
        pos2(main.left() + PAD, main.top()),
        pos2(board.right(), main.top() + HEADING),
    );
    ShapeLayout { main, side, bend, gauge, board, bars, heading }
}

/// The column beside the board: the body over the card where there is room for it, else the
/// figures.
fn column_of(column: Rect, yarns: usize, face: BoardFace) -> SideColumn {
    let left = column.height() - GAP - card::height(yarns);
    if left >= BODY && face == BoardFace::Outline {
        let height = left.min(1.2 * column.width());
        let (body, card) = column.split_top_bottom_at_y(column.top() + height);
        SideColumn::Body { body, card: card.with_min_y(card.top() + GAP) }
    } else {
        let height = figures::height(yarns, column.height());
        let (figures, card) = column.split_top_bottom_at_y(column.top() + height);
        SideColumn::Column { figures, card: card.with_min_y(card.top() + GAP) }
    }
}

impl ShapeLayout {
    /// The same with left and right changed in `window`, for a board on the right.
    #[must_use]
    pub fn mirrored(self, window: Rect) -> Self {
        let over = |rect: Rect| mirrored(rect, window);
        let side = match self.side {
            SideColumn::Column { figures, card } => {
                SideColumn::Column { figures: over(figures), card: over(card) }
            }
            SideColumn::Body { body, card } => {
                SideColumn::Body { body: over(body), card: over(card) }
            }
            SideColumn::Line(line) => SideColumn::Line(over(line)),
        };
        Self {
            main: over(self.main),
            side,
            bend: over(self.bend),
            gauge: over(self.gauge),
            board: over(self.board),
            bars: over(self.bars),
            heading: over(self.heading),
        }
    }

    /// Where the body stands, if it is in sight with `face` on a shared board.
    pub fn body_field(&self, face: BoardFace) -> Option<Rect> {
        match self.side {
            SideColumn::Body { body, .. } => Some(body::field(body)),
            _ => (face == BoardFace::Body).then_some(self.board),
        }
    }

    /// Whether the body has a panel of its own.
    pub fn has_body(&self) -> bool {
        matches!(self.side, SideColumn::Body { .. })
    }
}
