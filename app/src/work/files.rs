//! Files: dialogs, reading and writing, on a thread, so that the window never waits. One
//! after the other, in the order they were asked for.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use anyhow::anyhow;
use egui::Context;
use plumpline_core::file::SavedOver;
use plumpline_core::sheet::sheet_with;
use plumpline_core::{Project, disk, file};

use super::pattern_file;
use super::picture;
use super::shape_file::ShapeKind;
use super::sheet_file::Form;
use super::worker::{Queue, Ticket, Voice, Worker};
use crate::document::Revision;
use crate::view::sheet::SheetLook;

/// What a file is wanted for.
#[derive(Debug, Clone, PartialEq)]
pub enum Purpose {
    /// To open the project in it.
    Open,
    /// To proofread the pattern in it.
    Pattern,
    /// To save this written pattern in it.
    SavePattern(String),
    /// To trace the picture in it.
    Picture,
    /// To begin a piece with the shape in it.
    Shape,
    /// To save this project in it, which is that of this document.
    Save(Revision, Box<Project>),
    /// The same in the file that it came from, if that still holds this project.
    SaveOver(Revision, Box<Project>, Box<Project>),
    /// The same as the making goes on, step by step.
    Keep(Revision, Box<Project>, Box<Project>),
    /// To see whether it still holds this project, which is that of this document.
    Compare(Revision, Box<Project>),
    /// To write the sheet of this project in it, in the form its ending asks for.
    Sheet(Box<Project>, SheetLook),
}

impl Purpose {
    /// Whether the file is read, not written.
    pub fn reads(&self) -> bool {
        matches!(
            self,
            Self::Open | Self::Pattern | Self::Picture | Self::Shape | Self::Compare(..)
        )
    }
}

/// How it went.
#[derive(Debug)]
pub enum Outcome {
    /// A project was read.
    Opened(PathBuf, Box<Project>),
    /// A picture of so many pixels was chosen.
    Picture(PathBuf, (u32, u32)),
    /// A file with a shape in it was chosen.
    Shape(PathBuf),
    /// The project of this document was saved.
    Saved(PathBuf, Revision, Box<Project>),
    /// The project of this document was saved as the making went on.
    Kept(PathBuf, Revision, Box<Project>),
    /// It could not be, and why in one line.
    NotKept(String),
    /// Somebody else has written in the file of this document, and nothing was changed: what
    /// stands there now, and the project that was to be saved.
    Changed(PathBuf, Revision, Option<Box<Project>>, Box<Project>),
    /// Somebody else has written in the file of this document.
    ChangedMeanwhile(Revision),
    /// A written pattern was read.
    Read(String),
    /// The pattern was written.
    Wrote(PathBuf),
    /// This written pattern was saved.
    SavedPattern(PathBuf, String),
    /// Nothing was chosen.
    Cancelled,
    /// No dialog could be shown; the path has to be typed.
    NoDialog(Purpose),
    /// It failed, and why in one line.
    Failed(String),
}

/// A dialog that closes sooner than anyone can was never shown.
const SHOWN: Duration = Duration::from_millis(250);

type FileJob = Box<dyn FnOnce() -> Outcome + Send>;

/// The files that are asked for, one after the other: none is forgotten because another is
/// under way.
#[derive(Debug)]
pub struct Files {
    worker: Worker<Queue<FileJob>, Outcome>,
    /// Those that save as the making goes on.
    keeping: BTreeSet<Ticket>,
    /// Where typed paths begin, if paths are typed and never chosen in the desktop's dialog.
    pub typed_from: Option<PathBuf>,
}

impl Default for Files {
    fn default() -> Self {
        let work =
            || |job: FileJob, voice: &Voice<'_, Queue<FileJob>, Outcome>| voice.say(job());
        Self { worker: Worker::new("files", work), keeping: BTreeSet::new(), typed_from: None }
    }
}

impl Files {
    /// Whether something is under way.
    pub fn is_busy(&self) -> bool {
        self.worker.is_busy()
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
            return self.worker.ask(ctx, Box::new(|| Outcome::NoDialog(purpose)));
        }
        // The parent has to be named on the thread of the window.
        let dialog = dialog(&purpose, suggested).set_parent(parent);
        let job = move || {
            let began = Instant::now();
            let chosen = match purpose {
                Purpose::Open | Purpose::Pattern | Purpose::Picture | Purpose::Shape => {
                    dialog.pick_file()
                }
                _ => dialog.save_file(),
            };
            match chosen {
                Some(path) => carry_out(purpose, path),
                None if began.elapsed() < SHOWN => Outcome::NoDialog(purpose),
                None => Outcome::Cancelled,
            }
        };
        self.worker.ask(ctx, Box::new(job))
    }

    /// Does with the file at `path` what it is wanted for.
    pub fn with_path(&mut self, ctx: &Context, purpose: Purpose, path: PathBuf) -> Ticket {
        let path = self.typed_from.as_ref().map(|from| from.join(&path)).unwrap_or(path);
        let keeps = matches!(purpose, Purpose::Keep(..));
        let ticket = self.worker.ask(ctx, Box::new(move || carry_out(purpose, path)));
        if keeps {
            self.keeping.insert(ticket);
        }
        ticket
    }

    /// How the next of what was asked went, once it is done.
    pub fn hear(&mut self) -> Option<(Ticket, Outcome)> {
        let heard = self.worker.hear()?;
        let kept = self.keeping.remove(&heard.to);
        let outcome = heard.answer.unwrap_or_else(|broken| {
            let why = format!("the file was not read or written ({broken}); try again");
            if kept { Outcome::NotKept(why) } else { Outcome::Failed(why) }
        });
        Some((heard.to, outcome))
    }
}

fn dialog(purpose: &Purpose, suggested: &Path) -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new();
    let dialog = match purpose {
        Purpose::Open => dialog.set_title("Open a project"),
        Purpose::Pattern => dialog.set_title("Open a written pattern"),
        Purpose::Picture => dialog.set_title("Choose a picture to trace"),
        Purpose::Shape => dialog.set_title("Choose a file with a shape in it"),
        Purpose::Save(..)
        | Purpose::SaveOver(..)
        | Purpose::Keep(..)
        | Purpose::Compare(..) => dialog.set_title("Save the project"),
        Purpose::SavePattern(_) => dialog.set_title("Save the written pattern"),
        Purpose::Sheet(..) => dialog.set_title("Save the pattern"),
    };
    let dialog = match purpose {
        Purpose::Open
        | Purpose::Save(..)
        | Purpose::SaveOver(..)
        | Purpose::Keep(..)
        | Purpose::Compare(..) => dialog.add_filter("Plumpline project", &["ron"]),
        Purpose::Picture => dialog.add_filter("PNG, JPEG or WebP", &picture::ENDINGS),
        Purpose::Shape => {
            let all = [&picture::ENDINGS[..], &ShapeKind::PROFILES[..]].concat();
            dialog.add_filter("Pictures, drawings, tables and solids", &all)
        }
        Purpose::Pattern => {
            dialog.add_filter("Text, page, document or PDF", &pattern_file::ENDINGS)
        }
        Purpose::SavePattern(_) => {
            dialog.add_filter("Plain text", &["txt"]).add_filter("Markdown", &["md"])
        }
        Purpose::Sheet(..) => dialog
            .add_filter("PDF", &["pdf"])
            .add_filter("Page for a browser", &["html"])
            .add_filter("Markdown", &["md"])
            .add_filter("Plain text", &["txt"])
            .add_filter("Picture of the first page", &["png"]),
    };
    let dialog = match suggested.parent() {
        Some(folder) if folder.is_dir() => dialog.set_directory(folder),
        _ => dialog,
    };
    match suggested.file_name() {
        Some(name) if !purpose.reads() => dialog.set_file_name(name.to_string_lossy()),
        _ => dialog,
    }
}

fn carry_out(purpose: Purpose, path: PathBuf) -> Outcome {
    match purpose {
        Purpose::Open => match opened(&path) {
            Ok(project) => Outcome::Opened(path, Box::new(project)),
            Err(error) => Outcome::Failed(error.to_string()),
        },
        Purpose::Pattern => match pattern_text(&path) {
            Ok(text) => Outcome::Read(text),
            Err(error) => Outcome::Failed(error.to_string()),
        },
        Purpose::SavePattern(text) => {
            let path = with_extension(path, "txt");
            match disk::write(&path, text.as_bytes()) {
                Ok(()) => Outcome::SavedPattern(path, text),
                Err(error) => Outcome::Failed(error.to_string()),
            }
        }
        Purpose::Picture => match picture::size(&path) {
            Ok(size) => Outcome::Picture(path, size),
            Err(error) => Outcome::Failed(error),
        },
        Purpose::Shape => Outcome::Shape(path),
        Purpose::Save(of, project) => {
            let path = with_extension(path, "ron");
            match file::save(&project, &path) {
                Ok(()) => Outcome::Saved(path, of, project),
                Err(error) => Outcome::Failed(error.to_string()),
            }
        }
        Purpose::SaveOver(of, project, known) => {
            match file::save_over(&project, &path, &known) {
                Ok(SavedOver::Saved) => Outcome::Saved(path, of, project),
                Ok(SavedOver::Changed(theirs)) => Outcome::Changed(path, of, theirs, project),
                Err(error) => Outcome::Failed(error.to_string()),
            }
        }
        Purpose::Keep(of, project, known) => match file::save_making(&project, &path, &known) {
            Ok(SavedOver::Saved) => Outcome::Kept(path, of, project),
            Ok(SavedOver::Changed(theirs)) => Outcome::Changed(path, of, theirs, project),
            Err(error) => Outcome::NotKept(error.to_string()),
        },
        Purpose::Compare(of, known) => match file::load(&path) {
            Ok(theirs) if theirs != *known => Outcome::ChangedMeanwhile(of),
            // A file that is gone or cannot be read is told of when it is saved.
            _ => Outcome::Cancelled,
        },
        Purpose::Sheet(project, look) => match write_sheet(&project, look, &path) {
            Ok(path) => Outcome::Wrote(path),
            Err(why) => Outcome::Failed(why),
        },
    }
}

/// Writes the sheet of `project` to `path`, or to that with .pdf where it has no ending;
/// returns where.
fn write_sheet(project: &Project, look: SheetLook, path: &Path) -> Result<PathBuf, String> {
    let path = with_extension(path.to_owned(), "pdf");
    let form = Form::of(&path)?;
    let sheet = sheet_with(project, look.single).map_err(|e| e.to_string())?;
    let (bytes, _) = form.file(&sheet, look.options, 1)?;
    disk::write(&path, &bytes).map_err(|e| e.to_string())?;
    Ok(path)
}

/// The text of the pattern in the file at `path`, or on standard input for `-`.
///
/// # Errors
/// In one line, for what cannot be read or is no text.
pub(crate) fn pattern_text(path: &Path) -> anyhow::Result<String> {
    let bytes = match path.as_os_str() == "-" {
        true => disk::read_from(std::io::stdin(), "standard input", disk::LARGEST_DOCUMENT),
        false => disk::read(path, disk::LARGEST_DOCUMENT),
    }?;
    pattern_file::text_of(&bytes).map_err(|error| anyhow!("{}: {error}", path.display()))
}

/// The path, with an extension if it has none.
fn with_extension(path: PathBuf, extension: &str) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension(extension) }
}

/// The project at `path`; what saves that were cut short left beside it goes.
fn opened(path: &Path) -> plumpline_core::Result<Project> {
    let project = file::load(path)?;
    if let Some(folder) = path.parent() {
        disk::sweep(folder);
    }
    Ok(project)
}
