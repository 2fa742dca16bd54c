//! Files: dialogs, reading and writing, on a thread, so that the window never waits. One
//! after the other, in the order they were asked for.

mod carry_out;
mod dialog;
mod purpose;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use egui::Context;

use super::lingering::{LINGERS, Lingering, LongWork};
use super::worker::{Queue, Ticket, Voice, Worker};
use carry_out::Written;
pub(crate) use carry_out::{course, pattern_text};
pub use purpose::{Outcome, OwnPictureUse, Purpose, SheetToWrite, ToSave};

/// A dialog that closes sooner than anyone can was never shown.
const SHOWN: Duration = Duration::from_millis(250);

type FileJob = Box<dyn FnOnce() -> Outcome + Send>;

/// What is being read or written, since when; nothing while a dialog is open.
type UnderWay = Arc<Mutex<Option<Instant>>>;

/// The files that are asked for, one after the other: none is forgotten because another is
/// under way.
#[derive(Debug)]
pub struct Files {
    worker: Worker<Queue<FileJob>, Outcome>,
    /// What is still to be answered is wanted for.
    asked: BTreeMap<Ticket, Asked>,
    under_way: UnderWay,
    written: Arc<Mutex<Written>>,
    /// Where typed paths begin, if paths are typed and never chosen in the desktop's dialog.
    pub typed_from: Option<PathBuf>,
}

/// A wish that is still to be answered.
#[derive(Debug)]
struct Asked {
    doing: &'static str,
    /// Whether it saves as the making goes on.
    keeps: bool,
    saves: bool,
}

impl Asked {
    fn of(purpose: &Purpose) -> Self {
        let keeps = matches!(purpose, Purpose::Keep(..));
        Self { doing: purpose.doing(), keeps, saves: purpose.saves() }
    }
}

impl Default for Files {
    fn default() -> Self {
        let work =
            || |job: FileJob, voice: &Voice<'_, Queue<FileJob>, Outcome>| voice.say(job());
        Self {
            worker: Worker::new("files", work),
            asked: BTreeMap::new(),
            under_way: UnderWay::default(),
            written: Arc::default(),
            typed_from: None,
        }
    }
}

impl Files {
    /// Whether something is under way.
    pub fn is_busy(&self) -> bool {
        self.worker.is_busy()
    }

    /// What has been read or written for so long that a person wonders.
    pub fn lingering(&self) -> Option<Lingering> {
        let began = (*locked(&self.under_way))?;
        let (_, asked) = self.asked.first_key_value()?;
        let lingers = began.elapsed() >= LINGERS;
        lingers.then_some(Lingering { work: LongWork::File, doing: asked.doing })
    }

    /// Gives up what is under way, which is answered as having failed, and goes on with what
    /// waits.
    pub fn give_up(&mut self, ctx: &Context) {
        // What is left to itself notes its end where nobody looks any more.
        self.under_way = UnderWay::default();
        self.worker.give_up(ctx);
    }

    /// Asks for a path with the desktop's dialog, then does what it is wanted for.
    pub fn ask(
        &mut self,
        ctx: &Context,
        parent: &eframe::Frame,
        purpose: Purpose,
        suggested: &Path,
    ) -> Ticket {
        if self.typed_from.is_some() {
            let asked = Asked::of(&purpose);
            return self.enqueue(ctx, asked, Box::new(|| Outcome::NoDialog(purpose)));
        }
        // The parent has to be named on the thread of the window.
        let dialog = dialog::dialog(&purpose, suggested).set_parent(parent);
        let asked = Asked::of(&purpose);
        let carry = self.carrying();
        let job = move || {
            let began = Instant::now();
            let chosen = if purpose.reads() { dialog.pick_file() } else { dialog.save_file() };
            match chosen {
                Some(path) => carry(purpose, path),
                None if began.elapsed() < SHOWN => Outcome::NoDialog(purpose),
                None => Outcome::Cancelled,
            }
        };
        self.enqueue(ctx, asked, Box::new(job))
    }

    /// Does with the file at `path` what it is wanted for.
    pub fn with_path(&mut self, ctx: &Context, purpose: Purpose, path: PathBuf) -> Ticket {
        let path = self.typed_from.as_ref().map(|from| from.join(&path)).unwrap_or(path);
        let asked = Asked::of(&purpose);
        let carry = self.carrying();
        self.enqueue(ctx, asked, Box::new(move || carry(purpose, path)))
    }

    /// What does with a file what it is wanted for, and notes for how long.
    fn carrying(&self) -> impl Fn(Purpose, PathBuf) -> Outcome + Send + use<> {
        let (under_way, written) = (Arc::clone(&self.under_way), Arc::clone(&self.written));
        move |purpose, path| {
            *locked(&under_way) = Some(Instant::now());
            // Never held while a file is waited for: that may be without end.
            let mut now = locked(&written).clone();
            let outcome = carry_out::carry_out(purpose, path, &mut now);
            *locked(&written) = now;
            *locked(&under_way) = None;
            outcome
        }
    }

    fn enqueue(&mut self, ctx: &Context, asked: Asked, job: FileJob) -> Ticket {
        let ticket = self.worker.ask(ctx, job);
        self.asked.insert(ticket, asked);
        // Whoever waits longer than that is told.
        ctx.request_repaint_after(LINGERS + Duration::from_millis(50));
        ticket
    }

    /// How the next of what was asked went, once it is done.
    pub fn hear(&mut self) -> Option<(Ticket, Outcome)> {
        let heard = self.worker.hear()?;
        let asked = self.asked.remove(&heard.to);
        let outcome = heard.answer.unwrap_or_else(|broken| {
            let (doing, saves, keeps) = asked
                .map_or((say!("trouble-the-file"), false, false), |asked| {
                    (asked.doing, asked.saves, asked.keeps)
                });
            let mend = match saves {
                true => say!("trouble-its-file-may-hold-the-old-version-or"),
                false => say!("trouble-try-again"),
            };
            let why = format!("{doing}: {broken}; {mend}");
            if keeps { Outcome::NotKept(why) } else { Outcome::Failed(why) }
        });
        Some((heard.to, outcome))
    }
}

/// What a mutex holds; a thread that panicked left it whole.
fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
