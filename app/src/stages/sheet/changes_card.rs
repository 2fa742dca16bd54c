//! What has changed since a published version: chosen, read, copied, put on the sheet.

use egui::{TextEdit, Ui};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, SheetCommand};
use crate::document::edit::Edit;
use crate::fields::form;

/// Lines of changes that are shown, at most; all of them are copied.
const SHOWN: usize = 12;
/// Longest text of changes, characters.
const LONGEST: usize = 20_000;

/// Draws the rows.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::heading(ui, say!("sheet-what-has-changed"));
    form::command(ui, bench, Command::Sheet(SheetCommand::Compare), actions);
    if let Some((name, changes)) = bench.printing.changes() {
        form::remark(ui, &format!("{name}: {}", changes.heading));
        if changes.lines.is_empty() {
            form::remark(ui, &changes.none);
        }
        for line in changes.lines.iter().take(SHOWN) {
            form::remark(ui, line);
        }
        if let more @ 1.. = changes.lines.len().saturating_sub(SHOWN) {
            form::remark(ui, &say!("sheet-and-more-more", more = more));
        }
        form::command(ui, bench, Command::Sheet(SheetCommand::CopyChanges), actions);
        form::command(ui, bench, Command::Sheet(SheetCommand::PutChanges), actions);
    }
    let design = &bench.document.project().sheet;
    if design.changes.is_empty() {
        return;
    }
    form::caption(ui, say!("sheet-on-the-sheet-the-first-line-is-the"));
    let mut words = design.changes.clone();
    let width = ui.available_width();
    let edit = TextEdit::multiline(&mut words).desired_rows(4).char_limit(LONGEST);
    if ui
        .add(edit.desired_width(width))
        .accessible_name(say!("sheet-changes-on-the-sheet"))
        .changed()
    {
        let mut design = design.clone();
        design.changes = words;
        actions.edit(Edit::SheetDesign { design, typed: true });
    }
}
