//! Every round against the one below and against the count it states.

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use super::mend::{Aim, Neighbours};
use super::text::numbers;
use crate::words::TallyError;
use crate::words::course::{CourseStep, LineRun, from_stated, suits};
use crate::words::tree::{Rounds, Span};

pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    for course in desk.courses {
        for step in &course.steps {
            findings.extend(told(desk, step));
        }
        // Whether the round before does not take what there is: nobody knows then what it
        // leaves, and the next is not held against it.
        let mut unsettled = false;
        for (i, step) in course.steps.iter().enumerate() {
            if step.unread {
                unsettled = false;
                continue;
            }
            let next =
                course.steps.get(i + 1).filter(|next| !next.unread).map(|next| next.rounds);
            let found = of_step(desk, step, next).filter(|_| !on_unread(&course.steps, i));
            let takes = found
                .as_ref()
                .is_some_and(|f| matches!(f.kind, FindingKind::Takes | FindingKind::Repeat));
            findings.extend(found.filter(|_| !(unsettled && takes)));
            unsettled = takes && !unsettled && step.stated().is_none();
        }
    }
}

/// Whether a round stands behind one that was not read, and comes to what it states on other
/// stitches than that one states: then nobody knows which of the two is at fault.
fn on_unread(steps: &[CourseStep<'_>], i: usize) -> bool {
    let step = &steps[i];
    let before = i.checked_sub(1).and_then(|b| steps.get(b));
    let stated = step.stated().filter(|_| before.is_some_and(|b| b.unread));
    stated.is_some_and(|stated| {
        let alone = LineRun::of(&step.rounds.work, step.many(), None);
        alone.left() == Some(stated)
            || from_stated(&step.rounds.work, step.many(), stated).is_some()
    })
}

/// How many rounds a line says that it is, against its numbers.
fn told(desk: &ProofContext<'_>, step: &CourseStep<'_>) -> Option<Finding> {
    let known = desk.understood(step.at).filter(|k| k.numbered && step.many() > 1)?;
    // “one plain round” in a range names no number of rounds.
    let told = known.told.as_ref().filter(|told| told.it > 1 && told.it != step.many())?;
    let (first, last) = (step.rounds.first, step.rounds.last);
    Some(Finding {
        kind: FindingKind::Count,
        round: Some(first),
        at: told.at.clone(),
        message: format!("Rnds {first}–{last} are {} rounds, not {}.", step.many(), told.it),
        mend: None,
    })
}

fn of_step(
    desk: &ProofContext<'_>,
    step: &CourseStep<'_>,
    next: Option<&Rounds>,
) -> Option<Finding> {
    let bench = Neighbours::new(desk, step, next);
    let open = desk.understood(step.at).is_some_and(|k| k.open);
    if open {
        return None;
    }
    let finding = |kind, at, message, mend| {
        let round = Some(step.rounds.first);
        Some(Finding { kind, round, at, message, mend })
    };
    let name = step.heading();
    // One round takes; several take.
    let s = if step.many() > 1 { "" } else { "s" };
    let sum = match &step.run.sum {
        Ok(sum) => sum,
        Err(TallyError::Unknown { .. }) => return None,
        Err(TallyError::Endless { at }) => {
            let message = format!("{name} repeat{s} what takes no stitches, which never ends.");
            return finding(
                FindingKind::Repeat,
                at.clone(),
                message,
                bench.likeliest(Aim::Takes),
            );
        }
        Err(TallyError::Uneven { at, each, available, over }) => {
            let message = format!(
                "{name} repeat{s} over {each} stitches, which leaves {over} of the {available} \
                 over."
            );
            return finding(
                FindingKind::Repeat,
                at.clone(),
                message,
                bench.likeliest(Aim::Takes),
            );
        }
    };
    if let Some(below) = step.run.below.filter(|&below| below != sum.taken) {
        let taken = sum.taken;
        let message = if taken < below {
            format!("{name} take{s} {taken} of the {below} stitches there are.")
        } else {
            format!("{name} take{s} {taken} stitches, but there are only {below}.")
        };
        let at = work_of(step);
        return finding(FindingKind::Takes, at, message, bench.likeliest(Aim::Takes));
    }
    let stated = step.rounds.stated.as_ref().filter(|stated| stated.it != sum.left)?;
    let at = digits(desk, &stated.at, stated.it);
    let stitches = if sum.left == 1 { "stitch" } else { "stitches" };
    let message = format!("{name} come{s} to {} {stitches}, not to {}.", sum.left, stated.it);
    // Where the next round is worked on what is stated, the work is wrong.
    let work_is_wrong = next.is_some_and(|next| suits(next, stated.it) > suits(next, sum.left));
    let mended = work_is_wrong.then(|| bench.likeliest(Aim::Stated)).flatten();
    // A count out of all measure is no mend.
    let likely = sum.left / 3 <= stated.it && stated.it / 3 <= sum.left;
    // Nor is one that the next round cannot be worked on.
    let likely = likely && !work_is_wrong;
    let mend = mended.or_else(|| likely.then(|| restated(desk, &at, sum.left, stated.it)));
    finding(FindingKind::Count, at, message, mend)
}

fn restated(desk: &ProofContext<'_>, at: &Span, count: u32, stated: u32) -> Mend {
    let printed = desk.words(at).bytes().all(|b| b.is_ascii_digit());
    Mend {
        text: format!("State {count} stitches, not {stated}."),
        edit: printed.then(|| (at.clone(), count.to_string())),
    }
}

/// All that is worked in a round, the heading and the count left out.
fn work_of(step: &CourseStep<'_>) -> Span {
    match (step.rounds.work.first(), step.rounds.work.last()) {
        (Some(first), Some(last)) => first.at.start..last.at.end,
        _ => step.at.clone(),
    }
}

/// The number of a stated count: its digits, or its first word.
fn digits(desk: &ProofContext<'_>, at: &Span, value: u32) -> Span {
    let found = numbers(desk.text, at).find(|&(_, v)| v == value);
    let word = || {
        let length = desk.words(at).split_whitespace().next().map_or(at.len(), str::len);
        at.start..at.start + length
    };
    found.map_or_else(word, |(at, _)| at)
}
