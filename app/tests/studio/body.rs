//! The body as a person turns it, and what it shows of the round in hand.

use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::view::{BoardFace, Turned};
use plumpline::window::Studio;

use crate::wait::until_settled;

type Bench<'a> = Harness<'a, Studio>;

fn sized<'a>(width: f32, height: f32) -> Bench<'a> {
    let mut bench = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(20)
        .with_step_dt(0.05)
        .build_eframe(|cc| Studio::new(cc, None));
    bench.run();
    until_settled(&mut bench);
    bench
}

fn body(bench: &Bench<'_>) -> egui::Rect {
    bench.get_by_label("Stuffed body").rect()
}

fn turned(bench: &Bench<'_>) -> Turned {
    bench.state().view().turned
}

fn press(bench: &mut Bench<'_>, at: Pos2) {
    bench.drag_at(at);
    bench.drop_at(at);
}

#[test]
fn a_drag_turns_and_tilts_and_a_double_click_turns_back() {
    let mut bench = sized(1440.0, 900.0);
    let at = body(&bench).center();
    bench.hover_at(at);
    bench.step();
    bench.drag_at(at);
    bench.step();
    for i in 1..=5 {
        bench.hover_at(at + vec2(8.0, 4.0) * i as f32);
        bench.step();
    }
    bench.drop_at(at + vec2(40.0, 20.0));
    bench.run();
    let (was, now) = (Turned::default(), turned(&bench));
    assert!(now.turn_deg > was.turn_deg + 5.0 && now.turn_deg < was.turn_deg + 90.0, "{now:?}");
    assert!(now.tilt_deg > was.tilt_deg + 2.0, "{now:?}");
    assert!(bench.state().view().selected.is_none(), "a drag takes no round");
    assert_eq!(bench.state().document().history.undo_steps(), 0, "looking is no step");
    press(&mut bench, at);
    press(&mut bench, at);
    bench.run();
    assert_eq!(turned(&bench), was);
}

#[test]
fn scrolling_zooms_and_a_button_turns_back() {
    let mut bench = sized(1440.0, 900.0);
    let at = body(&bench).center();
    bench.hover_at(at);
    bench.step();
    bench.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: vec2(0.0, 60.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Unknown,
        modifiers: Modifiers::NONE,
    });
    bench.run();
    assert!(turned(&bench).zoom > 1.05, "{:?}", turned(&bench));
    bench.get_by_label("Turn the body back").click();
    bench.run();
    assert_eq!(turned(&bench), Turned::default());
}

#[test]
fn arrows_turn_the_body_while_it_has_the_keyboard() {
    let mut bench = sized(1440.0, 900.0);
    bench.get_by_label("Stuffed body").focus();
    bench.run();
    bench.key_press(Key::ArrowRight);
    bench.key_press(Key::ArrowRight);
    bench.key_press_modifiers(Modifiers::SHIFT, Key::ArrowDown);
    bench.run();
    let (was, now) = (Turned::default(), turned(&bench));
    assert_eq!(now, was.moved(10.0, 5.0));
    // Up and Down step through the rounds, as they do elsewhere.
    bench.key_press(Key::ArrowDown);
    bench.run();
    assert_eq!(bench.state().view().selected, Some(1));
}

#[test]
fn a_round_pointed_at_on_the_body_is_in_hand_and_lit() {
    let mut bench = sized(1440.0, 900.0);
    let at = body(&bench).center();
    bench.hover_at(at);
    bench.run();
    until_settled(&mut bench);
    let round = bench.state().view().hovered.expect("a round of the body");
    let rounds = bench.state().plan().expect("a plan").rounds.len() as u32;
    assert!(round > 5 && round < rounds, "{round}");
    assert!(bench.state().body().tie(round).is_some(), "the thread has an end");
    let picked = bench.state().body().pick(at).expect("a stitch");
    assert!(picked.round == round && picked.stitch.is_some());
    press(&mut bench, at);
    bench.run();
    assert_eq!(bench.state().view().selected, Some(round));
}

#[test]
fn cutting_open_shows_the_stuffing() {
    let mut bench = sized(1440.0, 900.0);
    let at = body(&bench).center();
    assert!(bench.state().body().pick(at).is_some());
    bench.get_by_label("Cut open").click();
    bench.run();
    until_settled(&mut bench);
    assert!(turned(&bench).cutaway);
    assert_eq!(bench.state().body().pick(at), None, "stuffing belongs to no round");
    assert_eq!(bench.state().document().history.undo_steps(), 0);
}

#[test]
fn a_body_at_rest_is_not_drawn_anew_and_follows_the_outline() {
    let mut bench = sized(1440.0, 900.0);
    let drawn = bench.state().body().drawn();
    assert!(drawn >= 1);
    assert_eq!(bench.run(), 1, "one frame, and no wish for another");
    assert_eq!(bench.state().body().drawn(), drawn);
    bench.key_press(Key::CloseBracket);
    bench.key_press(Key::CloseBracket);
    bench.run();
    bench.key_press(Key::ArrowRight);
    bench.run();
    assert!(bench.state().body().drawn() > drawn, "the outline changed, the body did not");
}

#[test]
fn where_there_is_no_room_outline_and_body_share_the_board() {
    let mut bench = sized(1024.0, 700.0);
    assert!(bench.query_by_label("Stuffed body").is_none());
    bench.get_by_label("Show the body").click();
    bench.run();
    assert_eq!(bench.state().view().face, BoardFace::Body);
    assert!(bench.query_by_label("Knot 1").is_none());
    bench.hover_at(body(&bench).center());
    bench.run();
    assert!(bench.state().view().hovered.is_some());
    bench.get_by_label("Show the outline").click();
    bench.run();
    assert!(bench.query_by_label("Knot 1").is_some());
}
