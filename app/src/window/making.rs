//! What a person does in the Make stage.

use egui::{Context, Id, ViewportBuilder, ViewportClass, ViewportId};

use super::studio::Studio;
use crate::bench::action::Actions;
use crate::bench::keys;
use crate::stages::make::small;
use crate::view::Stage;
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
            Make::Small => self.handiwork.small = !self.handiwork.small,
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

    /// The small window that stays on top, while it is open; what is asked for there is done
    /// with the other `actions` of the frame. Where a desktop opens no second window it lies
    /// within the first.
    pub(super) fn show_small_window(&mut self, ctx: &Context, actions: &mut Actions) {
        if self.view.stage != Stage::Make || !self.handiwork.small {
            return;
        }
        let bench = self.bench(ctx);
        let window = ViewportBuilder::default()
            .with_title(say!("making-small-title"))
            .with_app_id(super::APP)
            .with_inner_size(small::SIZE)
            .with_min_inner_size(small::LEAST)
            .with_always_on_top();
        let id = ViewportId(Id::unique("under the hook"));
        let closed = ctx.show_viewport_immediate(id, window, |ui, class| {
            let apart = class != ViewportClass::EmbeddedWindow;
            if apart {
                // It has keys of its own; within the window they have been read.
                keys::read_making(ui.ctx(), &bench, actions);
            }
            small::show(ui, &bench, actions);
            apart && ui.input(|i| i.viewport().close_requested())
        });
        if closed {
            actions.make(Make::Small);
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
