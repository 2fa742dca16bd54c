//! Shapes in files: profiles as tables, drawings and solids, and pictures to trace.

use std::path::Path;

use anyhow::{Context as _, bail};
use plumpline_core::piece::Picture;
use plumpline_core::{Error, Gauge, Outline, Unit, disk};
use plumpline_trace::line::FittedLine;
use plumpline_trace::solid::{MeshKind, TurnedSolid};
use plumpline_trace::{
    Halt, Photo, Trace, TraceReport, TraceWish, TracedEnd, drawing, solid, table, trace,
};

use super::picture::{is_picture, line};

/// A picture that leans more than this is not laid under the outline, which stands upright;
/// degrees.
const UPRIGHT: f64 = 1.5;

/// How far the knots' curve may be from what was read, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// How far an outline may lie from what it is fitted to in cloth of this gauge, mm.
pub(crate) fn tolerance_mm(gauge: Gauge) -> f64 {
    TOLERANCE_STITCHES * gauge.stitch_width_mm()
}

/// What a file holds of a shape, by its ending.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ShapeKind {
    /// A picture of it, seen from the side.
    Picture,
    /// Its profile as a drawn path.
    Drawing,
    /// The mesh of all of it.
    Solid(MeshKind),
    /// Radii and heights.
    Table,
}

impl ShapeKind {
    /// Endings of profiles: tables, drawings and solids.
    pub(crate) const PROFILES: [&str; 5] = ["csv", "tsv", "svg", "stl", "obj"];

    /// Of the file at `path`; what has no ending that is known is a table.
    pub(crate) fn of(path: &Path) -> Self {
        let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("svg") => Self::Drawing,
            Some("stl") => Self::Solid(MeshKind::Stl),
            Some("obj") => Self::Solid(MeshKind::Obj),
            _ if is_picture(path) => Self::Picture,
            _ => Self::Table,
        }
    }

    /// Whether the ending of `path` is that of a profile.
    pub(crate) fn is_profile(path: &Path) -> bool {
        let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase());
        ending.is_some_and(|ending| Self::PROFILES.contains(&ending.as_str()))
    }
}

/// A profile read from a file.
#[derive(Debug, Clone)]
pub(crate) enum ReadProfile {
    /// Through the points of a table.
    Measured(Outline),
    /// Along a drawn path.
    Drawn(FittedLine),
    /// Of a turned solid.
    Turned(TurnedSolid),
}

impl ReadProfile {
    /// Its outline.
    pub(crate) fn outline(&self) -> &Outline {
        match self {
            Self::Measured(outline) => outline,
            Self::Drawn(fitted) => &fitted.outline,
            Self::Turned(solid) => &solid.fitted.outline,
        }
    }

    /// What to judge it by, a sentence without its full stop each.
    pub(crate) fn told(&self, unit: Unit) -> Vec<String> {
        match self {
            Self::Measured(outline) => {
                vec![say!("start-knots-knots", knots = outline.knots.len())]
            }
            Self::Drawn(fitted) => vec![fitted.told(unit)],
            Self::Turned(solid) => solid.told(unit),
        }
    }
}

/// How a profile is read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ProfileReading {
    /// How far the outline may lie from what was measured, mm.
    pub(crate) tolerance_mm: f64,
    /// How high a drawing or a solid is, mm; what the file says if left out.
    pub(crate) height_mm: Option<f64>,
    /// What one unit of a solid is.
    pub(crate) unit: Unit,
}

/// The profile in the file at `path`, by its ending: .svg, .stl, .obj, or else a table; `None`
/// where `progress`, which is told the share done, said to stop.
///
/// # Errors
/// One line: the file, the place in it, what is wrong, the mend.
pub(crate) fn read_profile(
    path: &Path,
    reading: &ProfileReading,
    progress: &dyn Fn(f32) -> bool,
) -> anyhow::Result<Option<ReadProfile>> {
    let ProfileReading { tolerance_mm, height_mm, unit } = *reading;
    let shown = || path.display().to_string();
    let kind = match ShapeKind::of(path) {
        ShapeKind::Drawing => {
            let text = disk::read_text(path, disk::LARGEST_DRAWING)?;
            let fitted = drawing::read(&text, height_mm, tolerance_mm).with_context(shown)?;
            return Ok(Some(ReadProfile::Drawn(fitted)));
        }
        ShapeKind::Solid(kind) => kind,
        ShapeKind::Picture => {
            bail!(say!("profile-is-a-picture", file = shown()))
        }
        ShapeKind::Table if height_mm.is_some() => {
            bail!(say!("profile-table-has-its-height", file = shown()))
        }
        ShapeKind::Table => {
            let text = disk::read_text(path, disk::LARGEST_PROFILE)?;
            let outline = measured(&text, tolerance_mm).with_context(shown)?;
            return Ok(Some(ReadProfile::Measured(outline)));
        }
    };
    let bytes = disk::read(path, disk::LARGEST_SOLID)?;
    match solid::read(&bytes, kind, unit.mm(), height_mm, tolerance_mm, progress) {
        Ok(turned) => Ok(Some(ReadProfile::Turned(turned))),
        Err(Halt::Stopped) => Ok(None),
        Err(Halt::Refused(e)) => Err(e).with_context(shown),
    }
}

/// The outline through the points of a table; errors name the line of the file.
fn measured(text: &str, tolerance_mm: f64) -> plumpline_core::Result<Outline> {
    let table = table::read(text)?;
    Outline::through_points(&table.points, tolerance_mm).map_err(|e| {
        let point = e.place.strip_prefix("point ").and_then(|n| n.parse::<usize>().ok());
        let line = point.and_then(|n| table.lines.get(n.checked_sub(1)?));
        match line {
            Some(line) => Error::new(say!("file-line", line = line), e.what, e.mend),
            None => e,
        }
    })
}

/// The outline of the thing in a picture that was read from `path`; `None` where `progress`
/// said to stop.
///
/// # Errors
/// One line: the file, what is wrong with it, the mend.
pub(crate) fn traced(
    path: &Path,
    picture: &Photo,
    wish: &TraceWish,
    progress: &dyn Fn(f32) -> bool,
) -> Result<Option<Trace>, String> {
    match trace(picture, wish, progress) {
        Ok(traced) => Ok(Some(traced)),
        Err(Halt::Stopped) => Ok(None),
        Err(Halt::Refused(e)) if e.place == "picture" => Err(line(path, &e.what, &e.mend)),
        Err(Halt::Refused(e)) => Err(format!("{}: {e}", path.display())),
    }
}

/// The picture laid under its outline, to be looked at in the studio; `None` for one that
/// leans or is worked from below, which would not lie as it was traced.
pub(crate) fn laid(
    path: &Path,
    (width, height): (u32, u32),
    report: &TraceReport,
    start: TracedEnd,
) -> Option<Picture> {
    if report.tilt_degrees.abs() > UPRIGHT || start == TracedEnd::Bottom {
        return None;
    }
    let whole = std::path::absolute(path).ok()?;
    let mm = report.mm_per_pixel;
    let [top, bottom] = report.axis;
    let across = mm * (0.5 * f64::from(width) - 0.5 * (top.0 + bottom.0));
    let along = mm * (0.5 * f64::from(height) - top.1);
    let laid = Picture::new(whole.to_str()?, (across, along), mm * f64::from(width));
    laid.validate().ok().map(|()| laid)
}
