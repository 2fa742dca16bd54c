//! The readings that one line of work leaves: as it stands, and with what texts leave unsaid
//! supplied in every usual way. Which of them is meant, the sums decide ([`super::judge`]).

use super::rewordings::{
    bare_numbers, behind_colon, behind_remark, bracketed_work, first_sentence, kind_supplied,
    kinds_joined, noun_supplied, stitches_among, stitches_are_plain, with_verb,
    without_colours, without_remarks,
};
use super::round::{LineReading, work};
use super::settle::is_worked;
use super::token::{Tok, Token};
use super::understanding::Inferred;
use crate::words::tally::tally;
use crate::words::tree::{Decrease, Op, Placed, Span, StitchKind, Times};

/// Lines of more operations than this are read as they stand.
const MOST_OPS: usize = 400;

/// One way to understand the work of a line.
#[derive(Debug, Clone)]
pub(super) struct Understood {
    pub(super) work: Vec<Placed<Op>>,
    pub(super) unread: Vec<Span>,
    pub(super) inferred: Vec<Inferred>,
}

impl Understood {
    fn of(worked: &LineReading, inferred: &[Inferred]) -> Self {
        Self {
            work: worked.work.clone(),
            unread: worked.unread.clone(),
            inferred: inferred.to_vec(),
        }
    }

    fn changed(&self, work: Vec<Placed<Op>>, what: Inferred) -> Self {
        let mut inferred = self.inferred.clone();
        inferred.push(what);
        Self { work, unread: self.unread.clone(), inferred }
    }
}

/// The readings of a line beside the one as it stands, plainest first. `tokens` are those of
/// its work, `plain` what they read as.
pub(super) fn others(
    tokens: &[Token],
    plain: &LineReading,
    text: &str,
    kind: StitchKind,
) -> Vec<Understood> {
    if plain.work.len() > MOST_OPS || tokens.len() > 4 * MOST_OPS {
        return Vec::new();
    }
    let mut found = Vec::new();
    let mut base = vec![(Understood::of(plain, &[]), plain.clone())];
    for (tokens, what) in [
        (without_remarks(tokens), Inferred::BracketIsRemark),
        (kinds_joined(tokens), Inferred::KindOfShaping),
        (stitches_among(tokens, kind), Inferred::PlainStitches),
        (bare_numbers(tokens, kind), Inferred::PlainStitches),
        (kind_supplied(tokens, kind), Inferred::PlainStitches),
        (behind_remark(tokens), Inferred::Remark),
        (first_sentence(tokens), Inferred::Remark),
        (noun_supplied(tokens), Inferred::IntoNext),
        (behind_colon(tokens), Inferred::Remark),
        (without_colours(tokens), Inferred::Remark),
        (bracketed_work(tokens).map(|(_, work)| work), Inferred::Remark),
    ] {
        if let Some(tokens) = tokens {
            let worked = work(&tokens, text, kind);
            base.push((Understood::of(&worked, &[what]), worked));
        }
    }
    if let Some(tokens) = stitches_are_plain(tokens, kind) {
        let worked = work(&tokens, text, kind);
        base.push((Understood::of(&worked, &[Inferred::Even]), worked));
    }
    for (shaping, first) in [(true, false), (true, true), (false, false), (false, true)] {
        let verb = match shaping {
            true => Tok::Increase(kind),
            false => Tok::Decrease(kind, Decrease::Plain),
        };
        if let Some(tokens) = with_verb(tokens, verb, first) {
            let worked = work(&tokens, text, kind);
            base.push((Understood::of(&worked, &[Inferred::Verb]), worked));
        }
    }
    for (i, (candidate, worked)) in base.iter().enumerate() {
        if i > 0 {
            found.push(candidate.clone());
        }
        variants(candidate, worked, kind, &mut found);
    }
    found
}

fn variants(
    from: &Understood,
    worked: &LineReading,
    kind: StitchKind,
    found: &mut Vec<Understood>,
) {
    let mut offer = |work: Option<Vec<Placed<Op>>>, what| {
        if let Some(work) = work {
            found.push(from.changed(work, what));
        }
    };
    let ops = &from.work;
    if worked.hints.stray.is_none() {
        offer(repeated(ops), Inferred::Repeat);
        offer(bracket_repeated(ops, &worked.hints.bare), Inferred::BracketRepeat);
    }
    offer(told_twice(ops), Inferred::Repeat);
    offer(lone_plain(ops), Inferred::Even);
    if worked.hints.every {
        offer(other_between(ops, 1), Inferred::Between);
        for by in [0, 1, -1] {
            offer(spaced(ops, by), Inferred::Between);
        }
    }
    // “decrease every 3 stitches” has as many usages as there are hands.
    if (worked.hints.every || worked.hints.every_nth) && decreases(ops) {
        for by in [-1, 1, 2] {
            offer(other_between(ops, by), Inferred::Between);
        }
    }
    offer(shaped_around(ops), Inferred::PlainBetween);
    offer(repeat_of_all(ops), Inferred::RepeatOfAll);
    offer(leading_repeat(ops), Inferred::RepeatOfAll);
    for by in [-1, 1] {
        offer(other_times(ops, worked.hints.unsure, by), Inferred::OtherTimes);
    }
    offer(inner_repeat(ops), Inferred::Repeat);
    offer(into_every(ops), Inferred::IntoEvery);
    offer(slip_closes(ops), Inferred::SlipCloses);
    offer(chain_over_skip(ops, kind), Inferred::ChainOverSkip);
    for (takes, into) in [(0, true), (0, false), (1, false)] {
        let counted = chain_counts(ops, takes, into, kind);
        offer(counted.clone(), Inferred::ChainCounts);
        if let Some(counted) = counted {
            offer(slip_closes(&counted), Inferred::ChainCounts);
            offer(repeated(&counted), Inferred::ChainCounts);
        }
    }
    offer(stitch_in_words(ops, &from.unread, kind), Inferred::StitchInWords);
    let only_shaped = worked.stated.is_some()
        && ops.iter().filter(|op| is_worked(&op.it)).all(|op| only_shapes(&op.it));
    if worked.hints.spread || only_shaped {
        offer(spread(ops, kind), Inferred::PlainBetween);
    }
}

/// Where the work of a list begins and ends, what is done around it left out.
fn worked_range(ops: &[Placed<Op>]) -> Option<(usize, usize)> {
    let worked = |op: &Placed<Op>| is_worked(&op.it);
    let first = ops.iter().position(worked)?;
    let last = ops.iter().rposition(worked)?;
    Some((first, last + 1))
}

fn hull(ops: &[Placed<Op>]) -> Span {
    let start = ops.iter().map(|op| op.at.start).min().unwrap_or_default();
    start..ops.iter().map(|op| op.at.end).max().unwrap_or_default()
}

/// `ops` with those from `from` to `to` as one group.
fn grouped(ops: &[Placed<Op>], from: usize, to: usize, times: Times) -> Vec<Placed<Op>> {
    let body = ops[from..to].to_vec();
    let at = hull(&body);
    let mut all = ops[..from].to_vec();
    all.push(Placed::at(Op::Group { body, times }, at));
    all.extend_from_slice(&ops[to..]);
    all
}

/// Whether how often is said somewhere in the list.
fn says_times(ops: &[Placed<Op>]) -> bool {
    ops.iter().any(|op| match &op.it {
        Op::Group { times: Times::Around, .. } => true,
        Op::Group { body, times: Times::In(n) } => *n > 1 || says_times(body),
        Op::Only { body, .. } => says_times(body),
        _ => false,
    })
}

/// Whether it increases or decreases, and works no plain stitch.
fn only_shapes(op: &Op) -> bool {
    match op {
        Op::Into { .. } | Op::Together { .. } => true,
        Op::Group { body, times: Times::In(_) } => body.iter().all(|op| only_shapes(&op.it)),
        _ => false,
    }
}

/// Whether it changes the number of stitches.
fn shapes(ops: &[Placed<Op>]) -> bool {
    tally(ops, None).is_ok_and(|sum| sum.taken > 0 && sum.taken != sum.left)
}

fn repeated(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    // The loop that all is worked in stays outside the repeat.
    if let ([Placed { it: Op::Only { only, body }, at }], 1) = (&ops[first..last], last - first)
    {
        let inner = repeated(body)?;
        let mut all = ops.to_vec();
        all[first] = Placed::at(Op::Only { only: *only, body: inner }, at.clone());
        return Some(all);
    }
    let inner = &ops[first..last];
    (!says_times(inner) && shapes(inner)).then(|| grouped(ops, first, last, Times::Around))
}

/// The last group that was said without how often, worked around.
fn bracket_repeated(ops: &[Placed<Op>], bare: &[usize]) -> Option<Vec<Placed<Op>>> {
    let at = ops.iter().rposition(|op| {
        matches!(op.it, Op::Group { times: Times::In(1), .. }) && bare.contains(&op.at.start)
    })?;
    if says_times(ops) {
        return None;
    }
    let mut all = ops.to_vec();
    if let Op::Group { times, .. } = &mut all[at].it {
        *times = Times::Around;
    }
    Some(all)
}

/// “2 sc, the 3rd and 4th st together, and so on”: the stitches before the shaping are told by
/// their number and by its place.
fn told_twice(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let inner = match &ops[first..last] {
        [Placed { it: Op::Group { body, .. }, .. }] => body.as_slice(),
        several => several,
    };
    let [Placed { it: Op::Each { count: told, .. }, .. }, group] = inner else { return None };
    let Op::Group { body, times: Times::Around } = &group.it else { return None };
    match body.first().map(|op| &op.it) {
        Some(Op::Each { count, .. }) if count == told => {}
        _ => return None,
    }
    let mut all = ops[..first].to_vec();
    all.push(group.clone());
    all.extend_from_slice(&ops[last..]);
    Some(all)
}

/// “sc (24)”: one in each, where no number is said.
fn lone_plain(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let mut all = ops.to_vec();
    let inner = match &mut all[first] {
        Placed { it: Op::Only { body, .. }, .. } if last - first == 1 => body.as_mut_slice(),
        op => std::slice::from_mut(op),
    };
    let [Placed { it, at }] = inner else { return None };
    let Op::Each { kind, count: 1 } = *it else { return None };
    if last - first != 1 {
        return None;
    }
    let one = Placed::at(Op::Each { kind, count: 1 }, at.clone());
    *it = Op::Group { body: vec![one], times: Times::Around };
    Some(all)
}

/// “increase every 2 stitches” may leave two between, or one: `by` more than was read.
fn other_between(ops: &[Placed<Op>], by: i32) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let mut all = ops.to_vec();
    let Op::Group { body, times: Times::Around } = &mut all[first].it else { return None };
    match &mut body.first_mut()?.it {
        Op::Each { count, .. } => {
            *count = count.checked_add_signed(by)?;
            if *count == 0 {
                body.remove(0);
            }
        }
        Op::Into { kind, .. } | Op::Together { kind, .. } => {
            let count = u32::try_from(by).ok().filter(|&n| n > 0)?;
            let plain = Op::Each { kind: *kind, count };
            let at = body[0].at.clone();
            body.insert(0, Placed::at(plain, at));
        }
        _ => return None,
    }
    (last - first == 1 && !body.is_empty()).then_some(all)
}

/// “inc in every 3 stitches”, read as three of them: one in three, or `by` more.
fn spaced(ops: &[Placed<Op>], by: i32) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let Op::Group { body, times: Times::In(n) } = &ops[first].it else { return None };
    let ([Placed { it: op, at }], 1) = (body.as_slice(), last - first) else { return None };
    let (kind, takes) = match op {
        Op::Into { kind, .. } => (*kind, 1),
        Op::Together { kind, many, .. } => (*kind, *many),
        _ => return None,
    };
    let count = n.checked_sub(takes)?.checked_add_signed(by).filter(|&n| n > 0)?;
    let plain = Placed::at(Op::Each { kind, count }, at.clone());
    let mut all = ops.to_vec();
    all[first].it = Op::Group { body: vec![plain, body[0].clone()], times: Times::Around };
    Some(all)
}

/// “sc around, increasing in every st”: the plain stitches say of what kind the others are.
fn shaped_around(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let around = |op: &Op| match op {
        Op::Group { body, times: Times::Around } => Some(shapes(body)),
        _ => None,
    };
    let [plain, shaping] = &ops[first..last] else { return None };
    let both = around(&plain.it) == Some(false) && around(&shaping.it) == Some(true);
    both.then(|| [&ops[..first], &ops[first + 1..]].concat())
}

/// Whether it leaves fewer stitches than it takes.
fn decreases(ops: &[Placed<Op>]) -> bool {
    ops.iter().any(|op| match &op.it {
        Op::Together { .. } => true,
        Op::Group { body, .. } | Op::Only { body, .. } => decreases(body),
        _ => false,
    })
}

/// “6 × 2 sc, inc”: how often, said first, holds for all that follows.
fn leading_repeat(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    if last - first < 2 || says_times(&ops[first + 1..last]) {
        return None;
    }
    let Op::Group { body, times: times @ Times::In(2..) } = &ops[first].it else { return None };
    let [one] = body.as_slice() else { return None };
    let all_of = [vec![one.clone()], ops[first + 1..last].to_vec()].concat();
    let at = hull(&ops[first..last]);
    let mut all = ops[..first].to_vec();
    all.push(Placed::at(Op::Group { body: all_of, times: *times }, at));
    all.extend_from_slice(&ops[last..]);
    Some(all)
}

/// “1 sc, inc × 6”: how often, said last, holds for all that stands before it.
pub(super) fn repeat_of_all(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    if last - first < 2 || says_times(&ops[first..last - 1]) {
        return None;
    }
    let (body, times) = match &ops[last - 1].it {
        Op::Group { body, times } if body.len() == 1 => (body.clone(), *times),
        // “inc, sc × 6” reads as six stitches.
        Op::Each { kind, count } if *count > 1 => {
            let one = Op::Each { kind: *kind, count: 1 };
            (vec![Placed::at(one, ops[last - 1].at.clone())], Times::In(*count))
        }
        _ => return None,
    };
    let all_of = [ops[first..last - 1].to_vec(), body].concat();
    let at = hull(&ops[first..last]);
    let mut all = ops[..first].to_vec();
    all.push(Placed::at(Op::Group { body: all_of, times }, at));
    all.extend_from_slice(&ops[last..]);
    Some(all)
}

fn other_times(ops: &[Placed<Op>], unsure: Option<usize>, by: i32) -> Option<Vec<Placed<Op>>> {
    let start = unsure?;
    let mut all = ops.to_vec();
    let group = all.iter_mut().find(|op| op.at.start == start)?;
    let Op::Group { times: Times::In(n), .. } = &mut group.it else { return None };
    *n = n.checked_add_signed(by).filter(|&n| n > 0)?;
    Some(all)
}

/// “1 inc in each st, rep × 7” says twice how often.
fn inner_repeat(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let [Placed { it: Op::Group { body, times: Times::In(_) }, .. }] = &ops[first..last] else {
        return None;
    };
    let [inner @ Placed { it: Op::Group { times: Times::Around, .. }, .. }] = body.as_slice()
    else {
        return None;
    };
    let mut all = ops.to_vec();
    all[first] = inner.clone();
    Some(all)
}

/// “2 sc around” may mean two in every stitch.
fn into_every(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (first, last) = worked_range(ops)?;
    let [Placed { it: Op::Each { kind, count: many @ 2..=3 }, at }] = &ops[first..last] else {
        return None;
    };
    let one = Placed::at(Op::Into { kind: *kind, many: *many }, at.clone());
    let mut all = ops.to_vec();
    all[first].it = Op::Group { body: vec![one], times: Times::Around };
    Some(all)
}

/// A slip stitch that is worked last, into the stitch it is told or into none, closes.
fn slip_closes(ops: &[Placed<Op>]) -> Option<Vec<Placed<Op>>> {
    let (_, last) = worked_range(ops)?;
    let slip = Op::Each { kind: StitchKind::Slip, count: 1 };
    let mut all = ops.to_vec();
    let op = all.get_mut(last - 1).filter(|op| op.it == slip)?;
    op.it = Op::Join;
    Some(all)
}

/// “ch 4, skip 4 sts”: chains over the stitches left out stand in their place, as for a slit.
fn chain_over_skip(ops: &[Placed<Op>], kind: StitchKind) -> Option<Vec<Placed<Op>>> {
    let mut all = ops.to_vec();
    let mut changed = false;
    let mut at = 0;
    while let Some(pair) = all.get(at..at + 2) {
        if let (Op::Chain(n), Op::Skip(m)) | (Op::Skip(m), Op::Chain(n)) =
            (&pair[0].it, &pair[1].it)
            && *m > 0
        {
            // The chains come first in the next round where they are not as many.
            let stand = Op::Each { kind, count: *n };
            let span = hull(pair);
            if n == m {
                all.splice(at..at + 2, [Placed::at(stand, span)]);
                changed = true;
            }
        }
        at += 1;
    }
    changed.then_some(all)
}

/// The chain at the start as a stitch that takes `takes`, or as one more in the first.
fn chain_counts(
    ops: &[Placed<Op>],
    takes: u32,
    into: bool,
    kind: StitchKind,
) -> Option<Vec<Placed<Op>>> {
    let first = ops.iter().position(|op| !matches!(op.it, Op::Note(_) | Op::Colour(_)))?;
    if !matches!(ops[first].it, Op::Chain(1..=5)) {
        return None;
    }
    let at = ops[first].at.clone();
    let mut all = ops.to_vec();
    let next = ops.get(first + 1);
    let place = |all: &mut Vec<Placed<Op>>, op: Op| all[first] = Placed::at(op, at.clone());
    match (next.map(|op| &op.it), takes, into) {
        // A ring: one stitch more in it.
        (Some(Op::Ring { kind, count }), 0, false) => {
            all[first + 1].it = Op::Ring { kind: *kind, count: count.saturating_add(1) };
        }
        (Some(Op::Ring { .. }), ..) => return None,
        (_, 1, _) => place(&mut all, Op::Each { kind, count: 1 }),
        // “3 ch and 1 dc in the first st”: two in one.
        (Some(Op::Each { kind, count: 1 }), 0, true) => {
            all[first + 1].it = Op::Into { kind: *kind, many: 2 };
        }
        _ => return None,
    }
    Some(all)
}

/// Words that name one stitch and were not understood hold that stitch: “begin with a
/// standing dc in the first st”.
fn stitch_in_words(
    ops: &[Placed<Op>],
    unread: &[Span],
    kind: StitchKind,
) -> Option<Vec<Placed<Op>>> {
    let first = ops.iter().position(|op| is_worked(&op.it))?;
    let at = ops[..first]
        .iter()
        .position(|op| matches!(op.it, Op::Note(_)) && unread.contains(&op.at))?;
    let mut all = ops.to_vec();
    all[at].it = Op::Each { kind, count: 1 };
    Some(all)
}

/// So many shapings, evenly spaced: plain stitches make up what is left.
fn spread(ops: &[Placed<Op>], kind: StitchKind) -> Option<Vec<Placed<Op>>> {
    let (_, last) = worked_range(ops)?;
    let at = ops[last - 1].at.clone();
    let plain = Placed::at(Op::Each { kind, count: 1 }, at.clone());
    let mut all = ops.to_vec();
    let rest = Op::Group { body: vec![plain], times: Times::Around };
    all.insert(last, Placed::at(rest, at));
    Some(all)
}
