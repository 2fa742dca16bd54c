//! Choices about the piece as a person makes them: rules, simplicity, holds, kinds of stitch.

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Card;
use plumpline_core::pattern::write::Writer;
use plumpline_core::warning::WarningKind;
use plumpline_core::{Face, Hold, Kind, Loop, Piece, Plan, Working, words};

use crate::bench::{Bench, opened};
use crate::hand::{click, undo};
use crate::wait::until;

fn bench<'a>() -> Bench<'a> {
    opened(1440.0, 1400.0)
}

fn piece<'a>(bench: &'a Bench<'_>) -> &'a Piece {
    bench.state().document().piece()
}

fn plan<'a>(bench: &'a Bench<'_>) -> &'a Plan {
    bench.state().plan().expect("a plan")
}

fn turn_to(bench: &mut Bench<'_>, card: &str) {
    bench.get_by_role_and_label(Role::Tab, card).click();
    bench.step();
    bench.step();
}

/// Presses the other button at a place.
fn press_second(bench: &mut Bench<'_>, at: Pos2) {
    bench.hover_at(at);
    bench.step();
    for pressed in [true, false] {
        bench.input_mut().events.push(egui::Event::PointerButton {
            pos: at,
            button: egui::PointerButton::Secondary,
            pressed,
            modifiers: Modifiers::NONE,
        });
        bench.step();
    }
    bench.run();
}

fn take_round(bench: &mut Bench<'_>, round: u32) {
    bench.key_press(Key::Home);
    bench.run();
    for _ in 1..round {
        bench.key_press(Key::ArrowDown);
        bench.run();
    }
    assert_eq!(bench.state().view().selected, Some(round));
}

/// Waits for the answers to choose from, which come from a thread of their own.
fn wait_for_answers(bench: &mut Bench<'_>) {
    bench.step();
    until(bench, "no answers came", |b| b.state().trade().is_current());
    bench.step();
    bench.step();
}

#[test]
fn a_rule_changes_the_counts_and_is_undone() {
    let mut bench = bench();
    let before = plan(&bench).counts();
    turn_to(&mut bench, "Rules");
    assert_eq!(bench.state().view().card, Card::Rules);
    for _ in 0..5 {
        click(&mut bench, "In multiples of, more");
    }
    assert_eq!(piece(&bench).rules.multiple_of, 6);
    let counts = plan(&bench).counts();
    assert_ne!(counts, before);
    assert!(counts.iter().all(|n| n % 6 == 0), "{counts:?}");
    for _ in 0..5 {
        undo(&mut bench);
    }
    assert_eq!(plan(&bench).counts(), before);
    assert!(!bench.state().document().is_changed());
}

#[test]
fn a_ring_is_held_and_goes_back_to_automatic() {
    let mut bench = bench();
    turn_to(&mut bench, "Rules");
    let ring = plan(&bench).rounds[0].count;
    click(&mut bench, "Foundation ring, more");
    assert_eq!(piece(&bench).rules.ring, Some(ring + 1));
    assert_eq!(plan(&bench).rounds[0].count, ring + 1);
    click(&mut bench, "Foundation ring, automatic");
    assert_eq!(piece(&bench).rules.ring, None);
    assert_eq!(plan(&bench).rounds[0].count, ring);
}

#[test]
fn the_counts_shown_are_kept_with_an_edit_and_go_with_it() {
    let mut bench = bench();
    assert_eq!(piece(&bench).accepted, None, "opening a project changes nothing");
    turn_to(&mut bench, "Rules");
    click(&mut bench, "Rounds may gain more than lies flat");
    assert!(piece(&bench).rules.frills);
    let kept = piece(&bench).accepted.clone().expect("the counts shown");
    assert_eq!(kept.counts, plan(&bench).counts());
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    let fresh = plumpline_core::plan(piece(&bench)).expect("a plan");
    assert_eq!(fresh.counts(), kept.counts, "what is saved gives what is shown");
    undo(&mut bench);
    assert_eq!(piece(&bench).accepted, None);
    assert!(!bench.state().document().is_changed());
}

#[test]
fn a_face_makes_its_rounds_plain() {
    let mut bench = bench();
    turn_to(&mut bench, "Rules");
    take_round(&mut bench, 7);
    click(&mut bench, "Add a plain zone");
    assert_eq!(piece(&bench).faces, [Face { from_round: 7, to_round: 9 }]);
    let counts = plan(&bench).counts();
    assert!(counts[5..9].iter().all(|&n| n == counts[5]), "{counts:?}");
    click(&mut bench, "Remove plain zone 1");
    assert!(piece(&bench).faces.is_empty());
    // F keeps the round in hand plain, and lets it go again.
    take_round(&mut bench, 8);
    bench.key_press(Key::F);
    bench.run();
    assert_eq!(piece(&bench).faces, [Face { from_round: 8, to_round: 8 }]);
    bench.key_press(Key::F);
    bench.run();
    assert!(piece(&bench).faces.is_empty());
}

#[test]
fn the_piece_starts_from_its_other_end() {
    let mut bench = bench();
    turn_to(&mut bench, "Rules");
    let outline = piece(&bench).outline.clone();
    assert!(bench.query_by_label("Oval start, straight side").is_some());
    click(&mut bench, "Start from the other end");
    assert_eq!(piece(&bench).outline, outline.reversed());
    assert!(plan(&bench).chain.is_some());
    assert!(
        bench.query_by_label("Oval start, straight side").is_none(),
        "only a closed start is oval"
    );
    undo(&mut bench);
    assert_eq!(piece(&bench).outline, outline);
}

#[test]
fn a_click_on_an_answer_takes_it_in_one_step_and_the_default_is_a_click_away() {
    let mut bench = bench();
    let before = plan(&bench).counts();
    turn_to(&mut bench, "Simplicity");
    wait_for_answers(&mut bench);
    let offer = bench.state().trade().offer().expect("answers").clone();
    assert_eq!(offer.default.counts, before, "the float has the default answer");
    let simple = offer.answers.last().expect("answers");
    bench.get_by_label("Result simple").click();
    bench.step();
    bench.step();
    assert_eq!(piece(&bench).simplicity, Some(1.0));
    assert_eq!(plan(&bench).counts(), simple.counts);
    assert!(bench.state().trade().is_current(), "a choice asks for no new answers");
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    let now = bench.state().words().expect("its words");
    assert_eq!(simple.distinct_lines, now.distinct_lines());
    let line = &simple.lines[1];
    let words = format!("{}: {} [{}]", line.heading, line.text, line.count);
    assert!(bench.query_by_label(&words).is_some(), "{words}");
    // Then it rests.
    crate::wait::until_settled(&mut bench);
    assert_eq!(bench.run(), 1);
    click(&mut bench, "Result default");
    assert_eq!(piece(&bench).simplicity, None);
    assert_eq!(plan(&bench).counts(), before);
    // The answer in use, chosen again, is no step.
    let steps = bench.state().document().history.undo_steps();
    click(&mut bench, "Result default");
    assert_eq!(bench.state().document().history.undo_steps(), steps);
    undo(&mut bench);
    undo(&mut bench);
    assert!(!bench.state().document().is_changed());
}

#[test]
fn every_answer_on_offer_is_what_a_plan_takes_at_its_simplicity() {
    let mut bench = bench();
    turn_to(&mut bench, "Simplicity");
    wait_for_answers(&mut bench);
    let offer = bench.state().trade().offer().expect("answers").clone();
    assert!(offer.answers.len() > 2, "{} answers", offer.answers.len());
    for answer in &offer.answers {
        let piece = Piece { simplicity: Some(answer.simplicity), ..piece(&bench).clone() };
        let now = plumpline_core::plan(&piece).expect("a plan");
        assert_eq!(now.counts(), answer.counts, "at {}", answer.simplicity);
    }
    let beaten = |p: &[plumpline_core::simplicity::Answer]| {
        p[0].likely_rms_stitches > p[1].likely_rms_stitches || p[0].trouble <= p[1].trouble
    };
    assert!(!offer.answers.windows(2).any(beaten));
}

#[test]
fn answers_to_an_earlier_piece_are_not_taken_for_those_of_this_one() {
    let mut bench = bench();
    turn_to(&mut bench, "Simplicity");
    // Before its answers can have come, the piece is another.
    bench.key_press(Key::CloseBracket);
    bench.key_press(Key::CloseBracket);
    bench.step();
    bench.key_press_modifiers(Modifiers::SHIFT, Key::ArrowRight);
    bench.step();
    wait_for_answers(&mut bench);
    let piece = Piece { simplicity: Some(1.0), accepted: None, ..piece(&bench).clone() };
    let now = plumpline_core::plan(&piece).expect("a plan");
    let simple = bench.state().trade().offer().and_then(|o| o.answers.last().cloned());
    let lines = words(&now, &piece, &Writer::bench()).lines;
    assert_eq!(simple.expect("answers").lines, lines);
}

#[test]
fn a_hold_and_a_card_are_set_from_the_menu_and_saved() {
    let mut bench = bench();
    let at = bench.get_by_label("Knot 5").rect().center();
    press_second(&mut bench, at);
    click(&mut bench, "Held by a closing thread");
    assert_eq!(piece(&bench).outline.knots[4].hold, Some(Hold::Cinched));
    press_second(&mut bench, at);
    click(&mut bench, "Card from here to the next knot");
    assert!(piece(&bench).outline.knots[4].card);
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("held.ron");
    let project = bench.state().document().project();
    plumpline_core::file::save(project, &path).expect("saved");
    assert_eq!(&plumpline_core::file::load(&path).expect("loaded"), project);
    assert_eq!(bench.state().document().history.undo_steps(), 2);
    press_second(&mut bench, at);
    click(&mut bench, "Held by nothing");
    assert_eq!(piece(&bench).outline.knots[4].hold, None);
}

#[test]
fn another_kind_shows_in_the_wording_and_is_assumed_until_counted() {
    let mut bench = bench();
    let rounds = plan(&bench).rounds.len();
    let row = bench.get_by_label_contains("Round 12: ").rect().center();
    press_second(&mut bench, row);
    click(&mut bench, "Stitch from here on: half double");
    assert_eq!(piece(&bench).kind_of_round(12), Kind::HalfDouble);
    let text =
        |bench: &Bench<'_>| bench.state().words().expect("its words").text_of(12).to_owned();
    assert!(text(&bench).contains("hdc"), "{}", text(&bench));
    assert!(plan(&bench).rounds.len() < rounds, "higher rounds are fewer");
    assert!(plan(&bench).warnings.iter().any(|w| w.kind == WarningKind::Swatch));
    click(&mut bench, "Worked into: back only");
    assert_eq!(piece(&bench).loops.get(&12), Some(&Loop::Back));
    assert!(text(&bench).contains("BLO"));
    bench.key_press(Key::Escape);
    bench.run();
    assert!(bench.query_by_label("Worked into: back only").is_none(), "Esc closes the card");
    assert_eq!(bench.state().view().selected, Some(12), "and leaves the round in hand");
    click(&mut bench, "More about the fabric");
    click(&mut bench, "Half double, count a swatch");
    assert!(piece(&bench).swatches.half_double.is_some());
    assert!(!plan(&bench).warnings.iter().any(|w| w.kind == WarningKind::Swatch));
    click(&mut bench, "Rounds: joined");
    assert_eq!(piece(&bench).working, Working::Joined { chain_counts: false });
}

#[test]
fn keys_choose_stitch_and_loop_of_the_round_in_hand() {
    let mut bench = bench();
    take_round(&mut bench, 9);
    bench.key_press(Key::T);
    bench.run();
    assert_eq!(piece(&bench).kind_of_round(9), Kind::HalfDouble);
    bench.key_press(Key::L);
    bench.run();
    assert_eq!(piece(&bench).loops.get(&9), Some(&Loop::Front));
    undo(&mut bench);
    undo(&mut bench);
    assert!(!bench.state().document().is_changed());
}

#[test]
fn a_narrow_window_has_the_card_behind_a_button() {
    let mut bench = opened(1024.0, 700.0);
    click(&mut bench, "Checks, rules, simplicity");
    turn_to(&mut bench, "Rules");
    click(&mut bench, "Smallest neck, more");
    assert_eq!(piece(&bench).rules.smallest_neck, 5);
}

#[test]
fn new_notes_are_new_until_they_are_seen() {
    let mut bench = bench();
    turn_to(&mut bench, "Rules");
    assert!(bench.state().view().read.is_empty());
    take_round(&mut bench, 12);
    bench.key_press(Key::T);
    bench.run();
    assert!(bench.state().view().read.is_empty(), "not in sight yet");
    turn_to(&mut bench, "Checks");
    assert!(bench.state().view().read.contains(&WarningKind::Swatch));
}
