//! The picture of the selected piece traced on a thread, for the person to look at.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::Context;
use plumpline_core::piece::Picture;
use plumpline_trace::{Photo, Scale, Trace, TraceGround, TraceWish};

use super::pace::WorkPace;
use super::picture::{found, photo};
use super::shape_file::traced;
use super::worker::{Newest, Ticket, Voice, Worker};
use crate::view::tracing::TraceView;

/// A picture to trace, and how.
#[derive(Debug, Clone, PartialEq)]
struct OutlineWish {
    path: PathBuf,
    width_mm: f64,
    view: TraceView,
}

/// What tracing came to.
#[derive(Debug, Clone)]
pub struct TracedPicture {
    /// The outline, and what to judge it by.
    pub trace: Trace,
    /// Size of the picture as it is seen, pixels.
    pub size: (u32, u32),
    /// The file.
    pub path: PathBuf,
}

type OutlineFound = Result<TracedPicture, String>;
/// What was found, and the size of the picture once it is read.
type Answer = (OutlineFound, Option<(u32, u32)>);

/// How far the picture has been traced.
#[derive(Debug)]
pub struct Outlining {
    worker: Worker<Newest<(u64, OutlineWish)>, Answer>,
    pace: Arc<WorkPace>,
    asked: Option<OutlineWish>,
    awaited: Option<Ticket>,
    found: Option<OutlineFound>,
    size: Option<(u32, u32)>,
}

impl Default for Outlining {
    fn default() -> Self {
        let pace = Arc::new(WorkPace::default());
        let theirs = Arc::clone(&pace);
        let work = move || {
            let pace = Arc::clone(&theirs);
            // The picture is kept from wish to wish: marks change, it does not.
            let mut kept: Option<(PathBuf, Photo)> = None;
            move |(number, wish): (u64, OutlineWish),
                  voice: &Voice<'_, Newest<(u64, OutlineWish)>, Answer>| {
                if let Some(answer) = answer(&mut kept, &pace, number, &wish, voice) {
                    voice.say(answer);
                }
            }
        };
        Self {
            worker: Worker::new("outline", work),
            pace,
            asked: None,
            awaited: None,
            found: None,
            size: None,
        }
    }
}

fn answer(
    kept: &mut Option<(PathBuf, Photo)>,
    pace: &WorkPace,
    number: u64,
    wish: &OutlineWish,
    voice: &Voice<'_, Newest<(u64, OutlineWish)>, Answer>,
) -> Option<Answer> {
    if kept.as_ref().is_none_or(|(path, _)| *path != wish.path) {
        match photo(&wish.path) {
            Ok(photo) => *kept = Some((wish.path.clone(), photo)),
            Err(why) => return Some((Err(why), None)),
        }
    }
    let (path, photo) = kept.as_ref()?;
    let on = |share: f32| {
        voice.nudge();
        pace.reached(number, share) && !voice.is_vain()
    };
    let with = |trace| TracedPicture { trace, size: photo.size, path: path.clone() };
    match traced(path, photo, &wanted(wish, photo.size.0), &on) {
        Ok(trace) => trace.map(|trace| (Ok(with(trace)), Some(photo.size))),
        Err(why) => Some((Err(why), Some(photo.size))),
    }
}

fn wanted(wish: &OutlineWish, wide: u32) -> TraceWish {
    let OutlineWish { view, width_mm, .. } = wish;
    let scale = match view.height_mm {
        Some(mm) => Scale::Height(mm),
        // As the picture lies on the board.
        None => Scale::Known { from: (0.0, 0.0), to: (f64::from(wide), 0.0), mm: *width_mm },
    };
    let ground = if view.is_marked() {
        TraceGround::Marked { frame: view.frame, strokes: view.strokes.clone() }
    } else {
        TraceGround::Plain
    };
    TraceWish {
        scale,
        ground,
        side: view.side,
        start: view.start,
        tolerance_mm: view.tolerance_mm,
        cut: view.cut,
    }
}

impl Outlining {
    /// Asks for the picture to be traced, unless it has been; `None` stops what is under way.
    /// Returns whether there is anything new to show.
    pub fn update(
        &mut self,
        ctx: &Context,
        wanted: Option<(&Picture, &TraceView)>,
        project: Option<&Path>,
    ) -> bool {
        let wish = wanted.map(|(picture, view)| OutlineWish {
            path: found(Path::new(&picture.path), project.and_then(Path::parent)),
            width_mm: picture.width_mm,
            // What is drawn with, and where, changes nothing until it is drawn.
            view: view.without_pen(),
        });
        let is_still = wanted.is_some_and(|(_, view)| view.pen.drawing.is_some());
        if !is_still && wish != self.asked {
            let number = self.pace.next();
            let go_on = wish.clone().filter(|wish| !wish.view.stopped);
            self.awaited = go_on.map(|wish| self.worker.ask(ctx, (number, wish)));
            if wish.is_none() {
                self.found = None;
                self.size = None;
            }
            self.asked = wish;
        }
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            if self.awaited.take_if(|ticket| *ticket == heard.to).is_some() {
                let broken =
                    |why| say!("trouble-the-picture-could-not-be-traced-why", why = why);
                let (found, size) =
                    heard.answer.unwrap_or_else(|broke| (Err(broken(broke.to_string())), None));
                self.found = Some(found);
                self.size = size.or(self.size);
                news = true;
            }
        }
        news
    }

    /// What was found, or why nothing was; what is shown while more is awaited is older.
    pub fn found(&self) -> Option<Result<&TracedPicture, &str>> {
        self.found.as_ref().map(|found| found.as_ref().map_err(String::as_str))
    }

    /// Size of the whole picture as it is seen, pixels, once it is read.
    pub fn size(&self) -> Option<(u32, u32)> {
        self.size
    }

    /// The share that is done, while something is under way.
    pub fn share(&self) -> Option<f32> {
        self.awaited?;
        Some(self.pace.share())
    }
}
