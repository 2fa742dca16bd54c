//! The Make stage as a maker uses it: by keyboard alone, on several copies, with notes, pauses
//! and changes of plan; and what is then on the disk.

use std::path::Path;

use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline::work::making::PieceCopy;
use plumpline_core::making::{Progress, Stand, Stop};
use plumpline_core::{Band, Gauge, Piece, PieceId, Project, Yarn, file, starter::Starter};

use crate::bench::{Bench, opened};
use crate::hand::press;
use crate::homes::at_home;
use crate::wait::until;

/// A ball of a dozen rounds or so.
pub(crate) fn small_ball() -> Piece {
    let ball = Starter::Ball;
    let mut piece = ball.piece(&ball.usual(), Gauge::default()).expect("a ball");
    piece.outline = piece.outline.scaled(0.45, 0.45);
    piece
}

/// Copy `copy` of the piece of this number.
pub(crate) fn copy(piece: u32, copy: u32) -> PieceCopy {
    PieceCopy { piece: PieceId::new(piece), copy }
}

fn stand(bench: &Bench<'_>) -> Stand {
    let studio = bench.state();
    let under = studio.handiwork().under();
    studio.handiwork().stand(studio.document().project(), under).expect("a course")
}

fn progress<'a>(bench: &'a Bench<'_>, piece: u32, copy: u32) -> &'a Progress {
    let piece = PieceId::new(piece);
    bench.state().document().project().making.of(piece, None, copy).expect("begun")
}

/// The count and the repeats of the round under the hook.
fn at(bench: &Bench<'_>) -> (u32, u32) {
    match stand(bench) {
        Stand::Stitch { round, done } => (round, done),
        other => panic!("at {other:?}"),
    }
}

fn now(bench: &mut Bench<'_>, seconds: f64) {
    bench.input_mut().time = Some(seconds);
    bench.step();
}

pub(crate) fn saved_at(home: &Path, project: &Project) -> std::path::PathBuf {
    let path = home.join("ears.ron");
    file::save(project, &path).expect("saved");
    path
}

#[test]
fn a_whole_ball_is_made_by_keyboard_alone_and_is_in_its_file() {
    let home = tempfile::tempdir().expect("a folder");
    let path = saved_at(home.path(), &Project::of_piece(small_ball()));
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    assert_eq!(bench.state().view().stage, Stage::Make);
    let counts = bench.state().plan().expect("a plan").counts();
    let first = format!("Round 1, stitch 1 of {}: sc", counts[0]);
    assert!(bench.query_by_label(&first).is_some(), "{first}");
    let (mut stitches, mut stops) = (0, Vec::new());
    for _ in 0..4000 {
        match stand(&bench) {
            Stand::Made => break,
            Stand::Stop(stop) => {
                for key in [Key::Space, Key::R, Key::N] {
                    press(&mut bench, key);
                }
                assert_eq!(stand(&bench), Stand::Stop(stop), "no step goes past a stop");
                stops.push(stop);
                press(&mut bench, Key::Enter);
            }
            Stand::Stitch { round, done } => {
                let key = [Key::Space, Key::R, Key::N][round as usize % 3];
                press(&mut bench, key);
                stitches += u32::from(key == Key::Space);
                let moved = stand(&bench) != Stand::Stitch { round, done };
                assert!(moved, "{key:?} in round {round}");
            }
        }
    }
    assert!(stitches > 20);
    assert_eq!(stops, [Stop::Stuff, Stop::Close]);
    assert!(bench.query_by_label_contains("Ball is finished.").is_some());
    assert_eq!(progress(&bench, 0, 1).worked, counts);
    assert_eq!(bench.state().document().history.undo_steps(), 0, "no steps of undo");
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    let saved = file::load(&path).expect("whole");
    assert_eq!(&saved, bench.state().document().project());
    assert!(saved.making.at[0].closed);
}

#[test]
fn two_copies_keep_their_places_and_one_key_changes_over() {
    let home = tempfile::tempdir().expect("a folder");
    let ear = Piece { name: "Ear".into(), copies: 2, ..small_ball() };
    let mut project = Project::of_piece(ear);
    project.add(Piece { name: "Cap".into(), ..small_ball() });
    let path = saved_at(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::N);
    press(&mut bench, Key::N);
    press(&mut bench, Key::Space);
    assert_eq!(at(&bench), (3, 1));
    press(&mut bench, Key::O);
    assert_eq!(bench.state().handiwork().under(), copy(0, 2));
    assert_eq!(at(&bench), (1, 0));
    press(&mut bench, Key::N);
    press(&mut bench, Key::O);
    assert_eq!(bench.state().handiwork().under(), copy(1, 1));
    assert_eq!(bench.state().document().piece().name, "Cap");
    press(&mut bench, Key::O);
    assert_eq!((bench.state().handiwork().under(), at(&bench)), (copy(0, 1), (3, 1)));
    bench.get_by_label_contains("Ear 2, round 2 of ").click();
    bench.run();
    assert_eq!((bench.state().handiwork().under(), at(&bench)), (copy(0, 2), (2, 0)));
    // Each takes back its own steps.
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench), (1, 0));
    press(&mut bench, Key::O);
    press(&mut bench, Key::O);
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench), (3, 0));
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench), (2, 0), "a round taken at one go goes back at one go");
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    drop(bench);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    assert_eq!(at(&bench), (2, 0), "opened again it is where it was");
}

#[test]
fn a_note_is_kept_and_is_read_on_the_other_copy() {
    let home = tempfile::tempdir().expect("a folder");
    let ear = Piece { name: "Ear".into(), copies: 2, ..small_ball() };
    let path = saved_at(home.path(), &Project::of_piece(ear));
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::W);
    bench.step();
    assert!(bench.get_by_label("Note on round 1").is_focused());
    bench.event(Event::Text("two rounds now 4".into()));
    bench.run();
    press(&mut bench, Key::R);
    assert_eq!(at(&bench), (1, 0), "keys write while a note is written");
    press(&mut bench, Key::Enter);
    assert_eq!(progress(&bench, 0, 1).notes[&1], "two rounds now 4");
    assert!(!bench.get_by_label("Note on round 1").is_focused());
    press(&mut bench, Key::O);
    assert!(bench.query_by_label("Ear 1: two rounds now 4").is_some());
    until(&mut bench, "it is saved", |b| !b.state().document().is_changed());
    let saved = file::load(&path).expect("whole");
    assert_eq!(saved.making.at[0].notes[&1], "two rounds now 4");
}

#[test]
fn a_key_that_is_held_down_is_one_stitch() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Num7);
    let key = |pressed| Event::Key {
        key: Key::Space,
        physical_key: None,
        pressed,
        repeat: false, // egui finds out itself.
        modifiers: Modifiers::NONE,
    };
    for _ in 0..5 {
        bench.event(key(true));
        bench.step();
    }
    assert_eq!(at(&bench), (1, 1));
    bench.event(key(false));
    bench.event(key(true));
    bench.step();
    assert_eq!(at(&bench), (1, 2));
}

#[test]
fn time_counts_between_steps_and_a_pause_is_cut_short() {
    let mut bench = opened(1440.0, 900.0);
    now(&mut bench, 100.0);
    bench.key_press(Key::Num7);
    now(&mut bench, 100.0);
    bench.key_press(Key::Space);
    now(&mut bench, 106.0);
    assert!((progress(&bench, 0, 1).seconds - 6.0).abs() < 0.1);
    bench.key_press(Key::Space);
    now(&mut bench, 112.0);
    assert_eq!(progress(&bench, 0, 1).pace.stitches, 2);
    // An hour away: five minutes at most are work, and none of it tells the pace.
    now(&mut bench, 3000.0);
    assert!(bench.query_by_label_contains("paused").is_some());
    bench.key_press(Key::Space);
    now(&mut bench, 3712.0);
    let made = progress(&bench, 0, 1);
    assert!((made.seconds - 312.0).abs() < 0.1 && made.pace.stitches == 2, "{made:?}");
    // Reading the sheet is no work.
    bench.key_press(Key::Num4);
    now(&mut bench, 3713.0);
    now(&mut bench, 3800.0);
    bench.key_press(Key::Num7);
    now(&mut bench, 3800.0);
    bench.key_press(Key::Space);
    now(&mut bench, 3804.0);
    assert!((progress(&bench, 0, 1).seconds - 316.0).abs() < 0.1);
}

#[test]
fn undo_takes_back_the_outline_and_never_the_hands() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::CloseBracket);
    press(&mut bench, Key::CloseBracket);
    press(&mut bench, Key::ArrowRight);
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::N);
    press(&mut bench, Key::Space);
    let made = progress(&bench, 0, 1).place();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(progress(&bench, 0, 1).place(), made);
    assert!(!bench.state().document().history.can_undo());
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    bench.run();
    assert_eq!(progress(&bench, 0, 1).place(), made);
}

#[test]
fn progress_goes_with_its_piece_and_comes_back_with_it() {
    let mut bench = opened(1440.0, 900.0);
    let name = bench.state().document().piece().name.clone();
    let card = |bench: &mut Bench<'_>, item: &str| {
        let name = bench.state().document().piece().name.clone();
        bench.get_by_label(&format!("Piece {name}, selected")).click();
        bench.run();
        bench.get_by_label(item).click();
        bench.run();
    };
    card(&mut bench, "Add a ball");
    press(&mut bench, Key::Num7);
    for _ in 0..3 {
        press(&mut bench, Key::N);
    }
    assert_eq!(at(&bench).0, 4);
    bench.get_by_label(&format!("{name}, not started")).click();
    bench.run();
    press(&mut bench, Key::N);
    assert_eq!(at(&bench).0, 2);
    card(&mut bench, "Remove");
    let making = &bench.state().document().project().making;
    assert_eq!(
        (making.at.len(), making.at[0].piece, making.at[0].round),
        (1, PieceId::new(1), 4)
    );
    press(&mut bench, Key::N);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(progress(&bench, 0, 1).round, 2, "the piece that came back");
    assert_eq!(progress(&bench, 1, 1).round, 5, "as far as it was worked meanwhile");
}

#[test]
fn a_plan_that_changes_says_so_and_keeps_the_place() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Num7);
    for _ in 0..6 {
        press(&mut bench, Key::N);
    }
    press(&mut bench, Key::Space);
    assert!(bench.query_by_label_contains("The plan has changed").is_none());
    // Round 3 gets a stitch more, by the keys of the round bars; others may follow it.
    let counts = |bench: &Bench<'_>| bench.state().plan().expect("a plan").counts();
    let before = counts(&bench);
    press(&mut bench, Key::Num1);
    press(&mut bench, Key::Home);
    press(&mut bench, Key::ArrowDown);
    press(&mut bench, Key::ArrowDown);
    press(&mut bench, Key::Plus);
    press(&mut bench, Key::Escape);
    press(&mut bench, Key::Num7);
    let parted = counts(&bench).iter().zip(&before).position(|(now, was)| now != was);
    let told = format!("The plan has changed since: round {}", parted.expect("a change") + 1);
    assert!(bench.query_by_label_contains(&told).is_some(), "{told}");
    assert_eq!(at(&bench), (7, 1));
    bench.get_by_label("Keep my place").click();
    bench.run();
    assert!(bench.query_by_label_contains("The plan has changed").is_none());
    assert_eq!(at(&bench), (7, 1));
}

#[test]
fn another_round_is_gone_to_by_number_and_by_its_bar() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Num7);
    press(&mut bench, Key::G);
    bench.step();
    bench.event(Event::Text("9".into()));
    bench.run();
    press(&mut bench, Key::Enter);
    assert_eq!(at(&bench), (9, 0));
    press(&mut bench, Key::Space);
    assert_eq!(at(&bench), (9, 1), "the keyboard is free again");
    let bars = bench.get_by_label_contains("click one to go to it").rect();
    bench.hover_at(bars.center_top() + egui::vec2(0.0, 3.0));
    bench.step();
    bench.drag_at(bars.center_top() + egui::vec2(0.0, 3.0));
    bench.step();
    bench.drop_at(bars.center_top() + egui::vec2(0.0, 3.0));
    bench.run();
    assert_eq!(at(&bench), (1, 0));
    press(&mut bench, Key::Backspace);
    assert_eq!(at(&bench), (9, 1), "a wrong click is taken back whole");
}

#[test]
fn a_change_of_yarn_is_told_before_its_round_and_in_it() {
    let home = tempfile::tempdir().expect("a folder");
    let mut project = Project::of_piece(small_ball());
    project.yarns.push(Yarn::plain(1));
    project.pieces[0].bands = vec![Band { from_round: 3, yarn: 1 }];
    let path = saved_at(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    assert!(bench.query_by_label("Begin with yarn A (Madder).").is_some());
    press(&mut bench, Key::N);
    let change = "Change to yarn B (Oat) in the last stitch of this round.";
    assert!(bench.query_by_label(change).is_some());
    press(&mut bench, Key::N);
    assert!(bench.query_by_label("From here on in yarn B (Oat).").is_some());
}

#[test]
fn a_piece_without_a_plan_says_why_and_leads_back_to_its_shape() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::OpenBracket);
    press(&mut bench, Key::OpenBracket);
    for _ in 0..60 {
        bench.key_press_modifiers(Modifiers::SHIFT, Key::ArrowUp);
    }
    bench.run();
    press(&mut bench, Key::Num7);
    assert!(bench.state().document().project().validate().is_err(), "it should cross");
    press(&mut bench, Key::Space);
    assert!(bench.state().document().project().making.is_empty());
    bench.get_by_label("Shape it").click();
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Shape);
}

#[test]
fn it_has_room_for_many_pieces_in_a_small_window() {
    let home = tempfile::tempdir().expect("a folder");
    let mut project = Project::of_piece(Piece { copies: 400, ..small_ball() });
    for i in 0..8 {
        project.add(Piece { name: format!("Part {i}"), ..small_ball() });
    }
    let path = saved_at(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    // The last is as small as a bench gets before the window scrolls over it.
    for (width, height) in [(1024.0, 700.0), (1440.0, 900.0), (2560.0, 1440.0), (960.0, 590.0)]
    {
        bench.set_size(egui::vec2(width, height));
        press(&mut bench, Key::Num7);
        let window = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height));
        for name in ["Back", "Stitch", "Repeat", "Round"] {
            let rect = bench.get_by_label(name).rect();
            assert!(window.contains_rect(rect), "{name} at {rect:?} in {width}×{height}");
            assert!(rect.height() >= 24.0 && rect.width() >= 24.0);
        }
    }
    let whole = bench.state().handiwork().whole(bench.state().document().project());
    assert_eq!((whole.made, whole.copies), (0, 408));
}

#[test]
fn everything_made_is_summed_up_with_what_is_left_to_sew() {
    let home = tempfile::tempdir().expect("a folder");
    let mut project = Project::of_piece(small_ball());
    let dish = Starter::Dish;
    let mut cap = dish.piece(&dish.usual(), Gauge::default()).expect("a dish");
    cap.name = "Cap".into();
    project.add(cap);
    let path = saved_at(home.path(), &project);
    let mut bench = at_home(home.path(), Some(&path));
    press(&mut bench, Key::Num7);
    for _ in 0..400 {
        match stand(&bench) {
            Stand::Made
                if bench.query_by_label_contains("Everything is finished").is_some() =>
            {
                break;
            }
            Stand::Made => press(&mut bench, Key::O),
            Stand::Stop(_) => press(&mut bench, Key::Enter),
            Stand::Stitch { .. } => press(&mut bench, Key::N),
        }
    }
    let open = !bench.state().document().project().pieces[1].outline.finishes_closed();
    let sew = bench.query_by_label_contains("Cap is open at its edge of").is_some();
    assert!(bench.query_by_label_contains("Everything is finished").is_some());
    assert_eq!(sew, open);
}
