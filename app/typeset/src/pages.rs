//! Pages, set and ready to be shown or written.

use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use typst_render::RenderOptions;

use crate::{Error, Result};

/// Most pixels of a page's picture: beyond this it takes more memory than a page is worth.
const MOST_PIXELS: f64 = 100_000_000.0;

/// The pages of one sheet.
#[derive(Debug, Clone)]
pub struct Pages {
    document: PagedDocument,
    replaced: Option<String>,
}

/// A page as pixels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PagePicture {
    /// Pixels from left to right.
    pub width: u32,
    /// Pixels from top to bottom.
    pub height: u32,
    /// Red, green, blue and opacity of each, row by row; a page is opaque throughout.
    pub rgba: Vec<u8>,
}

impl Pages {
    pub(crate) fn new(document: PagedDocument, replaced: Option<String>) -> Self {
        Self { document, replaced }
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.document.pages().len()
    }

    /// Which characters no face has, in a sentence; none where all were set. The last page
    /// says so too.
    pub fn replaced(&self) -> Option<&str> {
        self.replaced.as_deref()
    }

    /// Width and height of page `index` (from 0), points (1/72 in).
    pub fn size_pt(&self, index: usize) -> Option<[f32; 2]> {
        let size = self.document.pages().get(index)?.frame.size();
        Some([size.x.to_pt() as f32, size.y.to_pt() as f32])
    }

    /// Page `index` (from 0) at `scale` pixels a point.
    ///
    /// # Errors
    /// Where there is no such page, or it would be too large.
    pub fn picture(&self, index: usize, scale: f32) -> Result<PagePicture> {
        let pixels = self.rendered(index, scale)?;
        Ok(PagePicture { width: pixels.width(), height: pixels.height(), rgba: pixels.take() })
    }

    /// Page `index` (from 0) at `scale` pixels a point, as a PNG file.
    ///
    /// # Errors
    /// As [`Self::picture`].
    pub fn png(&self, index: usize, scale: f32) -> Result<Vec<u8>> {
        self.rendered(index, scale)?.encode_png().map_err(|e| Error::new(e.to_string()))
    }

    fn rendered(&self, index: usize, scale: f32) -> Result<resvg::tiny_skia::Pixmap> {
        let page = self.document.pages().get(index).ok_or_else(|| {
            Error::new(format!("there is no page {}, the last is {}", index + 1, self.count()))
        })?;
        let size = page.frame.size();
        let pixels = size.x.to_pt() * size.y.to_pt() * f64::from(scale).powi(2);
        if !(scale > 0.0 && pixels <= MOST_PIXELS) {
            return Err(Error::new(format!("{scale} pixels a point is out of range")));
        }
        let options =
            RenderOptions { pixel_per_pt: f64::from(scale).into(), ..RenderOptions::default() };
        Ok(typst_render::render(page, &options))
    }

    /// All pages as one PDF file, tagged for screen readers (PDF/UA-1 where the sheet allows
    /// it).
    ///
    /// # Errors
    /// Where the file cannot be made; for no sheet known.
    pub fn pdf(&self) -> Result<Vec<u8>> {
        let creator = typst::foundations::Smart::Custom(Some("Plumpline".to_owned()));
        let plain = PdfOptions { creator, ..PdfOptions::default() };
        if let Ok(standards) = PdfStandards::new(&[PdfStandard::Ua_1]) {
            let creator = plain.creator.clone();
            let accessible = PdfOptions { creator, standards, ..PdfOptions::default() };
            if let Ok(file) = typst_pdf::pdf(&self.document, &accessible) {
                return Ok(file);
            }
        }
        typst_pdf::pdf(&self.document, &plain).map_err(|trouble| {
            let first = trouble.first().map(|t| t.message.to_string());
            Error::new(first.unwrap_or_else(|| "no reason was given".into()))
        })
    }
}
