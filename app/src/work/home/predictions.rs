//! What was predicted in the lesson on this computer. It goes nowhere else.

use serde::{Deserialize, Serialize};

/// Predictions that are kept: many classes.
const MOST: usize = 2000;

/// One prediction.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Predicted {
    /// Name of the step.
    pub step: String,
    /// What was said.
    pub said: String,
    /// Whether that is right.
    pub right: bool,
}

/// All that are kept, the oldest first.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Predictions(Vec<Predicted>);

impl Predictions {
    /// Keeps one more.
    pub fn add(&mut self, predicted: Predicted) {
        self.0.push(predicted);
        let over = self.0.len().saturating_sub(MOST);
        self.0.drain(..over);
    }

    /// Drops all.
    pub fn forget(&mut self) {
        self.0.clear();
    }

    /// Whether none is kept.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// What was said at a step so far, the most frequent first: `3 of 5 right: it cups 3 · it
    /// ruffles 2`; none where nothing was.
    pub fn told(&self, step: &str) -> Option<String> {
        let here: Vec<&Predicted> = self.0.iter().filter(|p| p.step == step).collect();
        if here.is_empty() {
            return None;
        }
        let right = here.iter().filter(|p| p.right).count();
        let mut said: Vec<(&str, usize)> = Vec::new();
        for predicted in &here {
            match said.iter_mut().find(|(words, _)| *words == predicted.said) {
                Some((_, many)) => *many += 1,
                None => said.push((&predicted.said, 1)),
            }
        }
        said.sort_by_key(|&(_, many)| std::cmp::Reverse(many));
        let list: Vec<String> =
            said.iter().map(|(words, many)| format!("{words} {many}")).collect();
        Some(say!("lesson-tally", right = right, all = here.len(), list = list.join(" · ")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_counted_by_step_and_never_grow_without_end() {
        let mut all = Predictions::default();
        let say = |all: &mut Predictions, step: &str, said: &str, right: bool| {
            all.add(Predicted { step: step.into(), said: said.into(), right });
        };
        assert_eq!(all.told("A ball"), None);
        say(&mut all, "A ball", "18 stitches", false);
        say(&mut all, "A ball", "25 stitches", true);
        say(&mut all, "A ball", "25 stitches", true);
        say(&mut all, "A neck", "like a saddle", true);
        let told = all.told("A ball").expect("some");
        assert_eq!(told, "2 of 3 right so far: 25 stitches 2 · 18 stitches 1");
        for _ in 0..2 * MOST {
            say(&mut all, "A neck", "like a ball", false);
        }
        assert_eq!(all.told("A ball"), None, "the oldest went");
        all.forget();
        assert!(all.is_empty());
    }
}
