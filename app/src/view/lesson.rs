//! What the Lesson stage shows.

use std::collections::BTreeMap;

use plumpline_core::lesson::course::{LessonGuess, SampleRule};

use super::Turned;

/// What the panel under the sum shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LessonChart {
    /// Stitches that each round gains, against what lies flat.
    #[default]
    Gains,
    /// The angle missing at each round, as counted and as the cloth lies.
    Angles,
}

impl LessonChart {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Gains, Self::Angles];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Gains => say!("chart-increases"),
            Self::Angles => say!("chart-angles"),
        }
    }
}

/// What the Lesson stage shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LessonView {
    /// The step, from 0; after the last comes the piece that is selected.
    pub step: usize,
    /// What was predicted at each step.
    pub said: BTreeMap<usize, LessonGuess>,
    /// A number being typed as a prediction.
    pub typed: String,
    /// What the sample's knob was set to; none leaves the sample as the step has it.
    pub knob: Option<u32>,
    /// How the sample is turned; none leaves it as it is shown best.
    pub turned: Option<Turned>,
    /// The round of the sample that is selected.
    pub round: Option<u32>,
    /// What the panel under the sum shows.
    pub chart: LessonChart,
    /// Whether the lesson fills the window, for a projector.
    pub presents: bool,
    /// Whether numbers are hidden.
    pub hides_numbers: bool,
    /// Whether the cloth is held where it has come to, not yet at rest.
    pub stopped: bool,
}

impl LessonView {
    /// Goes to a step of a lesson of so many, the piece itself counted after them.
    pub fn go_to(&mut self, step: usize, steps: usize) {
        let step = step.min(steps);
        if step != self.step {
            (self.knob, self.turned, self.round) = (None, None, None);
            self.typed.clear();
            self.stopped = false;
            self.step = step;
        }
    }

    /// The sample as it is set: that of the step, unless its knob was turned.
    pub fn set(&self, sample: SampleRule) -> SampleRule {
        self.knob.map_or(sample, |value| sample.with_knob(value))
    }

    /// How the two pictures are turned of `sample`, or of a piece: a circle is seen from above
    /// at first, what stands up from the side; the second picture shows what the first does
    /// not.
    pub fn sights(&self, sample: Option<SampleRule>) -> [Turned; 2] {
        use SampleRule::{Hyperbolic, Level, Steady};
        let lies = matches!(sample, Some(Steady { .. } | Level { .. } | Hyperbolic { .. }));
        let tilt_deg = if lies { 90.0 } else { 14.0 };
        let first = self.turned.unwrap_or(Turned { tilt_deg, ..Turned::default() });
        let other = if first.tilt_deg.abs() >= 45.0 { 10.0 } else { 90.0 };
        [first, Turned { tilt_deg: other, ..first }]
    }

    /// What was predicted at the step that is shown.
    pub fn guess(&self) -> Option<LessonGuess> {
        self.said.get(&self.step).copied()
    }
}
