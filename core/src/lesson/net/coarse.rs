//! The same cloth in fewer, larger stitches, and the way back.
//!
//! A large net finds its rest slowly: what one end does takes as many steps to reach the other
//! as there are stitches between. Two rounds taken as one, and two stitches as one, have a
//! quarter of the nodes and the same lengths at rest, so the large net starts from the shape
//! of the small one.

use super::build::{Leg, turn_over};
use super::{Net, NetRing};
use crate::lesson::space::{V3, plus};

/// Fewest nodes of a ring of a coarse net.
const FEWEST: usize = 4;

/// A net of the same cloth in stitches twice as large.
#[derive(Debug, Clone)]
pub(in crate::lesson) struct Coarser {
    /// The net.
    pub(in crate::lesson) net: Net,
    /// Of each ring of the finer net, where it lies between rings of the coarser one.
    between: Vec<f64>,
}

impl Coarser {
    /// A coarser net of `fine`'s cloth; `None` where two rounds would be left.
    pub(in crate::lesson) fn of(fine: &Net) -> Option<Self> {
        let last = fine.rings.len() - 1;
        if last < 4 {
            return None;
        }
        let mut kept: Vec<usize> = (0..=last).step_by(2).collect();
        if kept.last() != Some(&last) {
            kept.push(last);
        }
        let mut rings = vec![coarse_ring(&fine.rings[0], 0, fine.rings[0].height_mm)];
        let mut legs: Vec<Vec<Leg>> = Vec::with_capacity(kept.len());
        for pair in kept.windows(2) {
            let height = fine.rings[pair[0] + 1..=pair[1]].iter().map(|r| r.height_mm).sum();
            let below = rings[rings.len() - 1];
            let mut ring = coarse_ring(&fine.rings[pair[1]], below.first + below.count, height);
            let round = even_legs(below.count, ring.count);
            ring.turn = turn_over(&below, ring.count, &round);
            rings.push(ring);
            legs.push(round);
        }
        let mut between = vec![0.0];
        for (i, pair) in kept.windows(2).enumerate() {
            let span = pair[1] - pair[0];
            between.extend((1..=span).map(|step| i as f64 + step as f64 / span as f64));
        }
        Some(Self { net: Net::joined(rings, &legs, fine.end), between })
    }

    /// Places of `fine`'s nodes on the coarse net's `places`.
    pub(in crate::lesson) fn refined(&self, fine: &Net, places: &[V3]) -> Vec<V3> {
        let mut out = Vec::with_capacity(fine.len());
        for (ring, &at) in fine.rings.iter().zip(&self.between) {
            for j in 0..ring.count {
                let turn = ring.turn + j as f64 / ring.count as f64;
                out.push(self.place(places, at, turn));
            }
        }
        out
    }

    /// The place at `turn` on ring `at`, which may lie between two.
    fn place(&self, places: &[V3], at: f64, turn: f64) -> V3 {
        let last = self.net.rings.len() - 1;
        let k = (at as usize).min(last.saturating_sub(1));
        let u = at - k as f64;
        if u <= 0.0 {
            return self.on_ring(places, k, turn);
        }
        if u >= 1.0 {
            return self.on_ring(places, k + 1, turn);
        }
        // Beyond the ends the line goes on as it comes.
        let (p1, p2) = (self.on_ring(places, k, turn), self.on_ring(places, k + 1, turn));
        let beyond =
            |from: V3, over: V3| -> V3 { std::array::from_fn(|i| 2.0 * over[i] - from[i]) };
        let p0 = if k > 0 { self.on_ring(places, k - 1, turn) } else { beyond(p2, p1) };
        let p3 = if k + 2 <= last { self.on_ring(places, k + 2, turn) } else { beyond(p1, p2) };
        smooth([p0, p1, p2, p3], u)
    }

    fn on_ring(&self, places: &[V3], k: usize, turn: f64) -> V3 {
        let ring = &self.net.rings[k];
        if ring.count == 1 {
            return places[ring.first];
        }
        let at = (turn - ring.turn).rem_euclid(1.0) * ring.count as f64;
        let j = (at as usize).min(ring.count - 1);
        let node = |step: usize| places[ring.node(j + ring.count - 1 + step)];
        smooth([node(0), node(1), node(2), node(3)], at - j as f64)
    }
}

/// The cubic through the middle two of four places whose slopes there are those between
/// their neighbours (Catmull and Rom 1974), at `u` from 0 to 1.
fn smooth(p: [V3; 4], u: f64) -> V3 {
    let (u2, u3) = (u * u, u * u * u);
    let w = [
        0.5 * (-u + 2.0 * u2 - u3),
        0.5 * (2.0 - 5.0 * u2 + 3.0 * u3),
        0.5 * (u + 4.0 * u2 - 3.0 * u3),
        0.5 * (-u2 + u3),
    ];
    p.iter().zip(w).fold([0.0; 3], |sum, (&place, w)| plus(sum, place, w))
}

/// A ring as long as `fine` of half as many stitches.
fn coarse_ring(fine: &NetRing, first: usize, height_mm: f64) -> NetRing {
    let count = if fine.count <= FEWEST { fine.count } else { (fine.count / 2).max(FEWEST) };
    let width_mm = fine.around_mm() / count as f64;
    NetRing { first, count, width_mm, height_mm, turn: fine.turn }
}

/// Stitches of a ring of `upper` worked evenly into one of `lower`.
fn even_legs(lower: usize, upper: usize) -> Vec<Leg> {
    let most = lower.max(upper);
    (0..most).map(|t| (t * lower / most, t * upper / most)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::{NetEnd, NetRound};
    use super::*;
    use crate::extent::StitchSize;
    use crate::piece::given::Start;
    use crate::piece::outline::Rz;
    use crate::piece::stitch::Placement;

    #[test]
    fn a_tube_refined_is_the_tube() {
        let stitch_mm = StitchSize { width: 5.0, height: 4.0 };
        let round = NetRound { placement: Placement::plain(64), stitch_mm };
        let fine = Net::new(Start::Chain(64), &vec![round; 17], NetEnd::Open).expect("a net");
        let coarser = Coarser::of(&fine).expect("it has rounds enough");
        assert_eq!(coarser.net.rings().len(), 10);
        let radius = 64.0 * 5.0 / std::f64::consts::TAU;
        let mut z = 0.0;
        let profile: Vec<Rz> = coarser
            .net
            .rings()
            .iter()
            .map(|ring| {
                z += ring.height_mm;
                Rz::new(radius, z)
            })
            .collect();
        let places = coarser.refined(&fine, &coarser.net.turned(&profile));
        assert_eq!(places.len(), fine.len());
        for (i, place) in places.iter().enumerate() {
            let out = place[0].hypot(place[1]) / radius;
            assert!((out - 1.0).abs() < 0.003, "node {i} at {out} of the radius");
            let height = 4.0 * (i / 64) as f64;
            // The last coarse round is half as high as the others.
            assert!((place[2] - height).abs() < 0.3, "node {i} at {}", place[2]);
        }
    }
}
