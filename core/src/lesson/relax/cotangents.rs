//! The Laplacian of a net at rest: for each spring half the cotangents of the angles that face
//! it. A square's diagonal faces right angles, whose cotangent is 0, so that it does not matter
//! which way a square is cut.

use std::collections::HashMap;

use crate::lesson::net::{Net, NetFace};

/// Weights of a net's Laplacian.
#[derive(Debug, Clone)]
pub(super) struct Cotangents {
    /// Of each spring, in the order of [`Net::springs`].
    pub(super) springs: Vec<f64>,
    /// Cloth around each node, mm².
    pub(super) areas: Vec<f64>,
}

/// Which spring joins two nodes.
struct Joins<'a> {
    net: &'a Net,
    of: HashMap<[u32; 2], usize>,
}

impl<'a> Joins<'a> {
    fn of(net: &'a Net) -> Self {
        let sorted = |[a, b]: [u32; 2]| [a.min(b), a.max(b)];
        let ends = net.springs().iter().enumerate();
        Self { net, of: ends.map(|(i, spring)| (sorted(spring.ends), i)).collect() }
    }

    /// The spring between `a` and `b`, and its length at rest.
    fn between(&self, a: u32, b: u32) -> Option<(usize, f64)> {
        let &i = self.of.get(&[a.min(b), a.max(b)])?;
        Some((i, self.net.springs()[i].rest_mm))
    }
}

impl Cotangents {
    pub(super) fn of(net: &Net) -> Self {
        let joins = Joins::of(net);
        let mut sums =
            Self { springs: vec![0.0; net.springs().len()], areas: vec![0.0; net.len()] };
        for face in net.faces() {
            // A net of one or two stitches a round has faces without a side.
            let _ = match face {
                NetFace::Square(nodes) => sums.square(&joins, nodes),
                NetFace::Widening(nodes) | NetFace::Narrowing(nodes) => {
                    sums.triangle(&joins, nodes)
                }
            };
        }
        sums
    }

    fn square(&mut self, joins: &Joins<'_>, nodes: [u32; 4]) -> Option<()> {
        let [a, b, c, d] = nodes;
        let (lower, upper) = (joins.between(a, b)?, joins.between(d, c)?);
        let (left, right) = (joins.between(a, d)?, joins.between(b, c)?);
        let wide = 0.5 * (lower.1 + upper.1);
        let high = 0.5 * (left.1 + right.1);
        for (i, _) in [lower, upper] {
            self.springs[i] += 0.5 * high / wide;
        }
        for (i, _) in [left, right] {
            self.springs[i] += 0.5 * wide / high;
        }
        for node in nodes {
            self.areas[node as usize] += 0.25 * wide * high;
        }
        Some(())
    }

    fn triangle(&mut self, joins: &Joins<'_>, nodes: [u32; 3]) -> Option<()> {
        let [a, b, c] = nodes;
        let facing = [joins.between(b, c)?, joins.between(c, a)?, joins.between(a, b)?];
        let [l, m, n] = facing.map(|(_, long)| long);
        let half = 0.5 * (l + m + n);
        let area = (half * (half - l) * (half - m) * (half - n)).max(1e-12).sqrt();
        let squares = l * l + m * m + n * n;
        for ((i, long), node) in facing.into_iter().zip(nodes) {
            self.springs[i] += (squares - 2.0 * long * long) / (8.0 * area);
            self.areas[node as usize] += area / 3.0;
        }
        Some(())
    }
}

/// Width times height of the stitches around `face`, mm².
pub(super) fn stitch_area(net: &Net, face: NetFace) -> f64 {
    let upper = match face {
        NetFace::Square([.., node]) => node,
        NetFace::Widening([.., node]) | NetFace::Narrowing([.., node]) => node,
    };
    let rings = net.rings();
    let k = rings.partition_point(|ring| ring.first <= upper as usize) - 1;
    let (below, ring) = (rings[k - 1].width_mm, rings[k].width_mm);
    let width = if below > 0.0 { 0.5 * (below + ring) } else { ring };
    width * rings[k].height_mm
}
