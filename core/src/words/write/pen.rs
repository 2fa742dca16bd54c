//! Text as it is written, with the places of its numbers and of words that are not the
//! writer's own.

use std::ops::Range;

use super::Writer;
use super::terms::plural;

/// What a name in braces stands for.
#[derive(Debug, Clone, Copy)]
pub(super) enum Value<'a> {
    /// A number.
    Number(u32),
    /// An ordinal number.
    Nth(u32),
    /// Words.
    Words(&'a str),
}

/// A text being written.
#[derive(Debug, Clone, Default)]
pub(super) struct TextPen {
    /// What is written so far.
    pub(super) text: String,
    /// Where its numbers stand. Several sizes in one text differ in these alone.
    pub(super) numbers: Vec<Range<usize>>,
    /// Where words stand that a person gave: names, remarks, colours. No abbreviation is
    /// looked for in them.
    pub(super) theirs: Vec<Range<usize>>,
}

impl TextPen {
    /// Writes the writer's own words.
    pub(super) fn words(&mut self, words: &str) {
        self.text.push_str(words);
    }

    /// Writes words that a person gave, on one line.
    pub(super) fn given(&mut self, words: &str) {
        let start = self.text.len();
        for (i, word) in words.split_whitespace().enumerate() {
            if i > 0 {
                self.text.push(' ');
            }
            self.text.push_str(word);
        }
        self.theirs.push(start..self.text.len());
    }

    /// Writes a number.
    pub(super) fn number(&mut self, number: impl Into<u64>) {
        let mut left = number.into();
        let start = self.text.len();
        let mut digits = [0_u8; 20];
        let mut at = digits.len();
        loop {
            at -= 1;
            digits[at] = b'0' + (left % 10) as u8;
            left /= 10;
            if left == 0 {
                break;
            }
        }
        self.text.extend(digits[at..].iter().map(|&digit| char::from(digit)));
        self.numbers.push(start..self.text.len());
    }

    /// Writes `template`, each name in braces by its value: those of `values`, else a term of
    /// the lexicon in the number that the last value `n` asks for.
    pub(super) fn fill(
        &mut self,
        writer: &Writer<'_>,
        template: &str,
        values: &[(&str, Value<'_>)],
    ) {
        let mut rest = template;
        while let Some((before, after)) = rest.split_once('{') {
            self.words(before);
            let Some((name, after)) = after.split_once('}') else {
                self.words("{");
                rest = after;
                continue;
            };
            rest = after;
            match values.iter().find(|(n, _)| *n == name) {
                Some((_, Value::Number(n))) => self.number(*n),
                Some((_, Value::Nth(n))) => {
                    self.number(*n);
                    self.words(writer.phrases.ordinal_end(*n));
                }
                Some((_, Value::Words(words))) => self.words(words),
                None => {
                    let count = values.iter().find_map(|(n, value)| match value {
                        Value::Number(count) if *n == "n" => Some(*count),
                        _ => None,
                    });
                    let term = term_named(writer, name, count.unwrap_or(1));
                    let word = || writer.sheet_words.get(name, writer.lexicon);
                    self.words(term.or_else(word).unwrap_or_default());
                }
            }
        }
        self.words(rest);
    }

    /// Turns the first letter into a capital, whatever bracket or asterisk stands before it,
    /// where the word is not one that has its capital further on (fM, hStb).
    pub(super) fn capitalise(&mut self) {
        let start = self.text.find(|c: char| !"*([{".contains(c)).unwrap_or(0);
        let mut letters = self.text[start..].chars();
        let plain = letters.next().is_some_and(|c| c.is_ascii_lowercase())
            && !letters.next().is_some_and(char::is_uppercase)
            && !self.theirs.iter().any(|given| given.contains(&start));
        if plain {
            self.text[start..=start].make_ascii_uppercase();
        }
    }

    /// Writes what `other` holds.
    pub(super) fn append(&mut self, other: &Self) {
        let by = self.text.len();
        let moved = |at: &Range<usize>| at.start + by..at.end + by;
        self.numbers.extend(other.numbers.iter().map(moved));
        self.theirs.extend(other.theirs.iter().map(moved));
        self.text.push_str(&other.text);
    }

    /// The text without its numbers: what two texts share that differ in numbers alone.
    pub(super) fn skeleton(&self) -> String {
        let mut words = String::with_capacity(self.text.len());
        let mut at = 0;
        for number in &self.numbers {
            words.push_str(&self.text[at..number.start]);
            words.push('\u{0}');
            at = number.end;
        }
        words.push_str(&self.text[at..]);
        words
    }
}

/// The term that a phrase or a house style calls `name`, as `count` of it are written; none
/// for what is no term.
fn term_named<'a>(writer: &Writer<'a>, name: &str, count: u32) -> Option<&'a str> {
    let lexicon = writer.lexicon;
    let of = |term: &'a crate::words::Term| plural(term, count);
    Some(match name {
        "stitch" => of(&lexicon.stitch),
        "round" => plural(&lexicon.round, 1),
        "rounds" => plural(&lexicon.round, 2),
        "chain" => lexicon.chain.brief(count),
        "ring" => of(&lexicon.ring),
        "hook" => of(&lexicon.hook),
        "skip" => of(&lexicon.skip),
        "in_each" => &lexicon.in_each.one,
        "single" => lexicon.single.brief(count),
        "half_double" => lexicon.half_double.brief(count),
        "double" => lexicon.double.brief(count),
        "increase" => lexicon.increase.brief(1),
        "decrease" => lexicon.decrease.brief(1),
        "gauge" => &lexicon.gauge.one,
        "chain_one" => &lexicon.chain.one,
        "chain_many" => &lexicon.chain.many,
        "slip_one" => &lexicon.slip.one,
        "slip_many" => &lexicon.slip.many,
        "single_one" => &lexicon.single.one,
        "single_many" => &lexicon.single.many,
        "half_double_one" => &lexicon.half_double.one,
        "half_double_many" => &lexicon.half_double.many,
        "double_one" => &lexicon.double.one,
        "double_many" => &lexicon.double.many,
        "treble_one" => &lexicon.treble.one,
        "treble_many" => &lexicon.treble.many,
        "stitches" if count == 1 => &lexicon.stitch.one,
        "stitches" => &lexicon.stitch.many,
        "times" if count == 1 => &lexicon.times.one,
        "times" => &lexicon.times.many,
        _ => return None,
    })
}

/// The names a phrase may hold beside those it is given values for.
#[cfg(test)]
pub(super) const TERMS: [&str; 28] = [
    "stitch",
    "round",
    "rounds",
    "chain",
    "ring",
    "hook",
    "skip",
    "in_each",
    "stitches",
    "times",
    "single",
    "half_double",
    "double",
    "increase",
    "decrease",
    "gauge",
    "chain_one",
    "chain_many",
    "slip_one",
    "slip_many",
    "single_one",
    "single_many",
    "half_double_one",
    "half_double_many",
    "double_one",
    "double_many",
    "treble_one",
    "treble_many",
];
