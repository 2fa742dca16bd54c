//! The proofreader: what does not add up in a written pattern, where, and the likeliest mend.
//!
//! [`sums`] holds every round against the one below and against the count it states;
//! [`mend`] looks for the smallest edit after which it adds up with both neighbours;
//! [`numbers`] follows the numbers of the rounds, [`defined`] the pattern's own list of
//! abbreviations, [`stuffing`] when a piece is stuffed, [`places`] what it says of its neck,
//! lip and widest place.

mod alike;
mod defined;
mod listing;
mod mend;
mod numbers;
mod places;
mod report;
mod stuffing;
mod sums;
mod text;

use std::cell::Cell;
use std::collections::BTreeSet;

use serde::Serialize;

pub use listing::{RoundRead, listing};
pub use report::LineIndex;

use super::course::{Course, courses};
use super::lexicon::{Lexicon, Term, by_code};
use super::read::{Reading, TermsWish, Understanding, read};
use super::tree::{Line, Placed, Span};

/// What is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FindingKind {
    /// A round takes other stitches than there are.
    Takes,
    /// A round comes to another count than it states.
    Count,
    /// A repeat worked around does not divide the stitches there are.
    Repeat,
    /// A round number is left out.
    Skipped,
    /// A round number is there twice.
    Doubled,
    /// An abbreviation is not in the pattern's own list.
    Undefined,
    /// Stuffing comes when the opening is too small for it.
    StuffLate,
    /// A place is named where the counts do not have it.
    Reference,
    /// Something looks like a round and cannot be read.
    Unread,
}

/// One thing to look at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// What is wrong.
    pub kind: FindingKind,
    /// The round it is in, by its printed number.
    pub round: Option<u32>,
    /// Where, in bytes of the text.
    pub at: Span,
    /// What was found and what was expected, one sentence.
    pub message: String,
    /// The likeliest mend, where there is one.
    pub mend: Option<Mend>,
}

/// How a finding can be mended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mend {
    /// In words, one sentence.
    pub text: String,
    /// Replace these bytes by this; read again before it is offered.
    pub edit: Option<(Span, String)>,
}

/// What is at hand while a pattern is proofread.
struct ProofContext<'a> {
    text: &'a str,
    reading: &'a Reading,
    lexicon: &'a Lexicon,
    courses: &'a [Course<'a>],
    /// How many more mends are looked for.
    mends: Cell<usize>,
}

/// Mends looked for in one text: nobody reads more, and each takes its time.
const MOST_MENDS: usize = 24;

/// Texts longer than this are not read again to see whether a mend leaves them adding up.
const LONGEST_TRIED: usize = 20_000;

impl ProofContext<'_> {
    /// How the line of rounds at `at` was understood.
    fn understood(&self, at: &Span) -> Option<&Understanding> {
        let lines = &self.reading.pattern.lines;
        self.reading.understood.get(&lines.partition_point(|l| l.at.start < at.start))
    }

    /// Whether one more mend may be looked for.
    fn may_mend(&self) -> bool {
        let left = self.mends.get();
        self.mends.set(left.saturating_sub(1));
        left > 0
    }

    fn words(&self, at: &Span) -> &str {
        self.text.get(at.clone()).unwrap_or_default()
    }
}

/// Everything in `text` that does not add up, in the order of the text. `reading` is what its
/// reader made of it. A clean pattern gives none.
pub fn proofread(text: &str, reading: &Reading) -> Vec<Finding> {
    let mut findings = found(text, reading, MOST_MENDS);
    // A mend has to leave the whole pattern nearer to adding up, not one round of it.
    if text.len() <= LONGEST_TRIED && findings.len() <= MOST_MENDS {
        let many = findings.len();
        for finding in &mut findings {
            let edit = finding.mend.as_ref().and_then(|m| m.edit.clone());
            let Some((at, new)) = edit.filter(|(at, _)| text.get(at.clone()).is_some()) else {
                continue;
            };
            let mut changed = text.to_owned();
            changed.replace_range(at, &new);
            let again = read(&changed, TermsWish::Lexicon(reading.lexicon));
            if found(&changed, &again, 0).len() >= many {
                finding.mend = None;
            }
        }
    }
    findings
}

/// As [`proofread`], with at most so many mends looked for.
fn found(text: &str, reading: &Reading, mends: usize) -> Vec<Finding> {
    let Some(lexicon) = by_code(reading.lexicon) else { return Vec::new() };
    let courses = courses(&reading.pattern, &reading.unread);
    let mends = Cell::new(mends);
    let desk = ProofContext { text, reading, lexicon, courses: &courses, mends };
    let mut findings = Vec::new();
    sums::check(&desk, &mut findings);
    numbers::check(&desk, &mut findings);
    defined::check(&desk, &mut findings);
    stuffing::check(&desk, &mut findings);
    places::check(&desk, &mut findings);
    unread(&desk, &mut findings);
    findings.sort_by_key(|f| (f.at.start, f.kind));
    alike::merged(text, findings)
}

/// What the reader could not make out.
fn unread(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
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
    for understood in desk.reading.understood.values() {
        for at in &understood.slips {
            findings.push(Finding {
                kind: FindingKind::Unread,
                round: None,
                message: format!(
                    "“{}” looks mistyped; the sums fit without it.",
                    desk.words(at)
                ),
                mend: None,
                at: at.clone(),
            });
        }
    }
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

/// Rounds, stitches and the widest count of a pattern, as far as they can be known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Summary {
    /// Pieces that have rounds.
    pub pieces: usize,
    /// Rounds in all.
    pub rounds: usize,
    /// Stitches in all.
    pub stitches: u64,
    /// Stitches of the widest round.
    pub widest: u32,
}

/// What a pattern comes to.
pub fn summary(reading: &Reading) -> Summary {
    let courses = courses(&reading.pattern, &reading.unread);
    let mut summary = Summary { pieces: courses.len(), ..Summary::default() };
    for step in courses.iter().flat_map(|c| &c.steps) {
        for (_, count) in step.counted() {
            summary.rounds += 1;
            summary.stitches += u64::from(count.unwrap_or(0));
            summary.widest = summary.widest.max(count.unwrap_or(0));
        }
    }
    summary
}
