//! The edge moved to where the picture is half thing and half background.
//!
//! What first tells the two apart does so by little, and where an edge is soft that is too
//! far out. Here each pixel near the edge is compared with the colour of the thing just
//! inside and of the background just outside.

use super::smooth::mean;
use super::surface::{Surface, distance};
use crate::mask::{Field, Mask};
use crate::picture::Raster;

/// How near the edge pixels are judged anew, pixels.
const NEAR: f32 = 7.0;
/// From how far within each side counts as itself, pixels.
const WITHIN: f32 = 3.0;
/// Over how many pixels about each the sides' colours are averaged.
const ABOUT: usize = 9;

/// `mask` with its edge moved, and how much the two sides differ there at the median, in
/// units of `threshold`.
pub(super) fn at_half(
    raster: &Raster,
    mask: &Mask,
    background: Option<&Surface>,
    threshold: f64,
) -> (Mask, f64) {
    let mut mask = mask.largest().0.filled();
    let mut contrast = 0.0;
    // Where the edge is very soft the first step starts too far out to see the whole of it.
    for _ in 0..2 {
        (mask, contrast) = moved(raster, &mask, background, threshold);
    }
    (mask, contrast)
}

fn moved(
    raster: &Raster,
    mask: &Mask,
    background: Option<&Surface>,
    threshold: f64,
) -> (Mask, f64) {
    let field = mask.field();
    let inside = side(raster, &field, &|d| d >= WITHIN);
    let outside = background.is_none().then(|| side(raster, &field, &|d| d <= -WITHIN));
    let mut contrasts = Vec::new();
    let bits = (0..mask.bits.len())
        .map(|i| {
            if field.values[i].abs() > NEAR {
                return mask.bits[i];
            }
            let there = match (background, &outside) {
                (Some(surface), _) => Some(surface.at(i)),
                (None, Some(outside)) => outside(i),
                (None, None) => None,
            };
            let (Some(thing), Some(there)) = (inside(i), there) else { return mask.bits[i] };
            let apart = distance(thing, there);
            if apart < threshold {
                return mask.bits[i];
            }
            if field.values[i].abs() < 1.0 {
                contrasts.push(apart / threshold);
            }
            let share: f32 = (0..3)
                .map(|c| (raster.colours[i][c] - there[c]) * (thing[c] - there[c]))
                .sum();
            f64::from(share) >= 0.5 * apart * apart
        })
        .collect();
    (Mask { bits, ..*mask }, super::surface::median(&mut contrasts))
}

/// The colour about every pixel of those that `counts` by their distance from the edge.
fn side(
    raster: &Raster,
    field: &Field,
    counts: &dyn Fn(f32) -> bool,
) -> impl Fn(usize) -> Option<[f32; 3]> {
    let size = raster.size();
    let of = |value: &dyn Fn(usize) -> f32| {
        let values: Vec<f32> = (0..field.values.len())
            .map(|i| if counts(field.values[i]) { value(i) } else { 0.0 })
            .collect();
        mean(&values, size, ABOUT)
    };
    let shares = of(&|_| 1.0);
    let sums = [0, 1, 2].map(|c| of(&|i| raster.colours[i][c]));
    move |i| {
        // At least a few pixels must be there to take an average of.
        let enough = shares[i] > 0.01;
        enough.then(|| [0, 1, 2].map(|c| sums[c][i] / shares[i]))
    }
}
