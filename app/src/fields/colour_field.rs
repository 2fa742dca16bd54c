//! Any colour: how it stands on the colour circle, how strong and how light it is, or the six
//! digits it is known by.

use egui::ecolor::Hsva;
use egui::{
    EventFilter, Id, Key, Mesh, Modifiers, Rect, Role, Sense, Shape, Stroke, StrokeKind,
    TextEdit, Ui, WidgetInfo, pos2, vec2,
};

use crate::kit::{Tokens, paint, type_faces};

/// Height of a slider, and of what of it is coloured.
const SLIDER: f32 = 24.0;
const RAIL: f32 = 12.0;
/// How far an arrow moves it; with Shift ten times as far.
const STEP: f32 = 0.01;
/// Places between which a rail is shaded.
const SHADES: u32 = 24;

/// Draws the field for `colour`, sRGB; returns another one where it was changed.
pub(crate) fn show(ui: &mut Ui, salt: Id, colour: [u8; 3]) -> Option<[u8; 3]> {
    // A grey has no place on the circle, black no strength: what they were last is kept, so
    // that a slider does not jump.
    let kept = ui.data(|d| d.get_temp::<Hsva>(salt)).filter(|kept| kept.to_srgb() == colour);
    let now = kept.unwrap_or_else(|| Hsva::from_srgb(colour));
    let mut next = now;
    let whole = |h: f32| Hsva::new(h, 0.75, 0.9, 1.0);
    slide(ui, say!("color-hue"), &mut next.h, whole);
    slide(ui, say!("color-strength"), &mut next.s, |s| Hsva { s, ..now });
    slide(ui, say!("color-lightness"), &mut next.v, |v| Hsva { v, ..now });
    let mut to = (next != now).then(|| next.to_srgb());
    if let Some(typed) = digits(ui, salt.with("digits"), colour) {
        next = Hsva::from_srgb(typed);
        to = Some(typed);
    }
    ui.data_mut(|d| d.insert_temp(salt, next));
    to.filter(|to| *to != colour)
}

/// A slider from nought to one over the colours it gives.
fn slide(ui: &mut Ui, name: &str, value: &mut f32, colour: impl Fn(f32) -> Hsva) {
    let t = Tokens::now(ui.ctx());
    let size = vec2(ui.available_width(), SLIDER);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click_and_drag());
    let percent = (f64::from(*value) * 100.0).round();
    response.widget_info(|| WidgetInfo::slider(true, percent, name));
    let rail = Rect::from_center_size(rect.center(), vec2(rect.width() - 16.0, RAIL));
    if let Some(at) = response.interact_pointer_pos() {
        *value = ((at.x - rail.left()) / rail.width()).clamp(0.0, 1.0);
    }
    if response.has_focus() {
        let filter = EventFilter { horizontal_arrows: true, ..Default::default() };
        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
        let steps = ui.input_mut(|i| {
            let step = if i.modifiers.shift { 10.0 * STEP } else { STEP };
            let mut presses = |key| i.count_and_consume_key(Modifiers::NONE, key) as f32;
            (presses(Key::ArrowRight) - presses(Key::ArrowLeft)) * step
        });
        *value = (*value + steps).clamp(0.0, 1.0);
    }
    let mut mesh = Mesh::default();
    for i in 0..=SHADES {
        let share = i as f32 / SHADES as f32;
        let shade = Tokens::yarn(colour(share).to_srgb());
        let x = egui::lerp(rail.x_range(), share);
        mesh.colored_vertex(pos2(x, rail.top()), shade);
        mesh.colored_vertex(pos2(x, rail.bottom()), shade);
        if i > 0 {
            let last = 2 * i;
            mesh.add_triangle(last - 2, last - 1, last);
            mesh.add_triangle(last - 1, last, last + 1);
        }
    }
    let painter = ui.painter();
    painter.add(Shape::mesh(mesh));
    let edge = Stroke::new(1.0, t.control_edge);
    painter.rect_stroke(rail.expand(0.5), 2.0, edge, StrokeKind::Middle);
    let knob = pos2(egui::lerp(rail.x_range(), *value), rail.center().y);
    let fill = Tokens::yarn(colour(*value).to_srgb());
    let grown = if response.hovered() || response.dragged() { 1.0 } else { 0.0 };
    painter.circle(knob, 8.0 + grown, t.panel, Stroke::new(2.0, t.outline));
    painter.circle_filled(knob, 5.0 + grown, fill);
    if response.has_focus() {
        let about = Rect::from_center_size(knob, vec2(18.0, 18.0));
        paint::focus_ring(painter, about, 9.0, t);
    }
    response.on_hover_text(name);
}

/// The six digits, typed in place: returns the colour once they are one.
fn digits(ui: &mut Ui, salt: Id, colour: [u8; 3]) -> Option<[u8; 3]> {
    let told = text_of(colour);
    let typed = ui.data(|d| d.get_temp::<String>(salt));
    let mut text = typed.unwrap_or_else(|| told.clone());
    ui.horizontal(|ui| {
        let t = Tokens::now(ui.ctx());
        let (swatch, _) = ui.allocate_exact_size(vec2(40.0, 24.0), Sense::hover());
        let edge = Stroke::new(1.0, t.yarn_edge(colour));
        let fill = Tokens::yarn(colour);
        ui.painter().rect(swatch, 4.0, fill, edge, StrokeKind::Inside);
        let field = TextEdit::singleline(&mut text)
            .font(type_faces::regular(type_faces::BODY))
            .char_limit(7)
            .desired_width(84.0);
        let field = ui.add(field);
        field.widget_info(|| {
            WidgetInfo::labeled(Role::TextInput, true, say!("color-hexadecimal"))
        });
        if field.has_focus() {
            ui.data_mut(|d| d.insert_temp(salt, text.clone()));
        } else {
            ui.data_mut(|d| d.remove::<String>(salt));
        }
        let changed = field.changed();
        field.on_hover_text(say!("color-hexadecimal-does"));
        changed.then(|| read(&text)).flatten()
    })
    .inner
}

/// A colour as it is written: `#B85640`.
fn text_of([r, g, b]: [u8; 3]) -> String {
    format!("#{r:02X}{g:02X}{b:02X}")
}

/// The colour that is written so, in six digits or in three.
fn read(text: &str) -> Option<[u8; 3]> {
    let text = text.trim().trim_start_matches('#');
    // A sign would be read as part of a number.
    if !text.bytes().all(|b| b.is_ascii_hexdigit()) {
        return None;
    }
    let part = |digits: &str| u8::from_str_radix(digits, 16).ok();
    match text.len() {
        6 => Some([part(&text[0..2])?, part(&text[2..4])?, part(&text[4..6])?]),
        3 => {
            let twice = |digit: &str| part(&digit.repeat(2));
            Some([twice(&text[0..1])?, twice(&text[1..2])?, twice(&text[2..3])?])
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_are_read_as_they_are_written() {
        for colour in [[0, 0, 0], [184, 86, 64], [255, 255, 255]] {
            assert_eq!(read(&text_of(colour)), Some(colour));
        }
        assert_eq!(read("b85640"), Some([184, 86, 64]));
        assert_eq!(read("#0f8"), Some([0, 255, 136]));
        for wrong in ["", "#12", "#12345", "#xyzxyz", "äöü", "+1+1+1"] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
    }
}
