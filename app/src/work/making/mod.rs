//! The Make stage's state: which size and which copy of it is under the hook, the way back, the
//! clock, and what is not on the disk yet. What is saved of it is the project's
//! [`Making`](plumpline_core::making::Making).
//!
//! Steps here are no steps of undo: they are taken back in the stage, one by one.

mod clock;
mod courses;
mod hands;
mod sized;
mod sizes;

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::Context;
use plumpline_core::making::{By, Outlook, Progress, ReturnPlace, Stand, WorkedPiece};
use plumpline_core::{Piece, PieceId, Project};

use crate::document::Document;
use crate::view::Stage;
use clock::Clock;
use courses::Courses;
use sized::SizedCourses;
pub use sizes::{SizeTally, size_title, size_words};

/// Steps of one copy that can be taken back one by one; before them it is stitch by stitch.
const MOST_STEPS: usize = 500;

/// One copy of a piece: the second ear, say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct PieceCopy {
    /// The piece.
    pub piece: PieceId,
    /// Which copy of it, counted from 1.
    pub copy: u32,
}

/// Something a person does in the Make stage.
#[derive(Debug, Clone, PartialEq)]
pub enum Make {
    /// Works on.
    Step(By),
    /// What the stop asks for is done.
    Done,
    /// Takes the last step back.
    Back,
    /// Takes up work at the start of this round.
    GoTo(u32),
    /// Takes this copy of this piece under the hook.
    Take(PieceCopy),
    /// Takes the next copy or piece that is not made under the hook.
    Other,
    /// Takes the size of this name under the hook; without one, the project as designed.
    Size(Option<String>),
    /// Takes the next of the sizes under the hook.
    NextSize,
    /// Writes a note on this round, or removes it.
    Note(u32, String),
    /// Puts the keyboard on the note of the round, or away from it.
    Write(bool),
    /// Takes the plan as it is now for what was worked before it changed.
    Accept,
    /// Asks which round to go to, with this typed so far, or no longer.
    Find(Option<String>),
    /// Opens the small window that stays on top, or closes it.
    Small,
}

/// How the whole project stands, at the size under the hook.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Whole {
    /// Copies that are made, of all pieces together.
    pub made: u32,
    /// Copies there are to make.
    pub copies: u32,
    /// Time worked, s.
    pub seconds: f64,
    /// Time left, s.
    pub seconds_left: f64,
}

/// What the Make stage holds beside the project.
#[derive(Debug, Default)]
pub struct Handiwork {
    courses: Courses,
    sized: SizedCourses,
    /// The size under the hook.
    size: Option<String>,
    /// All sizes there were when it was last seen.
    sizes: Vec<String>,
    /// What is under the hook.
    under: PieceCopy,
    /// Whether work has been taken up where it was left.
    taken_up: bool,
    clock: Clock,
    /// Places each copy came from, by size and copy, newest last.
    trails: BTreeMap<(Option<String>, PieceCopy), Vec<ReturnPlace>>,
    /// The round to go to, as far as it is typed.
    pub find: Option<String>,
    /// Whether the note's field is to take the keyboard.
    pub write: bool,
    /// Whether the small window is open.
    pub small: bool,
    /// Whether a step is not on the disk yet.
    pub(crate) due: bool,
    /// Whether the last one could not be saved in the project's file.
    pub(crate) failed: bool,
}

impl Handiwork {
    /// What is under the hook.
    pub fn under(&self) -> PieceCopy {
        PieceCopy { copy: self.under.copy.max(1), ..self.under }
    }

    /// The course of a piece at the size under the hook, or why it has none. None until the
    /// stage has been shown, and while the size is being planned.
    pub fn course(&self, piece: PieceId) -> Option<Result<&Arc<WorkedPiece>, &str>> {
        match self.size() {
            None => self.courses.of(piece),
            Some(size) => self.sized.of(size, piece),
        }
    }

    /// The progress of a copy at the size under the hook, once it is begun.
    pub fn begun<'a>(&self, project: &'a Project, of: PieceCopy) -> Option<&'a Progress> {
        project.making.of(of.piece, self.size(), of.copy)
    }

    /// Time since the last step, s.
    pub fn since_step(&self, now: f64) -> f64 {
        self.clock.since(now)
    }

    /// Whether there is a step of the copy under the hook to take back by itself.
    pub fn has_trail(&self) -> bool {
        self.trails.get(&self.key()).is_some_and(|trail| !trail.is_empty())
    }

    /// Whether steps go into the project's file by themselves.
    pub fn keeps(&self) -> bool {
        !self.failed
    }

    /// Lets everything go: another project is open.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// Follows the document: its sizes, the selected piece, its copies, its plans. Plans
    /// nothing and stops the clock where the stage is not in sight.
    pub(crate) fn update(
        &mut self,
        ctx: &Context,
        document: &Document,
        stage: Stage,
        now: f64,
    ) {
        let project = document.project();
        self.follow_size(project);
        if stage != Stage::Make {
            self.clock.stop();
            self.find = None;
            return;
        }
        let piece = document.piece_id();
        if !self.taken_up {
            self.taken_up = true;
            let size = project.making.at.last().and_then(|last| last.size.clone());
            self.take_size(project, size);
            self.take(self.last_copy(project, piece));
        }
        if self.under.piece != piece {
            self.take(self.last_copy(project, piece));
        }
        // A way back leads over rounds as they were.
        match self.size.clone() {
            None => {
                if self.courses.update(document) {
                    self.trails.retain(|(size, ..), _| size.is_some());
                }
            }
            Some(size) => {
                if self.sized.update(ctx, document, &size) {
                    self.trails.retain(|(size, ..), _| size.is_none());
                }
            }
        }
        let copies = document.piece().copies;
        self.under.copy = self.under.copy.clamp(1, copies);
        self.clock.run(now);
    }

    pub(crate) fn take(&mut self, copy: PieceCopy) {
        if copy != self.under {
            self.under = copy;
            self.put_away();
        }
    }

    /// What was under the hook is laid aside.
    fn put_away(&mut self) {
        self.find = None;
        self.clock.stop();
    }

    /// The copy after the one under the hook that is not made yet, round the end to the
    /// first; the next at all where every one is made.
    pub fn other(&self, project: &Project) -> PieceCopy {
        let copies = |piece: &Piece| {
            let id = piece.id;
            (1..=piece.copies).map(move |copy| PieceCopy { piece: id, copy })
        };
        let all: Vec<PieceCopy> = project.pieces.iter().flat_map(copies).collect();
        let under = self.under();
        let from = all.iter().position(|copy| *copy == under).map_or(0, |at| at + 1);
        let mut others = all.iter().cycle().skip(from).take(all.len()).copied();
        let next = others.clone().next().unwrap_or(under);
        let unmade = |copy: &PieceCopy| {
            *copy != under && self.stand(project, *copy) != Some(Stand::Made)
        };
        others.find(unmade).unwrap_or(next)
    }

    /// Where a copy stands; none where its piece has no plan, or none yet.
    pub fn stand(&self, project: &Project, copy: PieceCopy) -> Option<Stand> {
        let course = self.course(copy.piece)?.ok()?;
        let begun = self.begun(project, copy);
        Some(begun.map_or(Stand::Stitch { round: 1, done: 0 }, |p| p.stand(course)))
    }

    /// What is left of a copy.
    pub fn outlook(&self, project: &Project, copy: PieceCopy) -> Option<Outlook> {
        let course = self.course(copy.piece)?.ok()?;
        let habits = &project.piece(copy.piece)?.habits;
        Some(project.making.outlook(self.begun(project, copy), course, habits))
    }

    /// How the whole project stands, at the size under the hook.
    pub fn whole(&self, project: &Project) -> Whole {
        let mut whole = Whole::default();
        for piece in &project.pieces {
            let of = |copy| PieceCopy { piece: piece.id, copy };
            whole.copies += piece.copies;
            let is_mine = |p: &&Progress| p.piece == piece.id && p.size == self.size;
            let mine = || project.making.at.iter().filter(is_mine);
            let begun = || mine().filter(|p| p.copy <= piece.copies);
            let outlooks = || begun().filter_map(|p| self.outlook(project, of(p.copy)));
            whole.seconds += mine().map(|p| p.seconds).sum::<f64>();
            whole.seconds_left += outlooks().map(|o| o.seconds_left).sum::<f64>();
            let made = |p: &&Progress| self.stand(project, of(p.copy)) == Some(Stand::Made);
            whole.made += begun().filter(made).count() as u32;
            // Copies not begun are all alike.
            let fresh = piece.copies - begun().count() as u32;
            if fresh > 0
                && let Some(copy) =
                    (1..=piece.copies).find(|&c| self.begun(project, of(c)).is_none())
                && let Some(outlook) = self.outlook(project, of(copy))
            {
                whole.seconds_left += f64::from(fresh) * outlook.seconds_left;
            }
        }
        whole
    }

    /// Steps that can be taken back for the copy under the hook.
    fn trail(&mut self) -> &mut Vec<ReturnPlace> {
        self.trails.entry(self.key()).or_default()
    }

    /// The copy under the hook, among those of all sizes.
    fn key(&self) -> (Option<String>, PieceCopy) {
        (self.size.clone(), self.under())
    }

    /// Remembers where the copy under the hook came from.
    fn came_from(&mut self, place: ReturnPlace) {
        let trail = self.trail();
        trail.push(place);
        if trail.len() > MOST_STEPS {
            trail.remove(0);
        }
    }
}

/// How a copy is called: `Ear`, or `Ear 2` where several are made.
pub fn copy_name(piece: &Piece, copy: u32) -> String {
    if piece.copies > 1 { format!("{} {copy}", piece.name) } else { piece.name.clone() }
}

/// What is still to be sewn once every piece is made: pieces left open at their last round.
/// Seams between pieces would be told here.
pub fn to_sew(project: &Project, handiwork: &Handiwork) -> Vec<String> {
    let open = |piece: &Piece| {
        let edge = handiwork.course(piece.id)?.ok()?.open_edge?;
        Some(say!("make-sew-on", piece = piece.name, copies = piece.copies, edge = edge))
    };
    project.pieces.iter().filter_map(open).collect()
}
