//! Level bases: a card and a sewn edge hold them, and where nothing does the plan says so.

use plumpline_core::warning::WarningKind::{self, Corner, Flat, Misfit, Wrinkle};
use plumpline_core::{Firmness, Gauge, Hold, Knot, Outline, Piece, Plan, plan};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

prop_compose! {
    /// A cushion: a level base with a sharp edge, bulging sides and a rounded top.
    fn cushions()(
        base in 25.0..50.0_f64,
        bulge in 1.12..1.25_f64,
        height in 1.3..1.6_f64,
        width in 4.0..6.0_f64,
        firmness in 0.04..0.1_f64,
        simplicity in 0.0..1.0_f64,
    ) -> Option<Piece> {
        let tall = base * height;
        let outline = Outline::new(vec![
            Knot { card: true, ..Knot::new(0.0, 0.0) },
            Knot { hold: Some(Hold::Sewn), ..Knot::corner(base, 0.0) },
            Knot::new(base * bulge, 0.36 * tall),
            Knot::new(0.74 * base, 0.84 * tall),
            Knot::new(0.0, tall),
        ]);
        let mut piece = Piece::new("cushion", outline.ok()?, Gauge::of_stitch(width, width));
        piece.firmness = Firmness(firmness);
        piece.simplicity = Some(simplicity);
        Some(piece)
    }
}

/// Rounds that lie on the base: those whose edges the outline wants within its radius.
fn base_rounds(piece: &Piece) -> usize {
    let radius = piece.outline.knots[1].radius_mm;
    (radius / piece.gauge.round_height_mm()).round() as usize
}

fn unheld(piece: &Piece) -> Piece {
    let mut piece = piece.clone();
    for knot in &mut piece.outline.knots {
        (knot.card, knot.hold) = (false, None);
    }
    piece
}

fn flagged(plan: &Plan, within: u32) -> Vec<WarningKind> {
    let there = plan.warnings.iter().filter(|w| w.rounds.first().is_some_and(|&k| k <= within));
    there
        .map(|w| w.kind)
        .filter(|kind| matches!(kind, Corner | Misfit | Flat | Wrinkle))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 96,
        rng_seed: RngSeed::Fixed(0x6361_7264),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn a_card_keeps_the_base_level_and_without_it_the_plan_says_so(
        piece in cushions().prop_filter_map("no outline", |piece| piece),
    ) {
        let held = plan(&piece).expect("a cushion can be planned");
        // The edge may fall between two rounds: those well within the base are level.
        let level = base_rounds(&piece) - 1;
        let z: Vec<f64> = held.forecast[..=level].iter().map(|n| n.z).collect();
        let (low, high) = z.iter().fold((z[0], z[0]), |(l, h), z| (l.min(*z), h.max(*z)));
        prop_assert!(high - low <= 0.05, "{:?}", z);
        prop_assert!(flagged(&held, level as u32).is_empty(), "{:?}", held.warnings);

        let loose = plan(&unheld(&piece)).expect("a cushion can be planned");
        let z = loose.forecast[..=level].iter().map(|n| n.z);
        let low = z.fold(f64::INFINITY, f64::min);
        prop_assert!(loose.forecast[0].z - low > 0.5 || loose.forecast[level].z > 0.5);
        prop_assert!(!flagged(&loose, level as u32 + 2).is_empty(), "{:?}", loose.warnings);
    }
}
