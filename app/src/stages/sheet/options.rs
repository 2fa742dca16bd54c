//! Beside the pages: whose words, which paper, what the designer adds, and what becomes of
//! the sheet.

use egui::{Rect, ScrollArea, TextEdit, Ui, UiBuilder, pos2, vec2};
use plumpline_core::picture::chart::SingleSymbol;
use plumpline_typeset::{Columns, Options, Paper};

use super::words_card;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::edit::{Edit, SheetText};
use crate::fields::form;
use crate::kit::tokens::PAD;
use crate::kit::{controls, paint};
use crate::view::look::Look;
use crate::view::sheet::{SheetLook, SheetView};

/// Longest line and text a designer adds, characters.
const LINE: usize = 400;
const TEXT: usize = 4000;

/// Draws the card in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    paint::title(
        ui.painter(),
        rect.left_top() + vec2(PAD, 22.0),
        say!("sheet-layout"),
        "",
        bench.t,
    );
    words_card::button(ui, bench, (rect.right() - PAD, rect.top() + 8.0), actions);
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 44.0),
        rect.max - vec2(6.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("layout"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        form::beside_the_bar(ui);
        ui.spacing_mut().item_spacing.y = 4.0;
        layout(ui, bench, actions);
        form::heading(ui, say!("sheet-your-details"));
        for text in SheetText::ALL {
            field(ui, bench, text, actions);
        }
        form::heading(ui, say!("sheet-export"));
        for command in
            [Command::SaveSheet, Command::CopySheet, Command::CopyScript, Command::CopyBlurb]
        {
            let (words, enabled) = (command.text(), command.enabled(bench));
            let button =
                form::wide(ui, form::ROW, words, enabled, command == Command::SaveSheet);
            if button.on_hover_text(bench.hint(command)).clicked() {
                actions.command(command);
            }
        }
        form::remark(ui, say!("sheet-the-ending-of-the-file-name-decides"));
        if let Some(replaced) = bench.printing.replaced() {
            form::remark(ui, replaced);
        }
        controls::follow_focus(ui);
    });
}

/// Paper, columns, the symbol in charts.
fn layout(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let view = bench.view.sheet;
    let SheetLook { options, single } = view.look;
    let mut new = view.look;
    let rect = form::row(ui, say!("sheet-paper"), say!("sheet-size-of-the-page"));
    let now = usize::from(options.paper == Paper::Letter);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("sheet-paper"),
        &[say!("sheet-a4"), say!("sheet-letter")],
        now,
    ) {
        let paper = [Paper::A4, Paper::Letter][i];
        new.options = Options { paper, ..options };
    }
    let rect = form::row(
        ui,
        say!("sheet-columns"),
        say!("sheet-one-with-pictures-beside-it-or-two-on"),
    );
    let now = usize::from(options.columns == Columns::Two);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("sheet-columns"),
        &[say!("sheet-one"), say!("sheet-two")],
        now,
    ) {
        let columns = [Columns::One, Columns::Two][i];
        new.options = Options { columns, ..options };
    }
    let rect = form::row(
        ui,
        say!("sheet-single-crochet"),
        say!("sheet-its-symbol-in-the-charts-both-are-in"),
    );
    let now = usize::from(single == SingleSymbol::Plus);
    if let Some(i) = form::pick(ui, rect, say!("sheet-single-crochet"), &["×", "+"], now) {
        new.single = [SingleSymbol::Cross, SingleSymbol::Plus][i];
    }
    if new != view.look {
        actions.look(Look::Sheet(SheetView { look: new, ..view }));
    }
}

/// A text of the designer's under its name.
fn field(ui: &mut Ui, bench: &Bench<'_>, text: SheetText, actions: &mut Actions) {
    let name = text.name();
    form::caption(ui, name);
    let mut words = text.of(bench.document.project()).to_owned();
    let width = ui.available_width();
    let edit = match text.is_long() {
        true => TextEdit::multiline(&mut words).desired_rows(3).char_limit(TEXT),
        false => TextEdit::singleline(&mut words).char_limit(LINE),
    };
    let edit = edit.desired_width(width).hint_text(text.hint());
    if ui.add(edit).accessible_name(name).changed() {
        actions.edit(Edit::Sheet(text, words));
    }
}
