//! What stands beside the work of a line: how many rounds it is told to be, a count before
//! the work, how far a repeat of the round goes.

use super::count::figure_of;
use super::token::{Say, Tok, Token, span};
use crate::words::tree::Placed;

/// What was taken off a line.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Layers {
    /// “(5 rounds)”: how many rounds the line stands for.
    pub(super) told: Option<Placed<u32>>,
    /// “R2 (12): …”: a count before the work.
    pub(super) early: Option<Placed<u32>>,
    /// “repeat through R7”: the last round worked so.
    pub(super) until: Option<u32>,
    /// “repeat round 2 until it is 8 cm high”: how far is left to the maker.
    pub(super) open: bool,
}

/// Takes what stands beside the work out of `tokens`, which are prepared.
pub(super) fn peel(tokens: &mut Vec<Token>) -> Layers {
    let mut layers = Layers { early: early(tokens), ..Layers::default() };
    if let Some((at, until)) = through(tokens) {
        tokens.truncate(at);
        layers.until = Some(until);
    } else if let Some(at) = until_measured(tokens) {
        tokens.truncate(at);
        layers.open = true;
    }
    // “two plain rounds”: as “plain two rounds”.
    let plain = tokens.windows(3).position(|three| {
        matches!(
            (three[0].tok, three[1].tok, three[2].tok),
            (Tok::Number(1..), Tok::Even(_), Tok::Round)
        )
    });
    if let Some(at) = plain {
        tokens.swap(at, at + 1);
    }
    if let Some((from, to)) = measured(tokens) {
        tokens.drain(from..to);
        rematch(tokens);
        layers.open = true;
    }
    if let Some((from, to, told)) = times_around(tokens) {
        layers.told = Some(told);
        tokens.drain(from..to);
        rematch(tokens);
    }
    while layers.told.is_none()
        && let Some((from, to, told)) = told(tokens)
    {
        layers.told = Some(told);
        tokens.drain(from..to);
        rematch(tokens);
    }
    layers
}

/// Finds the fellow of every bracket again, after tokens were taken out.
pub(super) fn rematch(tokens: &mut [Token]) {
    let mut open = Vec::new();
    for i in 0..tokens.len() {
        match tokens[i].tok {
            Tok::Open(_) => {
                tokens[i].tok = Tok::Open(0);
                open.push(i);
            }
            Tok::Close => {
                if let Some(at) = open.pop() {
                    tokens[at].tok = Tok::Open(i - at);
                }
            }
            _ => {}
        }
    }
}

/// A count before a colon or a dash, taken off.
fn early(tokens: &mut Vec<Token>) -> Option<Placed<u32>> {
    let from = tokens.iter().position(|t| !matches!(t.tok, Tok::Stop | Tok::Colon))?;
    // “R4 - 24 sts: …”
    let lead = usize::from(tokens[from].tok == Tok::Dash);
    if let Some([number, stitch, colon]) = tokens.get(from + lead..from + lead + 3)
        && let (Tok::Number(count @ 1..), Tok::Stitch | Tok::Kind(_), Tok::Colon) =
            (number.tok, stitch.tok, colon.tok)
        && (stitch.tok == Tok::Stitch || shapes_behind(&tokens[from + lead + 3..]))
    {
        let count = Placed::at(count, number.at());
        tokens.drain(..from + lead + 3);
        rematch(tokens);
        return Some(count);
    }
    let Tok::Open(n) = tokens[from].tok else { return None };
    let inside = tokens.get(from + 1..from + n)?;
    let after = tokens.get(from + n + 1)?.tok;
    let signed = matches!(after, Tok::Colon | Tok::Dash | Tok::Equals);
    // “R3 (18) 6x(1 sc, inc)”: a number alone in brackets, before all work.
    let alone = matches!(
        inside,
        [Token { tok: Tok::Number(3..), .. }]
            | [Token { tok: Tok::Number(3..), .. }, Token { tok: Tok::Stitch, .. }]
    ) && !matches!(after, Tok::Times | Tok::Turns(_) | Tok::Star)
        && tokens[from + n + 1..].iter().any(|t| t.tok.is_work() || t.tok == Tok::Ring);
    if n < 2 || !(signed || alone) {
        return None;
    }
    let (count, _) = figure_of(inside)?;
    let count = Placed::at(count, span(inside));
    tokens.drain(..from + n + 1 + usize::from(signed));
    rematch(tokens);
    Some(count)
}

/// Whether what stands behind “18 sc:” says how they are come by.
fn shapes_behind(tokens: &[Token]) -> bool {
    tokens.iter().any(|t| {
        matches!(
            t.tok,
            Tok::Increase(_)
                | Tok::Decrease(..)
                | Tok::InEach
                | Tok::Say(Say::Each | Say::Doubled | Say::Together)
        )
    })
}

/// “repeat through R7” at the end of a line: where it stands, and the round.
fn through(tokens: &[Token]) -> Option<(usize, u32)> {
    let at = tokens.iter().rposition(|t| t.tok == Tok::Say(Say::Repeat))?;
    // “Rep Rnd 3 through Rnd 8”
    let named = usize::from(is_named(tokens, at + 1)) * 2;
    let mut rest = tokens[at + 1 + named..].iter().map(|t| t.tok).filter(|t| *t != Tok::Stop);
    let toward = matches!(rest.next()?, Tok::Say(Say::To | Say::Work));
    let Tok::Round = rest.next()? else { return None };
    let Tok::Number(n) = rest.next()? else { return None };
    (toward && at > 0 && rest.next().is_none()).then_some((at, n))
}

/// Whether “Rnd 3” stands at `at`.
fn is_named(tokens: &[Token], at: usize) -> bool {
    matches!(
        (tokens.get(at).map(|t| t.tok), tokens.get(at + 1).map(|t| t.tok)),
        (Some(Tok::Round), Some(Tok::Number(_)))
    )
}

/// Where “repeat round 2 until it is 8 cm high” stands behind the work.
fn until_measured(tokens: &[Token]) -> Option<usize> {
    let at = tokens.iter().rposition(|t| t.tok == Tok::Say(Say::Repeat))?;
    let until = matches!(tokens.get(at + 3)?.tok, Tok::Say(Say::To | Say::Until));
    let rounds = tokens[at + 3..].iter().any(|t| t.tok == Tok::Round);
    (at > 0 && is_named(tokens, at + 1) && until && !rounds).then_some(at)
}

/// “sc around till piece measures 4 in”: which tokens say how far.
fn measured(tokens: &[Token]) -> Option<(usize, usize)> {
    let at = tokens
        .iter()
        .rposition(|t| matches!(t.tok, Tok::Say(Say::To | Say::Until)))
        .filter(|&at| at > 0)?;
    let ends = |t: &Token| matches!(t.tok, Tok::Open(_) | Tok::Equals | Tok::Colon);
    let to = tokens[at..].iter().position(ends).map_or(tokens.len(), |n| at + n);
    let said = &tokens[at + 1..to];
    let idle = |t: &Token| {
        !t.tok.is_work()
            && !matches!(t.tok, Tok::Stitch | Tok::Round | Tok::Star | Tok::Say(Say::Row))
    };
    let length = said.windows(2).any(|pair| {
        matches!(pair[0].tok, Tok::Number(_) | Tok::OddNumber)
            && matches!(pair[1].tok, Tok::Unknown | Tok::Ring | Tok::Say(Say::In))
    });
    let measures = said.iter().any(|t| t.tok == Tok::Unknown);
    let works = tokens[..at].iter().any(|t| t.tok.is_work());
    (works && measures && length && said.iter().all(idle)).then_some((at, to))
}

/// “sc around x 3”: so many rounds, for a round goes around once.
fn times_around(tokens: &[Token]) -> Option<(usize, usize, Placed<u32>)> {
    let at = tokens.windows(3).position(|three| {
        matches!(
            (three[0].tok, three[1].tok, three[2].tok),
            (Tok::InEach | Tok::Say(Say::Around), Tok::Times, Tok::Number(2..=30))
        )
    })?;
    let Tok::Number(n) = tokens[at + 2].tok else { return None };
    let ends = tokens
        .get(at + 3)
        .is_none_or(|t| matches!(t.tok, Tok::Open(_) | Tok::Equals | Tok::Stop | Tok::Dash));
    let plain = tokens[..at]
        .iter()
        .all(|t| matches!(t.tok, Tok::Kind(_) | Tok::Number(1) | Tok::Even(_) | Tok::Say(_)));
    (ends && plain).then(|| (at + 1, at + 3, Placed::at(n, span(&tokens[at + 1..at + 3]))))
}

/// Whether stitches and rounds are counted over a length, as in “22 sc and 24 rounds to 10 cm”: a
/// gauge, which tells of no round.
pub(super) fn is_gauge(tokens: &[Token]) -> bool {
    tokens.windows(8).any(|line| {
        let [wide, stitch, and, tall, round, _, length, unit] = line else { return false };
        matches!(
            [wide.tok, tall.tok, length.tok],
            [Tok::Number(_), Tok::Number(_), Tok::Number(_)]
        ) && matches!(stitch.tok, Tok::Kind(_) | Tok::Stitch)
            && !and.tok.is_work()
            && round.tok == Tok::Round
            && unit.tok == Tok::Unknown
    })
}

/// “for 3 rounds”, “(5 rounds)”, “– 4 rnds”, “x4 rounds”: which tokens say so, and how many.
fn told(tokens: &[Token]) -> Option<(usize, usize, Placed<u32>)> {
    let is_round = |t: &Token| matches!(t.tok, Tok::Round | Tok::Say(Say::Row));
    // “eine Runde häkeln”
    if let [article, round, work, end @ ..] = tokens
        && article.tok == Tok::Say(Say::The)
        && round.tok == Tok::Round
        && matches!(work.tok, Tok::Say(Say::Work) | Tok::Even(_))
        && end.iter().all(|t| t.tok == Tok::Stop)
    {
        return Some((0, 2, Placed::at(1, span(&tokens[..2]))));
    }
    for at in 1..tokens.len() {
        // “4 more rounds”
        if at > 1
            && tokens[at - 1].tok == Tok::Say(Say::More)
            && is_round(&tokens[at])
            && let Tok::Number(n @ 1..) = tokens[at - 2].tok
        {
            return Some((at - 2, at + 1, Placed::at(n, span(&tokens[at - 2..=at]))));
        }
        let Tok::Number(n) = tokens[at - 1].tok else { continue };
        let turn = tokens[at].tok == Tok::Turn && at > 1 && tokens[at - 2].tok == Tok::Times;
        if !(is_round(&tokens[at]) || turn) || n == 0 {
            continue;
        }
        let one = tokens[at - 1].tok == Tok::Number(1);
        let before = at.checked_sub(2).map(|i| tokens[i].tok);
        // “the first 2 rounds”, “between rounds 8 and 9 rounds”: these are named, not counted.
        let named = matches!(
            before,
            Some(
                Tok::Round
                    | Tok::Say(
                        Say::Last | Say::From | Say::Row | Say::Repeat | Say::As | Say::To
                    )
                    | Tok::Ordinal(_)
                    | Tok::Number(_)
            )
        ) || matches!(tokens.get(at + 1).map(|t| t.tok), Some(Tok::Number(_)));
        if named || !(tokens[at].plural || one || turn || is_round(&tokens[at])) {
            continue;
        }
        let value = Placed::at(n, span(&tokens[at - 1..=at]));
        // Brackets that hold nothing else go with it.
        let open = tokens[..at - 1].iter().rposition(|t| matches!(t.tok, Tok::Open(_)));
        if let Some(open) = open
            && let Tok::Open(length) = tokens[open].tok
            && open + length > at
            && length <= 7
            && tokens[open + 1..open + length].iter().all(|t| {
                matches!(
                    t.tok,
                    Tok::Number(_)
                        | Tok::Round
                        | Tok::Dash
                        | Tok::Equals
                        | Tok::Times
                        | Tok::Unknown
                        | Tok::Stop
                        | Tok::Say(_)
                )
            })
            && tokens[open + 1..open + length]
                .iter()
                .filter(|t| matches!(t.tok, Tok::Number(_)))
                .count()
                == 1
        {
            return Some((open, open + length + 1, value));
        }
        let lead = tokens[..at - 1]
            .iter()
            .rev()
            .take(2)
            .take_while(|t| {
                matches!(
                    t.tok,
                    Tok::Dash
                        | Tok::Times
                        | Tok::Comma
                        | Tok::Say(Say::For | Say::Total | Say::The | Say::Over | Say::Then)
                )
            })
            .count();
        let tail = tokens[at + 1..]
            .iter()
            .take(2)
            .take_while(|t| {
                matches!(t.tok, Tok::Say(Say::More | Say::The | Say::Total | Say::With))
            })
            .count();
        return Some((at - 1 - lead, at + 1 + tail, value));
    }
    None
}
