//! Stills of a scene, drawn by all cores at once.

use egui::ColorImage;
use plumpline_core::Result;
use plumpline_core::picture::relief::{ReliefScene, Still};
use rayon::prelude::*;

/// Rows of a band: few, so that many bands come to a core and none waits for a long one.
const BAND: usize = 12;
/// Bands that are drawn before it is asked whether anyone still waits for the picture.
const BANDS: usize = 8;

/// The still of a scene.
///
/// # Errors
/// For a picture of too many pixels, see [`Still::blank`].
pub fn still(scene: &ReliefScene<'_>) -> Result<Still> {
    let mut still = Still::blank(scene)?;
    draw(scene, &mut still, || false);
    Ok(still)
}

/// The still of a scene, unless it becomes vain or has too many pixels.
pub(super) fn still_unless(
    scene: &ReliefScene<'_>,
    is_vain: impl Fn() -> bool,
) -> Option<Still> {
    let mut still = Still::blank(scene).ok()?;
    draw(scene, &mut still, is_vain).then_some(still)
}

/// The pixels of a still, taken out of it, as an image for the screen.
pub(super) fn image_of(still: &mut Still) -> ColorImage {
    let size = still.size.map(|s| s as usize);
    let pixels = std::mem::take(&mut still.pixels);
    ColorImage::from_rgba_premultiplied(size, pixels.as_flattened())
}

/// Draws `still` from above down; returns whether it came to the end.
fn draw(scene: &ReliefScene<'_>, still: &mut Still, is_vain: impl Fn() -> bool) -> bool {
    let band = BAND * (still.size[0] as usize).max(1);
    let goes = still.pixels.chunks_mut(BANDS * band).zip(still.map.chunks_mut(BANDS * band));
    for (go, (pixels, map)) in goes.enumerate() {
        if is_vain() {
            return false;
        }
        let bands = pixels.par_chunks_mut(band).zip(map.par_chunks_mut(band));
        bands.enumerate().for_each(|(i, (pixels, map))| {
            let from = ((go * BANDS + i) * BAND) as u32;
            scene.rows(from, from + BAND as u32, pixels, map);
        });
    }
    true
}
