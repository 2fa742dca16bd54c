//! The writer: a pattern in the words of a [`Lexicon`], set in a [`HouseStyle`].
//!
//! 1. [`style`] and [`phrases`]: how a house sets its rounds, and what stands around the terms
//!    of a language, both as data;
//! 2. `pen`: text that knows where its numbers stand; `terms`: the form of a term;
//! 3. `ops`: what is worked in one round, on the one `below`;
//! 4. `page`: a whole pattern, line by line; `sizes`: several in one text;
//! 5. `abbreviations`: those the text has used, found in what was written;
//! 6. `sheet_words`: what a sheet says around the rounds, as data; `say`: that in sentences.

mod abbreviations;
mod below;
mod ops;
mod page;
mod pen;
pub mod phrases;
mod say;
mod sheet_words;
mod sizes;
pub mod style;
mod terms;
#[cfg(test)]
mod tests;

pub use below::Below;
pub use phrases::Phrases;
pub use say::capitalised;
pub use sheet_words::SheetWords;
pub use sizes::{write, write_sizes};
pub use style::HouseStyle;

use std::borrow::Cow;

use ops::Scribe;
use pen::{TextPen, Value};
use style::HeadingWord;

use super::lexicon::Lexicon;
use super::tree::{Op, Placed, Rounds};
use terms::plural;

/// One line of rounds in its three parts, for views that set them apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoundsText {
    /// The round or range, with what stands after it: `Rnd 4:`.
    pub heading: String,
    /// What to work.
    pub text: String,
    /// The count at the end, in the house's form: `[24]`; empty where none is stated.
    pub count: String,
}

/// What a name in the braces of a phrase stands for.
#[derive(Debug, Clone, Copy)]
pub enum Fill<'a> {
    /// A number; that of `n` says how terms beside it are written.
    Number(u32),
    /// An ordinal number.
    Nth(u32),
    /// Words.
    Words(&'a str),
}

/// Writes in one house style and one lexicon.
#[derive(Debug, Clone, Copy)]
pub struct Writer<'a> {
    style: &'a HouseStyle,
    lexicon: &'a Lexicon,
    phrases: &'static Phrases,
    sheet_words: &'static SheetWords,
}

impl<'a> Writer<'a> {
    /// A writer of this style in these words.
    pub fn new(style: &'a HouseStyle, lexicon: &'a Lexicon) -> Self {
        let (phrases, sheet_words) = (Phrases::of(lexicon), SheetWords::of(lexicon));
        Self { style, lexicon, phrases, sheet_words }
    }

    /// The writer of the studio's own words: its own style, in US terms.
    pub fn bench() -> Writer<'static> {
        Writer::new(HouseStyle::bench(), &super::lexicon::all()[0])
    }

    /// The style it writes in.
    pub fn style(&self) -> &'a HouseStyle {
        self.style
    }

    /// The lexicon it takes its words from.
    pub fn lexicon(&self) -> &'a Lexicon {
        self.lexicon
    }

    /// The phrases of its language.
    pub fn phrases(&self) -> &'static Phrases {
        self.phrases
    }

    /// What a sheet says around the rounds in its language.
    pub fn sheet_words(&self) -> &'static SheetWords {
        self.sheet_words
    }

    /// A round or a range of rounds by name: `Rnd 9`, `Rnds 12–16`.
    pub fn round_name(&self, first: u32, last: u32) -> String {
        self.named(first, last).text
    }

    /// As [`Self::round_name`], with what the style puts after it: `Rnd 9:`.
    pub fn heading(&self, first: u32, last: u32) -> String {
        self.headed(first, last).text
    }

    /// What to work in a round on `below`, without heading and count.
    pub fn text(&self, work: &[Placed<Op>], below: Below) -> String {
        self.worked(work, below).text
    }

    /// A count at the end of a round: `[24]`.
    pub fn count(&self, count: u32) -> String {
        self.counted(count).text.trim_start().to_owned()
    }

    /// One line of rounds in its parts.
    pub fn rounds(&self, rounds: &Rounds, below: Below) -> RoundsText {
        RoundsText {
            heading: self.heading(rounds.first, rounds.last),
            text: self.text(&rounds.work, below),
            count: rounds.stated.as_ref().map_or_else(String::new, |n| self.count(n.it)),
        }
    }

    /// `phrase` with each name in braces filled in: by its value, else by that term of the
    /// lexicon.
    pub fn filled(&self, phrase: &str, values: &[(&str, Fill<'_>)]) -> String {
        let values = values.iter().map(|&(name, fill)| {
            let value = match fill {
                Fill::Number(n) => Value::Number(n),
                Fill::Nth(n) => Value::Nth(n),
                Fill::Words(words) => Value::Words(words),
            };
            (name, value)
        });
        let values: Vec<(&str, Value<'_>)> = values.collect();
        let mut pen = TextPen::default();
        pen.fill(self, phrase, &values);
        pen.text
    }

    /// The abbreviations that `texts` use, each with its meaning, in the lexicon's order.
    /// The texts must be this writer's own words throughout.
    pub fn abbreviations<'t>(
        &self,
        texts: impl IntoIterator<Item = &'t str>,
    ) -> Vec<(String, String)> {
        abbreviations::used(self, texts)
    }

    fn named(&self, first: u32, last: u32) -> TextPen {
        let several = if first == last { 1 } else { 2 };
        let term = &self.lexicon.round;
        let phrase = self.phrases.heading.of(several);
        let (word, phrase) = match (self.style.heading.word, &self.phrases.letter) {
            (HeadingWord::Letter, Some(letter)) => {
                (letter.as_str(), Cow::Owned(phrase.replace("{round} ", "{round}")))
            }
            (HeadingWord::Bare, _) => ("", Cow::Owned(phrase.replace("{round}", ""))),
            (HeadingWord::Word, _) if several == 1 => {
                (term.one.as_str(), Cow::Borrowed(phrase))
            }
            (HeadingWord::Word, _) => (term.many.as_str(), Cow::Borrowed(phrase)),
            (HeadingWord::Short | HeadingWord::Letter, _) => {
                (plural(term, several), Cow::Borrowed(phrase))
            }
        };
        let capital = self.style.heading.capital || self.phrases.nouns_capital;
        let mut letters = word.chars();
        let first_letter = letters.next().map(|letter| match capital {
            true => letter.to_uppercase().collect::<String>(),
            false => letter.to_lowercase().collect(),
        });
        let word = first_letter.unwrap_or_default() + letters.as_str();
        let mut pen = TextPen::default();
        let values = [
            ("round", Value::Words(&word)),
            ("n", Value::Number(first)),
            ("first", Value::Number(first)),
            ("last", Value::Number(last)),
            ("dash", Value::Words(&self.style.heading.dash)),
        ];
        pen.fill(self, phrase.trim(), &values);
        // A range differs from size to size as a whole: 7–9 (7–10, 7–12).
        if let [first, last] = pen.numbers.as_slice() {
            let range = first.start..last.end;
            pen.numbers.clear();
            pen.numbers.push(range);
        }
        pen
    }

    fn headed(&self, first: u32, last: u32) -> TextPen {
        let mut pen = self.named(first, last);
        let after = &self.style.heading.after;
        // A bare German number has its point already.
        if !pen.text.ends_with(after.as_str()) {
            if after.starts_with([':', ';']) {
                pen.words(&self.phrases.before_colon);
            }
            pen.words(after);
        }
        pen
    }

    fn worked(&self, work: &[Placed<Op>], below: Below) -> TextPen {
        let mut pen = TextPen::default();
        Scribe::new(self, &mut pen, below).write(work);
        if self.style.capital {
            pen.capitalise();
        }
        pen
    }

    fn counted(&self, count: u32) -> TextPen {
        let mut pen = TextPen::default();
        pen.fill(self, &self.style.count, &[("n", Value::Number(count))]);
        pen
    }
}
