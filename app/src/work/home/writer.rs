//! The thread that writes the studio's own folder, so that the window never waits for a disk.
//! Only the newest wish of a kind is carried out: a slow disk makes no queue.

use std::path::PathBuf;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

use egui::Context;
use plumpline_core::Project;
use plumpline_core::calibrate::GaugeBook;

use super::desk::Desk;
use super::{book, recovery};

/// A recovery copy to write.
#[derive(Debug)]
struct Copy {
    file: PathBuf,
    project: Project,
    of: Option<PathBuf>,
}

/// What is yet to be done, in this order.
#[derive(Debug, Default)]
struct Wishes {
    copy: Option<Copy>,
    /// Files to remove, once the copy stands.
    forget: Vec<PathBuf>,
    desk: Option<Desk>,
    /// The gauge book, and its file.
    book: Option<(PathBuf, GaugeBook)>,
    /// Whether the thread ends when all is done.
    end: bool,
    /// What went wrong, until it is told.
    trouble: Option<String>,
}

impl Wishes {
    /// Whether there is nothing to do.
    fn is_none(&self) -> bool {
        let nothing = self.copy.is_none() && self.forget.is_empty();
        nothing && self.desk.is_none() && self.book.is_none()
    }
}

#[derive(Debug, Default)]
struct Shared {
    wishes: Mutex<Wishes>,
    changed: Condvar,
}

impl Shared {
    /// A thread that panicked left whole wishes behind: they are only ever replaced.
    fn lock(&self) -> MutexGuard<'_, Wishes> {
        self.wishes.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A hand on the thread. Dropping it waits until all is written.
#[derive(Debug)]
pub(crate) struct Writer {
    shared: Arc<Shared>,
    thread: Option<JoinHandle<()>>,
}

impl Writer {
    /// Starts the thread, for the studio's folder `home`, in which the gauge book `known` was
    /// read.
    pub(crate) fn start(
        home: PathBuf,
        known: GaugeBook,
        ctx: Context,
    ) -> std::io::Result<Self> {
        let shared = Arc::new(Shared::default());
        let theirs = Arc::clone(&shared);
        let thread = std::thread::Builder::new()
            .name("recovery".into())
            .spawn(move || work(&theirs, &home, known, &ctx))?;
        Ok(Self { shared, thread: Some(thread) })
    }

    fn wish(&self, change: impl FnOnce(&mut Wishes)) {
        change(&mut self.shared.lock());
        self.shared.changed.notify_one();
    }

    /// Writes a recovery copy, then removes the files `before` that it stands in for.
    pub(crate) fn keep(
        &self,
        file: PathBuf,
        project: Project,
        of: Option<PathBuf>,
        before: Vec<PathBuf>,
    ) {
        self.wish(|w| {
            w.forget.retain(|f| *f != file);
            w.forget.extend(before);
            w.copy = Some(Copy { file, project, of });
        });
    }

    /// Removes recovery copies.
    pub(crate) fn forget(&self, files: Vec<PathBuf>) {
        self.wish(|w| {
            w.copy.take_if(|copy| files.contains(&copy.file));
            w.forget.extend(files);
        });
    }

    /// Writes what is remembered.
    pub(crate) fn desk(&self, desk: Desk) {
        self.wish(|w| w.desk = Some(desk));
    }

    /// Writes the gauge book.
    pub(crate) fn book(&self, file: PathBuf, book: GaugeBook) {
        self.wish(|w| w.book = Some((file, book)));
    }

    /// What went wrong, once.
    pub(crate) fn trouble(&self) -> Option<String> {
        self.shared.lock().trouble.take()
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        self.wish(|w| w.end = true);
        if let Some(thread) = self.thread.take() {
            thread.join().ok(); // If it panicked there is nobody left to tell.
        }
    }
}

fn work(shared: &Shared, home: &std::path::Path, mut known: GaugeBook, ctx: &Context) {
    loop {
        let mut wishes = shared.lock();
        while wishes.is_none() {
            if wishes.end {
                return;
            }
            wishes = shared.changed.wait(wishes).unwrap_or_else(PoisonError::into_inner);
        }
        let (copy, forget) = (wishes.copy.take(), std::mem::take(&mut wishes.forget));
        let (desk, book) = (wishes.desk.take(), wishes.book.take());
        drop(wishes);
        let mut done = Ok(());
        if let Some(copy) = copy {
            done = recovery::write(&copy.file, &copy.project, copy.of.as_deref());
        }
        // What a copy stands in for stays if the copy could not be written.
        if done.is_ok() {
            for file in forget {
                std::fs::remove_file(file).ok(); // It may never have been written.
            }
        }
        let remembered = desk.map_or(Ok(()), |desk| desk.write(home));
        let kept = book.map_or(Ok(()), |(file, book)| {
            book::write(&file, &known, &book)?;
            known = book;
            Ok(())
        });
        if let Err(trouble) = done.and(remembered).and(kept) {
            shared.lock().trouble = Some(trouble);
            ctx.request_repaint();
        }
    }
}
