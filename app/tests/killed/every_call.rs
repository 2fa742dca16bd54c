//! Stopped at each call by which a save changes files, be it by a crash or by an error of the
//! disk: the file is as it was or as it is to be, and whoever saved is told the truth.
//!
//! The program that stops the other is `stop_at_call.c`, which the C compiler that Rust links
//! with compiles. Where it cannot run, the test fails and says so.
#![cfg(target_os = "linux")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use crate::kinds::{Kind, saver};

/// More calls than any save has.
const MOST: u32 = 60;

/// The program that stops another, and where it reports.
struct Stopper {
    folder: tempfile::TempDir,
}

impl Stopper {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/killed/stop_at_call.c");
        let compiler = std::env::var("CC").unwrap_or_else(|_| "cc".into());
        let mut cc = Command::new(&compiler);
        cc.args(["-O1", "-o"]).arg(folder.path().join("stop_at_call")).arg(source);
        let out = cc.output().unwrap_or_else(|e| panic!("NOT TESTED: {compiler}: {e}"));
        let said = String::from_utf8_lossy(&out.stderr).into_owned();
        assert!(out.status.success(), "NOT TESTED: {compiler} compiles nothing: {said}");
        Self { folder }
    }

    /// Runs `program`, stopped `how` at call `n`; returns what it said, and whether it came so
    /// far.
    fn run(&self, how: &str, n: u32, program: &Command) -> (Output, bool) {
        let report = self.folder.path().join("report");
        std::fs::remove_file(&report).ok();
        let mut command = Command::new(self.folder.path().join("stop_at_call"));
        command.args([how, &n.to_string()]).arg(&report).arg(program.get_program());
        command.args(program.get_args());
        for (name, value) in program.get_envs() {
            command.env(name, value.expect("nothing is taken away"));
        }
        if let Some(folder) = program.get_current_dir() {
            command.current_dir(folder);
        }
        let out = command.output().expect("it runs");
        let said = String::from_utf8_lossy(&out.stderr).into_owned();
        let report = std::fs::read_to_string(&report).unwrap_or_else(|_| {
            panic!("NOT TESTED: no program can be stopped here (ptrace): {said}")
        });
        let calls = report.split(' ').next().and_then(|n| n.parse().ok());
        let calls: u32 = calls.expect("a number");
        (out, calls >= n)
    }
}

/// What lies in a folder.
fn names(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).expect("a folder").flatten();
    let mut names: Vec<_> = entries.map(|entry| entry.path()).collect();
    names.sort();
    names
}

#[test]
fn a_crash_at_each_call_of_each_save_leaves_one_whole_version() {
    let stopper = Stopper::new();
    for kind in Kind::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        kind.prepare(folder.path());
        let mut stood = [0; 2];
        for n in 1.. {
            assert!(n < MOST, "{kind:?} is never saved");
            let program = saver(kind, folder.path());
            let (out, stopped) = stopper.run("kill", n, &program);
            let version = kind.standing(folder.path());
            stood[version] += 1;
            if !stopped {
                let said = String::from_utf8_lossy(&out.stdout).into_owned();
                assert!(said.contains("saved") && version == 1, "{kind:?}: {said}");
                break;
            }
            if version == 1 {
                // What was renamed before the crash is as good as saved; begin anew.
                std::fs::remove_file(kind.file(folder.path())).expect("removed");
                kind.prepare(folder.path());
            }
        }
        // A file is made, filled and flushed before it takes the other's place.
        assert!(stood[0] >= 3 && stood[1] >= 1, "{kind:?}: {stood:?}");
    }
}

#[test]
fn an_error_at_each_call_of_each_save_loses_nothing_and_is_told() {
    let stopper = Stopper::new();
    for kind in Kind::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        kind.prepare(folder.path());
        let lies_there = names(folder.path());
        let mut refused = 0;
        for n in 1.. {
            assert!(n < MOST, "{kind:?} is never saved");
            let program = saver(kind, folder.path());
            let (out, stopped) = stopper.run("fail", n, &program);
            let said = String::from_utf8_lossy(&out.stdout).into_owned();
            let version = kind.standing(folder.path());
            let told =
                said.lines().find(|l| l.starts_with("saved") || l.starts_with("refused"));
            match told {
                Some("saved") => assert_eq!(version, 1, "{kind:?}, call {n}: {said}"),
                Some(_) => {
                    refused += 1;
                    assert_eq!(version, 0, "{kind:?}, call {n}: {said}");
                }
                None => panic!("{kind:?}, call {n}: it said nothing: {said}"),
            }
            assert_eq!(names(folder.path()), lies_there, "{kind:?}, call {n}: {said}");
            if !stopped {
                assert_eq!(version, 1, "{kind:?}: {said}");
                break;
            }
            if version == 1 {
                std::fs::remove_file(kind.file(folder.path())).expect("removed");
                kind.prepare(folder.path());
            }
        }
        assert!(refused >= 3, "{kind:?}: {refused} errors came through");
    }
}

/// The command line as people run it, each verb that writes.
#[test]
fn a_verb_that_is_stopped_at_any_call_leaves_its_file_whole() {
    let stopper = Stopper::new();
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    std::fs::copy(samples.join("pebble.ron"), at.join("a.ron")).expect("copied");
    let learn = "calibrate a.ron --height 64mm --of Moor --maker";
    let verbs = [
        ("resize a.ron --factor 1.1 -o out.ron", "out.ron"),
        ("sheet a.ron -o out.txt", "out.txt"),
        ("picture a.ron --view chart -o out.svg", "out.svg"),
        (&*format!("{learn} two --book out.book"), "out.book"),
    ];
    for (verb, output) in verbs {
        let output = at.join(output);
        let mut program = Command::new(env!("CARGO_BIN_EXE_plumpline"));
        program.args(verb.split(' ')).current_dir(at);
        if verb.starts_with("calibrate") {
            // A book that another hand is in already.
            let mut first = Command::new(env!("CARGO_BIN_EXE_plumpline"));
            let learn = format!("{learn} one --book out.book");
            first.args(learn.split(' ')).current_dir(at);
            assert!(first.output().expect("it runs").status.success());
        } else {
            std::fs::write(&output, "what stood there").expect("written");
        }
        let before = std::fs::read(&output).expect("it is there");
        let whole = {
            let out = program.output().expect("it runs");
            assert!(out.status.success(), "{verb}: {}", String::from_utf8_lossy(&out.stderr));
            std::fs::read(&output).expect("written")
        };
        for how in ["kill", "fail"] {
            for n in 1.. {
                assert!(n < MOST, "{verb} does not end");
                std::fs::write(&output, &before).expect("written");
                let (out, stopped) = stopper.run(how, n, &program);
                let now = std::fs::read(&output).expect("it is there");
                assert!(now == before || now == whole, "{verb}, {how} {n}: torn");
                if how == "fail" {
                    let told = out.status.success();
                    assert_eq!(now == whole, told, "{verb}, call {n}: {:?}", out.status);
                }
                if !stopped {
                    assert_eq!(now, whole, "{verb}");
                    break;
                }
            }
        }
    }
}
