//! Full repeats: how a designer writes a round that shapes, and what each departure from
//! plain writing costs the maker.
//!
//! Published rounds are shaped by so many full repeats, `(sc 4, inc) × 6`; the number is kept
//! over a run of rounds, with plain rounds between, and changed only where it buys something.
//! So a search over counts knows the number of the run it is in ([`RepeatRun`]), and pays
//! ([`Prices`]) for a new number, for a change of number, and most for a round that is no
//! full repeat.

use super::rules::Start;

/// How a round is shaped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shaping {
    /// It keeps the count.
    Plain,
    /// One repeat all the way round, so many times, with one or two shapings in each.
    Full {
        /// How often the repeat is worked.
        repeats: u32,
        /// Increases or decreases in one repeat.
        each: u32,
    },
    /// The shaping does not come out as full repeats.
    Uneven,
}

impl Shaping {
    /// The shaping of a round of `count` stitches on one of `below`, its increases or
    /// decreases spread evenly.
    pub fn of(below: u32, count: u32) -> Self {
        let shaped = below.abs_diff(count);
        let full = |each: u32| shaped / each >= 2 && below.is_multiple_of(shaped / each);
        match shaped {
            0 => Self::Plain,
            _ if full(1) => Self::Full { repeats: shaped, each: 1 },
            _ if shaped.is_multiple_of(2) && full(2) => {
                Self::Full { repeats: shaped / 2, each: 2 }
            }
            _ => Self::Uneven,
        }
    }

    /// The shaping of a round in a piece that begins as `start`.
    pub fn in_piece(start: Start, below: u32, count: u32) -> Self {
        match start.side() {
            Some(_) => Self::of_oval(below, count),
            None => Self::of(below, count),
        }
    }

    /// The shaping of a round of an oval, which is at its two ends.
    pub fn of_oval(below: u32, count: u32) -> Self {
        match below.abs_diff(count) {
            0 => Self::Plain,
            shaped if shaped.is_multiple_of(2) => Self::Full { repeats: 2, each: shaped / 2 },
            _ => Self::Uneven,
        }
    }
}

/// The number of repeats that is being kept, and all that were used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub struct RepeatRun {
    /// Repeats of the last round that was shaped; 0 before any.
    repeats: u32,
    /// One bit for each number of repeats used; from 63 on they share one.
    used: u64,
}

impl RepeatRun {
    /// The run after a round so shaped.
    pub fn then(self, shaping: Shaping) -> Self {
        match shaping {
            Shaping::Plain => self,
            Shaping::Full { repeats, .. } => {
                Self { repeats, used: self.used | 1 << repeats.min(63) }
            }
            Shaping::Uneven => Self { repeats: 0, ..self },
        }
    }

    /// Numbers of repeats used.
    pub fn numbers(self) -> u32 {
        self.used.count_ones()
    }
}

/// Most numbers of repeats in one pattern: no published piece asks a maker to know more.
/// Common practice, no source.
pub(super) const MOST_NUMBERS: u32 = 4;

/// What a pattern costs the maker, in units of one new number of repeats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prices {
    /// What one unit is worth in mean square misfit, squared stitches. 0 charges nothing and
    /// lets counts be free.
    pub unit: f64,
    /// What it costs where a plain round meets a shaping one, in units.
    pub alternation: f64,
    /// What a round costs whose count is not the one it had, squared stitches.
    pub change: f64,
}

/// A round that is no full repeat: dearer than any change of number, since whoever works it
/// has to count single stitches.
const UNEVEN: f64 = 6.0;

/// The first use of a number of repeats.
const NEW_NUMBER: f64 = 1.0;

/// What a number other than six costs beyond that: learners know sixes.
const NOT_SIX: f64 = 0.25;

/// What twos cost beyond that: they show as two seams.
const TWOS: f64 = 1.0;

/// What another number than six costs on top on fewer stitches than [`FIRST_ROUNDS`]: every
/// maker expects 6, 12, 18, 24, 30 there and works it without looking. Common practice, no
/// source.
const NOT_SIX_AT_FIRST: f64 = 1.0;

/// Stitches up to which that is so.
const FIRST_ROUNDS: u32 = 30;

/// Plain stitches between two shapings that are still easy to count.
const EASY_GAP: u32 = 8;

/// What each stitch beyond that costs, a round.
const LONG_GAP: f64 = 0.012;

/// Another number than in the shaping round before.
const CHANGE: f64 = 0.5;

/// Two shapings in one repeat: longer to read than one.
const TWO_IN_A_REPEAT: f64 = 0.35;

/// A plain round next to a shaping one: a little, so that plain rounds are not strewn for
/// nothing.
const ALTERNATION: f64 = 0.02;

/// The same where plain rounds are wanted together.
const TOGETHER: f64 = 1.0;

impl Prices {
    /// Prices at `unit`; `together` says whether plain rounds are wanted side by side.
    pub fn at(unit: f64, together: bool) -> Self {
        Self { unit, alternation: if together { TOGETHER } else { ALTERNATION }, change: 0.0 }
    }

    /// Whether counts are free.
    pub fn is_free(self) -> bool {
        self.unit == 0.0
    }

    /// What a round so shaped on `below` costs after `run`.
    pub fn of(self, shaping: Shaping, below: u32, run: RepeatRun) -> f64 {
        if self.is_free() {
            return 0.0;
        }
        match shaping {
            Shaping::Plain => 0.0,
            Shaping::Uneven => UNEVEN,
            Shaping::Full { repeats, each } => {
                let mut price = 0.0;
                if run.used & (1 << repeats.min(63)) == 0 {
                    price += NEW_NUMBER;
                    price += match repeats {
                        6 => 0.0,
                        2 => TWOS,
                        _ => NOT_SIX,
                    };
                }
                if repeats != 6 && below < FIRST_ROUNDS {
                    price += NOT_SIX_AT_FIRST;
                }
                let gap = below / (repeats * each);
                price += LONG_GAP * f64::from(gap.saturating_sub(EASY_GAP));
                price += if run.repeats == repeats || run.used == 0 { 0.0 } else { CHANGE };
                price += if each == 1 { 0.0 } else { TWO_IN_A_REPEAT };
                price
            }
        }
    }

    /// What it costs where a plain round meets a shaping one.
    pub fn of_alternation(self, one_is_plain: bool, other_is_plain: bool) -> f64 {
        if one_is_plain == other_is_plain { 0.0 } else { self.alternation }
    }

    /// A price in squared stitches.
    pub fn charge(self, price: f64) -> f64 {
        self.unit * price
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn full_repeats_are_those_that_come_out_even() {
        assert_eq!(Shaping::of(24, 30), Shaping::Full { repeats: 6, each: 1 });
        assert_eq!(Shaping::of(30, 24), Shaping::Full { repeats: 6, each: 1 });
        assert_eq!(Shaping::of(15, 21), Shaping::Full { repeats: 3, each: 2 });
        assert_eq!(Shaping::of(20, 26), Shaping::Uneven);
        assert_eq!(Shaping::of(7, 8), Shaping::Uneven);
        assert_eq!(Shaping::of(7, 7), Shaping::Plain);
        assert_eq!(Shaping::of(6, 12), Shaping::Full { repeats: 6, each: 1 });
    }

    #[test]
    fn keeping_a_number_is_cheaper_than_a_new_one_and_an_uneven_round_is_dearest() {
        let prices = Prices::at(1.0, false);
        let six = Shaping::Full { repeats: 6, each: 1 };
        let five = Shaping::Full { repeats: 5, each: 1 };
        let run = RepeatRun::default().then(six);
        assert_eq!(prices.of(six, 24, run), 0.0);
        assert!(prices.of(five, 24, run) > prices.of(six, 24, RepeatRun::default()));
        assert!(prices.of(six, 24, run.then(five)) < prices.of(five, 24, run));
        assert!(prices.of(Shaping::Uneven, 24, run) > prices.of(five, 24, run));
        assert_eq!(run.then(five).then(six).numbers(), 2);
    }
}
