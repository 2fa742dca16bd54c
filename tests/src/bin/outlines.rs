//! Prints how rounds read over random outlines: `outlines [FIRST LAST] [-v]`, seeds 1 to 300
//! if left out; `-v` names every piece with a fault, and its counts.

use plumpline_core::Piece;
use plumpline_tests::sweep::{Sweep, Swept};

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let numbers: Vec<u64> = arguments.iter().filter_map(|a| a.parse().ok()).collect();
    let (first, last) = match numbers.as_slice() {
        [first, last] => (*first, *last),
        _ => (1, 300),
    };
    let mut sweep = Sweep::default();
    let verbose = arguments.iter().any(|a| a == "-v");
    for seed in first..=last {
        let swept = Swept::of(seed);
        if verbose && !(swept.faults.is_empty() && swept.simple_faults.is_empty()) {
            let Piece { gauge, firmness, .. } = &swept.drawn.piece;
            println!(
                "{} ({} × {}, {}): {}{}",
                swept.drawn.piece.name,
                gauge.stitches,
                gauge.rounds,
                firmness.0,
                swept.faults.join("; "),
                if swept.simple_faults.is_empty() {
                    String::new()
                } else {
                    format!(" | simple end: {}", swept.simple_faults.join("; "))
                }
            );
            println!("    {:?}", swept.counts);
        }
        sweep.add(&swept);
    }
    println!("seeds {first} to {last}");
    print!("{sweep}");
}
