//! Readings that stand on the counts of a line rather than on its words.

use super::draft::{Draft, DraftLine};
use super::fits::{Taken, fit, next_fits};
use super::gist::by_counts;
use super::judge::Judge;
use super::readings::{Understood, others};
use super::rewordings::trailing;
use super::round::work as work_of;
use super::settle::is_worked;
use super::token::{Say, Tok, Token, span};
use super::understanding::{Inferred, Sure};
use crate::words::course::founds;
use crate::words::tree::{Decrease, Op, Placed, Span, StitchKind, Times};

/// Most tokens of a round that only says that it goes around.
const SHORT: usize = 8;

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
        });
        // “12 sc around the first leg, 12 sc around the second 24”
        let pieces = || {
            let count = joined(&tokens, &count, below).filter(|_| !worked.unread.is_empty())?;
            let it = Op::IntoChain { kind: draft.kind, count, nth: 0 };
            Some(Understood {
                work: vec![Placed::at(it, span(&tokens))],
                unread: worked.unread.clone(),
                inferred: vec![Inferred::Joined],
            })
        };
        let candidate = candidate.or_else(pieces)?;
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
        // “Rnd 14: simply around”
        let around = draft.tokens.len() <= SHORT
            && draft.tokens.iter().any(|t| t.tok == Tok::Say(Say::Around));
        // “Rnds 6–9: nothing special”: a round that says nothing of shaping, and no count.
        let silent = stated.is_none()
            && (several || told || around)
            && !worked
            && !draft.tokens.iter().any(|t| {
                t.tok.counts() && t.tok != Tok::Number(below)
                    || t.tok.is_work() && !matches!(t.tok, Tok::Kind(_) | Tok::Even(_))
                    || matches!(
                        t.tok,
                        Tok::Say(Say::Doubled | Say::Together | Say::Repeat) | Tok::Ring
                    )
            });
        // “Rd 4: +6 (24)”, “Rd 10: -6 (18)”
        let more = self.signed_change(draft);
        let changed = more.and_then(|by| below.checked_add_signed(by));
        let meant = match stated {
            Some(stated) => stated.clone(),
            None if changed.is_some_and(|n| n > below) => Placed::at(changed?, 0..0),
            None if silent => Placed::at(below, 0..0),
            None => return None,
        };
        let (mut candidate, borne_out) = by_counts(draft, below, &meant)?;
        let next = next_fits(rest, meant.it, self.text);
        if silent || idle(&draft.tokens) && below == meant.it {
            candidate.inferred = vec![Inferred::Even];
        } else if changed == Some(meant.it) {
            candidate.inferred = vec![Inferred::PlainBetween];
            candidate.unread.clear();
        }
        let fits = next == Some(true) || next.is_none() && borne_out;
        fits.then(|| Taken { candidate, sure: Sure::Fits, stated: stated.cloned() })
    }

    /// Several rounds that shape alike, by the counts told for each: “rounds 4 to 7: six more
    /// each time: 24, 30, 36, 42”.
    pub(super) fn progression(&self, draft: &Draft, below: Option<u32>) -> Option<Taken> {
        let many = draft.many();
        let at = draft.tokens.iter().rposition(|t| matches!(t.tok, Tok::Number(_)))?;
        let mut counts: Vec<u32> = Vec::new();
        for token in draft.tokens[..=at].iter().rev() {
            match token.tok {
                Tok::Number(n) if counts.len() < many as usize => counts.push(n),
                Tok::Open(_) | Tok::Close | Tok::Stitch | Tok::Equals | Tok::Kind(_) => {}
                tok if tok.parts() => {}
                _ => break,
            }
        }
        counts.reverse();
        let first = *counts.first()?;
        let by = i64::from(*counts.get(1)?) - i64::from(first);
        let even = counts.windows(2).all(|pair| i64::from(pair[1]) - i64::from(pair[0]) == by);
        let from = u32::try_from(i64::from(first) - by).ok()?;
        let fits = below.is_none_or(|below| below == from);
        if many < 2 || counts.len() != many as usize || !even || by == 0 || !fits {
            return None;
        }
        let told = draft.tokens[at].at();
        let at = span(&draft.tokens);
        let work = spread_out(from, by, draft.kind, &at)?;
        let inferred = vec![Inferred::PlainBetween];
        let candidate = Understood { work, unread: Vec::new(), inferred };
        let stated = Some(Placed::at(*counts.last()?, told));
        Some(Taken { candidate, sure: Sure::Fits, stated })
    }

    /// How many stitches more or fewer “+6” and “-6” say, where nothing else is said.
    fn signed_change(&self, draft: &Draft) -> Option<i32> {
        let lead = draft
            .tokens
            .iter()
            .take_while(|t| matches!(t.tok, Tok::Colon | Tok::Stop | Tok::Bar | Tok::Slash))
            .count();
        let (sign, number, end) = match &draft.tokens[lead..] {
            [sign, number, end @ ..] => (sign, number, end),
            _ => return None,
        };
        let Tok::Number(n) = number.tok else { return None };
        let by = i32::try_from(n).ok()?;
        let over = end.first().is_none_or(|t| {
            matches!(
                t.tok,
                Tok::Open(_)
                    | Tok::Equals
                    | Tok::Stop
                    | Tok::Comma
                    | Tok::Dash
                    | Tok::Bar
                    | Tok::Slash
            )
        });
        match sign.tok {
            Tok::Comma if over && self.text.get(sign.at()) == Some("+") => Some(by),
            Tok::Dash if over => Some(-by),
            _ => None,
        }
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
        // “Rd 4: +6 (24)”
        if let (Some(by), Some(below)) = (self.signed_change(draft), below)
            && below.checked_add_signed(by) == Some(stated.it)
            && let Some((mut change, _)) = by_counts(draft, below, stated)
        {
            change.inferred = vec![Inferred::PlainBetween];
            change.unread.clear();
            found.push(change);
        }
        let prose = !draft.worked.unread.iter().any(|at| self.tells(draft, at));
        if !draft.worked.unread.is_empty()
            && let Some(count) = joined(&draft.tokens, stated, below)
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

/// So many stitches more or fewer in a round on `below`, plain ones between and after.
fn spread_out(below: u32, by: i64, kind: StitchKind, at: &Span) -> Option<Vec<Placed<Op>>> {
    let times = u32::try_from(by.unsigned_abs()).ok()?;
    let (one, takes) = if by > 0 {
        (Op::Into { kind, many: 2 }, 1)
    } else {
        (Op::Together { kind, many: 2, how: Decrease::Plain }, 2)
    };
    let room = below.checked_sub(times.checked_mul(takes)?)?;
    let placed = |op| Placed::at(op, at.clone());
    let group = |op, times| placed(Op::Group { body: vec![placed(op)], times });
    let mut work = vec![group(one, Times::In(times))];
    if room > 0 || by > 0 {
        work.push(group(Op::Each { kind, count: 1 }, Times::Around));
    }
    Some(work)
}

/// Whether nothing is said but that nothing is done: “Rd 15: ohne (36)”, “Rnds 5–9: – (24)”.
fn idle(tokens: &[Token]) -> bool {
    let said = tokens
        .iter()
        .take_while(|t| !matches!(t.tok, Tok::Open(_) | Tok::Equals))
        .all(|t| t.tok.parts() || matches!(t.tok, Tok::Say(Say::Without | Say::The)));
    said && tokens.iter().any(|t| matches!(t.tok, Tok::Say(Say::Without) | Tok::Dash))
}

/// Stitches of a round that goes over pieces and chains, if they come to what is stated:
/// “12 sc around the first leg, 2 sc along the chain, …”. Chains are worked on both sides.
fn joined(tokens: &[Token], stated: &Placed<u32>, below: Option<u32>) -> Option<u32> {
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
        // “sc 10 on leg 2”
        let named = i > 0 && own[i - 1].tok == Tok::Unknown;
        if named && !own.get(i + 1).is_some_and(|t| matches!(t.tok, Tok::Kind(_) | Tok::Stitch))
        {
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
    let comes = stitches == stated.it
        || stitches.saturating_add(chains.min(99)) == stated.it
        || stitches.saturating_add(2 * chains.min(99)) == stated.it;
    // “12 sc around the first leg, 12 sc around the second”: more than lie on the hook, and no
    // increase is named.
    let shapes = tokens.iter().any(|t| {
        matches!(
            t.tok,
            Tok::Increase(_) | Tok::Decrease(..) | Tok::Times | Tok::Say(Say::Doubled)
        )
    });
    let pieces = below.is_some_and(|below| {
        stitches == stated.it
            && stated.it >= below.saturating_mul(2).saturating_sub(2)
            && !shapes
    });
    (several > 1 && (other_side || pieces) && comes).then_some(stated.it)
}
