//! What is in hand: a part with its map, or an attachment.

use egui::{Align2, Rect, ScrollArea, Stroke, StrokeKind, Ui, UiBuilder, pos2, vec2};

use super::here::ToyBench;
use super::{attach_card, part_card, told};
use crate::bench::action::Actions;
use crate::document::toy::attachment_word;
use crate::fields::form;
use crate::kit::tokens::PAD;
use crate::kit::{controls, paint, type_faces};
use crate::view::toy::{ToyPick, ToyView};

/// Height of the tag of what is in hand.
const TAG: f32 = 34.0;

/// Draws the card in `panel`.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    panel: Rect,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let Some(pick) = here.bench.view.toy.taken else {
        paint::title(
            ui.painter(),
            panel.left_top() + vec2(PAD, 22.0),
            say!("toy-selected"),
            "",
            t,
        );
        let words = say!("toy-nothing-yet-click-a-part-in-the-list");
        let font = type_faces::regular(type_faces::BODY);
        let width = panel.width() - 2.0 * PAD;
        let galley = ui.painter().layout(words.into(), font, t.soft_ink, width);
        ui.painter().galley(panel.left_top() + vec2(PAD, 50.0), galley, t.soft_ink);
        return;
    };
    tag(ui, here, panel, pick);
    let inner = Rect::from_min_max(
        pos2(panel.left() + PAD, panel.top() + TAG + 16.0),
        pos2(panel.right() - 6.0, panel.bottom() - 8.0),
    );
    let mut child =
        ui.new_child(UiBuilder::new().max_rect(inner).id_salt(("in hand", pick_number(pick))));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        form::beside_the_bar(ui);
        ui.spacing_mut().item_spacing.y = 4.0;
        match pick {
            ToyPick::Part(index) => part_card::show(ui, here, index, next, actions),
            ToyPick::Attachment(index) => attach_card::show(ui, here, index, actions),
        }
        controls::follow_focus(ui);
    });
}

fn pick_number(pick: ToyPick) -> (u8, usize) {
    match pick {
        ToyPick::Part(index) => (0, index),
        ToyPick::Attachment(index) => (1, index),
    }
}

/// What is in hand, on a tag to which the thread is tied.
fn tag(ui: &Ui, here: &ToyBench<'_>, panel: Rect, pick: ToyPick) {
    let t = here.bench.t;
    let rect =
        Rect::from_min_size(panel.left_top() + vec2(8.0, 9.0), vec2(panel.width() - 16.0, TAG));
    let (name, end) = match pick {
        ToyPick::Part(index) => {
            let figures = here.made.and_then(|made| made.part(index));
            let title = told::title(here.project, index, here.bench.unit());
            let copies = here.part(index).map(|p| told::copies(p.copies)).unwrap_or_default();
            let title = if copies.is_empty() { title } else { format!("{title}  {copies}") };
            (title, told::sewn(figures).unwrap_or_default())
        }
        ToyPick::Attachment(index) => {
            let word = here.toy.attachments.get(index).map_or("", attachment_word);
            (told::capital(word), String::new())
        }
    };
    let painter = ui.painter();
    let edge = Stroke::new(1.4, t.highlight_edge);
    painter.rect(rect, 8.0, t.wash, edge, StrokeKind::Inside);
    let sign = rect.with_max_x(rect.left() + 10.0);
    painter.rect_filled(sign.shrink(1.0), 6.0, t.highlight);
    let bold = type_faces::bold(type_faces::BODY);
    let right = rect.right_center() - vec2(12.0, 0.0);
    let end = painter.text(right, Align2::RIGHT_CENTER, end, bold.clone(), t.ink);
    let at = rect.left_center() + vec2(20.0, 0.0);
    let room = end.left() - at.x - 10.0;
    paint::clipped_text(painter, at, &name, bold, t.ink, room);
}
