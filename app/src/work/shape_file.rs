//! Shapes in files: profiles as tables, drawings and solids, and pictures to trace.

use std::path::Path;

use anyhow::{Context as _, bail};
use plumpline_core::piece::Picture;
use plumpline_core::{Error, Outline, disk};
use plumpline_trace::{
    Halt, Photo, Trace, TraceReport, TraceWish, TracedEnd, drawing, solid, table, trace,
};

use super::picture::line;

/// A picture that leans more than this is not laid under the outline, which stands upright;
/// degrees.
const UPRIGHT: f64 = 1.5;
/// A profile read from a file.
#[derive(Debug)]
pub(crate) struct ReadProfile {
    /// Its outline.
    pub(crate) outline: Outline,
    /// Of a solid: how round it is about its axis, 0 … 1, and where least, mm above its start.
    pub(crate) round: Option<(f64, f64)>,
}

/// How a profile is read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Reading {
    /// How far the outline may lie from what was measured, mm.
    pub(crate) tolerance_mm: f64,
    /// How high a drawing or a solid is, mm; what the file says if left out.
    pub(crate) height_mm: Option<f64>,
    /// How many mm one unit of a solid is.
    pub(crate) unit_mm: f64,
}

/// The profile in the file at `path`, by its ending: .svg, .stl, .obj, or else a table.
///
/// # Errors
/// One line: the file, the place in it, what is wrong, the mend.
pub(crate) fn read_profile(path: &Path, reading: &Reading) -> anyhow::Result<ReadProfile> {
    let Reading { tolerance_mm, height_mm, unit_mm } = *reading;
    let shown = || path.display().to_string();
    let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase());
    let kind = match ending.as_deref() {
        Some("svg") => {
            let text = disk::read_text(path, disk::LARGEST_DRAWING)?;
            let fitted = drawing::read(&text, height_mm, tolerance_mm).with_context(shown)?;
            return Ok(ReadProfile { outline: fitted.outline, round: None });
        }
        Some("stl") => solid::MeshKind::Stl,
        Some("obj") => solid::MeshKind::Obj,
        _ if height_mm.is_some() => {
            bail!("{}: a table says itself how high it is; leave the height out", shown())
        }
        _ => {
            let text = disk::read_text(path, disk::LARGEST_PROFILE)?;
            let outline = measured(&text, tolerance_mm).with_context(shown)?;
            return Ok(ReadProfile { outline, round: None });
        }
    };
    let bytes = disk::read(path, disk::LARGEST_SOLID)?;
    let turned =
        solid::read(&bytes, kind, unit_mm, height_mm, tolerance_mm).with_context(shown)?;
    let round = Some((turned.roundness, turned.least_round_mm));
    Ok(ReadProfile { outline: turned.fitted.outline, round })
}

/// The outline through the points of a table; errors name the line of the file.
fn measured(text: &str, tolerance_mm: f64) -> plumpline_core::Result<Outline> {
    let table = table::read(text)?;
    Outline::through_points(&table.points, tolerance_mm).map_err(|e| {
        let point = e.place.strip_prefix("point ").and_then(|n| n.parse::<usize>().ok());
        let line = point.and_then(|n| table.lines.get(n.checked_sub(1)?));
        match line {
            Some(line) => Error::new(format!("line {line}"), e.what, e.mend),
            None => e,
        }
    })
}

/// The picture in the file at `path`, ready to be traced.
///
/// # Errors
/// One line: the file, what is wrong with it, the mend.
pub(crate) fn read_picture(path: &Path) -> Result<Photo, String> {
    let bytes = disk::read(path, disk::LARGEST_PICTURE).map_err(|e| e.to_string())?;
    Photo::decode(&bytes).map_err(|e| line(path, &e.what, &e.mend))
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
