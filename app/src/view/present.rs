//! What fills the window when the Shape stage is presented.

/// A view that can be presented.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PresentView {
    /// The outline board.
    Outline,
    /// The body.
    Body,
    /// The bend strip.
    Bend,
}

impl PresentView {
    /// All of them, in the order of the window.
    pub const ALL: [Self; 3] = [Self::Outline, Self::Body, Self::Bend];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Outline => say!("present-outline"),
            Self::Body => say!("present-body"),
            Self::Bend => say!("present-bend"),
        }
    }
}

/// Whether the Shape stage is presented, and what of it: one view or two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Presented {
    /// Whether it fills the window.
    pub on: bool,
    /// The view that was chosen first.
    first: PresentView,
    /// The view that was chosen last, where there are two.
    second: Option<PresentView>,
    /// Whether its numbers are hidden, for learners to work them out.
    pub hides_numbers: bool,
}

impl Default for Presented {
    fn default() -> Self {
        Self {
            on: false,
            first: PresentView::Outline,
            second: Some(PresentView::Body),
            hides_numbers: false,
        }
    }
}

impl Presented {
    /// Whether this view is among them.
    pub fn shows(self, view: PresentView) -> bool {
        self.first == view || self.second == Some(view)
    }

    /// The views, in the order of the window.
    pub fn views(self) -> Vec<PresentView> {
        PresentView::ALL.into_iter().filter(|&view| self.shows(view)).collect()
    }

    /// With this view, or without it: the last of all stays, and a third takes the place of
    /// the one that was chosen first.
    #[must_use]
    pub fn toggled(self, view: PresentView) -> Self {
        match (self.first == view, self.second) {
            (true, Some(other)) => Self { first: other, second: None, ..self },
            (true, None) => self,
            (false, Some(other)) if other == view => Self { second: None, ..self },
            (false, Some(other)) => Self { first: other, second: Some(view), ..self },
            (false, None) => Self { second: Some(view), ..self },
        }
    }

    /// This view alone, filling the window.
    #[must_use]
    pub fn alone(self, view: PresentView) -> Self {
        Self { on: true, first: view, second: None, ..self }
    }

    /// Whether numbers are hidden now.
    pub fn hides(self) -> bool {
        self.on && self.hides_numbers
    }
}

#[cfg(test)]
mod tests {
    use super::PresentView::{Bend, Body, Outline};
    use super::*;

    #[test]
    fn there_is_always_one_view_and_never_a_third() {
        let mut shown = Presented::default();
        assert_eq!(shown.views(), [Outline, Body]);
        shown = shown.toggled(Bend);
        assert_eq!(shown.views(), [Body, Bend], "the one chosen first makes room");
        shown = shown.toggled(Body);
        assert_eq!(shown.views(), [Bend]);
        shown = shown.toggled(Bend);
        assert_eq!(shown.views(), [Bend], "the last of all stays");
        shown = shown.toggled(Outline);
        assert_eq!(shown.views(), [Outline, Bend]);
        assert_eq!(shown.alone(Body).views(), [Body]);
    }
}
