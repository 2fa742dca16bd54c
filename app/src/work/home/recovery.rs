//! Recovery copies: what was not saved yet, as it stood a moment ago.
//!
//! A copy is an ordinary project file with a first line that says which file it belongs to,
//! so that it can be opened by hand too. Every run of the studio has a copy and a lock of
//! its own (`1.ron` and `1.lock`, `2.ron` …). The system lets go of a lock however a run
//! ends: a copy whose lock is free was left by a crash, and two windows never meet.

use std::fs::{self, File, OpenOptions};
use std::io;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use plumpline_core::{Project, disk, file};

/// Runs that can keep a copy at once, copies left by crashes counted in.
const MOST_SLOTS: u32 = 99;
/// What the first line of a copy begins with.
const OF: &str = "// unsaved changes of ";
/// The copy of this run.
#[derive(Debug)]
pub struct Slot {
    /// Where it is written.
    pub file: PathBuf,
    /// Held as long as the run lasts.
    _lock: File,
}

/// A copy that a crash left.
#[derive(Debug)]
pub struct Left {
    /// Where it is.
    pub file: PathBuf,
    /// Where its project is saved, if anywhere.
    pub of: Option<PathBuf>,
    /// The project as it stood.
    pub project: Project,
    /// What is saved in its file, once that has been read.
    pub saved: Option<Project>,
    /// When.
    pub at: SystemTime,
    /// Held, so that no other run offers it too.
    _lock: File,
}

fn place(folder: &Path, number: u32) -> PathBuf {
    folder.join(format!("{number}.ron"))
}

/// The lock of a copy, if no running studio has it.
fn lock(folder: &Path, number: u32) -> Option<File> {
    let path = folder.join(format!("{number}.lock"));
    let file = OpenOptions::new().create(true).truncate(false).write(true).open(path).ok()?;
    file.try_lock().is_ok().then_some(file)
}

impl Slot {
    /// The first place in `folder` that nobody has and where no crash left anything.
    ///
    /// # Errors
    /// If there is none, or the folder cannot be written.
    pub fn take(folder: &Path) -> io::Result<Self> {
        let free = |number: &u32| !place(folder, *number).exists();
        (1..=MOST_SLOTS)
            .filter(free)
            .find_map(|number| {
                // Another run may have come between.
                let lock = lock(folder, number).filter(|_| free(&number))?;
                Some(Self { file: place(folder, number), _lock: lock })
            })
            .ok_or_else(|| io::Error::other("there is no room for another"))
    }
}

/// Writes a recovery copy of `project`, whose saved file is `of`, in one step.
///
/// # Errors
/// One line; what stood in the file before still does.
pub fn write(path: &Path, project: &Project, of: Option<&Path>) -> Result<(), String> {
    let of = of.and_then(Path::to_str).map_or(String::from("none"), |of| format!("{of:?}"));
    let text = file::write(project).map_err(|e| e.to_string())?;
    disk::replace(path, format!("{OF}{of}\n{text}").as_bytes()).map_err(|error| {
        format!(
            "{}: the recovery copy cannot be written ({error}); save the project",
            path.display()
        )
    })
}

/// The project in a recovery copy, and where it is saved.
pub fn read(path: &Path) -> Option<(Project, Option<PathBuf>)> {
    let text = disk::read_text(path, disk::LARGEST_PROJECT).ok()?;
    let of = text.lines().next()?.strip_prefix(OF)?;
    let of = ron::from_str::<String>(of).ok().map(PathBuf::from);
    Some((file::parse(&text).ok()?, of))
}

/// What crashes left in `folder`, newest first; files that a crash left half written are
/// cleared away.
pub fn left(folder: &Path) -> Vec<Left> {
    disk::sweep(folder);
    let left = |number| {
        let file = place(folder, number);
        let at = fs::metadata(&file).and_then(|m| m.modified()).ok()?;
        let lock = lock(folder, number)?;
        let (project, of) = read(&file)?;
        Some(Left { file, of, project, saved: None, at, _lock: lock })
    };
    let mut all: Vec<Left> = (1..=MOST_SLOTS).filter_map(left).collect();
    all.sort_by_key(|left| std::cmp::Reverse(left.at));
    all
}

/// How long ago, in words.
pub fn ago(age: Duration) -> String {
    let minutes = age.as_secs() / 60;
    match minutes {
        0 => say!("ago-moment").into(),
        1..60 => say!("ago-minutes", n = minutes),
        60..1440 => say!("ago-hours", n = minutes / 60),
        _ => say!("ago-days", n = minutes / 1440),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    #[test]
    fn a_copy_is_left_only_once_its_run_has_ended() {
        let folder = tempfile::tempdir().expect("a folder");
        let project = Document::sample().project().clone();
        let of = folder.path().join("a “float”.ron");
        let slot = Slot::take(folder.path()).expect("a place");
        write(&slot.file, &project, Some(&of)).expect("written");
        assert!(left(folder.path()).is_empty(), "its run goes on");
        let other = Slot::take(folder.path()).expect("a place of its own");
        assert_ne!(slot.file, other.file);
        let file = slot.file.clone();
        drop(slot);
        let found = left(folder.path());
        assert_eq!(found.len(), 1);
        assert_eq!((&found[0].file, &found[0].of), (&file, &Some(of)));
        assert_eq!(found[0].project, project);
        assert!(left(folder.path()).is_empty(), "it is offered once at a time");
        assert_eq!(file::load(&file).as_ref(), Ok(&project), "it opens by hand too");
    }

    #[test]
    fn ages_in_words() {
        let said = |s| ago(Duration::from_secs(s));
        assert_eq!(said(59), "less than a minute ago");
        assert_eq!(said(60), "1 minute ago");
        assert_eq!(said(3600 * 5), "5 hours ago");
        assert_eq!(said(86400 * 2), "2 days ago");
    }
}
