//! The stitches of the round: its bar unrolled into as many rows as it takes, one cell a
//! stitch. Worked cells are yarn, the next is marigold, those to come are hollow; notches
//! stand where it increases (up) and decreases (down). Each repeat hangs from a thread of its
//! own, with its number.

use egui::{Align2, Painter, Rect, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::making::CourseRound;
use plumpline_core::placement::Stitch;

use super::hook::Hook;
use crate::kit::icons::{self, Way};
use crate::kit::{Tokens, type_faces};

/// Widest a cell gets at full size, points.
const WIDEST: f32 = 76.0;
/// Narrowest a cell gets; where even these do not fit, the rows about the next stitch show.
const NARROWEST: f32 = 9.0;
/// Between two repeats, in cells.
const BETWEEN: f32 = 0.5;
/// Cells of a long repeat that stay together where it has to be broken.
const TENS: u32 = 10;

/// A stretch of a row that is one repeat or a part of one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Stretch {
    /// Its first step.
    from: u32,
    /// The step after its last.
    to: u32,
    /// The number of the repeat it begins, from 1; none where it goes on with one.
    begins: Option<u32>,
    /// Its cells.
    cells: u32,
}

/// The rows of a round, and how large a cell is.
#[derive(Debug, PartialEq)]
struct CellRows {
    rows: Vec<Vec<Stretch>>,
    cell: f32,
}

/// Height of a cell, of the room for notches above and below, and of a whole row.
fn heights(cell: f32) -> (f32, f32, f32) {
    let bar = (0.78 * cell).clamp(9.0, 64.0);
    let notch = (0.3 * cell).clamp(5.0, 18.0);
    (bar, notch, number_size(cell) + 4.0 + bar + 2.0 * notch + 4.0)
}

/// Size of the numbers above cells.
fn number_size(cell: f32) -> f32 {
    (0.3 * cell).clamp(type_faces::SMALL, 20.0)
}

/// Cells of a step: what it leaves for the round above.
fn cells_of(round: &CourseRound, from: u32, to: u32) -> u32 {
    let steps = &round.stitches[from as usize..to as usize];
    steps.iter().map(|s| s.produces()).sum()
}

/// The repeats of a round, those of more than `most` cells broken into parts of whole tens,
/// all about as long as one another.
fn stretches(round: &CourseRound, most: u32) -> Vec<Vec<Stretch>> {
    let whole = |i: usize| {
        let (from, to) = (round.repeats[i], round.repeat_end(i));
        let begins = Some(i as u32 + 1);
        Stretch { from, to, begins, cells: cells_of(round, from, to) }
    };
    let mut all = Vec::with_capacity(round.repeats.len());
    for repeat in (0..round.repeats.len()).map(whole) {
        if repeat.cells <= most {
            all.push(vec![repeat]);
            continue;
        }
        let tens = |cells: u32| cells.div_ceil(TENS) * TENS;
        let rows = repeat.cells.div_ceil((most / TENS * TENS).max(1));
        let each = tens(repeat.cells.div_ceil(rows)).min(most).max(2);
        let mut parts: Vec<Stretch> = Vec::new();
        for step in repeat.from..repeat.to {
            let cells = cells_of(round, step, step + 1);
            match parts.last_mut() {
                Some(part) if part.cells + cells <= each => {
                    part.to = step + 1;
                    part.cells += cells;
                }
                _ => {
                    let begins = repeat.begins.filter(|_| step == repeat.from);
                    parts.push(Stretch { from: step, to: step + 1, begins, cells });
                }
            }
        }
        all.push(parts);
    }
    all
}

/// CellRows of cells so wide that all of them fit into `size`, or as narrow as they may get.
fn rows(round: &CourseRound, size: egui::Vec2, widest: f32) -> CellRows {
    let mut cell = widest.max(NARROWEST);
    loop {
        let most = (size.x / cell).floor().max(2.0) as u32;
        let rows = packed(&stretches(round, most), most as f32);
        let fits = rows.len() as f32 * heights(cell).2 <= size.y;
        if fits || cell <= NARROWEST {
            return CellRows { rows, cell };
        }
        cell = (cell - 1.0).max(NARROWEST);
    }
}

/// Repeats put side by side as long as `most` cells hold them, every row with as many of them
/// as the next where that takes no row more.
fn packed(repeats: &[Vec<Stretch>], most: f32) -> Vec<Vec<Stretch>> {
    let lay = |limit: usize| {
        let mut rows: Vec<Vec<Stretch>> = Vec::new();
        let (mut used, mut number) = (0.0, 0);
        for repeat in repeats {
            let whole = repeat.len() == 1;
            for stretch in repeat {
                let wide = stretch.cells as f32;
                let joins = whole && number < limit && used + BETWEEN + wide <= most;
                match rows.last_mut().filter(|_| joins && number > 0) {
                    Some(row) => {
                        row.push(*stretch);
                        (used, number) = (used + BETWEEN + wide, number + 1);
                    }
                    None => {
                        rows.push(vec![*stretch]);
                        (used, number) = (wide, if whole { 1 } else { 0 });
                    }
                }
            }
        }
        rows
    };
    let closest = lay(usize::MAX);
    let even = lay(repeats.len().div_ceil(closest.len().max(1)).max(1));
    if even.len() == closest.len() { even } else { closest }
}

/// Draws the stitches of the round under the hook in `rect`.
pub(super) fn show(ui: &Ui, hook: &Hook<'_>, rect: Rect) {
    let Some((_, done, round)) = hook.round() else { return };
    let CellRows { rows, cell } = rows(round, rect.size(), WIDEST * hook.scale);
    let pitch = heights(cell).2;
    let mine = rows.iter().position(|row| row.iter().any(|s| (s.from..s.to).contains(&done)));
    let mine = mine.unwrap_or(0);
    // Where not all fit: the row before the next stitch, and what comes.
    let room = ((rect.height() / pitch).floor() as usize).max(1);
    let all = rows.len();
    let hides = all > room;
    let shown = if hides { room.saturating_sub(1).max(1) } else { all };
    let first = if hides { mine.saturating_sub(1).min(all - shown) } else { 0 };
    let high = shown as f32 * pitch;
    let slack = (rect.height() - high - if hides { 20.0 } else { 0.0 }).max(0.0);
    let mut y = rect.top() + 0.45 * slack;
    let now = round.repeat_of(done);
    let painter = ui.painter_at(rect.expand(4.0));
    for row in rows.iter().skip(first).take(shown) {
        let mut x = rect.left();
        for stretch in row {
            let place =
                Rect::from_min_size(pos2(x, y), vec2(stretch.cells as f32 * cell, pitch));
            let current = round.repeat_of(stretch.from) == now;
            thread(&painter, hook, round, *stretch, place, current);
            cells(&painter, hook, round, *stretch, (place, cell), done);
            x = place.right() + BETWEEN * cell;
        }
        y += pitch;
    }
    if hides {
        let font = type_faces::regular(type_faces::BODY);
        let words = say!(
            "make-rows-first-last-of-all-of-this-round",
            first = first + 1,
            last = first + shown,
            all = all
        );
        let at = pos2(rect.left(), y + 10.0);
        painter.text(at, Align2::LEFT_CENTER, words, font, hook.bench.t.soft_ink);
    }
}

/// The thread a repeat hangs from, with its number. A round without repeats has none, but a
/// number at every tenth stitch.
fn thread(
    painter: &Painter,
    hook: &Hook<'_>,
    round: &CourseRound,
    stretch: Stretch,
    place: Rect,
    current: bool,
) {
    let t = hook.bench.t;
    if round.repeats.len() < 2 {
        let before = round.made(stretch.from);
        let cell = place.width() / stretch.cells as f32;
        let font = type_faces::regular(number_size(cell));
        for tenth in (before / TENS + 1)..=((before + stretch.cells) / TENS) {
            let x = place.left() + ((tenth * TENS - before) as f32 - 0.5) * cell;
            let at = pos2(x, place.top() + 0.6 * number_size(cell));
            painter.text(at, Align2::CENTER_CENTER, tenth * TENS, font.clone(), t.soft_ink);
        }
        return;
    }
    let size = number_size(place.width() / stretch.cells as f32);
    let y = place.top() + 0.6 * size;
    let pen = match current {
        true => Stroke::new(2.5, t.highlight_edge),
        false => Stroke::new(1.0, t.control_edge),
    };
    let mut from = place.left() + 1.0;
    if let Some(number) = stretch.begins {
        let (font, ink) = match current {
            true => (type_faces::bold(size), t.highlight_ink),
            false => (type_faces::regular(size), t.soft_ink),
        };
        let at = pos2(from, y);
        from = painter.text(at, Align2::LEFT_CENTER, number, font, ink).right() + 4.0;
    }
    if from < place.right() - 2.0 {
        painter.hline(from..=place.right() - 1.0, y, pen);
    }
}

/// The cells of a stretch, and its notches.
fn cells(
    painter: &Painter,
    hook: &Hook<'_>,
    round: &CourseRound,
    stretch: Stretch,
    (place, cell): (Rect, f32),
    done: u32,
) {
    let t = hook.bench.t;
    let colour = hook.bench.yarn_of(round.yarn);
    let (bar, notch, pitch) = heights(cell);
    let top = place.top() + pitch - bar - notch - 2.0;
    let gap = (0.05 * cell).clamp(1.0, 4.0);
    let mut x = place.left();
    let mut next = None;
    for step in stretch.from..stretch.to {
        let stitch = round.stitches[step as usize];
        let wide = stitch.produces() as f32 * cell;
        let at = Rect::from_min_size(pos2(x, top), vec2(wide - gap, bar));
        let radius = (0.14 * cell).min(6.0);
        let (fill, edge) = match step < done {
            true => (Tokens::yarn(colour), Stroke::new(1.0, t.yarn_edge(colour))),
            false => (t.panel, Stroke::new(1.0, t.control_edge)),
        };
        if step == done {
            next = Some((at, radius));
        } else {
            painter.rect(at, radius, fill, edge, StrokeKind::Inside);
        }
        if stitch == Stitch::Increase && step != done {
            // Two stitches in one: its two cells are one with a seam.
            let seam = Stroke::new(1.0, if step < done { t.cell_edge(colour) } else { t.edge });
            painter.vline(at.center().x, at.y_range().shrink(2.0), seam);
        }
        let size = vec2((0.5 * cell).clamp(6.0, 24.0), notch - 1.0);
        let middle = at.center().x;
        match stitch {
            Stitch::Plain => {}
            Stitch::Increase => {
                icons::notch(painter, pos2(middle, at.top() - 1.0), Way::Up, size, t.increase);
            }
            Stitch::Decrease => {
                let base = pos2(middle, at.bottom() + 1.0);
                icons::notch(painter, base, Way::Down, size, t.decrease);
            }
        }
        x += wide;
    }
    // Last, so that no neighbour covers its edge.
    if let Some((at, radius)) = next {
        let edge = Stroke::new(2.0, t.highlight_edge);
        painter.rect(at.expand(1.5), radius, t.highlight, edge, StrokeKind::Outside);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::making::WorkedPiece;
    use plumpline_core::pattern::write::Writer;
    use plumpline_core::{Gauge, starter::Starter};

    fn course(times: f64) -> WorkedPiece {
        let ball = Starter::Ball;
        let mut piece = ball.piece(&ball.usual(), Gauge::default()).expect("a ball");
        piece.outline = piece.outline.scaled(times, times);
        WorkedPiece::of_piece(&piece, &Writer::bench()).expect("a plan")
    }

    #[test]
    fn every_step_has_its_cell_once_and_rows_fit() {
        for times in [0.5, 1.0, 4.0] {
            for round in &course(times).rounds {
                for size in [vec2(1180.0, 330.0), vec2(760.0, 190.0), vec2(300.0, 80.0)] {
                    let laid = rows(round, size, WIDEST);
                    let stretches: Vec<Stretch> = laid.rows.iter().flatten().copied().collect();
                    assert_eq!(stretches[0].from, 0);
                    assert!(stretches.windows(2).all(|s| s[0].to == s[1].from));
                    assert_eq!(stretches.last().map(|s| s.to), Some(round.steps()));
                    for row in &laid.rows {
                        let cells: u32 = row.iter().map(|s| s.cells).sum();
                        let wide = cells as f32 + BETWEEN * (row.len() - 1) as f32;
                        assert!(wide * laid.cell <= size.x + 1.0, "{wide} {size:?}");
                    }
                    let high = laid.rows.len() as f32 * heights(laid.cell).2;
                    assert!(high <= size.y || laid.cell <= NARROWEST);
                }
            }
        }
    }

    #[test]
    fn repeats_stand_in_rows_of_as_many_each() {
        let course = course(1.0);
        let round = course.rounds.iter().rfind(|r| r.repeats.len() == 6).expect("six repeats");
        let laid = rows(round, vec2(24.0 * WIDEST, 400.0), WIDEST);
        let numbers: Vec<usize> = laid.rows.iter().map(Vec::len).collect();
        assert!(numbers.iter().all(|&n| n == numbers[0]), "{numbers:?}");
    }
}
