//! What is next, how far the round is, and the buttons that take a step.

use egui::{
    Align2, Color32, Id, Rect, Response, Role, Sense, Stroke, StrokeKind, TextEdit, Ui,
    WidgetInfo, pos2, vec2,
};

use super::hook::{ASIDE, Hook, NEXT};
use crate::bench::action::Actions;
use crate::bench::command::{Command, MakeCommand};
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{paint, type_faces};
use crate::view::ids::note_id;
use crate::work::making::Make;
use plumpline_core::making::LONGEST_NOTE;

/// Height of the line of what is next.
pub(super) fn line_height(scale: f32) -> f32 {
    (60.0 * scale).max(44.0)
}

/// Height of the line and the buttons together.
pub(super) fn height(scale: f32) -> f32 {
    line_height(scale) + (64.0 * scale).clamp(48.0, 96.0)
}

/// Draws the line and the buttons in `rect`.
pub(super) fn show(ui: &mut Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let (line, buttons) = rect.split_top_bottom_at_y(rect.top() + line_height(hook.scale));
    next(ui, hook, line, actions);
    let gap = 10.0;
    let unit = (buttons.width() - 3.0 * gap) / 10.0;
    let mut x = buttons.left();
    for (command, share) in [
        (MakeCommand::Back, 1.6),
        (MakeCommand::Stitch, 4.0),
        (MakeCommand::Repeat, 2.2),
        (MakeCommand::Round, 2.2),
    ] {
        let place =
            Rect::from_min_size(pos2(x, buttons.top()), vec2(share * unit, buttons.height()));
        big(ui, hook, place, command, actions);
        x = place.right() + gap;
    }
}

/// The stitch that is next and what follows it; the count so far; the note on the round.
fn next(ui: &mut Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let Some((number, done, round)) = hook.round() else { return };
    let (t, painter) = (hook.bench.t, ui.painter());
    let y = rect.top() + 0.42 * rect.height();
    let mut x = rect.left();
    if let Some((stitch, times, then)) = round.ahead(done) {
        let font = type_faces::bold(hook.size(NEXT));
        let word = painter.layout_no_wrap(round.word(stitch).to_owned(), font, t.on_highlight);
        let size = word.size() + vec2(24.0, 4.0);
        let pill = Rect::from_min_size(pos2(x, y - 0.5 * size.y), size);
        let edge = Stroke::new(1.6, t.highlight_edge);
        painter.rect(pill, CARD_RADIUS, t.highlight, edge, StrokeKind::Inside);
        painter.galley(pill.min + vec2(12.0, 2.0), word, t.on_highlight);
        x = pill.right() + 12.0;
        let again =
            if times > 1 { say!("make-times-to-go", times = times) } else { String::new() };
        let then =
            then.map_or_else(String::new, |s| say!("make-then-stitch", stitch = round.word(s)));
        let words = [again, then].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>();
        let font = type_faces::regular(hook.size(ASIDE + 2.0));
        let at = pos2(x, y);
        x = painter.text(at, Align2::LEFT_CENTER, words.join(", "), font, t.ink).right();
    }
    let font = type_faces::bold(hook.size(NEXT));
    let at = pos2(rect.right(), y);
    let made = say!("make-made-of-count", made = round.made(done), count = round.count);
    let made = painter.text(at, Align2::RIGHT_CENTER, made, font, t.ink);
    let mut right = made.left() - 16.0;
    if round.repeats.len() > 1 {
        let words = say!(
            "make-repeat-repeat-of-repeats",
            repeat = round.repeat_of(done) + 1,
            repeats = round.repeats.len()
        );
        let font = type_faces::regular(hook.size(ASIDE));
        let at = pos2(right, y);
        right = painter.text(at, Align2::RIGHT_CENTER, words, font, t.soft_ink).left() - 16.0;
    }
    let room = Rect::from_min_max(pos2(x + 24.0, y - 16.0), pos2(right, y + 16.0));
    let width = room.width().min(420.0);
    if width > 90.0 {
        let middle = Rect::from_min_max(pos2(room.right() - width, room.top()), room.max);
        note(ui, hook, middle, number, actions);
    } else if hook.bench.making.write {
        actions.make(Make::Write(false));
    }
}

/// The note on the round, typed in place.
fn note(ui: &mut Ui, hook: &Hook<'_>, rect: Rect, round: u32, actions: &mut Actions) {
    let t = hook.bench.t;
    let mut text = hook.progress.notes.get(&round).cloned().unwrap_or_default();
    let written = !text.is_empty();
    let edge = Stroke::new(1.0, t.control_edge);
    ui.painter().rect(rect, CARD_RADIUS, t.panel, edge, StrokeKind::Inside);
    let key = hook.bench.key_text(Command::Make(MakeCommand::Note)).unwrap_or_default();
    let hint = say!("make-note-on-round-round-key", round = round, key = key);
    let size = if written { ASIDE - 2.0 } else { 0.0 };
    let edit = TextEdit::singleline(&mut text)
        .id(note_id())
        .font(type_faces::regular(hook.size(size)))
        .frame(egui::Frame::NONE)
        .margin(egui::Margin::ZERO)
        .align(egui::Align2::LEFT_CENTER)
        .hint_text(hint)
        .char_limit(LONGEST_NOTE)
        .desired_width(rect.width() - 20.0)
        .min_size(vec2(0.0, rect.height()));
    let field = ui
        .put(rect.shrink2(vec2(10.0, 0.0)), edit)
        .accessible_name(say!("make-note-on", round = round));
    if field.changed() {
        actions.make(Make::Note(round, text));
    }
    if hook.bench.making.write {
        field.request_focus();
        actions.make(Make::Write(false));
    }
    if field.has_focus() {
        paint::focus_ring(ui.painter(), rect, CARD_RADIUS, t);
    }
    field.on_hover_text(say!("make-a-note-on-this-round-enter-or-esc"));
}

/// A button that is hit from across the table, with its key under its word.
pub(super) fn big(
    ui: &Ui,
    hook: &Hook<'_>,
    rect: Rect,
    command: MakeCommand,
    actions: &mut Actions,
) -> Response {
    big_as(ui, hook, rect, (command, command.text()), actions)
}

/// As [`big`], with other words on it.
pub(super) fn big_as(
    ui: &Ui,
    hook: &Hook<'_>,
    rect: Rect,
    (command, words): (MakeCommand, &str),
    actions: &mut Actions,
) -> Response {
    let t = hook.bench.t;
    let asked = Command::Make(command);
    let enabled = asked.enabled(hook.bench);
    let sense = if enabled { Sense::click() } else { Sense::hover() };
    let response = ui.interact(rect, Id::unique("make").with((words, ui.layer_id())), sense);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, enabled, words));
    let rect = rect.with_max_y(rect.bottom() - 3.0);
    let pressed = enabled && response.is_pointer_button_down_on();
    let at = if pressed { rect.translate(vec2(0.0, 2.0)) } else { rect };
    let leads = matches!(command, MakeCommand::Stitch | MakeCommand::Done);
    let fill = match (enabled, leads, response.hovered()) {
        (true, true, _) => t.highlight,
        (true, false, true) => t.well,
        _ => t.panel,
    };
    let (edge, ink): (Stroke, Color32) = match (enabled, leads) {
        (true, true) => (Stroke::new(1.6, t.highlight_edge), t.on_highlight),
        (true, false) => (Stroke::new(1.2, t.control_edge), t.ink),
        (false, _) => (Stroke::new(1.0, t.edge), t.disabled()),
    };
    let painter = ui.painter();
    if enabled && !pressed {
        paint::lip(painter, rect, CARD_RADIUS, t.edge_deep, 3.0);
    }
    painter.rect(at, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let size = (0.34 * at.height()).clamp(type_faces::TITLE, 30.0);
    let word = at.center() - vec2(0.0, 0.12 * at.height());
    painter.text(word, Align2::CENTER_CENTER, words, type_faces::semibold(size), ink);
    let key = hook.bench.key_text(asked).unwrap_or_default();
    let soft = if leads && enabled { t.on_highlight } else { t.soft_ink };
    let font = type_faces::regular((0.42 * size).max(type_faces::SMALL));
    let under = at.center() + vec2(0.0, 0.28 * at.height());
    painter.text(under, Align2::CENTER_CENTER, key, font, soft);
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    let response = response.on_hover_text(hook.bench.hint(asked));
    if response.clicked() {
        actions.command(asked);
    }
    response
}
