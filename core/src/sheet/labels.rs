//! Headings and labels of a sheet, by name, in its language.

use std::collections::BTreeMap;

use crate::words::write::{Writer, capitalised};

/// The names of the labels; each is said by the words of the sheet, `gauge` and `hook` by the
/// lexicon.
const NAMES: [&str; 41] = [
    "included",
    "level",
    "need",
    "abbreviations",
    "how",
    "finished_size",
    "before",
    "rounds",
    "together",
    "cautions",
    "work",
    "stitches_head",
    "done",
    "tick",
    "page",
    "measures",
    "symbols",
    "charts",
    "making_time",
    "size_column",
    "height",
    "width",
    "depth",
    "count_column",
    "rounds_column",
    "gauge_note",
    "estimates",
    "substitution",
    "by",
    "rounds_of",
    "done_round",
    "chart_picture",
    "measures_picture",
    "stuffed_picture",
    "boxes.one",
    "boxes.many",
    "more_boxes",
    "toy_picture",
    "step_picture",
    "view_front",
    "view_side",
];

/// What every label says. Those with names in braces keep them, to be filled in where they are
/// used.
pub(super) fn labels(writer: &Writer<'_>) -> BTreeMap<&'static str, String> {
    let words = writer.sheet_words();
    let says = |name: &'static str| {
        let text = words.get(name, writer.lexicon()).unwrap_or_default();
        let given =
            ["{designer}", "{size}", "{n}", "{chart}", "{finished}", "{name}", "{which}"];
        match given.iter().any(|given| text.contains(given)) {
            true => (name, text.to_owned()),
            false => (name, writer.say(name)),
        }
    };
    let mut labels: BTreeMap<&'static str, String> = NAMES.into_iter().map(says).collect();
    let lexicon = writer.lexicon();
    labels.insert("gauge", capitalised(&lexicon.gauge.one));
    labels.insert("hook", capitalised(&lexicon.hook.one));
    labels
}
