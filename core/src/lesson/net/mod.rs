//! A piece as a net of its stitches: a node for each, joined along the round and to the stitch
//! it is worked into.
//!
//! The net knows lengths at rest, never places: what it looks like is a list of places that
//! goes with it, one a node. [`build`] makes nets of rounds, [`measure`] reads angles and
//! lengths off places, [`drape`] makes patches of cloth to be seen, [`coarse`] makes a net of fewer, larger stitches of the same cloth.

mod build;
mod coarse;
mod drape;
mod measure;

pub use build::NetRound;
pub use drape::RoundLook;
pub use measure::RingMeasure;

pub(super) use coarse::Coarser;

use crate::lesson::space::V3;

/// A round of stitches, or what the first is worked into.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetRing {
    /// Index of its first node.
    pub first: usize,
    /// Nodes in it; 1 in the middle of a magic ring.
    pub count: usize,
    /// Width of its stitches at rest, mm; loops that are drawn up are half as wide.
    pub width_mm: f64,
    /// Height of the round below its edge, mm; 0 of what the first is worked into.
    pub height_mm: f64,
    /// Where its first node lies if every round is evenly spread, in turns.
    pub turn: f64,
}

impl NetRing {
    /// Its length at rest, mm.
    pub fn around_mm(&self) -> f64 {
        self.count as f64 * self.width_mm
    }

    /// Index of node `index` of the ring, which closes.
    pub(super) fn node(&self, index: usize) -> usize {
        self.first + index % self.count
    }
}

/// A length of yarn between two nodes: along a round, or up a stitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spring {
    /// Nodes at its ends.
    pub ends: [u32; 2],
    /// Its length at rest, mm.
    pub rest_mm: f64,
    /// Cloth it stands for, mm².
    pub area_mm2: f64,
    /// Whether it goes along its round; otherwise up a stitch.
    pub along_round: bool,
    /// The round whose stitch it is, 0 for the foundation chain.
    pub round: u32,
}

/// The cloth between stitches next to one another, its nodes in working order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NetFace {
    /// Two stitches on two: the lower two, then the upper two backwards, so that they go
    /// around it.
    Square([u32; 4]),
    /// Two stitches worked into one: the lower, then the two.
    Widening([u32; 3]),
    /// One stitch worked over two: the two lower, then the one.
    Narrowing([u32; 3]),
}

/// How the last round of a net ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NetEnd {
    /// At an open edge.
    Open,
    /// Drawn up, and closed by a level disc of gathered loops.
    Drawn,
}

/// The stitches of a piece and how they hang together.
#[derive(Debug, Clone, PartialEq)]
pub struct Net {
    rings: Vec<NetRing>,
    springs: Vec<Spring>,
    /// Faces of each round, those of round `k` at index `k − 1`.
    faces: Vec<Vec<NetFace>>,
    end: NetEnd,
}

impl Net {
    /// What the first round is worked into, then every round.
    pub fn rings(&self) -> &[NetRing] {
        &self.rings
    }

    /// Lengths of yarn.
    pub fn springs(&self) -> &[Spring] {
        &self.springs
    }

    /// The cloth of round `round`, from 1.
    pub fn faces_of(&self, round: usize) -> &[NetFace] {
        round.checked_sub(1).and_then(|i| self.faces.get(i)).map_or(&[], Vec::as_slice)
    }

    /// All cloth, round by round.
    pub fn faces(&self) -> impl Iterator<Item = NetFace> + '_ {
        self.faces.iter().flatten().copied()
    }

    /// How it ends.
    pub fn end(&self) -> NetEnd {
        self.end
    }

    /// Number of nodes, the middle of a ring counted in.
    pub fn len(&self) -> usize {
        self.rings.last().map_or(0, |ring| ring.first + ring.count)
    }

    /// Whether there is no node.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Mean width of its stitches at rest, mm.
    pub fn stitch_width_mm(&self) -> f64 {
        let stitches: usize = self.rings.iter().map(|ring| ring.count).sum();
        self.rings.iter().map(NetRing::around_mm).sum::<f64>() / stitches.max(1) as f64
    }

    /// Places of a shape turned about the z axis: each round evenly spread around a circle of
    /// `profile`'s radius whose way round the stitches fill, at its height. `profile` has a
    /// place a ring.
    pub fn turned(&self, profile: &[crate::piece::outline::Rz]) -> Vec<V3> {
        let mut places = Vec::with_capacity(self.len());
        for (ring, at) in self.rings.iter().zip(profile) {
            let step = std::f64::consts::TAU / ring.count as f64;
            // Corners of a polygon that is as long as the circle.
            let out =
                if ring.count > 2 { at.r * 0.5 * step / (0.5 * step).sin() } else { at.r };
            for j in 0..ring.count {
                let angle = (ring.turn + j as f64 / ring.count as f64) * std::f64::consts::TAU;
                places.push([out * angle.cos(), out * angle.sin(), at.z]);
            }
        }
        places
    }
}
