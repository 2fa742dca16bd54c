//! The name of the sharpest turn, on clear ground of the bend strip.

use egui::{Align2, Painter, Pos2, Rect, Stroke, pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::bend::BendWord;

use super::bend_strip::BendColumns;
use crate::kit::{Tokens, type_faces};

/// Marks the turn in column `index` of `line` and names it where nothing else is drawn; where
/// there is no such place, the mark alone has to do.
pub(super) fn paint(
    painter: &Painter,
    t: &Tokens,
    plan: &Plan,
    columns: &BendColumns,
    line: &[Pos2],
    index: usize,
    words: String,
) {
    let Some(&here) = line.get(index) else { return };
    let font = type_faces::regular(type_faces::SMALL);
    let galley = painter.layout_no_wrap(words, font, t.ink);
    let clear = clear_ground(plan, columns, line, here, galley.size() + vec2(6.0, 0.0));
    if let Some(rect) = clear {
        let end = pos2(
            here.x.clamp(rect.left(), rect.right()),
            here.y.clamp(rect.top(), rect.bottom()),
        );
        if end.distance(here) > 8.0 {
            painter.line_segment([end, here], Stroke::new(0.9, t.soft_ink));
        }
        painter.rect_filled(rect, 3.0, t.panel);
        painter.galley(rect.min + vec2(3.0, 0.0), galley, t.ink);
    }
    painter.circle(here, 3.4, t.panel, Stroke::new(1.5, t.outline));
}

/// The free place nearest to `here`.
fn clear_ground(
    plan: &Plan,
    columns: &BendColumns,
    line: &[Pos2],
    here: Pos2,
    size: egui::Vec2,
) -> Option<Rect> {
    // Below lie the numbers of the rounds.
    let field = columns.area.with_min_y(columns.area.top() - 8.0);
    let (across, down) = (160, 14);
    let step =
        |low: f32, high: f32, i: i32, n: i32| low + (high - low).max(0.0) * i as f32 / n as f32;
    let mut best: Option<(f32, Rect)> = None;
    for i in 0..=across {
        for j in 0..=down {
            let x = step(field.left(), field.right() - size.x, i, across);
            let y = step(field.top(), field.bottom() - size.y, j, down);
            let rect = Align2::LEFT_TOP.anchor_size(pos2(x, y), size);
            let far = rect.distance_to_pos(here);
            // Off the mark itself.
            if far < 5.0 || best.is_some_and(|(least, _)| far >= least) {
                continue;
            }
            if is_clear(plan, columns, line, rect) {
                best = Some((far, rect));
            }
        }
    }
    best.map(|(_, rect)| rect)
}

/// Whether no column, no part of the line and neither of the level lines runs through.
fn is_clear(plan: &Plan, columns: &BendColumns, line: &[Pos2], rect: Rect) -> bool {
    let flat = columns.zero - plan.flat_increase as f32 * columns.unit();
    let level = rect.y_range().expand(1.0);
    if level.contains(columns.zero) || level.contains(flat) {
        return false;
    }
    let index = |x: f32| ((x - columns.area.left()) / columns.pitch).floor().max(0.0) as usize;
    let last = plan.bends.len().saturating_sub(1);
    let near = index(rect.left() - 40.0).min(last)..=index(rect.right() + 40.0).min(last);
    for i in near {
        let bend = &plan.bends[i];
        let mut bar = columns.bar(i, bend.gained).expand(3.0);
        if bend.word == BendWord::Ruffle {
            // Its wave, and the word over it.
            bar = bar.expand2(vec2(16.0, 0.0));
            bar.min.y -= 18.0;
        }
        if bend.gained != 0 && bar.intersects(rect) {
            return false;
        }
        if let (Some(&a), Some(&b)) = (line.get(i), line.get(i + 1)) {
            let touches = |k: i32| {
                let share = k as f32 / 8.0;
                rect.expand(3.0).contains(a + share * (b - a))
            };
            if (0..=8).any(touches) {
                return false;
            }
        }
    }
    true
}
