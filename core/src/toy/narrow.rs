//! Places that a shape finds itself: its neck, its lip, its ends.

use super::solid::Solid;
use crate::project::toy::attachment::CordSpot;
use crate::project::toy::part::PartEnd;

/// A neck is at most this share of the narrower of the swells beside it.
const NECK: f64 = 0.97;

/// Where `spot` is on `solid`, in rounds from the start.
///
/// A neck and a lip lie between two rounds, at an edge; none where the shape has no neck. An
/// end is its pole or its edge.
pub fn find(solid: &Solid, spot: CordSpot) -> Option<f64> {
    let last = (solid.nodes().len() - 1) as f64;
    match spot {
        CordSpot::End(PartEnd::Start) => Some(0.0),
        CordSpot::End(PartEnd::Last) => Some(last),
        CordSpot::Share(share) => Some(solid.round_at(share)),
        CordSpot::Neck => neck(solid).map(|k| k as f64),
        CordSpot::Lip => lip(solid).map(|k| k as f64),
    }
}

/// The edge, counted from 0 at the start, at which `solid` is narrowest between two swells: a
/// cord laid there lies between round k and round k + 1. None where it has no such place. Of
/// edges equally narrow the middle one.
pub fn neck(solid: &Solid) -> Option<usize> {
    let radii = radii(solid);
    let inner = 1..radii.len().saturating_sub(1);
    let swells = |k: usize| {
        let widest = |part: &[f64]| part.iter().copied().fold(0.0, f64::max);
        widest(&radii[..k]).min(widest(&radii[k + 1..]))
    };
    let narrow = inner.filter(|&k| radii[k] <= NECK * swells(k));
    let least = narrow.clone().map(|k| radii[k]).fold(f64::INFINITY, f64::min);
    let alike: Vec<usize> = narrow.filter(|&k| radii[k] <= least * (1.0 + 1e-6)).collect();
    alike.get(alike.len() / 2).copied()
}

/// The widest edge between the neck and the nearer open end, or the nearer end where none is
/// open.
pub fn lip(solid: &Solid) -> Option<usize> {
    let neck = neck(solid)?;
    let radii = radii(solid);
    let last = radii.len() - 1;
    let towards_start = match solid.open() {
        (true, false) => true,
        (false, true) => false,
        _ => neck < last - neck,
    };
    let beyond = if towards_start { 0..neck } else { neck + 1..last + 1 };
    beyond.max_by(|&a, &b| radii[a].total_cmp(&radii[b]))
}

/// Radii of the worked edges.
fn radii(solid: &Solid) -> Vec<f64> {
    solid.nodes()[..=solid.rounds()].iter().map(|node| node.r).collect()
}
