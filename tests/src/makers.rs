//! Simulated makers: what they would measure on a sample, and how well their next piece is
//! forecast from it.

use std::path::Path;

use plumpline_core::calibrate::{
    MakersCloth, Measure, Measured, OfPiece, Sample, calibrate, worked_by,
};
use plumpline_core::forecast::size_mm;
use plumpline_core::sizes::sized_piece;
use plumpline_core::{Firmness, Piece, Plan, Project, file, plan};

use crate::rng::Rng;

/// What a maker of this cloth measures on piece `index` of `project`, without any error: as
/// many stitches and rounds as the unstuffed piece has; stuffed, its girth, its height and a
/// tape over both ends; the yarn used, and the yarn of one round.
pub fn exact(
    project: &Project,
    index: usize,
    made: &Plan,
    truth: &MakersCloth,
) -> Vec<Measured> {
    let piece = &project.pieces[index];
    let counts = made.counts();
    let widest = counts.iter().copied().max().unwrap_or(20);
    let asked: Vec<Measured> = [
        Measure::Stitches { stitches: f64::from(widest), mm: 1.0 },
        // Pressed flat, the tape goes over the start and up the other side.
        Measure::Rounds { rounds: 2.0 * counts.len() as f64, mm: 1.0 },
        Measure::Around(1.0),
        Measure::Height(1.0),
        Measure::OverEnds(1.0),
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
        Measure::OverEnds(_) => Measure::OverEnds(mm),
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
        Measure::OverEnds(mm) => Measure::OverEnds(off(mm)),
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
    off(forecast.size_mm.height, made.height).max(off(forecast.size_mm.width, made.width))
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

/// `many` makers who work the first `pieces` pieces of `project`, measure them, and then work
/// `next`, which is planned by what was learned.
pub fn trial(
    project: &Project,
    pieces: usize,
    next: &Piece,
    many: u32,
    seed: u64,
) -> Vec<Maker> {
    let samples = &project.pieces[..pieces];
    let plans: Vec<Plan> = samples.iter().map(|p| plan(p).expect("a sample plans")).collect();
    let prior = MakersCloth::of(&samples[0]);
    let next = prior.dress(next);
    let mut rng = Rng::new(seed);
    let one = |_| {
        let truth = maker(&prior, &mut rng);
        let made: Vec<OfPiece> = (0..pieces)
            .map(|piece| {
                // Whoever stuffs the first firmer than it says does so with all of them.
                let firmer = truth.firmness.0 / prior.firmness.0;
                let firmness = Firmness(firmer * samples[piece].firmness.0);
                let truth = MakersCloth { firmness, ..truth };
                let exact = exact(project, piece, &plans[piece], &truth);
                OfPiece { piece: samples[piece].id, measures: measured(&exact, &mut rng) }
            })
            .collect();
        let learned = calibrate(project, &made).expect("a calibration");
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

/// The trials: which pieces are measured and which is worked next, in words, and the makers.
/// Each seed is another two hundred of them, or `many`.
pub fn trials(many: u32, seed: u64) -> Vec<(String, Vec<Maker>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let load = |name: &str| file::load(&folder.join(name)).expect("the sample loads");
    let [acorn, float, pear, pebble] =
        ["acorn.ron", "float.ron", "pear.ron", "pebble.ron"].map(load);
    let next = &pebble.pieces[0];
    let mut trials = vec![
        ("pear, then float".to_owned(), trial(&pear, 1, &float.pieces[0], many, seed)),
        ("pebble, then nut".to_owned(), trial(&pebble, 1, &acorn.pieces[0], many, seed)),
        ("nut alone, then pebble".to_owned(), trial(&acorn, 1, next, many, seed)),
    ];
    for size in &next.sizes {
        let sized = sized_piece(next, size).expect("a pebble of that size");
        let words = format!("nut and cap, then pebble {}", size.name);
        trials.push((words, trial(&acorn, 2, &sized.piece, many, seed)));
    }
    trials
}

/// What a trial came to, in a line.
pub fn told(makers: &[Maker]) -> String {
    let after: Vec<f64> = makers.iter().map(|m| m.after).collect();
    let before: Vec<f64> = makers.iter().map(|m| m.before).collect();
    let percent = |errors: &[f64]| 100.0 * share_within(errors, 0.03);
    format!(
        "{} makers: calibrated {:.1} % (median error {:.2} %, worst {:.2} %), uncalibrated \
         {:.1} % (median {:.2} %); all five quantities told for {}",
        makers.len(),
        percent(&after),
        100.0 * median(&after),
        100.0 * after.iter().fold(0.0, |a: f64, &b| a.max(b)),
        percent(&before),
        100.0 * median(&before),
        makers.iter().filter(|m| m.all_told).count(),
    )
}
