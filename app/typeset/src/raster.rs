//! The stuffed body and the whole toy as pixels, fine enough for print.

use std::collections::VecDeque;
use std::hash::{DefaultHasher, Hash, Hasher as _};
use std::sync::{Mutex, PoisonError};

use plumpline_core::picture::relief::Still;
use plumpline_core::sheet::{CalledView, Pictures, ToyPictures};
use typst::foundations::Bytes;

use crate::{Error, Result};

/// Pictures kept.
const KEPT: usize = 160;
/// Room around a body, pixels.
const MARGIN: f32 = 3.0;

/// A picture as a file.
#[derive(Debug, Clone)]
pub(crate) struct BodyPicture {
    pub(crate) file: Bytes,
    /// Width and height on paper at the scale asked for, mm of what it shows.
    pub(crate) size_mm: [f32; 2],
}

/// Pictures drawn lately, by what they show.
#[derive(Debug, Default)]
pub(crate) struct BodyCache(Mutex<VecDeque<(u64, BodyPicture)>>);

impl BodyCache {
    /// The body at `scale` pixels a millimetre.
    pub(crate) fn picture(&self, pictures: &Pictures, scale: f32) -> Result<BodyPicture> {
        let of = (&pictures.body, &pictures.colours, scale.to_bits());
        self.kept(of, || {
            let still = pictures.body_still(scale, MARGIN).map_err(error)?;
            of_still(&still, scale)
        })
    }

    /// The whole toy, at `fine` pixels a millimetre of paper in a field so large, mm; once step
    /// `step` is done, from 0, or finished.
    pub(crate) fn toy(
        &self,
        toy: &ToyPictures,
        step: Option<usize>,
        (field, fine): ([f32; 2], f32),
    ) -> Result<BodyPicture> {
        let of = (toy, step, field.map(f32::to_bits), fine.to_bits());
        self.kept(of, || {
            let pixels = field.map(|mm| (mm * fine).round() as u32);
            let still = match step {
                Some(step) => toy.step(step, pixels),
                None => toy.cover(pixels),
            };
            of_still(&still.map_err(error)?, fine)
        })
    }

    /// A view of the toy with the names of its parts, as an SVG file.
    pub(crate) fn called(
        &self,
        toy: &ToyPictures,
        view: CalledView,
        (field, fine): ([f32; 2], f32),
        described: &str,
    ) -> Result<Bytes> {
        let of = (toy, view, field.map(f32::to_bits), fine.to_bits());
        let picture = self.kept(of, || {
            let svg = toy.called_svg(view, (field, fine), described, "").map_err(error)?;
            Ok(BodyPicture { file: Bytes::from_string(svg), size_mm: field })
        })?;
        Ok(picture.file)
    }

    /// What was drawn of it lately, or what `draw` makes.
    fn kept(
        &self,
        of: impl Hash,
        draw: impl FnOnce() -> Result<BodyPicture>,
    ) -> Result<BodyPicture> {
        let mut hasher = DefaultHasher::new();
        of.hash(&mut hasher);
        let key = hasher.finish();
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, picture)) = kept.iter().find(|(k, _)| *k == key) {
            return Ok(picture.clone());
        }
        let picture = draw()?;
        kept.push_back((key, picture.clone()));
        if kept.len() > KEPT {
            kept.pop_front();
        }
        Ok(picture)
    }
}

fn error(e: plumpline_core::Error) -> Error {
    Error::new(e.to_string())
}

fn of_still(still: &Still, scale: f32) -> Result<BodyPicture> {
    let png = still.small_png().map_err(error)?;
    let size_mm = still.size.map(|pixels| pixels as f32 / scale);
    Ok(BodyPicture { file: Bytes::new(png), size_mm })
}
