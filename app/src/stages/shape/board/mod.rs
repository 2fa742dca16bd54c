//! The outline board: the wanted line with its knots over the forecast body, to scale.

mod band;
mod body;
mod dimensions;
mod ghost;
mod ground;
mod hands;
pub(crate) mod holds;
mod knots;
mod links;
mod menus;
mod misfit;
mod navigate;
mod neck;
mod picture;
mod picture_card;
mod readout;
mod snap;
mod typed;
mod wanted;
mod whole;
mod zones;

pub use ground::Ground;
pub use hands::{BoardHand, hands};

use egui::{Align2, Popup, Rect, Stroke, StrokeKind, Ui, pos2, vec2};

use super::bars;
use super::layout::ShapeLayout;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::{paint, type_faces};

/// Draws the board, and the lines from it to the bars.
pub fn paint(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &ShapeLayout,
    hand: &BoardHand,
    bars: &bars::BarsHand,
    actions: &mut Actions,
) {
    let Some(plan) = bench.plan else { return };
    heading(ui, bench, layout.heading, actions);
    let ground = &hand.ground;
    ground::paint(&ui.painter_at(ground.rect), bench.t, ground);
    // A dragged knot may leave the board for as long as it is held.
    let reach = match ground.lens().by_hand {
        true => ground.rect,
        false => {
            let across = if bench.view.prefs.mirrored {
                layout.bars.right()..=layout.gauge.left() - 2.0
            } else {
                layout.gauge.right() + 2.0..=layout.bars.left()
            };
            Rect::from_x_y_ranges(across, layout.main.y_range().shrink(2.0))
        }
    };
    let painter = ui.painter_at(reach);
    let across = ui.painter_at(layout.main);
    links::fan(&across, bench, plan, ground, bars);
    picture::paint(&ui.painter_at(ground.rect), bench, ground);
    let mut body_painter = painter.clone();
    if picture::seen(bench).is_some() {
        body_painter.set_opacity(picture::BODY_OVER);
    }
    match bench.view.board.bare && picture::seen(bench).is_some() {
        true => body::edge(&painter, bench, plan, ground),
        false => body::paint(&body_painter, bench, plan, ground),
    }
    if bench.error.is_none() {
        zones::hatch(&painter, bench, plan, ground);
        misfit::hatch(&painter, bench, plan, ground);
    }
    body::current_round(&painter, bench, plan, ground);
    holds::paint(&painter, bench, ground);
    ghost::paint(&painter, bench, ground);
    snap::paint(&ui.painter_at(ground.rect), bench.t, ground, &hand.guides);
    wanted::paint(&painter, bench, ground, hand);
    // While the picture is selected nothing stands in the way of it.
    let tracing = bench.view.board.picture;
    match (tracing, bench.view.is_dragging()) {
        (true, _) => {}
        (false, true) => {
            dimensions::paint_still(&painter, bench, plan, ground);
            neck::paint_still(&painter, bench, plan, ground);
        }
        (false, false) => {
            dimensions::show(ui, bench, plan, ground, actions);
            neck::show(ui, bench, plan, ground, actions);
        }
    }
    if bench.error.is_none() && !tracing {
        let callout = misfit::callout(&painter, bench, plan, ground);
        zones::sizes(&painter, bench, plan, ground, callout);
    }
    links::thread(&across, bench, plan, ground, bars);
    if tracing {
        picture::show_ruler(ui, bench, ground, actions);
    } else {
        whole::paint(&ui.painter_at(ground.rect), bench, ground, hand.handle);
        match bench.view.is_dragging() {
            // The frame and what it takes say enough.
            _ if bench.view.board.band => {}
            true => readout::paint_still(&painter, bench, ground),
            false => readout::show(ui, bench, ground, actions),
        }
    }
    if let Some(frame) = hand.band {
        band::paint(&ui.painter_at(ground.rect), bench.t, frame);
    }
    navigate::controls(ui, bench, ground, actions);
    picture_card::show(ui, bench, layout.main, ground, actions);
    if hand.focused {
        paint::focus_ring(&across, ground.rect.shrink(3.0), 6.0, bench.t);
    }
    trouble(ui, bench, ground);
}

/// Draws the board without bars beside it, presented: what names and numbers there are can be
/// hidden.
pub fn paint_alone(ui: &mut Ui, bench: &Bench<'_>, hand: &BoardHand, actions: &mut Actions) {
    let Some(plan) = bench.plan else { return paint_bare(ui, bench, hand) };
    let ground = &hand.ground;
    let painter = ui.painter_at(ground.rect);
    ground::paint(&painter, bench.t, ground);
    body::paint(&painter, bench, plan, ground);
    if bench.error.is_none() {
        misfit::hatch(&painter, bench, plan, ground);
    }
    body::current_round(&painter, bench, plan, ground);
    holds::paint(&painter, bench, ground);
    ghost::paint(&painter, bench, ground);
    snap::paint(&painter, bench.t, ground, &hand.guides);
    wanted::paint(&painter, bench, ground, hand);
    match (bench.view.present.hides(), bench.view.is_dragging()) {
        (true, _) => {}
        (false, true) => {
            dimensions::paint_still(&painter, bench, plan, ground);
            neck::paint_still(&painter, bench, plan, ground);
            readout::paint_still(&painter, bench, ground);
        }
        (false, false) => {
            dimensions::show(ui, bench, plan, ground, actions);
            neck::show(ui, bench, plan, ground, actions);
            readout::show(ui, bench, ground, actions);
        }
    }
    whole::paint(&painter, bench, ground, hand.handle);
    if let Some(frame) = hand.band {
        band::paint(&painter, bench.t, frame);
    }
    if hand.focused {
        paint::focus_ring(&painter, ground.rect.shrink(3.0), 6.0, bench.t);
    }
    trouble(ui, bench, ground);
}

/// Draws the board of a piece that never had a plan: the line, and why.
pub fn paint_bare(ui: &Ui, bench: &Bench<'_>, hand: &BoardHand) {
    let painter = ui.painter_at(hand.ground.rect);
    ground::paint(&painter, bench.t, &hand.ground);
    holds::paint(&painter, bench, &hand.ground);
    wanted::paint(&painter, bench, &hand.ground, hand);
    trouble(ui, bench, &hand.ground);
}

fn heading(ui: &Ui, bench: &Bench<'_>, place: Rect, actions: &mut Actions) {
    let several = bench.view.knots().len();
    let hint = match bench.view.knot {
        _ if bench.view.board.picture => String::new(),
        Some(_) if several > 1 => say!("board-several-knots-selected", several = several),
        Some(knot) => say!("board-knot-knot-selected", knot = knot + 1),
        None => say!("board-drag-a-knot-the-rounds-follow").into(),
    };
    if bench.view.knot.is_some() && !bench.view.is_dragging() {
        knot_buttons(ui, bench, place, actions);
    }
    paint::title(
        ui.painter(),
        place.left_top() + vec2(0.0, 20.0),
        say!("group-outline-board"),
        &hint,
        bench.t,
    );
}

/// What can be done with the selected knot, as buttons over the board.
fn knot_buttons(ui: &Ui, bench: &Bench<'_>, heading: Rect, actions: &mut Actions) {
    let knots = &bench.document.piece().outline.knots;
    let Some(index) = bench.view.knot else { return };
    let corner = knots.get(index).map(|k| k.corner);
    let mut right = heading.right();
    for (command, on) in [(Command::RemoveKnot, None), (Command::ToggleCorner, corner)] {
        let words = if on.is_some() { say!("command-corner") } else { say!("board-remove") };
        let width = controls::words_width(ui, words);
        let place =
            Rect::from_min_size(pos2(right - width, heading.top() + 7.0), vec2(width, 26.0));
        let enabled = command.enabled(bench);
        let face = ButtonFace::Words(words);
        let button = controls::toggle(ui, place, face, command.text(), enabled, on);
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
        right = place.left() - 8.0;
    }
    if bench.view.knots().len() > 1 {
        return;
    }
    let width = controls::words_width(ui, say!("board-hold")) + 12.0;
    let place =
        Rect::from_min_size(pos2(right - width, heading.top() + 7.0), vec2(width, 26.0));
    let face = ButtonFace::WordsThen(say!("board-hold"), Icon::Down);
    let button = controls::button(ui, place, face, say!("board-what-holds-this-knot"), true);
    Popup::menu(&button).show(|ui| {
        ui.set_min_width(190.0);
        menus::knot_lines(ui, bench, index, actions);
    });
    button.on_hover_text(say!("board-a-closing-thread-a-seam-or-a-card"));
}

/// The line that says why there is no newer plan.
fn trouble(ui: &Ui, bench: &Bench<'_>, ground: &Ground) {
    let Some(error) = bench.error else { return };
    let (t, board) = (bench.t, ground.rect);
    let error = misfit::capital(error);
    let font = type_faces::regular(type_faces::BODY);
    let words = say!("board-error-the-rounds-shown-are-the-last", error = error);
    let galley = ui.painter().layout(words, font, t.ink, board.width() - 72.0);
    let size = vec2(board.width() - 16.0, galley.size().y + 18.0);
    // Where it hides fewest knots: they are what mends the trouble.
    let foot = board.center_bottom() - vec2(0.0, 8.0);
    let head = board.center_top() + vec2(0.0, 8.0);
    let places = [
        Align2::CENTER_BOTTOM.anchor_size(foot, size),
        Align2::CENTER_TOP.anchor_size(head, size),
    ];
    let knots = &bench.document.piece().outline.knots;
    let hidden = |rect: &Rect| {
        let under = |k: &&plumpline_core::Knot| rect.contains(ground.at(k.place()));
        knots.iter().filter(under).count()
    };
    let [below, above] = places;
    let rect = if hidden(&below) <= hidden(&above) { below } else { above };
    let painter = ui.painter();
    painter.rect(rect, 6.0, t.warn_wash, Stroke::new(1.3, t.warning), StrokeKind::Inside);
    icons::warning(painter, rect.left_center() + vec2(22.0, 0.0), 15.0, t.warning);
    painter.galley(rect.left_top() + vec2(42.0, 9.0), galley, t.ink);
}
