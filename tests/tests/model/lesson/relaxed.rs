//! Cloth let go: what every mesh must come to, the published plane, the forecast's ball, and
//! corners. The discs and balls here are not those that the method was tried on.

use std::f64::consts::{PI, TAU};

use plumpline_core::lesson::course::{LessonSample, SampleGain, SampleRule, sample};
use plumpline_core::lesson::net::RingMeasure;
use plumpline_core::lesson::{Net, NetEnd, Relaxation};
use plumpline_core::piece::given::Start;
use plumpline_core::plan::ball::TradeBall;
use plumpline_core::{Gauge, Kind, Piece, Spread, plan};
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::rng::Rng;

const SQUARE: (f64, f64) = (5.0, 5.0);

fn square() -> Gauge {
    Gauge::of_stitch(SQUARE.0, SQUARE.1)
}

fn rested(mut relaxation: Relaxation) -> Relaxation {
    let mut steps = 0;
    while !relaxation.is_at_rest() {
        let step = relaxation.step();
        steps += 1;
        assert!(step.energy.total().is_finite());
        assert!(steps < 20_000, "it does not come to rest");
    }
    relaxation
}

fn steady(gain: u32, rounds: u32) -> LessonSample {
    let gain = SampleGain::Fixed(gain);
    let rule = SampleRule::Steady { gain, rounds, kind: Kind::Single };
    rule.at(square()).expect("it can be worked")
}

fn disc(gain: u32, rounds: u32, spread: Spread) -> Relaxation {
    let sample = steady(gain, rounds);
    let piece = Piece { spread, ..sample.piece("Disc", square()) };
    let net = Net::of_counts(&piece, Start::Ring, &sample.counts, NetEnd::Open);
    rested(Relaxation::empty(net.expect("a net"), piece.stiffness_along))
}

fn measured(relaxation: &Relaxation) -> Vec<RingMeasure> {
    relaxation.net().measured(&relaxation.nodes())
}

/// Height of the whole, mm.
fn height(relaxation: &Relaxation) -> f64 {
    let nodes = relaxation.nodes();
    let z = || nodes.iter().map(|p| p[2]);
    z().fold(f64::NEG_INFINITY, f64::max) - z().fold(f64::INFINITY, f64::min)
}

/// Wherever the stitches are, even nowhere sensible, the missing angles come to 2πχ
/// (Descartes; Gauss–Bonnet).
#[test]
fn missing_angles_come_to_two_pi_chi_wherever_the_stitches_are() {
    let mut rng = Rng::new(5);
    let disc = steady(7, 9);
    let tube = SampleRule::Neck { edge: 20, change: 3, rounds: 4 }.at(square());
    let ball = SampleRule::Ball { middle: 30 }.at(square()).expect("it can be worked");
    let tube = tube.expect("it can be worked");
    for (sample, chi) in [(&disc, 1), (&tube, 0), (&ball, 2)] {
        let piece = sample.piece("Piece", square());
        let end = if sample.stuffed { NetEnd::Drawn } else { NetEnd::Open };
        let net = Net::of_counts(&piece, sample.start, &sample.counts, end).expect("a net");
        assert_eq!(net.characteristic(), chi);
        for _ in 0..3 {
            let places: Vec<[f64; 3]> =
                (0..net.len()).map(|_| [(); 3].map(|()| rng.between(-50.0, 50.0))).collect();
            let sum: f64 = net.missing_angles(&places).iter().sum();
            assert!((sum - TAU * chi as f64).abs() < 1e-9, "χ = {chi}: {sum}");
        }
        let rest = rested(sample.relaxation(square()).expect("a net"));
        let sum: f64 = net.missing_angles(&rest.nodes()).iter().sum();
        assert!((sum - TAU * chi as f64).abs() < 1e-9, "χ = {chi} at rest: {sum}");
    }
}

/// More than 2π a round cannot be a surface of revolution: it waves, and keeps its lengths.
/// Less is a cone, whose tip lacks 2π less the gain.
#[test]
fn more_than_flat_ruffles_and_less_cups() {
    let (cup, ruffle) = (disc(5, 11, Spread::Turned), disc(8, 11, Spread::Turned));
    let cone = 11.0 * SQUARE.1 * (1.0 - (5.0_f64 / TAU).powi(2)).sqrt();
    assert!((height(&cup) / cone - 1.0).abs() < 0.1, "{} against {cone}", height(&cup));
    let nodes = ruffle.nodes();
    let rim = ruffle.net().rings().last().copied().expect("a ring");
    let rim = &nodes[rim.first..rim.first + rim.count];
    let middle = rim.iter().map(|p| p[2]).sum::<f64>() / rim.len() as f64;
    let ups = (0..rim.len())
        .filter(|&i| rim[i][2] < middle && rim[(i + 1) % rim.len()][2] >= middle)
        .count();
    assert!(ups >= 2, "a ruffle goes up and down, this one {ups} times");
    let stretch = measured(&ruffle)[11].stretch;
    assert!((stretch - 1.0).abs() < 0.02, "its rim has room: {stretch}");
}

/// Henderson and Taimina: each row (N+1)/N times the last, a plane of R = h/ln((N+1)/N),
/// K = −1/R². Its rows keep that growth in space, and its angles tell that K.
#[test]
fn a_hyperbolic_circle_grows_as_published_and_has_its_curvature() {
    for (every, rounds) in [(5, 14), (9, 19)] {
        let sample = SampleRule::Hyperbolic { every, rounds }.at(square()).expect("a sample");
        let rest = rested(sample.relaxation(square()).expect("a net"));
        let rings = measured(&rest);
        let last = rings.len() - 1;
        // Over the last four rounds, so that whole stitches even out.
        let grown = rings[last].around_mm / rings[last - 4].around_mm;
        let radius = SQUARE.1 / sample::growth(every);
        let s = |k: usize| k as f64 * SQUARE.1 / radius;
        let published = s(last).sinh() / s(last - 4).sinh();
        println!("1 in {every}: rim grows {grown:.4}, published {published:.4}");
        assert!((grown / published - 1.0).abs() < 0.02, "{grown} against {published}");
        for ring in &rings[4..] {
            assert!((ring.stretch - 1.0).abs() < 0.02, "{ring:?}");
        }
        // A free rim stretches a little, so angles are added up to some rounds before it.
        let inner = &rings[..last - 2];
        let missing: f64 = inner.iter().map(|ring| ring.missing_rad).sum();
        let area: f64 = inner.iter().map(|ring| ring.area_mm2).sum();
        let gauss = missing / area * radius * radius;
        println!("1 in {every}: K = {gauss:.3} of 1/R²");
        assert!((gauss + 1.0).abs() < 0.12, "{gauss}");
    }
}

/// The stuffed net and the axisymmetric forecast are the same cloth: a ball's radius within
/// 1 %, other shapes near it.
#[test]
fn a_stuffed_ball_is_as_large_as_its_forecast() {
    let gauge = Gauge::default();
    let balls = [30, 54].map(|n| TradeBall::usual(n).piece(gauge).expect("a ball of sixes"));
    let sine = SampleRule::Ball { middle: 42 }.at(gauge).expect("a ball");
    let shapes = ["egg", "drop"].map(|name| {
        let shape = SHAPES.iter().find(|s| s.name == name).expect("a shape of the set");
        (shape.piece(None, 1.0), 0.02)
    });
    let balls = balls.into_iter().chain([sine.piece("Sine", gauge)]).map(|ball| (ball, 0.01));
    for (piece, within) in balls.chain(shapes) {
        let plan = plan(&piece).expect("it can be planned");
        let rest = rested(Relaxation::of_plan(&piece, &plan).expect("a net"));
        let widest = measured(&rest).iter().map(|r| r.around_mm).fold(0.0, f64::max) / PI;
        let off = widest / plan.size_mm.width - 1.0;
        let taller = height(&rest) / plan.size_mm.height - 1.0;
        println!("{}: {:+.2} % wide, {:+.2} % high", piece.name, 100.0 * off, 100.0 * taller);
        assert!(off.abs() < within, "{}: width off by {off}", piece.name);
        // Its ends are rounder: there cloth bends most, and the forecast's bends for nothing.
        assert!(taller.abs() < 0.06, "{}: height off by {taller}", piece.name);
    }
}

/// How far the rim is out of round in waves that go with six corners, as a share of its radius.
fn corners(relaxation: &Relaxation) -> f64 {
    let nodes = relaxation.nodes();
    let rim = relaxation.net().rings().last().copied().expect("a ring");
    let rim = &nodes[rim.first..rim.first + rim.count];
    let n = rim.len() as f64;
    let middle: [f64; 2] = [0, 1].map(|i| rim.iter().map(|p| p[i]).sum::<f64>() / n);
    let polar: Vec<(f64, f64)> = rim
        .iter()
        .map(|p| (p[0] - middle[0], p[1] - middle[1]))
        .map(|(x, y)| (x.hypot(y), 6.0 * y.atan2(x)))
        .collect();
    let mean = polar.iter().map(|(r, _)| r).sum::<f64>() / n;
    // Stitches stand closer at corners: only what is out of round counts.
    let re = polar.iter().map(|(r, angle)| (r - mean) * angle.cos()).sum::<f64>() / n;
    let im = polar.iter().map(|(r, angle)| (r - mean) * angle.sin()).sum::<f64>() / n;
    2.0 * re.hypot(im) / mean
}

#[test]
fn stacked_increases_show_their_corners_and_turned_ones_do_not() {
    for rounds in [11, 15, 23] {
        let stacked = corners(&disc(6, rounds, Spread::Stacked));
        let turned = corners(&disc(6, rounds, Spread::Turned));
        println!("{rounds} rounds, six waves around: stacked {stacked:.4}, turned {turned:.4}");
        assert!(stacked > 0.015, "{rounds} rounds, stacked {stacked}");
        assert!(turned < 0.4 * stacked, "{rounds} rounds: {turned} against {stacked}");
    }
}

#[test]
fn the_same_cloth_comes_to_the_same_rest() {
    let sample = steady(9, 8);
    let run = || rested(sample.relaxation(square()).expect("a net"));
    let (first, second) = (run(), run());
    assert_eq!(first.nodes(), second.nodes());
    assert_eq!(first.steps(), second.steps());
}

#[test]
fn at_rest_a_step_changes_nothing_and_progress_only_grows() {
    let mut relaxation = steady(8, 12).relaxation(square()).expect("a net");
    let mut progress = 0.0;
    while !relaxation.is_at_rest() {
        let step = relaxation.step();
        assert!((progress..=1.0).contains(&step.progress), "{step:?} after {progress}");
        progress = step.progress;
        assert_eq!(relaxation.nodes().len(), relaxation.net().len());
    }
    assert_eq!(progress, 1.0);
    let nodes = relaxation.nodes();
    relaxation.step();
    assert_eq!(relaxation.nodes(), nodes);
}

/// Whatever counts somebody drags together, a shape comes or a refusal.
#[test]
fn rounds_by_chance_come_to_rest_or_are_refused() {
    let mut rng = Rng::new(77);
    let mut nets = 0;
    for _ in 0..40 {
        let start = if rng.unit() < 0.5 {
            Start::Ring
        } else {
            Start::Chain(1 + (rng.unit() * 20.0) as u32)
        };
        let mut below = start.joined();
        let rounds = 2 + (rng.unit() * 6.0) as usize;
        let counts: Vec<u32> = (0..rounds)
            .map(|_| {
                let low = below.map_or(1, |b| b.div_ceil(2));
                let high = below.map_or(9, |b| 2 * b);
                let count = low + (rng.unit() * f64::from(high - low + 1)) as u32;
                below = Some(count.min(high));
                count.min(high)
            })
            .collect();
        let piece = steady(6, 3).piece("Any", square());
        let end = if rng.unit() < 0.5 { NetEnd::Open } else { NetEnd::Drawn };
        let Ok(net) = Net::of_counts(&piece, start, &counts, end) else { continue };
        nets += 1;
        let rest = rested(Relaxation::empty(net, 0.7));
        assert!(rest.nodes().iter().flatten().all(|v| v.is_finite()), "{start:?} {counts:?}");
    }
    assert!(nets > 30, "only {nets} nets");
}
