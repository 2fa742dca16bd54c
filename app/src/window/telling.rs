//! Lines for the person: what went wrong stays until it is read and put away; what was done
//! leaves by itself.

use std::time::Duration;

use egui::Context;

use super::studio::Studio;
use crate::bench::command::Command;
use crate::view::Notice;

/// How long a line on what was done stays, s: time to read it twice. Common practice, no
/// source.
const STAYS_S: f64 = 8.0;

impl Studio {
    /// Tells what was done, or what went `wrong`.
    pub(super) fn say(&mut self, text: impl Into<String>, wrong: bool) {
        self.view.notice = Some(Notice { text: text.into(), wrong, undo: false });
    }

    /// Tells what a key did to the project, with a way back: whoever pressed it unmeant sees
    /// it. `before` is how many steps there were.
    pub(super) fn say_step(&mut self, command: Command, before: usize) {
        let edits = matches!(
            command,
            Command::TogglePin
                | Command::MoreStitches
                | Command::FewerStitches
                | Command::NextKind
                | Command::NextLoop
                | Command::TogglePlain
                | Command::RemoveKnot
                | Command::ToggleCorner
        );
        let history = &self.document.history;
        let last = history.names().nth(history.undo_steps().saturating_sub(1));
        // A step may have gone into the one before, so that there are no more than there were.
        let Some(name) = last.filter(|_| edits && history.undo_steps() >= before) else {
            return;
        };
        let text = name.to_owned();
        self.view.notice = Some(Notice { text, wrong: false, undo: true });
    }

    /// Lets a line on what was done go once it has stood long enough.
    pub(super) fn let_notice_go(&mut self, ctx: &Context) {
        let now = ctx.input(|i| i.time);
        let Some(notice) = self.view.notice.as_ref().filter(|notice| !notice.wrong) else {
            self.noticed = None;
            return;
        };
        let since = match &self.noticed {
            Some((of, since)) if of == notice => *since,
            _ => now,
        };
        let left = since + STAYS_S - now;
        if left <= 0.0 {
            (self.view.notice, self.noticed) = (None, None);
            ctx.request_repaint();
            return;
        }
        self.noticed = Some((notice.clone(), since));
        ctx.request_repaint_after(Duration::from_secs_f64(left));
    }
}
