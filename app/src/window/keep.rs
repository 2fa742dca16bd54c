//! Every step is on the disk before the next.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::Project;

use super::studio::Studio;
use crate::document::Revision;
use crate::work::files::{Purpose, ToSave};

impl Studio {
    /// Puts a step on the disk at once: in the project's own file where nothing else of it
    /// is unsaved, else in the recovery copy. So nothing is lost between two clicks.
    pub(super) fn keep_making(&mut self, ctx: &Context) {
        if !self.handiwork.due {
            return;
        }
        if !self.document.is_changed() {
            self.handiwork.due = false;
            return;
        }
        let path = self.document.path().map(Path::to_owned);
        match path.filter(|_| self.document.only_making_changed()) {
            Some(path) if !self.files.is_busy() => {
                let project = Box::new(self.document.project().clone());
                let known = Box::new(self.document.known().clone());
                let wish = ToSave { of: self.document.id(), project, from: Some(path.clone()) };
                let purpose = Purpose::Keep(wish, known);
                self.files.with_path(ctx, purpose, path);
                self.handiwork.due = false;
            }
            // The file's turn comes when the job under way is done.
            Some(_) => self.home.hurry(),
            None => {
                self.home.hurry();
                self.handiwork.due = false;
            }
        }
    }

    /// The project stands in its file as it was when this began.
    pub(super) fn kept(&mut self, path: PathBuf, of: Revision, project: Project) {
        // Another project may have been begun meanwhile.
        if self.document.id() == of {
            self.document.saved_as(project, path);
            self.handiwork.failed = false;
            self.handiwork.due |= self.document.is_changed();
        }
    }

    /// The project could not be saved in its file: the recovery copy has to do.
    pub(super) fn not_kept(&mut self, why: String) {
        self.handiwork.failed = true;
        self.say(why, true);
        self.home.hurry();
    }
}
