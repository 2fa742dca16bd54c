//! The trade-off of simplicity, worked out on a thread of its own: its answers take longer
//! than a frame. A result that comes too late for the piece as it is now is dropped.

use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};

use egui::Context;
use plumpline_core::simplicity::{Answer, answers};
use plumpline_core::{Piece, plan};

/// The answers to a piece that are worth choosing, and the one it has without a choice.
#[derive(Debug, Clone)]
pub struct Offer {
    /// From the most faithful to the simplest.
    pub answers: Vec<Answer>,
    /// The default answer.
    pub default: Answer,
}

impl Offer {
    /// What `piece` can be answered with.
    fn of(piece: &Piece) -> plumpline_core::Result<Self> {
        Ok(Self { answers: answers(piece)?, default: Answer::of(0.0, piece, &plan(piece)?) })
    }
}

/// The answers to the piece in hand, and the work under way on them.
#[derive(Debug, Default)]
pub struct Trade {
    /// The piece they are wanted for, without what changes no answer.
    piece: Option<Piece>,
    /// Counts the pieces they were wanted for.
    revision: u64,
    offer: Option<Offer>,
    /// The piece the offer, or the failure, belongs to.
    answered: u64,
    error: Option<String>,
    running: Option<Running>,
}

/// Work under way.
#[derive(Debug)]
struct Running {
    revision: u64,
    hear: Receiver<Found>,
}

/// What a thread found, and for which piece.
#[derive(Debug)]
struct Found {
    revision: u64,
    offer: Result<Offer, String>,
}

impl Trade {
    /// The last offer there is; see [`Self::is_current`].
    pub fn offer(&self) -> Option<&Offer> {
        self.offer.as_ref()
    }

    /// Whether it is that of the piece as it is now.
    pub fn is_current(&self) -> bool {
        self.revision > 0 && self.answered == self.revision && self.error.is_none()
    }

    /// Why the piece as it is now has none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref().filter(|_| self.answered == self.revision)
    }

    /// Whether answers are being worked out.
    pub fn is_working(&self) -> bool {
        self.running.is_some()
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
        if wanted && still && self.running.is_none() && self.answered != self.revision {
            self.start(ctx);
        }
        before != (self.revision, self.answered, self.running.is_some())
    }

    /// Notes which piece the answers are wanted for.
    fn want(&mut self, piece: &Piece) {
        let mut piece =
            Piece { simplicity: None, accepted: None, picture: None, ..piece.clone() };
        piece.name.clear();
        piece.sizes.clear();
        if self.piece.as_ref() != Some(&piece) {
            self.piece = Some(piece);
            self.revision += 1;
        }
    }

    fn receive(&mut self) {
        let Some(Running { revision, hear }) = &self.running else { return };
        let found = match hear.try_recv() {
            Ok(found) => found,
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Found {
                revision: *revision,
                offer: Err("The answers could not be worked out".into()),
            },
        };
        self.running = None;
        self.take(found);
    }

    /// Takes what was found, unless it is for an earlier piece.
    fn take(&mut self, found: Found) -> bool {
        if found.revision != self.revision {
            return false;
        }
        self.answered = found.revision;
        match found.offer {
            Ok(offer) => (self.offer, self.error) = (Some(offer), None),
            Err(error) => (self.offer, self.error) = (None, Some(error)),
        }
        true
    }

    fn start(&mut self, ctx: &Context) {
        let Some(piece) = self.piece.clone() else { return };
        let revision = self.revision;
        let (tell, hear) = sync_channel(1);
        let ctx = ctx.clone();
        let work = move || {
            let offer = Offer::of(&piece).map_err(|e| e.to_string());
            // The window may be gone by now; then nobody needs to hear it.
            let _ = tell.send(Found { revision, offer });
            drop(tell);
            ctx.request_repaint();
        };
        if std::thread::Builder::new().name("answers".into()).spawn(work).is_ok() {
            self.running = Some(Running { revision, hear });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    fn found(revision: u64) -> Found {
        Found {
            revision,
            offer: Offer::of(Document::sample().piece()).map_err(|e| e.to_string()),
        }
    }

    #[test]
    fn an_answer_that_comes_too_late_is_dropped() {
        let mut trade = Trade::default();
        let mut piece = Document::sample().piece().clone();
        trade.want(&piece);
        let first = trade.revision;
        piece.firmness = plumpline_core::Firmness::FIRM;
        trade.want(&piece);
        assert!(!trade.take(found(first)), "the piece is another by now");
        assert!(!trade.is_current());
        assert!(trade.take(found(trade.revision)));
        assert!(trade.is_current());
    }

    #[test]
    fn simplicity_itself_changes_no_answer() {
        let mut trade = Trade::default();
        let mut piece = Document::sample().piece().clone();
        trade.want(&piece);
        piece.simplicity = Some(0.9);
        piece.name = "Other".into();
        trade.want(&piece);
        assert_eq!(trade.revision, 1);
    }

    #[test]
    fn nothing_is_started_under_the_hand() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        let piece = Document::sample().piece().clone();
        trade.update(&ctx, &piece, true, false);
        assert!(!trade.is_working());
        trade.update(&ctx, &piece, true, true);
        assert!(trade.is_working());
        for _ in 0..600 {
            std::thread::sleep(std::time::Duration::from_millis(50));
            trade.update(&ctx, &piece, true, true);
            if trade.is_current() {
                break;
            }
        }
        let offer = trade.offer().expect("answers");
        assert!(offer.answers.len() > 1, "something to choose from");
        assert!(offer.answers.windows(2).all(|p| p[0].trouble > p[1].trouble));
    }
}
