//! The card beside the table: companions, another yarn, a sample; three beads on a thread.

use egui::{Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use super::{sample, seams, swap};
use crate::panels::form;
use crate::studio::action::{Actions, Look};
use crate::studio::bench::Bench;
use crate::studio::sizing::{SizesCard, SizesView};
use crate::ui_kit::controls;
use crate::ui_kit::tokens::PAD;

/// Height of the words to choose from.
const HEADING: f32 = 44.0;

/// Draws the card in `rect`.
pub(in crate::panels) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    actions: &mut Actions,
) {
    let view = &bench.view.sizes;
    let words = SizesCard::ALL.map(SizesCard::text);
    let now = SizesCard::ALL.iter().position(|&c| c == view.card).unwrap_or(0);
    let head = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 6.0),
        pos2(rect.right() - PAD, rect.top() + HEADING - 4.0),
    );
    if let Some(i) = form::pick(ui, head, "Beside the sizes", &words, now) {
        let card = SizesCard::ALL[i];
        actions.look(Look::Sizes(Box::new(SizesView { card, ..view.clone() })));
    }
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + HEADING),
        rect.max - vec2(6.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt(view.card.text()));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 4.0;
        match view.card {
            SizesCard::Seams => seams::show(ui, bench, actions),
            SizesCard::Yarn => swap::show(ui, bench, actions),
            SizesCard::Sample => sample::show(ui, bench, actions),
        }
        controls::follow_focus(ui);
    });
}
