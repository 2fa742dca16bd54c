//! Patterns with exactly one planted error each, for judging the proofreader.
//!
//! `corpus/broken/KIND.txt` holds the errors of one kind as changes to clean patterns:
//!
//! ```text
//! ## float, round 4, mends
//! - Rnd 4: (sc 2, inc) x 6 (24)
//! + Rnd 4: ⟦(sc 1, inc) x 6⟧ (24)
//! ```
//!
//! Lines after `-` stand in the clean pattern, those after `+` take their place; a blank line
//! parts two changes of one pattern. The brackets mark what a finding should underline and are
//! no part of the text. `mends` says that the proofreader has to offer an edit that leaves
//! nothing to find.

use plumpline_core::pattern::Span;

use crate::corpus::{Clean, clean};

/// A pattern with one error, and what is to be found.
#[derive(Debug, Clone)]
pub struct Planted {
    /// The kind of finding, by the name of its variant.
    pub kind: &'static str,
    /// The clean pattern it was made from.
    pub from: &'static str,
    /// Line of the case in its file, from 1.
    pub line: usize,
    /// The text, marks taken out.
    pub text: String,
    /// What the finding should underline, in bytes of `text`.
    pub at: Span,
    /// The round of the finding; `None` where it belongs to no round's line.
    pub round: Option<u32>,
    /// Whether an edit has to be offered that leaves nothing to find.
    pub mends: bool,
}

impl Planted {
    /// Where the case stands and what it marks, for failures.
    pub fn place(&self) -> String {
        let marked = &self.text[self.at.clone()];
        format!("{} line {} (in {}, “{marked}”)", self.kind, self.line, self.from)
    }
}

const FILES: [(&str, &str); 9] = [
    ("Takes", include_str!("../corpus/broken/takes.txt")),
    ("Count", include_str!("../corpus/broken/count.txt")),
    ("Repeat", include_str!("../corpus/broken/repeat.txt")),
    ("Skipped", include_str!("../corpus/broken/skipped.txt")),
    ("Doubled", include_str!("../corpus/broken/doubled.txt")),
    ("Undefined", include_str!("../corpus/broken/undefined.txt")),
    ("StuffLate", include_str!("../corpus/broken/stuff-late.txt")),
    ("Reference", include_str!("../corpus/broken/reference.txt")),
    ("Unread", include_str!("../corpus/broken/unread.txt")),
];

/// Clean patterns with something that looks like an error and is none.
pub const QUIET: [(&str, &str); 6] = [
    ("topped-up", include_str!("../corpus/quiet/topped-up.txt")),
    ("chart-beside", include_str!("../corpus/quiet/chart-beside.txt")),
    ("no-counts", include_str!("../corpus/quiet/no-counts.txt")),
    ("two-parts", include_str!("../corpus/quiet/two-parts.txt")),
    ("open-rim", include_str!("../corpus/quiet/open-rim.txt")),
    ("explained-twice", include_str!("../corpus/quiet/explained-twice.txt")),
];

/// Every planted error.
///
/// # Panics
/// If a file does not keep to the form above, with the place.
pub fn planted() -> Vec<Planted> {
    let bases = clean();
    FILES.iter().flat_map(|&(kind, file)| cases(kind, file, &bases)).collect()
}

fn cases(kind: &'static str, file: &'static str, bases: &[Clean]) -> Vec<Planted> {
    let lines: Vec<&str> = file.lines().collect();
    let starts = lines.iter().enumerate().filter(|(_, line)| line.starts_with("## "));
    let starts: Vec<usize> = starts.map(|(i, _)| i).collect();
    let ends = starts.iter().skip(1).copied().chain([lines.len()]);
    starts.iter().zip(ends).map(|(&i, end)| case(kind, i + 1, &lines[i..end], bases)).collect()
}

fn case(kind: &'static str, line: usize, lines: &[&str], bases: &[Clean]) -> Planted {
    let place = format!("corpus/broken, {kind}, line {line}");
    let mut head = lines[0].trim_start_matches("## ").split(", ");
    let name = head.next().unwrap_or_default();
    let base = bases.iter().find(|base| base.name == name);
    let base = base.unwrap_or_else(|| panic!("{place}: no clean pattern “{name}”"));
    let (mut round, mut mends) = (None, false);
    for word in head {
        match word.strip_prefix("round ") {
            Some(number) => round = number.parse().ok(),
            None if word == "mends" => mends = true,
            None => panic!("{place}: “{word}” says nothing"),
        }
    }
    let changes = lines[1..].split(|line| line.is_empty()).filter(|change| !change.is_empty());
    let marked = changes.fold(base.text.to_owned(), |text, change| put(&text, change, &place));
    let (text, at) = unmark(&marked, &place);
    Planted { kind, from: base.name, line, text, at, round, mends }
}

/// `text` with one change made.
fn put(text: &str, change: &[&str], place: &str) -> String {
    let side = |sign: &str| {
        change.iter().filter_map(|line| line.strip_prefix(sign)).fold(
            String::new(),
            |mut side, line| {
                side.push_str(line);
                side.push('\n');
                side
            },
        )
    };
    let (old, new) = (side("- "), side("+ "));
    let framed = format!("\n{text}");
    let found = framed.matches(&format!("\n{old}")).count();
    assert!(!old.is_empty() && found == 1, "{place}: “{old}” stands there {found} times");
    framed.replacen(&format!("\n{old}"), &format!("\n{new}"), 1)[1..].to_owned()
}

/// The text without its marks, and what they marked.
fn unmark(text: &str, place: &str) -> (String, Span) {
    let once = |mark| text.matches(mark).count() == 1;
    assert!(once('⟦') && once('⟧'), "{place}: one pair of marks");
    let (before, rest) = text.split_once('⟦').expect("counted above");
    let (marked, after) = rest.split_once('⟧').expect("the marks open before they close");
    let at = before.len()..before.len() + marked.len();
    (format!("{before}{marked}{after}"), at)
}
