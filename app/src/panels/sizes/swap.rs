//! Another yarn: the piece in another swatch, its rounds kept or its size kept, side by side.

use egui::{Align2, DragValue, Rect, Sense, Stroke, Ui, pos2, vec2};
use plumpline_core::calibrate::Entry;
use plumpline_core::sizes::Keeps;
use plumpline_core::{Gauge, Plan, Yarn};

use crate::panels::{form, length_field};
use crate::studio::action::{Actions, Edit, Look};
use crate::studio::bench::Bench;
use crate::studio::sizing::SizeEdit;
use crate::ui_kit::controls::{self, Face};
use crate::ui_kit::type_faces;

/// Width of a field.
const FIELD: f32 = 84.0;

/// Draws the card.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::remark(
        ui,
        "Count a swatch of the other yarn, worked in the round, right side out, unstuffed.",
    );
    let own = bench.document.piece().gauge;
    let gauge = bench.view.sizes.other.unwrap_or(own);
    let mut new = gauge;
    number(ui, "Stitches", "Other yarn, stitches", &mut new.stitches, actions);
    number(ui, "Rounds", "Other yarn, rounds", &mut new.rounds, actions);
    let rect = form::row(ui, "over", "The length both were counted over");
    let at = (gauge.across_mm, bench.unit());
    let over = "Other yarn, over";
    if let Some(mm) = length_field::show(ui, field(rect), over, at, 1.0..=2000.0, actions) {
        (new.across_mm, new.along_mm) = (mm, mm);
    }
    let mut hook = gauge.hook_mm;
    let rect = form::row(ui, "Hook", "Shaft diameter");
    let drag = DragValue::new(&mut hook).range(0.5..=30.0).speed(0.02).suffix(" mm");
    form::field(ui, field(rect), "Other yarn, hook", drag.max_decimals(2), actions);
    new.hook_mm = hook;
    book(ui, bench, &mut new);
    if new != gauge && new.validate().is_ok() {
        actions.look(Look::Sizes(Box::new(
            bench.view.sizes.changed(|view| view.other = Some(new)),
        )));
    }
    if bench.view.sizes.other.is_none() {
        return;
    }
    compared(ui, bench, gauge, actions);
}

fn field(row: Rect) -> Rect {
    let middle = pos2(row.right() - 8.0 - 0.5 * FIELD, row.center().y);
    Rect::from_center_size(middle, vec2(FIELD, 26.0))
}

fn number(ui: &mut Ui, words: &str, name: &str, value: &mut f64, actions: &mut Actions) {
    let rect = form::row(ui, words, "As counted on the swatch");
    let drag = DragValue::new(value).range(0.5..=1000.0).speed(0.1).max_decimals(2);
    form::field(ui, field(rect), name, drag, actions);
}

/// Swatches that are known already.
fn book(ui: &mut Ui, bench: &Bench<'_>, gauge: &mut Gauge) {
    let entries = bench.gauges.entries();
    if entries.is_empty() {
        return;
    }
    form::heading(ui, "From the gauge book");
    for (i, entry) in entries.iter().enumerate() {
        let words = titled(entry);
        let (rect, _) =
            ui.allocate_exact_size(vec2(ui.available_width() - 8.0, 30.0), Sense::hover());
        let place = rect.shrink2(vec2(0.0, 1.0));
        let name = format!("Gauge {}: {words}", i + 1);
        let on = Some(entry.gauge == *gauge);
        if controls::toggle(ui, place, Face::Words(&words), &name, true, on).clicked() {
            *gauge = entry.gauge;
        }
    }
}

/// An entry of the gauge book in a line: `Oat, 3.5 mm, Ada`.
pub(super) fn titled(entry: &Entry) -> String {
    let hook = form::short(entry.hook_mm);
    match entry.maker.trim() {
        "" => format!("{}, {hook} mm", entry.yarn),
        maker => format!("{}, {hook} mm, {maker}", entry.yarn),
    }
}

/// The piece as it is and both ways in the other yarn.
fn compared(ui: &mut Ui, bench: &Bench<'_>, gauge: Gauge, actions: &mut Actions) {
    form::heading(ui, "Side by side");
    let swap = bench.sizing.found().and_then(|found| found.swap.as_ref());
    let both = match swap {
        None => return form::remark(ui, "Working it out …"),
        Some(Err(error)) => return form::remark(ui, error),
        Some(Ok(both)) => both,
    };
    let same_rounds = both.same_rounds.as_ref().map(|(_, plan)| plan);
    let same_size = both.same_size.as_ref().map(|made| &made.plan);
    let columns: [(&str, Option<&Plan>); 3] = [
        ("now", Some(&both.now)),
        ("same rounds", same_rounds.ok()),
        ("same size", same_size.ok()),
    ];
    let unit = bench.unit();
    let yarns = &bench.document.project().yarns;
    let heads = columns.map(|(head, _)| head.to_owned());
    row(ui, bench, "", heads, true);
    let line = |ui: &mut Ui, words: &str, of: &dyn Fn(&Plan) -> String| {
        row(ui, bench, words, columns.map(|(_, plan)| plan.map_or("–".into(), of)), false);
    };
    line(ui, unit.symbol(), &|p| {
        format!("{} × {}", unit.rough_number(p.size_mm.0), unit.rough_number(p.size_mm.1))
    });
    line(ui, "rounds", &|p| p.rounds.len().to_string());
    line(ui, "stitches", &|p| p.estimate.stitches.to_string());
    line(ui, "metres", &|p| format!("{:.0}", metres(p, yarns)));
    line(ui, "minutes", &|p| format!("{:.0}", p.estimate.minutes));
    let errors = [both.same_rounds.as_ref().err(), both.same_size.as_ref().err()];
    for error in errors.into_iter().flatten() {
        form::remark(ui, &error.to_string());
    }
    let current = bench.sizing.is_current();
    for (words, keeps, can) in [
        ("Work the same rounds in it", Keeps::Rounds, both.same_rounds.is_ok()),
        ("Work the same size in it", Keeps::Size, both.same_size.is_ok()),
    ] {
        if form::wide(ui, form::ROW, words, can && current, false).clicked() {
            actions.edit(Edit::Sizes(SizeEdit::Swap(gauge, keeps)));
        }
    }
}

fn metres(plan: &Plan, yarns: &[Yarn]) -> f64 {
    plan.estimate.yarn.iter().filter(|used| used.yarn < yarns.len()).map(|u| u.metres).sum()
}

/// A row of the comparison.
fn row(ui: &mut Ui, bench: &Bench<'_>, words: &str, cells: [String; 3], head: bool) {
    let size = vec2(ui.available_width() - 8.0, 24.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    let font = type_faces::regular(if head { type_faces::SMALL } else { type_faces::BODY });
    let t = bench.t;
    let soft = type_faces::regular(type_faces::SMALL);
    ui.painter().text(rect.left_center(), Align2::LEFT_CENTER, words, soft, t.soft_ink);
    let from = rect.left() + 56.0;
    let wide = (rect.right() - from) / 3.0;
    let said =
        format!("{words}: now {}, same rounds {}, same size {}", cells[0], cells[1], cells[2]);
    if !head {
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &said));
    }
    for (i, cell) in cells.into_iter().enumerate() {
        let at = pos2(from + wide * (i + 1) as f32, rect.center().y);
        let ink = if head { t.soft_ink } else { t.ink };
        ui.painter().text(at, Align2::RIGHT_CENTER, cell, font.clone(), ink);
    }
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.grid));
}
