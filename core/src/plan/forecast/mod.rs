//! The forecast: the profile a skin of given stitches takes once it is stuffed.
//!
//! [`Skin`] is the unstuffed cloth; [`energy`] its stretch energy under the stuffing's
//! pressure; [`settle`] walks from a start shape to the nearest minimum by Newton's method
//! on a banded system; [`fit`] measures how far the result is from a wanted outline.
//!
//! ```
//! use plumpline_core::forecast::{
//!     Cloth, Energy, Finish, Skin, pressure_for_skin, settle, settled_gradient, size_mm,
//! };
//!
//! // A small ball, its stitches 4.5 mm wide and 4.2 mm high.
//! let counts = [6, 12, 18, 18, 18, 18, 18, 12, 6];
//! let around: Vec<f64> = counts.iter().map(|&count| 4.5 * f64::from(count)).collect();
//! let heights = vec![4.2; counts.len()];
//! let skin = Skin::new(0.0, around, heights, Finish::Drawn, Cloth::default());
//! let pressure = pressure_for_skin(0.05, skin.largest_radius_mm());
//! let energy = Energy::new(&skin, pressure);
//! let start = energy.flatten(&skin.slack_shape());
//! let stuffed = settle(&energy, &start, settled_gradient(&skin));
//! assert!(stuffed.is_settled());
//! let width = size_mm(&stuffed.nodes).width;
//! assert!(width > 2.0 * skin.largest_radius_mm(), "stuffing stretches the cloth");
//! ```

pub(crate) mod banded;
pub mod energy;
pub mod fit;
pub mod settle;

pub use energy::Energy;
pub use settle::{Settled, settle, settled_gradient, stuffed};

use crate::extent::Extent;
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

/// Width of a gathered loop against that of a worked stitch: loops drawn up tight are as
/// wide as the yarn is thick, about half a stitch. Common practice, no source.
pub const GATHERED_WIDTH: f64 = 0.5;

/// How the last round of a skin is finished.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Finish {
    /// Drawn shut: the loops of the last round are gathered to the yarn's own thickness, half
    /// a stitch each, so ring M is held at half its rest circumference. For fit, volume and
    /// pictures the gathered loops close it as a level disc: see [`Skin::closed`].
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

    /// Rest circumference of ring M once it is finished, mm: drawn loops are half as wide, the
    /// straight sides of an oval stay as long.
    pub fn end_mm(&self) -> f64 {
        let worked = self.around_mm.last().copied().unwrap_or(0.0);
        match self.finish {
            Finish::Drawn => {
                let sides = (2.0 * self.straight_mm).min(worked);
                sides + GATHERED_WIDTH * (worked - sides)
            }
            Finish::Open => worked,
        }
    }

    /// Radius ring M is held at, mm.
    pub fn end_radius_mm(&self) -> f64 {
        (self.end_mm() - 2.0 * self.straight_mm).max(0.0) / std::f64::consts::TAU
    }

    /// The whole profile of a settled shape's `nodes`: where the end is drawn shut, the disc of
    /// gathered loops closes it, so the pole follows the last node.
    pub fn closed(&self, nodes: &[Rz]) -> Vec<Rz> {
        let mut profile = nodes.to_vec();
        if let (Finish::Drawn, Some(last)) = (self.finish, nodes.last()) {
            profile.push(Rz::new(0.0, last.z));
        }
        profile
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
            let r = held.unwrap_or(if drawn { self.end_radius_mm() } else { free });
            let across = r - at.r;
            let rise = (height * height - across * across).max(0.0).sqrt();
            at = Rz::new(r, if self.level.contains(&(k + 1)) { at.z } else { at.z + rise });
            nodes.push(at);
        }
        nodes
    }
}

/// The pressure, in units of Eθ/mm, at which a stuffed ball of radius `widest_mm` shows the
/// hoop strain `strain`: P = 2ε/(R(1+ε)). It is what the closed-form skin of a wanted outline
/// starts from.
pub fn pressure_for_outline(strain: f64, widest_mm: f64) -> f64 {
    2.0 * strain / (widest_mm * (1.0 + strain))
}

/// The pressure of every forecast, from the largest rest radius R₀ of the skin it is of:
/// P = 2ε/(R₀(1+ε)²), since a ball of rest radius R₀ ends at R₀(1+ε). It depends on counts,
/// gauge and firmness alone, so the same counts always have the same forecast.
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
pub fn size_mm(nodes: &[Rz]) -> Extent {
    let (mut low, mut high, mut widest) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
    for node in nodes {
        low = low.min(node.z);
        high = high.max(node.z);
        widest = widest.max(node.r);
    }
    Extent { height: (high - low).max(0.0), width: 2.0 * widest }
}
