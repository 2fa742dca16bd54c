//! Sentences that keep their lengths as lengths, so that each reader sees them in the unit
//! they work in.

use std::fmt;

use serde::{Serialize, Serializer};

use crate::length::Unit;

/// A sentence, or several, for people to read; lengths in it stay mm until it is read.
///
/// ```
/// use plumpline_core::{Sentence, length::Unit};
/// let told = Sentence::from("Rnd 9 bulges ").mm(6.1).words(". Stuff it less firmly.");
/// assert_eq!(told.text(Unit::Mm), "Rnd 9 bulges 6.1 mm. Stuff it less firmly.");
/// assert_eq!(told.text(Unit::Inch), "Rnd 9 bulges 0.24 in. Stuff it less firmly.");
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sentence {
    parts: Vec<Fragment>,
}

#[derive(Debug, Clone, PartialEq)]
enum Fragment {
    Words(String),
    /// mm, told to about a tenth of one.
    Length(f64),
    /// mm, told to about a whole one.
    Rough(f64),
}

impl Sentence {
    /// With these words after it.
    #[must_use]
    pub fn words(mut self, words: impl Into<String>) -> Self {
        self.parts.push(Fragment::Words(words.into()));
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

    /// With another after it, a space between.
    #[must_use]
    pub fn then(mut self, next: impl Into<Self>) -> Self {
        self.parts.push(Fragment::Words(" ".into()));
        self.parts.extend(next.into().parts);
        self
    }

    /// Its text, every length in `unit`.
    pub fn text(&self, unit: Unit) -> String {
        let part = |part: &Fragment| match part {
            Fragment::Words(words) => words.clone(),
            Fragment::Length(mm) => unit.text(*mm),
            Fragment::Rough(mm) => unit.rough_text(*mm),
        };
        self.parts.iter().map(part).collect()
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

/// Lengths in mm, as programs and files have them.
impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text(Unit::Mm))
    }
}

/// As its text, lengths in mm.
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
}
