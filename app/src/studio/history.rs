//! Undo: whole projects, a hundred at most. A gesture (a drag, a run of nudges) is one step.

use std::collections::VecDeque;

use plumpline_core::Project;

/// Steps that can be taken back.
const MOST_STEPS: usize = 100;

/// What can be undone and redone.
#[derive(Debug, Default)]
pub struct History {
    undo: VecDeque<Project>,
    redo: Vec<Project>,
    /// The project as it was when the gesture under way began.
    gesture: Option<Project>,
}

impl History {
    /// Notes that `before` was changed in one step. During a gesture nothing is noted: the
    /// gesture's end does that.
    pub fn note(&mut self, before: Project) {
        if self.gesture.is_some() {
            return;
        }
        self.push(before);
    }

    fn push(&mut self, before: Project) {
        self.redo.clear();
        self.undo.push_back(before);
        if self.undo.len() > MOST_STEPS {
            self.undo.pop_front();
        }
    }

    /// Begins a gesture from `now`; one that is already under way goes on.
    pub fn begin(&mut self, now: &Project) {
        if self.gesture.is_none() {
            self.gesture = Some(now.clone());
        }
    }

    /// Ends the gesture: one step, or none if `now` is as it was.
    pub fn commit(&mut self, now: &Project) {
        if let Some(before) = self.gesture.take()
            && before != *now
        {
            self.push(before);
        }
    }

    /// Gives the gesture up; returns the project as it was.
    pub fn cancel(&mut self) -> Option<Project> {
        self.gesture.take()
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

    /// Takes a step back: `now` becomes what it was before.
    pub fn undo(&mut self, now: &mut Project) {
        self.commit(now);
        if let Some(before) = self.undo.pop_back() {
            self.redo.push(std::mem::replace(now, before));
        }
    }

    /// Takes a step again.
    pub fn redo(&mut self, now: &mut Project) {
        if let Some(after) = self.redo.pop() {
            self.undo.push_back(std::mem::replace(now, after));
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
            history.note(now.clone());
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
            history.note(project(20.0 + f64::from(i)));
        }
        assert_eq!(history.undo_steps(), MOST_STEPS);
    }
}
