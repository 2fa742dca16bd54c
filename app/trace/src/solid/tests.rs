use super::*;
use crate::Halt;

fn read(
    bytes: &[u8],
    kind: MeshKind,
    unit_mm: f64,
    height_mm: Option<f64>,
    tolerance_mm: f64,
) -> Step<TurnedSolid> {
    super::read(bytes, kind, unit_mm, height_mm, tolerance_mm, &|_| true)
}

/// A profile turned in `sides` about a leaning axis, as triangles.
fn lathe(profile: &[(f64, f64)], sides: u32, lean: f64, squash: f64) -> Vec<[[f64; 3]; 3]> {
    let at = |(r, z): (f64, f64), k: u32| {
        let turn = std::f64::consts::TAU * f64::from(k % sides) / f64::from(sides);
        let (x, y) = (r * turn.cos(), squash * r * turn.sin());
        [x * lean.cos() + z * lean.sin() + 5.0, y - 7.0, z * lean.cos() - x * lean.sin()]
    };
    let mut mesh = Vec::new();
    for pair in profile.windows(2) {
        for k in 0..sides {
            let (a, b) = (at(pair[0], k), at(pair[0], k + 1));
            let (c, d) = (at(pair[1], k), at(pair[1], k + 1));
            mesh.extend([[a, b, d], [a, d, c]]);
        }
    }
    mesh
}

fn as_stl(mesh: &[[[f64; 3]; 3]]) -> Vec<u8> {
    let mut bytes = vec![0; 80];
    bytes.extend((mesh.len() as u32).to_le_bytes());
    for triangle in mesh {
        bytes.extend([0; 12]);
        for v in triangle.iter().flatten() {
            bytes.extend((*v as f32).to_le_bytes());
        }
        bytes.extend([0; 2]);
    }
    bytes
}

fn as_obj(mesh: &[[[f64; 3]; 3]]) -> Vec<u8> {
    use std::fmt::Write as _;
    let mut text = String::from("mtllib none.mtl\no thing\n");
    for [x, y, z] in mesh.iter().flatten() {
        writeln!(text, "v {x} {y} {z}").expect("written");
    }
    for i in 0..mesh.len() {
        writeln!(text, "f {} {} {}", 3 * i + 1, 3 * i + 2, 3 * i + 3).expect("written");
    }
    text.into_bytes()
}

fn ball() -> Vec<(f64, f64)> {
    (0..=60)
        .map(|i| {
            let turn = std::f64::consts::PI * f64::from(i) / 60.0;
            (25.0 * turn.sin(), 40.0 * (1.0 - turn.cos()))
        })
        .collect()
}

#[test]
fn a_leaning_turned_solid_is_found_in_both_kinds_of_file() {
    let mesh = lathe(&ball(), 64, 0.4, 1.0);
    for (bytes, kind) in [(as_stl(&mesh), MeshKind::Stl), (as_obj(&mesh), MeshKind::Obj)] {
        let turned = read(&bytes, kind, 1.0, None, 0.1).expect("a solid");
        let off = (turned.axis[0] - 0.4_f64.sin()).hypot(turned.axis[2] - 0.4_f64.cos());
        assert!(off < 0.01, "{:?}", turned.axis);
        assert!(turned.roundness > 0.99, "{}", turned.roundness);
        for station in &turned.fitted.outline.profile(300).stations {
            let on = (station.at.r / 25.0).hypot((station.at.z - 40.0) / 40.0);
            assert!((on - 1.0).abs() < 0.02, "{on} at {:?}", station.at);
        }
        assert!(turned.fitted.outline.starts_closed());
        assert!(turned.fitted.outline.finishes_closed());
    }
}

#[test]
fn what_is_not_round_is_told_so() {
    let mesh = as_stl(&lathe(&ball(), 64, 0.0, 0.7));
    let turned = read(&mesh, MeshKind::Stl, 1.0, None, 0.1).expect("a solid");
    assert!(turned.roundness < 0.95, "{}", turned.roundness);
}

#[test]
fn open_and_flat_ends_are_told_apart_and_a_height_scales() {
    let cup = [(0.0, 0.0), (20.0, 0.0), (30.0, 50.0)];
    let turned =
        read(&as_stl(&lathe(&cup, 48, 0.0, 1.0)), MeshKind::Stl, 1.0, Some(100.0), 0.2)
            .expect("a cup");
    let outline = &turned.fitted.outline;
    assert!(outline.starts_closed() && !outline.finishes_closed(), "{outline:?}");
    assert!((outline.profile(400).height_mm() - 100.0).abs() < 0.2, "{outline:?}");
    assert!((outline.knots.last().expect("a knot").radius_mm - 60.0).abs() < 0.5);
    assert!(outline.knots.len() <= 4, "{outline:?}");
}

#[test]
fn stl_as_text_is_read_too() {
    use std::fmt::Write as _;
    let mut text = String::from("solid a\n");
    for triangle in lathe(&ball(), 24, 0.0, 1.0) {
        text += "facet normal 0 0 0\nouter loop\n";
        for [x, y, z] in triangle {
            writeln!(text, "vertex {x} {y} {z}").expect("written");
        }
        text += "endloop\nendfacet\n";
    }
    text += "endsolid a\n";
    let turned = read(text.as_bytes(), MeshKind::Stl, 1.0, None, 0.1).expect("a ball");
    assert!(turned.roundness > 0.98, "{}", turned.roundness);
    let one = "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 9 0 0\n\
               vertex 0 9 4\nendloop\nendfacet\nendsolid a\n";
    refused(read(one.as_bytes(), MeshKind::Stl, 1.0, None, 0.1), "does not close");
}

fn refused(found: Step<TurnedSolid>, part: &str) {
    let line = found.expect_err("refused").to_string();
    assert!(line.starts_with("mesh: ") && line.lines().count() == 1, "{line}");
    assert!(line.contains(part) && line.contains("; "), "{line}");
}

fn moved(mesh: &[[[f64; 3]; 3]], by: [f64; 3]) -> Vec<[[f64; 3]; 3]> {
    mesh.iter().map(|t| t.map(|p| [0, 1, 2].map(|i| p[i] + by[i]))).collect()
}

#[test]
fn a_pair_of_things_is_no_turned_solid() {
    // About the line through both, a pair of balls is turned, but in two pieces.
    let round: Vec<(f64, f64)> = ball().into_iter().map(|(r, z)| (1.6 * r, z)).collect();
    let round = lathe(&round, 48, 0.0, 1.0);
    let pair = [round.clone(), moved(&round, [90.0, 0.0, 0.0])].concat();
    let line = read(&as_stl(&pair), MeshKind::Stl, 1.0, None, 0.1);
    refused(line, "it is in pieces: nothing of it lies from ");
    // Two pegs beside one another are turned about no line.
    let peg = lathe(&[(0.0, 0.0), (10.0, 0.0), (12.0, 80.0), (0.0, 80.0)], 32, 0.0, 1.0);
    let pair = [peg.clone(), moved(&peg, [60.0, 0.0, 0.0])].concat();
    refused(read(&as_stl(&pair), MeshKind::Stl, 1.0, None, 0.1), "it is in pieces");
    // One on the other is one.
    let on = [round.clone(), moved(&round, [0.0, 0.0, 70.0])].concat();
    let turned = read(&as_stl(&on), MeshKind::Stl, 1.0, None, 0.1).expect("a turned solid");
    let high = turned.fitted.outline.profile(500).height_mm();
    assert!((high - 150.0).abs() < 1.0 && turned.roundness > 0.98, "{high}");
}

#[test]
fn a_fork_is_told_by_where_it_parts() {
    let stem = lathe(&[(0.0, 0.0), (20.0, 0.0), (20.0, 60.0), (0.0, 60.0)], 48, 0.0, 1.0);
    let prong = lathe(&[(0.0, 60.0), (7.0, 60.0), (5.0, 100.0), (0.0, 100.0)], 24, 0.0, 1.0);
    let fork =
        [stem, moved(&prong, [12.0, 0.0, 0.0]), moved(&prong, [-12.0, 0.0, 0.0])].concat();
    let found = read(&as_stl(&fork), MeshKind::Stl, 1.0, None, 0.1);
    refused(found, "it does not close around its axis from 60");
}

#[test]
fn reading_stops_wherever_it_is_told_to() {
    let bytes = as_stl(&lathe(&ball(), 48, 0.0, 1.0));
    let steps = std::cell::Cell::new(0);
    let count = |share: f32| {
        assert!((0.0..=1.0).contains(&share));
        steps.set(steps.get() + 1);
        true
    };
    super::read(&bytes, MeshKind::Stl, 1.0, None, 0.1, &count).expect("a solid");
    assert!(steps.get() > 5, "{}", steps.get());
    for stop in 0..steps.get() {
        let left = std::cell::Cell::new(stop);
        let until = |_: f32| {
            left.set(left.get() - 1);
            left.get() >= 0
        };
        let halt =
            super::read(&bytes, MeshKind::Stl, 1.0, None, 0.1, &until).expect_err("stopped");
        assert_eq!(halt, Halt::Stopped, "after {stop}");
    }
}

#[test]
fn what_is_no_mesh_is_told_in_one_line() {
    let lying = {
        let mut bytes = as_stl(&[[[0.0; 3]; 3]]);
        bytes[80..84].copy_from_slice(&u32::MAX.to_le_bytes());
        bytes
    };
    let nowhere = as_stl(&[[[f64::NAN; 3]; 3]]);
    let cases: [(&[u8], MeshKind); 8] = [
        (b"", MeshKind::Stl),
        (b"solid", MeshKind::Stl),
        (b"not a mesh at all", MeshKind::Stl),
        (&lying, MeshKind::Stl),
        (&nowhere, MeshKind::Stl),
        (b"", MeshKind::Obj),
        (b"v 1 2\nf 1 2 3\n", MeshKind::Obj),
        (b"v 0 0 0\nv 0 0 0\nv 0 0 0\nf 1 2 3\n", MeshKind::Obj),
    ];
    for (bytes, kind) in cases {
        let said = read(bytes, kind, 1.0, None, 0.1).expect_err("no mesh").to_string();
        assert_eq!(said.lines().count(), 1, "{said}");
    }
}
