//! Embroidery on the stuffed shape: where its places are counted, how it lies in space, and how
//! much yarn it takes.

use std::f64::consts::PI;

use super::lean::Meridian;
use super::pose::{Pose, Shapes};
use super::solid::{OnCloth, Solid};
use super::vector::{V3, distance, plus};
use crate::project::toy::embroidery::{Embroidery, EmbroideryStitch};
use crate::project::toy::part::Place;

/// Yarn to thread and to hide at both ends of a line, mm. Common practice, no source.
pub const ENDS_MM: f64 = 200.0;

/// A line lies on the cloth between its places in so many straight pieces.
const PIECES: usize = 8;

/// Twice round the needle, and how thick a knot is in the yarn's thicknesses. Common practice,
/// no source.
const WRAPS: f64 = 2.0;

/// What a line of embroidery comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct EmbroideryFigures {
    /// The same line once, or at its place and mirrored: its places in order, each between a
    /// round and the next, and after which stitch of the round; 0 is before the first.
    pub lines: Vec<Vec<(u32, u32)>>,
    /// Yarn for all its copies, mm.
    pub yarn_mm: f64,
    /// The copies in the toy's axes, mm, each with the pose it is on: along the cloth, or a
    /// single place of a knot.
    pub strands: Vec<(usize, Vec<V3>)>,
    /// How thick it is shown, mm.
    pub thick_mm: f64,
}

/// What each line of embroidery of the toy comes to.
pub(super) fn embroidered(shapes: Shapes<'_>, poses: &[Pose]) -> Vec<EmbroideryFigures> {
    shapes.toy.embroidery.iter().map(|line| figures(shapes, poses, line)).collect()
}

fn figures(shapes: Shapes<'_>, poses: &[Pose], line: &Embroidery) -> EmbroideryFigures {
    let none = EmbroideryFigures {
        lines: Vec::new(),
        yarn_mm: 0.0,
        strands: Vec::new(),
        thick_mm: 1.0,
    };
    let Some(solid) = shapes.of(line.part) else { return none };
    let front = Meridian::new(solid, shapes.toy.parts[line.part].front);
    let sides: &[f64] = if line.mirrored { &[1.0, -1.0] } else { &[1.0] };
    let counted = |&side: &f64| {
        let places = line.places.iter();
        places.map(|at| front.after(solid, on_cloth(solid, at, side))).collect()
    };
    // As thick as the yarn that fills half of a stitch, near enough for a picture.
    let thick_mm = 0.35 * solid.stitch_mm();
    let mut strands = Vec::new();
    let mut yarn_mm = 0.0;
    for (index, pose) in poses.iter().enumerate().filter(|(_, pose)| pose.part == line.part) {
        let hand = if pose.mirrored { -1.0 } else { 1.0 };
        for side in sides {
            let own = lies(solid, line, side * hand, 0.4 * thick_mm);
            yarn_mm +=
                ENDS_MM + own.iter().map(|s| takes(line.stitch, s, thick_mm)).sum::<f64>();
            let placed = |strand: Vec<V3>| {
                (index, strand.into_iter().map(|at| pose.frame.place(at)).collect())
            };
            strands.extend(own.into_iter().map(placed));
        }
    }
    EmbroideryFigures { lines: sides.iter().map(counted).collect(), yarn_mm, strands, thick_mm }
}

/// A place on the cloth, or its mirror image where `side` is below 0.
fn on_cloth(solid: &Solid, at: &Place, side: f64) -> OnCloth {
    OnCloth { round: solid.round_at(at.along), turn: side * at.around }
}

/// Its strands in the part's own axes, `off` mm above the cloth: one from place to place, or a
/// place for each knot.
fn lies(solid: &Solid, line: &Embroidery, side: f64, off: f64) -> Vec<Vec<V3>> {
    let on = |at: &Place| on_cloth(solid, at, side);
    let above = |on: OnCloth| {
        let station = solid.station(on);
        plus(station.at, station.normal, off)
    };
    if line.stitch == EmbroideryStitch::FrenchKnot {
        return line.places.iter().map(|at| vec![above(on(at))]).collect();
    }
    let way = |pair: &[Place]| {
        let (a, b) = (on(&pair[0]), on(&pair[1]));
        // The nearer way around.
        let turn = b.turn - a.turn;
        let turn = turn - turn.round();
        let at = move |i: usize| {
            let u = i as f64 / PIECES as f64;
            above(OnCloth { round: a.round + u * (b.round - a.round), turn: a.turn + u * turn })
        };
        (0..=PIECES).map(at).collect()
    };
    line.places.windows(2).map(way).collect()
}

/// Yarn for one strand, mm: of a line of backstitch once in front and twice behind, of a
/// straight stitch as much behind as in front, of a knot its turns and the way through. By the
/// way the needle goes.
fn takes(stitch: EmbroideryStitch, strand: &[V3], thick_mm: f64) -> f64 {
    let long: f64 = strand.windows(2).map(|pair| distance(pair[0], pair[1])).sum();
    match stitch {
        EmbroideryStitch::Back => 3.0 * long,
        EmbroideryStitch::Straight => 2.0 * long,
        EmbroideryStitch::FrenchKnot => (WRAPS * PI * 2.0 + 4.0) * thick_mm,
    }
}
