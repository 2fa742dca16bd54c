//! How the Assembly stage is divided: parts, the toy, what is in hand; along the foot steps and
//! figures.

use egui::{Painter, Rect};

use crate::kit::divide::{Divided, mirrored};
use crate::kit::paint;
use crate::kit::tokens::{GAP, NARROW, Tokens};

/// Height of a panel's heading.
pub(super) const HEADING: f32 = 40.0;
/// Height of the buttons under the toy.
pub(super) const BUTTONS: f32 = 44.0;

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub struct AssemblyLayout {
    /// The list of parts.
    pub parts: Rect,
    /// The toy.
    pub picture: Rect,
    /// What is in hand, and the map of what carries it.
    pub side: Rect,
    /// The steps of putting it together.
    pub steps: Rect,
    /// Weight, balance and cautions.
    pub figures: Rect,
}

/// Divides `room`, the stage's part of the window.
pub fn divide(window: Rect, room: Rect) -> AssemblyLayout {
    let narrow = window.width() < NARROW;
    let (left, right) = if narrow { (212.0, 292.0) } else { (266.0, 358.0) };
    let (left, right) = match window.width() {
        wide if wide > 1700.0 => (left + 40.0, right + 60.0),
        wide if wide < 1000.0 => (188.0, 270.0),
        _ => (left, right),
    };
    let foot = if window.height() < 800.0 { 142.0 } else { 168.0 };
    let Divided { main, side: column } = Divided::beside(room, right);
    let Divided { main: above, side: steps } = Divided::above(main, foot);
    let Divided { main: side, side: figures } = Divided::above(column, foot);
    let (parts, picture) = above.split_left_right_at_x(above.left() + left);
    let picture = picture.with_min_x(picture.left() + GAP);
    AssemblyLayout { parts, picture, side, steps, figures }
}

impl AssemblyLayout {
    /// The same with left and right changed in `window`.
    #[must_use]
    pub fn mirrored(self, window: Rect) -> Self {
        let over = |rect: Rect| mirrored(rect, window);
        Self {
            parts: over(self.parts),
            picture: over(self.picture),
            side: over(self.side),
            steps: over(self.steps),
            figures: over(self.figures),
        }
    }

    /// Where the toy stands.
    pub fn field(&self) -> Rect {
        let picture = self.picture;
        let low = picture.bottom() - BUTTONS;
        picture
            .with_min_y(picture.top() + HEADING)
            .with_max_y(low)
            .shrink2(egui::vec2(2.0, 0.0))
    }

    /// The grounds of all panels.
    pub fn grounds(&self, painter: &Painter, t: &Tokens) {
        for panel in [self.parts, self.picture, self.side, self.steps, self.figures] {
            paint::panel(painter, panel, t);
        }
    }
}
