//! What follows from the piece in hand, worked out again whenever the piece changes.

use std::sync::Arc;

use plumpline_core::{Piece, Plan, Wording, WordingChoice, plan, words};

/// The plan of the piece in hand, or the last one there was and why there is no newer one.
#[derive(Debug, Default)]
pub struct Derived {
    asked: Option<(Piece, WordingChoice)>,
    good: Option<(Arc<Plan>, Wording)>,
    error: Option<String>,
}

impl Derived {
    /// Plans `piece`, worded as chosen, unless it is the one planned last. Returns whether it
    /// planned.
    pub fn update(&mut self, piece: &Piece, wording: &WordingChoice) -> bool {
        // A picture is only looked at, and other sizes are planned apart.
        let piece = &Piece { picture: None, sizes: Vec::new(), ..piece.clone() };
        if self.asked.as_ref().is_some_and(|(p, w)| p == piece && w == wording) {
            return false;
        }
        let worded = |plan: Plan| {
            let words = words(&plan, piece, &wording.writer()?);
            Ok((Arc::new(plan), words))
        };
        match plan(piece).and_then(worded) {
            Ok(good) => {
                self.good = Some(good);
                self.error = None;
            }
            Err(error) => self.error = Some(error.to_string()),
        }
        self.asked = Some((piece.clone(), wording.clone()));
        true
    }

    /// Forgets everything: another piece is in hand.
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
    use crate::document::Document;

    #[test]
    fn a_crossed_outline_keeps_the_last_good_plan() {
        let mut derived = Derived::default();
        let mut piece = Document::sample().piece().clone();
        let words = WordingChoice::default();
        assert!(derived.update(&piece, &words));
        assert!(!derived.update(&piece, &words), "the same piece is not planned twice");
        let rounds = derived.plan().map(|p| p.rounds.len());
        piece.outline.knots[2].radius_mm = -5.0;
        derived.update(&piece, &words);
        assert!(derived.error().is_some());
        assert_eq!(derived.plan().map(|p| p.rounds.len()), rounds);
    }

    #[test]
    fn other_words_are_of_the_same_rounds() {
        let mut derived = Derived::default();
        let piece = Document::sample().piece().clone();
        derived.update(&piece, &WordingChoice::default());
        let first = derived.good.clone().expect("the float has a plan");
        let german = WordingChoice { lexicon: "de".into(), ..WordingChoice::default() };
        assert!(derived.update(&piece, &german));
        let second = derived.good.expect("the float has a plan");
        assert_eq!(first.0.counts(), second.0.counts());
        assert_ne!(first.1.text_of(4), second.1.text_of(4));
    }
}
