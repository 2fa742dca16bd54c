//! What is written to the studio's own folder, on a thread, so that the window never waits for
//! a disk. Only the newest wish of a kind is carried out: a slow disk makes no queue.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::Project;
use plumpline_core::calibrate::GaugeBook;

use super::desk::Desk;
use super::{book, recovery};
use crate::work::worker::{Broken, Voice, Waiting, Worker};

/// Something to write or to remove.
#[derive(Debug)]
pub(crate) enum HomeWish {
    /// Write a recovery copy, then remove the files that it stands in for.
    Keep(Box<Copy>, Vec<PathBuf>),
    /// Remove recovery copies.
    Forget(Vec<PathBuf>),
    /// Write what is remembered.
    Desk(Desk),
    /// Write the gauge book to this file, beside what others have written there.
    Book(PathBuf, GaugeBook),
}

/// A recovery copy to write.
#[derive(Debug)]
pub(crate) struct Copy {
    pub(crate) file: PathBuf,
    pub(crate) project: Project,
    /// Where the project is saved.
    pub(crate) of: Option<PathBuf>,
}

/// What is yet to be done, in this order.
#[derive(Debug, Default)]
pub(crate) struct Wishes {
    copy: Option<Box<Copy>>,
    /// Files to remove, once the copy stands.
    forget: Vec<PathBuf>,
    desk: Option<Desk>,
    book: Option<(PathBuf, GaugeBook)>,
}

/// What is done at once.
#[derive(Debug)]
pub(crate) enum HomeTask {
    /// Write the copy if there is one; if that went well, remove these files.
    Copies(Option<Box<Copy>>, Vec<PathBuf>),
    Desk(Desk),
    Book(PathBuf, GaugeBook),
}

impl Waiting for Wishes {
    type Ask = HomeWish;
    type Task = HomeTask;

    fn put(&mut self, wish: HomeWish) {
        match wish {
            HomeWish::Keep(copy, before) => {
                self.forget.retain(|file| *file != copy.file);
                self.forget.extend(before);
                self.copy = Some(copy);
            }
            HomeWish::Forget(files) => {
                self.copy.take_if(|copy| files.contains(&copy.file));
                self.forget.extend(files);
            }
            HomeWish::Desk(desk) => self.desk = Some(desk),
            HomeWish::Book(file, book) => self.book = Some((file, book)),
        }
    }

    fn next(&mut self) -> Option<HomeTask> {
        if self.copy.is_some() || !self.forget.is_empty() {
            return Some(HomeTask::Copies(self.copy.take(), std::mem::take(&mut self.forget)));
        }
        let desk = self.desk.take().map(HomeTask::Desk);
        desk.or_else(|| self.book.take().map(|(file, book)| HomeTask::Book(file, book)))
    }

    fn left(&self) -> u64 {
        let copies = self.copy.is_some() || !self.forget.is_empty();
        [copies, self.desk.is_some(), self.book.is_some()].map(u64::from).iter().sum()
    }

    fn is_newer(&self) -> bool {
        false
    }
}

/// A hand on the thread. Dropping it waits until all is written.
#[derive(Debug)]
pub(crate) struct Writer {
    /// It says what goes wrong, in a line.
    worker: Option<Worker<Wishes, String>>,
    /// What wakes the window.
    ctx: Context,
}

impl Writer {
    /// The thread for the studio's folder `home`, in which the gauge book `known` was read;
    /// `ctx` is woken when something could not be written.
    pub(crate) fn new(home: &Path, known: GaugeBook, ctx: Context) -> Self {
        let home = home.to_owned();
        let worker = Worker::new("recovery", move || {
            let (home, mut known) = (home.clone(), known.clone());
            move |task: HomeTask, voice: &Voice<'_, Wishes, String>| {
                if let Err(trouble) = carry_out(task, &home, &mut known) {
                    voice.say(trouble);
                }
            }
        });
        Self { worker: Some(worker), ctx }
    }

    /// Asks for something to be written or removed.
    pub(crate) fn ask(&mut self, wish: HomeWish) {
        if let Some(worker) = &mut self.worker {
            worker.ask(&self.ctx, wish);
        }
    }

    /// What went wrong, once.
    pub(crate) fn trouble(&mut self) -> Option<String> {
        self.worker.as_mut()?.hear().map(|heard| line(heard.answer))
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        let rest = self.worker.take().map(Worker::finish).unwrap_or_default();
        for heard in rest {
            // The window is gone; whoever started the studio may still read it.
            eprintln!("plumpline: {}", line(heard.answer));
        }
    }
}

/// What went wrong, in a line.
fn line(answer: Result<String, Broken>) -> String {
    answer.unwrap_or_else(|broken| {
        say!("trouble-recovery-copies-and-gauges-may-not-be", broken = broken.to_string())
    })
}

/// `known` is the gauge book as it was last read or written here.
fn carry_out(task: HomeTask, home: &Path, known: &mut GaugeBook) -> Result<(), String> {
    match task {
        HomeTask::Copies(copy, forget) => {
            // What a copy stands in for stays if the copy could not be written.
            if let Some(copy) = copy {
                recovery::write(&copy.file, &copy.project, copy.of.as_deref())?;
            }
            for file in forget {
                std::fs::remove_file(file).ok(); // It may never have been written.
            }
            Ok(())
        }
        HomeTask::Desk(desk) => desk.write(home),
        HomeTask::Book(file, book) => {
            book::write(&file, known, &book)?;
            *known = book;
            Ok(())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    fn copy(file: &str) -> Box<Copy> {
        let project = Document::blank().project().clone();
        Box::new(Copy { file: file.into(), project, of: None })
    }

    #[test]
    fn the_newest_of_a_kind_is_carried_out_and_none_is_pushed_aside_by_another() {
        let mut wishes = Wishes::default();
        wishes.put(HomeWish::Book("old".into(), GaugeBook::default()));
        wishes.put(HomeWish::Keep(copy("1.ron"), vec!["2.ron".into()]));
        wishes.put(HomeWish::Desk(Desk::default()));
        wishes.put(HomeWish::Book("new".into(), GaugeBook::default()));
        wishes.put(HomeWish::Forget(vec!["3.ron".into()]));
        assert_eq!(wishes.left(), 3);
        let Some(HomeTask::Copies(Some(copy), forget)) = wishes.next() else {
            panic!("a copy")
        };
        assert_eq!(copy.file, Path::new("1.ron"));
        assert_eq!(forget, [Path::new("2.ron"), Path::new("3.ron")]);
        assert!(matches!(wishes.next(), Some(HomeTask::Desk(_))));
        let Some(HomeTask::Book(file, _)) = wishes.next() else { panic!("a book") };
        assert_eq!(file, Path::new("new"));
        assert!(wishes.next().is_none() && wishes.left() == 0);
    }

    #[test]
    fn a_copy_that_is_forgotten_is_not_written_and_one_that_is_written_is_not_forgotten() {
        let mut wishes = Wishes::default();
        wishes.put(HomeWish::Keep(copy("1.ron"), Vec::new()));
        wishes.put(HomeWish::Forget(vec!["1.ron".into()]));
        assert!(
            matches!(wishes.next(), Some(HomeTask::Copies(None, forget)) if forget.len() == 1)
        );
        wishes.put(HomeWish::Forget(vec!["1.ron".into()]));
        wishes.put(HomeWish::Keep(copy("1.ron"), Vec::new()));
        assert!(
            matches!(wishes.next(), Some(HomeTask::Copies(Some(_), forget)) if forget.is_empty())
        );
    }

    #[test]
    fn what_a_copy_stands_in_for_stays_if_it_cannot_be_written() {
        let folder = tempfile::tempdir().expect("a folder");
        let before = folder.path().join("2.ron");
        std::fs::write(&before, "what was left").expect("written");
        let nowhere = folder.path().join("none/1.ron");
        let nowhere = copy(nowhere.to_str().expect("a path"));
        let task = HomeTask::Copies(Some(nowhere), vec![before.clone()]);
        let why = carry_out(task, folder.path(), &mut GaugeBook::default());
        assert!(why.is_err_and(|why| why.lines().count() == 1));
        assert!(before.exists());
    }
}
