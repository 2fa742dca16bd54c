//! Which of the words between rounds name a piece.

use super::draft::{Draft, DraftLine, Name};
use super::token::{Say, Tok, Token, span};
use crate::words::course::founds;
use crate::words::tree::Line;

/// Longest name, in tokens and in bytes.
const LONGEST: (usize, usize) = (9, 60);

/// Whether a line that is not worked may be a name.
pub(super) fn name(line: &[Token], text: &str) -> Name {
    let words = text.get(span(line)).unwrap_or_default();
    if matches!(line, [first, ..] if first.tok == Tok::Say(Say::Section))
        && line.get(1).is_none_or(|t| matches!(t.tok, Tok::Colon | Tok::Open(_)))
    {
        return Name::Section;
    }
    if line.len() > LONGEST.0 || words.len() > LONGEST.1 || !words.contains(char::is_alphabetic)
    {
        return Name::No;
    }
    let before_brackets = words.split('(').next().unwrap_or_default();
    let has_upper = before_brackets.chars().filter(|c| c.is_uppercase()).count() > 1;
    let capitals = has_upper && !before_brackets.contains(char::is_lowercase);
    let made = line.windows(2).any(|pair| {
        matches!(
            (pair[0].tok, pair[1].tok),
            (Tok::Say(Say::Make) | Tok::Times, Tok::Number(_)) | (Tok::Number(_), Tok::Times)
        )
    });
    // “Step 2: Handle”, “Part 1 – Body”
    let stepped = matches!(
        line.iter().map(|t| t.tok).take(3).collect::<Vec<_>>()[..],
        [Tok::Unknown, Tok::Number(_), Tok::Colon | Tok::Dash]
    );
    let decorated = words.starts_with(['#', '_']) || words.starts_with("**");
    match line.last().map(|t| t.tok) {
        Some(Tok::Colon) => Name::Marked,
        _ if capitals || made || decorated || stepped => Name::Marked,
        Some(Tok::Stop | Tok::Comma) | None => Name::No,
        _ if line.iter().any(|t| t.tok == Tok::OddNumber) => Name::No,
        _ => Name::Plain,
    }
}

/// Turns into the names of pieces those notes that stand above the rounds numbered from 1.
pub(super) fn name_pieces(entries: &mut [DraftLine]) {
    let mut above: Option<usize> = None;
    let mut last_round: Option<u32> = None;
    for i in 0..entries.len() {
        let entry = &entries[i];
        let anew = match (&entry.draft, &entry.line) {
            (Some(Draft { heading: Some(heading), .. }), _) if heading.numbered => {
                let anew =
                    heading.first == 1 || last_round.is_none_or(|last| heading.first <= last);
                last_round = Some(heading.last);
                anew
            }
            // A round that begins a piece without any number.
            (Some(draft), _) if founds(&draft.worked.work) => true,
            (Some(_), Line::Do(_)) => continue,
            (_, Line::Note { .. }) => {
                match entry.name {
                    Name::Marked => above = Some(i),
                    // A plain name is taken only where nothing marked heads these rounds.
                    Name::Plain if above.is_none_or(|a| entries[a].name == Name::Plain) => {
                        above = Some(i);
                    }
                    Name::Section => above = None,
                    _ => above = above.filter(|&a| entries[a].name == Name::Marked),
                }
                continue;
            }
            _ => continue,
        };
        let Some(at) = above.take().filter(|_| anew) else { continue };
        if let Line::Note { text, .. } = &entries[at].line {
            let trimmed = text.trim_matches(|c: char| {
                c.is_whitespace()
                    || matches!(c, '#' | '*' | '_' | '=' | '-' | ':' | '•' | '–' | '—')
            });
            entries[at].line = Line::Piece(trimmed.to_owned());
            entries[at].draft = None;
            entries[at].unread.clear();
        }
    }
}
