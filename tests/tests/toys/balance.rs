//! Mass and balance against meshes, and against the potential energy of what hangs.

use parry3d::mass_properties::MassProperties;
use parry3d::query::PointQuery as _;
use plumpline_core::project::toy::Toy;
use plumpline_core::project::toy::attachment::{
    Attachment, CordHold, CordSpot, Hanger, Knots, Sling, SlingHold, SlingLengths,
};
use plumpline_core::project::toy::part::{
    Copies, EdgeHow, Part, PartEdge, PartEnd, PartForm, Place, Seat, Small, Thing, Up,
};
use plumpline_core::toy::figures::balance::CLOTH_GIVES_MM;
use plumpline_core::toy::held::HeldPart;
use plumpline_core::toy::vector::V3;
use plumpline_core::toy::{Assembled, assembled_of};
use plumpline_core::{Gauge, Knot, Outline, Piece, PieceId, Plan, Project, plan};
use plumpline_tests::rng::Rng;
use plumpline_tests::shapes::numbered;

use super::meshes::{mesh, trimesh, vector};

fn piece(name: &str, knots: &[(f64, f64)]) -> Piece {
    let knots = knots.iter().map(|&(r, z)| Knot::new(r, z)).collect();
    Piece::new(name, Outline::new(knots).expect("an outline"), Gauge::per(22.0, 21.0, 100.0))
}

struct Trial {
    project: Project,
    plans: Vec<Plan>,
    made: Assembled,
}

/// A body with a sunk head, four legs and a weight somewhere.
fn trial(rng: &mut Rng) -> Trial {
    let (r, z) = (rng.between(28.0, 40.0), rng.between(70.0, 110.0));
    let head = rng.between(22.0, 32.0);
    let pieces = vec![
        piece(
            "Body",
            &[(0.0, 0.0), (0.8 * r, 0.18 * z), (r, 0.5 * z), (0.7 * r, 0.85 * z), (0.0, z)],
        ),
        piece(
            "Head",
            &[
                (0.0, 0.0),
                (0.9 * head, 0.5 * head),
                (head, head),
                (0.8 * head, 1.6 * head),
                (0.0, 2.0 * head),
            ],
        ),
        piece("Leg", &[(0.0, 0.0), (11.0, 5.0), (12.0, 20.0), (11.0, 42.0)]),
    ];
    let mut project = Project::of_piece(pieces[0].clone());
    project.pieces = numbered(&pieces);
    let closed = PartEdge { end: PartEnd::Last, how: EdgeHow::Closed };
    let head = Seat {
        by: closed,
        turn_deg: rng.between(-180.0, 180.0),
        tilt_deg: rng.between(-30.0, 30.0),
        sunk_mm: rng.between(4.0, 14.0),
        ..Seat::new(0, rng.between(0.75, 1.0), rng.between(-1.0, 1.0))
    };
    let mut legs = Part::new(
        Thing::Piece(PieceId::new(2)),
        Some(Seat { sunk_mm: 5.0, ..Seat::new(0, 0.12, 0.125) }),
    );
    legs.copies = Copies::Around(4);
    let form = PartForm::Block(12.0, 12.0, 12.0);
    let small = Small { name: "bell".into(), form, grams: Some(rng.between(1.0, 25.0)) };
    let weight = Part::new(
        Thing::Small(small),
        Some(Seat::new(0, rng.between(0.2, 0.9), rng.between(-1.0, 1.0))),
    );
    let mut body = Part::body(PieceId::new(0));
    body.up = Up::Last;
    let on = CordHold { part: 0, at: CordSpot::Share(rng.between(0.6, 1.0)) };
    let around = Some(rng.between(-1.0, 1.0));
    let hanger = Hanger { on, around, stands_off_mm: 5.0, around_mm: 50.0, thickness_mm: 1.0 };
    project.toy = Toy {
        parts: vec![body, Part::new(Thing::Piece(PieceId::new(1)), Some(head)), legs, weight],
        attachments: vec![Attachment::Loop(hanger)],
        ..Toy::default()
    };
    let plans: Vec<Plan> = project.pieces.iter().map(|p| plan(p).expect("it plans")).collect();
    let made = assembled_of(&project, &plans).expect("a toy");
    Trial { project, plans, made }
}

/// Mass and moments by meshes: cloth by its triangles, stuffing by closed meshes less what
/// random points find inside those before.
fn by_mesh(trial: &Trial, rng: &mut Rng) -> (f64, V3) {
    let Trial { project, plans, made } = trial;
    let (mut grams, mut moment) = (0.0, [0.0; 3]);
    let mut put = |mass: f64, at: V3| {
        grams += mass;
        (0..3).for_each(|i| moment[i] += mass * at[i]);
    };
    let solids: Vec<_> = made
        .poses
        .iter()
        .map(|pose| {
            let piece = project.toy.parts[pose.part].piece()?;
            Some(trimesh(
                &plans[project.position(piece).expect("a piece")].forecast,
                &pose.frame,
                true,
            ))
        })
        .collect();
    for (i, pose) in made.poses.iter().enumerate() {
        let Some(index) = project.toy.parts[pose.part].piece() else {
            let Thing::Small(small) = &project.toy.parts[pose.part].what else { continue };
            put(small.grams.expect("weighed"), pose.frame.place([0.0, 0.0, 6.0]));
            continue;
        };
        let place = project.position(index).expect("a piece");
        let (piece, plan) = (&project.pieces[place], &plans[place]);
        // Cloth: each round as heavy as its stitches.
        let metres: f64 = plan.estimate.yarn.iter().map(|y| y.metres).sum();
        let all: f64 = plan.rounds.iter().map(|r| f64::from(r.count)).sum();
        let gram = project.yarns[0].grams(metres) / all;
        for k in 1..=plan.rounds.len() {
            let band = &plan.forecast[k - 1..=k];
            let (places, faces) = mesh(band, &pose.frame, false);
            let (mut area, mut sum) = (0.0, [0.0; 3]);
            for face in faces {
                let [a, b, c] = face.map(|i| places[i as usize]);
                let size = f64::from((b - a).cross(c - a).length()) * 0.5;
                let middle = (a + b + c) / 3.0;
                area += size;
                for (s, m) in sum.iter_mut().zip([middle.x, middle.y, middle.z]) {
                    *s += size * f64::from(m);
                }
            }
            put(gram * f64::from(plan.rounds[k - 1].count), sum.map(|s| s / area));
        }
        // Stuffing.
        let density = piece.habits.stuffing_g_per_litre.at(piece.firmness) / 1e6;
        let (places, faces) = mesh(&plan.forecast, &pose.frame, true);
        let solid = MassProperties::from_trimesh(1.0, &places, &faces);
        let com = solid.local_com;
        put(density * f64::from(solid.mass()), [com.x, com.y, com.z].map(f64::from));
        let own = solids[i].as_ref().expect("a piece");
        let bounds = own.local_aabb();
        let (low, size) = (bounds.mins, bounds.extents());
        let draws = 12_000;
        let small = f64::from(size.x * size.y * size.z) / f64::from(draws);
        for _ in 0..draws {
            let mut along = |low: f32, size: f32| f64::from(low) + rng.unit() * f64::from(size);
            let at = [along(low.x, size.x), along(low.y, size.y), along(low.z, size.z)];
            let inside = |mesh: &parry3d::shape::TriMesh| mesh.contains_local_point(vector(at));
            if solids[..i].iter().flatten().any(&inside) && inside(own) {
                put(-density * small, at);
            }
        }
    }
    (grams, moment.map(|m| m / grams))
}

fn distance(a: V3, b: V3) -> f64 {
    (0..3).map(|i| (a[i] - b[i]).powi(2)).sum::<f64>().sqrt()
}

/// Within one in a hundred: of the mass, and of the toy's size for the centre.
#[test]
fn mass_and_its_centre_are_those_of_meshes() {
    let mut rng = Rng::new(41);
    let mut worst = (0.0_f64, 0.0_f64);
    for _ in 0..8 {
        let trial = trial(&mut rng);
        let (grams, centre) = by_mesh(&trial, &mut rng);
        let mass = trial.made.mass;
        let size = trial.plans[0].size_mm.height;
        let off = ((mass.grams / grams - 1.0).abs(), distance(mass.centre, centre) / size);
        assert!(off.0 < 0.01 && off.1 < 0.01, "{off:?}");
        worst = (worst.0.max(off.0), worst.1.max(off.1));
    }
    println!("mass off by {:.4}, centre by {:.4} of the size", worst.0, worst.1);
}

/// What hangs turns until its centre is lowest: the lowest potential energy over all turns of
/// the toy about its point, by steps downhill, leans as is said, to a tenth of a degree.
#[test]
fn a_toy_hangs_where_its_energy_is_least() {
    let mut rng = Rng::new(51);
    for _ in 0..30 {
        let trial = trial(&mut rng);
        let made = &trial.made;
        let hanging = made.hangings.first().expect("it hangs by its loop");
        let weights: Vec<(f64, V3)> = made
            .masses
            .iter()
            .flat_map(|m| [m.shell, m.fill])
            .map(|m| (m.grams, m.centre))
            .collect();
        // Height of all weights where `down` of the toy points down.
        let energy = |down: V3| {
            let high =
                |at: V3| -(0..3).map(|i| (at[i] - hanging.point[i]) * down[i]).sum::<f64>();
            weights.iter().map(|&(g, at)| g * high(at)).sum::<f64>()
        };
        let unit = |a: V3| {
            let long = a.iter().map(|x| x * x).sum::<f64>().sqrt();
            a.map(|x| x / long)
        };
        let mut down = unit([0.3, 0.2, -1.0]);
        let mut step = 0.5;
        while step > 1e-7 {
            let ways = (0..6).map(|i| {
                let mut way = down;
                way[i / 2] += if i % 2 == 0 { step } else { -step };
                unit(way)
            });
            let next = ways.min_by(|a, b| energy(*a).total_cmp(&energy(*b))).expect("six");
            if energy(next) < energy(down) { down = next } else { step *= 0.5 }
        }
        let lean = (-down[2]).clamp(-1.0, 1.0).acos().to_degrees();
        assert!((lean - hanging.lean_deg).abs() < 0.1, "{lean} {}", hanging.lean_deg);
    }
}

/// Tilted every way in steps of a twentieth of a degree about what then is its lowest place: it
/// tips where its centre passes over that, as is said to a tenth of a degree.
#[test]
fn a_toy_tips_where_its_centre_passes_its_foot() {
    let mut rng = Rng::new(61);
    let mut stood = 0;
    for _ in 0..30 {
        let trial = trial(&mut rng);
        let made = &trial.made;
        let standing = made.standing.as_ref().expect("it touches the ground");
        let mut places: Vec<V3> = Vec::new();
        for pose in &made.poses {
            let Some(piece) = trial.project.toy.parts[pose.part].piece() else { continue };
            let place = trial.project.position(piece).expect("a piece");
            let nodes = &trial.plans[place].forecast;
            for pair in nodes.windows(2) {
                for i in 0..40 {
                    let u = f64::from(i) / 39.0;
                    let (r, z) = (
                        pair[0].r + u * (pair[1].r - pair[0].r),
                        pair[0].z + u * (pair[1].z - pair[0].z),
                    );
                    for j in 0..360 {
                        let (sin, cos) = f64::from(j).to_radians().sin_cos();
                        places.push(pose.frame.place([r * cos, r * sin, z]));
                    }
                }
            }
        }
        let lowest = places.iter().map(|p| p[2]).fold(f64::INFINITY, f64::min);
        places.retain(|p| p[2] <= lowest + CLOTH_GIVES_MM);
        let mass: f64 = made.masses.iter().map(|m| m.shell.grams + m.fill.grams).sum();
        let centre: V3 = std::array::from_fn(|i| {
            let of = |m: &plumpline_core::toy::figures::mass::Mass| m.grams * m.centre[i];
            made.masses.iter().map(|m| of(&m.shell) + of(&m.fill)).sum::<f64>() / mass
        });
        let height = centre[2] - lowest;
        let tip = (0..7200)
            .map(|i| {
                let (sin, cos) = (f64::from(i) * 0.05_f64).to_radians().sin_cos();
                let reach = |p: &V3| (p[0] - centre[0]) * cos + (p[1] - centre[1]) * sin;
                places.iter().step_by(1).map(reach).fold(f64::NEG_INFINITY, f64::max)
            })
            .map(|reach| reach.atan2(height).to_degrees())
            .fold(f64::INFINITY, f64::min);
        match standing.tips {
            Some((deg, _)) => {
                assert!((deg - tip).abs() < 0.1, "{deg} {tip}");
                stood += 1;
            }
            None => assert!(tip < 0.1, "it is said to fall, but tips at {tip}"),
        }
    }
    assert!(stood > 5, "{stood}");
}

/// A rigid body in space: where its own axes lie.
struct Rigid {
    origin: V3,
    axes: [V3; 3],
}

impl Rigid {
    fn place(&self, own: V3) -> V3 {
        let [x, y, z] = self.axes;
        std::array::from_fn(|i| self.origin[i] + own[0] * x[i] + own[1] * y[i] + own[2] * z[i])
    }

    /// Turned by the small vector `by` about `centre`, then moved.
    fn moved(&mut self, by: V3, centre: V3, way: V3) {
        let angle = norm(by);
        if angle > 0.0 {
            let (sin, cos) = angle.sin_cos();
            let k = by.map(|c| c / angle);
            let turn = |v: V3| -> V3 {
                let (c, along) = (cross(k, v), dot(k, v) * (1.0 - cos));
                std::array::from_fn(|i| v[i] * cos + c[i] * sin + k[i] * along)
            };
            let arm = turn(sub(self.origin, centre));
            self.origin = std::array::from_fn(|i| centre[i] + arm[i]);
            self.axes = self.axes.map(turn);
        }
        (0..3).for_each(|i| self.origin[i] += way[i]);
    }
}

fn sub(a: V3, b: V3) -> V3 {
    std::array::from_fn(|i| a[i] - b[i])
}

fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn norm(a: V3) -> f64 {
    dot(a, a).sqrt()
}

fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// How far from upright a rigid body hangs at rest on elastic cords that only pull, from one
/// hook: let go upright under the hook and moved, without inertia, along the force on it and
/// turned along the moment about its centre until both are gone. The cords are so stiff that
/// they give a ten-thousandth of a millimetre or so.
fn rests_at(holds: &[V3], lengths: &[f64], centre: V3) -> f64 {
    const STIFF: f64 = 400.0;
    let hook = [0.0; 3];
    let high = holds.iter().map(|at| at[2]).fold(f64::NEG_INFINITY, f64::max);
    let least = lengths.iter().copied().fold(f64::INFINITY, f64::min);
    let mut body = Rigid {
        origin: [-centre[0] + 0.3, -centre[1] - 0.2, -high - 0.9 * least],
        axes: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
    };
    let reach = holds.iter().map(|&at| norm(sub(at, centre))).fold(1.0, f64::max);
    let n = holds.len() as f64;
    for _ in 0..4_000_000 {
        let at = body.place(centre);
        let (mut force, mut moment) = ([0.0, 0.0, -1.0], [0.0; 3]);
        for (&hold, &long) in holds.iter().zip(lengths) {
            let end = body.place(hold);
            let way = sub(hook, end);
            let stretch = norm(way) - long;
            if stretch <= 0.0 {
                continue;
            }
            let pull = way.map(|c| c * STIFF * stretch / norm(way));
            let turns = cross(sub(end, at), pull);
            (0..3).for_each(|i| (force[i] += pull[i], moment[i] += turns[i]).1);
        }
        if norm(force) < 1e-7 && norm(moment) < 1e-7 * reach {
            break;
        }
        let step = 0.7 / (n * STIFF);
        body.moved(moment.map(|m| m * step / (reach * reach)), at, force.map(|f| f * step));
    }
    // Upwards in the body's own axes is what its z was.
    body.axes[2][2].clamp(-1.0, 1.0).acos().to_degrees()
}

/// On two or three cords that meet in a point, cut to hang upright or all as long, the toy
/// comes to rest as is said, to a tenth of a degree.
#[test]
fn a_toy_on_several_cords_rests_as_a_rigid_body_does() {
    let mut rng = Rng::new(77);
    let (mut worst, mut slack, mut leant) = (0.0_f64, 0, 0);
    for case in 0..24 {
        let mut trial = trial(&mut rng);
        let n = 2 + case % 2;
        let legs = (0..n).map(|i| {
            let around = f64::from(i) / f64::from(n) + rng.between(-0.1, 0.1);
            let around = around - around.round();
            let at = Place { along: rng.between(0.6, 0.85), around };
            SlingHold { part: 0, at }
        });
        let sling = Sling {
            legs: legs.collect(),
            lengths: [SlingLengths::Upright, SlingLengths::Equal][case as usize / 2 % 2],
            above_mm: rng.between(30.0, 90.0),
            knots: Knots::Inside,
            thickness_mm: 2.0,
        };
        trial.project.toy.attachments = vec![Attachment::Sling(sling.clone())];
        let made = assembled_of(&trial.project, &trial.plans).expect("a toy");
        let HeldPart::Sling(figures) = &made.held[0] else { panic!("a sling") };
        // Where the cords are held, from the forecast alone.
        let solid = &made.solids[&PieceId::new(0)];
        let holds: Vec<V3> = sling
            .legs
            .iter()
            .map(|leg| {
                let at = solid.profile(solid.round_at(leg.at.along));
                let (sin, cos) = (std::f64::consts::TAU * leg.at.around).sin_cos();
                [at.r * sin, at.r * cos, at.z]
            })
            .collect();
        let lengths: Vec<f64> = figures.legs.iter().map(|leg| leg.free_mm).collect();
        let hanging = made.hangings.first().expect("it hangs");
        let rests = rests_at(&holds, &lengths, hanging.mass.centre);
        let off = (rests - hanging.lean_deg).abs();
        assert!(off < 0.1, "case {case}: rests at {rests}, said {}", hanging.lean_deg);
        worst = worst.max(off);
        slack += u32::from(figures.legs.iter().any(|leg| leg.bears_g == 0.0));
        leant += u32::from(hanging.lean_deg > 1.0);
        let up: f64 = figures.legs.iter().map(|leg| leg.bears_g).sum();
        assert!(
            up >= figures.bears_g * (1.0 - 1e-6),
            "slanting cords pull more than the weight"
        );
    }
    println!("worst {worst:.4}°, {leant} lean, {slack} with a slack cord");
    assert!(leant > 5, "{leant}");
}
