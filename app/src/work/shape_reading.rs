//! The shape in a file, read on a thread, to be looked at before a piece begins with it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::Context;

use super::pace::WorkPace;
use super::picture;
use super::shape_file::{ProfileReading, ReadProfile, ShapeKind, read_profile};
use super::worker::{Broken, Newest, Ticket, Voice, Worker};

/// A file to read, and how.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ShapeWish {
    pub(crate) path: PathBuf,
    pub(crate) reading: ProfileReading,
}

/// What is in a file.
#[derive(Debug, Clone)]
pub(crate) enum ShapeFound {
    /// A profile.
    Profile(ReadProfile),
    /// A picture of so many pixels, whose outline is still to be traced.
    Picture((u32, u32)),
}

type ShapeAnswer = Result<ShapeFound, String>;
type Numbered = Newest<(u64, ShapeWish)>;

/// How far the file has been read.
#[derive(Debug)]
pub(crate) struct ShapeReading {
    worker: Worker<Numbered, ShapeAnswer>,
    pace: Arc<WorkPace>,
    asked: Option<ShapeWish>,
    awaited: Option<Ticket>,
    found: Option<ShapeAnswer>,
}

impl Default for ShapeReading {
    fn default() -> Self {
        let pace = Arc::new(WorkPace::default());
        let theirs = Arc::clone(&pace);
        let work = move || {
            let pace = Arc::clone(&theirs);
            move |(number, wish): (u64, ShapeWish), voice: &Voice<'_, Numbered, ShapeAnswer>| {
                let on = |share: f32| {
                    voice.nudge();
                    pace.reached(number, share) && !voice.is_vain()
                };
                if let Some(answer) = answer(&wish, &on).transpose() {
                    voice.say(answer);
                }
            }
        };
        let worker = Worker::new("shape", work);
        Self { worker, pace, asked: None, awaited: None, found: None }
    }
}

fn answer(
    wish: &ShapeWish,
    progress: &dyn Fn(f32) -> bool,
) -> Result<Option<ShapeFound>, String> {
    if ShapeKind::of(&wish.path) == ShapeKind::Picture {
        return picture::size(&wish.path).map(|size| Some(ShapeFound::Picture(size)));
    }
    let read = read_profile(&wish.path, &wish.reading, progress);
    Ok(read.map_err(|e| format!("{e:#}"))?.map(ShapeFound::Profile))
}

impl ShapeReading {
    /// Asks for this file, unless it was the last that was asked for; `None` stops what is
    /// under way. Returns whether there is anything new.
    pub(crate) fn update(&mut self, ctx: &Context, wanted: Option<ShapeWish>) -> bool {
        if wanted != self.asked {
            let number = self.pace.next();
            let same_file = |a: &ShapeWish, b: &ShapeWish| a.path == b.path;
            let goes_on = self.asked.as_ref().zip(wanted.as_ref());
            if !goes_on.is_some_and(|(was, is)| same_file(was, is)) {
                self.found = None;
            }
            self.awaited = wanted.clone().map(|wish| self.worker.ask(ctx, (number, wish)));
            self.asked = wanted;
        }
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            if self.awaited.take_if(|ticket| *ticket == heard.to).is_some() {
                let broken = |why: Broken| {
                    Err(say!("trouble-the-file-could-not-be-read-why", why = why.to_string()))
                };
                self.found = Some(heard.answer.unwrap_or_else(broken));
                news = true;
            }
        }
        news
    }

    /// What was found, or why nothing was; what is shown while more is awaited is older.
    pub(crate) fn found(&self) -> Option<Result<&ShapeFound, &str>> {
        self.found.as_ref().map(|found| found.as_ref().map_err(String::as_str))
    }

    /// The share that is done, while something is under way.
    pub(crate) fn share(&self) -> Option<f32> {
        self.awaited.map(|_| self.pace.share())
    }
}

/// The name of a piece that begins with the file at `path`.
pub(crate) fn name_of(path: &Path) -> String {
    let stem = path.file_stem().map(|stem| stem.to_string_lossy().into_owned());
    stem.filter(|stem| !stem.trim().is_empty())
        .unwrap_or_else(|| say!("trouble-piece").to_owned())
}
