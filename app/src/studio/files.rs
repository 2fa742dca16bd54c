//! The studio's way with files: opening and saving, the questions before, the news after.

use std::path::PathBuf;

use egui::{Context, ViewportCommand};
use plumpline_core::sheet;

use super::app::Studio;
use super::ask::{Answer, Ask, Next};
use super::document::Document;
use super::jobs::{Outcome, Purpose};
use super::picture;

impl Studio {
    pub(super) fn save_sheet(&mut self, ctx: &Context, frame: &eframe::Frame) {
        let project = self.document.project();
        match (sheet::text(project), sheet::markdown(project)) {
            (Ok(text), Ok(markdown)) => {
                let path = self.suggested("txt");
                self.jobs.ask(ctx, frame, Purpose::Sheet { text, markdown }, &path);
            }
            (Err(error), _) | (_, Err(error)) => self.say(error.to_string(), true),
        }
    }

    /// A path to offer: where the project is, with this extension.
    fn suggested(&self, extension: &str) -> PathBuf {
        match self.document.path() {
            Some(path) => path.with_extension(extension),
            None => {
                let plain = |c: char| if c.is_alphanumeric() { c } else { '-' };
                let title = self.document.project().title.to_lowercase();
                let name: String = title.trim().chars().map(plain).collect();
                PathBuf::from(format!("{name}.{extension}"))
            }
        }
    }

    pub(super) fn save(&mut self, ctx: &Context, frame: &eframe::Frame, elsewhere: bool) {
        self.document.commit();
        let purpose = Purpose::Save(Box::new(self.document.project().clone()));
        match self.document.path() {
            Some(path) if !elsewhere => {
                let path = path.to_owned();
                self.jobs.with_path(ctx, purpose, path);
            }
            _ => {
                let path = self.suggested("ron");
                self.jobs.ask(ctx, frame, purpose, &path);
            }
        }
    }

    /// Goes on to something that gives the project up, after asking about its changes.
    pub(super) fn go(&mut self, ctx: &Context, frame: &eframe::Frame, next: Next) {
        if self.document.is_changed() {
            self.ask = Some(Ask::Unsaved(next));
        } else {
            self.go_on(ctx, frame, next);
        }
    }

    fn go_on(&mut self, ctx: &Context, frame: &eframe::Frame, next: Next) {
        match next {
            Next::New => self.take(Document::blank()),
            Next::Open => {
                let path = self.suggested("ron");
                self.jobs.ask(ctx, frame, Purpose::Open, &path);
            }
            Next::OpenPath(path) => self.jobs.with_path(ctx, Purpose::Open, path),
            Next::Close => {
                self.closing = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    /// Takes another document in hand.
    fn take(&mut self, document: Document) {
        self.document = document;
        self.derived.forget();
        self.view.let_go();
        self.view.notice = None;
    }

    pub(super) fn answer(&mut self, ctx: &Context, frame: &eframe::Frame, answer: Answer) {
        self.ask = None;
        match answer {
            Answer::SaveFirst(next) => {
                self.next = Some(next);
                self.save(ctx, frame, false);
            }
            Answer::Discard(next) => self.go_on(ctx, frame, next),
            Answer::Path(purpose, path) => self.jobs.with_path(ctx, purpose, path),
            Answer::Cancel => self.next = None,
        }
    }

    fn outcome(&mut self, ctx: &Context, frame: &eframe::Frame, outcome: Outcome) {
        match outcome {
            Outcome::Opened(path, project) => self.take(Document::new(*project, Some(path))),
            Outcome::Picture(path, size) => self.take_picture(&path, size),
            Outcome::Saved(path, project) => {
                self.document.saved_as(*project, path);
                self.view.notice = None;
                if let Some(next) = self.next.take() {
                    self.go(ctx, frame, next);
                }
            }
            Outcome::Wrote(path) => {
                self.say(format!("The pattern is saved in {}.", path.display()), false);
            }
            Outcome::Cancelled => self.next = None,
            Outcome::NoDialog(purpose) => {
                let extension =
                    if matches!(purpose, Purpose::Sheet { .. }) { "txt" } else { "ron" };
                let text = std::path::absolute(self.suggested(extension))
                    .map_or_else(|_| String::new(), |p| p.display().to_string());
                self.ask = Some(Ask::Path { purpose, text });
            }
            Outcome::Failed(why) => {
                self.next = None;
                self.say(why, true);
            }
        }
    }

    /// Files dropped on the window, a close that was asked for, jobs that are done.
    pub(super) fn receive(&mut self, ctx: &Context, frame: &eframe::Frame) {
        if let Some(outcome) = self.jobs.poll() {
            self.outcome(ctx, frame, outcome);
        }
        let dropped = ctx.input(|i| i.raw.dropped_files.first().map(|f| f.path().to_owned()));
        if let Some(path) = dropped
            && !self.jobs.busy()
        {
            if picture::is_picture(&path) {
                self.jobs.with_path(ctx, Purpose::Picture, path);
            } else {
                self.go(ctx, frame, Next::OpenPath(path));
            }
        }
        let close = ctx.input(|i| i.viewport().close_requested());
        if close && !self.closing && self.document.is_changed() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.ask = Some(Ask::Unsaved(Next::Close));
        }
    }
}
