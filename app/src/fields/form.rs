//! Rows of a form: a name on the left, a control on the right, the reason on hover.

use egui::{Align2, DragValue, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, UiBuilder};
use egui::{WidgetInfo, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::words::decimal;
use crate::kit::{Tokens, paint, type_faces};

/// Height of a row.
pub(crate) const ROW: f32 = 32.0;
/// Room for the bar of a scroll area.
const BAR: f32 = 8.0;
/// Side of a small button.
const BUTTON: f32 = 24.0;
/// Width of a stepper's field.
const FIELD: f32 = 74.0;

/// A row with a name; returns what is right of it. Hovering it gives the reason.
pub(crate) fn row(ui: &mut Ui, name: &str, why: &str) -> Rect {
    let t = Tokens::now(ui.ctx());
    let size = vec2(ui.available_width(), ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    let font = type_faces::regular(type_faces::BODY);
    let at = rect.left_center();
    let galley = ui.painter().layout(name.to_owned(), font, t.ink, 0.6 * rect.width());
    let place = Align2::LEFT_CENTER.anchor_size(at, galley.size());
    ui.painter().galley(place.min, galley, t.ink);
    response.on_hover_text(why);
    rect.with_min_x(place.right() + 8.0)
}

/// The place of a field `width` wide in a row, its end so far from the end of the row.
pub(crate) fn place(row: Rect, from_right: f32, width: f32) -> Rect {
    let middle = pos2(row.right() - from_right - 0.5 * width, row.center().y);
    Rect::from_center_size(middle, vec2(width, 26.0))
}

/// Leaves room for the bar of the scroll area that `ui` is in: rows end beside it.
pub(crate) fn beside_the_bar(ui: &mut Ui) {
    ui.set_max_width(ui.available_width() - BAR);
}

/// Words in place of a control that does not apply.
pub(crate) fn instead(ui: &Ui, rect: Rect, words: &str) {
    let t = Tokens::now(ui.ctx());
    let font = type_faces::regular(type_faces::SMALL);
    ui.painter().text(rect.right_center(), Align2::RIGHT_CENTER, words, font, t.soft_ink);
}

/// A small heading between rows.
pub(crate) fn heading(ui: &mut Ui, words: &str) {
    keyed_heading(ui, words, None);
}

/// A small heading, with the key that steps through what is under it.
pub(crate) fn keyed_heading(ui: &mut Ui, words: &str, key: Option<String>) {
    let t = Tokens::now(ui.ctx());
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 22.0), Sense::hover());
    let font = type_faces::drafting(type_faces::BODY);
    let at = rect.left_center() + vec2(0.0, 2.0);
    let words = ui.painter().text(at, Align2::LEFT_CENTER, words, font, t.soft_ink);
    let mut end = rect.right();
    if let Some(key) = key {
        let font = type_faces::bold(type_faces::SMALL);
        let at = pos2(end, at.y);
        let key = ui.painter().text(at, Align2::RIGHT_CENTER, key, font, t.soft_ink);
        end = key.left() - 6.0;
    }
    let rule = words.right() + 8.0..=end;
    ui.painter().hline(rule, at.y + 1.0, Stroke::new(1.0, t.edge));
}

/// A heading with numerals in it, which the drafting face never sets.
pub(crate) fn numbered_heading(ui: &mut Ui, words: &str) {
    let t = Tokens::now(ui.ctx());
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 22.0), Sense::hover());
    let font = type_faces::bold(type_faces::BODY);
    ui.painter().text(rect.left_center(), Align2::LEFT_CENTER, words, font, t.ink);
}

/// The frame of a popover that holds a form.
pub(crate) fn frame(ui: &Ui) -> egui::Frame {
    egui::Frame::popup(ui.style()).inner_margin(12.0)
}

/// A small sentence across the form.
pub(crate) fn remark(ui: &mut Ui, words: &str) {
    let response = caption(ui, words);
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, words));
}

/// Small words over a field that is named by them: to assistive tools they are the field's.
pub(crate) fn caption(ui: &mut Ui, words: &str) -> Response {
    let t = Tokens::now(ui.ctx());
    let font = type_faces::regular(type_faces::SMALL);
    let galley = ui.painter().layout(words.to_owned(), font, t.soft_ink, ui.available_width());
    let size = vec2(ui.available_width(), galley.size().y + 4.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    ui.painter().galley(rect.min, galley, t.soft_ink);
    response
}

/// What is wrong, in a line across the form.
pub(crate) fn trouble(ui: &mut Ui, why: &str) {
    let t = Tokens::now(ui.ctx());
    let font = type_faces::regular(type_faces::SMALL);
    let galley = ui.painter().layout(why.to_owned(), font, t.ink, ui.available_width() - 16.0);
    let size = vec2(ui.available_width(), galley.size().y + 10.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, why));
    let painter = ui.painter();
    painter.rect(rect, 6.0, t.warn_wash, Stroke::new(1.2, t.warning), StrokeKind::Inside);
    painter.galley(rect.min + vec2(8.0, 5.0), galley, t.ink);
}

/// How much of some work is done, 0 … 1, in words over a bar.
pub(crate) fn progress(ui: &mut Ui, what: &str, share: f32) {
    let t = Tokens::now(ui.ctx());
    let words =
        say!("form-what-percent-done", what = what, percent = format!("{:.0}", 100.0 * share));
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), 24.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::ProgressIndicator, true, &words));
    let (painter, rail) = (ui.painter(), rect.shrink2(vec2(0.0, 2.0)));
    painter.rect_filled(rail, 6.0, t.well);
    let done = rail.with_max_x(egui::lerp(rail.x_range(), share.clamp(0.0, 1.0)));
    painter.rect_filled(done, 6.0, t.wash);
    painter.rect_stroke(rail, 6.0, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    let font = type_faces::regular(type_faces::SMALL);
    let at = rail.left_center() + vec2(8.0, 0.0);
    painter.text(at, Align2::LEFT_CENTER, words, font, t.ink);
}

/// A drag of a control is one step.
pub(crate) fn gesture(response: &Response, actions: &mut Actions) {
    if response.drag_started() {
        actions.push(Action::Begin);
    }
    if response.drag_stopped() {
        actions.push(Action::Commit);
    }
}

/// A number that can be dragged or typed, filling `rect`.
pub(crate) fn field(
    ui: &mut Ui,
    rect: Rect,
    name: &str,
    drag: DragValue<'_>,
    actions: &mut Actions,
) -> Response {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt(name));
    child.spacing_mut().interact_size = rect.size();
    child.spacing_mut().button_padding.x = 4.0;
    let response = child.put(rect, drag.update_while_editing(false)).accessible_name(name);
    gesture(&response, actions);
    response
}

/// What a stepper counts.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Counted {
    /// Least and greatest.
    pub(crate) ends: (u32, u32),
    /// The word for no number at all, and the number stepping begins from.
    pub(crate) none: Option<(&'static str, u32)>,
}

/// A whole number between minus and plus at the right end of `rect`; returns a new one.
pub(crate) fn stepper(
    ui: &mut Ui,
    rect: Rect,
    name: &str,
    value: Option<u32>,
    span: Counted,
    actions: &mut Actions,
) -> Option<Option<u32>> {
    let (low, high) = span.ends;
    let middle = rect.center().y;
    let place = |right: f32, width: f32| {
        Rect::from_min_size(pos2(right - width, middle - 13.0), vec2(width, 26.0))
    };
    let more = place(rect.right(), BUTTON);
    let at = place(more.left() - 4.0, FIELD);
    let less = place(at.left() - 4.0, BUTTON);
    let mut new = value;
    let from = span.none.map_or(low, |(_, from)| from);
    let can_less = value.map_or(from > low, |v| v > low);
    let can_more = value.map_or(from < high, |v| v < high);
    let word = say!("form-name-fewer", name = name);
    if controls::button(ui, less, ButtonFace::Icon(Icon::Less), &word, can_less).clicked() {
        new = Some(value.map_or(from, |v| v).saturating_sub(1).clamp(low, high));
    }
    let word = say!("form-name-more", name = name);
    if controls::button(ui, more, ButtonFace::Icon(Icon::More), &word, can_more).clicked() {
        new = Some((value.map_or(from, |v| v) + 1).clamp(low, high));
    }
    let floor = f64::from(low) - if span.none.is_some() { 1.0 } else { 0.0 };
    let mut shown = value.map_or(floor, f64::from);
    let none = span.none.map(|(word, _)| word);
    let drag = DragValue::new(&mut shown)
        .range(floor..=f64::from(high))
        .speed(0.1)
        .max_decimals(0)
        .custom_formatter(move |v, _| match none {
            Some(word) if v < f64::from(low) => word.to_owned(),
            _ => format!("{v:.0}"),
        })
        .custom_parser(move |text| match text.trim().parse() {
            Ok(number) => Some(number),
            Err(_) => none.map(|_| f64::from(low) - 1.0),
        });
    if field(ui, at, name, drag, actions).changed() {
        let whole = shown.round();
        new = (whole >= f64::from(low)).then_some(whole as u32);
    }
    if let (Some((word, _)), Some(_)) = (span.none, value) {
        let clear = place(less.left() - 4.0, BUTTON);
        let words = format!("{name}, {word}");
        let button = controls::button(ui, clear, ButtonFace::Icon(Icon::Close), &words, true);
        if button.on_hover_text(say!("form-back-to-word", word = word)).clicked() {
            new = None;
        }
    }
    (new != value).then_some(new)
}

/// Width of words to [`pick`] from.
pub(crate) fn pick_width(ui: &Ui, options: &[&str]) -> f32 {
    let words: f32 = options.iter().map(|o| controls::words_width(ui, o) - 4.0).sum();
    words + 4.0 * options.len().saturating_sub(1) as f32
}

/// Words of which one is chosen, at the right end of `rect`; returns another one.
pub(crate) fn pick(
    ui: &Ui,
    rect: Rect,
    name: &str,
    options: &[&str],
    now: usize,
) -> Option<usize> {
    let widths: Vec<f32> = options.iter().map(|o| controls::words_width(ui, o) - 4.0).collect();
    let mut x = rect.right() - pick_width(ui, options);
    let mut new = None;
    for (i, (option, width)) in options.iter().zip(widths).enumerate() {
        let place = Rect::from_min_size(pos2(x, rect.center().y - 13.0), vec2(width, 26.0));
        let full = format!("{name}: {option}");
        let button =
            controls::toggle(ui, place, ButtonFace::Words(option), &full, true, Some(i == now));
        if button.clicked() && i != now {
            new = Some(i);
        }
        x += width + 4.0;
    }
    new
}

/// A button as wide as the card in a row of this height; `primary` if it does what the card
/// is for.
pub(crate) fn wide(
    ui: &mut Ui,
    height: f32,
    words: &str,
    enabled: bool,
    primary: bool,
) -> Response {
    let size = vec2(ui.available_width(), height);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let place = rect.shrink2(vec2(0.0, 0.5 * (height - 28.0)));
    match primary {
        true => controls::primary(ui, place, words, words, enabled),
        false => controls::button(ui, place, ButtonFace::Words(words), words, enabled),
    }
}

/// A button as wide as the card that gives a command.
pub(crate) fn command(ui: &mut Ui, bench: &Bench<'_>, command: Command, actions: &mut Actions) {
    let button = wide(ui, ROW, command.text(), command.enabled(bench), false);
    if button.on_hover_text(bench.hint(command)).clicked() {
        actions.command(command);
    }
}

/// A row with a box to tick; the whole row can be hit. Returns a new state.
pub(crate) fn tick(ui: &mut Ui, name: &str, why: &str, on: bool) -> Option<bool> {
    let t = Tokens::now(ui.ctx());
    let size = vec2(ui.available_width(), ROW - 2.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, on, name));
    let painter = ui.painter();
    paint::row(painter, rect.expand2(vec2(6.0, 0.0)), &response, false, t);
    let square =
        Rect::from_center_size(rect.right_center() - vec2(12.0, 0.0), vec2(18.0, 18.0));
    let edge = Stroke::new(1.3, if on { t.outline } else { t.control_edge });
    painter.rect(square, 4.0, if on { t.wash } else { t.panel }, edge, StrokeKind::Inside);
    if on {
        icons::check(painter, square.center(), t.outline);
    }
    let font = type_faces::regular(type_faces::BODY);
    painter.text(rect.left_center(), Align2::LEFT_CENTER, name, font, t.ink);
    response.on_hover_text(why).clicked().then_some(!on)
}

/// A number without needless decimals.
pub(crate) fn short(value: f64) -> String {
    let text = decimal(value, 2);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
