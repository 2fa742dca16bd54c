//! The round bars: one bar a round in working order, as long as it has stitches, its
//! wording beside it. The stack of bars is the skin unrolled, and it is the pattern.

mod hands;
mod notches;
mod round_card;
mod row;
mod rows;

pub use hands::{BarsHand, hands};
pub use rows::Rows;

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Bounds;
use plumpline_core::Plan;
use plumpline_core::wording::WrittenLine;

use crate::bench::Bench;
use crate::kit::icons::{self, Way};
use crate::kit::{paint, type_faces};

/// Draws the bars.
pub fn paint(ui: &Ui, bench: &Bench<'_>, rect: Rect, hand: &BarsHand) {
    let Some(plan) = bench.plan else { return };
    heading(ui, bench, rect, &hand.rows);
    let painter = ui.painter_at(hand.rows.view);
    let rows = &hand.rows;
    if let Some(round) = bench.view.washed() {
        painter.rect_filled(rows.row(round), 5.0, bench.t.wash);
    }
    if let Some(round) = bench.view.current_round() {
        row::current_round(&painter, bench, rows, round);
    }
    if let Some(chain) = plan.chain {
        foundation(&painter, bench, rows, chain);
    }
    for number in rows.in_sight() {
        row::paint(&painter, bench, plan, hand, number);
    }
    for number in rows.in_sight() {
        notches::paint(&painter, bench, plan, rows, number);
    }
    row::faces(&painter, bench, rows);
    stuffing(&painter, bench, plan, rows);
    for line in bench.words.into_iter().flat_map(|words| &words.lines) {
        if line.last >= *rows.in_sight().start() && line.first <= *rows.in_sight().end() {
            wording(&painter, bench, rows, line);
        }
    }
    // With a selected round its own row shows where the keyboard is.
    if hand.focused && bench.view.selected.is_none() {
        paint::focus_ring(ui.painter(), rows.view.shrink(3.0), 6.0, bench.t);
    }
}

fn heading(ui: &Ui, bench: &Bench<'_>, rect: Rect, rows: &Rows) {
    let t = bench.t;
    let painter = ui.painter();
    let y = rect.top() + 20.0;
    let mut x =
        paint::title(painter, pos2(rect.left() + 12.0, y), say!("bars-round-bars"), "", t)
            + 18.0;
    let small = || type_faces::regular(type_faces::SMALL);
    let end = hands::buttons_left(bench, rect) - 8.0;
    let marks = [
        (Way::Up, t.increase, say!("bars-increase")),
        (Way::Down, t.decrease, say!("bars-decrease")),
    ];
    let wide = |words: &str| painter.layout_no_wrap(words.into(), small(), t.ink).size().x;
    let room: f32 = marks.iter().map(|(_, _, word)| wide(word) + 24.0).sum();
    if x + room <= end {
        for (way, colour, word) in marks {
            let base = if way == Way::Up { y + 3.0 } else { y - 2.0 };
            icons::notch(painter, pos2(x, base), way, vec2(8.0, 7.0), colour);
            let at = pos2(x + 8.0, y + 1.0);
            let word = painter.text(at, Align2::LEFT_CENTER, word, small(), t.soft_ink);
            x = word.right() + 16.0;
        }
    }
    if bench.view.selected.is_none() && rows.stitch >= rows::CELL {
        let hints = [
            say!("bars-one-cell-one-stitch-drag-an-end-to-pin"),
            say!("bars-one-cell-one-stitch"),
        ];
        if let Some(words) = hints.into_iter().find(|words| x + wide(words) <= end) {
            let at = pos2(end, y + 1.0);
            painter.text(at, Align2::RIGHT_CENTER, words, small(), t.soft_ink);
        }
    }
    let line = Stroke::new(1.0, t.edge);
    painter.hline(rect.left() + 2.0..=rect.right(), rect.top() + hands::HEADING - 2.0, line);
}

/// The foundation chain of a piece that starts open.
fn foundation(painter: &Painter, bench: &Bench<'_>, rows: &Rows, chain: u32) {
    let t = bench.t;
    let half = 0.5 * chain as f32 * rows.stitch;
    let y = rows.chain_y();
    let ends = [pos2(rows.bars_x() - half, y), pos2(rows.bars_x() + half, y)];
    painter.extend(Shape::dashed_line(&ends, Stroke::new(2.0, t.soft_ink), 4.0, 3.0));
    let font = type_faces::regular(type_faces::BODY);
    let at = pos2(rows.wording_left(), y);
    painter.text(at, Align2::LEFT_CENTER, say!("bars-foundation-chain"), font, t.soft_ink);
    let font = type_faces::semibold(type_faces::BODY);
    let at = pos2(rows.right() - 6.0, y);
    painter.text(at, Align2::RIGHT_CENTER, format!("[{chain}]"), font, t.soft_ink);
}

/// The pill that says when the stuffing goes in.
fn stuffing(painter: &Painter, bench: &Bench<'_>, plan: &Plan, rows: &Rows) {
    let Some(y) = rows.stuffing_y() else { return };
    let t = bench.t;
    let ends = [pos2(rows.left() + 8.0, y), pos2(rows.right(), y)];
    painter.extend(Shape::dashed_line(&ends, Stroke::new(1.2, t.soft_ink), 2.5, 3.0));
    let Bounds { low, high } = plan.estimate.stuffing_g;
    let words = say!("bars-stuff-now-mass", mass = bench.unit().mass_range_text(low, high));
    let font = type_faces::semibold(type_faces::BODY);
    let galley = painter.layout_no_wrap(words, font, t.ink);
    let size = vec2(galley.size().x + 44.0, 20.0);
    let pill = Rect::from_center_size(pos2(rows.bars_x(), y), size);
    painter.rect(pill, 10.0, t.panel, Stroke::new(1.3, t.outline), StrokeKind::Inside);
    icons::tufts(painter, pill.left_center() + vec2(19.0, 0.0), t.well, t.soft_ink);
    let at = pill.left_center() + vec2(34.0, -0.5 * galley.size().y);
    painter.galley(at, galley, t.ink);
}

/// The words of a line and its count; a brace where the line joins several rounds.
fn wording(painter: &Painter, bench: &Bench<'_>, rows: &Rows, line: &WrittenLine) {
    let t = bench.t;
    let (top, bottom) = (rows.y(line.first), rows.y(line.last));
    let joined = line.last > line.first;
    let seen = rows.view.y_range().shrink(10.0);
    // A run that is only partly in sight keeps its words in sight.
    let y = if joined {
        let (low, high) = (top.max(seen.min), bottom.min(seen.max));
        0.5 * (low + high.max(low))
    } else {
        top
    };
    if joined {
        brace(painter, t, rows.brace_x(), top - 5.0, bottom + 5.0, y);
    }
    let words =
        if joined { format!("{}: {}", line.heading, line.text) } else { line.text.clone() };
    words_beside(painter, pos2(rows.wording_left(), y), &words, wording_width(rows), t.ink);
    let pinned = (line.first..=line.last).any(|r| bench.pin_of(r).is_some());
    let font = type_faces::semibold(type_faces::BODY);
    let at = pos2(rows.right() - 6.0, y);
    let text = format!("[{}]", line.count);
    let rect = painter.text(at, Align2::RIGHT_CENTER, text, font, t.ink);
    if pinned {
        let edge = Stroke::new(1.4, t.outline);
        painter.rect_stroke(rect.expand2(vec2(4.0, 0.0)), 4.0, edge, StrokeKind::Inside);
    }
}

/// Room for the words of a round, counts left free.
fn wording_width(rows: &Rows) -> f32 {
    rows.counts_left() - rows.wording_left() - 6.0
}

/// Draws words `width` wide at most: small where they are too long for it, and then cut off.
/// Most fit and are laid out once, which counts while all of them change under a hand.
fn words_beside(painter: &Painter, at: Pos2, words: &str, width: f32, ink: egui::Color32) {
    let font = type_faces::regular(type_faces::BODY);
    let galley = painter.layout_no_wrap(words.to_owned(), font, ink);
    if galley.size().x > width {
        let small = type_faces::regular(type_faces::SMALL);
        paint::clipped_text(painter, at, words, small, ink, width);
        return;
    }
    let place = Align2::LEFT_CENTER.anchor_size(at, galley.size());
    painter.galley(place.min, galley, ink);
}

/// Whether the words of a round have to be cut off in the column.
fn is_cut(painter: &Painter, rows: &Rows, words: &str) -> bool {
    let font = type_faces::regular(type_faces::SMALL);
    let galley = painter.layout_no_wrap(words.to_owned(), font, egui::Color32::PLACEHOLDER);
    galley.size().x > wording_width(rows)
}

fn brace(
    painter: &Painter,
    t: &crate::kit::Tokens,
    x: f32,
    top: f32,
    bottom: f32,
    middle: f32,
) {
    let d = 4.0;
    let points = vec![
        pos2(x - d, top),
        pos2(x, top + d),
        pos2(x, middle - d),
        pos2(x + d, middle),
        pos2(x, middle + d),
        pos2(x, bottom - d),
        pos2(x - d, bottom),
    ];
    painter.add(Shape::line(points, Stroke::new(1.3, t.soft_ink)));
}
