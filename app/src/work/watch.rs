//! The file that is open, looked at from a thread of its own: others may write in it, or take
//! it away. Only that something stirred is told; whether its project is another is read then.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, SystemTime};

use egui::Context;

/// Between two looks: soon enough for whoever works in two windows, and next to no work.
const BETWEEN: Duration = Duration::from_millis(1500);

/// What tells one state of a file from another without reading it; none where it is not there.
type Stamp = Option<(u64, Option<SystemTime>)>;

/// Looks at one file now and then.
#[derive(Debug, Default)]
pub struct Watch {
    /// What is looked at; the thread has it too.
    path: Option<PathBuf>,
    shared: Option<Arc<WatchShared>>,
}

#[derive(Debug, Default)]
struct WatchShared {
    watched: Mutex<Watched>,
    changed: Condvar,
}

#[derive(Debug, Default)]
struct Watched {
    path: Option<PathBuf>,
    /// What it was when last looked at, if it was.
    seen: Option<Stamp>,
    stirred: bool,
    over: bool,
}

impl Watch {
    /// Looks at the file at `path` from now on; `ctx` is woken when something stirs there.
    pub fn look_at(&mut self, ctx: &Context, path: Option<&Path>) {
        if self.path.as_deref() == path {
            return;
        }
        self.path = path.map(Path::to_owned);
        let shared = self.shared.get_or_insert_with(|| begun(ctx.clone()));
        let mut watched = shared.lock();
        *watched = Watched { path: self.path.clone(), ..Watched::default() };
        drop(watched);
        shared.changed.notify_one();
    }

    /// Whether something stirred since this was last asked.
    pub fn has_stirred(&self) -> bool {
        let stirred = |shared: &Arc<WatchShared>| std::mem::take(&mut shared.lock().stirred);
        self.shared.as_ref().is_some_and(stirred)
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        if let Some(shared) = &self.shared {
            shared.lock().over = true;
            shared.changed.notify_one();
        }
    }
}

impl WatchShared {
    fn lock(&self) -> MutexGuard<'_, Watched> {
        self.watched.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Begins to look. Without the thread nothing is told until the file is saved.
fn begun(ctx: Context) -> Arc<WatchShared> {
    let shared = Arc::new(WatchShared::default());
    let theirs = Arc::clone(&shared);
    let look = move || {
        while let Some(path) = waited(&theirs) {
            // Never under the lock: a mount that is gone answers when it likes.
            let stamp = stamp(&path);
            let mut watched = theirs.lock();
            if watched.path.as_ref() != Some(&path) {
                continue;
            }
            if watched.seen.is_some_and(|seen| seen != stamp) {
                watched.stirred = true;
                ctx.request_repaint();
            }
            watched.seen = Some(stamp);
        }
    };
    std::thread::Builder::new().name("watch".into()).spawn(look).ok();
    shared
}

/// The file to look at, once it is time; none when all is over.
fn waited(shared: &WatchShared) -> Option<PathBuf> {
    let mut watched = shared.lock();
    loop {
        if watched.over {
            return None;
        }
        let fresh = watched.seen.is_none();
        match watched.path.clone() {
            Some(path) if fresh => return Some(path),
            Some(_) => {
                let wait = shared.changed.wait_timeout(watched, BETWEEN);
                let (woken, timeout) = wait.unwrap_or_else(PoisonError::into_inner);
                watched = woken;
                if timeout.timed_out() && !watched.over {
                    return watched.path.clone();
                }
            }
            None => {
                let wait = shared.changed.wait(watched);
                watched = wait.unwrap_or_else(PoisonError::into_inner);
            }
        }
    }
}

fn stamp(path: &Path) -> Stamp {
    let about = fs::metadata(path).ok()?;
    Some((about.len(), about.modified().ok()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_is_written_or_taken_away_stirs_and_another_does_not() {
        let folder = tempfile::tempdir().expect("a folder");
        let [ours, other] = ["ours.ron", "other.ron"].map(|name| folder.path().join(name));
        fs::write(&ours, "one").expect("written");
        let (mut watch, ctx) = (Watch::default(), Context::default());
        watch.look_at(&ctx, Some(&ours));
        let first_look = |watch: &Watch| {
            let shared = watch.shared.as_ref().expect("begun");
            while shared.lock().seen.is_none() {
                std::thread::yield_now();
            }
        };
        first_look(&watch);
        fs::write(&other, "another").expect("written");
        assert!(!watch.has_stirred());
        let stirs = |watch: &Watch| {
            let began = std::time::Instant::now();
            while !watch.has_stirred() {
                assert!(began.elapsed() < Duration::from_secs(20), "it was not seen");
                std::thread::sleep(Duration::from_millis(5));
            }
        };
        fs::write(&ours, "longer").expect("written");
        stirs(&watch);
        fs::remove_file(&ours).expect("removed");
        stirs(&watch);
        // What is opened anew is no news.
        watch.look_at(&ctx, Some(&other));
        first_look(&watch);
        assert!(!watch.has_stirred());
        watch.look_at(&ctx, None);
        assert!(!watch.has_stirred());
    }
}
