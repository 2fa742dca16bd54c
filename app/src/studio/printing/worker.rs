//! The thread that sets sheets.

use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};

use egui::{Color32, ColorImage, Context};
use plumpline_core::Project;
use plumpline_core::sheet::{Sheet, sheet_with};
use plumpline_typeset::Press;

use crate::sheet_file::SheetLook;

/// A sheet to set.
#[derive(Debug)]
pub(super) struct Job {
    pub(super) revision: u64,
    pub(super) project: Project,
    pub(super) look: SheetLook,
    /// Pixels a point of paper.
    pub(super) scale: f32,
}

/// What has come of one, with the revision it belongs to.
#[derive(Debug)]
pub(super) enum News {
    /// It cannot be set, and why.
    Failed { revision: u64, why: String },
    /// It is set: its content, the sizes of its pages, the characters no face has.
    Set { revision: u64, sheet: Arc<Sheet>, sizes_pt: Vec<[f32; 2]>, replaced: Option<String> },
    /// One of its pages is drawn.
    Page { revision: u64, index: usize, image: ColorImage },
}

/// A hand on the thread; it ends when this is dropped.
#[derive(Debug)]
pub(super) struct Worker {
    jobs: Sender<Job>,
    news: Receiver<News>,
}

impl Worker {
    /// Starts the thread; `ctx` is woken by its news. `None` where no thread can be had.
    pub(super) fn start(ctx: Context) -> Option<Self> {
        let (jobs, to_do) = channel();
        let (tell, news) = channel();
        let work = move || work(&to_do, &tell, &ctx);
        std::thread::Builder::new().name("sheet".into()).spawn(work).ok()?;
        Some(Self { jobs, news })
    }

    pub(super) fn ask(&self, job: Job) {
        // A thread that is gone has told why, or the window is going too.
        let _ = self.jobs.send(job);
    }

    pub(super) fn hear(&self) -> Option<News> {
        self.news.try_recv().ok()
    }
}

/// Sets the newest sheet there is, page by page; a newer one comes first.
fn work(to_do: &Receiver<Job>, tell: &Sender<News>, ctx: &Context) {
    let press = Press::new();
    let mut next = to_do.recv().ok();
    while let Some(mut job) = next.take() {
        while let Ok(newer) = to_do.try_recv() {
            job = newer;
        }
        match set(&press, job, to_do, tell, ctx) {
            Waiting::Newer(newer) => next = Some(*newer),
            Waiting::Nobody => return,
            Waiting::Nothing => next = to_do.recv().ok(),
        }
    }
}

/// What waits once a sheet is set, or given up.
enum Waiting {
    Nothing,
    Newer(Box<Job>),
    /// The window is gone.
    Nobody,
}

fn set(
    press: &Press,
    job: Job,
    to_do: &Receiver<Job>,
    tell: &Sender<News>,
    ctx: &Context,
) -> Waiting {
    let Job { revision, project, look, scale } = job;
    let said = |news| {
        let heard = tell.send(news).is_ok();
        ctx.request_repaint();
        heard
    };
    let set = sheet_with(&project, look.single).map_err(|e| e.to_string()).and_then(|sheet| {
        let pages = press.pages(&sheet, look.options).map_err(|e| e.to_string())?;
        Ok((sheet, pages))
    });
    let (sheet, pages) = match set {
        Ok(set) => set,
        Err(why) => {
            return match said(News::Failed { revision, why }) {
                true => Waiting::Nothing,
                false => Waiting::Nobody,
            };
        }
    };
    let sizes_pt = (0..pages.count()).filter_map(|i| pages.size_pt(i)).collect();
    let replaced = pages.replaced().map(str::to_owned);
    if !said(News::Set { revision, sheet: Arc::new(sheet), sizes_pt, replaced }) {
        return Waiting::Nobody;
    }
    for index in 0..pages.count() {
        match to_do.try_recv() {
            Ok(newer) => return Waiting::Newer(Box::new(newer)),
            Err(TryRecvError::Disconnected) => return Waiting::Nobody,
            Err(TryRecvError::Empty) => {}
        }
        let image = match pages.picture(index, scale) {
            // A page is opaque, so its pixels are the same however opacity is reckoned.
            Ok(page) => ColorImage::from_rgba_premultiplied(
                [page.width as usize, page.height as usize],
                &page.rgba,
            ),
            // One that is too large to be drawn stays blank; it can still be printed.
            Err(_) => ColorImage::filled([1, 1], Color32::WHITE),
        };
        if !said(News::Page { revision, index, image }) {
            return Waiting::Nobody;
        }
    }
    Waiting::Nothing
}
