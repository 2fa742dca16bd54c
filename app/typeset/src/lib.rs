//! Sheets as pages: a [`Sheet`] typeset to PDF or to pictures of its pages.
//!
//! ```text
//! Sheet ──► data (JSON, pictures) ──► template (assets/sheet.typ) ──► Pages ──► PDF, RGBA, PNG
//! ```
//!
//! 1. `fonts`: the faces, embedded, and which characters they have;
//! 2. `data`: the sheet as data: what a person typed is never markup, so nothing in a
//!    project can run or read a file; `packing` shares charts out over the width of a page, `photos` the designer's pictures;
//!    `lesson`: the pages of a lesson as data, by a template of their own;
//! 3. `raster`: the stuffed body as pixels;
//! 4. `world`: all that the typesetter can see: the template, that data, those pictures;
//! 5. [`Press`] keeps what is slow to make from one sheet to the next; [`Pages`] is what it
//!    gives.
//!
//! Nothing here draws on a clock, the network or the file system.

mod data;
mod fonts;
mod lesson;
mod packing;
mod pages;
mod photos;
mod pictures;
mod press;
mod raster;
mod settable;
mod world;

pub use fonts::covered;
pub use pages::{PagePicture, Pages};
pub use press::Press;

use plumpline_core::sheet::Sheet;

/// Size of the paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Paper {
    /// 210 × 297 mm.
    #[default]
    A4,
    /// 8.5 × 11 in.
    Letter,
}

/// How many columns rounds are set in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Columns {
    /// One, with pictures beside it.
    #[default]
    One,
    /// Two, with pictures after them: fewer pages.
    Two,
}

/// How a sheet is laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Options {
    /// Size of the paper.
    pub paper: Paper,
    /// Columns of rounds.
    pub columns: Columns,
}

/// Why a sheet could not be typeset, in one line.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the sheet could not be typeset: {what}; {mend}")]
pub struct Error {
    what: String,
    mend: &'static str,
}

impl Error {
    /// An error of the typesetter, for which nothing better is known.
    pub(crate) fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), mend: "leave out what was added last" }
    }

    /// That there is more than pages are made of in a few seconds and half a gigabyte.
    pub(crate) fn too_much(what: impl Into<String>) -> Self {
        Self { what: what.into(), mend: "write it as .html or .txt, or in several projects" }
    }
}

/// What the fallible functions of this crate return.
pub type Result<T> = std::result::Result<T, Error>;

/// The sheet as a PDF file: tagged, with its fonts, its title and its language. Whoever
/// makes several keeps a [`Press`].
///
/// # Errors
/// Where the typesetter gives up; for no sheet known.
pub fn pdf(sheet: &Sheet, options: Options) -> Result<Vec<u8>> {
    Press::new().pages(sheet, options)?.pdf()
}

/// Page `index` (from 0) of the sheet as a PNG file, `scale` pixels a point (1/72 in).
///
/// # Errors
/// As [`pdf`], and where there is no such page.
pub fn page_png(sheet: &Sheet, options: Options, index: usize, scale: f32) -> Result<Vec<u8>> {
    Press::new().pages(sheet, options)?.png(index, scale)
}
