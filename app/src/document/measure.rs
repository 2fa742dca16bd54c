//! Measures of the outline board that are typed: what each changes.

use plumpline_core::StitchSize;
use plumpline_core::outline::LARGEST_MM;
use plumpline_core::{Outline, Piece, Plan, Unit, Units, length, plan};

use super::shaping::{self, OFF_AXIS_MM};

/// A measure on the outline board that can be typed over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoardDimension {
    /// The forecast along the axis.
    Height,
    /// The forecast across the axis.
    Width,
    /// The forecast where it is narrowest between two wider places.
    Neck,
    /// A knot's distance from the axis.
    KnotRadius(usize),
    /// Twice that.
    KnotWidth(usize),
    /// A knot's place along the axis.
    KnotHeight(usize),
    /// The known length on the picture.
    Ruler,
}

impl BoardDimension {
    /// Whether it is a measure of the finished piece, and not of the wanted line.
    pub const fn is_finished(self) -> bool {
        matches!(self, Self::Height | Self::Width | Self::Neck)
    }

    /// What the finished piece measures there, mm.
    fn of(self, plan: &Plan) -> Option<f64> {
        match self {
            Self::Height => Some(plan.size_mm.height),
            Self::Width => Some(plan.size_mm.width),
            Self::Neck => neck_of(plan).map(|(wide, _)| wide),
            _ => None,
        }
    }
}

/// A finished measure is met if it comes this near, in round heights.
const MET_ROUNDS: f64 = 0.25;

/// Why the finished piece of `plan` is not `mm` where that was typed, in a sentence; `None`
/// where it is.
pub(crate) fn missed(
    piece: &Piece,
    plan: &Plan,
    dimension: BoardDimension,
    mm: f64,
    unit: Units,
) -> Option<String> {
    let got = dimension.of(plan)?;
    let StitchSize { width, height } = plan.stitch_mm;
    if (got - mm).abs() <= MET_ROUNDS * height {
        return None;
    }
    let asked = unit.text(mm);
    if piece.given.is_some() {
        return Some(say!("measure-stays", got = unit.text(got), asked = asked));
    }
    if !(LEAST_MM..=LARGEST_MM).contains(&mm) {
        let [least, most] = [LEAST_MM, LARGEST_MM].map(|mm| unit.text(mm));
        return Some(say!(
            "measure-asked-cannot-be-planned-give-least-to",
            asked = asked,
            least = least,
            most = most
        ));
    }
    let why = match dimension {
        BoardDimension::Height => {
            say!("measure-a-round-is-height-high-and-whole", height = unit.text(height))
        }
        _ => say!(
            "measure-six-stitches-are-width-across-and",
            width = unit.text(6.0 * width / std::f64::consts::PI)
        ),
    };
    Some(say!("measure-asked-comes-to-got-why", asked = asked, got = unit.text(got), why = why))
}

/// Reads what was typed for `dimension`, mm. A height may also be 0 or below it.
///
/// # Errors
/// One line: what was read, and how a length is written.
pub(crate) fn read(dimension: BoardDimension, text: &str, unit: Unit) -> Result<f64, String> {
    match dimension {
        BoardDimension::KnotHeight(_) => length::parse_place(text, unit),
        _ => length::parse(text, unit),
    }
}

/// The outline in which `dimension` is `mm`, or as near to it as whole rounds and stitches
/// let the forecast come. `None` where that cannot be, or is no measure of the outline.
pub(crate) fn with(piece: &Piece, dimension: BoardDimension, mm: f64) -> Option<Outline> {
    let outline = &piece.outline;
    match dimension {
        _ if piece.given.is_some() => None,
        BoardDimension::Height => by_forecast(piece, dimension, mm, |f| outline.scaled(1.0, f)),
        BoardDimension::Width => by_forecast(piece, dimension, mm, |f| outline.scaled(f, 1.0)),
        BoardDimension::Neck => {
            let at = neck_of(&plan(piece).ok()?)?.1;
            let knot = nearest_inner(outline, at)?;
            let radius = outline.knots[knot].radius_mm;
            let with_factor = |factor: f64| {
                let mut outline = outline.clone();
                outline.knots[knot].radius_mm =
                    shaping::whole((radius * factor).max(OFF_AXIS_MM));
                outline
            };
            by_forecast(piece, dimension, mm, with_factor)
        }
        BoardDimension::KnotRadius(knot) => with_knot(outline, knot, Some(mm), None),
        BoardDimension::KnotWidth(knot) => with_knot(outline, knot, Some(0.5 * mm), None),
        BoardDimension::KnotHeight(knot) => with_knot(outline, knot, None, Some(mm)),
        BoardDimension::Ruler => None,
    }
}

/// The neck of the forecast: how wide it is, and at which height of the outline, mm.
pub(crate) fn neck_of(plan: &Plan) -> Option<(f64, f64)> {
    let node = plan.forecast[shaping::neck(&plan.forecast, 0.5 * plan.stitch_mm.width)?];
    Some((2.0 * node.r, node.z + plan.shift_mm))
}

/// The inner knot nearest in height to `z`.
fn nearest_inner(outline: &Outline, z: f64) -> Option<usize> {
    let last = outline.knots.len().checked_sub(1)?;
    let off = |k: &usize| (outline.knots[*k].height_mm - z).abs();
    (1..last).min_by(|a, b| off(a).total_cmp(&off(b)))
}

/// A knot with another radius or height; a pole has no radius.
fn with_knot(
    outline: &Outline,
    knot: usize,
    radius: Option<f64>,
    height: Option<f64>,
) -> Option<Outline> {
    let mut outline = outline.clone();
    let knot = outline.knots.get_mut(knot)?;
    if let Some(mm) = radius.filter(|_| !knot.is_pole()) {
        knot.radius_mm = shaping::whole(mm.clamp(OFF_AXIS_MM, LARGEST_MM));
    }
    if let Some(mm) = height {
        knot.height_mm = shaping::whole(mm.clamp(-LARGEST_MM, LARGEST_MM));
    }
    Some(outline)
}

/// Least finished measure that can be asked for, mm.
const LEAST_MM: f64 = 3.0;

/// Proportional corrections of a factor before its neighbourhood is looked through.
const TURNS: usize = 5;

/// How far about the best factor it is looked through, in round heights of the measure, and
/// in how many steps to either side.
const ABOUT_ROUNDS: f64 = 1.0;
const STEPS: i32 = 16;

/// The outline `shaped` by some factor whose forecast comes nearest to `mm`. The forecast
/// does not scale quite as the outline does and goes by whole rounds and stitches, so the
/// factor is corrected a few times, then those about it are tried.
fn by_forecast(
    piece: &Piece,
    dimension: BoardDimension,
    mm: f64,
    shaped: impl Fn(f64) -> Outline,
) -> Option<Outline> {
    if !(LEAST_MM..=LARGEST_MM).contains(&mm) {
        return None;
    }
    let mut trial = Piece { accepted: None, ..piece.clone() };
    let met = 0.5 * MET_ROUNDS * piece.gauge.round_height_mm();
    let mut best: Option<(f64, f64, Outline)> = None;
    let mut tried = |factor: f64| {
        trial.outline = shaped(factor);
        let got = dimension.of(&plan(&trial).ok()?)?;
        let off = (got - mm).abs();
        if best.as_ref().is_none_or(|(least, ..)| off < *least) {
            best = Some((off, factor, trial.outline.clone()));
        }
        Some((got, best.as_ref().map_or((off, factor), |(off, at, _)| (*off, *at))))
    };
    let (mut factor, mut about) = (1.0, None);
    for _ in 0..TURNS {
        let Some((got, nearest)) = tried(factor) else { break };
        about = Some(nearest);
        if nearest.0 <= met {
            break;
        }
        factor *= mm / got;
    }
    let (off, middle) = about?;
    if off > met {
        let step = ABOUT_ROUNDS * piece.gauge.round_height_mm() / mm / f64::from(STEPS);
        for i in (1..=STEPS).flat_map(|i| [i, -i]) {
            let nearest = tried(middle * (1.0 + f64::from(i) * step));
            if nearest.is_some_and(|(_, (off, _))| off <= met) {
                break;
            }
        }
    }
    best.map(|(.., outline)| outline)
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::{Gauge, Knot};

    fn gourd() -> Piece {
        let knots = [(0.0, 0.0), (32.0, 30.0), (16.0, 60.0), (38.0, 95.0), (0.0, 130.0)];
        let knots = knots.map(|(r, z)| Knot::new(r, z)).to_vec();
        Piece::new("Gourd", Outline { knots }, Gauge::default())
    }

    #[test]
    fn a_typed_neck_is_what_the_forecast_comes_to() {
        let mut piece = gourd();
        for mm in [26.0, 44.0] {
            piece.outline = with(&gourd(), BoardDimension::Neck, mm).expect("a neck");
            let (got, _) = neck_of(&plan(&piece).expect("a plan")).expect("still a neck");
            assert!((got - mm).abs() < 3.0, "{mm} came to {got}");
        }
        assert_eq!(with(&piece, BoardDimension::Neck, 1e9), None);
    }

    #[test]
    fn a_typed_size_is_met_or_it_is_said_why() {
        let piece = gourd();
        let height = piece.gauge.round_height_mm();
        for (dimension, mm) in [
            (BoardDimension::Height, 120.0),
            (BoardDimension::Height, 141.0),
            (BoardDimension::Width, 70.0),
            (BoardDimension::Width, 90.0),
        ] {
            let outline = with(&piece, dimension, mm).expect("an outline");
            let made = Piece { outline, ..piece.clone() };
            let plan = plan(&made).expect("a plan");
            let off = (dimension.of(&plan).expect("a measure") - mm).abs();
            let said = missed(&made, &plan, dimension, mm, Unit::Mm.into());
            assert_eq!(said.is_some(), off > 0.25 * height, "{dimension:?} {mm}: {off}");
            assert!(off < 1.1 * height, "{dimension:?} {mm} is off {off}");
        }
    }

    #[test]
    fn a_knot_takes_its_radius_width_and_height() {
        let piece = gourd();
        let knot = |dimension, mm| with(&piece, dimension, mm).expect("a knot").knots[1];
        assert_eq!(knot(BoardDimension::KnotRadius(1), 41.5).radius_mm, 41.5);
        assert_eq!(knot(BoardDimension::KnotWidth(1), 70.0).radius_mm, 35.0);
        assert_eq!(knot(BoardDimension::KnotHeight(1), -4.0).height_mm, -4.0);
        assert_eq!(with(&piece, BoardDimension::KnotRadius(99), 5.0), None);
        let pole = with(&piece, BoardDimension::KnotRadius(0), 5.0).expect("a knot");
        assert!(pole.knots[0].is_pole());
    }

    #[test]
    fn heights_may_be_nought_or_below() {
        let height = BoardDimension::KnotHeight(2);
        let read = |dimension, text| read(dimension, text, Unit::Mm);
        assert_eq!(read(height, " 12,5 "), Ok(12.5));
        assert_eq!(read(height, "0"), Ok(0.0));
        assert_eq!(read(height, "0 mm"), Ok(0.0));
        assert_eq!(read(height, "-2 cm"), Ok(-20.0));
        assert!(read(height, "high").is_err());
        assert!(read(BoardDimension::Width, "-4").is_err());
        assert!(read(BoardDimension::Width, "0").is_err());
    }
}
