//! A step on paper: one page to work on, its answer on the back, and one for the teacher.

use serde::Serialize;

use super::answer::LessonAnswer;
use super::figures::{Figures, minutes};
use super::{LessonAsk, LessonCourse, LessonStep};
use crate::error::Result;
use crate::length::Unit;
use crate::piece::gauge::Gauge;
use crate::plan::plan;
use crate::words::{Writer, words};

/// A step as it is printed, every name filled in: front and back of one sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LessonPage {
    /// Title of the lesson.
    pub lesson: String,
    /// Number of the step, from 1.
    pub number: usize,
    /// Steps in all.
    pub steps: usize,
    /// Both in words.
    pub of: String,
    /// Title of the step.
    pub title: String,
    /// The question.
    pub question: String,
    /// What can be chosen, a box to tick each; empty where a number is to be written.
    pub choices: Vec<String>,
    /// What the number counts, where one is asked for.
    pub unit: String,
    /// Label of the line for the learner's own prediction.
    pub my_prediction: String,
    /// Heading of the exercise, with its minutes.
    pub by_hand: String,
    /// What to do.
    pub exercise: Vec<String>,
    /// Label of the rounds.
    pub rounds_label: String,
    /// Its rounds as they are read at the hook: their names and what is worked.
    pub rounds: Vec<(String, String)>,
    /// What to see or measure.
    pub see: String,
    /// Label of the blank for the learner's own swatch.
    pub my_swatch: String,
    /// Label of the line for what was measured.
    pub my_measure: String,
    /// Heading of the back.
    pub back: String,
    /// The answer.
    pub answer: String,
    /// Why it is so, a paragraph each.
    pub why: Vec<String>,
    /// The cloth of the answer; none as it is made here, for letting cloth go takes time.
    pub pictures: Vec<LessonPicture>,
}

/// A picture of cloth at rest, for the back of a page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LessonPicture {
    /// From where it is seen.
    pub words: String,
    /// The picture, a PNG file.
    #[serde(skip)]
    pub png: Vec<u8>,
}

/// What a teacher is told of a step, every name filled in.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TeacherPage {
    /// Heading.
    pub guide: String,
    /// Title of the step.
    pub title: String,
    /// Label and aims.
    pub aims: (String, Vec<String>),
    /// How long it takes.
    pub time: String,
    /// Label and materials.
    pub materials: (String, Vec<String>),
    /// Label and mistakes: what one sees, what helps.
    pub mistakes: (String, Vec<(String, String)>),
}

/// What a step comes to in stitches of one gauge.
struct Printed<'a> {
    course: &'a LessonCourse,
    step: &'a LessonStep,
    number: usize,
    /// Of what it speaks of.
    figures: Figures,
    /// Of what is made by hand.
    by_hand: Figures,
    unit: Unit,
}

impl LessonStep {
    /// The figures of its sample in stitches of `gauge`.
    ///
    /// # Errors
    /// Where nothing can be worked at that gauge.
    pub fn figures(&self, gauge: Gauge) -> Result<Figures> {
        self.sample.figures(gauge)
    }
}

impl Printed<'_> {
    fn text(&self, text: &str) -> Result<String> {
        Ok(self.figures.filled(text, &[])?.text(self.unit))
    }

    fn hand_text(&self, text: &str) -> Result<String> {
        Ok(self.by_hand.filled(text, &[])?.text(self.unit))
    }

    fn texts(&self, texts: &[String]) -> Result<Vec<String>> {
        texts.iter().map(|text| self.text(text)).collect()
    }

    /// The exercise's rounds, as they are read at the hook.
    fn rounds(&self, gauge: Gauge, writer: &Writer<'_>) -> Result<Vec<(String, String)>> {
        let sample = self.step.exercise.sample.at(gauge)?;
        let piece = sample.piece(&self.step.title, gauge);
        let wording = words(&plan(&piece)?, &piece, writer);
        Ok(wording.lines.into_iter().map(|line| (line.heading, line.text)).collect())
    }

    fn answer(&self) -> Result<String> {
        let said = match self.step.answer(&self.figures)? {
            LessonAnswer::Choice(choice) => choice.text(&self.course.words).to_owned(),
            LessonAnswer::Number { value, places, .. } => {
                format!("{value:.places$} {}", unit_of(&self.step.prediction.ask))
            }
        };
        Ok(said)
    }
}

fn unit_of(ask: &LessonAsk) -> &str {
    match ask {
        LessonAsk::Number { unit, .. } => unit,
        LessonAsk::Bend { .. } | LessonAsk::Curve { .. } => "",
    }
}

fn printed<'a>(
    course: &'a LessonCourse,
    index: usize,
    gauge: Gauge,
    unit: Unit,
) -> Result<Printed<'a>> {
    let step = course.steps.get(index).ok_or_else(|| {
        crate::error::Error::new(
            "lesson",
            format!("there is no step {}", index + 1),
            format!("it has {}", course.steps.len()),
        )
    })?;
    let by_hand = step.exercise.sample.figures(gauge)?;
    Ok(Printed {
        course,
        step,
        number: index + 1,
        figures: step.figures(gauge)?,
        by_hand,
        unit,
    })
}

/// Step `index` (from 0) of `course` as it is printed: figures of stitches of `gauge`, lengths
/// in `unit`, rounds as `writer` writes them.
///
/// # Errors
/// For a step that there is not, and where nothing can be worked at that gauge.
pub fn lesson_page(
    course: &LessonCourse,
    index: usize,
    gauge: Gauge,
    unit: Unit,
    writer: &Writer<'_>,
) -> Result<LessonPage> {
    let printed = printed(course, index, gauge, unit)?;
    let (step, words) = (printed.step, &course.words);
    let exercise = step.exercise.steps.iter().map(|text| printed.hand_text(text));
    let choices = step.prediction.ask.choices().iter();
    let (number, steps) = (printed.number.to_string(), course.steps.len().to_string());
    let of = [("number", number.as_str()), ("steps", steps.as_str())];
    Ok(LessonPage {
        lesson: course.title.clone(),
        number: printed.number,
        steps: course.steps.len(),
        of: printed.figures.filled(&words.step_of, &of)?.text(unit),
        title: printed.text(&step.title)?,
        question: printed.text(&step.prediction.question)?,
        choices: choices.map(|choice| choice.text(words).to_owned()).collect(),
        unit: unit_of(&step.prediction.ask).to_owned(),
        my_prediction: words.my_prediction.clone(),
        by_hand: printed.hand_text(&words.by_hand)?,
        exercise: exercise.collect::<Result<_>>()?,
        rounds_label: words.rounds.clone(),
        rounds: printed.rounds(gauge, writer)?,
        see: printed.hand_text(&step.exercise.see)?,
        my_swatch: words.my_swatch.clone(),
        my_measure: words.my_measure.clone(),
        back: words.back.clone(),
        answer: printed.answer()?,
        why: printed.texts(&step.why)?,
        pictures: Vec::new(),
    })
}

/// What a teacher is told of step `index` (from 0) of `course`; arguments and errors as
/// [`lesson_page`].
///
/// # Errors
/// As [`lesson_page`].
pub fn teacher_page(
    course: &LessonCourse,
    index: usize,
    gauge: Gauge,
    unit: Unit,
) -> Result<TeacherPage> {
    let printed = printed(course, index, gauge, unit)?;
    let (step, words) = (printed.step, &course.words);
    let sample = step.exercise.sample.at(gauge)?;
    let all = f64::from(step.guide.talk_minutes) + minutes(&sample);
    let talk = step.guide.talk_minutes.to_string();
    let all = format!("{all:.0}");
    let time = [("all", all.as_str()), ("talk", talk.as_str())];
    let mistakes = step.guide.mistakes.iter();
    Ok(TeacherPage {
        guide: words.guide.clone(),
        title: printed.text(&step.title)?,
        aims: (words.aims.clone(), printed.texts(&step.guide.aims)?),
        time: printed.by_hand.filled(&words.time, &time)?.text(unit),
        materials: (words.materials.clone(), printed.texts(&step.guide.materials)?),
        mistakes: (
            words.mistakes.clone(),
            mistakes
                .map(|m| Ok((printed.text(&m.seen)?, printed.text(&m.help)?)))
                .collect::<Result<_>>()?,
        ),
    })
}
