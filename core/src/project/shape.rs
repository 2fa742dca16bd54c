//! From text to shape: a written piece as a [`Piece`] that is given by its rounds. Its outline
//! is the forecast of them at the maker's own gauge.

use crate::error::{Error, LONGEST_NAME, Result};
use crate::piece::Yarn;
use crate::piece::cloth::{Kind, KindFrom, Loop, Working};
use crate::piece::gauge::Gauge;
use crate::piece::given::{Given, Start};
use crate::piece::outline::{Knot, Outline};
use crate::piece::{Band, Firmness, MOST_ROUNDS, Piece};
use crate::plan::given::outline_of;
use crate::plan::plan;
use crate::plan::warning::WarningKind;
use crate::project::Project;
use crate::words::course::{Course, CourseStep, courses};
use crate::words::stitches::placement;
use crate::words::tree::{Line, Op, Pattern, Placed, Span, StitchKind};

/// A last round of at most so many stitches is drawn shut; a wider one is left open. Common
/// practice, no source.
const DRAWN_SHUT: u32 = 8;

/// A piece made of a written pattern, and its yarns.
#[derive(Debug, Clone, PartialEq)]
pub struct Shaped {
    /// The piece; its bands count in `yarns`.
    pub piece: Piece,
    /// What the text calls its yarns, in the order in which they are taken up; empty where it
    /// names none.
    pub yarns: Vec<String>,
}

/// What a written pattern makes.
#[derive(Debug, Clone, PartialEq)]
pub struct MadeProject {
    /// Its pieces.
    pub pieces: Vec<Shaped>,
    /// The small parts of it that could not be made, and why.
    pub left_out: Vec<Error>,
}

/// Every piece of `pattern` at this gauge and firmness, its counts held; `unread` are the
/// places its reader could not make out. `name` is for a piece that the text does not name.
/// No round is ever dropped: where one is missing or its count cannot be known, its piece is
/// not made. A part that has fewer rounds than the largest piece is then left out, and named.
///
/// # Errors
/// For a pattern without rounds, and for the largest piece where a round of it is missing,
/// has a count that nobody can know, more than doubles or halves the one below, or cannot be
/// worked at all.
pub fn shape(
    pattern: &Pattern,
    unread: &[Span],
    name: &str,
    gauge: Gauge,
    firmness: Firmness,
) -> Result<MadeProject> {
    gauge.validate()?;
    let courses = courses(pattern, unread);
    if courses.is_empty() {
        return Err(Error::new(
            "pattern",
            "no rounds were found in it",
            "write each round on a line of its own, such as Rnd 1: 6 sc in mr [6]",
        ));
    }
    let many = courses.len() > 1;
    let named = (1..).zip(&courses).map(|(i, course)| match course.name {
        Some(own) => (own.to_owned(), course),
        None if many => (format!("{name} {i}"), course),
        None => (name.to_owned(), course),
    });
    let rounds_of = |course: &Course<'_>| {
        course.steps.iter().map(CourseStep::many).fold(0, u32::saturating_add)
    };
    let largest = courses.iter().map(rounds_of).max().unwrap_or_default();
    let mut made = MadeProject { pieces: Vec::new(), left_out: Vec::new() };
    for (name, course) in named {
        let place = format!("piece “{name}”");
        match one(name, course, gauge, firmness).map_err(|e| e.within(&place)) {
            Ok(shaped) => made.pieces.push(shaped),
            Err(error) if rounds_of(course) < largest => made.left_out.push(error),
            Err(error) => return Err(error),
        }
    }
    Ok(made)
}

/// Why rounds of a piece would be lost, if they would: a gap in their numbers, or a line
/// between them that looks like a round and was not read.
fn lost(course: &Course<'_>) -> Option<Error> {
    for pair in course.steps.windows(2) {
        let (before, step) = (&pair[0], &pair[1]);
        let expected = before.rounds.last.saturating_add(1);
        if step.rounds.first > expected {
            let missing = match step.rounds.first - expected {
                1 => format!("Rnd {expected} is missing"),
                _ => format!("Rnds {expected}–{} are missing", step.rounds.first - 1),
            };
            let mend = "write what is missing, at least its count, such as Rnd 5: (24)";
            return Some(Error::new(step.heading(), missing, mend));
        }
        let between = &course.lines[before.line + 1..step.line];
        let unread = between.iter().any(|l| matches!(l.it, Line::Note { unread: true, .. }));
        if unread {
            return Some(Error::new(
                step.heading(),
                "the line above it looks like a round and cannot be read",
                "state the count at its end, or write it in the words of the abbreviations",
            ));
        }
    }
    None
}

/// Adds the pieces to `project`, their yarns too where it has none of that name; one that the
/// text does not name is the project's first.
pub fn add_to(project: &mut Project, shaped: Vec<Shaped>) {
    for Shaped { mut piece, yarns } in shaped {
        let mut place = |name: &String| {
            if name.is_empty() {
                return 0;
            }
            let known = project.yarns.iter().position(|y| y.name.eq_ignore_ascii_case(name));
            known.unwrap_or_else(|| {
                let yarn = Yarn::plain(project.yarns.len());
                project.yarns.push(Yarn { name: name.clone(), ..yarn });
                project.yarns.len() - 1
            })
        };
        let places: Vec<usize> = yarns.iter().map(&mut place).collect();
        for band in &mut piece.bands {
            band.yarn = places.get(band.yarn).copied().unwrap_or(0);
        }
        project.add(piece);
    }
}

/// A project of the pieces, titled after the first; `None` where there are none.
pub fn project_of(shaped: Vec<Shaped>) -> Option<Project> {
    let first = shaped.first()?;
    let mut project = Project::of_piece(first.piece.clone());
    project.pieces.clear();
    if let Some(name) = first.yarns.first().filter(|name| !name.is_empty()) {
        project.yarns[0].name.clone_from(name);
    }
    add_to(&mut project, shaped);
    Some(project)
}

/// As much of a name in a text as a project may have.
fn cut(name: &str) -> String {
    name.chars().take(LONGEST_NAME).collect()
}

fn one(name: String, course: &Course<'_>, gauge: Gauge, firmness: Firmness) -> Result<Shaped> {
    let (counts, open) = counts(course)?;
    let drawn = counts.last().is_some_and(|&last| last <= DRAWN_SHUT);
    let mut piece = Piece::new(cut(&name), ends(open.is_some(), drawn), gauge);
    piece.firmness = firmness;
    let yarns = choices(&mut piece, course);
    let start = open.map_or(Start::Ring, Start::Chain);
    piece.given = Some(given(course, start, &counts));
    let planned = plan(&piece)?;
    if !planned.warnings.iter().any(|w| w.kind == WarningKind::Unsettled) {
        // What it would be planned anew from; only its ends count while its rounds stay.
        if let Ok(outline) = outline_of(&planned.forecast, gauge.stitch_width_mm()) {
            piece.outline = outline;
        }
    }
    piece.validate()?;
    Ok(Shaped { piece, yarns })
}

/// The stitches of every round, and of the foundation chain at an open start.
fn counts(course: &Course<'_>) -> Result<(Vec<u32>, Option<u32>)> {
    let mut counts: Vec<u32> = Vec::new();
    if let Some(lost) = lost(course) {
        return Err(lost);
    }
    for step in &course.steps {
        let Some(count) = step.count else {
            return Err(Error::new(
                step.heading(),
                "its stitches cannot be counted",
                "proofread the pattern first, or state the count at the end of the round",
            ));
        };
        counts.extend(step.counted().map(|(_, each)| each.unwrap_or(count)));
        if counts.len() > MOST_ROUNDS {
            return Err(Error::new(
                step.heading(),
                format!("the piece has more than {MOST_ROUNDS} rounds"),
                "split it into pieces",
            ));
        }
    }
    // Only a chain that is joined leaves an opening; one worked along is an oval's, or a ring.
    let founded = course.steps.first().is_some_and(|s| s.founds);
    let open = course.chain.filter(|_| !founded);
    let mut below = open;
    for (round, &count) in (1..).zip(&counts) {
        let unworkable = below
            .is_some_and(|b: u32| count > b.saturating_mul(2) || b > count.saturating_mul(2));
        if unworkable || count == 0 || count > 20_000 {
            return Err(Error::new(
                format!("Rnd {round}"),
                format!("{count} stitches on {} cannot be planned", below.unwrap_or(0)),
                "a round can at most double or halve the one below; check its count",
            ));
        }
        below = Some(count);
    }
    if counts.len() < 2 {
        return Err(Error::new("pattern", "it has fewer than two rounds", "add its rounds"));
    }
    Ok((counts, open))
}

/// An outline that only says which ends are open: what the skin of whole stitches reads.
fn ends(open: bool, drawn: bool) -> Outline {
    let radius = |open: bool| if open { 10.0 } else { 0.0 };
    let knots = vec![Knot::new(radius(open), 0.0), Knot::new(20.0, 20.0)];
    Outline { knots: [knots, vec![Knot::new(radius(!drawn), 40.0)]].concat() }
}

/// The rounds as the text works them: where it puts its increases, where it stuffs, what it
/// says beside a round.
fn given(course: &Course<'_>, start: Start, counts: &[u32]) -> Given {
    let mut given = Given::of_counts(start, counts);
    let mut below = start.joined();
    let mut number = 0_usize;
    for step in &course.steps {
        let remark: Vec<&str> = step.rounds.work.iter().filter_map(note).collect();
        for (_, each) in step.counted() {
            let Some(round) = given.rounds.get_mut(number) else { break };
            let work = below.and_then(|below| placement(&step.rounds.work, below));
            round.work = work.filter(|w| w.produced() == round.count && !step.unread);
            round.remark = remark.join(". ");
            below = Some(each.unwrap_or(round.count));
            number += 1;
        }
    }
    given.stuff_after = stuffed(course);
    given
}

fn note(op: &Placed<Op>) -> Option<&str> {
    match &op.it {
        Op::Note(text) => Some(text.as_str()),
        _ => None,
    }
}

/// The rounds after which the text stuffs the piece.
fn stuffed(course: &Course<'_>) -> Vec<u32> {
    let mut after = Vec::new();
    let (mut worked, mut steps) = (0_u32, course.steps.iter().peekable());
    for (i, line) in course.lines.iter().enumerate() {
        if let Some(step) = steps.next_if(|s| s.line == i) {
            worked = worked.saturating_add(step.many());
        }
        let stuffs = match &line.it {
            Line::Do(ops) => ops.iter().any(|op| op.it == Op::Stuff),
            Line::Rounds(rounds) => rounds.work.iter().any(|op| op.it == Op::Stuff),
            _ => false,
        };
        if stuffs && worked > 0 && after.last() != Some(&worked) {
            after.push(worked);
        }
    }
    after
}

/// Kinds of stitch, loops, joined rounds and yarns, as the text has them; returns the names
/// of the yarns.
fn choices(piece: &mut Piece, course: &Course<'_>) -> Vec<String> {
    let mut yarns: Vec<String> = Vec::new();
    let mut round = 1;
    let mut steps = course.steps.iter().peekable();
    let mut kind = Kind::Single;
    for (i, line) in course.lines.iter().enumerate() {
        match &line.it {
            Line::Do(ops) => colours(ops, round, piece, &mut yarns),
            Line::Rounds(rounds) => {
                let Some(step) = steps.next_if(|s| s.line == i) else { continue };
                colours(&rounds.work, round, piece, &mut yarns);
                let now = kind_of(&rounds.work).unwrap_or(kind);
                if now != kind {
                    piece.kinds.push(KindFrom { from_round: round, kind: now });
                    kind = now;
                }
                let many = step.many().min(MOST_ROUNDS as u32);
                if let Some(only) = loop_of(&rounds.work).filter(|_| round > 1) {
                    piece.loops.extend((round..round + many).map(|r| (r, only)));
                }
                if rounds.work.iter().any(|op| op.it == Op::Join) && round + many > 2 {
                    piece.working = Working::Joined { chain_counts: false };
                }
                round += many;
            }
            _ => {}
        }
    }
    yarns
}

fn colours(ops: &[Placed<Op>], round: u32, piece: &mut Piece, yarns: &mut Vec<String>) {
    let stitches = |op: &Placed<Op>| kind_of(std::slice::from_ref(op)).is_some();
    for (i, op) in ops.iter().enumerate() {
        let Op::Colour(name) = &op.it else { continue };
        let name = cut(name);
        // A colour taken up at the end of a round is that of the next.
        let late = i > 0 && !ops[i..].iter().any(stitches) && ops[..i].iter().any(stitches);
        let from_round = if late { round + 1 } else { round };
        let known = yarns.iter().position(|y| y.eq_ignore_ascii_case(&name));
        let yarn = known.unwrap_or(yarns.len());
        if known.is_none() {
            // What the first rounds were worked in has no name where the first comes later.
            if yarns.is_empty() && from_round > 1 {
                yarns.push(String::new());
            }
            yarns.push(name);
        }
        let yarn = if known.is_none() { yarns.len() - 1 } else { yarn };
        piece.bands.retain(|b| b.from_round != from_round);
        piece.bands.push(Band { from_round, yarn });
    }
}

/// The kind most stitches of a round are of: the first named decides.
fn kind_of(work: &[Placed<Op>]) -> Option<Kind> {
    work.iter().find_map(|op| match &op.it {
        Op::Each { kind, .. }
        | Op::Into { kind, .. }
        | Op::Together { kind, .. }
        | Op::Ring { kind, .. }
        | Op::IntoChain { kind, .. } => match kind {
            StitchKind::Slip => None,
            StitchKind::Single => Some(Kind::Single),
            StitchKind::HalfDouble => Some(Kind::HalfDouble),
            // A treble is not one of the piece's kinds; double is the nearest in height.
            StitchKind::Double | StitchKind::Treble => Some(Kind::Double),
        },
        Op::Group { body, .. } | Op::Only { body, .. } => kind_of(body),
        _ => None,
    })
}

/// The one loop a whole round is worked into.
fn loop_of(work: &[Placed<Op>]) -> Option<Loop> {
    let worked = |op: &&Placed<Op>| kind_of(std::slice::from_ref(*op)).is_some();
    let mut ops = work.iter().filter(worked);
    match (&ops.next()?.it, ops.next()) {
        (Op::Only { only, .. }, None) => Some(*only),
        _ => None,
    }
}
