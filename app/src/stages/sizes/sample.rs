//! A finished sample: what was measured, what it teaches, and how forecast and measure agree.

use egui::{Align2, DragValue, Rect, Sense, Stroke, TextEdit, Ui, vec2};
use plumpline_core::calibrate::{Calibration, Compared, Fitted, Quantity};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::SizeEdit;
use crate::fields::{form, length_field};
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{icons, type_faces};
use crate::view::look::Look;
use crate::view::sizes::SampleDraft;
use crate::work::home::DeskAction;

/// Width of the field of a measure, and of a count.
const FIELD: f32 = 84.0;
const COUNT: f32 = 52.0;
/// Longest measure, mm.
const LONGEST: f64 = 20_000.0;

/// Draws the card.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::remark(ui, say!("sample-crochet-this-piece-as-written-measure"));
    let name = &bench.document.piece().name;
    let draft = bench.view.sizes.sample(name);
    let mut new = draft.clone();
    form::heading(ui, say!("sample-unstuffed"));
    let across = say!("sample-stitches-why");
    counted(ui, bench, (say!("sample-stitches"), across), &mut new.stitches, actions);
    let along = say!("sample-rounds-why");
    counted(ui, bench, (say!("sample-rounds"), along), &mut new.rounds, actions);
    form::heading(ui, say!("sample-stuffed"));
    let stuffed = say!("sample-measured-on-the-stuffed-piece");
    length(ui, bench, (say!("sample-around-the-widest"), stuffed), &mut new.around_mm, actions);
    length(ui, bench, (say!("sample-height"), stuffed), &mut new.height_mm, actions);
    let tape = say!("sample-a-tape-right-around-the-stuffed-piece");
    length(ui, bench, (say!("sample-over-both-ends"), tape), &mut new.over_ends_mm, actions);
    form::heading(ui, say!("sample-yarn"));
    grams(ui, say!("sample-before-the-first-stitch"), &mut new.yarn_g.0, actions);
    grams(ui, say!("sample-after-the-last"), &mut new.yarn_g.1, actions);
    unravelled(ui, bench, &mut new, actions);
    if new != draft {
        let sizes = bench.view.sizes.changed(|view| {
            view.samples.insert(name.clone(), new);
        });
        actions.look(Look::Sizes(Box::new(sizes)));
    }
    others(ui, bench);
    match bench.sizing.found().and_then(|found| found.learned.as_ref()) {
        None => {}
        Some(Err(error)) => form::remark(ui, error),
        Some(Ok(learned)) => taught(ui, bench, learned, actions),
    }
}

/// Which other pieces were measured too: what is learned is learned of all of them.
fn others(ui: &mut Ui, bench: &Bench<'_>) {
    let own = bench.document.piece();
    let pieces = &bench.document.project().pieces;
    let of_gauge = pieces.iter().filter(|p| p.gauge == own.gauge && p.name != own.name);
    let (measured, unmeasured): (Vec<&str>, Vec<&str>) = of_gauge
        .map(|p| p.name.as_str())
        .partition(|name| !bench.view.sizes.sample(name).measures().is_empty());
    if !measured.is_empty() {
        form::remark(ui, &say!("sample-also-measured-pieces", pieces = measured.join(", ")));
    } else if !unmeasured.is_empty() {
        let names = unmeasured.join(", ");
        form::remark(ui, &say!("sample-what-you-measure-on-names-counts-too", names = names));
    }
}

/// So many stitches or rounds, and how long they are.
fn counted(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (words, why): (&str, &str),
    (count, mm): &mut (f64, f64),
    actions: &mut Actions,
) {
    let rect = form::row(ui, words, why);
    let drag = DragValue::new(count).range(1.0..=1000.0).speed(0.1);
    let drag = drag.custom_formatter(|count, _| form::short(count));
    let name = say!("sample-what-counted", what = words);
    form::field(ui, form::place(rect, FIELD + 6.0, COUNT), &name, drag, actions);
    let field = form::place(rect, 0.0, FIELD);
    let name = say!("sample-what-measured", what = words);
    let at = (*mm, bench.unit());
    if let Some(new) =
        length_field::show_or(ui, field, &name, at, 0.0..=LONGEST, Some("–"), actions)
    {
        *mm = new;
    }
}

fn length(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (words, why): (&str, &str),
    mm: &mut f64,
    actions: &mut Actions,
) {
    let rect = form::row(ui, words, why);
    let (field, name) =
        (form::place(rect, 0.0, FIELD), say!("sample-of-measured", what = words));
    let at = (*mm, bench.unit());
    if let Some(new) =
        length_field::show_or(ui, field, &name, at, 0.0..=LONGEST, Some("–"), actions)
    {
        *mm = new;
    }
}

fn grams(ui: &mut Ui, words: &str, g: &mut f64, actions: &mut Actions) {
    let rect = form::row(ui, words, say!("sample-weight-of-the-yarn-you-have-ball"));
    let drag = DragValue::new(g)
        .range(0.0..=5000.0)
        .speed(0.1)
        .custom_formatter(|g, _| match g {
            g if g <= 0.0 => "–".to_owned(),
            g => format!("{} g", form::short(g)),
        })
        .custom_parser(|text| match text.trim() {
            "–" | "-" | "" => Some(0.0),
            text => text.trim_end_matches('g').trim().replace(',', ".").parse().ok(),
        });
    form::field(
        ui,
        form::place(rect, 0.0, FIELD),
        &say!("sample-yarn-when", when = words),
        drag,
        actions,
    );
}

fn unravelled(ui: &mut Ui, bench: &Bench<'_>, new: &mut SampleDraft, actions: &mut Actions) {
    let rect = form::row(
        ui,
        say!("sample-unraveled-round"),
        say!("sample-which-round-and-the-length-of-its-yarn"),
    );
    let (round, mm) = &mut new.unravelled;
    let most = bench.plan.map_or(1, |plan| plan.rounds.len() as u32).max(1);
    let drag = DragValue::new(round).range(1..=most).speed(0.1);
    let count = form::place(rect, FIELD + 6.0, COUNT);
    form::field(ui, count, say!("sample-round-unraveled"), drag, actions);
    let at = (*mm, bench.unit());
    let field = form::place(rect, 0.0, FIELD);
    let name = say!("sample-yarn-of-the-round");
    if let Some(length) =
        length_field::show_or(ui, field, name, at, 0.0..=LONGEST, Some("–"), actions)
    {
        *mm = length;
    }
}

/// What the sample taught, and what can be done with it.
fn taught(ui: &mut Ui, bench: &Bench<'_>, learned: &Calibration, actions: &mut Actions) {
    form::heading(ui, say!("sample-results"));
    for fitted in &learned.fitted {
        quantity(ui, bench, fitted);
    }
    form::heading(ui, say!("sample-forecast-and-measurements"));
    let heads = [say!("sample-forecast"), say!("sample-now"), say!("sample-measured")];
    line(ui, bench, "", heads.map(str::to_owned), true);
    for compared in &learned.table {
        agreement(ui, bench, compared);
    }
    for note in &learned.notes {
        form::remark(ui, &note.text(bench.unit()));
    }
    let current = bench.sizing.is_current();
    if form::wide(ui, form::ROW, say!("sample-use-this-gauge"), current, false).clicked() {
        actions.edit(Edit::Sizes(SizeEdit::Learn(Box::new(learned.clone()))));
    }
    form::heading(ui, say!("sample-gauge-book"));
    let yarn = bench.document.piece().yarn_of_round(1);
    let yarn = bench.document.project().yarns.get(yarn).map_or("", |y| &y.name);
    form::remark(ui, &say!("sample-saves-it-for-yarn-on-this-hook-for", yarn = yarn));
    let rect = form::row(ui, say!("sample-maker"), say!("sample-maker-why"));
    let mut maker = bench.view.sizes.maker.clone();
    let field = form::place(rect, 0.0, 150.0);
    let edit = TextEdit::singleline(&mut maker).char_limit(40).desired_width(field.width());
    if ui.put(field, edit).accessible_name(say!("sample-maker")).changed() {
        actions
            .look(Look::Sizes(Box::new(bench.view.sizes.changed(|view| view.maker = maker))));
    }
    if form::wide(ui, form::ROW, say!("sample-save-in-the-gauge-book"), current, false)
        .clicked()
    {
        actions.desk(DeskAction::KeepGauge(Box::new(learned.clone())));
    }
}

fn quantity(ui: &mut Ui, bench: &Bench<'_>, fitted: &Fitted) {
    let places = match fitted.quantity {
        Quantity::Firmness => 3,
        _ => 2,
    };
    let unit = fitted.quantity.unit();
    let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
    let value = if fitted.learned {
        format!("{:.places$} ± {:.places$}{unit}", fitted.value, fitted.uncertainty)
    } else {
        say!("sample-not-measured", value = format!("{:.places$}{unit}", fitted.prior))
    };
    let why = match fitted.learned {
        true => say!("sample-before", value = format!("{:.places$}{unit}", fitted.prior)),
        false => say!("sample-these-measurements-do-not-show-it-it").to_owned(),
    };
    let name = match fitted.quantity {
        Quantity::StiffnessAlong => say!("quantity-stiffness-short"),
        quantity => terms::quantity(quantity),
    };
    let rect = form::row(ui, name, &why);
    let ink = if fitted.learned { bench.t.ink } else { bench.t.soft_ink };
    let font = type_faces::semibold(type_faces::SMALL);
    let at = rect.right_center();
    ui.painter().text(at, Align2::RIGHT_CENTER, value, font, ink);
}

fn agreement(ui: &mut Ui, bench: &Bench<'_>, compared: &Compared) {
    let unit = bench.unit();
    let length = compared.measured.measure.unit() == "mm";
    let number = |value: f64| match length {
        true => unit.rough_number(value),
        false => decimal(value, 1),
    };
    let mut words = compared.measured.measure.sentence().text(unit);
    if compared.piece != bench.document.piece_id() {
        words = format!("{}: {words}", bench.document.project().name_of(compared.piece));
    }
    let cells =
        [compared.before, compared.after, compared.measured.measure.value()].map(number);
    let off = line(ui, bench, &words, cells, false);
    if compared.off().abs() > 3.0 {
        icons::warning(
            ui.painter(),
            off.left_center() + vec2(4.0, -8.0),
            11.0,
            bench.t.warning,
        );
    }
}

/// Words over three numbers.
fn line(ui: &mut Ui, bench: &Bench<'_>, words: &str, cells: [String; 3], head: bool) -> Rect {
    let t = bench.t;
    let size = vec2(ui.available_width(), if head { 20.0 } else { 24.0 });
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    if !head {
        let said = say!(
            "sample-compared",
            what = words,
            forecast = cells[0],
            now = cells[1],
            measured = cells[2],
        );
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &said));
    }
    let small = type_faces::regular(type_faces::SMALL);
    let painter = ui.painter();
    let wide = 58.0;
    let room = rect.width() - 3.0 * wide - 4.0;
    crate::kit::paint::clipped_text(
        painter,
        rect.left_center(),
        words,
        small.clone(),
        t.soft_ink,
        room,
    );
    for (i, cell) in cells.into_iter().enumerate() {
        let at = rect.right_center() - vec2(wide * (2 - i) as f32, 0.0);
        let ink = if head { t.soft_ink } else { t.ink };
        painter.text(at, Align2::RIGHT_CENTER, cell, small.clone(), ink);
    }
    painter.hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.grid));
    response.on_hover_text(words);
    rect
}
