//! What stopped a designer in a day's use, each as it was done.

use egui::{Event, Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::window::Studio;

use crate::bench::{Bench, opened};
use crate::hand::{click, press, undo};
use crate::wait::until;

/// Types letters as a keyboard sends them: a key each, and its text.
fn type_letters(bench: &mut Bench<'_>, letters: &str) {
    for letter in letters.chars() {
        let key = Key::from_name(&letter.to_uppercase().to_string()).expect("a letter's key");
        bench.key_press(key);
        bench.event(Event::Text(letter.to_string()));
        bench.run();
    }
}

#[test]
fn naming_a_piece_types_its_name_and_edits_nothing_else() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Home);
    let before = bench.state().document().piece().clone();
    click(&mut bench, "Piece Float, selected");
    bench.get_by_label("Name of the piece").focus();
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.run();
    // Each of these is a key of the bench: half double, pin, loops, plain, magnet, corner.
    type_letters(&mut bench, "tplfmk");
    let piece = bench.state().document().piece();
    assert_eq!(piece.name, "tplfmk", "the card stays open to the last letter");
    // With any step the counts that are shown are taken into the piece.
    let (name, accepted) = (before.name.clone(), before.accepted.clone());
    assert_eq!(plumpline_core::Piece { name, accepted, ..piece.clone() }, before);
}

#[test]
fn a_second_press_on_larger_text_makes_it_larger_and_leaves_the_card_open() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Comma);
    bench.run();
    let at = bench.get_by_label("Larger text").rect().center();
    for percent in [110, 125] {
        // The hand does not move: its place on the screen stays, in points it does not.
        let zoom = bench.state().view().prefs.scale();
        let now = egui::pos2(at.x / zoom, at.y / zoom);
        bench.hover_at(now);
        bench.step();
        bench.drag_at(now);
        bench.step();
        bench.drop_at(now);
        bench.step();
        bench.step();
        assert!(bench.query_by_label("Close the card").is_some(), "at {percent} %");
    }
    assert!(bench.state().view().prefs.text_percent >= 110);
}

#[test]
fn a_typed_path_that_fails_stays_to_be_mended() {
    let folder = tempfile::tempdir().expect("a folder");
    let home = folder.path().to_owned();
    let mut bench: Bench<'_> = Harness::builder()
        .with_size(egui::vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| Studio::new(cc, None).typing_paths(&home));
    bench.run();
    let asks = |words: &'static str| {
        move |bench: &Bench<'_>| bench.query_by_label_contains(words).is_some()
    };
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    bench.run();
    until(&mut bench, "no path was asked for", asks("Type the whole path"));
    assert!(bench.query_by_label("Save as").is_some(), "it says what it is for");
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.run();
    bench.event(Event::Text("none/float.ron".into()));
    bench.run();
    press(&mut bench, Key::Enter);
    until(&mut bench, "it never says why", asks("none/float.ron"));
    bench.run();
    assert!(bench.query_by_label("Save as").is_some(), "the question still stands");
    let field = bench.get_by_label_contains("Type the whole path");
    assert!(field.value().is_none_or(|text| text.contains("none")), "with what was typed");
    assert!(bench.state().view().notice.is_none(), "why stands beside the path");
    // Letters typed now are letters.
    let steps = bench.state().document().history.undo_steps();
    type_letters(&mut bench, "tpl");
    assert_eq!(bench.state().document().history.undo_steps(), steps);
}

#[test]
fn a_key_that_edits_says_what_it_did_with_a_way_back_and_the_line_leaves_by_itself() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Home);
    press(&mut bench, Key::ArrowDown);
    let before = bench.state().document().project().clone();
    press(&mut bench, Key::P);
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.text.starts_with("Pin round 2 at") && notice.undo, "{notice:?}");
    let name = format!("Undo: {}", notice.text);
    click(&mut bench, &name);
    assert_eq!(bench.state().document().project(), &before);
    assert!(bench.state().view().notice.is_none(), "it went with its step");
    press(&mut bench, Key::T);
    assert!(bench.state().view().notice.is_some());
    for _ in 0..200 {
        bench.step();
    }
    assert!(bench.state().view().notice.is_none(), "ten seconds later it is gone");
    undo(&mut bench);
    assert_eq!(bench.state().document().project(), &before);
}
