//! The studio's way with files: opening and saving, the questions before, the news after.

use std::path::{Path, PathBuf};

use egui::{Context, ViewportCommand};
use plumpline_core::disk;

use super::ask::{FileUse, Hindrance, Hurdle, Next, Question, Reply};
use super::studio::Studio;
use crate::document::Document;
use crate::view::tracing::TraceView;
use crate::view::{Over, Stage};
use crate::work::body_file::BodyFile;
use crate::work::files::{Outcome, Purpose, ToSave};
use crate::work::picture;
use crate::work::proofread::Proofread;
use crate::work::shape_file::ShapeKind;
use crate::work::worker::Ticket;
use plumpline_core::Project;

impl Studio {
    /// Asks where the picture of the body is to be written, and writes it.
    pub(super) fn save_body(&mut self, ctx: &Context, frame: &eframe::Frame, turns: bool) {
        let picture = BodyFile {
            piece: self.document.piece().clone(),
            colours: self.document.project().colours(),
            faces: self.document.project().faces(),
            turned: self.view.turned,
            turns,
        };
        let path = self.suggested("png");
        self.files.ask(ctx, frame, Purpose::Body(Box::new(picture)), &path);
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

    /// Saves the project; returns the wish's number.
    pub(super) fn save(
        &mut self,
        ctx: &Context,
        frame: &eframe::Frame,
        elsewhere: bool,
    ) -> Ticket {
        self.document.commit();
        let wish = ToSave {
            of: self.document.id(),
            project: Box::new(self.document.project().clone()),
            from: self.document.path().map(Path::to_owned),
        };
        match wish.from.clone() {
            Some(path) if !elsewhere => {
                let known = Box::new(self.document.known().clone());
                self.files.with_path(ctx, Purpose::SaveOver(wish, known), path)
            }
            _ => {
                let path = self.suggested("ron");
                self.files.ask(ctx, frame, Purpose::Save(wish), &path)
            }
        }
    }

    /// Puts a question, after those that are still to be answered.
    pub(super) fn question(&mut self, ask: Question) {
        if !self.asks.contains(&ask) {
            self.asks.push_back(ask);
        }
    }

    /// Goes on to something that gives the project up, after asking about its changes.
    pub(super) fn go(&mut self, ctx: &Context, frame: &eframe::Frame, next: Next) {
        if self.document.is_changed() || self.proofreading.is_unkept() {
            self.question(Question::Unsaved(next));
        } else {
            self.go_on(ctx, frame, next);
        }
    }

    fn go_on(&mut self, ctx: &Context, frame: &eframe::Frame, next: Next) {
        match next {
            Next::Begin(project) => {
                let traced = project.pieces.iter().any(|piece| piece.picture.is_some());
                self.take(Document::new(*project, None));
                if traced {
                    self.view.tracing = TraceView::default();
                    self.view.over = Some(Over::Trace);
                }
            }
            Next::Recover => self.recover(),
            Next::Open => {
                self.given_up = Some(self.document.revision());
                let path = self.suggested("ron");
                self.files.ask(ctx, frame, Purpose::Open, &path);
            }
            Next::OpenPath(path) => {
                self.given_up = Some(self.document.revision());
                self.files.with_path(ctx, Purpose::Open, path);
            }
            Next::Take(path, project) => self.opened(ctx, path, *project),
            Next::Close => {
                self.closing = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    /// Opens another document.
    pub(super) fn take(&mut self, document: Document) {
        self.start = None;
        self.document = document;
        self.derived.forget();
        self.handiwork.forget();
        self.view.let_go();
        self.view.hidden.clear();
        self.view.notice = None;
    }

    /// A project was read: it takes the place of the one there is.
    fn opened(&mut self, ctx: &Context, path: PathBuf, project: Project) {
        self.home.remember(|desk| desk.worked_on(&path));
        self.take_pattern(ctx, &beside(&path));
        let works_on = self.take_up.take().is_some_and(|to| to == path);
        self.take(Document::new(project, Some(path)));
        if works_on {
            self.view.turn_to(Stage::Make);
        }
    }

    /// Takes the written pattern that is kept at `path` beside a project, none where there is
    /// none, with what was said of it.
    pub(super) fn take_pattern(&mut self, ctx: &Context, path: &Path) {
        let text = disk::read_text(path, disk::LARGEST_PATTERN).unwrap_or_default();
        let said = disk::read_text(&said_in(path), disk::LARGEST_PATTERN);
        let sayings = said.ok().and_then(|s| ron::from_str(&s).ok()).unwrap_or_default();
        self.proofreading.apply(ctx, Proofread::Kept(text, sayings));
    }

    /// Does what the answer to the first question asks for.
    pub(super) fn answer(&mut self, ctx: &Context, frame: &eframe::Frame, answer: Reply) {
        self.asks.pop_front();
        match answer {
            Reply::SaveFirst(next) => {
                let ticket = self.save(ctx, frame, false);
                self.then.insert(ticket, next);
            }
            Reply::Discard(next) => self.go_on(ctx, frame, next),
            Reply::Path(wanted, path) => {
                let typed = path.display().to_string();
                // A desktop's dialog asks before a file is replaced; a typed path is asked
                // about here.
                let purpose = match wanted.purpose.reads() {
                    true => wanted.purpose.clone(),
                    false => Purpose::IfFree(Box::new(wanted.purpose.clone())),
                };
                let ticket = self.with_file(ctx, path, purpose, wanted.then.clone());
                self.typed.insert(ticket, (wanted, typed));
            }
            Reply::Replace(path, FileUse { purpose, then }) => {
                self.with_file(ctx, path, purpose, then);
            }
            Reply::Another(path, wanted) => {
                self.question(Question::Path(wanted, path.display().to_string(), None));
            }
            Reply::Overwrite(hurdle) => {
                let Hurdle { path, mine, why, then, .. } = *hurdle;
                let purpose = match why {
                    Hindrance::ReadOnly => Purpose::SaveReadOnly(mine),
                    Hindrance::Changed(_) => Purpose::Save(mine),
                };
                self.with_file(ctx, path, purpose, then);
            }
            Reply::Beside(hurdle) => {
                let Hurdle { beside, mine, then, .. } = *hurdle;
                self.with_file(ctx, beside, Purpose::Save(mine), then);
            }
            Reply::Theirs(hurdle) => {
                let Hurdle { path, why, then, .. } = *hurdle;
                if let Hindrance::Changed(Some(theirs)) = why {
                    self.opened(ctx, path, *theirs);
                    if let Some(next) = then {
                        self.go(ctx, frame, next);
                    }
                }
            }
            Reply::Cancel => {}
        }
    }

    /// Does with the file what it is wanted for; `then` goes on once that is done.
    fn with_file(
        &mut self,
        ctx: &Context,
        path: PathBuf,
        purpose: Purpose,
        then: Option<Next>,
    ) -> Ticket {
        let ticket = self.files.with_path(ctx, purpose, path);
        if let Some(next) = then {
            self.then.insert(ticket, next);
        }
        ticket
    }

    /// What has come of a wish that has to do with files.
    fn outcome(
        &mut self,
        ctx: &Context,
        frame: &eframe::Frame,
        ticket: Ticket,
        outcome: Outcome,
    ) {
        // What waits for a save goes on when that is done, and never otherwise.
        let then = self.then.remove(&ticket);
        let typed = self.typed.remove(&ticket);
        match outcome {
            Outcome::Opened(path, project) => {
                // What was changed while the file was looked for was not given up.
                if self.document.is_changed() && self.given_up != Some(self.document.revision())
                {
                    self.question(Question::Unsaved(Next::Take(path, project)));
                } else {
                    self.opened(ctx, path, *project);
                }
            }
            Outcome::Picture(path, size) => self.take_picture(&path, size),
            Outcome::OwnPicture(path, of) => self.take_own_picture(&path, of),
            Outcome::Changes(path, changes) => self.compared(&path, changes),
            Outcome::Shape(path) => self.begin_with(path),
            Outcome::Saved(path, of, project, carried) => {
                self.home.remember(|desk| desk.worked_on(&path));
                // Another project may have been opened meanwhile.
                if self.document.id() == of {
                    let beside = beside(&path);
                    self.document.rename_pictures(&carried.renamed);
                    self.document.saved_as(*project, path);
                    self.view.notice = None;
                    if !carried.told.is_empty() {
                        self.say(carried.told.join(" "), false);
                    }
                    self.keep_pattern(&beside);
                }
                if let Some(next) = then {
                    self.go(ctx, frame, next);
                }
            }
            Outcome::Kept(path, of, project) => self.kept(path, of, *project),
            Outcome::NotKept(why) => self.not_kept(why),
            Outcome::Changed(path, mine, theirs) => {
                self.hinder(path, mine, Hindrance::Changed(theirs), then);
            }
            Outcome::ReadOnly(path, mine) => {
                self.hinder(path, mine, Hindrance::ReadOnly, then);
            }
            Outcome::Taken(path, purpose) => {
                self.question(Question::Taken(path, FileUse { purpose, then }));
            }
            Outcome::ChangedMeanwhile(of) => {
                self.say_of_file(of, |file| say!("told-changed-elsewhere", file = file));
            }
            Outcome::Gone(of) => {
                self.say_of_file(of, |file| say!("told-gone", file = file));
            }
            Outcome::Wrote(message!("file-sheet"), path) => self.wrote_sheet(ticket, path),
            Outcome::Wrote(what, path) => {
                self.say(
                    say!("told-saved", what = what.text(), path = path.display().to_string()),
                    false,
                );
            }
            Outcome::Course(course) => self.teach(*course),
            Outcome::SavedPattern(path, text) => {
                self.proofreading.kept(text);
                self.say(say!("told-text-saved", path = path.display().to_string()), false);
            }
            Outcome::Read(text) => {
                self.view.stage = Stage::Proofread;
                self.proofreading.apply(ctx, Proofread::Opened(text));
            }
            Outcome::Cancelled => {}
            Outcome::NoDialog(purpose) => self.ask_path(purpose, then),
            Outcome::Failed(why) => match typed {
                // The path stays to be mended, and its letters never reach the bench.
                Some((wanted, text)) => {
                    self.question(Question::Path(wanted, text, Some(why)));
                }
                None => self.say(why, true),
            },
        }
    }

    /// Saves the written pattern beside the project, where it has one.
    fn keep_pattern(&mut self, path: &Path) {
        let text = self.proofreading.text().to_owned();
        if text.trim().is_empty() && !path.exists() {
            return;
        }
        let sayings = self.proofreading.sayings();
        let said = ron::ser::to_string_pretty(sayings, ron::ser::PrettyConfig::default());
        let beside = said_in(path);
        let none = sayings.is_empty() && !beside.exists();
        let written = disk::write(path, text.as_bytes()).and_then(|()| match said {
            Ok(said) if !none => disk::write(&beside, said.as_bytes()),
            _ => Ok(()),
        });
        match written {
            Ok(()) => self.proofreading.kept(text),
            Err(error) => self.say(error.to_string(), true),
        }
    }

    /// Asks for a path where the desktop shows no dialog; `then` goes on once it is saved.
    fn ask_path(&mut self, purpose: Purpose, then: Option<Next>) {
        let text = std::path::absolute(self.suggested(purpose.ending()))
            .map_or_else(|_| String::new(), |p| p.display().to_string());
        self.question(Question::Path(FileUse { purpose, then }, text, None));
    }

    /// Files dropped on the window, a close that was asked for, jobs that are done.
    pub(super) fn receive(&mut self, ctx: &Context, frame: &eframe::Frame) {
        self.compare_with_file(ctx);
        while let Some((ticket, outcome)) = self.files.hear() {
            self.outcome(ctx, frame, ticket, outcome);
        }
        let dropped = ctx.input(|i| i.raw.dropped_files.first().map(|f| f.path().to_owned()));
        if let Some(path) = dropped {
            self.dropped(ctx, frame, path);
        }
        let close = ctx.input(|i| i.viewport().close_requested());
        let unsaved = self.document.is_changed() || self.proofreading.is_unkept();
        if close && !self.closing && !self.ending.is_asked() && unsaved {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.question(Question::Unsaved(Next::Close));
        }
    }

    /// A file was dropped on the window.
    fn dropped(&mut self, ctx: &Context, frame: &eframe::Frame, path: PathBuf) {
        // What is no project is a pattern to check, where patterns are checked.
        let project = path.extension().is_some_and(|e| e.eq_ignore_ascii_case("ron"));
        if self.view.stage == Stage::Proofread && !project {
            self.files.with_path(ctx, Purpose::Pattern, path);
        } else if ShapeKind::is_profile(&path)
            || (self.start.is_some() && picture::is_picture(&path))
        {
            self.begin_with(path);
        } else if picture::is_picture(&path) {
            self.files.with_path(ctx, Purpose::Picture, path);
        } else {
            match refused(&path) {
                None => self.go(ctx, frame, Next::OpenPath(path)),
                Some(why) => self.say(why, true),
            }
        }
    }
}

/// Where the written pattern of the project at `path` is kept.
pub(super) fn beside(path: &Path) -> PathBuf {
    path.with_extension("pattern.txt")
}

/// Where it is kept what was said of the written pattern at `path`.
fn said_in(path: &Path) -> PathBuf {
    path.with_extension("sayings")
}

/// Why a file that was dropped is no project, judged by its name.
fn refused(path: &Path) -> Option<String> {
    if path.extension().is_some_and(|e| e.eq_ignore_ascii_case("ron")) && !path.is_dir() {
        return None;
    }
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    Some(say!("told-name-is-not-a-plumpline-project-drop-a", name = name))
}
