//! What is remembered: the projects last worked on, and which first steps have been done.

use std::path::{Path, PathBuf};

use plumpline_core::disk;
use serde::{Deserialize, Serialize};

use super::predictions::Predictions;

/// Projects that are remembered.
const MOST_RECENT: usize = 8;
/// The file's name in the studio's folder.
const FILE: &str = "desk.ron";
/// The largest such file, bytes.
const LARGEST: u64 = 1 << 20;

/// What is remembered from one run to the next.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Desk {
    /// Projects last worked on, newest first.
    pub recent: Vec<PathBuf>,
    /// How far the first steps have come; none where they are not shown.
    pub steps: Option<FirstSteps>,
    /// What was predicted in the lesson.
    pub predictions: Predictions,
    /// Those of `recent` that were there, and that were not, when last looked for; those that
    /// have not answered are neither.
    #[serde(skip)]
    there: Vec<PathBuf>,
    #[serde(skip)]
    missing: Vec<PathBuf>,
}

/// The first steps, done or not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct FirstSteps {
    /// A knot has been dragged.
    pub knot: bool,
    /// A bar's end has been pulled, or a round pinned.
    pub count: bool,
    /// The sheet has been read.
    pub sheet: bool,
}

impl FirstSteps {
    /// Each step in order, with its words and whether it is done.
    pub fn list(self) -> [(&'static str, bool); 3] {
        [
            (say!("first-drag-a-knot-of-the-outline"), self.knot),
            (say!("first-pull-a-bars-end-or-pin-a-round"), self.count),
            (say!("first-read-the-sheet-or-copy-it"), self.sheet),
        ]
    }

    /// Whether all are done.
    pub fn done(self) -> bool {
        self.list().iter().all(|(_, done)| *done)
    }
}

impl Desk {
    /// What is remembered in the studio's folder; the first time, that the first steps are
    /// all to be done. So too if the file is broken: it holds nothing that cannot be had
    /// again.
    pub(crate) fn read(home: &Path) -> Self {
        let text = disk::read_text(&home.join(FILE), LARGEST).ok();
        let first = || Self { steps: Some(FirstSteps::default()), ..Self::default() };
        text.and_then(|text| ron::from_str(&text).ok()).unwrap_or_else(first)
    }

    /// Writes it down, in one step.
    pub(crate) fn write(&self, home: &Path) -> Result<(), String> {
        let mut plain = self.clone();
        // Names that are not text cannot be written as text.
        plain.recent.retain(|path| path.to_str().is_some());
        let style = ron::ser::PrettyConfig::new();
        let text = ron::ser::to_string_pretty(&plain, style).map_err(|e| e.to_string())?;
        let path = home.join(FILE);
        disk::write(&path, text.as_bytes()).map_err(|e| e.to_string())
    }

    /// Puts a project at the head of those last worked on.
    pub fn worked_on(&mut self, path: &Path) {
        let Ok(path) = std::path::absolute(path) else { return };
        self.forget(&path);
        self.there.push(path.clone());
        self.recent.insert(0, path);
        self.recent.truncate(MOST_RECENT);
    }

    /// Takes a project off the list.
    pub fn forget(&mut self, path: &Path) {
        for all in [&mut self.recent, &mut self.there, &mut self.missing] {
            all.retain(|p| p != path);
        }
    }

    /// Takes in which projects are still there.
    pub(super) fn looked_for(&mut self, found: Vec<(PathBuf, bool)>) {
        for (path, is_there) in found {
            for all in [&mut self.there, &mut self.missing] {
                all.retain(|p| *p != path);
            }
            if is_there { self.there.push(path) } else { self.missing.push(path) }
        }
    }

    /// Whether the project at `path` was there when last looked for.
    pub fn is_there(&self, path: &Path) -> bool {
        self.there.iter().any(|p| p == path)
    }

    /// Whether it was not.
    pub fn is_missing(&self, path: &Path) -> bool {
        self.missing.iter().any(|p| p == path)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_newest_stand_first_once_and_survive_a_run() {
        let folder = tempfile::tempdir().expect("a folder");
        let mut desk = Desk::read(folder.path());
        assert_eq!(desk.steps, Some(FirstSteps::default()), "a first run");
        for name in ["/a.ron", "/b.ron", "/a.ron"] {
            desk.worked_on(Path::new(name));
        }
        desk.steps = None;
        desk.write(folder.path()).expect("written");
        let again = Desk::read(folder.path());
        assert_eq!(again.recent, [PathBuf::from("/a.ron"), "/b.ron".into()]);
        assert_eq!(again.steps, None, "they never come back");
        for i in 0..20 {
            desk.worked_on(&PathBuf::from(format!("/{i}.ron")));
        }
        assert_eq!(desk.recent.len(), MOST_RECENT);
    }
}
