//! Which reading of every round is meant: the one that takes the stitches there are and comes
//! to the count stated, or to what the next round is worked on.
//!
//! A reading that is certain needs no judge. Of the others the plainest that fits is taken;
//! if none does, the round is not read and keeps the count it states.

use std::collections::BTreeMap;

use super::draft::{Draft, Entry};
use super::readings::Candidate;
use super::settle::is_worked;
use super::tokens::{Tok, Token, span};
use super::understanding::{Inferred, Sure, Understanding};
use super::words::Say;
use crate::words::course::{Run, chain_of, founds};
use crate::words::tree::{Line, Op, Placed, Rounds, Span, StitchKind, Times};

/// Most operations of a round that another may stand for, so that the tree stays linear in
/// the text.
const MOST_REPEATED: usize = 64;

/// Lines looked ahead for the next round.
const AHEAD: usize = 12;

/// What the judge makes of a text.
#[derive(Debug, Default)]
pub(super) struct Judged {
    pub(super) lines: Vec<Placed<Line>>,
    pub(super) unread: Vec<Span>,
    pub(super) understood: BTreeMap<usize, Understanding>,
}

/// A reading that was taken.
struct Choice {
    candidate: Candidate,
    sure: Sure,
    stated: Option<Placed<u32>>,
}

/// How a reading fits.
#[derive(Debug, Clone, Copy)]
struct Fit {
    comes_out: bool,
    /// Whether it comes to the stated count, where one is stated.
    agrees: Option<bool>,
    left: Option<u32>,
}

/// The judge on its way through a text.
struct Judge<'t> {
    text: &'t str,
    /// Stitches of the round before, where they are known.
    below: Option<u32>,
    /// Last number of the piece.
    last: Option<u32>,
    /// Whether rounds may have been lost since the last one.
    lost: bool,
    /// Whether a ring was named since the last round, in a line of its own.
    ring: bool,
    /// The rounds of the piece so far, by their first number.
    rounds: BTreeMap<u32, usize>,
    judged: Judged,
}

/// Chooses for every entry; the lines come in the same order.
pub(super) fn judge(entries: &mut [Entry], text: &str) -> Judged {
    let mut judge = Judge {
        text,
        below: None,
        last: None,
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
    fn entry(&mut self, entry: &mut Entry, rest: &mut [Entry]) {
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
            if heading.first == 1 && self.last.is_some() && begins {
                self.begin();
            }
            self.lost |=
                self.last.is_some_and(|last| last.checked_add(1) != Some(heading.first));
        }
        self.work_into_ring(draft);
        let choice = self.choose(draft, rest);
        let Some(choice) = choice.filter(|c| self.is_round(draft, c, rest)) else {
            if matches!(entry.line, Line::Note { unread: true, .. }) {
                self.lost = true;
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

    /// A new piece.
    fn begin(&mut self) {
        (self.below, self.last, self.lost, self.ring) = (None, None, false, false);
        self.rounds.clear();
    }

    fn push(&mut self, line: Line, at: Span, unread: &[Span]) {
        self.judged.unread.extend_from_slice(unread);
        self.judged.lines.push(Placed::at(line, at));
    }

    fn take(&mut self, draft: &Draft, choice: Choice, (first, last): (u32, u32), at: Span) {
        let Choice { candidate, sure, stated } = choice;
        let Candidate { work, unread, mut inferred } = candidate;
        let many = last.saturating_sub(first).saturating_add(1);
        let run = Run::of(&work, many, self.below.filter(|_| !founds(&work)));
        let stated_count = stated.as_ref().map(|s| s.it);
        self.below = match sure {
            Sure::Unread => stated_count,
            // A slip of the text: the next round tells which count it goes on with.
            Sure::Certain if draft.disputed => None.or(stated_count).or(run.left()),
            _ => run.left().filter(|_| run.comes_out()).or(stated_count),
        };
        self.last = Some(last);
        (self.lost, self.ring) = (false, false);
        let index = self.judged.lines.len();
        self.rounds.insert(first, index);
        let slips = match sure {
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
            open: draft.open || draft.heading.is_some_and(|h| h.open),
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
    fn numbers(&self, draft: &Draft, rest: &[Entry]) -> (u32, u32) {
        let told = draft.layers.told.as_ref().map_or(1, |t| t.it.clamp(1, 500));
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
    fn is_round(&self, draft: &Draft, choice: &Choice, rest: &[Entry]) -> bool {
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
        let even_told = draft.layers.told.is_some() && choice.sure == Sure::Certain;
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

    /// Whether the last round of the piece had a number.
    fn numbered(&self) -> bool {
        let last = self.rounds.values().next_back();
        last.and_then(|i| self.judged.understood.get(i)).is_some_and(|u| u.numbered)
    }

    fn choose(&mut self, draft: &mut Draft, rest: &mut [Entry]) -> Option<Choice> {
        draft.disputed = false;
        if let Some(choice) = self.again(draft) {
            return Some(choice);
        }
        if !draft.heads && draft.heading.is_some_and(|h| h.bare) {
            return None;
        }
        let many = draft.many();
        let stated = draft.stated();
        let begins = founds(&draft.worked.work);
        let below = self.below.filter(|_| !begins);
        let plain = Candidate {
            work: draft.worked.work.clone(),
            unread: draft.worked.unread.clone(),
            inferred: Vec::new(),
        };
        let worked = plain.work.iter().any(|op| is_worked(&op.it));
        // A chain of the height of a tall stitch stands for one, as is common practice.
        if stated.is_none() && tall_chain(&plain.work, draft.kind) {
            let tried = draft.others(self.text).to_vec();
            let counted = tried.into_iter().find(|c| {
                let own = below.filter(|_| !founds(&c.work));
                c.inferred == [Inferred::ChainCounts]
                    && !c.unread.iter().any(|at| self.counts(draft, at))
                    && fit(&c.work, many, own, None).comes_out
            });
            if let Some(candidate) = counted {
                return Some(Choice { candidate, sure: Sure::Fits, stated });
            }
        }
        // A chain to work the first round into: “R1: ch 2”.
        let chains = plain.work.iter().all(|op| matches!(op.it, Op::Chain(_)));
        if self.last.is_none() && !plain.work.is_empty() && chains && plain.unread.is_empty() {
            return Some(Choice { candidate: plain, sure: Sure::Certain, stated });
        }
        // “14. Rd bis Ende”: how it goes on is left to the maker.
        if draft.heading.is_some_and(|h| h.open) && worked {
            let sure = if plain.unread.is_empty() { Sure::Certain } else { Sure::Fits };
            return Some(Choice { candidate: plain, sure, stated });
        }
        let strict = plain.unread.is_empty() && worked;
        let as_is = fit(&plain.work, many, below, stated.as_ref());
        let next = |rest: &mut [Entry], count| next_fits(rest, count, self.text);
        if strict && as_is.comes_out && as_is.agrees == Some(true) {
            return Some(Choice { candidate: plain, sure: Sure::Certain, stated });
        }
        let open = strict && as_is.comes_out && as_is.agrees.is_none();
        let beside = match as_is.left {
            Some(left) if open => next(rest, left),
            _ => None,
        };
        if open && beside != Some(false) {
            return Some(Choice { candidate: plain, sure: Sure::Certain, stated });
        }
        let mut tried = vec![plain.clone()];
        tried.extend(draft.others(self.text).iter().cloned());
        tried.extend(self.of_stated(draft, stated.as_ref(), below));
        let mut likely: Option<Candidate> = None;
        for below in [below, None] {
            if below.is_none()
                && !(self.lost || self.last.is_none())
                && self.below.is_some()
                && !begins
            {
                break;
            }
            for (i, candidate) in tried.iter().enumerate() {
                if !candidate.work.iter().any(|op| is_worked(&op.it)) {
                    continue;
                }
                let own = below.filter(|_| !founds(&candidate.work));
                if own.is_none() && candidate.inferred.contains(&Inferred::StitchInWords) {
                    continue;
                }
                let fit = fit(&candidate.work, many, own, stated.as_ref());
                if !fit.comes_out || fit.agrees == Some(false) {
                    continue;
                }
                // Two sides have to agree: what it takes or begins on, and what it makes.
                let supported = fit.agrees == Some(true)
                    || fit.left.is_some_and(|left| next(rest, left) == Some(true));
                if supported {
                    let candidate = candidate.clone();
                    let sure = if i == 0 && strict { Sure::Certain } else { Sure::Fits };
                    return Some(Choice { candidate, sure, stated });
                }
                let even = own.is_some() && fit.left == own;
                let prose = !candidate.unread.iter().any(|at| self.tells(draft, at))
                    || even && !candidate.unread.iter().any(|at| self.counts(draft, at));
                let contradicted = fit.left.is_some_and(|left| next(rest, left) == Some(false));
                let usual = candidate.inferred.iter().all(|i| {
                    matches!(
                        i,
                        Inferred::SlipCloses
                            | Inferred::BracketIsRemark
                            | Inferred::KindOfShaping
                            | Inferred::Even
                            | Inferred::ChainCounts
                    )
                });
                if likely.is_none() && prose && usual && !contradicted && own.is_some()
                    || likely.is_none()
                        && prose
                        && candidate.inferred.is_empty()
                        && !contradicted
                {
                    likely = Some(candidate.clone());
                }
            }
        }
        if let Some(candidate) = likely {
            return Some(Choice { candidate, sure: Sure::Fits, stated });
        }
        // “… until it is closed”: how far is left to the maker.
        let until = draft.tokens.iter().any(|t| t.tok == Tok::Say(Say::Until));
        if until && worked && stated.is_none() && next_draft(rest).is_none() {
            draft.open = true;
            return Some(Choice { candidate: plain, sure: Sure::Fits, stated });
        }
        if strict {
            draft.disputed = true;
            return Some(Choice { candidate: plain, sure: Sure::Certain, stated });
        }
        Some(Choice { candidate: plain, sure: Sure::Unread, stated })
    }

    /// Whether words that were not understood may have held work: a number or a stitch.
    fn tells(&self, draft: &Draft, at: &Span) -> bool {
        draft.tokens.iter().any(|t| {
            let inside = t.at().start >= at.start && t.at().end <= at.end;
            let sign = matches!(t.tok, Tok::Open(_) | Tok::Close | Tok::Star | Tok::TwoStars);
            inside && (t.tok.is_work() || t.tok.counts() || sign && at.len() <= 2)
        })
    }

    /// Whether there is a number in words that were not understood.
    fn counts(&self, draft: &Draft, at: &Span) -> bool {
        draft
            .tokens
            .iter()
            .any(|t| t.at().start >= at.start && t.at().end <= at.end && t.tok.counts())
    }

    /// Readings that take the stated count itself: a ring of so many, a round of plain
    /// stitches of which only the loop or how many rounds is told.
    fn of_stated(
        &self,
        draft: &Draft,
        stated: Option<&Placed<u32>>,
        below: Option<u32>,
    ) -> Vec<Candidate> {
        let mut found = Vec::new();
        let Some(stated) = stated else { return found };
        let any = |want: &dyn Fn(Tok) -> bool| draft.tokens.iter().any(|t| want(t.tok));
        let worked = draft.worked.work.iter().any(|op| is_worked(&op.it));
        let candidate = |op: Op, inferred| Candidate {
            work: vec![Placed::at(op, stated.at.clone())],
            unread: draft.worked.unread.clone(),
            inferred: vec![inferred],
        };
        let kind = draft.kind;
        if self.last.is_none() && any(&|t| t == Tok::Ring) && !worked {
            found.push(candidate(Op::Ring { kind, count: stated.it }, Inferred::RingOfCount));
        }
        let prose = !draft.worked.unread.iter().any(|at| self.tells(draft, at));
        if !draft.worked.unread.is_empty()
            && let Some(count) = joined(&draft.tokens, stated)
        {
            found.push(candidate(Op::IntoChain { kind, count, nth: 0 }, Inferred::Joined));
        }
        let plain = any(&|t| matches!(t, Tok::Loop(_) | Tok::Even(_)))
            || draft.layers.told.is_some() && prose
            || draft.worked.unread.is_empty();
        if !worked && plain && below == Some(stated.it) {
            let one = Placed::at(Op::Each { kind, count: 1 }, stated.at.clone());
            let even = Op::Group { body: vec![one], times: Times::Around };
            found.push(candidate(even, Inferred::Even));
        }
        found
    }

    /// “repeat Rnd 4”, “as Rnd 4 (18)”: the work of that round, at the place of the words
    /// that stand for it. `None` where nothing of the kind is said or known.
    fn again(&self, draft: &Draft) -> Option<Choice> {
        let body = &draft.tokens;
        let from = body.iter().position(|t| !t.tok.parts())?;
        let said = body[from..].iter().take_while(|t| {
            matches!(t.tok, Tok::Say(Say::Repeat | Say::As | Say::The | Say::Work))
        });
        let mut at = from + said.count();
        if at == from {
            return None;
        }
        let repeats = body[from..at].iter().any(|t| t.tok == Tok::Say(Say::Repeat));
        let worded = body.get(at)?.tok == Tok::Round;
        at += usize::from(worded);
        let Tok::Number(n) = body.get(at)?.tok else { return None };
        // “Repeat 5.” names a round where rounds are listed without the word.
        let ends = matches!(body.get(at + 1).map(|t| t.tok), None | Some(Tok::Stop));
        let names_a_round = worded || (repeats && ends);
        if !names_a_round {
            return None;
        }
        // Where rounds have no numbers, the number is that of a line of the list.
        let (&first, &line) = if self.numbered() || worded {
            self.rounds.range(..=n).next_back()?
        } else {
            self.rounds.iter().nth((n as usize).checked_sub(1)?)?
        };
        let n = if self.numbered() || worded { n } else { first };
        let Line::Rounds(found) = &self.judged.lines.get(line)?.it else { return None };
        let place = span(&body[from..=at]);
        let mut left = MOST_REPEATED;
        let work = moved(&found.work, &place, &mut left);
        let unread = self.judged.understood.get(&line)?.sure == Sure::Unread;
        let counted = super::round::work(&body[at + 1..], self.text, draft.kind);
        let known = (first..=found.last).contains(&n)
            && left > 0
            && !unread
            && !counted.work.iter().any(|op| is_worked(&op.it));
        let stated = counted.stated.or_else(|| draft.layers.early.clone());
        let candidate = Candidate { work, unread: Vec::new(), inferred: Vec::new() };
        known.then_some(Choice { candidate, sure: Sure::Certain, stated })
    }
}

/// Whether it begins with the chain that reaches as high as the tall stitches behind it.
fn tall_chain(work: &[Placed<Op>], kind: StitchKind) -> bool {
    let high = match kind {
        StitchKind::HalfDouble => 2,
        StitchKind::Double => 3,
        StitchKind::Treble => 4,
        _ => return false,
    };
    let first = work.iter().find(|op| !matches!(op.it, Op::Note(_) | Op::Colour(_)));
    first.is_some_and(|op| op.it == Op::Chain(high))
}

/// Stitches of a round that goes over pieces and chains, if they come to what is stated:
/// “12 sc around the first leg, 2 sc along the chain, …”. Chains are worked on both sides.
fn joined(tokens: &[Token], stated: &Placed<u32>) -> Option<u32> {
    let other_side =
        tokens.iter().any(|t| matches!(t.tok, Tok::Chain | Tok::Say(Say::OtherSide)));
    let own = |t: &&Token| t.at().end <= stated.at.start || t.at().start >= stated.at.end;
    let own: Vec<&Token> = tokens.iter().filter(own).collect();
    let (mut stitches, mut chains, mut several) = (0_u32, 0_u32, 0);
    for (i, token) in own.iter().enumerate() {
        let Tok::Number(n) = token.tok else { continue };
        let beside = |at: Option<usize>| {
            at.and_then(|at| own.get(at)).is_some_and(|t| t.tok == Tok::Chain)
        };
        if beside(i.checked_sub(1)) || beside(Some(i + 1)) {
            chains = chains.saturating_add(n);
        } else {
            stitches = stitches.saturating_add(n);
            several += 1;
        }
    }
    let comes =
        stitches == stated.it || stitches.saturating_add(2 * chains.min(99)) == stated.it;
    (several > 1 && other_side && comes).then_some(stated.it)
}

/// How `work` fits on `below` and to the stated count.
fn fit(
    work: &[Placed<Op>],
    many: u32,
    below: Option<u32>,
    stated: Option<&Placed<u32>>,
) -> Fit {
    let run = Run::of(work, many, below);
    let left = run.left();
    Fit {
        comes_out: run.comes_out(),
        agrees: stated.map(|stated| left == Some(stated.it)),
        left,
    }
}

/// The next line that is a round, if the piece goes on so far.
fn next_draft(rest: &[Entry]) -> Option<&Draft> {
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
fn next_fits(rest: &mut [Entry], count: u32, text: &str) -> Option<bool> {
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
    let tried = draft.others(text);
    if tried.iter().any(|c| of(&c.work) == (true, false)) {
        return Some(true);
    }
    let uneven = tried.iter().any(|c| of(&c.work).0);
    (strict && !uneven).then_some(false)
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

/// A copy of `work` that stands at `at`, down to where `left` operations are used up.
fn moved(work: &[Placed<Op>], at: &Span, left: &mut usize) -> Vec<Placed<Op>> {
    let mut copy = Vec::new();
    for op in work {
        *left = left.saturating_sub(1);
        if *left == 0 {
            break;
        }
        let it = match &op.it {
            Op::Group { body, times } => {
                Op::Group { body: moved(body, at, left), times: *times }
            }
            Op::Only { only, body } => Op::Only { only: *only, body: moved(body, at, left) },
            other => other.clone(),
        };
        copy.push(Placed::at(it, at.clone()));
    }
    copy
}
