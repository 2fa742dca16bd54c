//! Where an edge or a sunk part meets the cloth of what carries it, as a curve on that cloth.

use super::flat::line;
use crate::project::toy::part::{EdgeHow, PartEdge, PartEnd};
use crate::toy::pose::edge_node;
use crate::toy::solid::{OnCloth, Solid};
use crate::toy::vector::{Axes, V3, distance, plus, sub};

/// Places around the edge that are followed on to the cloth: fine enough that a curve lies
/// within a hundredth of a stitch of one with many more.
const AROUND: usize = 96;

/// Steps from the middle of an edge outwards in which it is followed over the cloth, so that
/// the near side of a body is never taken for another part of it.
const STEPS: usize = 8;

/// The curve of a part on the cloth of what carries it.
#[derive(Debug, Clone, PartialEq)]
pub struct Footprint {
    /// The curve, turns going on without a jump; closed where the first place follows the last.
    pub curve: Vec<OnCloth>,
    /// Whether it is closed.
    pub closed: bool,
    /// Length on the cloth, mm.
    pub length_mm: f64,
    /// Length of the edge that is to lie there, mm; none where all of it is sunk in, so that no
    /// edge is seen.
    pub edge_mm: Option<f64>,
    /// Stitches of the edge that are sewn; of a flat one those through both layers.
    pub edge_stitches: f64,
    /// By how much further the part would have to be sunk for its edge to lie inside, mm.
    pub sink_mm: f64,
}

/// Why there is no footprint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Miss {
    /// The end is closed, so it has no edge.
    NoEdge,
    /// Part of the edge passes the body, or reaches over an open edge of it.
    OffTheBody,
    /// The end does not reach the body: so much is wanting, mm, where that is known.
    TooHigh(Option<f64>),
    /// All of the part is inside the body.
    Swallowed,
}

/// A part and what carries it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Meeting<'a> {
    /// The part.
    pub(crate) part: &'a Solid,
    /// Its axes in those of what carries it.
    pub(crate) frame: Axes,
    /// What carries it.
    pub(crate) body: &'a Solid,
    /// Its place on the cloth of that.
    pub(crate) seat: OnCloth,
    /// How deep it is sunk in, mm.
    pub(crate) sunk_mm: f64,
    /// By which edge it is put on.
    pub(crate) edge: PartEdge,
}

/// The footprint of a part; its edge is `wide` times as wide as it is, for trying others.
///
/// # Errors
/// Why there is none.
pub(crate) fn footprint(meeting: &Meeting<'_>, wide: f64) -> Result<Footprint, Miss> {
    let (node, _) = edge_node(meeting.part, meeting.edge);
    let is_open = meeting.part.nodes()[node].r > 1e-6 || meeting.part.straight_mm() > 0.0;
    let stitches = meeting.part.stitches(node as f64) * wide;
    match meeting.edge.how {
        EdgeHow::Flat | EdgeHow::Open if !is_open => Err(Miss::NoEdge),
        EdgeHow::Flat => {
            let long = 0.5 * stitches * meeting.part.stitch_mm();
            let curve = line(meeting.body, meeting.seat, meeting.frame.x, long)
                .ok_or(Miss::OffTheBody)?;
            Ok(Footprint {
                length_mm: long,
                edge_mm: Some(long),
                edge_stitches: 0.5 * stitches,
                closed: false,
                sink_mm: 0.0,
                curve: unwrapped(curve),
            })
        }
        EdgeHow::Open | EdgeHow::Closed => around(meeting, stitches, wide),
    }
}

fn around(meeting: &Meeting<'_>, stitches: f64, wide: f64) -> Result<Footprint, Miss> {
    let (mut on, mut places) = (Vec::new(), Vec::new());
    let (mut edge, mut sink_mm, mut seen): (Vec<V3>, f64, bool) = (Vec::new(), 0.0, false);
    for i in 0..AROUND {
        let turn = i as f64 / AROUND as f64;
        let meridian = meridian(meeting, turn, wide);
        edge.push(meridian[0]);
        let landed = match meeting.edge.how {
            EdgeHow::Closed => Landed { found: leaves(meeting, &meridian)?, above_mm: None },
            EdgeHow::Open | EdgeHow::Flat => lands(meeting, &meridian)?,
        };
        if let Some(mm) = landed.above_mm {
            sink_mm = sink_mm.max(mm);
            seen = true;
        }
        places.push(meeting.body.station(landed.found).at);
        on.push(landed.found);
    }
    Ok(Footprint {
        curve: unwrapped(on),
        closed: true,
        length_mm: all_around(&places),
        edge_mm: seen.then(|| all_around(&edge)),
        edge_stitches: stitches,
        sink_mm,
    })
}

/// Where a place of the edge comes to lie, and how far it stands above the cloth; not at all
/// where it is inside, and the part itself goes through the cloth.
struct Landed {
    found: OnCloth,
    above_mm: Option<f64>,
}

/// The profile of the part at `turn`, from the edge that is put on outwards, in the axes of
/// what carries it.
fn meridian(meeting: &Meeting<'_>, turn: f64, wide: f64) -> Vec<V3> {
    let last = meeting.part.nodes().len() - 1;
    (0..=last)
        .map(|i| {
            let node = if meeting.edge.end == PartEnd::Start { i } else { last - i };
            let at = meeting.part.station(OnCloth { round: node as f64, turn }).at;
            meeting.frame.place([at[0] * wide, at[1] * wide, at[2]])
        })
        .collect()
}

/// The way out of what carries it, along the part's axis.
fn away(meeting: &Meeting<'_>) -> V3 {
    let z = meeting.frame.z;
    if meeting.edge.end == PartEnd::Start { z } else { sub([0.0; 3], z) }
}

/// The edge carried along the part's axis on to the cloth.
fn lands(meeting: &Meeting<'_>, meridian: &[V3]) -> Result<Landed, Miss> {
    let (away, edge) = (away(meeting), meridian[0]);
    let middle = edge_middle(meeting);
    let mut at = meeting.sunk_mm;
    let mut found = None;
    for step in 0..=STEPS {
        let share = step as f64 / STEPS as f64;
        let from = plus(middle, sub(edge, middle), share);
        let crossings = meeting.body.crossings(from, away);
        let nearest = crossings
            .into_iter()
            .filter(|c| c.leaving)
            .min_by(|a, b| (a.s - at).abs().total_cmp(&(b.s - at).abs()))
            .ok_or(Miss::OffTheBody)?;
        at = nearest.s;
        found = Some(nearest.on);
    }
    match found {
        // What only rests on the body is sewn along its edge, wherever that is carried to; what
        // is sunk in, along its own side where the edge is inside.
        Some(found) if at <= 1e-9 || meeting.sunk_mm <= 0.0 => {
            Ok(Landed { found, above_mm: Some(-at) })
        }
        _ => Ok(Landed { found: leaves(meeting, meridian)?, above_mm: None }),
    }
}

fn edge_middle(meeting: &Meeting<'_>) -> V3 {
    let (_, z) = edge_node(meeting.part, meeting.edge);
    meeting.frame.place([0.0, 0.0, z])
}

/// Where the part's own profile first leaves the body.
fn leaves(meeting: &Meeting<'_>, meridian: &[V3]) -> Result<OnCloth, Miss> {
    if !meeting.body.contains(meridian[0]) {
        let axis = meeting.body.crossings(edge_middle(meeting), away(meeting));
        let least = axis.iter().filter(|c| c.leaving && c.s <= 0.0).map(|c| -c.s);
        return Err(Miss::TooHigh(least.min_by(f64::total_cmp)));
    }
    for pair in meridian.windows(2) {
        let out = meeting.body.crossings(pair[0], sub(pair[1], pair[0]));
        let first = out
            .into_iter()
            .filter(|c| c.leaving && (-1e-9..=1.0 + 1e-9).contains(&c.s))
            .min_by(|a, b| a.s.total_cmp(&b.s));
        if let Some(first) = first {
            return Ok(first.on);
        }
    }
    Err(Miss::Swallowed)
}

fn all_around(places: &[V3]) -> f64 {
    let next = places.iter().cycle().skip(1);
    places.iter().zip(next).map(|(&a, &b)| distance(a, b)).sum()
}

/// The same places, each turn within half a turn of the one before.
fn unwrapped(mut curve: Vec<OnCloth>) -> Vec<OnCloth> {
    for i in 1..curve.len() {
        let before = curve[i - 1].turn;
        curve[i].turn -= (curve[i].turn - before).round();
    }
    curve
}

impl Footprint {
    /// How often it goes around the axis of what carries it: 0, 1 or −1.
    pub fn winding(&self) -> i32 {
        match (self.curve.first(), self.curve.last()) {
            (Some(first), Some(last)) if self.closed => (last.turn - first.turn).round() as i32,
            _ => 0,
        }
    }

    /// The least and the greatest round it reaches.
    pub fn rounds(&self) -> (f64, f64) {
        let rounds = self.curve.iter().map(|on| on.round);
        rounds.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), round| {
            (low.min(round), high.max(round))
        })
    }

    /// The least and the greatest turn at which it passes `round`; none where it does not.
    pub fn turns_at(&self, round: f64) -> Option<(f64, f64)> {
        let mut found: Option<(f64, f64)> = None;
        let mut put = |turn: f64| {
            let (low, high) = found.unwrap_or((turn, turn));
            found = Some((low.min(turn), high.max(turn)));
        };
        for (i, &a) in self.curve.iter().enumerate() {
            let wraps = i + 1 == self.curve.len();
            if wraps && !self.closed {
                if a.round == round {
                    put(a.turn);
                }
                break;
            }
            let b = self.curve[(i + 1) % self.curve.len()];
            // Around the axis the curve ends a turn on.
            let end = b.turn - if wraps { f64::from(-self.winding()) } else { 0.0 };
            if a.round == round {
                put(a.turn);
            }
            if (a.round < round) != (b.round < round) {
                let u = (round - a.round) / (b.round - a.round);
                put(u.mul_add(end - a.turn, a.turn));
            }
        }
        found
    }
}
