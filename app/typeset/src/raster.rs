//! The stuffed body as pixels. It has tens of thousands of polygons, more than a page should
//! carry; pixels fine enough for print are smaller and show no seams between them.

use std::collections::VecDeque;
use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::sync::{Mutex, PoisonError};

use plumpline_core::picture::Scene;
use plumpline_core::sheet::Pictures;
use resvg::tiny_skia::{FillRule, Paint, PathBuilder, Pixmap, Transform};
use typst::foundations::Bytes;

use crate::{Error, Result};

/// Bodies kept.
const KEPT: usize = 64;
/// Room around a body, pixels.
const MARGIN: f32 = 3.0;

/// A body as a PNG file.
#[derive(Debug, Clone)]
pub(crate) struct BodyPicture {
    pub(crate) png: Bytes,
    /// Width and height on paper at the scale asked for, mm of the body itself.
    pub(crate) size_mm: [f32; 2],
}

/// Bodies drawn lately, by what they show.
#[derive(Debug, Default)]
pub(crate) struct BodyCache(Mutex<VecDeque<(u64, BodyPicture)>>);

impl BodyCache {
    /// The body at `scale` pixels a millimetre.
    pub(crate) fn picture(&self, pictures: &Pictures, scale: f32) -> Result<BodyPicture> {
        let scene = pictures.body.scene(&Pictures::look(scale), &pictures.colours);
        let key = fingerprint(&scene);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, picture)) = kept.iter().find(|(k, _)| *k == key) {
            return Ok(picture.clone());
        }
        let picture = drawn(&scene, scale)?;
        kept.push_back((key, picture.clone()));
        if kept.len() > KEPT {
            kept.pop_front();
        }
        Ok(picture)
    }
}

fn fingerprint(scene: &Scene) -> u64 {
    let mut hasher = DefaultHasher::new();
    for polygon in scene.polygons() {
        polygon.colour.hash(&mut hasher);
        for [x, y] in scene.corners(polygon) {
            (x.to_bits(), y.to_bits()).hash(&mut hasher);
        }
    }
    hasher.finish()
}

fn drawn(scene: &Scene, scale: f32) -> Result<BodyPicture> {
    let [low, high] = scene.bounds();
    let wide = high[0] - low[0] + 2.0 * MARGIN;
    let tall = high[1] - low[1] + 2.0 * MARGIN;
    let too_large = || Error(format!("a body of {wide:.0} by {tall:.0} pixels is too large"));
    let mut pixels =
        Pixmap::new(wide.ceil() as u32, tall.ceil() as u32).ok_or_else(too_large)?;
    let moved = Transform::from_translate(MARGIN - low[0], MARGIN - low[1]);
    for polygon in scene.polygons() {
        let mut path = PathBuilder::new();
        for (i, [x, y]) in scene.corners(polygon).iter().enumerate() {
            if i == 0 { path.move_to(*x, *y) } else { path.line_to(*x, *y) }
        }
        path.close();
        let Some(path) = path.finish() else { continue };
        let mut paint = Paint::default();
        let [r, g, b] = polygon.colour;
        paint.set_color_rgba8(r, g, b, 255);
        pixels.fill_path(&path, &paint, FillRule::Winding, moved, None);
    }
    let png = pixels.encode_png().map_err(|e| Error(e.to_string()))?;
    let size_mm = [pixels.width() as f32 / scale, pixels.height() as f32 / scale];
    Ok(BodyPicture { png: Bytes::new(png), size_mm })
}
