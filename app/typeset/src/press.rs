//! The press: what is slow to make, kept from one sheet to the next.

use std::collections::{BTreeMap, BTreeSet};

use plumpline_core::lesson::course::{LessonPage, TeacherPage};
use plumpline_core::project::sheet_design::SheetSection;
use plumpline_core::sheet::Sheet;
use typst::foundations::Bytes;
use typst::syntax::Source;
use typst::utils::LazyHash;
use typst::{Library, LibraryExt as _};
use typst_layout::PagedDocument;

use crate::data::SheetFiles;
use crate::fonts::Fonts;
use crate::lesson::lesson_files;
use crate::pages::Pages;
use crate::raster::BodyCache;
use crate::world::{Job, LESSON_TEMPLATE, Shop, TEMPLATE, id};
use crate::{Error, Options, Paper, Result};

/// How many sheets ago a part of a layout may last have been used and still be kept.
const KEPT: usize = 4;

/// Sets sheets. Keep one: faces, template, pictures and parts of earlier pages are reused, so
/// that setting a sheet again after a change is quick. It may be used from any thread.
#[derive(Debug)]
pub struct Press {
    shop: Shop,
    fonts: Fonts,
    bodies: BodyCache,
}

impl Default for Press {
    fn default() -> Self {
        Self::new()
    }
}

impl Press {
    /// A press with its faces.
    pub fn new() -> Self {
        let fonts = Fonts::embedded();
        let template = include_str!("../assets/sheet.typ").to_owned();
        let lesson = include_str!("../assets/lesson.typ").to_owned();
        let shop = Shop {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(fonts.book.clone()),
            faces: fonts.faces.clone(),
            template: Source::new(id(TEMPLATE), template),
            lesson: Source::new(id(LESSON_TEMPLATE), lesson),
        };
        Self { shop, fonts, bodies: BodyCache::default() }
    }

    /// Characters of `sheet` that no face has.
    pub fn missing(&self, sheet: &Sheet) -> BTreeSet<char> {
        crate::data::missing(sheet, &self.fonts).characters()
    }

    /// Adds faces for what ours have not, each as its file and its place in it. They stand
    /// behind ours: no character that could be set before is set otherwise.
    pub fn add_faces(&mut self, files: Vec<(Vec<u8>, u32)>) {
        self.fonts.add(files);
        self.shop.book = LazyHash::new(self.fonts.book.clone());
        self.shop.faces = self.fonts.faces.clone();
    }

    /// Drops what is remembered of earlier layouts, in every press.
    pub fn forget() {
        typst::comemo::evict(0);
    }

    /// The pages of `sheet`.
    ///
    /// # Errors
    /// Where the typesetter gives up; for no sheet known.
    pub fn pages(&self, sheet: &Sheet, options: Options) -> Result<Pages> {
        let SheetFiles { files, replaced } =
            SheetFiles::of(sheet, options, &self.fonts, &self.bodies)?;
        self.set(&self.shop.template, files, replaced)
    }

    /// The form for testers of `sheet` by itself.
    ///
    /// # Errors
    /// As [`Self::pages`].
    pub fn tester_form(&self, sheet: &Sheet, options: Options) -> Result<Pages> {
        let form = Sheet { sections: vec![SheetSection::Tester], ..sheet.clone() };
        self.pages(&form, options)
    }

    /// The pages of a lesson: for each step a sheet whose back has its answer, then the guide
    /// for who teaches it.
    ///
    /// # Errors
    /// Where the typesetter gives up; for no lesson known.
    pub fn lesson(
        &self,
        steps: &[LessonPage],
        guides: &[TeacherPage],
        paper: Paper,
    ) -> Result<Pages> {
        let (files, replaced) = lesson_files(steps, guides, paper, &self.fonts)?;
        self.set(&self.shop.lesson, files, replaced)
    }

    fn set(
        &self,
        template: &Source,
        files: BTreeMap<String, Bytes>,
        replaced: Option<String>,
    ) -> Result<Pages> {
        let job = Job { shop: &self.shop, template, files };
        let set = typst::compile::<PagedDocument>(&job);
        let document = set.output.map_err(|trouble| {
            let first = trouble.first().map(|t| t.message.to_string());
            Error::new(first.unwrap_or_else(|| "no reason was given".into()))
        })?;
        typst::comemo::evict(KEPT);
        Ok(Pages::new(document, replaced))
    }
}
