//! What can be read off the places of a net: angles, lengths, areas, curvature.

use std::f64::consts::{PI, TAU};

use super::{Net, NetEnd, NetFace};
use crate::lesson::space::{V3, cross, distance, dot, length, sub};

/// What one round's edge measures in space.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RingMeasure {
    /// Its length over what it is at rest; 1 in the middle of a ring.
    pub stretch: f64,
    /// Length, mm.
    pub around_mm: f64,
    /// Angle missing at its nodes, radians; of an open edge, what it turns.
    pub missing_rad: f64,
    /// Cloth of its nodes: a third of each triangle around them, mm².
    pub area_mm2: f64,
}

impl Net {
    /// The net as triangles, counter-clockwise seen from outside, squares cut in two. Of a net that is drawn shut the disc of
    /// gathered loops closes it; its middle is one node more, at index [`Net::len`].
    pub fn triangles(&self) -> Vec<[u32; 3]> {
        let mut triangles = Vec::with_capacity(2 * self.len());
        for face in self.faces() {
            match face {
                NetFace::Square([a, b, c, d]) => triangles.extend([[a, b, c], [a, c, d]]),
                NetFace::Widening([a, b, c]) => triangles.push([a, c, b]),
                NetFace::Narrowing(t) => triangles.push(t),
            }
        }
        if let Some(last) = self.rings.last().filter(|_| self.end == NetEnd::Drawn) {
            let pole = self.len() as u32;
            let edge = (0..last.count).map(|j| [last.node(j) as u32, last.node(j + 1) as u32]);
            triangles.extend(edge.map(|[a, b]| [a, b, pole]));
        }
        triangles
    }

    /// `places` with the middle of the gathered loops after them, where there is one.
    pub fn closed(&self, places: &[V3]) -> Vec<V3> {
        let mut places = places.to_vec();
        if let Some(last) = self.rings.last().filter(|_| self.end == NetEnd::Drawn) {
            places.push(middle(&places[last.first..last.first + last.count]));
        }
        places
    }

    /// Euler's characteristic χ: nodes less edges plus faces.
    pub fn characteristic(&self) -> i64 {
        let triangles = self.triangles();
        let mut edges: Vec<[u32; 2]> = triangles
            .iter()
            .flat_map(|&[a, b, c]| [[a, b], [b, c], [c, a]])
            .map(|[a, b]| [a.min(b), a.max(b)])
            .collect();
        edges.sort_unstable();
        edges.dedup();
        let nodes = self.len() + usize::from(self.end == NetEnd::Drawn);
        nodes as i64 - edges.len() as i64 + triangles.len() as i64
    }

    /// The angle missing at each node of the closed net, radians: 2π less the angles around
    /// it, and at an open edge π less them. They come to 2πχ wherever the nodes are (Descartes;
    /// Gauss–Bonnet).
    pub fn missing_angles(&self, places: &[V3]) -> Vec<f64> {
        let places = self.closed(places);
        let mut missing = vec![TAU; places.len()];
        if self.rings[0].count > 1 {
            missing[..self.rings[0].count].fill(PI);
        }
        if let Some(last) = self.rings.last().filter(|_| self.end == NetEnd::Open) {
            missing[last.first..].fill(PI);
        }
        for triangle in self.triangles() {
            for corner in 0..3 {
                let [at, b, c] = [0, 1, 2].map(|i| triangle[(corner + i) % 3] as usize);
                let (u, v) = (sub(places[b], places[at]), sub(places[c], places[at]));
                // Near 0 and π an arc cosine would lose half the digits.
                missing[at] -= length(cross(u, v)).atan2(dot(u, v));
            }
        }
        missing
    }

    /// Every ring as it lies in space, what the first round is worked into at index 0.
    pub fn measured(&self, places: &[V3]) -> Vec<RingMeasure> {
        let missing = self.missing_angles(places);
        let closed = self.closed(places);
        let mut areas = vec![0.0; closed.len()];
        for triangle in self.triangles() {
            let [a, b, c] = triangle.map(|i| closed[i as usize]);
            let third = length(cross(sub(b, a), sub(c, a))) / 6.0;
            triangle.iter().for_each(|&i| areas[i as usize] += third);
        }
        self.rings
            .iter()
            .map(|ring| {
                let nodes = ring.first..ring.first + ring.count;
                let around_mm: f64 = (0..ring.count)
                    .map(|j| distance(places[ring.node(j)], places[ring.node(j + 1)]))
                    .sum();
                let rest = ring.around_mm();
                RingMeasure {
                    stretch: if rest > 0.0 { around_mm / rest } else { 1.0 },
                    around_mm,
                    missing_rad: missing[nodes.clone()].iter().sum(),
                    area_mm2: areas[nodes].iter().sum(),
                }
            })
            .collect()
    }

    /// Strain of each yarn, in the order of [`Net::springs`].
    pub fn strains<'a>(&'a self, places: &'a [V3]) -> impl Iterator<Item = f64> + 'a {
        self.springs.iter().map(|spring| {
            let [a, b] = spring.ends.map(|i| places[i as usize]);
            distance(a, b) / spring.rest_mm - 1.0
        })
    }
}

/// The mean of some places.
pub(super) fn middle(places: &[V3]) -> V3 {
    let n = places.len().max(1) as f64;
    let sum = places.iter().fold([0.0; 3], |sum: V3, p| std::array::from_fn(|i| sum[i] + p[i]));
    sum.map(|v| v / n)
}
