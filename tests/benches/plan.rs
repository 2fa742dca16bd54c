//! How long a plan and its parts take, by rounds, and how many forecasts a plan solves: the
//! whole plan at the default, dragged and faithful, one cold forecast, and all that comes
//! before the first.
//!
//! `cargo bench --workspace --bench plan`

use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use plumpline_core::counts::{AllowedRounds, Holds, Targets, skin_of};
use plumpline_core::forecast::{Energy, Skin, pressure_for_skin, settle, settled_gradient};
use plumpline_core::{Gauge, Knot, Outline, Piece, plan, plan_draft};
use plumpline_tests::any::rest_of;
use plumpline_tests::fit_set::SHAPES;

const ROUNDS: [usize; 5] = [20, 40, 80, 160, 320];

fn main() {
    table();
    divan::main();
}

/// The pear at `simplicity`, scaled so that it comes to about `rounds` rounds.
fn pear(rounds: usize, simplicity: Option<f64>) -> Piece {
    SHAPES[3].piece(simplicity, rounds as f64 / 37.0)
}

/// A bun of 120 rounds and three hundred stitches at its widest.
fn wide() -> Piece {
    let gauge = Gauge::of_stitch(4.6, 4.2);
    let outline = |across: f64, along: f64| Outline {
        knots: vec![
            Knot::new(0.0, 0.0),
            Knot::new(0.72 * across, 0.14 * along),
            Knot::new(across, 0.5 * along),
            Knot::new(0.72 * across, 0.86 * along),
            Knot::new(0.0, along),
        ],
    };
    // So flat a body is slack around its middle: it takes more stitches than its width.
    let across = 0.935 * 300.0 * gauge.stitch_width_mm() / std::f64::consts::TAU;
    let rounds = |along: f64| {
        let piece = Piece::new("bun", outline(across, along), gauge);
        (rest_of(&piece).length_mm() / gauge.round_height_mm(), piece)
    };
    let (mut low, mut high) = (0.2 * across, 4.0 * across);
    for _ in 0..40 {
        let along = 0.5 * (low + high);
        if rounds(along).0 < 120.0 { low = along } else { high = along }
    }
    rounds(low).1
}

/// The ideal stitches of `piece`, what its rounds may be, and the pressure in them.
fn ideal(piece: &Piece) -> (Skin, f64) {
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let rounds = (rest.length_mm() / piece.gauge.round_height_mm()).round() as usize;
    let targets = Targets::new(piece, &profile, &rest, rounds);
    let skin = skin_of(piece, targets.start, &targets.ideal, &Holds::default());
    black_box(AllowedRounds::new(piece, targets));
    let pressure = pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
    (skin, pressure)
}

/// From the slack shape, as a plan's first forecast.
fn cold(skin: &Skin, pressure: f64) {
    let energy = Energy::new(skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    black_box(settle(&energy, &start, settled_gradient(skin)));
}

/// The least of several goes: what the machine can do when nothing else runs on it.
fn least(run: impl Fn()) -> Duration {
    let timed = |_| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    (0..9).map(timed).min().unwrap_or_default()
}

fn table() {
    println!(
        "{:>6} {:>8} {:>9} {:>9} {:>10} {:>10} {:>10} {:>6}",
        "rounds", "stitches", "", "forecasts", "plan", "cold", "ideal", "knots"
    );
    let row = |name: &str, piece: &Piece, draft: bool| {
        let one = || {
            if draft { plan_draft(black_box(piece)) } else { plan(black_box(piece)) }
                .expect("the benched pieces can be planned")
        };
        let planned = one();
        let (skin, pressure) = ideal(piece);
        let took = least(|| drop(black_box(one())));
        println!(
            "{:6} {:8} {name:>9} {:9} {:10.2?} {:10.2?} {:10.2?} {:6}",
            planned.rounds.len(),
            planned.counts().iter().max().copied().unwrap_or(0),
            planned.forecasts,
            took,
            least(|| cold(&skin, pressure)),
            least(|| drop(black_box(ideal(piece)))),
            piece.outline.knots.len()
        );
        (planned.rounds.len() as f64, took.as_secs_f64())
    };
    for (name, simplicity, draft) in
        [("default", None, false), ("dragged", Some(0.0), true), ("faithful", Some(0.0), false)]
    {
        let rows = ROUNDS.map(|n| row(name, &pear(n, simplicity), draft));
        let ((few, short), (many, long)) = (rows[0], rows[rows.len() - 1]);
        let power = (long / short).ln() / (many / few).ln();
        println!("a plan grows as rounds to the power {power:.2}");
    }
    row("default", &wide(), false);
}

#[divan::bench(args = ROUNDS)]
fn plan_faithful(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, Some(0.0));
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench(args = ROUNDS)]
fn plan_dragged(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, Some(0.0));
    bencher.bench_local(|| plan_draft(black_box(&piece)));
}

#[divan::bench(args = ROUNDS)]
fn plan_default(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, None);
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench]
fn plan_120_rounds_of_300_stitches(bencher: Bencher<'_, '_>) {
    let piece = wide();
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench(args = ROUNDS)]
fn one_cold_forecast(bencher: Bencher<'_, '_>, rounds: usize) {
    let (skin, pressure) = ideal(&pear(rounds, None));
    bencher.bench_local(|| cold(black_box(&skin), pressure));
}

#[divan::bench(args = ROUNDS)]
fn outline_skin_and_ideal(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, None);
    bencher.bench_local(|| ideal(black_box(&piece)));
}
