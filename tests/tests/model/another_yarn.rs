//! Another yarn: the rounds kept, or the size kept.

use std::path::Path;

use plumpline_core::another_yarn::compare;
use plumpline_core::{Gauge, file, plan};

#[test]
fn the_rounds_are_kept_or_the_size_is_on_every_sample() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    for name in ["acorn", "float", "pear", "pebble"] {
        let project = file::load(&folder.join(format!("{name}.ron"))).expect("it loads");
        for piece in &project.pieces {
            for (stitches, rounds) in [(16.0, 17.0), (28.0, 33.0), (20.0, 19.0)] {
                let gauge = Gauge::per(stitches, rounds, 100.0);
                let both = compare(piece, gauge).expect("a comparison");
                let (kept, made) = both.same_rounds.expect("the same rounds");
                assert_eq!(made.counts(), both.now.counts(), "{name} {stitches}");
                assert_eq!(plan(&kept).expect("it plans").counts(), made.counts());
                let wider = gauge.stitch_width_mm() / piece.gauge.stitch_width_mm();
                let ratio = made.size_mm.width / both.now.size_mm.width;
                assert!((ratio / wider - 1.0).abs() < 0.06, "{name}: {ratio} of {wider}");
                let size = both.same_size.expect("the same size");
                let off = (size.plan.size_mm.height - both.now.size_mm.height).abs();
                assert!(off <= size.wanted.expect("a height").tolerance_mm(&gauge), "{name}");
                assert_ne!(size.plan.counts(), both.now.counts());
            }
        }
    }
}

#[test]
fn in_the_same_yarn_nothing_changes() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let project = file::load(&folder.join("pear.ron")).expect("it loads");
    let piece = &project.pieces[0];
    let both = compare(piece, piece.gauge).expect("a comparison");
    let (_, rounds) = both.same_rounds.expect("the same rounds");
    let size = both.same_size.expect("the same size");
    assert_eq!(rounds.counts(), both.now.counts());
    assert!((rounds.size_mm.height - both.now.size_mm.height).abs() < 0.01);
    assert_eq!(size.plan.counts(), both.now.counts());
    assert!(compare(piece, Gauge::of_stitch(0.0, 4.0)).is_err());
}
