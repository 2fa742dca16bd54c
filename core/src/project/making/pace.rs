//! Pace: time worked, and time left at the maker's own pace.

use super::course::WorkedPiece;
use super::{Making, Pace, Progress, Stand};
use crate::piece::Habits;

/// Stitches after which a maker's own pace is known well enough to be used. Common practice,
/// no source: about five minutes' work.
pub const ENOUGH_STITCHES: u32 = 60;

/// A step between two stitches longer than this is a pause if it is also longer than
/// [`SLOW`] times what its stitches usually take, s.
const PAUSE_S: f64 = 90.0;
/// How much slower than usual someone may work before it is a pause.
const SLOW: f64 = 3.0;
/// Nobody makes a stitch in less, s: steps that quick only catch up with work done before.
const QUICKEST_S: f64 = 0.4;
/// Time between two steps that is counted at most, s, unless the step is a long round.
const LONGEST_S: f64 = 300.0;

/// What is made, what is left and how long it takes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Outlook {
    /// Stitches left.
    pub stitches_left: u32,
    /// Time worked, s.
    pub seconds: f64,
    /// Time left, s.
    pub seconds_left: f64,
    /// Stitches a minute this reckons with.
    pub per_minute: f64,
    /// Whether that is the maker's own pace, not the habit the piece states.
    pub own: bool,
}

/// The longest time between two steps that is counted as work, s, where the later makes
/// `stitches` stitches.
pub fn counted_at_most(stitches: u32, habits: &Habits) -> f64 {
    LONGEST_S.max(SLOW * usual_s(stitches, habits))
}

fn usual_s(stitches: u32, habits: &Habits) -> f64 {
    60.0 * f64::from(stitches) / habits.stitches_per_minute
}

impl Progress {
    /// Counts `seconds` since the step before for a step that makes `stitches` stitches. What
    /// is longer than [`counted_at_most`] is cut to it; what is quicker than any hands is no
    /// work but catching up, and is left out.
    pub fn spend(&mut self, seconds: f64, stitches: u32, habits: &Habits) {
        if !seconds.is_finite() || seconds < QUICKEST_S * f64::from(stitches) {
            return;
        }
        self.seconds += seconds.min(counted_at_most(stitches, habits));
        let paused = seconds > PAUSE_S.max(SLOW * usual_s(stitches, habits));
        if stitches > 0 && !paused {
            self.pace = self.pace.and(Pace { stitches, seconds });
        }
    }
}

impl Making {
    /// Everything that was timed, all pieces and sizes together: the same hands made them.
    pub fn pace(&self) -> Pace {
        self.at.iter().fold(Pace::default(), |sum, p| sum.and(p.pace))
    }

    /// The outlook for a copy that is as far as `begun`, or not begun, made as `course` by
    /// someone of `habits`.
    pub fn outlook(
        &self,
        begun: Option<&Progress>,
        course: &WorkedPiece,
        habits: &Habits,
    ) -> Outlook {
        let (round, done) = match begun.map(|p| p.stand(course)) {
            None => (1, 0),
            Some(Stand::Stitch { round, done }) => (round, done),
            // A stop comes before the first stitch of its round.
            Some(Stand::Stop(_)) => (begun.map_or(1, |p| p.round), 0),
            Some(Stand::Made) => (course.last_round() + 1, 0),
        };
        let rest = course.rounds.iter().skip(round as usize - 1);
        let made = course.round(round).map_or(0, |r| r.made(done));
        let all: u32 = rest.clone().map(|r| r.count).sum();
        let joining: u32 = rest.map(|r| r.joining).sum();
        let stitches_left = all - made;
        let pace = self.pace();
        let own = pace.stitches >= ENOUGH_STITCHES && pace.seconds > 0.0;
        // A maker's own pace has the joining of rounds in it already.
        let (per_minute, to_make) = match own {
            true => (60.0 * f64::from(pace.stitches) / pace.seconds, stitches_left),
            false => (habits.stitches_per_minute, stitches_left + joining),
        };
        Outlook {
            stitches_left,
            seconds: begun.map_or(0.0, |p| p.seconds),
            seconds_left: 60.0 * f64::from(to_make) / per_minute,
            per_minute,
            own,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::PieceId;

    #[test]
    fn pauses_and_catching_up_are_no_pace() {
        let habits = Habits::default(); // 12 a minute: 5 s a stitch.
        let mut progress = Progress::new(PieceId::new(0), 1);
        progress.spend(6.0, 1, &habits);
        assert_eq!(progress.pace, Pace { stitches: 1, seconds: 6.0 });
        // A cup of tea: five minutes are counted, none of it as pace.
        progress.spend(1000.0, 1, &habits);
        assert_eq!((progress.seconds, progress.pace.stitches), (306.0, 1));
        // A long round at one go is work, not a pause.
        progress.spend(700.0, 120, &habits);
        assert_eq!((progress.seconds, progress.pace.stitches), (1006.0, 121));
        // Ten rounds clicked away in two seconds were made before.
        progress.spend(0.2, 48, &habits);
        progress.spend(f64::NAN, 1, &habits);
        assert_eq!((progress.seconds, progress.pace.stitches), (1006.0, 121));
        // Stuffing takes time and makes no stitch.
        progress.spend(200.0, 0, &habits);
        assert_eq!((progress.seconds, progress.pace.stitches), (1206.0, 121));
    }
}
