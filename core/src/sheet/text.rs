//! The sheet as plain text at 78 columns.

use super::{PieceSheet, Sheet, Step, sheet};
use crate::error::{Result, is_unseen};
use crate::project::Project;

/// Width of the page in characters.
const COLUMNS: usize = 78;

/// Most characters that lines are set in by, so that words are not broken for want of room.
const WIDEST_INDENT: usize = COLUMNS / 2;

/// The pattern of `project` as plain text, 78 columns wide.
///
/// # Errors
/// As [`sheet`](super::sheet()).
pub fn text(project: &Project) -> Result<String> {
    Ok(text_of(&sheet(project)?))
}

/// A sheet as plain text, 78 columns wide.
pub fn text_of(sheet: &Sheet) -> String {
    let mut page = TextPage::default();
    page.title(&sheet.title);
    if !sheet.designer.is_empty() {
        page.paragraph("", &sheet.label_of("by", "designer", &sheet.designer));
    }
    if !sheet.licence.is_empty() {
        page.paragraph("", &sheet.licence);
    }
    if !sheet.version.is_empty() {
        page.paragraph("", &sheet.version);
    }
    for note in &sheet.notes {
        page.paragraph("", note);
    }
    let (level, colon) = (sheet.label("level"), &sheet.colon);
    let why = format!("{level}{colon} {} ({}).", sheet.level.name, sheet.level.why);
    page.paragraph("", &why);
    page.heading(sheet.label("need"));
    for line in &sheet.materials.lines {
        page.paragraph("- ", line);
    }
    page.heading(sheet.label("abbreviations"));
    page.paragraph("", &format!("{}.", sheet.terms));
    for (code, meaning) in &sheet.abbreviations {
        page.hanging(&format!("{code} = "), meaning);
    }
    for form in &sheet.forms {
        page.paragraph("", form);
    }
    if !sheet.specials.is_empty() {
        page.heading(sheet.label("how"));
        for special in &sheet.specials {
            page.paragraph("- ", &format!("{}{colon} {}", special.name, special.how));
        }
    }
    let several = sheet.names_pieces();
    for piece in &sheet.pieces {
        if several {
            page.blank();
            page.title(&piece.name);
        }
        lay_piece(&mut page, piece, sheet);
    }
    if !sheet.assembly.is_empty() {
        page.heading(sheet.label("together"));
        for line in &sheet.assembly {
            page.paragraph("", line);
        }
    }
    page.heading(sheet.label("cautions"));
    for caution in &sheet.cautions {
        page.paragraph("- ", caution);
    }
    page.out
}

fn lay_piece(page: &mut TextPage, piece: &PieceSheet, sheet: &Sheet) {
    page.heading(sheet.label("gauge"));
    page.paragraph("", &piece.gauge);
    page.heading(sheet.label("finished_size"));
    for size in &piece.sizes {
        page.hanging(
            &size.lead(&sheet.colon),
            &format!("{}. {}", size.finished, size.measured_on),
        );
    }
    if !piece.warnings.is_empty() {
        page.heading(sheet.label("before"));
        for warning in &piece.warnings {
            page.paragraph("- ", warning);
        }
    }
    page.heading(sheet.label("rounds"));
    if !sheet.unchecked.is_empty() {
        page.paragraph("", &sheet.unchecked);
    }
    for line in &piece.opening {
        page.paragraph("", line);
    }
    for (size, steps, closing) in piece.lists() {
        if size.is_empty() {
            page.blank();
        } else {
            page.heading(&sheet.label_of("rounds_of", "size", size));
        }
        for step in steps {
            match step {
                Step::Rounds(line) => page.hanging(
                    &format!("{} ", line.heading),
                    &format!("{} {}", line.text, line.count),
                ),
                Step::Yarn(yarn) => page.paragraph("", &yarn.text),
                Step::Stuff(text) | Step::Inside(text) => page.paragraph("--- ", text),
            }
        }
        page.blank();
        for line in closing {
            page.paragraph("", line);
        }
    }
    for size in &piece.sizes {
        page.hanging(&size.lead(&sheet.colon), &format!("{}.", size.total));
    }
}

/// A page being filled line by line.
#[derive(Default)]
struct TextPage {
    out: String,
}

impl TextPage {
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
        self.push_line(text);
        self.push_line(&"-".repeat(text.chars().count().min(COLUMNS)));
    }

    fn paragraph(&mut self, lead: &str, text: &str) {
        self.hanging(lead, text);
    }

    /// `text` after `lead`, broken at spaces, later lines set in under the text.
    fn hanging(&mut self, lead: &str, text: &str) {
        let mut line = lead.to_owned();
        let mut length = lead.chars().count();
        let mut empty = true;
        // However long the lead is, room is left for words beside it or on the line below.
        let indent = length.min(WIDEST_INDENT);
        if length > WIDEST_INDENT {
            self.push_line(&line);
            line = " ".repeat(indent);
            length = indent;
        }
        // A space that does not break stays where it is.
        let breaks = |c: char| c.is_whitespace() && c != '\u{a0}';
        for word in text.split(breaks).filter(|word| !word.is_empty()) {
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
        // Whatever a name holds, a terminal that shows the sheet is not commanded by it.
        self.out.extend(line.trim_end().chars().filter(|&c| !is_unseen(c)));
        self.blank();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lead_as_wide_as_the_page_and_wider_leaves_room_for_words() {
        for wide in [0, 10, 39, 40, 76, 77, 78, 79, 500] {
            let mut page = TextPage::default();
            page.hanging(&"m".repeat(wide), &format!("one two {}", "x".repeat(200)));
            let words: String = page.out.split_whitespace().collect();
            assert_eq!(words, format!("{}onetwo{}", "m".repeat(wide), "x".repeat(200)));
            assert!(page.out.lines().skip(1).all(|l| l.chars().count() <= COLUMNS), "{wide}");
            assert!(page.out.lines().count() < 20);
        }
    }
}
