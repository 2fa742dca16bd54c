//! A picture traced: from its pixels to an outline, with a report to judge it by.

use kurbo::ParamCurve as _;
use plumpline_core::outline::LARGEST_MM;
use plumpline_core::{Error, Outline, Rz};

use crate::axis::{self, Axis};
use crate::ground::{TraceGround, separate};
use crate::halves::{self, HalfRow, Halves, OddKind};
use crate::line;
use crate::picture::Photo;
use crate::report::{Doubt, OddPart, TraceReport};
use crate::work::{Step, Work, refused};

/// How far the outline may lie from the edge where nobody says: this share of the height.
pub const USUAL_TOLERANCE: f64 = 0.0025;
/// And at least so many pixels of the picture: hard edges go in steps of one.
const USUAL_PIXELS: f64 = 0.6;
/// Edges are averaged over this share of the height: what pixels and noise need.
const SMOOTH: f64 = 0.005;
/// And over at least so many pixels of the picture.
const SMOOTH_PIXELS: f64 = 1.5;

/// More parts that are not turned are no handles, but what was taken for the thing.
const MOST_PARTS: usize = 2;

/// Where the sides share less than this, no handle has made them differ.
const LEAST_SYMMETRY: f64 = 0.6;

/// From what the size of the thing follows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Scale {
    /// Its height along its axis, mm, without what is cut off.
    Height(f64),
    /// A length that is known between two places of the picture (pixels).
    Known {
        /// One end.
        from: (f64, f64),
        /// The other.
        to: (f64, f64),
        /// How long it is, mm.
        mm: f64,
    },
}

/// Which side of the thing is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TracedSide {
    /// The mean of both.
    #[default]
    Mean,
    /// The left one, as the picture is seen.
    Left,
    /// The right one.
    Right,
}

/// Which end of the thing the working starts at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TracedEnd {
    /// The upper one, as the picture is seen.
    #[default]
    Top,
    /// The lower one.
    Bottom,
}

/// What is wanted of a picture.
#[derive(Debug, Clone, PartialEq)]
pub struct TraceWish {
    /// Its size.
    pub scale: Scale,
    /// What is known of its background.
    pub ground: TraceGround,
    /// Which side is taken.
    pub side: TracedSide,
    /// Where the working starts.
    pub start: TracedEnd,
    /// How far the outline may lie from the edge, mm; if left out [`USUAL_TOLERANCE`] of the
    /// height, and where pixels are coarser than that, a little more than half of one.
    pub tolerance_mm: Option<f64>,
    /// Whether parts that no turned shape has are cut off.
    pub cut: bool,
}

impl TraceWish {
    /// All of the thing before a plain background, so high, mm, from its top, the mean of
    /// both sides.
    pub fn of_height(mm: f64) -> Self {
        Self {
            scale: Scale::Height(mm),
            ground: TraceGround::Plain,
            side: TracedSide::Mean,
            start: TracedEnd::Top,
            tolerance_mm: None,
            cut: false,
        }
    }
}

/// An outline traced from a picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// The outline, its start at height 0.
    pub outline: Outline,
    /// What to judge it by.
    pub report: TraceReport,
}

/// The outline of the thing in `picture`. `progress` is told the share done, 0 … 1, and
/// answers whether to go on.
///
/// # Errors
/// [`crate::Halt::Stopped`] where `progress` said no; otherwise one line: a scale that cannot be, a
/// background that is not plain, nothing that stands out, or an edge that makes no outline.
pub fn trace(picture: &Photo, wish: &TraceWish, progress: &dyn Fn(f32) -> bool) -> Step<Trace> {
    check(wish)?;
    let work = Work::new(progress);
    let found = separate(picture, &wish.ground, &work)?;
    let field = found.mask.field();
    work.reached(0.6)?;
    let no_axis = || refused("what stands out has no extent", "choose another picture");
    let axis = axis::find(&found.mask, &field).ok_or_else(no_axis)?;
    work.reached(0.7)?;
    let whole = halves::measure(&found.mask, &field, axis).ok_or_else(no_axis)?;
    let pierced = found.pierced.field();
    let odd = whole.odd(&pierced, axis);
    work.reached(0.85)?;
    let cleaned = whole.without(&odd, &pierced, axis);
    let taken = if wish.cut { &cleaned } else { &whole };
    let grid = Grid { picture, axis, mm: millimetres(picture, wish, taken)? };
    let points = points(taken, wish, grid.mm);
    let height = grid.mm * (taken.ends.1 - taken.ends.0);
    let pixel = grid.mm / picture.reduction();
    let usual = (USUAL_TOLERANCE * height).max(USUAL_PIXELS * pixel);
    let tolerance_mm = wish.tolerance_mm.unwrap_or(usual);
    let smooth = (SMOOTH * height).max(SMOOTH_PIXELS * pixel);
    let fitted = line::fit(&points, tolerance_mm, smooth)?;
    work.reached(0.95)?;

    // What is not turned is told by itself.
    let symmetry_left = cleaned.symmetry();
    let mut doubts = Vec::new();
    let mut doubt = |holds: bool, what: Doubt| {
        if holds {
            doubts.push(what);
        }
    };
    doubt(found.mask.edges_reached().contains(&true), Doubt::CutByThePicture);
    // What remains of a shadow lies on one side.
    let likeness = if found.shadow { 0.0035 } else { 0.006 };
    let unlike = cleaned.unlike() > likeness * (cleaned.ends.1 - cleaned.ends.0);
    let symmetry = whole.symmetry();
    if symmetry < LEAST_SYMMETRY {
        doubt(true, Doubt::SidesDiffer(symmetry));
    } else {
        doubt(symmetry_left < 0.95 || unlike, Doubt::SidesDiffer(symmetry_left));
    }
    let matters = |kind: OddKind| match kind {
        OddKind::Left => wish.side != TracedSide::Right,
        OddKind::Right => wish.side != TracedSide::Left,
        OddKind::Pair | OddKind::Fork => true,
    };
    let uncut = !wish.cut && odd.iter().any(|part| matters(part.kind));
    doubt(uncut, Doubt::NotTurned);
    doubt(odd.len() > MOST_PARTS, Doubt::InParts(odd.len()));
    doubt(axis.leans_to_the_bound(), Doubt::Leans(axis.tilt.to_degrees().abs()));
    doubt(found.next > 0.3, Doubt::Another(found.next));
    doubt(found.contrast < 2.0, Doubt::Faint);
    doubt(fitted.rough_mm > 0.004 * height, Doubt::Rough(fitted.rough_mm));
    let pixels = height / grid.mm * picture.reduction();
    doubt(pixels < 60.0, Doubt::Small(pixels));
    let allowed = 4.0 * tolerance_mm.max(0.0025 * height);
    doubt(fitted.furthest_mm > allowed, Doubt::Off(fitted.furthest_mm));

    let report = TraceReport {
        height_mm: height,
        width_mm: 2.0 * points.iter().fold(0.0, |widest, p| p.r.max(widest)),
        mm_per_pixel: pixel,
        tilt_degrees: axis.tilt.to_degrees(),
        symmetry,
        symmetry_left,
        tolerance_mm,
        furthest_mm: fitted.furthest_mm,
        rms_mm: fitted.rms_mm,
        shadow: found.shadow,
        odd: odd.iter().map(|part| grid.odd(part, &whole)).collect(),
        cut: wish.cut && !odd.is_empty(),
        doubts,
        axis: [grid.seen(taken.ends.0, 0.0), grid.seen(taken.ends.1, 0.0)],
        edges: [-1.0, 1.0].map(|sign| grid.edge(&whole, sign)),
        line: [-1.0, 1.0].map(|sign| grid.line(&fitted.outline, taken, wish.start, sign)),
        knots: fitted
            .outline
            .knots
            .iter()
            .map(|k| grid.laid(k.place(), taken, wish.start, 1.0))
            .collect(),
    };
    work.reached(1.0)?;
    Ok(Trace { outline: fitted.outline, report })
}

fn check(wish: &TraceWish) -> Step<()> {
    let length = |place: &str, mm: f64| {
        if mm > 0.0 && mm <= LARGEST_MM {
            return Ok(());
        }
        let mend = format!("give more than 0 and at most {LARGEST_MM} mm");
        Err(Error::new(place, format!("{mm} mm is out of range"), mend))
    };
    match wish.scale {
        Scale::Height(mm) => length("height", mm)?,
        Scale::Known { mm, .. } => length("known length", mm)?,
    }
    wish.tolerance_mm.map_or(Ok(()), |mm| length("tolerance", mm))?;
    Ok(())
}

/// How many mm one pixel of the raster is.
fn millimetres(picture: &Photo, wish: &TraceWish, halves: &Halves) -> Step<f64> {
    let mm = match wish.scale {
        Scale::Height(mm) => mm / (halves.ends.1 - halves.ends.0).max(1e-6),
        Scale::Known { from, to, mm } => {
            let pixels = (from.0 - to.0).hypot(from.1 - to.1);
            if pixels.is_nan() || pixels < 1.0 {
                let mend = "draw it from end to end";
                return Err(Error::new("known length", "its ends coincide", mend).into());
            }
            mm / pixels * picture.reduction()
        }
    };
    let height = mm * (halves.ends.1 - halves.ends.0);
    if height > LARGEST_MM {
        let what = format!("the thing comes out {:.1} m high", 1e-3 * height);
        return Err(Error::new("known length", what, "give a smaller one").into());
    }
    Ok(mm)
}

/// The half profile in working order, mm.
fn points(halves: &Halves, wish: &TraceWish, mm: f64) -> Vec<Rz> {
    let of = |row: &HalfRow| match wish.side {
        TracedSide::Mean => row.mean(),
        TracedSide::Left => row.left,
        TracedSide::Right => row.right,
    };
    let (top, bottom) = halves.ends;
    let along = |t: f64| match wish.start {
        TracedEnd::Top => mm * (t - top),
        TracedEnd::Bottom => mm * (bottom - t),
    };
    let inner = halves.rows.iter().enumerate().filter_map(|(i, row)| {
        let t = halves.first + i as f64;
        (t > top && t < bottom).then(|| Rz::new(mm * of(row).max(0.0), along(t)))
    });
    let mut points = vec![Rz::new(0.0, along(top))];
    points.extend(inner);
    points.push(Rz::new(0.0, along(bottom)));
    if wish.start == TracedEnd::Bottom {
        points.reverse();
    }
    points
}

/// The way from the axis back into the picture.
struct Grid<'a> {
    picture: &'a Photo,
    axis: Axis,
    /// Millimetres a pixel of the raster.
    mm: f64,
}

impl Grid<'_> {
    /// A place of the raster along and across the axis, in the whole picture.
    fn seen(&self, along: f64, across: f64) -> (f64, f64) {
        let (x, y) = self.axis.place(along, across);
        let scale = self.picture.reduction();
        (scale * (x + 0.5), scale * (y + 0.5))
    }

    /// Where a place of the outline lies in the picture.
    fn laid(&self, p: Rz, halves: &Halves, start: TracedEnd, sign: f64) -> (f64, f64) {
        let along = match start {
            TracedEnd::Top => halves.ends.0 + p.z / self.mm,
            TracedEnd::Bottom => halves.ends.1 - p.z / self.mm,
        };
        self.seen(along, sign * p.r / self.mm)
    }

    fn line(
        &self,
        outline: &Outline,
        halves: &Halves,
        start: TracedEnd,
        sign: f64,
    ) -> Vec<(f64, f64)> {
        const STEPS: u32 = 16;
        let curve = outline.beziers();
        let places = curve
            .iter()
            .flat_map(|b| (0..STEPS).map(|i| b.eval(f64::from(i) / f64::from(STEPS))))
            .chain(curve.last().map(|b| b.p3));
        places.map(|p| self.laid(Rz::new(p.x, p.y), halves, start, sign)).collect()
    }

    fn edge(&self, halves: &Halves, sign: f64) -> Vec<(f64, f64)> {
        let reach = |row: &HalfRow| if sign > 0.0 { row.right } else { row.left };
        let rows = halves.rows.iter().enumerate();
        rows.map(|(i, row)| self.seen(halves.first + i as f64, sign * reach(row))).collect()
    }

    fn odd(&self, part: &halves::Odd, halves: &Halves) -> OddPart {
        let (from, to) = part.rows;
        let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
        for i in from..=to.min(halves.rows.len() - 1) {
            let row = halves.rows[i];
            let (inner, outer) = match part.kind {
                OddKind::Left => (-row.left, -row.right),
                OddKind::Right => (row.left, row.right),
                OddKind::Pair | OddKind::Fork => (-row.left, row.right),
            };
            for across in [inner, outer] {
                let (x, y) = self.seen(halves.first + i as f64, across);
                low = (low.0.min(x), low.1.min(y));
                high = (high.0.max(x), high.1.max(y));
            }
        }
        let along = |row: usize| self.mm * (halves.first + row as f64 - halves.ends.0).max(0.0);
        OddPart {
            kind: part.kind,
            along_mm: (along(from), along(to)),
            out_mm: self.mm * part.out,
            frame: [low, high],
        }
    }
}
