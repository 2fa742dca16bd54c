//! Three hundred outlines drawn by chance: do their rounds read as a designer writes them?
//! Nothing is tuned to these seeds; `outlines FIRST LAST -v` prints any others.

use std::sync::OnceLock;

use plumpline_tests::sweep::{Sweep, quantile};

/// The first and the last seed.
const SEEDS: std::ops::RangeInclusive<u64> = 1..=300;

fn sweep() -> &'static Sweep {
    static SWEEP: OnceLock<Sweep> = OnceLock::new();
    SWEEP.get_or_init(|| {
        let sweep = Sweep::over(SEEDS);
        println!("seeds {} to {}\n{sweep}", SEEDS.start(), SEEDS.end());
        sweep
    })
}

fn none(what: &str, seeds: &[u64]) {
    assert!(seeds.is_empty(), "{what}: seeds {seeds:?}");
}

#[test]
fn nine_shaping_rounds_in_ten_are_full_repeats() {
    none("fewer than nine in ten", &sweep().uneven);
}

#[test]
fn at_the_simple_end_all_shaping_rounds_are_full_repeats() {
    none("uneven at the simple end", &sweep().simple);
}

#[test]
fn numbers_of_repeats_are_few() {
    let numbers: Vec<f64> = sweep().numbers.iter().map(|&n| n as f64).collect();
    assert!(quantile(&numbers, 0.5) <= 2.0, "median {}", quantile(&numbers, 0.5));
    let (many, all) = (&sweep().many_numbers, SEEDS.count());
    println!("{} of {all} with more than four numbers: seeds {many:?}", many.len());
    assert!(100 * many.len() <= all, "more than four numbers: seeds {many:?}");
}

#[test]
fn no_round_adds_more_than_lies_flat() {
    none("above flat", &sweep().above_flat);
}

#[test]
fn slack_is_said_and_never_ripples() {
    none("slack unsaid", &sweep().slack);
    none("slack beyond 15 %", &sweep().ripples);
}

#[test]
fn no_body_of_twenty_four_has_a_lone_increase_or_decrease() {
    none("a lone shaping", &sweep().lone);
}

#[test]
fn mirrored_outlines_have_mirrored_counts() {
    none("halves that differ", &sweep().halves);
}

#[test]
fn pieces_drawn_shut_close_on_six_by_full_repeats() {
    none("other closes", &sweep().closes);
}

/// Full repeats come in few counts in a thin piece, and halves that mirror each other leave
/// half the choice: there the best pattern lies further from the best counts than hands can
/// tell. How often is printed, and held to what it is.
#[test]
fn the_default_is_mostly_within_what_hands_can_tell_of_the_best() {
    let (further, all) = (sweep().likely.len(), SEEDS.count());
    println!("{further} of {all} further than hands can tell");
    assert!(10 * further <= 4 * all, "{further} of {all}: {:?}", sweep().likely);
}

#[test]
fn the_default_takes_at_most_twelve_forecasts() {
    let most = sweep().forecasts.iter().max().copied();
    assert!(most <= Some(plumpline_core::counts::MOST_FORECASTS), "{most:?}");
}
