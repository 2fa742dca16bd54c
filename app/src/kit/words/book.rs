//! The files of messages, read once.
//!
//! Project Fluent's format and reader: plurals by the rules of each language, arguments by
//! name, a file that a translator can write in any editor. A screen asks for hundreds of
//! messages a frame, nearly all without arguments: those are kept as they come out and lent.

use std::collections::HashMap;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

use super::Language;

/// The messages of one language.
struct Book {
    bundle: FluentBundle<FluentResource>,
    /// Those that want no arguments, as they are said.
    plain: HashMap<String, String>,
}

static ENGLISH: LazyLock<Book> =
    LazyLock::new(|| Book::read("en", include_str!("../../../../assets/words/studio/en.ftl")));
static GERMAN: LazyLock<Book> =
    LazyLock::new(|| Book::read("de", include_str!("../../../../assets/words/studio/de.ftl")));

fn of(language: Language) -> &'static Book {
    match language {
        Language::English => &ENGLISH,
        Language::German => &GERMAN,
    }
}

/// The message of `key` without arguments, in `language` or else in English.
pub(super) fn plain(language: Language, key: &str) -> Option<&'static str> {
    let found = |book: &'static Book| book.plain.get(key).map(String::as_str);
    found(of(language)).or_else(|| found(&ENGLISH))
}

/// The message of `key` with `arguments`, in `language` or else in English.
pub(super) fn filled(
    language: Language,
    key: &str,
    arguments: &FluentArgs<'_>,
) -> Option<String> {
    of(language).fill(key, arguments).or_else(|| ENGLISH.fill(key, arguments))
}

impl Book {
    /// Messages that cannot be read are left out: they are then said in English, or by key. A
    /// test reads the files with no such mercy.
    fn read(code: &str, text: &str) -> Self {
        let resource =
            FluentResource::try_new(text.to_owned()).unwrap_or_else(|(some, _)| some);
        let mut keys = Vec::new();
        for entry in resource.entries() {
            if let fluent_syntax::ast::Entry::Message(message) = entry {
                keys.push(message.id.name.to_owned());
            }
        }
        let language: LanguageIdentifier = code.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Marks around arguments keep scripts of both directions apart; ours run one way, and
        // assistive tools would read them.
        bundle.set_use_isolating(false);
        bundle.add_resource_overriding(resource);
        let mut book = Self { bundle, plain: HashMap::new() };
        for key in keys {
            if let Some(words) = book.fill(&key, &FluentArgs::new()) {
                book.plain.insert(key, words);
            }
        }
        book
    }

    /// None where there is no such message or it wants other arguments.
    fn fill(&self, key: &str, arguments: &FluentArgs<'_>) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let mut faults = Vec::new();
        let words = self.bundle.format_pattern(pattern, Some(arguments), &mut faults);
        faults.is_empty().then(|| words.into_owned())
    }
}
