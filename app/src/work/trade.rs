//! The trade-off of ease, worked out on a thread: eleven plans take longer than a frame. What
//! comes too late for the piece as it is now is dropped.

use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

use egui::Context;
use plumpline_core::Piece;
use plumpline_core::ease::{EaseStep, ease_steps};

use super::worker::{Newest, Ticket, Voice, Worker};
use crate::document::{Document, Revision};

type StepsFound = Result<Vec<EaseStep>, String>;

/// The steps of ease of the selected piece, and the work under way on them.
#[derive(Debug)]
pub struct Trade {
    worker: Worker<Newest<EaseWish>, StepsFound>,
    /// What was last looked at: which piece of which project.
    seen: Option<(Revision, usize)>,
    /// The piece they are wanted for, its ease and name left aside.
    piece: Option<Piece>,
    asked: Option<Awaited>,
    steps: Vec<EaseStep>,
    error: Option<String>,
    /// Whether steps or error are those of the piece.
    answered: bool,
}

/// The wish that is still to be answered.
#[derive(Debug)]
struct Awaited {
    ticket: Ticket,
    progress: Arc<Progress>,
}

/// How far a wish is, and whether it is let go.
#[derive(Debug, Default)]
struct Progress {
    stop: AtomicBool,
    step: AtomicU32,
}

#[derive(Debug)]
struct EaseWish {
    piece: Piece,
    progress: Arc<Progress>,
}

impl Default for Trade {
    fn default() -> Self {
        Self {
            worker: Worker::new("ease steps", || work_out),
            seen: None,
            piece: None,
            asked: None,
            steps: Vec::new(),
            error: None,
            answered: false,
        }
    }
}

impl Trade {
    /// The last steps there are; see [`Self::is_current`].
    pub fn steps(&self) -> &[EaseStep] {
        &self.steps
    }

    /// Whether they are those of the piece as it is now.
    pub fn is_current(&self) -> bool {
        self.answered && self.error.is_none()
    }

    /// Why the piece as it is now has none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref().filter(|_| self.answered)
    }

    /// The step being worked out, counted from 1.
    pub fn at_step(&self) -> Option<u32> {
        let asked = self.asked.as_ref()?;
        Some(asked.progress.step.load(Ordering::Relaxed) + 1)
    }

    /// Takes what has been found and starts what is `wanted`: while a drag is under way it is
    /// not `still`, and nothing is started. Returns whether there is anything new to show.
    ///
    /// # Errors
    /// One line, once, where the work on another piece broke off; [`Self::error`] says so of
    /// this one.
    pub fn update(
        &mut self,
        ctx: &Context,
        document: &Document,
        wanted: bool,
        still: bool,
    ) -> Result<bool, String> {
        let before = (self.answered, self.asked.is_some());
        let seen = (document.revision(), document.piece_index());
        if wanted && self.seen != Some(seen) {
            self.seen = Some(seen);
            self.want(document.piece());
        }
        let broken = self.hear();
        if !wanted {
            self.let_go();
        }
        if wanted && still && !self.answered && self.asked.is_none() {
            self.ask(ctx);
        }
        broken?;
        Ok(before != (self.answered, self.asked.is_some()))
    }

    /// Notes which piece the steps are wanted for.
    fn want(&mut self, piece: &Piece) {
        let mut piece = piece.clone();
        piece.ease = 0.0;
        piece.name.clear();
        piece.picture = None;
        if self.piece.as_ref() != Some(&piece) {
            self.piece = Some(piece);
            self.answered = false;
            self.let_go();
        }
    }

    /// Nobody waits for the work under way any more.
    fn let_go(&mut self) {
        if let Some(asked) = self.asked.take() {
            asked.progress.stop.store(true, Ordering::Relaxed);
        }
    }

    fn hear(&mut self) -> Result<(), String> {
        while let Some(heard) = self.worker.hear() {
            let is_late = self.asked.take_if(|asked| asked.ticket == heard.to).is_none();
            let steps = match heard.answer {
                Ok(_) if is_late => continue,
                Ok(steps) => steps,
                Err(broken) => {
                    let why = format!("The steps could not be worked out ({broken})");
                    if is_late {
                        return Err(why);
                    }
                    Err(why)
                }
            };
            self.answered = true;
            match steps {
                Ok(steps) => (self.steps, self.error) = (steps, None),
                Err(error) => (self.steps, self.error) = (Vec::new(), Some(error)),
            }
        }
        Ok(())
    }

    fn ask(&mut self, ctx: &Context) {
        let Some(piece) = self.piece.clone() else { return };
        let progress = Arc::<Progress>::default();
        let wish = EaseWish { piece, progress: Arc::clone(&progress) };
        self.asked = Some(Awaited { ticket: self.worker.ask(ctx, wish), progress });
    }
}

fn work_out(wish: EaseWish, voice: &Voice<'_, Newest<EaseWish>, StepsFound>) {
    let EaseWish { piece, progress } = wish;
    let is_vain = || progress.stop.load(Ordering::Relaxed) || voice.is_vain();
    let mut go_on = |step| {
        progress.step.store(step, Ordering::Relaxed);
        voice.nudge();
        if is_vain() { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    };
    let steps = ease_steps(&piece, &mut go_on).map_err(|e| e.to_string());
    if !is_vain() {
        voice.say(steps);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::Firmness;
    use plumpline_core::ease::STEPS;

    fn document(change: impl FnOnce(&mut Piece)) -> Document {
        let mut project = Document::sample().project().clone();
        change(&mut project.pieces[0]);
        Document::new(project, None)
    }

    /// Looks until the steps are there.
    fn worked_out(trade: &mut Trade, document: &Document) {
        let began = std::time::Instant::now();
        while !trade.is_current() {
            trade.update(&Context::default(), document, true, true).expect("no trouble");
            assert!(began.elapsed().as_secs() < 60, "there are no steps: {:?}", trade.error());
            std::thread::yield_now();
        }
    }

    #[test]
    fn an_answer_that_comes_too_late_is_dropped() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        trade.update(&ctx, &document(|_| ()), true, true).expect("no trouble");
        let first = trade.asked.as_ref().map(|asked| asked.ticket);
        let firm = document(|piece| piece.firmness = Firmness::FIRM);
        trade.update(&ctx, &firm, true, true).expect("no trouble");
        assert_ne!(trade.asked.as_ref().map(|asked| asked.ticket), first);
        worked_out(&mut trade, &firm);
        let steps = format!("{:?}", trade.steps());
        let mut fresh = Trade::default();
        worked_out(&mut fresh, &firm);
        assert_eq!(
            steps,
            format!("{:?}", fresh.steps()),
            "they are those of the earlier piece"
        );
    }

    #[test]
    fn ease_itself_changes_no_step() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        worked_out(&mut trade, &document(|_| ()));
        let eased = document(|piece| {
            piece.ease = 0.9;
            piece.name = "Other".into();
        });
        trade.update(&ctx, &eased, true, true).expect("no trouble");
        assert!(trade.is_current() && trade.at_step().is_none());
    }

    #[test]
    fn nothing_is_started_during_a_drag_and_all_is_let_go_out_of_sight() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        let document = document(|_| ());
        trade.update(&ctx, &document, true, false).expect("no trouble");
        assert!(trade.at_step().is_none());
        trade.update(&ctx, &document, true, true).expect("no trouble");
        assert!(trade.at_step().is_some());
        trade.update(&ctx, &document, false, true).expect("no trouble");
        assert!(trade.at_step().is_none());
        worked_out(&mut trade, &document);
        assert_eq!(trade.steps().len(), STEPS as usize);
    }
}
