//! What a maker needs, as data and in words.

use serde::Serialize;

use super::SizedPlan;
use super::hooks::hook_size;
use super::length::{amount, time, yards};
use crate::extent::Bounds;
use crate::piece::Yarn;
use crate::plan::estimate::YARN_TOLERANCE;
use crate::project::Project;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Writer, capitalised};

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
    /// The amount in words: `14 m (15 yd), 6 g, 1 ball of 50 g`.
    pub amount: String,
    /// What yarn it is: `240 m per 100 g, weight 3 (light)`, after the brand line if it has one.
    pub kind: String,
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
    /// Working time, minutes.
    pub minutes: f64,
    /// Working time in words: `2 h 05 min`.
    pub time: String,
    /// The lines of the list, those of the yarns first.
    pub lines: Vec<String>,
}

impl Materials {
    /// What `plans`, one a piece, need together, each as often as it is made; `of_size` is the
    /// size they are for, where pieces come in several, else empty.
    pub(super) fn of(
        project: &Project,
        plans: &[SizedPlan<'_>],
        of_size: &str,
        writer: &Writer<'_>,
    ) -> Self {
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
            let hook = hook_size(sized.piece.gauge.hook_mm, writer);
            if !hooks.contains(&hook) {
                hooks.push(hook);
            }
        }
        let yarn = project.yarns.iter().zip(metres).enumerate().filter(|(_, (_, m))| *m > 0.0);
        let yarn: Vec<YarnNeed> =
            yarn.map(|(i, (yarn, metres))| need(i, yarn, metres, writer)).collect();
        let time = time(minutes, writer);
        let mut materials = Self {
            yarn,
            hooks,
            stuffing_g: stuffing,
            volume_ml: volume,
            minutes,
            time,
            lines: Vec::new(),
        };
        materials.lines = materials.said(of_size, writer);
        materials
    }

    fn said(&self, of_size: &str, writer: &Writer<'_>) -> Vec<String> {
        let several = self.yarn.len() > 1;
        let line = |yarn: &YarnNeed| {
            let letter = if several { format!("{} ", yarn.letter) } else { String::new() };
            let (low, high) =
                (amount(yarn.range_m.low, writer), amount(yarn.range_m.high, writer));
            let told = writer.say_of(
                "yarn_line",
                &[
                    ("letter", Words(&letter)),
                    ("name", Words(&yarn.name)),
                    ("amount", Words(&yarn.amount)),
                    ("low", Words(&low)),
                    ("high", Words(&high)),
                ],
            );
            format!("{told}{}; {}", writer.phrases().before_colon, yarn.kind)
        };
        let mut lines: Vec<String> = self.yarn.iter().map(line).collect();
        lines.push(writer.say("substitution"));
        for hook in &self.hooks {
            lines.push(writer.say_of("hook_line", &[("size", Words(hook))]));
        }
        if self.stuffing_g.high > 0.0 {
            let stuffing = self.stuffing(writer);
            lines.push(writer.say_of("stuffing_line", &[("amount", Words(&stuffing))]));
        }
        lines.push(capitalised(&writer.say("notions")));
        lines.push(writer.say_of("time_line", &[("time", Words(&self.time))]));
        if !of_size.is_empty() {
            lines.push(writer.say_of("all_of_size", &[("size", Words(of_size))]));
        }
        lines
    }

    /// Stuffing in words: `8–18 g for 340 ml`.
    fn stuffing(&self, writer: &Writer<'_>) -> String {
        let Bounds { low, high } = self.stuffing_g;
        let (low, high) = (amount(low, writer), amount(high, writer));
        let ml = amount(self.volume_ml, writer);
        let values = [("low", Words(&low)), ("high", Words(&high)), ("ml", Words(&ml))];
        writer.say_of("stuffing", &values)
    }
}

fn need(index: usize, yarn: &Yarn, metres: f64, writer: &Writer<'_>) -> YarnNeed {
    let range_m = Bounds::new(1.0 - YARN_TOLERANCE, 1.0 + YARN_TOLERANCE).times(metres);
    let balls = yarn.balls(range_m.high).zip(yarn.ball_grams);
    let grams = yarn.grams(metres);
    let told = [amount(metres, writer), amount(yards(metres), writer), amount(grams, writer)];
    let [m, yd, g] = &told;
    let mut said = writer.say_of(
        "yarn_amount",
        &[("metres", Words(m)), ("yards", Words(yd)), ("grams", Words(g))],
    );
    if let Some((n, grams)) = balls {
        let grams = amount(grams, writer);
        said.push_str(", ");
        said.push_str(&writer.say_n("balls", n, &[("grams", Words(&grams))]));
    }
    YarnNeed {
        letter: Yarn::letter(index),
        name: yarn.name.clone(),
        colour: yarn.colour,
        metres,
        range_m,
        grams,
        balls,
        amount: said,
        kind: kind(yarn, writer),
    }
}

/// The yarn by its length and its weight category.
fn kind(yarn: &Yarn, writer: &Writer<'_>) -> String {
    let class = weight_class(yarn.metres_per_100g);
    let names = writer.say("weights");
    let name = names.split(", ").nth(class as usize).unwrap_or_default();
    let weight = writer.say_of("weight", &[("n", Number(class)), ("name", Words(name))]);
    let metres = amount(yarn.metres_per_100g, writer);
    let kind =
        writer.say_of("yarn_kind", &[("metres", Words(&metres)), ("weight", Words(&weight))]);
    match yarn.brand.trim() {
        "" => kind,
        brand => format!("{brand}{}; {kind}", writer.phrases().before_colon),
    }
}

/// The Craft Yarn Council's weight category of a yarn, 0 lace to 6 super bulky, by its metres
/// in 100 g. The Council gives no lengths; the limits are the yards a pound that handspinners'
/// tables add to its chart (Spin-Off magazine): 2401, 1901, 1201, 901, 601 and 401.
fn weight_class(metres_per_100g: f64) -> u32 {
    const LEAST: [f64; 6] = [484.0, 383.0, 242.0, 182.0, 121.0, 81.0];
    LEAST.iter().filter(|&&least| metres_per_100g < least).count() as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_go_by_length() {
        // One of each row of the table: 500, 400, 300, 200, 150, 100 and 60 m in 100 g.
        let classes = [500.0, 400.0, 300.0, 200.0, 150.0, 100.0, 60.0].map(weight_class);
        assert_eq!(classes, [0, 1, 2, 3, 4, 5, 6]);
    }
}
