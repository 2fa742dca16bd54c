//! The edge moved to where the picture is half thing and half background.
//!
//! What first tells the two apart does so by little, and where an edge is soft that is too
//! far out. Here each pixel near the edge is compared with the colour of the thing just
//! inside and of the background just outside.

use super::smooth::means;
use super::surface::distance;
use crate::mask::{Field, Mask};
use crate::picture::Raster;

/// How near the edge pixels are judged anew, pixels.
const NEAR: f32 = 7.0;
/// From how far within each side counts as itself, pixels.
const WITHIN: f32 = 3.0;
/// Over how many pixels about each the sides' colours are averaged.
const ABOUT: f32 = 9.0;

/// What is known of the background beside the edge.
pub(super) enum Background<'a> {
    /// Its colour at every pixel.
    Even(&'a [[f32; 3]]),
    /// Its colour at every pixel where no shadow lies.
    Shaded(&'a [[f32; 3]]),
    /// Nothing.
    Unknown,
}

/// `mask` with its edge moved, and how much the two sides differ there at the median, in
/// units of `threshold`.
pub(super) fn at_half(
    raster: &Raster,
    mask: &Mask,
    background: &Background<'_>,
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
    background: &Background<'_>,
    threshold: f64,
) -> (Mask, f64) {
    let field = mask.field();
    // What surrounds an edge in a small picture has been enlarged with it.
    let scale = (0.6 * raster.enlarged).max(1.0);
    let (near, within) = (scale * NEAR, scale * WITHIN);
    let about = (scale * ABOUT) as usize;
    let inside = side(raster, &field, about, &|d| d >= within);
    let even = matches!(background, Background::Even(_));
    let outside = (!even).then(|| side(raster, &field, about, &|d| d <= -within));
    let mut contrasts = Vec::new();
    let bits = (0..mask.bits.len())
        .map(|i| {
            let kept = mask.bits[i];
            if field.values[i].abs() > near {
                return kept;
            }
            let (Some(thing), here) = (inside(i), raster.colours[i]) else { return kept };
            if let Background::Shaded(ground) = background {
                // What a shadow leaves as it is: all but the background's own hue.
                let there = ground[i];
                let (thing, here) = (beside(thing, there), beside(here, there));
                if distance(thing, [0.0; 3]) > 2.0 * threshold {
                    return dot(here, thing) >= 0.5 * dot(thing, thing);
                }
            }
            let there = match (background, &outside) {
                (Background::Even(ground), _) => Some(ground[i]),
                (_, Some(outside)) => outside(i),
                (_, None) => None,
            };
            let Some(there) = there else { return kept };
            let apart = distance(thing, there);
            if apart < threshold {
                return kept;
            }
            if field.values[i].abs() < 1.0 {
                contrasts.push(apart / threshold);
            }
            let less = |a: [f32; 3]| [0, 1, 2].map(|c| a[c] - there[c]);
            f64::from(dot(less(here), less(thing))) >= 0.5 * apart * apart
        })
        .collect();
    if contrasts.is_empty() {
        contrasts.push(f64::INFINITY);
    }
    (Mask { bits, ..*mask }, super::surface::median(&mut contrasts))
}

fn dot(a: [f32; 3], b: [f32; 3]) -> f32 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// What is left of a colour without its part in the direction of `hue`.
fn beside(colour: [f32; 3], hue: [f32; 3]) -> [f32; 3] {
    let share = dot(colour, hue) / dot(hue, hue).max(1.0);
    [0, 1, 2].map(|c| colour[c] - share * hue[c])
}

/// The colour about every pixel of those that `counts` by their distance from the edge.
fn side(
    raster: &Raster,
    field: &Field,
    about: usize,
    counts: &dyn Fn(f32) -> bool,
) -> impl Fn(usize) -> Option<[f32; 3]> + use<> {
    // Each colour times whether it counts, and whether it does.
    let counted = |(colour, off): (&[f32; 3], &f32)| match counts(*off) {
        true => [colour[0], colour[1], colour[2], 1.0],
        false => [0.0; 4],
    };
    let values: Vec<[f32; 4]> = raster.colours.iter().zip(&field.values).map(counted).collect();
    let means = means(&values, raster.size(), about);
    move |i| {
        let [r, g, b, share] = means[i];
        // At least a few pixels must be there to take an average of.
        (share > 0.01).then(|| [r, g, b].map(|sum| sum / share))
    }
}
