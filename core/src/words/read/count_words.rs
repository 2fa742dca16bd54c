//! Words that stand before the count of every round, whatever they are: “thats 12”,
//! “nos quedan 12”, “fertig mit 12”.

use std::collections::BTreeMap;

use super::lexemes::{Lexeme, LexemeKind, within};
use super::token::{Say, Tok, Token};
use super::words::Glossary;

/// Rounds that have to end so.
const FEWEST: usize = 3;

/// Adds the words of `tokens`, unknown so far, that stand between the work and the last number
/// of several lines. Whether there are any.
pub(super) fn learn(tokens: &[Token], lexemes: &[Lexeme<'_>], own: &mut Glossary) -> bool {
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    for line in tokens.split(|t| t.tok == Tok::Newline) {
        if let Some(words) = before_count(line, lexemes) {
            *seen.entry(words).or_default() += 1;
        }
    }
    seen.retain(|_, many| *many >= FEWEST);
    for words in seen.keys() {
        own.add(words.split(' '), Tok::Equals);
    }
    !seen.is_empty()
}

/// The unknown words before the count that `line` ends with, behind its work.
fn before_count(line: &[Token], lexemes: &[Lexeme<'_>]) -> Option<String> {
    let ends = |t: &&Token| {
        matches!(
            t.tok,
            Tok::Stitch | Tok::Kind(_) | Tok::Stop | Tok::Say(Say::Total) | Tok::Close
        )
    };
    let tail = line.iter().rev().take_while(ends).count();
    let at = line.len().checked_sub(tail + 1)?;
    let Tok::Number(3..) = line[at].tok else { return None };
    // “thats still 12”: small words between.
    let small = line[..at]
        .iter()
        .rev()
        .take(2)
        .take_while(|t| {
            matches!(t.tok, Tok::Say(Say::The | Say::More | Say::Only | Say::Total))
        })
        .count();
    let words = line[..at - small]
        .iter()
        .rev()
        .take(2)
        .take_while(|t| t.tok == Tok::Unknown && t.spelt)
        .count();
    let from = at - small - words;
    if words == 0 {
        return None;
    }
    let (first, last) = (line.get(from)?, line.get(from + words - 1)?);
    let worked = line[..from]
        .iter()
        .any(|t| t.tok.is_work() || matches!(t.tok, Tok::InEach | Tok::Ring | Tok::Turns(_)));
    if !worked {
        return None;
    }
    let said: Vec<&str> = within(lexemes, &(first.start..last.end))
        .iter()
        .filter(|l| l.shape == LexemeKind::Word)
        .map(|l| l.text.as_ref())
        .collect();
    (!said.is_empty()).then(|| said.join(" "))
}
