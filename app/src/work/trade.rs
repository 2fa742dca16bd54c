//! The trade-off of ease, worked out on a thread of its own: eleven plans take longer than
//! a frame. A result that comes too late for the piece as it is now is dropped.

use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};

use egui::Context;
use plumpline_core::Piece;
use plumpline_core::ease::{EaseStep, ease_steps};

/// The steps of ease of the piece in hand, and the work under way on them.
#[derive(Debug, Default)]
pub struct Trade {
    /// The piece they are wanted for, its ease and name left aside.
    piece: Option<Piece>,
    /// Counts the pieces they were wanted for.
    revision: u64,
    steps: Vec<EaseStep>,
    /// The piece the steps, or the failure, belong to.
    answered: u64,
    error: Option<String>,
    running: Option<Running>,
}

/// Work under way.
#[derive(Debug)]
struct Running {
    revision: u64,
    stop: Arc<AtomicBool>,
    step: Arc<AtomicU32>,
    hear: Receiver<Answer>,
}

/// What a thread found, and for which piece.
#[derive(Debug)]
struct Answer {
    revision: u64,
    steps: Result<Vec<EaseStep>, String>,
}

impl Trade {
    /// The last steps there are; see [`Self::is_current`].
    pub fn steps(&self) -> &[EaseStep] {
        &self.steps
    }

    /// Whether they are those of the piece as it is now.
    pub fn is_current(&self) -> bool {
        self.revision > 0 && self.answered == self.revision && self.error.is_none()
    }

    /// Why the piece as it is now has none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref().filter(|_| self.answered == self.revision)
    }

    /// The step being worked out, counted from 1.
    pub fn at_step(&self) -> Option<u32> {
        self.running.as_ref().map(|r| r.step.load(Ordering::Relaxed) + 1)
    }

    /// Takes what has been found and starts what is `wanted`: while the hand holds
    /// something it is not `still`, and nothing is started. Returns whether there is
    /// anything new to show.
    pub fn update(&mut self, ctx: &Context, piece: &Piece, wanted: bool, still: bool) -> bool {
        let before = (self.revision, self.answered, self.running.is_some());
        if wanted {
            self.want(piece);
        }
        self.receive();
        if let Some(running) = &self.running
            && (running.revision != self.revision || !wanted)
        {
            running.stop.store(true, Ordering::Relaxed);
        }
        if wanted && still && self.running.is_none() && self.answered != self.revision {
            self.start(ctx);
        }
        before != (self.revision, self.answered, self.running.is_some())
    }

    /// Notes which piece the steps are wanted for.
    fn want(&mut self, piece: &Piece) {
        let mut piece = piece.clone();
        piece.ease = 0.0;
        piece.name.clear();
        piece.picture = None;
        if self.piece.as_ref() != Some(&piece) {
            self.piece = Some(piece);
            self.revision += 1;
        }
    }

    fn receive(&mut self) {
        let Some(running) = &self.running else { return };
        let answer = match running.hear.try_recv() {
            Ok(answer) => Some(answer),
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => None,
        };
        let (revision, stopped) = (running.revision, running.stop.load(Ordering::Relaxed));
        self.running = None;
        match answer {
            Some(answer) => {
                self.take(answer);
            }
            None if !stopped => {
                let steps = Err("The steps could not be worked out".into());
                self.take(Answer { revision, steps });
            }
            None => {}
        }
    }

    /// Takes an answer, unless it is one to an earlier piece.
    fn take(&mut self, answer: Answer) -> bool {
        if answer.revision != self.revision {
            return false;
        }
        self.answered = answer.revision;
        match answer.steps {
            Ok(steps) => (self.steps, self.error) = (steps, None),
            Err(error) => (self.steps, self.error) = (Vec::new(), Some(error)),
        }
        true
    }

    fn start(&mut self, ctx: &Context) {
        let Some(piece) = self.piece.clone() else { return };
        let revision = self.revision;
        let (tell, hear) = sync_channel(1);
        let stop = Arc::new(AtomicBool::new(false));
        let step = Arc::new(AtomicU32::new(0));
        let (ctx, halt, at) = (ctx.clone(), Arc::clone(&stop), Arc::clone(&step));
        let work = move || {
            let mut go_on = |step| {
                at.store(step, Ordering::Relaxed);
                ctx.request_repaint();
                if halt.load(Ordering::Relaxed) {
                    ControlFlow::Break(())
                } else {
                    ControlFlow::Continue(())
                }
            };
            let steps = ease_steps(&piece, &mut go_on).map_err(|e| e.to_string());
            if !halt.load(Ordering::Relaxed) {
                // The window may be gone by now; then nobody needs to hear it.
                let _ = tell.send(Answer { revision, steps });
            }
            drop(tell);
            ctx.request_repaint();
        };
        if std::thread::Builder::new().name("ease steps".into()).spawn(work).is_ok() {
            self.running = Some(Running { revision, stop, step, hear });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    fn answer(revision: u64) -> Answer {
        Answer { revision, steps: Ok(Vec::new()) }
    }

    #[test]
    fn an_answer_that_comes_too_late_is_dropped() {
        let mut trade = Trade::default();
        let mut piece = Document::sample().piece().clone();
        trade.want(&piece);
        let first = trade.revision;
        piece.firmness = plumpline_core::Firmness::FIRM;
        trade.want(&piece);
        assert!(!trade.take(answer(first)), "the piece is another by now");
        assert!(!trade.is_current());
        assert!(trade.take(answer(trade.revision)));
        assert!(trade.is_current());
    }

    #[test]
    fn ease_itself_changes_no_step() {
        let mut trade = Trade::default();
        let mut piece = Document::sample().piece().clone();
        trade.want(&piece);
        piece.ease = 0.9;
        piece.name = "Other".into();
        trade.want(&piece);
        assert_eq!(trade.revision, 1);
    }

    #[test]
    fn nothing_is_started_under_the_hand() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        let piece = Document::sample().piece().clone();
        trade.update(&ctx, &piece, true, false);
        assert!(trade.at_step().is_none());
        trade.update(&ctx, &piece, true, true);
        assert!(trade.at_step().is_some());
        for _ in 0..600 {
            std::thread::sleep(std::time::Duration::from_millis(50));
            trade.update(&ctx, &piece, true, true);
            if trade.is_current() {
                break;
            }
        }
        assert_eq!(trade.steps().len(), plumpline_core::ease::STEPS as usize);
    }
}
