//! A piece given by its rounds: a pattern that was read, or rounds that are to stay. Gauge,
//! yarn, firmness and stiffness change the shape they take, never a round.

use serde::{Deserialize, Serialize};

use super::stitch::Placement;
use crate::error::{Error, Result};

/// Most rounds a piece may come to; more than anyone works, few enough to answer at once.
pub const MOST_ROUNDS: usize = 1200;

/// How a piece begins, in stitches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Start {
    /// A magic ring.
    Ring,
    /// A chain of so many stitches joined into a ring: an open edge.
    Chain(u32),
    /// A chain of so many stitches worked along both its sides: an oval.
    Oval(u32),
}

impl Start {
    /// Stitches of an oval's straight side.
    pub fn side(self) -> Option<u32> {
        match self {
            Self::Oval(chain) => Some(chain - 1),
            Self::Ring | Self::Chain(_) => None,
        }
    }

    /// Stitches round 1 is worked on, where it is worked on a closed round of them.
    pub fn joined(self) -> Option<u32> {
        match self {
            Self::Chain(n) => Some(n),
            Self::Ring | Self::Oval(_) => None,
        }
    }
}

/// The rounds of a piece, as they are to be worked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Given {
    /// How the piece begins.
    pub start: Start,
    /// The rounds in working order.
    pub rounds: Vec<GivenRound>,
    /// Where the piece is stuffed: after these rounds, counted from 1.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stuff_after: Vec<u32>,
}

/// One round of a piece that is given by its rounds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GivenRound {
    /// Stitches at its end.
    pub count: u32,
    /// Its own work, where that is to stay; otherwise its shaping is spread anew.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub work: Option<Placement>,
    /// What the pattern says beside it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub remark: String,
}

/// Most stitches a round may have.
const MOST_STITCHES: u32 = 20_000;

/// Most characters of a remark.
const LONGEST_REMARK: usize = 2_000;

impl Given {
    /// Rounds of these counts, their shaping spread anew.
    pub fn of_counts(start: Start, counts: &[u32]) -> Self {
        let round = |&count: &u32| GivenRound { count, work: None, remark: String::new() };
        Self { start, rounds: counts.iter().map(round).collect(), stuff_after: Vec::new() }
    }

    /// Stitches of each round.
    pub fn counts(&self) -> Vec<u32> {
        self.rounds.iter().map(|round| round.count).collect()
    }

    /// The same rounds with their shaping spread anew.
    #[must_use]
    pub fn spread_anew(mut self) -> Self {
        self.rounds.iter_mut().for_each(|round| round.work = None);
        self
    }

    /// Refuses rounds that nobody can work one on another.
    ///
    /// # Errors
    /// Names the first round that is wrong, and the mend.
    pub fn validate(&self) -> Result<()> {
        let rounds = self.rounds.len();
        if !(2..=MOST_ROUNDS).contains(&rounds) {
            return Err(Error::new(
                "given, rounds",
                format!("there are {rounds}"),
                format!("a piece has 2 to {MOST_ROUNDS} rounds"),
            ));
        }
        let mut below = self.start.joined();
        for (number, round) in (1_u32..).zip(&self.rounds) {
            let place = || format!("given, round {number}");
            let count = round.count;
            let workable = below
                .is_none_or(|b| count <= b.saturating_mul(2) && b <= count.saturating_mul(2));
            if !(1..=MOST_STITCHES).contains(&count) || !workable {
                return Err(Error::new(
                    place(),
                    format!("{count} stitches on {} cannot be worked", below.unwrap_or(0)),
                    "a round can at most double or halve the one below",
                ));
            }
            if let (Some(work), Some(below)) = (&round.work, below)
                && (work.consumed(), work.produced()) != (below, count)
            {
                return Err(Error::new(
                    place(),
                    format!(
                        "its work takes {} and leaves {} stitches, not {below} and {count}",
                        work.consumed(),
                        work.produced()
                    ),
                    "mend its work or leave it out",
                ));
            }
            if round.remark.chars().count() > LONGEST_REMARK {
                return Err(Error::new(
                    place(),
                    "its remark is too long",
                    format!("{LONGEST_REMARK} characters are the most"),
                ));
            }
            below = Some(count);
        }
        Ok(())
    }
}
