//! The thread that sets sheets.

use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};

use egui::{Color32, ColorImage, Context};
use plumpline_core::Project;
use plumpline_core::sheet::{Sheet, sheet_with};
use plumpline_typeset::Press;

use crate::view::sheet::SheetLook;

/// A sheet to set.
#[derive(Debug)]
pub(crate) struct Job {
    pub(crate) revision: u64,
    pub(crate) project: Project,
    pub(crate) look: SheetLook,
    /// Pixels a point of paper.
    pub(crate) scale: f32,
}

/// What has come of one, with the revision it belongs to.
#[derive(Debug)]
pub(crate) enum News {
    /// It cannot be set, and why.
    Failed { revision: u64, why: String },
    /// It is set: its content, the sizes of its pages, the characters no face has.
    Set { revision: u64, sheet: Arc<Sheet>, sizes_pt: Vec<[f32; 2]>, replaced: Option<String> },
    /// One of its pages is drawn.
    Page { revision: u64, index: usize, image: ColorImage },
}

/// The newest wish: an older one is never carried out once there is a newer.
#[derive(Debug, Default)]
struct Slot {
    wish: Mutex<Wish>,
    changed: Condvar,
}

#[derive(Debug, Default)]
struct Wish {
    job: Option<Job>,
    /// The window is gone.
    end: bool,
}

impl Slot {
    /// A thread that panicked left a whole wish behind: it is only ever replaced.
    fn lock(&self) -> MutexGuard<'_, Wish> {
        self.wish.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn put(&self, change: impl FnOnce(&mut Wish)) {
        change(&mut self.lock());
        self.changed.notify_one();
    }

    /// The next job, once there is one; none when the window is gone.
    fn next(&self) -> Option<Job> {
        let mut wish = self.lock();
        while wish.job.is_none() && !wish.end {
            wish = self.changed.wait(wish).unwrap_or_else(PoisonError::into_inner);
        }
        if wish.end { None } else { wish.job.take() }
    }

    /// Whether something newer waits.
    fn waits(&self) -> bool {
        let wish = self.lock();
        wish.end || wish.job.is_some()
    }
}

/// A hand on the thread; it ends when this is dropped.
#[derive(Debug)]
pub(crate) struct Worker {
    slot: Arc<Slot>,
    news: Receiver<News>,
}

impl Worker {
    /// Starts the thread; `ctx` is woken by its news. `None` where no thread can be had.
    pub(crate) fn start(ctx: Context) -> Option<Self> {
        let slot = Arc::new(Slot::default());
        // Pages are large: few wait at a time.
        let (tell, news) = sync_channel(4);
        let theirs = Arc::clone(&slot);
        let work = move || {
            let press = Press::new();
            while let Some(job) = theirs.next() {
                set(&press, job, &theirs, &tell, &ctx);
            }
        };
        std::thread::Builder::new().name("sheet".into()).spawn(work).ok()?;
        Some(Self { slot, news })
    }

    pub(crate) fn ask(&self, job: Job) {
        self.slot.put(|wish| wish.job = Some(job));
    }

    pub(crate) fn hear(&self) -> Option<News> {
        self.news.try_recv().ok()
    }
}

impl Drop for Worker {
    fn drop(&mut self) {
        self.slot.put(|wish| wish.end = true);
    }
}

/// Sets a sheet and draws it page by page, until something newer waits.
fn set(press: &Press, job: Job, slot: &Slot, tell: &SyncSender<News>, ctx: &Context) {
    let Job { revision, project, look, scale } = job;
    let say = |news| {
        // The window may be gone by now; then nobody needs to hear it.
        let _ = tell.send(news);
        ctx.request_repaint();
    };
    let set = sheet_with(&project, look.single).map_err(|e| e.to_string()).and_then(|sheet| {
        let pages = press.pages(&sheet, look.options).map_err(|e| e.to_string())?;
        Ok((sheet, pages))
    });
    let (sheet, pages) = match set {
        Ok(set) => set,
        Err(why) => return say(News::Failed { revision, why }),
    };
    let sizes_pt = (0..pages.count()).filter_map(|i| pages.size_pt(i)).collect();
    let replaced = pages.replaced().map(str::to_owned);
    say(News::Set { revision, sheet: Arc::new(sheet), sizes_pt, replaced });
    for index in 0..pages.count() {
        if slot.waits() {
            return;
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
        say(News::Page { revision, index, image });
    }
}
