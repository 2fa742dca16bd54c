//! Making: where a maker's hands are, stitch by stitch, and how they move on.
//!
//! 1. [`course`]: a plan as what the hands do, round by round, stitch by stitch;
//! 2. [`Progress`]: one copy of a piece under the hook, as it is saved;
//! 3. [`steps`]: on by a stitch, a repeat or a round, back again, the stops between rounds;
//! 4. [`parted`]: what of it no longer fits when the plan has changed since;
//! 5. [`follow`]: whose progress is whose when pieces come and go;
//! 6. [`pace`]: time worked, and time left at the maker's own pace.
//!
//! There is no clock here: whoever calls says how many seconds were worked.

pub mod course;
mod follow;
pub mod pace;
pub mod parted;
pub mod steps;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};
use crate::piece::{MOST_COPIES, MOST_ROUNDS};

pub use course::{Course, CourseRound};
pub use pace::{Outlook, Pace};
pub use parted::Parted;
pub use steps::{By, Place, Stand, Stop};

/// Longest note on a round, characters.
pub const LONGEST_NOTE: usize = 400;

/// Most seconds of work a piece may have: more than a year of days and nights.
const MOST_SECONDS: f64 = 4e7;

/// Everything that is under the hook or made already, in no particular order; at most one
/// entry for every copy of a piece.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Making {
    /// The entries.
    pub at: Vec<Progress>,
}

/// One copy of one piece under the hook.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Progress {
    /// Index of the piece in the project.
    pub piece: usize,
    /// Which copy of it, counted from 1.
    #[serde(default = "first")]
    pub copy: u32,
    /// The round under the hook, counted from 1; one past the last once all are worked.
    #[serde(default = "first")]
    pub round: u32,
    /// What of that round is worked: plain stitches, increases and decreases, each one.
    #[serde(default)]
    pub done: u32,
    /// That round as it was planned when it was last worked on; empty if nothing of it is.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub of: String,
    /// Stitches at the end of each round that is worked, as they were planned then.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub worked: Vec<u32>,
    /// Whether the stuffing is in.
    #[serde(default)]
    pub stuffed: bool,
    /// Whether the piece is closed or fastened off, and so made.
    #[serde(default)]
    pub closed: bool,
    /// Time worked, s.
    #[serde(default)]
    pub seconds: f64,
    /// How fast it went where no pause came between.
    #[serde(default)]
    pub pace: Pace,
    /// Notes, by round.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub notes: BTreeMap<u32, String>,
}

fn first() -> u32 {
    1
}

impl Progress {
    /// Copy `copy` of piece `piece`, not begun.
    pub fn new(piece: usize, copy: u32) -> Self {
        Self {
            piece,
            copy,
            round: 1,
            done: 0,
            of: String::new(),
            worked: Vec::new(),
            stuffed: false,
            closed: false,
            seconds: 0.0,
            pace: Pace::default(),
            notes: BTreeMap::new(),
        }
    }

    /// Writes a note on `round`, or removes it where `text` is empty. Longer notes than
    /// [`LONGEST_NOTE`] are cut.
    pub fn note(&mut self, round: u32, text: &str) {
        if text.is_empty() {
            self.notes.remove(&round);
        } else {
            self.notes.insert(round, text.chars().take(LONGEST_NOTE).collect());
        }
    }

    fn validate(&self) -> Result<()> {
        let last = MOST_ROUNDS as u32 + 1;
        within("copy", f64::from(self.copy), 1.0, f64::from(MOST_COPIES), "")?;
        within("round", f64::from(self.round), 1.0, f64::from(last), "")?;
        within("done", f64::from(self.done), 0.0, 40_000.0, "")?;
        within("seconds", self.seconds, 0.0, MOST_SECONDS, "s")?;
        within("pace.seconds", self.pace.seconds, 0.0, MOST_SECONDS, "s")?;
        if self.worked.len() >= self.round as usize {
            return Err(Error::new(
                "worked",
                format!("{} rounds are worked before round {}", self.worked.len(), self.round),
                "list one count for every round before it",
            ));
        }
        for (&round, note) in &self.notes {
            if round == 0 || round > last || note.chars().count() > LONGEST_NOTE {
                return Err(Error::new(
                    format!("notes, round {round}"),
                    "there can be no such note",
                    format!("note rounds 1 to {last} in {LONGEST_NOTE} characters or less"),
                ));
            }
        }
        Ok(())
    }
}

impl Making {
    /// Whether nothing has been begun.
    pub fn is_empty(&self) -> bool {
        self.at.is_empty()
    }

    /// The progress of copy `copy` (from 1) of piece `piece`, once it is begun.
    pub fn of(&self, piece: usize, copy: u32) -> Option<&Progress> {
        self.at.iter().find(|p| (p.piece, p.copy) == (piece, copy))
    }

    /// The progress of copy `copy` of piece `piece`; begins it.
    pub fn begin(&mut self, piece: usize, copy: u32) -> &mut Progress {
        let mine = |p: &Progress| (p.piece, p.copy) == (piece, copy);
        let at = self.at.iter().position(mine).unwrap_or_else(|| {
            self.at.push(Progress::new(piece, copy));
            self.at.len() - 1
        });
        &mut self.at[at]
    }

    /// Refuses progress that no hands could make in a project of `pieces` pieces.
    ///
    /// # Errors
    /// Names the copy and the field at fault, and the mend.
    pub(crate) fn validate(&self, pieces: usize) -> Result<()> {
        for (i, progress) in self.at.iter().enumerate() {
            let Progress { piece, copy, .. } = *progress;
            let place = format!("making, piece {piece}, copy {copy}");
            if piece >= pieces {
                return Err(Error::new(
                    place,
                    "there is no such piece",
                    format!("the last piece is {}", pieces.saturating_sub(1)),
                ));
            }
            if self.at[..i].iter().any(|p| (p.piece, p.copy) == (piece, copy)) {
                return Err(Error::new(place, "it is listed twice", "keep one of the two"));
            }
            progress.validate().map_err(|e| e.within(&place))?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_hands_could_make_is_refused_by_name() {
        let sound = Progress { round: 4, worked: vec![6, 12, 18], ..Progress::new(1, 2) };
        let making = Making { at: vec![sound.clone()] };
        assert_eq!(making.validate(2), Ok(()));
        assert!(making.validate(1).is_err_and(|e| e.to_string().contains("piece 1, copy 2")));
        let broken: [fn(&mut Progress); 7] = [
            |p| p.copy = 0,
            |p| p.round = 0,
            |p| p.done = 50_000,
            |p| p.seconds = f64::NAN,
            |p| p.pace.seconds = -1.0,
            |p| p.worked.push(24),
            |p| drop(p.notes.insert(0, "before the ring".into())),
        ];
        for (i, breaks) in broken.into_iter().enumerate() {
            let mut progress = sound.clone();
            breaks(&mut progress);
            assert!(Making { at: vec![progress] }.validate(2).is_err(), "{i}");
        }
        let twice = Making { at: vec![sound.clone(), sound] };
        assert!(twice.validate(2).is_err_and(|e| e.to_string().contains("twice")));
    }

    #[test]
    fn a_note_is_kept_cut_and_removed() {
        let mut progress = Progress::new(0, 1);
        progress.note(3, "tighter here");
        progress.note(4, &"x".repeat(LONGEST_NOTE + 50));
        assert_eq!(progress.notes[&3], "tighter here");
        assert_eq!(progress.notes[&4].len(), LONGEST_NOTE);
        progress.note(3, "");
        assert!(!progress.notes.contains_key(&3));
    }
}
