//! Files: dialogs, reading and writing, on a thread of their own so that the window never
//! waits. One at a time.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};
use std::time::{Duration, Instant};

use anyhow::bail;
use egui::Context;
use plumpline_core::pattern::decoded;
use plumpline_core::sheet::sheet_with;
use plumpline_core::{Project, disk, file};

use super::picture;
use super::sheet_file::Form;
use crate::view::sheet::SheetLook;

/// What a file is wanted for.
#[derive(Debug, Clone, PartialEq)]
pub enum Purpose {
    /// To open the project in it.
    Open,
    /// To proofread the pattern in it.
    Pattern,
    /// To trace the picture in it.
    Picture,
    /// To save this project in it.
    Save(Box<Project>),
    /// To save this project in it as the making goes on, step by step.
    Keep(Box<Project>),
    /// To write the sheet of this project in it, in the form its ending asks for.
    Sheet(Box<Project>, SheetLook),
}

impl Purpose {
    /// Whether the file is read, not written.
    pub fn reads(&self) -> bool {
        matches!(self, Self::Open | Self::Pattern | Self::Picture)
    }
}

/// How it went.
#[derive(Debug)]
pub enum Outcome {
    /// A project was read.
    Opened(PathBuf, Box<Project>),
    /// A picture of so many pixels was chosen.
    Picture(PathBuf, (u32, u32)),
    /// The project was saved.
    Saved(PathBuf, Box<Project>),
    /// The project was saved as the making went on.
    Kept(PathBuf, Box<Project>),
    /// It could not be, and why in one line.
    NotKept(String),
    /// A written pattern was read.
    Read(String),
    /// The pattern was written.
    Wrote(PathBuf),
    /// Nothing was chosen.
    Cancelled,
    /// No dialog could be shown; the path has to be typed.
    NoDialog(Purpose),
    /// It failed, and why in one line.
    Failed(String),
}

/// A dialog that closes sooner than anyone can was never shown.
const SHOWN: Duration = Duration::from_millis(250);

/// The job under way, if any.
#[derive(Debug, Default)]
pub struct Jobs {
    running: Option<Receiver<Outcome>>,
    /// Where typed paths begin, if paths are typed and never chosen in the desktop's dialog.
    pub typed_from: Option<PathBuf>,
}

impl Jobs {
    /// Whether a job is under way.
    pub fn busy(&self) -> bool {
        self.running.is_some()
    }

    /// Asks for a path with the desktop's dialog, then does what it is wanted for.
    pub fn ask(
        &mut self,
        ctx: &Context,
        parent: &eframe::Frame,
        purpose: Purpose,
        suggested: &Path,
    ) {
        if self.typed_from.is_some() {
            return self.start(ctx, || Outcome::NoDialog(purpose));
        }
        // The parent has to be named on the thread of the window.
        let dialog = dialog(&purpose, suggested).set_parent(parent);
        self.start(ctx, move || {
            let began = Instant::now();
            let chosen = match purpose {
                Purpose::Open | Purpose::Pattern | Purpose::Picture => dialog.pick_file(),
                _ => dialog.save_file(),
            };
            match chosen {
                Some(path) => carry_out(purpose, path),
                None if began.elapsed() < SHOWN => Outcome::NoDialog(purpose),
                None => Outcome::Cancelled,
            }
        });
    }

    /// Does with the file at `path` what it is wanted for.
    pub fn with_path(&mut self, ctx: &Context, purpose: Purpose, path: PathBuf) {
        let path = self.typed_from.as_ref().map(|from| from.join(&path)).unwrap_or(path);
        self.start(ctx, move || carry_out(purpose, path));
    }

    fn start(&mut self, ctx: &Context, job: impl FnOnce() -> Outcome + Send + 'static) {
        if self.busy() {
            return;
        }
        let (tell, hear) = sync_channel(1);
        let ctx = ctx.clone();
        let thread = std::thread::Builder::new().name("files".into()).spawn(move || {
            // The window may be gone by now; then nobody needs to hear it.
            let _ = tell.send(job());
            ctx.request_repaint();
        });
        if thread.is_ok() {
            self.running = Some(hear);
        }
    }

    /// The outcome of the job, once it is done.
    pub fn poll(&mut self) -> Option<Outcome> {
        let outcome = match self.running.as_ref()?.try_recv() {
            Ok(outcome) => outcome,
            Err(TryRecvError::Empty) => return None,
            Err(TryRecvError::Disconnected) => {
                Outcome::Failed("the file was not read or written; try again".into())
            }
        };
        self.running = None;
        Some(outcome)
    }
}

fn dialog(purpose: &Purpose, suggested: &Path) -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new();
    let dialog = match purpose {
        Purpose::Open => dialog.set_title("Open a project"),
        Purpose::Pattern => dialog.set_title("Open a written pattern"),
        Purpose::Picture => dialog.set_title("Choose a picture to trace"),
        Purpose::Save(_) | Purpose::Keep(_) => dialog.set_title("Save the project"),
        Purpose::Sheet(..) => dialog.set_title("Save the pattern"),
    };
    let dialog = match purpose {
        Purpose::Open | Purpose::Save(_) | Purpose::Keep(_) => {
            dialog.add_filter("Plumpline project", &["ron"])
        }
        Purpose::Picture => dialog.add_filter("PNG, JPEG or WebP", &picture::ENDINGS),
        Purpose::Pattern => {
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
        Purpose::Open => match file::load(&path) {
            Ok(project) => Outcome::Opened(path, Box::new(project)),
            Err(error) => Outcome::Failed(error.to_string()),
        },
        Purpose::Pattern => match pattern_text(&path) {
            Ok(text) => Outcome::Read(text),
            Err(error) => Outcome::Failed(error.to_string()),
        },
        Purpose::Picture => match picture::size(&path) {
            Ok(size) => Outcome::Picture(path, size),
            Err(error) => Outcome::Failed(error),
        },
        Purpose::Save(project) => {
            let path = with_extension(path, "ron");
            match file::save(&project, &path) {
                Ok(()) => Outcome::Saved(path, project),
                Err(error) => Outcome::Failed(error.to_string()),
            }
        }
        Purpose::Keep(project) => match file::save(&project, &path) {
            Ok(()) => Outcome::Kept(path, project),
            Err(error) => Outcome::NotKept(error.to_string()),
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
        true => disk::read_from(std::io::stdin(), "standard input", disk::LARGEST_PATTERN),
        false => disk::read(path, disk::LARGEST_PATTERN),
    }?;
    if bytes.contains(&0) {
        bail!("{}: it is no text; save the pattern as plain text", path.display());
    }
    Ok(decoded(bytes))
}

/// The path, with an extension if it has none.
fn with_extension(path: PathBuf, extension: &str) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension(extension) }
}
