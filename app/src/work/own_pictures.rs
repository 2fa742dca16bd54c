//! The designer's own pictures on a sheet: their files read, reduced to what paper shows, and
//! kept for the next time the sheet is set.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use plumpline_core::disk;
use plumpline_core::project::sheet_design::{LONGEST_CAPTION, SheetDesign};
use plumpline_core::sheet::{Sheet, SheetPhoto};
use plumpline_trace::picture;

use super::picture::{found, line};

/// Longest side of a photograph where there are few, and the least however many there are,
/// pixels: 200 to the inch over the width of a page, 150 over a third of it.
const LONGEST: f64 = 1400.0;
const LEAST: f64 = 520.0;
/// Photographs that are printed at their full size; more share what those take in a file.
const FULL: f64 = 4.0;
/// Longest side of a logo, pixels.
const LOGO: u32 = 480;

/// A file and when it was written, as the pictures made of it are remembered.
type ReadAs = (PathBuf, Option<SystemTime>, u32);

/// Pictures that were read, kept while the sheet shows them.
#[derive(Debug, Default)]
pub(crate) struct OwnPictures {
    read: HashMap<ReadAs, SheetPhoto>,
}

impl OwnPictures {
    /// Puts the pictures of `design` into `sheet`; names of their files count from `folder`.
    /// Returns a line for each that cannot be read: the sheet goes without it.
    pub(crate) fn put_in(
        &mut self,
        sheet: &mut Sheet,
        design: &SheetDesign,
        folder: Option<&Path>,
    ) -> Vec<String> {
        let share = (FULL / design.photos.len().max(1) as f64).min(1.0).sqrt();
        let longest = (LONGEST * share).max(LEAST) as u32;
        let mut told = Vec::new();
        let mut kept = HashMap::new();
        let mut take = |path: &str, longest: u32, caption: &str| {
            let path = found(Path::new(path), folder);
            let written = path.metadata().and_then(|about| about.modified()).ok();
            let key = (path.clone(), written, longest);
            let known = kept.get(&key).or_else(|| self.read.get(&key)).cloned();
            let photo = known.map_or_else(|| read(&path, longest), Ok);
            match photo {
                Ok(photo) => {
                    kept.insert(key, photo.clone());
                    let caption: String =
                        caption.trim().chars().take(LONGEST_CAPTION).collect();
                    Some(SheetPhoto { caption, ..photo })
                }
                Err(why) => {
                    told.push(why);
                    None
                }
            }
        };
        sheet.logo = design.logo.as_ref().and_then(|path| take(path, LOGO, ""));
        let photos = design.photos.iter();
        sheet.photos =
            photos.filter_map(|photo| take(&photo.path, longest, &photo.caption)).collect();
        self.read = kept;
        told
    }
}

fn read(path: &Path, longest: u32) -> Result<SheetPhoto, String> {
    let bytes = disk::read(path, disk::LARGEST_PICTURE).map_err(|e| e.to_string())?;
    let file = picture::to_print(&bytes, longest).map_err(|e| line(path, &e.what, &e.mend))?;
    Ok(SheetPhoto { caption: String::new(), bytes: file.bytes.into(), size: file.size })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use plumpline_core::project::sheet_design::OwnPhoto;
    use plumpline_core::sheet;

    fn saved(folder: &Path, name: &str, wide: u32, tall: u32) -> PathBuf {
        let path = folder.join(name);
        let noise = |x: u32, y: u32| (x.wrapping_mul(31) ^ y.wrapping_mul(57)) as u8;
        let image = image::RgbImage::from_fn(wide, tall, |x, y| {
            image::Rgb([noise(x, y), (x % 256) as u8, (y % 256) as u8])
        });
        image.save(&path).expect("a picture is written");
        path
    }

    #[test]
    fn photographs_are_read_reduced_and_remembered() {
        let folder = tempfile::tempdir().expect("a folder");
        saved(folder.path(), "cover.png", 3000, 2000);
        let logo = image::RgbaImage::from_pixel(600, 300, image::Rgba([9, 9, 9, 0]));
        logo.save(folder.path().join("logo.png")).expect("written");
        let mut project = Document::blank().project().clone();
        let photo = |name: &str| OwnPhoto { path: name.into(), caption: " Under ".into() };
        project.sheet.logo = Some("logo.png".into());
        project.sheet.photos = vec![photo("cover.png"), photo("gone.jpg")];
        let mut sheet = sheet::sheet(&project).expect("a sheet");
        let mut own = OwnPictures::default();
        let told = own.put_in(&mut sheet, &project.sheet, Some(folder.path()));
        assert!(told.len() == 1 && told[0].contains("gone.jpg"), "{told:?}");
        assert_eq!(told[0].lines().count(), 1);
        let [cover] = sheet.photos.as_slice() else { panic!("one could be read") };
        assert_eq!((cover.size, cover.caption.as_str()), ([1400, 933], "Under"));
        assert!(!cover.is_png() && cover.bytes.len() < 1 << 20);
        let logo = sheet.logo.clone().expect("a logo");
        assert!(logo.is_png() && logo.size == [480, 240], "what is clear stays clear");
        let first = cover.bytes.clone();
        own.put_in(&mut sheet, &project.sheet, Some(folder.path()));
        assert!(std::sync::Arc::ptr_eq(&first, &sheet.photos[0].bytes), "it is read once");
    }
}
