//! Work is never lost: steps that can be gone back to, copies kept against a crash, questions
//! before anything is given up.

use std::path::Path;

use eframe::App as _;
use egui::{Key, Modifiers, ViewportCommand, ViewportEvent, ViewportId};
use egui_kittest::kittest::Queryable as _;
use plumpline::document::Document;
use plumpline_core::file;

use crate::bench::{Bench, opened};
use crate::homes::at_home;
use crate::wait::until_true;

/// Moves a knot, by the keyboard.
fn nudge(bench: &mut Bench<'_>) {
    bench.key_press(Key::CloseBracket);
    bench.key_press(Key::CloseBracket);
    bench.run();
    bench.key_press(Key::ArrowRight);
    bench.run();
}

/// The window loses the keyboard.
fn leave_window(bench: &mut Bench<'_>) {
    bench.event(egui::Event::WindowFocused(false));
    bench.run();
}

/// Asks the window to close; returns whether it would.
fn close(bench: &mut Bench<'_>) -> bool {
    let viewports = &mut bench.input_mut().viewports;
    let root = viewports.get_mut(&ViewportId::ROOT).expect("the window");
    root.events.push(ViewportEvent::Close);
    bench.step();
    let output = &bench.output().viewport_output[&ViewportId::ROOT];
    let stays = output.commands.contains(&ViewportCommand::CancelClose);
    bench.run();
    !stays
}

fn copy(home: &Path) -> std::path::PathBuf {
    home.join("recovery/1.ron")
}

#[test]
fn steps_are_listed_by_name_and_can_be_gone_back_to() {
    let mut bench = opened(1440.0, 900.0);
    let first = bench.state().document().project().clone();
    nudge(&mut bench);
    let second = bench.state().document().project().clone();
    for _ in 0..3 {
        bench.key_press(Key::ArrowDown);
        bench.run();
    }
    assert_eq!(bench.state().document().history.undo_steps(), 1, "a run of nudges");
    bench.key_press(Key::Escape);
    bench.key_press(Key::Home);
    bench.key_press(Key::P);
    bench.run();
    let names: Vec<_> = bench.state().document().history.names().collect();
    assert_eq!(names[0], "Move knot 2");
    assert!(names[1].starts_with("Pin round 1 at "), "{names:?}");
    assert_ne!(bench.state().document().project(), &second);
    bench.get_by_label("Steps").click();
    bench.run();
    bench.get_by_label("Step 0: As it was opened").click();
    bench.run();
    assert_eq!(bench.state().document().project(), &first);
    bench.get_by_label("Steps").click();
    bench.run();
    bench.get_by_label_contains("Step 2: Pin round 1").click();
    bench.run();
    assert!(bench.state().document().piece().pins.contains_key(&1));
}

#[test]
fn a_copy_is_kept_when_the_window_is_left_and_offered_after_a_crash() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    let saved = Document::blank().project().clone();
    file::save(&saved, &path).expect("saved");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    assert!(!copy(home.path()).exists(), "not at every change");
    leave_window(&mut bench);
    until_true("the copy is written", || copy(home.path()).exists());
    let changed = bench.state().document().project().clone();
    drop(bench); // Without a word, as a crash would.

    let mut bench = at_home(home.path(), None);
    let offer = "Plumpline closed unexpectedly. Recover “New project” as it was";
    assert!(bench.query_by_label_contains(offer).is_some());
    bench.get_by_label("Recover").click();
    bench.run();
    let document = bench.state().document();
    assert_eq!(document.project(), &changed);
    assert_eq!(document.path(), Some(path.as_path()));
    assert!(document.is_changed(), "what was recovered is not saved yet");
    assert_eq!(file::load(&path).as_ref(), Ok(&saved), "the file is as it was");
    assert!(bench.query_by_label_contains(offer).is_none());
    // Its own copy has taken the place of the one it came from.
    let own = home.path().join("recovery/2.ron");
    until_true("the old copy is gone", || own.exists() && !copy(home.path()).exists());
    // Saved, there is nothing to recover.
    bench.key_press_modifiers(Modifiers::COMMAND, Key::S);
    until_true("the copy goes with a save", || {
        bench.step();
        !own.exists()
    });
    assert_eq!(file::load(&path).as_ref(), Ok(&changed));
}

#[test]
fn the_last_saved_can_be_opened_instead() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    let saved = Document::blank().project().clone();
    file::save(&saved, &path).expect("saved");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    leave_window(&mut bench);
    until_true("the copy is written", || copy(home.path()).exists());
    drop(bench);
    let mut bench = at_home(home.path(), None);
    bench.get_by_label("Open the last saved").click();
    until_true("the file opens", || {
        bench.step();
        bench.state().document().path() == Some(path.as_path())
    });
    assert_eq!(bench.state().document().project(), &saved);
    until_true("the copy is gone", || !copy(home.path()).exists());
}

#[test]
fn what_is_left_alone_for_a_moment_has_a_copy() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    nudge(&mut bench);
    // The end waits for whatever was to be written.
    drop(bench);
    assert!(!copy(home.path()).exists());
    let mut bench = at_home(home.path(), None);
    nudge(&mut bench);
    bench.input_mut().time = Some(8.0);
    bench.step();
    until_true("the copy is written", || copy(home.path()).exists());
    let (kept, of) = plumpline::work::home::recovery::read(&copy(home.path())).expect("whole");
    assert_eq!((&kept, of), (bench.state().document().project(), None));
    // Taken back, there is nothing to keep.
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    until_true("the copy goes with the change", || !copy(home.path()).exists());
}

#[test]
fn a_line_that_crosses_itself_is_kept_as_it_last_was_sound() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    nudge(&mut bench);
    let sound = bench.state().document().project().clone();
    bench.key_press(Key::Escape);
    bench.key_press(Key::OpenBracket);
    bench.key_press(Key::OpenBracket);
    bench.run();
    for _ in 0..60 {
        bench.key_press_modifiers(Modifiers::SHIFT, Key::ArrowUp);
    }
    bench.run();
    assert!(bench.state().document().project().validate().is_err(), "it should cross");
    leave_window(&mut bench);
    until_true("the copy is written", || copy(home.path()).exists());
    let (kept, _) = plumpline::work::home::recovery::read(&copy(home.path())).expect("whole");
    assert_eq!(kept, sound);
}

#[test]
fn a_clean_end_leaves_nothing_to_recover_and_a_rough_one_does() {
    for clean in [true, false] {
        let home = tempfile::tempdir().expect("a folder");
        let mut bench = at_home(home.path(), None);
        nudge(&mut bench);
        leave_window(&mut bench);
        until_true("the copy is written", || copy(home.path()).exists());
        if clean {
            assert!(!close(&mut bench), "it asks first");
            bench.get_by_label("Discard").click();
            bench.run();
        }
        bench.state_mut().on_exit(None);
        drop(bench);
        assert_eq!(copy(home.path()).exists(), !clean);
        let bench = at_home(home.path(), None);
        assert_eq!(bench.query_by_label("Recover").is_some(), !clean);
    }
}

#[test]
fn the_question_before_closing_is_answered_by_keyboard() {
    let mut bench = opened(1440.0, 900.0);
    nudge(&mut bench);
    assert!(!close(&mut bench));
    assert!(bench.get_by_label("Save").is_focused(), "at the answer that loses nothing");
    bench.key_press(Key::Escape);
    bench.run();
    assert!(bench.query_by_label("Keep working").is_none());
    assert!(!close(&mut bench));
    bench.key_press(Key::Tab);
    bench.run();
    assert!(bench.get_by_label("Discard").is_focused());
    bench.key_press(Key::Enter);
    bench.run();
    assert!(bench.query_by_label("Discard").is_none());
    assert!(close(&mut bench), "nothing is asked twice");
}

#[test]
fn a_project_on_the_list_asks_before_it_opens_and_a_lost_one_goes_off_it() {
    let home = tempfile::tempdir().expect("a folder");
    let [first, lost] = ["first.ron", "lost.ron"].map(|name| home.path().join(name));
    for path in [&lost, &first] {
        file::save(Document::blank().project(), path).expect("saved");
        at_home(home.path(), Some(path)).state_mut().on_exit(None);
    }
    std::fs::remove_file(&lost).expect("removed");
    let mut bench = at_home(home.path(), None);
    // The card to begin with offers them too; here it is the menu that does.
    bench.key_press(Key::Escape);
    bench.run();
    nudge(&mut bench);
    let open = |bench: &mut Bench<'_>| {
        bench.get_by_label("File").click();
        bench.run();
    };
    open(&mut bench);
    bench.get_by_label("Open first").click();
    bench.run();
    bench.get_by_label("Keep working").click();
    bench.run();
    assert!(bench.state().document().is_changed());
    open(&mut bench);
    bench.get_by_label("Remove lost from the list").click();
    bench.run();
    assert_eq!(bench.state().home().desk.recent, std::slice::from_ref(&first));
    open(&mut bench);
    bench.get_by_label("Open first").click();
    bench.run();
    bench.get_by_label("Discard").click();
    until_true("the file opens", || {
        bench.step();
        bench.state().document().path() == Some(first.as_path())
    });
}
