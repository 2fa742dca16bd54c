//! The card beside the table: companions, another yarn, a sample, a toy to match.

use egui::{Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use super::{sample, seams, swap, toy};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::fields::form;
use crate::kit::controls;
use crate::kit::paint;
use crate::kit::tokens::PAD;
use crate::view::look::Look;
use crate::view::sizes::{SizesCard, SizesView};

/// Height of a line of the words to choose from.
const LINE: f32 = 30.0;

/// Draws the card in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let view = &bench.view.sizes;
    let at = pos2(rect.left() + PAD, rect.top() + 22.0);
    paint::title(ui.painter(), at, say!("sizes-beside-title"), view.card.about(), bench.t);
    let top = rect.top() + 38.0;
    let head = Rect::from_x_y_ranges(rect.x_range().shrink(PAD), top..=top + LINE);
    let end = choice(ui, view, head, actions);
    let inner =
        Rect::from_min_max(pos2(rect.left() + PAD, end + 6.0), rect.max - vec2(6.0, 8.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt(view.card.text()));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        form::beside_the_bar(ui);
        ui.spacing_mut().item_spacing.y = 4.0;
        match view.card {
            SizesCard::Seams => seams::show(ui, bench, actions),
            SizesCard::Yarn => swap::show(ui, bench, actions),
            SizesCard::Sample => sample::show(ui, bench, actions),
            SizesCard::Match => toy::show(ui, bench, actions),
        }
        controls::follow_focus(ui);
    });
}

/// The cards to choose from, from the line `head` down, on two lines where one is too narrow
/// for them; returns where they end.
fn choice(ui: &Ui, view: &SizesView, head: Rect, actions: &mut Actions) -> f32 {
    let words = SizesCard::ALL.map(SizesCard::text);
    let whole = form::pick_width(ui, &words) <= head.width();
    let of_line = if whole { words.len() } else { words.len().div_ceil(2) };
    let mut line = head;
    for (words, cards) in words.chunks(of_line).zip(SizesCard::ALL.chunks(of_line)) {
        // On another line none is chosen.
        let now = cards.iter().position(|&c| c == view.card).unwrap_or(words.len());
        if let Some(i) = form::pick(ui, line, say!("sizes-beside-the-sizes"), words, now) {
            actions.look(Look::Sizes(Box::new(SizesView { card: cards[i], ..view.clone() })));
        }
        line = line.translate(vec2(0.0, LINE));
    }
    line.top()
}
