//! What a person asks of the tracing of a picture: never saved, never undone.

use plumpline_trace::{Stroke, TracedEnd, TracedSide};

/// What the hand draws on the picture.
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
    pub const fn text(self) -> &'static str {
        match self {
            Self::Rectangle => "around it",
            Self::Thing => "on it",
            Self::Background => "beside it",
        }
    }
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
    /// What the hand draws next.
    pub tool: TraceTool,
    /// Whether it is drawing.
    pub drawing: bool,
    /// Whether the work was stopped, until something else is asked for.
    pub stopped: bool,
}

impl TraceView {
    /// Whether anything was drawn.
    pub fn is_marked(&self) -> bool {
        self.frame.is_some() || !self.strokes.is_empty()
    }
}
