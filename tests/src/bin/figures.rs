//! Prints the figures that the README quotes: the fit over the fit set, what ease costs and
//! saves, and the forecast's speed against a general minimiser. `tests/figures.sh` runs it
//! together with the benches and the studio's own figures.

use plumpline_core::forecast::Cloth;
use plumpline_core::placement::Stitch;
use plumpline_core::skin::RestSkin;
use plumpline_core::{Plan, counts, plan};
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::lbfgs;

fn main() {
    fit();
    ease();
    race();
}

fn planned(shape: &plumpline_tests::fit_set::Shape, ease: f64) -> Plan {
    plan(&shape.piece(ease, 1.0)).expect("every shape of the set can be planned")
}

/// The fit at ease 0 beside the rule of thumb and the unrounded skin.
fn fit() {
    println!("Fit over the fit set at ease 0, in stitch widths");
    println!(
        "{:10} {:>7} {:>7} {:>7} {:>7} {:>10}",
        "", "RMS", "most", "thumb", "rounds", "forecasts"
    );
    let (mut sum, mut worst) = (0.0, 0.0_f64);
    for shape in &SHAPES {
        let plan = planned(shape, 0.0);
        let fit = plan.fit.expect("it has an outline");
        let piece = shape.piece(0.0, 1.0);
        let profile = piece.outline.profile(400);
        let rest = RestSkin::of(&profile, piece.firmness.0, &Cloth::default());
        let thumb = counts::rule_of_thumb(&piece, &profile);
        let thumb = counts::fit_of(&piece, &profile, &rest, &thumb);
        println!(
            "{:10} {:7.4} {:7.3} {:7.2} {:7} {:10}",
            shape.name,
            fit.rms_stitches,
            fit.max_stitches,
            thumb.rms_stitches,
            plan.rounds.len(),
            plan.forecasts
        );
        sum += fit.rms_stitches;
        worst = worst.max(fit.rms_stitches);
    }
    println!("mean RMS {:.4}, worst {worst:.4}\n", sum / SHAPES.len() as f64);
}

/// What each step of ease costs in fit and saves the maker, over the whole set.
fn ease() {
    println!("Ease over the fit set: RMS in stitch widths, shaping rounds that are one repeat");
    println!(
        "{:>5} {:>9} {:>9} {:>11} {:>12}",
        "ease", "mean RMS", "worst", "one repeat", "lines"
    );
    for step in 0..=10 {
        let ease = f64::from(step) / 10.0;
        let (mut sum, mut worst, mut single, mut shaping, mut lines) = (0.0, 0.0_f64, 0, 0, 0);
        for shape in &SHAPES {
            let plan = planned(shape, ease);
            let rms = plan.fit.expect("it has an outline").rms_stitches;
            sum += rms;
            worst = worst.max(rms);
            lines += plan.wording.lines.len();
            for round in plan.rounds.iter().skip(1) {
                let shaped = round.placement.number_of(Stitch::Plain) != round.count;
                shaping += usize::from(shaped);
                single += usize::from(shaped && round.placement.is_single_repeat());
            }
        }
        println!(
            "{ease:5.1} {:9.4} {worst:9.4} {:10.1}% {lines:12}",
            sum / SHAPES.len() as f64,
            100.0 * single as f64 / shaping as f64
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
