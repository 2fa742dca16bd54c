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
pub mod keys_card;
mod length_field;
mod make;
mod more_card;
pub mod notes;
pub mod notice;
mod over;
mod pieces;
pub mod proofread;
mod recent;
mod rules;
pub mod settings_card;
pub mod sheet;
mod sizes;
pub mod start;
mod steps;
pub mod top_strip;
mod words_card;
pub mod yarn_card;

use egui::scroll_area::ScrollSource;
use egui::{Rect, ScrollArea, Ui, UiBuilder, Vec2, pos2, vec2};

use crate::bars;
use crate::board;
use crate::body;
use crate::studio::action::Actions;
use crate::studio::bench::Bench;
use crate::studio::view::{BoardFace, Lens, Stage};
use crate::ui_kit::tokens::{GAP, NARROW, PAD, STRIP};
use crate::ui_kit::{controls, paint};

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
    /// The heading over gauge card and board.
    pub heading: Rect,
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
    /// Side by side with the main part, the body on top.
    Body {
        /// The body.
        body: Rect,
        /// Figures, notes, rules and ease.
        card: Rect,
    },
    /// One line below it.
    Line(Rect),
    /// What the proofreader found, side by side with the text.
    Findings(Rect),
    /// How the sheet is laid out, beside its pages.
    Layout(Rect),
    /// Companions, another yarn, a sample and a toy to match, beside the sizes or below them.
    Sizes(Rect),
    /// Nothing: the main part has the window to itself.
    Nothing,
}

/// Smallest bench on which nothing is cramped, points. In a window that is smaller, or under
/// text so large that it holds less, the bench scrolls.
pub const LEAST: Vec2 = vec2(940.0, 590.0);

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
        Stage::Sizes | Stage::Sheet | Stage::Proofread | Stage::Make => (Rect::NOTHING, inner),
    };
    let (side, main) = if stage == Stage::Make {
        (Side::Nothing, rest)
    } else if stage == Stage::Sheet {
        let (main, card) = rest.split_left_right_at_x(rest.right() - beside(window) - GAP);
        (Side::Layout(card.with_min_x(card.left() + GAP)), main)
    } else if stage == Stage::Sizes && window.width() < NARROW {
        let (card, main) = split_bottom(rest, 0.42 * rest.height());
        (Side::Sizes(card), main)
    } else if stage == Stage::Sizes {
        let width = if window.width() < 1400.0 { 320.0 } else { 372.0 };
        let (main, card) = rest.split_left_right_at_x(rest.right() - width - GAP);
        (Side::Sizes(card.with_min_x(card.left() + GAP)), main)
    } else if stage == Stage::Proofread {
        let width = (0.36 * rest.width()).clamp(330.0, 460.0);
        let (main, findings) = rest.split_left_right_at_x(rest.right() - width - GAP);
        (Side::Findings(findings.with_min_x(findings.left() + GAP)), main)
    } else if window.width() < NARROW {
        let (line, main) = split_bottom(rest, FOLDED);
        (Side::Line(line), main)
    } else {
        let width = if window.width() < 1400.0 {
            300.0
        } else {
            (0.18 * window.width()).clamp(344.0, 620.0)
        };
        let (main, column) = rest.split_left_right_at_x(rest.right() - width - GAP);
        let column = column.with_min_x(column.left() + GAP);
        let left = column.height() - GAP - card::height(yarns);
        if stage == Stage::Shape && left >= BODY {
            let height = left.min(1.2 * column.width());
            let (body, card) = column.split_top_bottom_at_y(column.top() + height);
            let card = card.with_min_y(card.top() + GAP);
            (Side::Body { body, card }, main)
        } else {
            let figures_height = figures::height(yarns, column.height());
            let (figures, card) = column.split_top_bottom_at_y(column.top() + figures_height);
            let card = card.with_min_y(card.top() + GAP);
            (Side::Column { figures, card }, main)
        }
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
    Layout { strip, main, side, bend, gauge, board, bars, heading }
}

impl Layout {
    /// The same with left and right changed in `window`, for a board on the right.
    #[must_use]
    pub fn mirrored(self, window: Rect) -> Self {
        let over = |rect: Rect| {
            if rect == Rect::NOTHING {
                return rect;
            }
            let middle = window.left() + window.right();
            Rect::from_x_y_ranges(middle - rect.right()..=middle - rect.left(), rect.y_range())
        };
        let side = match self.side {
            Side::Column { figures, card } => {
                Side::Column { figures: over(figures), card: over(card) }
            }
            Side::Body { body, card } => Side::Body { body: over(body), card: over(card) },
            Side::Line(line) => Side::Line(over(line)),
            Side::Findings(rect) => Side::Findings(over(rect)),
            Side::Layout(rect) => Side::Layout(over(rect)),
            Side::Sizes(rect) => Side::Sizes(over(rect)),
            Side::Nothing => Side::Nothing,
        };
        Self {
            strip: self.strip,
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
            Side::Body { body, .. } => Some(body::field(body)),
            _ => (face == BoardFace::Body && self.bend != Rect::NOTHING).then_some(self.board),
        }
    }
}

/// Width of the card beside the sheet.
fn beside(window: Rect) -> f32 {
    if window.width() < 1400.0 { 300.0 } else { 344.0 }
}

/// Pixels a point of paper at which the pages of the sheet are to be drawn.
pub fn page_scale(window: Rect, zoom: f32, pixels_per_point: f32) -> f32 {
    let width = window.width().max(LEAST.x) - 3.0 * GAP - beside(window);
    sheet::scale(width, zoom, pixels_per_point)
}

fn split_bottom(rect: Rect, height: f32) -> (Rect, Rect) {
    let (above, below) = rect.split_top_bottom_at_y(rect.bottom() - height);
    (below, above.with_max_y(above.bottom() - GAP))
}

/// Draws the bench in `window` by `add`: as large as the window, or as its least size, of which
/// the window then shows a part. Tab brings what it reaches into sight.
pub fn fit<R>(ui: &mut Ui, window: Rect, add: impl FnOnce(&mut Ui) -> R) -> R {
    let t = crate::ui_kit::Tokens::now(ui.ctx());
    ui.painter().rect_filled(ui.max_rect(), 0.0, t.background);
    let mut child = ui.new_child(UiBuilder::new().max_rect(window).id_salt("bench"));
    if window.width() >= LEAST.x && window.height() >= LEAST.y {
        return add(&mut child);
    }
    // A bar takes room of its own, which may be what the other direction then lacks.
    let bar = child.spacing().scroll.allocated_width();
    let low = window.height() < LEAST.y;
    let narrow = window.width() - if low { bar } else { 0.0 } < LEAST.x;
    let low = low || (narrow && window.height() - bar < LEAST.y);
    let room = window.size() - bar * vec2(f32::from(low), f32::from(narrow));
    let size = room.max(LEAST);
    // The wheel zooms the boards; beside them it scrolls.
    let by = ScrollSource { drag: egui::scroll_area::DragScroll::Never, ..ScrollSource::ALL };
    controls::scroll_colours(&mut child);
    let area =
        ScrollArea::new([narrow, low]).id_salt("bench").auto_shrink(false).scroll_source(by);
    let shown = area.show(&mut child, |ui| {
        ui.reset_style();
        let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
        let mut bench = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("scrolled"));
        let inner = add(&mut bench);
        controls::follow_focus(ui);
        inner
    });
    shown.inner
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
    paint::panel(ui.painter(), layout.main, bench.t);
    match layout.side {
        Side::Column { figures, card } => {
            paint::panel(ui.painter(), figures, bench.t);
            paint::panel(ui.painter(), card, bench.t);
        }
        Side::Body { body, card } => {
            paint::panel(ui.painter(), body, bench.t);
            paint::panel(ui.painter(), card, bench.t);
        }
        Side::Line(rect) | Side::Findings(rect) | Side::Layout(rect) | Side::Sizes(rect) => {
            paint::panel(ui.painter(), rect, bench.t)
        }
        Side::Nothing => {}
    }
    top_strip::show(ui, bench, layout.strip, actions);
    if bench.view.stage != Stage::Shape {
        return Hands::default();
    }
    paint::panel(ui.painter(), layout.bend, bench.t);
    let card = gauge_card::show(ui, bench, layout.gauge, actions);
    key::show(ui.painter(), bench, layout.gauge.with_min_y(card.bottom() + 16.0));
    let alone = matches!(layout.side, Side::Body { .. });
    let on_board = !alone && bench.view.face == BoardFace::Body;
    let board = (!on_board).then(|| board::hands(ui, bench, layout.board, actions));
    let body = layout
        .body_field(bench.view.face)
        .and_then(|field| body::hands(ui, bench, field, actions));
    let bars = bars::hands(ui, bench, layout.bars, actions);
    let bend = bend_strip::hands(ui, bench, layout.bend, actions);
    let on_bars = bars.as_ref().and_then(|b| b.round);
    let hovered = board.as_ref().and_then(|b| b.round).or(body).or(on_bars).or(bend);
    let lens = board.as_ref().map(|b| b.ground.lens());
    Hands { board, bars, hovered, lens }
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
    } else if bench.view.stage == Stage::Proofread {
        proofread::text::show(ui, bench, layout.main, actions);
    } else if bench.view.stage == Stage::Sizes {
        sizes::show(ui, bench, layout.main, actions);
    } else if bench.view.stage == Stage::Make {
        make::show(ui, bench, layout.main, actions);
    } else if bench.view.stage == Stage::Shape {
        body::on_board(ui, bench, layout, actions);
        if let Some(bars) = &hands.bars {
            bars::paint(ui, bench, layout.bars, bars);
            bend_strip::paint(ui.painter(), bench, layout.bend);
        }
    } else {
        sheet::show(ui, bench, layout.main, actions);
    }
    let alone = matches!(layout.side, Side::Body { .. });
    if bench.view.stage == Stage::Shape && !alone {
        body::switch(ui, bench, layout.board, actions);
    }
    let sees_ease = match layout.side {
        Side::Column { figures, card } => {
            figures::column(ui, bench, figures, actions);
            card::show(ui, bench, card, false, actions)
        }
        Side::Body { body, card } => {
            body::panel(ui, bench, body, actions);
            if let Some(bars) = &hands.bars {
                body::thread(ui, bench, body, bars);
            }
            card::show(ui, bench, card, true, actions)
        }
        Side::Line(line) => figures::line(ui, bench, line, actions),
        Side::Findings(rect) => {
            proofread::findings::show(ui, bench, rect, actions);
            false
        }
        Side::Layout(rect) => {
            sheet::side(ui, bench, rect, actions);
            false
        }
        Side::Sizes(rect) => {
            sizes::side(ui, bench, rect, actions);
            false
        }
        Side::Nothing => false,
    };
    let over = match bench.view.stage {
        // It would lie over the buttons that are pressed at every stitch.
        Stage::Make => make::above_the_steps(layout.main),
        _ => layout.main,
    };
    notice::show(ui, bench, over, actions);
    sees_ease
}
