//! The card on which a traced picture is looked at before its outline is taken: the picture
//! with the line, its knots and the axis, what to judge them by, and marks to trace it anew.

use egui::{
    Align2, Color32, Context, PointerButton, Pos2, Rect, Response, Role, Sense, Stroke,
    StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use plumpline_core::piece::Picture;
use plumpline_trace::{TraceReport, TracedEnd, TracedSide};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::fields::over::{self, Head};
use crate::fields::{form, length_field};
use crate::kit::{Tokens, controls, type_faces};
use crate::view::look::Look;
use crate::view::tracing::{TraceTool, TraceView};
use crate::work::outlining::TracedPicture;
use crate::work::shape_file::laid;

const HEAD: Head =
    Head { title: "Trace", hint: "look before you take the outline", width: 860.0 };
/// Width of the fields beside the picture.
const FIELDS: f32 = 340.0;
/// Height of the picture.
const HIGH: f32 = 470.0;
/// Half the thickness of a stroke, as a share of the picture's longer side.
const STROKE: f64 = 0.012;
/// Most places of one stroke.
const MOST_PLACES: usize = 400;

/// Draws the card over the window.
pub(crate) fn show(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let mut asked = Actions::default();
    let closed = over::show(ctx, HEAD, |_| {}, |ui| body(ui, bench, &mut asked));
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
        let size = vec2((ui.available_width() - FIELDS - 16.0).max(200.0), HIGH);
        let (rect, held) = ui.allocate_exact_size(size, Sense::drag());
        picture(ui, bench, rect, &held, &mut now);
        ui.add_space(8.0);
        ui.vertical(|ui| {
            ui.set_width(FIELDS);
            ui.spacing_mut().item_spacing.y = 2.0;
            fields(ui, bench, &mut now, actions);
            judge(ui, bench);
            finish(ui, bench, &mut now, actions);
        });
    });
    if now != *was {
        // Whatever else is asked for is worked on again.
        let same_work = TraceView { stopped: was.stopped, ..now.clone() } == *was;
        now.stopped &= same_work;
        actions.look(Look::Trace(Box::new(now)));
    }
}

/// How the pixels of the whole picture fall on the card.
struct PhotoGround {
    rect: Rect,
    scale: f32,
}

impl PhotoGround {
    fn at(&self, (x, y): (f64, f64)) -> Pos2 {
        self.rect.min + vec2(x as f32, y as f32) * self.scale
    }

    fn pixel(&self, pos: Pos2) -> (f64, f64) {
        let at = (self.rect.clamp(pos) - self.rect.min) / self.scale;
        (f64::from(at.x), f64::from(at.y))
    }
}

/// The picture as far as it is read, what was traced on it, and the hand that marks it.
fn picture(ui: &Ui, bench: &Bench<'_>, rect: Rect, held: &Response, now: &mut TraceView) {
    let t = bench.t;
    held.widget_info(|| {
        WidgetInfo::labeled(Role::Image, true, "The picture with the traced line")
    });
    let painter = ui.painter_at(rect);
    painter.rect(rect, 8.0, t.well, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    let Some(texture) = bench.picture.texture() else { return };
    let traced = bench.outlining.found().and_then(Result::ok);
    let Some((wide, high)) = bench.outlining.size() else { return };
    let (wide, high) = (wide.max(1) as f32, high.max(1) as f32);
    let scale = (rect.width() / wide).min(rect.height() / high);
    let fitted = Rect::from_center_size(rect.center(), vec2(wide, high) * scale);
    let shown = PhotoGround { rect: fitted, scale };
    let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    painter.image(texture.id(), fitted, whole, Color32::WHITE);
    if let Some(traced) = traced {
        line(&painter, t, &shown, &traced.trace.report);
    }
    marks(&painter, t, &shown, now);
    draw(ui, &shown, held, now, f64::from(wide.max(high)));
}

/// The traced line and all that tells about it.
fn line(painter: &egui::Painter, t: &Tokens, shown: &PhotoGround, report: &TraceReport) {
    let path = |points: &[(f64, f64)]| points.iter().map(|&p| shown.at(p)).collect::<Vec<_>>();
    let axis = report.axis.map(|end| shown.at(end));
    painter.extend(egui::Shape::dashed_line(&axis, Stroke::new(1.2, t.outline), 6.0, 4.0));
    for edge in &report.edges {
        painter.line(path(edge), Stroke::new(1.0, t.highlight_edge));
    }
    for side in &report.line {
        // Light under dark is seen on any picture.
        painter.line(path(side), Stroke::new(4.0, t.panel.gamma_multiply(0.8)));
        painter.line(path(side), Stroke::new(2.0, t.outline));
    }
    for &knot in &report.knots {
        painter.circle(shown.at(knot), 4.0, t.panel, Stroke::new(1.6, t.outline));
    }
    for (i, part) in report.odd.iter().enumerate() {
        let frame = Rect::from_two_pos(shown.at(part.frame[0]), shown.at(part.frame[1]));
        let frame = frame.expand(4.0);
        painter.rect(
            frame,
            3.0,
            Color32::TRANSPARENT,
            Stroke::new(2.0, t.warning),
            StrokeKind::Outside,
        );
        let font = type_faces::bold(type_faces::BODY);
        let at = frame.right_top() + vec2(4.0, 0.0);
        painter.text(at, Align2::LEFT_TOP, format!("{}", i + 1), font, t.warning);
    }
}

fn marks(painter: &egui::Painter, t: &Tokens, shown: &PhotoGround, view: &TraceView) {
    if let Some([a, b]) = view.frame {
        let frame = Rect::from_two_pos(shown.at(a), shown.at(b));
        let corners = [
            frame.left_top(),
            frame.right_top(),
            frame.right_bottom(),
            frame.left_bottom(),
            frame.left_top(),
        ];
        painter.extend(egui::Shape::dashed_line(&corners, Stroke::new(2.0, t.ink), 8.0, 5.0));
    }
    for stroke in &view.strokes {
        let wide = (2.0 * stroke.radius as f32 * shown.scale).max(3.0);
        let colour = if stroke.thing { t.increase } else { t.decrease };
        let points: Vec<Pos2> = stroke.points.iter().map(|&p| shown.at(p)).collect();
        // No sign is a colour alone: what is on the thing is whole, what is beside it dashed.
        if stroke.thing {
            painter.line(points, Stroke::new(wide, colour.gamma_multiply(0.7)));
        } else {
            let stroke = Stroke::new(wide, colour.gamma_multiply(0.7));
            painter.extend(egui::Shape::dashed_line(&points, stroke, 10.0, 6.0));
        }
    }
}

/// Takes what the hand draws.
fn draw(ui: &Ui, shown: &PhotoGround, held: &Response, now: &mut TraceView, longer: f64) {
    if held.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Crosshair);
    }
    let pointer = held.interact_pointer_pos().map(|pos| shown.pixel(pos));
    if held.drag_started_by(PointerButton::Primary)
        && let Some(origin) = ui.input(|i| i.pointer.press_origin())
    {
        let from = shown.pixel(origin);
        now.drawing = true;
        match now.tool {
            TraceTool::Rectangle => now.frame = Some([from, from]),
            tool => now.strokes.push(plumpline_trace::Stroke {
                thing: tool == TraceTool::Thing,
                points: vec![from],
                radius: STROKE * longer,
            }),
        }
    }
    if now.drawing
        && let Some(to) = pointer
    {
        match now.tool {
            TraceTool::Rectangle => now.frame = now.frame.map(|[from, _]| [from, to]),
            _ => {
                if let Some(stroke) = now.strokes.last_mut()
                    && stroke.points.len() < MOST_PLACES
                    && stroke.points.last() != Some(&to)
                {
                    stroke.points.push(to);
                }
            }
        }
    }
    if now.drawing && !held.dragged() {
        now.drawing = false;
        // A click draws no rectangle.
        let none = |[a, b]: &[(f64, f64); 2]| (a.0 - b.0).abs().min((a.1 - b.1).abs()) < 4.0;
        if now.tool == TraceTool::Rectangle {
            now.frame = now.frame.filter(|frame| !none(frame));
        }
    }
}

fn fields(ui: &mut Ui, bench: &Bench<'_>, now: &mut TraceView, actions: &mut Actions) {
    let unit = bench.unit();
    let report = bench.outlining.found().and_then(Result::ok).map(|found| &found.trace.report);
    let rect = form::row(ui, "Height", "Of the thing along its axis, without what is cut off");
    let height = now.height_mm.or(report.map(|r| r.height_mm)).unwrap_or(90.0);
    let place = form::place(rect, 0.0, 96.0);
    let range = 5.0..=1000.0;
    if let Some(mm) = length_field::show(ui, place, "Height", (height, unit), range, actions) {
        now.height_mm = Some(mm);
    }
    let why = "How far the outline may lie from the edge; less takes more knots";
    let rect = form::row(ui, "Tolerance", why);
    let tolerance = now.tolerance_mm.or(report.map(|r| r.tolerance_mm)).unwrap_or(0.3);
    let place = form::place(rect, 0.0, 96.0);
    let range = 0.05..=10.0;
    let name = "Tolerance";
    if let Some(mm) = length_field::show(ui, place, name, (tolerance, unit), range, actions) {
        now.tolerance_mm = Some(mm);
    }
    let sides = [TracedSide::Mean, TracedSide::Left, TracedSide::Right];
    let rect = form::row(ui, "Side", "The mean of both, or one of them");
    let on = sides.iter().position(|&s| s == now.side).unwrap_or(0);
    if let Some(i) = form::pick(ui, rect, "Side", &["mean", "left", "right"], on) {
        now.side = sides[i];
    }
    let ends = [TracedEnd::Top, TracedEnd::Bottom];
    let rect = form::row(ui, "Start", "The end of the thing at which the working starts");
    let on = ends.iter().position(|&e| e == now.start).unwrap_or(0);
    if let Some(i) = form::pick(ui, rect, "Start", &["top", "bottom"], on) {
        now.start = ends[i];
    }
    let why = "A handle or an ear, which no turned shape has";
    if let Some(cut) = form::tick(ui, "Cut off what is not turned", why, now.cut) {
        now.cut = cut;
    }
    let why = "Where the background is not plain: a rectangle around the thing, strokes on it \
               and beside it";
    let rect = form::row(ui, "Draw", why);
    let on = TraceTool::ALL.iter().position(|&tool| tool == now.tool).unwrap_or(0);
    let words = TraceTool::ALL.map(TraceTool::text);
    if let Some(i) = form::pick(ui, rect, "Draw", &words, on) {
        now.tool = TraceTool::ALL[i];
    }
}

/// What a person judges by.
fn judge(ui: &mut Ui, bench: &Bench<'_>) {
    form::heading(ui, "What was found");
    match bench.outlining.found() {
        Some(Ok(found)) => {
            for line in told(found, bench) {
                form::remark(ui, &line);
            }
        }
        Some(Err(why)) => form::remark(ui, why),
        None => form::remark(ui, "Nothing yet"),
    }
}

fn told(found: &TracedPicture, bench: &Bench<'_>) -> Vec<String> {
    let unit = bench.unit();
    let report = &found.trace.report;
    let (knots, wide) = (found.trace.outline.knots.len(), unit.text(report.width_mm));
    let mut lines = vec![
        format!("{} high, {wide} wide, {knots} knots", unit.text(report.height_mm)),
        format!(
            "The line lies within {} of the edge, {} in the mean",
            unit.text(report.furthest_mm),
            unit.text(report.rms_mm)
        ),
        format!(
            "Both sides share {:.1} % of their area; it leans by {:.1}°",
            100.0 * report.symmetry,
            report.tilt_degrees.abs()
        ),
    ];
    if report.shadow {
        lines.push("A shadow was left out".into());
    }
    for (i, part) in report.odd.iter().enumerate() {
        let done = if report.cut { "cut off" } else { "not cut off" };
        lines.push(format!("{}: {} ({done})", i + 1, part.text(unit)));
    }
    let doubts = report.doubts.iter();
    lines.extend(doubts.map(|doubt| format!("Look again: {}", doubt.text(unit))));
    lines
}

/// How far the work is, and the buttons.
fn finish(ui: &mut Ui, bench: &Bench<'_>, now: &mut TraceView, actions: &mut Actions) {
    if let Some(share) = bench.outlining.share() {
        form::remark(ui, &format!("Tracing, {:.0} % done", 100.0 * share));
        if form::wide(ui, 34.0, "Stop", true, false).clicked() {
            now.stopped = true;
        }
    } else if now.stopped {
        form::remark(ui, "Stopped");
        if form::wide(ui, 34.0, "Trace again", true, false).clicked() {
            now.stopped = false;
        }
    }
    let marked = now.is_marked();
    if form::wide(ui, 34.0, "Clear what was drawn", marked, false).clicked() {
        now.frame = None;
        now.strokes.clear();
    }
    let found = bench.outlining.found().and_then(Result::ok);
    let ready = found.is_some() && bench.outlining.share().is_none();
    let take = form::wide(ui, 34.0, "Take the outline", ready, true);
    let why = "It takes the place of the outline there is; its knots can then be dragged";
    if take.on_hover_text(why).clicked()
        && let Some(found) = found
    {
        accept(found, bench, now.start, actions);
    }
    controls::follow_focus(ui);
}

/// The outline and the picture beneath it, in one step.
fn accept(found: &TracedPicture, bench: &Bench<'_>, start: TracedEnd, actions: &mut Actions) {
    actions.push(Action::Begin);
    actions.edit(Edit::Outline(found.trace.outline.clone()));
    let place = laid(&found.path, found.size, &found.trace.report, start);
    if let (Some(place), Some(old)) = (place, &bench.document.piece().picture) {
        let Picture { across_mm, along_mm, width_mm, .. } = place;
        let picture = Picture { across_mm, along_mm, width_mm, ..old.clone() };
        actions.edit(Edit::Picture(Some(picture)));
    }
    actions.push(Action::Commit);
    actions.look(Look::Picture(false));
    actions.look(Look::Over(None));
}
