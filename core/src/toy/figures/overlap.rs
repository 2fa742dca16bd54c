//! What of a part is inside others: a sunk-in part takes the place of stuffing, so the overlap
//! of two is counted once.

use super::weight::Mass;
use crate::toy::pose::{Pose, Shapes};
use crate::toy::solid::{OnCloth, Solid};
use crate::toy::vector::{Axes, V3, distance, plus, scaled};

/// Layers a round, rings a layer and places a ring at which a part is asked whether it lies in
/// another. Finer changes a toy's mass by less than a thousandth.
const LAYERS: usize = 3;
const RINGS: usize = 8;
const PLACES: usize = 32;

/// Volume of what of pose `index` lies inside any earlier pose, mm³ as the grams of a
/// [`Mass`], and its centre in the toy's axes.
pub(super) fn inside_earlier(shapes: Shapes<'_>, poses: &[Pose], index: usize) -> Mass {
    let Some(solid) = shapes.of(poses[index].part) else { return Mass::default() };
    let frame = &poses[index].frame;
    let (middle, reach) = ball(solid, frame);
    let near: Vec<(&Solid, &Axes)> = poses[..index]
        .iter()
        .filter_map(|pose| {
            let other = shapes.of(pose.part)?;
            let (centre, radius) = ball(other, &pose.frame);
            (distance(middle, centre) < reach + radius).then_some((other, &pose.frame))
        })
        .collect();
    if near.is_empty() {
        return Mass::default();
    }
    let inside = |at: V3| near.iter().any(|(other, f)| other.contains(f.own_place(at)));
    let (mut volume, mut moment) = (0.0, [0.0; 3]);
    for k in 0..solid.nodes().len() - 1 {
        let rise = solid.nodes()[k + 1].z - solid.nodes()[k].z;
        if rise.abs() < 1e-9 {
            continue;
        }
        for layer in 0..LAYERS {
            let round = k as f64 + (layer as f64 + 0.5) / LAYERS as f64;
            let edge: Vec<V3> = (0..PLACES)
                .map(|i| {
                    let turn = i as f64 / PLACES as f64;
                    solid.station(OnCloth { round, turn }).at
                })
                .collect();
            for (i, &a) in edge.iter().enumerate() {
                let b = edge[(i + 1) % PLACES];
                let triangle = 0.5 * (a[0] * b[1] - a[1] * b[0]).abs();
                let middle = scaled(plus(a, b, 1.0), 0.5);
                let small = triangle * rise / (LAYERS * RINGS) as f64;
                for ring in 0..RINGS {
                    // Rings of one area each.
                    let out = ((ring as f64 + 0.5) / RINGS as f64).sqrt();
                    let at = frame.place([middle[0] * out, middle[1] * out, middle[2]]);
                    if inside(at) {
                        volume += small;
                        moment = plus(moment, at, small);
                    }
                }
            }
        }
    }
    if volume.abs() < 1e-9 {
        return Mass::default();
    }
    Mass { grams: volume, centre: scaled(moment, 1.0 / volume) }
}

/// A ball around a part: its middle in the toy's axes and its radius, mm.
pub(super) fn ball(solid: &Solid, frame: &Axes) -> (V3, f64) {
    let nodes = solid.nodes();
    let (low, high) = nodes
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), n| (l.min(n.z), h.max(n.z)));
    let middle = 0.5 * (low + high);
    let half = 0.5 * solid.straight_mm();
    let reach = nodes.iter().map(|n| (n.r + half).hypot(n.z - middle)).fold(0.0, f64::max);
    (frame.place([0.0, 0.0, middle]), reach)
}
