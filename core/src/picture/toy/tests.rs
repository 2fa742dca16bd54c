use std::collections::BTreeMap;

use super::*;
use crate::picture::relief::{Quality, Still};
use crate::piece::starter::Starter;
use crate::project::toy::part::{Button, Copies, EdgeHow, PartEdge, Place, Seat, Small};
use crate::toy::assembled_of;
use crate::{Gauge, Plan, plan};

/// A ball, a smaller one on top of it, and two eyes on that.
fn toy() -> (Project, Vec<Plan>, Assembled) {
    let starter = Starter::Ball;
    let usual = starter.usual();
    let body = starter.piece(&usual, Gauge::default()).expect("a ball");
    let (height_mm, width_mm) = (0.7 * usual.height_mm, 0.7 * usual.width_mm);
    let size = crate::starter::Dimensions { height_mm, width_mm, ..usual };
    let head = starter.piece(&size, Gauge::default()).expect("a smaller one");
    let mut project = Project::of_piece(body);
    let head = project.add(head);
    let first = project.pieces[0].id;
    let by = PartEdge { end: PartEnd::Start, how: EdgeHow::Closed };
    let on_top = Seat { by, turn_deg: 180.0, sunk_mm: 6.0, ..Seat::new(0, 1.0, 0.0) };
    let button = Button { diameter_mm: 8.0, embroidered: false };
    let eye = Small { name: String::new(), form: PartForm::Eye(button), grams: None };
    let seat = Seat { at: Place { along: 0.55, around: 0.08 }, ..Seat::new(1, 0.5, 0.0) };
    project.toy.parts = vec![
        Part::body(first),
        Part::new(Thing::Piece(head), Some(on_top)),
        Part { copies: Copies::Mirrored, ..Part::new(Thing::Small(eye), Some(seat)) },
    ];
    let plans: Vec<Plan> = project.pieces.iter().map(|p| plan(p).expect("a plan")).collect();
    let made = assembled_of(&project, &plans).expect("a toy");
    (project, plans, made)
}

fn view(picture: &ToyPicture, turn_deg: f32) -> ReliefView {
    let reach = picture.reach();
    ReliefView {
        turn_deg,
        tilt_deg: 0.0,
        scale: reach.fitting(160.0, 160.0, 0.0),
        middle: reach.middle,
        size: [160, 160],
        quality: Quality::Draft,
    }
}

/// How many pixels show each pose, from this side.
fn seen(turn_deg: f32, apart: f64) -> BTreeMap<usize, Vec<[usize; 2]>> {
    let (project, plans, made) = toy();
    let picture = ToyPicture::new(&project, &made, apart);
    let reliefs: BTreeMap<PieceId, Relief> = project
        .pieces
        .iter()
        .zip(&plans)
        .map(|(p, plan)| (p.id, Relief::new(p, plan)))
        .collect();
    let light = ToyLight {
        colours: &[[200, 80, 60]],
        lit: &[[240, 170, 40]],
        parts: &[1],
        attachment: None,
    };
    let view = view(&picture, turn_deg);
    let (scene, things) = picture.scene(|id| reliefs.get(&id), &light, |_| true, &view);
    let still = Still::new(&scene).expect("a picture");
    let mut found: BTreeMap<usize, Vec<[usize; 2]>> = BTreeMap::new();
    for (i, seen) in still.map.iter().enumerate() {
        if let Some(ToyThing::Pose(pose)) = thing_seen(&things, *seen) {
            found.entry(pose).or_default().push([i % 160, i / 160]);
        }
    }
    found
}

fn middle(places: &[[usize; 2]]) -> [f64; 2] {
    [0, 1].map(|i| places.iter().map(|p| p[i] as f64).sum::<f64>() / places.len() as f64)
}

#[test]
fn a_toy_stands_upright_and_looks_ahead() {
    let front = seen(0.0, 0.0);
    let [body, head, one, other] = [0, 1, 2, 3].map(|pose| middle(&front[&pose]));
    assert!(head[1] < body[1] - 20.0, "the head is above the body: {head:?} {body:?}");
    assert!((head[0] - body[0]).abs() < 2.0, "and over it: {head:?} {body:?}");
    assert!((one[1] - head[1]).abs() < 15.0 && (one[1] - other[1]).abs() < 1.5);
    assert!((0.5 * (one[0] + other[0]) - head[0]).abs() < 1.5, "{one:?} {other:?} {head:?}");
    assert!((one[0] - other[0]).abs() > 4.0, "one on either side");
    let back = seen(180.0, 0.0);
    assert!(!back.contains_key(&2) && !back.contains_key(&3), "no eyes are seen from behind");
}

#[test]
fn drawn_apart_a_part_leaves_what_carries_it_and_takes_along_what_it_carries() {
    let (project, _, made) = toy();
    let (together, apart) =
        (ToyPicture::new(&project, &made, 0.0), ToyPicture::new(&project, &made, 1.0));
    let high = |picture: &ToyPicture, part: usize| {
        let only = picture.only(|p| p == part, &[]).reach();
        only.middle[2]
    };
    assert_eq!(high(&together, 0), high(&apart, 0), "the body stays");
    let (head, eyes) =
        (high(&together, 1) - high(&apart, 1), high(&together, 2) - high(&apart, 2));
    assert!(head > 10.0, "the head goes up by {head} mm");
    assert!((head - eyes).abs() < 8.0, "the eyes go with it, and ahead: {eyes} mm");
    let ahead = apart.only(|p| p == 2, &[]).reach().middle[1]
        - together.only(|p| p == 2, &[]).reach().middle[1];
    assert!(ahead > 5.0, "{ahead}");
}

#[test]
fn what_lies_under_a_place_of_the_picture_is_what_falls_there() {
    let (project, _, made) = toy();
    for apart in [0.0, 0.6] {
        let picture = ToyPicture::new(&project, &made, apart);
        let view = view(&picture, 20.0);
        for pose in [0, 1] {
            let piece = project.toy.parts[made.poses[pose].part].piece().expect("crochet");
            let solid = &made.solids[&piece];
            for (round, turn) in [(5.5, 0.02), (8.3, 0.93), (10.1, 0.1)] {
                let on = OnCloth { round, turn };
                let spot = picture.on_cloth(&made, pose, solid, on).expect("a place");
                let [x, y, _] = view.project(spot);
                let found =
                    picture.seen_on(&made, pose, solid, view.line(x, y)).expect("cloth there");
                let off = found.turn - turn;
                let off = off - off.round();
                assert!((found.round - round).abs() < 0.02, "{pose}: {found:?} for {on:?}");
                assert!(off.abs() < 0.005, "{pose}: {found:?} for {on:?}");
            }
        }
    }
}
