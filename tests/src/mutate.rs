//! Patterns made wrong by chance, always the same ones: what a reader may be handed.

use crate::corpus::clean;
use crate::planted::planted;

/// Characters that texts are pasted with, or that a reader may trip over.
const RARE: [char; 24] = [
    '(', ')', '[', ']', '{', '*', '×', '–', '—', '→', '=', ':', '\u{a0}', '\u{200b}',
    '\u{301}', '\u{202e}', '\u{feff}', '\r', '\t', '\0', 'ß', 'İ', '編', '🧶',
];

/// Numbers that sums may trip over.
const NUMBERS: [&str; 6] = ["0", "1", "4294967295", "4294967296", "99999999999999999999", "-3"];

/// A source of mutations; equal seeds give equal mutations.
#[derive(Debug, Clone)]
pub struct Mutator {
    chance: fastrand::Rng,
}

impl Mutator {
    /// A source that `seed` sets.
    pub fn new(seed: u64) -> Self {
        Self { chance: fastrand::Rng::with_seed(seed) }
    }

    /// `text` after one to six mutations; some splice in a part of `other`.
    pub fn mutate(&mut self, text: &str, other: &str) -> String {
        let times = 1 + self.below(6);
        (0..times).fold(text.to_owned(), |text, _| self.once(&text, other))
    }

    fn once(&mut self, text: &str, other: &str) -> String {
        match self.below(12) {
            0..4 => self.shuffle(&pieces(text, |_, _| true)),
            4..7 => self.shuffle(&pieces(text, is_token_edge)),
            7..9 => self.shuffle(&pieces(text, |before, _| before == '\n')),
            9 => self.splice(text, other),
            10 => self.insert(text),
            _ => self.renumber(text),
        }
    }

    /// Two pieces swapped, or one left out or doubled.
    fn shuffle(&mut self, pieces: &[&str]) -> String {
        let mut pieces = pieces.to_vec();
        if pieces.is_empty() {
            return String::new();
        }
        let (i, j) = (self.below(pieces.len()), self.below(pieces.len()));
        match self.below(3) {
            0 => pieces.swap(i, j),
            1 => {
                pieces.remove(i);
            }
            _ => pieces.insert(j, pieces[i]),
        }
        pieces.concat()
    }

    /// The beginning of one text and the end of the other.
    fn splice(&mut self, text: &str, other: &str) -> String {
        let (head, tail) = (self.place(text), self.place(other));
        [&text[..head], &other[tail..]].concat()
    }

    /// A rare character, or any at all, put in.
    fn insert(&mut self, text: &str) -> String {
        let any = u32::try_from(self.below(0x11_0000)).ok().and_then(char::from_u32);
        let rare = RARE[self.below(RARE.len())];
        let new = if self.below(2) == 0 { any.unwrap_or(rare) } else { rare };
        let at = self.place(text);
        format!("{}{new}{}", &text[..at], &text[at..])
    }

    /// One number of the text for another.
    fn renumber(&mut self, text: &str) -> String {
        let mut tokens = pieces(text, is_token_edge);
        let is_number = |token: &str| token.starts_with(|c: char| c.is_ascii_digit());
        let at: Vec<usize> = (0..tokens.len()).filter(|&i| is_number(tokens[i])).collect();
        if !at.is_empty() {
            tokens[at[self.below(at.len())]] = NUMBERS[self.below(NUMBERS.len())];
        }
        tokens.concat()
    }

    /// A place between two characters, in bytes.
    fn place(&mut self, text: &str) -> usize {
        let n = self.below(text.chars().count() + 1);
        text.char_indices().nth(n).map_or(text.len(), |(at, _)| at)
    }

    /// A number from 0 to below `n`, which is more than 0.
    fn below(&mut self, n: usize) -> usize {
        self.chance.usize(..n)
    }
}

/// Every text of the corpus, mutated `rounds` times over; some spliced with their neighbour.
pub fn mutated_corpus(seed: u64, rounds: usize) -> impl Iterator<Item = String> {
    let planted = planted().into_iter().map(|case| case.text);
    let clean = clean().into_iter().map(|pattern| pattern.text.to_owned());
    let texts: Vec<String> = clean.chain(planted).collect();
    let mut mutator = Mutator::new(seed);
    (0..rounds * texts.len()).map(move |i| {
        let (text, other) = (&texts[i % texts.len()], &texts[(i + 1) % texts.len()]);
        mutator.mutate(text, other)
    })
}

/// Whether a word, a number or a sign begins between two characters.
fn is_token_edge(before: char, after: char) -> bool {
    let class = |c: char| match c {
        c if c.is_alphabetic() => 0,
        c if c.is_ascii_digit() => 1,
        c if c.is_whitespace() => 2,
        _ => 3,
    };
    class(before) != class(after) || class(after) == 3
}

/// `text` cut wherever `is_edge` says so of the characters before and after; the pieces make
/// up the whole text.
fn pieces(text: &str, is_edge: impl Fn(char, char) -> bool) -> Vec<&str> {
    let mut pieces = Vec::new();
    let (mut from, mut before) = (0, None);
    for (at, c) in text.char_indices() {
        if before.is_some_and(|b| is_edge(b, c)) {
            pieces.push(&text[from..at]);
            from = at;
        }
        before = Some(c);
    }
    if from < text.len() {
        pieces.push(&text[from..]);
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "Rnd 3: (sc 1, inc) × 6 (18)\nRnds 4–5: sc around\n";

    #[test]
    fn pieces_make_up_the_text() {
        assert_eq!(pieces(TEXT, |_, _| true).concat(), TEXT);
        assert_eq!(pieces("sc 12, inc", is_token_edge), ["sc", " ", "12", ",", " ", "inc"]);
        assert_eq!(pieces(TEXT, |before, _| before == '\n').len(), 2);
        assert!(pieces("", is_token_edge).is_empty());
    }

    #[test]
    fn equal_seeds_mutate_alike_and_most_seeds_change_the_text() {
        let made = |seed| Mutator::new(seed).mutate(TEXT, "R1: 6 sc in mr\n");
        let all: Vec<String> = (0..500).map(made).collect();
        assert_eq!(all, (0..500).map(made).collect::<Vec<_>>());
        let unchanged = all.iter().filter(|text| *text == TEXT).count();
        assert!(unchanged < 50, "{unchanged} of 500 unchanged");
        let distinct: std::collections::BTreeSet<_> = all.iter().collect();
        assert!(distinct.len() > 400, "{} distinct of 500", distinct.len());
    }

    #[test]
    fn the_whole_corpus_is_mutated_alike_each_time() {
        let all: Vec<String> = mutated_corpus(7, 2).collect();
        assert_eq!(all.len(), 2 * (clean().len() + planted().len()));
        assert!(all.iter().eq(&mutated_corpus(7, 2).collect::<Vec<_>>()));
    }

    #[test]
    fn nothing_to_mutate_is_no_trouble() {
        for seed in 0..200 {
            Mutator::new(seed).mutate("", "");
        }
    }
}
