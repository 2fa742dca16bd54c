//! How the window is divided, and what is drawn where.

mod bend_label;
pub mod bend_strip;
pub mod card;
mod ease;
mod ease_plot;
pub mod figures;
pub mod foot;
pub(crate) mod form;
pub mod gauge_card;
pub mod key;
mod more_card;
pub mod notes;
pub mod notice;
mod recent;
mod rules;
pub mod sheet;
pub mod start;
mod steps;
pub mod top_strip;
pub mod yarn_card;

use egui::{Rect, Ui, pos2, vec2};

use crate::bars;
use crate::board;
use crate::studio::action::Actions;
use crate::studio::bench::Bench;
use crate::studio::view::{Lens, Stage};
use crate::ui_kit::paint;
use crate::ui_kit::tokens::{GAP, NARROW, PAD, STRIP};

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub struct Layout {
    /// The top strip.
    pub strip: Rect,
    /// The sheet of paper that holds board and bars, or the pattern.
    pub main: Rect,
    /// Figures, and the card of notes, rules and ease.
    pub side: Side,
    /// The bend strip.
    pub bend: Rect,
    /// The gauge card.
    pub gauge: Rect,
    /// The outline board.
    pub board: Rect,
    /// The round bars, their heading included.
    pub bars: Rect,
}

/// Figures and the card: a column, or one line where the window is narrow.
#[derive(Debug, Clone, Copy)]
pub enum Side {
    /// Side by side with the main part.
    Column {
        /// The figures.
        figures: Rect,
        /// Notes, rules and ease.
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
/// Width of the fan of lines between board and bars.
const FAN: f32 = 34.0;

/// Divides the window; `yarns` is how many yarns the figures list.
pub fn layout(window: Rect, stage: Stage, yarns: usize) -> Layout {
    let strip = Rect::from_min_size(window.min, vec2(window.width(), STRIP));
    // The panel's lip hangs three points below it.
    let inner = Rect::from_min_max(
        pos2(window.left() + GAP, strip.bottom() + 8.0),
        window.max - vec2(GAP, GAP),
    );
    let bend_height = if window.height() < 800.0 { 112.0 } else { BEND };
    let (bend, rest) = match stage {
        Stage::Shape => split_bottom(inner, bend_height),
        Stage::Sheet => (Rect::NOTHING, inner),
    };
    let (side, main) = if window.width() < NARROW {
        let (line, main) = split_bottom(rest, FOLDED);
        (Side::Line(line), main)
    } else {
        let width = if window.width() < 1400.0 { 300.0 } else { 344.0 };
        let (main, column) = rest.split_left_right_at_x(rest.right() - width - GAP);
        let column = column.with_min_x(column.left() + GAP);
        let figures_height = figures::height(yarns, column.height());
        let (figures, card) = column.split_top_bottom_at_y(column.top() + figures_height);
        let card = card.with_min_y(card.top() + GAP);
        (Side::Column { figures, card }, main)
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
    Layout { strip, main, side, bend, gauge, board, bars }
}

fn split_bottom(rect: Rect, height: f32) -> (Rect, Rect) {
    let (above, below) = rect.split_top_bottom_at_y(rect.bottom() - height);
    (below, above.with_max_y(above.bottom() - GAP))
}

/// What the hand is on, view by view, and where the views have put things.
#[derive(Debug, Clone, Default)]
pub struct Hands {
    /// The outline board.
    pub board: Option<board::Hand>,
    /// The round bars.
    pub bars: Option<bars::Hand>,
    /// The round pointed at, in whichever view.
    pub hovered: Option<u32>,
    /// How millimetres fall on the board.
    pub lens: Option<Lens>,
}

/// First half of a frame: the grounds of all panels, the controls, and what the hand does.
pub fn hands(ui: &mut Ui, bench: &Bench<'_>, layout: &Layout, actions: &mut Actions) -> Hands {
    let ground = ui.max_rect();
    ui.painter().rect_filled(ground, 0.0, bench.t.background);
    paint::panel(ui.painter(), layout.main, bench.t);
    match layout.side {
        Side::Column { figures, card } => {
            paint::panel(ui.painter(), figures, bench.t);
            paint::panel(ui.painter(), card, bench.t);
        }
        Side::Line(line) => paint::panel(ui.painter(), line, bench.t),
    }
    top_strip::show(ui, bench, layout.strip, actions);
    if bench.view.stage != Stage::Shape {
        return Hands::default();
    }
    paint::panel(ui.painter(), layout.bend, bench.t);
    let card = gauge_card::show(ui, bench, layout.gauge, actions);
    key::show(ui.painter(), bench, layout.gauge.with_min_y(card.bottom() + 16.0));
    let board = board::hands(ui, bench, layout.board, actions);
    let bars = bars::hands(ui, bench, layout.bars, actions);
    let bend = bend_strip::hands(ui, bench, layout.bend, actions);
    let hovered = board.round.or(bars.as_ref().and_then(|b| b.round)).or(bend);
    let lens = Some(board.ground.lens());
    Hands { board: Some(board), bars, hovered, lens }
}

/// Second half: the picture of the piece as it is now. Returns whether the steps of ease are
/// in sight.
pub fn picture(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &Layout,
    hands: &Hands,
    actions: &mut Actions,
) -> bool {
    if let (Some(board), Some(bars)) = (&hands.board, &hands.bars) {
        board::paint(ui, bench, layout, board, bars, actions);
        bars::paint(ui, bench, layout.bars, bars);
        bend_strip::paint(ui.painter(), bench, layout.bend);
    } else if let Some(board) = &hands.board {
        board::paint_bare(ui, bench, board);
    } else {
        sheet::show(ui, bench, layout.main, actions);
    }
    let sees_ease = match layout.side {
        Side::Column { figures, card } => {
            figures::column(ui, bench, figures, actions);
            card::show(ui, bench, card, actions)
        }
        Side::Line(line) => figures::line(ui, bench, line, actions),
    };
    notice::show(ui, bench, layout.main, actions);
    sees_ease
}
