//! A thousand spoilt projects through every verb of the command line, memory limited: each is
//! refused in one line, or done.

use std::ffi::OsString;
use std::path::Path;

use plumpline::cli::{self, CliEnd};
use plumpline_core::file;

use super::drive::{Spoiler, Watched, most_memory_mb, seeds};
use super::is_inside;

/// Spoilt projects.
const PROJECTS: usize = 1000;
/// What takes a good part of a second comes to every so manieth sound one.
const SELDOM: usize = 70;

/// What is soon done; `@` stands for the project and `%` for the folder.
const SOON: [&str; 8] = [
    "rounds @",
    "rounds @ --json",
    "rounds @ --all-sizes",
    "sheet @ -o %/s.txt",
    "sheet @ -o %/s.md",
    "picture @ --view chart -o %/c.svg",
    "resize @ --factor 1.3 -o %/r.ron",
    "assemble @",
];

/// What takes longer.
const LONG: [&str; 6] = [
    "sheet @ -o %/s.html",
    "sheet @ -o %/s.pdf",
    "sheet @ -o %/s.png",
    "picture @ --view body -o %/b.svg",
    "picture @ --view body -o %/b.png",
    "calibrate @ --height 60mm --of Moor --maker me --book %/book.ron",
];

/// Runs a verb in this program.
fn run(verb: &str, project: &Path, folder: &Path) {
    let part = |word: &str| -> OsString {
        match word {
            "@" => project.into(),
            word => word.replace('%', &folder.to_string_lossy()).into(),
        }
    };
    let args = ["plumpline"].into_iter().chain(verb.split(' ')).map(part);
    assert!(matches!(cli::run(args), CliEnd::Done(_)), "{verb} opens a window");
}

#[test]
fn a_thousand_spoilt_projects_go_through_every_verb() {
    if !is_inside("verbs::a_thousand_spoilt_projects_go_through_every_verb") {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("any.ron");
    let mut spoiler = Spoiler::new(seeds("project"), 0x7665_7262);
    let watched = Watched::begin();
    let (mut sound, mut slowest) = (0, std::time::Duration::ZERO);
    for number in 0..PROJECTS {
        let bytes = spoiler.next();
        std::fs::write(&path, &bytes).expect("written");
        let is_sound = file::load(&path).is_ok();
        sound += usize::from(is_sound);
        let long = LONG.iter().filter(|_| is_sound && sound % SELDOM == 1);
        // Of what is refused one verb is as good as all: they read alike.
        let soon = SOON.iter().take(if is_sound { SOON.len() } else { 1 });
        for verb in soon.chain(long) {
            watched.next(&bytes);
            run(verb, &path, folder.path());
            slowest = slowest.max(watched.next(&[]));
        }
        if !is_sound {
            run(LONG[number % LONG.len()], &path, folder.path());
        }
    }
    let memory = most_memory_mb().map_or_else(String::new, |mb| format!(", {mb} MB at most"));
    println!(
        "verbs: {PROJECTS} cases, {sound} sound, the slowest {} ms{memory}",
        slowest.as_millis()
    );
    assert!(sound > PROJECTS / 10, "only {sound} are sound");
}
