//! Notes: what the maker should know before working the piece, each with its remedy.

use egui::{Popup, Rect, ScrollArea, Sense, Ui, UiBuilder, pos2, vec2};
use plumpline_core::warning::Warning;

use crate::studio::action::{Actions, Look};
use crate::studio::bench::Bench;
use crate::studio::command::Command;
use crate::ui_kit::controls::{self, Face};
use crate::ui_kit::tokens::PAD;
use crate::ui_kit::{icons, paint, type_faces};

/// Draws the notes as a card.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    if rect.height() < 60.0 {
        return;
    }
    let head = rect.left_top() + vec2(PAD, PAD + 6.0);
    paint::title(ui.painter(), head, "Notes", &summary(bench), bench.t);
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 42.0),
        rect.max - vec2(6.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("notes"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| list(ui, bench, actions));
}

fn warnings<'a>(bench: &Bench<'a>) -> &'a [Warning] {
    bench.plan.map_or(&[], |p| p.warnings.as_slice())
}

fn summary(bench: &Bench<'_>) -> String {
    match warnings(bench).len() {
        0 => String::new(),
        1 => "one thing to know".into(),
        n => format!("{n} things to know"),
    }
}

/// A button that opens the notes, at the right end of `line`; returns where it begins.
pub fn button(ui: &Ui, bench: &Bench<'_>, line: Rect, actions: &mut Actions) -> f32 {
    let count = warnings(bench).len();
    let words = if count == 0 { "Notes".to_owned() } else { format!("Notes · {count}") };
    let width = controls::words_width(ui, &words) + if count > 0 { 22.0 } else { 0.0 };
    let rect = Rect::from_min_size(
        pos2(line.right() - 10.0 - width, line.center().y - 14.0),
        vec2(width, 28.0),
    );
    let response = controls::button(ui, rect, Face::Words(""), "Notes", true);
    let text = pos2(rect.right() - 11.0, rect.center().y);
    let font = type_faces::semibold(type_faces::BODY);
    ui.painter().text(text, egui::Align2::RIGHT_CENTER, words, font, bench.t.ink);
    if count > 0 {
        icons::warning(
            ui.painter(),
            rect.left_center() + vec2(18.0, 0.0),
            13.0,
            bench.t.warning,
        );
    }
    Popup::menu(&response).width(340.0).show(|ui| {
        ui.set_width(340.0);
        list(ui, bench, actions);
    });
    rect.left()
}

fn list(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let t = bench.t;
    ui.spacing_mut().item_spacing.y = 6.0;
    let notes = warnings(bench);
    if notes.is_empty() {
        ui.horizontal(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(18.0, 20.0), Sense::hover());
            icons::check(ui.painter(), rect.center(), t.increase);
            ui.label("Nothing stands in the way of working it.");
        });
    }
    for (i, note) in notes.iter().enumerate() {
        let round = note.rounds.first().copied();
        if one(ui, bench, i, note).clicked()
            && let Some(round) = round
        {
            actions.command(Command::ShowShape);
            actions.look(Look::Select(Some(round)));
        }
    }
}

/// One note; a click takes its first round in hand.
fn one(ui: &mut Ui, bench: &Bench<'_>, index: usize, note: &Warning) -> egui::Response {
    let t = bench.t;
    let width = ui.available_width() - 26.0;
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(note.text.clone(), font, t.ink, width - 6.0);
    let size = vec2(ui.available_width(), galley.size().y + 8.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let whole = note.rounds.is_empty();
    let sense = if whole { Sense::hover() } else { Sense::click() };
    let response = ui.interact(rect, ui.scope_id().with(("note", index)), sense);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &note.text));
    if response.hovered() && !whole {
        ui.painter().rect_filled(rect, 6.0, t.well);
    }
    let at = rect.left_top() + vec2(11.0, 13.0);
    icons::warning(ui.painter(), at, 13.0, t.warning);
    ui.painter().galley(rect.left_top() + vec2(26.0, 4.0), galley, t.ink);
    if response.has_focus() {
        paint::focus_ring(ui.painter(), rect, 6.0, t);
    }
    if whole { response } else { response.on_hover_text("Take these rounds in hand") }
}
