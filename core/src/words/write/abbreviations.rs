//! The abbreviations that a text uses, found in the text itself.

use std::ops::Range;

use super::Writer;
use super::pen::{TextPen, Value};
use super::terms::short_plural;
use crate::words::lexicon::Term;
use crate::words::tree::StitchKind;

/// Something that may be looked for in a text, and what it means.
struct Abbreviation {
    /// As it is printed.
    short: String,
    /// What the list says of it.
    meaning: String,
    /// Whether its first letter may be the other case: at the start of a sentence, or of a
    /// heading in small letters.
    any_case: bool,
    used: bool,
}

/// The abbreviations in `texts`, in the lexicon's order.
pub(super) fn used<'t>(
    writer: &Writer<'_>,
    texts: impl IntoIterator<Item = &'t str>,
) -> Vec<(String, String)> {
    let mut list = List::new(writer);
    for text in texts {
        list.look_in(text, &[]);
    }
    list.found()
}

/// As [`used`], but not in words that a person gave.
pub(super) fn used_in_pens(writer: &Writer<'_>, pens: &[TextPen]) -> Vec<(String, String)> {
    let mut list = List::new(writer);
    for pen in pens {
        list.look_in(&pen.text, &pen.theirs);
    }
    list.found()
}

struct List<'w> {
    writer: &'w Writer<'w>,
    entries: Vec<Abbreviation>,
    /// Stitches worked together, by kind and number, as they are met.
    together: Vec<(StitchKind, u32)>,
}

impl<'w> List<'w> {
    fn new(writer: &'w Writer<'w>) -> Self {
        let lexicon = writer.lexicon;
        let phrases = writer.phrases;
        let mut entries = Vec::new();
        let mut put = |short: &str, meaning: &str| {
            let meaning = match phrases.nouns_capital {
                true => meaning.to_owned(),
                false => meaning.to_lowercase(),
            };
            let short = short.to_owned();
            entries.push(Abbreviation { short, meaning, any_case: true, used: false });
        };
        let mut term = |term: &Term| {
            if let Some(short) = &term.short {
                put(short, &term.one);
            }
            if let Some(short) = short_plural(term) {
                put(short, &term.many);
            }
        };
        for each in [&lexicon.round, &lexicon.stitch, &lexicon.chain, &lexicon.slip] {
            term(each);
        }
        for each in [&lexicon.single, &lexicon.half_double, &lexicon.double, &lexicon.treble] {
            term(each);
        }
        for each in [&lexicon.front_loop, &lexicon.back_loop, &lexicon.skip, &lexicon.ring] {
            term(each);
        }
        for each in [&lexicon.turn, &lexicon.join, &lexicon.fasten_off, &lexicon.marker] {
            term(each);
        }
        if let Some(letter) = &phrases.letter {
            let (short, meaning) = (letter.clone(), lexicon.round.one.to_lowercase());
            entries.push(Abbreviation { short, meaning, any_case: false, used: false });
        }
        for (term, meaning, always) in [
            (&lexicon.increase, &phrases.increase_means, false),
            (&lexicon.decrease, &phrases.decrease_means, false),
            (&lexicon.invisible_decrease, &phrases.invisible_means, true),
        ] {
            for short in [term.brief(1), term.brief(2)] {
                let known = entries.iter().any(|entry: &Abbreviation| entry.short == short);
                if (always || term.short.is_some()) && !known {
                    entries.push(Abbreviation {
                        short: short.to_owned(),
                        meaning: meaning.clone(),
                        any_case: true,
                        used: false,
                    });
                }
            }
        }
        Self { writer, entries, together: Vec::new() }
    }

    /// Marks what stands in `text` outside `theirs`: the longest that fits at each word.
    fn look_in(&mut self, text: &str, theirs: &[Range<usize>]) {
        let mut at = 0;
        let mut in_word = false;
        while let Some(letter) = text[at..].chars().next() {
            let given = theirs.iter().find(|given| given.contains(&at));
            if let Some(given) = given {
                at = given.end;
                in_word = false;
                continue;
            }
            let rest = &text[at..];
            let found = if in_word { None } else { self.at_start_of(rest) };
            let length = found.unwrap_or(letter.len_utf8());
            in_word = found.is_some() || letter.is_alphanumeric();
            at += length;
        }
    }

    /// Marks the longest entry that `rest` starts with. Its length in bytes.
    fn at_start_of(&mut self, rest: &str) -> Option<usize> {
        let entry = (self.entries.iter_mut())
            .filter(|entry| starts_with_word(rest, &entry.short, entry.any_case))
            .max_by_key(|entry| entry.short.len());
        if let Some(entry) = entry {
            entry.used = true;
            return Some(entry.short.len());
        }
        let (kind, many, length) = together_at(self.writer, rest)?;
        if !self.together.contains(&(kind, many)) {
            self.together.push((kind, many));
        }
        Some(length)
    }

    fn found(mut self) -> Vec<(String, String)> {
        self.together.sort_unstable();
        let together = self.together.iter().map(|&(kind, many)| {
            let term = self.writer.lexicon.kind(kind);
            let values = [
                ("kind", Value::Words(term.brief(many))),
                ("many", Value::Number(many)),
                ("n", Value::Number(many)),
            ];
            let filled = |phrase: &str, values: &[(&str, Value<'_>)]| {
                let mut pen = TextPen::default();
                pen.fill(self.writer, phrase, values);
                pen.text
            };
            let short = filled(&self.writer.phrases.together, &values);
            let named = [("kind", Value::Words(&term.many)), values[1], values[2]];
            (short, filled(&self.writer.phrases.together_means, &named))
        });
        let used = self.entries.into_iter().filter(|entry| entry.used);
        used.map(|entry| (entry.short, entry.meaning)).chain(together).collect()
    }
}

/// Whether `rest` begins with `word` and the word ends there. With `any_case`, its first
/// letter may be the other case.
fn starts_with_word(rest: &str, word: &str, any_case: bool) -> bool {
    let Some(start) = rest.get(..word.len()) else { return false };
    let same = start == word
        || (any_case
            && start.chars().next().is_some_and(|c| {
                let mut first = word.chars();
                first.next().is_some_and(|w| c.to_lowercase().eq(w.to_lowercase()))
                    && start[c.len_utf8()..] == *first.as_str()
            }));
    let next = rest[word.len()..].chars().next();
    // A dash joins (“ch-5”), digits after the letter of a round do not.
    let ends = !next.is_some_and(|c| c.is_alphabetic() || (any_case && c.is_numeric()));
    same && ends
}

/// `sc2tog` at the start of `rest`, where the language writes it as one word: the kind, how
/// many and its length in bytes.
fn together_at(writer: &Writer<'_>, rest: &str) -> Option<(StitchKind, u32, usize)> {
    let ending = writer.phrases.together.strip_prefix("{kind}{many}")?;
    let letters = rest.find(|c: char| c.is_ascii_digit())?;
    let digits = rest[letters..].find(|c: char| !c.is_ascii_digit())?;
    let after = letters + digits;
    let end = rest[after..].starts_with(ending).then_some(after + ending.len())?;
    let many = rest[letters..after].parse().ok()?;
    let kind = KINDS.into_iter().find(|&kind| {
        let word = writer.lexicon.kind(kind).brief(many);
        rest[..letters].eq_ignore_ascii_case(word)
    })?;
    Some((kind, many, end))
}

const KINDS: [StitchKind; 5] = [
    StitchKind::Slip,
    StitchKind::Single,
    StitchKind::HalfDouble,
    StitchKind::Double,
    StitchKind::Treble,
];
