//! The file of the open project, as others may change it: looked at from the first picture on,
//! and what is asked where a save cannot simply be done.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use egui::Context;

use super::ask::{Hindrance, Hurdle, Next, Question};
use super::files::beside;
use super::studio::Studio;
use crate::document::{Document, Revision};
use crate::work::files::{Outcome, Purpose, ToSave};

/// How long the first picture waits for the project that it shows.
const FIRST: Duration = Duration::from_secs(2);

impl Studio {
    /// Opens the project at `path` before anything is shown, so that the first picture is the
    /// right one; where that takes long the window comes first, with the sample.
    pub(super) fn open_first(&mut self, ctx: &Context, path: PathBuf) {
        self.given_up = Some(self.document.revision());
        self.files.with_path(ctx, Purpose::Open, path);
        let began = Instant::now();
        while self.files.is_busy() && began.elapsed() < FIRST {
            match self.files.hear() {
                Some((_, Outcome::Opened(path, project))) => {
                    self.take_pattern(ctx, &beside(&path));
                    self.document = Document::new(*project, Some(path));
                }
                Some((_, Outcome::Failed(why))) => self.say(why, true),
                _ => std::thread::sleep(Duration::from_millis(1)),
            }
        }
    }

    /// Whoever comes back to the window may have written in the file elsewhere meanwhile, and
    /// so may others as long as it is open.
    pub(super) fn compare_with_file(&mut self, ctx: &Context) {
        self.watch.look_at(ctx, self.document.path());
        self.stirred |= self.watch.has_stirred();
        self.stirred |= ctx.input(|i| i.raw.events.contains(&egui::Event::WindowFocused(true)));
        let due = self.stirred && !self.files.is_busy();
        let Some(path) = self.document.path().filter(|_| due) else { return };
        self.stirred = false;
        let (path, known) = (path.to_owned(), Box::new(self.document.known().clone()));
        self.files.with_path(ctx, Purpose::Compare(self.document.id(), known), path);
    }

    /// Asks what becomes of a save that cannot simply be done.
    pub(super) fn hinder(
        &mut self,
        path: PathBuf,
        mine: ToSave,
        why: Hindrance,
        then: Option<Next>,
    ) {
        // Nothing is lost while the question stands.
        self.home.hurry();
        if self.document.id() == mine.of {
            let hurdle = Hurdle { beside: free_beside(&path), path, mine, why, then };
            self.question(Question::Hurdle(Box::new(hurdle)));
        }
    }

    /// Tells what has become of the file of the document `of`, if that is still open.
    pub(super) fn say_of_file(&mut self, of: Revision, what: fn(&str) -> String) {
        if self.document.id() == of {
            let name = self.document.path().and_then(Path::file_name).unwrap_or_default();
            let words = what(&name.to_string_lossy());
            self.say(words, true);
        }
    }
}

/// A path beside `path` where nothing stands yet: `float (2).ron`.
fn free_beside(path: &Path) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let numbered = |n: u32| path.with_file_name(format!("{stem} ({n}).ron"));
    (2..1000).map(numbered).find(|path| !path.exists()).unwrap_or_else(|| numbered(1000))
}
