//! Cloth let go until nobody sees it move, one thread: ruffled discs of about 3,000 and 20,000
//! stitches, and a stuffed ball.

use divan::Bencher;
use plumpline_core::lesson::Relaxation;
use plumpline_core::lesson::course::{SampleGain, SampleRule};
use plumpline_core::plan::ball::TradeBall;
use plumpline_core::{Gauge, Kind, plan};

fn main() {
    divan::main();
}

fn to_rest(mut relaxation: Relaxation) -> Relaxation {
    while !relaxation.is_at_rest() {
        relaxation.step();
    }
    relaxation
}

/// Rounds of eight more: 27 have 3,024 stitches, 70 have 19,880.
#[divan::bench(args = [27, 70], sample_count = 3, sample_size = 1)]
fn ruffle(bencher: Bencher<'_, '_>, rounds: u32) {
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let gain = SampleGain::Fixed(8);
    let rule = SampleRule::Steady { gain, rounds, kind: Kind::Single };
    let sample = rule.at(gauge).expect("it can be worked");
    bencher
        .with_inputs(|| sample.relaxation(gauge).expect("a net"))
        .bench_local_values(to_rest);
}

#[divan::bench(args = [36, 96], sample_count = 3, sample_size = 1)]
fn ball(bencher: Bencher<'_, '_>, stitches: u32) {
    let piece = TradeBall::usual(stitches).piece(Gauge::default()).expect("a ball of sixes");
    let plan = plan(&piece).expect("it can be planned");
    bencher
        .with_inputs(|| Relaxation::of_plan(&piece, &plan).expect("a net"))
        .bench_local_values(to_rest);
}
