//! A skin and the shape it stuffs into.

use super::misfit::NodeMisfit;
use crate::piece::outline::Rz;
use crate::plan::forecast::settle::Settled;
use crate::plan::forecast::{Finish, Skin};

/// A skin and the shape it stuffs into.
#[derive(Debug, Clone)]
pub(super) struct SettledShape {
    pub(super) skin: Skin,
    pub(super) pressure: f64,
    pub(super) settled: Settled,
    pub(super) misfit: NodeMisfit,
}

impl SettledShape {
    /// Hoop strain of every ring, its length against that at rest; `None` at a gathered one.
    pub(super) fn hoop_strains(&self) -> Vec<Option<f64>> {
        let skin = &self.skin;
        let drawn = skin.finish == Finish::Drawn;
        let strain = |(k, (node, around)): (usize, (&Rz, &f64))| {
            let length = std::f64::consts::TAU * node.r + 2.0 * skin.straight_mm;
            (!drawn || k < skin.rounds()).then_some(length / around - 1.0)
        };
        let rings = self.settled.nodes[1..].iter().zip(&skin.around_mm);
        (1..).zip(rings).map(strain).collect()
    }
}
