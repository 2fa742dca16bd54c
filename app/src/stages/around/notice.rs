//! One line for the person: what went wrong, which stays until dismissed, or what was done,
//! with a way back where a key did it; that leaves by itself.

use egui::{Rect, Stroke, StrokeKind, Ui, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::type_faces;
use crate::view::look::Look;

/// Draws the line across the foot of `over`, if there is one.
pub fn show(ui: &Ui, bench: &Bench<'_>, over: Rect, actions: &mut Actions) {
    let Some(notice) = &bench.view.notice else { return };
    let t = bench.t;
    let font = type_faces::regular(type_faces::BODY);
    let most = (over.width() - 140.0).min(760.0);
    let galley = ui.painter().layout(notice.text.clone(), font, t.ink, most);
    let undo = notice.undo && Command::Undo.enabled(bench);
    let room = if undo { controls::words_width(ui, Command::Undo.text()) + 8.0 } else { 0.0 };
    let size = galley.size() + vec2(88.0 + room, 20.0);
    let rect = Rect::from_min_size(
        pos2(over.center().x - 0.5 * size.x, over.bottom() - 16.0 - size.y),
        size,
    );
    let (fill, edge) =
        if notice.wrong { (t.warn_wash, t.warning) } else { (t.panel, t.control_edge) };
    let painter = ui.painter();
    painter.rect(rect, 8.0, fill, Stroke::new(1.4, edge), StrokeKind::Inside);
    let mark = rect.left_center() + vec2(24.0, 0.0);
    if notice.wrong {
        icons::warning(painter, mark, 15.0, t.warning);
    } else {
        icons::check(painter, mark, t.increase);
    }
    painter.galley(rect.left_top() + vec2(44.0, 10.0), galley, t.ink);
    if undo {
        let right = rect.right() - 42.0;
        let place = Rect::from_x_y_ranges(
            right - room + 8.0..=right,
            rect.center().y - 13.0..=rect.center().y + 13.0,
        );
        let face = ButtonFace::Words(Command::Undo.text());
        let name = format!("Undo: {}", notice.text);
        if controls::button(ui, place, face, &name, true).clicked() {
            actions.command(Command::Undo);
            actions.look(Look::Dismiss);
        }
    }
    let close = Rect::from_center_size(rect.right_center() - vec2(22.0, 0.0), vec2(26.0, 26.0));
    if controls::button(ui, close, ButtonFace::Icon(Icon::Close), "Dismiss", true).clicked() {
        actions.look(Look::Dismiss);
    }
}
