//! Two flat discs joined at the rim and filled: the limit of cloth that does not stretch
//! along its meridian and gives way freely around, whose shape is known in closed form
//! (Paulsen, “What is the shape of a Mylar balloon?”, Amer. Math. Monthly 101(10), 1994).

use std::f64::consts::{PI, TAU};

use plumpline_core::Extent;
use plumpline_core::forecast::{
    Cloth, Energy, Finish, Settled, Skin, settle, size_mm, volume_mm3,
};

/// Radius of the flat discs, mm.
const DISC_MM: f64 = 100.0;

/// The first lemniscate constant A = a/r, as K(1/√2)/√2: DLMF (19.30.13) gives
/// 4A = 5.24411 51….
fn lemniscate() -> f64 {
    ellip::ellipk(0.5).expect("K(m) exists at m = 1/2") / 2.0_f64.sqrt()
}

/// Radius over disc radius, thickness over width, volume over disc radius cubed.
#[derive(Debug, Clone, Copy)]
struct Shape([f64; 3]);

impl Shape {
    /// r/a = 1/A, τ/2r = π/(4A), V = ⅔πar² (Paulsen 1994).
    fn exact() -> Self {
        let a = lemniscate();
        Self([1.0 / a, PI / (4.0 * a), 2.0 * PI / (3.0 * a * a)])
    }

    fn of(settled: &Settled) -> Self {
        let Extent { height: thickness, width } = size_mm(&settled.nodes);
        let volume = volume_mm3(&settled.nodes) / DISC_MM.powi(3);
        Self([0.5 * width / DISC_MM, thickness / width, volume])
    }

    /// Largest relative error.
    fn error(self) -> f64 {
        let pairs = self.0.iter().zip(Self::exact().0);
        pairs.map(|(got, want)| (got / want - 1.0).abs()).fold(0.0, f64::max)
    }
}

/// The discs in `rounds` rounds each, settled from flat: P·a/Em is `load`.
fn balloon(rounds: u32, load: f64, slack: f64) -> Settled {
    let height = DISC_MM / f64::from(rounds);
    let around = |k: u32| TAU * height * f64::from(k.min(2 * rounds - k));
    let skin = Skin::new(
        0.0,
        (1..=2 * rounds).map(around).collect(),
        vec![height; 2 * rounds as usize],
        Finish::Drawn,
        Cloth { along: 1.0, slack },
    );
    let energy = Energy::new(&skin, load / DISC_MM);
    let mut flat = energy.flatten(&skin.slack_shape());
    for place in flat.chunks_exact_mut(2) {
        assert!(place[1].abs() < 1e-4, "slack discs lie flat: {place:?}");
        place[1] = 0.0; // Not even rounding says which way to fill.
    }
    let settled = settle(&energy, &flat, 1e-7);
    assert!(settled.residual <= 1e-7, "{rounds} rounds at {load}: {:e}", settled.residual);
    println!(
        "{rounds} rounds, load {load:e}, slack {slack:e}: {:?}, error {:.2e}, {} steps",
        Shape::of(&settled).0,
        Shape::of(&settled).error(),
        settled.steps
    );
    settled
}

#[test]
fn the_constants_are_the_published_ones() {
    // DLMF (19.30.13).
    assert!((4.0 * lemniscate() - 5.244_115_1).abs() < 1e-7);
    // Thickness over diameter is quoted as 0.5990701173.
    assert!((Shape::exact().0[1] - 0.599_070_117_3).abs() < 1e-10);
}

#[test]
fn two_discs_fill_to_the_mylar_balloon() {
    for rounds in [40, 80, 160] {
        for load in [1e-4, 1e-5] {
            let error = Shape::of(&balloon(rounds, load, 1e-10)).error();
            assert!(error < 2e-3, "{rounds} rounds, load {load}: {error}");
        }
    }
}

/// Stretch goes with the load: the error falls with it, all else held.
#[test]
fn a_lighter_load_comes_nearer() {
    let errors = [1e-3, 1e-4, 1e-5].map(|load| Shape::of(&balloon(160, load, 1e-10)).error());
    assert!(errors[1] < 0.5 * errors[0] && errors[2] < 0.5 * errors[1], "{errors:?}");
}

/// More rounds come nearer: the shapes converge at second order, so that the difference
/// between two successive refinements falls about fourfold.
#[test]
fn more_rounds_come_nearer_at_second_order() {
    let found = [40, 80, 160].map(|rounds| Shape::of(&balloon(rounds, 1e-5, 1e-10)));
    let errors = found.map(Shape::error);
    assert!(errors[1] < errors[0] && errors[2] < errors[1], "{errors:?}");
    for i in 0..3 {
        let steps = [found[1].0[i] - found[0].0[i], found[2].0[i] - found[1].0[i]];
        let ratio = steps[0] / steps[1];
        assert!((3.0..5.0).contains(&ratio), "measure {i}: {ratio}");
    }
}

/// The meridian bends twice as much as the parallels everywhere (Mladenov and Oprea, “The
/// Mylar balloon revisited”, Amer. Math. Monthly 110, 2003): no tension around.
#[test]
fn the_meridian_bends_twice_as_much_as_the_parallels() {
    let nodes = balloon(160, 1e-5, 1e-10).nodes;
    let mut seen = 0;
    for at in nodes.windows(3).filter(|at| at[1].r > 0.2 * DISC_MM) {
        let (a, b) = (at[0].distance(at[1]), at[1].distance(at[2]));
        let (ar, az) = (at[1].r - at[0].r, at[1].z - at[0].z);
        let (br, bz) = (at[2].r - at[1].r, at[2].z - at[1].z);
        let turn = (ar * bz - az * br).atan2(ar * br + az * bz);
        let along = 2.0 * turn / (a + b);
        let around = (at[2].z - at[0].z) / (a + b) / at[1].r;
        assert!((along / around - 2.0).abs() < 0.02, "r {}: {}", at[1].r, along / around);
        seen += 1;
    }
    assert!(seen > 150, "{seen} places");
}
