//! The sheet as Markdown, with a box to tick for every line of rounds.

use std::fmt::Write as _;

use super::plain::escaped;
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
        let by = sheet.label_of("by", "designer", &sheet.designer);
        line(out, &format!("\n{}", escaped(&by)));
    }
    let head = [&sheet.licence, &sheet.version];
    for text in head.into_iter().chain(&sheet.notes).filter(|t| !t.is_empty()) {
        line(out, &format!("\n{}", escaped(text)));
    }
    let (name, why) = (&sheet.level.name, &sheet.level.why);
    let level = format!("{}{} {name} ({why}).", sheet.label("level"), sheet.colon);
    line(out, &format!("\n{}", escaped(&level)));
    line(out, &format!("\n## {}\n", sheet.label("need")));
    for item in &sheet.materials.lines {
        line(out, &format!("- {}", escaped(item)));
    }
    let title = sheet.label("abbreviations");
    line(out, &format!("\n## {title}\n\n{}.\n", escaped(&sheet.terms)));
    line(out, "| | |\n|---|---|");
    for (code, meaning) in &sheet.abbreviations {
        line(out, &format!("| {} | {} |", escaped(code), escaped(meaning)));
    }
    for form in &sheet.forms {
        line(out, &format!("\n{}", escaped(form)));
    }
    if !sheet.specials.is_empty() {
        line(out, &format!("\n## {}\n", sheet.label("how")));
        for special in &sheet.specials {
            let (name, how) = (escaped(&special.name), escaped(&special.how));
            line(out, &format!("- **{name}{}** {how}", sheet.colon));
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
        line(out, &format!("\n## {}", sheet.label("together")));
        for text in &sheet.assembly {
            line(out, &format!("\n{}", escaped(text)));
        }
    }
    line(out, &format!("\n## {}\n", sheet.label("cautions")));
    for caution in &sheet.cautions {
        line(out, &format!("- {}", escaped(caution)));
    }
    page
}

fn lay_piece(out: &mut String, piece: &PieceSheet, sheet: &Sheet, level: &str) {
    line(out, &format!("\n{level} {}\n\n{}", sheet.label("gauge"), escaped(&piece.gauge)));
    line(out, &format!("\n{level} {}", sheet.label("finished_size")));
    for size in &piece.sizes {
        let text =
            format!("{}{}. {}", size.lead(&sheet.colon), size.finished, size.measured_on);
        line(out, &format!("\n{}", escaped(&text)));
    }
    if !piece.warnings.is_empty() {
        line(out, &format!("\n{level} {}\n", sheet.label("before")));
        for warning in &piece.warnings {
            line(out, &format!("- {}", escaped(warning)));
        }
    }
    line(out, &format!("\n{level} {}\n", sheet.label("rounds")));
    if !sheet.unchecked.is_empty() {
        line(out, &format!("{}\n", escaped(&sheet.unchecked)));
    }
    for opening in &piece.opening {
        line(out, &format!("{}\n", escaped(opening)));
    }
    for (size, steps, closing) in piece.lists() {
        if !size.is_empty() {
            let title = sheet.label_of("rounds_of", "size", &escaped(size));
            line(out, &format!("\n{level} {title}\n"));
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
                Step::Stuff(text) | Step::Inside(text) => {
                    line(out, &format!("\n*{}*\n", escaped(text)))
                }
            }
        }
        line(out, "");
        for text in closing {
            line(out, &format!("{}\n", escaped(text)));
        }
    }
    for size in &piece.sizes {
        line(
            out,
            &format!("{}.", escaped(&format!("{}{}", size.lead(&sheet.colon), size.total))),
        );
    }
}

fn line(out: &mut String, text: &str) {
    // Writing to a String cannot fail.
    writeln!(out, "{text}").ok();
}
