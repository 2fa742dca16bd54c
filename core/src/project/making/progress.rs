//! What is under the hook, as it is saved.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::begun::Begun;
use crate::error::{Error, Result, within};
use crate::piece::{MOST_COPIES, MOST_ROUNDS, Piece, PieceId};

/// Longest note on a round, characters.
pub const LONGEST_NOTE: usize = 400;

/// Most seconds of work a piece may have: more than a year of days and nights.
const MOST_SECONDS: f64 = 4e7;

/// Stitches made without a pause, and the time they took.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Pace {
    /// Stitches.
    pub stitches: u32,
    /// Seconds.
    pub seconds: f64,
}

impl Pace {
    /// Both together.
    pub(super) fn and(self, other: Self) -> Self {
        Self {
            stitches: self.stitches.saturating_add(other.stitches),
            seconds: self.seconds + other.seconds,
        }
    }
}

/// Everything that is under the hook or made already; at most one entry for every copy of a
/// piece at a size. What was worked on last stands last.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Making {
    /// The entries.
    pub at: Vec<Progress>,
}

/// One copy of one piece, at one size, under the hook.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Progress {
    /// The piece.
    pub piece: PieceId,
    /// The size of the project that it belongs to, by name; none where all is made as it is
    /// designed. A piece without such a size can belong to it too: the others need theirs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
    /// Which copy of it, counted from 1.
    #[serde(default = "first")]
    pub copy: u32,
    /// The round under the hook, counted from 1; one past the last once all are worked.
    #[serde(default = "first")]
    pub round: u32,
    /// What of that round is worked: plain stitches, increases and decreases, each one.
    #[serde(default)]
    pub done: u32,
    /// That round as it was planned when it was last worked on.
    #[serde(default, skip_serializing_if = "Begun::is_nothing")]
    pub of: Begun,
    /// Stitches at the end of each round that is worked, as they were planned then.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub worked: Vec<u32>,
    /// Whether the stuffing is in.
    #[serde(default)]
    pub stuffed: bool,
    /// How many of the things that are done inside are done.
    #[serde(default, skip_serializing_if = "is_nothing")]
    pub inside: u32,
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

fn is_nothing(number: &u32) -> bool {
    *number == 0
}

impl Progress {
    /// Copy `copy` of piece `piece` as it is designed, not begun.
    pub fn new(piece: PieceId, copy: u32) -> Self {
        Self {
            piece,
            size: None,
            copy,
            round: 1,
            done: 0,
            of: Begun::default(),
            worked: Vec::new(),
            stuffed: false,
            inside: 0,
            closed: false,
            seconds: 0.0,
            pace: Pace::default(),
            notes: BTreeMap::new(),
        }
    }

    /// The same, belonging to the size called `size`.
    #[must_use]
    pub fn at_size(self, size: Option<&str>) -> Self {
        Self { size: size.map(str::to_owned), ..self }
    }

    /// Whether this is copy `copy` of piece `piece` at `size`.
    pub(super) fn is(&self, piece: PieceId, size: Option<&str>, copy: u32) -> bool {
        (self.piece, self.size.as_deref(), self.copy) == (piece, size, copy)
    }

    /// Whether both are of one copy at one size.
    pub(super) fn is_of_same(&self, other: &Self) -> bool {
        self.is(other.piece, other.size.as_deref(), other.copy)
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
        within("inside", f64::from(self.inside), 0.0, f64::from(last), "")?;
        within("seconds", self.seconds, 0.0, MOST_SECONDS, "s")?;
        within("pace.seconds", self.pace.seconds, 0.0, MOST_SECONDS, "s")?;
        if !self.of.is_possible() {
            let what = "no round has so many stitches";
            return Err(Error::new("of", what, "list the stitches of one round"));
        }
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

    /// The progress of copy `copy` (from 1) of piece `piece` at the size called `size`, or as
    /// it is designed, once it is begun.
    pub fn of(&self, piece: PieceId, size: Option<&str>, copy: u32) -> Option<&Progress> {
        self.at.iter().find(|p| p.is(piece, size, copy))
    }

    /// As [`Self::of`], to be worked on; begins it.
    pub fn begin(&mut self, piece: PieceId, size: Option<&str>, copy: u32) -> &mut Progress {
        let progress = match self.at.iter().position(|p| p.is(piece, size, copy)) {
            Some(at) => self.at.remove(at),
            None => Progress::new(piece, copy).at_size(size),
        };
        self.at.push(progress);
        let last = self.at.len() - 1;
        &mut self.at[last]
    }

    /// Which copy of piece `piece` at `size` was worked on last, from 1.
    pub fn last_copy(&self, piece: PieceId, size: Option<&str>) -> Option<u32> {
        let mine = |p: &&Progress| p.is(piece, size, p.copy);
        self.at.iter().rev().find(mine).map(|p| p.copy)
    }

    /// Refuses progress that no hands could make in a project of these pieces.
    ///
    /// # Errors
    /// Names the copy and the field at fault, and the mend.
    pub(crate) fn validate(&self, pieces: &[Piece]) -> Result<()> {
        for (i, progress) in self.at.iter().enumerate() {
            let Progress { piece, size, copy, .. } = progress;
            let at = size.as_ref().map_or_else(String::new, |size| format!(", size “{size}”"));
            let place = format!("making, piece {piece}{at}, copy {copy}");
            let known = pieces.iter().map(|piece| piece.id);
            piece.among(known).map_err(|e| e.within(&place))?;
            if size.as_ref().is_some_and(|size| !has_size(pieces, size)) {
                return Err(Error::new(
                    place,
                    "no piece has such a size",
                    "name a size of the project, or none for it as it is designed",
                ));
            }
            if self.at[..i].iter().any(|p| p.is_of_same(progress)) {
                return Err(Error::new(place, "it is listed twice", "keep one of the two"));
            }
            progress.validate().map_err(|e| e.within(&place))?;
        }
        Ok(())
    }
}

/// Whether a piece of these has a size called `name`.
pub(super) fn has_size(pieces: &[Piece], name: &str) -> bool {
    pieces.iter().flat_map(|piece| &piece.sizes).any(|size| size.name == name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Gauge, Outline, Size, SizeBy};

    fn pieces(number: usize) -> Vec<Piece> {
        let plain = || Piece::new("Ear", Outline { knots: Vec::new() }, Gauge::default());
        (0..number).map(|i| Piece { id: PieceId::new(i as u32), ..plain() }).collect()
    }

    #[test]
    fn what_no_hands_could_make_is_refused_by_name() {
        let sound =
            Progress { round: 4, worked: vec![6, 12, 18], ..Progress::new(PieceId::new(1), 2) };
        let making = Making { at: vec![sound.clone()] };
        assert_eq!(making.validate(&pieces(2)), Ok(()));
        assert!(
            making
                .validate(&pieces(1))
                .is_err_and(|e| e.to_string().contains("piece 1, copy 2"))
        );
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
            assert!(Making { at: vec![progress] }.validate(&pieces(2)).is_err(), "{i}");
        }
        let twice = Making { at: vec![sound.clone(), sound] };
        assert!(twice.validate(&pieces(2)).is_err_and(|e| e.to_string().contains("twice")));
    }

    #[test]
    fn copies_of_another_size_are_others_and_their_size_is_one_of_the_project() {
        let mut pieces = pieces(2);
        pieces[0].sizes.push(Size::new("S", SizeBy::Factor(0.5)));
        let mut making = Making::default();
        for size in [None, Some("S")] {
            making.begin(PieceId::new(1), size, 1).round = 2;
            making.begin(PieceId::new(1), size, 2).round = 3;
        }
        assert_eq!(making.validate(&pieces), Ok(()), "the ear is made for the S too");
        assert_eq!(making.at.len(), 4);
        making.begin(PieceId::new(1), None, 1).round = 5;
        let round = |size, copy| making.of(PieceId::new(1), size, copy).map(|p| p.round);
        assert_eq!([round(None, 1), round(Some("S"), 1)], [Some(5), Some(2)]);
        assert_eq!(
            making.at.last(),
            making.of(PieceId::new(1), None, 1),
            "worked on last, it stands last"
        );
        assert_eq!(making.last_copy(PieceId::new(1), None), Some(1));
        assert_eq!(
            (
                making.last_copy(PieceId::new(1), Some("S")),
                making.last_copy(PieceId::new(0), None)
            ),
            (Some(2), None)
        );
        making.begin(PieceId::new(1), Some("XL"), 1);
        let error = making.validate(&pieces).expect_err("there is no XL").to_string();
        assert!(
            error.contains("piece 1, size “XL”, copy 1: no piece has such a size"),
            "{error}"
        );
    }

    #[test]
    fn a_note_is_kept_cut_and_removed() {
        let mut progress = Progress::new(PieceId::default(), 1);
        progress.note(3, "tighter here");
        progress.note(4, &"x".repeat(LONGEST_NOTE + 50));
        assert_eq!(progress.notes[&3], "tighter here");
        assert_eq!(progress.notes[&4].len(), LONGEST_NOTE);
        progress.note(3, "");
        assert!(!progress.notes.contains_key(&3));
    }
}
