//! Lengths, areas and volumes of the outline and of the forecast against closed forms.

use std::f64::consts::PI;

use ellip::{ellipe, ellipk};
use parry3d::mass_properties::MassProperties;
use parry3d::math::Vector;
use plumpline_core::forecast::volume_mm3;
use plumpline_core::{Rz, plan};
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::shapes::{FINE, area_mm2, spheroid, torus, volume_by_slope_mm3};

/// Knots of the curves that stand for exact ones; the most an outline may have is 400.
const SPANS: u32 = 360;

fn k(m: f64) -> f64 {
    ellipk(m).expect("K(m) for 0 ≤ m < 1")
}

fn e(m: f64) -> f64 {
    ellipe(m).expect("E(m) for 0 ≤ m ≤ 1")
}

fn assert_near(got: f64, want: f64, relative: f64, what: &str) {
    let error = got / want - 1.0;
    println!("{what}: {got:.12}, error {error:+.1e}");
    assert!(error.abs() < relative, "{what}: {got}, not {want}");
}

/// The integrals the next check leans on, themselves against print.
#[test]
fn the_elliptic_integrals_are_the_published_ones() {
    // DLMF (19.30.13): 4 K(1/√2) = 7.41629 87… and √2 times the lemniscate's 5.24411 51….
    assert!((4.0 * k(0.5) - 7.416_298_7).abs() < 1e-7);
    assert!((4.0 * k(0.5) / 2.0_f64.sqrt() - 5.244_115_1).abs() < 1e-7);
    // Abramowitz and Stegun, table 17.1, by m = k².
    for (m, first, second) in [
        (0.0, PI / 2.0, PI / 2.0),
        (0.25, 1.685_750_354_812_596, 1.467_462_209_339_427),
        (0.5, 1.854_074_677_301_372, 1.350_643_881_047_676),
        (0.75, 2.156_515_647_499_643, 1.211_056_027_568_46),
        (0.9, 2.578_092_113_348_173, 1.104_774_732_704_073),
        (0.99, 3.695_637_362_989_875, 1.015_993_545_025_224),
    ] {
        assert!((k(m) - first).abs() < 1e-12, "K({m})");
        assert!((e(m) - second).abs() < 1e-12, "E({m})");
    }
    // Legendre's relation, E K′ + E′ K − K K′ = π/2.
    for m in [0.1, 0.25, 0.6] {
        let n = 1.0 - m;
        assert!((e(m) * k(n) + e(n) * k(m) - k(m) * k(n) - PI / 2.0).abs() < 1e-12, "{m}");
    }
}

/// Perimeter of an ellipse 4a E(m), m = 1 − b²/a² (DLMF 19.30(i)): the outline of half of it
/// lying or standing.
#[test]
fn an_elliptic_outline_has_the_length_of_an_ellipse() {
    for (major, minor) in [(2.0, 1.0), (3.0, 1.0), (5.0, 4.0), (10.0, 1.0)] {
        let perimeter = 4.0 * major * e(1.0 - (minor / major) * (minor / major));
        for (a, b) in [(major, minor), (minor, major)] {
            let length = spheroid(10.0 * a, 10.0 * b, SPANS).profile(FINE).length_mm();
            assert_near(length, 5.0 * perimeter, 1e-8, &format!("half ellipse {a}:{b}"));
        }
    }
    // DLMF 19.30(i), worked to 30 digits.
    assert_near(8.0 * e(0.75), 9.688_448_220_547_676, 1e-14, "ellipse 2:1");
}

/// Spheroids: V = 4πa²c/3; S = 2πa² + 2πac·asin(e)/e prolate, 2πa² + π(c²/e)ln((1+e)/(1−e))
/// oblate.
#[test]
fn spheroids_have_their_areas_and_volumes() {
    for (a, c) in [(1.0, 2.0), (1.0, 1.5), (2.0, 1.0), (1.0, 0.5), (3.0, 1.0)] {
        let (a, c): (f64, f64) = (30.0 * a, 30.0 * c);
        let ratio = (c / a).min(a / c);
        let e = (1.0 - ratio * ratio).sqrt();
        let area = if c > a {
            2.0 * PI * a * a + 2.0 * PI * a * c * e.asin() / e
        } else {
            2.0 * PI * a * a + PI * c * c / e * ((1.0 + e) / (1.0 - e)).ln()
        };
        let volume = 4.0 / 3.0 * PI * a * a * c;
        let profile = spheroid(a, c, SPANS).profile(FINE);
        assert_near(area_mm2(&profile), area, 1e-7, "area");
        assert_near(volume_by_slope_mm3(&profile), volume, 1e-7, "volume by slope");
        // A stack of frusta lies inside: short by the square of the interval.
        assert_near(volume_mm3(&profile.places()), volume, 1e-6, "volume of frusta");
        let coarse = volume_mm3(&spheroid(a, c, SPANS).profile(100).places());
        let finer = volume_mm3(&spheroid(a, c, SPANS).profile(200).places());
        assert!(((coarse - volume) / (finer - volume) - 4.0).abs() < 0.2, "second order");
    }
}

/// The Earth's surface, 510 065 621.724 km², from WGS 84: a = 6378.137 km, 1/f =
/// 298.257223563. A kilometre stands as a millimetre.
#[test]
fn the_earth_has_its_area() {
    let (a, flat) = (6378.137, 1.0 / 298.257_223_563);
    let profile = spheroid(a, a * (1.0 - flat), SPANS).profile(FINE);
    assert_near(area_mm2(&profile), 510_065_621.724, 1e-8, "the Earth");
}

/// Pappus–Guldin: a torus has area 4π²Rr and volume 2π²Rr².
#[test]
fn a_torus_has_the_area_and_volume_of_pappus() {
    let (ring, tube) = (30.0, 10.0);
    let profile = torus(ring, tube, SPANS).profile(FINE);
    assert_near(profile.length_mm(), 2.0 * PI * tube, 1e-8, "girth");
    assert_near(area_mm2(&profile), 4.0 * PI * PI * ring * tube, 1e-7, "area");
    let volume = 2.0 * PI * PI * ring * tube * tube;
    assert_near(volume_by_slope_mm3(&profile), volume, 1e-7, "volume by slope");
    assert_near(volume_mm3(&profile.places()), volume, 2e-6, "volume of frusta");
}

/// Frusta are exact where the side is straight: cone πr²h/3, frustum πh(R² + Rr + r²)/3.
#[test]
fn cones_are_exact() {
    let cone = volume_mm3(&[Rz::new(0.0, 0.0), Rz::new(3.0, 4.0)]);
    assert_near(cone, 12.0 * PI, 1e-14, "cone");
    let frustum = volume_mm3(&[Rz::new(3.0, 0.0), Rz::new(2.0, 2.0), Rz::new(1.0, 4.0)]);
    assert_near(frustum, 4.0 / 3.0 * PI * 13.0, 1e-14, "frustum");
}

/// The closed mesh of a profile turned about its axis in `sectors` steps, wound outwards.
fn revolved(nodes: &[Rz], sectors: u32) -> (Vec<Vector>, Vec<[u32; 3]>) {
    let mut places = Vec::new();
    for node in nodes {
        for i in 0..sectors {
            let turn = 2.0 * PI * f64::from(i) / f64::from(sectors);
            let (x, y) = (node.r * turn.cos(), node.r * turn.sin());
            places.push(Vector::new(x as f32, y as f32, node.z as f32));
        }
    }
    let mut faces = Vec::new();
    for k in 0..nodes.len() as u32 - 1 {
        for i in 0..sectors {
            let next = (i + 1) % sectors;
            let [a, b] = [k * sectors + i, k * sectors + next];
            let [c, d] = [a + sectors, b + sectors];
            faces.extend([[a, b, d], [a, d, c]]);
        }
    }
    (places, faces)
}

/// The volume a plan stuffs against a mesh of it, whose slices are polygons of n sides:
/// smaller by sin(2π/n)/(2π/n) than the round ones.
#[test]
fn the_stuffed_volume_is_that_of_a_mesh() {
    const SECTORS: u32 = 32;
    let turn = 2.0 * PI / f64::from(SECTORS);
    for shape in &SHAPES {
        let plan = plan(&shape.piece(0.3, 1.0)).expect("the set can be planned");
        let (places, faces) = revolved(&plan.forecast, SECTORS);
        let mesh = MassProperties::from_trimesh(1.0, &places, &faces).mass();
        let round = f64::from(mesh) / (turn.sin() / turn);
        // The mesh is added up in single precision.
        assert_near(volume_mm3(&plan.forecast), round, 2e-5, shape.name);
        assert_near(plan.estimate.volume_ml, round / 1000.0, 2e-5, "in ml");
    }
}
