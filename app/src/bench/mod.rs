//! What panels may read.

pub mod action;
pub mod command;
pub mod first_steps;
pub mod keys;

use plumpline_core::calibrate::{GaugeBook, Struck};
use plumpline_core::{Plan, Units, Wording};

use crate::document::Document;
use crate::kit::Tokens;
use crate::view::View;
use crate::work::body::BodyShown;
use crate::work::home::desk::Desk;
use crate::work::lesson::LessonShown;
use crate::work::line_up::LineUp;
use crate::work::lingering::Lingering;
use crate::work::making::Handiwork;
use crate::work::outlining::Outlining;
use crate::work::picture::Tracing;
use crate::work::proofread::Proofreading;
use crate::work::sheet::Printing;
use crate::work::sizes::Sizing;
use crate::work::small_pictures::SmallPictures;
use crate::work::toy::ToyShown;
use crate::work::trade::Trade;
use command::Command;

/// Everything a panel may read while it draws. It changes nothing through this.
#[derive(Clone, Copy)]
pub struct Bench<'a> {
    /// The open project.
    pub document: &'a Document,
    /// What is looked at.
    pub view: &'a View,
    /// The plan to show: the last that could be made.
    pub plan: Option<&'a Plan>,
    /// That plan in the words of the project.
    pub words: Option<&'a Wording>,
    /// Why the piece as it stands has no plan.
    pub error: Option<&'a str>,
    /// The trade-off of simplicity.
    pub trade: &'a Trade,
    /// The written pattern being proofread.
    pub proofreading: &'a Proofreading,
    /// What the Make stage holds beside the project.
    pub making: &'a Handiwork,
    /// The sheet as far as it has been set.
    pub printing: &'a Printing,
    /// What follows from the sizes of the project.
    pub sizing: &'a Sizing,
    /// Pictures of the sizes.
    pub line_up: &'a LineUp,
    /// Small pictures of starters and of projects.
    pub small_pictures: &'a SmallPictures,
    /// What samples taught.
    pub gauges: &'a GaugeBook,
    /// What was struck out of that and can be put back.
    pub struck: &'a [Struck],
    /// The body as it is shown.
    pub body: &'a BodyShown,
    /// The toy as it is shown.
    pub toy: &'a ToyShown,
    /// The cloth of the lesson as it is shown.
    pub lesson: &'a LessonShown,
    /// What is remembered from run to run.
    pub desk: &'a Desk,
    /// The picture to trace, as far as it has been read.
    pub picture: &'a Tracing,
    /// That picture traced, as far as it is.
    pub outlining: &'a Outlining,
    /// Whether a file dialog is open, or a file is read or written.
    pub busy: bool,
    /// Work that takes so long that a person wonders.
    pub lingering: Option<Lingering>,
    /// The colours.
    pub t: &'static Tokens,
}

impl Bench<'_> {
    /// The unit of every length on screen, and the language of its numbers.
    pub fn unit(&self) -> Units {
        self.view.prefs.units()
    }

    /// What a command does, with its key.
    pub fn hint(&self, command: Command) -> String {
        command.hint(self.view.prefs.single_keys)
    }

    /// The key of a command in words.
    pub fn key_text(&self, command: Command) -> Option<String> {
        command.key_text(self.view.prefs.single_keys)
    }

    /// Colour of the yarn of a round.
    pub fn yarn_of(&self, yarn: usize) -> [u8; 3] {
        let yarns = &self.document.project().yarns;
        yarns.get(yarn).or_else(|| yarns.first()).map_or([128; 3], |y| y.colour)
    }

    /// Whether a selected knot is no end.
    pub fn holds_inner_knot(&self) -> bool {
        let last = self.document.piece().outline.knots.len().saturating_sub(1);
        self.view.knots().iter().any(|&k| k > 0 && k < last)
    }

    /// The count a round is pinned to.
    pub fn pin_of(&self, round: u32) -> Option<u32> {
        self.document.piece().pins.get(&round).copied()
    }

    /// What to work in a round.
    pub fn text_of(&self, round: u32) -> &'_ str {
        self.words.map_or("", |words| words.text_of(round))
    }

    /// The count a round has in the plan.
    pub fn count_of(&self, round: u32) -> Option<u32> {
        let index = (round as usize).checked_sub(1)?;
        self.plan?.rounds.get(index).map(|r| r.count)
    }
}
