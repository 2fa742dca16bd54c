//! What every command does.

use egui::{Context, ThemePreference, ViewportCommand};

use super::ask::Next;
use super::studio::Studio;
use crate::bench::command::Command;
use crate::document::choice::Choice;
use crate::document::edit::Edit;
use crate::document::shaping;
use crate::view::ids::pattern_id;
use crate::view::tracing::TraceView;
use crate::view::{Over, Stage, apply};
use crate::work::files::Purpose;
use crate::work::home::DeskAction;
use crate::work::sheet_file::Form;
use plumpline_core::project::shape::MadeProject;
use plumpline_core::sheet::{BlurbForm, ScriptPace, Sheet};
use plumpline_core::{Kind, Loop, Piece, sheet};

impl Studio {
    /// Does what a command asks for.
    pub(super) fn command(&mut self, ctx: &Context, frame: &eframe::Frame, command: Command) {
        let steps = self.document.history.undo_steps();
        let revision = self.document.revision();
        let rounds = self.derived.plan().map_or(0, |p| p.rounds.len());
        let knots = self.document.piece().outline.knots.len();
        match command {
            Command::New => self.desk(ctx, frame, DeskAction::ShowStart),
            Command::Open => self.go(ctx, frame, Next::Open),
            Command::Save => {
                self.save(ctx, frame, false);
            }
            Command::SaveAs => {
                self.save(ctx, frame, true);
            }
            Command::Undo => self.document.undo(),
            Command::Redo => self.document.redo(),
            Command::ToggleTheme => self.toggle_theme(ctx),
            Command::ShowSettings => self.view.over = Some(Over::Settings),
            Command::ShowKeys => self.view.over = Some(Over::Keys(String::new())),
            Command::LargerText => self.view.prefs = self.view.prefs.stepped(1),
            Command::SmallerText => self.view.prefs = self.view.prefs.stepped(-1),
            Command::UsualText => self.view.prefs = self.view.prefs.at_usual_size(),
            Command::ShowShape => self.view.turn_to(Stage::Shape),
            Command::ShowAssembly => self.view.turn_to(Stage::Assembly),
            Command::ShowSizes => self.view.turn_to(Stage::Sizes),
            Command::ShowSheet => self.view.turn_to(Stage::Sheet),
            Command::ShowLesson => self.view.turn_to(Stage::Lesson),
            Command::ShowProofread => self.view.turn_to(Stage::Proofread),
            Command::ShowMake => self.view.turn_to(Stage::Make),
            Command::Make(make) => self.make(ctx, make.asks()),
            Command::LessonBack
            | Command::LessonNext
            | Command::LessonStop
            | Command::PrintStep
            | Command::PrintLesson
            | Command::LessonProject
            | Command::OpenCourse
            | Command::SaveCourse => self.lesson_command(ctx, frame, command),
            Command::Present if self.view.stage == Stage::Lesson => {
                self.view.lesson.presents = !self.view.lesson.presents;
            }
            Command::Present => self.view.present.on = !self.view.present.on,
            Command::HideNumbers if self.view.stage == Stage::Lesson => {
                self.view.lesson.hides_numbers = !self.view.lesson.hides_numbers;
            }
            Command::HideNumbers => {
                self.view.present.hides_numbers = !self.view.present.hides_numbers;
            }
            Command::OpenPattern => {
                self.files.ask(ctx, frame, Purpose::Pattern, &self.suggested("txt"));
            }
            Command::PastePattern => {
                // The text field takes what the desktop hands over.
                ctx.memory_mut(|m| m.request_focus(pattern_id()));
                ctx.send_viewport_cmd(ViewportCommand::RequestPaste);
            }
            Command::CopyPattern => {
                ctx.copy_text(self.proofreading.text().to_owned());
                self.say(say!("told-the-text-is-copied"), false);
            }
            Command::SavePattern => {
                let text = self.proofreading.text().to_owned();
                let name = self.suggested("txt");
                self.files.ask(ctx, frame, Purpose::SavePattern(text), &name);
            }
            Command::MakePiece => self.make_piece(),
            Command::CopySheet => {
                self.copy_sheet(ctx, say!("told-the-pattern-is-copied"), sheet::text_of);
            }
            Command::CopyScript => {
                self.copy_sheet(ctx, say!("told-the-spoken-script-is-copied"), |sheet| {
                    sheet::script(&sheet.script, ScriptPace::Said)
                });
            }
            Command::CopyBlurb => {
                self.copy_sheet(ctx, say!("told-the-shop-text-is-copied"), |sheet| {
                    sheet::blurb(sheet, BlurbForm::Plain)
                });
            }
            Command::SaveBody => self.save_body(ctx, frame, false),
            Command::SaveTurning => self.save_body(ctx, frame, true),
            Command::SaveSheet => self.save_sheet(ctx, frame, Form::Pdf),
            Command::Sheet(sheet) => self.sheet_command(ctx, frame, sheet),
            Command::PreviousRound => apply::step_round(&mut self.view, rounds, |r| {
                r.map_or(rounds as u32, |r| r.saturating_sub(1))
            }),
            Command::NextRound => {
                apply::step_round(&mut self.view, rounds, |r| r.map_or(1, |r| r + 1));
            }
            Command::FirstRound => apply::step_round(&mut self.view, rounds, |_| 1),
            Command::LastRound => apply::step_round(&mut self.view, rounds, |_| rounds as u32),
            Command::LetGo if self.view.stage == Stage::Assembly => {
                self.view.toy.taken = None;
            }
            Command::LetGo if self.view.stage == Stage::Lesson => {
                let lesson = &mut self.view.lesson;
                if !std::mem::take(&mut lesson.presents) {
                    lesson.round = None;
                }
            }
            // The round in hand stays so while its body fills the window.
            Command::LetGo if self.view.presents() => self.view.present.on = false,
            Command::LetGo => {
                self.view.selected = None;
                self.view.select_knots(&[]);
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
            Command::TracePicture => {
                self.view.tracing = TraceView::default();
                self.view.over = Some(Over::Trace);
            }
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
        if self.document.revision() != revision {
            self.say_step(command, steps);
        }
    }

    /// Removes all selected knots that are no ends.
    fn remove_knots(&mut self) {
        let knots = self.view.knots();
        let outline = shaping::without(&self.document.piece().outline, &knots);
        apply::edit(&mut self.document, &mut self.view, Edit::Outline(outline));
        self.view.select_knots(&[]);
    }

    /// Makes all selected knots corners, or smooth, whichever the first is not.
    fn toggle_corners(&mut self) {
        let outline = &self.document.piece().outline;
        let Some(first) = self.view.knot.and_then(|k| outline.knots.get(k)) else { return };
        let outline = shaping::cornered(outline, &self.view.knots(), !first.corner);
        apply::edit(&mut self.document, &mut self.view, Edit::Outline(outline));
    }

    /// Adds what the written pattern makes, in the gauge and firmness of the selected piece.
    fn make_piece(&mut self) {
        let Some(checked) = self.proofreading.checked() else { return };
        let piece = self.document.piece();
        match checked.shape(piece.gauge, piece.firmness) {
            Ok(MadeProject { pieces: shaped, left_out }) => {
                let names: Vec<String> =
                    shaped.iter().map(|s| format!("“{}”", s.piece.name)).collect();
                let added = Edit::AddPieces(shaped);
                apply::edit(&mut self.document, &mut self.view, added);
                let made = say!("told-pieces-made", names = names.join(", "));
                let missed: Vec<String> = left_out
                    .iter()
                    .map(|e| format!(" {}", say!("told-left-out", what = e.to_string())))
                    .collect();
                self.say(made + &missed.concat(), !left_out.is_empty());
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }

    /// Makes a choice about the selected round, and keeps it selected.
    fn choose_for_round(&mut self, choice: impl FnOnce(&Piece, u32) -> Choice) {
        let Some(round) = self.view.current_round() else { return };
        let edit = Edit::Choice(choice(self.document.piece(), round));
        apply::edit(&mut self.document, &mut self.view, edit);
        self.view.selected = Some(round);
    }

    /// Pins the selected round at so many stitches more than it has; with 0, or removes the
    /// pin it has.
    fn pin(&mut self, more: i64) {
        let Some(round) = self.view.current_round() else { return };
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

    fn toggle_theme(&mut self, ctx: &Context) {
        self.view.prefs.theme = match ctx.theme() {
            egui::Theme::Light => ThemePreference::Dark,
            egui::Theme::Dark => ThemePreference::Light,
        };
    }

    /// Copies what `text` makes of the sheet, and says so.
    fn copy_sheet(&mut self, ctx: &Context, said: &str, text: impl Fn(&Sheet) -> String) {
        match sheet::sheet(self.document.project()) {
            Ok(sheet) => {
                ctx.copy_text(text(&sheet));
                self.say(said, false);
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }

    fn copy_round(&mut self, ctx: &Context) {
        let Some(round) = self.view.current_round() else { return };
        let Some(line) = self.derived.words().and_then(|words| words.line_of(round)) else {
            return;
        };
        match self.document.project().wording.writer() {
            Ok(writer) => {
                let (heading, count) =
                    (writer.heading(line.first, line.last), writer.count(line.count));
                let line = format!("{heading} {} {count}", line.text);
                ctx.copy_text(line.trim_end().to_owned());
                self.say(say!("told-copied-line", line = line), false);
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }
}
