//! A turned solid, as a triangle mesh in an STL or OBJ file, as an outline.

mod slices;

use std::io::Cursor;

use nalgebra::{Matrix3, Point3, Rotation3, SymmetricEigen, Unit, Vector3};
use plumpline_core::outline::LARGEST_MM;
use plumpline_core::{Error, Result, Rz, length};

use crate::line::{self, FittedLine};
use crate::work::{Step, Work};
use slices::{Slices, slices};

/// Most triangles of a mesh that is read.
const MOST_TRIANGLES: usize = 2_000_000;
/// Triangles after which is asked whether to go on.
const AT_ONCE: usize = 50_000;
/// A solid that is open to one side over more than this share of its height is not turned.
const MOST_OPEN: f64 = 0.03;
/// What is less round than this is no turned solid, or stands askew in its file.
const ROUND: f64 = 0.95;

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

impl TurnedSolid {
    /// How round it is and whether to look again, a sentence without its full stop each;
    /// lengths in `unit`.
    pub fn told(&self, unit: length::Unit) -> Vec<String> {
        let (round, at) = (100.0 * self.roundness, unit.text(self.least_round_mm));
        let mut lines = vec![
            format!("{round:.1} % round about its axis, least at {at}"),
            self.fitted.told(unit),
        ];
        if self.roundness < ROUND {
            lines.push("Look again: it is no turned solid, or only in part".to_owned());
        }
        lines
    }
}

/// The outline of the mesh in `bytes`, one unit of whose file is `unit_mm`, or which is
/// `height_mm` high where that is given. The axis is the one it is roundest about; the
/// working starts at its lower end (lesser z, or y, or x), and of a hollow the outer wall is
/// taken. An end that no triangle covers is open.
///
/// # Errors
/// [`crate::Halt::Stopped`] where `progress`, which is told the share done, said no; otherwise
/// one line: what is no such mesh, a mesh without triangles or extent, one in several pieces
/// or open to one side, and whatever [`line::fit`] refuses.
pub fn read(
    bytes: &[u8],
    kind: MeshKind,
    unit_mm: f64,
    height_mm: Option<f64>,
    tolerance_mm: f64,
    progress: &dyn Fn(f32) -> bool,
) -> Step<TurnedSolid> {
    let work = Work::new(progress);
    let mesh = match kind {
        MeshKind::Stl => stl(bytes, &work)?,
        MeshKind::Obj => obj(bytes, &work)?,
    };
    work.reached(0.3)?;
    let middle_and_axes = axes(&mesh).ok_or_else(no_extent)?;
    let (middle, candidates) = middle_and_axes;
    let mut best: Option<(f64, Direction, Slices)> = None;
    let each = 0.6 / candidates.len() as f32;
    for (i, axis) in candidates.into_iter().enumerate() {
        work.reached(0.3 + each * i as f32)?;
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
        return Err(Error::new("mesh", what, "give its height").into());
    }
    one_and_closed(&slices, scale)?;
    let points: Vec<Rz> =
        slices.points.iter().map(|p| Rz::new(scale * p.r, scale * p.z)).collect();
    Ok(TurnedSolid {
        fitted: line::fit(&points, tolerance_mm, 0.0)?,
        axis: [axis.x, axis.y, axis.z],
        roundness,
        least_round_mm: scale * slices.least_round,
    })
}

/// Refuses what is in pieces along its axis, and what parts in two or stands beside its axis.
fn one_and_closed(slices: &Slices, scale: f64) -> Result<()> {
    let mm = |at: f64| format!("{:.1}", scale * at);
    if let Some((from, to, _)) = slices.open.filter(|(.., share)| *share > MOST_OPEN) {
        let (from, to) = (mm(from), mm(to));
        let what = format!("it does not close around its axis from {from} to {to} mm");
        let mend = "choose a turned solid, or cut that part off";
        return Err(Error::new("mesh", what, mend));
    }
    if let Some((from, to)) = slices.gap {
        let (from, to) = (mm(from), mm(to));
        let what = format!("it is in pieces: nothing of it lies from {from} to {to} mm");
        return Err(Error::new("mesh", what, "save one piece by itself"));
    }
    Ok(())
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

fn stl(bytes: &[u8], work: &Work<'_>) -> Step<Vec<Triangle>> {
    let broken = |what: String| {
        Error::new("mesh", format!("it is no STL that can be read ({what})"), "save it anew")
    };
    let mut source = Cursor::new(bytes);
    let reader = stl_io::create_stl_reader(&mut source).map_err(|e| broken(e.to_string()))?;
    let mut mesh = Vec::new();
    for triangle in reader {
        let triangle = triangle.map_err(|e| broken(e.to_string()))?;
        if mesh.len() == MOST_TRIANGLES {
            return Err(too_many().into());
        }
        if mesh.len() % AT_ONCE == 0 {
            work.reached(0.25 * mesh.len() as f32 / MOST_TRIANGLES as f32)?;
        }
        mesh.push(triangle.vertices.map(|v| Point3::from(v.0.map(f64::from))));
    }
    Ok(checked(mesh)?)
}

fn obj(bytes: &[u8], work: &Work<'_>) -> Step<Vec<Triangle>> {
    let options = tobj::LoadOptions { triangulate: true, ..tobj::LoadOptions::default() };
    // Colours are none of a profile's business: no other file is looked for.
    let no_colours = |_: &std::path::Path| Ok((Vec::new(), Default::default()));
    let (models, _) = tobj::load_obj_buf(&mut Cursor::new(bytes), &options, no_colours)
        .map_err(|e| {
            let what = format!("it is no OBJ that can be read ({e})");
            Error::new("mesh", what, "save it anew")
        })?;
    work.reached(0.2)?;
    let mut mesh = Vec::new();
    for model in models {
        let corner = |i: &u32| -> Option<Point3<f64>> {
            let at = 3 * *i as usize;
            let of = model.mesh.positions.get(at..at + 3)?;
            Some(Point3::new(f64::from(of[0]), f64::from(of[1]), f64::from(of[2])))
        };
        for three in model.mesh.indices.chunks_exact(3) {
            if mesh.len() == MOST_TRIANGLES {
                return Err(too_many().into());
            }
            if let (Some(a), Some(b), Some(c)) =
                (corner(&three[0]), corner(&three[1]), corner(&three[2]))
            {
                mesh.push([a, b, c]);
            }
        }
    }
    Ok(checked(mesh)?)
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
mod tests;
