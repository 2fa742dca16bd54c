//! Stretch energy of a skin of revolution under pressure, with its exact derivatives.
//!
//! With φ(e) = e²/2 in stretch and c·e²/2 in compression, in units of Eθ and mm:
//!
//! ```text
//! E = Σ rings  (N_k w h_k) φ(2π r_k/(N_k w) − 1)
//!   + Σ bands  Em ½(N_{k−1}w + N_k w) h_k φ(ℓ_k/h_k − 1)      (0 at a pole)
//!   − P V,   V = Σ frusta π/3 Δz (a² + ab + b²)
//! ```
//!
//! An oval has straight sides a as well: its rings are 2πr + 2a long and its bands add
//! a·Δz·(r_a + r_b) to V. A card insert is a spring between the heights of neighbouring nodes,
//! a thousand times as stiff as the cloth.
//!
//! E has no lower bound, since P V is cubic: what matters is the local minimum nearest the
//! slack skin. φ has a kink in its second derivative at 0; energy and gradient are smooth.

use std::f64::consts::{FRAC_PI_3, TAU};

use super::Skin;
use super::banded::Banded;
use crate::piece::outline::Rz;

/// The energy of one skin at one pressure.
///
/// The unknowns are `[r₁, z₁, r₂, z₂, … r_M, z_M]`, mm; node 0 stays where it starts, and
/// held unknowns (the last radius) have zero gradient.
#[derive(Debug, Clone)]
pub struct Energy<'a> {
    skin: &'a Skin,
    pressure: f64,
    start_r: f64,
    /// Rest circumference of the last band's upper edge: gathered at a drawn end.
    last_around: f64,
    /// Unknowns that never move: the last radius, and radii that something holds.
    held: Vec<usize>,
    /// Whether a card keeps round k level, at index k − 1.
    level: Vec<bool>,
}

/// Stiffness of a card insert, Eθ. Cloth is of the order of a round's circumference over its
/// height, some tens.
const CARD_STIFFNESS: f64 = 1e5;

/// φ, φ′ and φ″ at strain `e`, with `slack` the stiffness in compression.
fn phi(e: f64, slack: f64) -> (f64, f64, f64) {
    let stiffness = if e >= 0.0 { 1.0 } else { slack };
    (0.5 * stiffness * e * e, stiffness * e, stiffness)
}

/// Everything a band gives: its energy, its tension force and stiffness along its length.
struct BandEnergy {
    dr: f64,
    dz: f64,
    length: f64,
    weight: f64,
    phi: (f64, f64, f64),
    height: f64,
}

impl<'a> Energy<'a> {
    /// The energy of `skin` at `pressure` (units of Eθ/mm).
    pub fn new(skin: &'a Skin, pressure: f64) -> Self {
        let rounds = skin.rounds();
        let held = skin.held.iter().filter(|h| (1..rounds).contains(&h.0)).map(|h| 2 * h.0 - 2);
        Self {
            skin,
            pressure,
            start_r: skin.start_radius_mm(),
            last_around: skin.end_mm(),
            held: held.chain([2 * rounds - 2]).collect(),
            level: (1..=rounds).map(|k| skin.level.contains(&k)).collect(),
        }
    }

    /// The skin whose energy this is.
    pub fn skin(&self) -> &Skin {
        self.skin
    }

    /// Number of unknowns, 2M.
    pub fn unknowns(&self) -> usize {
        2 * self.skin.rounds()
    }

    /// The unknowns of a shape given as its M + 1 nodes.
    pub fn flatten(&self, nodes: &[Rz]) -> Vec<f64> {
        nodes[1..].iter().flat_map(|n| [n.r, n.z - nodes[0].z]).collect()
    }

    /// Puts the unknowns that never move where this skin holds them, in the shape of a skin
    /// like it.
    pub fn hold(&self, x: &mut [f64]) {
        for &(round, radius) in &self.skin.held {
            if (1..self.skin.rounds()).contains(&round) {
                x[2 * round - 2] = radius;
            }
        }
        x[2 * self.skin.rounds() - 2] = self.skin.end_radius_mm();
    }

    /// The M + 1 nodes of a vector of unknowns; z = 0 at the start.
    pub fn nodes(&self, x: &[f64]) -> Vec<Rz> {
        let start = std::iter::once(Rz::new(self.start_r, 0.0));
        start.chain(x.chunks_exact(2).map(|p| Rz::new(p[0], p[1]))).collect()
    }

    /// The energy at `x`, in Eθ·mm².
    pub fn value(&self, x: &[f64]) -> f64 {
        self.accumulate(x, &mut None, &mut None)
    }

    /// The energy at `x`; its gradient is written to `gradient` (Eθ·mm).
    pub fn value_and_gradient(&self, x: &[f64], gradient: &mut [f64]) -> f64 {
        self.accumulate(x, &mut Some(gradient), &mut None)
    }

    /// The energy, its gradient and its Hessian at `x`.
    pub(super) fn all(&self, x: &[f64], gradient: &mut [f64], hessian: &mut Banded) -> f64 {
        hessian.reset(self.unknowns());
        self.accumulate(x, &mut Some(gradient), &mut Some(hessian))
    }

    fn around(&self, k: usize) -> f64 {
        match k {
            0 => self.skin.start_mm,
            k if k == self.skin.rounds() => self.last_around,
            k => self.skin.around_mm[k - 1],
        }
    }

    fn node(&self, x: &[f64], k: usize) -> Rz {
        if k == 0 { Rz::new(self.start_r, 0.0) } else { Rz::new(x[2 * k - 2], x[2 * k - 1]) }
    }

    fn band(&self, k: usize, a: Rz, b: Rz) -> BandEnergy {
        let height = self.skin.height_mm[k - 1];
        let (dr, dz) = (b.r - a.r, b.z - a.z);
        let length = (dr * dr + dz * dz).sqrt();
        let cloth = &self.skin.cloth;
        let weight = cloth.along * 0.5 * (self.around(k - 1) + self.around(k)) * height;
        BandEnergy {
            dr,
            dz,
            length,
            weight,
            phi: phi(length / height - 1.0, cloth.slack),
            height,
        }
    }

    /// Adds up the energy ring by ring and band by band, and its derivatives where asked.
    #[inline(always)]
    fn accumulate(
        &self,
        x: &[f64],
        gradient: &mut Option<&mut [f64]>,
        hessian: &mut Option<&mut Banded>,
    ) -> f64 {
        if let Some(g) = gradient {
            g.fill(0.0);
        }
        let mut energy = 0.0;
        let mut a = self.node(x, 0);
        for k in 1..=self.skin.rounds() {
            let b = self.node(x, k);
            let band = self.band(k, a, b);
            energy += band.weight * band.phi.0;
            energy -= self.pressure * band.dz * self.section(a, b);
            if self.level[k - 1] {
                energy += 0.5 * CARD_STIFFNESS * band.dz * band.dz;
            }
            if let Some(g) = gradient {
                self.band_gradient(k, a, b, &band, g);
            }
            if let Some(h) = hessian {
                self.band_hessian(k, a, b, &band, h);
            }
            if k < self.skin.rounds() {
                let around = self.skin.around_mm[k - 1];
                let area = around * self.skin.height_mm[k - 1];
                let (p0, p1, p2) = phi(self.length(b) / around - 1.0, self.skin.cloth.slack);
                let per_mm = TAU / around;
                energy += area * p0;
                if let Some(g) = gradient {
                    g[2 * k - 2] += area * p1 * per_mm;
                }
                if let Some(h) = hessian {
                    h.add(2 * k - 2, 2 * k - 2, area * p2 * per_mm * per_mm);
                }
            }
            a = b;
        }
        for &held in &self.held {
            if let Some(g) = gradient {
                g[held] = 0.0;
            }
            if let Some(h) = hessian {
                h.hold(held);
            }
        }
        energy
    }

    /// Length of the ring at a node, mm.
    fn length(&self, at: Rz) -> f64 {
        TAU * at.r + 2.0 * self.skin.straight_mm
    }

    /// Mean cross-section of the body between two nodes, mm².
    fn section(&self, a: Rz, b: Rz) -> f64 {
        FRAC_PI_3 * (a.r * a.r + a.r * b.r + b.r * b.r) + self.skin.straight_mm * (a.r + b.r)
    }

    /// Derivatives of [`Energy::section`] by the two radii, mm.
    fn section_slopes(&self, a: Rz, b: Rz) -> (f64, f64) {
        let straight = self.skin.straight_mm;
        (FRAC_PI_3 * (2.0 * a.r + b.r) + straight, FRAC_PI_3 * (a.r + 2.0 * b.r) + straight)
    }

    fn band_gradient(&self, k: usize, a: Rz, b: Rz, band: &BandEnergy, g: &mut [f64]) {
        let (fr, fz) = band.force();
        let (by_a, by_b) = self.section_slopes(a, b);
        let card = if self.level[k - 1] { CARD_STIFFNESS * band.dz } else { 0.0 };
        let lift = fz + card - self.pressure * self.section(a, b);
        let i = 2 * k - 2;
        g[i] += fr - self.pressure * band.dz * by_b;
        g[i + 1] += lift;
        if k > 1 {
            g[i - 2] -= fr + self.pressure * band.dz * by_a;
            g[i - 1] -= lift;
        }
    }

    fn band_hessian(&self, k: usize, a: Rz, b: Rz, band: &BandEnergy, h: &mut Banded) {
        let (rr, rz, zz) = band.stiffness();
        let zz = if self.level[k - 1] { zz + CARD_STIFFNESS } else { zz };
        let i = 2 * k - 2;
        // Derivatives of the volume: by radius and height, and twice by radii.
        let (by_a, by_b) = self.section_slopes(a, b);
        let (by_a, by_b) = (self.pressure * by_a, self.pressure * by_b);
        let dz = self.pressure * FRAC_PI_3 * band.dz;
        h.add(i, i, rr - 2.0 * dz);
        h.add(i, i + 1, rz - by_b);
        h.add(i + 1, i + 1, zz);
        if k > 1 {
            let j = i - 2;
            h.add(j, j, rr - 2.0 * dz);
            h.add(j, j + 1, rz + by_a);
            h.add(j + 1, j + 1, zz);
            h.add(i, j, -rr - dz);
            h.add(i, j + 1, -rz + by_b);
            h.add(i + 1, j, -rz - by_a);
            h.add(i + 1, j + 1, -zz);
        }
    }

    /// ∂(gradient)/∂(rest circumference of round `k`) at `x`, for 1 ≤ k < M: what the
    /// sensitivities are solved for. Only the six unknowns from the returned index on (nodes
    /// k − 1, k and k + 1; for k = 1 nodes 1 to 3) can differ from zero.
    pub(crate) fn gradient_by_around(&self, k: usize, x: &[f64]) -> (usize, [f64; 6]) {
        let first = if k > 1 { 2 * k - 4 } else { 0 };
        let mut out = [0.0; 6];
        let around = self.skin.around_mm[k - 1];
        let height = self.skin.height_mm[k - 1];
        let at = self.node(x, k);
        let length = self.length(at);
        let (_, _, p2) = phi(length / around - 1.0, self.skin.cloth.slack);
        // dE/dr of the ring is 2π h φ′(2πr/C − 1); C enters only through the strain.
        out[2 * k - 2 - first] -= TAU * height * p2 * length / (around * around);
        for upper in [k, k + 1] {
            let band = self.band(upper, self.node(x, upper - 1), self.node(x, upper));
            // Each edge of a band carries half its weight.
            let half = self.skin.cloth.along * 0.5 * band.height;
            let (fr, fz) = band.force();
            let share = if band.weight > 0.0 { half / band.weight } else { 0.0 };
            let i = 2 * upper - 2 - first;
            out[i] += fr * share;
            out[i + 1] += fz * share;
            if upper > 1 {
                out[i - 2] -= fr * share;
                out[i - 1] -= fz * share;
            }
        }
        for held in self.held.iter().filter_map(|&held| held.checked_sub(first)) {
            if let Some(entry) = out.get_mut(held) {
                *entry = 0.0;
            }
        }
        (first, out)
    }
}

impl BandEnergy {
    /// Force of the band on its upper node: dE/dℓ along the band.
    fn force(&self) -> (f64, f64) {
        if self.length <= 0.0 {
            return (0.0, 0.0);
        }
        let tension = self.weight * self.phi.1 / self.height / self.length;
        (tension * self.dr, tension * self.dz)
    }

    /// Second derivatives by the upper node's r and z: (rr, rz, zz).
    fn stiffness(&self) -> (f64, f64, f64) {
        let length = self.length.max(1e-9 * self.height);
        let (ur, uz) = (self.dr / length, self.dz / length);
        let along = self.weight * self.phi.2 / (self.height * self.height);
        let across = self.weight * self.phi.1 / (self.height * length);
        (
            along * ur * ur + across * (1.0 - ur * ur),
            (along - across) * ur * uz,
            along * uz * uz + across * (1.0 - uz * uz),
        )
    }
}
