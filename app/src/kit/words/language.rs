//! Which languages the studio speaks, and which of them is spoken now.

use std::cell::Cell;

use serde::{Deserialize, Serialize};

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// A language of menus, cards and notices. The language of a pattern is another choice, and
/// the project's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
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

    /// The language of the system's locale where the studio speaks it, else English.
    pub fn of_system() -> Self {
        sys_locale::get_locale().map_or(Self::English, |locale| Self::of_locale(&locale))
    }

    fn of_locale(locale: &str) -> Self {
        let code = locale.split(['-', '_', '.']).next().unwrap_or_default();
        Self::ALL
            .into_iter()
            .find(|language| language.code().eq_ignore_ascii_case(code))
            .unwrap_or_default()
    }

    /// The language that this thread speaks: English until [`Language::speak`].
    pub fn spoken() -> Self {
        SPOKEN.get()
    }

    /// Makes this thread speak it from now on. A thread each, so that two windows, or two
    /// tests, do not put words into each other's mouths.
    pub fn speak(self) {
        SPOKEN.set(self);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_system_decides_where_its_language_is_spoken() {
        for locale in ["de", "de-AT", "de_DE.UTF-8", "DE-CH"] {
            assert_eq!(Language::of_locale(locale), Language::German, "{locale}");
        }
        for locale in ["en-GB", "C", "", "fr-FR", "den-CA"] {
            assert_eq!(Language::of_locale(locale), Language::English, "{locale}");
        }
    }

    #[test]
    fn a_thread_speaks_for_itself() {
        Language::German.speak();
        let beside = std::thread::Builder::new()
            .name("beside".into())
            .spawn(Language::spoken)
            .expect("started")
            .join()
            .expect("a thread");
        assert_eq!((Language::spoken(), beside), (Language::German, Language::English));
    }
}
