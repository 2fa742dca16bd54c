//! What a shop says of a pattern: its size, level and materials, and what is included.

use super::plain::escaped;
use super::{Level, PieceSheet, Sheet};
use crate::error::is_unseen;
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// How a blurb is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BlurbForm {
    /// Plain text.
    Plain,
    /// Markdown.
    Markdown,
}

/// What a shop says of the pattern on `sheet`, in the sheet's own words.
pub fn blurb(sheet: &Sheet, form: BlurbForm) -> String {
    let mut out = String::new();
    let mut put = |line: &str| {
        out.push_str(line);
        out.push('\n');
    };
    let text = |words: &str| match form {
        BlurbForm::Plain => words.chars().filter(|&c| !is_unseen(c)).collect(),
        BlurbForm::Markdown => escaped(words),
    };
    let heading = |words: &str| match form {
        BlurbForm::Plain => format!("\n{words}{}", sheet.colon),
        BlurbForm::Markdown => format!("\n## {}\n", escaped(words)),
    };
    match form {
        BlurbForm::Plain => put(&text(&sheet.title)),
        BlurbForm::Markdown => put(&format!("# {}", text(&sheet.title))),
    }
    put("");
    put(&text(&sheet.intro));
    if !sheet.unchecked.is_empty() {
        put(&text(&sheet.unchecked));
    }
    put(&heading(sheet.label("finished_size")));
    let several = sheet.names_pieces();
    for piece in &sheet.pieces {
        for size in &piece.sizes {
            let names = [several.then_some(piece.name.as_str()), Some(size.name.as_str())];
            let names: Vec<&str> =
                names.into_iter().flatten().filter(|name| !name.is_empty()).collect();
            let lead = match names.is_empty() {
                true => String::new(),
                false => format!("{}{} ", names.join(", "), sheet.colon),
            };
            put(&text_item(&text(&format!("{lead}{}", size.finished))));
        }
    }
    put(&heading(sheet.label("need")));
    for line in &sheet.materials.lines {
        put(&text_item(&text(line)));
    }
    put(&heading(sheet.label("included")));
    for line in &sheet.included {
        put(&text_item(&text(line)));
    }
    out
}

/// What a shop says of a pattern in a sentence or two.
pub(super) fn intro(pieces: &[PieceSheet], level: &Level, writer: &Writer<'_>) -> String {
    let round = writer.say_n("blurb_round", pieces.len() as u32, &[]);
    let (title, colon) = (writer.say("level"), &writer.phrases().before_colon);
    let terms = &writer.lexicon().name;
    let written = writer.say_of("written_in", &[("terms", Words(terms))]);
    format!("{round} {title}{colon}: {} ({}). {written}", level.name, level.why)
}

/// What is included in a pattern of these pieces.
pub(super) fn included(
    pieces: &[PieceSheet],
    assembled: bool,
    writer: &Writer<'_>,
) -> Vec<String> {
    let sizes = pieces.iter().map(|piece| piece.sizes.len()).max().unwrap_or(1);
    let charts = pieces.iter().any(|piece| !piece.pictures.charts.charts.is_empty());
    let number = sizes.to_string();
    let lines = [
        (true, writer.say("included_rounds")),
        (charts, writer.say("included_charts")),
        (true, writer.say("included_measures")),
        (sizes > 1, writer.say_of("included_sizes", &[("n", Words(&number))])),
        (assembled, writer.say("included_assembly")),
        (true, writer.say("included_how")),
    ];
    lines.into_iter().filter(|(there, _)| *there).map(|(_, line)| line).collect()
}

fn text_item(words: &str) -> String {
    format!("- {words}")
}
