//! The table of sizes: what each is called, what makes it that size, and what it comes to.

use egui::{
    Align2, DragValue, Popup, Rect, ScrollArea, Sense, Stroke, TextEdit, Ui, UiBuilder,
};
use egui::{pos2, vec2};
use plumpline_core::Bounds;
use plumpline_core::length::grouped;
use plumpline_core::sizes::{Keeps, MadeSize, SizeRow};
use plumpline_core::{Gauge, Size, SizeBy, Units, Yarn};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::SizeEdit;
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::words::MessageKey;
use crate::kit::{letters, paint, type_faces};

/// Height of the column headings, and of a row.
pub(super) const HEAD: f32 = 26.0;
const ROW: f32 = 38.0;

/// The columns: heading, and share of the width.
const COLUMNS: [(Option<MessageKey>, f32); 11] = [
    (Some(message!("column-size")), 0.11),
    (Some(message!("column-sized-by")), 0.14),
    (None, 0.115),
    (Some(message!("column-finished")), 0.13),
    (Some(message!("column-scale")), 0.065),
    (Some(message!("column-rounds")), 0.065),
    (Some(message!("column-stitches")), 0.08),
    (Some(message!("column-yarn")), 0.075),
    (Some(message!("column-stuffing")), 0.085),
    (Some(message!("column-time")), 0.075),
    (None, 0.06),
];

/// The columns of what a size comes to, and the last one, of what can be done with it.
const FIGURES: std::ops::Range<usize> = 3..10;
const MORE: usize = 10;

/// Height of a table with so many rows.
pub(super) fn height(rows: usize) -> f32 {
    HEAD + ROW * rows as f32 + 8.0
}

/// Draws the table in `rect`.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    headings(ui, bench, rect);
    let body = rect.with_min_y(rect.top() + HEAD);
    let mut child = ui.new_child(UiBuilder::new().max_rect(body).id_salt("sizes"));
    controls::scroll_colours(&mut child);
    let sizes = &bench.document.piece().sizes;
    let rows = bench.sizing.found().map_or(&[][..], |found| &found.rows);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 0.0;
        drawn(ui, bench, rows.first());
        for (i, size) in sizes.iter().enumerate() {
            // A row belongs to a size by its name: rows of the answer before may be others'.
            let made = rows.iter().find(|row| row.name.as_ref() == Some(&size.name));
            ui.push_id(i, |ui| sized(ui, bench, (i, size), (made, rows.first()), actions));
        }
        if sizes.is_empty() {
            form::remark(ui, say!("sizes-no-other-sizes-yet-add-one-then-say"));
        }
        controls::follow_focus(ui);
    });
}

/// The headings of the columns, at the top of `rect`.
pub(super) fn headings(ui: &Ui, bench: &Bench<'_>, rect: Rect) {
    let small = type_faces::regular(type_faces::SMALL);
    let places = places(rect.with_max_y(rect.top() + HEAD));
    for ((heading, _), place) in COLUMNS.iter().zip(&places) {
        let at = place.left_center();
        let heading = heading.map_or("", MessageKey::text);
        ui.painter().text(at, Align2::LEFT_CENTER, heading, small.clone(), bench.t.soft_ink);
    }
    let rule = Stroke::new(1.0, bench.t.edge);
    ui.painter().hline(rect.x_range(), rect.top() + HEAD, rule);
}

fn places(row: Rect) -> Vec<Rect> {
    let mut x = row.left();
    let place = |(_, share): &(Option<MessageKey>, f32)| {
        let width = share * row.width();
        let place = Rect::from_min_size(pos2(x, row.top()), vec2(width - 8.0, row.height()));
        x += width;
        place
    };
    COLUMNS.iter().map(place).collect()
}

/// The next row of a table: its columns.
pub(super) fn row(ui: &mut Ui, bench: &Bench<'_>) -> Vec<Rect> {
    let size = vec2(ui.available_width(), ROW);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    ui.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, bench.t.grid));
    places(rect)
}

/// The piece as it stands on the outline board.
fn drawn(ui: &mut Ui, bench: &Bench<'_>, made: Option<&SizeRow>) {
    let places = row(ui, bench);
    let bold = type_faces::bold(type_faces::BODY);
    let at = places[0].left_center();
    ui.painter().text(at, Align2::LEFT_CENTER, say!("sizes-as-designed"), bold, bench.t.ink);
    let body = type_faces::regular(type_faces::BODY);
    let at = places[1].left_center();
    ui.painter().text(
        at,
        Align2::LEFT_CENTER,
        say!("sizes-the-outline"),
        body,
        bench.t.soft_ink,
    );
    figures(ui, bench, &places, made, made);
}

fn sized(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (i, size): (usize, &Size),
    (made, drawn): (Option<&SizeRow>, Option<&SizeRow>),
    actions: &mut Actions,
) {
    let places = row(ui, bench);
    let field = places[0].shrink2(vec2(0.0, 5.0));
    let mut name = size.name.clone();
    let edit = TextEdit::singleline(&mut name)
        .font(type_faces::bold(type_faces::BODY))
        .char_limit(24)
        .desired_width(field.width());
    let label = say!("sizes-name-of-size-number", number = i + 1);
    if ui.put(field, edit).accessible_name(label).changed() {
        change(actions, i, Size { name, ..size.clone() });
    }
    if let Some(by) = made_by(ui, bench, places[1], (i, size), made) {
        change(actions, i, Size { by, ..size.clone() });
    }
    if let Some(by) = target(ui, bench, places[2], (i, size), actions) {
        change(actions, i, Size { by, ..size.clone() });
    }
    figures(ui, bench, &places, made, drawn);
    options(ui, bench, places[MORE], (i, size), made, actions);
}

fn change(actions: &mut Actions, i: usize, size: Size) {
    actions.edit(Edit::Sizes(SizeEdit::Change(i, size)));
}

/// What makes a size, in words.
fn words(bench: &Bench<'_>, by: &SizeBy) -> String {
    match *by {
        SizeBy::Height(_) => say!("sizes-by-height").into(),
        SizeBy::Width(_) => say!("sizes-by-width").into(),
        SizeBy::Factor(_) => say!("sizes-scale-factor").into(),
        SizeBy::Gauge { keeps: Keeps::Size, .. } => say!("sizes-gauge-same-size").into(),
        SizeBy::Gauge { keeps: Keeps::Rounds, .. } => say!("sizes-gauge-same-rounds").into(),
        SizeBy::Meet { companion } => {
            say!("sizes-seam-with", piece = bench.document.project().name_of(companion))
        }
    }
}

/// A choice of what makes the size; begins from what it comes to now.
fn made_by(
    ui: &Ui,
    bench: &Bench<'_>,
    place: Rect,
    (i, size): (usize, &Size),
    made: Option<&SizeRow>,
) -> Option<SizeBy> {
    let place = place.shrink2(vec2(0.0, 5.0));
    let now = words(bench, &size.by);
    let name = say!("sizes-size-number-sized-by-now", number = i + 1, now = now);
    let button =
        controls::button(ui, place, ButtonFace::WordsThen(&now, Icon::Down), &name, true);
    let made = made.and_then(|row| row.made.as_ref().ok());
    let (high, wide) = match (made, bench.plan) {
        (Some(made), _) => (made.height_mm, made.width_mm),
        (None, Some(plan)) => (plan.size_mm.height, plan.size_mm.width),
        (None, None) => (100.0, 100.0),
    };
    let whole = |mm: f64| mm.round().max(1.0);
    let times = bench.plan.map_or(1.0, |plan| high / plan.size_mm.height);
    let gauge = match size.by {
        SizeBy::Gauge { gauge, .. } => gauge,
        _ => bench.document.piece().gauge,
    };
    let mut options = vec![
        SizeBy::Height(whole(high)),
        SizeBy::Width(whole(wide)),
        SizeBy::Factor((times * 100.0).round() / 100.0),
        SizeBy::Gauge { gauge, keeps: Keeps::Size },
        SizeBy::Gauge { gauge, keeps: Keeps::Rounds },
    ];
    let own = bench.document.piece_id();
    let project = bench.document.project();
    let others = project.pieces.iter().map(|piece| piece.id);
    let meets = others.filter(|&other| project.seams.iter().any(|seam| seam.joins(own, other)));
    options.extend(meets.map(|companion| SizeBy::Meet { companion }));
    let mut chosen = None;
    Popup::menu(&button).show(|ui| {
        ui.set_width(180.0);
        for by in options {
            let words = words(bench, &by);
            let line = ui.selectable_label(words == now, words.as_str());
            letters::line(&line, &words);
            if line.clicked() && words != now {
                chosen = Some(by);
            }
        }
    });
    chosen
}

/// The field of what makes the size; returns another.
fn target(
    ui: &mut Ui,
    bench: &Bench<'_>,
    place: Rect,
    (i, size): (usize, &Size),
    actions: &mut Actions,
) -> Option<SizeBy> {
    let place = place.shrink2(vec2(0.0, 6.0));
    let length = |ui: &mut Ui, what: &str, mm: f64, actions: &mut Actions| {
        let name = say!("sizes-what-of-size-number", what = what, number = i + 1);
        length_field::show(ui, place, &name, (mm, bench.unit()), 0.1..=10_000.0, actions)
    };
    match size.by {
        SizeBy::Height(mm) => length(ui, say!("sizes-height"), mm, actions).map(SizeBy::Height),
        SizeBy::Width(mm) => length(ui, say!("sizes-width"), mm, actions).map(SizeBy::Width),
        SizeBy::Factor(factor) => {
            let mut new = factor;
            let drag = DragValue::new(&mut new)
                .range(0.01..=100.0)
                .speed(0.005)
                .max_decimals(3)
                .prefix("× ");
            let name = say!("sizes-factor-of-size-number", number = i + 1);
            let field = form::field(ui, place, &name, drag, actions);
            (field.changed() && new != factor).then_some(SizeBy::Factor(new))
        }
        SizeBy::Gauge { gauge, keeps } => {
            let (left, right) = place.split_left_right_at_fraction(0.5);
            let mut number = |what: &str, place: Rect, value: f64| {
                let mut new = value;
                let drag = DragValue::new(&mut new).range(1.0..=400.0).speed(0.1);
                let name = say!("sizes-what-of-size-number", what = what, number = i + 1);
                let place = place.with_max_x(place.right() - 2.0);
                form::field(ui, place, &name, drag.max_decimals(1), actions);
                new
            };
            let stitches = number(say!("sizes-stitches"), left, gauge.stitches);
            let rounds = number(say!("sizes-rounds"), right, gauge.rounds);
            let new = Gauge { stitches, rounds, ..gauge };
            (new != gauge).then_some(SizeBy::Gauge { gauge: new, keeps })
        }
        SizeBy::Meet { .. } => {
            let small = type_faces::regular(type_faces::SMALL);
            let ink = bench.t.soft_ink;
            let at = place.left_center();
            ui.painter().text(at, Align2::LEFT_CENTER, say!("sizes-at-the-seam"), small, ink);
            None
        }
    }
}

/// What a size comes to, beside the piece as it is drawn, or why it cannot be made.
pub(super) fn figures(
    ui: &Ui,
    bench: &Bench<'_>,
    places: &[Rect],
    row: Option<&SizeRow>,
    drawn: Option<&SizeRow>,
) {
    let painter = ui.painter();
    let body = || type_faces::regular(type_faces::BODY);
    let Some(row) = row else {
        let at = places[3].left_center();
        painter.text(at, Align2::LEFT_CENTER, "…", body(), bench.t.soft_ink);
        return;
    };
    let name = row.name.as_deref().unwrap_or(say!("sizes-the-piece"));
    let made = match &row.made {
        Ok(made) => made,
        Err(error) => {
            let room = places[MORE].left() - places[3].left() - 8.0;
            let at = places[3].left_center() + vec2(20.0, 0.0);
            icons::warning(painter, at - vec2(12.0, 1.0), 13.0, bench.t.warning);
            let why = error.to_string();
            paint::clipped_text(painter, at, &why, body(), bench.t.warning, room - 20.0);
            let place = places[3].with_max_x(places[MORE].left() - 8.0);
            said(ui, place, &say!("sizes-why-name-cannot-be-made", name = name), &[why]);
            return;
        }
    };
    let drawn = drawn.and_then(|row| row.made.as_ref().ok());
    let cells = cells(made, drawn, bench.unit(), &bench.document.project().yarns);
    for (place, words) in places[FIGURES].iter().zip(&cells) {
        let (at, ink) = (place.left_center(), bench.t.ink);
        paint::clipped_text(painter, at, words, body(), ink, place.width() + 6.0);
    }
    if !made.notes.is_empty() || !made.met {
        let at = places[3].right_center() - vec2(4.0, 1.0);
        icons::warning(painter, at, 12.0, bench.t.warning);
        let place = Rect::from_center_size(at, vec2(24.0, 24.0));
        let mut lines: Vec<String> =
            made.notes.iter().map(|note| note.text(bench.unit())).collect();
        if !made.met && lines.is_empty() {
            lines.push(say!("sizes-this-is-as-near-as-whole-stitches-come").into());
        }
        said(ui, place, &say!("sizes-notes-on-name", name = name), &lines);
    }
}

/// Something that is told on hover, and to assistive tools.
fn said(ui: &Ui, place: Rect, name: &str, lines: &[String]) {
    let response =
        ui.interact(place, ui.scope_id().with(name), Sense::focusable_noninteractive());
    let words = format!("{name}: {}", lines.join(" "));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &words));
    response.on_hover_text(lines.join("\n"));
}

/// Stitches, yarn, stuffing and time of several pieces, each made so often.
pub(super) fn sums(all: &[(&MadeSize, u32)], unit: Units, yarns: &[Yarn]) -> [String; 4] {
    let (mut stitches, mut grams, mut minutes) = (0, 0.0, 0.0);
    let mut stuffing = Bounds::new(0.0, 0.0);
    for (made, copies) in all {
        let (needs, times) = (&made.needs, f64::from(*copies));
        stitches += u64::from(needs.stitches) * u64::from(*copies);
        grams += times * grams_of(made, yarns);
        stuffing.low += times * needs.stuffing_g.low;
        stuffing.high += times * needs.stuffing_g.high;
        minutes += times * needs.minutes;
    }
    [
        grouped(stitches),
        unit.mass_text(grams),
        stuffing_text(stuffing, unit),
        time_text(minutes),
    ]
}

fn grams_of(made: &MadeSize, yarns: &[Yarn]) -> f64 {
    let used = made.needs.yarn.iter();
    used.filter_map(|used| Some(yarns.get(used.yarn)?.grams(used.metres))).sum()
}

fn stuffing_text(Bounds { low, high }: Bounds, unit: Units) -> String {
    // Less than scales tell is no stuffing.
    if high < 0.05 { say!("sizes-no-stuffing").into() } else { unit.mass_range_text(low, high) }
}

fn time_text(minutes: f64) -> String {
    let minutes = minutes.round() as u32;
    if minutes < 60 {
        say!("sizes-minutes-min", minutes = minutes)
    } else {
        format!("{} h {:02}", minutes / 60, minutes % 60)
    }
}

/// Size, scale against the piece as it is drawn, rounds, stitches, yarn, stuffing, time.
fn cells(
    made: &MadeSize,
    drawn: Option<&MadeSize>,
    unit: Units,
    yarns: &[Yarn],
) -> [String; 7] {
    let needs = &made.needs;
    [
        format!("{} × {}", unit.rough_number(made.height_mm), unit.rough_text(made.width_mm)),
        drawn.map_or(String::new(), |drawn| format!("× {:.2}", made.times(drawn))),
        made.rounds.to_string(),
        grouped(u64::from(needs.stitches)),
        unit.mass_text(grams_of(made, yarns)),
        stuffing_text(needs.stuffing_g, unit),
        time_text(needs.minutes),
    ]
}

/// What else can be said of a size, and done with it.
fn options(
    ui: &Ui,
    bench: &Bench<'_>,
    place: Rect,
    (i, size): (usize, &Size),
    made: Option<&SizeRow>,
    actions: &mut Actions,
) {
    let place = Rect::from_center_size(place.center(), vec2(28.0, 28.0));
    let name = say!("sizes-more-about-size-number", number = i + 1);
    let button = controls::button(ui, place, ButtonFace::Icon(Icon::Down), &name, true);
    let can = made.is_some_and(|row| row.made.is_ok()) && bench.sizing.is_current();
    Popup::menu(&button)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .frame(form::frame(ui))
        .width(290.0)
        .show(|ui| {
            ui.set_width(290.0);
            ui.reset_style();
            let why = say!("sizes-necks-lips-and-openings-have-at-least");
            if let Some(keep) =
                form::tick(ui, say!("sizes-keep-necks-and-openings"), why, size.keep)
            {
                change(actions, i, Size { keep, ..size.clone() });
            }
            let why = say!("sizes-repeats-why");
            if let Some(family) =
                form::tick(ui, say!("sizes-keep-the-same-repeats"), why, size.family)
            {
                change(actions, i, Size { family, ..size.clone() });
            }
            for (words, edit, enabled) in [
                (say!("sizes-make-the-piece-this-size"), SizeEdit::Take(i), can),
                (say!("sizes-remove-this-size"), SizeEdit::Remove(i), true),
            ] {
                let size = vec2(ui.available_width(), 28.0);
                let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
                if controls::button(ui, rect, ButtonFace::Words(words), words, enabled)
                    .clicked()
                {
                    actions.edit(Edit::Sizes(edit));
                    ui.close();
                }
            }
        });
    button.on_hover_text(say!("sizes-necks-repeats-use-this-size-remove-it"));
}
