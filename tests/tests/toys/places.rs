//! Places: eyes that mirror one another, stitches as they are counted, the neck wherever it
//! goes, every size of a toy.

use std::path::Path;

use plumpline_core::project::toy::Toy;
use plumpline_core::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Knots,
};
use plumpline_core::project::toy::part::{
    BodyFront, Button, Copies, EdgeHow, Part, PartEdge, PartEnd, PartForm, Seat, Small, Thing,
};
use plumpline_core::toy::held::HeldPart;
use plumpline_core::toy::{assembled, assembled_of};
use plumpline_core::{Gauge, Knot, Outline, Piece, PieceId, Plan, Project, file, plan, sizes};
use plumpline_tests::rng::Rng;
use plumpline_tests::shapes::numbered;

fn piece(knots: &[(f64, f64)]) -> Piece {
    let knots = knots.iter().map(|&(r, z)| Knot::new(r, z)).collect();
    Piece::new("Body", Outline::new(knots).expect("an outline"), Gauge::per(22.0, 21.0, 100.0))
}

fn egg() -> Piece {
    piece(&[(0.0, 0.0), (28.0, 14.0), (36.0, 45.0), (26.0, 80.0), (0.0, 95.0)])
}

fn with_eyes(seat: Seat, front: BodyFront) -> Project {
    let mut project = Project::of_piece(egg());
    let form = PartForm::Eye(Button { diameter_mm: 8.0, embroidered: false });
    let eye = Small { name: String::new(), form, grams: None };
    let mut eyes = Part::new(Thing::Small(eye), Some(seat));
    eyes.copies = Copies::Mirrored;
    let mut body = Part::body(PieceId::new(0));
    body.front = front;
    project.toy = Toy { parts: vec![body, eyes], ..Toy::default() };
    project
}

/// Counted stitch by stitch along the round: the same number of whole stitches lies between the
/// eyes as between their places, and their middle is half a stitch from the front at most.
#[test]
fn eyes_mirror_one_another_to_the_nearest_stitch() {
    let mut rng = Rng::new(71);
    for _ in 0..200 {
        let front = BodyFront { along: rng.unit(), around: rng.unit() };
        let seat = Seat::new(0, rng.between(0.1, 0.9), rng.between(0.02, 0.24));
        let project = with_eyes(seat, front);
        let made = assembled(&project).expect("a toy");
        let point = made.parts[1].point.as_ref().expect("a place");
        let solid = &made.solids[&PieceId::new(0)];
        let count = solid.stitches(f64::from(point.round)).round();
        let apart = f64::from(point.apart.expect("two eyes"));
        assert!((apart - 2.0 * seat.at.around * count).abs() <= 0.5 + 1e-9);
        let [one, other] = point.after[..] else { panic!("two eyes") };
        assert_eq!(
            f64::from(other) - f64::from(one),
            if other >= one { apart } else { apart - count }
        );
        // Lean counted by hand: every round begins 0.17 stitches of the one below further on.
        let plan = plan(&project.pieces[0]).expect("it plans");
        let begins = |round: u32| -> f64 {
            (1..round as usize).map(|k| 0.17 / f64::from(plan.rounds[k - 1].count)).sum()
        };
        let chosen = solid.round_at(front.along).ceil().max(1.0) as u32;
        let chosen = chosen.min(plan.rounds.len() as u32);
        let middle =
            (begins(chosen) + front.around - begins(point.round)).rem_euclid(1.0) * count;
        let half_way = (f64::from(one) + 0.5 * apart).rem_euclid(count);
        let off = (half_way - middle).rem_euclid(count);
        assert!(off.min(count - off) <= 0.5 + 1e-6, "{off} of {count}");
    }
}

/// Both ears, and everything on a mirrored part, lie as in a mirror: x turned over.
#[test]
fn mirrored_parts_are_images() {
    let mut project = Project::of_piece(egg());
    project.add(piece(&[(0.0, 0.0), (9.0, 12.0), (8.0, 40.0)]));
    let by = PartEdge { end: PartEnd::Last, how: EdgeHow::Open };
    let mirrored = |piece: u32, seat| Part {
        copies: Copies::Mirrored,
        ..Part::new(Thing::Piece(PieceId::new(piece)), Some(seat))
    };
    let arm = Seat { by, turn_deg: 35.0, tilt_deg: 20.0, ..Seat::new(0, 0.4, 0.2) };
    let thumb = Seat { by, turn_deg: -50.0, tilt_deg: 10.0, ..Seat::new(1, 0.3, 0.15) };
    let mut finger = Part::new(Thing::Piece(PieceId::new(1)), Some(thumb));
    finger.copies = Copies::One;
    project.toy = Toy {
        parts: vec![Part::body(PieceId::new(0)), mirrored(1, arm), finger],
        ..Toy::default()
    };
    for hand in [plumpline_core::Hand::Right, plumpline_core::Hand::Left] {
        project.pieces.iter_mut().for_each(|p| p.hand = hand);
        let made = assembled(&project).expect("a toy");
        for part in [1, 2] {
            let poses: Vec<_> = made.poses.iter().filter(|p| p.part == part).collect();
            let [one, other] = poses[..] else { panic!("two of part {part}") };
            let image = |a: [f64; 3]| [-a[0], a[1], a[2]];
            for (a, b) in [
                (one.frame.origin, other.frame.origin),
                (one.frame.y, other.frame.y),
                (one.frame.z, other.frame.z),
            ] {
                let b = image(b);
                assert!((0..3).all(|i| (a[i] - b[i]).abs() < 1e-9), "{part}: {a:?} {b:?}");
            }
        }
        assert!(made.mass.centre[0].abs() < 1e-9, "its centre lies in the plane of its front");
    }
}

fn float(neck_at: f64) -> Project {
    let knots = [
        (0.0, 0.0),
        (30.0, 12.0),
        (40.0, 0.45 * neck_at),
        (11.0, neck_at),
        (19.0, neck_at + 20.0),
    ];
    let mut float = piece(&knots);
    let basket = piece(&[(0.0, 0.0), (20.0, 4.0), (22.0, 40.0)]);
    let size = |name: &str, factor| sizes::Size::new(name, sizes::SizeBy::Factor(factor));
    float.sizes = vec![size("S", 0.8), size("M", 1.0), size("L", 1.3)];
    let mut project = Project::of_piece(float);
    project.add(Piece { sizes: project.pieces[0].sizes.clone(), ..basket });
    let cord = Cord {
        from: CordHold { part: 0, at: CordSpot::Neck },
        way: CordWay::Around,
        knots: Knots::Inside,
        to: Some(CordHold { part: 1, at: CordSpot::End(PartEnd::Last) }),
        drop_mm: 60.0,
        strands: 4,
        thickness_mm: 1.5,
    };
    let mut body = Part::body(PieceId::new(0));
    body.up = plumpline_core::project::toy::part::Up::Start;
    project.toy = Toy {
        parts: vec![body, Part::body(PieceId::new(1))],
        attachments: vec![Attachment::Cord(cord)],
        ..Toy::default()
    };
    project
}

/// The round edge at which a plan is narrowest between its swells, found by looking.
fn narrowest(plan: &Plan) -> f64 {
    let radii: Vec<f64> = plan.forecast.iter().map(|n| n.r).collect();
    let widest =
        (0..radii.len()).max_by(|&a, &b| radii[a].total_cmp(&radii[b])).expect("nodes");
    let after = widest..plan.rounds.len();
    after.min_by(|&a, &b| radii[a].total_cmp(&radii[b])).expect("rounds") as f64
}

fn cord_round(project: &Project) -> (f64, f64) {
    let made = assembled(project).expect("a toy");
    let HeldPart::Cord { from, .. } = made.held[0] else { panic!("a cord") };
    assert!(from.narrow);
    // The basket hangs by the drop under it, at whatever round it is.
    let neck = made.solids[&PieceId::new(0)].profile(from.round.expect("a neck")).z;
    let rim = made.solids[&PieceId::new(1)].nodes().last().expect("nodes").z;
    let basket = made.poses[1].frame.place([0.0, 0.0, rim])[2];
    let Attachment::Cord(cord) = &project.toy.attachments[0] else { panic!("a cord") };
    assert!((basket - neck - cord.drop_mm).abs() < 1e-9, "{basket} {neck}");
    let plan = plan(&project.pieces[0]).expect("it plans");
    (from.round.expect("a neck"), narrowest(&plan))
}

/// The neck three rounds further on: the cord, the basket under it and every size go with it.
#[test]
fn the_neck_is_found_wherever_it_goes() {
    let height = 100.0 / 21.0;
    let mut found = Vec::new();
    for moved in 0..4 {
        let project = float(90.0 + 3.0 * height * f64::from(moved));
        let (cord, neck) = cord_round(&project);
        assert_eq!(cord, neck);
        for size in ["S", "M", "L"] {
            let at = sizes::at_size(&project, size).expect("the size");
            let (cord, neck) = cord_round(&at.project);
            assert_eq!(cord, neck, "{size}");
            // What hangs grows with what it hangs from.
            let drop = |p: &Project| match &p.toy.attachments[0] {
                Attachment::Cord(cord) => cord.drop_mm,
                _ => panic!("a cord"),
            };
            let high = |p: &Project| plan(&p.pieces[0]).expect("it plans").size_mm.height;
            let (drops, heights) =
                (drop(&at.project) / drop(&project), high(&at.project) / high(&project));
            assert!((drops / heights - 1.0).abs() < 0.05, "{size}: {drops} {heights}");
        }
        found.push(cord);
    }
    for pair in found.windows(2) {
        assert!((pair[1] - pair[0] - 3.0).abs() <= 1.0, "{found:?}");
    }
}

/// Another outline, gauge or size: places stay at their share, and still count whole stitches.
#[test]
fn places_outlast_another_gauge_and_outline() {
    let seat = Seat::new(0, 0.4, 0.1);
    let project = with_eyes(seat, BodyFront::default());
    let mut finer = project.clone();
    finer.pieces[0].gauge = Gauge::per(30.0, 29.0, 100.0);
    let (one, other) = (assembled(&project).expect("a toy"), assembled(&finer).expect("a toy"));
    for made in [&one, &other] {
        let point = made.parts[1].point.as_ref().expect("a place");
        let solid = &made.solids[&PieceId::new(0)];
        let high = solid.profile(f64::from(point.round)).z / solid.profile(1e9).z;
        assert!((high - 0.38).abs() < 0.06, "{high}");
        let count = solid.stitches(f64::from(point.round));
        let apart = f64::from(point.apart.expect("two"));
        assert!((apart / count - 0.2).abs() <= 0.5 / count + 1e-9);
    }
    let round =
        |made: &plumpline_core::toy::Assembled| made.parts[1].point.as_ref().map(|p| p.round);
    assert!(round(&other) > round(&one), "finer rounds are more");
}

/// Whatever numbers a toy that is read may have, it is put together or refused, and nothing in
/// it is not a number.
#[test]
fn any_toy_comes_together() {
    let mut rng = Rng::new(81);
    let pieces = [
        egg(),
        piece(&[(0.0, 0.0), (9.0, 12.0), (8.0, 40.0)]),
        piece(&[(14.0, 0.0), (20.0, 20.0), (8.0, 45.0), (12.0, 60.0)]),
        Piece {
            straight_mm: 30.0,
            ..piece(&[(0.0, 0.0), (20.0, 12.0), (18.0, 40.0), (0.0, 52.0)])
        },
    ];
    let plans: Vec<Plan> = pieces.iter().map(|p| plan(p).expect("it plans")).collect();
    for _ in 0..400 {
        let mut project = Project::of_piece(pieces[0].clone());
        project.pieces = numbered(&pieces);
        let mut pick = |n: usize| (rng.unit() * n as f64) as usize;
        let mut parts = vec![Part::body(PieceId::new(pick(4) as u32))];
        for i in 1..=1 + pick(5) {
            let how = [EdgeHow::Open, EdgeHow::Closed, EdgeHow::Flat][pick(3)];
            let end = [PartEnd::Start, PartEnd::Last][pick(2)];
            let on = pick(i);
            let along = [0.0, 1.0, 0.5, 0.02, 0.97, 0.3][pick(6)];
            let sunk_mm = [0.0, 5.0, -5.0, 60.0, 3000.0][pick(5)];
            let seat = Seat {
                by: PartEdge { end, how },
                turn_deg: [0.0, 90.0, -360.0, 33.0][pick(4)],
                tilt_deg: [0.0, 90.0, -90.0, 25.0][pick(4)],
                sunk_mm,
                ..Seat::new(on, along, [0.0, 0.5, -1.0, 0.2][pick(4)])
            };
            let mut part = Part::new(Thing::Piece(PieceId::new(pick(4) as u32)), Some(seat));
            part.copies = [Copies::One, Copies::Mirrored, Copies::Around(3)][pick(3)];
            parts.push(part);
        }
        project.toy = Toy { parts, ..Toy::default() };
        let made = assembled_of(&project, &plans).expect("a toy");
        assert!(made.mass.grams.is_finite() && made.mass.grams > 0.0);
        assert!(made.mass.centre.iter().all(|x| x.is_finite()), "{:?}", project.toy);
        for figures in &made.parts {
            assert!(figures.against_cylinder > 0.0);
            let Some(print) = &figures.footprint else { continue };
            assert!(
                print.length_mm.is_finite() && print.curve.iter().all(|on| on.turn.is_finite())
            );
            let span = figures.span.as_ref().expect("it is counted");
            assert!(
                span.widest.is_finite() && span.along.iter().all(|a| a.stitches.is_finite())
            );
        }
        assert!(made.standing.is_some_and(|s| s.height_mm.is_finite()));
        let text = file::write(&project).expect("it is saved");
        assert_eq!(file::parse(&text).expect("it opens"), project);
    }
}

/// The toys that come with the studio fit together: nothing is out of its place.
#[test]
fn sample_toys_fit_together_at_every_size() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let mut toys = 0;
    for entry in std::fs::read_dir(folder).expect("the samples are there") {
        let path = entry.expect("an entry").path();
        let project = file::load(&path).expect("it loads");
        if project.toy.is_empty() {
            continue;
        }
        toys += 1;
        let names: Vec<String> =
            sizes::size_names(&project).into_iter().map(str::to_owned).collect();
        let sized =
            names.iter().map(|name| sizes::at_size(&project, name).expect("made").project);
        for project in std::iter::once(project.clone()).chain(sized) {
            let made = assembled(&project).expect("a toy");
            for (number, part) in (1..).zip(&made.parts) {
                assert_eq!(part.misfit, None, "{}, part {number}", path.display());
            }
            assert!(made.parts.iter().all(|p| p.number > 0));
        }
    }
    assert!(toys >= 3, "{toys}");
}
