//! Zoom and pan: the wheel or a pinch zooms about the pointer, the middle button or the
//! space bar drags the ground. What is looked at is never saved and never undone.

use egui::{CursorIcon, Key, Popup, Rect, Response, Ui, pos2, vec2};
use plumpline_core::piece::Picture;

use super::ground::Ground;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::view::look::Look;

/// Points of scroll that zoom by a factor of e.
const SCROLL: f32 = 320.0;
/// Factor of one press of + or −.
const STEP: f32 = 1.25;
/// Side of a control in a corner, and the space it keeps from its neighbours and the edge.
const SIDE: f32 = 26.0;
const APART: f32 = 6.0;

/// The ground as the hand has zoomed and panned it, and whether the hand is on the ground
/// itself, so that nothing that lies on it may be taken.
pub(super) fn read(
    ui: &Ui,
    bench: &Bench<'_>,
    board: &Response,
    ground: Ground,
) -> (Ground, bool) {
    let rect = ground.rect;
    let typing = ui.ctx().text_edit_focused() || egui::Popup::is_any_open(ui.ctx());
    let (space, middle, primary, origin, delta) = ui.input(|i| {
        let p = &i.pointer;
        let space = i.key_down(Key::Space);
        (space, p.middle_down(), p.primary_down(), p.press_origin(), p.delta())
    });
    let over = ui.rect_contains_pointer(rect);
    let ours = over || board.dragged();
    let roams = !typing && !bench.view.is_dragging() && ours && (space || middle);
    let pulls = roams && (middle || primary) && origin.is_some_and(|p| rect.contains(p));
    if roams {
        ui.set_cursor_icon(if pulls { CursorIcon::Grabbing } else { CursorIcon::Grab });
    }
    let mut ground = ground;
    if pulls && delta != egui::Vec2::ZERO {
        ground = ground.panned(delta);
    }
    let pointer = ui.input(|i| i.pointer.hover_pos());
    if let (true, false, Some(about)) = (over, bench.view.is_dragging(), pointer) {
        let scroll = ui.input(|i| i.smooth_scroll_delta().y);
        let factor = ui.input(egui::InputState::zoom_delta) * (scroll / SCROLL).exp();
        if (factor - 1.0).abs() > 1e-4 {
            ground = ground.zoomed(factor, about);
        }
        // What is under the board stays where it is.
        ui.input_mut(|i| i.smooth_scroll_delta = egui::Vec2::ZERO);
    }
    (ground, roams)
}

/// Places of the controls in the lower corners: the left ones, then the right ones.
fn places(board: Rect) -> ([Rect; 3], [Rect; 4]) {
    let y = board.bottom() - APART - SIDE;
    let at = |x: f32| Rect::from_min_size(pos2(x, y), vec2(SIDE, SIDE));
    let left = |i: usize| at(board.left() + APART + i as f32 * (SIDE + APART));
    let right = |i: usize| at(board.right() - (4 - i) as f32 * (SIDE + APART));
    (std::array::from_fn(left), std::array::from_fn(right))
}

/// The space the controls take, which nothing else may cover.
pub(super) fn marks(board: Rect) -> [Rect; 2] {
    let (left, right) = places(board);
    [left[0].union(left[2]).expand(4.0), right[0].union(right[3]).expand(4.0)]
}

/// The pictures that other pieces have, each file once, with a piece that has it.
fn pictures_of_others(bench: &Bench<'_>) -> Vec<(String, Picture)> {
    let mut found: Vec<(String, Picture)> = Vec::new();
    for piece in &bench.document.project().pieces {
        let Some(picture) = &piece.picture else { continue };
        if found.iter().all(|(_, known)| known.path != picture.path) {
            found.push((piece.name.clone(), picture.clone()));
        }
    }
    found
}

/// Where several pieces are traced from one picture: that of another piece, as it lies there.
fn share(
    ui: &mut Ui,
    bench: &Bench<'_>,
    others: Vec<(String, Picture)>,
    actions: &mut Actions,
) {
    ui.set_min_width(190.0);
    for (piece, picture) in others {
        let words = say!("board-picture-of", piece = piece);
        if ui.button(words).on_hover_text(say!("board-share-does")).clicked() {
            let shown = Picture { hidden: false, ..picture };
            actions.edit(Edit::Picture(Some(shown)));
            ui.close();
        }
    }
    let command = Command::ChoosePicture;
    let item = ui
        .add_enabled(command.enabled(bench), egui::Button::new(say!("board-another-picture")));
    if item.on_hover_text(command.tooltip()).clicked() {
        actions.command(command);
        ui.close();
    }
}

/// Magnet, picture and fill on the left; smaller, larger, fit and present on the right.
pub(super) fn controls(ui: &Ui, bench: &Bench<'_>, ground: &Ground, actions: &mut Actions) {
    let (left, right) = places(ground.rect);
    let on = Some(bench.view.board.magnet);
    let magnet = Command::ToggleMagnet;
    let held =
        controls::toggle(ui, left[0], ButtonFace::Icon(Icon::Magnet), magnet.text(), true, on);
    if held.on_hover_text(bench.hint(magnet)).clicked() {
        actions.command(magnet);
    }
    let has = bench.document.piece().picture.is_some();
    let on = has.then_some(bench.view.board.picture);
    let held = controls::toggle(
        ui,
        left[1],
        ButtonFace::Icon(Icon::Picture),
        say!("board-picture"),
        true,
        on,
    );
    if bench.picture.error().is_some() {
        icons::warning(
            ui.painter(),
            left[1].right_top() + vec2(-3.0, 2.0),
            12.0,
            bench.t.warning,
        );
    }
    let others = if has { Vec::new() } else { pictures_of_others(bench) };
    let hint = match (has, bench.picture.error()) {
        (_, Some(error)) => error.to_owned(),
        (true, None) => say!("board-select-the-picture-to-move-and-scale").to_owned(),
        (false, None) => bench.hint(Command::ChoosePicture),
    };
    if !others.is_empty() {
        Popup::menu(&held).show(|ui| share(ui, bench, others, actions));
    } else if held.clicked() {
        match has {
            true => actions.look(Look::Picture(!bench.view.board.picture)),
            false => actions.command(Command::ChoosePicture),
        }
    }
    held.on_hover_text(hint);
    if has {
        let bare = bench.view.board.bare;
        let face = ButtonFace::Icon(Icon::Fill);
        let held = controls::toggle(ui, left[2], face, say!("board-fill"), true, Some(!bare));
        let hint = say!("board-fill-does");
        if held.on_hover_text(hint).clicked() {
            actions.look(Look::Bare(!bare));
        }
    }
    let middle = ground.rect.center();
    for (place, icon, name, factor) in [
        (right[0], Icon::Less, say!("board-zoom-out"), 1.0 / STEP),
        (right[1], Icon::More, say!("board-zoom-in"), STEP),
    ] {
        let pressed = controls::button(ui, place, ButtonFace::Icon(icon), name, true);
        if pressed
            .on_hover_text(say!("board-name-the-wheel-does-this-too", name = name))
            .clicked()
        {
            actions.look(Look::Lens(Some(ground.zoomed(factor, middle).lens())));
        }
    }
    for (place, icon, command) in
        [(right[2], Icon::Fit, Command::FitView), (right[3], Icon::Screen, Command::Present)]
    {
        let face = ButtonFace::Icon(icon);
        let pressed = controls::button(ui, place, face, command.text(), command.enabled(bench));
        if pressed.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
    }
}
