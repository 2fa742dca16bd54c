//! Stills of a scene, drawn by all cores at once.

use plumpline_core::Result;
use plumpline_core::picture::relief::{ReliefScene, Still};
use rayon::prelude::*;

/// Rows that are drawn in one go: many bands to a core, so that none waits for a long one.
const BAND: usize = 16;

/// The still of a scene.
///
/// # Errors
/// For a picture of too many pixels, see [`Still::blank`].
pub fn still(scene: &ReliefScene<'_>) -> Result<Still> {
    let mut still = Still::blank(scene)?;
    let band = BAND * (still.size[0] as usize).max(1);
    let bands = still.pixels.par_chunks_mut(band).zip(still.map.par_chunks_mut(band));
    bands.enumerate().for_each(|(i, (pixels, map))| {
        let from = (i * BAND) as u32;
        scene.rows(from, from + BAND as u32, pixels, map);
    });
    Ok(still)
}
