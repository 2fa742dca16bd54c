//! What follows from the selected piece, worked out again whenever the piece changes.

use std::sync::Arc;

use plumpline_core::{Piece, PieceId, Plan, Wording, WordingChoice, plan, plan_draft, words};

/// What a plan was asked for.
#[derive(Debug, PartialEq)]
struct PlannedFor {
    piece: Piece,
    wording: WordingChoice,
    /// Whether it may stop at what a dragging hand can wait for.
    draft: bool,
}

use crate::document::{Document, Revision};

/// The plan of the selected piece, or the last one there was and why there is no newer one.
#[derive(Debug, Default)]
pub struct Derived {
    /// What was last looked at: which piece of which project, and whether a hand dragged it.
    seen: Option<(Revision, PieceId, bool)>,
    asked: Option<PlannedFor>,
    good: Option<(Arc<Plan>, Wording)>,
    error: Option<String>,
}

impl Derived {
    /// Plans the selected piece, worded as chosen, unless it is the one planned last; while it
    /// is `dragged` no further than a frame allows. Returns whether it planned.
    pub fn update(&mut self, document: &Document, dragged: bool) -> bool {
        let seen = (document.revision(), document.piece_id(), dragged);
        self.seen.replace(seen) != Some(seen)
            && self.follow(document.piece(), &document.project().wording, dragged)
    }

    fn follow(&mut self, piece: &Piece, wording: &WordingChoice, dragged: bool) -> bool {
        let asked = PlannedFor {
            // A picture is only looked at, and other sizes are planned apart.
            piece: Piece { picture: None, sizes: Vec::new(), ..piece.clone() },
            wording: wording.clone(),
            draft: dragged,
        };
        if self.asked.as_ref() == Some(&asked) {
            return false;
        }
        let piece = &asked.piece;
        let worded = |plan: Plan| {
            let words = words(&plan, piece, &wording.writer()?);
            Ok((Arc::new(plan), words))
        };
        let planned = if asked.draft { plan_draft(piece) } else { plan(piece) };
        match planned.and_then(worded) {
            Ok(good) => {
                self.good = Some(good);
                self.error = None;
            }
            Err(error) => self.error = Some(error.to_string()),
        }
        self.asked = Some(asked);
        true
    }

    /// Forgets everything: another project is open.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// The plan to show: the last that could be made.
    pub fn plan(&self) -> Option<&Arc<Plan>> {
        self.good.as_ref().map(|(plan, _)| plan)
    }

    /// Its words.
    pub fn words(&self) -> Option<&Wording> {
        self.good.as_ref().map(|(_, words)| words)
    }

    /// Why the piece as it stands has no plan.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crossed_outline_keeps_the_last_good_plan() {
        let mut derived = Derived::default();
        let mut piece = Document::sample().piece().clone();
        let words = WordingChoice::default();
        assert!(derived.follow(&piece, &words, false));
        assert!(!derived.follow(&piece, &words, false), "the same piece is not planned twice");
        let rounds = derived.plan().map(|p| p.rounds.len());
        piece.outline.knots[2].radius_mm = -5.0;
        derived.follow(&piece, &words, false);
        assert!(derived.error().is_some());
        assert_eq!(derived.plan().map(|p| p.rounds.len()), rounds);
    }

    #[test]
    fn other_words_are_of_the_same_rounds() {
        let mut derived = Derived::default();
        let piece = Document::sample().piece().clone();
        derived.follow(&piece, &WordingChoice::default(), false);
        let first = derived.good.clone().expect("the float has a plan");
        let german = WordingChoice { lexicon: "de".into(), ..WordingChoice::default() };
        assert!(derived.follow(&piece, &german, false));
        let second = derived.good.expect("the float has a plan");
        assert_eq!(first.0.counts(), second.0.counts());
        assert_ne!(first.1.text_of(4), second.1.text_of(4));
    }

    #[test]
    fn a_dragged_piece_is_planned_within_a_frame_and_in_full_once_it_rests() {
        let mut derived = Derived::default();
        let mut piece = Document::sample().piece().clone();
        let words = WordingChoice::default();
        let most = plumpline_core::counts::MOST_FORECASTS;
        for simplicity in [None, Some(0.0)] {
            piece.simplicity = simplicity;
            assert!(derived.follow(&piece, &words, true));
            assert!(derived.plan().is_some_and(|p| p.forecasts <= most));
            assert!(derived.follow(&piece, &words, false));
            assert!(derived.plan().is_some_and(|p| p.forecasts > most));
        }
    }
}
