//! The cloth: two pictures of it, turned by hand, and the slider that changes its rounds.

use egui::{Align2, Color32, Pos2, Rect, Response, Role, Sense, Stroke, Ui, WidgetInfo};
use egui::{pos2, vec2};

use super::here::{Bent, LessonBench};
use super::layout::{LessonLayout, SLIDER};
use crate::bench::action::Actions;
use crate::kit::tokens::PAD;
use crate::kit::words::decimal;
use crate::kit::{controls, paint, type_faces};
use crate::view::ids;
use crate::view::lesson::LessonView;
use crate::view::look::Look;

/// How far the hand goes for a full turn, points.
const FULL_TURN: f32 = 720.0;
/// How much a point of scrolling zooms.
const ZOOM_A_POINT: f32 = 0.004;

/// Draws the cloth in its panel, and does what the hand asks for.
pub(super) fn show(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    layout: &LessonLayout,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let panel = layout.picture;
    let fields = layout.fields();
    let sights = here.view.sights(here.step.map(|step| step.sample));
    for (index, field) in fields.into_iter().enumerate() {
        let id = if index == 0 { ids::lesson_id() } else { ids::lesson_side_id() };
        let canvas = ui.interact(field, id, Sense::click_and_drag());
        let words = [say!("lesson-fabric"), say!("lesson-fabric-other-side")][index];
        canvas.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, words));
        hands(ui, here, index, field, &canvas, next, actions);
        let painter = ui.painter_at(field);
        if let Some(texture) = here.bench.lesson.picture(index) {
            let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
            painter.image(texture.id(), field, whole, Color32::WHITE);
        }
        let words = &here.course.words;
        let level = sights[index].tilt_deg.abs() < 45.0;
        let side = if level { &words.from_side } else { &words.from_above };
        let small = type_faces::regular(here.size(type_faces::SMALL));
        painter.text(field.min + vec2(12.0, 4.0), Align2::LEFT_TOP, side, small, t.soft_ink);
        if canvas.has_focus() {
            paint::focus_ring(ui.painter(), field.shrink(3.0), 6.0, t);
        }
    }
    heading(ui, here, panel);
    said(ui, here, fields[1]);
    if layout.has_knob {
        slider(ui, here, layout, next);
    }
}

fn hands(
    ui: &Ui,
    here: &LessonBench<'_>,
    index: usize,
    field: Rect,
    canvas: &Response,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    ids::keep_arrows(ui, canvas);
    let [now, _] = here.view.sights(here.step.map(|step| step.sample));
    if canvas.dragged() {
        let by = canvas.drag_delta() * 360.0 / FULL_TURN;
        // Only the first picture is tilted: the other shows what that does not.
        let tilt = if index == 0 { by.y } else { 0.0 };
        next.turned = Some(now.moved(by.x, tilt));
        ui.set_cursor_icon(egui::CursorIcon::Grabbing);
    } else if canvas.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Grab);
    }
    if canvas.contains_pointer() {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta.y, i.zoom_delta()));
        let times = (scroll * ZOOM_A_POINT).exp() * pinch;
        if (times - 1.0).abs() > 1e-4 {
            next.turned = Some(now.zoomed(times));
            ui.input_mut(|i| i.smooth_scroll_delta = egui::Vec2::ZERO);
        }
    }
    if canvas.clicked() {
        canvas.request_focus();
        let share = canvas.interact_pointer_pos().map(|at| (at - field.min) / field.size());
        let round = share.and_then(|share| here.bench.lesson.round_at(index, share));
        select(here, round, next, actions);
    }
}

/// Selects a round of the sample, or of the piece.
pub(super) fn select(
    here: &LessonBench<'_>,
    round: Option<u32>,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    match here.step {
        Some(_) => next.round = round,
        None => actions.look(Look::Select(round)),
    }
}

/// Left and Right go from round to round, in whichever chart has the keyboard.
pub(super) fn step(
    ui: &Ui,
    here: &LessonBench<'_>,
    bent: &Bent,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let steps = ui.input_mut(|i| {
        let mut presses = |key| i.count_and_consume_key(egui::Modifiers::NONE, key) as i64;
        presses(egui::Key::ArrowRight) - presses(egui::Key::ArrowLeft)
    });
    if steps != 0 {
        let none = if steps > 0 { 0 } else { 1 };
        let now = here.round().map_or(none, i64::from);
        let to = (now + steps).clamp(1, bent.gains.len().max(1) as i64) as u32;
        select(here, Some(to), next, actions);
    }
}

fn heading(ui: &Ui, here: &LessonBench<'_>, panel: Rect) {
    let t = here.bench.t;
    let painter = ui.painter();
    let y = panel.top() + 0.5 * super::layout::HEADING * here.larger.min(1.5);
    let (title, hint) = match here.step {
        Some(step) => {
            let all = here.course.steps.len();
            (
                step.title.clone(),
                say!("lesson-step-step-of-all", step = here.view.step + 1, all = all),
            )
        }
        None => (
            here.bench.document.piece().name.clone(),
            say!("lesson-your-piece-relaxed").to_owned(),
        ),
    };
    let selected = here.round().and_then(|round| {
        let gain = here.bent.as_ref()?.gains.get(round as usize - 1)?;
        let known = here.is_open() && here.tells_numbers();
        Some(if known {
            say!(
                "lesson-rnd-round-gained-st",
                round = round,
                gained = format!("{:+}", gain.gained)
            )
        } else {
            say!("lesson-rnd-round", round = round)
        })
    });
    let mut right = panel.right() - PAD;
    if let Some(words) = selected {
        let font = type_faces::bold(type_faces::SMALL);
        let wide = painter.layout_no_wrap(words.clone(), font, t.ink).size().x + 12.0;
        right -= wide;
        paint::pill(painter, pos2(right, y), &words, t);
        right -= 8.0;
    }
    let font = type_faces::drafting(here.size(type_faces::TITLE));
    let left = pos2(panel.left() + PAD, y);
    let (name, _) = paint::clipped_text(painter, left, &title, font, t.ink, right - left.x);
    let small = type_faces::regular(here.size(type_faces::SMALL));
    let at = pos2(name.right() + 12.0, y + 1.0);
    let wide = painter.layout_no_wrap(hint.clone(), small.clone(), t.ink).size().x;
    if at.x + wide < right {
        painter.text(at, Align2::LEFT_CENTER, hint, small, t.soft_ink);
    }
}

/// Why there is no cloth, that it is held, or that it is settling.
fn said(ui: &Ui, here: &LessonBench<'_>, field: Rect) {
    let t = here.bench.t;
    let font = type_faces::regular(here.size(type_faces::BODY));
    let refused = here.error.as_deref().or(here.bench.lesson.refused());
    let state = here.bench.lesson.state();
    let (words, ink) = match (refused, state) {
        (Some(why), _) => (why.to_owned(), t.warning),
        (None, None) => (say!("lesson-preparing").to_owned(), t.soft_ink),
        (None, Some(state)) if state.held => {
            (say!("lesson-held-flat-released-after-your").to_owned(), t.soft_ink)
        }
        (None, Some(state)) if !state.rests => {
            let share = (100.0 * state.progress).round().min(99.0);
            let word = if here.view.stopped {
                say!("lesson-stopped")
            } else {
                say!("lesson-settling")
            };
            (say!("lesson-word-share", word = word, share = share), t.soft_ink)
        }
        _ => return,
    };
    let galley = ui.painter().layout(words, font, ink, field.width() - 40.0);
    let at = pos2(field.center().x - 0.5 * galley.size().x, field.bottom() - galley.size().y);
    ui.painter().rect_filled(
        Rect::from_min_size(at, galley.size()).expand2(vec2(8.0, 2.0)),
        5.0,
        t.panel,
    );
    ui.painter().galley(at, galley, ink);
}

/// The slider that changes the sample's rounds; where cloth lies flat is marked on it.
fn slider(ui: &Ui, here: &LessonBench<'_>, layout: &LessonLayout, next: &mut LessonView) {
    let Some(knob) = here.knob else { return };
    let t = here.bench.t;
    let high = SLIDER * here.larger.min(1.4);
    let panel = layout.picture;
    let row = Rect::from_min_max(
        pos2(panel.left() + PAD, panel.bottom() - high),
        panel.max - vec2(PAD, 4.0),
    );
    let label = here.knob_words(knob.of);
    let small = type_faces::semibold(here.size(type_faces::BODY));
    let words = match knob.value.filter(|_| here.tells_numbers()) {
        Some(value) => format!("{value} {label}"),
        None => label.to_owned(),
    };
    let at = pos2(row.left(), row.top() + 10.0);
    paint::clipped_text(ui.painter(), at, &words, small, t.ink, row.width());
    let track = Rect::from_min_max(pos2(row.left(), row.bottom() - 32.0), row.max);
    let (low, most) = (f64::from(knob.low), f64::from(knob.high));
    let value = knob.value.map_or((low, false), |value| (f64::from(value), true));
    let enabled = here.is_open();
    if !enabled {
        let font = type_faces::regular(here.size(type_faces::SMALL));
        let words = say!("lesson-you-can-change-this-after-your");
        let at = pos2(row.left(), track.center().y - 4.0);
        ui.painter().text(at, Align2::LEFT_CENTER, words, font, t.soft_ink);
        return;
    }
    let (_, moved) = controls::slider(ui, track, label, value, (low, most, 1.0));
    if let Some(value) = moved {
        next.knob = Some(value as u32);
        next.stopped = false;
    }
    let flat = here.figures.as_ref().and_then(|f| f.get("flat")?.value());
    if let Some(flat) = flat.filter(|_| {
        knob.of == plumpline_core::lesson::course::KnobOf::Gain && here.tells_numbers()
    }) {
        let inner = track.x_range().shrink(8.0);
        let share = ((flat - low) / (most - low)).clamp(0.0, 1.0) as f32;
        let x = egui::lerp(inner.min..=inner.max, share);
        let y = track.center().y;
        ui.painter().vline(x, y - 12.0..=y + 12.0, Stroke::new(1.4, t.increase));
        let font = type_faces::regular(here.size(type_faces::SMALL));
        let words = say!("lesson-flat-at", flat = decimal(flat, 1));
        let at = pos2(x + 5.0, y - 11.0);
        ui.painter().text(at, Align2::LEFT_CENTER, words, font, t.increase);
    }
}
