//! The Sizes stage: the sizes of the selected piece standing side by side over their table;
//! beside them where pieces meet, the piece in another yarn, what a sample taught, and how it
//! becomes as large as a toy at hand.

mod answers;
mod book;
mod cards;
mod line_up;
mod sample;
mod seams;
mod swap;
mod table;
mod toy;
mod whole;

use egui::{Rect, Stroke, Ui, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::SizeEdit;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::divide::Divided;
use crate::kit::tokens::{NARROW, PAD};
use crate::kit::{paint, type_faces};
use crate::view::look::Look;
use crate::view::sizes::SizesView;

pub use cards::show as side;

/// Least height in which the sizes are worth drawing, points.
const DRAWN: f32 = 90.0;

/// Divides `room`, the stage's part of the window: companions, another yarn, a sample and a
/// toy to match stand beside the sizes, or below them where the window is narrow.
pub fn divide(window: Rect, room: Rect) -> Divided {
    if window.width() < NARROW {
        return Divided::above(room, 0.42 * room.height());
    }
    Divided::beside(room, if window.width() < 1400.0 { 320.0 } else { 372.0 })
}

/// Draws the sizes in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let head = rect.left_top() + vec2(PAD, 22.0);
    let said = say!("sizes-of-piece", piece = bench.document.piece().name);
    let end = paint::title(ui.painter(), head, say!("sizes-sizes"), &said, bench.t);
    if bench.sizing.is_busy() {
        let at = pos2(end + 16.0, head.y + 1.0);
        let small = type_faces::regular(type_faces::SMALL);
        let left = egui::Align2::LEFT_CENTER;
        ui.painter().text(at, left, say!("sizes-preparing"), small, bench.t.soft_ink);
    }
    add(ui, bench, rect, actions);
    let rule = Stroke::new(1.0, bench.t.edge);
    ui.painter().hline(rect.x_range().shrink(PAD), rect.top() + 44.0, rule);
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 45.0),
        rect.max - vec2(PAD, 10.0),
    );
    if bench.view.sizes.whole {
        return whole::show(ui, bench, inner);
    }
    let rows = 1 + bench.document.piece().sizes.len();
    let wanted = table::height(rows);
    let high = (inner.height() - wanted).max(0.36 * inner.height());
    let (above, below) = inner.split_top_bottom_at_y(inner.top() + high);
    if above.height() >= DRAWN {
        line_up::show(ui, bench, above);
        table::show(ui, bench, below, actions);
    } else {
        table::show(ui, bench, inner, actions);
    }
}

/// A size more; the sizes of this piece, or those of all.
fn add(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let words = say!("sizes-add-a-size");
    let width = controls::words_width(ui, words);
    let corner = pos2(rect.right() - PAD - width, rect.top() + 8.0);
    let place = Rect::from_min_size(corner, vec2(width, 28.0));
    let button = controls::button(ui, place, ButtonFace::Words(words), words, true);
    if button.on_hover_text(say!("sizes-the-same-shape-at-another-height-width")).clicked() {
        actions.edit(Edit::Sizes(SizeEdit::Add));
    }
    let words = say!("sizes-all-pieces");
    let width = controls::words_width(ui, words);
    let corner = pos2(place.left() - 8.0 - width, place.top());
    let place = Rect::from_min_size(corner, vec2(width, 28.0));
    let whole = bench.view.sizes.whole;
    let face = ButtonFace::Words(words);
    let button =
        controls::toggle(ui, place, face, say!("sizes-of-all-pieces"), true, Some(whole));
    if button.on_hover_text(say!("sizes-all-pieces-does")).clicked() {
        let view = SizesView { whole: !whole, ..bench.view.sizes.clone() };
        actions.look(Look::Sizes(Box::new(view)));
    }
}
