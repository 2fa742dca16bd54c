//! Places on the half-plane through the axis, and the handles of an outline.

use serde::{Deserialize, Serialize};

/// Radii at or below this are on the axis: a pole, where the piece is closed. mm.
pub const POLE_MM: f64 = 0.01;

/// A place on the half-plane through the axis: radius `r` and height `z` along it, mm.
/// `z` grows in working order from the start pole.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rz {
    /// Distance from the axis, mm.
    pub r: f64,
    /// Position along the axis in working order, mm.
    pub z: f64,
}

impl Rz {
    /// The place at radius `r` and height `z`, mm.
    pub const fn new(r: f64, z: f64) -> Self {
        Self { r, z }
    }

    /// Straight distance to another place of the same half-plane, mm.
    pub fn distance(self, other: Self) -> f64 {
        ((self.r - other.r).powi(2) + (self.z - other.z).powi(2)).sqrt()
    }

    /// Distance to the straight piece from `a` to `b`, mm.
    pub fn distance_to_segment(self, a: Self, b: Self) -> f64 {
        let (dr, dz) = (b.r - a.r, b.z - a.z);
        let length_sq = dr * dr + dz * dz;
        let along = if length_sq > 0.0 {
            (((self.r - a.r) * dr + (self.z - a.z) * dz) / length_sq).clamp(0.0, 1.0)
        } else {
            0.0
        };
        self.distance(Self::new(a.r + along * dr, a.z + along * dz))
    }
}

/// A handle on the outline, on the curve itself.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Knot {
    /// Radius, mm. Only the first and the last knot may lie on the axis.
    pub radius_mm: f64,
    /// Height along the axis in working order, mm.
    pub height_mm: f64,
    /// Whether the curve may turn sharply here. At a pole: a pointed tip.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub corner: bool,
    /// What holds the cloth to the knot's radius, if anything does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hold: Option<Hold>,
    /// Whether a card insert keeps the cloth level from here to the next knot.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub card: bool,
}

/// What holds a round to its radius, since cloth alone holds no corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hold {
    /// A thread drawn through the round and tied.
    Cinched,
    /// Sewn to another piece.
    Sewn,
}

impl Knot {
    /// A smooth knot.
    pub const fn new(radius_mm: f64, height_mm: f64) -> Self {
        Self { radius_mm, height_mm, corner: false, hold: None, card: false }
    }

    /// A knot where the curve may turn sharply.
    pub const fn corner(radius_mm: f64, height_mm: f64) -> Self {
        Self { corner: true, ..Self::new(radius_mm, height_mm) }
    }

    /// Whether the knot lies on the axis.
    pub fn is_pole(&self) -> bool {
        self.radius_mm <= POLE_MM
    }

    /// Where the knot is.
    pub fn place(&self) -> Rz {
        Rz::new(self.radius_mm, self.height_mm)
    }
}
