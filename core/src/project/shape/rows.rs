//! The stitches of every round of a written piece, in order: as read, or as a person tells
//! them. None is ever left out.

use crate::error::{Error, Result};
use crate::piece::MOST_ROUNDS;
use crate::words::course::{Course, CourseStep, courses};
use crate::words::tree::{Line, Pattern, Placed, Rounds, Span};

/// How many stitches a round has, told by a person where the text does not say it or was not
/// read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ToldCount {
    /// Piece of the pattern, from 1, in the order of the text.
    pub part: usize,
    /// Number of the round, as the text counts it.
    pub round: u32,
    /// Stitches it leaves.
    pub count: u32,
}

/// Rounds of a piece whose stitches the text does not tell, or that are left out in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MissingCounts {
    /// Piece of the pattern, from 1, in the order of the text.
    pub part: usize,
    /// Its name, where the text gives one.
    pub name: Option<String>,
    /// First such round, as the text counts it.
    pub first: u32,
    /// Last of them, worked alike or left out together.
    pub last: u32,
}

/// The rounds of `pattern` that a person has to tell the stitches of before all its pieces
/// can be made, in the order of the text; `unread` are the places its reader could not make
/// out. Empty where nothing is missing.
pub fn missing_counts(pattern: &Pattern, unread: &[Span]) -> Vec<MissingCounts> {
    let mut found = Vec::new();
    for (part, course) in (1..).zip(courses(pattern, unread)) {
        let name = course.name.map(str::to_owned);
        let mut missing = |first, last| {
            found.push(MissingCounts { part, name: name.clone(), first, last });
        };
        let mut expected = None;
        for step in &course.steps {
            let Rounds { first, last, .. } = *step.rounds;
            if let Some(expected) = expected.filter(|&n| first > n) {
                missing(expected, first - 1);
            }
            if step.count.is_none() {
                missing(first, last);
            }
            expected = last.checked_add(1);
        }
    }
    found
}

/// The rounds of a piece, those left out by the text among them.
pub(super) struct RoundCounts {
    /// Stitches of each.
    pub(super) counts: Vec<u32>,
    /// Where the rounds of each step begin among them.
    pub(super) starts: Vec<usize>,
    /// Stitches of the joined chain it begins on, if it does.
    pub(super) open: Option<u32>,
}

const MEND: &str = "write what is missing, or tell the count of the round";

/// The stitches of every round, in order.
pub(super) fn rows(course: &Course<'_>, told: &[ToldCount]) -> Result<RoundCounts> {
    let count_of = |round: u32| told.iter().rev().find(|t| t.round == round).map(|t| t.count);
    // Only a chain that is joined leaves an opening; one worked along is an oval's, or a ring.
    let founded = course.steps.first().is_some_and(|s| s.founds);
    let open = course.chain.filter(|_| !founded);
    let mut rows = RoundCounts { counts: Vec::new(), starts: Vec::new(), open };
    let mut before: Option<&CourseStep<'_>> = None;
    for step in &course.steps {
        if let Some(before) = before {
            let expected = before.rounds.last.saturating_add(1);
            let gap = expected..step.rounds.first;
            let lost = gap.clone().take(MOST_ROUNDS + 1).any(|n| count_of(n).is_none());
            if lost {
                let missing = match gap.len() {
                    1 => format!("Rnd {expected} is missing"),
                    _ => format!("Rnds {expected}–{} are missing", step.rounds.first - 1),
                };
                return Err(Error::new(step.heading(), missing, MEND));
            }
            let between = &course.lines[before.line + 1..step.line];
            let unread = |l: &Placed<Line>| matches!(l.it, Line::Note { unread: true, .. });
            if gap.is_empty() && between.iter().any(unread) {
                return Err(Error::new(
                    step.heading(),
                    "the line above it looks like a round and cannot be read",
                    "state the count at its end, or write it in the words of the abbreviations",
                ));
            }
            rows.counts.extend(gap.filter_map(count_of));
        }
        rows.starts.push(rows.counts.len());
        for (number, count) in step.counted() {
            let Some(count) = count_of(number).or(count).or(step.count) else {
                let what = format!("the stitches of Rnd {number} cannot be counted");
                return Err(Error::new(step.heading(), what, MEND));
            };
            rows.counts.push(count);
        }
        if rows.counts.len() > MOST_ROUNDS {
            return Err(Error::new(
                step.heading(),
                format!("the piece has more than {MOST_ROUNDS} rounds"),
                "split it into pieces",
            ));
        }
        before = Some(step);
    }
    workable(&rows)?;
    Ok(rows)
}

/// Whether each round can be worked on the one below.
fn workable(rows: &RoundCounts) -> Result<()> {
    let mut below = rows.open;
    for (round, &count) in (1..).zip(&rows.counts) {
        let too_many = |b: u32| count > b.saturating_mul(2) || b > count.saturating_mul(2);
        if below.is_some_and(too_many) || count == 0 || count > MOST_STITCHES {
            return Err(Error::new(
                format!("Rnd {round}"),
                format!("{count} stitches on {} cannot be planned", below.unwrap_or(0)),
                "a round can at most double or halve the one below; check its count",
            ));
        }
        below = Some(count);
    }
    if rows.counts.len() < 2 {
        return Err(Error::new("pattern", "it has fewer than two rounds", "add its rounds"));
    }
    Ok(())
}

/// Stitches of a round that can be planned, at most.
const MOST_STITCHES: u32 = 20_000;
