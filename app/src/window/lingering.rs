//! Work that takes so long that a person wonders: told of, and stopped where they say so.

use egui::Context;

use super::studio::Studio;
use crate::bench::command::Command;
use crate::work::lingering::{Lingering, LongWork};

impl Studio {
    /// The work that lingers, if any: what keeps files from being saved comes first.
    pub(super) fn lingering(&self) -> Option<Lingering> {
        self.files
            .lingering()
            .or_else(|| self.proofreading.lingering())
            .or_else(|| self.printing.lingering())
            .or_else(|| self.sizing.lingering())
            .or_else(|| self.toy.lingering())
    }

    /// Stops it.
    pub(super) fn stop(&mut self, ctx: &Context, work: LongWork) {
        match work {
            LongWork::File => self.files.give_up(ctx),
            LongWork::Proofread => self.proofreading.give_up(ctx),
            LongWork::Sheet => self.printing.give_up(ctx),
            LongWork::Sizes => self.sizing.give_up(ctx),
            LongWork::Toy => self.toy.give_up(ctx),
        }
    }

    /// Tells that a command has to wait.
    pub(super) fn refuse(&mut self, command: Command) {
        let words = command.text().trim_end_matches('…');
        self.say(say!("told-words-has-to-wait-a-file-dialog-is", words = words), true);
    }
}
