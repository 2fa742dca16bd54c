//! The studio's care for people's work: recovery after a crash, the projects last worked on,
//! the first steps, the start card.

use std::path::Path;

use egui::{Context, Rect, Ui, ViewportCommand};

use super::ask::Next;
use super::studio::Studio;
use crate::bench::action::{Action, Actions};
use crate::bench::first_steps;
use crate::document::Document;
use crate::stages::around::{foot, keys_card, settings_card, start};
use crate::stages::shape;
use crate::view::Over;
use crate::work::day;
use crate::work::ending::Ending;
use crate::work::home::{DeskAction, Home};
use plumpline_core::calibrate::{Calibration, Entry};

impl Studio {
    /// The studio with the folder in which it keeps what outlasts a run. Without one nothing
    /// is kept and no first steps are shown.
    #[must_use]
    pub fn at_home(mut self, ctx: &Context, folder: &Path) -> Self {
        let (home, trouble) = Home::open(folder, ctx);
        self.home = home;
        if let Some(path) = self.document.path().map(Path::to_owned) {
            self.home.remember(|desk| desk.worked_on(&path));
        } else if self.home.offer().is_none()
            && (self.home.desk.steps.is_none() || !self.home.desk.recent.is_empty())
        {
            self.start = Some(start::StartChoice::default());
        }
        if let Some(trouble) = trouble {
            self.say(trouble, true);
        }
        self
    }

    /// The studio that ends, its work kept, once it is asked to by `ending`.
    #[must_use]
    pub fn ending_with(mut self, ending: Ending) -> Self {
        self.ending = ending;
        self
    }

    /// What the studio keeps from one run to the next.
    pub fn home(&self) -> &Home {
        &self.home
    }

    /// The window less the strip at its foot, where there is one.
    pub(super) fn above_foot(&self, window: Rect) -> Rect {
        // What is presented has the whole window.
        let any = self.home.offer().is_some() || self.home.desk.steps.is_some();
        let shown = any && !self.view.presents();
        window.with_max_y(
            window.bottom() - if shown { foot::height(window.width()) } else { 0.0 },
        )
    }

    /// Draws the strip at the foot of the window, and the card that lies over it.
    pub(super) fn lay_over(&mut self, ui: &mut Ui, window: Rect, actions: &mut Actions) {
        let bench = self.bench(ui.ctx());
        let strip = window.with_min_y(self.above_foot(window).bottom());
        if self.view.presents() {
            // Nothing stands at the foot.
        } else if let Some(left) = self.home.offer() {
            foot::fit(ui, strip, |ui, strip| foot::offer(ui, bench.t, strip, left, actions));
        } else if let Some(steps) = bench.desk.steps {
            foot::fit(ui, strip, |ui, strip| {
                foot::first_steps(ui, bench.t, strip, steps, actions);
            });
        }
        if !self.asks.is_empty() {
            return; // One question at a time.
        }
        if let Some(mut card) = self.start.take() {
            start::show(ui.ctx(), &self.bench(ui.ctx()), &mut card, actions);
            self.start = Some(card);
        }
        match self.view.over.clone() {
            Some(Over::Settings) => {
                settings_card::show(ui.ctx(), &self.bench(ui.ctx()), actions);
            }
            Some(Over::Keys(query)) => {
                keys_card::show(ui.ctx(), &self.bench(ui.ctx()), &query, actions);
            }
            Some(Over::Trace) => {
                shape::trace_card::show(ui.ctx(), &self.bench(ui.ctx()), actions);
            }
            None => {}
        }
        start::catch_files(ui.ctx());
    }

    /// Ticks the first steps; once all are done and the hand is free they are over.
    pub(super) fn learn(&mut self, action: &Action) {
        if self.home.desk.steps.is_some() {
            self.home.remember(|desk| {
                if let Some(steps) = &mut desk.steps {
                    first_steps::learn(steps, action);
                }
            });
        }
    }

    pub(super) fn desk(&mut self, ctx: &Context, frame: &eframe::Frame, action: DeskAction) {
        match action {
            DeskAction::Continue(path) => {
                self.take_up = Some(path.clone());
                self.go(ctx, frame, Next::OpenPath(path));
            }
            DeskAction::Open(path) => self.go(ctx, frame, Next::OpenPath(path)),
            DeskAction::Forget(path) => self.home.remember(|desk| desk.forget(&path)),
            DeskAction::Create(project) => {
                self.go(ctx, frame, Next::Begin(project));
            }
            DeskAction::ShowStart => {
                self.home.look(ctx);
                self.start = Some(start::StartChoice::default());
            }
            DeskAction::ChooseShape => self.choose_shape(ctx, frame),
            DeskAction::HideStart => self.start = None,
            DeskAction::Recover => self.go(ctx, frame, Next::Recover),
            DeskAction::LetGo => {
                if let Some(path) = self.home.let_go()
                    && self.document.path() != Some(&path)
                {
                    self.go(ctx, frame, Next::OpenPath(path));
                }
            }
            DeskAction::PutOff => self.home.put_off(),
            DeskAction::EndSteps => self.home.remember(|desk| desk.steps = None),
            DeskAction::KeepGauge(learned) => self.keep_gauge(&learned),
            DeskAction::StrikeGauge(entry) => {
                if let Err(error) = self.home.strike_gauge(&entry) {
                    self.say(error.to_string(), true);
                }
            }
            DeskAction::PutGaugeBack(entry) => {
                if let Err(error) = self.home.put_gauge_back(&entry) {
                    self.say(error.to_string(), true);
                }
            }
        }
    }

    /// Enters what a sample of the selected piece taught into the gauge book, under its yarn.
    fn keep_gauge(&mut self, learned: &Calibration) {
        let piece = self.document.piece();
        let yarns = &self.document.project().yarns;
        let yarn = yarns
            .get(piece.yarn_of_round(1))
            .map_or(say!("told-a-yarn"), |yarn| &yarn.name)
            .to_owned();
        let maker = self.view.sizes.maker.trim().to_owned();
        let today = day::iso((self.clock)());
        let entry = Entry::learned(yarn.clone(), maker, today, piece, learned);
        match self.home.enter_gauge(entry) {
            Ok(()) => self.say(say!("told-yarn-is-in-the-gauge-book", yarn = yarn), false),
            Err(error) => self.say(error.to_string(), true),
        }
    }

    /// Takes up what a crash left.
    pub(super) fn recover(&mut self) {
        let Some(left) = self.home.take_up() else { return };
        let (project, path, saved) = (&left.project, &left.of, &left.saved);
        let document = Document::recovered(project.clone(), path.clone(), saved.clone());
        self.take(document);
        self.say(say!("told-your-changes-are-back-save-them-to"), false);
    }

    /// The end of a frame: copies are kept, troubles told, first steps ended.
    pub(super) fn tend(&mut self, ctx: &Context) {
        self.keep_making(ctx);
        if self.ending.is_asked() {
            // What is not saved is in the recovery copy, which is offered at the next start.
            self.home.hurry();
            ctx.send_viewport_cmd(ViewportCommand::Close);
        }
        self.home.hear();
        self.home.tend(ctx, &self.document);
        if let Some(trouble) = self.home.trouble() {
            self.say(trouble, true);
        }
        if ctx.input(|i| i.events.contains(&egui::Event::WindowFocused(true))) {
            self.home.look(ctx);
        }
        let free = !self.view.is_dragging() && !self.document.history.in_gesture();
        if free && self.home.desk.steps.is_some_and(|steps| steps.done()) {
            self.home.remember(|desk| desk.steps = None);
            self.say(say!("told-shaped-pinned-and-read-file-new-starts"), false);
            ctx.request_repaint();
        }
    }

    /// The window is gone. If its project was saved or given up, nothing is left behind; else
    /// the recovery copy is as it is now.
    pub(super) fn leave(&mut self) {
        if self.closing || !self.document.is_changed() {
            self.home.leave();
        } else {
            self.home.keep(&self.document);
        }
    }
}
