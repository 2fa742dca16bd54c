//! Which of what a person asks for is one of the first steps.

use super::action::Action;
use super::command::Command;
use crate::document::edit::Edit;
use crate::work::home::desk::FirstSteps;

/// Ticks the step that `action` is.
pub fn learn(steps: &mut FirstSteps, action: &Action) {
    match action {
        Action::Edit(Edit::MoveKnots { .. }) => steps.knot = true,
        Action::Edit(Edit::Pin { .. })
        | Action::Command(
            Command::TogglePin | Command::MoreStitches | Command::FewerStitches,
        ) => steps.count = true,
        Action::Command(Command::ShowSheet | Command::CopySheet | Command::SaveSheet) => {
            steps.sheet = true
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_step_is_ticked_by_doing_it() {
        let mut steps = FirstSteps::default();
        learn(&mut steps, &Action::Edit(Edit::Simplicity(Some(0.5))));
        assert_eq!(steps, FirstSteps::default());
        let outline = plumpline_core::Outline { knots: Vec::new() };
        learn(&mut steps, &Action::Edit(Edit::MoveKnots { lead: 1, outline }));
        learn(&mut steps, &Action::Edit(Edit::Pin { round: 3, count: 12 }));
        assert!(steps.knot && steps.count && !steps.done());
        learn(&mut steps, &Action::Command(Command::ShowSheet));
        assert!(steps.done());
    }
}
