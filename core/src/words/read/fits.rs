//! How a reading of a round fits what stands before and after it.

use super::draft::{Draft, DraftLine};
use super::gist::gist;
use super::readings::{Understood, others};
use super::rewordings::trailing;
use super::round::work;
use super::settle::is_worked;
use super::understanding::Sure;
use crate::words::course::{LineRun, founds};
use crate::words::tree::{Line, Op, Placed};

/// Lines looked ahead for the next round.
const AHEAD: usize = 12;

/// A reading that was taken.
pub(super) struct Taken {
    pub(super) candidate: Understood,
    pub(super) sure: Sure,
    pub(super) stated: Option<Placed<u32>>,
}

/// How a reading fits.
#[derive(Debug, Clone, Copy)]
pub(super) struct Agreement {
    pub(super) comes_out: bool,
    /// Whether it comes to the stated count, where one is stated.
    pub(super) agrees: Option<bool>,
    pub(super) left: Option<u32>,
    /// Stitches it takes, where that can be told.
    pub(super) taken: Option<u32>,
}

/// How `work` fits on `below` and to the stated count.
pub(super) fn fit(
    work: &[Placed<Op>],
    many: u32,
    below: Option<u32>,
    stated: Option<&Placed<u32>>,
) -> Agreement {
    let run = LineRun::of(work, many, below);
    let left = run.left();
    Agreement {
        comes_out: run.comes_out(),
        agrees: stated.map(|stated| left == Some(stated.it)),
        left,
        taken: run.takes,
    }
}

/// The next line that is a round, if the piece goes on so far.
pub(super) fn next_draft(rest: &[DraftLine]) -> Option<&Draft> {
    for entry in rest.iter().take(AHEAD) {
        match (&entry.draft, &entry.line) {
            (_, Line::Piece(_)) => return None,
            (Some(draft), _) if draft.heading.is_some() || draft.stands_alone => {
                return Some(draft);
            }
            (_, Line::Note { unread: true, .. }) => return None,
            _ => {}
        }
    }
    None
}

/// Whether the next round can be worked on `count` stitches; `None` where it tells nothing.
pub(super) fn next_fits(rest: &mut [DraftLine], count: u32, text: &str) -> Option<bool> {
    let at = rest.iter().take(AHEAD).position(|entry| {
        matches!(entry.line, Line::Piece(_) | Line::Note { unread: true, .. })
            || entry.draft.as_ref().is_some_and(|d| d.heading.is_some() || d.stands_alone)
    })?;
    if matches!(rest[at].line, Line::Piece(_)) {
        return None;
    }
    let draft = rest[at].draft.as_mut()?;
    if founds(&draft.worked.work) {
        return None;
    }
    let stated = draft.stated();
    let many = draft.many();
    let suits = |work: &[Placed<Op>], count| {
        let fit = fit(work, many, Some(count), stated.as_ref());
        fit.comes_out && fit.agrees != Some(false)
    };
    let worked = draft.worked.work.iter().any(|op| is_worked(&op.it));
    let strict = draft.worked.unread.is_empty() && worked;
    let of = |work: &[Placed<Op>]| {
        let now = suits(work, count);
        // What suits any number of stitches tells nothing.
        let any = now && suits(work, count.saturating_add(1));
        (now, any)
    };
    let (now, any) = of(&draft.worked.work);
    if worked && now {
        return (!any).then_some(true);
    }
    // Looked at before the others are made: what was stated bears it out.
    let gists = match &stated {
        Some(stated) if !strict => gist(draft, Some(stated), Some(count), false, None),
        _ => Vec::new(),
    };
    let tried = draft.others(text);
    if tried.iter().any(|c| of(&c.work) == (true, false)) {
        return Some(true);
    }
    if gists.iter().any(|g| suits(&g.work, count)) {
        return Some(true);
    }
    let uneven = tried.iter().any(|c| of(&c.work).0);
    // “… 18 sts” at its end may be its count.
    if stated.is_none()
        && let Some((stated, tokens)) = trailing(&draft.tokens)
    {
        let worked = work(&tokens, text, draft.kind);
        let suits = |work: &[Placed<Op>]| {
            let fit = fit(work, many, Some(count), Some(&stated));
            fit.comes_out && fit.agrees == Some(true)
        };
        let mut others = others(&tokens, &worked, text, draft.kind).into_iter();
        let fits = suits(&worked.work) || others.any(|c| suits(&c.work));
        return fits.then_some(true);
    }
    // It takes just those, and states another count than it comes to: a slip of its own.
    let takes = |count| fit(&draft.worked.work, many, Some(count), None).comes_out;
    let own_slip = takes(count) && !takes(count.saturating_add(1));
    (strict && !uneven && !own_slip).then_some(false)
}
