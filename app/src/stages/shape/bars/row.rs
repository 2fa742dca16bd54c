//! One row: its number, its bead, its bar and its pin.

use egui::{Align2, Mesh, Painter, Rect, Shape, Stroke, StrokeKind, pos2};
use plumpline_core::{Kind, Plan, Round, Yarn};

use super::hands::BarsHand;
use super::rows::{CELL, Rows};
use crate::bench::Bench;
use crate::kit::tokens::{Tokens, mix};
use crate::kit::{icons, paint, type_faces};

/// Draws the ground of the selected row, and its number on a pill.
pub(super) fn current_round(painter: &Painter, bench: &Bench<'_>, rows: &Rows, round: u32) {
    let t = bench.t;
    let edge = Stroke::new(1.4, t.highlight_edge);
    let row = rows.row(round);
    // The words of several rounds stand between their rows: no edge may run through them.
    let joined = bench.words.and_then(|words| words.line_of(round));
    if joined.is_some_and(|line| line.last > line.first) {
        painter.rect_filled(row, 5.0, t.wash);
        let own = row.with_max_x(rows.brace_x() - 8.0);
        painter.rect_stroke(own, 5.0, edge, StrokeKind::Inside);
    } else {
        painter.rect(row, 5.0, t.wash, edge, StrokeKind::Inside);
    }
    let pill = row.with_max_x(rows.numbers_right() + 4.0);
    painter.rect(pill, 5.0, t.highlight, edge, StrokeKind::Inside);
}

/// Draws one row.
pub(super) fn paint(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    hand: &BarsHand,
    number: u32,
) {
    let Some(round) = plan.rounds.get(number as usize - 1) else { return };
    let (t, rows) = (bench.t, &hand.rows);
    let y = rows.y(number);
    let mine = bench.view.current_round() == Some(number);
    let (font, ink) = if mine {
        (type_faces::bold(type_faces::BODY), t.on_highlight)
    } else {
        (type_faces::regular(type_faces::BODY), t.ink)
    };
    let right = pos2(rows.numbers_right() - 2.0, y);
    painter.text(right, Align2::RIGHT_CENTER, number, font, ink);
    let colour = bench.yarn_of(round.yarn);
    let below = (number as usize).checked_sub(2).and_then(|i| plan.rounds.get(i));
    if below.is_none_or(|below| below.yarn != round.yarn) {
        let at = pos2(rows.beads_x(), y);
        paint::bead(painter, at, &Yarn::letter(round.yarn), colour, t);
    }
    bar(painter, t, rows, rows.bar(number, round.count), round.count, colour);
    let bar = rows.bar(number, round.count);
    if mine {
        let edge = Stroke::new(1.6, t.highlight_edge);
        painter.rect_stroke(bar.expand(1.5), 3.0, edge, StrokeKind::Outside);
    }
    let dragged = bench.view.dragged_bar.is_some_and(|(r, _)| r == number);
    if dragged || hand.end == Some(number) {
        grip(painter, t, bar);
    }
    let pinned = bench.pin_of(number).is_some();
    if let Some(words) = mark(bench, round, number) {
        let font = type_faces::bold(type_faces::SMALL);
        let clear = if pinned { 18.0 } else { 6.0 };
        let at = pos2(bar.left() - clear, y);
        painter.text(at, Align2::RIGHT_CENTER, words, font, t.soft_ink);
    }
    if pinned {
        let head = pos2(bar.left() - 10.0, y);
        let point = pos2(bar.left() + (0.35 * bar.width()).min(12.0), y);
        icons::lying_pin(painter, head, point, t.outline, t.panel);
    }
}

/// Draws a line with two ends beside each run of rounds in which nothing is shaped.
pub(super) fn faces(painter: &Painter, bench: &Bench<'_>, rows: &Rows) {
    for face in &bench.document.piece().faces {
        let last = face.to_round.min(rows.count());
        if face.from_round <= last {
            let half = 0.5 * rows.pitch - 1.5;
            let span = rows.y(face.from_round) - half..=rows.y(last) + half;
            paint::plain_run(painter, rows.numbers_right() + 3.0, span, bench.t);
        }
    }
}

/// What sets a round apart from single crochet in both loops: `hdc BLO`.
fn mark(bench: &Bench<'_>, round: &Round, number: u32) -> Option<String> {
    let kind = (round.kind != Kind::Single).then(|| round.kind.code());
    let only = bench.document.piece().loops.get(&number).map(|l| l.code());
    match (kind, only) {
        (Some(kind), Some(only)) => Some(format!("{kind} {only}")),
        (one, other) => one.or(other).map(str::to_owned),
    }
}

/// A bar of cells, one a stitch.
fn bar(painter: &Painter, t: &Tokens, rows: &Rows, bar: Rect, count: u32, colour: [u8; 3]) {
    let (yarn, edge) = (Tokens::yarn(colour), t.yarn_edge(colour));
    painter.rect_filled(bar, 2.5, yarn);
    if rows.stitch >= CELL {
        let mut cells = Mesh::default();
        let line = mix(yarn, t.cell_edge(colour), 0.75);
        let half = 0.5 / painter.pixels_per_point();
        for k in 1..count {
            let x = painter.round_to_pixel_center(bar.left() + k as f32 * rows.stitch);
            let cell = Rect::from_x_y_ranges(
                x - half..=x + half,
                bar.top() + 2.0..=bar.bottom() - 2.0,
            );
            cells.add_colored_rect(cell, line);
        }
        painter.add(Shape::mesh(cells));
    }
    painter.rect_stroke(bar, 2.5, Stroke::new(1.0, edge), StrokeKind::Inside);
}

/// The grip that shows at the end of a bar that can be dragged.
fn grip(painter: &Painter, t: &Tokens, bar: Rect) {
    let at = pos2(bar.right() + 4.0, bar.center().y);
    let grip = Rect::from_center_size(at, egui::vec2(6.0, bar.height() + 2.0));
    painter.rect(grip, 2.5, t.panel, Stroke::new(1.5, t.outline), StrokeKind::Inside);
}
