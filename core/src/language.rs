//! The languages in which a person is spoken to, other than that of a pattern.

use serde::{Deserialize, Serialize};

/// A language of menus, notes and numbers. The language of a pattern is another choice, and
/// the project's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Language {
    /// As it was written; what another language lacks is said in it.
    #[default]
    English,
    /// German.
    German,
}

impl Language {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// What its speakers call it.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// Its code (BCP 47).
    pub const fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// A number that was written with a decimal point, as the language writes it: `9,32`.
    pub fn number(self, pointed: String) -> String {
        match self {
            Self::English => pointed,
            Self::German => pointed.replace('.', ","),
        }
    }

    /// A number to so many decimals.
    pub fn decimal(self, value: f64, places: usize) -> String {
        self.number(format!("{value:.places$}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_the_mark_of_their_language() {
        assert_eq!(Language::English.decimal(-9.316, 2), "-9.32");
        assert_eq!(Language::German.decimal(-9.316, 2), "-9,32");
        assert_eq!(Language::German.decimal(40.0, 0), "40");
    }
}
