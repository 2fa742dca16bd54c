//! The pattern as words, line by line: to be read by every tool, and to select a round.

use egui::{Align2, FontId, Rect, RichText, ScrollArea, Sense, Ui, UiBuilder, pos2, vec2};
use plumpline_core::sheet::{PieceSheet, RoundsLine, Sheet, Step};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::{controls, icons, paint, type_faces};
use crate::view::look::Look;

/// Widest a line of the pattern gets, points.
const MEASURE: f32 = 620.0;

/// Draws the pattern in `rect`.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    sheet: &Sheet,
    actions: &mut Actions,
) {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("sheet text"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        let aside = (0.5 * (ui.available_width() - MEASURE)).max(0.0);
        let width = ui.available_width().min(MEASURE);
        ui.horizontal_top(|ui| {
            ui.add_space(aside);
            ui.vertical(|ui| {
                ui.set_width(width);
                ui.spacing_mut().item_spacing = vec2(8.0, 4.0);
                ui.add_space(16.0);
                pattern(ui, bench, sheet, actions);
                ui.add_space(24.0);
            });
        });
        controls::follow_focus(ui);
    });
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

fn pattern(ui: &mut Ui, bench: &Bench<'_>, sheet: &Sheet, actions: &mut Actions) {
    set(ui, &sheet.title, type_faces::bold(type_faces::BIG), bench.t.ink);
    if !sheet.designer.is_empty() {
        line(ui, bench, &sheet.label_of("by", "designer", &sheet.designer));
    }
    for text in std::iter::once(&sheet.licence).chain(&sheet.notes).filter(|t| !t.is_empty()) {
        line(ui, bench, text);
    }
    let (level, colon) = (sheet.label("level"), &sheet.colon);
    line(ui, bench, &format!("{level}{colon} {} ({}).", sheet.level.name, sheet.level.why));
    heading(ui, bench, sheet.label("need"));
    for material in &sheet.materials.lines {
        line(ui, bench, &format!("• {material}"));
    }
    heading(ui, bench, sheet.label("abbreviations"));
    for (code, meaning) in &sheet.abbreviations {
        named(ui, bench, code, meaning);
    }
    for form in &sheet.forms {
        line(ui, bench, form);
    }
    for special in &sheet.specials {
        line(ui, bench, &format!("{}{colon} {}", special.name, special.how));
    }
    for (i, piece) in sheet.pieces.iter().enumerate() {
        if sheet.names_pieces() {
            ui.add_space(16.0);
            set(ui, &piece.name, type_faces::bold(type_faces::TITLE), bench.t.ink);
        }
        piece_pattern(ui, bench, sheet, (i, piece), actions);
    }
    if !sheet.assembly.is_empty() {
        heading(ui, bench, sheet.label("together"));
        for text in &sheet.assembly {
            line(ui, bench, text);
        }
    }
    heading(ui, bench, sheet.label("cautions"));
    for caution in &sheet.cautions {
        line(ui, bench, caution);
    }
}

fn piece_pattern(
    ui: &mut Ui,
    bench: &Bench<'_>,
    sheet: &Sheet,
    (index, piece): (usize, &PieceSheet),
    actions: &mut Actions,
) {
    heading(ui, bench, sheet.label("gauge"));
    line(ui, bench, &piece.gauge);
    heading(ui, bench, sheet.label("finished_size"));
    for size in &piece.sizes {
        line(ui, bench, &format!("{}. {}", size.finished, size.measured_on));
    }
    heading(ui, bench, sheet.label("rounds"));
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
                Step::Rounds(line) => rounds(ui, bench, index, line, actions),
                Step::Yarn(yarn) => between(ui, bench, &yarn.text),
                Step::Stuff(words) | Step::Inside(words) => between(ui, bench, words),
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

/// Width of the column of names, and of counts.
const NAMES: f32 = 96.0;
const COUNTS: f32 = 56.0;

/// An abbreviation and its meaning.
fn named(ui: &mut Ui, bench: &Bench<'_>, name: &str, words: &str) {
    let t = bench.t;
    let width = ui.available_width();
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words.to_owned(), font, t.ink, width - NAMES);
    let size = vec2(width, galley.size().y + 4.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    let spoken = format!("{name}: {words}");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &spoken));
    let semibold = type_faces::semibold(type_faces::BODY);
    let at = pos2(rect.left(), rect.top() + 11.0);
    ui.painter().text(at, Align2::LEFT_CENTER, name, semibold, t.ink);
    ui.painter().galley(pos2(rect.left() + NAMES, rect.top() + 2.0), galley, t.ink);
}

/// Rounds with their words and count; a click selects the first of them, on whichever
/// piece they are of.
fn rounds(
    ui: &mut Ui,
    bench: &Bench<'_>,
    piece: usize,
    line: &RoundsLine,
    actions: &mut Actions,
) {
    let t = bench.t;
    let width = ui.available_width();
    let font = type_faces::regular(type_faces::BODY);
    let words = line.text.clone();
    let galley = ui.painter().layout(words, font, t.ink, width - NAMES - COUNTS);
    let size = vec2(width, (galley.size().y + 4.0).max(24.0));
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let spoken = format!("{} {} {}", line.heading, line.text, line.count);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &spoken));
    let ours = piece == bench.document.place();
    let held = bench.view.selected.filter(|_| ours);
    let lit = held.is_some_and(|round| (line.first..=line.last).contains(&round));
    let painter = ui.painter();
    if lit || response.hovered() {
        let edge = if lit { t.highlight_edge } else { t.wash };
        let edge = egui::Stroke::new(1.3, edge);
        let wash = rect.expand2(vec2(6.0, 1.0));
        painter.rect(wash, 4.0, t.wash, edge, egui::StrokeKind::Inside);
    }
    let y = rect.top() + 12.0;
    let semibold = type_faces::semibold(type_faces::BODY);
    let at = pos2(rect.left(), y);
    painter.text(at, Align2::LEFT_CENTER, &line.heading, semibold.clone(), t.ink);
    painter.galley(pos2(rect.left() + NAMES, rect.top() + 3.0), galley, t.ink);
    painter.text(pos2(rect.right(), y), Align2::RIGHT_CENTER, &line.count, semibold, t.ink);
    if response.has_focus() {
        paint::focus_ring(painter, rect, 4.0, t);
    }
    let why = say!("sheet-selects-this-round-in-every-view");
    if response.on_hover_text(why).clicked() {
        let other = bench.document.project().pieces.get(piece).filter(|_| !ours);
        if let Some(other) = other {
            actions.look(Look::Piece(other.id));
        }
        actions.look(Look::Select((!lit).then_some(line.first)));
    }
}

/// Something to do between two rounds.
fn between(ui: &mut Ui, bench: &Bench<'_>, words: &str) {
    ui.add_space(2.0);
    set(ui, words, type_faces::bold(type_faces::BODY), bench.t.ink);
    ui.add_space(2.0);
}
