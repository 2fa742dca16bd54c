//! Files read and written, for each purpose.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use plumpline_core::file::SavedOver;
use plumpline_core::lesson::LessonCourse;
use plumpline_core::sheet::sheet_with;
use plumpline_core::{Error, Project, disk, file};

use super::purpose::{Outcome, Purpose, ToSave};
use crate::kit::words::MessageKey;
use crate::view::sheet::SheetLook;
use crate::work::carried::{Carried, carry};
use crate::work::sheet_file::Form;
use crate::work::{pattern_file, picture};

/// A project that was written or read here last, and where. A wish to save was made before
/// what it waited for came out, and may know of an older state alone.
pub(super) type Written = Option<(PathBuf, Box<Project>)>;

/// Does with the file at `path` what it is wanted for. What this leaves there is noted in
/// `written`.
pub(super) fn carry_out(purpose: Purpose, path: PathBuf, written: &mut Written) -> Outcome {
    let outcome = done(purpose, path, written.as_ref());
    if let Outcome::Opened(path, project)
    | Outcome::Saved(path, _, project, _)
    | Outcome::Kept(path, _, project) = &outcome
    {
        *written = Some((path.clone(), project.clone()));
    }
    outcome
}

fn done(purpose: Purpose, path: PathBuf, written: Option<&(PathBuf, Box<Project>)>) -> Outcome {
    let known = |known: Box<Project>| -> Vec<Box<Project>> {
        let own = written.filter(|(at, _)| *at == path).map(|(_, project)| project.clone());
        own.into_iter().chain([known]).collect()
    };
    let failed = |error: Error| Outcome::Failed(error.to_string());
    match purpose {
        Purpose::Open => match opened(&path) {
            Ok(project) => Outcome::Opened(path, Box::new(project)),
            Err(error) => failed(error),
        },
        Purpose::Pattern => match pattern_text(&path) {
            Ok(text) => Outcome::Read(text),
            Err(error) => Outcome::Failed(error.to_string()),
        },
        Purpose::SavePattern(text) => {
            let path = with_ending(path, "txt");
            match disk::write(&path, text.as_bytes()) {
                Ok(()) => Outcome::SavedPattern(path, text),
                Err(error) => failed(error),
            }
        }
        Purpose::Picture => match picture::size(&path) {
            Ok(size) => Outcome::Picture(path, size),
            Err(error) => Outcome::Failed(error),
        },
        Purpose::Shape => Outcome::Shape(path),
        Purpose::Save(wish) => {
            let path = with_ending(path, "ron");
            if disk::is_read_only(&path) {
                return Outcome::ReadOnly(path, wish);
            }
            let (project, carried) = with_pictures(&wish, &path);
            saved(file::save(&project, &path), path, wish, project, carried)
        }
        Purpose::SaveReadOnly(wish) => {
            let (project, carried) = with_pictures(&wish, &path);
            saved(file::save_read_only(&project, &path), path, wish, project, carried)
        }
        Purpose::SaveOver(wish, before) => {
            if disk::is_read_only(&path) {
                return Outcome::ReadOnly(path, wish);
            }
            let (project, carried) = with_pictures(&wish, &path);
            let known = known(before);
            let known: Vec<&Project> = known.iter().map(|known| &**known).collect();
            match file::save_over(&project, &path, &known) {
                Ok(SavedOver::Saved) => saved(Ok(()), path, wish, project, carried),
                Ok(SavedOver::Changed(theirs)) => Outcome::Changed(path, wish, theirs),
                Err(error) => failed(error),
            }
        }
        Purpose::Keep(wish, before) => {
            let known = known(before);
            let known: Vec<&Project> = known.iter().map(|known| &**known).collect();
            match file::save_making(&wish.project, &path, &known) {
                Ok(SavedOver::Saved) => Outcome::Kept(path, wish.of, wish.project),
                Ok(SavedOver::Changed(theirs)) => Outcome::Changed(path, wish, theirs),
                Err(error) => Outcome::NotKept(error.to_string()),
            }
        }
        Purpose::Compare(of, before) => match file::load(&path) {
            Ok(theirs) if known(before).iter().any(|known| **known == theirs) => {
                Outcome::Cancelled
            }
            Err(_) if path.symlink_metadata().is_err() => Outcome::Gone(of),
            // What can no longer be read is changed too.
            _ => Outcome::ChangedMeanwhile(of),
        },
        Purpose::Sheet(project, look) => {
            wrote(message!("file-sheet"), path, "pdf", |path| sheet_file(&project, look, path))
        }
        Purpose::Body(picture) => {
            wrote(message!("file-picture"), path, "png", |_| picture.png())
        }
        Purpose::Lesson(print) => wrote(message!("file-lesson"), path, "pdf", |_| print.pdf()),
        Purpose::SaveCourse(text) => {
            wrote(message!("file-course"), path, "ron", |_| Ok(text.as_bytes().to_vec()))
        }
        Purpose::Course => match course(&path) {
            Ok(course) => Outcome::Course(Box::new(course)),
            Err(error) => failed(error),
        },
        Purpose::IfFree(purpose) => {
            let path = with_ending(path, purpose.ending());
            match path.symlink_metadata() {
                Ok(_) => Outcome::Taken(path, *purpose),
                Err(_) => done(*purpose, path, written),
            }
        }
    }
}

/// Writes what `make` makes for a file to `path`, or to that with its ending where it has none.
fn wrote(
    what: MessageKey,
    path: PathBuf,
    ending: &str,
    make: impl FnOnce(&Path) -> Result<Vec<u8>, String>,
) -> Outcome {
    let path = with_ending(path, ending);
    let written =
        make(&path).and_then(|bytes| disk::write(&path, &bytes).map_err(|e| e.to_string()));
    match written {
        Ok(()) => Outcome::Wrote(what, path),
        Err(why) => Outcome::Failed(why),
    }
}

/// The course in the file at `path`.
///
/// # Errors
/// In one line, for what cannot be read or is no course.
pub(crate) fn course(path: &Path) -> plumpline_core::Result<LessonCourse> {
    let text = disk::read_text(path, disk::LARGEST_PATTERN)?;
    LessonCourse::read(&text).map_err(|e| e.within(&path.display().to_string()))
}

/// The project as it goes into the file at `path`, its pictures with it.
fn with_pictures(wish: &ToSave, path: &Path) -> (Box<Project>, Carried) {
    let mut project = wish.project.clone();
    let carried = carry(&mut project, wish.from.as_deref(), path);
    (project, carried)
}

fn saved(
    done: plumpline_core::Result<()>,
    path: PathBuf,
    wish: ToSave,
    project: Box<Project>,
    carried: Carried,
) -> Outcome {
    match done {
        Ok(()) => Outcome::Saved(path, wish.of, project, carried),
        Err(error) => Outcome::Failed(error.to_string()),
    }
}

/// The sheet of `project` as a file of the form that the ending of `path` asks for.
fn sheet_file(project: &Project, look: SheetLook, path: &Path) -> Result<Vec<u8>, String> {
    let sheet = sheet_with(project, look.single).map_err(|e| e.to_string())?;
    let (bytes, _) = Form::of(path)?.file(&sheet, look.options, 1)?;
    Ok(bytes)
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

/// The path, with an ending if it has none.
fn with_ending(path: PathBuf, ending: &str) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension(ending) }
}

/// The project at `path`; what saves that were cut short left beside it goes.
fn opened(path: &Path) -> plumpline_core::Result<Project> {
    let project = file::load(path)?;
    if let Some(folder) = path.parent() {
        disk::sweep(folder);
    }
    Ok(project)
}
