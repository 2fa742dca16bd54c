//! The picture that is traced, under everything: moved and scaled while it is selected.

use egui::{
    CursorIcon, Painter, PointerButton, Pos2, Rect, Response, Role, Sense, Stroke, Ui,
    WidgetInfo, pos2, vec2,
};
use plumpline_core::outline::Rz;
use plumpline_core::piece::Picture;

use super::ground::{self, Ground};
use super::typed::{self, TypedNumber};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::document::measure::BoardDimension;
use crate::document::shaping::whole;
use crate::kit::tokens::HIT;
use crate::kit::{Tokens, type_faces};
use crate::view::board::Drag;
use crate::view::ids;
use crate::view::look::Look;

/// How much of the body is left over a picture, so that its outline shows through.
pub(super) const BODY_OVER: f32 = 0.45;

/// Where the picture lies on the board.
fn place(ground: &Ground, picture: &Picture, aspect: f64) -> Rect {
    let corner = |share| at(ground, picture, share, aspect);
    Rect::from_two_pos(corner((0.0, 0.0)), corner((1.0, 1.0)))
}

fn at(ground: &Ground, picture: &Picture, share: (f64, f64), aspect: f64) -> Pos2 {
    let (across, along) = picture.place(share, aspect);
    ground.at(Rz::new(across, along))
}

/// The picture of the selected piece and its height over its width, where it is to be seen.
pub(super) fn seen<'a>(bench: &'a Bench<'_>) -> Option<(&'a Picture, f64)> {
    let picture = bench.document.piece().picture.as_ref().filter(|p| !p.hidden)?;
    Some((picture, bench.picture.aspect()?))
}

/// Draws the picture.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, ground: &Ground) {
    if let (Some((picture, aspect)), Some(texture)) = (seen(bench), bench.picture.texture()) {
        let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        let tint = egui::Color32::WHITE.gamma_multiply(picture.opacity as f32);
        painter.image(texture.id(), place(ground, picture, aspect), whole, tint);
    }
}

/// Reads the hand on the picture: it moves as a whole, or by an end of its known length.
pub(super) fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    board: &Response,
    actions: &mut Actions,
) {
    let Some((picture, aspect)) = seen(bench).filter(|(p, _)| !p.locked) else { return };
    let base = match &bench.view.board.drag {
        Some(Drag::Picture { base, .. }) => base,
        _ => picture,
    };
    let scale = f64::from(ground.scale().max(1e-6));
    let over = board.hover_pos().is_some_and(|p| place(ground, picture, aspect).contains(p));
    if over {
        ui.set_cursor_icon(CursorIcon::Move);
    }
    drag(board, None, actions, picture, |moved| Picture {
        across_mm: whole(base.across_mm + f64::from(moved.x) / scale),
        along_mm: whole(base.along_mm + f64::from(moved.y) / scale),
        ..base.clone()
    });
    for end in [0, 1] {
        let spot = at(ground, picture, picture.ruler[end], aspect);
        let hit = Rect::from_center_size(spot, vec2(HIT, HIT));
        let id = ids::board_id().with(("known length", end));
        let held = ui.interact(hit, id, Sense::DRAG);
        held.widget_info(|| {
            WidgetInfo::labeled(
                Role::Slider,
                true,
                say!("board-known-length-end-end", end = end + 1),
            )
        });
        if held.hovered() || held.dragged() {
            ui.set_cursor_icon(CursorIcon::Crosshair);
        }
        drag(&held, Some(end), actions, picture, |moved| {
            let (across, along) = base.place(base.ruler[end], aspect);
            let to = (across + f64::from(moved.x) / scale, along + f64::from(moved.y) / scale);
            let mut picture = base.clone();
            picture.ruler[end] = base.share(to, aspect);
            picture
        });
        held.on_hover_text(say!("board-put-both-ends-on-something-of-a-length"));
    }
}

/// One drag of the picture: one step.
fn drag(
    held: &Response,
    end: Option<usize>,
    actions: &mut Actions,
    now: &Picture,
    moved_by: impl Fn(egui::Vec2) -> Picture,
) {
    if held.drag_started_by(PointerButton::Primary) {
        actions.push(Action::Begin);
        actions.look(Look::Drag(Some(Drag::Picture { end, base: now.clone() })));
    }
    if let (Some(moved), true) =
        (held.total_drag_delta(), held.dragged_by(PointerButton::Primary))
    {
        let moved = moved_by(moved);
        if moved.validate().is_ok() {
            actions.edit(Edit::Picture(Some(moved)));
        }
    }
}

/// Draws the frame of the selected picture and its known length, and takes the length.
pub(super) fn show_ruler(
    ui: &mut Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    actions: &mut Actions,
) {
    let t = bench.t;
    let Some((picture, aspect)) = seen(bench).filter(|_| bench.view.board.picture) else {
        return;
    };
    let painter = ui.painter_at(ground.rect);
    frame(&painter, t, place(ground, picture, aspect));
    if picture.locked {
        return;
    }
    let [a, b] = picture.ruler.map(|end| at(ground, picture, end, aspect));
    painter.line_segment([a, b], Stroke::new(3.6, t.panel));
    painter.line_segment([a, b], Stroke::new(1.6, t.outline));
    for end in [a, b] {
        painter.circle(end, 6.0, t.panel, Stroke::new(1.8, t.outline));
        painter.circle_filled(end, 1.8, t.outline);
    }
    let text = bench.unit().text(picture.ruler_mm(aspect));
    let size = vec2(76.0, HIT);
    let room = ground.rect.shrink2(vec2(0.5 * size.x + 4.0, HIT));
    let middle = a + 0.5 * (b - a);
    let spot = ground::kept(room, middle);
    let entry = TypedNumber {
        dimension: BoardDimension::Ruler,
        name: say!("board-known-length"),
        text: &text,
        at: spot,
        size,
        hint: say!("board-the-true-length-type-it-and-the"),
    };
    typed::show(ui, bench, ground, &entry, actions, |painter, hovered| {
        let plate = Rect::from_center_size(spot, size);
        let fill = if hovered { t.wash } else { t.panel };
        let edge = Stroke::new(1.3, t.outline);
        painter.rect(plate, 5.0, fill, edge, egui::StrokeKind::Inside);
        let font = type_faces::semibold(type_faces::BODY);
        painter.text(spot, egui::Align2::CENTER_CENTER, &text, font, t.outline);
        plate
    });
}

fn frame(painter: &Painter, t: &Tokens, rect: Rect) {
    let corners = [
        rect.left_top(),
        rect.right_top(),
        rect.right_bottom(),
        rect.left_bottom(),
        rect.left_top(),
    ];
    painter.extend(egui::Shape::dashed_line(&corners, Stroke::new(1.2, t.outline), 7.0, 4.0));
}
