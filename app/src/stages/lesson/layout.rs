//! How the Lesson stage is divided: the cloth, the question, the sum of angles and the chart;
//! along the foot the steps. When it presents, it has the whole window and larger type.

use egui::{Painter, Rect, vec2};

use crate::bench::Bench;
use crate::kit::divide::{Divided, mirrored};
use crate::kit::paint;
use crate::kit::tokens::{GAP, PAD, Tokens};

/// Height of a panel's heading.
pub(super) const HEADING: f32 = 44.0;
/// Height of the slider under the cloth.
pub(super) const SLIDER: f32 = 62.0;

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub struct LessonLayout {
    /// The cloth.
    pub picture: Rect,
    /// The question and its answer.
    pub question: Rect,
    /// The sum of angles.
    pub sum: Option<Rect>,
    /// What each round gains, or misses.
    pub chart: Rect,
    /// The steps.
    pub steps: Rect,
    /// How much larger type is than usual.
    pub larger: f32,
    /// Whether the sample has something to change.
    pub has_knob: bool,
}

/// Divides `room`, the stage's part of the window, or all of it where it presents.
pub fn divide(window: Rect, room: Rect, bench: &Bench<'_>) -> LessonLayout {
    let view = &bench.view.lesson;
    let presents = view.presents;
    let has_knob = view.step < bench.lesson.course().steps.len();
    let room = if presents { window.shrink(GAP) } else { room };
    let larger = if presents { (window.height() / 560.0).clamp(1.15, 2.2) } else { 1.0 };
    let foot = if presents { 80.0 } else { 84.0 };
    let Divided { main: above, side: steps } = Divided::above(room, foot);
    let wide = above.width();
    if presents {
        let Divided { main: picture, side: column } = Divided::beside(above, 0.42 * wide);
        let Divided { main: question, side: chart } =
            Divided::above(column, (0.36 * column.height()).max(150.0));
        return LessonLayout { picture, question, sum: None, chart, steps, larger, has_knob };
    }
    let right = (0.26 * wide).clamp(246.0, 420.0);
    let middle = (0.25 * wide).clamp(264.0, 400.0);
    let Divided { main, side: column } = Divided::beside(above, right);
    let Divided { main: picture, side: question } = Divided::beside(main, middle);
    let low = (0.36 * column.height()).clamp(206.0, 262.0);
    let (sum, chart) = column.split_top_bottom_at_y(column.top() + low);
    let chart = chart.with_min_y(chart.top() + GAP);
    LessonLayout { picture, question, sum: Some(sum), chart, steps, larger, has_knob }
}

impl LessonLayout {
    /// The same with left and right changed in `window`.
    #[must_use]
    pub fn mirrored(self, window: Rect) -> Self {
        let over = |rect: Rect| mirrored(rect, window);
        Self {
            picture: over(self.picture),
            question: over(self.question),
            sum: self.sum.map(over),
            chart: over(self.chart),
            steps: over(self.steps),
            ..self
        }
    }

    /// Where the two pictures of the cloth stand.
    pub fn fields(&self) -> [Rect; 2] {
        let below = if self.has_knob { SLIDER * self.larger.min(1.4) } else { PAD };
        let inner = Rect::from_min_max(
            self.picture.min + vec2(4.0, HEADING * self.larger.min(1.5)),
            self.picture.max - vec2(4.0, below),
        );
        let (first, second) = inner.split_top_bottom_at_fraction(0.6);
        [first, second]
    }

    /// The grounds of all panels.
    pub fn grounds(&self, painter: &Painter, t: &Tokens) {
        let panels = [self.picture, self.question, self.chart, self.steps];
        for panel in panels.into_iter().chain(self.sum) {
            paint::panel(painter, panel, t);
        }
    }
}
