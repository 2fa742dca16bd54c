//! The place of the selected knot, beside it: numbers that follow a drag, fields at rest.

use egui::{
    Align2, Painter, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use plumpline_core::Knot;

use super::ground::Ground;
use super::typed::{self, TypedNumber};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::measure::BoardDimension;
use crate::kit::tokens::HIT;
use crate::kit::{paint, type_faces};
use crate::view::look::Look;

/// Width of the card, and of the words in it.
const WIDE: f32 = 118.0;
const WORDS: f32 = 50.0;
/// Height of the line that says what the numbers are of.
const HEAD: f32 = 17.0;
/// How it moves up or down to clear a knot, and how often.
const STEP: f32 = 14.0;
const STEPS: u32 = 16;

/// One line: what it measures, its word, its number.
struct ReadoutLine {
    dimension: BoardDimension,
    word: &'static str,
    text: String,
}

fn lines(bench: &Bench<'_>, index: usize, knot: &Knot) -> Vec<ReadoutLine> {
    let mut lines = Vec::new();
    if !knot.is_pole() {
        let (dimension, word, mm) = match bench.view.board.by_width {
            true => {
                (BoardDimension::KnotWidth(index), say!("readout-width"), 2.0 * knot.radius_mm)
            }
            false => {
                (BoardDimension::KnotRadius(index), say!("readout-radius"), knot.radius_mm)
            }
        };
        lines.push(ReadoutLine { dimension, word, text: bench.unit().text(mm) });
    }
    let text = bench.unit().text(knot.height_mm);
    lines.push(ReadoutLine {
        dimension: BoardDimension::KnotHeight(index),
        word: say!("readout-height"),
        text,
    });
    lines
}

/// Where the card lies: beside the knot, inside the body, so that it neither leaves the board
/// nor hides the line; higher, lower or outside where it would cover a knot.
fn card(bench: &Bench<'_>, ground: &Ground, knot: &Knot, rows: usize) -> Rect {
    let at = ground.at(knot.place());
    let size = vec2(WIDE, HEAD + rows as f32 * HIT + 4.0);
    let hit = |at| Rect::from_center_size(at, vec2(HIT, HIT));
    let knots = &bench.document.piece().outline.knots;
    let held: Vec<Rect> = knots
        .iter()
        .flat_map(|knot| [ground.at(knot.place()), ground.mirrored(knot.place())])
        .map(hit)
        .collect();
    let whole = ground.rect.shrink(4.0);
    let inside = Align2::RIGHT_CENTER.anchor_size(pos2(at.x - 16.0, at.y), size);
    let outside = Align2::LEFT_CENTER.anchor_size(pos2(at.x + 16.0, at.y), size);
    let shifts = (0..=STEPS).flat_map(|i| [-STEP * i as f32, STEP * i as f32]);
    let places = shifts.flat_map(|by| {
        [inside, outside].map(|rect| {
            let rect = rect.translate(vec2(0.0, by));
            let low = (whole.top() - rect.top()).max(0.0);
            let high = (whole.bottom() - rect.bottom()).min(0.0);
            rect.translate(vec2(0.0, low + high))
        })
    });
    let covers = |rect: &Rect| held.iter().filter(|held| held.intersects(*rect)).count();
    places.min_by_key(|rect| (!whole.contains_rect(*rect), covers(rect))).unwrap_or(inside)
}

/// The knot to tell of, where it is on the board.
fn knot<'a>(bench: &'a Bench<'_>, ground: &Ground) -> Option<(usize, &'a Knot)> {
    let index = bench.view.dragged_knot.or(bench.view.knot)?;
    let knot = bench.document.piece().outline.knots.get(index)?;
    ground.rect.expand(40.0).contains(ground.at(knot.place())).then_some((index, knot))
}

fn ground_of(painter: &Painter, bench: &Bench<'_>, rect: Rect) {
    let edge = Stroke::new(1.3, bench.t.outline);
    painter.rect(rect, 5.0, bench.t.panel, edge, StrokeKind::Inside);
    let font = type_faces::drafting(type_faces::SMALL);
    let at = rect.left_top() + vec2(8.0, 11.0);
    painter.text(at, Align2::LEFT_CENTER, say!("readout-wanted-line"), font, bench.t.soft_ink);
}

fn row(rect: Rect, i: usize) -> Rect {
    let min = rect.min + vec2(0.0, HEAD + 2.0 + i as f32 * HIT);
    Rect::from_min_size(min, vec2(rect.width(), HIT))
}

fn word(painter: &Painter, bench: &Bench<'_>, row: Rect, line: &ReadoutLine) {
    let at = row.left_center() + vec2(8.0, 0.0);
    let font = type_faces::regular(type_faces::SMALL);
    painter.text(at, Align2::LEFT_CENTER, line.word, font, bench.t.soft_ink);
}

fn number(
    painter: &Painter,
    bench: &Bench<'_>,
    row: Rect,
    line: &ReadoutLine,
    hovered: bool,
) -> Rect {
    let t = bench.t;
    let plate = row.with_min_x(row.left() + WORDS).shrink2(vec2(3.0, 2.0));
    if hovered {
        painter.rect_filled(plate, 4.0, t.wash);
    }
    let at = plate.right_center() - vec2(5.0, 0.0);
    let font = type_faces::semibold(type_faces::BODY);
    painter.text(at, Align2::RIGHT_CENTER, &line.text, font, t.outline);
    plate
}

/// Draws the numbers while the knot is dragged.
pub(super) fn paint_still(painter: &Painter, bench: &Bench<'_>, ground: &Ground) {
    let Some((index, knot)) = knot(bench, ground) else { return };
    let lines = lines(bench, index, knot);
    let rect = card(bench, ground, knot, lines.len());
    ground_of(painter, bench, rect);
    for (i, line) in lines.iter().enumerate() {
        word(painter, bench, row(rect, i), line);
        number(painter, bench, row(rect, i), line, false);
    }
}

/// Draws the numbers and takes what is typed over them; the word of the first changes
/// between radius and width.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, ground: &Ground, actions: &mut Actions) {
    let Some((index, knot)) = knot(bench, ground) else { return };
    let lines = lines(bench, index, knot);
    let rect = card(bench, ground, knot, lines.len());
    let painter = ui.painter_at(ground.rect);
    ground_of(&painter, bench, rect);
    // The card itself takes the hand: what lies under it is not meant.
    ui.interact(rect, ui.scope_id().with("place of the knot"), Sense::CLICK | Sense::DRAG);
    for (i, line) in lines.iter().enumerate() {
        let row = row(rect, i);
        word(&painter, bench, row, line);
        if !matches!(line.dimension, BoardDimension::KnotHeight(_)) {
            switch(ui, bench, row.with_max_x(row.left() + WORDS), actions);
        }
        let name = say!("readout-knot-knot-what", knot = index + 1, what = line.word);
        let hit = row.with_min_x(row.left() + WORDS);
        let entry = TypedNumber {
            dimension: line.dimension,
            name: &name,
            text: &line.text,
            at: hit.center(),
            size: hit.size(),
            hint: say!("readout-of-the-wanted-line-click-to-type"),
        };
        typed::show(ui, bench, ground, &entry, actions, |painter, hovered| {
            number(painter, bench, row, line, hovered)
        });
    }
}

/// Changes between radius and width.
fn switch(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let by_width = bench.view.board.by_width;
    let name =
        if by_width { say!("readout-show-the-radius") } else { say!("readout-show-the-width") };
    let held = ui.interact(rect, ui.scope_id().with("radius or width"), Sense::click());
    held.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    let painter = ui.painter_at(rect);
    if held.hovered() {
        let line = rect.shrink2(vec2(8.0, 4.0));
        painter.hline(line.x_range(), line.bottom(), Stroke::new(1.0, bench.t.outline));
    }
    if held.has_focus() {
        paint::focus_ring(&painter, rect.shrink(4.0), 4.0, bench.t);
    }
    if held.on_hover_text(say!("readout-name-instead", name = name)).clicked() {
        actions.look(Look::ByWidth(!by_width));
    }
}
