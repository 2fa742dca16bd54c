//! The steps in working order, each with its picture, and how far the parts are drawn apart.

use egui::{
    Align2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo,
};
use egui::{pos2, vec2};
use plumpline_core::toy::{AssemblyStep, StepKind};
use plumpline_core::words::Writer;

use super::here::ToyBench;
use super::told;
use crate::document::toy::attachment_word;
use crate::kit::tokens::PAD;
use crate::kit::{controls, paint, type_faces};
use crate::view::toy::{APART_STEP, ToyPick, ToyView};

/// Width of a card, and between cards.
const CARD: f32 = 118.0;
const BETWEEN: f32 = 8.0;

/// Draws the steps in `panel`.
pub(super) fn show(ui: &mut Ui, here: &ToyBench<'_>, panel: Rect, next: &mut ToyView) {
    let t = here.bench.t;
    let head = panel.left_top() + vec2(PAD, 20.0);
    paint::title(ui.painter(), head, say!("toy-steps"), say!("toy-in-working-order"), t);
    apart(ui, here, panel, next);
    let inner = Rect::from_min_max(
        pos2(panel.left() + 12.0, panel.top() + 38.0),
        panel.max - vec2(12.0, 6.0),
    );
    let Some(made) = here.made else { return };
    if made.steps.is_empty() {
        let words = say!("toy-nothing-to-do-yet-put-a-part-on-the");
        let font = type_faces::regular(type_faces::BODY);
        let at = inner.left_top() + vec2(4.0, 8.0);
        ui.painter().text(at, Align2::LEFT_TOP, words, font, t.soft_ink);
        return;
    }
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("steps"));
    controls::scroll_colours(&mut child);
    ScrollArea::horizontal().auto_shrink(false).show(&mut child, |ui| {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = BETWEEN;
            let all = made.steps.len() as f32;
            let fills = all * (CARD + BETWEEN) - BETWEEN <= inner.width();
            let tall = inner.height() - if fills { 2.0 } else { 12.0 };
            for (i, step) in made.steps.iter().enumerate() {
                card(ui, here, i, step, tall, next);
            }
        });
        controls::follow_focus(ui);
    });
}

fn card(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    i: usize,
    step: &AssemblyStep,
    tall: f32,
    next: &mut ToyView,
) {
    let t = here.bench.t;
    let (title, below) = words(here, step);
    let (rect, response) = ui.allocate_exact_size(vec2(CARD, tall), Sense::click());
    let about = match step.attachment {
        Some(index) => Some(ToyPick::Attachment(index)),
        None => step.parts.first().map(|&part| ToyPick::Part(part)),
    };
    let on = about.is_some() && here.bench.view.toy.taken == about;
    let name =
        say!("toy-step-number-title-below", number = i + 1, title = title, below = below);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, on, &name));
    let painter = ui.painter_at(rect.intersect(ui.clip_rect()));
    let (fill, edge) = match (on, response.hovered()) {
        (true, _) => (t.wash, Stroke::new(1.4, t.highlight_edge)),
        (false, true) => (t.panel, Stroke::new(1.0, t.control_edge)),
        (false, false) => (t.well, Stroke::new(1.0, t.edge)),
    };
    painter.rect(rect, 8.0, fill, edge, StrokeKind::Inside);
    let line = rect.bottom() - 26.0;
    let place =
        Rect::from_min_max(rect.min + vec2(4.0, 3.0), pos2(rect.right() - 4.0, line - 9.0));
    if let Some(picture) = here.bench.toy.step_picture(i) {
        let [wide, all] = picture.size().map(|s| s as f32);
        let scale = (place.width() / wide).min(place.height() / all);
        let shown = Rect::from_center_size(place.center(), vec2(wide, all) * scale);
        let whole = Rect::from_min_max(egui::Pos2::ZERO, pos2(1.0, 1.0));
        painter.image(picture.id(), shown, whole, egui::Color32::WHITE);
    }
    let at = pos2(rect.left() + 14.0, line);
    let (ground, ink) = if on { (t.highlight, t.on_highlight) } else { (t.panel, t.ink) };
    painter.circle(
        at,
        8.0,
        ground,
        Stroke::new(1.2, if on { t.highlight_edge } else { t.control_edge }),
    );
    let number = type_faces::bold(type_faces::SMALL);
    painter.text(at, Align2::CENTER_CENTER, (i + 1).to_string(), number, ink);
    let words = at + vec2(13.0, 0.0);
    let room = rect.right() - words.x - 4.0;
    let font = type_faces::semibold(type_faces::BODY);
    paint::clipped_text(&painter, words, &title, font, t.ink, room);
    let font = type_faces::regular(type_faces::SMALL);
    paint::clipped_text(&painter, words + vec2(0.0, 15.0), &below, font, t.soft_ink, room);
    if response.has_focus() {
        paint::focus_ring(&painter, rect.shrink(3.0), 6.0, t);
    }
    if response.on_hover_text(&step.text).clicked() {
        next.taken = about;
    }
}

/// A step in a word or two, and how.
fn words(here: &ToyBench<'_>, step: &AssemblyStep) -> (String, String) {
    if let Some(attachment) = step.attachment.and_then(|i| here.toy.attachments.get(i)) {
        let on = step.parts.first().map(|&part| here.called(part)).unwrap_or_default();
        return (told::capital(attachment_word(attachment)), say!("toy-on-on-small", on = on));
    }
    let Some(&part) = step.parts.first() else { return Default::default() };
    let figures = here.made.and_then(|made| made.part(part));
    let number = figures.map_or(1, |figures| figures.number);
    let title = told::capital(&plumpline_core::toy::steps::part_name(
        here.project,
        part,
        &Writer::bench(),
    ));
    let title = if number > 1 && here.part(part).is_some_and(|p| p.piece().is_some()) {
        format!("{title} × {number}")
    } else {
        title
    };
    let below = match step.kind {
        StepKind::Inside => say!("toy-before-stuffing").into(),
        StepKind::Embroider => say!("toy-embroidered").into(),
        StepKind::PutOn | StepKind::Join => match told::sewn(figures) {
            Some(sts) if number > 1 => say!("toy-sts-each", sts = sts),
            Some(sts) => sts,
            None => say!("toy-sewn-around").into(),
        },
    };
    (title, below)
}

/// How far the parts are drawn apart.
fn apart(ui: &Ui, here: &ToyBench<'_>, panel: Rect, next: &mut ToyView) {
    let t = here.bench.t;
    let right = panel.right() - PAD;
    let y = panel.top() + 19.0;
    let small = type_faces::regular(type_faces::SMALL);
    let words = if next.apart > 0.0 {
        format!("{:.0} %", 100.0 * next.apart)
    } else {
        say!("toy-together").into()
    };
    let end = pos2(right, y);
    ui.painter().text(end, Align2::RIGHT_CENTER, words, small, t.soft_ink);
    let slider =
        Rect::from_min_max(pos2(right - 200.0, y - 12.0), pos2(right - 62.0, y + 12.0));
    let body = type_faces::regular(type_faces::BODY);
    let at = slider.left_center() - vec2(8.0, 0.0);
    ui.painter().text(at, Align2::RIGHT_CENTER, say!("toy-apart"), body, t.ink);
    let name = say!("toy-parts-pulled-apart");
    let (_, moved) =
        controls::slider(ui, slider, name, (next.apart, true), (0.0, 1.0, APART_STEP));
    if let Some(apart) = moved {
        next.apart = apart;
    }
}
