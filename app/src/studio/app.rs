//! The window: what happens in a frame, and in which order.

use std::path::PathBuf;

use egui::{Context, ThemePreference, Ui};

use super::action::{Action, Actions, Edit};
use super::apply;
use super::ask::{self, Ask, Next};
use super::bench::Bench;
use super::choice::Choice;
use super::command::Command;
use super::derived::Derived;
use super::document::Document;
use super::home::{DeskAction, Home};
use super::jobs::{Jobs, Purpose};
use super::keys;
use super::making::Handiwork;
use super::picture::Tracing;
use super::proofreading::Proofreading;
use super::shaping;
use super::trade::Trade;
use super::view::{Notice, Prefs, Stage, View};
use crate::body::{self, Shown};
use crate::panels::{self, start};
use crate::ui_kit::{Tokens, type_faces};
use plumpline_core::{Kind, Loop, Piece, file, sheet};

/// The studio's window.
#[derive(Debug)]
pub struct Studio {
    pub(super) document: Document,
    pub(super) view: View,
    pub(super) derived: Derived,
    pub(super) jobs: Jobs,
    pub(super) picture: Tracing,
    trade: Trade,
    pub(super) proofreading: Proofreading,
    pub(super) handiwork: Handiwork,
    body: Shown,
    prefs: Prefs,
    pub(super) ask: Option<Ask>,
    /// What goes on once the project is saved.
    pub(super) next: Option<Next>,
    pub(super) closing: bool,
    pub(super) home: Home,
    /// The start card, while it is open.
    pub(super) start: Option<start::Start>,
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
    ctx.options_mut(|o| o.fallback_theme = egui::Theme::Light);
}

impl Studio {
    /// The studio with the project at `open`, or with the sample.
    pub fn new(cc: &eframe::CreationContext<'_>, open: Option<PathBuf>) -> Self {
        dress(&cc.egui_ctx);
        let prefs: Prefs = cc
            .storage
            .and_then(|storage| eframe::get_value(storage, eframe::APP_KEY))
            .unwrap_or_default();
        cc.egui_ctx.set_theme(prefs.theme);
        // Small and local: read at once, so that the first picture is the right one.
        let opened = open.map(|path| (file::load(&path), path));
        let mut studio = match opened {
            None => Self::with(Document::sample()),
            Some((Ok(project), path)) => Self::with(Document::new(project, Some(path))),
            Some((Err(error), _)) => {
                let mut studio = Self::with(Document::sample());
                studio.say(error.to_string(), true);
                studio
            }
        };
        studio.prefs = prefs;
        studio
    }

    /// The studio with this document in hand.
    pub fn with(document: Document) -> Self {
        Self {
            document,
            view: View::default(),
            derived: Derived::default(),
            jobs: Jobs::default(),
            picture: Tracing::default(),
            trade: Trade::default(),
            proofreading: Proofreading::default(),
            handiwork: Handiwork::default(),
            body: Shown::default(),
            prefs: Prefs::default(),
            ask: None,
            next: None,
            closing: false,
            home: Home::default(),
            start: None,
        }
    }

    /// The same studio, where paths are typed, as on a desktop that shows no file dialogs.
    #[must_use]
    pub fn typing_paths(mut self) -> Self {
        self.jobs.typed = true;
        self
    }

    /// The project in hand.
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// What is looked at.
    pub fn view(&self) -> &View {
        &self.view
    }

    /// The trade-off of ease.
    pub fn trade(&self) -> &Trade {
        &self.trade
    }

    /// The written pattern being proofread.
    pub fn proofreading(&self) -> &Proofreading {
        &self.proofreading
    }

    /// The body on screen.
    pub fn body(&self) -> &Shown {
        &self.body
    }

    /// The picture to trace, as far as it has been read.
    pub fn picture(&self) -> &Tracing {
        &self.picture
    }

    /// The plan on screen.
    pub fn plan(&self) -> Option<&plumpline_core::Plan> {
        self.derived.plan().map(|plan| &**plan)
    }

    pub(super) fn bench(&self, ctx: &Context) -> Bench<'_> {
        Bench {
            document: &self.document,
            view: &self.view,
            plan: self.derived.plan().map(|plan| &**plan),
            error: self.derived.error(),
            trade: &self.trade,
            proofreading: &self.proofreading,
            making: &self.handiwork,
            body: &self.body,
            desk: &self.home.desk,
            picture: &self.picture,
            busy: self.jobs.busy(),
            t: Tokens::now(ctx),
        }
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
            }
        }
        let wording = &self.document.project().wording;
        if self.derived.update(self.document.piece(), wording) || any {
            // Panels drawn before the change show it in the next frame.
            ctx.request_repaint();
        }
        self.follow_making(ctx);
        let rounds = self.derived.plan().map_or(0, |p| p.rounds.len() as u32);
        self.view.selected = self.view.selected.filter(|&r| r <= rounds);
        let knots = self.document.piece().outline.knots.len();
        self.view.knot = self.view.knot.filter(|&k| k < knots);
        self.view.board.also.retain(|&k| k < knots);
    }

    fn command(&mut self, ctx: &Context, frame: &eframe::Frame, command: Command) {
        let rounds = self.derived.plan().map_or(0, |p| p.rounds.len());
        let knots = self.document.piece().outline.knots.len();
        match command {
            Command::New => self.desk(ctx, frame, DeskAction::ShowStart),
            Command::Open => self.go(ctx, frame, Next::Open),
            Command::Save => self.save(ctx, frame, false),
            Command::SaveAs => self.save(ctx, frame, true),
            Command::Undo => self.document.undo(),
            Command::Redo => self.document.redo(),
            Command::ToggleTheme => self.toggle_theme(ctx),
            Command::ShowShape => self.view.stage = Stage::Shape,
            Command::ShowSheet => self.view.stage = Stage::Sheet,
            Command::ShowProofread => self.view.stage = Stage::Proofread,
            Command::ShowMake => self.view.stage = Stage::Make,
            Command::Make(make) => self.make(ctx, make.asks()),
            Command::OpenPattern => {
                self.jobs.ask(ctx, frame, Purpose::Pattern, &self.suggested("txt"));
            }
            Command::MakePiece => self.make_piece(),
            Command::CopySheet => self.copy_sheet(ctx),
            Command::SaveSheetText => self.save_sheet(ctx, frame),
            Command::PreviousRound => apply::step_round(&mut self.view, rounds, |r| {
                r.map_or(rounds as u32, |r| r.saturating_sub(1))
            }),
            Command::NextRound => {
                apply::step_round(&mut self.view, rounds, |r| r.map_or(1, |r| r + 1));
            }
            Command::FirstRound => apply::step_round(&mut self.view, rounds, |_| 1),
            Command::LastRound => apply::step_round(&mut self.view, rounds, |_| rounds as u32),
            Command::LetGo => {
                self.view.selected = None;
                self.view.take_knots(&[]);
                self.view.board.picture = false;
            }
            Command::CopyRound => self.copy_round(ctx),
            Command::TogglePin => self.pin(0),
            Command::MoreStitches => self.pin(1),
            Command::FewerStitches => self.pin(-1),
            Command::PreviousKnot => apply::step_knot(&mut self.view, knots, -1),
            Command::NextKnot => apply::step_knot(&mut self.view, knots, 1),
            Command::RemoveKnot => self.remove_knots(),
            Command::ToggleCorner => self.toggle_corners(),
            Command::FitView => self.view.lens = None,
            Command::ToggleMagnet => self.view.board.magnet = !self.view.board.magnet,
            Command::ChoosePicture => self.choose_picture(ctx, frame),
            Command::NextKind => self.choose_for_round(|piece, round| Choice::Kind {
                round,
                kind: match piece.kind_of_round(round) {
                    Kind::Single => Kind::HalfDouble,
                    Kind::HalfDouble => Kind::Double,
                    Kind::Double => Kind::Single,
                },
            }),
            Command::NextLoop => self.choose_for_round(|piece, round| Choice::Loop {
                round,
                only: match piece.loops.get(&round) {
                    None => Some(Loop::Front),
                    Some(Loop::Front) => Some(Loop::Back),
                    Some(Loop::Back) => None,
                },
            }),
            Command::TogglePlain => self.choose_for_round(|piece, round| Choice::Plain {
                from: round,
                to: round,
                on: !piece.is_in_face(round),
            }),
        }
    }

    /// Removes all knots in hand that are no ends.
    fn remove_knots(&mut self) {
        let knots = self.view.knots();
        let outline = shaping::without(&self.document.piece().outline, &knots);
        apply::edit(&mut self.document, &mut self.view, Edit::Outline(outline));
        self.view.take_knots(&[]);
    }

    /// Makes all knots in hand corners, or smooth, whichever the first is not.
    fn toggle_corners(&mut self) {
        let outline = &self.document.piece().outline;
        let Some(first) = self.view.knot.and_then(|k| outline.knots.get(k)) else { return };
        let outline = shaping::cornered(outline, &self.view.knots(), !first.corner);
        apply::edit(&mut self.document, &mut self.view, Edit::Outline(outline));
    }

    /// Adds what the written pattern makes, in the gauge and firmness of the piece in hand.
    fn make_piece(&mut self) {
        let Some(checked) = self.proofreading.checked() else { return };
        let piece = self.document.piece();
        match checked.shape(piece.gauge, piece.firmness) {
            Ok(shaped) => {
                let names: Vec<String> =
                    shaped.iter().map(|s| format!("“{}”", s.piece.name)).collect();
                let added = Edit::AddPieces(shaped);
                apply::edit(&mut self.document, &mut self.view, added);
                self.say(
                    format!("{} is in the project, its counts pinned.", names.join(", ")),
                    false,
                );
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }

    /// Makes a choice about the round in hand, and keeps it in hand.
    fn choose_for_round(&mut self, choice: impl FnOnce(&Piece, u32) -> Choice) {
        let Some(round) = self.view.in_hand() else { return };
        let edit = Edit::Choice(choice(self.document.piece(), round));
        apply::edit(&mut self.document, &mut self.view, edit);
        self.view.selected = Some(round);
    }

    /// Pins the round in hand at so many stitches more than it has; with 0, or removes the
    /// pin it has.
    fn pin(&mut self, more: i64) {
        let Some(round) = self.view.in_hand() else { return };
        let Some(count) = self.derived.plan().and_then(|p| p.rounds.get(round as usize - 1))
        else {
            return;
        };
        let pinned = self.document.piece().pins.contains_key(&round);
        let edit = if more == 0 && pinned {
            Edit::Unpin(round)
        } else {
            Edit::Pin { round, count: (i64::from(count.count) + more).max(3) as u32 }
        };
        apply::edit(&mut self.document, &mut self.view, edit);
        self.view.selected = Some(round);
    }

    /// The body as the plan and the hand have it now, if it is in sight.
    fn show_body(&mut self, ctx: &Context, layout: &panels::Layout) {
        let (Some(plan), Some(field)) =
            (self.derived.plan(), layout.body_field(self.view.face))
        else {
            return;
        };
        let lit = self.view.in_hand().map(|round| (round, Tokens::now(ctx).lit_yarn()));
        let colours = self.document.project().yarns.iter().map(|y| y.colour).collect();
        let asked = body::Asked {
            turned: self.view.turned,
            lit,
            colours,
            field,
            feather: 1.0 / ctx.pixels_per_point(),
        };
        self.body.update(plan, self.document.piece(), asked);
    }

    fn toggle_theme(&mut self, ctx: &Context) {
        self.prefs.theme = match ctx.theme() {
            egui::Theme::Light => ThemePreference::Dark,
            egui::Theme::Dark => ThemePreference::Light,
        };
        ctx.set_theme(self.prefs.theme);
    }

    pub(super) fn say(&mut self, text: impl Into<String>, wrong: bool) {
        self.view.notice = Some(Notice { text: text.into(), wrong });
    }

    fn copy_sheet(&mut self, ctx: &Context) {
        match sheet::text(self.document.project()) {
            Ok(text) => {
                ctx.copy_text(text);
                self.say("The pattern is copied.", false);
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }

    fn copy_round(&mut self, ctx: &Context) {
        let Some(round) = self.view.in_hand() else { return };
        let Some(line) = self.derived.plan().and_then(|p| p.wording.line_of(round)) else {
            return;
        };
        match self.document.project().wording.writer() {
            Ok(writer) => {
                let (heading, count) =
                    (writer.heading(line.first, line.last), writer.count(line.count));
                let line = format!("{heading} {} {count}", line.text);
                ctx.copy_text(line.trim_end().to_owned());
                self.say(format!("Copied: {line}"), false);
            }
            Err(error) => self.say(error.to_string(), true),
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
    }

    /// One frame, in this order: keys, what the hand does, all changes, the picture. So the
    /// picture always shows the piece as it is now.
    pub fn frame(&mut self, ui: &mut Ui, frame: &eframe::Frame) {
        let ctx = ui.ctx().clone();
        self.receive(&ctx, frame);
        if self.proofreading.update(&ctx) {
            ctx.request_repaint();
        }
        let picture = self.document.piece().picture.as_ref();
        if let Some(error) = self.picture.update(&ctx, picture, self.document.path()) {
            self.say(error, true);
        }
        let mut actions = Actions::default();
        if self.ask.is_none() && self.start.is_none() {
            keys::read(&ctx, &self.bench(&ctx), &mut actions);
        }
        self.apply(&ctx, frame, &mut actions);
        let yarns = self.plan().map_or(1, |p| p.estimate.yarn.len());
        let layout = panels::layout(self.above_foot(ui.max_rect()), self.view.stage, yarns);
        let hands = panels::hands(ui, &self.bench(&ctx), &layout, &mut actions);
        self.view.hovered = hands.hovered;
        if let Some(lens) = hands.lens {
            self.view.lens = Some(lens);
        }
        self.view.show_round = None;
        self.apply(&ctx, frame, &mut actions);
        self.show_body(&ctx, &layout);
        let sees_ease = panels::picture(ui, &self.bench(&ctx), &layout, &hands, &mut actions);
        self.lay_over(ui, ui.max_rect(), &mut actions);
        self.apply(&ctx, frame, &mut actions);
        self.let_go_of_the_rest(&ctx);
        // A hand that still holds something is not done with the piece.
        let still = !ctx.input(|i| i.pointer.any_down()) && !self.document.history.in_gesture();
        if self.trade.update(&ctx, self.document.piece(), sees_ease, still) {
            ctx.request_repaint();
        }
        if let Some(ask) = &mut self.ask
            && let Some(answer) = ask::show(&ctx, ask, &self.document.project().title)
        {
            self.answer(&ctx, frame, answer);
        }
        self.tend(&ctx);
    }
}

impl eframe::App for Studio {
    fn ui(&mut self, ui: &mut Ui, frame: &mut eframe::Frame) {
        self.frame(ui, frame);
    }

    fn save(&mut self, storage: &mut dyn eframe::Storage) {
        eframe::set_value(storage, eframe::APP_KEY, &self.prefs);
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        self.leave();
    }

    fn persist_egui_memory(&self) -> bool {
        false
    }
}
