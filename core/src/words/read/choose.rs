//! The choice among the readings of one round.

use super::draft::{Draft, DraftLine};
use super::fits::{Taken, fit, next_draft, next_fits};
use super::gist::{cut_short, gist};
use super::judge::Judge;
use super::readings::{Understood, others, repeat_of_all};
use super::rewordings::bracketed_work;
use super::round::work as work_of;
use super::settle::is_worked;
use super::token::{Say, Tok};
use super::understanding::{Inferred, Sure};
use crate::words::course::{founds, from_stated};
use crate::words::tree::{Op, Placed, Span, StitchKind, Times};

/// So many times too few stitches, and it is the reading that is in doubt.
const FAR: u32 = 3;

impl Judge<'_> {
    /// The reading of `draft` that is meant, before the lines of `rest`; none where it is no
    /// round.
    pub(super) fn choose(
        &mut self,
        draft: &mut Draft,
        rest: &mut [DraftLine],
    ) -> Option<Taken> {
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
        let plain = Understood {
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
                return Some(Taken { candidate, sure: Sure::Fits, stated });
            }
        }
        // A chain to work the first round into: “R1: ch 2”.
        let chains =
            plain.work.iter().all(|op| matches!(op.it, Op::Chain(_) | Op::Join | Op::Note(_)))
                && plain.work.iter().any(|op| matches!(op.it, Op::Chain(_)));
        if self.last.is_none() && !plain.work.is_empty() && chains && plain.unread.is_empty() {
            return Some(Taken { candidate: plain, sure: Sure::Certain, stated });
        }
        // “14. Rd bis Ende”: how it goes on is left to the maker.
        if draft.heading.is_some_and(|h| h.open) && worked {
            let sure = if plain.unread.is_empty() { Sure::Certain } else { Sure::Fits };
            return Some(Taken { candidate: plain, sure, stated });
        }
        let strict = plain.unread.is_empty() && worked;
        let as_is = fit(&plain.work, many, below, stated.as_ref());
        let next = |rest: &mut [DraftLine], count| next_fits(rest, count, self.text);
        if strict && as_is.comes_out && as_is.agrees == Some(true) {
            return Some(Taken { candidate: plain, sure: Sure::Certain, stated });
        }
        let open = strict && as_is.comes_out && as_is.agrees.is_none();
        let beside = match as_is.left {
            Some(left) if open => next(rest, left),
            _ => None,
        };
        // “sc 3, inc around”: nobody increases from there on in every stitch.
        if open
            && let Some(work) = around_of_all(&plain.work)
            && let alike = fit(&work, many, below, None)
            && alike.comes_out
            && let Some(left) = alike.left
            && let toward = next(rest, left)
            && toward != Some(false)
            && (toward == Some(true) || beside != Some(true))
        {
            let inferred = vec![Inferred::RepeatOfAll];
            let candidate = Understood { work, unread: Vec::new(), inferred };
            return Some(Taken { candidate, sure: Sure::Fits, stated });
        }
        if open && beside != Some(false) {
            return Some(Taken { candidate: plain, sure: Sure::Certain, stated });
        }
        if stated.is_none()
            && let Some(taken) = self.with_trailing_count(draft, below)
        {
            return Some(taken);
        }
        // “16 sc (2 sc in each st)”
        if stated.is_none()
            && let Some(below) = below
            && let Some((count, tokens)) = bracketed_work(&draft.tokens)
        {
            let worked = work_of(&tokens, self.text, draft.kind);
            let plain = Understood {
                work: worked.work.clone(),
                unread: worked.unread.clone(),
                inferred: vec![Inferred::Remark],
            };
            // “12 m (2 m ds chaque m)”
            let more = others(&tokens, &worked, self.text, draft.kind);
            let inside = [plain].into_iter().chain(more).find(|c| {
                let fit = fit(&c.work, many, Some(below), Some(&count));
                c.unread.is_empty() && fit.comes_out && fit.agrees == Some(true)
            });
            if let Some(candidate) = inside {
                return Some(Taken { candidate, sure: Sure::Fits, stated: Some(count) });
            }
        }
        if let Some(taken) = self.progression(draft, below) {
            return Some(taken);
        }
        let mut tried = vec![plain.clone()];
        tried.extend(draft.others(self.text).iter().cloned());
        tried.extend(self.of_stated(draft, stated.as_ref(), below));
        if let (true, Some(below), Some(_)) = (strict, below, &stated)
            && let Some(work) = cut_short(&plain.work, below)
        {
            let inferred = vec![Inferred::CutShort];
            tried.push(Understood { work, unread: Vec::new(), inferred });
        }
        if !strict {
            let begins = self.last.is_none();
            tried.extend(gist(draft, stated.as_ref(), below, begins, self.grows));
        }
        let mut likely: Option<Understood> = None;
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
                // Where nobody tells what it is worked on, the count it comes to does.
                let told = i == 0 || !strict && candidate.unread.is_empty();
                let own = own.or_else(|| {
                    let stated =
                        stated.as_ref().filter(|_| told && !founds(&candidate.work))?;
                    from_stated(&candidate.work, many, stated.it)
                });
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
                    return Some(Taken { candidate, sure, stated });
                }
                let even = own.is_some() && fit.left == own;
                let prose = !candidate.unread.iter().any(|at| self.tells(draft, at))
                    || even && !candidate.unread.iter().any(|at| self.counts(draft, at));
                let contradicted = fit.left.is_some_and(|left| next(rest, left) == Some(false));
                // One stitch alone may be all that is meant; a sequence that comes short is
                // repeated.
                let worked: Vec<&Op> =
                    plain.work.iter().map(|op| &op.it).filter(|op| is_worked(op)).collect();
                // “Je 2 M zusammenhäkeln”: nobody decreases once and stops.
                let sequence =
                    worked.len() > 1 || matches!(worked.as_slice(), [Op::Together { .. }]);
                let usual = candidate.inferred.iter().all(|i| {
                    matches!(
                        i,
                        Inferred::SlipCloses
                            | Inferred::BracketIsRemark
                            | Inferred::KindOfShaping
                            | Inferred::Even
                            | Inferred::ChainCounts
                            | Inferred::PlainStitches
                            | Inferred::ChainOverSkip
                    ) || matches!(i, Inferred::Remark) && candidate.unread.is_empty()
                        || matches!(i, Inferred::PlainBetween) && draft.worked.hints.spread
                        || matches!(i, Inferred::OtherTimes)
                            && fit.comes_out
                            && own == self.below
                        || sequence
                            && matches!(
                                i,
                                Inferred::Repeat
                                    | Inferred::RepeatOfAll
                                    | Inferred::BracketRepeat
                            )
                });
                // A sentence that names what is done and where, and no count.
                let told = candidate.inferred == [Inferred::Sums]
                    && stated.is_none()
                    && (draft.heading.is_some() || !self.numbered());
                let begins = self.last.is_none() && founds(&candidate.work);
                if likely.is_none() && told && (!contradicted || begins) {
                    likely = Some(candidate.clone());
                }
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
            return Some(Taken { candidate, sure: Sure::Fits, stated });
        }
        if let Some(taken) = self.by_counts(draft, rest, stated.as_ref(), below) {
            return Some(taken);
        }
        // “… until it is closed”: how far is left to the maker.
        let until = draft.tokens.iter().any(|t| t.tok == Tok::Say(Say::Until));
        if until && worked && stated.is_none() && next_draft(rest).is_none() {
            draft.open = true;
            return Some(Taken { candidate: plain, sure: Sure::Fits, stated });
        }
        // One shaping for a whole round says that it was misread, not that it is wrong.
        let mut worked_ops = plain.work.iter().filter(|op| is_worked(&op.it));
        let lone = matches!(
            (worked_ops.next().map(|op| &op.it), worked_ops.next()),
            (Some(Op::Into { .. } | Op::Together { .. }), None)
        );
        let far = lone
            && below
                .zip(as_is.taken)
                .is_some_and(|(below, taken)| taken.saturating_mul(FAR) < below);
        // A reading that takes the stitches there are, and that the next round goes on from:
        // what is stated is the slip.
        if let (true, Some(below), Some(_)) = (strict, below, &stated)
            && !as_is.comes_out
        {
            for candidate in tried.iter().skip(1).filter(|c| c.unread.is_empty()) {
                let fit = fit(&candidate.work, many, Some(below), None);
                if let Some(left) = fit.left
                    && fit.comes_out
                    && !founds(&candidate.work)
                    && next(rest, left) == Some(true)
                {
                    draft.disputed = true;
                    let candidate = candidate.clone();
                    return Some(Taken { candidate, sure: Sure::Fits, stated });
                }
            }
        }
        if strict && !far {
            draft.disputed = true;
            // Where the next round is worked on what this one comes to, what is stated is the
            // slip.
            draft.goes_on = as_is.left.filter(|&left| {
                as_is.comes_out
                    && next(rest, left) == Some(true)
                    && stated.as_ref().is_none_or(|s| next(rest, s.it) != Some(true))
            });
            return Some(Taken { candidate: plain, sure: Sure::Certain, stated });
        }
        Some(Taken { candidate: plain, sure: Sure::Unread, stated })
    }

    /// Whether words that were not understood may have held work: a number or a stitch.
    pub(super) fn tells(&self, draft: &Draft, at: &Span) -> bool {
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
}

/// Plain stitches and then one shaping “around”, all of it repeated around.
fn around_of_all(work: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let mut worked = work.iter().map(|op| &op.it).filter(|op| is_worked(op));
    let (Some(Op::Each { .. }), Some(Op::Group { body, times: Times::Around }), None) =
        (worked.next(), worked.next(), worked.next())
    else {
        return None;
    };
    let shaping =
        matches!(body.as_slice(), [Placed { it: Op::Into { .. } | Op::Together { .. }, .. }]);
    if shaping { repeat_of_all(work) } else { None }
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
