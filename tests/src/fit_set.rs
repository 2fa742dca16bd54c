//! The fit set: ten profiles by formula, none dropped, none retuned.
//!
//! r(t) and z(t) = b(1 − cos t) for t from 0 to π, mm; stitch 4.6 × 4.2 mm, hoop strain 0.08.

use plumpline_core::outline::Rz;
use plumpline_core::{Firmness, Gauge, Outline, Piece};

/// A profile of the set: its name, half height b (mm) and radius by t (mm).
pub struct Shape {
    /// What the figures call it.
    pub name: &'static str,
    /// Half the height, mm.
    pub half_height_mm: f64,
    /// Radius by the parameter t, mm.
    pub radius_mm: fn(f64) -> f64,
}

/// The ten shapes in the order they are reported.
pub const SHAPES: [Shape; 10] = [
    shape("ball", 40.0, |t| 40.0 * t.sin()),
    shape("egg", 50.0, |t| 38.0 * t.sin() * (1.0 - 0.18 * t.cos())),
    shape("drop", 58.0, |t| 40.5 * t.sin() * (1.0 + 0.35 * t.cos())),
    shape("pear", 60.0, |t| 40.0 * t.sin() * (1.0 + 0.45 * t.cos() - 0.2 * (2.0 * t).cos())),
    shape("gourd", 70.0, |t| 34.0 * t.sin() * (1.0 + 0.5 * (2.0 * t).cos() + 0.15 * t.cos())),
    shape("long", 75.0, |t| 28.0 * t.sin()),
    shape("bun", 36.0, |t| 45.0 * t.sin()),
    shape("skittle", 80.0, |t| 30.0 * t.sin() * (1.0 + 0.3 * t.cos() + 0.25 * (2.0 * t).cos())),
    shape("pebble", 34.0, |t| 42.0 * t.sin() * (1.0 + 0.12 * t.cos())),
    shape("great ball", 70.0, |t| 70.0 * t.sin()),
];

const fn shape(name: &'static str, half_height_mm: f64, radius_mm: fn(f64) -> f64) -> Shape {
    Shape { name, half_height_mm, radius_mm }
}

impl Shape {
    /// `n + 1` points of the profile, evenly spaced in t.
    pub fn points(&self, n: u32) -> Vec<Rz> {
        let point = |i: u32| {
            let t = std::f64::consts::PI * f64::from(i) / f64::from(n);
            let r = if i == 0 || i == n { 0.0 } else { (self.radius_mm)(t) };
            Rz::new(r, self.half_height_mm * (1.0 - t.cos()))
        };
        (0..=n).map(point).collect()
    }

    /// The shape as a piece at `simplicity`, its points fitted as `plumpline new` fits them
    /// and scaled by `scale`. The set keeps its own gauge and an even stiffness, whatever the
    /// defaults are.
    ///
    /// # Panics
    /// If the shape cannot be fitted, which its test would show.
    pub fn piece(&self, simplicity: impl Into<Option<f64>>, scale: f64) -> Piece {
        let gauge = Gauge::of_stitch(4.6, 4.2);
        let points: Vec<Rz> =
            self.points(200).iter().map(|p| Rz::new(p.r * scale, p.z * scale)).collect();
        let outline = Outline::through_points(&points, 0.02 * gauge.stitch_width_mm())
            .expect("every shape of the set is an outline");
        let mut piece = Piece::new(self.name, outline, gauge);
        piece.firmness = Firmness(0.08);
        piece.stiffness_along = 1.0;
        piece.simplicity = simplicity.into();
        piece
    }
}
