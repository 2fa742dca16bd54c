//! From text to shape: a written piece as a [`Piece`] whose counts are held by pins and whose
//! outline is the forecast of those rounds at the maker's own gauge.

use crate::error::{Error, LONGEST_NAME, Result};
use crate::piece::Yarn;
use crate::piece::cloth::{Kind, KindFrom, Loop, Working};
use crate::piece::gauge::Gauge;
use crate::piece::outline::{Knot, Outline, Rz};
use crate::piece::{Band, Firmness, MOST_ROUNDS, Piece};
use crate::plan::counts::{Holds, Start, skin_of};
use crate::plan::forecast::settle::{settle, settled_gradient};
use crate::plan::forecast::{Energy, pressure_for_skin};
use crate::plan::plan;
use crate::project::Project;
use crate::words::course::{Course, courses};
use crate::words::tree::{Line, Op, Pattern, Placed, Span, StitchKind};

/// A last round of at most so many stitches is drawn shut; a wider one is left open. Common
/// practice, no source.
const DRAWN_SHUT: u32 = 8;

/// How far the knots' curve may be from the forecast, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// Places on the smooth curve through the forecast that knots are then fitted to.
const SAMPLES: usize = 400;

/// A piece made of a written pattern, and its yarns.
#[derive(Debug, Clone, PartialEq)]
pub struct Shaped {
    /// The piece; its bands count in `yarns`.
    pub piece: Piece,
    /// What the text calls its yarns, in the order in which they are taken up; empty where it
    /// names none.
    pub yarns: Vec<String>,
}

/// Every piece of `pattern` at this gauge and firmness, its counts held; `unread` are the
/// places its reader could not make out. `name` is for a piece that the text does not name.
///
/// # Errors
/// For a pattern without rounds, and for the first round whose count nobody can know, that
/// more than doubles or halves the one below, or that a piece cannot be worked in at all.
pub fn shape(
    pattern: &Pattern,
    unread: &[Span],
    name: &str,
    gauge: Gauge,
    firmness: Firmness,
) -> Result<Vec<Shaped>> {
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
    named
        .map(|(name, course)| {
            let place = format!("piece “{name}”");
            one(name, course, gauge, firmness).map_err(|e| e.within(&place))
        })
        .collect()
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
        project.pieces.push(piece);
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
    piece.pins = (1..).zip(counts.iter().copied()).collect();
    let (first, last) = (counts[0], counts[counts.len() - 1]);
    piece.rules.ring = (3..=24).contains(&first).then_some(first);
    piece.rules.last = (drawn && last >= 3).then_some(last);
    piece.outline = outline(&piece, open.map_or(Start::Ring, Start::Chain), &counts)?;
    let planned = plan(&piece)?.counts();
    if let Some(at) =
        (0..counts.len().max(planned.len())).find(|&i| counts.get(i) != planned.get(i))
    {
        return Err(Error::new(
            format!("round {}", at + 1),
            format!("the forecast of these {} rounds cannot hold its count", counts.len()),
            "check the round against the pattern",
        ));
    }
    Ok(Shaped { piece, yarns })
}

/// The stitches of every round, and of the foundation chain at an open start.
fn counts(course: &Course<'_>) -> Result<(Vec<u32>, Option<u32>)> {
    let mut counts: Vec<u32> = Vec::new();
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

/// The profile that the rounds stuff into, as knots.
fn outline(piece: &Piece, start: Start, counts: &[u32]) -> Result<Outline> {
    let skin = skin_of(piece, start, counts, &Holds::default());
    let pressure = pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
    let energy = Energy::new(&skin, pressure);
    let settled =
        settle(&energy, &energy.flatten(&skin.slack_shape()), settled_gradient(&skin));
    // The nodes of a small piece turn sharply from one to the next; the cloth does not, so
    // knots are fitted to the smooth curve through them.
    let mut knots: Vec<Knot> = Vec::with_capacity(settled.nodes.len());
    for node in &settled.nodes {
        let apart = |knot: &Knot| knot.place().distance(*node) > 0.05;
        if knots.last().is_none_or(apart) {
            knots.push(Knot::new(node.r, node.z));
        }
    }
    let smooth = Outline { knots };
    let mut places: Vec<Rz> = smooth.profile(SAMPLES).places();
    places.iter_mut().for_each(|p| p.r = p.r.max(0.0));
    let tolerance = TOLERANCE_STITCHES * piece.gauge.stitch_width_mm();
    Outline::through_points(&places, tolerance)
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
