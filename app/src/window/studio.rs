//! The window: what happens in a frame, and in which order.

use std::collections::{BTreeMap, VecDeque};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use egui::{Context, Rect, Ui};

use super::ask::{self, Next, Question};
use super::browse::{self, Browsed};
use super::layout::{self, Room};
use crate::bench::action::{Action, Actions};
use crate::bench::keys;
use crate::document::{Document, Revision};
use crate::kit::words::Language;
use crate::kit::{Tokens, type_faces};
use crate::kit::{fit, letters};
use crate::stages::around::start;
use crate::stages::{shape, sheet};
use crate::view::prefs::Prefs;
use crate::view::{Notice, Over, Stage, View, apply};
use crate::work::body::BodyShown;
use crate::work::ending::Ending;
use crate::work::files::Files;
use crate::work::folders::Folders;
use crate::work::home::Home;
use crate::work::lesson::LessonShown;
use crate::work::line_up::LineUp;
use crate::work::making::Handiwork;
use crate::work::outlining::Outlining;
use crate::work::picture::Tracing;
use crate::work::plan::Derived;
use crate::work::proofread::Proofreading;
use crate::work::sheet::Printing;
use crate::work::sizes::Sizing;
use crate::work::small_pictures::SmallPictures;
use crate::work::toy::ToyShown;
use crate::work::trade::Trade;
use crate::work::watch::Watch;
use crate::work::worker::Ticket;

/// The studio's window.
#[derive(Debug)]
pub struct Studio {
    pub(super) document: Document,
    pub(super) view: View,
    pub(super) derived: Derived,
    pub(super) files: Files,
    pub(super) folders: Folders,
    pub(super) picture: Tracing,
    pub(super) outlining: Outlining,
    pub(super) trade: Trade,
    pub(super) proofreading: Proofreading,
    pub(super) handiwork: Handiwork,
    pub(super) sizing: Sizing,
    pub(super) line_up: LineUp,
    pub(super) small_pictures: SmallPictures,
    pub(super) printing: Printing,
    pub(super) body: BodyShown,
    pub(super) toy: ToyShown,
    pub(super) lesson: LessonShown,
    /// Questions to the person; the first is shown.
    pub(super) asks: VecDeque<Question>,
    /// What goes on once a wish to save is done, by its number.
    pub(super) then: BTreeMap<Ticket, Next>,
    pub(super) watch: Watch,
    /// Whether something stirred in the file that is open, and is still to be looked at.
    pub(super) stirred: bool,
    /// The state of the project that may be lost to the file that is being opened.
    pub(super) given_up: Option<Revision>,
    /// The line on what was done that stands, and since when.
    pub(super) noticed: Option<(Notice, f64)>,
    /// Wishes to read or write a file at a path that was typed, with what it is wanted for.
    pub(super) typed: BTreeMap<Ticket, (ask::FileUse, String)>,
    /// The sheet that is to be shown by the system once it is written.
    pub(super) to_open: Option<Ticket>,
    /// A project that is opened to work on where the hook was.
    pub(super) take_up: Option<PathBuf>,
    pub(super) closing: bool,
    /// Whether somebody outside asked it to end.
    pub(super) ending: Ending,
    pub(super) home: Home,
    /// The start card, while it is open.
    pub(super) start: Option<start::StartChoice>,
    /// The only clock that tells the day.
    pub(super) clock: fn() -> SystemTime,
}

/// Gives a context the studio's faces and colours.
pub fn dress(ctx: &Context) {
    ctx.set_fonts(type_faces::definitions());
    for theme in [egui::Theme::Light, egui::Theme::Dark] {
        ctx.style_mut_of(theme, |style| {
            style.visuals = Tokens::of(theme).visuals();
            style.spacing.interact_size = egui::vec2(24.0, 24.0);
            style.spacing.button_padding = egui::vec2(10.0, 4.0);
            style.spacing.menu_margin = egui::Margin::same(6);
            style.spacing.scroll = egui::style::ScrollStyle::solid();
            style.spacing.tooltip_width = 320.0;
            for (role, font) in &mut style.text_styles {
                *font = match role {
                    egui::TextStyle::Small => type_faces::regular(type_faces::SMALL),
                    egui::TextStyle::Heading => type_faces::drafting(type_faces::TITLE),
                    _ => type_faces::regular(type_faces::BODY),
                };
            }
        });
    }
    // Where the desktop does not say, it is day.
    ctx.options_mut(|o| {
        o.fallback_theme = egui::Theme::Light;
        // Text size is the studio's own to keep, within its own ends.
        o.zoom_with_keyboard = false;
    });
}

impl Studio {
    /// The studio with the project at `open`, or with the sample.
    pub fn new(cc: &eframe::CreationContext<'_>, open: Option<PathBuf>) -> Self {
        dress(&cc.egui_ctx);
        let prefs = cc.storage.map_or_else(Prefs::default, |storage| {
            let kept = eframe::get_value(storage, eframe::APP_KEY);
            kept.unwrap_or_else(|| Prefs {
                language: crate::kit::words::of_system(),
                ..Prefs::default()
            })
        });
        prefs.show(&cc.egui_ctx, 1.0);
        let mut studio = Self::with(Document::sample());
        studio.view.prefs = prefs;
        if let Some(path) = open {
            studio.open_first(&cc.egui_ctx, path);
        }
        studio
    }

    /// The studio with this document open.
    pub fn with(document: Document) -> Self {
        Self {
            document,
            view: View::default(),
            derived: Derived::default(),
            files: Files::default(),
            folders: Folders::default(),
            picture: Tracing::default(),
            outlining: Outlining::default(),
            trade: Trade::default(),
            proofreading: Proofreading::default(),
            handiwork: Handiwork::default(),
            sizing: Sizing::default(),
            line_up: LineUp::default(),
            small_pictures: SmallPictures::default(),
            printing: Printing::default(),
            body: BodyShown::default(),
            toy: ToyShown::default(),
            lesson: LessonShown::default(),
            asks: VecDeque::new(),
            then: BTreeMap::new(),
            watch: Watch::default(),
            stirred: false,
            given_up: None,
            noticed: None,
            typed: BTreeMap::new(),
            to_open: None,
            take_up: None,
            closing: false,
            ending: Ending::default(),
            home: Home::default(),
            start: None,
            clock: SystemTime::now,
        }
    }

    /// The same studio, for which it is as late as `clock` says.
    #[must_use]
    pub fn with_clock(mut self, clock: fn() -> SystemTime) -> Self {
        self.clock = clock;
        self
    }

    /// The same studio, where paths are typed, as on a desktop that shows no file dialogs;
    /// those that do not begin at the root begin in the folder `from`.
    #[must_use]
    pub fn typing_paths(mut self, from: &Path) -> Self {
        self.files.typed_from = Some(from.to_owned());
        self
    }

    /// Makes all changes that were asked for, and plans anew if the piece is another.
    fn apply(&mut self, ctx: &Context, frame: &eframe::Frame, actions: &mut Actions) {
        let list = actions.take();
        let any = !list.is_empty();
        for action in list {
            self.learn(&action);
            match action {
                Action::Command(command) => self.command(ctx, frame, command),
                Action::Edit(edit) => apply::edit(&mut self.document, &mut self.view, edit),
                Action::Begin => self.document.begin(),
                Action::Commit => self.document.commit(),
                Action::GoToStep(steps) => self.document.go_to(steps),
                Action::Desk(action) => self.desk(ctx, frame, action),
                Action::Look(look) => apply::look(&mut self.document, &mut self.view, look),
                Action::Proofread(change) => self.proofreading.apply(ctx, change),
                Action::Make(make) => self.make(ctx, make),
                Action::Lesson(act) => self.lesson_act(act),
                Action::Stop(work) => self.stop(ctx, work),
                Action::Refused(command) => self.refuse(command),
            }
        }
        if self.plan_anew() || any {
            // Panels drawn before the change show it in the next frame.
            ctx.request_repaint();
        }
        self.follow_making(ctx);
        let rounds = self.derived.plan().map_or(0, |p| p.rounds.len() as u32);
        self.view.selected = self.view.selected.filter(|&r| r <= rounds);
        let knots = self.document.piece().outline.knots.len();
        self.view.knot = self.view.knot.filter(|&k| k < knots);
        self.view.board.also.retain(|&k| k < knots);
        let toy = &self.document.project().toy;
        self.view.toy.keep_to(toy.parts.len(), toy.attachments.len());
    }

    /// Plans the piece in hand if it is another by now, and accepts its counts once the hand
    /// is done with it. Returns whether it planned.
    fn plan_anew(&mut self) -> bool {
        let mut planned = false;
        loop {
            let document = &self.document;
            let dragged = document.history.in_gesture();
            planned |= self.derived.update(document, dragged);
            if !document.awaits_counts() || self.derived.error().is_some() {
                return planned;
            }
            let Some(plan) = self.derived.plan() else { return planned };
            // What is saved has to give what is shown: it is planned as it will be opened.
            self.document.accept(plan.counts());
        }
    }

    /// Ends a drag whose end nobody saw: what was held may have gone from under the hand, with
    /// another stage or a card that closed.
    fn let_go_of_the_rest(&mut self, ctx: &Context) {
        if ctx.input(|i| i.pointer.any_down()) {
            return;
        }
        self.view.hands_off();
        self.document.commit();
        if self.plan_anew() {
            ctx.request_repaint();
        }
    }

    /// Says everything in `language` from the next frame on, as the settings card asks for it.
    pub fn speak(&mut self, language: Language) {
        self.view.prefs.language = language;
    }

    /// One frame, in this order: keys, what the hand does, all changes, the picture. So the
    /// picture always shows the piece as it is now.
    pub fn frame(&mut self, ui: &mut Ui, frame: &eframe::Frame) {
        let ctx = ui.ctx().clone();
        crate::kit::words::speak(self.view.prefs.language);
        self.receive(&ctx, frame);
        let found = self.proofreading.update();
        self.note(&ctx, found);
        let picture = self.document.piece().picture.as_ref();
        if let Some(error) = self.picture.update(&ctx, picture, self.document.path()) {
            self.say(error, true);
        }
        let mut actions = Actions::default();
        keys::read_everywhere(&ctx, &self.bench(&ctx), &mut actions);
        if self.asks.is_empty() && self.start.is_none() && self.view.over.is_none() {
            keys::read(&ctx, &self.bench(&ctx), &mut actions);
        }
        self.apply(&ctx, frame, &mut actions);
        let larger = if self.view.presents() { shape::present::LARGER } else { 1.0 };
        self.view.prefs.show(&ctx, larger);
        let window = self.above_foot(ui.max_rect());
        // What is presented makes do with the window there is.
        let least = if self.view.presents() { fit::LEAST_PRESENTED } else { fit::LEAST };
        let sees_answers = fit::fit(ui, window, least, |ui| self.draw_bench(ui, frame));
        self.show_small_window(&ctx, &mut actions);
        self.lay_over(ui, ui.max_rect(), &mut actions);
        self.apply(&ctx, frame, &mut actions);
        self.let_go_of_the_rest(&ctx);
        // A hand that still holds something is not done with the piece.
        let still = !ctx.input(|i| i.pointer.any_down()) && !self.document.history.in_gesture();
        self.work_out(&ctx, window, sees_answers, still);
        if let Some(Question::Path(_, typed, _)) = self.asks.front() {
            let folder = browse::folder_of(self.files.typed_from.as_deref(), typed);
            if self.folders.update(&ctx, &folder) {
                ctx.request_repaint();
            }
        } else {
            self.folders.rest();
        }
        let browsed =
            Browsed { from: self.files.typed_from.as_deref(), folders: &self.folders };
        if let Some(ask) = self.asks.front_mut()
            && let Some(answer) = ask::show(&ctx, ask, &self.document.project().title, browsed)
        {
            self.answer(&ctx, frame, answer);
        }
        letters::settle(&ctx);
        self.let_notice_go(&ctx);
        self.tend(&ctx);
    }
}

impl Studio {
    /// Asks for what is in sight and takes longer than a frame, and takes what has come of it.
    fn work_out(&mut self, ctx: &Context, window: Rect, sees_answers: bool, still: bool) {
        let found = self.trade.update(ctx, &self.document, sees_answers, still);
        self.note(ctx, found);
        let traced = self.view.over == Some(Over::Trace);
        let wanted = self.document.piece().picture.as_ref().filter(|_| traced);
        let wanted = wanted.map(|picture| (picture, &self.view.tracing));
        let news = self.outlining.update(ctx, wanted, self.document.path());
        self.note(ctx, Ok(news));
        if self.start.is_some() {
            let wanted = start::wanted(&self.home.desk);
            let news = self.small_pictures.update(ctx, wanted);
            self.note(ctx, Ok(news));
        } else {
            self.small_pictures.rest();
        }
        if self.view.stage == Stage::Sheet {
            let view = self.view.sheet;
            let scale = sheet::page_scale(window, view.zoom, ctx.pixels_per_point());
            let found = self.printing.update(ctx, &self.document, view.look, scale);
            self.note(ctx, Ok(found));
        }
        if self.view.stage == Stage::Sizes {
            let found = self.sizing.update(ctx, &self.document, &self.view.sizes, still);
            self.note(ctx, found);
            let yarns = &self.document.project().yarns;
            let drawn = self.line_up.update(ctx, &self.sizing, yarns);
            self.note(ctx, drawn);
        }
    }

    /// Draws what is new once more, and says what went wrong.
    fn note(&mut self, ctx: &Context, found: Result<bool, String>) {
        let news = found.unwrap_or_else(|trouble| {
            self.say(trouble, true);
            true
        });
        if news {
            ctx.request_repaint();
        }
    }

    /// The bench itself: what the hand does, all changes, the picture. Returns whether the
    /// answers to choose from are in sight.
    fn draw_bench(&mut self, ui: &mut Ui, frame: &eframe::Frame) -> bool {
        let ctx = ui.ctx().clone();
        let mut actions = Actions::default();
        let window = ui.max_rect();
        let yarns = self.plan().map_or(1, |p| p.estimate.yarn.len());
        let mut layout = layout::layout(window, &self.bench(&ctx), yarns);
        if self.view.prefs.mirrored {
            layout = layout.mirrored(window);
        }
        let hands = layout::hands(ui, &self.bench(&ctx), &layout, &mut actions);
        self.view.hovered = hands.hovered;
        if let Some(lens) = hands.lens {
            self.view.lens = Some(lens);
        }
        self.view.show_round = None;
        self.apply(&ctx, frame, &mut actions);
        match &layout.room {
            Room::Shape(room) => self.show_body(&ctx, room.body_field(self.view.face)),
            Room::Present(room) => self.show_body(&ctx, room.body_field()),
            _ => {}
        }
        let field = match &layout.room {
            Room::Assembly(room) => Some(room.field()),
            _ => None,
        };
        self.show_toy(&ctx, field);
        let fields = match &layout.room {
            Room::Lesson(room) => Some(room.fields()),
            _ => None,
        };
        self.show_lesson(&ctx, fields);
        let sees_answers =
            layout::picture(ui, &self.bench(&ctx), &layout, &hands, &mut actions);
        self.apply(&ctx, frame, &mut actions);
        sees_answers
    }
}

impl eframe::App for Studio {
    fn ui(&mut self, ui: &mut Ui, frame: &mut eframe::Frame) {
        self.frame(ui, frame);
    }

    fn save(&mut self, storage: &mut dyn eframe::Storage) {
        eframe::set_value(storage, eframe::APP_KEY, &self.view.prefs);
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        self.leave();
    }

    fn persist_egui_memory(&self) -> bool {
        false
    }
}
