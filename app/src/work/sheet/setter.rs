//! The work of setting sheets.

use std::sync::Arc;

use egui::{Color32, ColorImage};
use plumpline_core::Project;
use plumpline_core::sheet::{Sheet, sheet_with};
use plumpline_typeset::Press;

use crate::view::sheet::SheetLook;
use crate::work::worker::{Newest, Voice, Worker};

/// A sheet to set.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SheetWish {
    pub(super) project: Project,
    pub(super) look: SheetLook,
    /// Pixels a point of paper.
    pub(super) scale: f32,
}

/// What has come of one.
#[derive(Debug)]
pub(super) enum SheetNews {
    /// It cannot be set, and why.
    Failed { why: String },
    /// It is set: its content, the sizes of its pages, the characters no face has.
    Set { sheet: Arc<Sheet>, sizes_pt: Vec<[f32; 2]>, replaced: Option<String> },
    /// One of its pages is drawn.
    Page { index: usize, image: ColorImage },
}

/// The thread that sets sheets; it keeps its press from sheet to sheet.
pub(super) fn worker() -> Worker<Newest<SheetWish>, SheetNews> {
    Worker::new("sheet", || {
        let press = Press::new();
        move |wish: SheetWish, voice: &Voice<'_, Newest<SheetWish>, SheetNews>| {
            set(&press, wish, voice)
        }
    })
}

/// Sets a sheet and draws it page by page, until something newer waits.
fn set(press: &Press, wish: SheetWish, voice: &Voice<'_, Newest<SheetWish>, SheetNews>) {
    let SheetWish { project, look, scale } = wish;
    let set = sheet_with(&project, look.single).map_err(|e| e.to_string()).and_then(|sheet| {
        let pages = press.pages(&sheet, look.options).map_err(|e| e.to_string())?;
        Ok((sheet, pages))
    });
    let (sheet, pages) = match set {
        Ok(set) => set,
        Err(why) => return voice.say(SheetNews::Failed { why }),
    };
    let sizes_pt = (0..pages.count()).filter_map(|i| pages.size_pt(i)).collect();
    let replaced = pages.replaced().map(str::to_owned);
    voice.say(SheetNews::Set { sheet: Arc::new(sheet), sizes_pt, replaced });
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
