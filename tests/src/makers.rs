//! Simulated makers: what they would measure on a sample, and how well their next piece is
//! forecast from it.

use plumpline_core::calibrate::{MakersCloth, Measure, Measured, Sample, calibrate, worked_by};
use plumpline_core::forecast::size_mm;
use plumpline_core::{Firmness, Piece, Plan, Project, plan};

use crate::rng::Rng;

/// What a maker of this cloth measures on the first piece of `project`, without any error: as
/// many stitches and rounds as the unstuffed piece has, its girth and height stuffed, the
/// yarn used, and the yarn of one round.
pub fn exact(project: &Project, made: &Plan, truth: &MakersCloth) -> Vec<Measured> {
    let piece = &project.pieces[0];
    let counts = made.counts();
    let widest = counts.iter().copied().max().unwrap_or(20);
    let asked: Vec<Measured> = [
        Measure::Stitches { stitches: f64::from(widest), mm: 1.0 },
        Measure::Rounds { rounds: counts.len() as f64, mm: 1.0 },
        Measure::Around(1.0),
        Measure::Height(1.0),
        Measure::Yarn { before_g: 1.0, after_g: 0.0 },
        Measure::Unravelled { round: 8, mm: 1.0 },
    ]
    .map(Measured::from)
    .into();
    let values = Sample::new(piece, made.clone(), &project.yarns).predict(truth, &asked);
    let with = |(m, &mm): (&Measured, &f64)| match m.measure {
        Measure::Stitches { stitches, .. } => Measure::Stitches { stitches, mm },
        Measure::Rounds { rounds, .. } => Measure::Rounds { rounds, mm },
        Measure::Around(_) => Measure::Around(mm),
        Measure::Height(_) => Measure::Height(mm),
        Measure::Yarn { .. } => Measure::Yarn { before_g: 100.0, after_g: 100.0 - mm },
        Measure::Unravelled { round, .. } => Measure::Unravelled { round, mm },
    };
    asked.iter().zip(&values).map(with).map(Measured::from).collect()
}

/// The same with errors: 1 mm on each length, 1 g each time the yarn is weighed.
pub fn measured(exact: &[Measured], rng: &mut Rng) -> Vec<Measured> {
    let mut off = |value: f64| value + rng.normal();
    let one = |m: &Measured| match m.measure {
        Measure::Stitches { stitches, mm } => Measure::Stitches { stitches, mm: off(mm) },
        Measure::Rounds { rounds, mm } => Measure::Rounds { rounds, mm: off(mm) },
        Measure::Around(mm) => Measure::Around(off(mm)),
        Measure::Height(mm) => Measure::Height(off(mm)),
        Measure::Yarn { before_g, after_g } => {
            Measure::Yarn { before_g: off(before_g), after_g: off(after_g) }
        }
        Measure::Unravelled { round, mm } => Measure::Unravelled { round, mm: off(mm) },
    };
    exact.iter().map(one).map(Measured::from).collect()
}

/// Greatest error of height and width when `piece` is planned and `truth` works it, as a
/// share.
pub fn next_error(piece: &Piece, truth: &MakersCloth) -> f64 {
    let forecast = plan(piece).expect("it plans");
    let made = size_mm(&worked_by(piece, &forecast, truth));
    let off = |a: f64, b: f64| (a / b - 1.0).abs();
    off(forecast.size_mm.0, made.0).max(off(forecast.size_mm.1, made.1))
}

/// Makers whose gauge is up to 15 % off both ways, whose cloth is half to twice as stiff
/// along as around and who stuff up to a third more or less firmly than they say.
pub fn maker(prior: &MakersCloth, rng: &mut Rng) -> MakersCloth {
    MakersCloth {
        stitch_width_mm: prior.stitch_width_mm * rng.between(0.85, 1.15),
        round_height_mm: prior.round_height_mm * rng.between(0.85, 1.15),
        firmness: Firmness(prior.firmness.0 * rng.by_ratio(0.75, 1.33)),
        stiffness_along: rng.by_ratio(0.5, 2.0),
        yarn_per_stitch: prior.yarn_per_stitch * rng.between(0.8, 1.2),
    }
}

/// The share of `errors` that are at most `limit`.
pub fn share_within(errors: &[f64], limit: f64) -> f64 {
    errors.iter().filter(|&&e| e <= limit).count() as f64 / errors.len() as f64
}

/// The middle one of `errors`.
pub fn median(errors: &[f64]) -> f64 {
    let mut sorted = errors.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted[sorted.len() / 2]
}

/// One simulated maker.
#[derive(Debug, Clone)]
pub struct Maker {
    /// The maker's cloth.
    pub truth: MakersCloth,
    /// The cloth as the sample taught it.
    pub learned: MakersCloth,
    /// Error of the next piece's size with nothing learned, as a share.
    pub before: f64,
    /// The same after the sample.
    pub after: f64,
    /// Whether the measures told all five quantities.
    pub all_told: bool,
}

/// `many` makers who work the first piece of `project`, measure it, and then work `next`,
/// which is planned by what was learned.
pub fn trial(project: &Project, next: &Piece, many: u32, seed: u64) -> Vec<Maker> {
    let sample = &project.pieces[0];
    let made = plan(sample).expect("the sample plans");
    let prior = MakersCloth::of(sample);
    let next = prior.dress(next);
    let mut rng = Rng::new(seed);
    let one = |_| {
        let truth = maker(&prior, &mut rng);
        let measures = measured(&exact(project, &made, &truth), &mut rng);
        let learned = calibrate(project, 0, &measures).expect("a calibration");
        Maker {
            truth,
            learned: learned.cloth,
            before: next_error(&next, &truth),
            after: next_error(&learned.apply(&next), &truth),
            all_told: learned.fitted.iter().all(|f| f.learned),
        }
    };
    (0..many).map(one).collect()
}

/// What a trial came to, in a line.
pub fn told(makers: &[Maker]) -> String {
    let after: Vec<f64> = makers.iter().map(|m| m.after).collect();
    let before: Vec<f64> = makers.iter().map(|m| m.before).collect();
    let percent = |errors: &[f64]| 100.0 * share_within(errors, 0.03);
    format!(
        "Next piece within 3 % of its forecast, {} simulated makers: calibrated {:.1} % (median \
         error {:.2} %, worst {:.2} %), uncalibrated {:.1} % (median {:.2} %); all five \
         quantities told for {}",
        makers.len(),
        percent(&after),
        100.0 * median(&after),
        100.0 * after.iter().fold(0.0, |a: f64, &b| a.max(b)),
        percent(&before),
        100.0 * median(&before),
        makers.iter().filter(|m| m.all_told).count(),
    )
}
