//! The sheet as Markdown, with a box to tick for every line of rounds.

use std::fmt::Write as _;

use super::{PieceSheet, Sheet, Step, sheet};
use crate::error::Result;
use crate::project::Project;

/// The pattern of `project` as Markdown. Names and notes print as typed: whatever in them
/// would be markup is escaped.
///
/// # Errors
/// As [`sheet`](super::sheet()).
pub fn markdown(project: &Project) -> Result<String> {
    Ok(markdown_of(&sheet(project)?))
}

/// A sheet as Markdown.
pub fn markdown_of(sheet: &Sheet) -> String {
    let mut page = format!("# {}\n", escaped(&sheet.title));
    let out = &mut page;
    if !sheet.designer.is_empty() {
        line(out, &format!("\nby {}", escaped(&sheet.designer)));
    }
    for text in std::iter::once(&sheet.licence).chain(&sheet.notes).filter(|t| !t.is_empty()) {
        line(out, &format!("\n{}", escaped(text)));
    }
    let level = format!("Level: {} ({}).", sheet.level.name, sheet.level.why);
    line(out, &format!("\n{}", escaped(&level)));
    line(out, "\n## You need\n");
    for item in sheet.materials.lines() {
        line(out, &format!("- {}", escaped(&item)));
    }
    line(out, &format!("\n## Abbreviations\n\n{}.\n", escaped(&sheet.terms)));
    line(out, "| short | meaning |\n|---|---|");
    for (code, meaning) in &sheet.abbreviations {
        line(out, &format!("| {} | {} |", escaped(code), escaped(meaning)));
    }
    if !sheet.specials.is_empty() {
        line(out, "\n## How it is worked\n");
        for special in &sheet.specials {
            line(out, &format!("- **{}:** {}", escaped(&special.name), escaped(&special.how)));
        }
    }
    let several = sheet.names_pieces();
    for piece in &sheet.pieces {
        if several {
            line(out, &format!("\n## {}", escaped(&piece.name)));
        }
        lay_piece(out, piece, sheet, if several { "###" } else { "##" });
    }
    if !sheet.assembly.is_empty() {
        line(out, "\n## Putting it together");
        for text in &sheet.assembly {
            line(out, &format!("\n{}", escaped(text)));
        }
    }
    line(out, "\n## Cautions\n");
    for caution in &sheet.cautions {
        line(out, &format!("- {}", escaped(caution)));
    }
    page
}

fn lay_piece(out: &mut String, piece: &PieceSheet, sheet: &Sheet, level: &str) {
    line(out, &format!("\n{level} Gauge\n\n{}", escaped(&piece.gauge)));
    line(out, &format!("\n{level} Finished size"));
    for size in &piece.sizes {
        let text = format!("{}{}. {}", size.lead(), size.finished, size.measured_on);
        line(out, &format!("\n{}", escaped(&text)));
    }
    if !piece.warnings.is_empty() {
        line(out, &format!("\n{level} Before you begin\n"));
        for warning in &piece.warnings {
            line(out, &format!("- {}", escaped(warning)));
        }
    }
    line(out, &format!("\n{level} Rounds\n"));
    if !sheet.unchecked.is_empty() {
        line(out, &format!("{}\n", escaped(&sheet.unchecked)));
    }
    for opening in &piece.opening {
        line(out, &format!("{}\n", escaped(opening)));
    }
    for (size, steps, closing) in piece.lists() {
        if !size.is_empty() {
            line(out, &format!("\n{level} Rounds, {}\n", escaped(size)));
        }
        for step in steps {
            match step {
                Step::Rounds(rounds) => line(
                    out,
                    &format!(
                        "- [ ] **{}** {} **{}**",
                        escaped(&rounds.heading),
                        escaped(&rounds.text),
                        escaped(&rounds.count)
                    ),
                ),
                Step::Yarn(yarn) => line(out, &format!("\n*{}*\n", escaped(&yarn.text))),
                Step::Stuff(text) => line(out, &format!("\n*{}*\n", escaped(text))),
            }
        }
        line(out, "");
        for text in closing {
            line(out, &format!("{}\n", escaped(text)));
        }
    }
    for size in &piece.sizes {
        line(out, &format!("{}.", escaped(&format!("{}{}", size.lead(), size.total))));
    }
}

fn line(out: &mut String, text: &str) {
    // Writing to a String cannot fail.
    writeln!(out, "{text}").ok();
}

/// `text` on one line with Markdown's own characters escaped.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.split_whitespace().collect::<Vec<_>>().join(" ").chars() {
        if r"\`*_{}[]<>#|~&$!".contains(c) {
            out.push('\\');
        }
        if !c.is_control() {
            out.push(c);
        }
    }
    // A line that starts like a list, a rule or a numbered item would become one.
    if out.starts_with(['-', '+', '=']) || numbered(&out) {
        out.insert(0, '\u{200b}');
    }
    out
}

fn numbered(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    digits > 0 && text[digits..].starts_with(['.', ')'])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markup_prints_as_typed() {
        assert_eq!(escaped("#1 *best* [x](y) <b>"), r"\#1 \*best\* \[x\](y) \<b\>");
        assert!(escaped("1. first").starts_with('\u{200b}'));
        assert_eq!(escaped("(sc 2, inc) × 6"), "(sc 2, inc) × 6");
    }
}
