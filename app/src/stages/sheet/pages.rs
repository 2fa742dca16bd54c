//! The pages as they will print.

use egui::{Color32, Image, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder};
use egui::{WidgetInfo, vec2};

use crate::bench::Bench;
use crate::kit::{controls, paint};

/// Widest a page is shown at zoom 1, points on screen.
const WIDEST: f32 = 820.0;
/// Room around a page.
const AROUND: f32 = 24.0;
/// Width of A4, points of paper.
const PAPER_PT: f32 = 595.0;

/// Points on screen a point of paper, in a panel this wide at zoom 1.
fn fitted(width: f32, paper_pt: f32) -> f32 {
    (width - 2.0 * AROUND - 12.0).clamp(240.0, WIDEST) / paper_pt.max(1.0)
}

/// Pixels a point of paper at which pages in a panel this wide are to be drawn; in steps, so
/// that a window that grows slowly does not ask for new pictures at every point.
pub(crate) fn scale(width: f32, zoom: f32, pixels_per_point: f32) -> f32 {
    let exact = fitted(width, PAPER_PT) * zoom * pixels_per_point;
    ((exact * 8.0).ceil() / 8.0).clamp(0.5, 6.0)
}

/// Draws the pages below one another.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect) {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("pages"));
    controls::scroll_colours(&mut child);
    let pages = bench.printing.pages();
    let zoom = bench.view.sheet.zoom;
    ScrollArea::both().auto_shrink(false).show(&mut child, |ui| {
        let room = ui.available_width();
        ui.add_space(16.0);
        for (i, page) in pages.iter().enumerate() {
            let scale = fitted(rect.width(), page.size_pt[0]) * zoom;
            let size = vec2(page.size_pt[0], page.size_pt[1]) * scale;
            let line = vec2(room.max(size.x), size.y);
            let (place, response) = ui.allocate_exact_size(line, Sense::hover());
            let name = say!("sheet-page-page-of-pages", page = i + 1, pages = pages.len());
            response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &name));
            let sheet = Rect::from_center_size(place.center(), size);
            if ui.is_rect_visible(sheet) {
                let edge = Stroke::new(1.0, bench.t.edge);
                paint::lip(ui.painter(), sheet, 2.0, bench.t.edge_deep, 3.0);
                ui.painter().rect(sheet, 2.0, Color32::WHITE, edge, StrokeKind::Outside);
                if let Some(picture) = &page.picture {
                    Image::new((picture.id(), size)).paint_at(ui, sheet);
                }
            }
            ui.add_space(16.0);
        }
    });
}
