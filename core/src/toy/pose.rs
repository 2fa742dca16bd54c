//! Poses: where each part and each copy of it is in space.

use std::collections::BTreeMap;

use super::narrow::find;
use super::solid::{OnCloth, Solid, SolidStation};
use super::vector::{Axes, V3, add, cross, dot, plus, scaled};
use crate::piece::PieceId;
use crate::project::toy::Toy;
use crate::project::toy::attachment::{CordHold, Sling};
use crate::project::toy::part::{Copies, Part, PartEdge, PartEnd, Place, Seat, Up};

/// One copy of a part in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Pose {
    /// The part, an index into the toy's.
    pub part: usize,
    /// Which copy it is of those on one carrier, from 0.
    pub copy: u32,
    /// What carries it, an index into the poses; none for a body.
    pub on: Option<usize>,
    /// Its own axes in those of the toy.
    pub frame: Axes,
    /// Whether it is the mirror image: what it carries sits the other way round.
    pub mirrored: bool,
    /// Its place on the cloth of what carries it.
    pub seat: Option<OnCloth>,
}

/// What is put somewhere: the toy and the stuffed shapes of its pieces.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Shapes<'a> {
    pub(crate) toy: &'a Toy,
    /// The shape of each piece of the project.
    pub(crate) solids: &'a BTreeMap<PieceId, Solid>,
}

impl<'a> Shapes<'a> {
    /// The shape of part `index`; none of a small thing.
    pub(super) fn of(&self, index: usize) -> Option<&'a Solid> {
        self.solids.get(&self.toy.parts.get(index)?.piece()?)
    }
}

/// Room between bodies that nothing joins, mm.
const APART_MM: f64 = 20.0;

/// Upwards and ahead when the toy stands as it is meant to, in its own axes: as its first body
/// has it.
pub(super) fn upright(toy: &Toy) -> (V3, V3) {
    own_upright(toy.parts.first().map_or(Up::Last, |part| part.up))
}

/// Upwards and ahead in a body's own axes.
fn own_upright(up: Up) -> (V3, V3) {
    let (front, later) = (Axes::WORLD.y, Axes::WORLD.z);
    let start = scaled(later, -1.0);
    match up {
        Up::Start => (start, front),
        Up::Last => (later, front),
        Up::Front => (front, start),
        Up::Back => (scaled(front, -1.0), start),
    }
}

/// All poses: bodies first, then each part after what carries it, copies together.
pub(super) fn poses(shapes: Shapes<'_>) -> Vec<Pose> {
    let parts = &shapes.toy.parts;
    let mut poses = bodies(shapes);
    for (index, part) in parts.iter().enumerate() {
        let Some(seat) = part.on else { continue };
        let carriers: Vec<usize> =
            (0..poses.len()).filter(|&i| poses[i].part == seat.part).collect();
        for on in carriers {
            for copy in 0..part.copies.number() {
                poses.extend(seated(shapes, &poses, on, index, part, seat, copy));
            }
        }
    }
    poses
}

/// The pose of one copy of a part on what carries it; none on a small thing, which has no
/// cloth.
fn seated(
    shapes: Shapes<'_>,
    poses: &[Pose],
    on: usize,
    index: usize,
    part: &Part,
    seat: Seat,
    copy: u32,
) -> Option<Pose> {
    let carrier = &poses[on];
    let solid = shapes.of(carrier.part)?;
    let image = part.copies == Copies::Mirrored && copy == 1;
    let mirrored = carrier.mirrored ^ image;
    let flip = if mirrored { -1.0 } else { 1.0 };
    let step = match part.copies {
        Copies::Around(n) => f64::from(copy) / f64::from(n.max(1)),
        Copies::One | Copies::Mirrored => 0.0,
    };
    let turn = flip * (seat.at.around + step);
    let cloth = OnCloth { round: solid.round_at(seat.at.along), turn };
    let seat = Seat { turn_deg: flip * solid.hand() * seat.turn_deg, ..seat };
    let own = own_frame(&solid.station(cloth), seat, shapes.of(index));
    let frame = Axes {
        origin: carrier.frame.place(own.origin),
        x: carrier.frame.direction(own.x),
        y: carrier.frame.direction(own.y),
        z: carrier.frame.direction(own.z),
    };
    Some(Pose { part: index, copy, on: Some(on), frame, mirrored, seat: Some(cloth) })
}

/// The axes of a part at `station`, in those of what carries it.
///
/// Its axis starts along the normal; it is turned about that, then leant about what is then
/// its sideways axis.
fn own_frame(station: &SolidStation, seat: Seat, solid: Option<&Solid>) -> Axes {
    let SolidStation { at, normal, later } = *station;
    let (sin, cos) = seat.turn_deg.to_radians().sin_cos();
    let ahead = plus(scaled(later, cos), cross(normal, later), sin);
    let (sin, cos) = seat.tilt_deg.to_radians().sin_cos();
    let away = plus(scaled(normal, cos), ahead, sin);
    let front = plus(scaled(ahead, cos), normal, -sin);
    let foot = plus(at, away, -seat.sunk_mm);
    let Some(solid) = solid else { return Axes::new(foot, front, away) };
    let axis = match seat.by.end {
        PartEnd::Start => away,
        PartEnd::Last => scaled(away, -1.0),
    };
    let z = edge_node(solid, seat.by).1;
    Axes::new(plus(foot, axis, -z), front, axis)
}

/// The index of the node at which a part is put on, and its height on the part's own axis, mm.
pub(super) fn edge_node(solid: &Solid, edge: PartEdge) -> (usize, f64) {
    let nodes = solid.nodes();
    let node = match edge.end {
        PartEnd::Start => 0,
        PartEnd::Last => nodes.len() - 1,
    };
    (node, nodes[node].z)
}

/// The poses of the bodies: the first upright at the origin, others above or below what they
/// are joined to, the rest beside, on the same height.
fn bodies(shapes: Shapes<'_>) -> Vec<Pose> {
    let toy = shapes.toy;
    let (up, _) = upright(toy);
    let is_body = |&i: &usize| toy.parts[i].on.is_none();
    let mut poses: Vec<Pose> = Vec::new();
    let mut right = None;
    // A body can wait for one that stands later in the list, so this goes round until nothing
    // more can be joined; circles are refused when a toy is read.
    loop {
        let placed = |poses: &[Pose], i: usize| poses.iter().position(|p| p.part == i);
        let joined = toy.attachments.iter().find_map(|attachment| {
            let (upper, lower, gap) = attachment.joins()?;
            match (placed(&poses, upper.part), placed(&poses, lower.part)) {
                (Some(on), None) => Some((on, upper, lower, -gap)),
                (None, Some(on)) => Some((on, lower, upper, gap)),
                _ => None,
            }
        });
        if let Some((on, known, new, rise)) = joined {
            let frame = frame_of(toy, new.part);
            let from = hold_place(shapes, &poses[on].frame, known);
            let own = hold_place(shapes, &frame, new);
            let by = plus(plus(from, up, rise), own, -1.0);
            poses.push(body(new.part, Axes { origin: add(frame.origin, by), ..frame }));
            continue;
        }
        let free = (0..toy.parts.len()).filter(is_body).find(|&i| placed(&poses, i).is_none());
        let Some(next) = free else { break };
        let frame = frame_of(toy, next);
        let wide = shapes.of(next).map_or(0.0, widest);
        let x = right.map_or(0.0, |edge: f64| edge + APART_MM + wide);
        right = Some(x + wide);
        poses.push(body(next, Axes { origin: [x, 0.0, 0.0], ..frame }));
    }
    poses.sort_by_key(|pose| pose.part);
    poses
}

fn body(part: usize, frame: Axes) -> Pose {
    Pose { part, copy: 0, on: None, frame, mirrored: false, seat: None }
}

/// A body at the origin, what is meant to be up upwards and what looks ahead ahead.
fn frame_of(toy: &Toy, part: usize) -> Axes {
    let ((up, ahead), (own_up, own_ahead)) = (upright(toy), own_upright(toy.parts[part].up));
    let (side, own_side) = (cross(up, ahead), cross(own_up, own_ahead));
    let turned = |own: V3| {
        let raised = plus(scaled(up, dot(own, own_up)), ahead, dot(own, own_ahead));
        plus(raised, side, dot(own, own_side))
    };
    Axes::new([0.0; 3], turned(Axes::WORLD.y), turned(Axes::WORLD.z))
}

/// The place on the axis at which a part is held.
pub(super) fn hold_place(shapes: Shapes<'_>, frame: &Axes, hold: CordHold) -> V3 {
    let height = shapes.of(hold.part).and_then(|solid| {
        let round = find(solid, hold.at)?;
        Some(solid.profile(round).z)
    });
    frame.place([0.0, 0.0, height.unwrap_or(0.0)])
}

fn widest(solid: &Solid) -> f64 {
    solid.nodes().iter().fold(0.0, |most: f64, n| most.max(n.r)) + 0.5 * solid.straight_mm()
}

/// The places on the cloth at which a sling is held, in the toy's axes.
pub(crate) fn sling_holds(shapes: Shapes<'_>, poses: &[Pose], sling: &Sling) -> Vec<V3> {
    let legs = sling.legs.iter();
    legs.filter_map(|leg| cloth_place(shapes, poses, leg.part, leg.at)).collect()
}

/// A place on the cloth of the first copy of a part; none on a small thing.
fn cloth_place(shapes: Shapes<'_>, poses: &[Pose], part: usize, at: Place) -> Option<V3> {
    let pose = poses.iter().find(|pose| pose.part == part)?;
    let solid = shapes.of(part)?;
    let flip = if pose.mirrored { -1.0 } else { 1.0 };
    let on = OnCloth { round: solid.round_at(at.along), turn: flip * at.around };
    Some(pose.frame.place(solid.station(on).at))
}
