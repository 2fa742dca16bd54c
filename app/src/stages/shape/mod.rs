//! The Shape stage: the outline board and the round bars, the body, the figures, and the
//! cards beside them.

mod answers_plot;
mod ball_check;
pub mod bars;
mod bend_label;
mod bend_strip;
pub mod board;
pub mod body;
mod card;
mod figures;
mod figures_line;
mod gauge_card;
mod key;
pub mod layout;
mod more_card;
mod notes;
pub mod present;
mod rules;
mod simplicity;
pub mod trace_card;
mod yarn_rows;

use egui::{Painter, Ui};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::{Tokens, paint};
use crate::view::{BoardFace, Lens};
use layout::{ShapeLayout, SideColumn};

/// What the hand is on, view by view, and where the views have put things.
#[derive(Debug, Clone, Default)]
pub struct Hands {
    /// The outline board.
    pub board: Option<board::BoardHand>,
    /// The round bars.
    pub bars: Option<bars::BarsHand>,
    /// The round pointed at, in whichever view.
    pub hovered: Option<u32>,
    /// How millimetres fall on the board.
    pub lens: Option<Lens>,
}

/// The grounds of all panels.
pub fn grounds(painter: &Painter, layout: &ShapeLayout, t: &Tokens) {
    paint::panel(painter, layout.main, t);
    match layout.side {
        SideColumn::Column { figures, card } => {
            paint::panel(painter, figures, t);
            paint::panel(painter, card, t);
        }
        SideColumn::Body { body, card } => {
            paint::panel(painter, body, t);
            paint::panel(painter, card, t);
        }
        SideColumn::Line(line) => paint::panel(painter, line, t),
    }
    paint::panel(painter, layout.bend, t);
}

/// First half of a frame: the controls, and what the hand does.
pub fn hands(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &ShapeLayout,
    actions: &mut Actions,
) -> Hands {
    let card = gauge_card::show(ui, bench, layout.gauge, actions);
    key::show(ui.painter(), bench, layout.gauge.with_min_y(card.bottom() + 16.0));
    let on_board = !layout.has_body() && bench.view.face == BoardFace::Body;
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

/// Second half: the picture of the piece as it is now. Returns whether the answers to
/// choose from are in sight.
pub fn picture(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &ShapeLayout,
    hands: &Hands,
    actions: &mut Actions,
) -> bool {
    match (&hands.board, &hands.bars) {
        (Some(board), Some(bars)) => board::paint(ui, bench, layout, board, bars, actions),
        (Some(board), None) => board::paint_bare(ui, bench, board),
        (None, _) => body::on_board(ui, bench, layout, actions),
    }
    if let Some(bars) = &hands.bars {
        bars::paint(ui, bench, layout.bars, bars);
        bend_strip::paint(ui.painter(), bench, layout.bend);
    }
    if !layout.has_body() {
        body::switch(ui, bench, layout.board, actions);
    }
    match layout.side {
        SideColumn::Column { figures, card } => {
            figures::column(ui, bench, figures, actions);
            card::show(ui, bench, card, false, actions)
        }
        SideColumn::Body { body, card } => {
            body::panel(ui, bench, body, body::BodyPlace::Panel, actions);
            if let Some(bars) = &hands.bars {
                body::thread(ui, bench, body, bars);
            }
            card::show(ui, bench, card, true, actions)
        }
        SideColumn::Line(line) => figures_line::show(ui, bench, line, actions),
    }
}
