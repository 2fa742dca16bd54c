//! A turned solid, as a triangle mesh in an STL or OBJ file, as an outline.

mod slices;

use std::io::Cursor;

use nalgebra::{Matrix3, Point3, Rotation3, SymmetricEigen, Unit, Vector3};
use plumpline_core::outline::LARGEST_MM;
use plumpline_core::{Error, Result, Rz};

use crate::line::{self, FittedLine};
use slices::{Slices, slices};

/// Most triangles of a mesh that is read.
const MOST_TRIANGLES: usize = 2_000_000;

/// The two kinds of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeshKind {
    /// STL, as text or binary.
    Stl,
    /// Wavefront OBJ.
    Obj,
}

/// The outline of a solid, and how well it is one.
#[derive(Debug, Clone, PartialEq)]
pub struct TurnedSolid {
    /// The outline, and how far it lies from the mesh's mean profile.
    pub fitted: FittedLine,
    /// The axis that was found, of length 1, in the file's own directions.
    pub axis: [f64; 3],
    /// How round the solid is about it: one less the mean spread of the radius around, as a
    /// share of the widest radius; 1 for a turned solid. A mesh of n sides all around has
    /// about 1 − 1.1/n².
    pub roundness: f64,
    /// Where it is least round, mm above the start.
    pub least_round_mm: f64,
}

/// The outline of the mesh in `bytes`, one unit of whose file is `unit_mm`, or which is
/// `height_mm` high where that is given. The axis is the one it is roundest about; the
/// working starts at its lower end (lesser z, or y, or x), and of a hollow the outer wall is
/// taken. An end that no triangle covers is open.
///
/// # Errors
/// One line: what is no such mesh, a mesh without triangles or extent, and whatever
/// [`line::fit`] refuses.
pub fn read(
    bytes: &[u8],
    kind: MeshKind,
    unit_mm: f64,
    height_mm: Option<f64>,
    tolerance_mm: f64,
) -> Result<TurnedSolid> {
    let mesh = match kind {
        MeshKind::Stl => stl(bytes)?,
        MeshKind::Obj => obj(bytes)?,
    };
    let middle_and_axes = axes(&mesh).ok_or_else(no_extent)?;
    let (middle, candidates) = middle_and_axes;
    let mut best: Option<(f64, Direction, Slices)> = None;
    for axis in candidates {
        let Some(slices) = slices(&turned(&mesh, middle, axis)) else { continue };
        // The first that is clearly rounder: the file's own directions come first.
        if best.as_ref().is_none_or(|(round, ..)| slices.roundness > round + 0.002) {
            best = Some((slices.roundness, axis, slices));
        }
    }
    let (roundness, axis, slices) = best.ok_or_else(no_extent)?;
    let scale = height_mm.map_or(unit_mm, |mm| mm / slices.height);
    let size = scale * slices.height.max(2.0 * slices.widest);
    if !(1.0..=LARGEST_MM).contains(&size) {
        let what = format!("it is {size:.1} mm large");
        return Err(Error::new("mesh", what, "give its height"));
    }
    let points: Vec<Rz> =
        slices.points.iter().map(|p| Rz::new(scale * p.r, scale * p.z)).collect();
    Ok(TurnedSolid {
        fitted: line::fit(&points, tolerance_mm, 0.0)?,
        axis: [axis.x, axis.y, axis.z],
        roundness,
        least_round_mm: scale * slices.least_round,
    })
}

fn no_extent() -> Error {
    Error::new("mesh", "it has no extent", "choose the mesh of a solid")
}

type Triangle = [Point3<f64>; 3];
type Direction = Unit<Vector3<f64>>;

fn checked(mesh: Vec<Triangle>) -> Result<Vec<Triangle>> {
    if mesh.is_empty() {
        return Err(Error::new("mesh", "it has no triangles", "choose another file"));
    }
    let sound = |p: &Point3<f64>| p.iter().all(|v| v.is_finite() && v.abs() < 1e12);
    if !mesh.iter().flatten().all(sound) {
        let what = "a corner of it lies nowhere";
        return Err(Error::new("mesh", what, "save it anew or choose another file"));
    }
    Ok(mesh)
}

fn too_many() -> Error {
    let what = format!("it has more than {MOST_TRIANGLES} triangles");
    Error::new("mesh", what, "make it coarser")
}

fn stl(bytes: &[u8]) -> Result<Vec<Triangle>> {
    let broken = |what: String| {
        Error::new("mesh", format!("it is no STL that can be read ({what})"), "save it anew")
    };
    let mut source = Cursor::new(bytes);
    let reader = stl_io::create_stl_reader(&mut source).map_err(|e| broken(e.to_string()))?;
    let mut mesh = Vec::new();
    for triangle in reader {
        let triangle = triangle.map_err(|e| broken(e.to_string()))?;
        if mesh.len() == MOST_TRIANGLES {
            return Err(too_many());
        }
        mesh.push(triangle.vertices.map(|v| Point3::from(v.0.map(f64::from))));
    }
    checked(mesh)
}

fn obj(bytes: &[u8]) -> Result<Vec<Triangle>> {
    let options = tobj::LoadOptions { triangulate: true, ..tobj::LoadOptions::default() };
    // Colours are none of a profile's business: no other file is looked for.
    let no_colours = |_: &std::path::Path| Ok((Vec::new(), Default::default()));
    let (models, _) = tobj::load_obj_buf(&mut Cursor::new(bytes), &options, no_colours)
        .map_err(|e| {
            let what = format!("it is no OBJ that can be read ({e})");
            Error::new("mesh", what, "save it anew")
        })?;
    let mut mesh = Vec::new();
    for model in models {
        let corner = |i: &u32| -> Option<Point3<f64>> {
            let at = 3 * *i as usize;
            let of = model.mesh.positions.get(at..at + 3)?;
            Some(Point3::new(f64::from(of[0]), f64::from(of[1]), f64::from(of[2])))
        };
        for three in model.mesh.indices.chunks_exact(3) {
            if mesh.len() == MOST_TRIANGLES {
                return Err(too_many());
            }
            if let (Some(a), Some(b), Some(c)) =
                (corner(&three[0]), corner(&three[1]), corner(&three[2]))
            {
                mesh.push([a, b, c]);
            }
        }
    }
    checked(mesh)
}

/// The middle of a mesh's surface and the axes it may be turned about: the file's own upright
/// ones first, then those of its spread (which of a turned solid are its axis and any two
/// across it).
fn axes(mesh: &[Triangle]) -> Option<(Point3<f64>, Vec<Direction>)> {
    let area = |[a, b, c]: &Triangle| 0.5 * (b - a).cross(&(c - a)).norm();
    let all: f64 = mesh.iter().map(area).sum();
    if !(all > 0.0 && all.is_finite()) {
        return None;
    }
    let middle_of = |[a, b, c]: &Triangle| (a.coords + b.coords + c.coords) / 3.0;
    let middle: Vector3<f64> =
        mesh.iter().map(|t| area(t) * middle_of(t)).sum::<Vector3<f64>>() / all;
    let spread: Matrix3<f64> = mesh
        .iter()
        .map(|t| {
            // Exact for a triangle: the second moments of its corners and of its middle.
            let corners = t.iter().map(|p| p.coords - middle);
            let square: Matrix3<f64> = corners.map(|v| v * v.transpose()).sum();
            let m = middle_of(t) - middle;
            area(t) * (square + 9.0 * m * m.transpose()) / 12.0
        })
        .sum::<Matrix3<f64>>()
        / all;
    let own = SymmetricEigen::new(spread).eigenvectors;
    let mut axes = vec![Vector3::z_axis(), Vector3::y_axis(), Vector3::x_axis()];
    for column in own.column_iter() {
        let v = Vector3::new(column[0], column[1], column[2]);
        let upright = if v.z.abs() > 1e-6 {
            v.z
        } else if v.y.abs() > 1e-6 {
            v.y
        } else {
            v.x
        };
        axes.extend(Unit::try_new(v * upright.signum(), 1e-9));
    }
    Some((Point3::from(middle), axes))
}

/// The mesh with `axis` upright through its middle.
fn turned(mesh: &[Triangle], middle: Point3<f64>, axis: Direction) -> Vec<Triangle> {
    let turn = Rotation3::rotation_between(&axis, &Vector3::z()).unwrap_or_else(|| {
        Rotation3::from_axis_angle(&Vector3::x_axis(), std::f64::consts::PI)
    });
    mesh.iter().map(|t| t.map(|p| turn * Point3::from(p - middle))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

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
        // Text, too.
        let text = "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 9 0 0\n\
                    vertex 0 9 4\nendloop\nendfacet\nendsolid a\n";
        assert!(
            read(text.as_bytes(), MeshKind::Stl, 1.0, None, 0.1)
                .is_ok_and(|t| t.roundness < 0.8)
                || read(text.as_bytes(), MeshKind::Stl, 1.0, None, 0.1).is_err()
        );
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
}
