//! What the reader could not make out.

use std::collections::BTreeSet;

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use super::{defined, text};
use crate::words::lexicon::Term;
use crate::words::read::Inferred;
use crate::words::tree::{Line, Placed, Span};

/// Adds a finding for each line of work that was not read, and for what looks mistyped.
pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    // Words beside the rounds may say anything; only what should be a round is held up.
    let lines = desk.reading.pattern.lines.iter();
    let lines =
        lines.filter(|l| matches!(l.it, Line::Rounds(_) | Line::Note { unread: true, .. }));
    let mut places: Vec<(Span, &Placed<Line>)> = Vec::new();
    for line in lines {
        let spans = &desk.reading.unread;
        let from = spans.partition_point(|p| p.end <= line.at.start);
        let inside = spans[from..].iter().take_while(|p| p.start < line.at.end);
        let before = places.len();
        places.extend(inside.map(|at| (at.clone(), line)));
        if places.len() == before && matches!(line.it, Line::Note { .. }) {
            places.push((line.at.clone(), line));
        }
    }
    for (line, understood) in &desk.reading.understood {
        let round = match desk.reading.pattern.lines.get(*line).map(|line| &line.it) {
            Some(Line::Rounds(rounds)) => Some(rounds.first),
            _ => None,
        };
        let counted = understood.inferred.contains(&Inferred::Counts);
        for at in &understood.slips {
            // Of a round that was counted, the words that say nothing.
            let narrow = unknown_words(desk, at).filter(|_| counted);
            let at = narrow.as_ref().unwrap_or(at);
            let words = desk.words(at);
            let message = if counted {
                format!("“{words}” is not understood; the round is taken by its counts.")
            } else {
                format!("“{words}” looks mistyped; the sums fit without it.")
            };
            let (kind, mend) = (FindingKind::Unread, None);
            findings.push(Finding { kind, round, message, mend, at: at.clone() });
        }
    }
    findings.extend(misspelt(desk));
    let mut told: Option<usize> = None;
    for (at, line) in places {
        // One finding a line: what else was not read in it hangs on the first.
        if told.replace(line.at.start) == Some(line.at.start) {
            continue;
        }
        let round = match &line.it {
            Line::Rounds(rounds) => Some(rounds.first),
            _ => text::first_number(desk.text, &line.at),
        };
        let known = desk.understood(&line.at);
        let whole = line.at == at
            || known.is_some_and(|k| {
                let before = desk.words(&(k.work.start..at.start.max(k.work.start)));
                !before.contains(char::is_alphanumeric)
            });
        let at = if whole { unknown_words(desk, &at).unwrap_or(at) } else { at };
        findings.push(Finding {
            kind: FindingKind::Unread,
            round,
            message: format!(
                "“{}” looks like part of a round, but cannot be read.",
                desk.words(&at)
            ),
            mend: Some(Mend {
                text: "Write it in the words of its abbreviations.".into(),
                edit: None,
            }),
            at,
        });
    }
}

/// Words that look mistyped in rounds that were read to the last word with those meant.
fn misspelt(desk: &ProofContext<'_>) -> Vec<Finding> {
    let lines = &desk.reading.pattern.lines;
    let found = desk.reading.misspelt.iter().filter_map(|(at, word)| {
        let index = lines.partition_point(|l| l.at.end <= at.start);
        let Line::Rounds(rounds) = &lines.get(index)?.it else { return None };
        Some(Finding {
            kind: FindingKind::Unread,
            round: Some(rounds.first),
            message: format!("“{}” looks mistyped; it was read as “{word}”.", desk.words(at)),
            mend: Some(Mend {
                text: format!("Write “{word}”."),
                edit: Some((at.clone(), word.clone())),
            }),
            at: at.clone(),
        })
    });
    found.collect()
}

/// From the first to the last word of a line that the lexicon does not have, if any.
fn unknown_words(desk: &ProofContext<'_>, line: &Span) -> Option<Span> {
    let known: BTreeSet<String> = defined::terms(desk.lexicon)
        .into_iter()
        .flat_map(Term::forms)
        .flat_map(str::split_whitespace)
        .map(str::to_lowercase)
        .collect();
    let mut unknown = text::words(desk.text, line)
        .filter(|(_, word)| !word.contains(|c: char| c.is_ascii_digit()))
        .filter(|(_, word)| !known.contains(&word.to_lowercase()));
    let first = unknown.next()?.0;
    let end = unknown.last().map_or(first.end, |(last, _)| last.end);
    Some(first.start..end)
}
