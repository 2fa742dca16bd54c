//! Ovals: a straight part between two half rounds, worked on both sides of a chain.

use std::f64::consts::PI;

use plumpline_core::counts::Start;
use plumpline_core::pattern::write::Writer;
use plumpline_core::placement::Stitch;
use plumpline_core::warning::WarningKind;
use plumpline_core::{Piece, Plan, plan};
use plumpline_tests::any::{any_piece, rest_of};
use plumpline_tests::fit_set::SHAPES;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// The ball of the fit set with a straight part, mm.
fn long_ball(straight_mm: f64) -> (Piece, Plan) {
    let mut piece = SHAPES[0].piece(None, 1.0);
    piece.straight_mm = straight_mm;
    let plan = plan(&piece).expect("an oval ball can be planned");
    (piece, plan)
}

/// Area of a stadium: half discs of radius `r` a straight `side` apart, by the shoelace
/// formula over a polygon of so many corners that its sagitta does not matter.
fn stadium_mm2(r: f64, side: f64) -> f64 {
    const CORNERS: u32 = 240;
    let corner = |i: u32| {
        let turn = 2.0 * PI * (f64::from(i) + 0.5) / f64::from(CORNERS);
        let (x, y) = (r * turn.cos(), r * turn.sin());
        (x + 0.5 * side * if x >= 0.0 { 1.0 } else { -1.0 }, y)
    };
    let cross = |i: u32| {
        let ((ax, ay), (bx, by)) = (corner(i), corner((i + 1) % CORNERS));
        0.5 * (ax * by - bx * ay)
    };
    (0..CORNERS).map(cross).sum()
}

/// Volume of a forecast by slices, ml.
fn sliced_ml(plan: &Plan, side: f64) -> f64 {
    const SLICES: u32 = 24;
    let band = |pair: &[plumpline_core::Rz]| {
        let (a, b) = (pair[0], pair[1]);
        let slice = |i: u32| {
            let u = (f64::from(i) + 0.5) / f64::from(SLICES);
            stadium_mm2(a.r + u * (b.r - a.r), side) * (b.z - a.z) / f64::from(SLICES)
        };
        (0..SLICES).map(slice).sum::<f64>()
    };
    plan.forecast.windows(2).map(band).sum::<f64>() / 1000.0
}

#[test]
fn an_oval_holds_what_its_slices_add_up_to() {
    for straight in [4.6, 20.0, 60.0, 150.0] {
        let (_, plan) = long_ball(straight);
        let sliced = sliced_ml(&plan, straight);
        println!("{straight} mm: {:.2} ml, sliced {sliced:.2} ml", plan.estimate.volume_ml);
        assert!((plan.estimate.volume_ml / sliced - 1.0).abs() < 1e-3, "{straight} mm");
    }
}

#[test]
fn an_oval_is_as_wide_as_its_ends_and_its_straight_part_together() {
    for straight in [4.6, 20.0, 60.0, 150.0] {
        let (_, plan) = long_ball(straight);
        let r = plan.forecast.iter().fold(0.0_f64, |most, n| most.max(n.r));
        let depth = plan.depth_mm.expect("an oval has a depth");
        assert!((depth - 2.0 * r).abs() < 1e-9, "{depth}, {r}");
        assert!((plan.size_mm.width - 2.0 * r - straight).abs() < 1e-9, "{:?}", plan.size_mm);
        assert!(
            plan.warnings.iter().any(|w| w.kind == WarningKind::Oval),
            "marked as approximate"
        );
    }
    let (_, round) = long_ball(0.0);
    assert_eq!((round.depth_mm, round.start), (None, Start::Ring));
}

/// Where a round of an oval is shaped, in stitches of the round below: whether each shaping
/// stitch lies in a half round. A round begins with a half round, then a side.
fn shaped_only_at_the_ends(stitches: &[Stitch], below: u32, side: u32) -> bool {
    let half = below / 2;
    let arc = half - side;
    let mut at = 0;
    stitches.iter().all(|stitch| {
        let takes = if *stitch == Stitch::Decrease { 2 } else { 1 };
        let place = at % half;
        at += takes;
        *stitch == Stitch::Plain || place + takes <= arc
    })
}

/// What every oval must keep to.
fn check(piece: &Piece, plan: &Plan) -> Result<(), String> {
    let Start::Oval(chain) = plan.start else {
        return Err(format!("begins with {:?}", plan.start));
    };
    let width = piece.gauge.stitch_width_mm();
    let side = chain - 1;
    // A chain has two stitches at least.
    let straight = piece.straight_mm.max(width);
    if (f64::from(side) * width - straight).abs() > 0.5 * width + 1e-9 {
        return Err(format!("sides of {side} stitches for {} mm", piece.straight_mm));
    }
    let mut below: Option<u32> = None;
    for (k, round) in (1..).zip(&plan.rounds) {
        let stitches: Vec<Stitch> = round.placement.stitches().collect();
        let takes: u32 = stitches.iter().map(|s| s.consumes()).sum();
        let leaves: u32 = stitches.iter().map(|s| s.produces()).sum();
        if round.count % 2 != 0 {
            return Err(format!("round {k}: {} stitches", round.count));
        }
        if leaves != round.count || below.is_some_and(|below| below != takes) {
            return Err(format!(
                "round {k}: {takes} → {leaves} of {}, on {below:?}",
                round.count
            ));
        }
        if below.is_some_and(|below| !shaped_only_at_the_ends(&stitches, below, side)) {
            return Err(format!("round {k} shapes a side of {side}: {stitches:?}"));
        }
        let half = stitches.len() / 2;
        if below.is_some() && stitches[..half] != stitches[half..] {
            return Err(format!("round {k}: its halves differ, {stitches:?}"));
        }
        below = Some(round.count);
    }
    Ok(())
}

#[test]
fn an_oval_is_worked_along_both_sides_of_its_chain() {
    for straight in [20.0, 60.0, 150.0] {
        let (piece, plan) = long_ball(straight);
        assert_eq!(check(&piece, &plan), Ok(()));
        let Start::Oval(chain) = plan.start else { unreachable!("checked above") };
        let chains = format!("Ch {}.", chain + 1);
        let words = plumpline_core::words(&plan, &piece, &Writer::bench());
        assert!(words.opening.contains(&chains), "{:?}", words.opening);
        let first = &words.lines[0];
        assert!(first.text.contains("in 2nd ch from hook"), "{}", first.text);
        assert!(first.text.contains("along the other side of the chain"), "{}", first.text);
        // Every number but the ordinal counts stitches; one side is worked each way.
        let words: Vec<&str> = first.text.split([' ', ',']).filter(|w| !w.is_empty()).collect();
        let said = words.iter().filter_map(|word| word.parse::<u32>().ok()).sum::<u32>();
        let lone = first.text.split(", ").filter(|part| part.ends_with("sc")).count() as u32;
        assert_eq!(said + lone, first.count, "{}", first.text);
    }
}

prop_compose! {
    /// Any closed-started outline with a straight part of one to thirty stitches.
    fn ovals()(
        piece in any_piece().prop_filter("open", |piece| piece.outline.starts_closed()),
        stitches in 1.0..30.0_f64,
        pins in prop::collection::btree_map(1_u32..20, 3_u32..120, 0..3),
    ) -> Option<Piece> {
        let mut piece = piece;
        piece.pins = pins;
        piece.straight_mm = stitches * piece.gauge.stitch_width_mm();
        let rounds = rest_of(&piece).length_mm() / piece.gauge.round_height_mm();
        (2.0..300.0).contains(&rounds).then_some(piece)
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 128,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x6f76_616c),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Counts are even and add up, halves are alike, sides stay plain.
    #[test]
    fn ovals_are_even_and_shaped_only_at_their_ends(
        piece in ovals().prop_filter_map("too many rounds", |piece| piece),
    ) {
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        prop_assert_eq!(check(&piece, &plan), Ok(()), "{:?}", plan.counts());
        let sliced = sliced_ml(&plan, piece.straight_mm);
        let off = (plan.estimate.volume_ml - sliced).abs();
        prop_assert!(off <= 1e-3 * sliced.abs() + 1e-6, "{} {}", plan.estimate.volume_ml, sliced);
    }
}
