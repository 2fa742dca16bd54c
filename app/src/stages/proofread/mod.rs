//! The Proofread stage: someone's written pattern on the left, what does not add up in it on
//! the right.

pub mod findings;
mod saying;
pub mod text;

use egui::Rect;

use crate::kit::divide::Divided;

/// Divides `room`, the stage's part of the window.
pub fn divide(room: Rect) -> Divided {
    Divided::beside(room, (0.36 * room.width()).clamp(330.0, 460.0))
}
