//! What files are wanted for, and what comes of it.

use std::path::PathBuf;

use plumpline_core::Project;
use plumpline_core::lesson::LessonCourse;
use plumpline_core::sheet::Changes;

use crate::document::Revision;
use crate::kit::words::MessageKey;
use crate::view::sheet::SheetLook;
use crate::work::body_file::BodyFile;
use crate::work::carried::Carried;
use crate::work::lesson_file::LessonPrint;
use crate::work::shape_file::ShapeKind;
use crate::work::sheet_file::Form;
use crate::work::{pattern_file, picture};

/// A project to save.
#[derive(Debug, Clone, PartialEq)]
pub struct ToSave {
    /// The document it is of.
    pub of: Revision,
    /// The project.
    pub project: Box<Project>,
    /// The file it is in so far: names of pictures count from its folder.
    pub from: Option<PathBuf>,
}

/// A sheet to write.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetToWrite {
    /// The project.
    pub project: Project,
    /// How it is laid out.
    pub look: SheetLook,
    /// The folder that names of pictures count from.
    pub folder: Option<PathBuf>,
    /// The form where the name of the file has no ending.
    pub form: Form,
}

/// What a picture of the designer's is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OwnPictureUse {
    /// A photograph on the sheet.
    Photo,
    /// The logo at its head.
    Logo,
}

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
    /// To save this project in it, whatever stands there.
    Save(ToSave),
    /// The same, though the file is read-only.
    SaveReadOnly(ToSave),
    /// The same in the file that it came from, if that still holds this project.
    SaveOver(ToSave, Box<Project>),
    /// The same as the making goes on, step by step.
    Keep(ToSave, Box<Project>),
    /// To see whether it still holds this project, which is that of this document.
    Compare(Revision, Box<Project>),
    /// To write the sheet of this project in it, in the form its ending asks for.
    Sheet(Box<SheetToWrite>),
    /// To put the picture in it on the sheet.
    OwnPicture(OwnPictureUse),
    /// To say what has changed since the published project in it.
    Published(Box<Project>),
    /// To draw this body in it.
    Body(Box<BodyFile>),
    /// To print these pages of the lesson in it.
    Lesson(Box<LessonPrint>),
    /// To save this course in it, to be changed.
    SaveCourse(&'static str),
    /// To teach the course in it.
    Course,
    /// The same as another, if nothing stands there yet: for paths that are typed.
    IfFree(Box<Self>),
}

impl Purpose {
    /// Whether the file is read, not written.
    pub fn reads(&self) -> bool {
        matches!(
            self,
            Self::Open
                | Self::Pattern
                | Self::Picture
                | Self::Shape
                | Self::Course
                | Self::OwnPicture(_)
                | Self::Published(_)
                | Self::Compare(..)
        )
    }

    /// Whether a project is saved.
    pub(crate) fn saves(&self) -> bool {
        match self {
            Self::Save(_) | Self::SaveReadOnly(_) | Self::SaveOver(..) | Self::Keep(..) => true,
            Self::IfFree(purpose) => purpose.saves(),
            _ => false,
        }
    }

    /// How names of such files end, if nothing else is said.
    pub(crate) fn ending(&self) -> &'static str {
        match self {
            Self::Sheet(sheet) => sheet.form.ending(),
            Self::Lesson(_) => "pdf",
            Self::Pattern | Self::SavePattern(_) => "txt",
            Self::Picture | Self::OwnPicture(_) | Self::Shape | Self::Body(_) => "png",
            Self::IfFree(purpose) => purpose.ending(),
            Self::Open
            | Self::Published(_)
            | Self::SaveCourse(_)
            | Self::Course
            | Self::Save(_)
            | Self::SaveReadOnly(_)
            | Self::SaveOver(..)
            | Self::Keep(..)
            | Self::Compare(..) => "ron",
        }
    }

    /// How names of the files end that may be wanted.
    pub(crate) fn endings(&self) -> Vec<&'static str> {
        match self {
            Self::Picture => picture::ENDINGS.to_vec(),
            Self::Shape => [&picture::ENDINGS[..], &ShapeKind::PROFILES[..]].concat(),
            Self::Pattern => pattern_file::ENDINGS.to_vec(),
            Self::IfFree(purpose) => purpose.endings(),
            _ => vec![self.ending()],
        }
    }

    /// What is being done while it is carried out.
    pub(crate) fn doing(&self) -> &'static str {
        match self {
            Self::Open => say!("doing-opening-a-project"),
            Self::Pattern => say!("doing-reading-a-pattern"),
            Self::Picture | Self::OwnPicture(_) | Self::Shape => say!("doing-reading-a-file"),
            Self::Published(_) => say!("doing-comparing-the-versions"),
            Self::SavePattern(_) => say!("doing-saving-the-text"),
            Self::Compare(..) => say!("doing-looking-at-the-file"),
            Self::Sheet(..) => say!("doing-writing-the-sheet"),
            Self::Body(_) => say!("doing-drawing-the-body"),
            Self::Lesson(_) => say!("doing-printing-the-lesson"),
            Self::SaveCourse(_) => say!("doing-saving-the-course"),
            Self::Course => say!("doing-reading-a-course"),
            Self::IfFree(purpose) => purpose.doing(),
            Self::Save(_) | Self::SaveReadOnly(_) | Self::SaveOver(..) | Self::Keep(..) => {
                say!("doing-saving-the-project")
            }
        }
    }
}

/// How it went.
#[derive(Debug)]
pub enum Outcome {
    /// A project was read.
    Opened(PathBuf, Box<Project>),
    /// A picture of so many pixels was chosen.
    Picture(PathBuf, (u32, u32)),
    /// A picture for the sheet was chosen.
    OwnPicture(PathBuf, OwnPictureUse),
    /// What has changed since the version in this file.
    Changes(PathBuf, Changes),
    /// A file with a shape in it was chosen.
    Shape(PathBuf),
    /// The project of this document was saved, and what became of its pictures.
    Saved(PathBuf, Revision, Box<Project>, Carried),
    /// The project of this document was saved as the making went on.
    Kept(PathBuf, Revision, Box<Project>),
    /// It could not be, and why in one line.
    NotKept(String),
    /// Somebody else has written in the file, and nothing was changed: what was to be saved,
    /// and the project that stands there now, if it is one.
    Changed(PathBuf, ToSave, Option<Box<Project>>),
    /// The file is read-only, and nothing was changed: what was to be saved.
    ReadOnly(PathBuf, ToSave),
    /// Something stands there already, and nothing was changed: what was to be done.
    Taken(PathBuf, Purpose),
    /// Somebody else has written in the file of this document.
    ChangedMeanwhile(Revision),
    /// The file of this document is no longer there.
    Gone(Revision),
    /// A written pattern was read.
    Read(String),
    /// Something was written: what it is called.
    Wrote(MessageKey, PathBuf),
    /// A course was read.
    Course(Box<LessonCourse>),
    /// This written pattern was saved.
    SavedPattern(PathBuf, String),
    /// Nothing was chosen, or nothing is to be told.
    Cancelled,
    /// No dialog could be shown; the path has to be typed.
    NoDialog(Purpose),
    /// It failed, and why in one line.
    Failed(String),
}
