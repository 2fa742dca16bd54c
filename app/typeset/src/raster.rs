//! The stuffed body as pixels, fine enough for print.

use std::collections::VecDeque;
use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::sync::{Mutex, PoisonError};

use plumpline_core::sheet::Pictures;
use typst::foundations::Bytes;

use crate::{Error, Result};

/// Bodies kept.
const KEPT: usize = 64;
/// Room around a body, pixels.
const MARGIN: f32 = 3.0;

/// A body as a PNG file.
#[derive(Debug, Clone)]
pub(crate) struct BodyPicture {
    pub(crate) png: Bytes,
    /// Width and height on paper at the scale asked for, mm of the body itself.
    pub(crate) size_mm: [f32; 2],
}

/// Bodies drawn lately, by what they show.
#[derive(Debug, Default)]
pub(crate) struct BodyCache(Mutex<VecDeque<(u64, BodyPicture)>>);

impl BodyCache {
    /// The body at `scale` pixels a millimetre.
    pub(crate) fn picture(&self, pictures: &Pictures, scale: f32) -> Result<BodyPicture> {
        let key = fingerprint(pictures, scale);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, picture)) = kept.iter().find(|(k, _)| *k == key) {
            return Ok(picture.clone());
        }
        let picture = drawn(pictures, scale)?;
        kept.push_back((key, picture.clone()));
        if kept.len() > KEPT {
            kept.pop_front();
        }
        Ok(picture)
    }
}

fn fingerprint(pictures: &Pictures, scale: f32) -> u64 {
    let mut hasher = DefaultHasher::new();
    pictures.body.hash(&mut hasher);
    pictures.colours.hash(&mut hasher);
    scale.to_bits().hash(&mut hasher);
    hasher.finish()
}

fn drawn(pictures: &Pictures, scale: f32) -> Result<BodyPicture> {
    let error = |e: plumpline_core::Error| Error::new(e.to_string());
    let still = pictures.body_still(scale, MARGIN).map_err(error)?;
    let png = still.small_png().map_err(error)?;
    let size_mm = still.size.map(|pixels| pixels as f32 / scale);
    Ok(BodyPicture { png: Bytes::new(png), size_mm })
}
