//! The world as the typesetter sees it: a template, data and pictures. There is nothing else
//! in it: no folder, no package, no date.

use std::collections::BTreeMap;
use std::path::PathBuf;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, World};

/// Name of the template, and of its data beside it.
pub(crate) const TEMPLATE: &str = "/sheet.typ";
pub(crate) const DATA: &str = "/sheet.json";

/// Name of the lesson's template, and of its data beside it.
pub(crate) const LESSON_TEMPLATE: &str = "/lesson.typ";
pub(crate) const LESSON_DATA: &str = "/lesson.json";

/// The id of a file of that world.
///
/// # Panics
/// Never for the names made in this crate, which are plain.
pub(crate) fn id(name: &str) -> FileId {
    let path = VirtualPath::new(name).expect("names of the sheet's files are plain paths");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

/// What does not change from sheet to sheet.
#[derive(Debug)]
pub(crate) struct Shop {
    pub(crate) library: LazyHash<Library>,
    pub(crate) book: LazyHash<FontBook>,
    pub(crate) faces: Vec<Font>,
    pub(crate) template: Source,
    pub(crate) lesson: Source,
}

/// The world of one sheet, or of a lesson.
pub(crate) struct Job<'a> {
    pub(crate) shop: &'a Shop,
    /// Which of the shop's templates it is set by.
    pub(crate) template: &'a Source,
    pub(crate) files: BTreeMap<String, Bytes>,
}

impl World for Job<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.shop.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.shop.book
    }

    fn main(&self) -> FileId {
        self.template.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.template.id() {
            return Ok(self.template.clone());
        }
        Err(FileError::NotFound(PathBuf::from(id.get().vpath().get_with_slash())))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let name = id.get().vpath().get_with_slash();
        let in_project = *id.get().root() == VirtualRoot::Project;
        self.files
            .get(name)
            .filter(|_| in_project)
            .cloned()
            .ok_or_else(|| FileError::NotFound(PathBuf::from(name)))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.shop.faces.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
