//! What the trade knows of flat rounds and of balls, and why it is so.

use std::f64::consts::{PI, TAU};

use plumpline_core::bend::{BendWord, bends};
use plumpline_core::counts::slack::FREE_SLACK;
use plumpline_core::forecast::{Cloth, Energy, Finish, GATHERED_WIDTH, Skin, settle};
use plumpline_core::placement::Stitch;
use plumpline_core::{Firmness, Gauge, Piece, plan};
use plumpline_tests::shapes::spheroid;

/// A circle's circumference grows by 2π for every unit of radius: 2πh/w stitches a round.
#[test]
fn flat_rounds_gain_two_pi_heights_over_a_width() {
    let square = Gauge::of_stitch(5.0, 5.0).flat_increase();
    assert!((square - TAU).abs() < 1e-12);
    // Exact flat counts for square stitches, round(2πn).
    let counts: Vec<f64> = (1..=8).map(|n| (square * f64::from(n)).round()).collect();
    assert_eq!(counts, [6.0, 13.0, 19.0, 25.0, 31.0, 38.0, 44.0, 50.0]);
    // Six a round lies flat where a round is 3/π of a stitch high.
    let flat_at_six = Gauge::of_stitch(4.0, 4.0 * 3.0 / PI).flat_increase();
    assert!((flat_at_six - 6.0).abs() < 1e-12);
    // A printed gauge, 14 sc × 16 rows to 4 inches: 2π·7/8.
    let printed = Gauge::per(14.0, 16.0, 101.6).flat_increase();
    assert!((printed - TAU * 0.875).abs() < 1e-12);
}

#[test]
fn the_bend_words_follow_the_flat_increase() {
    let word = |below: u32, count: u32, flat: f64| bends(below, &[count], &[], flat)[0].word;
    for (count, expected) in [
        (24, BendWord::DrawIn),
        (30, BendWord::Straight),
        (33, BendWord::Cup),
        (36, BendWord::Flat),
        (40, BendWord::Ruffle),
    ] {
        assert_eq!(word(30, count, TAU), expected, "30 to {count}");
    }
    // Half as high a round needs half the increase.
    assert_eq!(word(30, 33, TAU / 2.0), BendWord::Flat);
    assert_eq!(word(30, 36, TAU / 2.0), BendWord::Ruffle);
}

/// Rounds of square stitches that gain six, unstuffed, from a shape pushed out of place.
fn cone_of_sixes(rounds: u32) -> Vec<plumpline_core::Rz> {
    let width = 5.0;
    let skin = Skin::new(
        0.0,
        (1..=rounds).map(|k| f64::from(6 * k) * width).collect(),
        vec![width; rounds as usize],
        Finish::Open,
        Cloth::default(),
    );
    let energy = Energy::new(&skin, 0.0);
    let mut start = energy.flatten(&skin.slack_shape());
    let held = start.len() - 2;
    for (i, x) in start.iter_mut().enumerate() {
        if i != held {
            *x *= if i % 2 == 0 { 0.97 } else { 1.2 };
        }
    }
    let settled = settle(&energy, &start, 1e-10);
    assert!(settled.residual <= 1e-10, "{settled:?}");
    settled.nodes
}

/// Six a round instead of 2π leaves a cone: sin(half apex) = 6/2π, 72.7325641°, and 2π − 6
/// = 0.2831853072 rad missing around its tip.
#[test]
fn six_a_round_makes_the_shallow_cone() {
    let nodes = cone_of_sixes(20);
    for pair in nodes.windows(2) {
        let length = pair[0].distance(pair[1]);
        let sine = (pair[1].r - pair[0].r) / length;
        assert!((sine.asin().to_degrees() - 72.732_564_1).abs() < 1e-6, "{pair:?}");
        let missing = TAU - TAU * sine;
        assert!((missing - 0.283_185_307_18).abs() < 1e-7, "{missing}");
    }
}

/// A ball's rounds follow the sine of colatitude, and Σ N sin((i − ½)π/n) over n rounds is
/// N/sin(π/2n) exactly: 36/sin 5° = 413.053676844 for 36 at the equator of 18 rounds.
fn ball_sum(equator: f64, rounds: f64) -> f64 {
    equator / (PI / (2.0 * rounds)).sin()
}

#[test]
fn the_sine_sum_has_its_closed_form() {
    for (equator, rounds) in [(24.0, 12), (36.0, 18), (48.0, 24)] {
        let sum: f64 = (1..=rounds)
            .map(|i| equator * ((f64::from(i) - 0.5) * PI / f64::from(rounds)).sin())
            .sum();
        assert!((sum - ball_sum(equator, f64::from(rounds))).abs() < 1e-9, "{equator}");
    }
    assert!((ball_sum(36.0, 18.0) - 413.053_676_844_115).abs() < 1e-9);
}

/// Balls of square stitches, hardly stretched: the trade's recipe has twice as many stitches
/// at the equator as rounds. Each of n rounds may be half a stitch out, and the gathered
/// round is worked where the sine is 0.
#[test]
fn planned_balls_have_the_stitches_of_the_sine_sum() {
    for rounds in [18.0, 36.0, 60.0] {
        let (width, strain) = (5.0, Firmness::LEAST);
        let radius = width * rounds / PI * (1.0 + strain);
        let gauge = Gauge::of_stitch(width, width);
        let mut piece = Piece::new("ball", spheroid(radius, radius, 24), gauge);
        piece.firmness = Firmness(strain);
        piece.simplicity = Some(0.0);
        let plan = plan(&piece).expect("a ball can be planned");
        let worked = plan.rounds.len() as f64;
        assert!((worked - rounds).abs() <= 1.0, "{worked} rounds for {rounds}");
        let equator = plan.counts().into_iter().max().expect("it has rounds");
        // Slack that nobody finds is free.
        let free = 1.0 + FREE_SLACK * 2.0 * rounds;
        assert!((f64::from(equator) - 2.0 * rounds).abs() <= free, "{equator} at the equator");
        let total: u32 = plan.counts().iter().sum();
        // The rounds reach to the disc of gathered loops, not to the pole.
        let reach = 1.0 - 6.0 * GATHERED_WIDTH / TAU / rounds;
        let sum: f64 = (1..=plan.rounds.len() - 1)
            .map(|k| 2.0 * rounds * (f64::from(k as u32) * reach / worked * PI).sin())
            .sum();
        let off = f64::from(total) - (sum + f64::from(plan.counts()[plan.rounds.len() - 1]));
        println!("{rounds} rounds: {total} stitches, {off:+.2} from the sine sum");
        let free = rounds / 2.0 + 6.0 + FREE_SLACK * sum;
        assert!(off.abs() <= free, "{total} stitches, {off} off");
        let ups =
            |kind| -> u32 { plan.rounds.iter().map(|r| r.placement.number_of(kind)).sum() };
        // What goes up from the ring comes down to the gathering.
        let (first, last) = (plan.counts()[0], plan.counts()[plan.rounds.len() - 1]);
        assert_eq!(first + ups(Stitch::Increase), last + ups(Stitch::Decrease));
    }
}
