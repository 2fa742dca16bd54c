//! What the panels of this stage read, and how they ask for a change of a part.

use plumpline_core::Project;
use plumpline_core::project::toy::Toy;
use plumpline_core::project::toy::part::{Part, Seat};

use super::told;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::{PartTrait, ToyEdit};
use crate::work::toy::ToyMade;

/// What the panels of this stage read.
#[derive(Clone, Copy)]
pub(super) struct ToyBench<'a> {
    pub(super) bench: &'a Bench<'a>,
    pub(super) project: &'a Project,
    pub(super) toy: &'a Toy,
    /// The toy as it was made last, if it has the same parts.
    pub(super) made: Option<&'a ToyMade>,
}

impl ToyBench<'_> {
    pub(super) fn part(&self, index: usize) -> Option<&Part> {
        self.toy.parts.get(index)
    }

    /// What a part is called within a sentence.
    pub(super) fn called(&self, index: usize) -> String {
        told::called(self.project, index)
    }

    /// Asks for a change of a part.
    pub(super) fn change(
        &self,
        index: usize,
        what: PartTrait,
        actions: &mut Actions,
        change: impl FnOnce(&mut Part),
    ) {
        let Some(part) = self.part(index) else { return };
        let mut part = part.clone();
        change(&mut part);
        let called = self.called(index);
        let part = Box::new(part);
        actions.edit(Edit::Toy(ToyEdit::Change { index, what, part, called }));
    }

    /// Asks for a change of how a part sits.
    pub(super) fn reseat(
        &self,
        index: usize,
        what: PartTrait,
        actions: &mut Actions,
        change: impl FnOnce(&mut Seat),
    ) {
        self.change(index, what, actions, |part| {
            if let Some(seat) = &mut part.on {
                change(seat);
            }
        });
    }
}
