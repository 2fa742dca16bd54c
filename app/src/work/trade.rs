//! The trade-off of simplicity, worked out on a thread: its answers take longer than a frame.
//! What comes too late for the piece as it is now is dropped.

use egui::Context;
use plumpline_core::simplicity::{Answer, answers};
use plumpline_core::{Piece, plan};

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
    seen: Option<(Revision, usize)>,
    /// The piece they are wanted for, without what changes no answer.
    piece: Option<Piece>,
    /// The wish that is still to be answered.
    awaited: Option<Ticket>,
    offer: Option<Offer>,
    error: Option<String>,
    /// Whether offer or error are those of the piece.
    answered: bool,
}

impl Default for Trade {
    fn default() -> Self {
        let work = || {
            |piece: Piece, voice: &Voice<'_, Newest<Piece>, OfferFound>| {
                voice.say(Offer::of(&piece).map_err(|e| e.to_string()));
            }
        };
        Self {
            worker: Worker::new("answers", work),
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

    /// Takes what has been found and asks for what is `wanted`: while a drag is under way it is
    /// not `still`, and nothing is asked. Returns whether there is anything new to show.
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
        let before = (self.answered, self.awaited);
        let seen = (document.revision(), document.piece_index());
        if wanted && self.seen.replace(seen) != Some(seen) {
            self.want(document.piece());
        }
        self.hear()?;
        if let Some(piece) = &self.piece
            && wanted
            && still
            && !self.answered
            && self.awaited.is_none()
        {
            self.awaited = Some(self.worker.ask(ctx, piece.clone()));
        }
        Ok(before != (self.answered, self.awaited))
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
            let is_late = self.awaited.take_if(|ticket| *ticket == heard.to).is_none();
            let offer = match heard.answer {
                Ok(_) if is_late => continue,
                Ok(offer) => offer,
                Err(broken) => {
                    let why = format!("The answers could not be worked out ({broken})");
                    if is_late {
                        return Err(why);
                    }
                    Err(why)
                }
            };
            self.answered = true;
            match offer {
                Ok(offer) => (self.offer, self.error) = (Some(offer), None),
                Err(error) => (self.offer, self.error) = (None, Some(error)),
            }
        }
        Ok(())
    }
}
