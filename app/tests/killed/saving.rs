//! Killed at any moment, whatever was being written stands in its file as it was before or as
//! it is to be, whole.

use std::io::Read as _;
use std::process::Stdio;
use std::time::Duration;

use crate::kinds::{Kind, all_saver};

/// How often each kind is killed.
const KILLS: u32 = 500;

#[test]
fn a_kill_at_any_moment_leaves_one_whole_version() {
    let folder = tempfile::tempdir().expect("a folder");
    let own = |kind: Kind| folder.path().join(format!("{kind:?}"));
    for kind in Kind::ALL {
        std::fs::create_dir(own(kind)).expect("a folder");
        kind.prepare(&own(kind));
    }
    let mut seen = [[0; 2]; Kind::ALL.len()];
    for kill in 0..KILLS {
        let mut command = all_saver(folder.path());
        let mut child = command.stdout(Stdio::piped()).spawn().expect("it runs");
        // What it prints on the way to its loops; then a moment that is another every time.
        let mut out = child.stdout.take().expect("piped");
        let (mut heard, mut byte) = (Vec::new(), [0]);
        while !heard.ends_with(b"ready") && out.read(&mut byte).is_ok_and(|n| n == 1) {
            heard.push(byte[0]);
        }
        assert!(heard.ends_with(b"ready"), "it never began to save");
        std::thread::sleep(Duration::from_micros(u64::from(kill * 7919 % 200) * 60));
        child.kill().expect("killed");
        let status = child.wait().expect("ended");
        assert!(status.code().is_none(), "{status}: it ended by itself");
        for (kind, seen) in Kind::ALL.into_iter().zip(&mut seen) {
            seen[kind.standing(&own(kind))] += 1;
        }
    }
    // Or else nothing was being saved when the kills fell.
    assert!(seen.iter().flatten().all(|&n| n > KILLS / 20), "{seen:?}");
}
