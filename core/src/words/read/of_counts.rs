//! Readings that stand on the counts of a line rather than on its words.

use super::draft::{Draft, DraftLine};
use super::fits::{Taken, fit, next_fits};
use super::gist::by_counts;
use super::judge::Judge;
use super::readings::{Understood, others};
use super::rewordings::trailing;
use super::round::work as work_of;
use super::settle::is_worked;
use super::token::{Say, Tok, Token};
use super::understanding::{Inferred, Sure};
use crate::words::course::founds;
use crate::words::tree::{Op, Placed, Times};

impl Judge<'_> {
    /// The reading of a line that ends with a bare number, where that is its count.
    pub(super) fn with_trailing_count(
        &self,
        draft: &Draft,
        below: Option<u32>,
    ) -> Option<Taken> {
        let (count, tokens) = trailing(&draft.tokens)?;
        let worked = work_of(&tokens, self.text, draft.kind);
        let plain = Understood {
            work: worked.work.clone(),
            unread: worked.unread.clone(),
            inferred: Vec::new(),
        };
        let others = others(&tokens, &worked, self.text, draft.kind);
        let many = draft.many();
        let candidate = [plain].into_iter().chain(others).find(|c| {
            let own = below.filter(|_| !founds(&c.work));
            let worked = c.work.iter().any(|op| is_worked(&op.it));
            // Nobody's count without stitches below to hold it against.
            let held = own.is_some() || founds(&c.work);
            let fit = fit(&c.work, many, own, Some(&count));
            c.unread.is_empty() && worked && held && fit.comes_out && fit.agrees == Some(true)
        })?;
        Some(Taken { candidate, sure: Sure::Fits, stated: Some(count) })
    }

    /// A round whose words say nothing, by its counts: the stitches there are and those
    /// stated, where the next round goes on with them or nothing speaks against it.
    pub(super) fn by_counts(
        &self,
        draft: &Draft,
        rest: &mut [DraftLine],
        stated: Option<&Placed<u32>>,
        below: Option<u32>,
    ) -> Option<Taken> {
        // “Then 5 rounds like that”
        let said = |t: &Token| {
            matches!(
                t.tok,
                Tok::Kind(_)
                    | Tok::Even(_)
                    | Tok::Stitch
                    | Tok::InEach
                    | Tok::Say(Say::Work | Say::Without | Say::Around)
            )
        };
        let told = draft.layers.told.is_some()
            && draft.heading.is_none()
            && !self.numbered()
            && draft.tokens.iter().any(said);
        let several = draft.heading.is_some_and(|h| h.last > h.first);
        if draft.heading.is_none() && !told {
            return None;
        }
        let below = below.filter(|_| !self.lost)?;
        let worked = draft.worked.work.iter().any(|op| is_worked(&op.it));
        if worked && draft.worked.unread.is_empty() {
            return None;
        }
        // “Rnds 6–9: nothing special”
        let silent = stated.is_none()
            && (several || told)
            && !worked
            && !draft.tokens.iter().any(|t| {
                t.tok.counts() && t.tok != Tok::Number(below)
                    || t.tok.is_work() && !matches!(t.tok, Tok::Kind(_) | Tok::Even(_))
                    || matches!(t.tok, Tok::Say(Say::Doubled | Say::Together) | Tok::Ring)
            });
        // “Rnd 14: simply around”
        let around = !worked
            && stated.is_none()
            && draft.tokens.len() <= 8
            && draft.tokens.iter().any(|t| t.tok == Tok::Say(Say::Around))
            && !draft
                .tokens
                .iter()
                .any(|t| t.tok.counts() || t.tok.is_work() || t.tok == Tok::Say(Say::Repeat));
        let silent = silent || around;
        let meant = match stated {
            Some(stated) => stated.clone(),
            None if silent => Placed::at(below, 0..0),
            None => return None,
        };
        let (mut candidate, borne_out) = by_counts(draft, below, &meant)?;
        let next = next_fits(rest, meant.it, self.text);
        if silent {
            candidate.inferred = vec![Inferred::Even];
        }
        let fits = next == Some(true) || next.is_none() && borne_out;
        fits.then(|| Taken { candidate, sure: Sure::Fits, stated: stated.cloned() })
    }

    /// Readings that take the stated count itself: a ring of so many, a round of plain
    /// stitches of which only the loop or how many rounds is told.
    pub(super) fn of_stated(
        &self,
        draft: &Draft,
        stated: Option<&Placed<u32>>,
        below: Option<u32>,
    ) -> Vec<Understood> {
        let mut found = Vec::new();
        let Some(stated) = stated else { return found };
        let any = |want: &dyn Fn(Tok) -> bool| draft.tokens.iter().any(|t| want(t.tok));
        let worked = draft.worked.work.iter().any(|op| is_worked(&op.it));
        let candidate = |op: Op, inferred| Understood {
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
        // “half one”
        if token.spelt && n < 3 {
            continue;
        }
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
