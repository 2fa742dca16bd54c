//! The sheet as a file, in the form that its name's ending asks for.

use std::path::Path;

use plumpline_core::sheet::{self, BlurbForm, ScriptPace, Sheet};
use plumpline_typeset::Options;

use super::faces::PageMaker;

/// Pixels a point of a page's picture: 200 to the inch.
const FINE: f32 = 200.0 / 72.0;

/// The form of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Pages to print.
    Pdf,
    /// The picture of one page.
    Png,
    /// A page for a browser.
    Html,
    /// Markdown.
    Markdown,
    /// Plain text.
    Text,
    /// The spoken script as captions, SubRip.
    Srt,
    /// The spoken script as captions, WebVTT.
    Vtt,
}

impl Form {
    /// How names of its files end.
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Png => "png",
            Self::Html => "html",
            Self::Markdown => "md",
            Self::Text => "txt",
            Self::Srt => "srt",
            Self::Vtt => "vtt",
        }
    }

    /// The form that the ending of `path` asks for.
    ///
    /// # Errors
    /// One line, for any other ending.
    pub fn of(path: &Path) -> Result<Self, String> {
        let ending = path.extension().and_then(|e| e.to_str()).map(str::to_lowercase);
        match ending.as_deref() {
            Some("pdf") => Ok(Self::Pdf),
            Some("png") => Ok(Self::Png),
            Some("html" | "htm") => Ok(Self::Html),
            Some("md") => Ok(Self::Markdown),
            Some("txt") => Ok(Self::Text),
            Some("srt") => Ok(Self::Srt),
            Some("vtt") => Ok(Self::Vtt),
            _ => Err(say!("sheet-ending-not-known", file = path.display().to_string())),
        }
    }

    /// Whether it holds what is said, in time.
    pub fn is_captions(self) -> bool {
        matches!(self, Self::Srt | Self::Vtt)
    }

    /// The spoken script of `sheet` in this form.
    ///
    /// # Errors
    /// One line, for a form that holds no script.
    pub fn script(self, sheet: &Sheet, pace: ScriptPace) -> Result<Vec<u8>, String> {
        let script = &sheet.script;
        match self {
            Self::Text => Ok(sheet::script(script, pace).into_bytes()),
            Self::Srt => Ok(sheet::captions_srt(script, pace).into_bytes()),
            Self::Vtt => Ok(sheet::captions_vtt(script, pace).into_bytes()),
            _ => Err(say!("script-is-a-text").into()),
        }
    }

    /// What a shop says of `sheet` in this form.
    ///
    /// # Errors
    /// One line, for a form that is no text.
    pub fn blurb(self, sheet: &Sheet) -> Result<Vec<u8>, String> {
        match self {
            Self::Text => Ok(sheet::blurb(sheet, BlurbForm::Plain).into_bytes()),
            Self::Markdown => Ok(sheet::blurb(sheet, BlurbForm::Markdown).into_bytes()),
            _ => Err(say!("blurb-is-a-text").into()),
        }
    }

    /// The file of `sheet` in this form, and which characters no face has, if any; `page`,
    /// from 1, is the one a picture shows.
    ///
    /// # Errors
    /// One line: where the typesetter gives up, or there is no such page.
    pub fn file(
        self,
        sheet: &Sheet,
        options: Options,
        page: usize,
    ) -> Result<(Vec<u8>, Option<String>), String> {
        match self {
            Self::Text => Ok((sheet::text_of(sheet).into_bytes(), None)),
            Self::Markdown => Ok((sheet::markdown_of(sheet).into_bytes(), None)),
            Self::Srt | Self::Vtt => {
                self.script(sheet, ScriptPace::Said).map(|file| (file, None))
            }
            Self::Html => Ok((sheet::html_of(sheet).into_bytes(), None)),
            Self::Pdf | Self::Png => {
                let pages =
                    PageMaker::default().pages(sheet, options).map_err(|e| e.to_string())?;
                let last = pages.count();
                let file = match self {
                    Self::Pdf => pages.pdf(),
                    _ if !(1..=last).contains(&page) => {
                        return Err(say!("sheet-no-such-page", page = page, last = last));
                    }
                    _ => pages.png(page - 1, FINE),
                };
                let replaced = pages.replaced().map(str::to_owned);
                file.map(|file| (file, replaced)).map_err(|e| e.to_string())
            }
        }
    }
}
