//! Counts: whole stitches for every round.
//!
//! [`Targets`] are the stitches the closed-form skin would have if stitches could be split;
//! `rounds` says what whole stitches may stand in their place. A `candidate` is one number of
//! rounds: the shape of its ideal counts is forecast, and near that forecast a `beam` search
//! finds the best counts at several prices of [`repeats`]: free ones, and a `family` of patterns
//! from many numbers of repeats to the fewest. What a `search` finds so is forecast in truth,
//! bettered `further` where nothing is near enough, and makes the `answers` from faithful to
//! simple, judged by their [`likely`] fit; of them one is taken.

mod answer;
mod answers;
mod beam;
mod candidate;
mod choose;
mod descent;
mod effort;
mod family;
mod form;
mod further;
mod holds;
pub mod likely;
mod misfit;
mod model;
pub mod repeats;
mod rounds;
pub mod rules;
mod search;
mod shape;
pub mod slack;
mod steps;
mod thumb;

pub use answer::INDIFFERENT_STITCHES;
pub(crate) use choose::worked;
pub use choose::{Chosen, answers, choose};
pub use effort::{Effort, MOST_FORECASTS};
pub use holds::{Holds, skin_of};
pub use rounds::AllowedRounds;
pub(crate) use rules::worked_length_mm;
pub use rules::{Start, Targets};
pub use thumb::{fit_of, rule_of_thumb};
