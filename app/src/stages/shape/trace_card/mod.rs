//! The card on which a traced picture is looked at before its outline is taken: the picture
//! with the line, its knots and the axis, what to judge them by, and marks to trace it anew.

mod marks;
mod picture;

use egui::{Context, Rect, Role, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo, vec2};
use plumpline_core::piece::Picture;
use plumpline_core::{Unit, Units};
use plumpline_trace::{TracedEnd, TracedSide};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::fields::over::{self, Head};
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::paint;
use crate::kit::tokens::CARD_RADIUS;
use crate::view::look::Look;
use crate::view::tracing::{TraceTool, TraceView};
use crate::work::outlining::TracedPicture;
use crate::work::shape_file::laid;
use picture::PhotoGround;

fn head() -> Head {
    Head { title: say!("trace-title"), hint: say!("trace-hint"), width: 860.0 }
}
/// Width of the fields beside the picture.
const FIELDS: f32 = 340.0;
/// Height of the picture.
const HIGH: f32 = 470.0;

/// Draws the card over the window.
pub(crate) fn show(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let mut asked = Actions::default();
    let closed = over::show(ctx, head(), |_| {}, |ui| body(ui, bench, &mut asked));
    if closed {
        actions.look(Look::Over(None));
    }
    for action in asked.take() {
        actions.push(action);
    }
}

fn body(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let was = &bench.view.tracing;
    let mut now = was.clone();
    ui.horizontal_top(|ui| {
        let wide = (ui.available_width() - FIELDS - 16.0).max(200.0);
        ui.vertical(|ui| {
            ui.set_width(wide);
            ui.spacing_mut().item_spacing.y = 4.0;
            board(ui, bench, &mut now);
            // Under the picture, where nothing that is found moves them from under the hand.
            progress(ui, bench, &mut now);
            take(ui, bench, now.start, actions);
        });
        ui.add_space(8.0);
        ui.vertical(|ui| {
            ui.set_width(FIELDS);
            ui.spacing_mut().item_spacing.y = 2.0;
            fields(ui, bench, &mut now);
            drawing(ui, &mut now);
            judge(ui, bench);
        });
    });
    if now != *was {
        // Whatever else is asked for is worked on again.
        let same_work = TraceView { stopped: was.stopped, ..now.without_pen() };
        now.stopped &= same_work == was.without_pen();
        actions.look(Look::Trace(Box::new(now)));
    }
}

/// The picture, and the hand or the keys that mark it.
fn board(ui: &mut Ui, bench: &Bench<'_>, now: &mut TraceView) {
    let t = bench.t;
    let size = vec2(ui.available_width(), HIGH);
    let (rect, held) = ui.allocate_exact_size(size, Sense::drag());
    held.widget_info(|| {
        WidgetInfo::labeled(Role::Image, true, say!("trace-the-picture-with-the-traced-line"))
    });
    let painter = ui.painter_at(rect);
    let edge = Stroke::new(1.0, t.edge);
    painter.rect(rect, CARD_RADIUS, t.well, edge, StrokeKind::Inside);
    // Until the whole picture has been read its marks have no place.
    let seen = bench.picture.texture().map(|texture| texture.size().map(|side| side as u32));
    if bench.outlining.size().is_none()
        && let Some([wide, high]) = seen
    {
        let shown = PhotoGround::fitted(rect.shrink(1.0), (wide, high));
        picture::show(&painter, bench, &shown, &TraceView::default());
    }
    if let Some(size) = bench.outlining.size() {
        let shown = PhotoGround::fitted(rect.shrink(1.0), size);
        picture::show(&painter, bench, &shown, now);
        marks::by_hand(ui, &shown, &held, now);
        marks::by_keys(ui, &shown, &held, now);
        marks::cross(&painter, t, &shown, &held, now);
    }
    if held.has_focus() {
        paint::focus_ring(ui.painter(), rect, CARD_RADIUS, bench.t);
    }
}

fn fields(ui: &mut Ui, bench: &Bench<'_>, now: &mut TraceView) {
    let unit = bench.unit();
    let report = bench.outlining.found().and_then(Result::ok).map(|found| &found.trace.report);
    // Nothing of the project changes here: its steps need not know.
    let none = &mut Actions::default();
    let why = say!("trace-of-the-thing-along-its-axis-without");
    let rect = form::row(ui, say!("trace-height"), why);
    let height = now.height_mm.or(report.map(|r| r.height_mm)).unwrap_or(90.0);
    let place = form::place(rect, 0.0, 96.0);
    // A field takes what lies out of its range for typed.
    let (low, high) = (5.0, 1000.0);
    let (height, range) = (height.clamp(low, high), low..=high);
    if let Some(mm) =
        length_field::show(ui, place, say!("trace-height"), (height, unit), range, none)
    {
        now.height_mm = Some(mm);
    }
    let why = say!("trace-how-far-the-outline-may-be-from-the");
    let rect = form::row(ui, say!("trace-tolerance"), why);
    let tolerance = now.tolerance_mm.or(report.map(|r| r.tolerance_mm)).unwrap_or(0.3);
    let place = form::place(rect, 0.0, 96.0);
    let (low, high) = (0.05, 10.0);
    let (tolerance, range, name) =
        (tolerance.clamp(low, high), low..=high, say!("trace-tolerance"));
    // So little has too few places in centimetres.
    let small = match unit.unit {
        Unit::Cm => Units { unit: Unit::Mm, ..unit },
        _ => unit,
    };
    if let Some(mm) = length_field::show(ui, place, name, (tolerance, small), range, none) {
        now.tolerance_mm = Some(mm);
    }
    let sides = [TracedSide::Mean, TracedSide::Left, TracedSide::Right];
    let rect = form::row(ui, say!("trace-side"), say!("trace-the-mean-of-both-or-one-of-them"));
    let on = sides.iter().position(|&s| s == now.side).unwrap_or(0);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("trace-side"),
        &[say!("trace-mean"), say!("trace-left"), say!("trace-right")],
        on,
    ) {
        now.side = sides[i];
    }
    let ends = [TracedEnd::Top, TracedEnd::Bottom];
    let rect =
        form::row(ui, say!("trace-start"), say!("trace-the-end-of-the-thing-where-the-piece"));
    let on = ends.iter().position(|&e| e == now.start).unwrap_or(0);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("trace-start"),
        &[say!("trace-top"), say!("trace-bottom")],
        on,
    ) {
        now.start = ends[i];
    }
    let why = say!("trace-a-handle-or-an-ear-which-no-turned");
    if let Some(cut) = form::tick(ui, say!("trace-cut-off-what-is-not-round"), why, now.cut) {
        now.cut = cut;
    }
}

/// What is drawn on the picture, for a background that is not plain.
fn drawing(ui: &mut Ui, now: &mut TraceView) {
    let why = say!("trace-where-the-background-is-not-plain-draw");
    form::heading(ui, say!("trace-draw-on-the-picture"));
    let rect = form::row(ui, say!("trace-mark"), why);
    let on = TraceTool::ALL.iter().position(|&tool| tool == now.pen.tool).unwrap_or(0);
    let words = TraceTool::ALL.map(TraceTool::text);
    if let Some(i) = form::pick(ui, rect, say!("trace-draw"), &words, on) {
        now.pen.tool = TraceTool::ALL[i];
    }
    let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let (left, right) = row.shrink2(vec2(0.0, 3.0)).split_left_right_at_fraction(0.5);
    let marked = now.is_marked();
    let button = |rect: Rect, words: &str| {
        controls::button(ui, rect, ButtonFace::Words(words), words, marked)
    };
    if button(left.with_max_x(left.right() - 4.0), say!("trace-undo-the-last-mark")).clicked() {
        now.take_mark_back();
    }
    if button(right.with_min_x(right.left() + 4.0), say!("trace-clear-all-marks")).clicked() {
        now.clear_marks();
    }
    form::remark(ui, marks::KEYS.text());
}

/// What a person judges by.
fn judge(ui: &mut Ui, bench: &Bench<'_>) {
    form::heading(ui, say!("trace-found"));
    match bench.outlining.found() {
        Some(Ok(found)) => {
            let (report, unit) = (&found.trace.report, bench.unit());
            report.facts(unit.unit).iter().for_each(|line| form::remark(ui, line));
            report.warnings(unit.unit).iter().for_each(|line| form::trouble(ui, line));
        }
        Some(Err(why)) => form::trouble(ui, why),
        None => form::remark(ui, say!("trace-nothing-yet")),
    }
}

/// How far the work is, and the button that stops it or begins it again.
fn progress(ui: &mut Ui, bench: &Bench<'_>, now: &mut TraceView) {
    const BUTTON: f32 = 110.0;
    let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), 30.0), Sense::hover());
    let told = row.with_max_x(row.right() - BUTTON - 8.0);
    let place = row.with_min_x(row.right() - BUTTON).shrink2(vec2(0.0, 1.0));
    let button = |words: &str| {
        controls::button(ui, place, ButtonFace::Words(words), words, true).clicked()
    };
    let share = bench.outlining.share();
    if share.is_some() {
        now.stopped |= button(say!("notice-stop"));
    } else if now.stopped && button(say!("trace-trace-again")) {
        now.stopped = false;
    }
    let mut ui = ui.new_child(UiBuilder::new().max_rect(told.shrink2(vec2(0.0, 3.0))));
    match share {
        Some(share) => form::progress(&mut ui, say!("trace-tracing"), share),
        None if now.stopped => form::remark(&mut ui, say!("trace-stopped")),
        None => {}
    }
}

/// The button that takes the outline.
fn take(ui: &mut Ui, bench: &Bench<'_>, start: TracedEnd, actions: &mut Actions) {
    let found = bench.outlining.found().and_then(Result::ok);
    let ready = found.is_some() && bench.outlining.share().is_none();
    let button = form::wide(ui, 36.0, say!("trace-use-the-outline"), ready, true);
    let why = say!("trace-it-replaces-the-outline-you-can-then");
    if button.on_hover_text(why).clicked()
        && let Some(found) = found
    {
        accept(found, bench, start, actions);
    }
}

/// The outline and the picture beneath it, in one step.
fn accept(found: &TracedPicture, bench: &Bench<'_>, start: TracedEnd, actions: &mut Actions) {
    actions.push(Action::Begin);
    actions.edit(Edit::Outline(found.trace.outline.clone()));
    if let Some(old) = bench.document.piece().picture.clone() {
        let picture = match laid(&found.path, found.size, &found.trace.report, start) {
            Some(Picture { across_mm, along_mm, width_mm, .. }) => {
                Picture { across_mm, along_mm, width_mm, ..old }
            }
            // It leans, or stands on its head: what lies askew under the outline misleads.
            None => Picture { hidden: true, ..old },
        };
        actions.edit(Edit::Picture(Some(picture)));
    }
    actions.push(Action::Commit);
    actions.look(Look::Picture(false));
    actions.look(Look::Over(None));
}
