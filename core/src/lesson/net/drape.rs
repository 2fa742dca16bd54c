//! A net as cloth to be seen: its faces with the stitches whose halves they are.

use super::{Net, NetEnd, NetFace};
use crate::lesson::space::V3;
use crate::picture::relief::{DrapeCell, DrapeStitch};
use crate::piece::cloth::Kind;

/// What a round is worked in, to be seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RoundLook {
    /// Its stitches.
    pub kind: Kind,
    /// Its yarn.
    pub yarn: usize,
}

impl Net {
    /// The patches of its cloth; `look` says what a round, counted from 1, is worked in. Their
    /// corners are the nodes of [`Net::closed`].
    pub fn cells(&self, look: impl Fn(u32) -> RoundLook) -> Vec<DrapeCell> {
        let mut cells = Vec::new();
        for (round, ring) in (0_u32..).zip(&self.rings).skip(1) {
            let RoundLook { kind, yarn } = look(round);
            let number = |node: u32| node - ring.first as u32 + 1;
            for face in self.faces_of(round as usize) {
                let (corners, stitches) = match *face {
                    NetFace::Square([a, b, c, d]) => ([a, b, c, d], [d, c]),
                    NetFace::Widening([a, b, c]) => ([a, a, c, b], [b, c]),
                    NetFace::Narrowing([a, b, c]) => ([a, b, c, c], [c, c]),
                };
                let stitches = stitches.map(number);
                let of = DrapeStitch::Worked(kind);
                cells.push(DrapeCell { corners, of, round, stitches, yarn });
            }
        }
        if let Some(last) = self.rings.last().filter(|_| self.end == NetEnd::Drawn) {
            let round = self.rings.len() as u32 - 1;
            let yarn = look(round).yarn;
            let pole = self.len() as u32;
            cells.extend((0..last.count).map(|j| DrapeCell {
                corners: [last.node(j) as u32, last.node(j + 1) as u32, pole, pole],
                of: DrapeStitch::Drawn,
                round,
                stitches: [j as u32 + 1, (j + 1) as u32 % last.count as u32 + 1],
                yarn,
            }));
        }
        cells
    }

    /// Where its nodes lie if every round is held flat on a table, as far out as its stitches
    /// reach: too long a round is crammed there, too short a one stretched.
    pub fn held_flat(&self) -> Vec<V3> {
        let mut out = self.rings.first().map_or(0.0, |ring| {
            if ring.count > 1 { ring.around_mm() / std::f64::consts::TAU } else { 0.0 }
        });
        let flat = self.rings.iter().map(|ring| {
            out += ring.height_mm;
            crate::piece::outline::Rz::new(out, 0.0)
        });
        self.turned(&flat.collect::<Vec<_>>())
    }
}
