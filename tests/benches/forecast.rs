//! One forecast by the program's own method and by a general minimiser, both from the slack
//! shape to a largest gradient entry of 1e-4 Eθ·mm, in one run.

use divan::{Bencher, black_box};
use plumpline_tests::lbfgs::{lbfgs_forecast, newton_forecast, pear_skin};

const ROUNDS: [usize; 3] = [25, 80, 160];
const TOLERANCE: f64 = 1e-4;

fn main() {
    divan::main();
}

#[divan::bench(args = ROUNDS)]
fn newton(bencher: Bencher<'_, '_>, rounds: usize) {
    let (skin, pressure) = pear_skin(rounds);
    bencher.bench_local(|| newton_forecast(black_box(&skin), pressure, TOLERANCE));
}

#[divan::bench(args = ROUNDS, sample_count = 20)]
fn lbfgs(bencher: Bencher<'_, '_>, rounds: usize) {
    let (skin, pressure) = pear_skin(rounds);
    bencher.bench_local(|| lbfgs_forecast(black_box(&skin), pressure, TOLERANCE));
}
