//! Anneals the faithful answer of random outlines and prints how much better it finds:
//! `anneal [FIRST LAST [FORECASTS]]`, seeds 401 to 440 with 25,000 forecasts if left out;
//! `anneal set` anneals the fit set. Run by hand: it takes minutes.

use plumpline_core::{Piece, plan};
use plumpline_tests::anneal::anneal;
use plumpline_tests::drawn::drawn;
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::sweep::quantile;

fn main() {
    let numbers: Vec<u64> = std::env::args().skip(1).filter_map(|a| a.parse().ok()).collect();
    let at = |i: usize, usual: u64| numbers.get(i).copied().unwrap_or(usual);
    let (first, last, forecasts) = (at(0, 401), at(1, 440), at(2, 25_000));
    let mut gains = Vec::new();
    let pieces: Vec<Piece> = if std::env::args().any(|a| a == "set") {
        SHAPES.iter().map(|shape| shape.piece(0.0, 1.0)).collect()
    } else {
        (first..=last).map(|seed| drawn(seed).piece).collect()
    };
    for (seed, piece) in (first..).zip(pieces) {
        let piece = Piece { simplicity: Some(0.0), ..piece };
        let plan = plan(&piece).expect("a drawn outline can be planned");
        let Some(found) = anneal(&piece, &plan, forecasts as usize, seed) else {
            println!("{:14} a rule gave way: left out", piece.name);
            continue;
        };
        let gain = found.before - found.after;
        println!(
            "{:14} {:3} rounds: {:.4} → {:.4}, {gain:.4} better",
            piece.name,
            plan.rounds.len(),
            found.before,
            found.after
        );
        if gain > 0.006 {
            println!("    {:?}\n    {:?}", plan.counts(), found.counts);
        }
        gains.push(gain);
    }
    println!(
        "{} outlines, {forecasts} forecasts each: median {:.4}, nine in ten {:.4}, most {:.4}",
        gains.len(),
        quantile(&gains, 0.5),
        quantile(&gains, 0.9),
        quantile(&gains, 1.0)
    );
}
