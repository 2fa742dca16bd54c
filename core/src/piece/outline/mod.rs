//! The outline: the side profile a person wants, as knots and the smooth curve through them.
//!
//! [`Knot`]s are what is saved and dragged. [`spline`] turns them into a curve whose
//! curvature is continuous except at corner knots; [`Profile`] is that curve sampled evenly
//! by arc length with its curvatures; [`points`] goes the other way, from points to knots.

mod knot;
pub mod points;
mod profile;
mod spline;

use serde::{Deserialize, Serialize};

pub use knot::{Hold, Knot, POLE_MM, Rz};
pub use profile::{Profile, Station};

use crate::error::{Error, Result, within};

/// Largest radius or height a knot may have: three metres either way. mm.
pub const LARGEST_MM: f64 = 3000.0;

/// The wanted side profile, as knots in working order.
///
/// An end on the axis is closed (a pole); any other end is open.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Outline {
    /// The knots in working order; at least two.
    pub knots: Vec<Knot>,
}

impl Outline {
    /// An outline through `knots`, checked.
    ///
    /// # Errors
    /// As [`Outline::validate`].
    pub fn new(knots: Vec<Knot>) -> Result<Self> {
        let outline = Self { knots };
        outline.validate()?;
        Ok(outline)
    }

    /// Whether the piece begins at a pole (a magic ring), not at an open edge.
    pub fn starts_closed(&self) -> bool {
        self.knots.first().is_some_and(Knot::is_pole)
    }

    /// Whether the piece ends at a pole (drawn shut), not at an open edge.
    pub fn finishes_closed(&self) -> bool {
        self.knots.last().is_some_and(Knot::is_pole)
    }

    /// The curve sampled at `intervals + 1` places evenly spaced by arc length.
    pub fn profile(&self, intervals: usize) -> Profile {
        let mut profile = Profile::sample(&spline::curve(&self.knots), intervals);
        profile.lay_cards(&self.knots);
        profile
    }

    /// The curve as cubic Béziers in working order, for drawing (x = radius, y = height, mm).
    pub fn beziers(&self) -> Vec<kurbo::CubicBez> {
        spline::curve(&self.knots)
    }

    /// The same outline worked from its other end.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let knots = &self.knots;
        let top = knots.iter().fold(f64::NEG_INFINITY, |top, k| k.height_mm.max(top));
        let low = knots.iter().fold(f64::INFINITY, |low, k| k.height_mm.min(low));
        let turned = |i: usize| {
            let knot = knots[i];
            // A card lies between a knot and the next, which is now the one before.
            let card = i > 0 && knots[i - 1].card;
            Knot { height_mm: top + low - knot.height_mm, card, ..knot }
        };
        Self { knots: (0..knots.len()).rev().map(turned).collect() }
    }

    /// The same outline with radii times `across` and heights times `along`.
    #[must_use]
    pub fn scaled(&self, across: f64, along: f64) -> Self {
        let scale = |k: &Knot| Knot {
            radius_mm: k.radius_mm * across,
            height_mm: k.height_mm * along,
            ..*k
        };
        Self { knots: self.knots.iter().map(scale).collect() }
    }

    /// Refuses an outline that no cloth could follow even roughly: too few knots, numbers
    /// that are not numbers or beyond [`LARGEST_MM`], knots on top of one another, a curve
    /// that crosses the axis or itself.
    ///
    /// # Errors
    /// Names the knot (counted from 1) and the mend.
    pub fn validate(&self) -> Result<()> {
        let knots = &self.knots;
        if knots.len() < 2 {
            return Err(Error::new("outline", "fewer than two knots", "add a knot"));
        }
        if knots.len() > 400 {
            return Err(Error::new("outline", "more than 400 knots", "use fewer knots"));
        }
        for (i, knot) in knots.iter().enumerate() {
            let at = format!("outline, knot {}", i + 1);
            within(&format!("{at}, radius_mm"), knot.radius_mm, 0.0, LARGEST_MM, "mm")?;
            within(&format!("{at}, height_mm"), knot.height_mm, -LARGEST_MM, LARGEST_MM, "mm")?;
            if self.is_inner_pole(i) {
                return Err(Error::new(at, "it lies on the axis", "move it out from the axis"));
            }
            if self.is_on_the_one_before(i) {
                return Err(Error::new(
                    at,
                    "it lies on the knot before it",
                    "move or remove it",
                ));
            }
        }
        let profile = self.profile(240);
        profile.validate()
    }

    fn is_inner_pole(&self, i: usize) -> bool {
        i > 0 && i + 1 < self.knots.len() && self.knots[i].is_pole()
    }

    fn is_on_the_one_before(&self, i: usize) -> bool {
        i > 0 && self.knots[i].place().distance(self.knots[i - 1].place()) < 0.05
    }

    /// Whether knots are refused because they lie on one another or on the axis.
    pub(crate) fn is_crowded(&self) -> bool {
        (0..self.knots.len()).any(|i| self.is_inner_pole(i) || self.is_on_the_one_before(i))
    }
}
