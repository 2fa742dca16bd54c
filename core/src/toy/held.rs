//! What holds a toy together, with its figures: cords, rings, wires, joints.

use super::figures::balance::carried;
use super::figures::mass::{Mass, PoseMass};
use super::figures::sling::hung;
use super::figures::wire::{
    CordLength, GRAVITY, PUSH_N, Rod, Stiffness, awg_for, cord_mm, swg_for,
};
use super::lean::Meridian;
use super::narrow::{find, neck};
use super::pose::{Pose, Shapes, sling_holds, upright};
use super::solid::OnCloth;
use super::vector::distance;
use crate::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Joint, Sling, SlingHold, Wire,
};

/// A place on a part that something is held at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeldPlace {
    /// The part, an index into the toy's.
    pub part: usize,
    /// How far along it, in rounds; none where its shape has no such place.
    pub round: Option<f64>,
    /// Radius there, mm.
    pub radius_mm: f64,
    /// Whether it is the narrowest place between two swells, so that what is around it cannot
    /// slip.
    pub narrow: bool,
}

/// What an attachment comes to.
#[derive(Debug, Clone, PartialEq)]
pub enum HeldPart {
    /// A cord.
    Cord {
        /// Where it is held above, or where it begins.
        from: HeldPlace,
        /// Where it is held below.
        to: Option<HeldPlace>,
        /// How long it is.
        length: CordLength,
        /// What it bears, g.
        bears_g: f64,
    },
    /// A ring or loop.
    Loop {
        /// Where it is.
        on: HeldPlace,
    },
    /// A wire.
    Wire(WireFigures),
    /// A thread joint.
    Joint {
        /// Length of the thread, mm: through the toy as often as it passes, and to tie.
        thread_mm: f64,
    },
    /// Cords that meet above.
    Sling(SlingFigures),
}

/// What cords that meet above come to.
#[derive(Debug, Clone, PartialEq)]
pub struct SlingFigures {
    /// Each cord, in the order of its holds.
    pub legs: Vec<SlingLeg>,
    /// To cut for all of them, mm: each with a knot at both its ends.
    pub all_mm: f64,
    /// What they bear together, g.
    pub bears_g: f64,
}

/// One of the cords that meet above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlingLeg {
    /// The part it is held by, an index into the toy's.
    pub part: usize,
    /// It is held between this round and the next.
    pub round: u32,
    /// After this stitch of the round; 0 is before the first.
    pub after: u32,
    /// From the cloth to where they meet, mm.
    pub free_mm: f64,
    /// What it pulls with as the toy hangs, as a weight in g; 0 where it is slack.
    pub bears_g: f64,
}

/// What a wire has to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WireFigures {
    /// Where it leaves what it carries.
    pub carries: HeldPlace,
    /// Where it enters what it stands in.
    pub stands_in: HeldPlace,
    /// The wire as it is.
    pub rod: Rod,
    /// What it carries.
    pub load: Mass,
    /// How many times that it bears before it buckles.
    pub safety: f64,
    /// The least thickness of a strand, mm; none where no wire of the metal does.
    pub least_mm: Option<f64>,
    /// The thinnest gauges that are enough: American, and standard.
    pub gauges: (Option<i32>, Option<u32>),
    /// How far the top goes aside under a push of [`PUSH_N`], mm; none where it buckles.
    pub sways_mm: Option<f64>,
    /// To cut, mm: all strands, through both bodies.
    pub cut_mm: f64,
}

/// What is left of a thread to tie it, mm. Common practice, no source.
pub const TO_TIE_MM: f64 = 300.0;

/// The figures of every attachment.
pub(super) fn held(shapes: Shapes<'_>, poses: &[Pose], masses: &[PoseMass]) -> Vec<HeldPart> {
    let all = shapes.toy.attachments.iter().enumerate();
    all.map(|(index, attachment)| match attachment {
        Attachment::Cord(cord) => cord_figures(shapes, poses, masses, cord),
        Attachment::Loop(hanger) => HeldPart::Loop { on: found(shapes, hanger.on) },
        Attachment::Wire(wire) => {
            HeldPart::Wire(wire_figures(shapes, poses, masses, index, wire))
        }
        Attachment::Joint(joint) => {
            HeldPart::Joint { thread_mm: thread_mm(shapes, poses, *joint) }
        }
        Attachment::Sling(sling) => {
            HeldPart::Sling(sling_figures(shapes, poses, masses, sling))
        }
    })
    .collect()
}

/// Where a hold is on its part.
pub(super) fn found(shapes: Shapes<'_>, hold: CordHold) -> HeldPlace {
    let nowhere = HeldPlace { part: hold.part, round: None, radius_mm: 0.0, narrow: false };
    let Some(solid) = shapes.of(hold.part) else { return nowhere };
    let Some(round) = find(solid, hold.at) else { return nowhere };
    let narrow = hold.at == CordSpot::Neck
        || neck(solid).is_some_and(|neck| (neck as f64 - round).abs() < 0.5);
    HeldPlace { round: Some(round), radius_mm: solid.profile(round).r, narrow, ..nowhere }
}

fn cord_figures(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
    cord: &Cord,
) -> HeldPart {
    let (from, to) = (found(shapes, cord.from), cord.to.map(|to| found(shapes, to)));
    let held_mm = match cord.way {
        CordWay::Around => std::f64::consts::TAU * from.radius_mm,
        CordWay::Through => 2.0 * from.radius_mm,
    };
    // One cord hangs from the middle, several from the sides; a free loop has two legs.
    let aside = match to {
        Some(to) if cord.strands > 1 => (from.radius_mm - to.radius_mm).abs(),
        _ => 0.0,
    };
    let legs = if to.is_some() { cord.strands } else { 2 * cord.strands };
    let length = cord_mm(cord.drop_mm, aside, held_mm, legs, cord.thickness_mm);
    let bears = to.map_or(cord.from.part, |to| to.part);
    let all = shapes.toy.attachments.len();
    let bears_g = carried(shapes, poses, masses, bears, all).grams;
    HeldPart::Cord { from, to, length, bears_g }
}

fn wire_figures(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
    index: usize,
    wire: &Wire,
) -> WireFigures {
    let (carries, stands_in) = (found(shapes, wire.carries), found(shapes, wire.stands_in));
    let rod = Rod {
        stiffness: Stiffness::of(wire.metal),
        diameter_mm: wire.diameter_mm,
        strands: wire.strands,
        length_mm: wire.free_mm,
    };
    let load = carried(shapes, poses, masses, wire.carries.part, index);
    let load_n = load.grams / 1000.0 * GRAVITY;
    let least_mm = rod.least_mm(load_n);
    let gauges = least_mm.map_or((None, None), |mm| (awg_for(mm), swg_for(mm)));
    let inside = |found: HeldPlace| {
        let solid = shapes.of(found.part)?;
        let at = solid.profile(found.round?).z;
        let far = solid.nodes().iter().map(|n| (n.z - at).abs()).fold(0.0, f64::max);
        Some(far)
    };
    let through = inside(carries).unwrap_or(0.0) + inside(stands_in).unwrap_or(0.0);
    WireFigures {
        carries,
        stands_in,
        rod,
        load,
        safety: rod.safety(load_n),
        least_mm,
        gauges,
        sways_mm: rod.sways_mm(PUSH_N, load_n),
        cut_mm: f64::from(wire.strands) * (wire.free_mm + through),
    }
}

fn sling_figures(
    shapes: Shapes<'_>,
    poses: &[Pose],
    masses: &[PoseMass],
    sling: &Sling,
) -> SlingFigures {
    let none = shapes.toy.attachments.len();
    let first = sling.legs.first().map_or(0, |leg| shapes.toy.body_of(leg.part));
    let load = carried(shapes, poses, masses, first, none);
    let holds = sling_holds(shapes, poses, sling);
    let (lengths, slung) = hung(sling, &holds, load.centre, upright(shapes.toy).0);
    let pulls = slung.map_or_else(|| vec![0.0; lengths.len()], |slung| slung.pulls);
    let legs = sling.legs.iter().zip(lengths).zip(pulls).map(|((&leg, free_mm), pull)| {
        let (round, after) = sling_stitch(shapes, leg);
        SlingLeg { part: leg.part, round, after, free_mm, bears_g: pull * load.grams }
    });
    let legs: Vec<SlingLeg> = legs.collect();
    let cut = |leg: &SlingLeg| cord_mm(leg.free_mm, 0.0, 0.0, 1, sling.thickness_mm).all_mm;
    SlingFigures { all_mm: legs.iter().map(cut).sum(), legs, bears_g: load.grams }
}

/// Between which rounds, and after which stitch, a cord of a sling is held.
fn sling_stitch(shapes: Shapes<'_>, leg: SlingHold) -> (u32, u32) {
    let Some(solid) = shapes.of(leg.part) else { return (0, 0) };
    let front = Meridian::new(solid, shapes.toy.parts[leg.part].front);
    let on = OnCloth { round: solid.round_at(leg.at.along), turn: leg.at.around };
    front.after(solid, on)
}

/// Thread for a joint: from copy to copy, or across what carries the only one.
fn thread_mm(shapes: Shapes<'_>, poses: &[Pose], joint: Joint) -> f64 {
    let places: Vec<_> = poses
        .iter()
        .filter(|pose| pose.part == joint.part)
        .filter_map(|pose| {
            let carrier = &poses[pose.on?];
            let station = shapes.of(carrier.part)?.station(pose.seat?);
            Some(carrier.frame.place(station.at))
        })
        .collect();
    let across = match places.as_slice() {
        [one, others @ ..] if !others.is_empty() => {
            others.iter().map(|&other| distance(*one, other)).fold(0.0, f64::max)
        }
        [_] => {
            let seat = shapes.toy.parts[joint.part].on;
            let carrier = seat.and_then(|seat| Some((seat, shapes.of(seat.part)?)));
            carrier.map_or(0.0, |(seat, solid)| {
                2.0 * solid.profile(solid.round_at(seat.at.along)).r
            })
        }
        _ => 0.0,
    };
    f64::from(joint.passes) * across + TO_TIE_MM
}
