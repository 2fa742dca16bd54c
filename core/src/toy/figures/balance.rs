//! How a toy hangs and whether it stands: rigid bodies, what hangs on a cord as a weight at the
//! cord's upper end.

use super::flat::{V2, hull, margin, width};
use super::mass::{Mass, PoseMass, sum};
use super::sling::hung;
use crate::project::toy::Toy;
use crate::project::toy::attachment::{Attachment, CordSpot, Hanger};
use crate::project::toy::part::{PartEnd, PartForm, Thing};
use crate::toy::narrow::find;
use crate::toy::pose::{Pose, Shapes, hold_place, sling_holds, upright};
use crate::toy::solid::{OnCloth, Solid};
use crate::toy::vector::{Axes, V3, cross, dot, plus, scaled, sub, unit};

/// Cloth gives way by so much under a toy's weight, mm: what is within this of the lowest
/// place touches the ground. An assumption.
pub const CLOTH_GIVES_MM: f64 = 2.0;

/// A bottom whose touching area shrinks below this share of its width where cloth gives a
/// twentieth as much is round.
const ROUND_BOTTOM: f64 = 0.5;

/// Places of a ring at which the ground is felt for.
const PLACES: usize = 180;

/// How a toy hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hanging {
    /// The attachment it hangs by, an index into the toy's.
    pub attachment: usize,
    /// The point it hangs from, mm.
    pub point: V3,
    /// What it hangs: its own mass and what hangs on its cords.
    pub mass: Mass,
    /// By how much it leans from upright, degrees.
    pub lean_deg: f64,
    /// Which way its top leans, a level unit vector in its own axes; null where it does not.
    pub towards: V3,
}

/// How a toy stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// Corners of the area that what touches the ground spans: to the right, ahead, mm.
    pub ground: Vec<V2>,
    /// Where the centre of mass is over it.
    pub foot: V2,
    /// How high the centre of mass is above the ground, mm.
    pub height_mm: f64,
    /// Parts that touch the ground.
    pub on: Vec<usize>,
    /// How far it can be tilted before it tips, degrees, and which way it then tips; none where
    /// it does not stand.
    pub tips: Option<(f64, V2)>,
    /// Where its only foot is round: whether it comes upright again after a push.
    pub rocks: Option<bool>,
}

/// A part and what is rigid with it: poses by index.
fn rigid(toy: &Toy, poses: &[Pose], body: usize) -> Vec<usize> {
    let mut bodies = vec![body];
    let mut at = 0;
    while at < bodies.len() {
        for attachment in &toy.attachments {
            let Attachment::Wire(wire) = attachment else { continue };
            let ends = (wire.carries.part, wire.stands_in.part);
            for (from, to) in [ends, (ends.1, ends.0)] {
                if from == bodies[at] && !bodies.contains(&to) {
                    bodies.push(to);
                }
            }
        }
        at += 1;
    }
    let body_of = |mut i: usize| {
        while let Some(on) = poses[i].on {
            i = on;
        }
        poses[i].part
    };
    (0..poses.len()).filter(|&i| bodies.contains(&body_of(i))).collect()
}

/// The mass of what is rigid with `body`, and of what hangs on its cords as weights where
/// these begin.
fn load(shapes: Shapes<'_>, poses: &[Pose], masses: &[PoseMass], body: usize) -> Mass {
    let group = rigid(shapes.toy, poses, body);
    let own = group.iter().map(|&i| masses[i].all());
    let mut hung: Vec<usize> = Vec::new();
    let cords = shapes.toy.attachments.iter().filter_map(|attachment| {
        let Attachment::Cord(cord) = attachment else { return None };
        let lower = cord.to?.part;
        let pose = group.iter().find(|&&i| poses[i].part == cord.from.part)?;
        let inside = group.iter().any(|&i| poses[i].part == lower);
        // Several cords to one body carry it once.
        if inside || hung.contains(&lower) {
            return None;
        }
        hung.push(lower);
        let at = hold_place(shapes, &poses[*pose].frame, cord.from);
        Some(load(shapes, poses, masses, lower).at(at))
    });
    let cords: Vec<Mass> = cords.collect();
    sum(own.chain(cords))
}

/// The mass that a body carries or hangs, with its own: what a cord or wire to it bears.
pub(crate) fn carried(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
    body: usize,
    without_wire: usize,
) -> Mass {
    let mut toy = shapes.toy.clone();
    if without_wire < toy.attachments.len() {
        toy.attachments.remove(without_wire);
    }
    load(Shapes { toy: &toy, ..shapes }, poses, masses, body)
}

/// How the toy hangs by each of its rings, loops, slings and cords that go up.
pub(crate) fn hangings(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
) -> Vec<Hanging> {
    let toy = shapes.toy;
    let (up, _) = upright(toy);
    let of_body = |pose: &Pose| {
        let mut at = pose;
        while let Some(on) = at.on {
            at = &poses[on];
        }
        load(shapes, poses, masses, at.part)
    };
    let from = |attachment: &Attachment| match attachment {
        Attachment::Loop(hanger) => {
            let pose = poses.iter().find(|p| p.part == hanger.on.part)?;
            Some((of_body(pose), bearing(shapes, pose, hanger, up)))
        }
        Attachment::Cord(cord) if cord.to.is_none() => {
            let pose = poses.iter().find(|p| p.part == cord.from.part)?;
            let at = hold_place(shapes, &pose.frame, cord.from);
            Some((of_body(pose), plus(at, up, cord.drop_mm)))
        }
        Attachment::Sling(sling) => {
            let first = sling.legs.first()?.part;
            let mass = of_body(poses.iter().find(|p| p.part == first)?);
            let holds = sling_holds(shapes, poses, sling);
            Some((mass, hung(sling, &holds, mass.centre, up).1?.point))
        }
        _ => None,
    };
    let all = toy.attachments.iter().enumerate();
    all.filter_map(|(attachment, it)| {
        let (mass, point) = from(it)?;
        let down = unit(sub(mass.centre, point));
        let lean_deg = length_of_cross(down, up).atan2(-dot(down, up)).to_degrees();
        // The line from the centre up to the point comes to stand upright.
        let level = plus(down, up, -dot(down, up));
        let towards = unit(level);
        Some(Hanging { attachment, point, mass, lean_deg, towards })
    })
    .collect()
}

fn length_of_cross(a: V3, b: V3) -> f64 {
    let c = cross(a, b);
    dot(c, c).sqrt()
}

/// The point of a ring or loop that bears.
fn bearing(shapes: Shapes<'_>, pose: &Pose, hanger: &Hanger, up: V3) -> V3 {
    let Some(solid) = shapes.of(pose.part) else { return pose.frame.origin };
    if let Some(around) = hanger.around {
        let round = find(solid, hanger.on.at).unwrap_or(0.0);
        let flip = if pose.mirrored { -1.0 } else { 1.0 };
        let station = solid.station(OnCloth { round, turn: flip * around });
        let own = plus(station.at, station.normal, hanger.stands_off_mm);
        return pose.frame.place(own);
    }
    let at = hold_place(shapes, &pose.frame, hanger.on);
    let off = match hanger.on.at {
        CordSpot::End(PartEnd::Start) => scaled(pose.frame.z, -1.0),
        CordSpot::End(PartEnd::Last) => pose.frame.z,
        CordSpot::Neck | CordSpot::Lip | CordSpot::Share(_) => up,
    };
    plus(at, off, hanger.stands_off_mm)
}

/// How the toy stands on what is rigid with its first body; none of a toy without one, nor
/// where a body hangs on a cord.
pub(crate) fn standing(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
) -> Option<Standing> {
    let toy = shapes.toy;
    let (up, ahead) = upright(toy);
    let first = poses.first()?.part;
    let hangs = |a: &Attachment| matches!(a, Attachment::Cord(cord) if cord.to.is_some());
    let group = rigid(toy, poses, first);
    // On a wire and a cord at once it is the wire that bears.
    if toy.attachments.iter().any(hangs) && group.len() < poses.len() {
        return None;
    }
    let lines: Vec<(usize, Vec<V3>)> = group
        .iter()
        .flat_map(|&i| {
            let pose = &poses[i];
            let lines = match (shapes.of(pose.part), &toy.parts[pose.part].what) {
                (Some(solid), _) => meridians(solid, &pose.frame),
                (None, Thing::Small(small)) => block(small.form, &pose.frame),
                (None, Thing::Piece(_)) => Vec::new(),
            };
            lines.into_iter().map(move |line| (pose.part, line))
        })
        .collect();
    let heights = lines.iter().flat_map(|(_, line)| line).map(|&at| dot(at, up));
    let lowest = heights.fold(f64::INFINITY, f64::min);
    if !lowest.is_finite() {
        return None;
    }
    // Level axes: to the right of the first body, and ahead.
    let right = cross(ahead, up);
    let level = |at: V3| [dot(at, right), dot(at, ahead)];
    let touching = |gives: f64| {
        let mut on: Vec<usize> = Vec::new();
        let mut points: Vec<V2> = Vec::new();
        for (part, line) in &lines {
            let before = points.len();
            touch(line, up, lowest + gives, |at| points.push(level(at)));
            if points.len() > before && !on.contains(part) {
                on.push(*part);
            }
        }
        (hull(&points), on)
    };
    let (ground, on) = touching(CLOTH_GIVES_MM);
    let mass = load(shapes, poses, masses, first);
    let (foot, height_mm) = (level(mass.centre), dot(mass.centre, up) - lowest);
    let side = margin(&ground, foot).filter(|&(far, _)| far > 0.0);
    let tips = side.map(|(far, way)| (far.atan2(height_mm).to_degrees(), way));
    let feet = poses.iter().filter(|pose| on.contains(&pose.part)).count();
    let tight = width(&touching(0.05 * CLOTH_GIVES_MM).0);
    let whole = width(&ground);
    let rocks = (feet == 1 && tight < ROUND_BOTTOM * whole).then(|| {
        // The ball whose cap is as wide where cloth gives.
        let half = 0.5 * whole;
        let radius = (half * half + CLOTH_GIVES_MM.powi(2)) / (2.0 * CLOTH_GIVES_MM);
        height_mm < radius
    });
    Some(Standing { ground, foot, height_mm, on, tips, rocks })
}

/// The profile at many turns, in the toy's axes.
fn meridians(solid: &Solid, frame: &Axes) -> Vec<Vec<V3>> {
    let last = solid.nodes().len();
    (0..PLACES)
        .map(|i| {
            let turn = i as f64 / PLACES as f64;
            let at = |k: usize| solid.station(OnCloth { round: k as f64, turn }).at;
            (0..last).map(|k| frame.place(at(k))).collect()
        })
        .collect()
}

/// The upright edges of a block around a small thing.
fn block(form: PartForm, frame: &Axes) -> Vec<Vec<V3>> {
    let (wide, deep, long) = match form {
        PartForm::Eye(b) | PartForm::Nose(b) => {
            (b.diameter_mm, b.diameter_mm, 0.5 * b.diameter_mm)
        }
        PartForm::Block(wide, deep, long) => (wide, deep, long),
    };
    let corner = |x: f64, y: f64, z: f64| frame.place([0.5 * wide * x, 0.5 * deep * y, z]);
    [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
        .map(|(x, y)| vec![corner(x, y, 0.0), corner(x, y, long)])
        .to_vec()
}

/// Every place of `line` up to `level`: its corners there and where it passes that height.
fn touch(line: &[V3], up: V3, level: f64, mut put: impl FnMut(V3)) {
    for (i, &at) in line.iter().enumerate() {
        let high = dot(at, up);
        if high <= level {
            put(at);
        }
        let Some(&next) = line.get(i + 1) else { continue };
        let above = dot(next, up);
        if (high <= level) != (above <= level) {
            let share = (level - high) / (above - high);
            put(plus(at, sub(next, at), share));
        }
    }
}
