//! The sheet as plain text at 78 columns.

use super::{PieceSheet, Sheet, Step, sheet};
use crate::error::Result;
use crate::project::Project;

/// Width of the page in characters.
const COLUMNS: usize = 78;

/// The pattern of `project` as plain text, 78 columns wide.
///
/// # Errors
/// As [`sheet`].
pub fn text(project: &Project) -> Result<String> {
    let sheet = sheet(project)?;
    let mut page = Page::default();
    page.title(&one_line(&sheet.title));
    if !sheet.designer.trim().is_empty() {
        page.paragraph("", &format!("by {}", one_line(&sheet.designer)));
    }
    for note in sheet.notes.lines() {
        page.paragraph("", note);
    }
    let several = sheet.names_pieces();
    for piece in &sheet.pieces {
        if several {
            page.blank();
            page.title(&one_line(&piece.name));
        }
        lay_piece(&mut page, piece);
    }
    lay_cautions(&mut page, &sheet);
    Ok(page.out)
}

fn lay_piece(page: &mut Page, piece: &PieceSheet) {
    page.heading("You need");
    for line in &piece.materials {
        page.paragraph("- ", line);
    }
    page.heading("Gauge");
    page.paragraph("", &piece.gauge);
    page.heading("Finished size");
    page.paragraph("", &piece.size);
    page.heading("Abbreviations");
    for (code, meaning) in &piece.abbreviations {
        page.hanging(&format!("{code:<9}"), meaning);
    }
    page.heading("Rounds");
    if !piece.unchecked.is_empty() {
        page.paragraph("", &piece.unchecked);
    }
    for line in &piece.opening {
        page.paragraph("", line);
    }
    page.blank();
    for step in &piece.steps {
        match step {
            Step::Rounds(line) => page.hanging(
                &format!("{} ", line.heading),
                &format!("{} {}", line.text, line.count),
            ),
            Step::Yarn(text) => page.paragraph("", text),
            Step::Stuff(text) => page.paragraph("--- ", text),
        }
    }
    page.blank();
    for line in &piece.closing {
        page.paragraph("", line);
    }
    page.paragraph("", &format!("{}.", piece.total));
    if !piece.warnings.is_empty() {
        page.heading("Before you begin");
        for warning in &piece.warnings {
            page.paragraph("- ", warning);
        }
    }
}

fn lay_cautions(page: &mut Page, sheet: &Sheet) {
    page.heading("Cautions");
    for caution in &sheet.cautions {
        page.paragraph("- ", caution);
    }
}

/// User text kept to one line, control characters dropped.
fn one_line(text: &str) -> String {
    text.split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .chars()
        .filter(|c| !c.is_control())
        .collect()
}

/// A page being filled line by line.
#[derive(Default)]
struct Page {
    out: String,
}

impl Page {
    fn blank(&mut self) {
        self.out.push('\n');
    }

    fn title(&mut self, text: &str) {
        self.hanging("", text);
        let width = text.chars().count().clamp(1, COLUMNS);
        self.out.push_str(&"=".repeat(width));
        self.blank();
    }

    fn heading(&mut self, text: &str) {
        self.blank();
        self.out.push_str(text);
        self.blank();
        self.out.push_str(&"-".repeat(text.chars().count()));
        self.blank();
    }

    fn paragraph(&mut self, lead: &str, text: &str) {
        self.hanging(lead, text);
    }

    /// `text` after `lead`, broken at spaces, later lines set in under the text.
    fn hanging(&mut self, lead: &str, text: &str) {
        let indent = lead.chars().count();
        let mut line = lead.to_owned();
        let mut length = indent;
        let mut empty = true;
        for word in text.split_whitespace() {
            let mut word = word;
            loop {
                let wide = word.chars().count();
                let gap = usize::from(!empty);
                if length + gap + wide <= COLUMNS {
                    if !empty {
                        line.push(' ');
                    }
                    line.push_str(word);
                    length += gap + wide;
                    empty = false;
                    break;
                }
                if empty {
                    // A word wider than the page: cut it rather than run over.
                    let cut = COLUMNS - length;
                    let at = word.char_indices().nth(cut).map_or(word.len(), |(i, _)| i);
                    line.push_str(&word[..at]);
                    word = &word[at..];
                }
                self.push_line(&line);
                line = " ".repeat(indent);
                length = indent;
                empty = true;
            }
        }
        self.push_line(&line);
    }

    fn push_line(&mut self, line: &str) {
        self.out.push_str(line.trim_end());
        self.blank();
    }
}
