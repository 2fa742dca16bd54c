//! The course as data: what each step says, asks and has made by hand.
//!
//! Words stand in a file, numbers do not: a name in braces is filled in from the maker's own
//! stitches, so that what is said is true at every gauge. [`sample`] makes the rounds a step
//! speaks of, [`figures`] works out what can be said of them, [`answer`] compares a guess with
//! it, [`page`] lays a step out for paper. [`LessonCourse::read`] takes a course of one's own.

pub mod answer;
pub mod figures;
mod file;
pub mod page;
pub mod sample;

pub use answer::{GuessReply, LessonAnswer, LessonChoice, LessonGuess};
pub use figures::{Figure, Figures};
pub use page::{LessonPage, LessonPicture, TeacherPage, lesson_page, teacher_page};
pub use sample::{KnobOf, LessonSample, SampleGain, SampleKnob, SampleRule};

use serde::Deserialize;

/// The lesson in one language.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LessonCourse {
    /// What it is called.
    pub title: String,
    /// What it is about, in a sentence or two.
    pub about: String,
    /// Words that all steps share.
    pub words: LessonWords,
    /// Its steps in order.
    pub steps: Vec<LessonStep>,
}

/// Words that all steps share. Names in braces are filled in.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each is said by its own words in the file")]
pub struct LessonWords {
    pub cup: String,
    pub flat: String,
    pub ruffle: String,
    pub ball: String,
    pub straight: String,
    pub saddle: String,
    pub right_choice: String,
    pub wrong_choice: String,
    pub right_number: String,
    pub wrong_number: String,
    pub step_of: String,
    pub my_prediction: String,
    pub my_swatch: String,
    pub my_measure: String,
    pub rounds: String,
    pub by_hand: String,
    pub back: String,
    pub guide: String,
    pub aims: String,
    pub time: String,
    pub materials: String,
    pub mistakes: String,
    pub from_above: String,
    pub from_side: String,
    pub knob_gain: String,
    pub knob_middle: String,
    pub knob_side: String,
    pub knob_change: String,
    pub knob_every: String,
}

/// One step of the lesson. Names in braces are filled in by [`Figures::filled`].
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LessonStep {
    /// Its short name, under its dot.
    pub name: String,
    /// Its title.
    pub title: String,
    /// The rounds it speaks of.
    pub sample: SampleRule,
    /// What to do at the screen, a sentence or two each.
    pub look: Vec<String>,
    /// What is asked before the answer is shown.
    pub prediction: Prediction,
    /// Why it is so, a paragraph each; shown with the answer.
    pub why: Vec<String>,
    /// What to make by hand.
    pub exercise: Exercise,
    /// For who teaches it.
    pub guide: TeacherGuide,
}

/// A question whose answer the model works out.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Prediction {
    /// The question.
    pub question: String,
    /// What it asks for.
    pub ask: LessonAsk,
}

/// What a question asks for.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum LessonAsk {
    /// Whether the sample cups, lies flat or ruffles; what to say to each guess that is wrong.
    Bend {
        /// To “it cups”.
        cup: String,
        /// To “it lies flat”.
        flat: String,
        /// To “it ruffles”.
        ruffle: String,
    },
    /// How the cloth is curved at the top edge of a round: like a ball, not at all, like a
    /// saddle.
    Curve {
        /// The round, from 1.
        round: u32,
        /// To “like a ball”.
        ball: String,
        /// To “not at all”.
        straight: String,
        /// To “like a saddle”.
        saddle: String,
    },
    /// A number.
    Number {
        /// Which of the [`Figures`] is the answer.
        figure: String,
        /// What it counts, said after it.
        unit: String,
        /// How near a guess is right.
        near: f64,
        /// To a guess that is too small.
        low: String,
        /// To a guess that is too large.
        high: String,
    },
}

/// Something to make by hand, in twenty minutes or less.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exercise {
    /// The rounds to work.
    pub sample: SampleRule,
    /// What to do, a sentence or two each. The rounds are written beside it.
    pub steps: Vec<String>,
    /// What to see or measure when it is done.
    pub see: String,
}

/// What a teacher wants to know of a step.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TeacherGuide {
    /// What learners can say or do afterwards.
    pub aims: Vec<String>,
    /// Minutes at the screen and in talk, the exercise not counted.
    pub talk_minutes: u32,
    /// What is needed.
    pub materials: Vec<String>,
    /// What goes wrong, and what helps.
    pub mistakes: Vec<Mistake>,
}

/// A mistake that learners make.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mistake {
    /// What one sees.
    pub seen: String,
    /// What helps.
    pub help: String,
}
