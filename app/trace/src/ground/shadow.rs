//! Shadows on the background: darker, of its own colour, and soft at their edge.

use super::plain::FoundGround;
use super::smooth;
use super::surface::distance;
use crate::axis;
use crate::mask::Mask;
use crate::work::{Step, Work};

/// A shadow is no darker than this share of the background; darker is a thing.
const DARKEST: f64 = 0.25;
/// Less than this share of what was found cannot be the thing itself.
const LEAST_THING: f64 = 0.3;
/// What is left out is no shadow where less of it than this share of what was found is more
/// than a thread.
const LEAST_SHADOW: f64 = 0.004;
/// How fast the picture changes across the edge of a thing at least, grey levels a pixel,
/// where that alone decides.
const SHARP: f64 = 4.0;
/// How far the colour of a shadow may be from the background's, in thresholds: to begin with,
/// and where it is come to from outside.
const TIGHT: f64 = 0.8;
const LOOSE: f64 = 1.6;
/// What may be the soft edge of a shadow, grey levels a pixel, from gentle to steep.
const GENTLE: [f64; 2] = [1.5, 3.0];

/// `mask` without what is likelier a shadow on the background than a part of the thing, its
/// holes open, and whether anything was left out.
///
/// A shadow keeps the background's colour and is darker, but so may a part of the thing be.
/// What is left without such pixels is taken where it is as alike on both sides as before or
/// more, and has as sharp an edge or a sharper one.
pub(super) fn left_out(
    found: &FoundGround,
    mask: Mask,
    size: (usize, usize),
    work: &Work<'_>,
) -> Step<(Mask, bool)> {
    let shades = shades(found, &mask);
    let shade = |i: usize| shades[i].within(TIGHT);
    let levels: Vec<f64> =
        (0..mask.bits.len()).filter(|&i| mask.bits[i]).filter_map(shade).collect();
    let area = mask.area() as f64;
    if (levels.len() as f64) < 0.01 * area {
        return Ok((mask, false));
    }
    let level = between(&levels);
    let steps = steps(found, size);
    let of_no_shade = Mask::from_fn(size, |i| mask.bits[i] && shade(i).is_none());
    let of_deep_shade =
        Mask::from_fn(size, |i| mask.bits[i] && shade(i).is_none_or(|shade| shade < level));
    let [gentle, steep] = GENTLE.map(|most| washed(&shades, &mask, &steps, most));
    let mask_bits = mask.bits.clone();
    let mut best = (judged(found, &mask), mask, false);
    for (i, other) in [of_no_shade, of_deep_shade, gentle, steep].into_iter().enumerate() {
        work.reached(0.36 + 0.03 * i as f32)?;
        let pierced = opened(&other).largest().0;
        let other = pierced.filled();
        if (other.area() as f64) < LEAST_THING * area || other.area() as f64 > 0.99 * area {
            continue;
        }
        // What lies along the edge alone is its softness.
        let gone = Mask::from_fn(size, |i| mask_bits[i] && !other.bits[i]);
        if (opened(&gone).area() as f64) < LEAST_SHADOW * area {
            continue;
        }
        let (was, is) = (best.0, judged(found, &other));
        let sharper = is.sharpness > 0.9 * was.sharpness && is.alike > was.alike + 0.01;
        let much_sharper = is.sharpness > 1.25 * was.sharpness && is.alike > was.alike - 0.02;
        let far_sharper = is.sharpness > 2.5 * was.sharpness && is.alike > was.alike - 0.1;
        // The only edge that is soft without it: then what is left may be as unlike as a thing
        // with a handle is.
        let edged = is.sharpness > 4.0 * was.sharpness && is.sharpness > SHARP;
        if sharper || much_sharper || far_sharper || edged {
            best = (is, pierced, true);
        }
    }
    Ok((best.1, best.2))
}

/// How fast the picture changes at every pixel, grey levels a pixel.
fn steps(found: &FoundGround, (width, height): (usize, usize)) -> Vec<f64> {
    let smooth = smooth::colours(&found.colours, (width, height), 1);
    let at = |x: usize, y: usize| smooth[y * width + x];
    (0..smooth.len())
        .map(|i| {
            let (x, y) = (i % width, i / width);
            let (x0, x1) = (x.saturating_sub(1), (x + 1).min(width - 1));
            let (y0, y1) = (y.saturating_sub(1), (y + 1).min(height - 1));
            0.5 * distance(at(x0, y), at(x1, y)).hypot(distance(at(x, y0), at(x, y1)))
        })
        .collect()
}

/// `mask` less whatever can be come to from outside over pixels that may be shadow, without
/// crossing a step of more than `gentle`: shadows are soft, things are not.
fn washed(shades: &[Shade], mask: &Mask, steps: &[f64], gentle: f64) -> Mask {
    let (width, height) = (mask.width, mask.height);
    let mut bits = mask.bits.clone();
    let mut shore: Vec<usize> = (0..bits.len()).filter(|&i| !bits[i]).collect();
    while let Some(i) = shore.pop() {
        let (x, y) = (i % width, i / width);
        let around = [
            (x > 0).then(|| i - 1),
            (x + 1 < width).then(|| i + 1),
            (y > 0).then(|| i - width),
            (y + 1 < height).then(|| i + width),
        ];
        for j in around.into_iter().flatten() {
            if bits[j] && steps[j] < gentle && shades[j].within(LOOSE).is_some() {
                bits[j] = false;
                shore.push(j);
            }
        }
    }
    Mask { bits, ..*mask }
}

/// A pixel against the background behind it.
#[derive(Debug, Clone, Copy)]
struct Shade {
    /// How light it is; 1 for as light.
    light: f64,
    /// How far its colour is from the background's at that light, in thresholds.
    off: f64,
}

impl Shade {
    /// How light it is, where it has the background's colour within so many thresholds and is
    /// darker, but not so dark that it is a thing.
    fn within(self, loose: f64) -> Option<f64> {
        (self.off < loose && (DARKEST..1.0).contains(&self.light)).then_some(self.light)
    }
}

/// The shade of every pixel of `mask`; others have none.
fn shades(found: &FoundGround, mask: &Mask) -> Vec<Shade> {
    let dot = |a: [f32; 3], b: [f32; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let of = |i: usize| {
        if !mask.bits[i] {
            return Shade { light: 1.0, off: f64::INFINITY };
        }
        let (there, here) = (found.ground[i], found.colours[i]);
        let light = dot(here, there) / dot(there, there).max(1.0);
        let off = distance(here, there.map(|c| c * light)) / found.threshold;
        Shade { light: f64::from(light), off }
    };
    (0..mask.bits.len()).map(of).collect()
}

/// The level that divides `values` in 0 … 1 best into two kinds (Otsu's criterion).
fn between(values: &[f64]) -> f64 {
    const BINS: usize = 64;
    let mut counts = [0_u32; BINS];
    for value in values {
        counts[((value * BINS as f64) as usize).min(BINS - 1)] += 1;
    }
    let total = values.len() as f64;
    let weighed = |i: usize| i as f64 * f64::from(counts[i]);
    let sum: f64 = (0..BINS).map(weighed).sum();
    let (mut below, mut below_sum, mut best) = (0.0, 0.0, (0.0, BINS / 2));
    for (i, &count) in counts.iter().enumerate() {
        below += f64::from(count);
        below_sum += weighed(i);
        let above = total - below;
        if below == 0.0 || above <= 0.0 {
            continue;
        }
        let apart = below_sum / below - (sum - below_sum) / above;
        let gain = below * above * apart * apart;
        if gain > best.0 {
            best = (gain, i + 1);
        }
    }
    best.1 as f64 / BINS as f64
}

/// `mask` without threads thinner than about four pixels.
fn opened(mask: &Mask) -> Mask {
    let size = (mask.width, mask.height);
    let share = |bits: &[bool], radius: usize| {
        let values: Vec<f32> = bits.iter().map(|&bit| f32::from(u8::from(bit))).collect();
        smooth::mean(&values, size, radius)
    };
    let core = Mask::from_fn(size, {
        let all = share(&mask.bits, 2);
        move |i| all[i] > 0.99
    });
    let near = share(&core.bits, 3);
    Mask::from_fn(size, |i| mask.bits[i] && near[i] > 0.005)
}

/// What speaks for an edge being the thing's own.
#[derive(Debug, Clone, Copy)]
struct EdgeJudged {
    /// How fast the picture changes across it, grey levels a pixel.
    sharpness: f64,
    /// Share of it that has its mirror image.
    alike: f64,
}

/// What speaks for `mask`, at half the size, which is enough and four times as fast.
fn judged(found: &FoundGround, mask: &Mask) -> EdgeJudged {
    let whole = mask.width;
    let (width, height) = (mask.width / 2, mask.height / 2);
    let half = Mask::from_fn((width, height), |i| {
        mask.bits[2 * (i / width) * whole + 2 * (i % width)]
    });
    let field = half.field();
    let rim = half.rim(800);
    let colour = |x: f64, y: f64| {
        let x = x.round().clamp(0.0, width as f64 - 1.0) as usize;
        let y = y.round().clamp(0.0, height as f64 - 1.0) as usize;
        found.colours[2 * y * whole + 2 * x]
    };
    let mut steps: Vec<f64> = rim
        .iter()
        .map(|&(x, y)| {
            let (dx, dy) = (
                field.at(x + 1.0, y) - field.at(x - 1.0, y),
                field.at(x, y + 1.0) - field.at(x, y - 1.0),
            );
            let long = dx.hypot(dy).max(1e-6);
            let (dx, dy) = (1.5 * dx / long, 1.5 * dy / long);
            distance(colour(x + dx, y + dy), colour(x - dx, y - dy)) / 6.0
        })
        .collect();
    // The dullest fifth tells: a shadow is a part of the edge.
    steps.sort_by(f64::total_cmp);
    let sharpness = steps.get(steps.len() / 5).copied().unwrap_or(0.0);
    let alike = axis::find(&half, &field).map_or(0.0, |axis| axis.alike);
    EdgeJudged { sharpness, alike }
}
