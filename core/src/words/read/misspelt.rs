//! Words that look mistyped: one letter wrong, left out, doubled or out of order within a word
//! of the trade.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use super::lexemes::{Lexeme, LexemeKind};
use super::words::Vocabulary;
use crate::words::tree::Span;

/// Letters of the shortest word that is looked at.
const SHORTEST: usize = 4;
/// Letters of the shortest word that the text itself need not have elsewhere.
const LONG: usize = 5;
/// Letters of the longest: words of the trade are shorter, and words near a word are as many as
/// its letters and as long.
const LONGEST: usize = 24;
/// Most words that are looked at: no pattern has as many that nobody knows.
const MOST: usize = 2_000;
/// A word that stands there more often is the writer's own.
const OFTEN: usize = 2;

/// A place, and the word that is meant there.
pub(super) type Meant = (Span, String);

/// `lexemes` with these words in their places.
pub(super) fn mended<'t>(lexemes: &[Lexeme<'t>], slips: &[Meant]) -> Vec<Lexeme<'t>> {
    let at = |start: usize| slips.iter().find(|(at, _)| at.start == start);
    lexemes
        .iter()
        .map(|lexeme| match at(lexeme.at.start) {
            Some((_, word)) => Lexeme { text: Cow::Owned(word.clone()), ..lexeme.clone() },
            None => lexeme.clone(),
        })
        .collect()
}

/// Words that may be mistyped, with those meant.
pub(super) fn slips(lexemes: &[Lexeme<'_>], words: &Vocabulary) -> Vec<Meant> {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for lexeme in lexemes.iter().filter(|l| l.shape == LexemeKind::Word) {
        *seen.entry(lexeme.text.as_ref()).or_default() += 1;
    }
    let mut meant: BTreeMap<String, String> = BTreeMap::new();
    let unknown = seen.iter().filter_map(|(&word, &many)| {
        let letters = word.chars().take(LONGEST + 1).count();
        let is = (SHORTEST..=LONGEST).contains(&letters) && many <= OFTEN && !words.has(word);
        is.then_some((word, letters))
    });
    let unknown: Vec<(&str, usize)> = unknown.collect();
    if unknown.len() > MOST {
        return Vec::new();
    }
    for (word, letters) in unknown {
        let here = |known: &str| seen.get(known).is_some_and(|n| *n > 1);
        let known: BTreeSet<&str> = near(word)
            .filter_map(|near| words.known(&near))
            .filter(|known| here(known) || letters >= LONG)
            .filter(|known| !only_inflects(word, known))
            .collect();
        if let (Some(known), 1) = (known.first(), known.len()) {
            meant.insert(word.to_owned(), (*known).to_owned());
        }
    }
    if meant.is_empty() {
        return Vec::new();
    }
    // Lines without a number tell no round.
    let mut counted = vec![false; lexemes.len()];
    let mut start = 0;
    for end in 0..=lexemes.len() {
        if lexemes.get(end).is_none_or(|l| l.shape == LexemeKind::Newline) {
            let any = lexemes[start..end].iter().any(|l| l.shape == LexemeKind::Number);
            counted[start..end].fill(any);
            start = end + 1;
        }
    }
    let slip = |(lexeme, counted): (&Lexeme<'_>, bool)| {
        let word = meant.get(lexeme.text.as_ref()).filter(|_| counted)?;
        Some((lexeme.at.clone(), word.clone()))
    };
    lexemes.iter().zip(counted).filter_map(slip).collect()
}

/// Whether the words differ at their end alone: another form of the word, not a slip.
fn only_inflects(word: &str, known: &str) -> bool {
    let alike = word.chars().zip(known.chars()).take_while(|(a, b)| a == b).count();
    alike + 2 >= word.chars().count().min(known.chars().count())
}

/// Every word one letter away from `word`, its first letter kept.
fn near(word: &str) -> impl Iterator<Item = String> {
    let letters: Vec<char> = word.chars().collect();
    let made = |letters: Vec<char>| letters.into_iter().collect::<String>();
    let mut found = Vec::new();
    for i in 1..letters.len() {
        let mut fewer = letters.clone();
        fewer.remove(i);
        found.push(made(fewer));
        if i + 1 < letters.len() {
            let mut swapped = letters.clone();
            swapped.swap(i, i + 1);
            found.push(made(swapped));
        }
        for c in 'a'..='z' {
            let mut other = letters.clone();
            other[i] = c;
            found.push(made(other));
            let mut more = letters.clone();
            more.insert(i, c);
            found.push(made(more));
        }
    }
    found.into_iter()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::read::lexemes::lexemes;

    fn read_as(text: &str) -> Vec<String> {
        let found = slips(&lexemes(text), Vocabulary::of("en-us"));
        found.into_iter().map(|(_, word)| word).collect()
    }

    #[test]
    fn a_letter_out_of_place_is_a_slip_and_another_form_is_none() {
        let text = "Rnd 3: sc in next st, 2 sc in ncxt st\nRnd 4: sc in next 3 sts";
        assert_eq!(read_as(text), ["next"]);
        assert_eq!(read_as("Rnd 3: every thrid stitch"), ["third"]);
        assert_eq!(read_as("Rnd 3: sc in 4 stitchers"), Vec::<String>::new());
        assert_eq!(read_as("a thrid stitch"), Vec::<String>::new(), "tells no round");
        let endless = format!("Rnd 3: sc in 4 {}", "x".repeat(1_000_000));
        assert_eq!(read_as(&endless), Vec::<String>::new());
    }
}
