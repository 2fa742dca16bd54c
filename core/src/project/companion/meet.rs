//! Making companions meet, by the smallest change of the side that may move.
//!
//! A few stitches are gained or lost at the edge itself: its round is pinned, or an open edge
//! drawn that much wider or narrower. More than that would show as a ruffle or a pucker, so
//! the whole piece is scaled until its edge comes out right, and the last stitch is seen to
//! in the same way.

use std::f64::consts::TAU;

use super::edge::{EdgeFacts, edge, named};
use super::report::{SeamReport, holds, of_edges, off};
use super::{At, Edge, Held, Seam, SeamKind, Side};
use crate::error::{Error, Result};
use crate::piece::{Piece, PieceId};
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::sizes::{Resized, Size, SizeBy, scaled_by};
use crate::sentence::Sentence;

/// Scales beside the nearest that are tried where that cannot be brought to meet.
const BESIDE: [f64; 6] = [0.99, 1.01, 0.98, 1.02, 0.96, 1.04];

/// So many stitches an edge may gain or lose by itself, and this share of its stitches.
const FEW: (f64, f64) = (2.0, 0.06);

/// Scales tried before the last stitches are pinned.
const MOST_SCALES: usize = 8;

/// How many times an open end's pin is moved to the last round before giving up.
const MOST_PINNINGS: usize = 4;

/// A seam that was made to hold.
#[derive(Debug, Clone)]
pub struct Met {
    /// The project with the side that moved.
    pub project: Project,
    /// What was changed; nothing where the seam held already.
    pub changes: Vec<Change>,
    /// How the seam stands now.
    pub report: SeamReport,
}

/// What a side was changed by.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// The piece.
    pub piece: PieceId,
    /// What became of it.
    pub kind: ChangeKind,
    /// The same in a sentence.
    pub said: Sentence,
}

/// How a piece was changed to meet another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ChangeKind {
    /// Its edge has other stitches.
    Counts {
        /// So many it had.
        from: u32,
        /// So many it has.
        to: u32,
    },
    /// Its whole outline was multiplied by this.
    Scale(f64),
}

/// One side moved.
struct Moved {
    piece: Piece,
    facts: EdgeFacts,
    held: Option<Held>,
    change: Option<Change>,
    /// What became of the piece's other seams.
    seams: Vec<Seam>,
    /// Share of its stitches, or of its size, by which it changed.
    amount: f64,
}

/// `project` with seam `index` made to hold by the smallest change of the side that may move.
///
/// # Errors
/// Where neither side that may move can: it says what holds each, a pin, another seam, a rule.
///
/// # Panics
/// Where there is no seam `index`.
pub fn meet(project: &Project, index: usize) -> Result<Met> {
    meet_as(project, index, &Size::new("", SizeBy::Factor(1.0)))
}

/// As [`meet`]; a piece that is scaled keeps what `size` keeps.
///
/// # Errors
/// As [`meet`].
pub(crate) fn meet_as(project: &Project, index: usize, size: &Size) -> Result<Met> {
    let seam = project.seams[index];
    let place = format!(
        "seam of “{}” and “{}”",
        project.name_of(seam.a.piece),
        project.name_of(seam.b.piece)
    );
    let (side, moved) = match seam.moves {
        Side::A | Side::B => (seam.moves, moved(project, index, seam.moves, size)),
        Side::Either => {
            let by = |side| moved(project, index, side, size);
            let (a, b) = (by(Side::A), by(Side::B));
            match (a, b) {
                (Ok(a), Ok(b)) if b.amount < a.amount => (Side::B, Ok(b)),
                (Err(_), Ok(b)) => (Side::B, Ok(b)),
                (Err(a), Err(b)) => {
                    let what = format!("{}, and {}", a.what, b.what);
                    (Side::A, Err(Error::new("", what, a.mend)))
                }
                (a, _) => (Side::A, a),
            }
        }
    };
    let moved = moved.map_err(|e| match e.place.is_empty() {
        true => Error::new(place, e.what, e.mend),
        false => e.within(&place),
    })?;
    let mut project = project.clone();
    project.seams = moved.seams;
    let seam = &mut project.seams[index];
    let (own, fixed) = seam.edges(side);
    match side {
        Side::B => seam.b.at = moved.facts.edge.at,
        _ => seam.a.at = moved.facts.edge.at,
    }
    seam.held = moved.held;
    let seam = *seam;
    if let Some(piece) = project.piece_mut(own.piece) {
        *piece = moved.piece;
    }
    let other = project.needed(fixed.piece)?;
    let fixed = edge(other, &plan(other)?, fixed)?;
    let report = match side {
        Side::B => of_edges(&project, &seam, fixed, moved.facts),
        _ => of_edges(&project, &seam, moved.facts, fixed),
    };
    Ok(Met { changes: moved.change.into_iter().collect(), report, project })
}

/// `project` with every seam made to hold, as far as they can all hold at once; for each seam
/// that cannot, why.
pub fn meet_all(project: &Project) -> (Project, Vec<Option<Sentence>>) {
    let mut at = project.clone();
    let mut said = vec![None; project.seams.len()];
    // Once more for those that a later seam moved away again.
    for _ in 0..2 {
        for (i, said) in said.iter_mut().enumerate() {
            *said = match meet(&at, i) {
                Ok(met) => {
                    at = met.project;
                    None
                }
                Err(e) => Some(e.to_string().into()),
            };
        }
    }
    for (i, said) in said.iter_mut().enumerate().filter(|(_, said)| said.is_none()) {
        *said = match super::report(&at, i) {
            Ok(report) if report.met => None,
            Ok(report) => Some(report.sentence().then(Sentence::note("another_seam", []))),
            Err(e) => Some(e.to_string().into()),
        };
    }
    (at, said)
}

/// What the moving edge is off by, in its own stitches: positive where it has too many.
fn excess(seam: &Seam, side: Side, own: &EdgeFacts, fixed: &EdgeFacts) -> f64 {
    let own_over_b = match seam.kind {
        SeamKind::SewnEqual => 1.0,
        // The same room is more of narrower stitches.
        SeamKind::Clearance { .. } if side == Side::B => 1.0,
        SeamKind::Clearance { .. } => fixed.stitch_mm / own.stitch_mm,
    };
    match side {
        Side::B => off(seam.kind, fixed, own).0,
        _ => -off(seam.kind, own, fixed).0 * own_over_b,
    }
}

/// Whether the seam holds between these edges.
fn is_met(seam: &Seam, side: Side, own: &EdgeFacts, fixed: &EdgeFacts) -> bool {
    let (a, b) = if side == Side::B { (fixed, own) } else { (own, fixed) };
    holds(seam.kind, off(seam.kind, a, b).0)
}

fn moved(project: &Project, index: usize, side: Side, size: &Size) -> Result<Moved> {
    let seam = &project.seams[index];
    let (own, fixed) = seam.edges(side);
    let other = project.needed(fixed.piece)?;
    let fixed = edge(other, &plan(other)?, fixed)?;
    let still = |piece: Piece, facts: EdgeFacts, held: Option<Held>| Moved {
        piece,
        facts,
        held,
        change: None,
        seams: project.seams.clone(),
        amount: 0.0,
    };
    let mut piece = project.needed(own.piece)?.clone();
    let now = edge(&piece, &plan(&piece)?, own)?;
    if is_met(seam, side, &now, &fixed) {
        return Ok(still(piece, now, seam.held));
    }
    // The seam's own pin is not in its way.
    let held = seam.held.filter(|h| h.piece == own.piece);
    if let Some(held) = held.filter(|h| piece.pins.get(&h.round) == Some(&h.count)) {
        piece.pins.remove(&held.round);
    }
    let first = plan(&piece)?;
    let now = edge(&piece, &first, own)?;
    if is_met(seam, side, &now, &fixed) {
        return Ok(still(piece, now, seam.held.filter(|h| h.piece != own.piece)));
    }
    let name = &piece.name;
    if let Some(pin) = piece.pins.get(&now.round) {
        return Err(Error::new(
            "",
            format!("{} of “{name}” is pinned at {pin} sts", named(own.at)),
            "let go of a pin, or let the other side move",
        ));
    }
    let excess_now = excess(seam, side, &now, &fixed);
    let few = excess_now.abs() <= FEW.0.max(FEW.1 * f64::from(now.stitches));
    let bound = bound_elsewhere(project, index, own.piece);
    if few || bound {
        let found = by_counts(seam, side, &piece, &now, &fixed, excess_now);
        if let Some((piece, facts)) = found {
            return Ok(counted(project, own, &now, piece, facts));
        }
    }
    if bound {
        return Err(Error::new(
            "",
            format!(
                "“{name}” would have to change by {:.0} sts at {} while another seam holds \
                 its size",
                excess_now.abs(),
                named(own.at)
            ),
            "let the companion of that other seam move, or the other side of this one",
        ));
    }
    by_scale(project, index, side, (&piece, &first, size), &fixed)
}

/// The edge with other stitches and nothing else changed, where that makes the seam hold.
fn by_counts(
    seam: &Seam,
    side: Side,
    piece: &Piece,
    now: &EdgeFacts,
    fixed: &EdgeFacts,
    excess_now: f64,
) -> Option<(Piece, EdgeFacts)> {
    let mut wanted = f64::from(now.stitches) - excess_now.round();
    let mut tried: Vec<u32> = Vec::new();
    // Cloth that is stuffed gives a little more or less than the stitches alone.
    for _ in 0..4 {
        let count = wanted.max(3.0) as u32;
        if tried.contains(&count) {
            break;
        }
        tried.push(count);
        let (piece, facts) = with_stitches(piece, now.edge, count)?;
        if is_met(seam, side, &facts, fixed) {
            return Some((piece, facts));
        }
        let step = excess(seam, side, &facts, fixed);
        wanted = f64::from(facts.stitches) - step.signum() * step.abs().round().max(1.0);
    }
    None
}

fn counted(
    project: &Project,
    own: Edge,
    now: &EdgeFacts,
    piece: Piece,
    facts: EdgeFacts,
) -> Moved {
    let (from, to) = (now.stitches, facts.stitches);
    let said = Sentence::note(
        "edge_goes_to",
        [
            ("piece", piece.name.as_str().into()),
            ("edge", named(own.at).into()),
            ("from", from.into()),
            ("to", to.into()),
        ],
    );
    let kind = ChangeKind::Counts { from, to };
    Moved {
        held: held(&piece, &facts),
        change: Some(Change { piece: own.piece, kind, said }),
        seams: project.seams.clone(),
        amount: f64::from(from.abs_diff(to)) / f64::from(from),
        piece,
        facts,
    }
}

/// The pin that now holds an edge; an open one is mostly held by its outline instead.
fn held(piece: &Piece, facts: &EdgeFacts) -> Option<Held> {
    let count = *piece.pins.get(&facts.round)?;
    Some(Held { piece: piece.id, round: facts.round, count })
}

/// `piece` with `count` stitches at `at`, where its plan can have them there: an open edge is
/// drawn as wide as they are, and whatever does not follow by itself is pinned.
fn with_stitches(piece: &Piece, at: Edge, count: u32) -> Option<(Piece, EdgeFacts)> {
    let mut piece = piece.clone();
    let planned = plan(&piece).ok()?;
    let mut round = edge(&piece, &planned, at).ok()?.round;
    if !matches!(at.at, At::Round(_)) {
        let around = f64::from(count) * piece.cloth_of_round(round.max(1)).width;
        let straight = if planned.depth_mm.is_some() { 2.0 * piece.straight_mm } else { 0.0 };
        let knots = &mut piece.outline.knots;
        let knot = if at.at == At::OpenStart { knots.first_mut() } else { knots.last_mut() };
        knot?.radius_mm = (around - straight) / TAU;
        let facts = edge(&piece, &plan(&piece).ok()?, at).ok()?;
        if facts.stitches == count {
            return Some((piece, facts));
        }
        round = facts.round;
    }
    if round == 0 {
        return None;
    }
    for _ in 0..MOST_PINNINGS {
        let mut pinned = piece.clone();
        pinned.pins.insert(round, count);
        let facts = edge(&pinned, &plan(&pinned).ok()?, at).ok()?;
        if facts.round == round {
            return (facts.stitches == count).then_some((pinned, facts));
        }
        round = facts.round; // The piece now ends a round earlier or later.
    }
    None
}

/// The whole piece scaled until its edge comes out right.
fn by_scale(
    project: &Project,
    index: usize,
    side: Side,
    (piece, first, size): (&Piece, &Plan, &Size),
    fixed: &EdgeFacts,
) -> Result<Moved> {
    let seam = &project.seams[index];
    let own = seam.edges(side).0;
    let now = edge(piece, first, own)?;
    let tried = |scale: f64| -> Result<(f64, Resized, EdgeFacts)> {
        let made = scaled_by(piece, first, scale, size)?;
        let carried = match own.at {
            At::Round(k) => At::Round(made.round_for(k)),
            open => open,
        };
        let facts = edge(&made.piece, &made.plan, Edge { at: carried, ..own })?;
        Ok((excess(seam, side, &facts, fixed), made, facts))
    };
    let mut scale = 1.0;
    let mut off = excess(seam, side, &now, fixed);
    let mut count = f64::from(now.stitches);
    let mut trials = Vec::new();
    for _ in 0..MOST_SCALES {
        let next = scale * ((count - off) / count).clamp(0.2, 5.0);
        if (next - scale).abs() < 1e-6 * scale {
            break;
        }
        scale = next;
        let trial = tried(scale)?;
        (off, count) = (trial.0, f64::from(trial.2.stitches));
        trials.push(trial);
        if off.abs() <= 0.5 {
            break;
        }
    }
    let met = |mut trials: Vec<(f64, Resized, EdgeFacts)>| {
        trials.sort_by(|a, b| a.0.abs().total_cmp(&b.0.abs()));
        trials.iter().find_map(|(excess, made, facts)| {
            let wanted = (f64::from(facts.stitches) - excess.round()).max(3.0) as u32;
            let found = with_stitches(&made.piece, facts.edge, wanted)
                .filter(|(_, facts)| is_met(seam, side, facts, fixed))
                .or_else(|| by_counts(seam, side, &made.piece, facts, fixed, *excess))?;
            Some(rescaled(project, own, made, found))
        })
    };
    if let Some(moved) = met(trials) {
        return Ok(moved);
    }
    // The nearest may be where a round more or fewer begins: then one beside it serves.
    for by in BESIDE {
        if let Some(moved) = met(vec![tried(scale * by)?]) {
            return Ok(moved);
        }
    }
    let what = format!("no scale of “{}” brings it to the other edge", piece.name);
    Err(Error::new("", what, "choose another round, or let the other side move"))
}

/// The piece `made` at another scale, its edge brought to what was `found` there.
fn rescaled(
    project: &Project,
    own: Edge,
    made: &Resized,
    (moved, facts): (Piece, EdgeFacts),
) -> Moved {
    let mut seams = project.seams.clone();
    super::carry(&mut seams, own.piece, made);
    let by = Sentence::default().number((made.scale - 1.0).abs() * 100.0, 1);
    let said = Sentence::note(
        if made.scale > 1.0 { "made_larger" } else { "made_smaller" },
        [
            ("piece", made.piece.name.as_str().into()),
            ("by", by.into()),
            ("edge", named(facts.edge.at).into()),
            ("n", facts.stitches.into()),
        ],
    );
    let kind = ChangeKind::Scale(made.scale);
    Moved {
        held: held(&moved, &facts),
        change: Some(Change { piece: own.piece, kind, said }),
        seams,
        amount: made.scale.ln().abs(),
        piece: moved,
        facts,
    }
}

/// Whether another seam keeps `piece` from being scaled: one whose other side may not
/// move.
fn bound_elsewhere(project: &Project, seam: usize, piece: PieceId) -> bool {
    project.seams.iter().enumerate().any(|(i, other)| {
        let others_may = match other.moves {
            Side::Either => true,
            Side::A => other.a.piece != piece,
            Side::B => other.b.piece != piece,
        };
        i != seam && other.touches(piece) && !others_may
    })
}
