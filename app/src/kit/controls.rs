//! Controls with a drawn face: buttons that carry an icon, and lines of text.

use egui::{
    Align2, Color32, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2,
};

use super::icons::Icon;
use super::tokens::{CARD_RADIUS, Tokens};
use super::{paint, type_faces};

/// What a button shows.
#[derive(Debug, Clone, Copy)]
pub enum ButtonFace<'a> {
    /// An icon alone.
    Icon(Icon),
    /// Words alone.
    Words(&'a str),
    /// Words, then an icon.
    WordsThen(&'a str, Icon),
}

/// A raised button at `rect`. `name` is what assistive tools read.
pub fn button(
    ui: &Ui,
    rect: Rect,
    face: ButtonFace<'_>,
    name: &str,
    enabled: bool,
) -> Response {
    toggle(ui, rect, face, name, enabled, None)
}

/// A raised button that may be held down: `on` says whether it is.
pub fn toggle(
    ui: &Ui,
    rect: Rect,
    face: ButtonFace<'_>,
    name: &str,
    enabled: bool,
    on: Option<bool>,
) -> Response {
    let t = Tokens::now(ui.ctx());
    let fill = if on == Some(true) { t.wash } else { t.panel };
    raised(ui, rect, face, (name, ui.scope_id().with(name)), (enabled, on), fill)
}

/// The same known by `id`: where its name changes while something hangs on it, as a card does
/// in which that name is typed.
pub fn toggle_known(
    ui: &Ui,
    rect: Rect,
    face: ButtonFace<'_>,
    (name, id): (&str, egui::Id),
    on: Option<bool>,
) -> Response {
    let t = Tokens::now(ui.ctx());
    let fill = if on == Some(true) { t.wash } else { t.panel };
    raised(ui, rect, face, (name, id), (true, on), fill)
}

/// The button of a card that does what the card is for.
pub fn primary(ui: &Ui, rect: Rect, words: &str, name: &str, enabled: bool) -> Response {
    let t = Tokens::now(ui.ctx());
    let fill = if enabled { t.highlight } else { t.panel };
    let known = (name, ui.scope_id().with(name));
    raised(ui, rect, ButtonFace::Words(words), known, (enabled, None), fill)
}

fn raised(
    ui: &Ui,
    rect: Rect,
    face: ButtonFace<'_>,
    (name, id): (&str, egui::Id),
    (enabled, on): (bool, Option<bool>),
    fill: Color32,
) -> Response {
    let t = Tokens::now(ui.ctx());
    let sense = if enabled { Sense::click() } else { Sense::hover() };
    let response = ui.interact(rect, id, sense);
    response.widget_info(|| match on {
        Some(on) => WidgetInfo::selected(Role::Button, enabled, on, name),
        None => WidgetInfo::labeled(Role::Button, enabled, name),
    });
    let pressed = enabled && response.is_pointer_button_down_on();
    let held = on == Some(true);
    let painter = ui.painter();
    let at = if pressed { rect.translate(vec2(0.0, 1.0)) } else { rect };
    if enabled && !pressed {
        paint::lip(painter, rect, CARD_RADIUS, t.edge_deep, 2.0);
    }
    let (edge, width) = match (enabled, response.hovered() || held) {
        (false, _) => (t.edge, 1.0),
        (true, true) => (t.outline, 1.5),
        (true, false) => (t.control_edge, 1.0),
    };
    painter.rect(at, CARD_RADIUS, fill, Stroke::new(width, edge), StrokeKind::Inside);
    let ink = match enabled {
        true if fill == t.highlight => t.on_highlight,
        true => t.ink,
        false => t.disabled(),
    };
    let font = type_faces::semibold(type_faces::BODY);
    match face {
        ButtonFace::Icon(icon) => icon.paint(painter, at.center(), ink),
        ButtonFace::Words(words) => {
            let galley = fitted(painter, words, font, ink, at.width() - 12.0);
            let place = Align2::CENTER_CENTER.anchor_size(at.center(), galley.size());
            painter.galley(place.min, galley, ink);
        }
        ButtonFace::WordsThen(words, icon) => {
            let galley = fitted(painter, words, font, ink, at.width() - 32.0);
            let left = at.left_center() + vec2(10.0, 0.0);
            let place = Align2::LEFT_CENTER.anchor_size(left, galley.size());
            painter.galley(place.min, galley, ink);
            icon.paint(painter, at.right_center() - vec2(12.0, 1.0), ink);
        }
    }
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    response
}

/// A slider over `(low, high, step)` at `rect`; returns the value it was moved to. Arrows
/// step it while it has the keyboard. One that is not `set` has a small knob at its value, and
/// any press sets it.
pub fn slider(
    ui: &Ui,
    rect: Rect,
    name: &str,
    (value, set): (f64, bool),
    (low, high, step): (f64, f64, f64),
) -> (Response, Option<f64>) {
    let response = ui.interact(rect, ui.scope_id().with(name), Sense::click_and_drag());
    let now = value.clamp(low, high);
    response.widget_info(|| WidgetInfo::slider(true, now, name));
    let track = rect.x_range().shrink(8.0);
    let snapped = |wanted: f64| (low + ((wanted - low) / step).round() * step).clamp(low, high);
    let mut wanted = now;
    let mut pressed = false;
    if let Some(pos) = response.interact_pointer_pos() {
        let share = ((pos.x - track.min) / track.span()).clamp(0.0, 1.0);
        wanted = snapped(low + f64::from(share) * (high - low));
        pressed = true;
    }
    if response.has_focus() {
        let filter = egui::EventFilter { horizontal_arrows: true, ..Default::default() };
        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
        let none = egui::Modifiers::NONE;
        let steps = ui.input_mut(|i| {
            i.count_and_consume_key(none, egui::Key::ArrowRight) as f64
                - i.count_and_consume_key(none, egui::Key::ArrowLeft) as f64
        });
        if steps != 0.0 {
            wanted = snapped(now + steps * step);
        }
    }
    let moved = (wanted - now).abs() > 1e-9 || (pressed && !set);
    let share = ((if moved { wanted } else { now }) - low) / (high - low);
    let stops = ((high - low) / step).round() as usize;
    let ticks = if stops <= MOST_TICKS { stops } else { 4 };
    draw_slider(ui, rect, (share as f32, set || moved), ticks, &response);
    (response, moved.then_some(wanted))
}

/// Stops of a slider that are all marked.
const MOST_TICKS: usize = 10;

fn draw_slider(
    ui: &Ui,
    rect: Rect,
    (share, set): (f32, bool),
    ticks: usize,
    response: &Response,
) {
    let t = Tokens::now(ui.ctx());
    let painter = ui.painter();
    let y = rect.center().y;
    let track = rect.x_range().shrink(8.0);
    let knob = egui::pos2(egui::lerp(track.min..=track.max, share), y);
    for i in 0..=ticks {
        let x = egui::lerp(track.min..=track.max, i as f32 / ticks as f32);
        painter.vline(x, y + 8.0..=y + 12.0, Stroke::new(1.0, t.control_edge));
    }
    let rail = Rect::from_x_y_ranges(rect.x_range(), y - 2.5..=y + 2.5);
    let edge = Stroke::new(1.0, t.control_edge);
    painter.rect(rail, 2.5, t.panel, edge, StrokeKind::Inside);
    let grown = if response.hovered() || response.dragged() { 1.0 } else { 0.0 };
    if set {
        painter.rect_filled(rail.with_max_x(knob.x), 2.5, t.outline);
        painter.circle(knob, 7.0 + grown, t.panel, Stroke::new(2.0, t.outline));
    } else {
        painter.circle(knob, 5.0 + grown, t.panel, Stroke::new(1.3, t.control_edge));
    }
    if response.has_focus() {
        paint::focus_ring(painter, Rect::from_center_size(knob, vec2(16.0, 16.0)), 8.0, t);
    }
}

/// Colours for the scroll bar of a scroll area: its handle has the edge of a control.
pub fn scroll_colours(ui: &mut Ui) {
    let t = Tokens::now(ui.ctx());
    let widgets = &mut ui.visuals_mut().widgets;
    widgets.inactive.bg_fill = t.control_edge;
    widgets.hovered.bg_fill = t.outline;
    widgets.active.bg_fill = t.outline;
}

/// Passes in which a scroll area follows the keyboard to a control. Of areas in one another
/// each may have to wait for what the other has scrolled; after that the hand may scroll.
const FOLLOWS: u64 = 24;

/// How far a scroll area has followed the keyboard.
#[derive(Debug, Clone, Copy)]
struct Following {
    /// The control that has it.
    control: egui::Id,
    /// The pass from which on it is not followed any more.
    until: u64,
    /// Where the control was when the area last scrolled to it.
    scrolled: Option<Rect>,
}

/// Brings the control that has just taken the keyboard into sight, where the scroll area that
/// `ui` is the inside of hides part of it.
pub fn follow_focus(ui: &Ui) {
    let kept = ui.scope_id().with("following");
    let Some(control) = ui.memory(|m| m.focused()) else {
        ui.data_mut(|d| d.remove::<Following>(kept));
        return;
    };
    let pass = ui.ctx().cumulative_pass_nr();
    let begun = Following { control, until: pass + FOLLOWS, scrolled: None };
    let before = ui.data(|d| d.get_temp::<Following>(kept));
    let mut now = before.filter(|before| before.control == control).unwrap_or(begun);
    if pass < now.until {
        follow(ui, &mut now);
        ui.data_mut(|d| d.insert_temp(kept, now));
    }
}

fn follow(ui: &Ui, now: &mut Following) {
    let Some(response) = ui.ctx().read_response(now.control) else { return };
    // What the hand has just taken is in sight already, as far as it matters.
    let by_hand = ui.input(|i| i.pointer.any_pressed() || i.pointer.any_released());
    if response.interact_rect == response.rect || by_hand {
        now.until = 0;
        return;
    }
    ui.ctx().request_repaint();
    // It may come to be ours, once an area within has scrolled; one that has scrolled waits
    // until that has moved the control.
    let ours = response.layer_id == ui.layer_id()
        && ui.min_rect().intersects(response.rect)
        && is_cut_within(&response, ui.clip_rect());
    if !ours || now.scrolled == Some(response.rect) {
        return;
    }
    // What little steps did not bring into sight of all areas goes to the middle of each.
    let align = now.scrolled.map(|_| egui::Align::Center);
    now.scrolled = Some(response.rect);
    let none = egui::style::ScrollAnimation::none();
    // Of what is larger than the area, its beginning.
    let whole = response.rect.expand(8.0);
    let size = whole.size().min(ui.clip_rect().size().max(egui::Vec2::ZERO));
    ui.scroll_to_rect_animation(Rect::from_min_size(whole.min, size), align, none);
}

/// Whether what hides part of a control can be an area in sight in `clip`: an edge that cuts it
/// lies there. What lies in an area beside may overlap this one, had nothing cut it.
fn is_cut_within(control: &Response, clip: Rect) -> bool {
    let (whole, seen) = (control.rect, control.interact_rect);
    // That of an area which is out of sight itself has its ends the wrong way round.
    let (x, y) = (clip.x_range().as_positive(), clip.y_range().as_positive());
    let cut = |edge: f32, uncut: f32, range: egui::Rangef| {
        edge != uncut && range.expand(0.5).contains(edge)
    };
    cut(seen.left(), whole.left(), x)
        || cut(seen.right(), whole.right(), x)
        || cut(seen.top(), whole.top(), y)
        || cut(seen.bottom(), whole.bottom(), y)
}

/// Words on one line, cut off with “…” where they would pass `width`.
fn fitted(
    painter: &egui::Painter,
    words: &str,
    font: egui::FontId,
    ink: egui::Color32,
    width: f32,
) -> std::sync::Arc<egui::Galley> {
    let mut job = egui::text::LayoutJob::simple_singleline(words.to_owned(), font, ink);
    job.wrap = egui::text::TextWrapping::truncate_at_width(width.max(4.0));
    painter.layout_job(job)
}

/// How wide a button with these words should be.
pub fn words_width(ui: &Ui, words: &str) -> f32 {
    let font = type_faces::semibold(type_faces::BODY);
    let t = Tokens::now(ui.ctx());
    ui.painter().layout_no_wrap(words.to_owned(), font, t.ink).size().x + 22.0
}
