//! What can be done with the picture in hand, on a card at the foot of the board.

use egui::{Rect, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::piece::Picture;

use super::ground::Ground;
use crate::studio::action::{Actions, Edit, Look};
use crate::studio::bench::Bench;
use crate::studio::command::Command;
use crate::ui_kit::controls::{self, Face};
use crate::ui_kit::icons::Icon;
use crate::ui_kit::{paint, type_faces};

/// Height of the card, and what it stands off the controls in the corners.
const HIGH: f32 = 108.0;
const FOOT: f32 = 40.0;

/// Draws the card while the picture is in hand.
pub(super) fn show(ui: &Ui, bench: &Bench<'_>, ground: &Ground, actions: &mut Actions) {
    let picture = bench.document.piece().picture.as_ref();
    let Some(picture) = picture.filter(|_| bench.view.board.picture) else { return };
    let t = bench.t;
    let board = ground.rect;
    let wide = (board.width() - 12.0).min(360.0);
    let corner = pos2(board.left() + 6.0, board.bottom() - FOOT - HIGH);
    let card = Rect::from_min_size(corner, vec2(wide, HIGH));
    // The card itself takes the hand: the picture under it is not meant.
    ui.interact(card, ui.scope_id().with("picture card"), Sense::CLICK | Sense::DRAG);
    let painter = ui.painter();
    paint::lip(painter, card, 8.0, t.edge_deep, 2.0);
    painter.rect(card, 8.0, t.panel, Stroke::new(1.0, t.control_edge), StrokeKind::Inside);
    let close = Rect::from_min_size(card.right_top() + vec2(-32.0, 6.0), vec2(26.0, 26.0));
    let done = controls::button(ui, close, Face::Icon(Icon::Close), "Let the picture go", true);
    if done.on_hover_text("Back to the knots (Esc)").clicked() {
        actions.look(Look::Picture(false));
    }
    let name = picture.path.rsplit(['/', '\\']).next().unwrap_or(&picture.path);
    let title = card.left_top() + vec2(12.0, 19.0);
    let font = type_faces::semibold(type_faces::BODY);
    paint::clipped_text(painter, title, name, font, t.ink, wide - 56.0);
    opacity(ui, bench, card, picture, actions);
    buttons(ui, card, picture, actions);
}

fn opacity(ui: &Ui, bench: &Bench<'_>, card: Rect, picture: &Picture, actions: &mut Actions) {
    let at = card.left_top() + vec2(12.0, 51.0);
    let font = type_faces::regular(type_faces::SMALL);
    let anchor = egui::Align2::LEFT_CENTER;
    ui.painter().text(at, anchor, "opacity", font, bench.t.soft_ink);
    let rect = Rect::from_min_max(
        pos2(card.left() + 62.0, at.y - 12.0),
        pos2(card.right() - 12.0, at.y + 12.0),
    );
    let (held, moved) =
        controls::slider(ui, rect, "Opacity", picture.opacity, (0.0, 1.0, 0.05));
    if held.drag_started() {
        actions.push(crate::studio::action::Action::Begin);
    }
    if let Some(opacity) = moved {
        actions.edit(Edit::Picture(Some(Picture { opacity, ..picture.clone() })));
    }
    if held.drag_stopped() {
        actions.push(crate::studio::action::Action::Commit);
    }
}

fn buttons(ui: &Ui, card: Rect, picture: &Picture, actions: &mut Actions) {
    let y = card.bottom() - 36.0;
    let mut left = card.left() + 10.0;
    let mut button = |words: &str, name: &str, on: Option<bool>, hint: &str| {
        let size = vec2(controls::words_width(ui, words) - 4.0, 26.0);
        let rect = Rect::from_min_size(pos2(left, y), size);
        left = rect.right() + 6.0;
        let held = controls::toggle(ui, rect, Face::Words(words), name, true, on);
        held.on_hover_text(hint.to_owned()).clicked()
    };
    let with = |picture: Picture| Edit::Picture(Some(picture));
    if button("Lock", "Lock the picture", Some(picture.locked), "Keep it from being moved") {
        actions.edit(with(Picture { locked: !picture.locked, ..picture.clone() }));
    }
    if button("Hide", "Hide the picture", Some(picture.hidden), "Keep it out of sight") {
        actions.edit(with(Picture { hidden: !picture.hidden, ..picture.clone() }));
    }
    let hint = "Another picture in its place";
    if button("Replace…", "Replace the picture", None, hint) {
        actions.command(Command::ChoosePicture);
    }
    let hint = "Take it off the board; its file stays";
    if button("Remove", "Remove the picture", None, hint) {
        actions.edit(Edit::Picture(None));
        actions.look(Look::Picture(false));
    }
}
