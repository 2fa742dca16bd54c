//! A shape as a camera sees it: light, shadow, colour, tilt, blur, noise and JPEG.

use image::codecs::jpeg::JpegEncoder;
use image::{RgbImage, imageops};

use super::{Chance, Shape};

/// What is done to a picture; none of it by default.
#[derive(Debug, Clone, Copy, Default)]
pub struct Conditions {
    /// Standard deviation of the noise, grey levels.
    pub noise: f64,
    /// Standard deviation of the blur, pixels.
    pub blur: f64,
    /// Lean of the thing's top to the right, degrees.
    pub tilt: f64,
    /// How much brighter one side of the picture is than its middle, as a share.
    pub gradient: f64,
    /// JPEG quality, if it is one.
    pub jpeg: Option<u8>,
    /// Place of the thing's middle from the picture's, as a share of what room there is.
    pub off: (f64, f64),
    /// Whether it throws a shadow on its background.
    pub shadow: bool,
    /// Whether the thing is striped and shines.
    pub lively: bool,
    /// What no turned shape has.
    pub odd: OddShape,
}

/// What is drawn that no turned shape has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum OddShape {
    /// Nothing.
    #[default]
    None,
    /// A bow on the right.
    Handle,
    /// A bow on either side.
    Handles,
    /// An ear on the right of the top.
    Ear,
    /// An ear on either side of the top.
    Ears,
    /// An ear on either side of the foot.
    Feet,
}

impl OddShape {
    fn is_bow(self) -> bool {
        matches!(self, Self::Handle | Self::Handles)
    }
}

impl Conditions {
    /// All of them at once, by chance.
    pub fn by_chance(chance: &mut Chance) -> Self {
        Self {
            noise: chance.between(0.0, 9.0),
            blur: chance.between(0.0, 2.5),
            tilt: chance.between(-30.0, 30.0),
            gradient: chance.between(-0.25, 0.25),
            jpeg: Some(chance.between(45.0, 95.0) as u8),
            off: (chance.between(-1.0, 1.0), chance.between(-1.0, 1.0)),
            shadow: chance.between(0.0, 1.0) < 0.4,
            lively: chance.between(0.0, 1.0) < 0.4,
            odd: OddShape::None,
        }
    }
}

/// The file of a picture of `shape` with `tall` pixels of height (and about a third more), in
/// colours by chance.
pub fn draw(shape: &Shape, tall: f64, conditions: &Conditions, chance: &mut Chance) -> Vec<u8> {
    let lean = conditions.tilt.to_radians();
    let wide = 2.0 * shape.widest() * tall;
    let wide = if conditions.odd.is_bow() { 1.6 * wide } else { wide };
    let all = match conditions.odd {
        OddShape::Ear | OddShape::Ears | OddShape::Feet => 1.7 * tall,
        _ => tall,
    };
    let room =
        |along: f64, across: f64| 1.32 * (along * lean.cos() + across * lean.sin().abs());
    let (width, height) =
        (1.32 * (wide * lean.cos() + all * lean.sin().abs()), room(all, wide));
    let middle = (
        0.5 * width + 0.09 * width * conditions.off.0,
        0.5 * height + 0.09 * height * conditions.off.1,
    );
    let (ground, thing) = colours(chance);
    let second = thing.map(|c| 0.75 * c + 0.25 * (255.0 - c));
    let second = if conditions.lively && apart(second, ground) > 70.0 { second } else { thing };
    let light = chance.between(-0.8, 0.8);
    let pixel = |x: f64, y: f64| -> [f64; 3] {
        let (dx, dy) = (x - middle.0, y - middle.1);
        // Along the axis from the top, and across it, as shares of the height.
        let along = (-dx * lean.sin() + dy * lean.cos()) / tall + 0.5;
        let across = (dx * lean.cos() + dy * lean.sin()) / tall;
        let radius = shape.radius(along);
        let lit = 1.0
            + conditions.gradient * (2.0 * x / width - 1.0)
            + 0.4 * conditions.gradient * (2.0 * y / height - 1.0);
        let on_body = across.abs() < radius;
        let on_odd = match conditions.odd {
            OddShape::None => false,
            OddShape::Handle => on_handle(shape, along, across),
            OddShape::Handles => on_handle(shape, along, across.abs()),
            OddShape::Ear => on_ear(shape, along, across),
            OddShape::Ears => on_ear(shape, along, across.abs()),
            OddShape::Feet => on_ear(shape, 1.0 - along, across.abs()),
        };
        let colour = if on_body {
            let n = across / radius;
            let facing = (1.0 - n * n).max(0.0).sqrt();
            let lambert = 0.72 + 0.28 * (0.75 * facing + 0.5 * light * n);
            let base = if (along * 9.0).rem_euclid(1.0) < 0.5 { thing } else { second };
            let shine = if conditions.lively {
                (-((n - 0.35 * light).powi(2) + (along - 0.35).powi(2) * 30.0) * 40.0).exp()
            } else {
                0.0
            };
            base.map(|c| c * lambert + (250.0 - c * lambert) * 0.8 * shine)
        } else if on_odd {
            thing
        } else {
            let dark = if conditions.shadow { shadow(shape, along, across) } else { 0.0 };
            ground.map(|c| c * (1.0 - 0.4 * dark))
        };
        colour.map(|c| c * lit)
    };
    let (columns, rows) = (width.ceil() as u32, height.ceil() as u32);
    let mut picture = RgbImage::from_fn(columns, rows, |x, y| {
        let mut sum = [0.0; 3];
        for i in 0..9 {
            let (u, v) =
                (f64::from(i % 3) / 3.0 + 1.0 / 6.0, f64::from(i / 3) / 3.0 + 1.0 / 6.0);
            let colour = pixel(f64::from(x) + u, f64::from(y) + v);
            for (sum, c) in sum.iter_mut().zip(colour) {
                *sum += c / 9.0;
            }
        }
        image::Rgb(sum.map(|c| c.round().clamp(0.0, 255.0) as u8))
    });
    if conditions.blur > 0.2 {
        picture = imageops::blur(&picture, conditions.blur as f32);
    }
    if conditions.noise > 0.0 {
        for channel in picture.iter_mut() {
            let loud = f64::from(*channel) + conditions.noise * chance.normal();
            *channel = loud.round().clamp(0.0, 255.0) as u8;
        }
    }
    let mut file = Vec::new();
    match conditions.jpeg {
        Some(quality) => {
            JpegEncoder::new_with_quality(&mut file, quality)
                .encode_image(&picture)
                .expect("JPEG");
        }
        None => {
            let mut out = std::io::Cursor::new(&mut file);
            picture.write_to(&mut out, image::ImageFormat::Png).expect("PNG");
        }
    }
    file
}

/// Colours of a background and of a thing that can be told from it however it is lit.
fn colours(chance: &mut Chance) -> ([f64; 3], [f64; 3]) {
    loop {
        let light = chance.between(60.0, 215.0);
        let ground = [0; 3].map(|_| (light + chance.between(-25.0, 25.0)).clamp(30.0, 225.0));
        let thing = [0; 3].map(|_| chance.between(20.0, 235.0));
        let told =
            [0.7, 0.85, 1.0].iter().all(|lit| apart(thing.map(|c| c * lit), ground) > 70.0);
        if told {
            return (ground, thing);
        }
    }
}

fn apart(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b).powi(2)).sum::<f64>().sqrt()
}

/// How dark the shadow is behind and beneath the thing: its own shape, moved aside and soft.
fn shadow(shape: &Shape, along: f64, across: f64) -> f64 {
    let (along, across) = (along - 0.04, across - 0.07);
    let within = shape.radius(along.clamp(0.0, 1.0)) - across.abs();
    let beyond = (along - along.clamp(0.0, 1.0)).abs();
    (0.5 + (within - beyond) / 0.06).clamp(0.0, 1.0)
}

/// A bow on the right of the middle.
fn on_handle(shape: &Shape, along: f64, across: f64) -> bool {
    let (high, out) = (0.17, 0.55 * shape.widest());
    let root = shape.radius(0.5) - 0.02;
    let (v, u) = ((along - 0.5) / high, (across - root) / (out + 0.02));
    let ring = (v * v + u * u).sqrt();
    across > 0.0 && (0.72..1.0).contains(&ring)
}

/// An ear on the right of the top: an ellipse that stands on the body.
fn on_ear(shape: &Shape, along: f64, across: f64) -> bool {
    let (from_axis, wide, high) =
        (0.5 * shape.widest(), 0.16 * shape.widest(), 0.5 * shape.widest());
    ((across - from_axis) / wide).hypot((along + 0.2 * shape.widest()) / high) < 1.0
}
