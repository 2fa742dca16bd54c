//! A background of any kind, learned from a rectangle and strokes.
//!
//! Colours of the thing and of the background are each learned as a few clusters; how much
//! likelier a pixel is the one than the other is then averaged along the picture's own edges
//! (guided filter: He, Sun and Tang, “Guided image filtering”, 2010, with the picture's grey
//! as guide), and both are learned anew from the outcome, a few times over.

use super::smooth::{self, mean};
use super::surface::distance;
use super::{Separated, Stroke, edge, one_piece};
use crate::mask::Mask;
use crate::picture::Raster;
use crate::work::{Step, Work, refused};

/// How often colours are learned anew.
const ROUNDS: usize = 6;
/// Clusters of colours a side.
const CLUSTERS: usize = 6;
/// Over how many pixels the likelihoods are averaged.
const ABOUT: usize = 6;
/// Contrast of the guide that counts as an edge, grey levels squared.
const EDGE: f32 = 60.0;

/// What is known of a pixel beforehand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Marking {
    Thing,
    Background,
    Open,
}

pub(super) fn separate(
    raster: &Raster,
    frame: Option<&[(f64, f64); 2]>,
    strokes: &[Stroke],
    reduction: f64,
    work: &Work<'_>,
) -> Step<Separated> {
    let size = raster.size();
    let known = known(size, frame, strokes, reduction);
    let has = |what: Marking| known.contains(&what);
    if !has(Marking::Background) && frame.is_some() {
        let mend = "draw it so that some background lies outside";
        return Err(refused("the rectangle is the whole picture", mend));
    }
    if !has(Marking::Thing) && !has(Marking::Open) {
        let mend = "leave a part of the thing open, or stroke over it";
        return Err(refused("all of it is marked as background", mend));
    }
    let colours = smooth::colours(&raster.colours, size, 1);
    let mut thing: Vec<bool> = known.iter().map(|&k| k == Marking::Thing).collect();
    if !thing.contains(&true) {
        // Nothing is stroked: what lies within the rectangle, most of all its middle.
        thing = core(&known, size);
    }
    let mut background = begun(&known, &thing, size);
    for round in 0..ROUNDS {
        work.reached(0.1 + 0.35 * round as f32 / ROUNDS as f32)?;
        let likelier = likelier(&colours, &thing, &background, &known);
        let averaged = along_edges(&likelier, &colours, size);
        for i in 0..known.len() {
            thing[i] = match known[i] {
                Marking::Thing => true,
                Marking::Background => false,
                Marking::Open => averaged[i] > 0.0,
            };
            background[i] = !thing[i];
        }
    }
    let mask = Mask::from_fn(size, |i| thing[i]);
    if mask.area() == 0 {
        let mend = "stroke over the thing and over its background";
        return Err(refused("nothing within the rectangle stands out", mend));
    }
    let (moved, contrast) = edge::at_half(raster, &mask, &edge::Background::Unknown, 8.0);
    Ok(one_piece(&moved, contrast).pierced_as(&mask))
}

fn known(
    (width, height): (usize, usize),
    frame: Option<&[(f64, f64); 2]>,
    strokes: &[Stroke],
    reduction: f64,
) -> Vec<Marking> {
    // A place in the whole picture as one in the raster, whose pixels' middles are whole.
    let small = |(x, y): (f64, f64)| (x / reduction - 0.5, y / reduction - 0.5);
    let mut known = vec![Marking::Open; width * height];
    if let Some([a, b]) = frame {
        let (a, b) = (small(*a), small(*b));
        let within = |v: f64, a: f64, b: f64| v >= a.min(b) && v <= a.max(b);
        for (i, known) in known.iter_mut().enumerate() {
            let (x, y) = ((i % width) as f64, (i / width) as f64);
            if !(within(x, a.0, b.0) && within(y, a.1, b.1)) {
                *known = Marking::Background;
            }
        }
    }
    for stroke in strokes {
        let radius = (stroke.radius / reduction).clamp(1.0, (width + height) as f64);
        let points: Vec<(f64, f64)> = stroke.points.iter().map(|&p| small(p)).collect();
        let ends = points.iter().zip(points.iter().skip(1).chain(points.last()));
        for (&a, &b) in ends {
            let low = |u: f64, v: f64| (u.min(v) - radius).floor().max(0.0) as usize;
            let high = |u: f64, v: f64, most: usize| {
                ((u.max(v) + radius).ceil().max(-1.0) + 1.0).min(most as f64) as usize
            };
            for y in low(a.1, b.1)..high(a.1, b.1, height) {
                for x in low(a.0, b.0)..high(a.0, b.0, width) {
                    if from_segment((x as f64, y as f64), a, b) <= radius {
                        let what =
                            if stroke.thing { Marking::Thing } else { Marking::Background };
                        known[y * width + x] = what;
                    }
                }
            }
        }
    }
    known
}

/// Distance of `p` from the straight piece from `a` to `b`.
fn from_segment(p: (f64, f64), a: (f64, f64), b: (f64, f64)) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let long = dx * dx + dy * dy;
    let t = if long > 0.0 {
        (((p.0 - a.0) * dx + (p.1 - a.1) * dy) / long).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (p.0 - a.0 - t * dx).hypot(p.1 - a.1 - t * dy)
}

/// The middle of what is open: where the thing is, if anywhere.
fn core(known: &[Marking], size: (usize, usize)) -> Vec<bool> {
    let field = Mask::from_fn(size, |i| known[i] == Marking::Open).field();
    let deepest = field.values.iter().fold(0.0_f32, |deep, &v| v.max(deep));
    field.values.iter().map(|&v| v > 0.35 * deepest).collect()
}

/// The background to begin with: what is marked, else the border of the picture.
fn begun(known: &[Marking], thing: &[bool], (width, height): (usize, usize)) -> Vec<bool> {
    if known.contains(&Marking::Background) {
        return known.iter().map(|&k| k == Marking::Background).collect();
    }
    let wide = (width.min(height) / 20).max(2);
    (0..known.len())
        .map(|i| {
            let (x, y) = (i % width, i / width);
            let near = x < wide || y < wide || x + wide >= width || y + wide >= height;
            near && !thing[i]
        })
        .collect()
}

/// A cluster of colours: its middle, its spread squared, its share of all.
#[derive(Debug, Clone, Copy)]
struct Cluster {
    middle: [f32; 3],
    spread: f32,
    share: f32,
}

/// The clusters of the colours that belong, by Lloyd's steps from a spread-out start.
fn clusters(colours: &[[f32; 3]], belongs: &[bool]) -> Vec<Cluster> {
    let all: Vec<[f32; 3]> =
        colours.iter().zip(belongs).filter(|(_, b)| **b).map(|(c, _)| *c).collect();
    let every = all.len().div_ceil(8000).max(1);
    let some: Vec<[f32; 3]> = all.into_iter().step_by(every).collect();
    let Some(&first) = some.get(some.len() / 2) else { return Vec::new() };
    let nearest = |middles: &[[f32; 3]], c: [f32; 3]| {
        let by = |&a: &usize, &b: &usize| {
            distance(middles[a], c).total_cmp(&distance(middles[b], c))
        };
        (0..middles.len()).min_by(by).unwrap_or(0)
    };
    let mut middles = vec![first];
    while middles.len() < CLUSTERS {
        // The colour furthest from all middles, of every few: one stranger is no cluster.
        let away = |c: &[f32; 3]| distance(middles[nearest(&middles, *c)], *c);
        let mut by_distance: Vec<[f32; 3]> = some.clone();
        by_distance.sort_by(|a, b| away(a).total_cmp(&away(b)));
        middles.push(by_distance[by_distance.len() * 49 / 50]);
    }
    let mut out = Vec::new();
    for _ in 0..8 {
        let mut sums = vec![([0.0_f64; 3], 0.0_f64, 0.0_f64); middles.len()];
        for &c in &some {
            let near = nearest(&middles, c);
            let sum = &mut sums[near];
            for (to, from) in sum.0.iter_mut().zip(c) {
                *to += f64::from(from);
            }
            sum.1 += distance(middles[near], c).powi(2);
            sum.2 += 1.0;
        }
        out.clear();
        for (middle, (colour, off, count)) in middles.iter_mut().zip(sums) {
            if count > 0.0 {
                *middle = colour.map(|c| (c / count) as f32);
                out.push(Cluster {
                    middle: *middle,
                    spread: ((off / count / 3.0) as f32).max(16.0),
                    share: (count / some.len() as f64) as f32,
                });
            }
        }
    }
    out
}

/// How much likelier each pixel is the thing than its background: the logarithm of the ratio,
/// within bounds.
fn likelier(
    colours: &[[f32; 3]],
    thing: &[bool],
    background: &[bool],
    known: &[Marking],
) -> Vec<f32> {
    const SURE: f32 = 6.0;
    let (of_thing, of_background) = (clusters(colours, thing), clusters(colours, background));
    let chance = |clusters: &[Cluster], c: [f32; 3]| -> f32 {
        let of = |k: &Cluster| {
            let off = distance(k.middle, c) as f32;
            k.share * k.spread.powf(-1.5) * (-0.5 * off * off / k.spread).exp()
        };
        clusters.iter().map(of).sum::<f32>() + 1e-9
    };
    (0..colours.len())
        .map(|i| match known[i] {
            Marking::Thing => SURE,
            Marking::Background => -SURE,
            Marking::Open => {
                let ratio = chance(&of_thing, colours[i]) / chance(&of_background, colours[i]);
                ratio.ln().clamp(-SURE, SURE)
            }
        })
        .collect()
}

/// `values` averaged where the picture is even, and kept apart where it has an edge.
fn along_edges(values: &[f32], colours: &[[f32; 3]], size: (usize, usize)) -> Vec<f32> {
    let guide: Vec<f32> = colours.iter().map(|c| (c[0] + c[1] + c[2]) / 3.0).collect();
    let product =
        |a: &[f32], b: &[f32]| -> Vec<f32> { a.iter().zip(b).map(|(a, b)| a * b).collect() };
    let about = |v: &[f32]| mean(v, size, ABOUT);
    let (mean_guide, mean_value) = (about(&guide), about(values));
    let (both, squared) = (about(&product(&guide, values)), about(&product(&guide, &guide)));
    let slope: Vec<f32> = (0..values.len())
        .map(|i| {
            let variance = (squared[i] - mean_guide[i] * mean_guide[i]).max(0.0);
            (both[i] - mean_guide[i] * mean_value[i]) / (variance + EDGE)
        })
        .collect();
    let rest: Vec<f32> =
        (0..values.len()).map(|i| mean_value[i] - slope[i] * mean_guide[i]).collect();
    let (slope, rest) = (about(&slope), about(&rest));
    (0..values.len()).map(|i| slope[i] * guide[i] + rest[i]).collect()
}
