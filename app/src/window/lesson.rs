//! The lesson: what its commands do, what is predicted, what is shown.

use egui::{Context, Rect};
use plumpline_core::lesson::LessonCourse;
use plumpline_core::lesson::course::{LessonAsk, LessonGuess, LessonStep, SampleRule};

use super::ask::Next;
use super::studio::Studio;
use crate::bench::action::LessonAct;
use crate::bench::command::Command;
use crate::kit::Tokens;
use crate::work::files::Purpose;
use crate::work::home::predictions::Predicted;
use crate::work::lesson::{LessonLook, LessonSight, LessonSubject};
use crate::work::lesson_file::LessonPrint;

impl Studio {
    /// Does what a command of the lesson asks for.
    pub(super) fn lesson_command(
        &mut self,
        ctx: &Context,
        frame: &eframe::Frame,
        command: Command,
    ) {
        let steps = self.lesson.course().steps.len();
        let view = &mut self.view.lesson;
        match command {
            Command::LessonBack => view.go_to(view.step.saturating_sub(1), steps),
            Command::LessonNext => view.go_to(view.step + 1, steps),
            Command::LessonStop => view.stopped = !view.stopped,
            Command::PrintStep => {
                let step = view.step;
                self.print_lesson(ctx, frame, step..step + 1);
            }
            Command::PrintLesson => self.print_lesson(ctx, frame, 0..steps),
            Command::LessonProject => {
                let gauge = self.document.piece().gauge;
                match self.lesson.course().project(gauge) {
                    Ok(project) => self.go(ctx, frame, Next::Begin(Box::new(project))),
                    Err(error) => self.say(error.to_string(), true),
                }
            }
            Command::OpenCourse => {
                let path = self.suggested("ron");
                self.files.ask(ctx, frame, Purpose::Course, &path);
            }
            Command::SaveCourse => {
                let purpose = Purpose::SaveCourse(LessonCourse::english_text());
                let path = self.suggested("ron").with_file_name("lesson.ron");
                self.files.ask(ctx, frame, purpose, &path);
            }
            _ => {}
        }
    }

    /// Teaches the course in the file at `path` once it is read.
    pub fn open_course(&mut self, ctx: &Context, path: &std::path::Path) {
        self.files.with_path(ctx, Purpose::Course, path.to_owned());
    }

    fn print_lesson(
        &mut self,
        ctx: &Context,
        frame: &eframe::Frame,
        steps: std::ops::Range<usize>,
    ) {
        let one = steps.len() == 1;
        let name = if one {
            format!("lesson-{}.pdf", steps.start + 1)
        } else {
            "lesson.pdf".to_owned()
        };
        let path = self.suggested("pdf").with_file_name(name);
        let print = LessonPrint {
            course: self.lesson.course().clone(),
            steps,
            guide: true,
            gauge: self.document.piece().gauge,
            unit: self.view.prefs.unit,
            paper: self.view.sheet.look.options.paper,
            colour: self.document.project().colours().first().copied().unwrap_or([128; 3]),
        };
        self.files.ask(ctx, frame, Purpose::Lesson(Box::new(print)), &path);
    }

    /// Teaches another course, from its first step.
    pub(super) fn teach(&mut self, course: LessonCourse) {
        self.say(say!("told-the-course-title-is-open", title = course.title), false);
        self.lesson.teach(course);
        self.view.lesson = crate::view::lesson::LessonView {
            presents: self.view.lesson.presents,
            ..Default::default()
        };
    }

    /// Does what was said in the lesson.
    pub(super) fn lesson_act(&mut self, act: LessonAct) {
        match act {
            LessonAct::Say(guess) => self.predict(guess),
            LessonAct::AskAgain => {
                let view = &mut self.view.lesson;
                view.said.remove(&view.step);
                view.typed.clear();
                (view.knob, view.stopped) = (None, false);
            }
            LessonAct::Forget => self.home.remember(|desk| desk.predictions.forget()),
        }
    }

    fn predict(&mut self, guess: LessonGuess) {
        let course = self.lesson.course();
        let index = self.view.lesson.step;
        let Some(step) = course.steps.get(index) else { return };
        let gauge = self.document.piece().gauge;
        let reply =
            step.figures(gauge).and_then(|figures| step.reply(guess, &figures, &course.words));
        match reply {
            Ok(reply) => {
                let said = match guess {
                    LessonGuess::Choice(choice) => choice.text(&course.words).to_owned(),
                    LessonGuess::Number(value) => value.to_string(),
                };
                let step = step.name.clone();
                let predicted = Predicted { step, said, right: reply.right };
                self.view.lesson.said.insert(index, guess);
                self.home.remember(|desk| desk.predictions.add(predicted));
            }
            Err(error) => self.say(error.to_string(), true),
        }
    }

    /// The cloth as the step and the hand have it now, if its `fields` are in sight.
    pub(super) fn show_lesson(&mut self, ctx: &Context, fields: Option<[Rect; 2]>) {
        let heard = match fields {
            Some(fields) => self.ask_lesson(ctx, fields),
            None => self.lesson.rest(ctx),
        };
        if let Err(trouble) = heard {
            self.say(trouble, true);
        }
    }

    fn ask_lesson(&mut self, ctx: &Context, fields: [Rect; 2]) -> Result<(), String> {
        let view = &self.view.lesson;
        let step = self.lesson.course().steps.get(view.step);
        let gauge = self.document.piece().gauge;
        let subject = match step {
            Some(step) => LessonSubject::Sample(view.set(step.sample), gauge),
            None if self.derived.plan().is_some() => {
                LessonSubject::Piece(self.document.piece_id(), self.document.revision())
            }
            None => return self.lesson.rest(ctx),
        };
        let held = step.is_some_and(|step| view.guess().is_none() && is_held(step));
        let round = match step {
            Some(_) => view.round,
            None => self.view.current_round(),
        };
        let scale = ctx.pixels_per_point();
        let sights = view.sights(step.map(|step| step.sample));
        let sight = |i: usize| LessonSight {
            turned: sights[i],
            pixels: [fields[i].width(), fields[i].height()]
                .map(|points| (points * scale).round().max(1.0) as u32),
        };
        let look = LessonLook {
            held,
            stopped: view.stopped,
            still: self.view.prefs.still,
            sights: [sight(0), sight(1)],
            lit: round.map(|round| (round, Tokens::now(ctx).lit_yarn())),
            colours: self.document.project().colours(),
            faces: self.document.project().faces(),
        };
        let piece = self.derived.plan().map(|plan| (self.document.piece(), plan));
        self.lesson.update(ctx, subject, look, piece)
    }
}

/// Whether the cloth of a step is held until something is predicted: where its shape would
/// tell the answer, and it can lie on a table at all.
fn is_held(step: &LessonStep) -> bool {
    let lies = !matches!(
        step.sample,
        SampleRule::Ball { .. } | SampleRule::Cylinder { .. } | SampleRule::Neck { .. }
    );
    lies && !matches!(step.prediction.ask, LessonAsk::Curve { .. })
}
