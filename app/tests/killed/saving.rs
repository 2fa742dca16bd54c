//! Killed at any moment, whatever was being written stands in its file as it was before or as
//! it is to be, whole.

use std::io::Read as _;
use std::process::Stdio;
use std::time::Duration;

use crate::kinds::{Kind, saver};

/// How often each kind is killed.
const KILLS: u32 = 500;

#[test]
fn a_kill_at_any_moment_leaves_one_whole_version() {
    let folders: Vec<_> = Kind::ALL.iter().map(|_| tempfile::tempdir().expect("one")).collect();
    let all: Vec<_> = Kind::ALL.into_iter().zip(&folders).collect();
    for (kind, folder) in &all {
        kind.prepare(folder.path());
    }
    let mut seen = vec![[0; 2]; all.len()];
    for kill in 0..KILLS {
        // All kinds at once: each saves on in its own folder until it is killed.
        let savers: Vec<_> = all
            .iter()
            .map(|(kind, folder)| {
                let mut command = saver(*kind, folder.path(), false);
                command.stdout(Stdio::piped()).spawn().expect("it runs")
            })
            .collect();
        for ((i, (kind, folder)), mut child) in all.iter().enumerate().zip(savers) {
            // What it prints on the way to its loop; then a moment that is another every time.
            let mut out = child.stdout.take().expect("piped");
            let (mut heard, mut byte) = (Vec::new(), [0]);
            while !heard.ends_with(b"ready") && out.read(&mut byte).is_ok_and(|n| n == 1) {
                heard.push(byte[0]);
            }
            assert!(heard.ends_with(b"ready"), "{kind:?} never began to save");
            let moment = u64::from(kill * 7919 % 200) * 20 + 900 * u64::from(kill % 5);
            std::thread::sleep(Duration::from_micros(moment));
            child.kill().expect("killed");
            let status = child.wait().expect("ended");
            assert!(status.code().is_none(), "{kind:?}, {status}: it ended by itself");
            seen[i][kind.standing(folder.path())] += 1;
        }
    }
    // Or else nothing was being saved when the kills fell.
    assert!(seen.iter().flatten().all(|&n| n > KILLS / 20), "{seen:?}");
}
