//! Steps: on by a stitch, a repeat or a round, and back again.
//!
//! A place is always one of these, in this order: a stitch of a round (none of it worked to
//! all but the last), the stops to lay something in and to stuff after their rounds, and after
//! the last round the stop to close; then the piece is made. Stops are passed by [`Progress::acknowledge`] alone, so
//! that nobody ticks past them.

use super::course::WorkedPiece;
use super::{Begun, Progress};

/// How far a step goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum By {
    /// One stitch: a plain one, an increase or a decrease.
    Stitch,
    /// To the end of the repeat under way.
    Repeat,
    /// To the end of the round under way.
    Round,
}

impl By {
    /// All of them, smallest first.
    pub const ALL: [Self; 3] = [Self::Stitch, Self::Repeat, Self::Round];
}

/// Something to do between two rounds that is not passed by a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stop {
    /// Laying card in, running a thread through: by its index in the course's.
    Inside(u32),
    /// Stuffing the piece.
    Stuff,
    /// Closing or fastening off.
    Close,
}

/// Where a copy stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// Before a stitch.
    Stitch {
        /// Its round, from 1.
        round: u32,
        /// Its index in the round, from 0.
        done: u32,
    },
    /// At a stop.
    Stop(Stop),
    /// It is made.
    Made,
}

/// A place that can be gone back to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReturnPlace {
    /// The round, from 1.
    pub round: u32,
    /// Steps of it that are worked.
    pub done: u32,
    /// Whether the stuffing is in.
    pub stuffed: bool,
    /// How many of the things inside are done.
    pub inside: u32,
    /// Whether the piece is made.
    pub closed: bool,
}

impl Progress {
    /// The place as it is saved.
    pub fn place(&self) -> ReturnPlace {
        let Self { round, done, stuffed, inside, closed, .. } = *self;
        ReturnPlace { round, done, stuffed, inside, closed }
    }

    /// Where this stands on `course`. A place that the course no longer has is the nearest
    /// there is: past its last round that round's end, past a round's last stitch that
    /// stitch.
    pub fn stand(&self, course: &WorkedPiece) -> Stand {
        let (round, done) = self.on(course);
        match (self.due(course, round), course.round(round)) {
            // What is made stays made, whatever becomes of its plan.
            _ if self.closed => Stand::Made,
            (Some(stop), _) => Stand::Stop(stop),
            (None, Some(_)) => Stand::Stitch { round, done },
            (None, None) => Stand::Stop(Stop::Close),
        }
    }

    /// What is to be done before `round`, the first of it.
    fn due(&self, course: &WorkedPiece, round: u32) -> Option<Stop> {
        let stuffing = course.stuff_after.filter(|&after| round > after && !self.stuffed);
        let inside = course.inside.get(self.inside as usize).filter(|line| round > line.after);
        match (inside, stuffing) {
            (Some(line), Some(after))
                if (line.after, !line.under_stuffing) > (after, false) =>
            {
                Some(Stop::Stuff)
            }
            (Some(_), _) => Some(Stop::Inside(self.inside)),
            (None, Some(_)) => Some(Stop::Stuff),
            (None, None) => None,
        }
    }

    /// Round and step on `course`, kept within it.
    fn on(&self, course: &WorkedPiece) -> (u32, u32) {
        let round = self.round.min(course.last_round() + 1);
        let most = course.round(round).map_or(0, |r| r.steps().saturating_sub(1));
        (round, self.done.min(most))
    }

    /// Works on; returns the stitches this makes. 0 at a stop, and once the piece is made.
    pub fn advance(&mut self, course: &WorkedPiece, by: By) -> u32 {
        let Stand::Stitch { round, done } = self.stand(course) else { return 0 };
        let Some(worked) = course.round(round) else { return 0 };
        let to = match by {
            By::Stitch => done + 1,
            By::Repeat => worked.repeat_end(worked.repeat_of(done)),
            By::Round => worked.steps(),
        };
        let place = self.place();
        self.take_place(
            course,
            match to < worked.steps() {
                true => ReturnPlace { round, done: to, ..place },
                false => ReturnPlace { round: round + 1, done: 0, ..place },
            },
        );
        worked.made(to) - worked.made(done)
    }

    /// Passes a stop: the stuffing is in, or the piece is closed. Returns whether there was
    /// one.
    pub fn acknowledge(&mut self, course: &WorkedPiece) -> bool {
        match self.stand(course) {
            Stand::Stop(Stop::Stuff) => self.stuffed = true,
            Stand::Stop(Stop::Inside(_)) => self.inside += 1,
            Stand::Stop(Stop::Close) => self.closed = true,
            Stand::Stitch { .. } | Stand::Made => return false,
        }
        true
    }

    /// Goes back by one stitch, or over a stop that was passed; returns whether there was
    /// anything to go back over.
    pub fn back(&mut self, course: &WorkedPiece) -> bool {
        let (round, done) = self.on(course);
        let place = ReturnPlace { round, done, ..self.place() };
        let stuffing = self.stuffed && course.stuff_after.is_some_and(|a| round == a + 1);
        let laid = self.inside.checked_sub(1).and_then(|i| course.inside.get(i as usize));
        let laid = laid.filter(|line| round == line.after + 1);
        // What was done last is taken back first.
        let over = laid.is_some_and(|line| !line.under_stuffing);
        let before = match course.round(round - 1) {
            _ if self.closed => ReturnPlace { closed: false, ..place },
            _ if done > 0 => ReturnPlace { done: done - 1, ..place },
            _ if stuffing && !over => ReturnPlace { stuffed: false, ..place },
            _ if laid.is_some() => ReturnPlace { inside: self.inside - 1, ..place },
            Some(below) => ReturnPlace { round: round - 1, done: below.steps() - 1, ..place },
            None => return false,
        };
        self.take_place(course, before);
        true
    }

    /// Takes up work at the start of `round`, counted from 1: on from there, or ripped back
    /// to there. Past the last round there is only the close.
    ///
    /// Stuffing that lies ahead again is to be done again; stuffing that is jumped over still
    /// has to be.
    pub fn go_to(&mut self, course: &WorkedPiece, round: u32) {
        let round = round.clamp(1, course.last_round() + 1);
        let stuffed = self.stuffed && course.stuff_after.is_some_and(|after| round > after);
        let laid = course.inside.iter().filter(|line| line.after < round).count() as u32;
        let inside = self.inside.min(laid);
        self.take_place(course, ReturnPlace { round, done: 0, stuffed, inside, closed: false });
    }

    /// Takes a place that [`Self::place`] gave on the same course.
    pub fn take_place(&mut self, course: &WorkedPiece, place: ReturnPlace) {
        let ReturnPlace { round, done, stuffed, inside, closed } = place;
        (self.round, self.done) = (round, done);
        (self.stuffed, self.inside, self.closed) = (stuffed, inside, closed);
        let before = (self.round as usize).saturating_sub(1).min(course.rounds.len());
        self.worked.truncate(before);
        let known = self.worked.len();
        self.worked.extend(course.rounds[known..before].iter().map(|r| r.count));
        self.of = match course.round(self.round) {
            Some(round) if self.done > 0 => Begun::of(round.stitches.iter().copied()),
            _ => Begun::default(),
        };
    }

    /// Steps of the whole course that are worked, and all there are.
    pub fn share(&self, course: &WorkedPiece) -> (u32, u32) {
        let (round, done) = self.on(course);
        let before = course.rounds.iter().take(round as usize - 1).map(|r| r.steps());
        (before.sum::<u32>() + done, course.rounds.iter().map(|r| r.steps()).sum())
    }
}
