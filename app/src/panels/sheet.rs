//! The sheet to read: the pattern as it will be printed, with copy and save.

use egui::{Align2, FontId, Rect, RichText, ScrollArea, Stroke, Ui, UiBuilder, pos2, vec2};
use plumpline_core::sheet::{PieceSheet, Sheet, Step, sheet};

use super::words_card;
use crate::studio::action::Actions;
use crate::studio::bench::Bench;
use crate::studio::command::Command;
use crate::ui_kit::controls::{self, Face};
use crate::ui_kit::tokens::PAD;
use crate::ui_kit::{icons, paint, type_faces};

/// Widest a line of the pattern gets, points.
const MEASURE: f32 = 620.0;

/// Draws the pattern in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let head = rect.left_top() + vec2(PAD, 22.0);
    paint::title(ui.painter(), head, "Sheet", "the pattern as a stranger reads it", bench.t);
    buttons(ui, bench, rect, actions);
    ui.painter().hline(
        rect.x_range().shrink(PAD),
        rect.top() + 44.0,
        Stroke::new(1.0, bench.t.edge),
    );
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 45.0),
        rect.max - vec2(6.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("sheet"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        let aside = (0.5 * (ui.available_width() - MEASURE)).max(0.0);
        let width = ui.available_width().min(MEASURE);
        ui.horizontal_top(|ui| {
            ui.add_space(aside);
            ui.vertical(|ui| {
                ui.set_width(width);
                page(ui, bench);
            });
        });
    });
}

fn buttons(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let mut right = rect.right() - PAD;
    for command in [Command::SaveSheetText, Command::CopySheet] {
        let width = controls::words_width(ui, command.text());
        let place =
            Rect::from_min_size(pos2(right - width, rect.top() + 8.0), vec2(width, 28.0));
        let words = Face::Words(command.text());
        let enabled = command.enabled(bench);
        let button = controls::button(ui, place, words, command.text(), enabled);
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
        right = place.left() - 8.0;
    }
    words_card::button(ui, bench, (right, rect.top() + 8.0), actions);
}

fn page(ui: &mut Ui, bench: &Bench<'_>) {
    ui.spacing_mut().item_spacing = vec2(8.0, 4.0);
    ui.add_space(16.0);
    match sheet(bench.document.project()) {
        Ok(sheet) => pattern(ui, bench, &sheet),
        Err(error) => {
            ui.horizontal(|ui| {
                let (rect, _) = ui.allocate_exact_size(vec2(20.0, 20.0), egui::Sense::hover());
                icons::warning(ui.painter(), rect.center(), 15.0, bench.t.warning);
                ui.label(format!("The sheet is held back: {error}."));
            });
        }
    }
    ui.add_space(24.0);
}

fn set(ui: &mut Ui, text: &str, font: FontId, colour: egui::Color32) {
    ui.add(egui::Label::new(RichText::new(text).font(font).color(colour)).wrap());
}

fn heading(ui: &mut Ui, bench: &Bench<'_>, text: &str) {
    ui.add_space(10.0);
    set(ui, text, type_faces::drafting(type_faces::TITLE), bench.t.ink);
}

fn line(ui: &mut Ui, bench: &Bench<'_>, text: &str) {
    set(ui, text, type_faces::regular(type_faces::BODY), bench.t.ink);
}

fn pattern(ui: &mut Ui, bench: &Bench<'_>, sheet: &Sheet) {
    set(ui, &sheet.title, type_faces::bold(type_faces::BIG), bench.t.ink);
    if !sheet.designer.is_empty() {
        line(ui, bench, &format!("by {}", sheet.designer));
    }
    for text in std::iter::once(&sheet.licence).chain(&sheet.notes).filter(|t| !t.is_empty()) {
        line(ui, bench, text);
    }
    line(ui, bench, &format!("Level: {} ({}).", sheet.level.name, sheet.level.why));
    heading(ui, bench, "You need");
    for material in sheet.materials.lines() {
        line(ui, bench, &format!("• {material}"));
    }
    heading(ui, bench, "Abbreviations");
    for (code, meaning) in &sheet.abbreviations {
        columns(ui, bench, code, meaning, None);
    }
    for special in &sheet.specials {
        line(ui, bench, &format!("{}: {}", special.name, special.how));
    }
    for piece in &sheet.pieces {
        if sheet.names_pieces() {
            ui.add_space(16.0);
            set(ui, &piece.name, type_faces::bold(type_faces::TITLE), bench.t.ink);
        }
        piece_pattern(ui, bench, sheet, piece);
    }
    if !sheet.assembly.is_empty() {
        heading(ui, bench, "Putting it together");
        for text in &sheet.assembly {
            line(ui, bench, text);
        }
    }
    heading(ui, bench, "Before you give it away");
    for caution in &sheet.cautions {
        line(ui, bench, caution);
    }
}

fn piece_pattern(ui: &mut Ui, bench: &Bench<'_>, sheet: &Sheet, piece: &PieceSheet) {
    heading(ui, bench, "Gauge");
    line(ui, bench, &piece.gauge);
    heading(ui, bench, "Finished size");
    for size in &piece.sizes {
        line(ui, bench, &format!("{}. {}", size.finished, size.measured_on));
    }
    heading(ui, bench, "Rounds");
    if !sheet.unchecked.is_empty() {
        line(ui, bench, &sheet.unchecked);
    }
    for words in &piece.opening {
        line(ui, bench, words);
    }
    for (size, steps, closing) in piece.lists() {
        if !size.is_empty() {
            heading(ui, bench, size);
        }
        ui.add_space(4.0);
        for step in steps {
            match step {
                Step::Rounds(l) => columns(ui, bench, &l.heading, &l.text, Some(&l.count)),
                Step::Yarn(yarn) => between(ui, bench, &yarn.text),
                Step::Stuff(words) => between(ui, bench, words),
            }
        }
        ui.add_space(4.0);
        for words in closing {
            line(ui, bench, words);
        }
    }
    for size in &piece.sizes {
        line(ui, bench, &format!("{}.", size.total));
    }
    for warning in &piece.warnings {
        ui.horizontal_top(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(18.0, 18.0), egui::Sense::hover());
            icons::warning(ui.painter(), rect.center(), 13.0, bench.t.warning);
            line(ui, bench, warning);
        });
    }
}

/// A line with its name in a column of its own, and a count at its end.
fn columns(ui: &mut Ui, bench: &Bench<'_>, name: &str, words: &str, count: Option<&str>) {
    let t = bench.t;
    let width = ui.available_width();
    let (names, counts) = (96.0, 56.0);
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words.to_owned(), font, t.ink, width - names - counts);
    let (rect, response) =
        ui.allocate_exact_size(vec2(width, galley.size().y + 4.0), egui::Sense::hover());
    let spoken = match count {
        Some(count) => format!("{name} {words} {count}"),
        None => format!("{name}: {words}"),
    };
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &spoken));
    let y = rect.top() + 11.0;
    let semibold = type_faces::semibold(type_faces::BODY);
    let painter = ui.painter();
    painter.text(pos2(rect.left(), y), Align2::LEFT_CENTER, name, semibold.clone(), t.ink);
    painter.galley(pos2(rect.left() + names, rect.top() + 2.0), galley, t.ink);
    if let Some(count) = count {
        let at = pos2(rect.right(), y);
        painter.text(at, Align2::RIGHT_CENTER, count, semibold, t.ink);
    }
}

/// Something to do between two rounds.
fn between(ui: &mut Ui, bench: &Bench<'_>, words: &str) {
    ui.add_space(2.0);
    set(ui, words, type_faces::bold(type_faces::BODY), bench.t.ink);
    ui.add_space(2.0);
}
