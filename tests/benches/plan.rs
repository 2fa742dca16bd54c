//! How long a plan and its parts take, by rounds, and how many forecasts a plan solves: the
//! whole plan, its polish and ease, one cold forecast, and all that comes before the first.
//!
//! `cargo bench --workspace --bench plan`

use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use plumpline_core::counts::{Holds, Rounds, Targets, choose, skin_of};
use plumpline_core::forecast::{Energy, Skin, settle, settled_gradient};
use plumpline_core::{Gauge, Knot, Outline, Piece, plan};
use plumpline_tests::any::rest_of;
use plumpline_tests::fit_set::SHAPES;

const ROUNDS: [usize; 5] = [20, 40, 80, 160, 320];

fn main() {
    table();
    divan::main();
}

/// The pear at `ease`, scaled so that it comes to about `rounds` rounds.
fn pear(rounds: usize, ease: f64) -> Piece {
    SHAPES[3].piece(ease, rounds as f64 / 37.0)
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

/// The programme's counts for `piece`: what a plan solves its first forecast for.
fn first_counts(piece: &Piece) -> (Skin, f64) {
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let rounds = (rest.length_mm() / piece.gauge.round_height_mm()).round() as usize;
    let targets = Targets::new(piece, &profile, &rest, rounds);
    let start = targets.start;
    let (counts, _) = Rounds::new(piece, targets).solve();
    (skin_of(piece, start, &counts, &Holds::default()), rest.pressure)
}

/// From the slack shape, as a plan's first forecast.
fn cold(skin: &Skin, pressure: f64) {
    let energy = Energy::new(skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    black_box(settle(&energy, &start, settled_gradient(skin)));
}

/// Everything before the first forecast: outline, skin and dynamic programme.
fn before_forecasts(piece: &Piece) {
    black_box(first_counts(piece));
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

/// What `choose` takes beyond the programme and the first forecast of each number of rounds.
fn polish(piece: &Piece) -> Duration {
    let (profile, rest) = (piece.outline.profile(400), rest_of(piece));
    let all = least(|| drop(black_box(choose(piece, &profile, &rest))));
    let middle = (rest.length_mm() / piece.gauge.round_height_mm()).round() as usize;
    let first = |rounds: usize| {
        let targets = Targets::new(piece, &profile, &rest, rounds);
        let start = targets.start;
        let (counts, _) = Rounds::new(piece, targets).solve();
        cold(&skin_of(piece, start, &counts, &Holds::default()), rest.pressure);
    };
    all.saturating_sub(least(|| (middle - 1..=middle + 1).for_each(first)))
}

fn table() {
    println!(
        "{:>6} {:>8} {:>5} {:>9} {:>10} {:>10} {:>10} {:>10} {:>6}",
        "rounds", "stitches", "ease", "forecasts", "plan", "polish", "cold", "counts", "knots"
    );
    let row = |piece: &Piece| {
        let planned = plan(piece).expect("the benched pieces can be planned");
        let (skin, pressure) = first_counts(piece);
        let took = least(|| drop(black_box(plan(black_box(piece)))));
        println!(
            "{:6} {:8} {:5.1} {:9} {:10.2?} {:10.2?} {:10.2?} {:10.2?} {:6}",
            planned.rounds.len(),
            planned.counts().iter().max().copied().unwrap_or(0),
            piece.ease,
            planned.forecasts,
            took,
            polish(piece),
            least(|| cold(&skin, pressure)),
            least(|| before_forecasts(piece)),
            piece.outline.knots.len()
        );
        (planned.rounds.len() as f64, took.as_secs_f64())
    };
    for ease in [0.0, 0.3] {
        let rows: Vec<(f64, f64)> = ROUNDS.iter().map(|&n| row(&pear(n, ease))).collect();
        let ((few, short), (many, long)) = (rows[0], rows[rows.len() - 1]);
        let power = (long / short).ln() / (many / few).ln();
        println!("a plan grows as rounds to the power {power:.2}");
    }
    row(&wide());
}

#[divan::bench(args = ROUNDS)]
fn plan_faithful(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, 0.0);
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench(args = ROUNDS)]
fn plan_default(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, 0.3);
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench]
fn plan_120_rounds_of_300_stitches(bencher: Bencher<'_, '_>) {
    let piece = wide();
    bencher.bench_local(|| plan(black_box(&piece)));
}

#[divan::bench(args = ROUNDS)]
fn one_cold_forecast(bencher: Bencher<'_, '_>, rounds: usize) {
    let (skin, pressure) = first_counts(&pear(rounds, 0.3));
    bencher.bench_local(|| cold(black_box(&skin), pressure));
}

#[divan::bench(args = ROUNDS)]
fn outline_skin_and_programme(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, 0.3);
    bencher.bench_local(|| before_forecasts(black_box(&piece)));
}
