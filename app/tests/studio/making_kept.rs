//! What is made is on the disk before the next step, whatever file the project has or has not.

use egui::Key;
use plumpline_core::{Project, file};

use crate::hand::press;
use crate::homes::at_home;
use crate::making::{saved_at, small_ball};
use crate::wait::{until, until_true};

#[test]
fn a_project_without_a_file_is_kept_at_once_too() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), None);
    bench.input_mut().time = Some(5.0);
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::Space);
    let copy = home.path().join("recovery/1.ron");
    until_true("no frame and no clock is needed", || copy.exists());
    let (kept, _) = plumpline::work::home::recovery::read(&copy).expect("whole");
    assert_eq!(&kept, bench.state().document().project());
    assert_eq!(kept.making.at[0].done, 1);
}

#[test]
fn other_changes_are_never_saved_behind_a_makers_back() {
    let home = tempfile::tempdir().expect("a folder");
    let project = Project::of_piece(small_ball());
    let path = saved_at(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::CloseBracket);
    press(&mut bench, Key::CloseBracket);
    press(&mut bench, Key::ArrowRight);
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::N);
    let copy = home.path().join("recovery/1.ron");
    until(&mut bench, "a copy is kept", |_| copy.exists());
    assert_eq!(file::load(&path), Ok(project), "the file is as it was saved");
    let (kept, _) = plumpline::work::home::recovery::read(&copy).expect("whole");
    assert_eq!(&kept, bench.state().document().project());
}

#[test]
fn a_file_that_cannot_be_saved_is_said_and_the_step_is_kept_all_the_same() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("stick");
    std::fs::create_dir(&folder).expect("made");
    let path = saved_at(&folder, &Project::of_piece(small_ball()));
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    std::fs::remove_dir_all(&folder).expect("pulled out");
    press(&mut bench, Key::N);
    until(&mut bench, "it is said", |b| b.state().view().notice.is_some());
    let said = bench.state().view().notice.clone().expect("said");
    assert!(said.wrong && said.text.contains("could not be saved"), "{said:?}");
    let copy = home.path().join("recovery/1.ron");
    until(&mut bench, "a copy is kept", |_| copy.exists());
    let (kept, _) = plumpline::work::home::recovery::read(&copy).expect("whole");
    assert_eq!(&kept, bench.state().document().project());
    std::fs::create_dir(&folder).expect("put back");
    press(&mut bench, Key::N);
    until(&mut bench, "it is saved again", |b| !b.state().document().is_changed());
    assert_eq!(&file::load(&path).expect("whole"), bench.state().document().project());
}
