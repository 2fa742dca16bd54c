//! How evenly shaping is spread within a round, and how far it keeps clear of the shaping
//! of the rounds below it, measured stitch by stitch on a finished plan.

use plumpline_core::Plan;
use plumpline_core::placement::Stitch;

/// What the placement of a plan comes to.
#[derive(Debug, Clone, Copy, Default)]
pub struct Stacking {
    /// Greatest difference between two gaps of one round, stitches of the round below.
    pub gap_spread: u32,
    /// Pairs of neighbouring shaping rounds of one kind; plain rounds may lie between.
    pub pairs: usize,
    /// Shaping stitches that were measured.
    pub stitches: usize,
    /// Σ of their distances to the nearest shaping stitch below, in gaps of that round:
    /// 0 stacked, ½ half-way between.
    pub apart: f64,
    /// The same had every upper round been turned, by whole stitches, to its best place.
    pub best: f64,
}

impl Stacking {
    /// Mean distance to the nearest shaping stitch below, in gaps of that round.
    pub fn mean(&self) -> f64 {
        self.apart / self.stitches.max(1) as f64
    }

    /// What the mean could be at best.
    pub fn best_mean(&self) -> f64 {
        self.best / self.stitches.max(1) as f64
    }

    /// Both plans' pairs together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            gap_spread: self.gap_spread.max(other.gap_spread),
            pairs: self.pairs + other.pairs,
            stitches: self.stitches + other.stitches,
            apart: self.apart + other.apart,
            best: self.best + other.best,
        }
    }
}

/// A round's shaping: its kind, and where each stitch of it sits, in turns.
struct Shaped {
    kind: Stitch,
    turns: Vec<f64>,
}

/// Measures `plan`, whose rounds lean `drift` stitches each against the round below.
pub fn stacking(plan: &Plan, drift: f64) -> Stacking {
    let mut found = Stacking::default();
    let mut begins = 0.0;
    let mut last: Option<Shaped> = None;
    let mut below = plan.chain;
    for round in &plan.rounds {
        if let Some(below) = below {
            let stitches: Vec<Stitch> = round.placement.stitches().collect();
            let places = places(&stitches);
            if let Some(&(_, kind)) = places.first() {
                found.gap_spread = found.gap_spread.max(gap_spread(&places, below));
                let turn = |half: u32| begins + 0.5 * f64::from(half) / f64::from(below);
                let turns: Vec<f64> = places.iter().map(|&(half, _)| turn(half)).collect();
                if let Some(last) = last.filter(|last| last.kind == kind) {
                    let apart =
                        |by: f64| -> f64 { turns.iter().map(|t| last.distance(t + by)).sum() };
                    let turned = (0..below).map(|by| apart(f64::from(by) / f64::from(below)));
                    found.pairs += 1;
                    found.stitches += turns.len();
                    found.apart += apart(0.0);
                    found.best += turned.fold(0.0, f64::max);
                }
                last = Some(Shaped { kind, turns });
            }
            begins += drift / f64::from(below);
        }
        below = Some(round.count);
    }
    found
}

/// Where the shaping stitches are worked: the middle of what each takes of the round below,
/// in half stitches, and its kind.
fn places(stitches: &[Stitch]) -> Vec<(u32, Stitch)> {
    let mut taken = 0;
    let mut places = Vec::new();
    for &stitch in stitches {
        let takes = if stitch == Stitch::Decrease { 2 } else { 1 };
        if stitch != Stitch::Plain {
            places.push((2 * taken + takes, stitch));
        }
        taken += takes;
    }
    places
}

/// Difference between the widest and the narrowest gap, once around, in stitches.
fn gap_spread(places: &[(u32, Stitch)], below: u32) -> u32 {
    let around = places.iter().map(|p| p.0).chain([places[0].0 + 2 * below]);
    let at: Vec<u32> = around.collect();
    let gaps = at.windows(2).map(|pair| pair[1] - pair[0]);
    let (least, most) = gaps.fold((u32::MAX, 0), |(l, m), gap| (gap.min(l), gap.max(m)));
    (most - least).div_ceil(2)
}

impl Shaped {
    /// Distance around from `turn` to the nearest of these, in their gaps.
    fn distance(&self, turn: f64) -> f64 {
        let nearest = self.turns.iter().map(|at| {
            let apart = (turn - at).rem_euclid(1.0);
            apart.min(1.0 - apart)
        });
        nearest.fold(1.0, f64::min) * self.turns.len() as f64
    }
}
