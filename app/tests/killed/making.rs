//! Killed between two clicks, the studio opens again at the same stitch.
//!
//! The program that is killed is this one: run by itself with a folder in its environment, it
//! makes a ball, or a size of it, stitch by stitch and tells of every step that is on the disk.
//! Its clock stands still, so nothing that is kept after a while can help.

use std::io::{BufRead as _, BufReader, Read as _};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::homes::at_home;
use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::document::Document;
use plumpline::window::Studio;
use plumpline::work::home::recovery;
use plumpline::work::making::PieceCopy;
use plumpline_core::making::{By, Progress, Stand, WorkedPiece};
use plumpline_core::pattern::write::Writer;
use plumpline_core::{PieceId, Project, Size, SizeBy, file};

/// Names the folder to make in.
const FOLDER: &str = "PLUMPLINE_TEST_MAKES_IN";
/// Whether the project has a file of its own there.
const SAVED: &str = "PLUMPLINE_TEST_HAS_FILE";
/// Whether a size is made.
const SIZED: &str = "PLUMPLINE_TEST_MAKES_A_SIZE";
/// The size that is made.
const SIZE: &str = "L";
/// How often the program is killed, with a file and without.
const KILLS: u32 = 12;

/// The course of the ball, as it is designed or at its size.
fn course(project: &Project, size: Option<&str>) -> WorkedPiece {
    let writer = Writer::bench();
    match size {
        None => WorkedPiece::of_piece(&project.pieces[0], &writer).expect("a plan"),
        Some(size) => {
            WorkedPiece::at_size(project, size, &writer).expect("a plan").swap_remove(0)
        }
    }
}

fn steps_of(project: &Project, size: Option<&str>) -> u32 {
    assert!(project.making.at.iter().all(|p| p.size.as_deref() == size), "another size");
    project.making.at.first().map_or(0, |p| p.share(&course(project, size)).0)
}

fn on_disk(home: &Path, saved: bool) -> Option<Project> {
    match saved {
        true => file::load(&home.join("ball.ron")).ok(),
        false => recovery::read(&home.join("recovery/1.ron")).map(|(project, _)| project),
    }
}

/// One step of the studio, its clock standing still.
fn still(bench: &mut Harness<'_, Studio>) {
    bench.input_mut().time = Some(1.0);
    bench.step();
}

/// Waits for the plan of what is under the hook.
fn planned(bench: &mut Harness<'_, Studio>) {
    let began = Instant::now();
    still(bench);
    while bench.state().handiwork().course(PieceId::new(0)).is_none() {
        assert!(began.elapsed() < Duration::from_secs(20), "it is not planned");
        std::thread::sleep(Duration::from_micros(200));
        still(bench);
    }
}

/// Does nothing as a test; asked by the environment, makes a ball until it is killed.
#[test]
fn makes_until_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let (home, saved) = (Path::new(&folder), std::env::var_os(SAVED).is_some());
    let size = std::env::var_os(SIZED).map(|_| SIZE);
    let path = home.join("ball.ron");
    let mut bench = at_home(home, saved.then_some(path.as_path()));
    if size.is_some() && !saved {
        // The sample that opens has no sizes yet; the first is an L.
        bench.key_press(Key::Num3);
        still(&mut bench);
        bench.get_by_label("Add a size").click();
        still(&mut bench);
    }
    bench.key_press(Key::Num7);
    still(&mut bench);
    if size.is_some() {
        bench.key_press(Key::S);
        planned(&mut bench);
    }
    loop {
        bench.key_press(Key::Space);
        still(&mut bench);
        let now = steps_of(bench.state().document().project(), size);
        let began = Instant::now();
        // The disk may take its time; a maker takes longer.
        while on_disk(home, saved).is_none_or(|project| steps_of(&project, size) != now) {
            assert!(began.elapsed() < Duration::from_secs(20), "the step is not kept");
            std::thread::sleep(Duration::from_micros(200));
            still(&mut bench);
        }
        println!("kept {now}");
    }
}

#[test]
fn killed_between_two_clicks_it_opens_at_the_same_stitch() {
    for saved in [true, false] {
        for kill in 0..KILLS {
            let home = tempfile::tempdir().expect("a folder");
            let path = home.path().join("ball.ron");
            // Every other time it is a size that is made.
            let size = (kill % 2 == 1).then_some(SIZE);
            let mut project = Document::blank().project().clone();
            project.pieces[0].sizes = vec![Size::new(SIZE, SizeBy::Factor(1.3))];
            file::save(&project, &path).expect("saved");
            let mut command = Command::new(std::env::current_exe().expect("this program"));
            command
                .args([
                    "making::makes_until_killed",
                    "--exact",
                    "--nocapture",
                    "--test-threads=1",
                ])
                .env(FOLDER, home.path())
                .stdout(Stdio::piped())
                .stderr(Stdio::null());
            if saved {
                command.env(SAVED, "yes");
            }
            if size.is_some() {
                command.env(SIZED, "yes");
            }
            let mut child = command.spawn().expect("it runs");
            // Read in place: a pipe that closed with the loop would end the program at its next
            // word, before the kill, and nothing would have been killed.
            let mut out = BufReader::new(child.stdout.take().expect("piped"));
            let wanted = 1 + kill % 5;
            let mut told = 0;
            for line in out.by_ref().lines().map_while(Result::ok) {
                if let Some((_, steps)) = line.split_once("kept ") {
                    told = steps.trim().parse().expect("a number");
                }
                if told >= wanted {
                    break;
                }
            }
            assert_eq!(told, wanted, "it never got that far");
            // Anywhere between this click and one of the next.
            std::thread::sleep(Duration::from_micros(u64::from(kill * 7919 % 200) * 60));
            child.kill().expect("killed");
            let status = child.wait().expect("ended");
            drop(out);
            assert!(
                !status.success() && status.code().is_none(),
                "{status}: it ended by itself"
            );

            let kept = on_disk(home.path(), saved).expect("whole");
            let steps = steps_of(&kept, size);
            assert!(steps >= told, "{steps} steps are kept of {told} told of");
            let mut bench = at_home(home.path(), saved.then_some(path.as_path()));
            if !saved {
                bench.get_by_label("Recover").click();
                bench.run();
            }
            let opened = bench.state().document().project();
            assert_eq!(opened.making, kept.making);
            bench.key_press(Key::Num7);
            planned(&mut bench);
            let studio = bench.state();
            assert_eq!(studio.handiwork().size(), size, "it opens at the size it was at");
            let project = studio.document().project();
            let course = course(project, size);
            let mut by_hand = Progress::new(PieceId::new(0), 1);
            for _ in 0..steps {
                by_hand.advance(&course, By::Stitch);
            }
            let stand = studio
                .handiwork()
                .stand(project, PieceCopy { piece: PieceId::new(0), copy: 1 });
            assert_eq!(stand, Some(by_hand.stand(&course)));
            assert!(matches!(stand, Some(Stand::Stitch { .. })));
        }
    }
}
