//! Footprints against meshes: the edge carried on to the cloth and the meeting of two shapes,
//! found by casting rays on triangles.

use std::f64::consts::TAU;

use parry3d::shape::TriMesh;
use plumpline_core::project::toy::Toy;
use plumpline_core::project::toy::part::{
    Copies, EdgeHow, Part, PartEdge, PartEnd, Seat, Thing,
};
use plumpline_core::toy::footprint::{Footprint, Why};
use plumpline_core::toy::vector::{Axes, V3};
use plumpline_core::toy::{Assembled, assembled_of};
use plumpline_core::{Gauge, Knot, Outline, Piece, PieceId, Plan, Project, plan};
use plumpline_tests::rng::Rng;
use plumpline_tests::shapes::numbered;

use super::meshes::{first, trimesh};

fn piece(name: &str, knots: &[(f64, f64)], rng: &mut Rng) -> Piece {
    let knots = knots.iter().map(|&(r, z)| Knot::new(r, z)).collect();
    let outline = Outline::new(knots).expect("an outline");
    Piece::new(
        name,
        outline,
        Gauge::per(rng.between(20.0, 27.0), rng.between(20.0, 26.0), 100.0),
    )
}

/// An egg, drop or bun, closed at both ends.
fn body(rng: &mut Rng) -> Piece {
    let (r, long) = (rng.between(30.0, 45.0), rng.between(1.5, 2.6));
    let z = r * long;
    let low = rng.between(0.72, 0.95);
    let high = rng.between(0.72, 0.95);
    piece(
        "Body",
        &[(0.0, 0.0), (low * r, 0.2 * z), (r, 0.5 * z), (high * r, 0.8 * z), (0.0, z)],
        rng,
    )
}

/// A horn that starts closed and ends open.
fn horn(rng: &mut Rng) -> Piece {
    let (r, long) = (rng.between(7.0, 15.0), rng.between(25.0, 55.0));
    let middle = r * rng.between(0.8, 1.2);
    piece("Horn", &[(0.0, 0.0), (middle, 0.4 * long), (r, long)], rng)
}

/// Where a mesh of `body` is met by the part's own lines, as the trade would lay them.
fn by_mesh(made: &Assembled, mesh: &TriMesh, seat: &Seat) -> Option<Vec<V3>> {
    let part = &made.solids[&PieceId::new(1)];
    let (nodes, frame) = (part.nodes(), made.poses[1].frame);
    let away = scaled(frame.z, -1.0);
    // Not the turns that the footprint itself is made of.
    let turns = (0..240).map(|i| TAU * (f64::from(i) + 0.37) / 240.0);
    let place = |node: usize, turn: f64| {
        let at = nodes[node];
        frame.place([at.r * turn.cos(), at.r * turn.sin(), at.z])
    };
    let last = nodes.len() - 1;
    turns
        .map(|turn| {
            let edge = place(last, turn);
            if seat.sunk_mm == 0.0 {
                // From far outside, towards the body.
                return first(mesh, plus(edge, away, 300.0), plus(edge, away, -300.0));
            }
            // From the edge that is inside, outwards along the part.
            (0..last).rev().find_map(|k| first(mesh, place(k + 1, turn), place(k, turn)))
        })
        .collect()
}

fn scaled(a: V3, by: f64) -> V3 {
    a.map(|x| x * by)
}

fn plus(a: V3, b: V3, by: f64) -> V3 {
    [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]]
}

/// The greatest distance, in stitches, of a place of the mesh from the footprint's line.
fn off(made: &Assembled, print: &Footprint, places: &[V3], stitch_mm: f64) -> f64 {
    let solid = &made.solids[&PieceId::new(0)];
    let line: Vec<V3> = print.curve.iter().map(|&on| solid.station(on).at).collect();
    let to_line = |p: &V3| {
        let next = line.iter().cycle().skip(1);
        line.iter().zip(next).map(|(&a, &b)| to_segment(*p, a, b)).fold(f64::INFINITY, f64::min)
    };
    places.iter().map(to_line).fold(0.0, f64::max) / stitch_mm
}

fn to_segment(p: V3, a: V3, b: V3) -> f64 {
    let way = plus(b, a, -1.0);
    let from = plus(p, a, -1.0);
    let dot = |a: V3, b: V3| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let u = (dot(way, from) / dot(way, way).max(1e-12)).clamp(0.0, 1.0);
    let gap = plus(from, way, -u);
    dot(gap, gap).sqrt()
}

struct Trial {
    made: Assembled,
    seat: Seat,
    plans: Vec<Plan>,
}

fn trial(rng: &mut Rng, sunk: bool) -> Option<Trial> {
    let pieces = [body(rng), horn(rng)];
    let mut project = Project::of_piece(pieces[0].clone());
    project.pieces = numbered(&pieces);
    let plans: Vec<Plan> = project.pieces.iter().map(|p| plan(p).expect("it plans")).collect();
    let how = if sunk { EdgeHow::Closed } else { EdgeHow::Open };
    let radius = plans[1].forecast.last()?.r;
    let seat = Seat {
        by: PartEdge { end: PartEnd::Last, how },
        turn_deg: rng.between(-180.0, 180.0),
        tilt_deg: rng.between(-25.0, 25.0),
        sunk_mm: if sunk { rng.between(0.6, 1.2) * radius } else { 0.0 },
        ..Seat::new(0, rng.between(0.02, 0.98), rng.between(-1.0, 1.0))
    };
    let mut part = Part::new(Thing::Piece(PieceId::new(1)), Some(seat));
    part.copies = Copies::Mirrored;
    project.toy = Toy { parts: vec![Part::body(PieceId::new(0)), part], ..Toy::default() };
    let made = assembled_of(&project, &plans).expect("a toy");
    Some(Trial { made, seat, plans })
}

/// Sixty random places each of an open edge and of a sunk one: within half a stitch everywhere.
#[test]
fn footprints_are_where_meshes_meet() {
    for (sunk, seed) in [(false, 11), (true, 12)] {
        let mut rng = Rng::new(seed);
        let (mut compared, mut worst, mut missed) = (0, 0.0_f64, 0);
        while compared < 60 {
            let Some(trial) = trial(&mut rng, sunk) else { continue };
            let mesh = trimesh(&trial.plans[0].forecast, &Axes::WORLD, false);
            let found = by_mesh(&trial.made, &mesh, &trial.seat);
            let figures = &trial.made.parts[1];
            let Some(print) = &figures.footprint else {
                // What has no footprint must miss the mesh too, or not reach into it.
                missed += 1;
                assert!(matches!(figures.misfit.map(|m| m.why), Some(Why::Misses(_))));
                assert!(sunk || found.is_none(), "an edge that lands was called a miss");
                continue;
            };
            let stitch = trial.plans[0].stitch_mm.width;
            let found = found.expect("the mesh is met all around");
            let far = off(&trial.made, print, &found, stitch);
            assert!(far < 0.5, "{far} of a stitch at {:?}", trial.seat);
            worst = worst.max(far);
            compared += 1;
        }
        println!("sunk {sunk}: {compared} compared, {missed} missed, worst {worst:.4} st");
    }
}

/// The words count what the curve covers: rounds and stitches by the mesh's own places.
#[test]
fn spans_are_counted_on_the_mesh() {
    let mut rng = Rng::new(21);
    let mut compared = 0;
    while compared < 30 {
        let Some(trial) = trial(&mut rng, false) else { continue };
        let figures = &trial.made.parts[1];
        let (Some(print), Some(span)) = (&figures.footprint, &figures.span) else { continue };
        if span.around {
            continue;
        }
        let solid = &trial.made.solids[&PieceId::new(0)];
        let mesh = trimesh(&trial.plans[0].forecast, &Axes::WORLD, false);
        let Some(found) = by_mesh(&trial.made, &mesh, &trial.seat) else { continue };
        // Rounds by the profile's length, stitches by the angle: no code of the footprint's.
        let nodes = &trial.plans[0].forecast;
        let round = |at: V3| {
            let r = at[0].hypot(at[1]);
            let off = |k: usize| {
                let (a, b) = (nodes[k], nodes[k + 1]);
                let long = a.distance(b).powi(2);
                let u = ((r - a.r) * (b.r - a.r) + (at[2] - a.z) * (b.z - a.z)) / long;
                let u = u.clamp(0.0, 1.0);
                let gap = (a.r + u * (b.r - a.r) - r).hypot(a.z + u * (b.z - a.z) - at[2]);
                (gap, k as f64 + u)
            };
            let all = (0..nodes.len() - 1).map(off);
            all.min_by(|a, b| a.0.total_cmp(&b.0)).map_or(0.0, |(_, round)| round)
        };
        let rounds: Vec<f64> = found.iter().map(|&at| round(at)).collect();
        let low = rounds.iter().copied().fold(f64::INFINITY, f64::min);
        let high = rounds.iter().copied().fold(0.0, f64::max);
        assert!((low - print.rounds().0).abs() < 0.15, "{low} {:?}", print.rounds());
        assert!((high - print.rounds().1).abs() < 0.15, "{high} {:?}", print.rounds());
        let side = found.iter().map(|&at| {
            let turn = (at[0].atan2(at[1]) / TAU).abs();
            2.0 * turn.min(0.5 - turn.min(0.5)) * solid.stitches(round(at))
        });
        let nearest = side.fold(f64::INFINITY, f64::min);
        let crosses = found.iter().any(|at| at[0] < 0.0) && found.iter().any(|at| at[0] > 0.0);
        if !crosses {
            let apart = span.apart.expect("it has a mirror image").stitches;
            assert!((apart - nearest).abs() < 0.6, "{apart} {nearest}");
        }
        compared += 1;
    }
}

/// A line on a cylinder is a helix, on a ball a great circle: a flat edge is as long as its
/// stitches and bends to neither side.
#[test]
fn a_flat_edge_lies_without_a_pull() {
    let mut rng = Rng::new(31);
    for _ in 0..40 {
        let pieces = [body(&mut rng), horn(&mut rng)];
        let mut project = Project::of_piece(pieces[0].clone());
        project.pieces = numbered(&pieces);
        let plans: Vec<Plan> =
            project.pieces.iter().map(|p| plan(p).expect("it plans")).collect();
        let seat = Seat {
            by: PartEdge { end: PartEnd::Last, how: EdgeHow::Flat },
            turn_deg: rng.between(-180.0, 180.0),
            ..Seat::new(0, rng.between(0.1, 0.9), rng.between(-1.0, 1.0))
        };
        project.toy = Toy {
            parts: vec![
                Part::body(PieceId::new(0)),
                Part::new(Thing::Piece(PieceId::new(1)), Some(seat)),
            ],
            ..Toy::default()
        };
        let made = assembled_of(&project, &plans).expect("a toy");
        let print = made.parts[1].footprint.as_ref().expect("it lands");
        let solid = &made.solids[&PieceId::new(0)];
        let line: Vec<V3> = print.curve.iter().map(|&on| solid.station(on).at).collect();
        let long: f64 = line.windows(2).map(|p| plus(p[1], p[0], -1.0)).map(norm).sum();
        assert!((long / print.length_mm - 1.0).abs() < 5e-3, "{long} {}", print.length_mm);
        let stitches = f64::from(plans[1].rounds.last().expect("rounds").count);
        let edge = 0.5 * stitches * plans[1].stitch_mm.width;
        assert!((print.length_mm - edge).abs() < 1e-9);
        // Clairaut: on a body of revolution r sin α is the same all along, α the angle to the
        // meridian.
        let clairaut: Vec<f64> = line
            .windows(2)
            .map(|p| {
                let middle = scaled(plus(p[0], p[1], 1.0), 0.5);
                let way = plus(p[1], p[0], -1.0);
                (middle[0] * way[1] - middle[1] * way[0]) / norm(way)
            })
            .collect();
        let spread = clairaut
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), &c| (l.min(c), h.max(c)));
        assert!(spread.1 - spread.0 < 0.02 * 40.0, "{spread:?}");
    }
}

fn norm(a: V3) -> f64 {
    (a[0] * a[0] + a[1] * a[1] + a[2] * a[2]).sqrt()
}
