//! What holds the cloth: a drawn thread or a seam at a knot, a card from a knot to the next.

use egui::{Painter, Pos2, Shape, Stroke, pos2, vec2};
use plumpline_core::{Hold, Knot};

use super::ground::Ground;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::choice::Choice;
use crate::kit::{Tokens, icons, letters};

/// Draws all that holds the cloth, both sides of the axis.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, ground: &Ground) {
    let t = bench.t;
    let knots = &bench.document.piece().outline.knots;
    for pair in knots.windows(2).filter(|pair| pair[0].card) {
        let (a, b) = (pair[0].place(), pair[1].place());
        card(painter, t, [ground.at(a), ground.at(b)]);
        card(painter, t, [ground.mirrored(a), ground.mirrored(b)]);
    }
    for (index, knot) in knots.iter().enumerate() {
        let Some(hold) = knot.hold else { continue };
        let (left, right) = (ground.mirrored(knot.place()), ground.at(knot.place()));
        across(painter, t, hold, left, right);
        // Clear of the knot's own ring, which is larger where it is selected.
        let clear = if bench.view.knot == Some(index) { 23.0 } else { 18.0 };
        icon(painter, t, hold, right + vec2(clear, 0.0));
    }
}

/// A card seen from its edge.
pub(crate) fn card(painter: &Painter, t: &Tokens, ends: [Pos2; 2]) {
    painter.line_segment(ends, Stroke::new(6.0, t.outline));
    painter.line_segment(ends, Stroke::new(3.2, t.panel));
}

/// The round that is held, seen from the side: it sags a little towards us.
fn across(painter: &Painter, t: &Tokens, hold: Hold, left: Pos2, right: Pos2) {
    let sag = (0.05 * (right.x - left.x)).min(5.0);
    let points: Vec<Pos2> = (0..=24)
        .map(|i| {
            let share = i as f32 / 24.0;
            let bow = (std::f32::consts::PI * share).sin();
            pos2(egui::lerp(left.x..=right.x, share), left.y + sag * bow)
        })
        .collect();
    match hold {
        Hold::Cinched => {
            painter.add(Shape::line(points, Stroke::new(1.6, t.outline)));
        }
        Hold::Sewn => {
            painter.extend(Shape::dashed_line(&points, Stroke::new(1.8, t.outline), 5.0, 4.0));
        }
    }
}

/// A tied thread, or a seam, about `at`.
pub(crate) fn icon(painter: &Painter, t: &Tokens, hold: Hold, at: Pos2) {
    match hold {
        Hold::Cinched => icons::tied_thread(painter, at, t.outline),
        Hold::Sewn => icons::seam(painter, at, t.outline),
    }
}

/// What holds a knot, in words.
pub(super) fn words(knot: &Knot) -> Option<String> {
    let hold = knot.hold.map(|hold| match hold {
        Hold::Cinched => say!("board-held-by-thread"),
        Hold::Sewn => say!("board-held-by-a-seam"),
    });
    let card = knot.card.then_some(say!("board-a-card-lies-from-here-to-the-next-knot"));
    let words: Vec<&str> = hold.into_iter().chain(card).collect();
    (!words.is_empty()).then(|| words.join(". "))
}

/// What can hold a knot, as lines of a menu.
pub(super) fn menu(
    ui: &mut egui::Ui,
    knot: &Knot,
    index: usize,
    last: bool,
    actions: &mut Actions,
) {
    if !knot.is_pole() {
        ui.separator();
        let holds = [
            (None, say!("board-held-by-nothing"), say!("board-fabric-alone-holds-no-corner")),
            (
                Some(Hold::Cinched),
                say!("board-held-by-thread"),
                say!("board-a-thread-pulled-through-that-round-and"),
            ),
            (
                Some(Hold::Sewn),
                say!("board-held-by-a-seam"),
                say!("board-sewn-to-another-piece-there"),
            ),
        ];
        for (hold, words, why) in holds {
            let line = ui.selectable_label(knot.hold == hold, words).on_hover_text(why);
            letters::line(&line, words);
            if line.clicked() {
                actions.choose(Choice::Hold { knot: index, hold });
                ui.close();
            }
        }
    }
    if !last {
        ui.separator();
        let words = say!("board-card-from-here-to-the-next-knot");
        let why = say!("board-stiff-card-or-plastic-inside-keeps-the");
        let item = letters::noted(ui.selectable_label(knot.card, words), words);
        if item.on_hover_text(why).clicked() {
            actions.choose(Choice::Card { knot: index, on: !knot.card });
            ui.close();
        }
    }
}
