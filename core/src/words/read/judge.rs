//! Which reading of every round is meant: the one that takes the stitches there are and comes
//! to the count stated, or to what the next round is worked on.
//!
//! A reading that is certain needs no judge. Of the others the plainest that fits is taken;
//! if none does, the round is not read and keeps the count it states.

use std::collections::BTreeMap;

use super::draft::{Draft, DraftLine};
use super::fits::{Taken, fit, next_draft};
use super::readings::Understood;
use super::settle::is_worked;
use super::token::{Say, Tok, span};
use super::understanding::{Inferred, Sure, Understanding};
use crate::words::course::{FAR_BACK, LineRun, chain_of, founds};
use crate::words::tree::{Line, Op, Placed, Rounds, Span};

/// Longer lines without a heading are prose, in tokens.
const LONG: usize = 24;

/// What the judge makes of a text.
#[derive(Debug, Default)]
pub(super) struct Judged {
    pub(super) lines: Vec<Placed<Line>>,
    pub(super) unread: Vec<Span>,
    pub(super) understood: BTreeMap<usize, Understanding>,
    /// Rounds that were read and whose sums do not come out.
    pub(super) disputed: usize,
}

/// The judge on its way through a text.
pub(super) struct Judge<'t> {
    pub(super) text: &'t str,
    /// Stitches of the round before, where they are known.
    pub(super) below: Option<u32>,
    /// Last number of the piece.
    pub(super) last: Option<u32>,
    /// Whether the last round that was shaped grew.
    pub(super) grows: Option<bool>,
    /// Whether rounds may have been lost since the last one.
    pub(super) lost: bool,
    /// Whether a ring was named since the last round, in a line of its own.
    pub(super) ring: bool,
    /// The rounds of the piece so far, by their first number.
    pub(super) rounds: BTreeMap<u32, usize>,
    pub(super) judged: Judged,
}

/// Chooses for every entry; the lines come in the same order.
pub(super) fn judge(entries: &mut [DraftLine], text: &str) -> Judged {
    let mut judge = Judge {
        text,
        below: None,
        last: None,
        grows: None,
        lost: false,
        ring: false,
        rounds: BTreeMap::new(),
        judged: Judged::default(),
    };
    for i in 0..entries.len() {
        let (before, rest) = entries.split_at_mut(i + 1);
        judge.entry(&mut before[i], rest);
    }
    judge.judged.unread.sort_by_key(|at| (at.start, at.end));
    judge.judged.unread.dedup();
    judge.judged
}

impl Judge<'_> {
    fn entry(&mut self, entry: &mut DraftLine, rest: &mut [DraftLine]) {
        let Some(draft) = &mut entry.draft else {
            self.ring |= entry.ring;
            match &entry.line {
                Line::Piece(_) => self.begin(),
                Line::Do(ops) if self.last.is_none() => {
                    self.below = chain_of(ops).or(self.below);
                }
                Line::Note { unread: true, .. } => self.lost = true,
                _ => {}
            }
            return self.push(entry.line.clone(), entry.at.clone(), &entry.unread);
        };
        let numbered = draft.heading.filter(|h| h.numbered);
        if let Some(heading) = numbered {
            let begins = founds(&draft.worked.work)
                || self.last.is_some_and(|last| last > 1)
                    && next_draft(rest)
                        .and_then(|d| d.heading)
                        .is_some_and(|next| next.first == heading.last.saturating_add(1));
            let back = self.last.is_some_and(|last| {
                heading.first > 1 && heading.first.saturating_add(FAR_BACK) <= last
            });
            if (heading.first == 1 || back) && self.last.is_some() && begins {
                self.begin();
            }
            self.lost |=
                self.last.is_some_and(|last| last.checked_add(1) != Some(heading.first));
        }
        self.work_into_ring(draft);
        if self.begins_anew(draft, rest) {
            self.begin();
        }
        let choice = self.choose(draft, rest);
        let Some(choice) = choice.filter(|c| self.is_round(draft, c, rest)) else {
            // In a piece without numbers a line that states a count may have been a round.
            let places = draft
                .tokens
                .iter()
                .any(|t| t.tok.is_work() || matches!(t.tok, Tok::InEach | Tok::Say(Say::Each)));
            let bare = draft.heading.is_none()
                && draft.tokens.len() <= LONG
                && self.last.is_some()
                && !self.numbered();
            let counts = bare && draft.stated().is_some() && places;
            let shapes = bare
                && draft.stands_alone
                && draft.tokens.iter().any(|t| {
                    matches!(
                        t.tok,
                        Tok::Increase(_)
                            | Tok::Decrease(..)
                            | Tok::Say(Say::Together | Say::Doubled)
                    )
                });
            // “Stuff, then decrease all the way round”
            if shapes && matches!(entry.line, Line::Do(_)) {
                let text = self.text.get(entry.at.clone()).unwrap_or_default().to_owned();
                entry.line = Line::Note { text, unread: false };
            }
            if let (true, Line::Note { unread, .. }) = (counts || shapes, &mut entry.line)
                && !*unread
            {
                *unread = true;
                entry.unread.push(entry.at.clone());
            }
            if let Line::Note { unread: unread @ true, .. } = &mut entry.line {
                if draft.heading.is_none() && !self.has_room(draft, rest) {
                    *unread = false;
                    entry.unread.clear();
                } else {
                    self.lost = true;
                }
            }
            self.ring |= entry.ring;
            if let Line::Do(ops) = &entry.line
                && self.last.is_none()
            {
                self.below = chain_of(ops).or(self.below);
            }
            return self.push(entry.line.clone(), entry.at.clone(), &entry.unread);
        };
        let (first, last) = self.numbers(draft, rest);
        self.take(draft, choice, (first, last), entry.at.clone());
    }

    /// Where a ring was named in a line of its own, the first stitches go into it.
    fn work_into_ring(&mut self, draft: &mut Draft) {
        let begins = draft.heading.is_none_or(|h| !h.numbered || h.first <= 2);
        let mut worked = draft.worked.work.iter_mut().filter(|op| is_worked(&op.it));
        let (Some(only), None) = (worked.next(), worked.next()) else { return };
        let Op::Each { kind, count } = only.it else { return };
        let fits = self.below == Some(count) && self.last.is_some();
        if self.ring && begins && !fits && (3..=24).contains(&count) {
            only.it = Op::Ring { kind, count };
            self.begin();
        }
    }

    /// Whether a line without a number begins another piece: “Stalk, in white: 8 sc in a ring”
    /// before round 2, or in a piece whose rounds have no numbers.
    fn begins_anew(&self, draft: &Draft, rest: &[DraftLine]) -> bool {
        let rings = draft.worked.work.iter().any(|op| matches!(op.it, Op::Ring { .. }));
        if draft.heading.is_some_and(|h| h.numbered)
            || self.last.is_none_or(|last| last < 2)
            || !rings
        {
            return false;
        }
        match next_draft(rest).map(|d| d.heading.filter(|h| h.numbered)) {
            Some(Some(next)) => next.first == 2,
            Some(None) => !self.numbered() && draft.stands_alone,
            None => false,
        }
    }

    /// A new piece.
    fn begin(&mut self) {
        (self.below, self.last, self.lost, self.ring) = (None, None, false, false);
        self.grows = None;
        self.rounds.clear();
    }

    fn push(&mut self, line: Line, at: Span, unread: &[Span]) {
        self.judged.unread.extend_from_slice(unread);
        self.judged.lines.push(Placed::at(line, at));
    }

    fn take(&mut self, draft: &Draft, choice: Taken, (first, last): (u32, u32), at: Span) {
        let Taken { candidate, sure, stated } = choice;
        let Understood { work, unread, mut inferred } = candidate;
        let many = last.saturating_sub(first).saturating_add(1);
        let run = LineRun::of(&work, many, self.below.filter(|_| !founds(&work)));
        let stated_count = stated.as_ref().map(|s| s.it);
        if let (Some(takes), Some(left)) = (run.takes, run.left())
            && takes != left
        {
            self.grows = Some(left > takes);
        }
        self.below = match sure {
            Sure::Unread => stated_count,
            // A slip of the text: the next round tells which count it goes on with.
            Sure::Certain if draft.disputed => draft.goes_on.or(stated_count).or(run.left()),
            _ => run.left().filter(|_| run.comes_out()).or(stated_count),
        };
        self.last = Some(last);
        self.judged.disputed += usize::from(draft.disputed);
        (self.lost, self.ring) = (false, false);
        let index = self.judged.lines.len();
        self.rounds.insert(first, index);
        let by_counts = inferred.contains(&Inferred::Counts);
        let slips = match sure {
            // Counted, and still not understood: that is said.
            Sure::Fits if by_counts && unread.is_empty() => vec![span(&draft.tokens)],
            Sure::Fits if by_counts => unread.iter().take(1).cloned().collect(),
            Sure::Fits => slips(&unread, self.text),
            _ => Vec::new(),
        };
        if sure == Sure::Fits && !unread.is_empty() {
            inferred.push(Inferred::Remark);
        }
        if draft.worked.hints.fancy {
            inferred.push(Inferred::Fancy);
        }
        if draft.heading.is_some_and(|h| h.row) {
            inferred.push(Inferred::Row);
        }
        inferred.sort_unstable();
        inferred.dedup();
        let understanding = Understanding {
            sure,
            inferred,
            numbered: draft.heading.is_some_and(|h| h.numbered),
            open: draft.open || draft.layers.open || draft.heading.is_some_and(|h| h.open),
            told: draft.layers.told.clone(),
            work: span(&draft.tokens),
            stated_each: draft.worked.stated_each.clone(),
            slips,
        };
        self.judged.understood.insert(index, understanding);
        let unread = if sure == Sure::Unread {
            if unread.is_empty() { vec![span(&draft.tokens)] } else { unread }
        } else {
            Vec::new()
        };
        let unread = if sure == Sure::Unread && span(&draft.tokens).is_empty() {
            vec![at.clone()]
        } else {
            unread
        };
        self.push(Line::Rounds(Rounds { first, last, work, stated }), at, &unread);
    }

    /// The numbers of a round: as printed, or the next ones.
    fn numbers(&self, draft: &Draft, rest: &[DraftLine]) -> (u32, u32) {
        let several = draft.heading.filter(|h| !h.numbered).map_or(1, |h| h.last);
        let told = draft.layers.told.as_ref().map_or(several, |t| t.it.clamp(1, 500));
        let next_number = next_draft(rest).and_then(|d| d.heading).filter(|h| h.numbered);
        if let Some(heading) = draft.heading.filter(|h| h.numbered) {
            let (first, last) = (heading.first, heading.last);
            let until = draft.layers.until.filter(|&u| u > last);
            // “5. work 3 rounds even”, and the next is the 8th.
            let runs = told > 1
                && first == last
                && next_number
                    .is_none_or(|h| h.first == first.saturating_add(told) || h.first <= first);
            let last = if runs { first.saturating_add(told - 1) } else { last };
            return (first, until.unwrap_or(last));
        }
        match (self.last, next_number) {
            (Some(last), _) => {
                let first = last.saturating_add(1);
                (first, first.saturating_add(told - 1))
            }
            // What comes before round 1 is round 0.
            (None, Some(h)) if h.first == 1 && told == 1 => (0, 0),
            (None, _) => (1, told),
        }
    }

    /// Whether a line is a round. One with a number is; another where it surely adds up.
    fn is_round(&self, draft: &Draft, choice: &Taken, rest: &[DraftLine]) -> bool {
        let Some(Draft { heading: None, .. }) = Some(draft) else { return true };
        if choice.sure == Sure::Unread {
            return false;
        }
        // Between two rounds that follow on by their numbers there is no room for another.
        let next = next_draft(rest).and_then(|d| d.heading).filter(|h| h.numbered);
        if let (Some(last), Some(next)) = (self.last, next)
            && next.first == last.saturating_add(1)
        {
            return false;
        }
        let work = &choice.candidate.work;
        let founds = founds(work);
        let fit =
            fit(work, draft.many(), self.below.filter(|_| !founds), choice.stated.as_ref());
        let stated = fit.agrees == Some(true);
        if founds && self.last.is_none() {
            let enough = fit.left.is_some_and(|left| left >= 3);
            let follows = next.is_none_or(|n| n.first <= 2);
            return enough && (stated || fit.agrees.is_none()) && follows;
        }
        if self.last.is_none() || founds {
            return false;
        }
        let shaped = work.iter().any(|op| op.it.works_stitches());
        let even = fit.left.is_some() && fit.left == self.below;
        let even_told = draft.layers.told.is_some() && (choice.sure == Sure::Certain || even);
        let unnumbered_piece = !self.numbered();
        fit.comes_out
            && shaped
            && (stated
                || even_told
                || draft.stands_alone && unnumbered_piece && self.below.is_some() && fit.agrees.is_none())
            || choice.sure == Sure::Certain && stated && draft.worked.unread.is_empty()
            || draft.stands_alone && stated && choice.sure == Sure::Certain
            // In a piece without numbers, a line that is all work and states its count is a
            // round, though its sums be wrong.
            || draft.stands_alone
                && unnumbered_piece
                && choice.sure == Sure::Certain
                && choice.stated.is_some()
                && self.below.is_some()
    }

    /// Whether a line without a heading may be a round: none where the numbers around it
    /// follow on, and none before round 1 or behind the last that is numbered.
    fn has_room(&self, draft: &Draft, rest: &[DraftLine]) -> bool {
        let next = next_draft(rest).map(|d| d.heading.filter(|h| h.numbered));
        // “Rnds 9-2: …” begins as a round does.
        let begins = matches!(
            draft.tokens.get(..2).map(|pair| (pair[0].tok, pair[1].tok)),
            Some((Tok::Round | Tok::Say(Say::Row), Tok::Number(_)))
        );
        if begins {
            return true;
        }
        match (self.last, next) {
            (Some(last), Some(Some(next))) => {
                !self.numbered() || next.first > last.saturating_add(1)
            }
            (Some(_), None) => !self.numbered() || draft.layers.told.is_some(),
            (None, Some(Some(next))) => next.first > 1,
            (None, None) => false,
            _ => true,
        }
    }

    /// Whether the last round of the piece had a number.
    pub(super) fn numbered(&self) -> bool {
        let last = self.rounds.values().next_back();
        last.and_then(|i| self.judged.understood.get(i)).is_some_and(|u| u.numbered)
    }
}

/// Short words with a figure that nobody would write as a remark: “5c”.
fn slips(unread: &[Span], text: &str) -> Vec<Span> {
    let slip = |at: &&Span| {
        let words = text.get((*at).clone()).unwrap_or_default();
        let digits = words.chars().filter(char::is_ascii_digit).count();
        words.len() <= 6
            && digits > 0
            && !words.contains(' ')
            && words.chars().any(char::is_alphabetic)
    };
    unread.iter().filter(slip).cloned().collect()
}
