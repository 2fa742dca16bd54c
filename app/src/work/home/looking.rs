//! Looks at files that may lie anywhere, on threads of their own: a mount that is gone answers
//! when it likes, and neither the window nor its first frame waits for that.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, sync_channel};
use std::time::{Duration, Instant};

use egui::Context;

/// How long the first frame waits for all of them: a disk at hand has answered long before.
pub(crate) const FIRST_WAIT: Duration = Duration::from_millis(300);

/// Looks under way, one at most for each file.
#[derive(Debug)]
pub(crate) struct Looks<Found> {
    under_way: Vec<(PathBuf, Receiver<Found>)>,
}

impl<Found> Default for Looks<Found> {
    fn default() -> Self {
        Self { under_way: Vec::new() }
    }
}

impl<Found: Send + 'static> Looks<Found> {
    /// Has `look` done for the file at `path`, unless an earlier look at it still hangs; `ctx`
    /// is woken by the answer.
    pub(crate) fn begin(
        &mut self,
        ctx: &Context,
        path: &Path,
        look: impl FnOnce(&Path) -> Found + Send + 'static,
    ) {
        if self.under_way.iter().any(|(of, _)| of == path) {
            return;
        }
        let (tell, hear) = sync_channel(1);
        let (ctx, of) = (ctx.clone(), path.to_owned());
        let run = move || {
            // The window may be gone by now; then nobody needs to hear it.
            let _ = tell.send(look(&of));
            ctx.request_repaint();
        };
        // Without a thread nothing is known of the file, as of one that does not answer.
        if std::thread::Builder::new().name("look".into()).spawn(run).is_ok() {
            self.under_way.push((path.to_owned(), hear));
        }
    }

    /// What has been found since this was last asked, each with its file.
    pub(crate) fn heard(&mut self) -> Vec<(PathBuf, Found)> {
        let mut found = Vec::new();
        self.under_way.retain(|(path, hear)| match hear.try_recv() {
            Ok(own) => {
                found.push((path.clone(), own));
                false
            }
            Err(std::sync::mpsc::TryRecvError::Empty) => true,
            Err(std::sync::mpsc::TryRecvError::Disconnected) => false,
        });
        found
    }

    /// The same, after a wait until then for those that have not answered.
    pub(crate) fn heard_by(&mut self, until: Instant) -> Vec<(PathBuf, Found)> {
        let mut found = Vec::new();
        self.under_way.retain(|(path, hear)| {
            let left = until.saturating_duration_since(Instant::now());
            match hear.recv_timeout(left) {
                Ok(own) => {
                    found.push((path.clone(), own));
                    false
                }
                Err(std::sync::mpsc::RecvTimeoutError::Timeout) => true,
                Err(std::sync::mpsc::RecvTimeoutError::Disconnected) => false,
            }
        });
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_does_not_answer_holds_up_no_other_and_is_looked_at_once() {
        let (mut looks, ctx) = (Looks::default(), Context::default());
        let soon = || Instant::now() + FIRST_WAIT;
        let (answer, hangs) = sync_channel::<bool>(0);
        looks.begin(&ctx, Path::new("hangs"), move |_| hangs.recv().unwrap_or(false));
        looks.begin(&ctx, Path::new("there"), |_| true);
        assert_eq!(looks.heard_by(soon()), [(PathBuf::from("there"), true)]);
        looks.begin(&ctx, Path::new("hangs"), |_| panic!("it is looked at already"));
        assert_eq!(looks.heard(), []);
        answer.send(true).expect("it still waits");
        assert_eq!(looks.heard_by(soon()), [(PathBuf::from("hangs"), true)]);
    }
}
