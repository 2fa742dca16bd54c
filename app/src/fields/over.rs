//! Cards that lie over the window until they are put away: a heading with a cross, and below
//! it what the card holds, which scrolls where the window is too small for it.

use egui::{Context, Id, Modal, Rect, ScrollArea, Sense, Ui, vec2};

use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::{Tokens, paint};

/// Between the card and the edge of the window.
const APART: f32 = 12.0;
/// Inside the card.
const INSIDE: f32 = 20.0;
/// How long a press may still be one that was meant for where a button stood, s.
const MOMENT_S: f64 = 1.0;
/// Room for the ring round a control at the card's edge.
const RING: f32 = 4.0;

/// What heads a card.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Head {
    pub(crate) title: &'static str,
    pub(crate) hint: &'static str,
    /// Width of what the card holds.
    pub(crate) width: f32,
}

/// Draws a card; `top` stays over `body`, which scrolls. Returns whether it is to be put away.
pub(crate) fn show(
    ctx: &Context,
    head: Head,
    top: impl FnOnce(&mut Ui),
    body: impl FnOnce(&mut Ui),
) -> bool {
    let room = ctx.content_rect().size() - vec2(2.0, 2.0) * (APART + INSIDE);
    let frame = egui::Frame::popup(&ctx.global_style()).inner_margin(INSIDE);
    let modal = Modal::new(Id::unique(head.title)).frame(frame).show(ctx, |ui| {
        let width = head.width.min(room.x);
        ui.set_width(width);
        ui.spacing_mut().item_spacing = vec2(8.0, 8.0);
        let closed = heading(ui, head, width);
        top(ui);
        let high = (room.y - ui.min_rect().height() - 8.0).max(60.0);
        controls::scroll_colours(ui);
        // It goes sideways only where the window is too narrow for what it holds.
        let wide = head.width <= room.x;
        let area = if wide { ScrollArea::vertical() } else { ScrollArea::both() };
        // Without a least size the area would keep to that of the frame before.
        let area = area.max_height(high).min_scrolled_height(high).min_scrolled_width(width);
        area.max_width(width).show(ui, |ui| {
            ui.reset_style();
            ui.spacing_mut().item_spacing = vec2(8.0, 8.0);
            let inner = if wide { ui.available_width() } else { head.width };
            egui::Frame::NONE.inner_margin(RING).show(ui, |ui| {
                ui.set_width(inner - 2.0 * RING);
                body(ui);
            });
            controls::follow_focus(ui);
        });
        closed
    });
    // A press on a button that made everything larger may fall beside the card it moved: only
    // what is pressed after that puts it away.
    let outside = modal.should_close() && !has_just_grown(ctx);
    modal.inner || outside
}

/// Whether text became larger or smaller within the last moment.
fn has_just_grown(ctx: &Context) -> bool {
    let id = Id::unique("size of text");
    let (zoom, now) = (ctx.zoom_factor(), ctx.input(|i| i.time));
    let known = ctx.data(|d| d.get_temp::<(f32, f64)>(id));
    let since = match known {
        Some((was, since)) if was == zoom => since,
        None => f64::NEG_INFINITY,
        Some(_) => now,
    };
    ctx.data_mut(|d| d.insert_temp(id, (zoom, since)));
    now - since < MOMENT_S
}

fn heading(ui: &mut Ui, head: Head, width: f32) -> bool {
    let t = Tokens::now(ui.ctx());
    let (rect, _) = ui.allocate_exact_size(vec2(width, 30.0), Sense::hover());
    let close = Rect::from_center_size(rect.right_center() - vec2(13.0, 0.0), vec2(26.0, 26.0));
    let painter = ui.painter_at(rect.with_max_x(close.left() - 8.0));
    paint::title(&painter, rect.left_center(), head.title, head.hint, t);
    let button = controls::button(
        ui,
        close,
        ButtonFace::Icon(Icon::Close),
        say!("over-close-the-card"),
        true,
    );
    button.on_hover_text(say!("over-back")).clicked()
}
