//! What a maker needs, as data and in words.

use serde::Serialize;

use super::SizedPlan;
use super::hooks::hook_size;
use super::length::{amount, capitalise, yards};
use crate::extent::Bounds;
use crate::piece::Yarn;
use crate::plan::estimate::YARN_TOLERANCE;
use crate::project::Project;

/// A yarn and how much of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct YarnNeed {
    /// The letter that stands for it.
    pub letter: String,
    /// Its name.
    pub name: String,
    /// Its colour, sRGB.
    pub colour: [u8; 3],
    /// Metres expected, estimated.
    pub metres: f64,
    /// Metres at the low and the high end of the estimate.
    pub range_m: Bounds,
    /// Grams expected.
    pub grams: f64,
    /// Balls that hold the high end, and what one holds, g; where that is known.
    pub balls: Option<(u32, f64)>,
}

impl YarnNeed {
    /// The amount in words: `14 m (15 yd), 6 g, 1 ball of 50 g`.
    pub fn amount(&self) -> String {
        let mut text = format!(
            "{} m ({} yd), {} g",
            amount(self.metres),
            amount(yards(self.metres)),
            amount(self.grams)
        );
        if let Some((n, grams)) = self.balls {
            let balls = if n == 1 { "ball" } else { "balls" };
            text.push_str(&format!(", {n} {balls} of {} g", amount(grams)));
        }
        text
    }
}

/// What all pieces and their copies need together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Materials {
    /// Yarns in the order of their letters; only those used.
    pub yarn: Vec<YarnNeed>,
    /// Hooks, in words, each once.
    pub hooks: Vec<String>,
    /// Stuffing, g, least and most.
    pub stuffing_g: Bounds,
    /// Volume to stuff, ml.
    pub volume_ml: f64,
    /// Small things.
    pub notions: Vec<&'static str>,
    /// Working time, minutes.
    pub minutes: f64,
    /// The size they are for, where pieces come in several; else empty.
    pub of_size: String,
}

impl Materials {
    /// What `plans`, one a piece, need together, each as often as it is made.
    pub(super) fn of(project: &Project, plans: &[SizedPlan<'_>]) -> Self {
        let mut metres = vec![0.0; project.yarns.len()];
        let (mut stuffing, mut volume, mut minutes) = (Bounds::new(0.0, 0.0), 0.0, 0.0);
        let mut hooks: Vec<String> = Vec::new();
        for sized in plans {
            let need = sized.plan.estimate.times(sized.piece.copies);
            for used in &need.yarn {
                metres[used.yarn] += used.metres;
            }
            stuffing.low += need.stuffing_g.low;
            stuffing.high += need.stuffing_g.high;
            volume += need.volume_ml;
            minutes += need.minutes;
            let hook = hook_size(sized.piece.gauge.hook_mm);
            if !hooks.contains(&hook) {
                hooks.push(hook);
            }
        }
        let yarn = project.yarns.iter().zip(metres).enumerate().filter(|(_, (_, m))| *m > 0.0);
        Self {
            yarn: yarn.map(|(i, (yarn, metres))| need(i, yarn, metres)).collect(),
            hooks,
            stuffing_g: stuffing,
            volume_ml: volume,
            notions: vec!["stitch marker", "blunt needle", "scissors"],
            minutes,
            of_size: String::new(),
        }
    }

    /// The lines of the list.
    pub fn lines(&self) -> Vec<String> {
        let several = self.yarn.len() > 1;
        let mut lines: Vec<String> = self
            .yarn
            .iter()
            .map(|yarn| {
                let letter = if several { format!("{} ", yarn.letter) } else { String::new() };
                let Bounds { low, high } = yarn.range_m;
                format!(
                    "Yarn {letter}({}): about {} (estimate, {}–{} m)",
                    yarn.name,
                    yarn.amount(),
                    amount(low),
                    amount(high),
                )
            })
            .collect();
        for hook in &self.hooks {
            lines.push(format!("Crochet hook, {hook}, or the size that gives the gauge"));
        }
        lines.push(format!("Toy stuffing, about {} (estimate)", self.stuffing()));
        lines.push(self.notions.join(", "));
        if let Some(last) = lines.last_mut() {
            capitalise(last);
        }
        lines.push(format!("Time: about {} (estimate)", self.time()));
        if !self.of_size.is_empty() {
            lines.push(format!(
                "All this is for size {}. What the others need stands with their rounds",
                self.of_size
            ));
        }
        lines
    }

    /// Stuffing in words: `8–18 g for 340 ml`.
    pub fn stuffing(&self) -> String {
        let Bounds { low, high } = self.stuffing_g;
        format!("{}–{} g for {} ml", amount(low), amount(high), amount(self.volume_ml))
    }

    /// Working time in words: `2 h 05 min`.
    pub fn time(&self) -> String {
        let minutes = self.minutes.round() as u64;
        format!("{} h {:02} min", minutes / 60, minutes % 60)
    }
}

fn need(index: usize, yarn: &Yarn, metres: f64) -> YarnNeed {
    let range_m = Bounds::new(1.0 - YARN_TOLERANCE, 1.0 + YARN_TOLERANCE).times(metres);
    let balls = yarn.ball_grams.map(|grams| {
        let balls = yarn.grams(range_m.high) / grams;
        // A crumb over a whole ball is within the estimate.
        ((balls - 0.01).ceil().max(1.0) as u32, grams)
    });
    YarnNeed {
        letter: Yarn::letter(index),
        name: yarn.name.clone(),
        colour: yarn.colour,
        metres,
        range_m,
        grams: yarn.grams(metres),
        balls,
    }
}
