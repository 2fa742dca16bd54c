//! Charts: every stitch of the plan is on them, in its place, and they run the way the
//! trade's charts run.

use std::collections::BTreeMap;

use plumpline_core::counts::Start;
use plumpline_core::pattern::write::Writer;
use plumpline_core::picture::chart::{
    Chart, ChartLook, Charts, LEAST_SCALE, PAGE_MM, Shown, charts,
};
use plumpline_core::placement::Stitch;
use plumpline_core::{Gauge, Hand, Knot, Outline, Piece, Plan, Rules, Working, plan};
use plumpline_tests::any::any_piece;
use proptest::prelude::*;

fn ball(diameter: f64) -> Piece {
    let r = diameter / 2.0;
    let outline =
        Outline { knots: vec![Knot::new(0.0, 0.0), Knot::new(r, r), Knot::new(0.0, diameter)] };
    Piece::new("Ball", outline, Gauge::default())
}

fn drawn(piece: &Piece) -> (Plan, Charts) {
    let plan = plan(piece).expect("a plan");
    let yarns = [("A".to_owned(), [184, 86, 64])];
    let writer = Writer::bench();
    let look = ChartLook { single: Default::default(), yarns: &yarns, writer: &writer };
    let charts = charts(piece, &plan, &look);
    (plan, charts)
}

/// A ring by its round: its stitches and where each stands.
type Ring = (u32, Vec<(Stitch, [f32; 2])>);

/// The rounds of a chart that have a ring of their own, each with its stitches.
fn rings(chart: &Chart) -> Vec<Ring> {
    let mut rings: Vec<Ring> = Vec::new();
    for symbol in &chart.symbols {
        match rings.last_mut() {
            Some((round, ring)) if *round == symbol.round => {
                ring.push((symbol.stitch, symbol.at))
            }
            _ => rings.push((symbol.round, vec![(symbol.stitch, symbol.at)])),
        }
    }
    rings
}

fn every_stitch_is_there(plan: &Plan, all: &Charts) {
    for chart in all.charts.iter().filter(|c| c.shown == Shown::Whole) {
        for (round, ring) in rings(chart) {
            let placed: Vec<Stitch> =
                plan.rounds[round as usize - 1].placement.stitches().collect();
            let shown: Vec<Stitch> = ring.iter().map(|(stitch, _)| *stitch).collect();
            assert_eq!(shown, placed, "round {round}");
        }
    }
}

/// Turns from the first of `ring` to its second about the middle, clockwise on paper.
fn clockwise(ring: &[(Stitch, [f32; 2])]) -> f32 {
    let angle = |[x, y]: [f32; 2]| y.atan2(x);
    let turn = angle(ring[1].1) - angle(ring[0].1);
    (turn / std::f32::consts::TAU + 0.5).rem_euclid(1.0) - 0.5
}

#[test]
fn a_ball_has_a_start_chart_and_a_closing_chart() {
    let (plan, all) = drawn(&ball(60.0));
    assert_eq!(all.charts.len(), 2, "{:?}", all.remarks);
    let (start, closing) = (&all.charts[0], &all.charts[1]);
    assert_eq!((start.inward, closing.inward), (false, true));
    assert_eq!(closing.last as usize, plan.rounds.len());
    assert_eq!(start.last + 1, closing.first);
    every_stitch_is_there(&plan, &all);
    // Outward and inward: each ring farther from, or nearer to, the middle than the last.
    for (chart, grows) in [(start, 1.0), (closing, -1.0)] {
        let radii: Vec<f32> =
            rings(chart).iter().map(|(_, ring)| ring[0].1[0].hypot(ring[0].1[1])).collect();
        assert!(radii.windows(2).all(|w| grows * (w[1] - w[0]) > 1.0), "{radii:?}");
    }
}

#[test]
fn right_handers_start_counter_clockwise_from_the_left_and_left_handers_mirror() {
    for (hand, start_way) in [(Hand::Right, -1.0), (Hand::Left, 1.0)] {
        let mut piece = ball(60.0);
        piece.hand = hand;
        let (_, all) = drawn(&piece);
        for (chart, way) in [(&all.charts[0], start_way), (&all.charts[1], -start_way)] {
            assert_eq!(chart.clockwise, way > 0.0);
            for (round, ring) in rings(chart).into_iter().filter(|(_, ring)| ring.len() > 5) {
                let turn = clockwise(&ring);
                assert!(way * turn > 0.0, "round {round}, {hand:?}: {turn}");
            }
            // The seam of the first ring is at the top; its first stitch is beside it, on
            // the side the rounds run to.
            let (_, first) = &rings(chart)[0];
            assert!(way * first[0].1[0] > 0.0 && first[0].1[1] < 0.0, "{:?}", first[0]);
        }
    }
}

#[test]
fn the_lean_of_a_spiral_is_drawn_as_it_is_placed() {
    let mut straight = ball(60.0);
    straight.rules = Rules { spiral_drift: 0.0, ..Rules::default() };
    let mut leaning = straight.clone();
    leaning.rules.spiral_drift = 0.5;
    let first_at = |piece: &Piece| {
        let (_, all) = drawn(piece);
        let rings = rings(&all.charts[0]);
        let [x, y] = rings[6].1[0].1;
        // From the top, counter-clockwise, in turns.
        ((-x).atan2(-y) / std::f32::consts::TAU).rem_euclid(1.0)
    };
    let (plan, _) = drawn(&leaning);
    // Round 2 is placed first, so six rounds of half a stitch come before round 8's place;
    // round 7's ring is the seventh.
    let counts = plan.counts();
    let lean: f64 = counts[0..5].iter().map(|&n| 0.5 / f64::from(n)).sum();
    let turned = f64::from(first_at(&leaning) - first_at(&straight));
    assert!((turned - lean).abs() < 0.04, "turned {turned}, leans {lean}");
}

#[test]
fn chains_ovals_and_joined_rounds_are_drawn() {
    let mut open = ball(60.0);
    open.outline = Outline {
        knots: vec![Knot::new(20.0, 0.0), Knot::new(30.0, 30.0), Knot::new(0.0, 60.0)],
    };
    let (plan, all) = drawn(&open);
    assert!(matches!(plan.start, Start::Chain(_)));
    assert!(all.key.iter().any(|entry| entry.text == "ch"), "{:?}", all.remarks);
    every_stitch_is_there(&plan, &all);

    let mut oval = ball(60.0);
    oval.straight_mm = 30.0;
    let (plan, all) = drawn(&oval);
    assert!(matches!(plan.start, Start::Oval(_)));
    assert!(!all.charts.is_empty(), "{:?}", all.remarks);
    every_stitch_is_there(&plan, &all);

    let mut joined = ball(60.0);
    joined.working = Working::Joined { chain_counts: false };
    let (plan, all) = drawn(&joined);
    assert!(all.key.iter().any(|entry| entry.text == "sl st, joining"));
    every_stitch_is_there(&plan, &all);
}

#[test]
fn wide_rounds_are_shown_as_one_repeat_or_left_to_words() {
    let (plan, all) = drawn(&ball(420.0));
    let most = plan.counts().into_iter().max().expect("rounds");
    assert!(most > 250, "{most}");
    let repeats = all.charts.iter().filter(|c| matches!(c.shown, Shown::OneOf(_))).count();
    assert!(repeats > 0 || !all.remarks.is_empty());
    for chart in &all.charts {
        if let Shown::OneOf(n) = chart.shown {
            for (round, ring) in rings(chart) {
                let stitches: u32 = ring.iter().map(|(stitch, _)| stitch.produces()).sum();
                assert_eq!(
                    stitches * n,
                    plan.rounds[round as usize - 1].count,
                    "round {round}"
                );
            }
        }
    }
}

/// A round too long for a page and without a repeat is split into arcs, and every stitch of it
/// stands on one of them, in working order.
#[test]
fn a_long_round_without_a_repeat_is_split_into_arcs() {
    let mut odd = ball(420.0);
    // Neighbours without a common divisor have no repeat in common.
    odd.pins = (1..400).map(|k| (k, if k % 2 == 0 { 307 } else { 311 })).collect();
    odd.pins.retain(|round, _| (50..60).contains(round));
    let (plan, all) = drawn(&odd);
    let arcs: Vec<&Chart> =
        all.charts.iter().filter(|c| matches!(c.shown, Shown::Arc { .. })).collect();
    assert!(arcs.len() >= 2, "{:?}: {:?}", plan.counts(), all.remarks);
    let mut by_part: BTreeMap<u32, Vec<&Chart>> = BTreeMap::new();
    for chart in arcs {
        let [wide, tall] = chart.size_mm();
        assert!(wide * LEAST_SCALE <= PAGE_MM && tall * LEAST_SCALE < 235.0, "{wide} × {tall}");
        by_part.entry(chart.first).or_default().push(chart);
    }
    for arcs in by_part.values() {
        let mut shown: BTreeMap<u32, Vec<Stitch>> = BTreeMap::new();
        for (number, chart) in (1..).zip(arcs) {
            assert!(chart.caption.contains(&format!("part {number} of {}", arcs.len())));
            for (round, ring) in rings(chart) {
                shown.entry(round).or_default().extend(ring.iter().map(|(stitch, _)| *stitch));
            }
        }
        for (round, shown) in shown {
            let placed: Vec<Stitch> =
                plan.rounds[round as usize - 1].placement.stitches().collect();
            assert_eq!(shown, placed, "round {round}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// Whatever the piece: no chart is too large for a page, no symbol lies on another of its
    /// ring, and what is not drawn is said.
    #[test]
    fn charts_of_any_piece_can_be_read(piece in any_piece()) {
        let (plan, all) = drawn(&piece);
        every_stitch_is_there(&plan, &all);
        let mut on_charts = vec![false; plan.rounds.len()];
        for chart in &all.charts {
            let [wide, _] = chart.size_mm();
            prop_assert!(wide * LEAST_SCALE <= PAGE_MM, "{wide} mm");
            on_charts[chart.first as usize - 1..chart.last as usize].fill(true);
            for (round, ring) in rings(chart) {
                for pair in ring.windows(2) {
                    let [a, b] = [pair[0].1, pair[1].1];
                    let apart = (a[0] - b[0]).hypot(a[1] - b[1]);
                    prop_assert!(apart > 1.8, "round {round}: {apart} mm apart");
                }
            }
        }
        prop_assert!(on_charts.iter().all(|&on| on) || !all.remarks.is_empty());
    }
}
