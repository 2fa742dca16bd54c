//! The picture to trace, chosen and laid under the outline.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::piece::Picture;

use super::studio::Studio;
use crate::document::edit::Edit;
use crate::document::shaping::{Reach, whole};
use crate::view::apply;
use crate::work::files::Purpose;
use crate::work::picture::line;

impl Studio {
    /// Asks for a picture to trace.
    pub(super) fn choose_picture(&mut self, ctx: &Context, frame: &eframe::Frame) {
        let near = self.document.path().map_or_else(PathBuf::new, Path::to_owned);
        self.files.ask(ctx, frame, Purpose::Picture, &near);
    }

    /// Asks for a file with a shape in it.
    pub(super) fn choose_shape(&mut self, ctx: &Context, frame: &eframe::Frame) {
        let near = self.document.path().map_or_else(PathBuf::new, Path::to_owned);
        self.files.ask(ctx, frame, Purpose::Shape, &near);
    }

    /// Shows the start card at the shape in this file.
    pub(super) fn begin_with(&mut self, path: PathBuf) {
        self.view.over = None;
        self.start.get_or_insert_default().take_file(path);
    }

    /// Lays a picture of so many pixels under the outline, as high as that is. One that
    /// takes the place of another lies where that lay.
    pub(super) fn take_picture(&mut self, path: &Path, (width, height): (u32, u32)) {
        let Some(name) = path.to_str() else {
            let what = line(
                path,
                say!("start-its-name-is-not-readable-text"),
                say!("start-rename-it"),
            );
            return self.say(what, true);
        };
        let piece = self.document.piece();
        let picture = match &piece.picture {
            Some(old) => Picture { path: name.into(), hidden: false, ..old.clone() },
            None => {
                let reach = Reach::of(&piece.outline);
                let wide =
                    reach.height().max(1.0) * f64::from(width) / f64::from(height.max(1));
                let middle = 0.5 * (reach.low + reach.high);
                Picture::new(name, (0.0, whole(middle)), whole(wide))
            }
        };
        apply::edit(&mut self.document, &mut self.view, Edit::Picture(Some(picture)));
        self.view.board.picture = true;
        self.view.select_knots(&[]);
        self.view.selected = None;
        self.view.notice = None;
    }
}
