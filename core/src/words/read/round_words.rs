//! Words that stand with the number of every round, whatever they are: “Tour 3”, “Lap 3:”,
//! “3. Umgang”, “LL3 —”.

use std::collections::BTreeMap;

use super::heading::bullets_of;
use super::lexemes::{Lexeme, within};
use super::token::{Say, Tok, Token};
use super::words::Glossary;

/// Adds the unknown words of `tokens` that count on from one at the start of lines. Whether
/// there are any.
pub(super) fn learn(
    text: &str,
    tokens: &[Token],
    lexemes: &[Lexeme<'_>],
    own: &mut Glossary,
) -> bool {
    let mut learnt = false;
    // The numbers that stand with each word, in order, a range by its first and last.
    let mut seen: BTreeMap<String, Vec<(u32, u32)>> = BTreeMap::new();
    for line in tokens.split(|t| t.tok == Tok::Newline) {
        if let Some((word, range)) = numbered(line, text)
            && works(line)
            && let Some(word) = within(lexemes, &word.at()).first()
        {
            seen.entry(word.text.to_string()).or_default().push(range);
        }
    }
    for (word, ranges) in seen {
        // “B2 — 3 sc” may be no range.
        let follows = |pair: &[(u32, u32)]| {
            [pair[0].0, pair[0].1].iter().any(|n| n.checked_add(1) == Some(pair[1].0))
        };
        let counts = ranges
            .windows(3)
            .any(|three| three[0].0 == 1 && follows(&three[..2]) && follows(&three[1..]));
        if counts {
            learnt = true;
            own.add([word.as_str()], Tok::Round);
            // “Level 4”, and “Levels 5 to 7”.
            for many in ["s", "es", "e", "en"] {
                own.add([format!("{word}{many}").as_str()], Tok::Round);
            }
        }
    }
    learnt
}

/// Whether it may be a writer's own word for a round: “Level 3” heads as often as it tells how
/// hard a pattern is.
fn is_free(tok: Tok) -> bool {
    matches!(tok, Tok::Unknown | Tok::Say(Say::Section))
}

/// Whether something is worked in a line, or it holds a count.
fn works(line: &[Token]) -> bool {
    // “Page 1/3” tells of no round.
    let paged = line.iter().any(|t| t.tok == Tok::Slash && t.glued);
    line.iter().any(|t| t.tok.is_work() || matches!(t.tok, Tok::Ring | Tok::InEach))
        || !paged && line.iter().filter(|t| matches!(t.tok, Tok::Number(_))).count() > 1
}

/// The unknown word and the number that `line` begins with, whichever comes first.
fn numbered<'a>(line: &'a [Token], text: &str) -> Option<(&'a Token, (u32, u32))> {
    let from = bullets_of(line);
    let lead = line[from..]
        .iter()
        .take(2)
        .take_while(|t| matches!(t.tok, Tok::Say(Say::The | Say::In)))
        .count();
    let coded = line.get(from + 1).is_some_and(|n| n.glued && matches!(n.tok, Tok::Number(_)));
    let at = from + if coded { 0 } else { lead };
    let number = |at: usize| match line.get(at)?.tok {
        Tok::Number(n) | Tok::Ordinal(n) if n > 0 => Some(n),
        _ => None,
    };
    let is_word = |at: usize| {
        // “A3 —” is no article.
        let letters = |t: &Token| {
            let word = text.get(t.at()).unwrap_or_default();
            let joined = line.get(at + 1).is_some_and(|n| n.glued);
            joined && word.len() <= 2 && word.chars().all(char::is_uppercase)
        };
        line.get(at).filter(|t| t.spelt && (is_free(t.tok) || letters(t)))
    };
    let reaches = |at: usize| {
        line.get(at).is_some_and(|t| {
            matches!(t.tok, Tok::Dash | Tok::Slash | Tok::Say(Say::To | Say::The | Say::Work))
        })
    };
    let point = |at: usize| usize::from(line.get(at).is_some_and(|t| t.tok == Tok::Stop));
    if let (Some(word), Some(first)) = (is_word(at), number(at + 1)) {
        let again = usize::from(is_word(at + 3).is_some());
        let last = number(at + 3 + again).filter(|&n| reaches(at + 2) && n > first);
        return Some((word, (first, last.unwrap_or(first))));
    }
    // “3. Umgang”, “4. bis 6. Umgang”; a number alone may count anything.
    let first = number(at)?;
    let next = at + 1 + point(at + 1);
    let ordinal = next > at + 1 || matches!(line[at].tok, Tok::Ordinal(_));
    if let Some(word) = is_word(next).filter(|_| ordinal) {
        return Some((word, (first, first)));
    }
    let last = number(next + 1).filter(|&n| reaches(next) && n > first)?;
    let word = is_word(next + 2 + point(next + 2)).filter(|_| ordinal)?;
    Some((word, (first, last)))
}
