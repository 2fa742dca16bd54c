//! What panels ask for. They change nothing themselves.

use super::command::Command;
use crate::document::choice::Choice;
use crate::document::edit::Edit;
use crate::view::look::Look;
use crate::work::home::DeskAction;
use crate::work::lingering::LongWork;
use crate::work::making::Make;
use crate::work::proofread::Proofread;
use plumpline_core::lesson::course::LessonGuess;

/// A request from a panel.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// A command, as from a menu or a key.
    Command(Command),
    /// A change of the selected piece.
    Edit(Edit),
    /// A gesture begins: what follows is one step.
    Begin,
    /// The gesture ends.
    Commit,
    /// Takes steps back, or again, until so many stand.
    GoToStep(usize),
    /// Something with files, recovery or the first steps.
    Desk(DeskAction),
    /// A change of what is looked at.
    Look(Look),
    /// A change of the pattern that is proofread.
    Proofread(Proofread),
    /// Something done in the Make stage.
    Make(Make),
    /// Something said in the Lesson stage.
    Lesson(LessonAct),
    /// Stops work that takes too long.
    Stop(LongWork),
    /// A command that has to wait until a file is read or written.
    Refused(Command),
}

/// Something said in the Lesson stage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LessonAct {
    /// A prediction for the step that is shown.
    Say(LessonGuess),
    /// Another prediction is wanted there.
    AskAgain,
    /// Every prediction that was kept is dropped.
    Forget,
}

/// The requests of one frame, in order.
#[derive(Debug, Default)]
pub struct Actions {
    list: Vec<Action>,
}

impl Actions {
    /// Adds a request.
    pub fn push(&mut self, action: Action) {
        self.list.push(action);
    }

    /// Asks for a command.
    pub fn command(&mut self, command: Command) {
        self.push(Action::Command(command));
    }

    /// Asks for a change of the project.
    pub fn edit(&mut self, edit: Edit) {
        self.push(Action::Edit(edit));
    }

    /// Makes a choice about the selected piece.
    pub fn choose(&mut self, choice: Choice) {
        self.edit(Edit::Choice(choice));
    }

    /// Asks for a change of what is looked at.
    pub fn look(&mut self, look: Look) {
        self.push(Action::Look(look));
    }

    /// Says something in the Lesson stage.
    pub fn lesson(&mut self, act: LessonAct) {
        self.push(Action::Lesson(act));
    }

    /// Asks for something in the Make stage.
    pub fn make(&mut self, make: Make) {
        self.push(Action::Make(make));
    }

    /// Asks for something with files, recovery, the gauge book or the first steps.
    pub fn desk(&mut self, action: DeskAction) {
        self.push(Action::Desk(action));
    }

    /// Takes all requests out.
    pub fn take(&mut self) -> Vec<Action> {
        std::mem::take(&mut self.list)
    }
}
