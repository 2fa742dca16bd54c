//! What a window that is too small shows of the bench.

use egui::scroll_area::ScrollSource;
use egui::{Rect, ScrollArea, Ui, UiBuilder, Vec2, vec2};

use super::Tokens;
use super::controls;

/// Smallest bench on which nothing is cramped, points. In a window that is smaller, or under
/// text so large that it holds less, the bench scrolls.
pub const LEAST: Vec2 = vec2(940.0, 590.0);

/// The same of what is presented: panels and a line of buttons, no more.
pub const LEAST_PRESENTED: Vec2 = vec2(560.0, 380.0);

/// Draws the bench in `window` by `add`: as large as the window, or as its `least` size, of which
/// the window then shows a part. Tab brings what it reaches into sight.
pub fn fit<R>(ui: &mut Ui, window: Rect, least: Vec2, add: impl FnOnce(&mut Ui) -> R) -> R {
    let t = Tokens::now(ui.ctx());
    ui.painter().rect_filled(ui.max_rect(), 0.0, t.background);
    let mut child = ui.new_child(UiBuilder::new().max_rect(window).id_salt("bench"));
    if window.width() >= least.x && window.height() >= least.y {
        return add(&mut child);
    }
    // A bar takes room of its own, which may be what the other direction then lacks.
    let bar = child.spacing().scroll.allocated_width();
    let low = window.height() < least.y;
    let narrow = window.width() - if low { bar } else { 0.0 } < least.x;
    let low = low || (narrow && window.height() - bar < least.y);
    let room = window.size() - bar * vec2(f32::from(low), f32::from(narrow));
    let size = room.max(least);
    // The wheel zooms the boards; beside them it scrolls.
    let by = ScrollSource { drag: egui::scroll_area::DragScroll::Never, ..ScrollSource::ALL };
    controls::scroll_colours(&mut child);
    let area =
        ScrollArea::new([narrow, low]).id_salt("bench").auto_shrink(false).scroll_source(by);
    let shown = area.show(&mut child, |ui| {
        ui.reset_style();
        let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
        let mut bench = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("scrolled"));
        let inner = add(&mut bench);
        controls::follow_focus(ui);
        inner
    });
    shown.inner
}
