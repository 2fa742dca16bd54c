//! Killed at any moment, a save leaves the old project or the new one, whole; so does a
//! recovery copy.
//!
//! The program that is killed is this one: run by itself with a folder in its environment,
//! it saves without end.

use std::io::Read as _;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use plumpline::document::Document;
use plumpline::work::home::recovery;
use plumpline_core::{Project, file};

/// Names the folder to save in, and so asks for saving without end.
const FOLDER: &str = "PLUMPLINE_TEST_SAVES_IN";
/// How often the program is killed.
const KILLS: u32 = 200;

/// Two projects whose files differ throughout.
fn versions() -> [Project; 2] {
    let first = Document::sample().project().clone();
    let mut second = first.clone();
    second.title = "The other version".into();
    second.notes = "Longer than the first by a good deal. ".repeat(400);
    let piece = &mut second.pieces[0];
    piece.outline = piece.outline.scaled(1.5, 1.25);
    [first, second]
}

/// Does nothing as a test; asked by the environment, saves until it is killed.
#[test]
fn saves_until_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let folder = Path::new(&folder);
    let saved = folder.join("float.ron");
    let versions = versions();
    println!("ready");
    loop {
        for version in versions.iter().rev() {
            file::save(version, &saved).expect("saved");
            recovery::write(&folder.join("1.ron"), version, Some(&saved)).expect("kept");
        }
    }
}

#[test]
fn a_kill_at_any_moment_leaves_one_whole_version() {
    let folder = tempfile::tempdir().expect("a folder");
    let (saved, kept) = (folder.path().join("float.ron"), folder.path().join("1.ron"));
    let versions = versions();
    file::save(&versions[0], &saved).expect("saved");
    recovery::write(&kept, &versions[0], Some(&saved)).expect("kept");
    let mut seen = [[0; 2]; 2];
    for kill in 0..KILLS {
        let mut child = Command::new(std::env::current_exe().expect("this program"))
            .args(["saving::saves_until_killed", "--exact", "--nocapture", "--test-threads=1"])
            .env(FOLDER, folder.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("it runs");
        // What it prints on the way to its loop; then a moment that is another every time.
        let mut out = child.stdout.take().expect("piped");
        let mut heard = Vec::new();
        let mut byte = [0];
        while !heard.ends_with(b"ready") && out.read(&mut byte).is_ok_and(|n| n == 1) {
            heard.push(byte[0]);
        }
        assert!(heard.ends_with(b"ready"), "it never began to save");
        std::thread::sleep(Duration::from_micros(u64::from(kill * 7919 % 200) * 60));
        child.kill().expect("killed");
        let status = child.wait().expect("ended");
        assert!(!status.success() && status.code().is_none(), "{status}: it ended by itself");

        let project = file::load(&saved).expect("the saved project is whole");
        let (copy, of) = recovery::read(&kept).expect("the copy is whole");
        assert_eq!(of.as_deref(), Some(saved.as_path()));
        for (i, found) in [project, copy].into_iter().enumerate() {
            let version = versions.iter().position(|v| *v == found);
            seen[i][version.expect("one of the two, nothing between")] += 1;
        }
    }
    // Or else nothing was being saved when the kills fell.
    assert!(seen.iter().flatten().all(|&n| n > 0), "{seen:?}");
}
