//! Curvature from counts and from the forecast, against what geometry knows beforehand.

use std::f64::consts::{PI, TAU};

use plumpline_core::lesson::{ClosedEnds, Curvature, CurvatureSum};
use plumpline_core::plan::ball::TradeBall;
use plumpline_core::{Gauge, file, plan};
use plumpline_tests::drawn::drawn;
use plumpline_tests::fit_set::SHAPES;

const BALL: ClosedEnds = ClosedEnds { start: true, end: true };
const DISC: ClosedEnds = ClosedEnds { start: true, end: false };

/// Descartes for the rounds of a plan, Gauss–Bonnet in general: 2πχ, whatever was counted.
#[test]
fn every_piece_comes_to_its_known_sum_worked_and_stuffed() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let files = std::fs::read_dir(folder).expect("the samples are there").flatten();
    let projects = files.map(|entry| file::load(&entry.path()).expect("a project"));
    let mut pieces: Vec<_> = projects.flat_map(|project| project.pieces).collect();
    pieces.extend(SHAPES.iter().map(|shape| shape.piece(None, 1.0)));
    pieces.extend((1..=20).map(|seed| drawn(seed).piece));
    let (mut closed, mut open) = (0, 0);
    for piece in &pieces {
        let plan = plan(piece).expect("it can be planned");
        let bend = Curvature::of_plan(piece, &plan);
        let known = TAU * f64::from(bend.ends.characteristic());
        *if bend.ends.end { &mut closed } else { &mut open } += 1;
        for (which, sum) in [("worked", &bend.worked), ("forecast", &bend.forecast)] {
            let off = (sum.total_rad() - known).abs();
            assert!(off < 1e-9, "{}, {which}: off by {off:e}", piece.name);
            assert_eq!(sum.edges.len(), plan.rounds.len(), "{}", piece.name);
        }
        assert_eq!(bend.gains.len(), plan.rounds.len());
        let gained: i32 = bend.gains.iter().map(|gain| gain.gained).sum();
        let last = plan.rounds[plan.rounds.len() - 1].count;
        assert_eq!(gained, last as i32 - plan.chain.unwrap_or(0) as i32, "{}", piece.name);
    }
    assert!(closed > 20 && open > 3, "{closed} closed, {open} open");
}

/// A cap of colatitude θ holds 2π(1 − cos θ): π at 60°, 2π at the equator.
#[test]
fn a_sphere_spends_its_curvature_evenly() {
    let (radius, rounds) = (40.0, 1800);
    let step = PI * radius / f64::from(rounds);
    let around: Vec<f64> = (0..=rounds)
        .map(|k| TAU * radius * (PI * f64::from(k) / f64::from(rounds)).sin())
        .collect();
    let sum = CurvatureSum::of(&around, &vec![step; rounds as usize], BALL);
    // Up to the top edge of round k lies what the middle of round k + 1 encloses.
    for (k, known) in [(600, PI), (900, TAU), (1200, 3.0 * PI)] {
        let got = sum.edges[k - 1].running_rad;
        assert!((got - known).abs() < 0.006, "round {k}: {got} against {known}");
    }
    for k in [100, 600, 900, 1500] {
        let gauss = sum.edges[k - 1].gaussian_per_mm2 * radius * radius;
        assert!((gauss - 1.0).abs() < 1e-5, "round {k}: {gauss} of 1/R²");
    }
    assert!((sum.total_rad() - 2.0 * TAU).abs() < 1e-9);
}

/// The plane that Henderson and Taimina crochet has K = −1/R² everywhere: C = 2πR sinh(s/R).
#[test]
fn a_hyperbolic_circle_has_minus_one_over_its_radius_squared() {
    let (radius, rounds) = (30.0, 900);
    let step = 0.1;
    let around: Vec<f64> =
        (0..=rounds).map(|k| TAU * radius * (step * f64::from(k) / radius).sinh()).collect();
    let sum = CurvatureSum::of(&around, &vec![step; rounds as usize], DISC);
    for k in [50, 400, 800] {
        let gauss = sum.edges[k - 1].gaussian_per_mm2 * radius * radius;
        assert!((gauss + 1.0).abs() < 1e-5, "round {k}: {gauss} of 1/R²");
    }
    assert!((sum.total_rad() - TAU).abs() < 1e-9);
}

/// K = lim 3(2πr − C)/(πr³) (Bertrand, Diquet and Puiseux 1848), which is 1 − r²/20 on the unit
/// sphere at first order; what is missing inside a small circle over its area tends to it too.
#[test]
fn small_circles_tell_the_same_curvature() {
    let r: f64 = 1e-2;
    let circle = 3.0 * (TAU * r - TAU * r.sin()) / (PI * r.powi(3));
    assert!((circle - 0.999_995).abs() < 1e-7, "{circle}");
    let around: Vec<f64> = (0..=101).map(|k| TAU * (1e-4 * f64::from(k)).sin()).collect();
    let sum = CurvatureSum::of(&around, &[1e-4; 101], DISC);
    let inside = sum.edges[99].running_rad / (PI * r * r);
    assert!((inside - circle).abs() < 0.02, "{inside} against {circle}");
}

/// Six more a round in square stitches lack 2π − 6 = 0.2831853072 at the start; so does the
/// trade's ball, and its decreases put as much in at the close.
#[test]
fn the_trades_ball_bends_where_its_counts_change() {
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let ball = TradeBall::usual(36);
    let piece = ball.piece(gauge).expect("a ball of sixes");
    let plan = plan(&piece).expect("it can be planned");
    let bend = Curvature::of_plan(&piece, &plan);
    assert!((bend.worked.start_rad - 0.283_185_307_179_586).abs() < 1e-9);
    assert!((bend.worked.end_rad - 0.283_185_307_179_586).abs() < 1e-9);
    let corners: Vec<usize> = (1..=plan.rounds.len())
        .filter(|&k| bend.worked.edges[k - 1].missing_rad.abs() > 1e-9)
        .collect();
    // Out in six rounds, six even ones, back: all bend is in two of them.
    assert_eq!(corners, [6, 12]);
    for k in corners {
        assert!((bend.worked.edges[k - 1].missing_rad - 6.0).abs() < 1e-9);
    }
    // Stuffing spreads it: no round of the forecast bends half as sharply.
    let sharpest = bend.forecast.edges.iter().map(|e| e.missing_rad).fold(0.0, f64::max);
    assert!(sharpest < 3.0, "{sharpest}");
}
