//! What the outline board shows and what is held on it: never saved, never undone.

use std::collections::BTreeSet;

use plumpline_core::Outline;
use plumpline_core::piece::Picture;

/// The state of the board beside the selected knot.
#[derive(Debug, Clone, Default)]
pub struct BoardView {
    /// Selected knots beside the first.
    pub also: BTreeSet<usize>,
    /// What is dragged.
    pub drag: Option<Drag>,
    /// Whether a frame is being drawn round knots.
    pub band: bool,
    /// Whether knots snap.
    pub magnet: bool,
    /// Whether the hand is on the picture, not on the knots.
    pub picture: bool,
    /// Whether the body lies over a picture as its edge alone, so that the picture is seen.
    pub bare: bool,
    /// Whether a knot's place is told by its width, not its radius.
    pub by_width: bool,
}

/// A drag on the board: what is held, and what was there when it began.
#[derive(Debug, Clone, PartialEq)]
pub enum Drag {
    /// Knots, all that are selected.
    Knots {
        /// The one under the hand.
        lead: usize,
        /// Whether it is held by its mirror image.
        mirrored: bool,
        /// The outline the knots are moved in.
        base: Outline,
        /// The outline to show as it was.
        ghost: Outline,
    },
    /// A handle that scales the whole outline.
    Whole {
        /// Which.
        handle: Handle,
        /// The outline as it was.
        ghost: Outline,
    },
    /// The picture, or an end of its known length.
    Picture {
        /// The end, or the whole picture.
        end: Option<usize>,
        /// The picture as it was.
        base: Picture,
    },
}

impl Drag {
    /// The outline as it was, where the outline is what is dragged.
    pub fn ghost(&self) -> Option<&Outline> {
        match self {
            Self::Knots { ghost, .. } | Self::Whole { ghost, .. } => Some(ghost),
            Self::Picture { .. } => None,
        }
    }
}

/// A handle that scales the whole outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Handle {
    /// Over its top: the height, from its foot.
    Height,
    /// Right of its middle: the width, from its axis.
    Width,
}

impl BoardView {
    /// Lets go of all that belongs to one piece.
    pub fn let_go(&mut self) {
        self.also.clear();
        self.drag = None;
        self.band = false;
        self.picture = false;
    }
}
