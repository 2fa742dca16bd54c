//! How the room of a stage is divided.

use egui::{Rect, vec2};

use super::tokens::GAP;

/// A room in two: the main part, and what stands at its side or below it.
#[derive(Debug, Clone, Copy)]
pub struct Divided {
    /// The main part.
    pub main: Rect,
    /// The other.
    pub side: Rect,
}

impl Divided {
    /// `room` with `width` of it at its right.
    pub fn beside(room: Rect, width: f32) -> Self {
        let (main, side) = room.split_left_right_at_x(room.right() - width - GAP);
        Self { main, side: side.with_min_x(side.left() + GAP) }
    }

    /// `room` with `height` of it at its foot.
    pub fn above(room: Rect, height: f32) -> Self {
        let (main, side) = room.split_top_bottom_at_y(room.bottom() - height);
        Self { main: main.with_max_y(main.bottom() - GAP), side }
    }

    /// The same with left and right changed in `window`.
    #[must_use]
    pub fn mirrored(self, window: Rect) -> Self {
        Self { main: mirrored(self.main, window), side: mirrored(self.side, window) }
    }
}

/// `rect` with left and right changed in `window`.
pub fn mirrored(rect: Rect, window: Rect) -> Rect {
    let across = vec2(window.left() + window.right() - rect.left() - rect.right(), 0.0);
    rect.translate(across)
}
