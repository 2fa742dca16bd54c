//! A row of the list for something that holds the toy.

use egui::{Stroke, Ui, pos2, vec2};
use plumpline_core::project::toy::attachment::Attachment;

use super::here::ToyBench;
use super::parts::ListRow;
use super::told;
use crate::view::toy::{ToyPick, ToyView};

/// Draws the row of attachment `index`.
pub(super) fn row(ui: &mut Ui, here: &ToyBench<'_>, index: usize, next: &mut ToyView) {
    let Some(attachment) = here.toy.attachments.get(index) else { return };
    let (title, below) = told::attached(here.project, here.made, index);
    let refused = here.made.is_some_and(|made| {
        made.cautions.iter().any(|c| c.attachment == Some(index) && c.refused)
    });
    let name = if refused {
        say!("attach-row-refused", number = index + 1, title = title, below = below)
    } else {
        say!("attach-row", number = index + 1, title = title, below = below)
    };
    let row = ListRow {
        title: &title,
        below: &below,
        name: &name,
        on: next.attachment() == Some(index),
        lit: false,
        inset: 0.0,
        warned: refused,
    };
    let (sign, response) = row.show(ui, here);
    let pen = Stroke::new(2.2, here.bench.t.forecast_edge);
    let (painter, at) = (ui.painter(), sign.center());
    match attachment {
        Attachment::Loop(_) => {
            painter.add(egui::Shape::ellipse_stroke(at, vec2(7.0, 12.0), pen));
        }
        Attachment::Cord(_) => {
            for x in [-4.0, 4.0] {
                painter.vline(at.x + x, at.y - 13.0..=at.y + 13.0, pen);
            }
        }
        Attachment::Wire(_) => {
            painter.vline(at.x, at.y - 10.0..=at.y + 10.0, pen);
            for y in [-13.0, 13.0] {
                painter.circle_stroke(pos2(at.x, at.y + y), 4.0, pen);
            }
        }
        Attachment::Sling(_) => {
            for x in [-9.0, 9.0] {
                let ends = [pos2(at.x, at.y - 13.0), pos2(at.x + x, at.y + 12.0)];
                painter.line_segment(ends, pen);
            }
        }
        Attachment::Joint(_) => {
            painter.circle_stroke(at, 9.0, pen);
            painter.hline(at.x - 14.0..=at.x + 14.0, at.y, pen);
        }
    }
    if response.clicked() {
        next.taken = Some(ToyPick::Attachment(index));
    }
}
