//! The number of the round and its words, as large as the window allows.

use std::sync::Arc;

use egui::{Align2, Galley, Id, Key, Rect, TextEdit, Ui, pos2, vec2};
use plumpline_core::Yarn;

use super::hook::{ASIDE, Hook, NUMBER, WORDS};
use crate::bench::action::Actions;
use crate::bench::command::{Command, MakeCommand};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::{paint, type_faces};
use crate::work::making::Make;

/// Draws both at the top of `rect`; returns where they end.
pub(super) fn show(ui: &mut Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) -> f32 {
    let height = (NUMBER * hook.scale).max(56.0);
    let block = rect.with_max_y(rect.top() + height);
    let Some((number, _, round)) = hook.round() else { return rect.top() };
    let (t, painter) = (hook.bench.t, ui.painter());
    let font = type_faces::bold(hook.size(NUMBER));
    let at = block.left_center();
    let figure = painter.text(at, Align2::LEFT_CENTER, number, font, t.ink);
    let mut x = figure.right() + 12.0;
    let aside = pos2(x, block.center().y + 0.2 * height);
    let font = type_faces::regular(hook.size(ASIDE));
    let of = say!("make-of-last", last = hook.course.last_round());
    let of = painter.text(aside, Align2::LEFT_CENTER, of, font, t.soft_ink);
    if hook.has_yarns() {
        let at = pos2(x + 8.0, block.center().y - 0.2 * height);
        let colour = hook.bench.yarn_of(round.yarn);
        paint::bead(painter, at, &Yarn::letter(round.yarn), colour, t);
    }
    x = of.right().max(x + 84.0);
    find(ui, hook, (x - 84.0, of.bottom() + 2.0), actions);
    let words = rect.with_min_x(x + 28.0 * hook.scale.max(0.7));
    let stated = format!("[{}]", round.count);
    let room = 0.66 * hook.size(WORDS) * stated.len() as f32 + 20.0;
    let (galley, size) = fitted(ui, hook, &worded(round), words.width() - room, 1.25 * height);
    let font = type_faces::bold(size);
    let count = ui.painter().layout_no_wrap(stated, font, t.soft_ink);
    let middle = block.center().y.max(rect.top() + 0.5 * galley.size().y);
    let top = middle - 0.5 * galley.size().y;
    let bottom = (top + galley.size().y).max(block.bottom()).max(of.bottom() + 28.0);
    ui.painter().galley(pos2(words.left(), top), galley.clone(), t.ink);
    // After the last word, on the same foot.
    let last = galley.rows.last().map_or(0.0, |row| row.rect().right());
    let foot = top + galley.size().y;
    let at = pos2(words.left() + last + 20.0, foot - count.size().y);
    ui.painter().galley(at, count, t.soft_ink);
    bottom + 4.0
}

/// The words of a round, with what joins it to its neighbours.
fn worded(round: &plumpline_core::making::CourseRound) -> String {
    let parts = [&round.lead_in, &round.text, &round.lead_out];
    let parts: Vec<&str> =
        parts.into_iter().filter(|part| !part.is_empty()).map(String::as_str).collect();
    parts.join(", ")
}

/// Words as large as they fit into `width` and `height`, and their size.
fn fitted(
    ui: &Ui,
    hook: &Hook<'_>,
    words: &str,
    width: f32,
    height: f32,
) -> (Arc<Galley>, f32) {
    let ink = hook.bench.t.ink;
    let mut size = hook.size(WORDS);
    loop {
        let font = type_faces::semibold(size);
        let galley = ui.painter().layout(words.to_owned(), font, ink, width.max(80.0));
        if galley.size().y <= height || size <= type_faces::TITLE {
            return (galley, size);
        }
        size = (0.88 * size).max(type_faces::TITLE);
    }
}

/// The button to go to another round, or the field for its number.
fn find(ui: &mut Ui, hook: &Hook<'_>, (left, top): (f32, f32), actions: &mut Actions) {
    let command = Command::Make(MakeCommand::Find);
    let place = Rect::from_min_size(pos2(left, top), vec2(84.0, 26.0));
    let Some(typed) = &hook.bench.making.find else {
        let face = ButtonFace::Words(command.text());
        let button = controls::button(ui, place, face, say!("make-go-to-a-round"), true);
        if button.on_hover_text(hook.bench.hint(command)).clicked() {
            actions.command(command);
        }
        return;
    };
    let mut text = typed.clone();
    let id = Id::unique("round to go to");
    let field =
        TextEdit::singleline(&mut text).id(id).hint_text(say!("make-round")).char_limit(4);
    let field = ui.put(place, field).accessible_name(say!("make-round-to-go-to"));
    let (enter, escape) = ui.input(|i| (i.key_pressed(Key::Enter), i.key_pressed(Key::Escape)));
    if field.changed() {
        // The key that opened the field must not stand in it.
        text.retain(|c| c.is_ascii_digit());
        actions.make(Make::Find(Some(text.clone())));
    }
    if field.lost_focus() {
        if let Some(round) = text.parse().ok().filter(|_| enter && !escape) {
            let last = hook.course.last_round();
            actions.make(Make::GoTo(last.min(round)));
        }
        actions.make(Make::Find(None));
    } else if !field.has_focus() {
        field.request_focus();
    }
}
