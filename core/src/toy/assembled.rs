//! A toy put together: everything that follows from its parts, in one pass and never saved.

use std::collections::BTreeMap;

use super::embroidered::{EmbroideryFigures, embroidered};
use super::figures::balance::{Hanging, Standing, hangings, standing};
use super::figures::mass::{Mass, PoseMass, masses, range, sum};
use super::figures::small_parts::{fits, hull_against, turned_against};
use super::footprint::{
    Footprint, FootprintMisfit, Meeting, Span, Why, footprint, misfit, span,
};
use super::held::{HeldPart, held};
use super::lean::{Meridian, Pair, between, pair};
use super::pose::{Pose, Shapes, poses, upright};
use super::room::{CardInside, block_misfit, card_met, cards};
use super::solid::{OnCloth, Solid};
use super::vector::{Axes, V3};
use crate::error::{Error, Result};
use crate::piece::PieceId;
use crate::piece::outline::Rz;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::toy::part::{Copies, Part, PartForm, Seat, Thing};
use crate::project::toy::validate;

/// A toy put together. Lengths are mm, masses g, in axes whose origin is the start of the first
/// body and whose z runs along that body's axis in working order, y to its front.
#[derive(Debug, Clone)]
pub struct Assembled {
    /// The stuffed shape of each piece of the project.
    pub solids: BTreeMap<PieceId, Solid>,
    /// Every copy of every part in its place: bodies first.
    pub poses: Vec<Pose>,
    /// Upwards.
    pub up: V3,
    /// Ahead, where the toy looks.
    pub ahead: V3,
    /// What is told of each part of the toy.
    pub parts: Vec<PartFigures>,
    /// What each pose weighs.
    pub masses: Vec<PoseMass>,
    /// All of the toy.
    pub mass: Mass,
    /// Least and most that it may weigh.
    pub grams: (f64, f64),
    /// What each attachment comes to.
    pub held: Vec<HeldPart>,
    /// What each line of embroidery comes to.
    pub embroidery: Vec<EmbroideryFigures>,
    /// How it hangs by each attachment that goes up.
    pub hangings: Vec<Hanging>,
    /// How it stands.
    pub standing: Option<Standing>,
}

/// What is told of one part.
#[derive(Debug, Clone, PartialEq)]
pub struct PartFigures {
    /// The plane of its own front, where it carries others.
    pub front: Option<Meridian>,
    /// Where its first copy meets what carries it.
    pub footprint: Option<Footprint>,
    /// That in rounds and stitches.
    pub span: Option<Span>,
    /// Where the middle of its place is; of a small thing, where it goes through the cloth.
    pub point: Option<Point>,
    /// Why it does not fit its place, and what would.
    pub misfit: Option<FootprintMisfit>,
    /// How large one is against the small-parts cylinder: 1 or less fits into it.
    pub against_cylinder: f64,
    /// How many there are in all.
    pub number: usize,
}

impl PartFigures {
    /// Whether one fits entirely into the small-parts cylinder, in some orientation.
    pub fn is_small(&self) -> bool {
        fits(self.against_cylinder)
    }
}

/// Where the middle of a place is, in whole rounds and stitches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Point {
    /// Between this round and the next.
    pub round: u32,
    /// Stitches between it and its mirror image, across the front.
    pub apart: Option<u32>,
    /// Each copy after this stitch of the round, counted from its first.
    pub after: Vec<u32>,
}

/// The toy of `project`, each of its pieces planned first.
///
/// # Errors
/// As [`plan`](crate::plan()), and [`assembled_of`].
pub fn assembled(project: &Project) -> Result<Assembled> {
    let planned = |piece| {
        let made = plan(piece);
        made.map_err(|e| e.within(&format!("piece “{}”", piece.name)))
    };
    let plans = project.pieces.iter().map(planned).collect::<Result<Vec<_>>>()?;
    assembled_of(project, &plans)
}

/// The toy of `project`, whose pieces are planned as `plans`, in their order.
///
/// # Errors
/// Where the project's toy has no parts or names what is not there, and for a plan too few.
pub fn assembled_of(project: &Project, plans: &[Plan]) -> Result<Assembled> {
    let toy = &project.toy;
    validate(toy, &project.pieces)?;
    if toy.parts.is_empty() {
        let what = "no part has been put in its place yet";
        return Err(Error::new("toy", what, "put a body down first"));
    }
    if plans.len() != project.pieces.len() {
        let what = format!("{} plans of {} pieces", plans.len(), project.pieces.len());
        return Err(Error::new("toy", what, "plan every piece"));
    }
    let pairs = project.pieces.iter().zip(plans);
    let solids: BTreeMap<PieceId, Solid> =
        pairs.map(|(piece, plan)| (piece.id, Solid::new(piece, plan))).collect();
    let shapes = Shapes { toy, solids: &solids };
    let poses = poses(shapes);
    let masses = masses(project, plans, shapes, &poses);
    let (up, ahead) = upright(toy);
    let pairs = project.pieces.iter().zip(plans);
    let inside: BTreeMap<PieceId, Vec<CardInside>> =
        pairs.map(|(piece, plan)| (piece.id, cards(plan))).collect();
    let part_figures = |i| figures(shapes, &poses, &inside, i);
    Ok(Assembled {
        up,
        ahead,
        parts: (0..toy.parts.len()).map(part_figures).collect(),
        mass: sum(masses.iter().map(PoseMass::all)),
        grams: range(&masses),
        embroidery: embroidered(shapes, &poses),
        held: held(shapes, &poses, &masses),
        hangings: hangings(shapes, &poses, &masses),
        standing: standing(shapes, &poses, &masses),
        masses,
        poses,
        solids,
    })
}

fn figures(
    shapes: Shapes<'_>,
    poses: &[Pose],
    inside: &BTreeMap<PieceId, Vec<CardInside>>,
    index: usize,
) -> PartFigures {
    let part = &shapes.toy.parts[index];
    let solid = shapes.of(index);
    let against_cylinder = match (&part.what, solid) {
        (Thing::Piece(_), Some(solid)) => against(solid),
        (Thing::Small(small), _) => small_against(small.form),
        (Thing::Piece(_), None) => f64::INFINITY,
    };
    let mut figures = PartFigures {
        front: solid.map(|solid| Meridian::new(solid, part.front)),
        footprint: None,
        span: None,
        point: None,
        misfit: None,
        against_cylinder,
        number: poses.iter().filter(|pose| pose.part == index).count(),
    };
    let Some(seat) = part.on else { return figures };
    let Some(body) = shapes.of(seat.part) else { return figures };
    let front = Meridian::new(body, shapes.toy.parts[seat.part].front);
    figures.point = Some(point(body, front, part, seat));
    if let Some(solid) = solid
        && let Some(meeting) = meeting(poses, index, seat, solid, body)
    {
        let found = footprint(&meeting, 1.0);
        figures.misfit = misfit(&meeting, &found);
        figures.span = found.as_ref().ok().map(|print| span(body, print, &others(print, part)));
        figures.footprint = found.ok();
    }
    if figures.misfit.is_none() {
        let cards = shapes.toy.parts[seat.part].piece().and_then(|piece| inside.get(&piece));
        let cards = cards.map_or(&[][..], Vec::as_slice);
        figures.misfit = no_room(poses, index, (part, seat), solid, body, cards);
    }
    figures
}

/// Why what is put into `body`, or pushed into it, has no room there.
fn no_room(
    poses: &[Pose],
    index: usize,
    (part, seat): (&Part, Seat),
    solid: Option<&Solid>,
    body: &Solid,
    cards: &[CardInside],
) -> Option<FootprintMisfit> {
    let pose = poses.iter().find(|pose| pose.part == index)?;
    let carrier = &poses.get(pose.on?)?.frame;
    let own = |at: V3| carrier.own_place(pose.frame.place(at));
    match (&part.what, solid) {
        (Thing::Small(small), _) => {
            let PartForm::Block(wide, deep, long) = small.form else { return None };
            let put_in = seat.sunk_mm >= long;
            put_in.then(|| block_misfit(body, cards, [wide, deep, long], own)).flatten()
        }
        (Thing::Piece(_), Some(solid)) => {
            card_met(solid, cards, own).map(|after| FootprintMisfit {
                why: Why::ThroughCard { after },
                edge_that_fits: None,
                sink_mm: None,
                size_that_fits: None,
            })
        }
        (Thing::Piece(_), None) => None,
    }
}

/// The first copy of a part on the first of what carries it; the others are its images.
fn meeting<'a>(
    poses: &[Pose],
    index: usize,
    seat: Seat,
    part: &'a Solid,
    body: &'a Solid,
) -> Option<Meeting<'a>> {
    let pose = poses.iter().find(|pose| pose.part == index)?;
    let carrier = &poses.get(pose.on?)?.frame;
    let frame = Axes {
        origin: carrier.own_place(pose.frame.origin),
        x: carrier.own_direction(pose.frame.x),
        y: carrier.own_direction(pose.frame.y),
        z: carrier.own_direction(pose.frame.z),
    };
    let (sunk_mm, edge) = (seat.sunk_mm, seat.by);
    Some(Meeting { part, frame, body, seat: pose.seat?, sunk_mm, edge })
}

/// The footprints of the other copies.
fn others(print: &Footprint, part: &Part) -> Vec<Footprint> {
    match part.copies {
        Copies::One => Vec::new(),
        Copies::Mirrored => vec![print.mirrored()],
        Copies::Around(n) => {
            (1..n).map(|i| print.turned(f64::from(i) / f64::from(n))).collect()
        }
    }
}

fn point(body: &Solid, front: Meridian, part: &Part, seat: Seat) -> Point {
    let on = OnCloth { round: body.round_at(seat.at.along), turn: seat.at.around };
    let round = between(body, on.round);
    if part.copies == Copies::Mirrored {
        let Pair { apart, after, .. } = pair(body, front, on);
        return Point { round, apart: Some(apart), after: vec![after.0, after.1] };
    }
    let count = body.stitches(f64::from(round)).max(1.0);
    let number = part.copies.number();
    let after = (0..number).map(|i| {
        let turn = on.turn + f64::from(i) / f64::from(number);
        front.stitch(body, round, turn).round().rem_euclid(count) as u32
    });
    Point { round, apart: None, after: after.collect() }
}

/// How large a piece is against the small-parts cylinder.
fn against(solid: &Solid) -> f64 {
    let half = 0.5 * solid.straight_mm();
    if half <= 0.0 {
        return turned_against(solid.nodes());
    }
    let ring = |k: usize| (0..24).map(move |i| (k, f64::from(i) / 24.0));
    // Of a long piece not every node: what is left out can only make it smaller, which is the
    // safe side.
    let (last, apart) =
        (solid.nodes().len().saturating_sub(1), solid.nodes().len().div_ceil(60));
    let places = (0..last).step_by(apart.max(1)).chain([last]).flat_map(ring);
    let points: Vec<V3> =
        places.map(|(k, turn)| solid.station(OnCloth { round: k as f64, turn }).at).collect();
    hull_against(&points)
}

/// How large a small thing is against the small-parts cylinder.
fn small_against(form: PartForm) -> f64 {
    match form {
        PartForm::Block(wide, deep, long) => {
            let corners = (0..8).map(|i: u32| {
                let side = |bit: u32, long: f64| if i >> bit & 1 == 1 { long } else { 0.0 };
                [side(0, wide), side(1, deep), side(2, long)]
            });
            hull_against(&corners.collect::<Vec<V3>>())
        }
        PartForm::Eye(button) | PartForm::Nose(button) => {
            // Less than the half ball that it is: the safe side.
            let r = 0.5 * button.diameter_mm;
            turned_against(&[Rz::new(r, 0.0), Rz::new(0.0, r)])
        }
    }
}
