//! Files: nothing asked for is dropped because something else is under way, and what waits for
//! a save goes on with that save alone.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

use egui::{Context, Key, ViewportCommand, ViewportEvent, ViewportId};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::document::Document;
use plumpline::window::Studio;
use plumpline::work::files::{Files, Outcome, Purpose, ToSave};
use plumpline_core::{PieceId, Project, file};

use crate::homes::at_home;
use crate::wait::until;

type Bench<'a> = Harness<'a, Studio>;

#[test]
fn all_that_is_asked_is_done_in_order_whatever_is_under_way() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name);
    let document = Document::blank();
    let project = || Box::new(document.project().clone());
    let save = || Purpose::Save(ToSave { of: document.id(), project: project(), from: None });
    let (mut files, ctx) = (Files::default(), Context::default());
    let asked = [
        files.with_path(&ctx, save(), path("a.ron")),
        files.with_path(&ctx, save(), path("none/b.ron")),
        files.with_path(&ctx, Purpose::Open, path("a.ron")),
        files.with_path(&ctx, Purpose::Open, path("none.ron")),
    ];
    assert!(files.is_busy());
    let (began, mut heard) = (Instant::now(), Vec::new());
    while files.is_busy() {
        heard.extend(std::iter::from_fn(|| files.hear()));
        assert!(began.elapsed() < Duration::from_secs(20), "only {heard:?}");
        std::thread::yield_now();
    }
    assert_eq!(heard.iter().map(|(ticket, _)| *ticket).collect::<Vec<_>>(), asked);
    let [(_, a), (_, b), (_, c), (_, d)] = &heard[..] else { panic!("four: {heard:?}") };
    assert!(matches!(a, Outcome::Saved(path, of, ..) if path.exists() && *of == document.id()));
    assert!(matches!(b, Outcome::Failed(why) if why.lines().count() == 1));
    assert!(matches!(c, Outcome::Opened(_, project) if **project == *document.project()));
    assert!(matches!(d, Outcome::Failed(_)));
}

/// A file that is dropped on the window.
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

/// Moves a knot, by the keyboard.
fn nudge(bench: &mut Bench<'_>) {
    for key in [Key::CloseBracket, Key::CloseBracket, Key::ArrowRight] {
        bench.key_press(key);
        bench.run();
    }
}

/// Asks the window to close.
fn close(bench: &mut Bench<'_>) {
    let root = bench.input_mut().viewports.get_mut(&ViewportId::ROOT).expect("the window");
    root.events.push(ViewportEvent::Close);
    bench.step();
    bench.run();
}

fn closes(bench: &Bench<'_>) -> bool {
    bench.output().viewport_output[&ViewportId::ROOT].commands.contains(&ViewportCommand::Close)
}

#[test]
fn what_is_saved_first_waits_its_turn_and_then_goes_on() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    bench.key_press(Key::Num6);
    bench.run();
    let text = home.path().join("pattern.txt");
    std::fs::write(&text, "Rnd 1: 6 sc in MR (6)").expect("written");
    bench.input_mut().dropped_files = vec![Arc::new(Dropped(text))];
    bench.step();
    bench.input_mut().dropped_files.clear();
    close(&mut bench);
    bench.get_by_label("Save").click();
    let mut closed = false;
    until(&mut bench, "the window closes once all is saved", |bench| {
        closed |= closes(bench);
        closed
    });
    let document = bench.state().document();
    assert!(!document.is_changed());
    assert_eq!(file::load(&path).expect("saved"), *document.project());
}

#[test]
fn a_save_that_fails_takes_what_waited_for_it_along() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("work");
    std::fs::create_dir(&folder).expect("a folder");
    let path = folder.join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let mut bench = at_home(home.path(), Some(&path));
    nudge(&mut bench);
    std::fs::remove_dir_all(&folder).expect("removed");
    close(&mut bench);
    bench.get_by_label("Save").click();
    until(&mut bench, "it cannot be saved", |bench| {
        bench.state().view().notice.as_ref().is_some_and(|notice| notice.wrong)
    });
    std::fs::create_dir(&folder).expect("a folder");
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::S);
    let mut closed = false;
    until(&mut bench, "it is saved", |bench| {
        closed |= closes(bench);
        !bench.state().document().is_changed()
    });
    for _ in 0..5 {
        bench.step();
        closed |= closes(&bench);
    }
    assert!(!closed, "a later save closes nothing");
}

/// The studio with a change that is not saved, on a file in which another has saved since.
fn opened_and_changed_elsewhere<'a>(home: &Path) -> (Bench<'a>, PathBuf, Project) {
    let path = home.join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let mut bench = at_home(home, Some(&path));
    nudge(&mut bench);
    let theirs = Project { title: "Theirs".into(), ..Document::blank().project().clone() };
    file::save(&theirs, &path).expect("saved");
    (bench, path, theirs)
}

fn save_and_be_asked(bench: &mut Bench<'_>) {
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::S);
    until(bench, "it asks", |b| b.query_by_label("Replace it with mine").is_some());
}

#[test]
fn what_another_saved_is_kept_beside_mine() {
    let home = tempfile::tempdir().expect("a folder");
    let (mut bench, path, theirs) = opened_and_changed_elsewhere(home.path());
    save_and_be_asked(&mut bench);
    assert_eq!(file::load(&path), Ok(theirs.clone()), "nothing is overwritten unasked");
    // The answer that loses nothing has the keyboard.
    bench.run();
    bench.key_press(Key::Enter);
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    let beside = home.path().join("mine (2).ron");
    assert_eq!(bench.state().document().path(), Some(&*beside));
    assert_eq!(file::load(&beside).expect("saved"), *bench.state().document().project());
    assert_eq!(file::load(&path), Ok(theirs));
}

#[test]
fn what_another_saved_can_be_taken_or_replaced() {
    for (answer, mine_stays) in
        [("Open the other version", false), ("Replace it with mine", true)]
    {
        let home = tempfile::tempdir().expect("a folder");
        let (mut bench, path, theirs) = opened_and_changed_elsewhere(home.path());
        let mine = bench.state().document().project().clone();
        save_and_be_asked(&mut bench);
        bench.run();
        bench.get_by_label(answer).click();
        until(&mut bench, "it is settled", |b| !b.state().document().is_changed());
        let left = if mine_stays { mine } else { theirs };
        assert_eq!(*bench.state().document().project(), left, "{answer}");
        assert_eq!(file::load(&path), Ok(left), "{answer}");
        assert_eq!(bench.state().document().path(), Some(&*path));
    }
}

#[test]
fn a_step_of_the_making_never_saves_over_anothers_design() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let mut bench = at_home(home.path(), Some(&path));
    bench.get_by_label("Make").click();
    until(&mut bench, "the piece can be made", |b| {
        b.state().handiwork().course(PieceId::new(0)).is_some()
    });
    let theirs = Project { title: "Theirs".into(), ..Document::blank().project().clone() };
    file::save(&theirs, &path).expect("saved");
    bench.key_press(Key::Space);
    until(&mut bench, "it asks", |b| b.query_by_label("Save mine as a copy").is_some());
    assert_eq!(file::load(&path), Ok(theirs));
}

#[test]
fn whoever_comes_back_is_told_that_the_file_has_changed() {
    let home = tempfile::tempdir().expect("a folder");
    let (mut bench, _, _) = opened_and_changed_elsewhere(home.path());
    bench.event(egui::Event::WindowFocused(true));
    until(&mut bench, "it is told", |b| {
        let notice = b.state().view().notice.as_ref();
        notice.is_some_and(|n| n.text.starts_with("mine.ron was changed elsewhere"))
    });
}

/// The text that is proofread lies beside the project, with what was said of it.
#[test]
fn the_written_pattern_is_saved_beside_the_project_and_opened_again() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("mine.ron");
    file::save(Document::blank().project(), &path).expect("saved");
    let words = "Rnd 1: 6 sc in MR (6)\nRnd 2: bloom (12)\n";
    std::fs::write(home.path().join("mine.pattern.txt"), words).expect("written");
    let said = "[(words: \"bloom\", means: \"inc x 6\")]";
    std::fs::write(home.path().join("mine.pattern.sayings"), said).expect("written");
    let mut bench = at_home(home.path(), Some(&path));
    let proofreading = bench.state().proofreading();
    assert_eq!((proofreading.text(), proofreading.sayings().len()), (words, 1));
    assert!(!proofreading.is_unkept());
    bench.key_press(Key::Num6);
    bench.run();
    bench.get_by_label("Remove what you said, 1").click();
    bench.run();
    assert!(bench.state().proofreading().is_unkept());
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::S);
    until(&mut bench, "it is saved", |b| !b.state().proofreading().is_unkept());
    let said = std::fs::read_to_string(home.path().join("mine.pattern.sayings"));
    assert!(!said.expect("it is there").contains("bloom"));
}
