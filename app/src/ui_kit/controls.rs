//! Controls with a drawn face: buttons that carry an icon, and lines of text.

use egui::{Align2, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};

use super::icons::Icon;
use super::tokens::{CARD_RADIUS, Tokens};
use super::{paint, type_faces};

/// What a button shows.
#[derive(Debug, Clone, Copy)]
pub enum Face<'a> {
    /// An icon alone.
    Icon(Icon),
    /// Words alone.
    Words(&'a str),
    /// Words, then an icon.
    WordsThen(&'a str, Icon),
}

/// A raised button at `rect`. `name` is what assistive tools read.
pub fn button(ui: &Ui, rect: Rect, face: Face<'_>, name: &str, enabled: bool) -> Response {
    toggle(ui, rect, face, name, enabled, None)
}

/// A raised button that may be held down: `on` says whether it is.
pub fn toggle(
    ui: &Ui,
    rect: Rect,
    face: Face<'_>,
    name: &str,
    enabled: bool,
    on: Option<bool>,
) -> Response {
    let t = Tokens::now(ui.ctx());
    let sense = if enabled { Sense::click() } else { Sense::hover() };
    let response = ui.interact(rect, ui.scope_id().with(name), sense);
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
    let fill = if held { t.wash } else { t.panel };
    painter.rect(at, CARD_RADIUS, fill, Stroke::new(width, edge), StrokeKind::Inside);
    let ink = if enabled { t.ink } else { t.disabled() };
    let font = type_faces::semibold(type_faces::BODY);
    match face {
        Face::Icon(icon) => icon.paint(painter, at.center(), ink),
        Face::Words(words) => {
            painter.text(at.center(), Align2::CENTER_CENTER, words, font, ink);
        }
        Face::WordsThen(words, icon) => {
            let left = at.left_center() + vec2(10.0, 0.0);
            painter.text(left, Align2::LEFT_CENTER, words, font, ink);
            icon.paint(painter, at.right_center() - vec2(12.0, 1.0), ink);
        }
    }
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    response
}

/// Colours for the scroll bar of a scroll area: its handle has the edge of a control.
pub fn scroll_colours(ui: &mut Ui) {
    let t = Tokens::now(ui.ctx());
    let widgets = &mut ui.visuals_mut().widgets;
    widgets.inactive.bg_fill = t.control_edge;
    widgets.hovered.bg_fill = t.outline;
    widgets.active.bg_fill = t.outline;
}

/// How wide a button with these words should be.
pub fn words_width(ui: &Ui, words: &str) -> f32 {
    let font = type_faces::semibold(type_faces::BODY);
    let t = Tokens::now(ui.ctx());
    ui.painter().layout_no_wrap(words.to_owned(), font, t.ink).size().x + 22.0
}
