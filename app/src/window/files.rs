//! The studio's way with files: opening and saving, the questions before, the news after.

use std::path::{Path, PathBuf};

use egui::{Context, ViewportCommand};
use plumpline_core::disk;

use super::ask::{Answer, Ask, Next};
use super::studio::Studio;
use crate::document::Document;
use crate::view::Stage;
use crate::work::files::{Outcome, Purpose};
use crate::work::picture;
use crate::work::proofread::Proofread;

impl Studio {
    pub(super) fn save_sheet(&mut self, ctx: &Context, frame: &eframe::Frame) {
        let project = Box::new(self.document.project().clone());
        let path = self.suggested("pdf");
        let purpose = Purpose::Sheet(project, self.view.sheet.look);
        self.jobs.ask(ctx, frame, purpose, &path);
    }

    /// A path to offer: where the project is, with this extension.
    pub(super) fn suggested(&self, extension: &str) -> PathBuf {
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
        if self.document.is_changed() || self.proofreading.is_unkept() {
            self.ask = Some(Ask::Unsaved(next));
        } else {
            self.go_on(ctx, frame, next);
        }
    }

    fn go_on(&mut self, ctx: &Context, frame: &eframe::Frame, next: Next) {
        match next {
            Next::Begin(project) => self.take(Document::new(*project, None)),
            Next::Recover => self.recover(),
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
    pub(super) fn take(&mut self, document: Document) {
        self.start = None;
        self.document = document;
        self.derived.forget();
        self.handiwork.forget();
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
            Outcome::Opened(path, project) => {
                self.home.remember(|desk| desk.worked_on(&path));
                let beside =
                    disk::read_text(&beside(&path), disk::LARGEST_PATTERN).unwrap_or_default();
                self.proofreading.apply(ctx, Proofread::Kept(beside));
                self.take(Document::new(*project, Some(path)));
            }
            Outcome::Picture(path, size) => self.take_picture(&path, size),
            Outcome::Saved(path, project) => {
                self.home.remember(|desk| desk.worked_on(&path));
                let beside = beside(&path);
                self.document.saved_as(*project, path);
                self.view.notice = None;
                self.keep_pattern(&beside);
                if let Some(next) = self.next.take() {
                    self.go(ctx, frame, next);
                }
            }
            Outcome::Kept(path, project) => self.kept(path, *project),
            Outcome::NotKept(why) => self.not_kept(why),
            Outcome::Wrote(path) => {
                self.say(format!("The sheet is saved in {}.", path.display()), false);
            }
            Outcome::SavedPattern(path, text) => {
                self.proofreading.kept(text);
                self.say(format!("The text is saved in {}.", path.display()), false);
            }
            Outcome::Read(text) => {
                self.view.stage = Stage::Proofread;
                self.proofreading.apply(ctx, Proofread::Text(text));
            }
            Outcome::Cancelled => self.next = None,
            Outcome::NoDialog(purpose) => {
                let extension = match purpose {
                    Purpose::Sheet(..) => "pdf",
                    Purpose::Pattern | Purpose::SavePattern(_) => "txt",
                    Purpose::Open | Purpose::Save(_) | Purpose::Keep(_) => "ron",
                    Purpose::Picture => "png",
                };
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

    /// Saves the written pattern beside the project, where it has one.
    fn keep_pattern(&mut self, path: &Path) {
        let text = self.proofreading.text().to_owned();
        if text.trim().is_empty() && !path.exists() {
            return;
        }
        match disk::write(path, text.as_bytes()) {
            Ok(()) => self.proofreading.kept(text),
            Err(error) => self.say(error.to_string(), true),
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
            // What is no project is a pattern to check, where patterns are checked.
            let project = path.extension().is_some_and(|e| e.eq_ignore_ascii_case("ron"));
            if self.view.stage == Stage::Proofread && !project {
                self.jobs.with_path(ctx, Purpose::Pattern, path);
            } else if picture::is_picture(&path) {
                self.jobs.with_path(ctx, Purpose::Picture, path);
            } else {
                match refused(&path) {
                    None => self.go(ctx, frame, Next::OpenPath(path)),
                    Some(why) => self.say(why, true),
                }
            }
        }
        let close = ctx.input(|i| i.viewport().close_requested());
        let unsaved = self.document.is_changed() || self.proofreading.is_unkept();
        if close && !self.closing && unsaved {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.ask = Some(Ask::Unsaved(Next::Close));
        }
    }
}

/// Where the written pattern of the project at `path` is kept.
fn beside(path: &Path) -> PathBuf {
    path.with_extension("pattern.txt")
}

/// Why a file that was dropped is no project, judged by its name.
fn refused(path: &Path) -> Option<String> {
    if path.extension().is_some_and(|e| e.eq_ignore_ascii_case("ron")) && !path.is_dir() {
        return None;
    }
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    Some(format!("{name}: it is no Plumpline project; drop a file that ends in .ron"))
}
