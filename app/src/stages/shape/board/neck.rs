//! The neck: the forecast where it is narrowest between two wider places, as a dimension
//! across the body that a click types over.

use egui::{Align2, Painter, Pos2, Rect, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Plan;

use super::ground::Ground;
use super::typed::{self, TypedNumber};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::measure::{self, BoardDimension};
use crate::kit::{Tokens, type_faces};

/// Size of the number.
const SIZE: egui::Vec2 = vec2(66.0, 24.0);

/// The dimension as it falls on the board.
struct NeckPlace {
    ends: [Pos2; 2],
    wide_mm: f64,
    number: Rect,
}

fn place(plan: &Plan, ground: &Ground) -> Option<NeckPlace> {
    let (wide, z) = measure::neck_of(plan)?;
    let (half, y) = (0.5 * wide as f32 * ground.scale(), ground.y(z));
    let ends = [pos2(ground.axis_x - half, y), pos2(ground.axis_x + half, y)];
    // In the neck where it is wide enough, else left of it.
    let number = if 2.0 * half > SIZE.x + 8.0 {
        Rect::from_center_size(pos2(ground.axis_x, y), SIZE)
    } else {
        Align2::RIGHT_CENTER.anchor_size(ends[0] - vec2(16.0, 0.0), SIZE)
    };
    let inside = ground.rect.contains_rect(number);
    inside.then_some(NeckPlace { ends, wide_mm: wide, number })
}

/// The space the number takes.
pub(super) fn mark(plan: &Plan, ground: &Ground) -> Option<Rect> {
    place(plan, ground).map(|place| place.number)
}

fn line(painter: &Painter, t: &Tokens, place: &NeckPlace) {
    painter.line_segment(place.ends, Stroke::new(1.0, t.outline));
    for end in place.ends {
        let d = vec2(4.5, -4.5);
        painter.line_segment([end - d, end + d], Stroke::new(1.6, t.outline));
    }
}

fn number(painter: &Painter, t: &Tokens, text: &str, at: Pos2, hovered: bool) -> Rect {
    let font = type_faces::semibold(type_faces::BODY);
    let galley = painter.layout_no_wrap(text.to_owned(), font, t.outline);
    let rect = Align2::CENTER_CENTER.anchor_size(at, galley.size());
    let plate = rect.expand2(vec2(5.0, 1.0));
    let fill = if hovered { t.wash } else { t.panel };
    painter.rect(plate, 4.0, fill, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    painter.galley(rect.min, galley, t.outline);
    plate
}

/// Draws it while something is dragged.
pub(super) fn paint_still(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    if let Some(place) = place(plan, ground) {
        line(painter, bench.t, &place);
        let text = bench.unit().text(place.wide_mm);
        number(painter, bench.t, &text, place.number.center(), false);
    }
}

/// Draws it and takes what is typed over it.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    actions: &mut Actions,
) {
    let Some(place) = place(plan, ground) else { return };
    line(&ui.painter_at(ground.rect), bench.t, &place);
    let text = bench.unit().text(place.wide_mm);
    let entry = TypedNumber {
        dimension: BoardDimension::Neck,
        name: say!("board-neck"),
        text: &text,
        at: place.number.center(),
        size: SIZE,
        hint: say!("board-the-neck-of-the-finished-piece-side-to"),
    };
    typed::show(ui, bench, ground, &entry, actions, |painter, hovered| {
        number(painter, bench.t, &text, place.number.center(), hovered)
    });
}
