//! Words of a PDF: what its pages print, read off where the letters lie.

use anyhow::{anyhow, bail};
use hayro_interpret::font::Glyph;
use hayro_interpret::hayro_cmap::BfString;
use hayro_interpret::hayro_syntax::{LoadPdfError, Pdf};
use hayro_interpret::{
    BlendMode, ClipPath, Context, Device, GlyphDrawMode, Image, InterpreterCache,
    InterpreterSettings, Paint, PathDrawMode, SoftMask, interpret_page,
};
use kurbo::{Affine, BezPath, Point, Rect};

use plumpline_core::disk::LARGEST_PATTERN;

/// Longer documents are no patterns, in pages.
const MOST_PAGES: usize = 200;

/// The words of the document, a line a printed line.
///
/// # Errors
/// In one line: it is locked, broken, too long, or shows pictures alone.
pub(super) fn text(bytes: &[u8]) -> anyhow::Result<String> {
    let document = Pdf::new(bytes.to_vec()).map_err(|error| match error {
        LoadPdfError::Decryption(_) => {
            anyhow!(say!("pdf-is-locked"))
        }
        LoadPdfError::Invalid => anyhow!(say!("pdf-is-broken")),
    })?;
    let pages = document.pages();
    if pages.len() > MOST_PAGES {
        bail!(say!("pdf-has-too-many-pages", pages = pages.len()));
    }
    let settings = InterpreterSettings { render_annotations: false, ..Default::default() };
    let cache = InterpreterCache::new();
    let mut print = Print::default();
    for page in pages.iter() {
        let (width, height) = page.render_dimensions();
        let bounds = Rect::new(0.0, 0.0, f64::from(width), f64::from(height));
        let mut context =
            Context::new(Affine::IDENTITY, bounds, &cache, document.xref(), settings.clone());
        interpret_page(page, &mut context, &mut print);
        print.end_page();
    }
    if !print.text.contains(char::is_alphanumeric) {
        bail!(say!("pdf-holds-no-text"));
    }
    Ok(print.text)
}

/// Where a letter ended.
#[derive(Debug, Clone, Copy)]
struct LetterEnd {
    at: Point,
    size: f64,
}

/// Letters as they are drawn, put together to lines.
#[derive(Debug, Default)]
struct Print {
    text: String,
    pen: Option<LetterEnd>,
}

impl Print {
    fn end_page(&mut self) {
        self.pen = None;
        self.end_line();
    }

    fn end_line(&mut self) {
        let kept = self.text.trim_end_matches(' ').len();
        self.text.truncate(kept);
        if !self.text.is_empty() {
            self.text.push('\n');
        }
    }

    /// A letter at `at`, `advance` wide, of type `size` high.
    fn letter(&mut self, letter: &str, at: Point, advance: f64, size: f64) {
        if self.text.len() as u64 > LARGEST_PATTERN || !at.x.is_finite() || !at.y.is_finite() {
            return;
        }
        if let Some(pen) = self.pen {
            let scale = pen.size.max(size).max(0.1);
            let (right, up) = ((at.x - pen.at.x) / scale, (at.y - pen.at.y) / scale);
            let blank = self.text.ends_with([' ', '\n']) || letter.starts_with(' ');
            if up.abs() > 0.45 || right < -2.0 {
                self.end_line();
                // A paragraph stands apart.
                if up.abs() > 2.2 && up.abs() < 20.0 && !self.text.ends_with("\n\n") {
                    self.text.push('\n');
                }
            } else if right > 0.18 && !blank {
                self.text.push(' ');
            }
        }
        self.text.push_str(letter);
        self.pen = Some(LetterEnd { at: Point::new(at.x + advance, at.y), size });
    }
}

impl<'a> Device<'a> for Print {
    fn draw_glyph(
        &mut self,
        glyph: &Glyph<'a>,
        transform: Affine,
        glyph_transform: Affine,
        _: &Paint<'a>,
        _: &GlyphDrawMode,
    ) {
        let whole = transform * glyph_transform;
        let at = whole * Point::ZERO;
        // Letters are drawn in thousandths of their size.
        let up = whole * Point::new(0.0, 1000.0) - at;
        let size = up.hypot();
        let advance = match glyph {
            Glyph::Outline(outline) => {
                outline.advance_width().map_or(0.5, |w| f64::from(w) / 1000.0)
            }
            Glyph::Type3(_) => 0.5,
        };
        let advance = advance * size;
        match glyph.as_unicode() {
            Some(BfString::Char(c)) if !c.is_control() => {
                self.letter(c.encode_utf8(&mut [0; 4]), at, advance, size);
            }
            Some(BfString::String(s)) => {
                let s: String = s.chars().filter(|c| !c.is_control()).collect();
                self.letter(&s, at, advance, size);
            }
            _ => self.letter("\u{fffd}", at, advance, size),
        }
    }

    fn set_soft_mask(&mut self, _: Option<SoftMask<'a>>) {}
    fn set_blend_mode(&mut self, _: BlendMode) {}
    fn draw_path(&mut self, _: &BezPath, _: Affine, _: &Paint<'a>, _: &PathDrawMode) {}
    fn push_clip_path(&mut self, _: &ClipPath) {}
    fn push_transparency_group(&mut self, _: f32, _: Option<SoftMask<'a>>, _: BlendMode) {}
    fn draw_image(&mut self, _: Image<'a, '_>, _: Affine) {}
    fn pop_clip_path(&mut self) {}
    fn pop_transparency_group(&mut self) {}
}
