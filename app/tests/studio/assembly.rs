//! The Assembly stage as a person uses it: from pieces to a toy.

use std::path::{Path, PathBuf};

use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline::view::toy::{ToyPick, ToySide};
use plumpline_core::picture::toy::ToyThing;
use plumpline_core::project::toy::part::{Copies, EdgeHow, Part, Seat};
use plumpline_core::project::toy::{MadeFor, Toy};
use plumpline_core::{Project, file};

use crate::bench::{Bench, opened};
use crate::hand::{click, go_and_click, press, undo};
use crate::homes::at_home;
use crate::wait::{until, until_settled};

/// The sample animal without its toy: pieces, and nothing put together.
fn pieces(folder: &Path) -> PathBuf {
    let sample = include_str!("../../../sample-projects/moor-cob.ron");
    let project = file::parse(sample).expect("the sample is sound");
    let path = folder.join("cob.ron");
    file::save(&Project { toy: Toy::default(), ..project }, &path).expect("it is written");
    path
}

/// The sample animal as it is, in the Assembly stage; it lies in the folder.
pub(crate) fn whole<'a>() -> (tempfile::TempDir, Bench<'a>) {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("cob.ron");
    let sample = include_str!("../../../sample-projects/moor-cob.ron");
    std::fs::write(&path, sample).expect("it is written");
    let bench = at_assembly(&home.path().join("home"), &path);
    (home, bench)
}

fn at_assembly<'a>(home: &Path, path: &Path) -> Bench<'a> {
    let mut bench = at_home(home, Some(path));
    // Its pictures are as true in a small window, and drawn sooner.
    bench.set_size(vec2(1024.0, 700.0));
    press(&mut bench, Key::Num2);
    assert_eq!(bench.state().view().stage, Stage::Assembly);
    until_settled(&mut bench);
    bench
}

pub(crate) fn toy(bench: &Bench<'_>) -> Toy {
    bench.state().document().project().toy.clone()
}

fn seat(bench: &Bench<'_>, index: usize) -> Seat {
    toy(bench).parts[index].on.expect("it is carried")
}

pub(crate) fn steps(bench: &Bench<'_>) -> usize {
    bench.state().document().history.undo_steps()
}

/// Chooses from the list behind a button.
pub(crate) fn choose(bench: &mut Bench<'_>, button: &str, option: &str) {
    let found = bench.get_by_label(button);
    found.focus();
    bench.run();
    click(bench, button);
    click(bench, option);
    until_settled(bench);
}

/// Takes a part in hand by its row, whose name begins so.
pub(crate) fn take(bench: &mut Bench<'_>, begins: &str) {
    bench.get_by_label_contains(begins).focus();
    bench.run();
    bench.get_by_label_contains(begins).click();
    bench.run();
    until_settled(bench);
}

/// A place of the window at which the first copy of a part is seen.
fn seen(bench: &Bench<'_>, part: usize) -> Pos2 {
    let studio = bench.state();
    let made = studio.toy().made(studio.document()).expect("a toy");
    let pose = made.pose_of(part).expect("it is there");
    let field = bench.get_by_label("Toy").rect();
    let mut found: Vec<Pos2> = Vec::new();
    for y in (0..field.height() as usize).step_by(3) {
        for x in (0..field.width() as usize).step_by(3) {
            let at = field.min + vec2(x as f32, y as f32);
            if studio.toy().pick(at) == Some(ToyThing::Pose(pose)) {
                found.push(at);
            }
        }
    }
    assert!(!found.is_empty(), "part {part} is not seen");
    found[found.len() / 2]
}

fn drag(bench: &mut Bench<'_>, from: Pos2, by: egui::Vec2) {
    bench.hover_at(from);
    bench.step();
    bench.drag_at(from);
    bench.step();
    for i in 1..=4 {
        bench.hover_at(from + by * (0.25 * i as f32));
        bench.step();
    }
    bench.drop_at(from + by);
    bench.run();
    until_settled(bench);
}

#[test]
fn from_pieces_to_a_toy_that_is_saved_and_opened_again() {
    let home = tempfile::tempdir().expect("a folder");
    let path = pieces(home.path());
    let mut bench = at_assembly(&home.path().join("home"), &path);
    assert!(toy(&bench).is_empty());

    // The body, the head on it, ears on the head, eyes.
    click(&mut bench, "Put the pieces together");
    until_settled(&mut bench);
    choose(&mut bench, "Add a part", "Head");
    let head = seat(&bench, 1);
    assert_eq!((head.part, head.by.how), (0, EdgeHow::Closed));
    assert_eq!(bench.state().view().toy.taken, Some(ToyPick::Part(1)));
    choose(&mut bench, "Add a part", "Ear × 2");
    assert_eq!((seat(&bench, 2).part, toy(&bench).parts[2].copies), (1, Copies::Mirrored));
    choose(&mut bench, "Attached by: its open end", "its end, pressed flat");
    assert_eq!(seat(&bench, 2).by.how, EdgeHow::Flat);
    take(&mut bench, "Part Head");
    choose(&mut bench, "Add a part", "Eyes");
    assert_eq!(seat(&bench, 3).part, 1);
    let made = |bench: &Bench<'_>| {
        let studio = bench.state();
        studio.toy().made(studio.document()).expect("a toy").assembled.clone()
    };
    let number: usize = made(&bench).parts.iter().map(|part| part.number).sum();
    assert_eq!(number, 6, "a body, a head, two ears, two eyes");
    assert_eq!(steps(&bench), 5);

    // An ear by the keys: a stitch, a round, and back.
    take(&mut bench, "Part Ear");
    let before = toy(&bench);
    bench.get_by_label("Toy").focus();
    bench.run();
    press(&mut bench, Key::ArrowRight);
    press(&mut bench, Key::ArrowUp);
    until_settled(&mut bench);
    let moved = seat(&bench, 2);
    assert!(moved.at.around != before.parts[2].on.expect("a seat").at.around);
    assert!(moved.at.along != before.parts[2].on.expect("a seat").at.along);
    let notice = bench.state().view().notice.clone().expect("it is said what was done");
    assert!(notice.text.starts_with("Ear: Rnd "), "{}", notice.text);
    assert_eq!(steps(&bench), 6, "a run of keys is one step");
    undo(&mut bench);
    assert_eq!(toy(&bench), before);
    until_settled(&mut bench);

    // By hand over the head: one drag, one step.
    let at = seen(&bench, 2);
    drag(&mut bench, at, vec2(24.0, 14.0));
    assert_ne!(toy(&bench), before, "the hand moved it");
    assert_eq!(toy(&bench).parts.len(), before.parts.len());
    assert_eq!(steps(&bench), 6, "one drag is one step");
    let dragged = toy(&bench);
    undo(&mut bench);
    assert_eq!(toy(&bench), before);
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    bench.run();
    assert_eq!(toy(&bench), dragged);

    bench.key_press_modifiers(Modifiers::COMMAND, Key::S);
    bench.run();
    until(&mut bench, "it was not saved", |b| !b.state().document().is_changed());
    let kept = bench.state().document().project().clone();
    assert_eq!(file::load(&path).expect("it opens"), kept);
    drop(bench);
    let bench = at_assembly(&home.path().join("home"), &path);
    assert_eq!(toy(&bench), dragged);
    let studio = bench.state();
    assert!(studio.toy().made(studio.document()).is_some(), "it is put together again");
}

#[test]
fn a_part_is_moved_on_the_map_of_what_carries_it() {
    let (_home, mut bench) = whole();
    take(&mut bench, "Part nose");
    bench.get_by_label("Map of Head").focus();
    bench.run();
    let before = toy(&bench);
    let map = bench.get_by_label("Map of Head").rect();
    // The nose is on the front line, between the rounds that its place says.
    let made = |bench: &Bench<'_>| {
        let studio = bench.state();
        let made = studio.toy().made(studio.document()).expect("a toy");
        let solid = made.solid(1).expect("a head");
        (solid.round_at(seat(bench, 7).at.along), solid.rounds() as f64, made.grows_up(1))
    };
    let (round, rounds, up) = made(&bench);
    let share = if up { 1.0 - round / rounds } else { round / rounds } as f32;
    let middle = map.center().x + 13.0; // The numbers of rounds stand on the left.
    let at = Pos2::new(middle, map.top() + 4.0 + share * (map.height() - 8.0));
    drag(&mut bench, at, vec2(30.0, 0.0));
    let (was, now) = (before.parts[7].on.expect("a seat").at, seat(&bench, 7).at);
    assert!(now.around != was.around, "{was:?} {now:?}");
    assert_eq!(steps(&bench), 1);
    undo(&mut bench);
    assert_eq!(toy(&bench), before);
}

#[test]
fn typed_numbers_and_choices_change_the_part_in_hand() {
    let (_home, mut bench) = whole();
    let before = toy(&bench);
    take(&mut bench, "Part Tail");
    for (button, changed) in [
        (
            "Round of its place, more",
            (|a, b| a.at.along != b.at.along) as fn(Seat, Seat) -> bool,
        ),
        ("Stitches of its place from the front, less", |a, b| a.at.around != b.at.around),
        ("Turn of the part, more", |a, b| b.turn_deg == a.turn_deg + 5.0),
        ("Tilt of the part, less", |a, b| b.tilt_deg == a.tilt_deg - 5.0),
        ("How deep it is sunk in, more", |a, b| b.sunk_mm == a.sunk_mm + 1.0),
    ] {
        let was = seat(&bench, 5);
        bench.get_by_label(button).focus();
        bench.run();
        click(&mut bench, button);
        until_settled(&mut bench);
        assert!(changed(was, seat(&bench, 5)), "{button}");
    }
    assert_eq!(steps(&bench), 4, "moving it is one step, be it by rounds or by stitches");
    choose(&mut bench, "Sits on: Body", "Head");
    let studio = bench.state();
    let part = studio.view().toy.part().expect("it is in hand still");
    let parts: Vec<Part> = toy(&bench).parts;
    let piece = before.parts[5].piece();
    assert_eq!((parts[part].piece(), parts[part].on.map(|s| s.part)), (piece, Some(1)));
    choose(&mut bench, "Made for: a soft toy", "an ornament");
    assert_eq!(toy(&bench).made_for, MadeFor::Ornament);
    for _ in 0..6 {
        undo(&mut bench);
    }
    assert_eq!(toy(&bench), before);
}

#[test]
fn the_toy_is_turned_looked_at_from_its_sides_and_taken_apart() {
    let (_home, mut bench) = whole();
    for (button, side) in
        [("Front", ToySide::Front), ("Side", ToySide::Side), ("Back", ToySide::Back)]
    {
        click(&mut bench, &format!("Look at it: {button}"));
        assert_eq!(bench.state().view().toy.side(), side);
    }
    until_settled(&mut bench);
    let field = bench.get_by_label("Toy").rect();
    drag(&mut bench, field.left_top() + vec2(30.0, 30.0), vec2(40.0, 12.0));
    assert_eq!(bench.state().view().toy.side(), ToySide::Free);
    assert_eq!(steps(&bench), 0, "looking is no step");
    let small = bench.state().toy().place().expect("a place").scale();
    let slider = bench.get_by_label("Parts pulled apart").rect();
    drag(&mut bench, slider.left_center() + vec2(8.0, 0.0), vec2(100.0, 0.0));
    assert!(bench.state().view().toy.apart > 0.5);
    assert!(bench.state().toy().place().expect("a place").scale() < small, "it needs room");
    assert_eq!(steps(&bench), 0);
    let drawn = bench.state().toy().drawn();
    assert_eq!(bench.run(), 1, "one frame, and no wish for another");
    assert_eq!(bench.state().toy().drawn(), drawn);
}

#[test]
fn a_part_pointed_at_is_taken_by_a_click_and_removed_by_a_key() {
    let (_home, mut bench) = whole();
    let before = toy(&bench);
    let at = seen(&bench, 1);
    bench.hover_at(at);
    bench.step();
    bench.run();
    assert_eq!(bench.state().view().toy.hovered, Some(1));
    bench.drag_at(at);
    bench.drop_at(at);
    bench.run();
    until_settled(&mut bench);
    assert_eq!(bench.state().view().toy.taken, Some(ToyPick::Part(1)));
    press(&mut bench, Key::Delete);
    until_settled(&mut bench);
    // Ears, eyes and nose go with the head.
    assert_eq!(toy(&bench).parts.len(), before.parts.len() - 4);
    assert_eq!(bench.state().view().toy.taken, None);
    undo(&mut bench);
    assert_eq!(toy(&bench), before);
}

#[test]
fn a_project_without_a_toy_says_how_to_begin() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Num2);
    until_settled(&mut bench);
    assert!(bench.query_by_label_contains("Float becomes the body").is_some());
    click(&mut bench, "Put the pieces together");
    until_settled(&mut bench);
    let first = bench.state().document().project().pieces[0].id;
    assert_eq!(toy(&bench).parts, [Part::body(first)]);
    undo(&mut bench);
    assert!(toy(&bench).is_empty());
    until_settled(&mut bench);
    assert!(bench.query_by_label("Put the pieces together").is_some());
}

#[test]
fn ears_get_places_of_their_own() {
    let (_home, mut bench) = whole();
    let before = toy(&bench);
    take(&mut bench, "Part Ear");
    go_and_click(&mut bench, "Each its own place");
    until_settled(&mut bench);
    let after = toy(&bench);
    assert_eq!(after.parts.len(), before.parts.len() + 1);
    let [left, right] = [2, before.parts.len()].map(|i| after.parts[i].on.expect("a seat"));
    assert_eq!((left.at.along, left.at.around), (right.at.along, -right.at.around));
    undo(&mut bench);
    assert_eq!(toy(&bench), before);
}
