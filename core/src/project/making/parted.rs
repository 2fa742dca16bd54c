//! A plan that has changed since rounds of it were worked: what no longer fits. The place is
//! kept; whether to rip back or to leave what is worked is the maker's choice.

use super::course::WorkedPiece;
use super::{Begun, Progress};

/// Where the work and its plan have parted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parted {
    /// Rounds worked with other counts than the plan has now: round (from 1), stitches
    /// worked, stitches planned.
    pub rounds: Vec<(u32, u32, u32)>,
    /// The round under the hook, if it was begun as another than it is now.
    pub under_way: Option<u32>,
    /// Rounds worked beyond the plan's last, if it has become that much shorter.
    pub beyond: u32,
    /// Rounds the plan has beyond those of a piece that is made.
    pub more: u32,
}

impl Parted {
    /// The first round that does not fit.
    pub fn first_round(&self, course: &WorkedPiece) -> u32 {
        let counted = self.rounds.first().map(|&(round, ..)| round);
        counted.or(self.under_way).unwrap_or_else(|| {
            // Nothing worked is another: only the end is.
            (course.last_round() + 1).saturating_sub(self.more)
        })
    }

    /// What to tell the maker, in one sentence.
    pub fn text(&self) -> String {
        let mut parts: Vec<String> = self
            .rounds
            .iter()
            .take(3)
            .map(|(round, worked, planned)| {
                format!("round {round} was worked with {worked} stitches and now has {planned}")
            })
            .collect();
        if self.rounds.len() > 3 {
            let more = self.rounds.len() - 3;
            let (s, differ) = if more == 1 { ("", "differs") } else { ("s", "differ") };
            parts.push(format!("{more} round{s} more {differ}"));
        }
        if let Some(round) = self.under_way {
            parts.push(format!("round {round} is another than you began"));
        }
        if self.beyond > 0 {
            let s = if self.beyond == 1 { "" } else { "s" };
            parts.push(format!("it ends {} round{s} before where you are", self.beyond));
        }
        if self.more > 0 {
            let s = if self.more == 1 { "" } else { "s" };
            parts.push(format!("it goes on for {} round{s} more than you made", self.more));
        }
        format!("The plan has changed since: {}.", parts.join("; "))
    }
}

impl Progress {
    /// Where this and `course` have parted; none where all that is worked still fits.
    pub fn parted(&self, course: &WorkedPiece) -> Option<Parted> {
        let planned = course.rounds.iter().map(|round| round.count);
        let rounds: Vec<(u32, u32, u32)> = (1..)
            .zip(self.worked.iter().copied().zip(planned))
            .filter(|(_, (worked, planned))| worked != planned)
            .map(|(round, (worked, planned))| (round, worked, planned))
            .collect();
        let now = course.round(self.round);
        let under_way = now
            .filter(|_| !self.of.is_nothing())
            .is_some_and(|round| Begun::of(round.stitches.iter().copied()) != self.of)
            .then_some(self.round);
        let beyond = self.round.saturating_sub(course.last_round() + 1);
        let more = match self.closed {
            true => (course.last_round() + 1).saturating_sub(self.round),
            false => 0,
        };
        let fits = rounds.is_empty() && under_way.is_none() && beyond + more == 0;
        (!fits).then_some(Parted { rounds, under_way, beyond, more })
    }

    /// Takes the plan as it is now for what was worked, and goes on from the place there is.
    pub fn accept(&mut self, course: &WorkedPiece) {
        let (round, done) = match self.closed || self.round > course.last_round() {
            true => (course.last_round() + 1, 0),
            false => (self.round, self.done),
        };
        let most = course.round(round).map_or(0, |r| r.steps().saturating_sub(1));
        self.worked.clear();
        self.take_place(
            course,
            super::ReturnPlace {
                round,
                done: done.min(most),
                stuffed: self.stuffed,
                inside: self.inside,
                closed: self.closed,
            },
        );
    }
}
