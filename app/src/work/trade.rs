//! The trade-off of simplicity, worked out on a thread: its answers take longer than a frame.
//! What comes too late for the piece as it is now is dropped.

use egui::Context;
use plumpline_core::simplicity::{Answer, answers};
use plumpline_core::{Piece, PieceId, plan};

use super::worker::{Newest, Ticket, Voice, Worker};
use crate::document::{Document, Revision};

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

type OfferFound = Result<Offer, String>;

/// The answers to the selected piece, and the work under way on them.
#[derive(Debug)]
pub struct Trade {
    worker: Worker<Newest<Piece>, OfferFound>,
    /// What was last looked at: which piece of which project.
    seen: Option<(Revision, PieceId)>,
    /// The piece they are wanted for, without what changes no answer.
    piece: Option<Piece>,
    awaited: Option<Ticket>,
    offer: Option<Offer>,
    error: Option<String>,
    /// Whether offer or error are those of the piece.
    answered: bool,
}

impl Default for Trade {
    fn default() -> Self {
        Self {
            worker: Worker::new("answers", || work_out),
            seen: None,
            piece: None,
            awaited: None,
            offer: None,
            error: None,
            answered: false,
        }
    }
}

impl Trade {
    /// The last offer there is; see [`Self::is_current`].
    pub fn offer(&self) -> Option<&Offer> {
        self.offer.as_ref()
    }

    /// Whether it is that of the piece as it is now.
    pub fn is_current(&self) -> bool {
        self.answered && self.error.is_none()
    }

    /// Why the piece as it is now has none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref().filter(|_| self.answered)
    }

    /// Whether answers are being worked out.
    pub fn is_working(&self) -> bool {
        self.awaited.is_some()
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
        let before = (self.answered, self.awaited.is_some());
        let seen = (document.revision(), document.piece_id());
        if wanted && self.seen != Some(seen) {
            self.seen = Some(seen);
            self.want(document.piece());
        }
        let broken = self.hear();
        if !wanted {
            self.awaited = None;
        }
        if let (true, Some(piece)) = (wanted && still && !self.answered, &self.piece) {
            self.awaited.get_or_insert_with(|| self.worker.ask(ctx, piece.clone()));
        }
        broken?;
        Ok(before != (self.answered, self.awaited.is_some()))
    }

    /// Notes which piece the answers are wanted for.
    fn want(&mut self, piece: &Piece) {
        let mut piece =
            Piece { simplicity: None, accepted: None, picture: None, ..piece.clone() };
        piece.name.clear();
        piece.sizes.clear();
        if self.piece.as_ref() != Some(&piece) {
            self.piece = Some(piece);
            self.answered = false;
            self.awaited = None;
        }
    }

    fn hear(&mut self) -> Result<(), String> {
        while let Some(heard) = self.worker.hear() {
            let is_late = self.awaited.take_if(|awaited| *awaited == heard.to).is_none();
            let found = match heard.answer {
                Ok(_) if is_late => continue,
                Ok(found) => found,
                Err(broken) => {
                    let why = say!(
                        "trouble-the-results-could-not-be-found-broken",
                        broken = broken.to_string()
                    );
                    if is_late {
                        return Err(why);
                    }
                    Err(why)
                }
            };
            self.answered = true;
            match found {
                Ok(offer) => (self.offer, self.error) = (Some(offer), None),
                Err(error) => (self.offer, self.error) = (None, Some(error)),
            }
        }
        Ok(())
    }
}

fn work_out(piece: Piece, voice: &Voice<'_, Newest<Piece>, OfferFound>) {
    if !voice.is_vain() {
        voice.say(Offer::of(&piece).map_err(|e| e.to_string()));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::Firmness;

    fn document(change: impl FnOnce(&mut Piece)) -> Document {
        let mut project = Document::sample().project().clone();
        change(&mut project.pieces[0]);
        Document::new(project, None)
    }

    /// Looks until the answers are there.
    fn worked_out(trade: &mut Trade, document: &Document) {
        let began = std::time::Instant::now();
        while !trade.is_current() {
            trade.update(&Context::default(), document, true, true).expect("no trouble");
            assert!(began.elapsed().as_secs() < 60, "no answers: {:?}", trade.error());
            std::thread::yield_now();
        }
    }

    #[test]
    fn an_answer_that_comes_too_late_is_dropped() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        trade.update(&ctx, &document(|_| ()), true, true).expect("no trouble");
        let first = trade.awaited;
        let firm = document(|piece| piece.firmness = Firmness::FIRM);
        trade.update(&ctx, &firm, true, true).expect("no trouble");
        assert_ne!(trade.awaited, first);
        worked_out(&mut trade, &firm);
        let mut fresh = Trade::default();
        worked_out(&mut fresh, &firm);
        let [one, other] = [&trade, &fresh].map(|trade| format!("{:?}", trade.offer()));
        assert_eq!(one, other, "they are those of the earlier piece");
    }

    #[test]
    fn simplicity_itself_changes_no_answer() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        worked_out(&mut trade, &document(|_| ()));
        let simpler = document(|piece| {
            piece.simplicity = Some(0.9);
            piece.name = "Other".into();
        });
        trade.update(&ctx, &simpler, true, true).expect("no trouble");
        assert!(trade.is_current() && !trade.is_working());
    }

    #[test]
    fn nothing_is_started_during_a_drag_and_all_is_let_go_out_of_sight() {
        let (mut trade, ctx) = (Trade::default(), Context::default());
        let document = document(|_| ());
        trade.update(&ctx, &document, true, false).expect("no trouble");
        assert!(!trade.is_working());
        trade.update(&ctx, &document, true, true).expect("no trouble");
        assert!(trade.is_working());
        trade.update(&ctx, &document, false, true).expect("no trouble");
        assert!(!trade.is_working());
        worked_out(&mut trade, &document);
        let offer = trade.offer().expect("answers");
        assert!(offer.answers.len() > 1, "something to choose from");
        assert!(offer.answers.windows(2).all(|p| p[0].trouble > p[1].trouble));
    }
}
