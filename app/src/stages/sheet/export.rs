//! What becomes of the sheet: files in its forms, paper, the clipboard.

use egui::{Rect, Sense, Ui, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, SheetCommand};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};

/// Between two buttons of a row, points.
const GAP: f32 = 6.0;

/// Draws the rows.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::heading(ui, say!("sheet-export"));
    let [web, text, picture] =
        [SheetCommand::WebPage, SheetCommand::Text, SheetCommand::Picture];
    let print = Command::Sheet(SheetCommand::Print);
    buttons(ui, bench, [Command::SaveSheet, Command::Sheet(web)], actions);
    buttons(ui, bench, [Command::Sheet(text), Command::Sheet(picture)], actions);
    buttons(ui, bench, [print, Command::CopySheet], actions);
    if let Some(path) = bench.printing.written() {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        form::remark(ui, &say!("sheet-saved-as-name", name = name));
        form::command(ui, bench, Command::Sheet(SheetCommand::OpenIt), actions);
    }
    for command in [Command::CopyScript, Command::CopyBlurb] {
        form::command(ui, bench, command, actions);
    }
    form::remark(ui, say!("sheet-the-ending-of-the-file-name-decides"));
    for told in bench.printing.told() {
        form::remark(ui, told);
    }
}

/// Two buttons side by side; the first of all saves what most people want.
fn buttons(ui: &mut Ui, bench: &Bench<'_>, commands: [Command; 2], actions: &mut Actions) {
    let size = vec2(ui.available_width(), form::ROW);
    let (row, _) = ui.allocate_exact_size(size, Sense::hover());
    let wide = 0.5 * (row.width() - GAP);
    for (i, command) in commands.into_iter().enumerate() {
        let corner = pos2(row.left() + i as f32 * (wide + GAP), row.top() + 2.0);
        let place = Rect::from_min_size(corner, vec2(wide, 28.0));
        let (words, enabled) = (command.text(), command.enabled(bench));
        let button = match command {
            Command::SaveSheet => controls::primary(ui, place, words, words, enabled),
            _ => controls::button(ui, place, ButtonFace::Words(words), words, enabled),
        };
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
    }
}
