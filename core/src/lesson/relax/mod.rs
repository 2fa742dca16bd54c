//! From the lengths of yarn to a shape in space: cloth of given stitches, let go.
//!
//! A surface of revolution has one circle a round, so it cannot show a rim that is too long
//! for its radius, nor a corner. [`Relaxation`] lets every stitch find its own place. It walks
//! downhill in [`energy`], a step at a time, so that whoever shows it can show it settling and
//! stop it between two steps. The same net takes the same steps every time.
//!
//! Nothing but the cloth's own stiffness decides how many waves a ruffle has, so a circle that
//! gains steadily comes to rest as one saddle, up twice and down twice (as Müller, Ben Amar and
//! Guven find for sheets with too much angle around a point, *Conical Defects in Growing
//! Sheets*, Physical Review Letters 101, 2008; from memory); one that grows by a share of
//! itself has more waves the larger it is. On a table weight and friction keep others. Cloth
//! may pass through itself: nothing here knows that it cannot, and at twice what lies flat the
//! two halves of the saddle touch.

mod cloth;
mod cotangents;
mod descent;
mod ends;
pub mod energy;
mod factor;
mod order;

pub use cloth::{Filling, NetCloth};
pub use energy::NetEnergy;

use std::f64::consts::TAU;

use descent::Walk;
use energy::Forces;
use factor::{Couplings, SparseFactor};

use super::net::{Coarser, Net};
use crate::error::Result;
use crate::lesson::space::V3;
use crate::piece::Piece;
use crate::piece::outline::Rz;
use crate::plan::Plan;
use crate::plan::forecast::pressure_for_skin;

/// A net of fewer nodes is not made coarser.
const COARSEST: usize = 300;

/// How far the first shape is pushed out of the round, in stitch widths: enough to choose a
/// side, too little to see.
const DISTURBED: f64 = 0.05;

/// Steps over which the energy must hardly fall at rest.
const WINDOW: usize = 30;

/// How little it must fall over those, as a share of what the cloth holds.
const RESTING: f64 = 1e-4;

/// The same on a coarser net, where steps cost little and the large waves are found.
const RESTING_COARSE: f64 = 1e-5;

/// Energy below which cloth holds nothing, as a share of a stitch's: Eθ times its area.
const NOTHING: f64 = 1e-9;

/// Most steps on one net. What has not come to rest by then is called at rest all the same.
const MOST_STEPS: usize = 4000;

/// What one step did.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RelaxStep {
    /// Energy after it, of the net it was taken on.
    pub energy: NetEnergy,
    /// How far the stitch that moved most did, mm.
    pub moved_mm: f64,
    /// How far it has come, 0 to 1; never less than before.
    pub progress: f64,
    /// Nets of larger stitches that are still between it and its own.
    pub coarser: usize,
}

/// A net on its way to rest.
#[derive(Debug, Clone)]
pub struct Relaxation {
    net: Net,
    cloth: NetCloth,
    filling: Filling,
    /// Nets between this one and the coarsest still to come, the next last.
    coarser: Vec<Coarser>,
    levels: usize,
    stage: RelaxStage,
    steps: usize,
    progress: f64,
    resting: bool,
}

/// The net that is walked on now.
#[derive(Debug, Clone)]
struct RelaxStage {
    forces: Forces,
    factor: SparseFactor,
    walk: Walk,
    /// Energies after the last steps.
    energies: Vec<f64>,
    longest_mm: f64,
    /// Eθ times the area of all stitches.
    scale: f64,
}

impl Relaxation {
    /// Cloth that is not stuffed, let go flat on a table, or as a cone or tube where a round
    /// is too short for that; `along` is its stiffness Em/Eθ.
    pub fn empty(net: Net, along: f64) -> Self {
        let mut coarser: Vec<Coarser> = Vec::new();
        loop {
            let finest = coarser.last().map_or(&net, |c| &c.net);
            if finest.len() <= COARSEST {
                break;
            }
            let Some(next) = Coarser::of(finest) else { break };
            coarser.push(next);
        }
        let first = coarser.last().map_or(&net, |c| &c.net);
        let x = disturbed(first, first.turned(&lying(first)));
        let cloth = NetCloth::new(along, net.stitch_width_mm(), Filling::Empty);
        Self::new(net, cloth, Filling::Empty, coarser, x)
    }

    /// A stuffed piece, let go from `forecast`, a place for what its first round is worked into
    /// and for every round; `along` is its stiffness Em/Eθ, `pressure` what it is stuffed at,
    /// Eθ/mm.
    pub fn stuffed(net: Net, along: f64, pressure: f64, forecast: &[Rz]) -> Self {
        let mut profile = forecast.to_vec();
        let last = profile.last().copied().unwrap_or(Rz::new(0.0, 0.0));
        profile.resize(net.rings().len(), last);
        let x = disturbed(&net, net.turned(&profile));
        let filling = Filling::Stuffed(pressure);
        let cloth = NetCloth::new(along, net.stitch_width_mm(), filling);
        Self::new(net, cloth, filling, Vec::new(), x)
    }

    /// The stuffed piece that `plan` plans, let go from its forecast. Card inserts and cinched
    /// rounds are not held.
    ///
    /// # Errors
    /// As [`Net::of_plan`].
    pub fn of_plan(piece: &Piece, plan: &Plan) -> Result<Self> {
        let net = Net::of_plan(piece, plan)?;
        let around = net.rings().iter().map(super::net::NetRing::around_mm);
        let widest = around.fold(0.0, f64::max) / TAU;
        let pressure = pressure_for_skin(piece.firmness.0, widest);
        Ok(Self::stuffed(net, piece.stiffness_along, pressure, &plan.forecast))
    }

    fn new(
        net: Net,
        cloth: NetCloth,
        filling: Filling,
        coarser: Vec<Coarser>,
        x: Vec<V3>,
    ) -> Self {
        let levels = coarser.len() + 1;
        let first = coarser.last().map_or(&net, |c| &c.net);
        let stage = RelaxStage::new(first, &cloth, filling, x);
        Self {
            net,
            cloth,
            filling,
            coarser,
            levels,
            stage,
            steps: 0,
            progress: 0.0,
            resting: false,
        }
    }

    /// Takes one step. At rest it changes nothing.
    ///
    /// A step of 20,000 stitches takes about ten milliseconds, one that goes on to a finer net
    /// a tenth of a second.
    pub fn step(&mut self) -> RelaxStep {
        let mut moved_mm = 0.0;
        if !self.resting {
            self.steps += 1;
            let moved = self.stage.step();
            moved_mm = moved.unwrap_or(0.0);
            let goal = if self.coarser.is_empty() { RESTING } else { RESTING_COARSE };
            let fall = self.stage.fall();
            let rests = moved.is_none()
                || fall.is_some_and(|fall| fall <= goal)
                || self.stage.energies.len() >= MOST_STEPS;
            // Of each net the energy falls from all of what it holds to next to nothing.
            let here = fall.map_or(0.0, |fall| (fall.ln() / goal.ln()).clamp(0.0, 1.0));
            let done = (self.levels - 1 - self.coarser.len()) as f64;
            let progress = (done + if rests { 1.0 } else { here }) / self.levels as f64;
            self.progress = self.progress.max(progress);
            if rests {
                self.go_on();
            }
        }
        RelaxStep {
            energy: self.stage.walk.energy,
            moved_mm,
            progress: self.progress,
            coarser: self.coarser.len(),
        }
    }

    /// Goes on to the next finer net, or rests.
    fn go_on(&mut self) {
        let Some(coarser) = self.coarser.pop() else {
            self.resting = true;
            return;
        };
        let finer = self.coarser.last().map_or(&self.net, |c| &c.net);
        let x = coarser.refined(finer, &self.stage.walk.x);
        self.stage = RelaxStage::new(finer, &self.cloth, self.filling, x);
    }

    /// Whether it lies still as far as anybody sees.
    pub fn is_at_rest(&self) -> bool {
        self.resting
    }

    /// Steps taken, on all nets.
    pub fn steps(&self) -> usize {
        self.steps
    }

    /// The net of its stitches.
    pub fn net(&self) -> &Net {
        &self.net
    }

    /// Where every node of [`Relaxation::net`] is, mm; until it comes to the net of all its
    /// stitches, where they are on the coarser one that it is walking on.
    pub fn nodes(&self) -> Vec<V3> {
        let mut x = self.stage.walk.x.clone();
        for (i, coarser) in self.coarser.iter().enumerate().rev() {
            let finer = i.checked_sub(1).map_or(&self.net, |i| &self.coarser[i].net);
            x = coarser.refined(finer, &x);
        }
        x
    }

    /// The largest force on a node that is not yet balanced, Eθ·mm.
    pub fn residual(&self) -> f64 {
        self.stage.walk.residual()
    }
}

impl RelaxStage {
    fn new(net: &Net, cloth: &NetCloth, filling: Filling, x: Vec<V3>) -> Self {
        let mut forces = Forces::new(net, cloth, filling);
        // Without an anchor nothing tells where the whole net is.
        let stiffest = forces.couplings().map(|(_, _, k)| k).fold(0.0, f64::max);
        let mut matrix = Couplings::new(net.len(), 1e-6 * stiffest);
        for (a, b, stiffness) in forces.couplings() {
            matrix.join(a, b, stiffness);
        }
        for (a, stiffness) in forces.anchors() {
            matrix.anchor(a, stiffness);
        }
        let order = order::dissected(net, &matrix.neighbours());
        let factor = SparseFactor::of(&matrix, order);
        let walk = Walk::new(&mut forces, x);
        let widest = net.rings().iter().map(|r| r.width_mm).fold(0.0, f64::max);
        let scale = net.springs().iter().map(|s| s.area_mm2).sum();
        Self { forces, factor, walk, energies: Vec::new(), longest_mm: widest, scale }
    }

    fn step(&mut self) -> Option<f64> {
        let moved = self.walk.step(&mut self.forces, &mut self.factor, self.longest_mm);
        self.energies.push(self.walk.energy.total());
        moved
    }

    /// By which share of what the cloth holds the energy fell over the last steps; `None` of
    /// too few.
    fn fall(&self) -> Option<f64> {
        let now = self.energies.last()?;
        let before = self.energies.get(self.energies.len().checked_sub(1 + WINDOW)?)?;
        let holds = self.walk.energy.elastic() + NOTHING * self.scale;
        Some(((before - now) / holds).max(1e-300))
    }
}

/// Where unstuffed cloth is let go: every round as far out as its stitches reach and its
/// length allows, and up for the rest.
fn lying(net: &Net) -> Vec<Rz> {
    let mut at = Rz::new(0.0, 0.0);
    let rings = net.rings().iter().enumerate();
    rings
        .map(|(k, ring)| {
            let free = ring.around_mm() / TAU;
            if k == 0 {
                at = Rz::new(free, 0.0);
                return at;
            }
            let out = (free - at.r).clamp(-ring.height_mm, ring.height_mm);
            let rise = (ring.height_mm * ring.height_mm - out * out).max(0.0).sqrt();
            at = Rz::new(at.r + out, at.z + rise);
            at
        })
        .collect()
}

/// Pushes places off the round, the same way every time: a few waves along the axis, more
/// towards the rim, and a little by chance so that no wave stands on its crest.
fn disturbed(net: &Net, mut places: Vec<V3>) -> Vec<V3> {
    let width = net.rings().iter().map(|ring| ring.width_mm).fold(0.0, f64::max);
    let last = (net.rings().len() - 1).max(1) as f64;
    let mut chance = Chance(0x9e37_79b9_7f4a_7c15);
    for (k, ring) in net.rings().iter().enumerate() {
        if ring.count == 1 {
            continue;
        }
        let out = k as f64 / last;
        for j in 0..ring.count {
            let turn = TAU * (ring.turn + j as f64 / ring.count as f64);
            let waves: f64 = (2..=5)
                .map(|m| {
                    let m = f64::from(m);
                    (m * turn + 1.3 * m * m).cos() / m
                })
                .sum();
            let place = &mut places[ring.first + j];
            place[2] += DISTURBED * width * (out * waves + 0.2 * chance.next());
        }
    }
    places
}

/// Numbers that look like chance and are the same every time (splitmix64).
struct Chance(u64);

impl Chance {
    /// From −1 to 1.
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        (z >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
    }
}
