//! The whole piece as a stack of bars at the left: what is worked in its yarn, what is to
//! come hollow, the round under the hook in marigold. A click takes up work there.

use egui::{Align2, CursorIcon, Rect, Role, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo};
use egui::{pos2, vec2};
use plumpline_core::making::{Stand, Stop};

use super::hook::Hook;
use crate::bench::action::Actions;
use crate::kit::{Tokens, icons, type_faces};
use crate::work::making::Make;

/// Room at the left for the round pointed at.
const NUMBERS: f32 = 34.0;
/// Highest a bar with its gap gets, points.
const MOST_PITCH: f32 = 24.0;

/// Draws the stack in `rect`.
pub(super) fn show(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let (t, course) = (hook.bench.t, hook.course);
    let rounds = course.last_round();
    let most = course.rounds.iter().map(|r| r.count).max().unwrap_or(1).max(1);
    let extra = 14.0; // For the stuffing's line.
    let pitch = ((rect.height() - extra) / rounds.max(1) as f32).min(MOST_PITCH);
    let under = match hook.stand {
        Stand::Stitch { round, .. } => round,
        Stand::Stop(Stop::Stuff) => hook.progress.round.min(rounds + 1),
        Stand::Stop(Stop::Close) | Stand::Made => rounds + 1,
    };
    let after = course.stuff_after.unwrap_or(0);
    let middle = rect.left() + NUMBERS + 0.5 * (rect.width() - NUMBERS);
    let top = |round: u32| {
        let below_stuffing = after > 0 && round > after;
        rect.top() + (round - 1) as f32 * pitch + if below_stuffing { extra } else { 0.0 }
    };
    let bar = |round: u32, count: u32| {
        let width = (rect.width() - NUMBERS - 8.0) * count as f32 / most as f32;
        let height = if pitch > 4.0 { pitch - 2.0 } else { pitch };
        let middle = pos2(middle, top(round) + 0.5 * pitch);
        Rect::from_center_size(middle, vec2(width.max(3.0), height))
    };
    // The numbers of the first and the last round are higher than their bars.
    let all = rect.with_max_y(top(rounds) + pitch).expand2(vec2(0.0, 4.0));
    let id = ui.scope_id().with("rounds of the piece");
    // By keyboard a round is gone to by its number.
    let response = ui.interact(all, id, Sense::CLICK);
    let name = format!("Rounds of {}; a click goes to one", hook.name);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    let nearest = |y: f32| {
        (1..=rounds).min_by(|&a, &b| {
            let off = |r: u32| (top(r) + 0.5 * pitch - y).abs();
            off(a).total_cmp(&off(b))
        })
    };
    let pointed = response.hover_pos().and_then(|pos| nearest(pos.y));
    let painter = ui.painter();
    for (number, round) in (1..).zip(&course.rounds) {
        let colour = hook.bench.yarn_of(round.yarn);
        let (fill, edge) = if number == under {
            (t.highlight, Stroke::new(1.4, t.highlight_edge))
        } else if number < under {
            (Tokens::yarn(colour), Stroke::new(1.0, t.yarn_edge(colour)))
        } else {
            (t.panel, Stroke::new(1.0, t.control_edge))
        };
        let place = bar(number, round.count);
        let (fill, edge) = match pitch > 4.0 {
            true => (fill, edge),
            // Too close for edges: what is to come is a tint.
            false if number > under => (t.edge, Stroke::NONE),
            false => (fill, Stroke::NONE),
        };
        painter.rect(place, 2.0, fill, edge, StrokeKind::Inside);
        if hook.progress.notes.contains_key(&number) {
            let at = pos2(place.right() + 6.0, place.center().y);
            painter.circle_filled(at, 2.5, t.outline);
        }
    }
    if after > 0 && after <= rounds {
        let y = top(after) + pitch + 0.5 * extra;
        let ends = [pos2(rect.left() + NUMBERS, y), pos2(rect.right() - 2.0, y)];
        painter.extend(Shape::dashed_line(&ends, Stroke::new(1.2, t.soft_ink), 2.5, 3.0));
        icons::tufts(painter, pos2(middle, y), t.well, t.soft_ink);
    }
    let font = type_faces::bold(type_faces::BODY);
    let number = |round: u32, ink: egui::Color32| {
        let at = pos2(rect.left() + NUMBERS - 6.0, top(round) + 0.5 * pitch);
        painter.text(at, Align2::RIGHT_CENTER, round, font.clone(), ink);
    };
    if under <= rounds {
        number(under, t.highlight_ink);
    }
    if let Some(round) = pointed {
        let far = (top(round) - top(under.clamp(1, rounds))).abs() > 14.0;
        if far || under > rounds {
            number(round, t.ink);
        }
        let place = bar(round, course.rounds[round as usize - 1].count);
        painter.rect_stroke(
            place.expand(1.5),
            3.0,
            Stroke::new(1.5, t.outline),
            StrokeKind::Outside,
        );
    }
    let hint = pointed.map_or_else(String::new, |r| format!("Take up work at round {r}"));
    let by_pointer = response.clicked_by(egui::PointerButton::Primary);
    let clicked = by_pointer.then(|| response.interact_pointer_pos()).flatten();
    response.on_hover_cursor(CursorIcon::PointingHand).on_hover_text_at_pointer(hint);
    if let Some(round) = clicked.and_then(|pos| nearest(pos.y)) {
        actions.make(Make::GoTo(round));
    }
}
