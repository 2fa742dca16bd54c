//! The proofreader: what does not add up in a written pattern, where, and the likeliest mend.
//!
//! [`sums`] holds every round against the one below and against the count it states;
//! [`mend`] looks for the smallest edit after which it adds up with both neighbours;
//! [`numbers`] follows the numbers of the rounds, [`defined`] the pattern's own list of
//! abbreviations, [`stuffing`] when a piece is stuffed, [`places`] what it says of its neck,
//! lip and widest place.

mod alike;
mod context;
mod defined;
mod finding;
mod listing;
mod mend;
mod numbers;
mod places;
mod report;
mod stuffing;
mod sums;
mod text;
mod unread;

use std::cell::Cell;

pub use finding::{Finding, FindingKind, Mend};
pub use listing::{RoundRead, listing, work_words};
pub use report::LineIndex;

use super::course::courses;
use super::lexicon::by_code;
use super::read::{Reading, TermsWish, read_with};
use context::ProofContext;

/// Mends looked for in one text: nobody reads more, and each takes its time.
const MOST_MENDS: usize = 24;

/// Texts longer than this are not read again to see whether a mend leaves them adding up.
const LONGEST_TRIED: usize = 20_000;

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
            let wish = TermsWish::Lexicon(reading.lexicon);
            let again = read_with(&changed, wish, &reading.said);
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
    unread::check(&desk, &mut findings);
    findings.sort_by_key(|f| (f.at.start, f.kind));
    alike::merged(text, findings)
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
