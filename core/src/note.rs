//! The sentences that the core says to people, as data, a file a language: a note is named by
//! a key and given values, and is put into words where it is read.
//!
//! In a note `{name}` stands for a value; `{n|stitch|stitches}` for the first word where the
//! value `n` is one, else for the second.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use crate::language::Language;

type Book = BTreeMap<String, String>;

fn book(language: Language) -> &'static Book {
    static ENGLISH: OnceLock<Book> = OnceLock::new();
    static GERMAN: OnceLock<Book> = OnceLock::new();
    let read = |text: &str| ron::from_str(text).expect("the built-in notes parse");
    match language {
        Language::English => {
            ENGLISH.get_or_init(|| read(include_str!("../../assets/words/notes/en.ron")))
        }
        Language::German => {
            GERMAN.get_or_init(|| read(include_str!("../../assets/words/notes/de.ron")))
        }
    }
}

/// The note `key` in `language`; the key itself where no file has it, so that a test sees it.
pub(crate) fn template(language: Language, key: &'static str) -> &'static str {
    let found = book(language).get(key).or_else(|| book(Language::English).get(key));
    found.map_or(key, String::as_str)
}

/// `template` with every value put in by `value(name)`, and words chosen by `is_one(name)`.
pub(crate) fn filled(
    template: &str,
    value: impl Fn(&str) -> String,
    is_one: impl Fn(&str) -> bool,
) -> String {
    let mut text = String::new();
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        text.push_str(before);
        let Some((name, after)) = after.split_once('}') else { break };
        match name.split('|').collect::<Vec<_>>()[..] {
            [name, one, many] => text.push_str(if is_one(name) { one } else { many }),
            _ => text.push_str(&value(name)),
        }
        rest = after;
    }
    text + rest
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::piece::starter::Starter;
    use crate::plan::warning::Warning;
    use crate::project::sizes::sized_piece;
    use crate::{Gauge, Kind, KindFrom, Sentence, Size, SizeBy, Unit, Units, plan};

    fn names(template: &str) -> BTreeSet<&str> {
        let parts = template.split('{').skip(1).filter_map(|part| part.split_once('}'));
        parts.map(|(name, _)| name.split('|').next().unwrap_or_default()).collect()
    }

    #[test]
    fn values_stand_in_their_places_and_one_is_singular() {
        let said = |n: u32| {
            filled(
                "{n} {n|stitch|stitches} in {a}.",
                |v| {
                    if v == "n" { n.to_string() } else { "the {ring}".into() }
                },
                |_| n == 1,
            )
        };
        assert_eq!(said(1), "1 stitch in the {ring}.");
        assert_eq!(said(6), "6 stitches in the {ring}.");
    }

    /// Pieces that break rules in every way: whatever is said of them is said in German.
    #[test]
    fn warnings_and_notes_of_sizes_are_german_throughout() {
        let german = Units { unit: Unit::Cm, language: Language::German };
        let mut told = Vec::new();
        for starter in Starter::ALL {
            let ball = starter.piece(&starter.usual(), Gauge::default()).expect("a piece");
            let mut strict = ball.clone();
            strict.rules.largest_change = Some(1);
            strict.rules.multiple_of = 6;
            strict.pins = [(3, 60), (5, 7), (500, 6)].into();
            let mut oval = ball.clone();
            oval.straight_mm = 40.0;
            oval.kinds = vec![KindFrom { from_round: 2, kind: Kind::Double }];
            for piece in [ball, strict, oval] {
                let Ok(plan) = plan(&piece) else { continue };
                told.extend(plan.warnings.iter().map(Warning::sentence));
                for by in [SizeBy::Height(11.0), SizeBy::Width(333.3), SizeBy::Factor(0.3)] {
                    let made = sized_piece(&piece, &Size::new("S", by));
                    told.extend(made.into_iter().flat_map(|made| made.notes));
                }
            }
        }
        let kinds: BTreeSet<String> = told.iter().map(Sentence::to_string).collect();
        assert!(kinds.len() > 20, "only {} are told", kinds.len());
        for note in &told {
            let (english, german) = (note.to_string(), note.text(german));
            assert!(!english.contains(['{', '_']) && !german.contains(['{', '_']), "{german}");
            let words = german.split(|c: char| !c.is_alphabetic());
            let of_english = ["the", "Rnd", "Rnds", "is", "stitches", "sts", "of", "there"];
            let left: Vec<_> = words.filter(|word| of_english.contains(word)).collect();
            assert!(left.is_empty(), "{german}: {left:?}");
            let pointed = german
                .as_bytes()
                .windows(3)
                .any(|w| w[0].is_ascii_digit() && w[1] == b'.' && w[2].is_ascii_digit());
            assert!(!pointed, "{german}");
        }
    }

    #[test]
    fn german_has_every_note_with_the_same_values() {
        let (english, german) = (book(Language::English), book(Language::German));
        assert!(english.keys().eq(german.keys()), "other notes");
        for (key, text) in english {
            assert_eq!(names(text), names(&german[key]), "{key}");
            let has_words =
                filled(text, |_| String::new(), |_| true).contains(char::is_alphabetic);
            assert!(!has_words || *text != german[key], "{key} is not translated");
        }
    }
}
