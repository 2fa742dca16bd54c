//! Where a part that is added sits at first.

use plumpline_core::PieceId;
use plumpline_core::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Hanger, Joint, Knots, Metal, Sling,
    SlingHold, SlingLengths, Wire,
};
use plumpline_core::project::toy::part::{
    Button, Copies, EdgeHow, HeldBy, Part, PartEdge, PartEnd, PartForm, Place, Seat, Small,
    Thing,
};
use plumpline_core::project::toy::{LEGS, MadeFor};
use plumpline_core::toy::counted::CountedBy;
use plumpline_core::toy::solid::{OnCloth, Solid};

use super::here::ToyBench;

/// A part at least so wide, against what it is put on, goes on top of it, as a head does.
const HEAD: f64 = 0.55;
/// What is closed is sunk in by so much of its greatest radius.
const SUNK: f64 = 0.25;
/// How far from the middle of the profile, a share of it, parts of a pair sit.
const PAIR: f64 = 0.22;
/// Turns from the front at which the parts of a pair, and eyes, sit.
const PAIR_TURN: f64 = 0.2;
const EYE_TURN: f64 = 0.08;

/// What a part that is added now is put on: what is in hand if that is crochet, else the first
/// body.
pub(super) fn carrier(here: &ToyBench<'_>) -> Option<usize> {
    let crochet = |&i: &usize| here.part(i).is_some_and(|part| part.piece().is_some());
    let taken = here.bench.view.toy.part();
    let own = taken.filter(crochet);
    let under = || taken.and_then(|i| here.part(i)?.on).map(|seat| seat.part);
    own.or_else(under).or_else(|| (0..here.toy.parts.len()).find(crochet))
}

/// A piece on what is in hand: a large one on top, a pair on the sides, anything else in front.
pub(super) fn piece(here: &ToyBench<'_>, id: PieceId) -> Option<Part> {
    let piece = here.project.piece(id)?;
    let on = carrier(here)?;
    let solid = here.made.and_then(|made| made.assembled.solids.get(&id));
    let body = here.made.and_then(|made| made.solid(on));
    let up = here.made.is_some_and(|made| made.grows_up(on));
    let by = edge(piece.outline.starts_closed(), piece.outline.finishes_closed());
    let pair = piece.copies == 2;
    let wide = |solid: Option<&Solid>| solid.map_or(0.0, widest);
    let on_top = !pair && wide(solid) >= HEAD * wide(body);
    let towards_top = if up { 1.0 } else { -1.0 };
    let (along, around) = match (on_top, pair) {
        (true, _) => (0.5 + 0.5 * towards_top, 0.0),
        (false, true) => (0.5 + PAIR * towards_top, PAIR_TURN),
        (false, false) => (0.5, 0.0),
    };
    let mut at = Place { along, around };
    if let Some(body) = body.filter(|_| !on_top) {
        at = CountedBy::Round.nearest(body, body.round_at(along), around);
    }
    let sunk = if by.how == EdgeHow::Closed { SUNK * wide(solid) } else { 0.0 };
    let seat = Seat {
        part: on,
        at,
        by,
        // Where rounds are later upwards, they run back over the top: it is turned to look ahead.
        turn_deg: if on_top && up { 180.0 } else { 0.0 },
        tilt_deg: 0.0,
        sunk_mm: (2.0 * sunk).round() / 2.0,
    };
    let copies = if pair { Copies::Mirrored } else { Copies::One };
    Some(Part { copies, ..Part::new(Thing::Piece(id), Some(seat)) })
}

/// The edge a piece is put on by, if nobody says: an open one, else its end pushed in.
fn edge(starts_closed: bool, finishes_closed: bool) -> PartEdge {
    let (end, how) = match (finishes_closed, starts_closed) {
        (false, _) => (PartEnd::Last, EdgeHow::Open),
        (true, false) => (PartEnd::Start, EdgeHow::Open),
        (true, true) => (PartEnd::Last, EdgeHow::Closed),
    };
    PartEdge { end, how }
}

/// Small things there are to add.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SmallKind {
    Eyes,
    Nose,
    Block,
}

impl SmallKind {
    pub(super) const ALL: [Self; 3] = [Self::Eyes, Self::Nose, Self::Block];

    pub(super) fn text(self) -> &'static str {
        match self {
            Self::Eyes => say!("toy-eyes"),
            Self::Nose => say!("toy-nose-large"),
            Self::Block => say!("toy-other-small-thing"),
        }
    }
}

/// A small thing on the front of what is in hand. Where a child under 3 may have the toy, eyes
/// and noses are embroidered unless somebody says otherwise.
pub(super) fn small(here: &ToyBench<'_>, kind: SmallKind) -> Option<Part> {
    let on = carrier(here)?;
    let embroidered = matches!(here.toy.made_for, MadeFor::Baby | MadeFor::SoftToy);
    let body = here.made.and_then(|made| made.solid(on));
    let up = if here.made.is_some_and(|made| made.grows_up(on)) { 1.0 } else { -1.0 };
    let button = |diameter_mm: f64| Button { diameter_mm, embroidered };
    let (form, high, around, copies) = match kind {
        SmallKind::Eyes => (PartForm::Eye(button(8.0)), 0.06, EYE_TURN, Copies::Mirrored),
        SmallKind::Nose => (PartForm::Nose(button(10.0)), -0.05, 0.0, Copies::One),
        SmallKind::Block => (PartForm::Block(12.0, 12.0, 16.0), 0.0, 0.0, Copies::One),
    };
    let along = 0.5 + high * up;
    let at = match body {
        Some(body) => CountedBy::Gap.nearest(body, body.round_at(along), around),
        None => Place { along, around },
    };
    let what = Thing::Small(Small { name: String::new(), form, grams: None });
    let seat = Seat { at, ..Seat::new(on, along, around) };
    let washer = !embroidered && kind != SmallKind::Block;
    let held_by = if washer { HeldBy::Washer } else { HeldBy::Sewn };
    Some(Part { copies, held_by, ..Part::new(what, Some(seat)) })
}

/// How places of a part are counted.
pub(super) fn counted_by(part: &Part) -> CountedBy {
    if part.piece().is_some() { CountedBy::Round } else { CountedBy::Gap }
}

/// Kinds of attachment, with the words for them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum AttachKind {
    Loop,
    HangingCord,
    Sling,
    Cord,
    Wire,
    Joint,
}

impl AttachKind {
    pub(super) const ALL: [Self; 6] =
        [Self::Loop, Self::HangingCord, Self::Sling, Self::Cord, Self::Wire, Self::Joint];

    pub(super) fn text(self) -> &'static str {
        match self {
            Self::Loop => say!("toy-loop-or-ring-to-hang-by"),
            Self::HangingCord => say!("toy-cord-to-hang-by"),
            Self::Sling => say!("toy-cords-from-several-places"),
            Self::Cord => say!("toy-cord-to-another-body"),
            Self::Wire => say!("toy-wire-to-another-body"),
            Self::Joint => say!("toy-thread-joint"),
        }
    }
}

/// An attachment of what is in hand; none where the toy has nothing for it.
pub(super) fn attachment(here: &ToyBench<'_>, kind: AttachKind) -> Option<Attachment> {
    let parts = &here.toy.parts;
    let body = |i: &usize| parts[*i].on.is_none();
    let held = carrier(here)?;
    let first = (0..parts.len()).find(body)?;
    let upper = here.bench.view.toy.part().filter(body).unwrap_or(first);
    let lower = || (0..parts.len()).filter(body).find(|&i| i != upper);
    let up = here.made.is_some_and(|made| made.grows_up(held));
    let top = CordSpot::End(if up { PartEnd::Last } else { PartEnd::Start });
    Some(match kind {
        AttachKind::Loop => Attachment::Loop(Hanger {
            on: CordHold { part: held, at: top },
            around: None,
            stands_off_mm: 18.0,
            around_mm: 60.0,
            thickness_mm: 2.0,
        }),
        AttachKind::HangingCord => Attachment::Cord(Cord {
            from: CordHold { part: held, at: top },
            way: CordWay::Through,
            knots: Knots::Inside,
            to: None,
            drop_mm: 60.0,
            strands: 1,
            thickness_mm: 2.0,
        }),
        AttachKind::Sling => Attachment::Sling(Sling {
            legs: sling_holds(here, held, LEGS.0),
            lengths: SlingLengths::Upright,
            above_mm: 60.0,
            knots: Knots::Inside,
            thickness_mm: 2.0,
        }),
        AttachKind::Cord => Attachment::Cord(Cord {
            from: CordHold { part: upper, at: CordSpot::End(PartEnd::Start) },
            way: CordWay::Through,
            knots: Knots::Inside,
            to: Some(CordHold { part: lower()?, at: CordSpot::End(PartEnd::Last) }),
            drop_mm: 40.0,
            strands: 1,
            thickness_mm: 2.0,
        }),
        AttachKind::Wire => Attachment::Wire(Wire {
            carries: CordHold { part: lower()?, at: CordSpot::End(PartEnd::Start) },
            stands_in: CordHold { part: upper, at: CordSpot::End(PartEnd::Last) },
            free_mm: 40.0,
            metal: Metal::Steel,
            diameter_mm: 1.5,
            strands: 2,
        }),
        AttachKind::Joint => {
            let carried = |i: &usize| parts[*i].on.is_some() && parts[*i].piece().is_some();
            let taken = here.bench.view.toy.part().filter(carried);
            let part = taken.or_else(|| (0..parts.len()).find(carried))?;
            Attachment::Joint(Joint { part, passes: 2 })
        }
    })
}

/// Where `n` cords are held at first: high on the part `on` as the toy stands, apart. Held lower
/// than its middle of mass, a toy would turn over.
pub(super) fn sling_holds(here: &ToyBench<'_>, on: usize, n: usize) -> Vec<SlingHold> {
    let three = n > 2;
    let lies = here.made.and_then(|made| {
        let pose = made.assembled.poses.get(made.pose_of(on)?)?;
        let (solid, up) = (made.solid(on)?, made.assembled.up);
        let high = |way: [f64; 3]| way.iter().zip(up).map(|(a, b)| a * b).sum::<f64>();
        // The meridian that is uppermost, of a part whose axis is nearer to level than not.
        let facing = |i: u32| {
            let turn = f64::from(i) / 48.0 - 0.5;
            let on = OnCloth { round: solid.round_at(0.5), turn };
            (turn, high(pose.frame.direction(solid.station(on).normal)))
        };
        let top = (0..48).map(facing).max_by(|a, b| a.1.total_cmp(&b.1))?;
        (high(pose.frame.z).abs() < 0.7).then_some(top.0)
    });
    let up = here.made.is_some_and(|made| made.grows_up(on));
    let along = if up { 0.8 } else { 0.2 };
    let places = match (lies, three) {
        (Some(top), true) => vec![(0.22, top), (0.75, top - 0.1), (0.75, top + 0.1)],
        (Some(top), false) => vec![(0.22, top), (0.75, top)],
        (None, true) => vec![(along, 0.0), (along, 1.0 / 3.0), (along, -1.0 / 3.0)],
        (None, false) => vec![(along, 0.25), (along, -0.25)],
    };
    let solid = here.made.and_then(|made| made.solid(on));
    let held = |(along, around): (f64, f64)| {
        let around = around - around.round();
        let near = |solid| CountedBy::Gap.nearest(solid, Solid::round_at(solid, along), around);
        SlingHold { part: on, at: solid.map_or(Place { along, around }, near) }
    };
    places.into_iter().map(held).collect()
}

/// The greatest distance of a shape from its axis, mm.
pub(super) fn widest(solid: &Solid) -> f64 {
    solid.nodes().iter().fold(0.0, |most: f64, node| most.max(node.r))
}
