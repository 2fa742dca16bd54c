//! What the panels of the Lesson stage read: the step, its sample as it is set, and the angles
//! of its rounds.

use plumpline_core::lesson::course::{Figures, LessonCourse, LessonGuess, LessonStep};
use plumpline_core::lesson::course::{KnobOf, SampleKnob};
use plumpline_core::lesson::curvature::{self, Curvature, CurvatureSum, RoundGain};

use crate::bench::Bench;
use crate::view::lesson::LessonView;

/// The angles and gains of the rounds that are shown.
pub(super) struct Bent {
    pub(super) sum: CurvatureSum,
    pub(super) gains: Vec<RoundGain>,
    /// Whether it is drawn shut, so that the gathered loops take a part of the sum.
    pub(super) drawn_shut: bool,
    /// The same sum over the forecast of a piece, where a piece is shown.
    pub(super) forecast: Option<CurvatureSum>,
}

/// What the panels read.
pub(super) struct LessonBench<'a> {
    pub(super) bench: &'a Bench<'a>,
    pub(super) view: &'a LessonView,
    pub(super) course: &'a LessonCourse,
    /// The step, or none where the piece itself is shown.
    pub(super) step: Option<&'a LessonStep>,
    /// The figures by which the question is answered.
    pub(super) figures: Option<Figures>,
    /// The rounds that are shown.
    pub(super) bent: Option<Bent>,
    pub(super) knob: Option<SampleKnob>,
    /// Why there are no rounds to show.
    pub(super) error: Option<String>,
    /// How much larger type is than usual.
    pub(super) larger: f32,
}

impl<'a> LessonBench<'a> {
    pub(super) fn new(bench: &'a Bench<'a>, larger: f32) -> Self {
        let (view, course) = (&bench.view.lesson, bench.lesson.course());
        let mut here = Self {
            bench,
            view,
            course,
            step: course.steps.get(view.step),
            figures: None,
            bent: None,
            knob: None,
            error: None,
            larger,
        };
        let made = match here.step {
            Some(step) => here.take_sample(step),
            None => {
                here.take_piece();
                Ok(())
            }
        };
        here.error = made.err().map(|error| error.to_string());
        here
    }

    fn take_sample(&mut self, step: &LessonStep) -> plumpline_core::Result<()> {
        let gauge = self.bench.document.piece().gauge;
        self.figures = Some(step.figures(gauge)?);
        let rule = self.view.set(step.sample);
        self.knob = Some(rule.knob(gauge));
        let sample = rule.at(gauge)?;
        let start = sample.start.joined().unwrap_or(0);
        let flat = vec![rule.flat(gauge); sample.counts.len()];
        self.bent = Some(Bent {
            gains: curvature::gains(start, &sample.counts, &flat),
            sum: Figures::of(rule, &sample, gauge).curvature,
            drawn_shut: sample.stuffed,
            forecast: None,
        });
        Ok(())
    }

    fn take_piece(&mut self) {
        let Some(plan) = self.bench.plan else { return };
        let piece = self.bench.document.piece();
        let curvature = Curvature::of_plan(piece, plan);
        self.bent = Some(Bent {
            sum: curvature.worked,
            gains: curvature.gains,
            drawn_shut: curvature.ends.end,
            forecast: Some(curvature.forecast),
        });
    }

    /// What was predicted.
    pub(super) fn guess(&self) -> Option<LessonGuess> {
        self.view.guess()
    }

    /// Whether what the rounds do may be shown: before a prediction it would tell the answer.
    pub(super) fn is_open(&self) -> bool {
        self.step.is_none() || self.guess().is_some()
    }

    /// Whether numbers may be shown.
    pub(super) fn tells_numbers(&self) -> bool {
        !self.view.hides_numbers
    }

    /// The round that is selected.
    pub(super) fn round(&self) -> Option<u32> {
        match self.step {
            Some(_) => self.view.round,
            None => self.bench.view.current_round(),
        }
    }

    /// `points` as large as type is here.
    pub(super) fn size(&self, points: f32) -> f32 {
        points * self.larger
    }

    /// What the knob changes, in words.
    pub(super) fn knob_words(&self, of: KnobOf) -> &str {
        let words = &self.course.words;
        match of {
            KnobOf::Gain => &words.knob_gain,
            KnobOf::Middle => &words.knob_middle,
            KnobOf::Side => &words.knob_side,
            KnobOf::Change => &words.knob_change,
            KnobOf::Every => &words.knob_every,
        }
    }
}
