//! The room inside a body: whether what is put into it, or pushed deep into it, has room beside
//! the cloth and any card, and what would.

use super::footprint::{FootprintMisfit, Why};
use super::solid::{OnCloth, Solid};
use super::vector::{V3, plus, sub};
use crate::plan::Plan;
use crate::plan::inside::Inside;

/// Places along each edge of a block, and across each of its faces, that are felt for.
const PLACES: usize = 6;

/// Halvings and steps in which something smaller, or deeper, is looked for.
const HALVINGS: u32 = 12;
const STEPS: u32 = 60;

/// Lines along a part in which it is felt for card.
const MERIDIANS: usize = 24;

/// Cloth and card give way by so much, mm: what goes less far through a card lies on it. An
/// assumption.
const GIVES_MM: f64 = 1.0;

/// Card laid level in a body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct CardInside {
    /// The round after which it is laid in.
    pub(super) after: u32,
    /// Its height on the body's axis, mm.
    z: f64,
    /// Its radius, and that of its hole, mm.
    radius: f64,
    hole: f64,
}

/// The card inside the piece planned as `plan`.
pub(super) fn cards(plan: &Plan) -> Vec<CardInside> {
    let stops = plan.inside.iter().filter_map(|stop| {
        let Inside::Card { across_mm, hole_mm, .. } = stop.what else { return None };
        let z = plan.forecast.get(stop.after as usize)?.z;
        let hole = 0.5 * hole_mm.unwrap_or(0.0);
        Some(CardInside { after: stop.after, z, radius: 0.5 * across_mm, hole })
    });
    stops.collect()
}

/// Why a block so wide, deep and long, mm, has no room where it is put into `body`, and what
/// would; `own` gives places of the block's axes in those of the body.
pub(super) fn block_misfit(
    body: &Solid,
    cards: &[CardInside],
    sides: [f64; 3],
    own: impl Fn(V3) -> V3,
) -> Option<FootprintMisfit> {
    // Its own z points outwards from its foot: it grows less about its middle, and goes deeper
    // against its z.
    let place = |u: V3, scale: f64, deeper: f64| {
        let off = [0, 1, 2].map(|i| scale * sides[i] * (u[i] - 0.5));
        own([off[0], off[1], off[2] + 0.5 * sides[2] - deeper])
    };
    let within =
        |scale: f64, deeper: f64| surface().all(|u| body.contains(place(u, scale, deeper)));
    let met = |scale: f64, deeper: f64| {
        let lines = edges().map(|line| line.map(|u| place(u, scale, deeper)));
        cards.iter().find(|card| card.is_crossed(lines.clone()))
    };
    let lies = |scale: f64, deeper: f64| within(scale, deeper) && met(scale, deeper).is_none();
    if lies(1.0, 0.0) {
        return None;
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if lies(middle, 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    let fits = sides.map(|mm| (low * mm).floor());
    let step = (body.profile_mm() / f64::from(STEPS)).max(0.5);
    let why = match met(1.0, 0.0).filter(|_| within(1.0, 0.0)) {
        Some(card) => Why::ThroughCard { after: card.after },
        None => Why::TooLarge { sides },
    };
    Some(FootprintMisfit {
        why,
        edge_that_fits: None,
        sink_mm: (1..=STEPS).map(|i| f64::from(i) * step).find(|&mm| lies(1.0, mm)),
        size_that_fits: fits.iter().all(|&mm| mm >= 1.0).then_some(fits),
    })
}

/// The card that `part`, put on `body` as `pose`, goes through; none where it goes through none.
pub(super) fn card_met(
    part: &Solid,
    cards: &[CardInside],
    own: impl Fn(V3) -> V3,
) -> Option<u32> {
    if cards.is_empty() {
        return None;
    }
    let nodes = part.nodes().len();
    let line = |i: usize| {
        let on = move |k: usize| OnCloth { round: k as f64, turn: i as f64 / MERIDIANS as f64 };
        (0..nodes).map(|k| own(part.station(on(k)).at)).collect()
    };
    let lines: Vec<Vec<V3>> = (0..MERIDIANS).map(line).collect();
    let crossed = |card: &&CardInside| card.is_crossed(lines.iter().map(|l| l.iter().copied()));
    cards.iter().find(crossed).map(|card| card.after)
}

impl CardInside {
    /// Whether any of `lines` goes through it, by more than cloth gives.
    fn is_crossed<L: Iterator<Item = V3>>(&self, lines: impl Iterator<Item = L>) -> bool {
        let mut below = f64::INFINITY;
        let mut above = f64::NEG_INFINITY;
        let mut met = false;
        for line in lines {
            let mut before: Option<V3> = None;
            for at in line {
                (below, above) = (below.min(at[2]), above.max(at[2]));
                if let Some(before) = before
                    && (before[2] < self.z) != (at[2] < self.z)
                {
                    let u = (self.z - before[2]) / (at[2] - before[2]);
                    let [x, y, _] = plus(before, sub(at, before), u);
                    met |= (self.hole..self.radius).contains(&x.hypot(y));
                }
                before = Some(at);
            }
        }
        met && above > self.z + GIVES_MM && below < self.z - GIVES_MM
    }
}

/// Places on a block's faces, 0 to 1 along each side.
fn surface() -> impl Iterator<Item = V3> {
    let share = |i: usize| i as f64 / PLACES as f64;
    let grid = (0..=PLACES).flat_map(move |a| (0..=PLACES).map(move |b| (share(a), share(b))));
    grid.flat_map(|(a, b)| {
        let ends = [0.0, 1.0];
        ends.into_iter().flat_map(move |c| [[c, a, b], [a, c, b], [a, b, c]])
    })
}

/// The edges of a block, as lines of places.
fn edges() -> impl Iterator<Item = impl Iterator<Item = V3> + Clone> + Clone {
    (0..12_usize).map(|edge| {
        let (axis, corner) = (edge / 4, edge % 4);
        (0..=PLACES).map(move |i| {
            let mut at = [0.0; 3];
            at[axis] = i as f64 / PLACES as f64;
            at[(axis + 1) % 3] = (corner % 2) as f64;
            at[(axis + 2) % 3] = (corner / 2) as f64;
            at
        })
    })
}
