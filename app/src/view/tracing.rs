//! What a person asks of the tracing of a picture: never saved, never undone.

use plumpline_trace::{Stroke, TracedEnd, TracedSide};

/// What is drawn on the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TraceTool {
    /// A rectangle around the thing.
    #[default]
    Rectangle,
    /// A stroke over the thing.
    Thing,
    /// A stroke over its background.
    Background,
}

impl TraceTool {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Rectangle, Self::Thing, Self::Background];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Rectangle => say!("mark-rectangle"),
            Self::Thing => say!("mark-on-it"),
            Self::Background => say!("mark-beside-it"),
        }
    }
}

/// What draws a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawnBy {
    /// The pointer, as long as it is held down.
    Hand,
    /// The keyboard, from one press of Space to the next.
    Keys,
}

/// What the next mark is drawn with, and where.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TracePen {
    /// What is drawn.
    pub tool: TraceTool,
    /// Where the keyboard draws, once it has been on the picture.
    pub at: Option<(f64, f64)>,
    /// What draws, while a mark is under way.
    pub drawing: Option<DrawnBy>,
}

/// How a picture is to be traced. Places are pixels of the whole picture as it is seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TraceView {
    /// Which side is taken.
    pub side: TracedSide,
    /// Where the working starts.
    pub start: TracedEnd,
    /// Whether what no turned shape has is cut off.
    pub cut: bool,
    /// How high the thing is, mm; what the picture's known length says if not typed.
    pub height_mm: Option<f64>,
    /// How far the outline may lie from the edge, mm; a share of the height if not typed.
    pub tolerance_mm: Option<f64>,
    /// The rectangle that was drawn around the thing.
    pub frame: Option<[(f64, f64); 2]>,
    /// The strokes that were drawn over it and beside it.
    pub strokes: Vec<Stroke>,
    /// What the next mark is drawn with.
    pub pen: TracePen,
    /// Whether the work was stopped, until something else is asked for.
    pub stopped: bool,
}

/// Most places of one stroke.
const MOST_PLACES: usize = 400;
/// A rectangle with a side of fewer pixels is a slip of the hand.
const LEAST_FRAME: f64 = 4.0;

impl TraceView {
    /// Whether anything was drawn.
    pub fn is_marked(&self) -> bool {
        self.frame.is_some() || !self.strokes.is_empty()
    }

    /// The same without what is drawn with, which changes nothing until something is drawn.
    #[must_use]
    pub fn without_pen(&self) -> Self {
        Self { pen: TracePen::default(), ..self.clone() }
    }

    /// Begins a mark at a place; a stroke has this radius.
    pub fn begin_mark(&mut self, by: DrawnBy, at: (f64, f64), radius: f64) {
        self.pen.drawing = Some(by);
        match self.pen.tool {
            TraceTool::Rectangle => self.frame = Some([at, at]),
            tool => self.strokes.push(Stroke {
                thing: tool == TraceTool::Thing,
                points: vec![at],
                radius,
            }),
        }
    }

    /// Draws on to a place.
    pub fn draw_to(&mut self, at: (f64, f64)) {
        match self.pen.tool {
            TraceTool::Rectangle => self.frame = self.frame.map(|[from, _]| [from, at]),
            _ => {
                if let Some(stroke) = self.strokes.last_mut()
                    && stroke.points.len() < MOST_PLACES
                    && stroke.points.last() != Some(&at)
                {
                    stroke.points.push(at);
                }
            }
        }
    }

    /// Ends the mark that is under way. A click draws no rectangle.
    pub fn end_mark(&mut self) {
        self.pen.drawing = None;
        let drawn =
            |[a, b]: &[(f64, f64); 2]| (a.0 - b.0).abs().min((a.1 - b.1).abs()) >= LEAST_FRAME;
        self.frame = self.frame.filter(drawn);
    }

    /// Takes the last stroke back, or the rectangle where there is none.
    pub fn take_mark_back(&mut self) {
        self.pen.drawing = None;
        if self.strokes.pop().is_none() {
            self.frame = None;
        }
    }

    /// Gives up the mark that is under way.
    pub fn give_mark_up(&mut self) {
        match self.pen.tool {
            TraceTool::Rectangle => self.frame = None,
            _ => {
                self.strokes.pop();
            }
        }
        self.pen.drawing = None;
    }

    /// Takes all marks back.
    pub fn clear_marks(&mut self) {
        self.pen.drawing = None;
        self.frame = None;
        self.strokes.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_begun_ended_given_up_and_taken_back() {
        let mut view = TraceView::default();
        view.begin_mark(DrawnBy::Keys, (10.0, 10.0), 3.0);
        view.draw_to((60.0, 90.0));
        view.end_mark();
        assert_eq!(view.frame, Some([(10.0, 10.0), (60.0, 90.0)]));
        view.pen.tool = TraceTool::Background;
        view.begin_mark(DrawnBy::Hand, (1.0, 1.0), 3.0);
        view.draw_to((1.0, 1.0));
        view.draw_to((5.0, 1.0));
        view.end_mark();
        assert_eq!(view.strokes[0].points, vec![(1.0, 1.0), (5.0, 1.0)]);
        assert!(!view.strokes[0].thing);
        view.begin_mark(DrawnBy::Keys, (7.0, 7.0), 3.0);
        view.give_mark_up();
        assert_eq!(view.strokes.len(), 1);
        view.take_mark_back();
        assert!(view.strokes.is_empty() && view.is_marked());
        view.take_mark_back();
        assert!(!view.is_marked());
        view.pen.tool = TraceTool::Rectangle;
        view.begin_mark(DrawnBy::Hand, (7.0, 7.0), 3.0);
        view.draw_to((8.0, 7.0));
        view.end_mark();
        assert!(!view.is_marked(), "a click draws nothing");
    }
}
