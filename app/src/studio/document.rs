//! The document: the project in hand, where it is saved, and what can be undone.

use std::path::{Path, PathBuf};

use plumpline_core::{Gauge, Knot, Outline, Piece, Project, file};

use super::history::History;

/// The project that opens when none is named.
const SAMPLE: &str = include_str!("../../../sample-projects/float.ron");

/// The project in hand.
#[derive(Debug)]
pub struct Document {
    project: Project,
    /// The project as it is on the disk (or as it was opened).
    saved: Project,
    path: Option<PathBuf>,
    piece: usize,
    /// The run of edits the last one belonged to.
    run: Option<(&'static str, usize)>,
    /// What can be undone.
    pub history: History,
}

impl Document {
    /// A document of `project`, unchanged, saved at `path`.
    pub fn new(project: Project, path: Option<PathBuf>) -> Self {
        Self {
            saved: project.clone(),
            project,
            path,
            piece: 0,
            run: None,
            history: History::default(),
        }
    }

    /// The sample float, not saved anywhere.
    pub fn sample() -> Self {
        let project = file::parse(SAMPLE).unwrap_or_else(|_| blank());
        Self::new(project, None)
    }

    /// A plain new project: one ball.
    pub fn blank() -> Self {
        Self::new(blank(), None)
    }

    /// The project.
    pub fn project(&self) -> &Project {
        &self.project
    }

    /// Where it is saved.
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// Whether it differs from what is saved.
    pub fn is_changed(&self) -> bool {
        self.project != self.saved
    }

    /// The piece in hand.
    pub fn piece(&self) -> &Piece {
        &self.project.pieces[self.piece]
    }

    /// Index of the piece in hand.
    pub fn piece_index(&self) -> usize {
        self.piece
    }

    /// Takes another piece in hand.
    pub fn take_piece(&mut self, index: usize) {
        self.piece = index.min(self.project.pieces.len().saturating_sub(1));
    }

    /// Changes the project in one step (or as part of the gesture under way). Returns
    /// whether anything changed.
    pub fn change(&mut self, edit: impl FnOnce(&mut Project, usize)) -> bool {
        self.change_in_run(None, edit)
    }

    /// As [`Self::change`]; edits of one run that follow one another are one step.
    pub fn change_in_run(
        &mut self,
        run: Option<(&'static str, usize)>,
        edit: impl FnOnce(&mut Project, usize),
    ) -> bool {
        let before = self.project.clone();
        edit(&mut self.project, self.piece);
        let changed = self.project != before;
        if changed {
            let goes_on = run.is_some() && run == self.run && !self.history.can_redo();
            if !goes_on {
                self.history.note(before);
            }
            self.run = run;
        }
        changed
    }

    /// Begins a gesture: all changes until its end are one step.
    pub fn begin(&mut self) {
        self.run = None;
        self.history.begin(&self.project);
    }

    /// Ends the gesture.
    pub fn commit(&mut self) {
        self.history.commit(&self.project);
    }

    /// Gives the gesture up: the project is as it was before.
    pub fn cancel(&mut self) {
        if let Some(before) = self.history.cancel() {
            self.project = before;
        }
    }

    /// Takes a step back.
    pub fn undo(&mut self) {
        self.run = None;
        self.history.undo(&mut self.project);
        self.take_piece(self.piece);
    }

    /// Takes a step again.
    pub fn redo(&mut self) {
        self.run = None;
        self.history.redo(&mut self.project);
        self.take_piece(self.piece);
    }

    /// Notes that `project` now stands in the file at `path`.
    pub fn saved_as(&mut self, project: Project, path: PathBuf) {
        self.saved = project;
        self.path = Some(path);
    }
}

fn blank() -> Project {
    let ball = plain_ball(Gauge::default());
    Project { title: "New project".into(), ..Project::of_piece(ball) }
}

/// A ball to begin from, at this gauge.
pub(super) fn plain_ball(gauge: Gauge) -> Piece {
    let knots = (0..=4)
        .map(|i| {
            let turn = std::f64::consts::FRAC_PI_4 * f64::from(i);
            let radius = if i % 4 == 0 { 0.0 } else { 40.0 * turn.sin() };
            Knot::new(
                (radius * 10.0).round() / 10.0,
                (400.0 * (1.0 - turn.cos())).round() / 10.0,
            )
        })
        .collect();
    Piece::new("Ball", Outline { knots }, gauge)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_first_projects_are_sound() {
        assert!(file::parse(SAMPLE).is_ok(), "{:?}", file::parse(SAMPLE));
        assert!(blank().validate().is_ok());
        assert!(plumpline_core::plan(Document::sample().piece()).is_ok());
    }

    #[test]
    fn undoing_every_change_brings_back_what_was_saved() {
        let mut document = Document::sample();
        let first = document.project().clone();
        document.change(|project, piece| project.pieces[piece].ease = 0.9);
        assert!(document.is_changed());
        document.undo();
        assert_eq!(document.project(), &first);
        assert!(!document.is_changed());
    }
}
