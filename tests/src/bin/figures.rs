//! Prints the figures that the README quotes: the fit over the fit set, what ease costs and
//! saves, and the forecast's speed against a general minimiser. `tests/figures.sh` runs it
//! together with the benches and the studio's own figures.

use plumpline_core::counts::Targets;
use plumpline_core::forecast::fit::{self, Trail};
use plumpline_core::forecast::{Cloth, Energy, Finish, Skin, settle, settled_gradient};
use plumpline_core::outline::Profile;
use plumpline_core::pattern::write::Writer;
use plumpline_core::piece::EASE_STOPS;
use plumpline_core::placement::Stitch;
use plumpline_core::skin::RestSkin;
use plumpline_core::{Piece, Plan, Spread, counts, plan, words};
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::lbfgs;
use plumpline_tests::makers::{told, trials};
use plumpline_tests::stacking::{Stacking, stacking};

fn main() {
    fit();
    ease();
    placement();
    race();
    makers();
}

/// How well simulated makers are known after a sample.
fn makers() {
    println!("\nNext piece within 3 % of its forecast, simulated makers");
    for (words, makers) in trials(200, 0x6d61_6b65_7273) {
        println!("{words}: {}", told(&makers));
    }
}

fn planned(shape: &plumpline_tests::fit_set::Shape, ease: f64) -> Plan {
    plan(&shape.piece(ease, 1.0)).expect("every shape of the set can be planned")
}

/// The fit at ease 0 beside the rule of thumb and the unrounded skin.
fn fit() {
    println!("Fit over the fit set at ease 0, in stitch widths");
    println!(
        "{:10} {:>7} {:>7} {:>10} {:>7} {:>7} {:>10}",
        "", "RMS", "most", "unrounded", "thumb", "rounds", "forecasts"
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
        let plans = SHAPES.iter().flat_map(|shape| EASE_STOPS.map(|ease| (shape, ease)));
        plans.fold(Stacking::default(), |all, (shape, ease)| {
            let mut piece = shape.piece(ease, 1.0);
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

/// What each step of ease costs in fit and saves the maker, over the whole set.
fn ease() {
    println!("Ease over the fit set: RMS in stitch widths, shaping rounds that are one repeat");
    println!(
        "{:>5} {:>9} {:>9} {:>11} {:>12}",
        "ease", "mean RMS", "worst", "one repeat", "lines"
    );
    for ease in EASE_STOPS {
        let (mut sum, mut worst, mut single, mut shaping, mut lines) = (0.0, 0.0_f64, 0, 0, 0);
        for shape in &SHAPES {
            let piece = shape.piece(ease, 1.0);
            let plan = planned(shape, ease);
            let rms = plan.fit.expect("it has an outline").rms_stitches;
            sum += rms;
            worst = worst.max(rms);
            lines += words(&plan, &piece, &Writer::bench()).lines.len();
            for round in plan.rounds.iter().skip(1) {
                let shaped = round.placement.number_of(Stitch::Plain) != round.count;
                shaping += usize::from(shaped);
                single += usize::from(shaped && round.placement.is_single_repeat());
            }
        }
        println!(
            "{ease:5.2} {:9.4} {worst:9.4} {:10.1}% {lines:12}",
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
