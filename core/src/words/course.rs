//! A written pattern piece by piece, round by round: what every round finds, takes and
//! leaves, and with which count the next one goes on. The proofreader and the shaper share it.

use super::tally::{Tally, TallyError, tally};
use super::tree::{Line, Op, Pattern, Placed, Rounds, Span, Times};
use crate::piece::MOST_ROUNDS;

/// One piece of a pattern.
#[derive(Debug, Clone)]
pub struct Course<'a> {
    /// Its name, where the pattern gives one.
    pub name: Option<&'a str>,
    /// Chains of its foundation, where it begins on one.
    pub chain: Option<u32>,
    /// Its lines, in order, the name left out.
    pub lines: &'a [Placed<Line>],
    /// Its rounds, in order.
    pub steps: Vec<CourseStep<'a>>,
}

/// A round of a piece, or a line of several alike.
#[derive(Debug, Clone)]
pub struct CourseStep<'a> {
    /// Index of its line in [`Course::lines`].
    pub line: usize,
    /// Where the line stands.
    pub at: &'a Span,
    /// The round.
    pub rounds: &'a Rounds,
    /// What becomes of it on the stitches there are.
    pub run: LineRun,
    /// Whether it begins the piece: into a ring or into chains, not into a round below.
    pub founds: bool,
    /// Whether some of it could not be read, so that its work says nothing.
    pub unread: bool,
    /// Stitches the next round finds, as far as anyone can know: computed or stated,
    /// whichever the next round is worked on.
    pub count: Option<u32>,
}

/// What becomes of a line of rounds on the stitches there are.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LineRun {
    /// Stitches of the round below; `None` where nobody knows.
    pub below: Option<u32>,
    /// What one round takes and leaves: the first, or the one that does not come out.
    pub sum: Result<Tally, TallyError>,
    /// Stitches after each round of the line, as far as it comes out.
    pub counts: Vec<u32>,
    /// Stitches that the first round of the line takes, where it can be told.
    pub takes: Option<u32>,
}

impl LineRun {
    /// Works `rounds` rounds of `work` one on another, the first on `below`.
    pub fn of(work: &[Placed<Op>], rounds: u32, below: Option<u32>) -> Self {
        let rounds = (rounds as usize).clamp(1, MOST_ROUNDS);
        let mut run =
            Self { below, sum: Ok(Tally::default()), counts: Vec::new(), takes: None };
        while run.counts.len() < rounds {
            run.sum = tally(work, run.below);
            let Ok(sum) = run.sum else { break };
            run.takes.get_or_insert(sum.taken);
            if run.below.is_some_and(|below| below != sum.taken) {
                break;
            }
            if sum.taken == sum.left {
                run.counts.resize(rounds, sum.left);
            } else {
                run.counts.push(sum.left);
            }
            if run.counts.len() < rounds {
                run.below = Some(sum.left);
            }
        }
        run
    }

    /// Whether every round takes just the stitches there are.
    pub fn comes_out(&self) -> bool {
        self.sum.as_ref().is_ok_and(|sum| self.below.is_none_or(|below| below == sum.taken))
    }

    /// Stitches after the last round, by its work alone.
    pub fn left(&self) -> Option<u32> {
        self.sum.as_ref().ok().map(|sum| sum.left)
    }
}

impl CourseStep<'_> {
    /// Rounds the line stands for.
    pub fn many(&self) -> u32 {
        many(self.rounds)
    }

    /// The count the text states, if any.
    pub fn stated(&self) -> Option<u32> {
        self.rounds.stated.as_ref().map(|s| s.it)
    }

    /// Every round of the line by its printed number, with its stitches where they are known.
    pub fn counted(&self) -> impl Iterator<Item = (u32, Option<u32>)> {
        let last = (self.many() as usize).min(MOST_ROUNDS) - 1;
        let through = (0..last).map(|i| self.run.counts.get(i).copied().or(self.count));
        (self.rounds.first..).zip(through.chain([self.count]))
    }

    /// `Rnd 7`, or `Rnds 7–9`.
    pub fn heading(&self) -> String {
        let Rounds { first, last, .. } = self.rounds;
        if last > first { format!("Rnds {first}–{last}") } else { format!("Rnd {first}") }
    }
}

fn many(rounds: &Rounds) -> u32 {
    rounds.last.saturating_sub(rounds.first).saturating_add(1)
}

/// How well `rounds` can be worked on `count` stitches: 0 not at all, 1 it takes just those,
/// 2 it also comes to what it states.
pub fn suits(rounds: &Rounds, count: u32) -> u32 {
    let run = LineRun::of(&rounds.work, many(rounds), Some(count));
    match (run.comes_out(), &rounds.stated) {
        (false, _) => 0,
        (true, Some(stated)) if run.left() != Some(stated.it) => 1,
        (true, _) => 2,
    }
}

/// Whether work begins a piece: somewhere in it stitches go into a ring or into chains.
pub fn founds(work: &[Placed<Op>]) -> bool {
    work.iter().any(|op| match &op.it {
        Op::Ring { .. } | Op::IntoChain { .. } => true,
        Op::Group { body, .. } | Op::Only { body, .. } => founds(body),
        _ => false,
    })
}

/// So many numbers back and on from there is another piece; fewer is a slip of one number.
pub const FAR_BACK: u32 = 3;

/// The pieces of `pattern` that have rounds; `unread` are the places its reader could not
/// make out. Rounds before the first name, and rounds that
/// begin again at 1 in a ring or on a chain, are pieces of their own.
pub fn courses<'a>(pattern: &'a Pattern, unread: &[Span]) -> Vec<Course<'a>> {
    let mut cuts: Vec<(usize, Option<&str>)> = Vec::new();
    let (mut last, mut chained) = (0, false);
    for (i, line) in pattern.lines.iter().enumerate() {
        match &line.it {
            Line::Piece(name) => {
                cuts.push((i, Some(name)));
                (last, chained) = (0, false);
            }
            Line::Do(ops) => chained |= chain_of(ops).is_some(),
            Line::Rounds(rounds) => {
                let begins = founds(&rounds.work) || chained;
                // Numbered from 1 again, and on from there: not a slip of one number.
                let follows = || {
                    next_rounds(&pattern.lines[i + 1..])
                        .is_some_and(|next| next.first == rounds.last.saturating_add(1))
                };
                let anew = last > 1 && follows();
                // “as the first one up to round 11”, and on from there.
                let back = rounds.first > 1
                    && rounds.first.saturating_add(FAR_BACK) <= last
                    && follows();
                let first = rounds.first == 1 && last > 0 && (begins || anew);
                if cuts.is_empty() || first || back {
                    // A foundation chain belongs to the rounds worked on it.
                    let from = if cuts.is_empty() { 0 } else { foundation(pattern, i) };
                    cuts.push((from, None));
                }
                (last, chained) = (rounds.last, false);
            }
            _ => {}
        }
    }
    let ends = cuts.iter().skip(1).map(|c| c.0).chain([pattern.lines.len()]);
    cuts.iter()
        .zip(ends)
        .map(|(&(from, name), to)| {
            let from = from + usize::from(name.is_some());
            course(name, &pattern.lines[from.min(to)..to], unread)
        })
        .filter(|course| !course.steps.is_empty())
        .collect()
}

/// The line of the foundation chain of the rounds that begin at line `at`, or that line.
fn foundation(pattern: &Pattern, at: usize) -> usize {
    let before = pattern.lines[..at].iter().rposition(|line| match &line.it {
        Line::Do(ops) => chain_of(ops).is_some(),
        _ => false,
    });
    let between = |from: usize| &pattern.lines[from..at];
    let near = |&from: &usize| !between(from).iter().any(|l| matches!(l.it, Line::Rounds(_)));
    before.filter(near).unwrap_or(at)
}

/// Chains that a line begins a piece with: “ch 24, join”.
pub fn chain_of(ops: &[Placed<Op>]) -> Option<u32> {
    ops.iter().find_map(|op| match op.it {
        Op::Chain(n) if n > 1 => Some(n),
        _ => None,
    })
}

fn course<'a>(name: Option<&'a str>, lines: &'a [Placed<Line>], unread: &[Span]) -> Course<'a> {
    let mut course = Course { name, chain: None, lines, steps: Vec::new() };
    // Whether rounds may have been lost since the last: the next may find other stitches.
    let mut lost = false;
    for (i, line) in lines.iter().enumerate() {
        match &line.it {
            Line::Do(ops) if course.steps.is_empty() => {
                course.chain = chain_of(ops).or(course.chain);
            }
            Line::Note { unread: true, .. } => lost = true,
            Line::Rounds(rounds) => {
                let before = course.steps.last();
                lost |=
                    before.is_some_and(|b| b.rounds.last.checked_add(1) != Some(rounds.first));
                let known = before.map_or(course.chain, |b| b.count);
                let known = Known { below: known, lost, unread: overlaps(unread, &line.at) };
                let step = step(i, (&line.at, rounds), known, next_rounds(&lines[i + 1..]));
                if course.steps.is_empty() && course.chain.is_none() {
                    course.chain = chain_of(&rounds.work);
                }
                course.steps.push(step);
                lost = false;
            }
            _ => {}
        }
    }
    course
}

/// The round that is worked on the one before `lines`, unless something unread is between.
fn next_rounds(lines: &[Placed<Line>]) -> Option<&Rounds> {
    lines.iter().find_map(|line| match &line.it {
        Line::Note { unread: true, .. } => Some(None),
        Line::Rounds(rounds) => Some(Some(rounds)),
        _ => None,
    })?
}

/// Whether one of `places`, which are in order, lies in `at`.
fn overlaps(places: &[Span], at: &Span) -> bool {
    places.get(places.partition_point(|p| p.end <= at.start)).is_some_and(|p| p.start < at.end)
}

/// What is known before a round is worked.
#[derive(Debug, Clone, Copy)]
struct Known {
    /// Stitches of the round below.
    below: Option<u32>,
    /// Whether rounds between may have been lost, so that `below` is a guess.
    lost: bool,
    /// Whether some of the round could not be read.
    unread: bool,
}

fn step<'a>(
    line: usize,
    (at, rounds): (&'a Span, &'a Rounds),
    known: Known,
    next: Option<&Rounds>,
) -> CourseStep<'a> {
    let stated = rounds.stated.as_ref().map(|s| s.it);
    let founds = founds(&rounds.work);
    // Chains made in the line itself, and joined, are what it is worked on.
    let joined = rounds.work.windows(2).find_map(|pair| match (&pair[0].it, &pair[1].it) {
        (Op::Chain(n), Op::Join) if *n > 2 => Some(*n),
        _ => None,
    });
    let works = rounds.work.iter().any(|op| op.it.works_stitches());
    // More than go into the chains go into the ring they make.
    let into = |n: &u32| LineRun::of(&rounds.work, many(rounds), Some(*n)).comes_out();
    let below = known.below.or(joined.filter(|n| works && into(n)));
    let below = below.filter(|&n| !(founds || known.lost && suits(rounds, n) < 2));
    let below = below.or_else(|| {
        let stated = stated.filter(|_| !founds)?;
        from_stated(&rounds.work, many(rounds), stated)
    });
    let run = LineRun::of(&rounds.work, many(rounds), below);
    let count = match (run.left().filter(|_| !known.unread), stated) {
        (Some(left), Some(stated)) if left != stated => {
            // What is printed is believed unless the next round speaks against it, or speaks
            // for neither while this round takes just what it finds: then its work is sound.
            let suit = |count| next.map_or(0, |next| suits(next, count));
            let neither = next.is_some() && suit(left) == 0 && suit(stated) == 0;
            let computed = suit(left) > suit(stated) || neither && run.comes_out();
            Some(if computed { left } else { stated })
        }
        (left, stated) => stated.or(left),
    };
    CourseStep { line, at, rounds, run, founds, unread: known.unread, count }
}

/// The stitches that `rounds` rounds of `work` are worked on, where nobody tells and they come
/// to `stated`: what is worked around goes in so often that they do.
pub fn from_stated(work: &[Placed<Op>], rounds: u32, stated: u32) -> Option<u32> {
    let around = |op: &&Placed<Op>| matches!(op.it, Op::Group { times: Times::Around, .. });
    let mut groups = work.iter().filter(around);
    let (Some(group), None) = (groups.next(), groups.next()) else { return None };
    let Op::Group { body, .. } = &group.it else { return None };
    let rest: Vec<Placed<Op>> = work.iter().filter(|op| !around(op)).cloned().collect();
    let (once, rest) = (tally(body, None).ok()?, tally(&rest, None).ok()?);
    let shaped = stated.checked_sub(rest.left)?;
    let times =
        shaped.checked_div(once.left).filter(|n| n.checked_mul(once.left) == Some(shaped))?;
    let below = once.times(times).taken.saturating_add(rest.taken);
    let run = LineRun::of(work, rounds, Some(below));
    (below > 0 && run.comes_out() && run.left() == Some(stated)).then_some(below)
}

#[cfg(test)]
mod tests {
    use super::super::tree::StitchKind;
    use super::*;

    fn each(count: u32) -> Placed<Op> {
        Placed::unread(Op::Each { kind: StitchKind::Single, count })
    }

    fn inc() -> Placed<Op> {
        Placed::unread(Op::Into { kind: StitchKind::Single, many: 2 })
    }

    fn group(body: Vec<Placed<Op>>, times: Times) -> Placed<Op> {
        Placed::unread(Op::Group { body, times })
    }

    fn line(first: u32, last: u32, work: Vec<Placed<Op>>, stated: u32) -> Placed<Line> {
        let stated = Some(Placed::unread(stated));
        Placed::unread(Line::Rounds(Rounds { first, last, work, stated }))
    }

    fn ring(count: u32) -> Placed<Line> {
        let ring = Op::Ring { kind: StitchKind::Single, count };
        line(1, 1, vec![Placed::unread(ring)], count)
    }

    #[test]
    fn rounds_are_worked_one_on_another() {
        let lines = vec![
            ring(6),
            line(2, 2, vec![group(vec![inc()], Times::Around)], 12),
            line(3, 3, vec![group(vec![each(1), inc()], Times::In(6))], 18),
            line(4, 7, vec![group(vec![each(1)], Times::Around)], 18),
        ];
        let pattern = Pattern { lines };
        let courses = courses(&pattern, &[]);
        assert_eq!(courses.len(), 1);
        let counts: Vec<_> =
            courses[0].steps.iter().flat_map(|s| s.run.counts.clone()).collect();
        assert_eq!(counts, [6, 12, 18, 18, 18, 18, 18]);
        assert!(courses[0].steps.iter().all(|s| s.run.comes_out()));
    }

    #[test]
    fn the_next_round_decides_between_computed_and_stated() {
        let round_2 = |stated| line(2, 2, vec![group(vec![inc()], Times::In(6))], stated);
        let round_3 = |n| line(3, 3, vec![group(vec![each(1), inc()], Times::In(n))], 3 * n);
        for (stated, times, goes_on) in [(14, 6, 12), (14, 7, 14), (13, 9, 12)] {
            let pattern = Pattern { lines: vec![ring(6), round_2(stated), round_3(times)] };
            assert_eq!(courses(&pattern, &[])[0].steps[1].count, Some(goes_on), "{stated}");
        }
    }

    #[test]
    fn a_line_of_many_rounds_may_grow_and_never_runs_away() {
        let doubling = [group(vec![inc()], Times::Around)];
        let run = LineRun::of(&doubling, 3, Some(6));
        assert_eq!((run.counts, run.below), (vec![12, 24, 48], Some(24)));
        let even = [group(vec![each(1)], Times::Around)];
        assert_eq!(LineRun::of(&even, u32::MAX, Some(9)).counts.len(), MOST_ROUNDS);
        assert_eq!(LineRun::of(&doubling, u32::MAX, Some(9)).counts.len(), MOST_ROUNDS);
    }

    #[test]
    fn pieces_begin_at_a_name_or_at_a_new_ring() {
        let name = Placed::unread(Line::Piece("Cap".into()));
        let lines = vec![ring(6), ring(8), name, ring(5)];
        let pattern = Pattern { lines };
        let names: Vec<_> = courses(&pattern, &[]).iter().map(|c| c.name).collect();
        assert_eq!(names, [None, None, Some("Cap")]);
    }
}
