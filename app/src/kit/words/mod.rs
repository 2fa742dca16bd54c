//! The words of the studio: messages by key, a file a language in `assets/words/studio`.
//!
//! `say!("key")` is a message without arguments, borrowed from its file; `say!("key", n = 3)`
//! is one with arguments by name, which chooses among plurals by the rules of the language.
//! `message!("key")` names a message in a table that is written down once. Keys are literals,
//! so that a test can read from the sources which are used, and with what.

mod book;
mod language;

use std::borrow::Cow;

use fluent_bundle::{FluentArgs, FluentValue};

pub use language::{decimal, of_system, speak, spoken};
pub use plumpline_core::Language;

/// A message without arguments, by its key; said when it is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MessageKey(pub &'static str);

impl MessageKey {
    /// The message in the language now spoken; its key if no file has it.
    pub fn text(self) -> &'static str {
        said(self.0)
    }
}

/// What can stand in a message.
pub trait Sayable {
    /// The value as a message takes it: a number chooses a plural, words stand as they are.
    fn said(&self) -> FluentValue<'_>;
}

impl Sayable for str {
    fn said(&self) -> FluentValue<'_> {
        FluentValue::String(Cow::Borrowed(self))
    }
}

impl Sayable for String {
    fn said(&self) -> FluentValue<'_> {
        self.as_str().said()
    }
}

impl Sayable for Cow<'_, str> {
    fn said(&self) -> FluentValue<'_> {
        self.as_ref().said()
    }
}

impl Sayable for char {
    fn said(&self) -> FluentValue<'_> {
        FluentValue::String(Cow::Owned(self.to_string()))
    }
}

impl<T: Sayable + ?Sized> Sayable for &T {
    fn said(&self) -> FluentValue<'_> {
        (**self).said()
    }
}

macro_rules! numbers {
    ($($number:ty)*) => {
        $(impl Sayable for $number {
            fn said(&self) -> FluentValue<'_> {
                FluentValue::from(*self)
            }
        })*
    };
}

numbers! { u8 u16 u32 u64 usize i32 i64 f64 }

/// The message of `key` without arguments; the key itself if no file has it.
pub fn said(key: &'static str) -> &'static str {
    book::plain(spoken(), key).unwrap_or(key)
}

/// The message of `key` with `arguments` in it; the key itself if no file has it.
pub fn said_with(key: &'static str, arguments: &[(&'static str, FluentValue<'_>)]) -> String {
    let arguments: FluentArgs<'_> =
        arguments.iter().map(|(name, value)| (*name, value.clone())).collect();
    book::filled(spoken(), key, &arguments).unwrap_or_else(|| key.to_owned())
}

/// A message by its key: `&'static str` without arguments, else a `String`.
macro_rules! say {
    ($key:literal) => {
        $crate::kit::words::said($key)
    };
    ($key:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $crate::kit::words::said_with(
            $key,
            &[$((stringify!($name), $crate::kit::words::Sayable::said(&$value))),+],
        )
    };
}

/// The key of a message, for tables.
macro_rules! message {
    ($key:literal) => {
        $crate::kit::words::MessageKey($key)
    };
}

pub mod terms;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plurals_follow_the_language_and_numbers_stand_as_written() {
        let both = |n: usize| {
            Language::ALL.map(|language| {
                speak(language);
                say!("ago-minutes", n = n)
            })
        };
        assert_eq!(both(1), ["1 minute ago", "vor 1 Minute"]);
        assert_eq!(both(0), ["0 minutes ago", "vor 0 Minuten"]);
        assert_eq!(both(1200), ["1200 minutes ago", "vor 1200 Minuten"]);
    }

    #[test]
    fn words_of_a_person_stand_as_they_were_typed() {
        let name = "{ $n } “x”\n-> *[other]";
        assert!(said_with("yarn-letter", &[("letter", name.said())]).contains(name));
    }

    #[test]
    fn what_no_file_has_is_its_key() {
        assert_eq!(said("no-such-message"), "no-such-message");
        assert_eq!(said_with("no-such-message", &[]), "no-such-message");
        assert_eq!(MessageKey("no-such-message").text(), "no-such-message");
    }
}
