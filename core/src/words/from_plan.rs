//! From a plan to the tree of its written pattern.

use super::tree::{Decrease, Line, Op, Pattern, Placed, Rounds, StitchKind, Times};
use crate::piece::cloth::{Kind, Loop, Working};
use crate::piece::{Piece, Yarn};
use crate::plan::colours::coloured_steps;
use crate::plan::counts::Start;
use crate::plan::placement::{Placement, Run, Stitch};
use crate::plan::{Plan, Round};

impl From<Kind> for StitchKind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Single => Self::Single,
            Kind::HalfDouble => Self::HalfDouble,
            Kind::Double => Self::Double,
        }
    }
}

/// The whole written pattern of `piece`, planned as `plan`: the foundation chain, the rounds
/// with changes of yarn and the stuffing between them, and fastening off.
pub fn pattern(piece: &Piece, plan: &Plan) -> Pattern {
    let mut lines = Vec::new();
    let mut put = |line| lines.push(Placed::unread(line));
    let doing = |ops: Vec<Op>| Line::Do(ops.into_iter().map(Placed::unread).collect());
    match plan.start {
        Start::Ring => {}
        Start::Chain(n) => put(doing(vec![Op::Chain(n), Op::Join])),
        Start::Oval(n) => {
            let up = piece.kind_of_round(1).turning_chain();
            put(doing(vec![Op::Chain(n + up)]));
        }
    }
    let mut yarn = plan.rounds.first().map_or(0, |round| round.yarn);
    for (number, round) in (1..).zip(&plan.rounds) {
        if round.yarn != yarn {
            yarn = round.yarn;
            put(doing(vec![Op::Colour(Yarn::letter(yarn))]));
        }
        let mut work = planned_work(piece, plan, number);
        if matches!(piece.working, Working::Joined { .. }) {
            // A ring needs none, and the chain of an oval has its own already.
            if number > 1 || matches!(plan.start, Start::Chain(_)) {
                work.insert(0, Placed::unread(Op::Chain(round.kind.turning_chain())));
            }
            work.push(Placed::unread(Op::Join));
        }
        let stated = Some(Placed::unread(round.count));
        put(Line::Rounds(Rounds { first: number, last: number, work, stated }));
        if plan.stuffing.iter().any(|stop| stop.after == number) {
            put(doing(vec![Op::Stuff]));
        }
    }
    put(doing(vec![Op::FastenOff]));
    Pattern { lines }
}

/// What is worked in round `number` of `piece`, planned as `plan`, with its changes of yarn;
/// nothing past the last round.
pub fn planned_work(piece: &Piece, plan: &Plan, number: u32) -> Vec<Placed<Op>> {
    let Some(k) = (number as usize).checked_sub(1) else { return Vec::new() };
    let Some(round) = plan.rounds.get(k) else { return Vec::new() };
    let (kind, only) = (round.kind.into(), piece.loops.get(&number).copied());
    if round.colours.is_empty() {
        return round_work(plan.start, number, &round.placement, kind, only);
    }
    // The yarn on the hook: where the yarn changes from round to round, that is said between.
    let own = round.yarn;
    let ends_in = |round: &Round| round.colours.last().map_or(round.yarn, |run| run.yarn);
    let before = k.checked_sub(1).and_then(|k| plan.rounds.get(k));
    let on_hook = before.filter(|before| before.yarn == own).map_or(own, ends_in);
    let next = plan.rounds.get(k + 1);
    let back = next.is_some_and(|next| next.yarn == own && next.colours.is_empty());
    let steps: Vec<(Stitch, usize)> =
        coloured_steps(&round.placement, &round.colours, own).collect();
    let mut ops = coloured_work(&steps, on_hook, kind);
    if back && ends_in(round) != own {
        ops.push(Placed::unread(Op::Colour(Yarn::letter(own))));
    }
    match only {
        Some(only) => vec![Placed::unread(Op::Only { only, body: ops })],
        None => ops,
    }
}

/// Steps in several yarns, as their shortest repeat.
fn coloured_work(
    steps: &[(Stitch, usize)],
    on_hook: usize,
    kind: StitchKind,
) -> Vec<Placed<Op>> {
    let n = steps.len();
    let repeats = |length: usize| {
        n.is_multiple_of(length) && steps.chunks(length).all(|c| *c == steps[..length])
    };
    let length = (1..=n).find(|&length| repeats(length)).unwrap_or(n);
    let last = steps.get(length.saturating_sub(1)).map_or(on_hook, |&(_, yarn)| yarn);
    let several = length < n;
    let mut now = if several { last } else { on_hook };
    let mut ops: Vec<Placed<Op>> = Vec::new();
    let mut plain = 0;
    let put_plain = |ops: &mut Vec<Placed<Op>>, plain: &mut u32| {
        if *plain > 0 {
            let count = std::mem::take(plain);
            ops.push(Placed::unread(Op::Each { kind, count }));
        }
    };
    for &(stitch, yarn) in &steps[..length] {
        if yarn != now {
            put_plain(&mut ops, &mut plain);
            ops.push(Placed::unread(Op::Colour(Yarn::letter(yarn))));
            now = yarn;
        }
        if stitch == Stitch::Plain {
            plain += 1;
            continue;
        }
        put_plain(&mut ops, &mut plain);
        ops.push(shaped(stitch, kind));
    }
    put_plain(&mut ops, &mut plain);
    if !several {
        return ops;
    }
    // All in one other yarn: it is taken up once.
    let first = steps.first().map_or(now, |&(_, yarn)| yarn);
    let taken = (first != on_hook && first == last)
        .then(|| Placed::unread(Op::Colour(Yarn::letter(first))));
    let group = Op::Group { body: ops, times: Times::In((n / length) as u32) };
    taken.into_iter().chain([Placed::unread(group)]).collect()
}

/// What is worked in round `number` of a piece that begins with `start`. The first round goes
/// into the ring or along the chain, whatever loop the others are worked in.
pub fn round_work(
    start: Start,
    number: u32,
    placement: &Placement,
    kind: StitchKind,
    only: Option<Loop>,
) -> Vec<Placed<Op>> {
    match (number, start) {
        (1, Start::Ring) => {
            vec![Placed::unread(Op::Ring { kind, count: placement.produced() })]
        }
        (1, Start::Oval(chain)) => along_chain(chain, placement.produced(), kind),
        _ => work(placement, kind, only),
    }
}

/// The first round of an oval, along both sides of a chain of `chain` and as many more as
/// bring the hook up to the height of its stitches: the first goes into the chain after those.
fn along_chain(chain: u32, count: u32, kind: StitchKind) -> Vec<Placed<Op>> {
    let side = chain.saturating_sub(2);
    let end = count.saturating_sub(2 * side) / 2;
    let along = Op::Each { kind, count: side };
    let up = match kind {
        StitchKind::Slip | StitchKind::Single => 1,
        StitchKind::HalfDouble => 2,
        StitchKind::Double => 3,
        StitchKind::Treble => 4,
    };
    let first = Op::IntoChain { kind, count: end, nth: up + 1 };
    let last = Op::IntoChain { kind, count: end, nth: 0 };
    let ops = match side {
        0 => vec![first, last],
        _ => vec![first, along.clone(), last, Op::OtherSide, along],
    };
    ops.into_iter().map(Placed::unread).collect()
}

/// What is worked in one round, into both loops or one.
pub fn work(placement: &Placement, kind: StitchKind, only: Option<Loop>) -> Vec<Placed<Op>> {
    let group = |body, times| vec![Placed::unread(Op::Group { body, times })];
    let body = match placement.motif.as_slice() {
        [Run { shaping: Stitch::Plain, .. }] => {
            group(vec![Placed::unread(Op::Each { kind, count: 1 })], Times::Around)
        }
        motif => match (motif_work(motif, kind), placement.repeats) {
            (once, 1) => once,
            (once, k) => group(once, Times::In(k)),
        },
    };
    match only {
        Some(only) => vec![Placed::unread(Op::Only { only, body })],
        None => body,
    }
}

/// One pass of a motif. Plain stitches that meet are counted together, and what is worked
/// three times or more in a row is one group.
fn motif_work(motif: &[Run], kind: StitchKind) -> Vec<Placed<Op>> {
    // Each part: plain stitches, then a shaping stitch, so many times in a row.
    let mut parts: Vec<(u32, Stitch, u32)> = Vec::with_capacity(motif.len());
    let mut carried = 0;
    for run in motif {
        let again = run.before + run.after;
        for (plain, times) in [(carried + run.before, 1), (again, run.times - 1)] {
            match parts.last_mut() {
                _ if times == 0 => {}
                Some((p, s, n)) if (*p, *s) == (plain, run.shaping) => *n += times,
                _ => parts.push((plain, run.shaping, times)),
            }
        }
        carried = run.after;
    }
    let each = |count| Placed::unread(Op::Each { kind, count });
    let mut ops = Vec::with_capacity(2 * parts.len() + 1);
    for (plain, shaping, times) in parts {
        let once = (plain > 0).then(|| each(plain)).into_iter().chain([shaped(shaping, kind)]);
        match times {
            1..=2 => ops.extend((0..times).flat_map(|_| once.clone())),
            n => {
                let group = Op::Group { body: once.collect(), times: Times::In(n) };
                ops.push(Placed::unread(group));
            }
        }
    }
    if carried > 0 {
        ops.push(each(carried));
    }
    ops
}

/// A shaping stitch of a placement.
fn shaped(shaping: Stitch, kind: StitchKind) -> Placed<Op> {
    Placed::unread(match shaping {
        Stitch::Plain => Op::Each { kind, count: 1 },
        Stitch::Increase => Op::Into { kind, many: 2 },
        Stitch::Decrease => Op::Together { kind, many: 2, how: Decrease::Plain },
    })
}
