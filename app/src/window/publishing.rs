//! The Sheet stage's way with files: the sheet in its forms, pictures for it, what has changed
//! since it was published.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::project::sheet_design::{OwnPhoto, SheetDesign, SheetSection};
use plumpline_core::sheet::Changes;

use super::studio::Studio;
use crate::bench::command::SheetCommand;
use crate::document::edit::Edit;
use crate::view::apply;
use crate::work::files::{OwnPictureUse, Purpose, SheetToWrite};
use crate::work::picture::line;
use crate::work::sheet_file::Form;
use crate::work::worker::Ticket;

impl Studio {
    /// Does what a command of the Sheet stage asks for.
    pub(super) fn sheet_command(
        &mut self,
        ctx: &Context,
        frame: &eframe::Frame,
        command: SheetCommand,
    ) {
        match command {
            SheetCommand::WebPage => self.save_sheet(ctx, frame, Form::Html),
            SheetCommand::Text => self.save_sheet(ctx, frame, Form::Text),
            SheetCommand::Picture => self.save_sheet(ctx, frame, Form::Png),
            SheetCommand::Print => {
                let path = match self.home.to_print() {
                    Ok(path) => path,
                    Err(error) => return self.say(error.to_string(), true),
                };
                let wish = Purpose::Sheet(Box::new(self.sheet_to_write(Form::Pdf)));
                self.to_open = Some(self.files.with_path(ctx, wish, path));
            }
            SheetCommand::OpenIt => {
                if let Some(path) = self.printing.written().map(Path::to_owned) {
                    self.open_with_system(&path);
                }
            }
            SheetCommand::AddPhoto => self.own_picture(ctx, frame, OwnPictureUse::Photo),
            SheetCommand::ChooseLogo => self.own_picture(ctx, frame, OwnPictureUse::Logo),
            SheetCommand::Compare => {
                let wish = Purpose::Published(Box::new(self.document.project().clone()));
                let near = self.near();
                self.files.ask(ctx, frame, wish, &near);
            }
            SheetCommand::CopyChanges => {
                if let Some((_, changes)) = self.printing.changes() {
                    ctx.copy_text(changes.text());
                    self.say(say!("told-the-changes-are-copied"), false);
                }
            }
            SheetCommand::PutChanges => {
                if let Some((_, changes)) = self.printing.changes() {
                    let text = changes.text();
                    self.arrange(|design| {
                        design.changes = text;
                        design.show(SheetSection::Changes, true);
                    });
                }
            }
        }
    }

    /// Asks where the sheet is to be written in this form, and writes it.
    pub(super) fn save_sheet(&mut self, ctx: &Context, frame: &eframe::Frame, form: Form) {
        let path = self.suggested(form.ending());
        let wish = Purpose::Sheet(Box::new(self.sheet_to_write(form)));
        self.files.ask(ctx, frame, wish, &path);
    }

    fn sheet_to_write(&self, form: Form) -> SheetToWrite {
        SheetToWrite {
            project: self.document.project().clone(),
            look: self.view.sheet.look,
            folder: self.document.path().and_then(Path::parent).map(Path::to_owned),
            form,
        }
    }

    /// The sheet was written at `path`: it is shown where that was wanted.
    pub(super) fn wrote_sheet(&mut self, ticket: Ticket, path: PathBuf) {
        if self.to_open.take_if(|of| *of == ticket).is_some() {
            return self.open_with_system(&path);
        }
        self.say(
            say!("told-saved", what = say!("file-sheet"), path = path.display().to_string()),
            false,
        );
        self.printing.wrote(path);
    }

    /// Has the system show a file, in whatever program the person has for such files.
    fn open_with_system(&mut self, path: &Path) {
        if let Err(error) = open::that_detached(path) {
            let what =
                say!("told-the-system-opens-it-with-nothing-error", error = error.to_string());
            self.say(line(path, &what, say!("told-open-it-from-its-folder")), true);
        }
    }

    /// Where the project is.
    fn near(&self) -> PathBuf {
        self.document.path().map_or_else(PathBuf::new, Path::to_owned)
    }

    fn own_picture(&mut self, ctx: &Context, frame: &eframe::Frame, of: OwnPictureUse) {
        let near = self.near();
        self.files.ask(ctx, frame, Purpose::OwnPicture(of), &near);
    }

    /// Puts the picture at `path` on the sheet.
    pub(super) fn take_own_picture(&mut self, path: &Path, of: OwnPictureUse) {
        let Some(name) = path.to_str().map(str::to_owned) else {
            let what = line(
                path,
                say!("start-its-name-is-not-readable-text"),
                say!("start-rename-it"),
            );
            return self.say(what, true);
        };
        self.arrange(|design| match of {
            OwnPictureUse::Logo => design.logo = Some(name),
            OwnPictureUse::Photo => {
                design.photos.push(OwnPhoto { path: name, caption: String::new() });
            }
        });
    }

    /// The project was compared with the published one in the file at `path`.
    pub(super) fn compared(&mut self, path: &Path, changes: Changes) {
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        self.printing.compared(Some((name, changes)));
    }

    /// Arranges the sheet otherwise, in a step.
    fn arrange(&mut self, change: impl FnOnce(&mut SheetDesign)) {
        let mut design = self.document.project().sheet.clone();
        change(&mut design);
        apply::edit(
            &mut self.document,
            &mut self.view,
            Edit::SheetDesign { design, typed: false },
        );
    }
}
