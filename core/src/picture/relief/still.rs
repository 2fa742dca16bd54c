//! A whole picture of a scene: its pixels, what is seen at each, and its outline.

use super::body::Relief;
use super::palette::{Palette, palette};
use super::scene::ReliefScene;
use super::view::{PosedRelief, Quality, ReliefView, Seen};
use crate::error::{Error, Result};
use crate::picture::Viewpoint;

/// Most pixels of a still.
pub const MOST_PIXELS: u64 = 120_000_000;

/// Pixels from which on a file is written in less time rather than in fewer bytes.
const LARGE: usize = 2_000_000;

/// A picture and its map, row by row.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Still {
    /// Width and height, pixels.
    pub size: [u32; 2],
    /// Premultiplied RGBA, sRGB.
    pub pixels: Vec<[u8; 4]>,
    /// What is seen at each pixel.
    pub map: Vec<Seen>,
}

impl ReliefView {
    /// The view of one relief as `look` has it, in a picture just as large as it needs with
    /// `margin` pixels all around.
    pub fn around(relief: &Relief, look: &Viewpoint, margin: f32, quality: Quality) -> Self {
        let mut view = Self {
            turn_deg: look.turn_deg,
            tilt_deg: look.tilt_deg,
            scale: look.scale,
            middle: relief.ball().0,
            size: [1; 2],
            quality,
        };
        let [low, high] = relief.bounds(look.turn_deg, look.tilt_deg);
        // As much on either side of the middle: the axis stays in the middle of the picture.
        let side = |i: usize| {
            let half = high[i].max(-low[i]) * look.scale + margin.max(0.0);
            (2.0 * half).ceil().clamp(1.0, 65_535.0) as u32
        };
        view.size = [side(0), side(1)];
        view
    }
}

impl Relief {
    /// The smallest upright rectangle around it as seen turned and tilted so, mm from the
    /// middle of its [`ball`](Self::ball): x right, y down, least corner first.
    pub fn bounds(&self, turn_deg: f32, tilt_deg: f32) -> [[f32; 2]; 2] {
        let (dip, level) = tilt_deg.to_radians().sin_cos();
        let (sin, cos) = turn_deg.to_radians().sin_cos();
        let middle = self.ball().0[2];
        let (mut low, mut high) = ([f32::INFINITY; 2], [f32::NEG_INFINITY; 2]);
        for [r, z] in self.curve.corners() {
            let across = r + self.straight * cos.abs();
            let deep = (r + self.straight * sin.abs()) * dip.abs();
            let down = (z - middle) * level;
            low = [low[0].min(-across), low[1].min(down - deep)];
            high = [high[0].max(across), high[1].max(down + deep)];
        }
        let wave = self.wave();
        if low[0] > high[0] {
            return [[0.0; 2]; 2];
        }
        [low.map(|side| side - wave), high.map(|side| side + wave)]
    }

    /// A still of it alone as `look` has it, `margin` pixels all around; `colours` by yarn.
    ///
    /// # Errors
    /// For a picture of more than [`MOST_PIXELS`].
    pub fn still(&self, look: &Viewpoint, colours: &[[u8; 3]], margin: f32) -> Result<Still> {
        let view = ReliefView::around(self, look, margin, Quality::Full);
        Still::new(&ReliefScene::new(&[self.as_in(look, colours)], &view))
    }

    /// It as `look` shows it.
    pub fn as_in<'a>(&'a self, look: &Viewpoint, colours: &'a [[u8; 3]]) -> PosedRelief<'a> {
        PosedRelief { lit: look.lit, cutaway: look.cutaway, ..PosedRelief::new(self, colours) }
    }
}

impl Still {
    /// A still of nothing yet, as large as the picture of `scene`: for those who draw it in
    /// bands.
    ///
    /// # Errors
    /// For a picture of more than [`MOST_PIXELS`].
    pub fn blank(scene: &ReliefScene<'_>) -> Result<Self> {
        let size = scene.view().size;
        let pixels = u64::from(size[0]) * u64::from(size[1]);
        if pixels > MOST_PIXELS {
            return Err(Error::new(
                "picture",
                format!("it would have {} × {} pixels", size[0], size[1]),
                format!("make it smaller; {MOST_PIXELS} pixels are the most"),
            ));
        }
        let many = pixels as usize;
        Ok(Self { size, pixels: vec![[0; 4]; many], map: vec![Seen::default(); many] })
    }

    /// The still of a scene, drawn at once.
    ///
    /// # Errors
    /// As [`Self::blank`].
    pub fn new(scene: &ReliefScene<'_>) -> Result<Self> {
        let mut still = Self::blank(scene)?;
        scene.rows(0, still.size[1], &mut still.pixels, &mut still.map);
        Ok(still)
    }

    /// What is seen at a place, pixels from the left and from the top.
    pub fn pick(&self, x: f32, y: f32) -> Option<Seen> {
        let [wide, tall] = self.size;
        if !(0.0..wide as f32).contains(&x) || !(0.0..tall as f32).contains(&y) {
            return None;
        }
        let at = y as usize * wide as usize + x as usize;
        self.map.get(at).copied().filter(|seen| seen.part > 0)
    }

    /// The pixels on a ground of one colour, RGB.
    pub fn on(&self, ground: [u8; 3]) -> Vec<u8> {
        let mut out = Vec::with_capacity(3 * self.pixels.len());
        for pixel in &self.pixels {
            let clear = 255 - u32::from(pixel[3]);
            out.extend([0, 1, 2].map(|c| {
                let under = (u32::from(ground[c]) * clear + 127) / 255;
                (u32::from(pixel[c]) + under).min(255) as u8
            }));
        }
        out
    }

    /// The pixels as image files have them: RGBA, not premultiplied.
    pub fn straight(&self) -> Vec<u8> {
        let mut out = Vec::with_capacity(4 * self.pixels.len());
        for &pixel in &self.pixels {
            out.extend(straight(pixel));
        }
        out
    }

    /// The still as a PNG file, on `ground` or clear.
    ///
    /// # Errors
    /// For a still without pixels.
    pub fn png(&self, ground: Option<[u8; 3]>) -> Result<Vec<u8>> {
        let mut file = Vec::new();
        let mut encoder = png::Encoder::new(&mut file, self.size[0], self.size[1]);
        encoder.set_color(match ground {
            Some(_) => png::ColorType::Rgb,
            None => png::ColorType::Rgba,
        });
        // A large picture would take longer to write than to draw.
        let is_large = self.pixels.len() > LARGE;
        encoder.set_compression(match is_large {
            true => png::Compression::Fast,
            false => png::Compression::Balanced,
        });
        let bytes = ground.map_or_else(|| self.straight(), |colour| self.on(colour));
        written(encoder, &bytes)?;
        Ok(file)
    }

    /// The still as a PNG file of at most 256 colours on clear ground: about a third as large,
    /// for where a page shows it small.
    ///
    /// # Errors
    /// For a still without pixels.
    pub fn small_png(&self) -> Result<Vec<u8>> {
        let Palette { colours, pixels } = palette(&self.pixels);
        let straight = colours.iter().map(|&pixel| straight(pixel));
        let (mut rgb, mut alpha) = (Vec::new(), Vec::new());
        for [r, g, b, a] in straight {
            rgb.extend([r, g, b]);
            alpha.push(a);
        }
        let mut file = Vec::new();
        let mut encoder = png::Encoder::new(&mut file, self.size[0], self.size[1]);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_palette(rgb);
        encoder.set_trns(alpha);
        encoder.set_compression(png::Compression::High);
        // Neighbours in a palette are no neighbours in colour.
        encoder.set_filter(png::Filter::NoFilter);
        written(encoder, &pixels)?;
        Ok(file)
    }

    /// The outline of what is covered by half and more: closed rings of places, pixels from
    /// the left and from the top, within a fifth of a pixel.
    pub fn outline(&self) -> Vec<Vec<[f32; 2]>> {
        super::outline::rings(self.size, &self.pixels)
    }
}

/// A premultiplied pixel as image files have it.
fn straight([r, g, b, a]: [u8; 4]) -> [u8; 4] {
    if a == 255 {
        return [r, g, b, a];
    }
    let own = |c: u8| match a {
        0 => 0,
        a => ((u32::from(c) * 255 + u32::from(a) / 2) / u32::from(a)).min(255) as u8,
    };
    [own(r), own(g), own(b), a]
}

fn written(mut encoder: png::Encoder<'_, &mut Vec<u8>>, bytes: &[u8]) -> Result<()> {
    encoder.set_depth(png::BitDepth::Eight);
    let written = encoder.write_header().and_then(|mut w| w.write_image_data(bytes));
    written.map_err(|e| Error::new("picture", e.to_string(), "make it larger"))
}
