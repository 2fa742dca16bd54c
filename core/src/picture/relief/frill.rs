//! A frill: cloth with more stitches than go around, which stands in waves.

use std::f32::consts::TAU;

use super::curve::Curve;
use super::space::mix;
use crate::plan::Plan;

/// Slack that shows, as the plan counts it: with less a round lies smooth.
const SHOWING: f32 = 0.05;
/// Rounds below an end drawn shut, which its gathering pleats anyway.
const PLEATED: usize = 3;
/// Length of a wave along the cloth, in stitches. By eye, no source.
const WAVE: f32 = 9.0;
/// How steep a wave is at most, mm a mm.
const STEEPEST: f32 = 1.3;
/// How high a wave may be, in lengths of cloth from where the frill begins.
const HIGHEST: f32 = 0.7;
/// Cells of the field on its longer side.
const CELLS: f32 = 56.0;

/// By how much places of a part are moved for its frills to lie smooth.
#[derive(Debug, Clone)]
pub(super) struct Frill {
    /// Waves in a turn.
    waves: f32,
    /// Height of a wave in the (r, z) plane, mm, along the normal of the profile.
    field: Vec<[f32; 2]>,
    wide: usize,
    tall: usize,
    per_mm: f32,
    low: f32,
    /// Height of the highest wave, mm.
    pub(super) most: f32,
    /// How far one may go for each mm that the smooth surface is off.
    pub(super) pace: f32,
}

/// What a frill does at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Waved {
    /// By how much it is moved in the (r, z) plane, mm.
    pub(super) by: [f32; 2],
    /// How that grows with a turn.
    pub(super) a_turn: [f32; 2],
    /// How the growth grows.
    pub(super) bend: [f32; 2],
}

impl Frill {
    /// The frills of a plan; none where its cloth is nowhere so slack that it shows.
    pub(super) fn of(plan: &Plan, curve: &Curve) -> Option<Self> {
        let heights = heights(plan);
        let (ring, most) = (0..heights.len())
            .map(|k| (k, heights[k]))
            .fold((0, 0.0_f32), |best, own| if own.1 > best.1 { own } else { best });
        if most <= 0.0 {
            return None;
        }
        let count = plan.rounds.get(ring.saturating_sub(1)).map_or(12, |round| round.count);
        let waves = waves(count);
        let margin = most + 2.0 * plan.stitch_mm.width as f32;
        let extent = (curve.widest + margin).max(curve.high - curve.low + 2.0 * margin);
        let per_mm = CELLS / extent.max(1e-3);
        let low = curve.low - margin;
        let wide = ((curve.widest + margin) * per_mm) as usize + 2;
        let tall = ((curve.high + margin - low) * per_mm) as usize + 2;
        let at = |along: f32| {
            let k = (along.max(0.0) as usize).min(heights.len() - 1);
            mix(heights[k], heights[(k + 1).min(heights.len() - 1)], along - k as f32)
        };
        let mut field = Vec::with_capacity(wide * tall);
        for row in 0..tall {
            for column in 0..wide {
                let (r, z) = (column as f32 / per_mm, low + row as f32 / per_mm);
                let near = curve.within(r, z);
                let high = at(near.along);
                field.push([high * near.way[1], -high * near.way[0]]);
            }
        }
        let mut frill =
            Self { waves, field, wide, tall, per_mm, low, most, pace: 1.0 / (1.0 + STEEPEST) };
        for _ in 0..2 {
            frill.even_out();
        }
        Some(frill)
    }

    /// Halfway to the mean of its neighbours, each cell: folds that pass one another closely
    /// would tear.
    fn even_out(&mut self) {
        let was = self.field.clone();
        let (wide, tall) = (self.wide, self.tall);
        let own = |column: usize, row: usize| was[row * wide + column];
        for row in 0..tall {
            for column in 0..wide {
                let beside = [
                    own(column.saturating_sub(1), row),
                    own((column + 1).min(wide - 1), row),
                    own(column, row.saturating_sub(1)),
                    own(column, (row + 1).min(tall - 1)),
                ];
                let here = own(column, row);
                self.field[row * wide + column] = [0, 1]
                    .map(|i| 0.5 * here[i] + 0.125 * beside.iter().map(|b| b[i]).sum::<f32>());
            }
        }
    }

    /// What it does at (r, z) and a turn.
    pub(super) fn at(&self, r: f32, z: f32, turn: f32) -> Waved {
        let (x, y) = (r * self.per_mm, (z - self.low) * self.per_mm);
        let place = |at: f32, many: usize| {
            let at = at.clamp(0.0, (many - 1) as f32 - 1e-3);
            (at as usize, at - at.floor())
        };
        let ((i, u), (j, v)) = (place(x, self.wide), place(y, self.tall));
        let own = |i: usize, j: usize| self.field[j * self.wide + i];
        let high = [0, 1].map(|c| {
            let low = mix(own(i, j)[c], own(i + 1, j)[c], u);
            mix(low, mix(own(i, j + 1)[c], own(i + 1, j + 1)[c], u), v)
        });
        let per_turn = TAU * self.waves;
        let (sin, cos) = (per_turn * turn).sin_cos();
        Waved {
            by: high.map(|h| h * sin),
            a_turn: high.map(|h| h * cos * per_turn),
            bend: high.map(|h| -h * sin * per_turn * per_turn),
        }
    }

    /// All that it shows, for comparing.
    pub(super) fn numbers(&self) -> impl Iterator<Item = f32> + '_ {
        self.field.iter().flatten().copied().chain([self.waves])
    }
}

/// Waves in a turn of a round of `count` stitches.
fn waves(count: u32) -> f32 {
    (count as f32 / WAVE).round().clamp(3.0, 400.0)
}

/// Height of the waves at every edge of a round, mm.
fn heights(plan: &Plan) -> Vec<f32> {
    let rounds = plan.rounds.len();
    let drawn = plan.forecast.len() > rounds + 1;
    let looked_at = if drawn { rounds.saturating_sub(PLEATED + 1) } else { rounds };
    let slack = |k: usize| -> f32 {
        let strain = plan.hoop_strains.get(k.wrapping_sub(1)).copied().flatten();
        let taken = 1.0 + strain.unwrap_or(0.0) as f32;
        if k <= looked_at && taken > 0.05 { (1.0 / taken - 1.0).max(0.0) } else { 0.0 }
    };
    let mut heights = vec![0.0_f32; rounds + 1];
    let mut gone = 0.0;
    for (k, height) in heights.iter_mut().enumerate().skip(1) {
        let (before, node) = (plan.forecast[k - 1], plan.forecast[k]);
        // An open edge is held at its own size, but the rounds before it stand in waves.
        let own = if k == rounds && !drawn { slack(k).max(slack(k - 1)) } else { slack(k) };
        if own <= SHOWING {
            gone = 0.0;
            continue;
        }
        gone += (node.r - before.r).hypot(node.z - before.z) as f32;
        // A sine of steepness s is about 1 + s²/4 as long as the line it goes along.
        let steep = (2.0 * own.sqrt()).min(STEEPEST);
        let high = steep * node.r as f32 / waves(plan.rounds[k - 1].count);
        *height = high.min(HIGHEST * gone);
    }
    heights
}
