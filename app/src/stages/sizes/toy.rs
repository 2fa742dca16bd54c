//! A toy at hand: one measure of it gives the scale at which this piece is as large.

use egui::{Align2, DragValue, Sense, TextEdit, Ui, pos2, vec2};
use plumpline_core::Extent;
use plumpline_core::Size;
use plumpline_core::companion::{Matched, Spot, ToyMeasure};

use super::answers::{self, AnswerColumns};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::{SizeEdit, can_enter};
use crate::fields::{form, length_field};
use crate::kit::type_faces;
use crate::kit::words::decimal;
use crate::view::look::Look;
use crate::view::sizes::ToyDraft;

/// Width of the field of a length, of a round, and of a name.
const FIELD: f32 = 92.0;
const ROUND: f32 = 52.0;
const NAME: f32 = 150.0;
/// Width from which on the card has two columns, points.
const WIDE: f32 = 640.0;
/// Longest measure, mm.
const LONGEST: f64 = 20_000.0;

/// Draws the card; where it is wide, the answer beside what was measured.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let draft = &bench.view.sizes.toy;
    let mut new = draft.clone();
    if ui.available_width() < WIDE {
        ask(ui, bench, &mut new, actions);
        answer(ui, bench, &mut new, actions);
    } else {
        ui.spacing_mut().item_spacing.x = 24.0;
        ui.columns(2, |sides| {
            ask(&mut sides[0], bench, &mut new, actions);
            answer(&mut sides[1], bench, &mut new, actions);
        });
    }
    if new != *draft {
        actions.look(Look::Sizes(Box::new(bench.view.sizes.changed(|view| view.toy = new))));
    }
}

/// What is measured, and how long that is.
fn ask(ui: &mut Ui, bench: &Bench<'_>, new: &mut ToyDraft, actions: &mut Actions) {
    form::remark(ui, say!("match-measure-one-place-of-a-finished-toy-of"));
    form::heading(ui, say!("match-the-toy"));
    measure(ui, bench, new, actions);
    let rect = form::row(
        ui,
        say!("match-it-measures"),
        say!("match-on-the-stuffed-toy-with-a-ruler-or-a"),
    );
    let field = form::place(rect, 0.0, FIELD);
    let at = (new.mm, bench.unit());
    let name = say!("match-toy-measures");
    if let Some(mm) =
        length_field::show_or(ui, field, name, at, 0.0..=LONGEST, Some("–"), actions)
    {
        new.mm = mm;
    }
}

/// The scale that follows, and what can be done with it.
fn answer(ui: &mut Ui, bench: &Bench<'_>, new: &mut ToyDraft, actions: &mut Actions) {
    if bench.view.sizes.toy.measured().is_none() {
        return;
    }
    match bench.sizing.found().and_then(|found| found.matched.as_ref()) {
        None => form::remark(ui, say!("match-preparing")),
        Some(Err(error)) => form::remark(ui, error),
        Some(Ok(matched)) => {
            told(ui, bench, matched);
            taken(ui, bench, matched, new, actions);
        }
    }
}

/// What is measured, and where.
fn measure(ui: &mut Ui, bench: &Bench<'_>, new: &mut ToyDraft, actions: &mut Actions) {
    let rect =
        form::row(ui, say!("match-measured"), say!("match-one-measurement-is-enough-the-rest"));
    let now = match new.measure {
        ToyMeasure::Height => 0,
        ToyMeasure::Width(_) => 1,
        ToyMeasure::Around(_) => 2,
    };
    let spot = new.spot().unwrap_or(Spot::Widest);
    if let Some(what) = form::pick(
        ui,
        rect,
        say!("match-toy-measured"),
        &[say!("match-height"), say!("match-width"), say!("match-around")],
        now,
    ) {
        new.measure =
            [ToyMeasure::Height, ToyMeasure::Width(spot), ToyMeasure::Around(spot)][what];
    }
    let Some(spot) = new.spot() else { return };
    let spot = where_it_is(ui, bench, spot, actions);
    match &mut new.measure {
        ToyMeasure::Height => {}
        ToyMeasure::Width(at) | ToyMeasure::Around(at) => *at = spot,
    }
}

/// At its widest, or at a round of this piece.
fn where_it_is(ui: &mut Ui, bench: &Bench<'_>, spot: Spot, actions: &mut Actions) -> Spot {
    let why = say!("match-at-its-widest-or-at-the-top-of-a-round");
    let rect = form::row(ui, say!("match-measured-at"), why);
    let right = match spot {
        Spot::Widest => 0.0,
        Spot::Round(_) => ROUND + 6.0,
    };
    let rounds = bench.plan.map_or(1, |plan| plan.rounds.len() as u32);
    let options = [say!("match-the-widest"), say!("match-round")];
    let now = usize::from(matches!(spot, Spot::Round(_)));
    let picks = rect.with_max_x(rect.right() - right);
    let mut new = spot;
    if let Some(at) = form::pick(ui, picks, say!("match-toy-measured-at"), &options, now) {
        // The selected round, or one half way.
        let round = bench.view.selected.unwrap_or(rounds / 2).max(1);
        new = [Spot::Widest, Spot::Round(round)][at];
    }
    if let Spot::Round(mut round) = spot {
        let drag = DragValue::new(&mut round).range(1..=rounds.max(1)).speed(0.1);
        let field = form::place(rect, 0.0, ROUND);
        if form::field(ui, field, say!("match-toy-measured-at-round"), drag, actions).changed()
        {
            new = Spot::Round(round);
        }
    }
    new
}

/// The scale, what the piece comes to at it, and how near that is.
fn told(ui: &mut Ui, bench: &Bench<'_>, matched: &Matched) {
    form::heading(ui, say!("match-scale-factor"));
    scale(ui, bench, matched.scale);
    let unit = bench.unit();
    let (now, made) = (&matched.now, &matched.made.plan);
    let columns = AnswerColumns {
        heads: [say!("match-as-designed"), say!("match-column-toy"), say!("match-matched")],
        words: 52.0,
    };
    columns.head(ui, bench);
    let measures = [matched.now_mm, matched.toy_mm, matched.made_mm];
    let word = match matched.measure {
        ToyMeasure::Height => say!("match-height"),
        ToyMeasure::Width(_) => say!("match-width"),
        ToyMeasure::Around(_) => say!("match-around"),
    };
    columns.row(ui, bench, word, measures.map(|mm| unit.rough_text(mm)));
    let size = |Extent { height, width }| {
        format!("{} × {}", unit.rough_number(height), unit.rough_text(width))
    };
    columns.row(
        ui,
        bench,
        say!("match-size"),
        [size(now.size_mm), String::new(), size(made.size_mm)],
    );
    let pair = |now: String, made: String| [now, String::new(), made];
    let rounds = pair(now.rounds.len().to_string(), made.rounds.len().to_string());
    columns.row(ui, bench, say!("match-rounds"), rounds);
    let stitches = pair(now.estimate.stitches.to_string(), made.estimate.stitches.to_string());
    columns.row(ui, bench, say!("match-stitches"), stitches);
    ui.add_space(2.0);
    answers::sentence(ui, bench, &matched.sentence(), matched.is_met());
    for note in &matched.made.notes {
        form::remark(ui, &note.text(bench.unit()));
    }
}

/// The scale, large: it is what was asked.
fn scale(ui: &mut Ui, bench: &Bench<'_>, scale: f64) {
    let size = vec2(ui.available_width(), 36.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    let (number, words) = (decimal(scale, 2), say!("match-of-this-piece-as-designed"));
    let said = format!("{number} {words}");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &said));
    let (painter, t) = (ui.painter(), bench.t);
    let big = type_faces::bold(type_faces::BIG);
    let at = rect.left_center();
    let number = painter.text(at, Align2::LEFT_CENTER, number, big, t.ink);
    let body = type_faces::regular(type_faces::BODY);
    // On one line of writing with the number.
    let at = pos2(number.right() + 10.0, number.bottom() - 5.0);
    painter.text(at, Align2::LEFT_BOTTOM, words, body, t.soft_ink);
}

/// What can be done with it.
fn taken(
    ui: &mut Ui,
    bench: &Bench<'_>,
    matched: &Matched,
    new: &mut ToyDraft,
    actions: &mut Actions,
) {
    form::heading(ui, say!("match-use-it"));
    let rect =
        form::row(ui, say!("match-name"), say!("match-what-the-size-is-to-be-called-in-the"));
    let field = form::place(rect, 0.0, NAME);
    let edit = TextEdit::singleline(&mut new.name).char_limit(24).desired_width(field.width());
    ui.put(field, edit).accessible_name(say!("match-name-of-the-matched-size"));
    let name = new.name.trim();
    let sizes = &bench.document.piece().sizes;
    let free = can_enter(sizes, name);
    // A measure that has only now been typed is answered in a moment.
    let current = bench.sizing.is_current();
    let can = current && free && !name.is_empty();
    if form::wide(ui, form::ROW, say!("match-add-as-a-size"), can, false).clicked() {
        let size = Size::new(name, matched.by);
        actions.edit(Edit::Sizes(SizeEdit::Enter(size)));
    }
    if form::wide(ui, form::ROW, say!("match-make-the-piece-this-size"), current, false)
        .clicked()
    {
        actions.edit(Edit::Sizes(SizeEdit::Become(matched.by)));
    }
    if sizes.iter().any(|size| size.name == name) {
        form::remark(ui, &say!("match-a-size-named-name-is-in-the-table", name = name));
    } else if !free {
        form::remark(ui, say!("match-the-table-is-full-remove-a-size-to-add"));
    }
}
