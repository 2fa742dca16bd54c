//! Random outlines planned at the default, at the faithful and at the simple end, and the
//! shares that read as a designer writes them.

use std::fmt;
use std::time::Instant;

use plumpline_core::{Piece, Plan, plan};

use crate::designer::Reading;
use crate::drawn::{Drawn, drawn};

/// How much further than the best the likely fit at the default may be, stitch widths.
pub const INDIFFERENT: f64 = 0.03;

/// One outline, planned.
pub struct Swept {
    /// What was drawn.
    pub drawn: Drawn,
    /// Counts at the default.
    pub counts: Vec<u32>,
    /// How the default reads.
    pub reading: Reading,
    /// How the simple end reads.
    pub simple: Reading,
    /// Likely fit at the default, at the faithful and at the simple end.
    pub likely: [f64; 3],
    /// Nominal fit at the three.
    pub nominal: [f64; 3],
    /// Forecasts at the default.
    pub forecasts: usize,
    /// What is wrong at the default, its likely fit included.
    pub faults: Vec<String>,
    /// What is wrong at the simple end.
    pub simple_faults: Vec<String>,
    /// How long the plans took at the default and at the faithful end, s.
    pub took: [f64; 2],
}

impl Swept {
    /// The outline of `seed`.
    ///
    /// # Panics
    /// Where it cannot be planned.
    pub fn of(seed: u64) -> Self {
        let drawn = drawn(seed);
        let timed = |simplicity: Option<f64>| -> (Plan, f64) {
            let piece = Piece { simplicity, ..drawn.piece.clone() };
            let start = Instant::now();
            let plan = plan(&piece).expect("a drawn outline can be planned");
            (plan, start.elapsed().as_secs_f64())
        };
        let (default, took) = timed(None);
        let (faithful, took_faithful) = timed(Some(0.0));
        let (simple, _) = timed(Some(1.0));
        let plans = [&default, &faithful, &simple];
        let likely = plans.map(|p| p.likely_rms_stitches);
        let reading = Reading::of(&drawn.piece, &default);
        let easiest = Reading::of(&drawn.piece, &simple);
        let mirrored = drawn.kind.is_mirrored();
        let mut faults = reading.faults(mirrored);
        if likely[0] > likely[1] + INDIFFERENT {
            faults.push(format!("likely fit {:.3}, best {:.3}", likely[0], likely[1]));
        }
        let mut simple_faults = Vec::new();
        if easiest.full < easiest.shaping {
            simple_faults
                .push(format!("{} of {} in full repeats", easiest.full, easiest.shaping));
        }
        Self {
            counts: default.counts(),
            forecasts: default.forecasts,
            nominal: plans.map(|p| p.fit.map_or(0.0, |fit| fit.rms_stitches)),
            likely,
            reading,
            simple: easiest,
            faults,
            simple_faults,
            took: [took, took_faithful],
            drawn,
        }
    }
}

/// What a sweep found.
#[derive(Debug, Clone, Default)]
pub struct Sweep {
    /// Outlines.
    pub pieces: usize,
    /// Those without a fault at the default.
    pub passes: usize,
    /// Seeds with nine in ten shaping rounds in full repeats.
    pub nine_in_ten: usize,
    /// Those with more than four numbers of repeats.
    pub many_numbers: Vec<u64>,
    /// Those with fewer than nine in ten shaping rounds in full repeats.
    pub uneven: Vec<u64>,
    /// Those with a round above flat.
    pub above_flat: Vec<u64>,
    /// Those with a lone shaping stitch.
    pub lone: Vec<u64>,
    /// Those with slack that is not said.
    pub slack: Vec<u64>,
    /// Those with slack that nobody accepts.
    pub ripples: Vec<u64>,
    /// Those with slack that is said.
    pub flagged: Vec<u64>,
    /// Those that do not close on six.
    pub closes: Vec<u64>,
    /// Those whose halves differ and should not.
    pub halves: Vec<u64>,
    /// Those too far from the best likely fit.
    pub likely: Vec<u64>,
    /// Those not in full repeats at the simple end.
    pub simple: Vec<u64>,
    /// How many numbers of repeats each has.
    pub numbers: Vec<usize>,
    /// Likely fit at the default less that at the faithful end, each.
    pub behind: Vec<f64>,
    /// Nominal fit at the default, at the faithful and at the simple end.
    pub nominal: [Vec<f64>; 3],
    /// Likely fit at the three.
    pub likely_rms: [Vec<f64>; 3],
    /// Forecasts at the default, each.
    pub forecasts: Vec<usize>,
    /// Seconds at the default and at the faithful end, each.
    pub took: [Vec<f64>; 2],
}

impl Sweep {
    /// The sweep over `seeds`.
    pub fn over(seeds: impl IntoIterator<Item = u64>) -> Self {
        let mut sweep = Self::default();
        seeds.into_iter().for_each(|seed| sweep.add(&Swept::of(seed)));
        sweep
    }

    /// Adds one outline.
    pub fn add(&mut self, swept: &Swept) {
        let reading = &swept.reading;
        let seed = swept.drawn.seed;
        self.pieces += 1;
        self.passes += usize::from(swept.faults.is_empty());
        let behind = swept.likely[0] - swept.likely[1];
        let found: [(bool, &mut Vec<u64>); 10] = [
            (reading.share() < 0.9, &mut self.uneven),
            (reading.numbers.len() > 4, &mut self.many_numbers),
            (!reading.above_flat.is_empty(), &mut self.above_flat),
            (!reading.lone.is_empty(), &mut self.lone),
            (!reading.slack.is_empty(), &mut self.slack),
            (!reading.ripples.is_empty(), &mut self.ripples),
            (reading.flagged > 0, &mut self.flagged),
            (reading.closes == Some(false), &mut self.closes),
            (swept.drawn.kind.is_mirrored() && !reading.mirrored, &mut self.halves),
            (behind > INDIFFERENT, &mut self.likely),
        ];
        for (is, list) in found {
            if is {
                list.push(seed);
            }
        }
        self.nine_in_ten += usize::from(reading.share() >= 0.9);
        if !swept.simple_faults.is_empty() {
            self.simple.push(seed);
        }
        self.numbers.push(reading.numbers.len());
        self.behind.push(behind);
        self.forecasts.push(swept.forecasts);
        for i in 0..3 {
            self.nominal[i].push(swept.nominal[i]);
            self.likely_rms[i].push(swept.likely[i]);
        }
        for i in 0..2 {
            self.took[i].push(swept.took[i]);
        }
    }
}

/// The value that a `share` of them lie below.
pub fn quantile(values: &[f64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let last = sorted.len().saturating_sub(1);
    sorted.get((share * last as f64).round() as usize).copied().unwrap_or(f64::NAN)
}

impl fmt::Display for Sweep {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all = self.pieces.max(1) as f64;
        let percent = |n: usize| 100.0 * n as f64 / all;
        writeln!(
            f,
            "without a fault at the default: {} of {} ({:.1} %)",
            self.passes,
            self.pieces,
            percent(self.passes)
        )?;
        let rows = [
            ("under nine in ten full repeats", &self.uneven),
            ("more than four numbers of repeats", &self.many_numbers),
            ("a round above flat", &self.above_flat),
            ("a lone shaping in a body of 24", &self.lone),
            ("slack that is not said", &self.slack),
            ("slack beyond 15 %", &self.ripples),
            ("(slack that is said)", &self.flagged),
            ("no close on six by full repeats", &self.closes),
            ("halves that differ", &self.halves),
            ("likely fit over 0.03 from the best", &self.likely),
            ("uneven at the simple end", &self.simple),
        ];
        for (name, seeds) in rows {
            writeln!(
                f,
                "{name:36} {:4} ({:4.1} %) {seeds:?}",
                seeds.len(),
                percent(seeds.len())
            )?;
        }
        let numbers: Vec<f64> = self.numbers.iter().map(|&n| n as f64).collect();
        let forecasts: Vec<f64> = self.forecasts.iter().map(|&n| n as f64).collect();
        let mut line = |name: &str, values: &[f64], digits: usize| {
            writeln!(
                f,
                "{name:36} median {:.digits$}, nine in ten {:.digits$}, most {:.digits$}",
                quantile(values, 0.5),
                quantile(values, 0.9),
                quantile(values, 1.0)
            )
        };
        line("numbers of repeats", &numbers, 0)?;
        line("likely fit behind the best", &self.behind, 4)?;
        for (i, end) in ["default", "faithful", "simple"].into_iter().enumerate() {
            line(&format!("nominal RMS, {end}"), &self.nominal[i], 3)?;
            line(&format!("likely RMS, {end}"), &self.likely_rms[i], 3)?;
        }
        line("forecasts at the default", &forecasts, 0)?;
        line("seconds at the default", &self.took[0], 4)?;
        line("seconds at the faithful end", &self.took[1], 4)
    }
}
