//! What stands between a project and its file: a file that is read-only, taken away or written
//! by another window, a path that is taken, a save that hangs, a picture that lies elsewhere.

use std::path::{Path, PathBuf};

use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::document::Document;
use plumpline::window::Studio;
use plumpline_core::piece::Picture;
use plumpline_core::{PieceId, Project, file};

use crate::homes::at_home;
use crate::wait::until;

type Bench<'a> = Harness<'a, Studio>;

/// The studio on a project of its own.
fn opened<'a>(home: &Path) -> (Bench<'a>, PathBuf) {
    let path = home.join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    (at_home(home, Some(&path)), path)
}

/// Moves a knot, by the keyboard.
fn nudge(bench: &mut Bench<'_>) {
    for key in [Key::CloseBracket, Key::CloseBracket, Key::ArrowRight] {
        bench.key_press(key);
        bench.run();
    }
}

fn save(bench: &mut Bench<'_>) {
    bench.key_press_modifiers(Modifiers::COMMAND, Key::S);
    bench.step();
}

fn told(bench: &Bench<'_>, part: &str) -> bool {
    bench.state().view().notice.as_ref().is_some_and(|notice| notice.text.contains(part))
}

#[test]
fn a_read_only_file_is_asked_about_and_keeps_its_mark() {
    for (answer, replaced) in [("Save mine as a copy", false), ("Replace it with mine", true)] {
        let home = tempfile::tempdir().expect("a folder");
        let (mut bench, path) = opened(home.path());
        let before = file::load(&path).expect("it loads");
        let mut marked = std::fs::metadata(&path).expect("it is there").permissions();
        marked.set_readonly(true);
        std::fs::set_permissions(&path, marked).expect("marked");
        nudge(&mut bench);
        save(&mut bench);
        until(&mut bench, "it asks", |b| b.query_by_label("mine.ron is read-only").is_some());
        assert_eq!(file::load(&path).as_ref(), Ok(&before), "nothing is written unasked");
        bench.run();
        bench.get_by_label(answer).click();
        until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
        let mine = bench.state().document().project();
        let (here, beside) = (file::load(&path), file::load(&home.path().join("mine (2).ron")));
        assert_eq!(here.as_ref(), Ok(if replaced { mine } else { &before }), "{answer}");
        assert_eq!(beside.is_ok(), !replaced, "{answer}");
        assert!(std::fs::metadata(&path).expect("it is there").permissions().readonly());
    }
}

#[test]
fn two_windows_on_one_file_lose_neither_design() {
    let home = tempfile::tempdir().expect("a folder");
    let (mut one, path) = opened(home.path());
    let mut two = at_home(home.path(), Some(&path));
    nudge(&mut one);
    save(&mut one);
    until(&mut one, "the first is saved", |b| !b.state().document().is_changed());
    let first = file::load(&path).expect("it loads");
    // The second is told while it is open, and asked when it saves.
    until(&mut two, "the second is told", |b| told(b, "mine.ron was changed elsewhere"));
    for _ in 0..3 {
        nudge(&mut two);
    }
    save(&mut two);
    until(&mut two, "it asks", |b| b.query_by_label("Save mine as a copy").is_some());
    two.run();
    two.get_by_label("Save mine as a copy").click();
    until(&mut two, "the second is saved", |b| !b.state().document().is_changed());
    assert_eq!(file::load(&path), Ok(first));
    let beside = file::load(&home.path().join("mine (2).ron"));
    assert_eq!(beside.as_ref(), Ok(two.state().document().project()));
}

#[test]
fn a_file_that_is_taken_away_is_told_of_and_written_anew() {
    let home = tempfile::tempdir().expect("a folder");
    let (mut bench, path) = opened(home.path());
    nudge(&mut bench);
    std::fs::remove_file(&path).expect("removed");
    bench.event(egui::Event::WindowFocused(true));
    until(&mut bench, "it is told", |b| told(b, "mine.ron is no longer there"));
    save(&mut bench);
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    assert_eq!(file::load(&path).as_ref(), Ok(bench.state().document().project()));
}

#[test]
fn a_save_waits_for_what_is_under_way_and_knows_what_that_wrote() {
    let home = tempfile::tempdir().expect("a folder");
    let (mut bench, path) = opened(home.path());
    // Two saves, the second asked for before the first is done.
    nudge(&mut bench);
    save(&mut bench);
    nudge(&mut bench);
    save(&mut bench);
    until(&mut bench, "both are saved", |b| {
        assert!(b.query_by_label("Save mine as a copy").is_none(), "nobody else wrote it");
        !b.state().is_busy() && !b.state().document().is_changed()
    });
    assert_eq!(file::load(&path).as_ref(), Ok(bench.state().document().project()));
}

/// Another program that keeps the folder to itself: what asks for a turn there waits.
#[cfg(unix)]
#[test]
fn what_hangs_is_told_of_and_can_be_stopped() {
    let home = tempfile::tempdir().expect("a folder");
    let work = tempfile::tempdir().expect("a folder");
    let path = work.path().join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let held = std::fs::File::open(work.path()).expect("a folder");
    held.lock().expect("it is ours");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    save(&mut bench);
    until(&mut bench, "it lingers", |b| b.query_by_label("Saving the project…").is_some());
    // A wish that cannot be carried out now is said to be refused.
    bench.key_press_modifiers(Modifiers::COMMAND, Key::O);
    bench.step();
    assert!(told(&bench, "Open has to wait"), "{:?}", bench.state().view().notice);
    bench.get_by_label("Stop").click();
    until(&mut bench, "it is stopped", |b| told(b, "stopped"));
    assert!(!bench.state().is_busy() && bench.state().document().is_changed());
    // Nothing is in the way of the next.
    drop(held);
    save(&mut bench);
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    assert_eq!(file::load(&path).as_ref(), Ok(bench.state().document().project()));
}

/// The studio where no desktop shows a dialog, on a new project.
fn typing<'a>(from: &Path) -> Bench<'a> {
    let from = from.to_owned();
    let mut bench = Harness::builder()
        .with_size(egui::vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(move |cc| Studio::new(cc, None).typing_paths(&from));
    bench.run();
    bench
}

fn save_at(bench: &mut Bench<'_>, name: &str) {
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    let asks = |b: &Bench<'_>| b.query_by_label_contains("Type the whole path").is_some();
    until(bench, "it asks where", asks);
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.run();
    bench.event(egui::Event::Text(name.into()));
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

#[test]
fn a_typed_path_that_is_taken_is_asked_about() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("theirs.ron");
    let theirs = Project { title: "Theirs".into(), ..Document::blank().project().clone() };
    file::save(&theirs, &path).expect("saved");
    let mut bench = typing(folder.path());
    save_at(&mut bench, "theirs");
    until(&mut bench, "it asks", |b| b.query_by_label("theirs.ron already exists").is_some());
    assert_eq!(file::load(&path).as_ref(), Ok(&theirs));
    bench.run();
    bench.get_by_label("Replace it").click();
    until(&mut bench, "it is saved", |b| b.state().document().path().is_some());
    assert_eq!(file::load(&path).as_ref(), Ok(bench.state().document().project()));
}

#[test]
fn a_traced_picture_goes_along_and_names_no_folder() {
    let folder = tempfile::tempdir().expect("a folder");
    let [work, photos] = ["work", "photos"].map(|name| folder.path().join(name));
    for folder in [&work, &photos] {
        std::fs::create_dir(folder).expect("a folder");
    }
    let picture = photos.join("pear.png");
    image::RgbImage::new(40, 60).save(&picture).expect("a picture");
    let mut project = Document::blank().project().clone();
    let name = picture.to_str().expect("text");
    project.pieces[0].picture = Some(Picture::new(name, (0.0, 20.0), 60.0));
    // As older versions saved it.
    let path = work.join("pear.ron");
    file::save(&project, &path).expect("saved");
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    save(&mut bench);
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    let text = std::fs::read_to_string(&path).expect("it is there");
    assert!(text.contains("\"pear.png\"") && !text.contains("photos"), "{text}");
    assert!(told(&bench, "copied beside the project"));
    std::fs::remove_dir_all(&photos).expect("removed");
    let piece = bench.state().document().project().piece(PieceId::new(0)).expect("it is there");
    assert_eq!(piece.picture.as_ref().map(|p| &*p.path), Some("pear.png"));
    let bench = at_home(home.path(), Some(&path));
    let mut bench = bench;
    until(&mut bench, "it is found beside it", |b| b.state().picture().texture().is_some());
}
