//! The Sheet stage: the pages as they will print, or their words; beside them how they are
//! laid out, what the designer adds, and what becomes of them.

mod arrange;
mod changes_card;
mod export;
mod options;
mod pages;
mod text;
mod words_card;

use egui::{Align2, Rect, Stroke, Ui, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::divide::Divided;
use crate::kit::fit::LEAST;
use crate::kit::icons::{self, Icon};
use crate::kit::tokens::{GAP, PAD};
use crate::kit::{paint, type_faces};
use crate::view::look::Look;
use crate::view::sheet::{SheetFace, SheetView};

pub use options::show as side;

/// Divides `room`, the stage's part of the window.
pub fn divide(window: Rect, room: Rect) -> Divided {
    Divided::beside(room, card_width(window))
}

/// Width of the card beside the pages.
fn card_width(window: Rect) -> f32 {
    if window.width() < 1400.0 { 300.0 } else { 344.0 }
}

/// Pixels a point of paper at which the pages are to be drawn.
pub fn page_scale(window: Rect, zoom: f32, pixels_per_point: f32) -> f32 {
    let width = window.width().max(LEAST.x) - 3.0 * GAP - card_width(window);
    pages::scale(width, zoom, pixels_per_point)
}

/// Draws the pattern in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let head = rect.left_top() + vec2(PAD, 22.0);
    let said = if bench.printing.is_current() {
        say!("sheet-pages", n = bench.printing.pages().len())
    } else {
        say!("sheet-preparing").to_owned()
    };
    paint::title(ui.painter(), head, say!("sheet-sheet"), &said, bench.t);
    buttons(ui, bench, rect, actions);
    let rule = Stroke::new(1.0, bench.t.edge);
    ui.painter().hline(rect.x_range().shrink(PAD), rect.top() + 44.0, rule);
    let inner = rect.with_min_y(rect.top() + 45.0).with_max_y(rect.bottom() - 4.0);
    let inner = inner.shrink2(vec2(6.0, 0.0));
    if let Some(error) = bench.printing.error() {
        let place = inner.shrink(24.0);
        icons::warning(ui.painter(), place.left_top() + vec2(8.0, 9.0), 15.0, bench.t.warning);
        let words = say!("sheet-the-sheet-cannot-be-made-error", error = error);
        let font = type_faces::regular(type_faces::BODY);
        let galley = ui.painter().layout(words, font, bench.t.ink, place.width() - 24.0);
        ui.painter().galley(place.left_top() + vec2(24.0, 0.0), galley, bench.t.ink);
        return;
    }
    match (bench.view.sheet.face, bench.printing.sheet()) {
        (SheetFace::Pages, _) => pages::show(ui, bench, inner),
        (SheetFace::Text, Some(sheet)) => text::show(ui, bench, inner, sheet, actions),
        (SheetFace::Text, None) => {
            let soft = type_faces::regular(type_faces::BODY);
            let (at, ink) = (inner.center(), bench.t.soft_ink);
            ui.painter().text(
                at,
                Align2::CENTER_CENTER,
                say!("sheet-preparing-text"),
                soft,
                ink,
            );
        }
    }
}

/// Pages or text; nearer and farther.
fn buttons(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let view = bench.view.sheet;
    let words = SheetFace::ALL.map(SheetFace::text);
    let now = usize::from(view.face == SheetFace::Text);
    let strip = Rect::from_min_max(
        pos2(rect.center().x - 40.0, rect.top() + 6.0),
        pos2(rect.right() - PAD, rect.top() + 40.0),
    );
    if let Some(i) = form::pick(ui, strip, say!("sheet-the-sheet-as"), &words, now) {
        actions.look(Look::Sheet(SheetView { face: SheetFace::ALL[i], ..view }));
    }
    if view.face == SheetFace::Text {
        return;
    }
    let mut right = rect.right() - PAD - 150.0;
    for (icon, name, by) in [
        (Icon::More, say!("sheet-larger-pages"), 1),
        (Icon::Less, say!("sheet-smaller-pages"), -1),
    ] {
        let corner = pos2(right - 28.0, rect.top() + 9.0);
        let place = Rect::from_min_size(corner, vec2(28.0, 28.0));
        let next = view.zoomed(by);
        let button = controls::button(ui, place, ButtonFace::Icon(icon), name, next != view);
        if button.on_hover_text(name).clicked() {
            actions.look(Look::Sheet(next));
        }
        right -= 34.0;
    }
}
