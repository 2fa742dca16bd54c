//! Whatever outline a person may draw: what every plan must keep to.

use std::f64::consts::TAU;
use std::time::{Duration, Instant};

use plumpline_core::forecast::GATHERED_WIDTH;
use plumpline_core::pattern::write::Writer;
use plumpline_core::warning::WarningKind;
use plumpline_core::{Gauge, Knot, Outline, Piece, Plan, plan, words};
use plumpline_tests::any::{any_piece, rest_of};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Places where `values` turn, ends included, once waves of less than `least` are smoothed
/// away, smallest first.
fn turning_points(values: &[f64], least: f64) -> Vec<usize> {
    let last = values.len() - 1;
    let mut points: Vec<usize> = vec![0];
    for i in 1..last {
        let came = values[i] - values[*points.last().expect("it begins with one")];
        let goes = values[i + 1] - values[i];
        if came * goes < 0.0 {
            points.push(i);
        }
    }
    points.push(last);
    loop {
        let wave = |i: usize| (values[points[i + 1]] - values[points[i]]).abs();
        let smallest = (0..points.len() - 1).min_by(|&a, &b| wave(a).total_cmp(&wave(b)));
        match smallest {
            // At an end the wave is the end's own: the turn next to it stands for it.
            Some(0) if wave(0) < least && points.len() > 2 => drop(points.remove(0)),
            Some(i) if wave(i) < least && i + 2 == points.len() && i > 0 => drop(points.pop()),
            Some(i) if wave(i) < least && points.len() > 2 => drop(points.drain(i..=i + 1)),
            _ => break,
        }
    }
    let end = points.len() - 1;
    (points[0], points[end]) = (0, last);
    points
}

/// Rounds whose counts run against the stretch they lie in: (round, below, count). A round
/// that still has fewer stitches than the outline wants there runs after it, not against it:
/// rounds that lie flat reach a sharp rim late, and leave it early.
fn reversals(piece: &Piece, plan: &Plan) -> Vec<(usize, u32, u32)> {
    let rest = rest_of(piece);
    let counts = plan.counts();
    let rounds = counts.len();
    let width = piece.gauge.stitch_width_mm();
    let turns = turning_points(&rest.around_mm, width);
    // The gathered loops of a drawn end close the rest: six of half a stitch.
    let disc =
        if piece.outline.finishes_closed() { GATHERED_WIDTH * 6.0 * width / TAU } else { 0.0 };
    let worked = (rest.length_mm() - disc).max(0.5 * rest.length_mm());
    let round_at = |i: usize| rest.along_mm[i] / worked * rounds as f64;
    let mut found = Vec::new();
    for (k, pair) in (2..=rounds).zip(counts.windows(2)) {
        let (from, to) = (k as f64 - 1.0, k as f64);
        let may = |grows: bool| {
            turns.windows(2).any(|turn| {
                let rise = rest.around_mm[turn[1]] - rest.around_mm[turn[0]];
                // A piece that never changes by a stitch has no direction to keep.
                let rises = if rise.abs() < width { grows } else { rise > 0.0 };
                let shared = round_at(turn[1]).min(to) - round_at(turn[0]).max(from);
                rises == grows && shared > 1e-6
            })
        };
        let gathered = k == rounds && piece.outline.finishes_closed();
        let late = f64::from(pair[1]) <= plan.ideal[k - 1] + 1.0;
        // Where the outline falls faster than rounds lie flat, they turn early and fall until
        // it does.
        let falls = |k: usize| counts[k - 1] <= counts[k - 2];
        let narrows = |k: usize| {
            turns.windows(2).any(|t| {
                rest.around_mm[t[1]] < rest.around_mm[t[0]]
                    && round_at(t[1]).min(k as f64) - round_at(t[0]).max(k as f64 - 1.0) > 1e-6
            })
        };
        let early = late && (k..=rounds).take_while(|&k| falls(k)).any(narrows);
        let against = (pair[1] > pair[0] && !may(true) && !late)
            || (pair[1] < pair[0] && !may(false) && !early);
        if against && !gathered {
            found.push((k, pair[0], pair[1]));
        }
    }
    found
}

#[test]
fn turning_points_leave_out_small_waves() {
    let wave = [0.0, 4.0, 8.0, 7.5, 8.5, 12.0, 11.0, 7.0, 7.2, 3.0];
    assert_eq!(turning_points(&wave, 1.0), [0, 5, 9]);
    assert_eq!(turning_points(&[9.0, 5.0, 1.0], 1.0), [0, 2]);
    assert_eq!(turning_points(&[5.0, 5.9, 4.5, 10.0], 1.0), [0, 2, 3]);
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 96,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x706c_756d),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Every round can be worked on the one below, and what is placed and worded is what is
    /// counted.
    #[test]
    fn every_plan_can_be_worked(piece in any_piece()) {
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        prop_assert_eq!(plan.chain.is_none(), piece.outline.starts_closed());
        // A node a round, the start, and the pole of a disc where it is drawn shut.
        let nodes = plan.rounds.len() + 1 + usize::from(piece.outline.finishes_closed());
        prop_assert_eq!(plan.forecast.len(), nodes);
        prop_assert!(plan.forecast.iter().all(|n| n.r.is_finite() && n.z.is_finite()));
        let mut below = plan.chain;
        for (i, round) in plan.rounds.iter().enumerate() {
            prop_assert!(round.count >= 1);
            if let Some(below) = below {
                let (count, k) = (round.count, i + 1);
                prop_assert!(count <= 2 * below && below <= 2 * count, "{k}: {below}, {count}");
                prop_assert_eq!(round.placement.consumed(), below, "round {}", k);
            }
            prop_assert_eq!(round.placement.produced(), round.count, "round {}", i + 1);
            below = Some(round.count);
        }
        let mut next = 1;
        for line in &words(&plan, &piece, &Writer::bench()).lines {
            prop_assert_eq!(line.first, next);
            prop_assert!(line.last >= line.first && !line.text.is_empty());
            for k in line.first..=line.last {
                prop_assert_eq!(line.count, plan.rounds[k as usize - 1].count);
            }
            next = line.last + 1;
        }
        prop_assert_eq!(next as usize, plan.rounds.len() + 1);
        // Stuffed cloth is stretched, not burst: its strains are those of firm stuffing.
        let most = plan.counts().into_iter().chain(plan.chain).max();
        let rest = f64::from(most.expect("two rounds at least")) * plan.stitch_mm.width / TAU;
        let long = plan.stitch_mm.height * plan.rounds.len() as f64;
        let girth: f64 = plan.forecast.windows(2).map(|p| p[0].distance(p[1])).sum();
        prop_assert!(plan.size_mm.width < 3.0 * rest, "{:?} from {rest}", plan.size_mm);
        prop_assert!(girth < 1.5 * long, "{girth} from {long}");
        // Counts never reverse between the turning points of the rest circumference, unless
        // the plan says that this rule had to give way.
        let gave_way = plan.warnings.iter().any(|w| w.kind == WarningKind::Direction);
        let found = reversals(&piece, &plan);
        prop_assert!(gave_way || found.is_empty(), "{:?} in {:?}", found, plan.counts());
    }

    /// No rule asks for more stitches than the widest round would have by itself, give or
    /// take the eight that a count may stray.
    #[test]
    fn no_round_is_wider_than_the_widest_by_more_than_eight(piece in any_piece()) {
        let plan = plan(&piece).expect("a valid outline of 2 to 300 rounds");
        let widest = plan.ideal.iter().fold(0.0_f64, |most, n| most.max(*n));
        let most = plan.counts().into_iter().max().expect("two rounds at least");
        prop_assert!(f64::from(most) <= widest.max(8.0) + 9.0, "{} for {}", most, widest);
    }

    /// A plan is a pure function of its piece.
    #[test]
    fn the_same_piece_gives_the_same_plan(piece in any_piece()) {
        let [one, two] = [plan(&piece), plan(&piece.clone())]
            .map(|p| p.expect("a valid outline of 2 to 300 rounds"));
        prop_assert_eq!(&one.rounds, &two.rounds);
        prop_assert_eq!(&one.forecast, &two.forecast);
        let worded = |plan| words(plan, &piece, &Writer::bench());
        prop_assert_eq!(worded(&one), worded(&two));
        prop_assert_eq!(&one.warnings, &two.warnings);
        prop_assert_eq!(one.fit, two.fit);
    }

    /// Only the outline in stitches matters: twice the outline in twice the yarn has the
    /// same counts. Scaled by a power of two, every length is exactly twice. Asked of shapes
    /// that cloth can hold, to two stitches; elsewhere rounding decides between bad fits.
    #[test]
    fn the_same_shape_in_thicker_yarn_has_the_same_counts(
        piece in any_piece(),
        power in prop_oneof![Just(0.5), Just(2.0)],
    ) {
        let (width, height) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
        let mut scaled = piece.clone();
        scaled.outline = piece.outline.scaled(power, power);
        scaled.gauge = Gauge::of_stitch(power * width, power * height);
        let [one, two] = [plan(&piece), plan(&scaled)]
            .map(|p| p.expect("a valid outline of 2 to 300 rounds"));
        prop_assume!(one.fit.is_some_and(|fit| fit.rms_stitches < 2.0));
        prop_assert_eq!(one.chain, two.chain);
        prop_assert_eq!(one.counts(), two.counts());
        let grown = two.size_mm.height / one.size_mm.height;
        prop_assert!((grown / power - 1.0).abs() < 1e-4, "{}", grown);
    }
}

/// A knot where a hand may leave it: on the grid of the arrow keys, often level with others or
/// on the axis, sometimes a corner.
fn left_by_hand() -> impl Strategy<Value = Knot> {
    let radius = prop_oneof![1 => Just(0), 3 => 1..=160_i32];
    let height = prop_oneof![1 => 0..=4_i32, 2 => -60..=200_i32];
    (radius, height, prop::bool::weighted(0.2)).prop_map(|(radius, height, corner)| Knot {
        corner,
        ..Knot::new(0.5 * f64::from(radius), 0.5 * f64::from(height))
    })
}

proptest! {
    #![proptest_config(ProptestConfig {
        rng_seed: RngSeed::Fixed(0x6861_6e64),
        ..ProptestConfig::with_cases(400)
    })]

    /// Folded flat, crossed, pressed together: refused, or planned without much ado. A fold
    /// once asked for all the memory there is.
    #[test]
    fn however_knots_are_left_the_answer_comes_soon(
        knots in prop::collection::vec(left_by_hand(), 2..8),
        level in prop::bool::weighted(0.2),
    ) {
        let level_at = knots[0].height_mm;
        let knots = knots.into_iter().map(|knot| Knot {
            height_mm: if level { level_at } else { knot.height_mm },
            ..knot
        });
        let piece = Piece::new("Any", Outline { knots: knots.collect() }, Gauge::default());
        let began = Instant::now();
        if piece.validate().is_ok()
            && let Ok(plan) = plan(&piece)
        {
            prop_assert!(plan.forecast.iter().all(|n| n.r.is_finite() && n.z.is_finite()));
        }
        // Fifty milliseconds where the model is optimised; this tells what has no end.
        prop_assert!(began.elapsed() < Duration::from_secs(20), "{:?}", began.elapsed());
    }
}
