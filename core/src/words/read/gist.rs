//! The gist of a round whose words were not all understood: the plain, increasing or
//! decreasing round that the stitches there are and those stated come to, if every number
//! that the line names has its place in it.

use super::draft::Draft;
use super::readings::Understood;
use super::token::{Say, Tok, Token, span};
use super::understanding::Inferred;
use crate::words::tally::tally;
use crate::words::tree::{Decrease, Op, Placed, Span, StitchKind, Times};

/// Numbers a line may name before its gist is left alone.
const MOST_NUMBERS: usize = 8;
/// Longer lines are left alone.
const MOST_TOKENS: usize = 200;
/// Fewest and most stitches that a ring is begun with. Common practice, no source.
const RING: std::ops::RangeInclusive<u32> = 3..=24;

/// What a line names beside the count it states.
struct GistWords {
    numbers: Vec<u32>,
    /// Ordinals: places in the round.
    places: Vec<u32>,
    /// “one stitch in three”
    one_in: Option<u32>,
    increases: bool,
    decreases: bool,
    spread: bool,
    /// “each”, “around”: everywhere.
    each: bool,
    ring: bool,
    /// Whether any stitch is named.
    stitches: bool,
}

impl GistWords {
    /// None where some number counts nothing, or there are too many.
    fn of(tokens: &[Token], stated: Option<&Span>) -> Option<Self> {
        let own = |t: &&Token| {
            stated.is_none_or(|at| t.at().end <= at.start || t.at().start >= at.end)
        };
        let tokens: Vec<&Token> = tokens.iter().filter(own).collect();
        let any = |want: &dyn Fn(Tok) -> bool| tokens.iter().any(|t| want(t.tok));
        let (mut numbers, mut places) = (Vec::new(), Vec::new());
        for (i, token) in tokens.iter().enumerate() {
            // “die 13. Runde” is its name.
            let points = usize::from(tokens.get(i + 1).is_some_and(|t| t.tok == Tok::Stop));
            if tokens.get(i + 1 + points).is_some_and(|t| t.tok == Tok::Round) {
                continue;
            }
            match token.tok {
                Tok::Ordinal(n) => places.push(n),
                Tok::Number(n) if points > 0 => places.push(n),
                Tok::Number(n) | Tok::Turns(n) => numbers.push(n),
                Tok::OddNumber => return None,
                _ => {}
            }
        }
        let placed = |t: &Token| matches!(t.tok, Tok::InEach | Tok::Say(Say::In | Say::Each));
        // “2 sc in each”, “sc 2 in”, “2 in each”
        let two_in_one = tokens.windows(2).enumerate().any(|(i, pair)| {
            let behind = tokens.get(i + 2).is_some_and(|t| placed(t));
            match (pair[0].tok, pair[1].tok) {
                // “1 M 2 fM”
                (Tok::Number(2), Tok::Kind(_))
                    if i > 1
                        && tokens[i - 1].tok == Tok::Stitch
                        && tokens[i - 2].tok == Tok::Number(1) =>
                {
                    true
                }
                (Tok::Number(2), Tok::Kind(_)) | (Tok::Kind(_), Tok::Number(2)) => behind,
                (Tok::Number(2), _) => placed(pair[1]),
                _ => false,
            }
        });
        // “twice in every other stitch”
        let twice = tokens
            .iter()
            .any(|t| matches!(t.tok, Tok::InEach | Tok::Say(Say::Each | Say::Over)))
            && (any(&|t| t == Tok::Turns(2))
                || tokens
                    .windows(2)
                    .any(|pair| pair[0].tok == Tok::Number(2) && pair[1].tok == Tok::Times));
        // “une maille sur trois”, “uno de cada tres”
        let one_in = tokens.windows(2).enumerate().find_map(|(i, pair)| {
            let (Tok::Say(Say::Over | Say::Each), Tok::Number(n @ 2..)) =
                (pair[0].tok, pair[1].tok)
            else {
                return None;
            };
            let one = tokens[i.saturating_sub(3)..i].iter().any(|t| t.tok == Tok::Number(1));
            one.then_some(n)
        });
        if let Some(n) = one_in {
            numbers.retain(|&m| m != 1 && m != n);
            places.push(n);
        }
        let decreases = any(&|t| matches!(t, Tok::Decrease(..) | Tok::Say(Say::Together)));
        let shaped = any(&|t| matches!(t, Tok::Increase(_) | Tok::Say(Say::Doubled)));
        Some(Self {
            increases: shaped || (two_in_one || twice) && !decreases,
            decreases,
            spread: any(&|t| t == Tok::Say(Say::Spread)),
            each: any(&|t| matches!(t, Tok::InEach | Tok::Say(Say::Each | Say::Around))),
            ring: any(&|t| t == Tok::Ring),
            // “one in each” names none, and means one.
            stitches: any(&|t| matches!(t, Tok::Kind(_) | Tok::Stitch | Tok::Even(_)))
                || tokens
                    .windows(2)
                    .any(|pair| pair[0].tok == Tok::Number(1) && pair[1].tok == Tok::InEach),
            numbers,
            places,
            one_in,
        })
        .filter(|named| named.numbers.len() + named.places.len() <= MOST_NUMBERS)
    }

    /// With the shaping of the round before, where places are named and nothing that is done.
    fn going_on(mut self, grows: Option<bool>) -> Self {
        let placed = !self.places.is_empty() && self.numbers.is_empty();
        if let Some(grows) = grows
            && placed
            && !self.increases
            && !self.decreases
            && !self.ring
        {
            (self.increases, self.decreases) = (grows, !grows);
        }
        self
    }

    /// The stitches that one shaping goes over, where all are worked so: “increase in each”,
    /// “always two together”.
    fn everywhere(&self) -> Option<u32> {
        let small = self.numbers.iter().all(|&n| n <= 2) && self.places.is_empty();
        match (self.increases, self.decreases) {
            (true, false) if self.each && small => Some(1),
            (false, true) if small && (self.each || self.has(2)) => Some(2),
            _ => None,
        }
    }

    /// With the shaping that the counts come to, where no shaping is named and a number is.
    fn as_counted(&self, below: u32, left: u32) -> Option<Self> {
        let named = self.increases || self.decreases;
        let told = !self.numbers.is_empty() || !self.places.is_empty();
        (!named && told && left != below).then(|| Self {
            increases: left > below,
            decreases: left < below,
            numbers: self.numbers.clone(),
            places: self.places.clone(),
            ..*self
        })
    }

    fn has(&self, n: u32) -> bool {
        self.numbers.contains(&n) || self.places.contains(&n)
    }

    /// Whether it names no number but these.
    fn only(&self, allowed: &[u32]) -> bool {
        self.numbers.iter().chain(&self.places).all(|n| allowed.contains(n))
    }

    /// Whether it says that there are `by` shapings, on the stitches from `below` to `left`,
    /// wherever they go.
    fn told(&self, by: u32, below: u32, left: u32) -> bool {
        let counts = [1, 2, by, below, left];
        let placed = self.spread || !self.places.is_empty();
        placed
            && self.numbers.contains(&by)
            && self.numbers.iter().all(|n| counts.contains(n))
            && self.places.iter().all(|&n| n <= below)
    }
}

/// The gist of `draft` on `below` stitches, plainest first; `begins` where it may be the
/// first round of a piece; `grows` says what the round before did, which goes on where places
/// alone are named: “in round 3 every 2nd”. Whether one is meant is for the sums to say.
pub(super) fn gist(
    draft: &Draft,
    stated: Option<&Placed<u32>>,
    below: Option<u32>,
    begins: bool,
    grows: Option<bool>,
) -> Vec<Understood> {
    if draft.tokens.len() > MOST_TOKENS {
        return Vec::new();
    }
    let Some(named) = GistWords::of(&draft.tokens, stated.map(|s| &s.at)) else {
        return Vec::new();
    };
    let named = named.going_on(grows.filter(|_| draft.heading.is_some() || stated.is_some()));
    let at = span(&draft.tokens);
    let mut works: Vec<Vec<Op>> = Vec::new();
    // Those that stand on numbers alone, for no word of them says what is done.
    let mut counted: Vec<Vec<Op>> = Vec::new();
    // “Round 1: put six stitches in the loop you made (6)”: a first round of as many as stated.
    let first = draft.heading.is_some_and(|h| h.numbered && h.first == 1 && h.last == 1)
        && named.stitches
        && stated.is_some_and(|s| named.numbers.contains(&s.it) && named.only(&[1, 2, s.it]));
    if begins && (named.ring || first) && !named.decreases {
        works.extend(ring(&named, stated.map(|s| s.it), draft.kind).map(|op| vec![op]));
    }
    if let Some(below) = below {
        match stated {
            Some(stated) => {
                works.extend(shaped(&named, below, stated.it, draft.kind, &at));
                // Where no shaping is named, its numbers may still tell it.
                let meant = named.as_counted(below, stated.it);
                counted
                    .extend(meant.and_then(|m| shaped(&m, below, stated.it, draft.kind, &at)));
            }
            // Without a count the numbers named say how far apart the shaping is; those of
            // words that are not understood say nothing.
            None if numbers_unread(draft) => {}
            None => {
                let all = named.numbers.iter().chain(&named.places);
                let everywhere = named.everywhere();
                let periods = all.flat_map(|&n| [n, n.saturating_add(1)]).chain(everywhere);
                let one_in = named.one_in;
                let periods = periods.filter(|&p| one_in.is_none_or(|n| n == p));
                for period in periods.filter(|&p| p > 0 && below % p == 0) {
                    let by = below / period;
                    let left = match (named.increases, named.decreases) {
                        (true, false) => below.saturating_add(by),
                        (false, true) => below - by,
                        _ => continue,
                    };
                    works.extend(shaped(&named, below, left, draft.kind, &at));
                }
            }
        }
    }
    let understood = |ops: Vec<Op>, inferred: &[Inferred]| Understood {
        work: ops.into_iter().map(|op| Placed::at(op, at.clone())).collect(),
        unread: draft.worked.unread.clone(),
        inferred: inferred.to_vec(),
    };
    let named = works.into_iter().map(|ops| understood(ops, &[Inferred::Sums]));
    let counted =
        counted.into_iter().map(|ops| understood(ops, &[Inferred::Sums, Inferred::Counts]));
    named.chain(counted).collect()
}

/// Whether a number stands among words that were not understood: “1 peacefully”.
fn numbers_unread(draft: &Draft) -> bool {
    let unread = &draft.worked.unread;
    let inside = |t: &Token| unread.iter().any(|at| at.contains(&t.at().start));
    draft.tokens.iter().any(|t| matches!(t.tok, Tok::Number(_)) && inside(t))
}

/// The round from `below` to `left` stitches by its counts alone: what a line comes to whose
/// words say nothing, as far as they do not say otherwise. Whether its own words bear it out
/// comes second: a number of theirs has its place in it, or they have none.
pub(super) fn by_counts(
    draft: &Draft,
    below: u32,
    stated: &Placed<u32>,
) -> Option<(Understood, bool)> {
    if draft.tokens.len() > MOST_TOKENS || below < 3 || stated.it < 3 {
        return None;
    }
    let named = GistWords::of(&draft.tokens, Some(&stated.at))?;
    let left = stated.it;
    let (gains, loses) = (left > below, left < below);
    let plausible = left <= below.saturating_mul(2) && left.saturating_mul(2) >= below;
    let against = named.increases && !gains || named.decreases && !loses || named.ring;
    if !plausible || against || (gains || loses) && draft.many() > 1 {
        return None;
    }
    let by = left.abs_diff(below);
    let borne_out = named.numbers.iter().chain(&named.places).all(|&n| {
        n <= 2 || n == by || n == below || n == left || by > 0 && n <= below.div_ceil(by)
    });
    let at = span(&draft.tokens);
    let placed = |op| Placed::at(op, at.clone());
    let kind = draft.kind;
    let group = |body: Vec<Op>, times| Op::Group {
        body: body.into_iter().map(placed).collect(),
        times,
    };
    let plain = |count: u32| (count > 0).then_some(Op::Each { kind, count });
    let (takes, one) = if gains {
        (1, Op::Into { kind, many: 2 })
    } else {
        (2, Op::Together { kind, many: 2, how: Decrease::Plain })
    };
    let ops = match below.checked_rem(by) {
        None => vec![group(vec![Op::Each { kind, count: 1 }], Times::Around)],
        Some(0) => {
            let between = plain((below / by).checked_sub(takes)?);
            vec![group(between.into_iter().chain([one]).collect(), Times::In(by))]
        }
        Some(_) => {
            let rest = plain(below.checked_sub(by.checked_mul(takes)?)?);
            [group(vec![one], Times::In(by))].into_iter().chain(rest).collect()
        }
    };
    let understood = Understood {
        work: ops.into_iter().map(placed).collect(),
        unread: draft.worked.unread.clone(),
        inferred: vec![Inferred::Counts],
    };
    Some((understood, borne_out))
}

/// `work` on `below` stitches where what is worked around does not go in to the end: the last
/// time it is worked as far as the stitches reach. None where that leaves a shaping half done.
pub(super) fn cut_short(work: &[Placed<Op>], below: u32) -> Option<Vec<Placed<Op>>> {
    let around = |op: &Placed<Op>| matches!(op.it, Op::Group { times: Times::Around, .. });
    let at = work.iter().position(around)?;
    let Op::Group { body, .. } = &work[at].it else { return None };
    let rest = [&work[..at], &work[at + 1..]].concat();
    let (once, rest) = (tally(body, None).ok()?, tally(&rest, None).ok()?);
    let room = below.checked_sub(rest.taken)?;
    let (times, mut over) = (room.checked_div(once.taken)?, room.checked_rem(once.taken)?);
    if times == 0 || over == 0 {
        return None;
    }
    let mut all = work[..at].to_vec();
    let whole = Op::Group { body: body.clone(), times: Times::In(times) };
    all.push(Placed::at(whole, work[at].at.clone()));
    for op in body {
        match &op.it {
            _ if over == 0 => break,
            Op::Each { kind, count } => {
                let count = over.min(*count);
                over -= count;
                all.push(Placed::at(Op::Each { kind: *kind, count }, op.at.clone()));
            }
            Op::Into { .. } => {
                over -= 1;
                all.push(op.clone());
            }
            _ => return None,
        }
    }
    all.extend_from_slice(&work[at + 1..]);
    (over == 0).then_some(all)
}

/// A ring of the one number that is named.
fn ring(named: &GistWords, stated: Option<u32>, kind: StitchKind) -> Option<Op> {
    let mut counts = named.numbers.iter().copied().filter(|&n| n > 2);
    let count = counts.next().or(stated)?;
    let sole = counts.all(|n| n == count);
    (sole && RING.contains(&count)).then_some(Op::Ring { kind, count })
}

/// The round from `below` to `left` stitches whose numbers are those named.
fn shaped(
    named: &GistWords,
    below: u32,
    left: u32,
    kind: StitchKind,
    at: &Span,
) -> Option<Vec<Op>> {
    let placed = |op| Placed::at(op, at.clone());
    let plain = |count| Op::Each { kind, count };
    let group = |body: Vec<Op>, times| Op::Group {
        body: body.into_iter().map(placed).collect(),
        times,
    };
    if left == below && !named.increases && !named.decreases {
        let even = named.stitches && named.only(&[1, below]);
        return even.then(|| vec![group(vec![plain(1)], Times::Around)]);
    }
    let (by, takes, one) = if left > below && named.increases && !named.decreases {
        (left - below, 1, Op::Into { kind, many: 2 })
    } else if left < below && named.decreases && !named.increases {
        (below - left, 2, Op::Together { kind, many: 2, how: Decrease::Plain })
    } else {
        return None;
    };
    let loose = || {
        let rest = below.checked_sub(by.checked_mul(takes)?)?;
        let rest = (rest > 0).then(|| plain(rest));
        let all = [group(vec![one.clone()], Times::In(by))].into_iter().chain(rest).collect();
        named.told(by, below, left).then_some(all)
    };
    if !below.is_multiple_of(by) || below / by < takes {
        return loose();
    }
    let period = below / by;
    let between = period - takes;
    let said = period == takes
        || named.has(period)
        || between > 1 && named.has(between)
        || between == 1 && !named.numbers.is_empty();
    let allowed = [1, 2, period, period - 1, between, by, by - 1, below, left];
    if !said || !named.only(&allowed) {
        return loose();
    }
    let body = (between > 0).then(|| plain(between)).into_iter().chain([one]).collect();
    Some(vec![group(body, Times::In(by))])
}
