//! The sheet as Markdown, with a box to tick for every line of rounds.

use std::fmt::Write as _;

use super::{PieceSheet, Step, sheet};
use crate::error::Result;
use crate::project::Project;

/// The pattern of `project` as Markdown. Names and notes print as typed: whatever in them
/// would be markup is escaped.
///
/// # Errors
/// As [`sheet`].
pub fn markdown(project: &Project) -> Result<String> {
    let sheet = sheet(project)?;
    let mut out = format!("# {}\n", escaped(&sheet.title));
    if !sheet.designer.trim().is_empty() {
        line(&mut out, &format!("\nby {}", escaped(&sheet.designer)));
    }
    for note in sheet.notes.lines().filter(|l| !l.trim().is_empty()) {
        line(&mut out, &format!("\n{}", escaped(note)));
    }
    let several = sheet.names_pieces();
    for piece in &sheet.pieces {
        if several {
            line(&mut out, &format!("\n## {}", escaped(&piece.name)));
        }
        lay_piece(&mut out, piece, if several { "###" } else { "##" });
    }
    line(&mut out, "\n## Cautions\n");
    for caution in &sheet.cautions {
        line(&mut out, &format!("- {}", escaped(caution)));
    }
    Ok(out)
}

fn lay_piece(out: &mut String, piece: &PieceSheet, level: &str) {
    line(out, &format!("\n{level} You need\n"));
    for item in &piece.materials {
        line(out, &format!("- {}", escaped(item)));
    }
    line(out, &format!("\n{level} Gauge\n\n{}", escaped(&piece.gauge)));
    line(out, &format!("\n{level} Finished size\n\n{}", escaped(&piece.size)));
    line(out, &format!("\n{level} Abbreviations\n"));
    line(out, "| short | meaning |\n|---|---|");
    for (code, meaning) in &piece.abbreviations {
        line(out, &format!("| {} | {} |", escaped(code), escaped(meaning)));
    }
    line(out, &format!("\n{level} Rounds\n"));
    if !piece.unchecked.is_empty() {
        line(out, &format!("{}\n", escaped(&piece.unchecked)));
    }
    for opening in &piece.opening {
        line(out, &format!("{}\n", escaped(opening)));
    }
    for step in &piece.steps {
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
            Step::Yarn(text) | Step::Stuff(text) => {
                line(out, &format!("\n*{}*\n", escaped(text)))
            }
        }
    }
    line(out, "");
    for closing in &piece.closing {
        line(out, &format!("{}\n", escaped(closing)));
    }
    line(out, &format!("{}.", escaped(&piece.total)));
    if !piece.warnings.is_empty() {
        line(out, &format!("\n{level} Before you begin\n"));
        for warning in &piece.warnings {
            line(out, &format!("- {}", escaped(warning)));
        }
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
