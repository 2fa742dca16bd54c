//! How long a plan, a forecast and the polish take, by rounds.

use divan::Bencher;
use plumpline_core::{Piece, plan};
use plumpline_tests::fit_set::SHAPES;

fn main() {
    divan::main();
}

/// The pear at `ease`, scaled so that it comes to about `rounds` rounds.
fn pear(rounds: usize, ease: f64) -> Piece {
    SHAPES[3].piece(ease, rounds as f64 / 37.0)
}

#[divan::bench(args = [20, 40, 80, 120, 160, 320])]
fn plan_faithful(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, 0.0);
    bencher.bench_local(|| plan(divan::black_box(&piece)));
}

#[divan::bench(args = [20, 40, 80, 120, 160, 320])]
fn plan_default(bencher: Bencher<'_, '_>, rounds: usize) {
    let piece = pear(rounds, 0.3);
    bencher.bench_local(|| plan(divan::black_box(&piece)));
}
