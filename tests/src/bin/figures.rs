//! Prints the figures that the README quotes: the fit over the fit set, what simplicity costs
//! and saves, how rounds read over outlines drawn by chance, how long a plan takes and how
//! that grows, the trade's balls, a drag, and the forecast's speed against a general
//! minimiser. `tests/figures.sh` runs it together with the benches and the studio's own
//! figures.

use std::time::{Duration, Instant};

use plumpline_core::counts::Targets;
use plumpline_core::forecast::fit::{self, Trail};
use plumpline_core::forecast::{Cloth, Energy, Finish, Skin, settle, settled_gradient};
use plumpline_core::outline::Profile;
use plumpline_core::piece::STIFFNESS_ALONG;
use plumpline_core::plan::ball::TradeBall;
use plumpline_core::skin::RestSkin;
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Firmness, Gauge, Piece, Plan, Spread, counts, plan, plan_draft};
use plumpline_tests::designer::Reading;
use plumpline_tests::drag::median_of_four;
use plumpline_tests::drawn::drawn;
use plumpline_tests::fit_set::{SHAPES, Shape};
use plumpline_tests::hands::distances;
use plumpline_tests::lbfgs;
use plumpline_tests::makers::{told, trials};
use plumpline_tests::stacking::{Stacking, stacking};
use plumpline_tests::sweep::{Sweep, quantile};

/// Simplicities that are reported, in words.
const STOPS: [(&str, Option<f64>); 3] =
    [("faithful", Some(0.0)), ("default", None), ("simple", Some(1.0))];

fn main() {
    fit();
    simplicity();
    println!("Rounds over outlines drawn by chance, seeds 1 to 300");
    println!("{}", Sweep::over(1..=300));
    likely();
    balls();
    eight_centimetres();
    times();
    drags();
    placement();
    race();
    makers();
}

/// The likely fit beside the mean over sampled hands. They come from the same model, so this
/// says how good the linearisation is, not how real makers differ.
fn likely() {
    println!("Likely fit and the mean over 2000 simulated hands, stitch widths");
    let mut off = Vec::new();
    for seed in 701..=712 {
        let piece = drawn(seed).piece;
        let plan = plan(&piece).expect("a drawn outline can be planned");
        let sampled = distances(&piece, &plan, 2000, seed);
        let mean = sampled.iter().sum::<f64>() / sampled.len() as f64;
        let likely = plan.likely_rms_stitches;
        off.push((likely - mean).abs());
        println!(
            "{:14} {likely:.4} {mean:.4} ({:+.1} %)",
            piece.name,
            100.0 * (likely / mean - 1.0)
        );
    }
    println!("apart: median {:.4}, most {:.4}\n", quantile(&off, 0.5), quantile(&off, 1.0));
}

/// Height over width of the trade's balls, by firmness.
fn balls() {
    println!("The trade's ball at the default gauge and stiffness: height over width");
    println!("{:>9} {:>6} {:>6} {:>6}", "stitches", "soft", "medium", "firm");
    for stitches in [30, 36, 48, 60] {
        let ratio = |firmness| {
            let ball = TradeBall::usual(stitches);
            let size = ball.size(Gauge::default(), STIFFNESS_ALONG, firmness);
            size.expect("a ball of sixes").ratio()
        };
        let [soft, medium, firm] =
            [Firmness::SOFT, Firmness::MEDIUM, Firmness::FIRM].map(ratio);
        println!("{stitches:9} {soft:6.3} {medium:6.3} {firm:6.3}");
    }
    println!();
}

/// How a ball of 8 cm reads.
fn eight_centimetres() {
    let ball = Starter::Ball.piece(&Dimensions::new(80.0, 80.0), Gauge::default());
    let plan = plan(&ball.expect("a ball")).expect("it can be planned");
    println!("A ball of 8 cm: {:?}", plan.counts());
    println!(
        "{:.1} mm high, {:.1} mm wide, RMS {:.3}, likely {:.3}\n",
        plan.size_mm.height,
        plan.size_mm.width,
        plan.fit.map_or(0.0, |fit| fit.rms_stitches),
        plan.likely_rms_stitches
    );
}

/// The least of several goes.
fn least(run: impl Fn()) -> Duration {
    let timed = |_| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    (0..9).map(timed).min().unwrap_or_default()
}

/// What a plan takes by rounds, at the default, dragged, and at the faithful end.
fn times() {
    println!("A plan of the pear by rounds, the least of nine goes");
    println!(
        "{:>7} {:>11} {:>11} {:>11} {:>21}",
        "rounds", "default", "draft", "faithful", "forecasts of each"
    );
    let mut rows = Vec::new();
    for wanted in [20, 40, 80, 160, 320] {
        let scale = f64::from(wanted) / 37.0;
        let usual = SHAPES[3].piece(None, scale);
        let faithful = SHAPES[3].piece(0.0, scale);
        let planned = |piece: &Piece| plan(piece).expect("the pear can be planned");
        let rounds = planned(&usual).rounds.len();
        let default = least(|| drop(planned(&usual)));
        let draft = least(|| drop(plan_draft(&faithful)));
        let full = least(|| drop(planned(&faithful)));
        let forecasts = [
            planned(&usual).forecasts,
            plan_draft(&faithful).map_or(0, |p| p.forecasts),
            planned(&faithful).forecasts,
        ];
        println!("{rounds:7} {default:11.2?} {draft:11.2?} {full:11.2?} {forecasts:>21?}");
        rows.push((rounds as f64, default.as_secs_f64()));
    }
    let ((few, short), (many, long)) = (rows[0], rows[rows.len() - 1]);
    let power = (long / short).ln() / (many / few).ln();
    println!("a plan at the default grows as rounds to the power {power:.2}\n");
}

/// Rounds that change in a drag of any knot by 1 mm, against those that must.
fn drags() {
    println!("Rounds changed in a drag by 0.05 mm steps, for each whose ideal crosses");
    median_of_four();
    println!();
}

/// How well simulated makers are known after a sample.
fn makers() {
    println!("\nNext piece within 3 % of its forecast, simulated makers");
    for (words, makers) in trials(200, 0x6d61_6b65_7273) {
        println!("{words}: {}", told(&makers));
    }
}

fn planned(shape: &Shape, simplicity: Option<f64>) -> Plan {
    plan(&shape.piece(simplicity, 1.0)).expect("every shape of the set can be planned")
}

/// The fit at the faithful end beside the rule of thumb and the unrounded skin.
fn fit() {
    println!("Fit over the fit set at the faithful end, in stitch widths");
    println!(
        "{:10} {:>7} {:>7} {:>10} {:>7} {:>7} {:>10}",
        "", "RMS", "most", "unrounded", "thumb", "rounds", "forecasts"
    );
    let (mut sum, mut worst) = (0.0, 0.0_f64);
    for shape in &SHAPES {
        let plan = planned(shape, Some(0.0));
        let fit = plan.fit.expect("it has an outline");
        let piece = shape.piece(0.0, 1.0);
        let profile = piece.outline.profile(400);
        let rest = RestSkin::of(&profile, piece.firmness.0, &Cloth::default());
        let thumb = counts::rule_of_thumb(&piece, &profile);
        let thumb = counts::fit_of(&piece, &profile, &rest, &thumb);
        println!(
            "{:10} {:7.4} {:7.3} {:10.4} {:7.2} {:7} {:10}",
            shape.name,
            fit.rms_stitches,
            fit.max_stitches,
            unrounded(&piece, &profile, &rest, plan.rounds.len()),
            thumb.rms_stitches,
            plan.rounds.len(),
            plan.forecasts
        );
        sum += fit.rms_stitches;
        worst = worst.max(fit.rms_stitches);
    }
    println!("mean RMS {:.4}, worst {worst:.4}\n", sum / SHAPES.len() as f64);
}

/// The fit of the closed-form skin in as many rounds, had stitches not to be whole: RMS in
/// stitch widths.
fn unrounded(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> f64 {
    let (width, height) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
    let targets = Targets::new(piece, profile, rest, rounds);
    let around = targets.ideal.iter().map(|n| n * width).collect();
    let height = height.min(rest.length_mm() / rounds as f64);
    let skin = Skin::new(0.0, around, vec![height; rounds], Finish::Drawn, Cloth::default());
    let energy = Energy::new(&skin, rest.pressure);
    let start = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &start, settled_gradient(&skin));
    fit::measure(&settled.nodes, &Trail::new(profile.places()), width).rms_stitches
}

/// How evenly increases are spread and how clear they keep of those below, over the set.
fn placement() {
    println!("Placement over the fit set: distance to the nearest shaping below, in gaps");
    let measured = |spread| {
        let plans = SHAPES.iter().flat_map(|shape| STOPS.map(|(_, s)| (shape, s)));
        plans.fold(Stacking::default(), |all, (shape, simplicity)| {
            let mut piece = shape.piece(simplicity, 1.0);
            piece.spread = spread;
            let plan = plan(&piece).expect("every shape of the set can be planned");
            all.and(stacking(&plan, piece.drift()))
        })
    };
    for (name, spread) in [("stacked", Spread::Stacked), ("turned", Spread::Turned)] {
        let all = measured(spread);
        println!(
            "{name:8} {:.3} of at best {:.3}; gaps of a round differ by at most {}",
            all.mean(),
            all.best_mean(),
            all.gap_spread
        );
    }
    println!();
}

/// What simplicity costs in fit and saves the maker, over the whole set.
fn simplicity() {
    println!(
        "Simplicity over the fit set: RMS in stitch widths, shaping rounds in full repeats"
    );
    println!(
        "{:10} {:>9} {:>7} {:>11} {:>7} {:>8} {:>8}",
        "", "mean RMS", "worst", "mean likely", "worst", "repeats", "numbers"
    );
    for (name, stop) in STOPS {
        let (mut nominal, mut likely, mut numbers) = (Vec::new(), Vec::new(), Vec::new());
        let (mut full, mut shaping) = (0, 0);
        for shape in &SHAPES {
            let plan = planned(shape, stop);
            nominal.push(plan.fit.map_or(0.0, |fit| fit.rms_stitches));
            likely.push(plan.likely_rms_stitches);
            let reading = Reading::of(&shape.piece(stop, 1.0), &plan);
            numbers.push(reading.numbers.len() as f64);
            full += reading.full;
            shaping += reading.shaping;
        }
        let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
        println!(
            "{name:10} {:9.4} {:7.4} {:11.4} {:7.4} {:7.1}% {:8.1}",
            mean(&nominal),
            quantile(&nominal, 1.0),
            mean(&likely),
            quantile(&likely, 1.0),
            100.0 * full as f64 / shaping as f64,
            quantile(&numbers, 0.5)
        );
    }
    println!();
}

/// One forecast by Newton's method against L-BFGS from the same cold start.
fn race() {
    println!("One forecast from the slack skin to |g| = 1e-4, against argmin's L-BFGS");
    for rounds in [25, 80, 160] {
        println!("{rounds:4} rounds: {:.0} times as fast", lbfgs::race(rounds).ratio());
    }
}
