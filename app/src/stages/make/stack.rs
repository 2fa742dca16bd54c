//! The whole piece as a stack of bars at the left: what is worked in its yarn, what is to
//! come hollow, the round under the hook in marigold. A click takes up work there.

use egui::{
    Align2, CursorIcon, Painter, Rect, Role, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo,
};
use egui::{pos2, vec2};
use plumpline_core::making::{CourseRound, Stand, Stop};

use super::hook::Hook;
use crate::bench::action::Actions;
use crate::kit::{Tokens, icons, type_faces};
use crate::work::making::Make;

/// Room at the left for the round pointed at.
const NUMBERS: f32 = 34.0;
/// Highest a bar with its gap gets, points.
const MOST_PITCH: f32 = 24.0;

/// Room for the stuffing's line, points.
const STUFFING: f32 = 14.0;

/// Where the bars stand.
struct Stack<'a> {
    hook: &'a Hook<'a>,
    rect: Rect,
    rounds: u32,
    /// Stitches of the longest.
    most: u32,
    /// From one bar to the next, points.
    pitch: f32,
    /// After which round it is stuffed; 0 where it is not.
    stuffed: u32,
    /// The round under the hook; the one after the last where all are worked.
    under: u32,
}

impl<'a> Stack<'a> {
    fn new(hook: &'a Hook<'a>, rect: Rect) -> Self {
        let course = hook.course;
        let rounds = course.last_round();
        let under = match hook.stand {
            Stand::Stitch { round, .. } => round,
            Stand::Stop(Stop::Stuff | Stop::Inside(_)) => hook.progress.round.min(rounds + 1),
            Stand::Stop(Stop::Close) | Stand::Made => rounds + 1,
        };
        let pitch = (rect.height() - STUFFING) / rounds.max(1) as f32;
        Self {
            hook,
            rect,
            rounds,
            most: course.rounds.iter().map(|r| r.count).max().unwrap_or(1).max(1),
            pitch: pitch.min(MOST_PITCH),
            stuffed: course.stuff_after.unwrap_or(0),
            under,
        }
    }

    fn middle(&self) -> f32 {
        self.rect.left() + NUMBERS + 0.5 * (self.rect.width() - NUMBERS)
    }

    fn top(&self, round: u32) -> f32 {
        let below_stuffing = self.stuffed > 0 && round > self.stuffed;
        let extra = if below_stuffing { STUFFING } else { 0.0 };
        self.rect.top() + (round - 1) as f32 * self.pitch + extra
    }

    fn bar(&self, round: u32, count: u32) -> Rect {
        let room = self.rect.width() - NUMBERS - 8.0;
        let width = (room * count as f32 / self.most as f32).max(3.0);
        let height = if self.is_close() { self.pitch } else { self.pitch - 2.0 };
        let middle = pos2(self.middle(), self.top(round) + 0.5 * self.pitch);
        Rect::from_center_size(middle, vec2(width, height))
    }

    /// Whether the bars stand too close for edges.
    fn is_close(&self) -> bool {
        self.pitch <= 4.0
    }

    /// All that a click can reach; the numbers of the first and the last round are higher than
    /// their bars.
    fn all(&self) -> Rect {
        self.rect.with_max_y(self.top(self.rounds) + self.pitch).expand2(vec2(0.0, 4.0))
    }

    fn nearest(&self, y: f32) -> Option<u32> {
        let off = |r: u32| (self.top(r) + 0.5 * self.pitch - y).abs();
        (1..=self.rounds).min_by(|&a, &b| off(a).total_cmp(&off(b)))
    }
}

/// Draws the stack in `rect`.
pub(super) fn show(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let stack = Stack::new(hook, rect);
    let id = ui.scope_id().with("rounds of the piece");
    // By keyboard a round is gone to by its number.
    let response = ui.interact(stack.all(), id, Sense::CLICK);
    let name = say!("make-rounds-of-piece-click-one-to-go-to-it", piece = hook.name);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    let pointed = response.hover_pos().and_then(|pos| stack.nearest(pos.y));
    let painter = ui.painter();
    for (number, round) in (1..).zip(&hook.course.rounds) {
        bar(painter, &stack, number, round);
    }
    stuffing(painter, &stack);
    numbers(painter, &stack, pointed);
    let hint = pointed.map_or_else(String::new, |r| say!("make-continue-from-round-r", r = r));
    let by_pointer = response.clicked_by(egui::PointerButton::Primary);
    let clicked = by_pointer.then(|| response.interact_pointer_pos()).flatten();
    response.on_hover_cursor(CursorIcon::PointingHand).on_hover_text_at_pointer(hint);
    if let Some(round) = clicked.and_then(|pos| stack.nearest(pos.y)) {
        actions.make(Make::GoTo(round));
    }
}

fn bar(painter: &Painter, stack: &Stack<'_>, number: u32, round: &CourseRound) {
    let t = stack.hook.bench.t;
    let colour = stack.hook.bench.yarn_of(round.yarn);
    let (fill, edge) = if number == stack.under {
        (t.highlight, Stroke::new(1.4, t.highlight_edge))
    } else if number < stack.under {
        (Tokens::yarn(colour), Stroke::new(1.0, t.yarn_edge(colour)))
    } else {
        (t.panel, Stroke::new(1.0, t.control_edge))
    };
    let (fill, edge) = match stack.is_close() {
        false => (fill, edge),
        // What is to come is a tint.
        true if number > stack.under => (t.edge, Stroke::NONE),
        true => (fill, Stroke::NONE),
    };
    let place = stack.bar(number, round.count);
    painter.rect(place, 2.0, fill, edge, StrokeKind::Inside);
    if stack.hook.progress.notes.contains_key(&number) {
        let at = pos2(place.right() + 6.0, place.center().y);
        painter.circle_filled(at, 2.5, t.outline);
    }
}

/// Where the stuffing goes in.
fn stuffing(painter: &Painter, stack: &Stack<'_>) {
    let (t, after) = (stack.hook.bench.t, stack.stuffed);
    if after == 0 || after > stack.rounds {
        return;
    }
    let y = stack.top(after) + stack.pitch + 0.5 * STUFFING;
    let ends = [pos2(stack.rect.left() + NUMBERS, y), pos2(stack.rect.right() - 2.0, y)];
    painter.extend(Shape::dashed_line(&ends, Stroke::new(1.2, t.soft_ink), 2.5, 3.0));
    icons::tufts(painter, pos2(stack.middle(), y), t.well, t.soft_ink);
}

/// The numbers of the round under the hook and of the one `pointed` at, and a frame round it.
fn numbers(painter: &Painter, stack: &Stack<'_>, pointed: Option<u32>) {
    let (t, under) = (stack.hook.bench.t, stack.under);
    let font = type_faces::bold(type_faces::BODY);
    let number = |round: u32, ink: egui::Color32| {
        let at = pos2(stack.rect.left() + NUMBERS - 6.0, stack.top(round) + 0.5 * stack.pitch);
        painter.text(at, Align2::RIGHT_CENTER, round, font.clone(), ink);
    };
    if under <= stack.rounds {
        number(under, t.highlight_ink);
    }
    let Some(round) = pointed else { return };
    let far = (stack.top(round) - stack.top(under.clamp(1, stack.rounds))).abs() > 14.0;
    if far || under > stack.rounds {
        number(round, t.ink);
    }
    let place = stack.bar(round, stack.hook.course.rounds[round as usize - 1].count);
    let stroke = Stroke::new(1.5, t.outline);
    painter.rect_stroke(place.expand(1.5), 3.0, stroke, StrokeKind::Outside);
}
