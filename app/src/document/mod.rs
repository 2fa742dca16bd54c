//! The document: the open project, where it is saved, and what can be undone.

pub mod change;
pub mod choice;
pub mod edit;
mod first;
pub mod history;
pub mod measure;
mod names;
pub mod pieces;
pub mod shaping;
pub mod sizes;
pub mod toy;

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use plumpline_core::making::Making;
use plumpline_core::piece::Accepted;
use plumpline_core::{Piece, PieceId, Project};

use history::History;

/// Which state of which project: two of the same revision are alike, whatever documents they
/// were asked of. So what follows from a project is worked out once, and no project is compared
/// with another in every frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Revision(u64);

impl Revision {
    /// One that there never was before.
    fn next() -> Self {
        static LAST: AtomicU64 = AtomicU64::new(0);
        Self(LAST.fetch_add(1, Ordering::Relaxed))
    }
}

/// How a project differs from what is saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Differs {
    Not,
    /// In how far the making is, and in nothing else.
    InMaking,
    Yes,
}

/// The open project.
#[derive(Debug)]
pub struct Document {
    /// Whatever changes it calls [`Document::touch`].
    project: Project,
    /// The one it began with.
    id: Revision,
    revision: Revision,
    /// The project as it is on the disk (or as it was begun); none if neither is known.
    saved: Option<Project>,
    differs: Differs,
    path: Option<PathBuf>,
    /// The selected piece.
    piece: PieceId,
    /// The run of edits the last one belonged to.
    run: Option<(&'static str, usize)>,
    /// The piece that was edited since its counts were last accepted.
    edited: Option<PieceId>,
    /// What can be undone.
    pub history: History,
}

impl Document {
    /// A document of `project`, unchanged, saved at `path`.
    pub fn new(project: Project, path: Option<PathBuf>) -> Self {
        let revision = Revision::next();
        let first = project.pieces.first().map(|piece| piece.id).unwrap_or_default();
        Self {
            saved: Some(project.clone()),
            differs: Differs::Not,
            id: revision,
            revision,
            project,
            path: path.as_deref().map(from_root),
            piece: first,
            run: None,
            edited: None,
            history: History::default(),
        }
    }

    /// A document of `project` as a crash left it: it differs from what is `saved` at `path`.
    pub fn recovered(project: Project, path: Option<PathBuf>, saved: Option<Project>) -> Self {
        let mut document = Self { saved, ..Self::new(project, path) };
        document.touch();
        document
    }

    /// The sample float, not saved anywhere.
    pub fn sample() -> Self {
        Self::new(first::sample(), None)
    }

    /// A plain new project: one ball.
    pub fn blank() -> Self {
        Self::new(first::blank(), None)
    }

    /// The project.
    pub fn project(&self) -> &Project {
        &self.project
    }

    /// Where it is saved.
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// What its file holds, as far as is known; the project itself where nothing is.
    pub fn known(&self) -> &Project {
        self.saved.as_ref().unwrap_or(&self.project)
    }

    /// Whether it differs from what is saved.
    pub fn is_changed(&self) -> bool {
        self.differs != Differs::Not
    }

    /// Whether it differs from what is saved in how far the making is, and in nothing else.
    pub fn only_making_changed(&self) -> bool {
        self.differs == Differs::InMaking
    }

    /// Which document this is, however it is changed.
    pub fn id(&self) -> Revision {
        self.id
    }

    /// Which state of the project this is.
    pub fn revision(&self) -> Revision {
        self.revision
    }

    /// Notes that the project is another now.
    fn touch(&mut self) {
        self.revision = Revision::next();
        self.compare();
    }

    /// Notes how the project differs from what is saved.
    fn compare(&mut self) {
        self.differs = match &self.saved {
            Some(saved) if *saved == self.project => Differs::Not,
            Some(saved) => {
                let as_saved = Project { making: saved.making.clone(), ..self.project.clone() };
                if as_saved == *saved { Differs::InMaking } else { Differs::Yes }
            }
            None => Differs::Yes,
        };
    }

    /// The project, or if it could not be opened as it stands (a line that crosses itself,
    /// say) as it last could, with the making as far as it is now.
    pub fn soundest(&self) -> Option<Project> {
        let now = &self.project;
        let with_making = |earlier: &Project| {
            let mut project = earlier.clone();
            project.making =
                now.making.taken_back(&now.pieces, &project.pieces, &project.making);
            project
        };
        std::iter::once(now.clone())
            .chain(self.history.earlier().map(with_making))
            .find(|project| project.validate().is_ok())
    }

    /// Changes how far the making is. No step of undo: the Make stage takes back its own.
    pub fn work(&mut self, change: impl FnOnce(&mut Making)) {
        change(&mut self.project.making);
        self.touch();
    }

    /// The selected piece.
    pub fn piece(&self) -> &Piece {
        &self.project.pieces[self.place()]
    }

    /// Which piece is selected.
    pub fn piece_id(&self) -> PieceId {
        self.piece
    }

    /// Where the selected piece stands among the others.
    pub fn place(&self) -> usize {
        self.project.position(self.piece).unwrap_or(0)
    }

    /// Selects another piece; one that is not there changes nothing.
    pub fn select_piece(&mut self, id: PieceId) {
        if self.project.piece(id).is_some() {
            self.piece = id;
        }
    }

    /// Selects the piece that stands at `place` now, or the last, if the selected one is gone.
    fn reselect(&mut self, place: usize) {
        let pieces = &self.project.pieces;
        if self.project.piece(self.piece).is_none()
            && let Some(piece) = pieces.get(place).or(pieces.last())
        {
            self.piece = piece.id;
        }
    }

    /// Changes the project in one step called `name`, or as part of the gesture under way;
    /// changes of one run that follow one another are one step. Returns whether anything
    /// changed.
    pub fn change(
        &mut self,
        name: String,
        run: Option<(&'static str, usize)>,
        edit: impl FnOnce(&mut Project, PieceId),
    ) -> bool {
        let before = self.project.clone();
        edit(&mut self.project, self.piece);
        let changed = self.project != before;
        if changed && !before.making.is_empty() {
            let (then, now) = (&before.pieces, &self.project.pieces);
            self.project.making = before.making.following(then, now);
        }
        if changed {
            // A piece put in or taken out leaves those that are there as they were.
            let edited = before.pieces.len() == self.project.pieces.len()
                && before.piece(self.piece) != self.project.piece(self.piece);
            if edited {
                self.edited = Some(self.piece);
            }
            let goes_on = run.is_some() && run == self.run && !self.history.can_redo();
            if !goes_on {
                self.history.note(name, before);
            }
            self.run = run;
            self.touch();
        }
        changed
    }

    /// Whether the piece in hand was edited since its counts were last accepted, and the hand
    /// is done with it.
    pub fn awaits_counts(&self) -> bool {
        self.edited == Some(self.piece) && !self.history.in_gesture()
    }

    /// Accepts `counts`, those shown for the piece in hand once an edit of it has ended: part
    /// of the edit's step, so that undo brings back those before.
    pub fn accept(&mut self, counts: Vec<u32>) {
        self.edited = None;
        let Some(piece) = self.project.piece_mut(self.piece) else { return };
        let accepted = Some(Accepted { simplicity: piece.simplicity, counts });
        if piece.given.is_none() && piece.accepted != accepted {
            piece.accepted = accepted;
            self.touch();
        }
    }

    /// Begins a gesture: all changes until its end are one step.
    pub fn begin(&mut self) {
        self.run = None;
        self.history.begin(&self.project);
    }

    /// Ends the gesture.
    pub fn commit(&mut self) {
        if self.history.in_gesture() {
            self.run = None;
            if !self.history.commit(&self.project) {
                // As it was before: its counts have been accepted, or nobody chose them.
                self.edited = None;
            }
        }
    }

    /// Gives the gesture up: the project is as it was before.
    pub fn cancel(&mut self) {
        let place = self.place();
        if let Some(before) = self.history.cancel() {
            self.edited = None;
            let now = std::mem::replace(&mut self.project, before);
            history::keep_making(&now, &mut self.project);
            self.touch();
            self.reselect(place);
        }
    }

    /// Takes a step back.
    pub fn undo(&mut self) {
        (self.run, self.edited) = (None, None);
        let place = self.place();
        self.history.undo(&mut self.project);
        self.touch();
        self.reselect(place);
    }

    /// Takes a step again.
    pub fn redo(&mut self) {
        (self.run, self.edited) = (None, None);
        let place = self.place();
        self.history.redo(&mut self.project);
        self.touch();
        self.reselect(place);
    }

    /// Takes steps back, or again, until so many stand.
    pub fn go_to(&mut self, steps: usize) {
        (self.run, self.edited) = (None, None);
        let place = self.place();
        self.history.go_to(steps, &mut self.project);
        self.touch();
        self.reselect(place);
    }

    /// Calls pictures what they were called in the file that was saved: pairs of the name here
    /// and the name there. They are the same pictures, so this is no step.
    pub fn rename_pictures(&mut self, names: &[(String, String)]) {
        let traced = self.project.pieces.iter_mut().filter_map(|p| p.picture.as_mut());
        let traced = traced.map(|picture| &mut picture.path);
        for path in traced.chain(self.project.sheet.files_mut()) {
            if let Some((_, is)) = names.iter().find(|(was, _)| was == path) {
                path.clone_from(is);
            }
        }
        if !names.is_empty() {
            self.touch();
        }
    }

    /// Notes that `project` now stands in the file at `path`.
    pub fn saved_as(&mut self, project: Project, path: PathBuf) {
        self.saved = Some(project);
        self.compare();
        // What is typed from here on is a step of its own.
        self.run = None;
        self.path = Some(from_root(&path));
    }
}

/// The path from the root: a recovery copy of another run remembers it, begun elsewhere.
pub(crate) fn from_root(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_owned())
}

/// The project without what nothing is worked out from: how far its making is, and pictures
/// that are only looked at. A change of those is no reason to begin anew.
pub(crate) fn as_designed(project: &Project) -> Project {
    let mut project = project.clone();
    project.making = Making::default();
    for piece in &mut project.pieces {
        piece.picture = None;
    }
    project
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn undoing_every_change_brings_back_what_was_saved() {
        let mut document = Document::sample();
        let first = document.project().clone();
        let edit = |project: &mut Project, _| project.pieces[0].copies = 2;
        document.change("Copies".into(), None, edit);
        assert!(document.is_changed());
        document.undo();
        assert_eq!(document.project(), &first);
        assert!(!document.is_changed());
    }

    #[test]
    fn every_change_is_a_revision_of_its_own_and_nothing_else_is() {
        let mut document = Document::sample();
        let mut seen = vec![document.revision()];
        let mut passes = |document: &Document, what: &str| {
            assert!(!seen.contains(&document.revision()), "{what}");
            seen.push(document.revision());
        };
        let copies = |copies| move |project: &mut Project, _| project.pieces[0].copies = copies;
        document.change("Copies".into(), None, copies(4));
        passes(&document, "a change");
        document.undo();
        passes(&document, "undone");
        document.redo();
        passes(&document, "redone");
        document.go_to(0);
        passes(&document, "gone to");
        document.work(|making| making.begin(PieceId::new(0), None, 1).round = 3);
        passes(&document, "worked on");
        document.begin();
        document.change("Copies".into(), None, copies(5));
        passes(&document, "dragged");
        document.cancel();
        passes(&document, "given up");
        document.accept(vec![6, 12]);
        passes(&document, "its counts accepted");
        passes(&Document::sample(), "another document");
        let now = document.revision();
        document.change("Copies".into(), None, |_, _| ());
        document.saved_as(document.project().clone(), "float.ron".into());
        document.begin();
        document.commit();
        assert_eq!(document.revision(), now, "nothing is another");
        assert!(!document.is_changed());
    }

    #[test]
    fn what_differs_from_what_is_saved_is_known_after_every_change() {
        let mut document = Document::sample();
        document.work(|making| making.begin(PieceId::new(0), None, 1).round = 3);
        assert!(document.is_changed() && document.only_making_changed());
        document.change("Copies".into(), None, |project, _| project.pieces[0].copies = 4);
        assert!(document.is_changed() && !document.only_making_changed());
        let project = document.project().clone();
        document.saved_as(project.clone(), "float.ron".into());
        assert!(!document.is_changed());
        document.undo();
        assert!(document.is_changed());
        document.redo();
        assert!(!document.is_changed());
        let fresh = Document::recovered(project.clone(), None, Some(project.clone()));
        assert!(!fresh.is_changed());
        assert!(Document::recovered(project, None, None).is_changed());
    }
}
