//! TurnedSolid shapes by formula, none of them made of the curves that outlines are.

use plumpline_core::Rz;
use std::f64::consts::PI;

use super::Chance;

/// A turned shape of height 1.
#[derive(Debug, Clone)]
pub struct Shape {
    /// What it is.
    pub name: String,
    /// Radius at evenly spaced heights from the top, both ends included.
    radii: Vec<f64>,
}

const STEPS: usize = 2000;

impl Shape {
    fn new(name: impl Into<String>, radius: impl Fn(f64) -> f64) -> Self {
        let at = |i: usize| radius(i as f64 / STEPS as f64).max(0.0);
        Self { name: name.into(), radii: (0..=STEPS).map(at).collect() }
    }

    /// Radius at height `z`, 0 … 1; 0 beyond.
    pub fn radius(&self, z: f64) -> f64 {
        if !(0.0..=1.0).contains(&z) {
            return 0.0;
        }
        let at = z * STEPS as f64;
        let i = (at as usize).min(STEPS - 1);
        self.radii[i] + (at - i as f64) * (self.radii[i + 1] - self.radii[i])
    }

    /// Widest radius.
    pub fn widest(&self) -> f64 {
        self.radii.iter().fold(0.0, |w, &r| r.max(w))
    }

    /// The profile of a shape so high, from pole to pole, mm.
    pub fn line(&self, height: f64) -> Vec<Rz> {
        let at = |(i, r): (usize, &f64)| Rz::new(height * r, height * i as f64 / STEPS as f64);
        let mut line = vec![Rz::new(0.0, 0.0)];
        line.extend(self.radii.iter().enumerate().map(at));
        line.push(Rz::new(0.0, height));
        line
    }
}

/// Forty shapes: half composed by hand, half of waves by the chance of `seed`.
pub fn shapes(seed: u64) -> Vec<Shape> {
    let mut all = composed();
    let mut chance = Chance(seed);
    let mut i = 0;
    while all.len() < 40 {
        i += 1;
        let wide = chance.between(0.18, 0.5);
        let waves = [0.4, 0.25, 0.12].map(|most| chance.between(-most, most));
        let radius = |z: f64| {
            let turn = (1.0 - 2.0 * z).clamp(-1.0, 1.0).acos();
            let shape = 1.0
                + waves[0] * turn.cos()
                + waves[1] * (2.0 * turn).cos()
                + waves[2] * (3.0 * turn).cos();
            wide * turn.sin() * shape
        };
        let shape = Shape::new(format!("waves {i}"), radius);
        // No thinner anywhere than a hand could work.
        if (100..1900).all(|i| shape.radii[i] > 0.02) && shape.widest() < 0.75 {
            all.push(shape);
        }
    }
    all
}

fn ball(z: f64, middle: f64, radius: f64) -> f64 {
    (radius * radius - (z - middle).powi(2)).max(0.0).sqrt()
}

/// From 0 to 1 between `a` and `b`, smoothly.
fn step(z: f64, a: f64, b: f64) -> f64 {
    let t = ((z - a) / (b - a)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

fn composed() -> Vec<Shape> {
    vec![
        Shape::new("ball", |z| ball(z, 0.5, 0.5)),
        Shape::new("long ball", |z| 0.5 * ball(z, 0.5, 0.5)),
        Shape::new("flat ball", |z| 1.4 * ball(z, 0.5, 0.5)),
        Shape::new("cylinder", |_| 0.27),
        Shape::new("cone", |z| 0.34 * z),
        Shape::new("cone on its tip", |z| 0.4 * (1.0 - z)),
        Shape::new("dome", |z| 0.8 * ball(z, 1.0, 1.0)),
        Shape::new("double cone", |z| 0.7 * z.min(1.0 - z)),
        Shape::new("mushroom", |z| if z < 0.45 { ball(z, 0.45, 0.45) } else { 0.1 + 0.03 * z }),
        Shape::new("bottle", |z| {
            let neck = 0.07 + 0.03 * step(z, 0.03, 0.0);
            neck + (0.2 - neck) * step(z, 0.3, 0.48)
        }),
        Shape::new("vase with a lip", |z| 0.2 + 0.08 * (5.2 * z).cos()),
        Shape::new("float with a neck", |z| {
            let body = ball(z, 0.36, 0.36);
            let neck = 0.09 + 0.07 * step(z, 0.9, 0.99);
            body.max(if z > 0.5 { neck } else { 0.0 })
        }),
        Shape::new("spool", |z| 0.16 + 0.14 * (2.0 * z - 1.0).powi(4)),
        Shape::new("bell", |z| 0.12 + 0.3 * z.powi(3)),
        Shape::new("beads", |z| 0.05 + 0.2 * (3.0 * PI * z).sin().abs()),
        Shape::new("pear with a stem", |z| {
            let stem: f64 = if z < 0.2 { 0.022 } else { 0.0 };
            let body =
                ball(z, 0.69, 0.31).max(if z > 0.12 { ball(z, 0.34, 0.21) } else { 0.0 });
            stem.max(body)
        }),
        Shape::new("pawn", |z| {
            let head = ball(z, 0.17, 0.17);
            let stand = 0.09 + 0.16 * step(z, 0.55, 0.95);
            head.max(if z > 0.25 { stand } else { 0.0 })
        }),
        Shape::new("acorn", |z| {
            let cap = 0.31 * (1.0 - ((z - 0.4) / 0.4).powi(2)).max(0.0).sqrt();
            if z < 0.4 { cap } else { 0.27 * (1.0 - ((z - 0.4) / 0.6).powi(2)).max(0.0).sqrt() }
        }),
        Shape::new("spinning top", |z| {
            let body = 0.42 * (1.0 - ((z - 0.45) / 0.3).abs()).max(0.0).sqrt();
            body.max(if z < 0.3 { 0.035 } else { 0.02 * (1.0 - z) + 0.012 })
        }),
        Shape::new("jar with a knob", |z| {
            let knob = ball(z, 0.07, 0.07);
            let lid = if z > 0.12 { 0.28 * step(z, 0.12, 0.22) } else { 0.0 };
            if z < 0.25 { knob.max(lid) } else { 0.26 }
        }),
    ]
}
