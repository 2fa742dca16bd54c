//! Skins under pressure against membrane theory: N_φ/r₁ + N_θ/r₂ = p and, for a uniform
//! pressure, N_φ = p r₂/2, N_θ = p r₂(1 − r₂/2r₁).

use std::f64::consts::{PI, TAU};

use plumpline_core::forecast::{
    Cloth, Energy, Finish, Skin, pressure_for_outline, pressure_for_skin, settle,
};
use plumpline_core::outline::Station;
use plumpline_core::skin::{RestSkin, Unheld};
use plumpline_core::{Outline, Rz};
use plumpline_tests::shapes::{FINE, spheroid};

fn stuffed(skin: &Skin, pressure: f64) -> Vec<Rz> {
    let energy = Energy::new(skin, pressure);
    let settled = settle(&energy, &energy.flatten(&skin.slack_shape()), 1e-9);
    assert!(settled.residual <= 1e-7, "{:e}", settled.residual);
    settled.nodes
}

/// A skin that lies on a sphere of radius `radius` unstuffed, its bands as long as chords.
fn sphere(radius: f64, rounds: u32) -> Skin {
    let node = |k: u32| {
        let t = PI * f64::from(k) / f64::from(rounds);
        Rz::new(radius * t.sin(), -radius * t.cos())
    };
    Skin::new(
        0.0,
        (1..=rounds).map(|k| TAU * node(k).r.max(1e-6)).collect(),
        (1..=rounds).map(|k| node(k - 1).distance(node(k))).collect(),
        Finish::Drawn,
        Cloth::default(),
    )
}

/// An open tube of `rounds` rounds, both edges held as wide as they are unstuffed.
fn tube(radius: f64, height: f64, rounds: usize, along: f64) -> Skin {
    Skin::new(
        TAU * radius,
        vec![TAU * radius; rounds],
        vec![height; rounds],
        Finish::Open,
        Cloth { along, ..Cloth::default() },
    )
}

/// Hoop strain of the middle ring and strain of the band above it.
fn middle_strains(skin: &Skin, nodes: &[Rz]) -> (f64, f64, f64) {
    let k = skin.rounds() / 2;
    let hoop = TAU * nodes[k].r / skin.around_mm[k - 1] - 1.0;
    let band = nodes[k].distance(nodes[k + 1]) / skin.height_mm[k] - 1.0;
    (hoop, band, nodes[k].r)
}

/// Radius growth of a thin sphere, p r²(1 − ν)/(2Et); the cloth has no cross contraction, so
/// ν = 0, and Et is Eθ.
#[test]
fn a_sphere_grows_by_the_thin_wall_formula() {
    let (radius, load) = (40.0, 1e-5);
    let skin = sphere(radius, 200);
    let nodes = stuffed(&skin, load / radius);
    let growth = nodes[100].r - radius;
    let formula = load / radius * radius * radius / 2.0;
    println!("sphere: growth {growth:.6e}, formula {formula:.6e}");
    assert!((growth / formula - 1.0).abs() < 2e-3, "{growth} against {formula}");
}

/// Firmness is the hoop strain a ball shows, from whichever radius the pressure is found.
#[test]
fn a_ball_shows_the_strain_that_firmness_names() {
    for strain in [0.005, 0.02, 0.05, 0.08, 0.15] {
        let rest = 40.0;
        let pressure = pressure_for_skin(strain, rest);
        let same = pressure_for_outline(strain, rest * (1.0 + strain));
        assert!((pressure / same - 1.0).abs() < 1e-12, "{pressure} against {same}");
        let skin = sphere(rest, 200);
        let nodes = stuffed(&skin, pressure);
        for k in (20..=180).step_by(20) {
            let hoop = TAU * nodes[k].r / skin.around_mm[k - 1] - 1.0;
            assert!((hoop / strain - 1.0).abs() < 5e-3, "{strain}: {hoop} at ring {k}");
        }
        // Backwards: a ball's skin is smaller by that strain everywhere, both ways.
        let profile = spheroid(rest, rest, 64).profile(FINE);
        let skin = RestSkin::of(&profile, strain, &Cloth::default());
        assert!(skin.unheld.is_empty(), "{:?}", skin.unheld);
        let shrunk = profile.length_mm() / skin.length_mm() - 1.0;
        assert!((shrunk / strain - 1.0).abs() < 1e-3, "{strain}: {shrunk} along");
        let middle = skin.around_mm[FINE / 2];
        let hoop = TAU * rest / middle - 1.0;
        assert!((hoop / strain - 1.0).abs() < 1e-3, "{strain}: {hoop} around");
    }
}

/// Thin cylinder with ends: hoop pr/t, axial pr/2t. Worked example in print: d = 0.40 m,
/// t = 10 mm, p = 20 MPa give 400 and 200 MPa; with E = 200 GPa and ν = 0.28 strains 0.00172
/// and 0.00044. The cloth has no cross contraction, so its strains are the stresses over E,
/// and Hooke's law adds the ν terms.
#[test]
fn a_long_tube_strains_as_a_thin_cylinder() {
    let (radius, modulus, poisson) = (0.2, 200e9, 0.28);
    let load = 20e6 * radius / (modulus * 0.01);
    let skin = tube(20.0, 4.0, 80, 1.0);
    let (hoop, axial, _) = middle_strains(&skin, &stuffed(&skin, load / 20.0));
    println!("cylinder: hoop {hoop:.6} axial {axial:.6} for 0.002 and 0.001");
    assert!((hoop * modulus / 400e6 - 1.0).abs() < 5e-3, "{hoop}");
    assert!((axial * modulus / 200e6 - 1.0).abs() < 5e-3, "{axial}");
    assert!((hoop - poisson * axial - 0.001_72).abs() < 1e-5);
    assert!((axial - poisson * hoop - 0.000_44).abs() < 1e-5);
}

/// At any load the tensions are those of equilibrium, T_θ = pr and T_m = pr/2 at the stuffed
/// radius. Stretch is counted per rest length, so T_θ acts over a band that is longer by its
/// strain, and T_m over a ring that is wider by its.
#[test]
fn a_stuffed_tube_is_in_equilibrium_at_its_stuffed_size() {
    for along in [0.5, 1.0, 2.0] {
        for load in [0.01, 0.05, 0.1] {
            let skin = tube(20.0, 4.0, 80, along);
            let pressure = load / 20.0;
            let (hoop, axial, radius) = middle_strains(&skin, &stuffed(&skin, pressure));
            let (t_hoop, t_axial) = (hoop / (1.0 + axial), along * axial / (1.0 + hoop));
            assert!((t_hoop / (pressure * radius) - 1.0).abs() < 1e-6, "{load}: {t_hoop}");
            assert!((2.0 * t_axial / (pressure * radius) - 1.0).abs() < 1e-6, "{t_axial}");
        }
    }
}

fn tensions(at: &Station) -> (f64, f64) {
    let along = 0.5 / at.bend_around;
    (along, (1.0 - at.bend_along / (2.0 * at.bend_around)) / at.bend_around)
}

fn at_equator(outline: &Outline) -> Station {
    outline.profile(FINE).stations[FINE / 2]
}

/// Ellipsoid of revolution, equatorial a, polar b: N = pa²/2b at the pole, N_φ = pa/2 and
/// N_θ = pa(1 − a²/2b²) at the equator. For a = 2, b = 1: 2p, p, −2p.
#[test]
fn spheroids_have_the_tensions_of_membrane_theory() {
    for (a, b) in [(2.0, 1.0), (1.0, 2.0), (1.0, 1.0), (3.0, 2.5)] {
        let (a, b): (f64, f64) = (20.0 * a, 20.0 * b);
        let outline = spheroid(a, b, 240);
        let (along, around) = tensions(&at_equator(&outline));
        assert!((along / (a / 2.0) - 1.0).abs() < 1e-3, "{a}:{b}, along {along}");
        let wanted = a * (1.0 - a * a / (2.0 * b * b));
        assert!((around / wanted - 1.0).abs() < 1e-3, "{a}:{b}, around {around}");
        let (along, around) = tensions(&outline.profile(FINE).stations[0]);
        for pole in [along, around] {
            assert!((pole / (a * a / (2.0 * b)) - 1.0).abs() < 2e-3, "{a}:{b}, pole {pole}");
        }
    }
    let (along, around) = tensions(&at_equator(&spheroid(2.0, 1.0, 240)));
    assert!((along - 1.0).abs() < 1e-3 && (around + 2.0).abs() < 2e-3, "{along}, {around}");
}

/// Hoop tension at the equator vanishes at a/b = √2: there the skin is as wide unstuffed as
/// stuffed, wider for flatter shapes and narrower for rounder ones.
#[test]
fn hoop_tension_changes_sign_at_the_square_root_of_two() {
    let hoop = |ratio: f64| {
        let profile = spheroid(40.0, 40.0 / ratio, 240).profile(FINE);
        let skin = RestSkin::of(&profile, 0.02, &Cloth::default());
        TAU * 40.0 / skin.around_mm[FINE / 2] - 1.0
    };
    let root = 2.0_f64.sqrt();
    assert!(hoop(root * 0.99) > 0.0 && hoop(root * 1.01) < 0.0);
    assert!(hoop(root).abs() < 1e-4, "{}", hoop(root));
}

/// A shape twice as wide as high has cloth under compression around its equator, which
/// wrinkles; one no flatter than √2 does not.
#[test]
fn a_flat_spheroid_is_said_to_wrinkle_at_its_equator() {
    for (ratio, wrinkles) in [(1.0, false), (1.3, false), (1.41, false), (2.0, true)] {
        let profile = spheroid(40.0, 40.0 / ratio, 64).profile(FINE);
        let skin = RestSkin::of(&profile, 0.08, &Cloth::default());
        let middle = 0.5 * skin.length_mm();
        let said = skin.unheld.iter().any(|zone| {
            zone.why == Unheld::Wrinkles && (zone.from_mm..=zone.to_mm).contains(&middle)
        });
        assert_eq!(said, wrinkles, "{ratio}: {:?}", skin.unheld);
    }
}

/// Away from the ball: the rest circumference is what the tensions at the wanted shape give,
/// here at the equator of a spheroid twice as high as wide (T_m = pa/2, T_θ = 0.875pa).
#[test]
fn the_skin_of_a_long_spheroid_has_the_strains_of_its_tensions() {
    let (a, b, strain) = (30.0, 60.0, 0.08);
    let profile = spheroid(a, b, 240).profile(FINE);
    for along in [0.5, 1.0, 2.0] {
        let skin = RestSkin::of(&profile, strain, &Cloth { along, ..Cloth::default() });
        let pressure = 2.0 * strain / (a * (1.0 + strain));
        let (t_along, t_around) = (0.5 * pressure * a / along, 0.875 * pressure * a);
        // Both strains from e_θ = t_θ(1 + e_m), e_m = t_m(1 + e_θ), by substitution.
        let (mut around, mut lengthwise) = (0.0, 0.0);
        for _ in 0..60 {
            (around, lengthwise) = (t_around * (1.0 + lengthwise), t_along * (1.0 + around));
        }
        let middle = FINE / 2;
        let got = TAU * a / skin.around_mm[middle] - 1.0;
        assert!((got / around - 1.0).abs() < 1e-3, "around {got}, {around}");
        let rest = skin.along_mm[middle + 1] - skin.along_mm[middle - 1];
        let got = 2.0 * profile.length_mm() / FINE as f64 / rest - 1.0;
        assert!((got / lengthwise - 1.0).abs() < 1e-3, "along {got}, {lengthwise}");
    }
}
