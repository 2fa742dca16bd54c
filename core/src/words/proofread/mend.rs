//! The smallest single edit after which a round adds up with both its neighbours.
//!
//! Edits are tried on the tree, where a sum is cheap: one number changed, an increase for a
//! decrease, a stitch added or left out. The best few are then made in the text and read
//! again; what does not read as meant is not offered.

use super::context::ProofContext;
use super::finding::Mend;
use super::text::numbers;
use crate::words::course::{CourseStep, LineRun, suits};
use crate::words::read::{TermsWish, read};
use crate::words::tree::{Decrease, Line, Op, Placed, Rounds, Span, StitchKind, Times};

/// Rounds of more items than this are left to their maker: nobody would trust a guess.
const MOST_ITEMS: usize = 60;

/// How far a number may be from what is printed.
const REACH: u32 = 40;

/// Edits read again before a mend is offered in words alone.
const TRIES: usize = 8;

/// Texts longer than this are not read again as a whole.
const WHOLE: usize = 20_000;

/// What a mend has to come to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Aim {
    /// The round takes just the stitches there are, and suits what is stated or the next.
    Takes,
    /// It comes to the stated count.
    Stated,
}

/// A round on the bench, between its neighbours.
pub(super) struct Neighbours<'a> {
    desk: &'a ProofContext<'a>,
    step: &'a CourseStep<'a>,
    next: Option<&'a Rounds>,
}

/// A changed round.
struct Variant {
    run: LineRun,
    /// 0 where both neighbours agree with it, more where only one does.
    rank: u32,
    cost: u32,
    words: String,
    /// Ways to make the change in the text.
    edits: Vec<(Span, String)>,
}

/// Which op of a round: an index a level.
type Path = Vec<usize>;

impl<'a> Neighbours<'a> {
    pub(super) fn new(
        desk: &'a ProofContext<'a>,
        step: &'a CourseStep<'a>,
        next: Option<&'a Rounds>,
    ) -> Self {
        Self { desk, step, next }
    }

    /// The likeliest mend of the round's work.
    pub(super) fn likeliest(&self, aim: Aim) -> Option<Mend> {
        if !self.desk.may_mend() {
            return None;
        }
        let mut variants = self.variants(aim);
        variants.sort_by_key(|v| (v.rank, v.cost));
        let best = variants.first()?.rank;
        variants.retain(|v| v.rank == best);
        let sound = variants.iter().take(TRIES).find_map(|variant| {
            let edit = variant.edits.iter().find(|edit| self.reads(edit, &variant.run))?;
            Some(Mend { text: variant.words.clone(), edit: Some(edit.clone()) })
        });
        let words = || Mend { text: variants[0].words.clone(), edit: None };
        Some(sound.unwrap_or_else(words))
    }

    /// How well a changed round suits its neighbours; `None` where it is no mend.
    fn rank(&self, run: &LineRun, aim: Aim) -> Option<u32> {
        if !run.comes_out() {
            return None;
        }
        let left = run.left()?;
        let stated = self.step.stated().map(|stated| stated == left);
        let next = self.next.map(|next| suits(next, left) > 0);
        match (stated, next) {
            (None | Some(true), None | Some(true)) => Some(0),
            (Some(true), Some(false)) => Some(1),
            (Some(false), Some(true)) if aim == Aim::Takes => Some(2),
            _ => None,
        }
    }

    fn variants(&self, aim: Aim) -> Vec<Variant> {
        let work = &self.step.rounds.work;
        let mut paths = Vec::new();
        paths_of(work, &mut Vec::new(), &mut paths);
        let mut variants = Vec::new();
        if paths.len() > MOST_ITEMS {
            return variants;
        }
        // The run may have stopped at a later round of the line; it began on what was there.
        let below = self.step.run.counts.is_empty().then_some(self.step.run.below).flatten();
        let mut offer = |changed: Vec<Placed<Op>>, cost, words: String, edits| {
            let run = LineRun::of(&changed, self.step.many(), below);
            if let Some(rank) = self.rank(&run, aim) {
                variants.push(Variant { run, rank, cost, words, edits });
            }
        };
        for path in &paths {
            let Some(op) = at_path(work, path) else { continue };
            for (op_new, far, n, times) in numbers_of(&op.it) {
                let changed = with(work, path, Some(op_new));
                let (words, edits) = self.number_words(op, n, times);
                offer(changed, far, words, edits);
            }
            if let Some(swapped) = swapped(&op.it) {
                let new = self.swapped_text(op);
                let words = format!("Write “{new}”, not “{}”.", self.desk.words(&op.at));
                offer(with(work, path, Some(swapped)), 6, words, vec![(op.at.clone(), new)]);
            }
            if path.len() == 1 && work.len() > 1 && stitches(&op.it) {
                let words = format!("Leave “{}” out.", self.desk.words(&op.at));
                offer(with(work, path, None), 12, words, vec![self.cut(path[0])]);
            }
        }
        if let Some(last) = work.iter().rposition(|op| stitches(&op.it)) {
            for n in 1..=12 {
                let mut changed = work.clone();
                let kind = kind_of(work).unwrap_or(StitchKind::Single);
                changed.insert(last + 1, Placed::unread(Op::Each { kind, count: n }));
                let new = self.plain(kind, n);
                let end = work[last].at.end;
                let words = format!("Add “{new}” at the end.");
                offer(changed, 12 + n, words, vec![(end..end, format!(", {new}"))]);
            }
        }
        variants
    }

    /// Words and edits for another number in `op`: `n`, `times` whether it counts a repeat.
    fn number_words(
        &self,
        op: &Placed<Op>,
        n: (u32, u32),
        times: bool,
    ) -> (String, Vec<(Span, String)>) {
        let (old, new) = n;
        let printed = self.desk.words(&op.at);
        let body = match &op.it {
            Op::Group { body, .. } => hull(body),
            _ => None,
        };
        // “5 more times” is six in all.
        let value = |v: u32| match v {
            v if v == old => Some(new),
            v if times && v + 1 == old => new.checked_sub(1),
            _ => None,
        };
        let inside =
            |at: &Span| body.as_ref().is_some_and(|b| at.start >= b.start && at.end <= b.end);
        let mut found: Vec<(Span, String, bool)> = numbers(self.desk.text, &op.at)
            .rev()
            .filter_map(|(at, v)| Some((at.clone(), value(v)?.to_string(), inside(&at))))
            .collect();
        found.sort_by_key(|f| f.2);
        let mut edits: Vec<(Span, String)> = found.into_iter().map(|f| (f.0, f.1)).collect();
        if edits.is_empty() && old == 1 && !times {
            let after = (op.at.end..op.at.end, format!(" {new}"));
            let before = (op.at.start..op.at.start, format!("{new} "));
            edits = if self.number_first() { vec![before, after] } else { vec![after, before] };
        }
        let words = match edits.first() {
            _ if times => format!("Work the repeat {new} times, not {old}."),
            Some((at, number)) => {
                let at = at.start - op.at.start..at.end - op.at.start;
                let mut changed = printed.to_owned();
                changed.replace_range(at, number);
                format!("Write “{changed}”, not “{printed}”.")
            }
            None => format!("Work {new}, not {old}, at “{printed}”."),
        };
        (words, edits)
    }

    /// Whether the round writes “3 sc” rather than “sc 3”.
    fn number_first(&self) -> bool {
        let mut first = None;
        walk(&self.step.rounds.work, &mut |op| {
            if let Op::Each { .. } = op.it
                && first.is_none()
            {
                let words = self.desk.words(&op.at);
                let digit = words.find(|c: char| c.is_ascii_digit());
                first = digit.map(|at| at == 0);
            }
        });
        first.unwrap_or(!self.desk.lexicon.code.starts_with("en"))
    }

    fn plain(&self, kind: StitchKind, n: u32) -> String {
        let word = self.desk.lexicon.kind(kind).brief(n);
        if self.number_first() { format!("{n} {word}") } else { format!("{word} {n}") }
    }

    /// An increase for a decrease or the other way round, as the text would print it.
    fn swapped_text(&self, op: &Placed<Op>) -> String {
        let printed = self.desk.words(&op.at);
        let lexicon = self.desk.lexicon;
        let (from, to) = match op.it {
            Op::Into { .. } => (&lexicon.increase, &lexicon.decrease),
            _ => (&lexicon.decrease, &lexicon.increase),
        };
        let lower = printed.to_lowercase();
        let to = to.brief(1);
        let to = if printed == printed.to_uppercase() { to.to_uppercase() } else { to.into() };
        let form =
            from.forms().filter(|f| lower.contains(&f.to_lowercase())).max_by_key(|f| f.len());
        match form.and_then(|f| lower.find(&f.to_lowercase()).map(|at| at..at + f.len())) {
            Some(at) if lower.len() == printed.len() && printed.is_char_boundary(at.end) => {
                format!("{}{to}{}", &printed[..at.start], &printed[at.end..])
            }
            _ => to,
        }
    }

    /// The edit that takes out one item with what parts it from its neighbour.
    fn cut(&self, index: usize) -> (Span, String) {
        let work = &self.step.rounds.work;
        let at = &work[index].at;
        let span = match (index.checked_sub(1), work.get(index + 1)) {
            (Some(before), _) => work[before].at.end..at.end,
            (None, Some(after)) => at.start..after.at.start,
            _ => at.clone(),
        };
        (span, String::new())
    }

    /// Whether the text with this edit reads as meant.
    fn reads(&self, (at, new): &(Span, String), meant: &LineRun) -> bool {
        let text = self.desk.text;
        let line = &self.step.at;
        let alone = self.desk.words(line);
        let whole = self.run_of(alone, line.start) != Some(self.step.run.clone());
        let (base, from) = if whole { (text, 0) } else { (alone, line.start) };
        if whole && text.len() > WHOLE || at.start < from || at.end - from > base.len() {
            return false;
        }
        let mut changed = base.to_owned();
        changed.replace_range(at.start - from..at.end - from, new);
        self.run_of(&changed, from).as_ref() == Some(meant)
    }

    /// What the round comes to in `text`, which begins at byte `from` of the whole.
    fn run_of(&self, text: &str, from: usize) -> Option<LineRun> {
        let reading = read(text, TermsWish::Lexicon(self.desk.reading.lexicon));
        let start = self.step.at.start - from;
        let unread = reading.unread.iter().any(|at| at.start >= start);
        let rounds = reading.pattern.lines.iter().find_map(|line| match &line.it {
            Line::Rounds(rounds) if line.at.start == start => Some(rounds),
            _ => None,
        })?;
        let many = rounds.last.saturating_sub(rounds.first).saturating_add(1);
        let below = self.step.run.counts.is_empty().then_some(self.step.run.below).flatten();
        (!unread || from == 0).then(|| LineRun::of(&rounds.work, many, below))
    }
}

fn paths_of(work: &[Placed<Op>], path: &mut Path, paths: &mut Vec<Path>) {
    for (i, op) in work.iter().enumerate() {
        path.push(i);
        paths.push(path.clone());
        if let Op::Group { body, .. } | Op::Only { body, .. } = &op.it {
            paths_of(body, path, paths);
        }
        path.pop();
    }
}

fn walk<'t>(work: &'t [Placed<Op>], visit: &mut impl FnMut(&'t Placed<Op>)) {
    for op in work {
        visit(op);
        if let Op::Group { body, .. } | Op::Only { body, .. } = &op.it {
            walk(body, visit);
        }
    }
}

fn at_path<'t>(work: &'t [Placed<Op>], path: &[usize]) -> Option<&'t Placed<Op>> {
    let (&first, rest) = path.split_first()?;
    let op = work.get(first)?;
    match &op.it {
        _ if rest.is_empty() => Some(op),
        Op::Group { body, .. } | Op::Only { body, .. } => at_path(body, rest),
        _ => None,
    }
}

/// The work with another op at `path`, or with none.
fn with(work: &[Placed<Op>], path: &[usize], new: Option<Op>) -> Vec<Placed<Op>> {
    let mut changed = work.to_vec();
    let Some((&first, rest)) = path.split_first() else { return changed };
    if rest.is_empty() {
        match new {
            Some(new) => changed[first].it = new,
            None => {
                changed.remove(first);
            }
        }
    } else if let Op::Group { body, .. } | Op::Only { body, .. } = &mut changed[first].it {
        *body = with(body, rest, new);
    }
    changed
}

/// The op with each other number it could have: what it becomes, how much it costs, the
/// numbers before and after, and whether they count a repeat.
fn numbers_of(op: &Op) -> Vec<(Op, u32, (u32, u32), bool)> {
    // A repeat miscounted is likelier than a stitch, a stitch than how many go into one.
    let (old, least, most, price, times) = match op {
        Op::Group { times: Times::In(n), .. } => (*n, 1, u32::MAX, 0, true),
        Op::Each { count, .. } | Op::Ring { count, .. } | Op::Skip(count) => {
            (*count, 1, u32::MAX, 1, false)
        }
        Op::IntoChain { count, .. } => (*count, 1, u32::MAX, 1, false),
        Op::Into { many, .. } => (*many, 2, 5, 3, false),
        Op::Together { many, .. } => (*many, 2, 4, 3, false),
        _ => return Vec::new(),
    };
    let values = least.max(old.saturating_sub(REACH))..=most.min(old.saturating_add(REACH));
    let changed = |n: u32| match op.clone() {
        Op::Group { body, .. } => Op::Group { body, times: Times::In(n) },
        Op::Each { kind, .. } => Op::Each { kind, count: n },
        Op::Ring { kind, .. } => Op::Ring { kind, count: n },
        Op::IntoChain { kind, nth, .. } => Op::IntoChain { kind, count: n, nth },
        Op::Into { kind, .. } => Op::Into { kind, many: n },
        Op::Together { kind, how, .. } => Op::Together { kind, many: n, how },
        Op::Skip(_) => Op::Skip(n),
        other => other,
    };
    values
        .filter(|&n| n != old)
        .map(|n| (changed(n), 2 * n.abs_diff(old) + price, (old, n), times))
        .collect()
}

fn swapped(op: &Op) -> Option<Op> {
    match *op {
        Op::Into { kind, many: 2 } => {
            Some(Op::Together { kind, many: 2, how: Decrease::Plain })
        }
        Op::Together { kind, many: 2, .. } => Some(Op::Into { kind, many: 2 }),
        _ => None,
    }
}

fn stitches(op: &Op) -> bool {
    op.works_stitches() || matches!(op, Op::Skip(_))
}

fn kind_of(work: &[Placed<Op>]) -> Option<StitchKind> {
    let mut found = None;
    walk(work, &mut |op| {
        if let Op::Each { kind, .. } | Op::Into { kind, .. } | Op::Together { kind, .. } = op.it
        {
            found = found.or(Some(kind));
        }
    });
    found
}

fn hull(body: &[Placed<Op>]) -> Option<Span> {
    Some(body.first()?.at.start..body.last()?.at.end)
}
