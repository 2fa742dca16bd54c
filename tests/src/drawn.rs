//! Random outlines as people draw them, for measuring what no outline was tuned to.
//!
//! Each seed is one piece: a kind of body, its proportions, a gauge and a firmness. Every kind
//! is given by its silhouette, in shares of height and greatest radius, and then shaken.

use std::f64::consts::PI;

use plumpline_core::{Firmness, Gauge, Knot, Outline, Piece};

use crate::any::rest_of;
use crate::rng::Rng;

/// A piece drawn by chance.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// What it was drawn from.
    pub seed: u64,
    /// Which kind of body it is.
    pub kind: Kind,
    /// The piece, every choice but its firmness at its default.
    pub piece: Piece,
}

/// Kinds of bodies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A smooth closed body by a few harmonics.
    Harmonic,
    /// A closed body whose halves are mirror images: ball, bead or peanut.
    Bead,
    /// Open at both ends, halves mirror images.
    Barrel,
    /// Flat and wide, halves mirror images.
    Bun,
    /// A narrow stem under a wide cap.
    Cap,
    /// A body drawn in to a neck that stays open.
    Bottle,
    /// From a small closed top to a wide open rim.
    Bell,
    /// A body with a pointed tip at one end.
    Tip,
    /// A long limb with a knob at its end.
    Limb,
    /// A flat base with a sharp rim, and a dome on it.
    Dome,
    /// Two or three swellings, one above the other.
    Lantern,
    /// A flat base and a steep wall, open above.
    Bowl,
}

/// Every kind.
pub const KINDS: [Kind; 12] = [
    Kind::Harmonic,
    Kind::Bead,
    Kind::Barrel,
    Kind::Bun,
    Kind::Cap,
    Kind::Bottle,
    Kind::Bell,
    Kind::Tip,
    Kind::Limb,
    Kind::Dome,
    Kind::Lantern,
    Kind::Bowl,
];

/// Swatches as people count them: stitches and rounds to 10 cm.
const SWATCHES: [(f64, f64); 7] = [
    (22.0, 24.0),
    (20.0, 21.0),
    (16.0, 17.5),
    (25.0, 31.0),
    (18.0, 18.0),
    (30.0, 33.0),
    (21.0, 20.0),
];

impl Kind {
    /// Whether the second half of such a body mirrors the first.
    pub fn is_mirrored(self) -> bool {
        matches!(self, Self::Bead | Self::Barrel | Self::Bun)
    }

    /// Height over greatest width, and height in mm: least and most of each.
    fn sizes(self) -> [(f64, f64); 2] {
        match self {
            Self::Harmonic => [(0.9, 1.9), (50.0, 150.0)],
            Self::Bead => [(0.85, 2.2), (45.0, 140.0)],
            Self::Barrel => [(0.7, 1.8), (50.0, 130.0)],
            Self::Bun => [(0.55, 0.8), (40.0, 80.0)],
            Self::Cap => [(0.9, 1.4), (70.0, 140.0)],
            Self::Bottle => [(1.2, 2.2), (80.0, 170.0)],
            Self::Bell => [(0.8, 1.5), (50.0, 130.0)],
            Self::Tip => [(1.0, 2.0), (60.0, 150.0)],
            Self::Limb => [(2.4, 4.5), (80.0, 170.0)],
            Self::Dome => [(0.6, 1.3), (45.0, 110.0)],
            Self::Lantern => [(1.5, 2.6), (90.0, 180.0)],
            Self::Bowl => [(0.5, 1.1), (45.0, 100.0)],
        }
    }

    /// Knots in shares of the greatest radius and of the height.
    fn silhouette(self, rng: &mut Rng) -> Vec<Knot> {
        let mut any = |low: f64, high: f64| rng.between(low, high);
        let pole = |at: f64| Knot::new(0.0, at);
        match self {
            Self::Harmonic => {
                let (lean, pinch, skew) = (any(-0.4, 0.4), any(-0.25, 0.25), any(-0.1, 0.1));
                let spans = any(5.0, 8.99) as u32;
                let radius = |t: f64| {
                    let waves =
                        1.0 + lean * t.cos() + pinch * (2.0 * t).cos() + skew * (3.0 * t).cos();
                    t.sin() * waves
                };
                let turn = |i: u32| PI * f64::from(i) / f64::from(spans);
                let widest = (1..spans).map(|i| radius(turn(i))).fold(0.0, f64::max);
                let inner = (1..spans)
                    .map(|i| Knot::new(radius(turn(i)) / widest, 0.5 * (1.0 - turn(i).cos())));
                std::iter::once(pole(0.0)).chain(inner).chain([pole(1.0)]).collect()
            }
            Self::Bead => {
                let (low, waist) = (any(0.6, 0.85), any(0.6, 1.25));
                let at = any(0.13, 0.2);
                mirrored(&[pole(0.0), Knot::new(low, at)], Knot::new(waist, 0.5))
            }
            Self::Barrel => {
                let (rim, at, low) = (any(0.4, 0.9), any(0.2, 0.3), any(0.85, 1.1));
                mirrored(&[Knot::new(rim, 0.0), Knot::new(low, at)], Knot::new(1.0, 0.5))
            }
            Self::Bun => {
                let (low, at) = (any(0.66, 0.78), any(0.12, 0.17));
                mirrored(&[pole(0.0), Knot::new(low, at)], Knot::new(1.0, 0.5))
            }
            Self::Cap => {
                let (foot, stem, under) = (any(0.3, 0.45), any(0.25, 0.4), any(0.45, 0.6));
                vec![
                    pole(0.0),
                    Knot::new(foot, any(0.06, 0.1)),
                    Knot::new(stem, any(0.3, 0.4)),
                    Knot::new(1.0, under + any(0.05, 0.12)),
                    Knot::new(any(0.6, 0.75), any(0.85, 0.92)),
                    pole(1.0),
                ]
            }
            Self::Bottle => vec![
                pole(0.0),
                Knot::new(any(0.6, 0.85), any(0.08, 0.13)),
                Knot::new(1.0, any(0.3, 0.45)),
                Knot::new(any(0.35, 0.55), any(0.68, 0.8)),
                Knot::new(any(0.3, 0.5), 1.0),
            ],
            Self::Bell => vec![
                pole(0.0),
                Knot::new(any(0.4, 0.6), any(0.12, 0.2)),
                Knot::new(any(0.6, 0.8), any(0.5, 0.65)),
                Knot::new(1.0, 1.0),
            ],
            Self::Tip => {
                let mut knots = vec![
                    Knot::corner(0.0, 0.0),
                    Knot::new(any(0.35, 0.55), any(0.28, 0.36)),
                    Knot::new(1.0, any(0.62, 0.75)),
                    pole(1.0),
                ];
                if any(0.0, 1.0) < 0.5 {
                    knots.reverse();
                    knots.iter_mut().for_each(|k| k.height_mm = 1.0 - k.height_mm);
                }
                knots
            }
            Self::Limb => {
                let (arm, knob) = (any(0.45, 0.7), any(0.85, 0.93));
                vec![
                    if any(0.0, 1.0) < 0.5 { pole(0.0) } else { Knot::new(arm, 0.0) },
                    Knot::new(arm * any(0.9, 1.1), any(0.1, 0.15)),
                    Knot::new(arm * any(0.8, 1.0), any(0.4, 0.6)),
                    Knot::new(1.0, knob),
                    pole(1.0),
                ]
            }
            Self::Dome => vec![
                pole(0.0),
                Knot::corner(any(0.85, 1.0), 0.0),
                Knot::new(any(0.85, 1.0), any(0.35, 0.5)),
                pole(1.0),
            ],
            Self::Lantern => {
                let swellings = if any(0.0, 1.0) < 0.6 { 2 } else { 3 };
                let mut knots = vec![pole(0.0)];
                for i in 0..swellings {
                    let at = (f64::from(i) + 0.5) / f64::from(swellings);
                    knots.push(Knot::new(any(0.75, 1.0), at + any(-0.03, 0.03)));
                    if i + 1 < swellings {
                        let neck = f64::from(i + 1) / f64::from(swellings);
                        knots.push(Knot::new(any(0.4, 0.65), neck + any(-0.03, 0.03)));
                    }
                }
                knots.push(pole(1.0));
                knots
            }
            Self::Bowl => vec![
                pole(0.0),
                Knot::corner(any(0.6, 0.8), 0.0),
                Knot::new(any(0.85, 1.0), any(0.4, 0.6)),
                Knot::new(any(0.85, 1.0), 1.0),
            ],
        }
    }
}

/// `half`, `middle`, and `half` again the other way round.
fn mirrored(half: &[Knot], middle: Knot) -> Vec<Knot> {
    let back = half.iter().rev().map(|k| Knot::new(k.radius_mm, 1.0 - k.height_mm));
    half.iter().copied().chain([middle]).chain(back).collect()
}

/// The piece of this `seed`: between 10 and 80 rounds, at least 18 stitches at its widest.
pub fn drawn(seed: u64) -> Drawn {
    let mut rng = Rng::new(seed.wrapping_mul(0x9E37_79B9) ^ 0x6472_6177);
    let kind = KINDS[seed as usize % KINDS.len()];
    loop {
        let [slim, height] = kind.sizes();
        let height = rng.by_ratio(height.0, height.1);
        let radius = 0.5 * height / rng.between(slim.0, slim.1);
        let mut knots = kind.silhouette(&mut rng);
        for knot in &mut knots {
            knot.radius_mm *= radius;
            knot.height_mm *= height;
        }
        let (stitches, rounds) = SWATCHES[(rng.unit() * SWATCHES.len() as f64) as usize];
        let gauge = Gauge::per(stitches, rounds, 100.0);
        let firmness = [0.02, 0.05, 0.05, 0.08][(rng.unit() * 4.0) as usize];
        let Ok(outline) = Outline::new(knots) else { continue };
        let mut piece = Piece::new(format!("{kind:?} {seed}"), outline, gauge);
        piece.firmness = Firmness(firmness);
        let worked = rest_of(&piece).length_mm() / gauge.round_height_mm();
        let widest =
            2.0 * PI * piece.outline.profile(400).widest_mm() / gauge.stitch_width_mm();
        if (10.0..80.0).contains(&worked) && widest >= 18.0 {
            return Drawn { seed, kind, piece };
        }
    }
}
