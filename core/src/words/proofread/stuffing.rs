//! When a piece is stuffed: while a hand still gets in.

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use crate::words::course::Course;
use crate::words::tree::{Line, Op, Placed, Span};

/// Stitches of the smallest opening that is still comfortable to stuff through. Common
/// practice, no source.
const SMALLEST_OPENING: u32 = 9;

pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    for course in desk.courses {
        if let Some(late) = late(desk, course) {
            findings.push(late);
        }
    }
}

/// The first stuffing of a piece, if it comes too late.
fn late(desk: &ProofContext<'_>, course: &Course<'_>) -> Option<Finding> {
    let (mut opening, mut widest, mut closed) = (None, 0, false);
    let mut steps = course.steps.iter().peekable();
    for (i, line) in course.lines.iter().enumerate() {
        let (ops, step) = match &line.it {
            Line::Do(ops) => (ops, None),
            Line::Rounds(rounds) => (&rounds.work, steps.next_if(|s| s.line == i)),
            _ => continue,
        };
        let after = step.map(|s| s.count);
        if let Some(index) = ops.iter().position(|op| op.it == Op::Stuff) {
            let worked = ops[..index].iter().any(|op| op.it.works_stitches());
            let opening = after.filter(|_| worked).unwrap_or(opening);
            // Fastening off an opening that is wide enough does not close it.
            closed |= ops[..index].iter().any(|op| op.it == Op::FastenOff);
            let narrow = opening? < SMALLEST_OPENING && opening?.saturating_mul(3) <= widest;
            if !narrow {
                return None;
            }
            return Some(finding(desk, course, &ops[index], (opening?, closed)));
        }
        closed |= ops.iter().any(|op| op.it == Op::FastenOff);
        if let Some(count) = after {
            opening = count;
            widest = widest.max(count.unwrap_or(0));
        }
    }
    None
}

fn finding(
    desk: &ProofContext<'_>,
    course: &Course<'_>,
    op: &Placed<Op>,
    (opening, closed): (u32, bool),
) -> Finding {
    let state = if closed { "when the piece is closed" } else { "when the opening is down" };
    let message = format!("It is stuffed only {state} to {opening} stitches.");
    // The last round that is still wide enough before the piece narrows for good.
    let wide =
        course.steps.iter().rev().find(|s| {
            s.at.start < op.at.start && s.count.is_some_and(|n| n >= SMALLEST_OPENING)
        });
    let mend = wide.map(|step| Mend {
        text: format!(
            "Stuff after {}, while it has {} stitches.",
            step.heading(),
            step.count.unwrap_or(0)
        ),
        edit: None,
    });
    Finding { kind: FindingKind::StuffLate, round: None, at: word(desk, &op.at), message, mend }
}

/// The word of stuffing itself, where its op spans more.
fn word(desk: &ProofContext<'_>, at: &Span) -> Span {
    let words = super::text::words(desk.text, at);
    let mut longest: Option<Span> = None;
    let stuff: Vec<String> = desk.lexicon.stuff.forms().map(str::to_lowercase).collect();
    for (place, word) in words {
        let word = word.to_lowercase();
        if stuff.contains(&word) {
            return place;
        }
        if longest.is_none() {
            longest = Some(place);
        }
    }
    longest.unwrap_or_else(|| at.clone())
}
