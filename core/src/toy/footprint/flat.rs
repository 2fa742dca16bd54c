//! A flat edge: a geodesic on the cloth, the line in which a pressed edge lies without a pull
//! to either side.

use crate::toy::solid::{OnCloth, Solid};
use crate::toy::vector::{V3, dot, plus, scaled, unit};

/// Steps in a stitch.
const STEPS_IN_A_STITCH: f64 = 16.0;

/// Most steps either way.
const MOST_STEPS: usize = 4000;

/// The line `long_mm` long on `body` whose middle is at `seat` and which runs along `across`
/// there; none where it runs over an open edge.
///
/// On each round's cloth, a cone, it is walked in small steps, each laid back on the cloth;
/// over the edge to the next round it keeps its angle, as on a strip laid flat.
pub(super) fn line(
    body: &Solid,
    seat: OnCloth,
    across: V3,
    long_mm: f64,
) -> Option<Vec<OnCloth>> {
    let half = |way: f64| walk(body, seat, scaled(across, way), 0.5 * long_mm);
    let mut all = half(-1.0)?;
    all.reverse();
    all.push(seat);
    all.extend(half(1.0)?);
    Some(all)
}

fn walk(body: &Solid, seat: OnCloth, across: V3, long_mm: f64) -> Option<Vec<OnCloth>> {
    let steps = (long_mm / body.stitch_mm() * STEPS_IN_A_STITCH).ceil().max(1.0) as usize;
    let steps = steps.min(MOST_STEPS);
    let step = long_mm / steps as f64;
    let last = body.nodes().len() - 1;
    let band = |on: OnCloth| (on.round as usize).min(last - 1);
    let (mut on, mut at) = (seat, body.station(seat).at);
    let mut k = band(on);
    let (normal, _, _) = body.flat(k, on);
    let mut way = unit(plus(across, normal, -dot(across, normal)));
    let mut line = Vec::with_capacity(steps);
    for _ in 0..steps {
        let next = plus(at, way, step);
        let landed = body.nearest(next, on.round);
        let (open_start, open_last) = body.open();
        let over =
            (open_start && landed.round <= 0.0) || (open_last && landed.round >= last as f64);
        if over {
            return None;
        }
        let to = band(landed);
        // Along the old cone to the new place, then over the edge at the same angle.
        let (normal, later, on_round) = body.flat(k, landed);
        let flat = unit(plus(way, normal, -dot(way, normal)));
        way = flat;
        if to != k {
            let (_, new_later, new_on_round) = body.flat(to, landed);
            way = unit(plus(
                scaled(new_later, dot(flat, later)),
                new_on_round,
                dot(flat, on_round),
            ));
        }
        at = body.station(landed).at;
        (on, k) = (landed, to);
        line.push(on);
    }
    Some(line)
}
