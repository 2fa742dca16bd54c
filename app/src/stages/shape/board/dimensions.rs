//! Height and width of the forecast, as a draftsman sets them; a click types a new one.

use egui::{Align2, Color32, Painter, Pos2, Rect, Stroke, Ui, pos2, vec2};
use plumpline_core::{Plan, Units};

use super::ground::Ground;
use super::typed::{self, TypedNumber};
use super::{navigate, neck};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::measure::BoardDimension;
use crate::kit::words::MessageKey;
use crate::kit::{Tokens, paint, type_faces};

/// Where the two dimensions stand.
struct Places {
    /// Ends of the width, left and right.
    width: [Pos2; 2],
    /// Ends of the height, top and bottom.
    height: [Pos2; 2],
    /// Where the numbers stand: in the middle of what of each line is on the board.
    width_at: Pos2,
    height_at: Pos2,
    /// Where the body is widest, and its ends, on its left side.
    widest_y: f32,
}

/// The middle of that part of a stretch that lies in `room`, or the end of the room nearest
/// to it.
fn middle_in(stretch: [f32; 2], room: egui::Rangef, half: f32) -> f32 {
    let [from, to] = stretch.map(|v| v.min(room.max).max(room.min));
    (0.5 * (from + to)).min(room.max - half).max(room.min + half)
}

impl Places {
    fn of(plan: &Plan, ground: &Ground) -> Self {
        let mut widest = (0.0, 0.0);
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for node in &plan.forecast {
            let z = node.z + plan.shift_mm;
            if node.r > widest.0 {
                widest = (node.r, z);
            }
            (low, high) = (low.min(z), high.max(z));
        }
        let half = widest.0 as f32 * ground.scale();
        let (top, bottom) = (ground.y(low), ground.y(high));
        let board = ground.rect;
        let y = (top - 26.0).min(board.bottom() - 50.0).max(board.top() + 16.0);
        let x =
            (ground.axis_x - half - 22.0).min(board.right() - 20.0).max(board.left() + 14.0);
        let (left, right) = (ground.axis_x - half, ground.axis_x + half);
        Self {
            width: [pos2(left, y), pos2(right, y)],
            height: [pos2(x, top), pos2(x, bottom)],
            width_at: pos2(middle_in([left, right], board.x_range(), 72.0), y),
            height_at: pos2(x, middle_in([top, bottom], board.y_range(), 60.0)),
            widest_y: ground.y(widest.1),
        }
    }
}

/// A slanted drafting tick.
fn tick(painter: &Painter, at: Pos2, t: &Tokens) {
    let d = vec2(4.5, -4.5);
    painter.line_segment([at - d, at + d], Stroke::new(1.6, t.outline));
}

fn lines(painter: &Painter, t: &Tokens, ground: &Ground, places: &Places) {
    let thin = Stroke::new(0.8, t.soft_ink);
    let pen = Stroke::new(1.0, t.outline);
    for end in places.width {
        painter.vline(end.x, end.y - 6.0..=places.widest_y, thin);
    }
    for end in places.height {
        painter.hline(end.x - 6.0..=ground.axis_x - 12.0, end.y, thin);
    }
    painter.line_segment(places.width, pen);
    painter.line_segment(places.height, pen);
    for end in places.width.into_iter().chain(places.height) {
        tick(painter, end, t);
    }
}

fn texts(plan: &Plan, unit: Units) -> [(BoardDimension, String); 2] {
    [
        (BoardDimension::Height, unit.text(plan.size_mm.height)),
        (
            BoardDimension::Width,
            match plan.depth_mm {
                Some(deep) => {
                    format!("{} × {}", unit.number(plan.size_mm.width), unit.text(deep))
                }
                None => unit.text(plan.size_mm.width),
            },
        ),
    ]
}

/// Where the numbers of both dimensions stand.
fn numbers(plan: &Plan, ground: &Ground) -> [Rect; 2] {
    let places = Places::of(plan, ground);
    [
        Rect::from_center_size(places.width_at, vec2(width_of(plan), 24.0)),
        Rect::from_center_size(places.height_at, vec2(24.0, 84.0)),
    ]
}

/// What of the dimensions may not be covered: numbers and ticks.
pub(super) fn marks(plan: &Plan, ground: &Ground) -> Vec<Rect> {
    let places = Places::of(plan, ground);
    let ticks = places.width.into_iter().chain(places.height);
    let ticks = ticks.map(|end| Rect::from_center_size(end, vec2(14.0, 14.0)));
    let others = navigate::marks(ground.rect).into_iter().chain(neck::mark(plan, ground));
    numbers(plan, ground).into_iter().chain(ticks).chain(others).collect()
}

/// Room the number of the width takes.
fn width_of(plan: &Plan) -> f32 {
    if plan.depth_mm.is_some() { 140.0 } else { 84.0 }
}

/// Says of an oval which number is which, above them.
fn oval(painter: &Painter, t: &Tokens, plan: &Plan, places: &Places) {
    if plan.depth_mm.is_some() {
        let at = places.width_at - vec2(0.0, 17.0);
        let font = type_faces::regular(type_faces::SMALL);
        let words = say!("board-finished-oval-width-depth").to_owned();
        let galley = painter.layout_no_wrap(words, font, t.soft_ink);
        let rect = Align2::CENTER_CENTER.anchor_size(at, galley.size());
        painter.rect_filled(rect.expand2(vec2(4.0, 0.0)), 0.0, t.panel);
        painter.galley(rect.min, galley, t.soft_ink);
    }
}

/// What the numbers measure: the stuffed piece, and not the wanted line.
const FINISHED: MessageKey = message!("board-finished");

/// Draws one dimension's words; returns the space they take.
fn words(
    painter: &Painter,
    t: &Tokens,
    places: &Places,
    dimension: BoardDimension,
    text: &str,
    hovered: bool,
) -> Rect {
    let font = type_faces::semibold(type_faces::TITLE - 2.0);
    let small = type_faces::regular(type_faces::SMALL);
    let ground = if hovered { t.wash } else { t.panel };
    match dimension {
        BoardDimension::Width => {
            let galley = painter.layout_no_wrap(text.to_owned(), font, t.outline);
            // Off the plumb line's own dashes, the number stays in the middle.
            let rect = Align2::CENTER_CENTER.anchor_size(places.width_at, galley.size());
            painter.rect_filled(rect.expand2(vec2(6.0, 0.0)), 0.0, ground);
            painter.galley(rect.min, galley, t.outline);
            if !text.contains('×') {
                // Over the number stands the handle of the height, below it a knot may.
                let galley =
                    painter.layout_no_wrap(FINISHED.text().to_owned(), small, t.soft_ink);
                let at = rect.left_center() - vec2(7.0, 0.0);
                let word = Align2::RIGHT_CENTER.anchor_size(at, galley.size());
                if word.left() > places.width[0].x + 8.0 {
                    painter.rect_filled(word.expand2(vec2(5.0, 0.0)), 0.0, t.panel);
                    painter.galley(word.min, galley, t.soft_ink);
                }
            }
            rect
        }
        _ => {
            let at = places.height_at;
            let rect = paint::upright_text(painter, at, text, font, t.outline, ground);
            let beside = pos2(rect.left() - 6.0, at.y);
            paint::upright_text(
                painter,
                beside,
                FINISHED.text(),
                small,
                t.soft_ink,
                Color32::TRANSPARENT,
            );
            rect
        }
    }
}

/// Draws the dimensions while something is dragged: they follow, but take no clicks.
pub(super) fn paint_still(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let places = Places::of(plan, ground);
    lines(painter, bench.t, ground, &places);
    oval(painter, bench.t, plan, &places);
    for (dimension, text) in texts(plan, bench.unit()) {
        words(painter, bench.t, &places, dimension, &text, false);
    }
}

/// Draws the dimensions and takes what is typed over them.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    actions: &mut Actions,
) {
    let painter = ui.painter_at(ground.rect);
    let places = Places::of(plan, ground);
    lines(&painter, bench.t, ground, &places);
    oval(&painter, bench.t, plan, &places);
    for (dimension, text) in texts(plan, bench.unit()) {
        let (name, at, size) = match dimension {
            BoardDimension::Width => {
                let wide = if text.contains('×') { 136.0 } else { 76.0 };
                (say!("board-width"), places.width_at, vec2(wide, 26.0))
            }
            _ => (say!("board-height"), places.height_at, vec2(26.0, 76.0)),
        };
        let hint = say!("board-name-of-the-finished-piece-click-to", name = name);
        let entry = TypedNumber { dimension, name, text: &text, at, size, hint: &hint };
        typed::show(ui, bench, ground, &entry, actions, |painter, hovered| {
            words(painter, bench.t, &places, dimension, &text, hovered)
        });
    }
}
