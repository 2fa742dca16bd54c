//! A background of one colour, found without asking.

use super::surface::{ColourSurface, distance};
use super::{Separated, edge, one_piece, shadow, smooth};
use crate::mask::Mask;
use crate::picture::Raster;
use crate::work::{Step, Work, refused};

/// What differs from the background by so many of its own spreads is not background.
const SPREADS: f64 = 5.0;
/// Nor by less than this, grey levels: what JPEG leaves behind.
const LEAST_OFF: f64 = 6.0;
/// A border of which less than this is of one colour is not plain.
const LEAST_PLAIN: f64 = 0.6;
/// A background that varies by more than this is not plain, grey levels.
const MOST_SPREAD: f64 = 14.0;
/// How far beyond the first edge the background is certain, pixels.
const CLEAR: f32 = 10.0;
/// Most places from which the background's colours are learned.
const MOST_PLACES: usize = 20_000;

/// The background as it was found: its colours, and what is too far off to belong to it.
pub(super) struct FoundGround {
    pub(super) colours: Vec<[f32; 3]>,
    /// The background's own colour at every pixel.
    pub(super) ground: Vec<[f32; 3]>,
    pub(super) threshold: f64,
}

pub(super) fn separate(raster: &Raster, work: &Work<'_>) -> Step<Separated> {
    let size = raster.size();
    let colours = smooth::colours(&raster.colours, size, 1);
    work.reached(0.15)?;
    let border = border(size);
    let not_plain = || {
        refused(
            "its background is not of one colour",
            "draw a rectangle around the thing and stroke over it",
        )
    };
    let (surface, spread) =
        ColourSurface::fit(&colours, size, &border).ok_or_else(not_plain)?;
    let mut threshold = (SPREADS * spread).max(LEAST_OFF);
    let within = border.iter().filter(|&&i| surface.off(i, colours[i]) <= threshold).count();
    if (within as f64) < LEAST_PLAIN * border.len() as f64 || spread > MOST_SPREAD {
        return Err(not_plain());
    }
    let stands_out = |ground: &[[f32; 3]], threshold: f64| {
        Mask::from_fn(size, |i| distance(ground[i], colours[i]) > threshold)
    };
    let mut ground = surface.everywhere();
    let mut mask = stands_out(&ground, threshold);
    work.reached(0.25)?;
    // Once more from all of the background, not its border alone.
    let field = mask.largest().0.filled().field();
    let clear = thinned((0..field.values.len()).filter(|&i| field.values[i] < -CLEAR));
    if let Some((wider, spread)) = ColourSurface::fit(&colours, size, &clear) {
        ground = wider.everywhere();
        threshold = (SPREADS * spread).max(LEAST_OFF);
        mask = stands_out(&ground, threshold);
    }
    work.reached(0.35)?;
    let found = FoundGround { colours, ground, threshold };
    let (largest, next) = mask.largest();
    let (mask, without_shadow) = shadow::left_out(&found, largest, size, work)?;
    work.reached(0.48)?;
    let background = if without_shadow {
        edge::Background::Shaded(&found.ground)
    } else {
        edge::Background::Even(&found.ground)
    };
    let (moved, contrast) = edge::at_half(raster, &mask, &background, threshold);
    work.reached(0.5)?;
    let separated = Separated { shadow: without_shadow, next, ..one_piece(&moved, contrast) };
    Ok(separated.pierced_as(&mask))
}

/// The pixels along the border, a thirtieth of the shorter side wide.
fn border((width, height): (usize, usize)) -> Vec<usize> {
    let wide = (width.min(height) / 30).max(3);
    let near = |i: usize| {
        let (x, y) = (i % width, i / width);
        x < wide || y < wide || x + wide >= width || y + wide >= height
    };
    thinned((0..width * height).filter(|&i| near(i)))
}

/// At most about [`MOST_PLACES`] of `places`, evenly.
fn thinned(places: impl Iterator<Item = usize>) -> Vec<usize> {
    let all: Vec<usize> = places.collect();
    let every = all.len().div_ceil(MOST_PLACES).max(1);
    all.into_iter().step_by(every).collect()
}
