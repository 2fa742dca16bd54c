//! What a text itself says its short forms mean.

use super::legend;
use super::lexemes::{Lexeme, LexemeKind, within};
use super::lines::MeantLine;
use super::meaning::meant;
use super::token::{Say, Tok};
use super::words::Glossary;
use crate::words::tree::{Decrease, StitchKind};

/// Longest short form, in lexemes.
const LONGEST: usize = 4;

/// Letters of a short form that may mean something else as a word.
const SHORTEST: usize = 3;

/// The short forms that the lists of a text explain and its lexicon does not have.
pub(super) fn glossary(lines: &[MeantLine<'_>], lexemes: &[Lexeme<'_>]) -> Glossary {
    let mut found = Glossary::default();
    for (short, meaning) in lines
        .iter()
        .filter(|line| line.heading.is_none())
        .flat_map(|line| legend::explained(line.body()))
    {
        let Some(tok) = meant(meaning) else { continue };
        // “inc/dec”, “2sctog or dec”: each form by itself.
        let parts = short.split(|t| matches!(t.tok, Tok::Slash | Tok::Comma | Tok::Open(_)));
        for part in parts {
            let (Some(first), Some(last)) = (part.first(), part.last()) else { continue };
            let words = within(lexemes, &(first.at().start..last.at().end));
            // What the lexicon has is never said anew; “2sc” may be, for an increase.
            let known = matches!(part, [one] if one.tok != Tok::Unknown)
                || part.iter().any(|t| {
                    matches!(
                        t.tok,
                        Tok::Increase(_) | Tok::Decrease(..) | Tok::Say(Say::Together)
                    )
                }) && !part.iter().any(|t| t.tok == Tok::Dash)
                || !part.iter().any(|t| t.tok == Tok::Unknown)
                    && !matches!(tok, Tok::Increase(_) | Tok::Decrease(..));
            // “X = single crochet”: a letter that the text explains means that, whatever else.
            let letter = matches!(words, [one] if one.text.chars().count() == 1)
                && matches!(tok, Tok::Increase(_) | Tok::Decrease(..) | Tok::Kind(_));
            // “AN = Abnahme”, where “an” is a word that joins others.
            let joining = matches!(part, [one] if matches!(one.tok, Tok::Say(_)))
                && matches!(tok, Tok::Increase(_) | Tok::Decrease(..))
                && matches!(words, [one] if one.text.chars().count() <= SHORTEST);
            let known = known && !letter && !joining;
            let joins = part.iter().any(|t| matches!(t.tok, Tok::Equals | Tok::Close));
            if words.len() <= LONGEST && !known && !joins {
                found.add(words.iter().map(|l| l.text.as_ref()), tok);
            }
        }
    }
    found
}

/// Adds the letters that charts from East Asia have for stitches, “(2X, V) * 6”, where a text
/// uses them so; what it explains itself stands. Common practice, no source.
pub(super) fn letter_codes(text: &str, lexemes: &[Lexeme<'_>], own: &mut Glossary) {
    let shape = |i: usize| lexemes.get(i).map(|l| l.shape);
    let used = |i: usize, letter: &str| {
        lexemes[i].shape == LexemeKind::Word && text.get(lexemes[i].at.clone()) == Some(letter)
    };
    // “X,” and “6V)”: behind a number or a sign, and before the end of what is worked.
    let worked = |i: usize| {
        let before = i.checked_sub(1).and_then(shape);
        let counted =
            before == Some(LexemeKind::Number) && lexemes[i - 1].at.end == lexemes[i].at.start;
        let listed = matches!(before, Some(LexemeKind::Sign('(' | '[' | '{' | ',' | '+')));
        let ends = matches!(
            shape(i + 1),
            None | Some(LexemeKind::Newline | LexemeKind::Sign(')' | ']' | '}' | ',' | '+'))
        );
        let stated =
            matches!(shape(i + 1), Some(LexemeKind::Sign('(' | '[' | '{' | '=' | '|')));
        (counted || listed) && (ends || counted && stated)
    };
    let many = |letter: &str| {
        (0..lexemes.len()).filter(|&i| used(i, letter) && worked(i)).take(2).count()
    };
    if many("X") < 2 || many("V") < 2 {
        return;
    }
    let single = StitchKind::Single;
    own.add(["x"], Tok::Kind(single));
    own.add(["v"], Tok::Increase(single));
    own.add(["a"], Tok::Decrease(single, Decrease::Plain));
}
