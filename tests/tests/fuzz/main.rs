//! Whatever a file holds and a hand does: no panic, no end of time or memory, one line of why.
//!
//! Each target runs through its kept corpus, then through bytes made of it by chance, always
//! the same, in a program of its own whose memory is limited. With `PLUMPLINE_FUZZ_MINUTES`
//! fresh bytes are made for so long, and what breaks is kept in the corpus.

mod drive;
mod targets;
mod verbs;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use drive::{Spoiler, Watched, most_memory_mb, seeds};
use targets::TARGETS;

/// Names what runs in the program with limited memory.
const INSIDE: &str = "PLUMPLINE_TEST_FUZZ_INSIDE";
/// For how long fresh bytes are made, by hand.
const MINUTES: &str = "PLUMPLINE_FUZZ_MINUTES";
/// Memory that the program inside may ask the system for, kB: the program itself, its
/// libraries and its threads take some 300 MB of that before anything is done.
const MEMORY_KB: u64 = 1_000_000;

/// Runs the test `name` once more, in a program with limited memory; true if this is it.
fn is_inside(name: &str) -> bool {
    if std::env::var_os(INSIDE).is_some_and(|inside| inside == name) {
        return true;
    }
    let program = std::env::current_exe().expect("this program");
    let limit = format!("ulimit -v {MEMORY_KB}; exec \"$0\" \"$@\"");
    let mut command = if cfg!(target_os = "linux") {
        let mut shell = Command::new("sh");
        shell.args(["-c", &limit]).arg(program);
        shell
    } else {
        Command::new(program)
    };
    let out = command
        .args([name, "--exact", "--nocapture", "--test-threads=1"])
        .env(INSIDE, name)
        .stdin(Stdio::null())
        .output()
        .expect("it runs");
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    let wrong = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(out.status.success(), "{}: {said}\n{wrong}", out.status);
    // What it came to; all before it is what the verbs printed.
    println!("{}", said.lines().rfind(|line| line.contains(" cases, ")).unwrap_or_default());
    false
}

/// Runs the corpus of a target, then `cases` cases, or for as long as is asked.
fn run(name: &str, cases: usize) {
    let (_, target) = TARGETS.iter().find(|(target, _)| *target == name).expect("a target");
    let minutes = std::env::var(MINUTES).ok().and_then(|m| m.parse::<f64>().ok());
    let began = Instant::now();
    let seed = match minutes {
        Some(_) => fastrand::u64(..),
        None => 0x706c_756d,
    };
    let corpus = seeds(name);
    let kept = corpus.len();
    let mut spoiler = Spoiler::new(corpus.clone(), seed);
    let watched = Watched::begin();
    let (mut done, mut slowest) = (0, Duration::ZERO);
    loop {
        let goes_on = match minutes {
            Some(minutes) => began.elapsed().as_secs_f64() < 60.0 * minutes,
            None => done < kept + cases,
        };
        if done >= kept && !goes_on {
            break;
        }
        let bytes = match corpus.get(done) {
            Some(seed) => seed.clone(),
            None => spoiler.next(),
        };
        watched.next(&bytes);
        if let Err(panic) = catch_unwind(AssertUnwindSafe(|| target(&bytes))) {
            let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus/fuzz").join(name);
            let place = match minutes {
                Some(_) => folder.join(format!("{seed:016x}-{done}")),
                None => std::env::temp_dir().join(format!("plumpline-{name}-{done}")),
            };
            std::fs::create_dir_all(place.parent().expect("a folder")).ok();
            std::fs::write(&place, &bytes).ok();
            println!("{name}: case {done} is kept in {}", place.display());
            std::panic::resume_unwind(panic);
        }
        slowest = slowest.max(watched.next(&[]));
        done += 1;
    }
    // For whoever looks; nothing is asserted of time.
    let memory = most_memory_mb().map_or_else(String::new, |mb| format!(", {mb} MB at most"));
    println!("{name}: {done} cases, the slowest {} ms{memory}", slowest.as_millis());
}

macro_rules! fuzzed {
    ($($name:ident, $target:literal, $cases:literal;)*) => {$(
        #[test]
        fn $name() {
            if is_inside(stringify!($name)) {
                run($target, $cases);
            }
        }
    )*};
}

fuzzed! {
    any_project_file_is_refused_or_sound, "project", 700;
    any_pattern_is_read, "pattern", 500;
    any_table_is_refused_or_fitted, "table", 4000;
    any_drawing_is_refused_or_fitted, "drawing", 2000;
    any_formula_is_refused_or_fitted, "formula", 2000;
    any_drags_are_refused_or_planned, "drags", 120;
}

/// A harness that finds nothing may look nowhere: here it has to find.
#[test]
fn what_is_made_by_chance_reaches_far() {
    let mut spoiler = Spoiler::new(seeds("project"), 7);
    let sound = (0..200)
        .filter(|_| {
            let bytes = spoiler.next();
            plumpline_core::file::parse(&String::from_utf8_lossy(&bytes)).is_ok()
        })
        .count();
    assert!((20..180).contains(&sound), "{sound} of 200 are sound");
    let make = |seed| {
        let mut spoiler = Spoiler::new(seeds("drags"), seed);
        (0..50).map(|_| spoiler.next()).collect::<Vec<_>>()
    };
    assert_eq!(make(1), make(1));
    assert_ne!(make(1), make(2));
}
