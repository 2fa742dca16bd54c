//! The list of parts, each after what carries it, and of what holds them together.

use egui::{Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo};
use egui::{pos2, vec2};

use plumpline_core::project::toy::part::{PartForm, Thing};

use super::here::ToyBench;
use super::{attached, menus, told};
use crate::bench::action::Actions;
use crate::fields::form;
use crate::kit::tokens::{PAD, Tokens};
use crate::kit::{controls, icons, paint, type_faces};
use crate::view::toy::{ToyPick, ToyView};

/// Side of a small picture, and the room left of words.
const SIGN: f32 = 42.0;
const WORDS: f32 = SIGN + 10.0;
/// What eyes and noses are shown as: black.
const EYE: [u8; 3] = [34, 31, 31];
/// Least height of a row.
const ROW: f32 = 54.0;

/// Draws the list in `panel`.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    panel: Rect,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let head = panel.left_top() + vec2(PAD, 22.0);
    let hint = if panel.width() < 240.0 { "" } else { say!("toy-point-at-one-on-the-toy") };
    paint::title(ui.painter(), head, say!("toy-parts"), hint, t);
    let foot = menus::show(ui, here, panel, actions);
    let inner = Rect::from_min_max(
        pos2(panel.left() + 8.0, panel.top() + 40.0),
        pos2(panel.right() - 6.0, foot - 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("parts"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        form::beside_the_bar(ui);
        ui.spacing_mut().item_spacing.y = 2.0;
        for index in order(here) {
            ui.push_id(("part", index), |ui| part(ui, here, index, next));
        }
        for index in 0..here.toy.attachments.len() {
            ui.push_id(("held", index), |ui| attached::row(ui, here, index, next));
        }
        controls::follow_focus(ui);
    });
}

/// The parts, what each carries right after it.
fn order(here: &ToyBench<'_>) -> Vec<usize> {
    fn put(here: &ToyBench<'_>, on: Option<usize>, order: &mut Vec<usize>) {
        for (index, part) in here.toy.parts.iter().enumerate() {
            if part.on.map(|seat| seat.part) == on {
                order.push(index);
                put(here, Some(index), order);
            }
        }
    }
    let mut list = Vec::with_capacity(here.toy.parts.len());
    put(here, None, &mut list);
    list
}

/// How many parts carry a part, one on another.
fn depth(here: &ToyBench<'_>, index: usize) -> usize {
    let carrier = |&i: &usize| here.part(i)?.on.map(|seat| seat.part);
    std::iter::successors(carrier(&index), carrier).count()
}

/// Why a part wants looking at: it does not fit, or is refused.
pub(super) fn trouble(here: &ToyBench<'_>, index: usize) -> Option<&'static str> {
    let made = here.made?;
    if made.part(index).is_some_and(|figures| figures.misfit.is_some()) {
        return Some(say!("toy-does-not-fit"));
    }
    let refused = |c: &&plumpline_core::toy::Caution| c.part == Some(index) && c.refused;
    made.cautions.iter().find(refused).map(|caution| match caution.code {
        "small_part" => say!("toy-a-small-part"),
        _ => say!("toy-not-suitable-for-who-it-is-made-for"),
    })
}

fn part(ui: &mut Ui, here: &ToyBench<'_>, index: usize, next: &mut ToyView) {
    let Some(part) = here.part(index) else { return };
    let figures = here.made.and_then(|made| made.part(index));
    let title = told::title(here.project, index, here.bench.unit());
    let place = told::where_it_sits(here.project, index, figures);
    let copies = told::copies(part.copies);
    let below = if copies.is_empty() { place } else { format!("{copies} · {place}") };
    let trouble = trouble(here, index);
    let said = trouble.map_or(String::new(), |words| format!(", {words}"));
    let name = say!("toy-part-row", part = here.called(index), below = below) + &said;
    let on = next.part() == Some(index);
    let shown = ListRow {
        title: &title,
        below: &below,
        name: &name,
        on,
        lit: here.bench.view.toy.hovered == Some(index),
        inset: 6.0 * depth(here, index).min(3) as f32,
        warned: trouble.is_some(),
    };
    let (sign, response) = shown.show(ui, here);
    if let Thing::Small(small) = &part.what {
        small_sign(ui, here, sign.center(), small.form);
    } else if let Some(picture) = here.bench.toy.part_picture(index) {
        let whole = Rect::from_min_max(egui::Pos2::ZERO, pos2(1.0, 1.0));
        ui.painter().image(picture.id(), sign, whole, egui::Color32::WHITE);
    }
    if response.hovered() {
        next.hovered = Some(index);
    }
    if response.clicked() {
        next.taken = Some(ToyPick::Part(index));
    }
}

/// The sign of a small thing.
fn small_sign(ui: &Ui, here: &ToyBench<'_>, at: egui::Pos2, form: PartForm) {
    let (t, painter) = (here.bench.t, ui.painter());
    let pen = Stroke::new(1.5, t.soft_ink);
    let ink = Tokens::yarn(EYE);
    match form {
        PartForm::Eye(button) | PartForm::Nose(button) if button.embroidered => {
            painter.circle(at, 10.0, ink, pen);
            // Its stitches.
            for x in [-5.0, 0.0, 5.0] {
                painter.vline(at.x + x, at.y - 6.0..=at.y + 6.0, Stroke::new(1.2, t.soft_ink));
            }
        }
        PartForm::Eye(_) | PartForm::Nose(_) => {
            painter.circle(at, 10.0, ink, pen);
            painter.circle_filled(at + vec2(-3.4, -3.8), 2.6, t.body_light);
        }
        PartForm::Block(..) => {
            let size = egui::Vec2::splat(19.0);
            painter.rect(
                Rect::from_center_size(at, size),
                2.0,
                t.well,
                pen,
                StrokeKind::Inside,
            );
        }
    }
}

/// A row of the list.
pub(super) struct ListRow<'a> {
    pub(super) title: &'a str,
    pub(super) below: &'a str,
    pub(super) name: &'a str,
    /// Whether it is in hand, and whether it is pointed at elsewhere.
    pub(super) on: bool,
    pub(super) lit: bool,
    /// Points it is set in.
    pub(super) inset: f32,
    pub(super) warned: bool,
}

impl ListRow<'_> {
    /// Draws it; returns the place of its small picture.
    pub(super) fn show(&self, ui: &mut Ui, here: &ToyBench<'_>) -> (Rect, egui::Response) {
        let t = here.bench.t;
        let width = ui.available_width();
        let room = width - 8.0 - WORDS - self.inset - if self.warned { 26.0 } else { 6.0 };
        let ink = if self.on { t.highlight_ink } else { t.soft_ink };
        let title = ui.painter().layout(
            self.title.into(),
            type_faces::semibold(type_faces::BODY),
            t.ink,
            room,
        );
        let font = type_faces::regular(type_faces::SMALL);
        let below = ui.painter().layout(self.below.into(), font, ink, room);
        let tall = (title.size().y + below.size().y + 14.0).max(ROW);
        let (rect, response) = ui.allocate_exact_size(vec2(width, tall), Sense::click());
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, self.on, self.name));
        let painter = ui.painter();
        if self.on {
            let edge = Stroke::new(1.4, t.highlight_edge);
            painter.rect(rect.shrink(1.0), 8.0, t.wash, edge, StrokeKind::Inside);
        } else if self.lit || response.hovered() {
            painter.rect_filled(rect.shrink(1.0), 8.0, t.well);
        }
        let left = rect.left() + 8.0 + self.inset;
        let sign = Rect::from_center_size(
            pos2(left + 0.5 * SIGN, rect.center().y),
            egui::Vec2::splat(SIGN),
        );
        let top = rect.center().y - 0.5 * (title.size().y + below.size().y + 1.0);
        let words = pos2(left + WORDS, top);
        let under = words + vec2(0.0, title.size().y + 1.0);
        painter.galley(words, title, t.ink);
        painter.galley(under, below, ink);
        if self.warned {
            let at = pos2(rect.right() - 16.0, rect.top() + 18.0);
            icons::warning(painter, at, 15.0, t.warning);
        }
        if response.has_focus() {
            paint::focus_ring(painter, rect.shrink(3.0), 6.0, t);
        }
        (sign, response)
    }
}
