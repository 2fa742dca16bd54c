//! Rounds that are told by naming another: “repeat Rnd 4”, “as Rnd 4 (18)”, “same again”.

use super::count::figure_of;
use super::draft::Draft;
use super::fits::{Taken, fit};
use super::judge::Judge;
use super::readings::Understood;
use super::round::{LineReading, work as work_of};
use super::settle::is_worked;
use super::token::{Say, Tok, Token, span};
use super::understanding::Sure;
use crate::words::course::founds;
use crate::words::tree::{Line, Op, Placed, Span, StitchKind};

/// Most operations of a round that another may stand for, so that the tree stays linear in
/// the text.
const MOST_REPEATED: usize = 64;

impl Judge<'_> {
    /// “ditto”, “same again (24)”: the round before once more, where it can be worked so.
    fn ditto(&self, draft: &Draft, from: usize, to: usize) -> Option<Taken> {
        let body = &draft.tokens;
        let alike = body[from..to].iter().any(|t| t.tok == Tok::Say(Say::As));
        let ends = body[to..].iter().all(|t| {
            t.tok.parts()
                || matches!(
                    t.tok,
                    Tok::Open(_)
                        | Tok::Close
                        | Tok::Number(_)
                        | Tok::Equals
                        | Tok::Stitch
                        | Tok::Kind(_)
                )
        });
        let last = self.last.filter(|_| alike && ends && draft.heading.is_some())?;
        let (_, &line) = self.rounds.range(..=last).next_back()?;
        let Line::Rounds(found) = &self.judged.lines.get(line)?.it else { return None };
        if self.judged.understood.get(&line)?.sure == Sure::Unread {
            return None;
        }
        let mut left = MOST_REPEATED;
        let work = moved(&found.work, &span(&body[from..to]), &mut left);
        let stated = draft.stated();
        let fit = fit(&work, draft.many(), self.below, stated.as_ref());
        let fits = left > 0 && fit.comes_out && fit.agrees != Some(false) && !founds(&work);
        let candidate = Understood { work, unread: Vec::new(), inferred: Vec::new() };
        fits.then_some(Taken { candidate, sure: Sure::Fits, stated })
    }

    /// “repeat Rnd 4”, “as Rnd 4 (18)”: the work of that round, at the place of the words
    /// that stand for it. `None` where nothing of the kind is said or known.
    pub(super) fn again(&self, draft: &Draft) -> Option<Taken> {
        let body = &draft.tokens;
        let from = body.iter().position(|t| !t.tok.parts())?;
        // “with White, as 4th round”
        let coloured = match &body[from..] {
            [with, words @ ..] if matches!(with.tok, Tok::Say(Say::With | Say::In)) => {
                let named = words
                    .iter()
                    .take(3)
                    .take_while(|t| matches!(t.tok, Tok::Unknown | Tok::Yarn))
                    .count();
                let ends = words.get(named).is_some_and(|t| t.tok == Tok::Comma);
                if named > 0 && ends { named + 2 } else { 0 }
            }
            _ => 0,
        };
        let from = from + coloured;
        let said = body[from..].iter().take_while(|t| {
            matches!(t.tok, Tok::Say(Say::Repeat | Say::As | Say::The | Say::Work))
        });
        let mut at = from + said.count();
        if at == from {
            return None;
        }
        if let Some(taken) = self.ditto(draft, from, at) {
            return Some(taken);
        }
        let repeats = body[from..at].iter().any(|t| t.tok == Tok::Say(Say::Repeat));
        let alike = body[from..at].iter().any(|t| t.tok == Tok::Say(Say::As));
        let after = |n: usize| body.get(at + n).map(|t| t.tok);
        // “As 4th round”, “wie 5. Runde”, “same as the fifth”
        let points = usize::from(after(1) == Some(Tok::Stop));
        let ends =
            |tok: Option<Tok>| tok.is_none_or(|t| t.parts() || matches!(t, Tok::Open(_)));
        let nth = match after(0)? {
            Tok::Ordinal(_) => after(1) == Some(Tok::Round) || alike && ends(after(1)),
            Tok::Number(_) => points > 0 && after(2) == Some(Tok::Round),
            _ => false,
        };
        let worded = nth || matches!(body.get(at)?.tok, Tok::Round | Tok::Say(Say::Row));
        at += usize::from(worded && !nth);
        let (Tok::Number(n) | Tok::Ordinal(n)) = body.get(at)?.tok else { return None };
        if matches!(body[at].tok, Tok::Ordinal(_)) && !nth {
            return None;
        }
        let named = body.get(at + 1 + points).is_some_and(|t| t.tok == Tok::Round);
        at += if nth && named { 1 + points } else { 0 };
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
        // “As round 5. 36 dc”: what stands behind it alone is its count.
        let behind = &body[at + 1..];
        let behind = &behind[behind.iter().take_while(|t| t.tok.parts()).count()..];
        let figure = match behind {
            [Token { tok: Tok::Open(n), .. }, inside @ ..] if *n == inside.len() => {
                figure_of(&inside[..n.saturating_sub(1)]).map(|(count, _)| count)
            }
            [
                Token { tok: Tok::Number(count), .. },
                Token { tok: Tok::Kind(_) | Tok::Stitch, .. },
                end @ ..,
            ] if end.iter().all(|t| t.tok.parts()) => Some(*count),
            _ => None,
        };
        let figure = figure.map(|count| Placed::at(count, span(behind)));
        let counted = match figure {
            Some(_) => LineReading { stated: figure, ..LineReading::default() },
            None => work_of(behind, self.text, draft.kind),
        };
        let known = (first..=found.last).contains(&n)
            && left > 0
            && !unread
            && !counted.work.iter().any(|op| {
                is_worked(&op.it)
                    && !matches!(op.it, Op::Each { kind: StitchKind::Slip, count: 1 })
            });
        let stated = counted.stated.or_else(|| draft.layers.early.clone());
        let candidate = Understood { work, unread: Vec::new(), inferred: Vec::new() };
        known.then_some(Taken { candidate, sure: Sure::Certain, stated })
    }
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
