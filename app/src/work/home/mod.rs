//! What the studio keeps from one run to the next, beside the projects themselves: recovery
//! copies ([`recovery`]), the projects last worked on and the first steps ([`desk`]), the gauge
//! book ([`book`]). All of it lies in one folder, and one thread writes it ([`writer`]).

mod book;
pub mod desk;
mod gauges;
mod looking;
pub mod predictions;
pub mod recovery;
mod writer;

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use egui::Context;
use plumpline_core::calibrate::{Calibration, Entry, GaugeBook, Struck};
use plumpline_core::{Project, disk, file};

use crate::document::{Document, Revision};
use desk::Desk;
use looking::Looks;
use recovery::{Left, Slot};
use writer::{Copy, HomeWish, Writer};

/// Unsaved changes are never older than this without a recovery copy, s.
pub const KEPT_EVERY_S: f64 = 30.0;

/// Once nothing has changed for so long, they have one, s. A battery that is empty asks nobody,
/// and a display that is lost ends the program inside its library: this is what is lost then.
pub const KEPT_AFTER_S: f64 = 1.0;

/// Something a person asks for about projects as a whole.
#[derive(Debug, Clone, PartialEq)]
pub enum DeskAction {
    /// Opens the project in this file.
    Open(PathBuf),
    /// Opens the project in this file where the hook was.
    Continue(PathBuf),
    /// Takes a file off the list of those last worked on.
    Forget(PathBuf),
    /// Begins this project.
    Create(Box<Project>),
    /// Shows the start card.
    ShowStart,
    /// Chooses a file with a shape in it, for the start card.
    ChooseShape,
    /// Puts the start card away.
    HideStart,
    /// Takes up what a crash left.
    Recover,
    /// Lets what a crash left go.
    LetGo,
    /// Puts the offer of it away until the next start.
    PutOff,
    /// Ends the first steps.
    EndSteps,
    /// Keeps what a sample taught in the gauge book.
    KeepGauge(Box<Calibration>),
    /// Strikes the entry of this yarn, hook and maker out of the gauge book.
    StrikeGauge(Box<Entry>),
    /// Puts back what was struck out of this yarn, hook and maker.
    PutGaugeBack(Box<Entry>),
}

/// The studio's folder, or none: then nothing is kept, and nothing asked.
#[derive(Debug, Default)]
pub struct Home {
    /// What is remembered.
    pub desk: Desk,
    /// What samples taught.
    pub gauges: GaugeBook,
    /// What was struck out of them in this run.
    struck: Vec<Struck>,
    folder: PathBuf,
    /// What crashes left, newest first.
    left: Vec<Left>,
    /// Their saved files, where those have not been looked into yet.
    saved: Looks<Option<Project>>,
    /// Looks whether the projects last worked on are still there.
    recent: Looks<bool>,
    /// Whether the offer of what crashes left is put off until the next start.
    put_off: bool,
    /// What was taken up but has no new copy yet; held, so that nobody else offers it.
    taken: Vec<Left>,
    /// What the recovery copy holds.
    kept: Option<Revision>,
    due: Option<f64>,
    /// The last change that was seen, and when it will have been left alone.
    changing: Option<(Revision, f64)>,
    slot: Option<Slot>,
    writer: Option<Writer>,
}

impl Home {
    /// The home in `folder`, which is made if need be; `ctx` is woken when something could
    /// not be written. Small and local, so it is read at once; what it names may lie anywhere,
    /// and is looked for on the side.
    ///
    /// # Errors
    /// One line, if no recovery copies can be kept there; what is remembered is still read.
    pub fn open(folder: &Path, ctx: &Context) -> (Self, Option<String>) {
        let (gauges, unread) = book::read(folder);
        let mut home = Self {
            desk: Desk::read(folder),
            gauges,
            folder: folder.to_owned(),
            ..Self::default()
        };
        let copies = || -> std::io::Result<(Slot, Vec<Left>)> {
            let copies = folder.join("recovery");
            std::fs::create_dir_all(&copies)?;
            keep_private(folder)?;
            disk::sweep(folder);
            let left = recovery::left(&copies);
            Ok((Slot::take(&copies)?, left))
        };
        match copies() {
            Ok((slot, left)) => {
                (home.slot, home.left) = (Some(slot), left);
                home.writer = Some(Writer::new(folder, home.gauges.clone(), ctx.clone()));
                for left in &home.left {
                    if let Some(of) = &left.of {
                        home.saved.begin(ctx, of, |of| file::load(of).ok());
                    }
                }
                home.look(ctx);
                let until = Instant::now() + looking::FIRST_WAIT;
                let saved = home.saved.heard_by(until);
                home.compare(saved);
                let recent = home.recent.heard_by(until);
                home.desk.looked_for(recent);
                (home, unread)
            }
            Err(error) => {
                let folder = folder.display().to_string();
                let trouble = say!(
                    "trouble-folder-recovery-copies-cannot-be-kept",
                    folder = folder,
                    error = error.to_string()
                );
                (home, Some(trouble))
            }
        }
    }

    /// Where pages lie that are to be printed: beside what is remembered, for nobody else to read.
    /// Where nothing is kept, in a folder of their own.
    ///
    /// # Errors
    /// If that cannot be made.
    pub(crate) fn to_print(&self) -> std::io::Result<PathBuf> {
        let folder = match self.folder.as_os_str().is_empty() {
            true => tempfile::tempdir()?.keep(),
            false => self.folder.clone(),
        };
        Ok(folder.join("print.pdf"))
    }

    /// Has it looked whether the projects last worked on are still there.
    pub fn look(&mut self, ctx: &Context) {
        for path in &self.desk.recent {
            self.recent.begin(ctx, path, |path| path.is_file());
        }
    }

    /// Takes in what was looked for since.
    pub fn hear(&mut self) {
        let recent = self.recent.heard();
        self.desk.looked_for(recent);
        let saved = self.saved.heard();
        self.compare(saved);
    }

    /// Lays what crashes left beside what is `saved` in its files. A copy that says what is
    /// saved anyway is cleared away.
    fn compare(&mut self, saved: Vec<(PathBuf, Option<Project>)>) {
        let mut vain = Vec::new();
        for (path, saved) in saved {
            self.left.retain_mut(|left| {
                if left.of.as_ref() != Some(&path) {
                    return true;
                }
                if saved.as_ref() == Some(&left.project) {
                    vain.push(left.file.clone());
                    return false;
                }
                left.saved.clone_from(&saved);
                true
            });
        }
        if !vain.is_empty() {
            self.write(HomeWish::Forget(vain));
        }
    }

    /// What a crash left, if anything: the newest, unless that is put off.
    pub fn offer(&self) -> Option<&Left> {
        self.left.first().filter(|_| !self.put_off)
    }

    /// Puts the offer off until the next start; what it is of stays where it is.
    pub fn put_off(&mut self) {
        self.put_off = true;
    }

    /// Takes the offer up: its copy goes once this run has made one of its own.
    pub fn take_up(&mut self) -> Option<&Left> {
        let left = self.pop()?;
        self.taken.push(left);
        self.due = Some(f64::NEG_INFINITY);
        self.taken.last()
    }

    /// Lets the offer go, its copy with it; returns where its project was saved.
    pub fn let_go(&mut self) -> Option<PathBuf> {
        let left = self.pop()?;
        self.write(HomeWish::Forget(vec![left.file.clone()]));
        left.of
    }

    fn pop(&mut self) -> Option<Left> {
        (!self.left.is_empty()).then(|| self.left.remove(0))
    }

    /// Keeps a copy of what is not saved: when the window loses the keyboard, [`KEPT_AFTER_S`]
    /// after the last change, and at latest [`KEPT_EVERY_S`] after the first. Drops it once there is nothing to lose.
    pub fn tend(&mut self, ctx: &Context, document: &Document) {
        let Some(slot) = &self.slot else { return };
        if !document.is_changed() {
            let file = slot.file.clone();
            self.due = None;
            if self.kept.take().is_some() {
                self.write(HomeWish::Forget(vec![file]));
            }
            return;
        }
        let revision = document.revision();
        if self.kept == Some(revision) {
            self.due = None;
            return;
        }
        let (now, left) = ctx.input(|i| {
            let gone = |e: &egui::Event| matches!(e, egui::Event::WindowFocused(false));
            (i.time, i.events.iter().any(gone))
        });
        let rested = match self.changing {
            Some((of, rested)) if of == revision => rested,
            _ => now + KEPT_AFTER_S,
        };
        self.changing = Some((revision, rested));
        let due = self.due.get_or_insert(now + KEPT_EVERY_S).min(rested);
        if now < due && !left {
            ctx.request_repaint_after(Duration::from_secs_f64(due - now));
            return;
        }
        self.keep(document);
    }

    /// Keeps a copy of what is not saved now.
    pub(crate) fn keep(&mut self, document: &Document) {
        let Some(file) = self.slot.as_ref().map(|slot| slot.file.clone()) else { return };
        (self.due, self.changing) = (None, None);
        if self.kept == Some(document.revision()) {
            return;
        }
        if let Some(sound) = document.soundest() {
            let of = document.path().map(Path::to_owned);
            let before = self.taken.iter().map(|left| left.file.clone()).collect();
            let copy = Copy { file, project: sound, of };
            self.write(HomeWish::Keep(Box::new(copy), before));
            self.kept = Some(document.revision());
        }
    }

    /// Keeps a copy of what is not saved at once, not after a while.
    pub fn hurry(&mut self) {
        self.due = Some(f64::NEG_INFINITY);
    }

    /// Changes what is remembered, and writes it if it is another.
    pub fn remember(&mut self, change: impl FnOnce(&mut Desk)) {
        let before = self.desk.clone();
        change(&mut self.desk);
        if self.desk != before {
            self.write(HomeWish::Desk(self.desk.clone()));
        }
    }

    /// Asks for something to be written, where there is a place for it.
    fn write(&mut self, wish: HomeWish) {
        if let Some(writer) = &mut self.writer {
            writer.ask(wish);
        }
    }

    /// Why something could not be written, once.
    pub fn trouble(&mut self) -> Option<String> {
        self.writer.as_mut()?.trouble()
    }

    /// The run ends well: nothing is left to recover.
    pub fn leave(&mut self) {
        if let Some(slot) = &self.slot {
            let mut files: Vec<PathBuf> =
                self.taken.iter().map(|left| left.file.clone()).collect();
            files.push(slot.file.clone());
            self.write(HomeWish::Forget(files));
        }
        self.kept = None;
        self.writer = None; // Waits until all is written.
    }
}
/// Keeps others on the machine out of `folder`: what nobody saved yet lies there.
fn keep_private(folder: &Path) -> std::io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        std::fs::set_permissions(folder, std::fs::Permissions::from_mode(0o700))?;
    }
    #[cfg(not(unix))]
    let _ = folder; // A person's own folder is private there.
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_copy_of_what_is_saved_is_cleared_away_and_another_knows_what_is_saved() {
        let (folder, ctx) = (tempfile::tempdir().expect("a folder"), Context::default());
        let copies = folder.path().join("recovery");
        std::fs::create_dir(&copies).expect("made");
        let project = Document::sample().project().clone();
        let changed = Project { title: "Another".into(), ..project.clone() };
        let of = folder.path().join("float.ron");
        file::save(&project, &of).expect("saved");
        let slots = [&project, &changed].map(|project| {
            let slot = Slot::take(&copies).expect("a place");
            recovery::write(&slot.file, project, Some(&of)).expect("written");
            slot
        });
        let files = slots.each_ref().map(|slot| slot.file.clone());
        drop(slots);
        let (mut home, trouble) = Home::open(folder.path(), &ctx);
        assert_eq!(trouble, None);
        let left = home.take_up().expect("what is not saved");
        assert_eq!((&left.project, &left.saved), (&changed, &Some(project)));
        assert!(home.offer().is_none());
        drop(home); // Waits until all is written.
        assert_eq!(files.map(|file| file.exists()), [false, true]);
    }

    /// A hand that never rests for as long as a copy would wait for.
    #[test]
    fn half_a_minute_of_changes_is_the_most_there_is_to_lose() {
        let (folder, ctx) = (tempfile::tempdir().expect("a folder"), Context::default());
        let (mut home, trouble) = Home::open(folder.path(), &ctx);
        assert_eq!(trouble, None);
        let mut document = Document::blank();
        for second in 0..=30 {
            let copies = |project: &mut Project, _| project.pieces[0].copies = 2 + second;
            document.change("Copies".into(), None, copies);
            let time = Some(f64::from(second));
            let input = egui::RawInput { time, ..egui::RawInput::default() };
            let mut drawn = ctx.run_ui(input, |_| home.tend(&ctx, &document));
            drawn.textures_delta.clear();
            assert_eq!(home.kept.is_some(), second == 30, "after {second} s");
        }
    }
}
