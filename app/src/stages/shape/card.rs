//! The card beside the sheet: notes, rules and simplicity, three beads on a thread.

use egui::{Align2, Popup, Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo};
use egui::{pos2, vec2};

use super::{figures, notes, rules, simplicity};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::PAD;
use crate::kit::{icons, paint, type_faces};
use crate::view::Card;
use crate::view::look::Look;

/// Height of the thread and its words.
const HEADING: f32 = 48.0;
/// Room beside a word for the sign of how many notes there are.
const SIGN: f32 = 34.0;
/// Height in which the answers fit with their plot.
const WITH_STEPS: f32 = 360.0;
/// Least height a card can be read in.
const LEAST: f32 = 90.0;

/// Height of a card that holds the figures with so many yarns.
pub(crate) fn height(yarns: usize) -> f32 {
    (HEADING + figures::values_height(yarns)).max(WITH_STEPS)
}

/// Draws the card, with or without the figures among its beads; returns whether the
/// answers to choose from are in sight.
pub(crate) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    with_figures: bool,
    actions: &mut Actions,
) -> bool {
    if rect.height() < LEAST {
        return false;
    }
    let beads = if with_figures { &Card::ALL[..] } else { &Card::ALL[1..] };
    let card = if beads.contains(&bench.view.card) { bench.view.card } else { Card::Notes };
    switch(ui, bench, rect.with_max_y(rect.top() + HEADING), (beads, card), actions);
    if card == Card::Figures {
        figures::values(ui, bench, rect.with_min_y(rect.top() + HEADING), actions);
        return false;
    }
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + HEADING + 4.0),
        rect.max - vec2(6.0, 8.0),
    );
    body(ui, bench, card, inner, actions)
}

/// What hangs on the bead that is chosen.
fn body(
    ui: &mut Ui,
    bench: &Bench<'_>,
    card: Card,
    inner: Rect,
    actions: &mut Actions,
) -> bool {
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt(card.text()));
    if card == Card::Simplicity {
        simplicity::show(&mut child, bench, actions);
        return true;
    }
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        match card {
            Card::Notes => notes::list(ui, bench, actions),
            _ => rules::show(ui, bench, actions),
        }
        controls::follow_focus(ui);
    });
    if card == Card::Notes {
        notes::mark_read(bench, actions);
    }
    false
}

/// The thread: the word in use over a filled bead.
fn switch(
    ui: &Ui,
    bench: &Bench<'_>,
    head: Rect,
    (beads, chosen): (&[Card], Card),
    actions: &mut Actions,
) {
    let t = bench.t;
    let painter = ui.painter();
    let y = head.top() + 38.0;
    let thread = head.x_range().shrink(PAD);
    let font = type_faces::drafting(type_faces::TITLE);
    // Words of any language, and the sign of how many notes there are.
    let widths: Vec<f32> = beads
        .iter()
        .map(|&card| {
            let word = painter.layout_no_wrap(card.text().to_owned(), font.clone(), t.ink);
            word.size().x + if card == Card::Notes { SIGN } else { 0.0 }
        })
        .collect();
    let spare = thread.span() - 4.0 - widths.iter().sum::<f32>();
    let apart = (spare / beads.len() as f32).clamp(4.0, 36.0);
    let lefts: Vec<f32> = widths
        .iter()
        .scan(thread.min + 2.0, |left, width| {
            let own = *left;
            *left += width + apart;
            Some(own)
        })
        .collect();
    let bead = |i: usize| pos2(lefts[i] + 22.0, y);
    painter.hline(thread, y, Stroke::new(1.3, t.control_edge));
    for (i, &card) in beads.iter().enumerate() {
        let at = bead(i);
        // The last word has all the room there is.
        let right = lefts.get(i + 1).map_or(thread.max, |next| next - 4.0);
        let hit = Rect::from_x_y_ranges(at.x - 24.0..=right, head.top() + 4.0..=head.bottom());
        let on = card == chosen;
        let response = ui.interact(hit, ui.scope_id().with(("card", i)), Sense::click());
        response.widget_info(|| WidgetInfo::selected(Role::Tab, true, on, card.text()));
        let ink = if on || response.hovered() { t.ink } else { t.soft_ink };
        let word_at = pos2(lefts[i], head.top() + 20.0);
        let word = painter.text(word_at, Align2::LEFT_CENTER, card.text(), font.clone(), ink);
        if card == Card::Notes {
            notes::sign(painter, bench, pos2(word.right() + 12.0, word_at.y), on);
        }
        if on {
            painter.circle(at, 5.5, t.highlight, Stroke::new(1.5, t.highlight_edge));
        } else {
            let radius = if response.hovered() { 4.8 } else { 4.0 };
            painter.circle(at, radius, t.panel, Stroke::new(1.5, t.control_edge));
        }
        if response.has_focus() {
            paint::focus_ring(painter, hit.shrink(2.0), 6.0, t);
        }
        if response.on_hover_text(hint(card)).clicked() {
            actions.look(Look::Card(card));
        }
    }
}

fn hint(card: Card) -> &'static str {
    match card {
        Card::Figures => say!("card-size-yarn-stuffing-time-and-fit"),
        Card::Notes => say!("card-what-to-know-before-you-crochet-it"),
        Card::Rules => say!("card-what-every-round-must-keep-to"),
        Card::Simplicity => say!("card-the-results-to-choose-from-and-what"),
    }
}

/// A button that opens the card, at the right end of `line`; returns where it begins and
/// whether the answers to choose from are in sight.
pub(crate) fn button(
    ui: &Ui,
    bench: &Bench<'_>,
    line: Rect,
    actions: &mut Actions,
) -> (f32, bool) {
    let news = notes::has_news(bench);
    let words = say!("card-checks-rules-simplicity");
    let width = controls::words_width(ui, words) + if news { 20.0 } else { 0.0 };
    let rect = Rect::from_min_size(
        pos2(line.right() - 10.0 - width, line.center().y - 14.0),
        vec2(width, 28.0),
    );
    let response = controls::button(ui, rect, ButtonFace::Words(""), words, true);
    let text = pos2(rect.right() - 11.0, rect.center().y);
    let font = type_faces::semibold(type_faces::BODY);
    ui.painter().text(text, Align2::RIGHT_CENTER, words, font, bench.t.ink);
    if news {
        let at = rect.left_center() + vec2(18.0, 0.0);
        icons::warning(ui.painter(), at, 13.0, bench.t.warning);
    }
    let mut sees_answers = false;
    let room = ui.ctx().content_rect().height() - 200.0;
    Popup::menu(&response)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .width(344.0)
        .show(|ui| {
            ui.reset_style();
            let size = vec2(344.0, room.clamp(260.0, 430.0));
            let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
            sees_answers = show(ui, bench, rect.expand2(vec2(6.0, 0.0)), false, actions);
        });
    (rect.left(), sees_answers)
}
