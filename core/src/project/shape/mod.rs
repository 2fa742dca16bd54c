//! From text to shape: a written piece as a [`Piece`] that is given by its rounds. Its outline
//! is the forecast of them at the maker's own gauge.

mod rows;

use self::rows::{RoundCounts, rows};
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

pub use self::rows::{MissingCounts, ToldCount, missing_counts};

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
    shape_told(pattern, unread, &[], name, gauge, firmness)
}

/// As [`shape`], with the stitches of some rounds `told` by a person: of those that
/// [`missing_counts`] lists, and of any other, in place of what was read.
///
/// # Errors
/// As [`shape`].
pub fn shape_told(
    pattern: &Pattern,
    unread: &[Span],
    told: &[ToldCount],
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
    let named = (1..).zip(&courses).map(|(part, course)| match course.name {
        Some(own) => (own.to_owned(), part, course),
        None if many => (format!("{name} {part}"), part, course),
        None => (name.to_owned(), part, course),
    });
    let rounds_of = |course: &Course<'_>| {
        course.steps.iter().map(CourseStep::many).fold(0, u32::saturating_add)
    };
    let largest = courses.iter().map(rounds_of).max().unwrap_or_default();
    let mut made = MadeProject { pieces: Vec::new(), left_out: Vec::new() };
    for (name, part, course) in named {
        let place = format!("piece “{name}”");
        let own: Vec<ToldCount> = told.iter().filter(|t| t.part == part).copied().collect();
        match one(name, course, &own, gauge, firmness).map_err(|e| e.within(&place)) {
            Ok(shaped) => made.pieces.push(shaped),
            Err(error) if rounds_of(course) < largest => made.left_out.push(error),
            Err(error) => return Err(error),
        }
    }
    Ok(made)
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

fn one(
    name: String,
    course: &Course<'_>,
    told: &[ToldCount],
    gauge: Gauge,
    firmness: Firmness,
) -> Result<Shaped> {
    let rows = rows(course, told)?;
    let drawn = rows.counts.last().is_some_and(|&last| last <= DRAWN_SHUT);
    let mut piece = Piece::new(cut(&name), ends(rows.open.is_some(), drawn), gauge);
    piece.firmness = firmness;
    let yarns = choices(&mut piece, course, &rows);
    piece.given = Some(given(course, &rows));
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

/// An outline that only says which ends are open: what the skin of whole stitches reads.
fn ends(open: bool, drawn: bool) -> Outline {
    let radius = |open: bool| if open { 10.0 } else { 0.0 };
    let knots = vec![Knot::new(radius(open), 0.0), Knot::new(20.0, 20.0)];
    Outline { knots: [knots, vec![Knot::new(radius(!drawn), 40.0)]].concat() }
}

/// The rounds as the text works them: where it puts its increases, where it stuffs, what it
/// says beside a round.
fn given(course: &Course<'_>, rows: &RoundCounts) -> Given {
    let start = rows.open.map_or(Start::Ring, Start::Chain);
    let mut given = Given::of_counts(start, &rows.counts);
    for (step, &from) in course.steps.iter().zip(&rows.starts) {
        let remark: Vec<&str> = step.rounds.work.iter().filter_map(note).collect();
        for number in (from..rows.counts.len()).take(step.many() as usize) {
            let below = match number.checked_sub(1) {
                Some(before) => rows.counts.get(before).copied(),
                None => start.joined(),
            };
            let Some(round) = given.rounds.get_mut(number) else { break };
            let work = below.and_then(|below| placement(&step.rounds.work, below));
            round.work = work.filter(|w| w.produced() == round.count && !step.unread);
            round.remark = remark.join(". ");
        }
    }
    given.stuff_after = stuffed(course, rows);
    given
}

fn note(op: &Placed<Op>) -> Option<&str> {
    match &op.it {
        Op::Note(text) => Some(text.as_str()),
        _ => None,
    }
}

/// The rounds after which the text stuffs the piece.
fn stuffed(course: &Course<'_>, rows: &RoundCounts) -> Vec<u32> {
    let mut after = Vec::new();
    let mut worked = 0_u32;
    let mut steps = course.steps.iter().zip(&rows.starts).peekable();
    for (i, line) in course.lines.iter().enumerate() {
        if let Some((step, &from)) = steps.next_if(|(s, _)| s.line == i) {
            worked = (from as u32).saturating_add(step.many());
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
fn choices(piece: &mut Piece, course: &Course<'_>, rows: &RoundCounts) -> Vec<String> {
    let mut yarns: Vec<String> = Vec::new();
    let mut round = 1;
    let mut steps = course.steps.iter().zip(&rows.starts).peekable();
    let mut kind = Kind::Single;
    for (i, line) in course.lines.iter().enumerate() {
        match &line.it {
            Line::Do(ops) => colours(ops, round, piece, &mut yarns),
            Line::Rounds(rounds) => {
                let Some((step, &from)) = steps.next_if(|(s, _)| s.line == i) else { continue };
                round = from as u32 + 1;
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
