//! Undo: whole projects, a hundred at most. A gesture (a drag, a run of nudges) is one step,
//! and every step has a name.

use std::collections::VecDeque;

use plumpline_core::Project;

/// Steps that can be taken back.
const MOST_STEPS: usize = 100;

/// A step: what it was, and the project on its other side.
#[derive(Debug)]
struct HistoryStep {
    name: String,
    project: Project,
}

/// A gesture under way.
#[derive(Debug)]
struct Gesture {
    /// The project as it was when the gesture began.
    before: Project,
    /// What its first change is called.
    name: Option<String>,
}

/// Carries how far the making is over from the project there was to the one taken in its
/// place: what hands have made, no undo unmakes.
pub(crate) fn keep_making(was: &Project, now: &mut Project) {
    now.making = was.making.taken_back(&was.pieces, &now.pieces, &now.making);
}

/// What can be undone and redone.
#[derive(Debug, Default)]
pub struct History {
    undo: VecDeque<HistoryStep>,
    redo: Vec<HistoryStep>,
    gesture: Option<Gesture>,
}

impl History {
    /// Notes that `before` was changed in one step called `name`. During a gesture only the
    /// name is noted: the gesture's end does the rest.
    pub fn note(&mut self, name: String, before: Project) {
        match &mut self.gesture {
            Some(gesture) => drop(gesture.name.get_or_insert(name)),
            None => self.push(HistoryStep { name, project: before }),
        }
    }

    fn push(&mut self, step: HistoryStep) {
        self.redo.clear();
        self.undo.push_back(step);
        if self.undo.len() > MOST_STEPS {
            self.undo.pop_front();
        }
    }

    /// Begins a gesture from `now`; one that is already under way goes on.
    pub fn begin(&mut self, now: &Project) {
        if self.gesture.is_none() {
            self.gesture = Some(Gesture { before: now.clone(), name: None });
        }
    }

    /// Ends the gesture: one step, or none if `now` is as it was. Returns whether there is one.
    pub fn commit(&mut self, now: &Project) -> bool {
        if let Some(Gesture { before, name }) = self.gesture.take()
            && before != *now
        {
            let name = name.unwrap_or_else(|| say!("step-change").into());
            self.push(HistoryStep { name, project: before });
            return true;
        }
        false
    }

    /// Gives the gesture up; returns the project as it was.
    pub fn cancel(&mut self) -> Option<Project> {
        self.gesture.take().map(|gesture| gesture.before)
    }

    /// Whether a gesture is under way.
    pub fn in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        !self.undo.is_empty()
    }

    /// Whether there is a step to take again.
    pub fn can_redo(&self) -> bool {
        !self.redo.is_empty()
    }

    /// Steps that can be taken back.
    pub fn undo_steps(&self) -> usize {
        self.undo.len()
    }

    /// The names of all steps, first made first; those from [`Self::undo_steps`] on have been
    /// taken back.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.undo.iter().chain(self.redo.iter().rev()).map(|step| step.name.as_str())
    }

    /// The projects before each step that can be taken back, newest first.
    pub fn earlier(&self) -> impl Iterator<Item = &Project> {
        self.undo.iter().rev().map(|step| &step.project)
    }

    /// Takes a step back: `now` becomes what it was before.
    pub fn undo(&mut self, now: &mut Project) {
        self.commit(now);
        if let Some(step) = self.undo.pop_back() {
            let project = std::mem::replace(now, step.project);
            keep_making(&project, now);
            self.redo.push(HistoryStep { name: step.name, project });
        }
    }

    /// Takes a step again.
    pub fn redo(&mut self, now: &mut Project) {
        if let Some(step) = self.redo.pop() {
            let project = std::mem::replace(now, step.project);
            keep_making(&project, now);
            self.undo.push_back(HistoryStep { name: step.name, project });
        }
    }

    /// Takes steps back, or again, until `steps` of them stand.
    pub fn go_to(&mut self, steps: usize, now: &mut Project) {
        self.commit(now);
        while self.undo.len() > steps {
            self.undo(now);
        }
        while self.undo.len() < steps && self.can_redo() {
            self.redo(now);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::{Gauge, Knot, Outline, Piece};

    fn project(width: f64) -> Project {
        let knots = vec![Knot::new(0.0, 0.0), Knot::new(width, 30.0), Knot::new(0.0, 60.0)];
        Project::of_piece(Piece::new("ball", Outline { knots }, Gauge::default()))
    }

    #[test]
    fn a_gesture_is_one_step_and_an_idle_one_is_none() {
        let mut history = History::default();
        let mut now = project(30.0);
        history.begin(&now);
        for width in [31.0, 32.0, 33.0] {
            history.note(format!("Drag to {width}"), now.clone());
            now = project(width);
        }
        history.commit(&now);
        assert_eq!(history.undo_steps(), 1);
        history.begin(&now);
        history.commit(&now);
        assert_eq!(history.undo_steps(), 1);
        history.undo(&mut now);
        assert_eq!(now, project(30.0));
        history.redo(&mut now);
        assert_eq!(now, project(33.0));
    }

    #[test]
    fn the_oldest_steps_are_forgotten() {
        let mut history = History::default();
        for i in 0..130 {
            history.note("Widen".into(), project(20.0 + f64::from(i)));
        }
        assert_eq!(history.undo_steps(), MOST_STEPS);
    }

    #[test]
    fn any_step_can_be_gone_back_to_and_forward_again() {
        let mut history = History::default();
        let mut now = project(20.0);
        for i in 1..=5 {
            history.note(format!("Step {i}"), now.clone());
            now = project(20.0 + f64::from(i));
        }
        for (steps, width) in [(2, 22.0), (5, 25.0), (0, 20.0), (4, 24.0), (9, 25.0)] {
            history.go_to(steps, &mut now);
            assert_eq!(now, project(width), "{steps} steps");
            let names: Vec<_> = history.names().collect();
            assert_eq!(names, ["Step 1", "Step 2", "Step 3", "Step 4", "Step 5"]);
        }
    }

    #[test]
    fn a_gesture_bears_the_name_of_its_first_change() {
        let mut history = History::default();
        let mut now = project(30.0);
        history.begin(&now);
        for name in ["Drag knot 2", "Move knot 2"] {
            history.note(name.into(), now.clone());
            now = project(31.0);
        }
        history.commit(&now);
        assert_eq!(history.names().collect::<Vec<_>>(), ["Drag knot 2"]);
    }
}
