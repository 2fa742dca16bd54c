//! The first minutes: three steps that go away by being done, and pieces from starters.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::starter::Starter;

use crate::bench::{Bench, opened};
use crate::hand::drag_control;
use crate::homes::at_home;
use crate::wait::until;

/// A file as the desktop drops it.
#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|e| e.to_string())
    }
}

fn state_of(bench: &Bench<'_>, step: u32) -> &'static str {
    let is =
        |state| bench.query_by_label_contains(&format!("First step {step}, {state}")).is_some();
    match (is("done"), is("to do")) {
        (true, false) => "done",
        (false, true) => "to do",
        _ => "away",
    }
}

fn states(bench: &Bench<'_>) -> [&'static str; 3] {
    [1, 2, 3].map(|step| state_of(bench, step))
}

#[test]
fn first_steps_go_away_by_being_done_and_never_return() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    assert_eq!(bench.state().document().project().title, "Pond float");
    assert_eq!(states(&bench), ["to do", "to do", "to do"]);
    drag_control(&mut bench, "Knot 3", vec2(-20.0, 4.0), 4);
    assert_eq!(states(&bench), ["done", "to do", "to do"]);
    drag_control(&mut bench, "End of round 9", vec2(-12.0, 0.0), 4);
    assert_eq!(states(&bench), ["done", "done", "to do"]);
    bench.get_by_label("Sheet").click();
    bench.run();
    assert_eq!(states(&bench), ["away"; 3]);
    let said = bench.state().view().notice.clone().expect("a line");
    assert!(!said.wrong && said.text.contains("New…"), "{}", said.text);
    drop(bench);
    let bench = at_home(home.path(), None);
    assert_eq!(states(&bench), ["away"; 3]);
}

#[test]
fn first_steps_can_be_put_away_and_half_done_ones_are_remembered() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    drag_control(&mut bench, "Knot 3", vec2(-20.0, 4.0), 4);
    drop(bench);
    let mut bench = at_home(home.path(), None);
    assert_eq!(states(&bench), ["done", "to do", "to do"]);
    bench.get_by_label("Close first steps").click();
    bench.run();
    assert_eq!(states(&bench), ["away"; 3]);
    drop(bench);
    assert_eq!(states(&at_home(home.path(), None)), ["away"; 3]);
}

#[test]
fn every_starter_is_made_from_the_card() {
    let mut bench = opened(1440.0, 900.0);
    for starter in Starter::ALL {
        bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
        bench.run();
        bench.get_by_label(&format!("Starter {}", starter.name())).click();
        bench.run();
        if starter == Starter::Dome {
            bench.key_press_modifiers(Modifiers::COMMAND, Key::Enter);
        } else {
            bench.get_by_label("Create").click();
        }
        bench.run();
        let document = bench.state().document();
        assert_eq!(document.piece().name, starter.name());
        assert!(!document.is_changed() && document.path().is_none(), "{starter:?}");
        assert!(bench.state().plan().is_some());
        assert!(bench.query_by_label("Create").is_none(), "the card is away");
    }
}

#[test]
fn dimensions_are_kept_to_and_wrong_ones_told() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
    bench.run();
    let type_in = |bench: &mut Bench<'_>, field: &str, text: &str| {
        bench.get_by_label(field).click();
        bench.run();
        bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
        bench.event(egui::Event::Text(text.into()));
        bench.run();
        bench.key_press(Key::Enter);
        bench.run();
    };
    type_in(&mut bench, "Height", "40 cm");
    assert!(bench.query_by_label_contains("ball, height: 400 mm is out of range").is_some());
    bench.get_by_label("Create").click();
    bench.run();
    assert_eq!(bench.state().document().piece().name, "Float", "nothing is made of it");
    type_in(&mut bench, "Height", "10 cm");
    type_in(&mut bench, "Width", "3 in");
    bench.get_by_label("Create").click();
    bench.run();
    let profile = bench.state().document().piece().outline.profile(2000);
    assert!((profile.height_mm() - 100.0).abs() < 0.1);
    assert!((2.0 * profile.widest_mm() - 76.2).abs() < 0.1);
}

#[test]
fn another_piece_is_begun_only_after_asking() {
    let mut bench = opened(1440.0, 900.0);
    drag_control(&mut bench, "Knot 3", vec2(-20.0, 4.0), 4);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
    bench.run();
    bench.get_by_label("Create").click();
    bench.run();
    bench.get_by_label("Keep working").click();
    bench.run();
    assert_eq!(bench.state().document().piece().name, "Float");
    assert!(bench.state().document().is_changed());
    bench.get_by_label("Create").click();
    bench.run();
    bench.get_by_label("Discard").click();
    bench.run();
    assert_eq!(bench.state().document().piece().name, "Ball");
}

#[test]
fn a_later_start_begins_with_the_card_and_esc_goes_to_the_bench() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    assert!(bench.query_by_label("Create").is_none(), "the first time the float is shown");
    bench.get_by_label("Close first steps").click();
    bench.run();
    drop(bench);
    let mut bench = at_home(home.path(), None);
    assert!(bench.query_by_label("Create").is_some());
    bench.key_press(Key::Escape);
    bench.run();
    assert!(bench.query_by_label("Create").is_none());
}

#[test]
fn a_file_dropped_on_the_window_opens_and_any_other_is_refused() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    let project = plumpline::document::Document::blank().project().clone();
    plumpline_core::file::save(&project, &path).expect("saved");
    let mut bench = opened(1440.0, 900.0);
    let drop_file = |bench: &mut Bench<'_>, path: &Path| {
        bench.input_mut().dropped_files = vec![Arc::new(Dropped(path.to_owned()))];
        bench.step();
        bench.input_mut().dropped_files.clear();
    };
    drop_file(&mut bench, &home.path().join("notes.doc"));
    bench.run();
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.wrong && notice.text.starts_with("notes.doc: "), "{}", notice.text);
    assert!(notice.text.lines().count() == 1 && notice.text.contains(".ron"));
    drop_file(&mut bench, &path);
    until(&mut bench, "the file opens", |b| b.state().document().path().is_some());
    assert_eq!(bench.state().document().path(), Some(path.as_path()));
}
