//! The numbers of the rounds: none left out, none there twice.

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use super::text::{numbers, words};
use crate::words::course::{Course, CourseStep};
use crate::words::tree::{Line, Span};

/// Edits of all numbers to the end of a piece that are offered for it: nobody takes more, and
/// a text of one wrong number without end would ask for its own length squared.
const MOST_EDITS: usize = 24;

pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    for course in desk.courses {
        // The number the round before should have had, where it had another.
        let mut meant: Option<u32> = None;
        // Each such edit is as long as what follows.
        let mut edits = MOST_EDITS;
        for (i, pair) in course.steps.windows(2).enumerate() {
            let (before, step) = (&pair[0], &pair[1]);
            let numbered = |at| desk.understood(at).is_none_or(|k| k.numbered && !k.open);
            if !(numbered(before.at) && numbered(step.at)) {
                meant = None;
                continue;
            }
            let printed = before.rounds.last.saturating_add(1);
            let expected = meant.map_or(printed, |last| last.saturating_add(1));
            let found = step.rounds.first;
            // A line that could not be read may have been the round that is missing.
            let gap = &course.lines[before.line + 1..step.line];
            // Rounds told of in words between the two: “about 5 rounds of that”.
            let told = desk.understood(before.at).and_then(|k| k.told.as_ref()).map(|t| t.it);
            if told.is_some_and(|told| printed.checked_add(told) == Some(found)) {
                meant = None;
                continue;
            }
            let unread = gap.iter().any(|l| matches!(l.it, Line::Note { unread: true, .. }));
            // Nothing is missing that was not understood, or that stands there in words.
            let lost = before.unread || told_of(desk, before, step, expected);
            if found == printed || found == expected || ((unread || lost) && found > expected) {
                meant = None;
                continue;
            }
            meant = Some(expected.saturating_add(step.many() - 1));
            let (kind, message) = if found > expected {
                let missing = match found - expected {
                    1 => format!("no Rnd {expected}"),
                    _ => format!("no Rnds {expected}–{}", found - 1),
                };
                let message = format!(
                    "Rnd {found} follows Rnd {}: there is {missing}.",
                    before.rounds.last
                );
                (FindingKind::Skipped, message)
            } else {
                (
                    FindingKind::Doubled,
                    format!("Rnd {found} is there already: this is Rnd {expected}."),
                )
            };
            let at = number_of(desk, step, found);
            findings.push(Finding {
                kind,
                round: Some(found),
                message,
                mend: renumbered(desk, course, i + 1, expected, &mut edits),
                at,
            });
        }
    }
}

/// Whether the words between two rounds name the round that is missing: “in the 3rd round …”
/// within the line of the one before.
fn told_of(
    desk: &ProofContext<'_>,
    before: &CourseStep<'_>,
    step: &CourseStep<'_>,
    missing: u32,
) -> bool {
    let from = before.rounds.work.first().map_or(before.at.start, |op| op.at.start);
    let between = from..step.at.start.max(from);
    let forms: Vec<String> = desk.lexicon.round.forms().map(str::to_lowercase).collect();
    let all: Vec<&str> = words(desk.text, &between).map(|(_, word)| word).collect();
    let round = |word: Option<&&str>| word.is_some_and(|w| forms.contains(&w.to_lowercase()));
    all.iter().enumerate().any(|(i, word)| {
        let digits = word.trim_end_matches(|c: char| !c.is_ascii_digit());
        let named = digits.parse() == Ok(missing);
        named && (round(all.get(i + 1)) || i.checked_sub(1).is_some_and(|b| round(all.get(b))))
    })
}

/// Where the heading of a round has the number `n`: digits, or the word after “round”.
fn number_of(desk: &ProofContext<'_>, step: &CourseStep<'_>, n: u32) -> Span {
    let heading = heading(step);
    let digits = numbers(desk.text, &heading).find(|&(_, value)| value == n);
    let word = || {
        let mut words = words(desk.text, &heading);
        words.nth(1).map(|(at, _)| at)
    };
    digits.map(|(at, _)| at).or_else(word).unwrap_or(heading)
}

fn heading(step: &CourseStep<'_>) -> Span {
    let end = step.rounds.work.first().map_or(step.at.end, |op| op.at.start);
    step.at.start..end.max(step.at.start)
}

/// The rounds from `index` on with the numbers they should have, if that makes them follow on
/// to the end of the piece; else as words alone, and so once `edits` are used up.
fn renumbered(
    desk: &ProofContext<'_>,
    course: &Course<'_>,
    index: usize,
    expected: u32,
    edits: &mut usize,
) -> Option<Mend> {
    let step = &course.steps[index];
    let rounds = step.rounds;
    if rounds.first > expected && step.run.below.is_none() && !step.founds {
        return Some(Mend {
            text: format!("Write Rnd {expected}; it seems to be missing."),
            edit: None,
        });
    }
    let follows = course.steps.get(index + 1).map(|next| next.rounds.first);
    let range = rounds.last > rounds.first && rounds.last >= expected;
    let on_from_last = follows.is_none_or(|next| next == rounds.last.saturating_add(1));
    let on_from_new = follows == Some(expected.saturating_add(1));
    if range && on_from_last || !range && (on_from_new || follows.is_none()) {
        let at = number_of(desk, step, rounds.first);
        let digits = desk.words(&at).bytes().all(|b| b.is_ascii_digit());
        return Some(Mend {
            text: format!("Number it {expected}."),
            edit: digits.then(|| (at, expected.to_string())),
        });
    }
    let text = format!("Number it {expected}, and the rounds after it on from there.");
    let may = *edits > 0;
    *edits = edits.saturating_sub(1);
    let edit = may.then(|| all_renumbered(desk, course, index, expected)).flatten();
    Some(Mend { text, edit })
}

/// One edit that moves the numbers of all rounds from `index` on by as much as the first.
fn all_renumbered(
    desk: &ProofContext<'_>,
    course: &Course<'_>,
    index: usize,
    expected: u32,
) -> Option<(Span, String)> {
    let shift = i64::from(expected) - i64::from(course.steps[index].rounds.first);
    let mut edits: Vec<(Span, i64)> = Vec::new();
    for step in &course.steps[index..] {
        let rounds = step.rounds;
        let mut found = numbers(desk.text, &heading(step));
        let (at, _) = found.find(|&(_, v)| v == rounds.first)?;
        edits.push((at, i64::from(rounds.first) + shift));
        if rounds.last > rounds.first {
            let (at, _) = found.find(|&(_, v)| v == rounds.last)?;
            edits.push((at, i64::from(rounds.last) + shift));
        }
    }
    let whole = edits.first()?.0.start..edits.last()?.0.end;
    let (mut text, mut from) = (String::new(), whole.start);
    for (at, number) in edits {
        text.push_str(desk.text.get(from..at.start)?);
        text.push_str(&number.to_string());
        from = at.end;
    }
    Some((whole, text))
}
