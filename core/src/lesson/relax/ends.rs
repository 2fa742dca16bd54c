//! What closes a net: open edges that something holds, gathered loops, and the stuffing that
//! presses on all of it.

use super::cloth::Filling;
use crate::lesson::net::{Net, NetEnd, NetFace};
use crate::lesson::space::{V3, add, cross, dot, length, plus, scaled, sub};

/// How many times as stiff as cloth a ring is that something holds.
pub(super) const HELD: f64 = 10.0;

/// A ring that is closed by a fan from its middle.
#[derive(Debug, Clone, Copy)]
struct Lid {
    first: usize,
    count: usize,
    /// Radius that something holds it at, mm; none of gathered loops, which hold themselves.
    held_mm: Option<f64>,
    /// 1 at the end, −1 at the start, whose lid faces the other way.
    outward: f64,
}

/// The ends of a net.
#[derive(Debug, Clone)]
pub(super) struct Ends {
    lids: Vec<Lid>,
}

impl Ends {
    /// The ends of `net`. Nothing holds the edges of cloth that is not stuffed; those of a
    /// stuffed piece are held at their radius and loaded as if lidded, as in the forecast.
    pub(super) fn of(net: &Net, filling: Filling) -> Self {
        let last = net.rings().len() - 1;
        let gathered = net.end() == NetEnd::Drawn;
        let mut lids = Vec::new();
        for (k, outward) in [(0, -1.0), (last, 1.0)] {
            let ring = net.rings()[k];
            let drawn = k == last && gathered;
            if ring.count > 2 && (drawn || filling != Filling::Empty) {
                let radius = ring.around_mm() / std::f64::consts::TAU;
                let held_mm = (!drawn).then_some(radius);
                lids.push(Lid { first: ring.first, count: ring.count, held_mm, outward });
            }
        }
        Self { lids }
    }

    /// Nodes that something holds.
    pub(super) fn held(&self) -> impl Iterator<Item = u32> + '_ {
        let held = self.lids.iter().filter(|lid| lid.held_mm.is_some());
        held.flat_map(|lid| (lid.first..lid.first + lid.count).map(|node| node as u32))
    }

    /// Energy of the springs from the middle of a held ring to its nodes; their forces are
    /// added to `gradient`.
    pub(super) fn hold(&self, x: &[V3], gradient: &mut [V3]) -> f64 {
        let mut energy = 0.0;
        for lid in &self.lids {
            let Some(radius) = lid.held_mm else { continue };
            let nodes = lid.first..lid.first + lid.count;
            let middle = mean(&x[nodes.clone()]);
            let mut back = [0.0; 3];
            for i in nodes.clone() {
                let d = sub(x[i], middle);
                let out = length(d) - radius;
                energy += 0.5 * HELD * out * out;
                let force = scaled(d, HELD * out / length(d).max(1e-12));
                gradient[i] = add(gradient[i], force);
                back = add(back, force);
            }
            let share = -1.0 / lid.count as f64;
            nodes.for_each(|i| gradient[i] = plus(gradient[i], back, share));
        }
        energy
    }

    /// −P V of what closes the ends; its slope is added to `gradient`.
    pub(super) fn press(&self, pressure: f64, x: &[V3], gradient: &mut [V3]) -> f64 {
        let volume: f64 = self.lids.iter().map(|lid| lid.fan(pressure, x, gradient)).sum();
        -pressure * volume
    }
}

impl Lid {
    /// Volume under the fan from the ring's middle to its nodes, and its share in the gradient.
    fn fan(&self, pressure: f64, x: &[V3], gradient: &mut [V3]) -> f64 {
        let nodes = self.first..self.first + self.count;
        let middle = mean(&x[nodes.clone()]);
        let sixth = self.outward / 6.0;
        let slope = -pressure * sixth;
        let mut around = [0.0; 3];
        for j in 0..self.count {
            let (a, b) = (self.first + j, self.first + (j + 1) % self.count);
            around = add(around, cross(x[a], x[b]));
            gradient[a] = plus(gradient[a], cross(x[b], middle), slope);
            gradient[b] = plus(gradient[b], cross(middle, x[a]), slope);
        }
        for g in &mut gradient[nodes] {
            *g = plus(*g, around, slope / self.count as f64);
        }
        dot(middle, around) * sixth
    }
}

/// −P V of `faces`; its slope is added to `gradient`. A square counts as the mean of both ways
/// to cut it, so that no piece is twisted by how its faces are named.
pub(super) fn press(
    pressure: f64,
    faces: impl Iterator<Item = NetFace>,
    x: &[V3],
    gradient: &mut [V3],
) -> f64 {
    let mut volume = 0.0;
    let mut put = |i: u32, slope: V3, share: f64| {
        let slope = scaled(slope, share);
        volume += dot(x[i as usize], slope) / 3.0;
        gradient[i as usize] = plus(gradient[i as usize], slope, -pressure);
    };
    for face in faces {
        // The two of a widening stand in working order, from left to right.
        let triangle = match face {
            NetFace::Square(nodes) => {
                let [a, b, c, d] = nodes.map(|i| x[i as usize]);
                let (ab, bc, cd, da) = (cross(a, b), cross(b, c), cross(c, d), cross(d, a));
                let (ac, bd) = (cross(a, c), cross(b, d));
                let twelfth = 1.0 / 12.0;
                put(nodes[0], add(add(bc, cd), bd), twelfth);
                put(nodes[1], sub(add(cd, da), ac), twelfth);
                put(nodes[2], sub(add(da, ab), bd), twelfth);
                put(nodes[3], add(add(ab, bc), ac), twelfth);
                continue;
            }
            NetFace::Widening([a, b, c]) => [a, c, b],
            NetFace::Narrowing(nodes) => nodes,
        };
        let [a, b, c] = triangle.map(|i| x[i as usize]);
        let sixth = 1.0 / 6.0;
        put(triangle[0], cross(b, c), sixth);
        put(triangle[1], cross(c, a), sixth);
        put(triangle[2], cross(a, b), sixth);
    }
    -pressure * volume
}

fn mean(places: &[V3]) -> V3 {
    let sum = places.iter().fold([0.0; 3], |sum, &place| add(sum, place));
    scaled(sum, 1.0 / places.len() as f64)
}
