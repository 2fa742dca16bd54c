//! Starters: outlines to begin from, each made from two or three dimensions.
//!
//! A starter is a handful of knots that a person then drags; nothing remembers afterwards
//! that a piece began as one. Proportions are our own drawing: common practice, no source.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::error::{Error, Result, within};
use crate::extent::Bounds;
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::piece::outline::{Knot, Outline};

/// Least height or width of a starter, mm: smaller pieces have too few rounds to shape.
pub const LEAST_MM: f64 = 15.0;
/// Greatest height, width or length of a starter, mm.
pub const MOST_MM: f64 = 1000.0;

/// A shape to begin from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Starter {
    /// Round from every side, or taller, or flatter.
    Ball,
    /// Narrower towards its start.
    Egg,
    /// From a pointed tip to a round foot.
    Drop,
    /// From a pointed tip straight to an open edge.
    Cone,
    /// Half a ball on a flat base, which a card insert holds.
    Dome,
    /// Longer than wide: begun on a chain instead of a ring.
    Bean,
    /// Shallow, with an open rim.
    Dish,
    /// A round body, a neck, and a lip that stays open.
    Float,
}

/// How large a starter is to be, mm. What is left out is in the starter's usual proportion.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dimensions {
    /// Along the axis.
    pub height_mm: f64,
    /// Across the axis, at the widest; the short way across a bean.
    pub width_mm: f64,
    /// Across the narrowest place of a float's neck.
    pub neck_mm: Option<f64>,
    /// The long way across a bean.
    pub length_mm: Option<f64>,
}

/// The dimension some starters have beyond height and width.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Third {
    /// [`Dimensions::neck_mm`].
    Neck,
    /// [`Dimensions::length_mm`].
    Length,
}

impl Dimensions {
    /// This height and width, the rest in proportion.
    pub const fn new(height_mm: f64, width_mm: f64) -> Self {
        Self { height_mm, width_mm, neck_mm: None, length_mm: None }
    }
}

impl Starter {
    /// Every starter, plainest first.
    pub const ALL: [Self; 8] = [
        Self::Ball,
        Self::Egg,
        Self::Drop,
        Self::Cone,
        Self::Dome,
        Self::Bean,
        Self::Dish,
        Self::Float,
    ];

    /// Its name, with a capital.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ball => "Ball",
            Self::Egg => "Egg",
            Self::Drop => "Drop",
            Self::Cone => "Cone",
            Self::Dome => "Dome",
            Self::Bean => "Bean",
            Self::Dish => "Dish",
            Self::Float => "Float",
        }
    }

    /// What it is, in a few words.
    pub const fn about(self) -> &'static str {
        match self {
            Self::Ball => "Round all over",
            Self::Egg => "Narrower at its start",
            Self::Drop => "A pointed tip, a round foot",
            Self::Cone => "A pointed tip, an open edge",
            Self::Dome => "Stands on a flat base with a card",
            Self::Bean => "An oval, begun on a chain",
            Self::Dish => "From its middle to an open rim",
            Self::Float => "A body, a neck and an open lip",
        }
    }

    /// Reads a starter's name.
    ///
    /// # Errors
    /// Lists the names, for any other word.
    pub fn parse(text: &str) -> Result<Self> {
        let same = |s: &Self| s.name().eq_ignore_ascii_case(text.trim());
        Self::ALL.into_iter().find(same).ok_or_else(|| {
            let names = Self::ALL.map(|s| s.name().to_lowercase()).join(", ");
            Error::new("starter", format!("“{text}” is none"), format!("choose one of {names}"))
        })
    }

    /// The size a starter has before anyone says otherwise.
    pub const fn usual(self) -> Dimensions {
        let (height, width) = match self {
            Self::Ball => (80.0, 80.0),
            Self::Egg => (90.0, 70.0),
            Self::Drop => (110.0, 75.0),
            Self::Cone => (90.0, 60.0),
            Self::Dome => (50.0, 90.0),
            Self::Bean => (60.0, 50.0),
            Self::Dish => (40.0, 110.0),
            Self::Float => (118.0, 78.0),
        };
        Dimensions::new(height, width)
    }

    /// The dimension it has beyond height and width.
    pub const fn third(self) -> Option<Third> {
        match self {
            Self::Bean => Some(Third::Length),
            Self::Float => Some(Third::Neck),
            _ => None,
        }
    }

    /// Least and greatest height for a width of 1. Beyond them the shape is no longer what
    /// its name says, and the cloth folds or hangs.
    const fn slimness(self) -> (f64, f64) {
        match self {
            Self::Ball | Self::Bean => (0.5, 2.0),
            Self::Egg => (0.7, 2.5),
            Self::Drop => (0.8, 4.0),
            Self::Cone => (0.4, 5.0),
            Self::Dome => (0.3, 1.5),
            Self::Dish => (0.15, 0.8),
            Self::Float => (0.9, 3.5),
        }
    }

    /// Least and greatest height at this width, whole mm.
    pub fn heights_mm(self, width_mm: f64) -> Bounds {
        let (low, high) = self.slimness();
        let low = (low * width_mm).max(LEAST_MM).ceil();
        Bounds::new(low, (high * width_mm).min(MOST_MM).floor())
    }

    /// Least, usual and greatest third dimension at this width, mm.
    pub fn thirds_mm(self, width_mm: f64) -> Option<(f64, f64, f64)> {
        let (low, usual, high) = match self.third()? {
            Third::Neck => (0.15, 0.28, 0.75),
            Third::Length => (1.1, 1.8, 4.0),
        };
        let whole = |mm: f64| (mm * width_mm).clamp(2.0, MOST_MM);
        Some((whole(low).ceil(), whole(usual).round(), whole(high).floor()))
    }

    /// The third dimension asked for or usual, checked; 0 where there is none.
    fn third_mm(self, size: &Dimensions) -> Result<f64> {
        let name = self.name().to_lowercase();
        let asked =
            [(size.neck_mm, Third::Neck, "neck"), (size.length_mm, Third::Length, "length")];
        for (mm, third, word) in asked {
            if mm.is_some() && self.third() != Some(third) {
                let what = format!("a starter of this shape has no {word}");
                return Err(Error::new(format!("{name}, {word}"), what, "leave it out"));
            }
        }
        let Some((low, usual, high)) = self.thirds_mm(size.width_mm) else { return Ok(0.0) };
        let (mm, word) = match size.neck_mm {
            Some(neck) => (Some(neck), "neck"),
            None => (size.length_mm, "length"),
        };
        mm.map_or(Ok(usual), |mm| within(&format!("{name}, {word}"), mm, low, high, "mm"))
    }

    /// The outline and the straight part of a starter of this size, mm.
    ///
    /// # Errors
    /// Names the dimension that is out of range, and its range.
    pub fn shape(self, size: &Dimensions) -> Result<(Outline, f64)> {
        let name = self.name().to_lowercase();
        within(&format!("{name}, width"), size.width_mm, LEAST_MM, MOST_MM, "mm")?;
        let Bounds { low, high } = self.heights_mm(size.width_mm);
        within(&format!("{name}, height"), size.height_mm, low, high, "mm")?;
        let third = self.third_mm(size)?;
        let straight = if self == Self::Bean { third - size.width_mm } else { 0.0 };
        let knots = self.knots(size.height_mm, 0.5 * size.width_mm, 0.5 * third);
        Ok((fitted(Outline { knots }, size)?, straight))
    }

    /// A piece of this shape and size in cloth of this gauge, named after the starter.
    ///
    /// # Errors
    /// As [`Self::shape`].
    pub fn piece(self, size: &Dimensions, gauge: Gauge) -> Result<Piece> {
        let (outline, straight_mm) = self.shape(size)?;
        Ok(Piece { straight_mm, ..Piece::new(self.name(), outline, gauge) })
    }

    /// Its knots: height `h`, widest radius `r`, neck radius `neck`, mm, all but exact.
    fn knots(self, h: f64, r: f64, neck: f64) -> Vec<Knot> {
        // From pole to pole: `radius` at the turn 0 … π of an ellipse of this height.
        let closed = |spans: u32, radius: &dyn Fn(f64) -> f64| -> Vec<Knot> {
            let knot = |i: u32| {
                let turn = PI * f64::from(i) / f64::from(spans);
                let pole = i == 0 || i == spans;
                let radius = if pole { 0.0 } else { r * radius(turn) };
                Knot::new(radius, 0.5 * h * (1.0 - turn.cos()))
            };
            (0..=spans).map(knot).collect()
        };
        // From a pole to the turn `end` of an ellipse, which lies at height `h`.
        let open = |spans: u32, end: f64| -> Vec<Knot> {
            let knot = |i: u32| {
                let turn = end * f64::from(i) / f64::from(spans);
                Knot::new(
                    r * turn.sin() / end.sin(),
                    h * (1.0 - turn.cos()) / (1.0 - end.cos()),
                )
            };
            (0..=spans).map(knot).collect()
        };
        match self {
            Self::Ball | Self::Bean => closed(4, &f64::sin),
            Self::Egg => closed(5, &|turn| turn.sin() * (1.0 - 0.2 * turn.cos())),
            Self::Drop => {
                // The teardrop curve: near its tip r grows as z, so the tip is a cone's.
                let mut knots = closed(6, &|turn| turn.sin() * (0.5 * turn).sin());
                knots[0].corner = true;
                knots
            }
            Self::Cone => {
                vec![Knot::corner(0.0, 0.0), Knot::new(0.5 * r, 0.5 * h), Knot::new(r, h)]
            }
            Self::Dome => {
                let mut knots = open(3, FRAC_PI_2);
                knots[3] = Knot { card: true, ..Knot::corner(r, h) };
                knots.push(Knot::new(0.0, h));
                knots
            }
            Self::Dish => open(3, 1.3),
            Self::Float => [
                (0.0, 0.0),
                (0.62 * r, 0.07),
                (r, 0.29),
                (neck + 0.82 * (r - neck), 0.54),
                (neck + 0.18 * (r - neck), 0.78),
                (neck, 0.91),
                (neck + 0.2 * (r - neck), 1.0),
            ]
            .map(|(radius, share)| Knot::new(radius, h * share))
            .into(),
        }
    }
}

/// The outline stretched until its curve, which passes a little beyond its knots, is as high
/// and as wide as asked. Knots lie on hundredths of a millimetre.
fn fitted(mut outline: Outline, size: &Dimensions) -> Result<Outline> {
    const STATIONS: usize = 1200;
    // Chord lengths change with the stretch, so one step is not quite enough.
    for _ in 0..6 {
        let profile = outline.profile(STATIONS);
        let across = 0.5 * size.width_mm / profile.widest_mm();
        outline = outline.scaled(across, size.height_mm / profile.height_mm());
    }
    for knot in &mut outline.knots {
        let whole = |mm: f64| (mm * 100.0).round() / 100.0;
        (knot.radius_mm, knot.height_mm) = (whole(knot.radius_mm), whole(knot.height_mm));
    }
    outline.validate()?;
    Ok(outline)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;

    #[test]
    fn every_starter_is_as_large_as_asked_and_can_be_worked() {
        for starter in Starter::ALL {
            let size = starter.usual();
            let piece = starter.piece(&size, Gauge::default()).expect("its usual size");
            let profile = piece.outline.profile(4000);
            assert!((profile.height_mm() - size.height_mm).abs() < 0.1, "{starter:?}");
            assert!((2.0 * profile.widest_mm() - size.width_mm).abs() < 0.1, "{starter:?}");
            let plan = plan(&piece).expect("a plan");
            let fit = plan.fit.expect("it has an outline");
            assert!(fit.rms_stitches < 0.3, "{starter:?}: {}", fit.rms_stitches);
        }
    }

    #[test]
    fn dimensions_out_of_range_are_named_with_their_range() {
        let said =
            |starter: Starter, size| starter.shape(&size).expect_err("refused").to_string();
        let tall = said(Starter::Ball, Dimensions::new(300.0, 50.0));
        assert_eq!(
            tall,
            "ball, height: 300 mm is out of range; give a number from 25 to 100 mm"
        );
        let neck = Dimensions { neck_mm: Some(20.0), ..Dimensions::new(80.0, 80.0) };
        assert!(said(Starter::Egg, neck).contains("leave it out"));
        let wide = Dimensions { neck_mm: Some(79.0), ..Starter::Float.usual() };
        assert!(said(Starter::Float, wide).starts_with("float, neck: 79 mm"));
        assert!(said(Starter::Cone, Dimensions::new(f64::NAN, 50.0)).contains("height"));
        assert!(said(Starter::Cone, Dimensions::new(50.0, 1e9)).contains("width"));
    }

    #[test]
    fn a_third_dimension_is_kept_to() {
        let neck = Dimensions { neck_mm: Some(30.0), ..Starter::Float.usual() };
        let (outline, _) = Starter::Float.shape(&neck).expect("a float");
        assert!((2.0 * outline.knots[5].radius_mm - 30.0).abs() < 1.0, "{outline:?}");
        let long = Dimensions { length_mm: Some(120.0), ..Starter::Bean.usual() };
        let (_, straight) = Starter::Bean.shape(&long).expect("a bean");
        assert!((straight - 70.0).abs() < 1e-9);
    }

    #[test]
    fn names_are_read_in_any_case_and_others_are_answered_with_the_list() {
        for starter in Starter::ALL {
            assert_eq!(Starter::parse(&starter.name().to_uppercase()), Ok(starter));
        }
        let error = Starter::parse("cube").expect_err("no starter").to_string();
        assert!(error.contains("ball, egg") && error.lines().count() == 1, "{error}");
    }
}
