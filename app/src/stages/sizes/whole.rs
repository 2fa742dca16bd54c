//! The sizes of every piece of the project in one table, and what each size takes in all.

use egui::{Align2, Rect, ScrollArea, Stroke, Ui, UiBuilder, pos2};
use plumpline_core::sizes::{MadeSize, SizeRow};

use super::table;
use crate::bench::Bench;
use crate::kit::controls;
use crate::kit::{paint, type_faces};
use crate::work::making::size_title;
use crate::work::sizes::PieceSizes;

/// Draws the table in `rect`.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect) {
    table::headings(ui, bench, rect);
    let body = rect.with_min_y(rect.top() + table::HEAD);
    let Some(found) = bench.sizing.found().and_then(|found| found.whole.as_deref()) else {
        let font = type_faces::regular(type_faces::BODY);
        let at = body.left_top() + egui::vec2(0.0, 20.0);
        ui.painter().text(
            at,
            Align2::LEFT_CENTER,
            say!("sizes-whole-working"),
            font,
            bench.t.soft_ink,
        );
        return;
    };
    let mut child = ui.new_child(UiBuilder::new().max_rect(body).id_salt("all sizes"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 0.0;
        for (i, piece) in found.iter().enumerate() {
            ui.push_id(i, |ui| {
                for row in &piece.rows {
                    one(ui, bench, piece, row);
                }
            });
        }
        totals(ui, bench, found);
        controls::follow_focus(ui);
    });
}

/// A size of a piece: the piece's name stands before its first row.
fn one(ui: &mut Ui, bench: &Bench<'_>, piece: &PieceSizes, row: &SizeRow) {
    let places = table::row(ui, bench);
    let t = bench.t;
    let first = row.name.is_none();
    if first {
        let bold = type_faces::bold(type_faces::BODY);
        let words = match piece.copies {
            1 => piece.name.clone(),
            n => format!("{} ×{n}", piece.name),
        };
        let room = places[1].left() - places[0].left() - 8.0;
        paint::clipped_text(ui.painter(), places[0].left_center(), &words, bold, t.ink, room);
    }
    let size = row.name.as_deref().unwrap_or(say!("sizes-whole-as-drawn"));
    let body = type_faces::regular(type_faces::BODY);
    let ink = if first { t.soft_ink } else { t.ink };
    let room = places[3].left() - places[1].left() - 8.0;
    paint::clipped_text(ui.painter(), places[1].left_center(), size, body, ink, room);
    ui.push_id((piece.piece, size), |ui| {
        table::figures(ui, bench, &places, Some(row), piece.rows.first());
    });
}

/// What a size takes of one piece: a piece without it is made as it is drawn.
fn made<'a>(piece: &'a PieceSizes, size: Option<&str>) -> Option<&'a MadeSize> {
    let named = piece.rows.iter().find(|row| row.name.as_deref() == size);
    named.or(piece.rows.first())?.made.as_ref().ok()
}

/// Yarn, stuffing and time of all pieces and their copies, at each size there is.
fn totals(ui: &mut Ui, bench: &Bench<'_>, found: &[PieceSizes]) {
    let mut sizes: Vec<Option<&str>> = vec![None];
    for row in found.iter().flat_map(|piece| &piece.rows) {
        if !sizes.contains(&row.name.as_deref()) {
            sizes.push(row.name.as_deref());
        }
    }
    let yarns = &bench.document.project().yarns;
    for size in sizes {
        let places = table::row(ui, bench);
        let pen = Stroke::new(1.0, bench.t.edge);
        ui.painter().hline(places[0].left()..=places[10].right(), places[0].top(), pen);
        let bold = || type_faces::bold(type_faces::BODY);
        let at = places[0].left_center();
        let words = say!("sizes-whole-all", size = size_title(size));
        let room = places[3].left() - at.x - 8.0;
        paint::clipped_text(ui.painter(), at, &words, bold(), bench.t.ink, room);
        let all: Option<Vec<(&MadeSize, u32)>> =
            found.iter().map(|piece| Some((made(piece, size)?, piece.copies))).collect();
        let Some(all) = all else {
            let why = say!("sizes-whole-cannot");
            let at = places[3].left_center();
            ui.painter().text(at, Align2::LEFT_CENTER, why, bold(), bench.t.warning);
            continue;
        };
        for (place, words) in places[6..10].iter().zip(table::sums(&all, bench.unit(), yarns)) {
            let at = pos2(place.left(), place.center().y);
            let room = place.width() + 6.0;
            paint::clipped_text(ui.painter(), at, &words, bold(), bench.t.ink, room);
        }
    }
}
