//! What a person says the words of a text mean: its author's own way of putting things, told
//! once and read so wherever it comes again.

use std::borrow::Cow;
use std::collections::HashMap;

use serde::{Deserialize, Serialize};

use super::lexemes::{Lexeme, LexemeKind, lexemes};

/// More are not looked at.
const MOST: usize = 200;

/// Longest words and meaning, in lexemes.
const LONGEST: usize = 60;

/// Words of a text and what they mean, in words that the reader knows. A number in the words
/// stands for any number, and for that number again in the meaning.
///
/// ```
/// use plumpline_core::words::Line;
/// use plumpline_core::words::read::{Saying, TermsWish, read_with};
/// use plumpline_core::words::tally::tally;
///
/// let said = Saying { words: "3 plain then a twin".into(), means: "(3 sc, inc) x 6".into() };
/// let text = "Rnd 4: 2 plain then a twin (24)";
/// let reading = read_with(text, TermsWish::Infer, &[said]);
/// let Line::Rounds(round) = &reading.pattern.lines[0].it else { panic!("it is a round") };
/// let sum = tally(&round.work, Some(18)).expect("it adds up");
/// assert_eq!((sum.taken, sum.left), (18, 24));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Saying {
    /// As the text has them.
    pub words: String,
    /// What they mean.
    pub means: String,
}

/// A saying, taken apart.
struct Said {
    words: Vec<(LexemeKind, String)>,
    means: Vec<Meant>,
}

/// A lexeme of a meaning.
enum Meant {
    Itself(LexemeKind, String),
    /// The number that stands at this place of the words.
    Number(usize),
}

impl Said {
    fn of(saying: &Saying) -> Option<Self> {
        let parts = |text: &str| -> Vec<(LexemeKind, String)> {
            lexemes(text)
                .into_iter()
                .filter(|l| l.shape != LexemeKind::Newline)
                .map(|l| (l.shape, l.text.into_owned()))
                .collect()
        };
        let (words, means) = (parts(&saying.words), parts(&saying.means));
        let worded = words.iter().any(|(shape, _)| *shape == LexemeKind::Word);
        let fits = |many: usize| (1..=LONGEST).contains(&many);
        if !worded || !fits(words.len()) || !fits(means.len()) {
            return None;
        }
        let means = means
            .into_iter()
            .map(|(shape, text)| {
                let number = shape == LexemeKind::Number;
                let place = words.iter().position(|w| number && *w == (shape, text.clone()));
                place.map_or(Meant::Itself(shape, text), Meant::Number)
            })
            .collect();
        Some(Self { words, means })
    }

    /// Whether `text` begins with its words; line ends do not break them.
    fn begins(&self, text: &[Lexeme<'_>]) -> bool {
        self.words.len() <= text.len()
            && self.words.iter().zip(text).all(|((shape, word), lexeme)| {
                *shape == lexeme.shape && (*shape == LexemeKind::Number || *word == lexeme.text)
            })
    }
}

/// `text` with what is said of it in the place of its words. What stands there keeps the place
/// of the words, so that findings point at them.
pub(super) fn with_sayings<'t>(text: Vec<Lexeme<'t>>, sayings: &[Saying]) -> Vec<Lexeme<'t>> {
    let said: Vec<Said> = sayings.iter().take(MOST).filter_map(Said::of).collect();
    if said.is_empty() {
        return text;
    }
    // By how they begin, longest first.
    let mut by_first: HashMap<&str, Vec<&Said>> = HashMap::new();
    let mut by_number: Vec<&Said> = Vec::new();
    for one in &said {
        match &one.words[0] {
            (LexemeKind::Number, _) => by_number.push(one),
            (_, word) => by_first.entry(word).or_default().push(one),
        }
    }
    let longest =
        |list: &mut Vec<&Said>| list.sort_by_key(|s| std::cmp::Reverse(s.words.len()));
    by_first.values_mut().for_each(longest);
    longest(&mut by_number);
    let mut found = Vec::with_capacity(text.len());
    let mut at = 0;
    while let Some(lexeme) = text.get(at) {
        let own = match lexeme.shape {
            LexemeKind::Number => Some(&by_number),
            _ => by_first.get(lexeme.text.as_ref()),
        };
        let Some(one) = own.and_then(|list| list.iter().find(|s| s.begins(&text[at..]))) else {
            found.push(lexeme.clone());
            at += 1;
            continue;
        };
        let words = &text[at..at + one.words.len()];
        let place = words[0].at.start..words[words.len() - 1].at.end;
        found.extend(one.means.iter().map(|meant| match meant {
            Meant::Number(i) => Lexeme { at: place.clone(), ..words[*i].clone() },
            Meant::Itself(shape, text) => {
                Lexeme { shape: *shape, text: Cow::Owned(text.clone()), at: place.clone() }
            }
        }));
        at += one.words.len();
    }
    found
}
