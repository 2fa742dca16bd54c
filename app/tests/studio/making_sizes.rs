//! The Make stage where there are sizes: chosen by key or from their list, several in the making
//! at once, each with its own plan, place, notes and time; and what becomes of them when sizes
//! and pieces change.

use std::path::{Path, PathBuf};

use crate::hand::undo;
use crate::homes::at_home;
use crate::making::copy;
use crate::wait::until;
use egui::{Event, Key, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::window::Studio;
use plumpline::work::making::PieceCopy;
use plumpline_core::making::{Progress, Stand, Stop, WorkedPiece};
use plumpline_core::pattern::write::Writer;
use plumpline_core::{Gauge, Piece, PieceId, Project, Size, SizeBy, file, starter::Starter};

type Bench<'a> = Harness<'a, Studio>;

/// A bear of two ears, in two sizes, and a body that has an M only.
fn bear() -> Project {
    let ball = Starter::Ball;
    let mut piece = ball.piece(&ball.usual(), Gauge::default()).expect("a ball");
    piece.outline = piece.outline.scaled(0.7, 0.7);
    let size = |name: &str, factor| Size::new(name, SizeBy::Factor(factor));
    let sizes = vec![size("S", 0.6), size("M", 1.6)];
    let mut project =
        Project::of_piece(Piece { name: "Ear".into(), copies: 2, sizes, ..piece.clone() });
    let sizes = vec![size("M", 1.3)];
    project.add(Piece { name: "Body".into(), sizes, ..piece });
    project
}

fn in_file(home: &Path, project: &Project) -> PathBuf {
    let path = home.join("bear.ron");
    file::save(project, &path).expect("saved");
    path
}

fn press(bench: &mut Bench<'_>, key: Key) {
    bench.key_press(key);
    bench.run();
    settle(bench);
}

/// Waits until the size under the hook is planned.
fn settle(bench: &mut Bench<'_>) {
    until(bench, "the size is planned", |b| {
        let hands = b.state().handiwork();
        hands.course(hands.under().piece).is_some()
    });
    bench.run();
}

fn until_saved(bench: &mut Bench<'_>) {
    until(bench, "it is saved", |b| !b.state().document().is_changed());
}

/// What is under the hook: its size, its piece and copy, its round and how much of that is
/// worked.
fn at<'a>(bench: &'a Bench<'_>) -> (Option<&'a str>, PieceCopy, (u32, u32)) {
    let hands = bench.state().handiwork();
    let project = bench.state().document().project();
    match hands.stand(project, hands.under()) {
        Some(Stand::Stitch { round, done }) => (hands.size(), hands.under(), (round, done)),
        other => panic!("at {other:?}"),
    }
}

fn begun<'a>(
    bench: &'a Bench<'_>,
    piece: PieceId,
    size: Option<&str>,
    copy: u32,
) -> Option<&'a Progress> {
    bench.state().document().project().making.of(piece, size, copy)
}

/// The courses of a project at a size, planned here.
fn courses(project: &Project, size: &str) -> Vec<WorkedPiece> {
    WorkedPiece::at_size(project, size, &Writer::bench()).expect("courses")
}

#[test]
fn several_sizes_are_in_the_making_at_once_and_one_key_changes_over() {
    let home = tempfile::tempdir().expect("a folder");
    let path = in_file(home.path(), &bear());
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    assert!(bench.query_by_label("Size being made: as designed, not started").is_some());
    press(&mut bench, Key::N);
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (Some("S"), copy(0, 1), (1, 0)));
    press(&mut bench, Key::N);
    press(&mut bench, Key::N);
    press(&mut bench, Key::O);
    press(&mut bench, Key::N);
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (Some("M"), copy(0, 1), (1, 0)));
    for _ in 0..3 {
        press(&mut bench, Key::N);
    }
    press(&mut bench, Key::Space);
    assert_eq!(at(&bench), (Some("M"), copy(0, 1), (4, 1)));
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (None, copy(0, 1), (2, 0)));
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (Some("S"), copy(0, 2), (2, 0)), "the ear of the S worked on last");
    // Each takes back its own steps.
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench).2, (1, 0));
    press(&mut bench, Key::S);
    press(&mut bench, Key::Backspace);
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench), (Some("M"), copy(0, 1), (3, 0)));
    until_saved(&mut bench);
    let saved = file::load(&path).expect("whole");
    assert_eq!(&saved, bench.state().document().project());
    let round = |size, copy| saved.making.of(PieceId::new(0), size, copy).map(|p| p.round);
    assert_eq!([round(None, 1), round(Some("M"), 1)], [Some(2), Some(3)]);
    assert_eq!([round(Some("S"), 1), round(Some("S"), 2)], [Some(3), Some(1)]);
    // Opened again, it is the size and the ear worked on last.
    drop(bench);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    assert_eq!(at(&bench), (Some("M"), copy(0, 1), (3, 0)));
}

#[test]
fn a_whole_size_is_made_by_keyboard_alone_as_its_own_plan_says() {
    let home = tempfile::tempdir().expect("a folder");
    let project = bear();
    let path = in_file(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::S);
    let plans = courses(&project, "S");
    let whole =
        |bench: &Bench<'_>| bench.state().handiwork().whole(bench.state().document().project());
    let stitches = |course: &WorkedPiece| course.rounds.iter().map(|r| r.count).sum::<u32>();
    let all = 2 * stitches(&plans[0]) + stitches(&plans[1]);
    let usual = project.pieces[0].habits.stitches_per_minute;
    assert!((whole(&bench).seconds_left - 60.0 * f64::from(all) / usual).abs() < 1e-6);
    let mut read: Vec<(usize, u32, String)> = Vec::new();
    for _ in 0..400 {
        let studio = bench.state();
        let under = studio.handiwork().under();
        let place = project.position(under.piece).expect("a piece");
        match studio.handiwork().stand(studio.document().project(), under) {
            Some(Stand::Made) if whole(&bench).made == 3 => break,
            Some(Stand::Made) => press(&mut bench, Key::O),
            Some(Stand::Stop(stop)) => {
                let course =
                    studio.handiwork().course(under.piece).expect("known").expect("a plan");
                let round =
                    begun(&bench, under.piece, Some("S"), under.copy).expect("begun").round;
                let after = match stop {
                    Stop::Inside(i) => plans[place].inside[i as usize].after,
                    Stop::Stuff => plans[place].stuff_after.expect("it is stuffed"),
                    Stop::Close => plans[place].last_round(),
                };
                assert_eq!((round, &**course), (after + 1, &plans[place]), "{stop:?}");
                press(&mut bench, Key::Enter);
            }
            Some(Stand::Stitch { round, .. }) => {
                let planned = plans[place].round(round).expect("a round");
                let word = planned.word(planned.stitches[0]);
                let said = format!("Round {round}, stitch 1 of {}: {word}", planned.count);
                assert!(bench.query_by_label(&said).is_some(), "{said}");
                read.push((place, round, planned.text.clone()));
                press(&mut bench, Key::N);
            }
            None => panic!("no plan"),
        }
    }
    let said = bench.query_by_label_contains("Everything is finished in size S.");
    assert!(said.is_some());
    assert!(bench.query_by_label("Size being made: size S, finished").is_some());
    assert_eq!(read.len() as u32, 2 * plans[0].last_round() + plans[1].last_round());
    for copy in [1, 2] {
        let counts: Vec<u32> = plans[0].rounds.iter().map(|r| r.count).collect();
        assert_eq!(
            begun(&bench, PieceId::new(0), Some("S"), copy).expect("made").worked,
            counts
        );
    }
    assert_eq!(bench.state().document().history.undo_steps(), 0, "no steps of undo");
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (Some("M"), copy(1, 1), (1, 0)), "M is not begun by that");
    assert!(courses(&project, "M")[0].last_round() > plans[0].last_round());
}

#[test]
fn notes_and_time_belong_to_a_size_and_another_copy_of_it_reads_the_notes() {
    let home = tempfile::tempdir().expect("a folder");
    let path = in_file(home.path(), &bear());
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::S);
    press(&mut bench, Key::W);
    bench.step();
    bench.event(Event::Text("smaller hook".into()));
    bench.run();
    press(&mut bench, Key::S);
    assert_eq!(at(&bench).0, Some("S"), "keys write while a note is written");
    press(&mut bench, Key::Enter);
    bench.input_mut().time = Some(100.0);
    bench.step();
    bench.key_press(Key::Space);
    bench.input_mut().time = Some(104.0);
    bench.step();
    assert_eq!(
        begun(&bench, PieceId::new(0), Some("S"), 1).expect("begun").notes[&1],
        "smaller hook"
    );
    assert!(begun(&bench, PieceId::new(0), Some("S"), 1).expect("begun").seconds > 3.0);
    press(&mut bench, Key::O);
    assert!(bench.query_by_label("Ear 1: smaller hook").is_some());
    press(&mut bench, Key::S);
    press(&mut bench, Key::N);
    press(&mut bench, Key::Backspace);
    let medium = begun(&bench, PieceId::new(0), Some("M"), 1).expect("begun");
    assert!(medium.notes.is_empty() && medium.seconds < 1.0, "{medium:?}");
    assert!(bench.query_by_label_contains("smaller hook").is_none());
}

#[test]
fn sizes_are_taken_from_their_list_by_mouse_and_by_keyboard() {
    let home = tempfile::tempdir().expect("a folder");
    let path = in_file(home.path(), &bear());
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    bench.get_by_label("Size being made: as designed, not started").click();
    bench.run();
    for row in ["Make as designed, not started", "Make size S, not started"] {
        assert!(bench.query_by_label(row).is_some(), "{row}");
    }
    bench.get_by_label("Make size M, not started").click();
    bench.run();
    assert_eq!(bench.state().handiwork().size(), Some("M"));
    // The list is gone, and Enter opens it again where the keyboard is.
    assert!(bench.query_by_label("Make size M, not started").is_none());
    bench.get_by_label("Size being made: size M, not started").focus();
    bench.run();
    press(&mut bench, Key::Enter);
    bench.get_by_label("Make size S, not started").focus();
    bench.run();
    press(&mut bench, Key::Enter);
    press(&mut bench, Key::Space);
    assert_eq!(
        at(&bench),
        (Some("S"), copy(0, 1), (1, 1)),
        "the keyboard is at the hook again"
    );
}

#[test]
fn a_plan_of_a_size_that_changes_says_so_at_that_size_alone() {
    let home = tempfile::tempdir().expect("a folder");
    let path = in_file(home.path(), &bear());
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    for size in [None, Some("S"), Some("M")] {
        assert_eq!(at(&bench).0, size);
        for _ in 0..5 {
            press(&mut bench, Key::N);
        }
        press(&mut bench, Key::S);
    }
    let before = courses(bench.state().document().project(), "M");
    // The M of the ear becomes smaller by far, in the Sizes stage.
    bench.key_press(Key::Num3);
    bench.run();
    bench.get_by_label("Factor of size 2").focus();
    bench.run();
    for _ in 0..6 {
        bench.key_press(Key::Backspace);
    }
    bench.event(Event::Text("0.6".into()));
    bench.key_press(Key::Enter);
    bench.run();
    let project = bench.state().document().project().clone();
    assert_eq!(project.pieces[0].sizes[1].by, SizeBy::Factor(0.6));
    let after = courses(&project, "M");
    let differ = (0..5).any(|k| before[0].rounds[k].count != after[0].rounds[k].count);
    assert!(differ, "the plan has not changed where it was worked");
    press(&mut bench, Key::Num7);
    let parted = |b: &Bench<'_>| b.query_by_label_contains("The plan has changed").is_some();
    assert_eq!((at(&bench).0, parted(&bench)), (None, false));
    press(&mut bench, Key::S);
    assert_eq!((at(&bench).0, parted(&bench)), (Some("S"), false));
    press(&mut bench, Key::S);
    assert_eq!((at(&bench), parted(&bench)), ((Some("M"), copy(0, 1), (6, 0)), true));
    bench.get_by_label("Keep my place").click();
    bench.run();
    assert!(!parted(&bench));
    let counts: Vec<u32> = after[0].rounds[..5].iter().map(|r| r.count).collect();
    assert_eq!(begun(&bench, PieceId::new(0), Some("M"), 1).expect("begun").worked, counts);
}

#[test]
fn a_new_name_takes_progress_along_and_a_size_removed_brings_it_back_by_undo() {
    let home = tempfile::tempdir().expect("a folder");
    let path = in_file(home.path(), &bear());
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::S);
    for _ in 0..3 {
        press(&mut bench, Key::N);
    }
    press(&mut bench, Key::Num3);
    bench.get_by_label("Name of size 1").focus();
    bench.run();
    bench.event(Event::Text("mall".into()));
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
    let names: Vec<String> =
        bench.state().document().piece().sizes.iter().map(|s| s.name.clone()).collect();
    assert_eq!(names, ["Small", "M"]);
    press(&mut bench, Key::Num7);
    assert_eq!(at(&bench), (Some("Small"), copy(0, 1), (4, 0)));
    assert!(bench.query_by_label("Size being made: size Small, started").is_some());
    press(&mut bench, Key::N);
    undo(&mut bench);
    settle(&mut bench);
    assert_eq!(at(&bench), (Some("S"), copy(0, 1), (5, 0)), "undo takes the hands along");
    // No longer this size: what was made of it is gone with it, and comes back with it.
    press(&mut bench, Key::Num3);
    bench.get_by_label("More about size 1").click();
    bench.run();
    bench.get_by_label("Remove this size").click();
    bench.run();
    assert!(bench.state().document().project().making.is_empty());
    bench.key_press(Key::Escape);
    bench.run();
    press(&mut bench, Key::Num7);
    assert_eq!(
        at(&bench),
        (None, copy(0, 1), (1, 0)),
        "what is left is the project as designed"
    );
    undo(&mut bench);
    press(&mut bench, Key::S);
    assert_eq!(at(&bench), (Some("S"), copy(0, 1), (5, 0)));
    press(&mut bench, Key::Space);
    until_saved(&mut bench);
    let saved = file::load(&path).expect("whole");
    assert_eq!(
        saved.making.of(PieceId::new(0), Some("S"), 1).map(|p| (p.round, p.done)),
        Some((5, 1))
    );
}

#[test]
fn a_size_that_cannot_be_made_says_why_and_leads_to_the_sizes() {
    let home = tempfile::tempdir().expect("a folder");
    let mut project = bear();
    project.pieces[1].sizes[0].by = SizeBy::Meet { companion: PieceId::new(0) };
    let path = in_file(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::S);
    press(&mut bench, Key::S);
    assert_eq!(bench.state().handiwork().size(), Some("M"));
    press(&mut bench, Key::Space);
    assert!(bench.state().document().project().making.is_empty(), "there is nothing to work");
    bench.get_by_label("See the sizes").click();
    bench.run();
    assert_eq!(bench.state().view().stage, plumpline::view::Stage::Sizes);
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::S);
    press(&mut bench, Key::Space);
    assert_eq!(at(&bench), (None, copy(0, 1), (1, 1)), "the others can be made");
}

#[test]
fn many_sizes_of_long_names_leave_room_for_the_copies() {
    let home = tempfile::tempdir().expect("a folder");
    let mut project = bear();
    let names = (0..40).map(|i| format!("Size {i} for a large giant"));
    project.pieces[0].sizes = names.map(|name| Size::new(name, SizeBy::Factor(1.2))).collect();
    let path = in_file(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    for (width, height) in [(1024.0, 700.0), (1440.0, 900.0), (960.0, 590.0)] {
        bench.set_size(vec2(width, height));
        press(&mut bench, Key::Num7);
        press(&mut bench, Key::S);
        let heading = bench.get_by_label_contains("Size being made: ").rect();
        let ear = bench.get_by_label_contains("Ear 1, ").rect();
        assert!(heading.right() <= ear.left() && heading.height() >= 24.0, "{heading:?}");
        assert!(ear.width() >= 100.0, "{ear:?} in {width}×{height}");
    }
    bench.get_by_label_contains("Size being made: ").click();
    bench.run();
    // The last is reached by keyboard, and scrolls into sight.
    let last = bench.get_by_label_contains("Make size 39 for");
    last.focus();
    bench.run();
    bench.run();
    let window = egui::Rect::from_min_size(egui::Pos2::ZERO, vec2(960.0, 590.0));
    let rect = bench.get_by_label_contains("Make size 39 for").rect();
    assert!(window.contains_rect(rect), "{rect:?}");
}
