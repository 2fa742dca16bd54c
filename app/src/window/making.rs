//! What a person does in the Make stage.

use egui::Context;

use super::studio::Studio;
use crate::work::making::{Handiwork, Make, PieceCopy};

impl Studio {
    /// What the Make stage holds.
    pub fn handiwork(&self) -> &Handiwork {
        &self.handiwork
    }

    /// Brings the Make stage up to date with the document.
    pub(super) fn follow_making(&mut self, ctx: &Context) {
        let now = ctx.input(|i| i.time);
        self.handiwork.update(ctx, &self.document, self.view.stage, now);
    }

    /// Does what a person asks for in the Make stage.
    pub(super) fn make(&mut self, ctx: &Context, make: Make) {
        match make {
            Make::Take(copy) => self.take_under(copy),
            Make::Other => {
                let other = self.handiwork.other(self.document.project());
                self.take_under(other);
            }
            Make::Size(size) => self.handiwork.take_size(self.document.project(), size),
            Make::NextSize => {
                let next = self.handiwork.next_size(self.document.project());
                self.handiwork.take_size(self.document.project(), next);
            }
            Make::Find(find) => self.handiwork.find = find,
            Make::Write(on) => self.handiwork.write = on,
            Make::Note(round, text) => {
                self.handiwork.note(&mut self.document, round, &text);
            }
            Make::Step(_) | Make::Done | Make::Back | Make::GoTo(_) | Make::Accept => {
                let now = ctx.input(|i| i.time);
                self.handiwork.move_hands(&mut self.document, now, &make);
            }
        }
    }

    fn take_under(&mut self, copy: PieceCopy) {
        if self.document.piece_id() != copy.piece {
            self.document.select_piece(copy.piece);
            self.view.let_go();
        }
        self.handiwork.take(copy);
    }
}
