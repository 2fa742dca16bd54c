//! Which of its languages the studio speaks now.

use std::cell::Cell;

use plumpline_core::Language;

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language of the system's locale where the studio speaks it, else English.
pub fn of_system() -> Language {
    sys_locale::get_locale().map_or(Language::English, |locale| of_locale(&locale))
}

fn of_locale(locale: &str) -> Language {
    let code = locale.split(['-', '_', '.']).next().unwrap_or_default();
    Language::ALL
        .into_iter()
        .find(|language| language.code().eq_ignore_ascii_case(code))
        .unwrap_or_default()
}

/// The language that this thread speaks: English until [`speak`].
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Makes this thread speak it from now on. A thread each, so that two windows, or two tests,
/// do not put words into each other's mouths.
pub fn speak(language: Language) {
    SPOKEN.set(language);
}

/// A number to so many decimals, as the language now spoken writes it.
pub fn decimal(value: f64, places: usize) -> String {
    spoken().decimal(value, places)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_system_decides_where_its_language_is_spoken() {
        for locale in ["de", "de-AT", "de_DE.UTF-8", "DE-CH"] {
            assert_eq!(of_locale(locale), Language::German, "{locale}");
        }
        for locale in ["en-GB", "C", "", "fr-FR", "den-CA"] {
            assert_eq!(of_locale(locale), Language::English, "{locale}");
        }
    }

    #[test]
    fn a_thread_speaks_for_itself() {
        speak(Language::German);
        let beside = std::thread::Builder::new()
            .name("beside".into())
            .spawn(spoken)
            .expect("started")
            .join()
            .expect("a thread");
        assert_eq!((spoken(), beside), (Language::German, Language::English));
        assert_eq!(decimal(0.25, 1), "0,2");
    }
}
