//! Yarns in the figures: a row for each, with its length, its mass and the balls to buy.

use std::sync::Arc;

use egui::{
    Align2, FontId, Galley, Painter, Rect, Response, Sense, Stroke, StrokeKind, Ui, pos2, vec2,
};
use plumpline_core::plan::estimate::YarnUse;
use plumpline_core::{Plan, Yarn};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::fields::yarn_card;
use crate::kit::tokens::PAD;
use crate::kit::{Tokens, paint, type_faces};

/// Height of one yarn's row.
pub(super) const YARN: f32 = 25.0;
/// Height of what is said below the yarns.
pub(super) const NOTE: f32 = 16.0;
/// Between two columns of a row.
const APART: f32 = 12.0;
/// Least length of a skein that is worth drawing.
const SKEIN: f32 = 18.0;

/// `2 balls`; nothing where nobody has said what a ball holds.
fn balls_text(yarn: &Yarn, used: &YarnUse) -> String {
    match yarn.balls(used.range().high) {
        None => String::new(),
        Some(n) => say!("measured-balls", n = n),
    }
}

/// One row's words, from the right: the mass, the length, the balls.
struct RowWords {
    cells: [Arc<Galley>; 3],
}

impl RowWords {
    fn of(painter: &Painter, bench: &Bench<'_>, yarn: &Yarn, used: &YarnUse) -> Self {
        let body = || type_faces::regular(type_faces::BODY);
        let set = |words: String, font: FontId, ink| painter.layout_no_wrap(words, font, ink);
        let t = bench.t;
        let grams = bench.unit().mass_text(yarn.grams(used.metres));
        let metres = bench.unit().yarn_text(used.metres);
        let small = type_faces::regular(type_faces::SMALL);
        Self {
            cells: [
                set(grams, body(), t.soft_ink),
                set(metres, body(), t.ink),
                set(balls_text(yarn, used), small, t.soft_ink),
            ],
        }
    }
}

/// A row a yarn: bead, name, a skein as long as its metres, balls, metres and grams. A click
/// opens the yarn's card.
pub(super) fn show(
    ui: &Ui,
    bench: &Bench<'_>,
    plan: &Plan,
    place: Rect,
    actions: &mut Actions,
) {
    let painter = &ui.painter_at(place.expand(PAD));
    let rows = |height: f32| (height / YARN).floor().max(0.0) as usize;
    let used = &plan.estimate.yarn;
    let with_note = rows(place.height() - NOTE);
    // Where there is room for one row, that is a yarn rather than what is said of all.
    let shown = match used.len() > with_note {
        true => with_note.saturating_sub(1).max(rows(place.height()).min(1)),
        false => used.len(),
    };
    let yarns = &bench.document.project().yarns;
    let list: Vec<_> = used
        .iter()
        .take(shown)
        .filter_map(|one| {
            let yarn = yarns.get(one.yarn)?;
            Some((one, yarn, RowWords::of(painter, bench, yarn, one)))
        })
        .collect();
    // Each column is as wide as its widest number, so that none runs into its neighbour.
    let widest =
        |i: usize| list.iter().map(|(.., words)| words.cells[i].size().x).fold(0.0, f32::max);
    let most = used.iter().map(|y| y.metres).fold(1e-9, f64::max);
    for (i, (one, yarn, words)) in list.iter().enumerate() {
        let y = place.top() + YARN * (i as f32 + 0.5);
        let row = Rect::from_x_y_ranges(place.x_range().expand(6.0), y - 12.5..=y + 12.5);
        button(ui, bench, row, one, yarn, actions);
        let bead = pos2(place.left() + 8.0, y);
        paint::bead(painter, bead, &Yarn::letter(one.yarn), yarn.colour, bench.t);
        let mut right = place.right();
        for (cell, galley) in words.cells.iter().enumerate() {
            let width = widest(cell);
            if width > 0.0 {
                let at = Align2::RIGHT_CENTER.anchor_size(pos2(right, y), galley.size());
                painter.galley(at.min, galley.clone(), bench.t.ink);
                right -= width + APART;
            }
        }
        let name = pos2(place.left() + 24.0, y);
        let room = (right - name.x).max(24.0);
        let skein_room = room - 0.29 * place.width() - 6.0;
        let name_width = if skein_room >= SKEIN { 0.29 * place.width() } else { room };
        let body = type_faces::regular(type_faces::BODY);
        paint::clipped_text(painter, name, &yarn.name, body, bench.t.ink, name_width);
        if skein_room >= SKEIN {
            let length = (f64::from(skein_room) * one.metres / most).max(8.0) as f32;
            let from = pos2(name.x + name_width + 6.0, y - 4.5);
            let skein = Rect::from_min_size(from, vec2(length, 9.0));
            draw_skein(painter, skein, yarn.colour, bench.t);
        }
    }
    let note = if shown < used.len() {
        say!("measured-and-more-more-yarn-is-estimated-20", more = used.len() - shown)
    } else {
        say!("measured-estimated-yarn-20-stuffing-and-time-by").to_owned()
    };
    let y = place.top() + YARN * shown as f32 + 9.0;
    if y + 0.5 * NOTE > place.bottom() + PAD {
        return;
    }
    let font = type_faces::regular(type_faces::SMALL);
    painter.text(pos2(place.left(), y), Align2::LEFT_CENTER, note, font, bench.t.soft_ink);
}

/// What of a yarn's row is pressed to open its card.
pub(super) fn button(
    ui: &Ui,
    bench: &Bench<'_>,
    row: Rect,
    used: &YarnUse,
    yarn: &Yarn,
    actions: &mut Actions,
) -> Response {
    let t = bench.t;
    let index = used.yarn;
    let response = ui.interact(row, ui.scope_id().with(("yarn", index)), Sense::click());
    let name =
        say!("measured-yarn-letter-name", letter = Yarn::letter(index), name = yarn.name);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    paint::row(ui.painter(), row, &response, false, t);
    yarn_card::card(&response, bench, index, actions);
    let mut hint = match yarn.brand.trim() {
        "" => yarn.name.clone(),
        brand => [yarn.name.as_str(), ", ", brand].concat(),
    };
    hint.push_str(&format!(": {}", bench.unit().yarn_text(used.metres)));
    let balls = balls_text(yarn, used);
    if !balls.is_empty() {
        hint.push_str(&format!(", {}", say!("measured-balls-in-all", balls = balls)));
    }
    hint.push('\n');
    hint.push_str(say!("measured-change-its-name-color-or-length"));
    response.on_hover_text(hint)
}

fn draw_skein(painter: &Painter, rect: Rect, colour: [u8; 3], t: &Tokens) {
    let edge = t.yarn_edge(colour);
    painter.rect(rect, 4.0, Tokens::yarn(colour), Stroke::new(1.0, edge), StrokeKind::Inside);
    let mut x = rect.left() + 7.0;
    while x < rect.right() - 5.0 {
        let strand = [pos2(x - 2.0, rect.bottom() - 2.0), pos2(x + 2.0, rect.top() + 2.0)];
        painter.line_segment(strand, Stroke::new(1.0, edge));
        x += 6.0;
    }
}
