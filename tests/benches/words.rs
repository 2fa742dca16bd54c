//! How long written patterns take to read.
//!
//! `cargo bench --workspace --bench words`

use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use plumpline_core::pattern::read::{TermsWish, read};

fn main() {
    worst();
    divan::main();
}

const PATTERN: &str = "Body\nRnd 1: 6 sc in mr (6)\nRnd 2: inc around (12)\n\
    Rnd 3: (1 sc, inc) x 6 (18)\nRnds 4-6: sc in each st around (18)\n\
    Rnd 7: *sc 1, dec; rep from * 5 more times (12)\nStuff firmly.\nRnd 8: dec x 6 (6)\n\
    Fasten off, leaving a long tail for sewing.\n\n";

/// A megabyte of `text`, over and over.
fn megabyte(text: &str) -> String {
    text.repeat(1_000_000 / text.len() + 1)
}

#[divan::bench(name = "read 1 MB")]
fn read_megabyte(bencher: Bencher<'_, '_>) {
    let text = megabyte(PATTERN);
    bencher.bench(|| read(black_box(&text), TermsWish::Infer));
}

#[divan::bench(name = "read 1 MB in a known lexicon")]
fn read_megabyte_known(bencher: Bencher<'_, '_>) {
    let text = megabyte(PATTERN);
    bencher.bench(|| read(black_box(&text), TermsWish::Lexicon("en-us")));
}

/// Prints the worst time of a megabyte of one thing, over and over, in one line.
fn worst() {
    let things = [
        "(",
        ")",
        "*",
        "((sc)",
        "rep from * ",
        "repeat 2 times ",
        "sc in ",
        "in each ",
        "the ",
        "FLO ",
        "6 x ",
        "6 x (",
        "(sc, ",
        "*sc, (inc* ",
        "to last ",
        "Rnd 3",
        ". Rnd 3: ",
        ", ",
        "sc = ",
        "= ",
        "99999999999 ",
        "with ",
        "- ",
        "[ ]",
        "(6) ",
        "sc and in each st ",
    ];
    let took = |thing: &&str| -> (Duration, String) {
        let text = format!("Rnd 1: {}", megabyte(thing));
        let start = Instant::now();
        black_box(read(&text, TermsWish::Infer));
        (start.elapsed(), (*thing).to_owned())
    };
    let worst = things.iter().map(took).max().unwrap_or_default();
    println!("worst megabyte of one thing: {:?} of {:?}", worst.0, worst.1);
}
