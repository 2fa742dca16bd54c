//! The forecast: the profile a skin of given stitches takes once it is stuffed.
//!
//! [`Skin`] is the unstuffed cloth; [`energy`] its stretch energy under the stuffing's
//! pressure; [`settle`] walks from a start shape to the nearest minimum by Newton's method
//! on a [`banded`] system; [`fit`] measures how far the result is from a wanted outline.

pub(crate) mod banded;
pub mod energy;
pub mod fit;
pub mod settle;

pub use energy::Energy;
pub use settle::{Settled, settle, settled_gradient};

use crate::piece::outline::Rz;

/// How the cloth answers to stretch, as ratios to its hoop stiffness Eθ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cloth {
    /// Em/Eθ: stiffness along the meridian. 1 until a sample says otherwise.
    pub along: f64,
    /// Stiffness in compression over stiffness in stretch, c: cloth buckles.
    pub slack: f64,
}

impl Default for Cloth {
    fn default() -> Self {
        Self { along: 1.0, slack: 0.05 }
    }
}

/// How the last round of a skin is finished.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Finish {
    /// Gathered to a point: node M is on the axis.
    Drawn,
    /// Left open: ring M is held at its rest radius and loaded as if lidded.
    Open,
}

/// The unstuffed skin: rest sizes of every round, in working order.
///
/// Index `k − 1` of the vectors is round `k`; its ring is node `k`, the round's top edge.
#[derive(Debug, Clone, PartialEq)]
pub struct Skin {
    /// Rest circumference of the foundation chain, mm; 0 for a magic ring.
    pub start_mm: f64,
    /// Rest circumference of each round, mm.
    pub around_mm: Vec<f64>,
    /// Rest height of each round, mm.
    pub height_mm: Vec<f64>,
    /// How the last round ends.
    pub finish: Finish,
    /// How the cloth stretches.
    pub cloth: Cloth,
    /// Straight part of an oval's side, mm; 0 for a round body. Its chain is node 0.
    pub straight_mm: f64,
    /// Rounds whose top edge something holds, with the radius it is held at, mm.
    pub held: Vec<(usize, f64)>,
    /// Rounds that a card insert keeps level: both their edges share one height.
    pub level: Vec<usize>,
}

impl Skin {
    /// A round skin that nothing holds but its own cloth.
    pub fn new(
        start_mm: f64,
        around_mm: Vec<f64>,
        height_mm: Vec<f64>,
        finish: Finish,
        cloth: Cloth,
    ) -> Self {
        Self {
            start_mm,
            around_mm,
            height_mm,
            finish,
            cloth,
            straight_mm: 0.0,
            held: Vec::new(),
            level: Vec::new(),
        }
    }

    /// Radius of node 0, mm: 0 in a ring and along an oval's chain.
    pub fn start_radius_mm(&self) -> f64 {
        if self.straight_mm > 0.0 { 0.0 } else { self.start_mm / std::f64::consts::TAU }
    }

    /// Number of rounds, M.
    pub fn rounds(&self) -> usize {
        self.around_mm.len()
    }

    /// Largest rest radius of any round, mm: R₀ of a piece that has no outline.
    pub fn largest_radius_mm(&self) -> f64 {
        self.around_mm.iter().fold(self.start_mm, |most, &a| a.max(most))
            / std::f64::consts::TAU
    }

    /// The slack shape: rings at their rest radii, bands at their rest heights where the
    /// rings allow it. Where a round gains more than its height lets it, its band lies level.
    pub fn slack_shape(&self) -> Vec<Rz> {
        let mut nodes = Vec::with_capacity(self.rounds() + 1);
        let mut at = Rz::new(self.start_radius_mm(), 0.0);
        nodes.push(at);
        for (k, (&around, &height)) in self.around_mm.iter().zip(&self.height_mm).enumerate() {
            let drawn = self.finish == Finish::Drawn && k + 1 == self.rounds();
            let held = self.held.iter().find(|h| h.0 == k + 1).map(|h| h.1);
            let free = (around - 2.0 * self.straight_mm).max(0.0) / std::f64::consts::TAU;
            let r = held.unwrap_or(if drawn { 0.0 } else { free });
            let across = r - at.r;
            let rise = (height * height - across * across).max(0.0).sqrt();
            at = Rz::new(r, if self.level.contains(&(k + 1)) { at.z } else { at.z + rise });
            nodes.push(at);
        }
        nodes
    }
}

/// The pressure, in units of Eθ/mm, at which a ball of radius `widest_mm` shows the hoop
/// strain `strain`: P = 2ε/(R(1+ε)), R the widest radius of the wanted outline.
pub fn pressure_for_outline(strain: f64, widest_mm: f64) -> f64 {
    2.0 * strain / (widest_mm * (1.0 + strain))
}

/// The same for a piece without an outline, from the largest rest radius of its skin:
/// P = 2ε/(R₀(1+ε)²), since a ball of rest radius R₀ ends at R₀(1+ε).
pub fn pressure_for_skin(strain: f64, largest_rest_radius_mm: f64) -> f64 {
    2.0 * strain / (largest_rest_radius_mm * (1.0 + strain).powi(2))
}

/// Volume inside the profile, mm³, as a stack of frusta.
pub fn volume_mm3(nodes: &[Rz]) -> f64 {
    let frustum = |a: Rz, b: Rz| (b.z - a.z) * (a.r * a.r + a.r * b.r + b.r * b.r);
    std::f64::consts::FRAC_PI_3 * nodes.windows(2).map(|p| frustum(p[0], p[1])).sum::<f64>()
}

/// What an oval's straight sides of `straight_mm` add to [`volume_mm3`], mm³.
pub fn straight_volume_mm3(nodes: &[Rz], straight_mm: f64) -> f64 {
    straight_mm * nodes.windows(2).map(|p| (p[1].z - p[0].z) * (p[0].r + p[1].r)).sum::<f64>()
}

/// Height and greatest width of a profile, mm.
pub fn size_mm(nodes: &[Rz]) -> (f64, f64) {
    let (mut low, mut high, mut widest) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
    for node in nodes {
        low = low.min(node.z);
        high = high.max(node.z);
        widest = widest.max(node.r);
    }
    ((high - low).max(0.0), 2.0 * widest)
}
