//! A disk without room: the good old file stays, nothing half written lies about, and whoever
//! saved is told.
#![cfg(target_os = "linux")]

use std::path::Path;
use std::process::{Command, Output, Stdio};

use crate::kinds::{Kind, saver};

/// Files of at most so many kB may be written by `program`.
fn limited(program: &Command, kilobytes: u32) -> Output {
    // 512 bytes are the unit of POSIX. A program that is not to be ended by the signal for it
    // gets an error, as from a disk that is full.
    let script = format!("trap '' XFSZ; ulimit -f {}; exec \"$0\" \"$@\"", 2 * kilobytes);
    let mut shell = Command::new("sh");
    shell.args(["-c", &script]).arg(program.get_program()).args(program.get_args());
    for (name, value) in program.get_envs() {
        shell.env(name, value.expect("nothing is taken away"));
    }
    shell.stdin(Stdio::null()).output().expect("a shell")
}

fn told(out: &Output) -> String {
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    let line = said.lines().find(|l| l.starts_with("saved") || l.starts_with("refused"));
    line.unwrap_or_else(|| panic!("it said nothing: {said}")).to_owned()
}

#[test]
fn a_file_that_finds_no_room_leaves_the_old_one() {
    for kind in Kind::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        kind.prepare(folder.path());
        let before = std::fs::read_dir(folder.path()).expect("a folder").count();
        let said = told(&limited(&saver(kind, folder.path()), 1));
        assert!(said.starts_with("refused"), "{kind:?}: {said}");
        assert_eq!(kind.standing(folder.path()), 0, "{kind:?}");
        let after = std::fs::read_dir(folder.path()).expect("a folder").count();
        assert_eq!(after, before, "{kind:?}: something is left");
        // With room it goes.
        assert_eq!(told(&limited(&saver(kind, folder.path()), 4000)), "saved");
        assert_eq!(kind.standing(folder.path()), 1, "{kind:?}");
    }
}

/// A small disk that is full, where the machine lets one be made.
#[test]
fn a_full_disk_leaves_the_old_file() {
    let outer = tempfile::tempdir().expect("a folder");
    let inner = outer.path().join("small");
    std::fs::create_dir(&inner).expect("a folder");
    let script = "mount -t tmpfs -o size=4m small \"$1\" || exit 77
        cp -r \"$2\"/. \"$1\" && head -c 8000000 /dev/zero > \"$1/filler\" 2>/dev/null
        shift 2; \"$@\"; status=$?
        cp -r \"$INNER\"/. \"$OUTER\"; rm -f \"$OUTER/filler\"; exit $status";
    for kind in Kind::ALL {
        let [made, after] = [(); 2].map(|()| tempfile::tempdir().expect("a folder"));
        kind.prepare(made.path());
        let program = saver(kind, &inner);
        // A user who is not root needs a space of their own for that.
        let spaces: &[&str] = if is_root() { &["--mount"] } else { &["-r", "-U", "--mount"] };
        let mut unshare = Command::new("unshare");
        unshare.args(spaces).args(["sh", "-c", script, "sh"]).arg(&inner).arg(made.path());
        unshare.arg(program.get_program()).args(program.get_args());
        unshare.env("INNER", &inner).env("OUTER", after.path());
        for (name, value) in program.get_envs() {
            unshare.env(name, value.expect("nothing is taken away"));
        }
        let out = match unshare.output() {
            Ok(out) if out.status.code() == Some(0) => out,
            other => {
                // The limit on files has told the same; what is left out is said.
                let why = other.map_or_else(
                    |e| e.to_string(),
                    |out| String::from_utf8_lossy(&out.stderr).into_owned(),
                );
                eprintln!("LEFT OUT: no small disk can be made here: {why}");
                return;
            }
        };
        assert!(told(&out).starts_with("refused"), "{kind:?}: {}", told(&out));
        assert_eq!(found(kind, after.path(), made.path()), 0, "{kind:?}");
        let left = std::fs::read_dir(after.path()).expect("a folder").flatten();
        let torn = left.filter(|e| e.file_name().to_string_lossy().ends_with(".tmp")).count();
        assert_eq!(torn, 0, "{kind:?}: something is left");
    }
}

/// Which version stands in the copy of the small disk.
fn found(kind: Kind, copy: &Path, made: &Path) -> usize {
    let [now, first] =
        [copy, made].map(|folder| std::fs::read(kind.file(folder)).expect("it is there"));
    usize::from(now != first)
}

fn is_root() -> bool {
    use std::os::unix::fs::MetadataExt as _;
    std::fs::metadata("/proc/self").is_ok_and(|about| about.uid() == 0)
}
