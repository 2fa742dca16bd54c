//! Sentences that keep their lengths as lengths and their notes as keys, so that each reader
//! sees them in the unit and language they work in.

use std::fmt;

use serde::{Serialize, Serializer};

use crate::language::Language;
use crate::length::Unit;
use crate::note;
use crate::units::Units;

/// A sentence, or several, for people to read; lengths in it stay mm, and what is to be said
/// in more than one language stays a note, until it is read.
///
/// ```
/// use plumpline_core::{Language, Sentence, Unit, Units};
/// let told = Sentence::from("Rnd 9 bulges ").mm(6.1).words(". Stuff it less firmly.");
/// assert_eq!(told.text(Unit::Mm), "Rnd 9 bulges 6.1 mm. Stuff it less firmly.");
/// assert_eq!(told.text(Unit::Inch), "Rnd 9 bulges 0.24 in. Stuff it less firmly.");
/// let noted = Sentence::note("bulges", [("off", Sentence::default().mm(6.1).into())]);
/// assert_eq!(noted.text(Unit::Mm), "bulges 6.1 mm");
/// let german = Units { unit: Unit::Mm, language: Language::German };
/// assert_eq!(noted.text(german), "wölbt sich 6,1 mm vor");
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sentence {
    parts: Vec<Fragment>,
}

#[derive(Debug, Clone, PartialEq)]
enum Fragment {
    Words(String),
    /// To so many decimals.
    Number(f64, usize),
    /// mm, told to about a tenth of one.
    Length(f64),
    /// mm, told to about a whole one.
    Rough(f64),
    /// By its key, with its values by name.
    Note(&'static str, Vec<(&'static str, NoteValue)>),
}

/// What stands in a note.
#[derive(Debug, Clone, PartialEq)]
pub enum NoteValue {
    /// A whole number, by which words are chosen too.
    Count(u32),
    /// Anything that is said by itself: words, a length, another note.
    Said(Sentence),
}

impl From<u32> for NoteValue {
    fn from(count: u32) -> Self {
        Self::Count(count)
    }
}

impl From<Sentence> for NoteValue {
    fn from(said: Sentence) -> Self {
        Self::Said(said)
    }
}

impl From<&str> for NoteValue {
    fn from(words: &str) -> Self {
        Self::Said(words.into())
    }
}

impl Sentence {
    /// The note `key`, with its values by name; `assets/words/notes` has its words.
    pub fn note<const N: usize>(
        key: &'static str,
        values: [(&'static str, NoteValue); N],
    ) -> Self {
        Self { parts: vec![Fragment::Note(key, values.into())] }
    }

    /// With these words after it.
    #[must_use]
    pub fn words(mut self, words: impl Into<String>) -> Self {
        self.parts.push(Fragment::Words(words.into()));
        self
    }

    /// With this number after it, to so many decimals.
    #[must_use]
    pub fn number(mut self, value: f64, places: usize) -> Self {
        self.parts.push(Fragment::Number(value, places));
        self
    }

    /// With this length after it, mm, to about a tenth of a millimetre.
    #[must_use]
    pub fn mm(mut self, mm: f64) -> Self {
        self.parts.push(Fragment::Length(mm));
        self
    }

    /// With this length after it, mm, to about a millimetre: sizes at a glance.
    #[must_use]
    pub fn rough_mm(mut self, mm: f64) -> Self {
        self.parts.push(Fragment::Rough(mm));
        self
    }

    /// With another right after it.
    #[must_use]
    pub fn and(mut self, next: Self) -> Self {
        self.parts.extend(next.parts);
        self
    }

    /// With another after it, a space between.
    #[must_use]
    pub fn then(mut self, next: impl Into<Self>) -> Self {
        self.parts.push(Fragment::Words(" ".into()));
        self.parts.extend(next.into().parts);
        self
    }

    /// Its text: lengths in the unit, notes and numbers in the language; a [`Unit`] alone
    /// reads English.
    pub fn text(&self, units: impl Into<Units>) -> String {
        let units = units.into();
        self.parts.iter().map(|part| part.text(units)).collect()
    }
}

impl Fragment {
    fn text(&self, units: Units) -> String {
        match self {
            Self::Words(words) => words.clone(),
            Self::Number(value, places) => units.language.decimal(*value, *places),
            Self::Length(mm) => units.text(*mm),
            Self::Rough(mm) => units.rough_text(*mm),
            Self::Note(key, values) => {
                let of = |name: &str| values.iter().find(|(n, _)| *n == name).map(|(_, v)| v);
                let value = |name: &str| match of(name) {
                    Some(NoteValue::Count(count)) => count.to_string(),
                    Some(NoteValue::Said(said)) => said.text(units),
                    None => format!("{{{name}}}"),
                };
                let is_one = |name: &str| of(name) == Some(&NoteValue::Count(1));
                note::filled(note::template(units.language, key), value, is_one)
            }
        }
    }
}

impl From<String> for Sentence {
    fn from(words: String) -> Self {
        Self::default().words(words)
    }
}

impl From<&str> for Sentence {
    fn from(words: &str) -> Self {
        Self::default().words(words)
    }
}

/// In English, lengths in mm, as programs and files have them.
impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text(Units { unit: Unit::Mm, language: Language::English }))
    }
}

/// As its text, in English, lengths in mm.
impl Serialize for Sentence {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lengths_change_with_the_unit() {
        // A name may read like a length: it stays as its owner wrote it.
        let told = Sentence::from("“5 mm cap” is ").rough_mm(50.8).words(" wide.");
        assert_eq!(told.text(Unit::Mm), "“5 mm cap” is 51 mm wide.");
        assert_eq!(told.text(Unit::Inch), "“5 mm cap” is 2.0 in wide.");
        assert_eq!(told.then("So be it.").to_string(), "“5 mm cap” is 51 mm wide. So be it.");
    }

    #[test]
    fn notes_within_notes_are_said_in_the_language_too() {
        let rounds = Sentence::note("rounds", [("first", 9.into()), ("last", 12.into())]);
        let bulge = Sentence::note("bulges", [("off", Sentence::default().mm(6.1).into())]);
        let told =
            Sentence::note("of_rounds", [("rounds", rounds.into()), ("what", bulge.into())]);
        assert_eq!(told.to_string(), "Rnds 9–12: bulges 6.1 mm");
        let german = Units { unit: Unit::Cm, language: Language::German };
        assert_eq!(told.text(german), "Rd 9–12: wölbt sich 0,61 cm vor");
    }
}
