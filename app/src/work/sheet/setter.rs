//! The work of setting sheets.

use std::path::PathBuf;
use std::sync::Arc;

use egui::{Color32, ColorImage};
use plumpline_core::Project;
use plumpline_core::sheet::{Sheet, sheet_with};

use crate::view::sheet::SheetLook;
use crate::work::faces::PageMaker;
use crate::work::own_pictures::OwnPictures;
use crate::work::worker::{Newest, Voice, Worker};

/// A sheet to set.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SheetWish {
    pub(super) project: Project,
    /// The folder that names of its pictures count from.
    pub(super) folder: Option<PathBuf>,
    pub(super) look: SheetLook,
    /// Pixels a point of paper.
    pub(super) scale: f32,
}

/// What has come of one.
#[derive(Debug)]
pub(super) enum SheetNews {
    /// It cannot be set, and why.
    Failed { why: String },
    /// It is set: its content, the sizes of its pages, and what is to be told: the characters
    /// no face has, pictures that cannot be read.
    Set { sheet: Arc<Sheet>, sizes_pt: Vec<[f32; 2]>, told: Vec<String> },
    /// One of its pages is drawn.
    Page { index: usize, image: ColorImage },
}

/// The thread that sets sheets; it keeps its press from sheet to sheet.
pub(super) fn worker() -> Worker<Newest<SheetWish>, SheetNews> {
    Worker::new("sheet", || {
        let mut press = PageMaker::default();
        let mut own = OwnPictures::default();
        move |wish: SheetWish, voice: &Voice<'_, Newest<SheetWish>, SheetNews>| {
            set(&mut press, &mut own, wish, voice)
        }
    })
}

/// Sets a sheet and draws it page by page, until something newer waits.
fn set(
    press: &mut PageMaker,
    own: &mut OwnPictures,
    wish: SheetWish,
    voice: &Voice<'_, Newest<SheetWish>, SheetNews>,
) {
    let SheetWish { project, folder, look, scale } = wish;
    let gathered = sheet_with(&project, look.single).map_err(|e| e.to_string());
    let set = gathered.and_then(|mut sheet| {
        let told = own.put_in(&mut sheet, &project.sheet, folder.as_deref());
        let pages = press.pages(&sheet, look.options).map_err(|e| e.to_string())?;
        Ok((sheet, pages, told))
    });
    let (sheet, pages, mut told) = match set {
        Ok(set) => set,
        Err(why) => return voice.say(SheetNews::Failed { why }),
    };
    let sizes_pt = (0..pages.count()).filter_map(|i| pages.size_pt(i)).collect();
    told.extend(pages.replaced().map(str::to_owned));
    voice.say(SheetNews::Set { sheet: Arc::new(sheet), sizes_pt, told });
    for index in 0..pages.count() {
        if voice.is_vain() {
            return;
        }
        let image = match pages.picture(index, scale) {
            // A page is opaque, so its pixels are the same however opacity is reckoned.
            Ok(page) => ColorImage::from_rgba_premultiplied(
                [page.width as usize, page.height as usize],
                &page.rgba,
            ),
            // One that is too large to be drawn stays blank; it can still be printed.
            Err(_) => ColorImage::filled([1, 1], Color32::WHITE),
        };
        voice.say(SheetNews::Page { index, image });
    }
}
