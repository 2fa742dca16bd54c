//! The Make stage's state: which copy is under the hook, the way back, the clock, and what is
//! not on the disk yet. What is saved of it is the project's [`Making`](plumpline_core::making::Making).
//!
//! Steps here are no steps of undo: they are taken back in the stage, one by one.

mod clock;
mod command;
mod courses;
mod keep;

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::Context;
use plumpline_core::making::{By, Course, Outlook, Place, Progress, Stand};
use plumpline_core::{Piece, Project};

use super::app::Studio;
use super::document::Document;
use super::view::Stage;
use clock::Clock;
pub use command::MakeCommand;
use courses::Courses;

/// Steps of one copy that can be taken back one by one; before them it is stitch by stitch.
const MOST_STEPS: usize = 500;

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
    Take(usize, u32),
    /// Takes the next copy or piece that is not made under the hook.
    Other,
    /// Writes a note on this round, or removes it.
    Note(u32, String),
    /// Puts the keyboard on the note of the round, or away from it.
    Write(bool),
    /// Takes the plan as it is now for what was worked before it changed.
    Accept,
    /// Asks which round to go to, with this typed so far, or no longer.
    Find(Option<String>),
}

/// How the whole project stands.
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
    /// Index of the piece under the hook, and which copy of it, from 1.
    under: (usize, u32),
    clock: Clock,
    /// Places each copy came from, newest last.
    trails: BTreeMap<(usize, u32), Vec<Place>>,
    /// The round to go to, as far as it is typed.
    pub find: Option<String>,
    /// Whether the note's field is to take the keyboard.
    pub write: bool,
    /// Whether a step is not on the disk yet.
    due: bool,
    /// Whether the last one could not be saved in the project's file.
    failed: bool,
}

impl Handiwork {
    /// The piece under the hook, by its index, and which copy of it, from 1.
    pub fn under(&self) -> (usize, u32) {
        (self.under.0, self.under.1.max(1))
    }

    /// The course of a piece, or why it has none. None until the stage has been shown.
    pub fn course(&self, piece: usize) -> Option<Result<&Arc<Course>, &str>> {
        self.courses.of(piece)
    }

    /// Time since the last step, s.
    pub fn since_step(&self, now: f64) -> f64 {
        self.clock.since(now)
    }

    /// Whether there is a step of the copy under the hook to take back by itself.
    pub fn has_trail(&self) -> bool {
        self.trails.get(&self.under()).is_some_and(|trail| !trail.is_empty())
    }

    /// Whether steps go into the project's file by themselves.
    pub fn keeps(&self) -> bool {
        !self.failed
    }

    /// Lets everything go: another project is in hand.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// Follows the document: the piece in hand, its copies, its plans. Does nothing but stop
    /// the clock where the stage is not in sight.
    fn update(&mut self, document: &Document, stage: Stage, now: f64) {
        if stage != Stage::Make {
            self.clock.stop();
            self.find = None;
            return;
        }
        let project = document.project();
        if self.courses.update(project) {
            // A way back leads over rounds as they were.
            self.trails.clear();
        }
        let piece = document.piece_index();
        if self.under.0 != piece {
            self.take(piece, 1);
        }
        let edge = format!("at its edge of {edge} stitches: sew it on there.");
        Some(match piece.copies {
            1 => format!("{} is open {edge}", piece.name),
            n => format!("Each {} of {n} is open {edge}", piece.name),
        })
    };
    project.pieces.iter().enumerate().filter_map(open).collect()
}
