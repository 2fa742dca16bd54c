//! Where findings stand in lines and columns, and how the terms of a text are told.

use crate::words::lexicon::by_code;
use crate::words::read::{Reading, TermsFound};
use crate::words::tree::Placed;

/// The lines of a text, for turning bytes into lines and columns.
#[derive(Debug, Clone)]
pub struct LineIndex<'a> {
    text: &'a str,
    starts: Vec<usize>,
}

impl<'a> LineIndex<'a> {
    /// The lines of `text`.
    pub fn new(text: &'a str) -> Self {
        let after = text.bytes().enumerate().filter(|(_, b)| *b == b'\n').map(|(i, _)| i + 1);
        Self { text, starts: std::iter::once(0).chain(after).collect() }
    }

    /// Line and column of a byte, both from 1, the column in characters.
    pub fn of(&self, byte: usize) -> (usize, usize) {
        let line = self.starts.partition_point(|&start| start <= byte);
        let start = self.starts[line.saturating_sub(1)];
        let before = self.text.get(start..byte.min(self.text.len())).unwrap_or_default();
        (line.max(1), before.chars().count() + 1)
    }

    /// Line of a byte, from 1: what [`Self::of`] says, without counting the column.
    pub fn line_of(&self, byte: usize) -> usize {
        self.starts.partition_point(|&start| start <= byte).max(1)
    }

    /// A line (from 1) without its end.
    pub fn line(&self, line: usize) -> &'a str {
        let start = self.starts.get(line.saturating_sub(1)).copied().unwrap_or(0);
        self.text[start..].lines().next().unwrap_or_default()
    }

    /// The terms a text was read in, and why, in one sentence.
    pub fn terms(&self, reading: &Reading) -> String {
        let name = by_code(reading.lexicon).map_or(reading.lexicon, |l| l.name.as_str());
        let because = self.because(reading);
        format!("Read as {name}, {because}.")
    }

    /// Why: `because of “sc” in line 3`.
    pub fn because(&self, reading: &Reading) -> String {
        let at = |word: &Placed<String>| {
            format!("“{}” in line {}", word.it, self.of(word.at.start).0)
        };
        let list = |words: &[Placed<String>]| {
            let words: Vec<String> = words.iter().take(3).map(at).collect();
            words.join(", ")
        };
        match &reading.terms {
            TermsFound::Wished => "as asked".into(),
            TermsFound::Said(word) => format!("as it says itself: {}", at(word)),
            TermsFound::Inferred { because } if because.is_empty() => "by its words".into(),
            TermsFound::Inferred { because } => format!("because of {}", list(because)),
            TermsFound::Undecided { hangs_on, .. } if hangs_on.is_empty() => {
                "though nothing in it tells".into()
            }
            TermsFound::Undecided { hangs_on, .. } => {
                format!("though nothing in it tells; on that hangs {}", list(hangs_on))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_count_from_one_in_characters() {
        let places = LineIndex::new("a\nRüb: é sc\n");
        assert_eq!(places.of(0), (1, 1));
        assert_eq!(places.of("a\nRüb: é ".len()), (2, 8));
        assert_eq!(places.line(2), "Rüb: é sc");
        assert_eq!(places.of(9999).0, 3);
    }
}
