//! Even spreads against the list in Toussaint, “The Euclidean algorithm generates
//! traditional musical rhythms”, BRIDGES 2005: x an onset, . a rest. Rhythms are compared
//! as necklaces, that is up to where they begin.

use plumpline_core::Spread;
use plumpline_core::placement::{Placement, Placer, Stitch, even_gaps};

/// (onsets, places, rhythm) as printed. E(5,16) is apart: see its test.
const PRINTED: [(u32, u32, &str); 21] = [
    (2, 3, "x.x"),
    (2, 5, "x.x.."),
    (3, 4, "x.xx"),
    (3, 5, "x.x.x"),
    (3, 7, "x.x.x.."),
    (3, 8, "x..x..x."),
    (4, 7, "x.x.x.x"),
    (4, 9, "x.x.x.x.."),
    (4, 11, "x..x..x..x."),
    (5, 6, "x.xxxx"),
    (5, 7, "x.xx.xx"),
    (5, 8, "x.xx.xx."),
    (5, 9, "x.x.x.x.x"),
    (5, 11, "x.x.x.x.x.."),
    (5, 12, "x..x.x..x.x."),
    (7, 8, "x.xxxxxx"),
    (7, 12, "x.xx.x.xx.x."),
    (7, 16, "x..x.x.x..x.x.x."),
    (9, 16, "x.xx.x.x.xx.x.x."),
    (11, 24, "x..x.x.x.x.x..x.x.x.x.x."),
    (13, 24, "x.xx.x.x.x.x.xx.x.x.x.x."),
];

fn same_necklace(a: &str, b: &str) -> bool {
    a.len() == b.len() && format!("{a}{a}").contains(b)
}

fn rhythm(gaps: impl Iterator<Item = u32>) -> String {
    gaps.map(|gap| format!("x{}", ".".repeat(gap as usize - 1))).collect()
}

/// A round in the places of the round below: a decrease takes two of them.
fn worked(round: &Placement) -> String {
    let code = |stitch| match stitch {
        Stitch::Plain => ".",
        Stitch::Increase => "x",
        Stitch::Decrease => "x.",
    };
    round.stitches().map(code).collect()
}

#[test]
fn gaps_follow_the_printed_rhythms() {
    for (onsets, places, printed) in PRINTED {
        let ours = rhythm(even_gaps(onsets, places));
        assert!(same_necklace(&ours, printed), "E({onsets},{places}): {ours}, {printed}");
    }
}

#[test]
fn increases_and_decreases_follow_them_however_they_are_turned() {
    for spread in [Spread::Turned, Spread::Stacked] {
        for (onsets, places, printed) in PRINTED {
            let mut placer = Placer::new(spread, 0.17);
            for _ in 0..4 {
                let ours = worked(&placer.place(places, places + onsets));
                assert!(same_necklace(&ours, printed), "inc {onsets} in {places}: {ours}");
            }
            if 2 * onsets <= places {
                for _ in 0..4 {
                    let ours = worked(&placer.place(places, places - onsets));
                    assert!(same_necklace(&ours, printed), "dec {onsets} in {places}: {ours}");
                }
            }
        }
    }
}

/// E(5,16) is printed with one rest too many, seventeen places; the paper's own text has it
/// right, with four gaps of three and one of four.
#[test]
fn the_misprinted_rhythm_is_not_matched_and_the_right_one_is() {
    let ours = rhythm(even_gaps(5, 16));
    let misprint = "x..x..x..x..x....";
    assert_eq!((ours.len(), misprint.len()), (16, 17));
    assert!(!same_necklace(&ours, misprint));
    assert!(same_necklace(&ours, "x..x..x..x..x..."), "{ours}");
    assert!(same_necklace(&ours, "x..x..x...x..x.."), "{ours}");
}

/// As even as can be: any two stretches of equal length hold onset counts that differ by at
/// most one.
#[test]
fn no_stretch_is_fuller_than_another_by_more_than_one() {
    for places in 2..40_u32 {
        for onsets in 1..=places {
            let round = rhythm(even_gaps(onsets, places));
            let twice: Vec<u32> =
                round.bytes().chain(round.bytes()).map(|c| u32::from(c == b'x')).collect();
            for length in 1..places as usize {
                let held = twice.windows(length).take(places as usize);
                let held: Vec<u32> = held.map(|w| w.iter().sum()).collect();
                let (low, high) = (held.iter().min(), held.iter().max());
                assert!(high <= low.map(|l| l + 1).as_ref(), "{onsets} in {places}");
            }
        }
    }
}
