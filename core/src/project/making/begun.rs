//! A round as it was planned when work on it began, as it is saved: by this a change of plan
//! is found out.

use std::fmt;

use serde::de::{SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::plan::placement::Stitch;

/// Most stitches of a round; more than a plan ever has.
const MOST_STITCHES: u32 = 40_000;

/// The round under work as it was planned then. Files of version 1 hold it in the words of
/// that version; what those words say is kept, and words that say nothing are kept as they
/// are, so that saving never loses what a file held.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Begun {
    /// Its stitches in working order, so many alike in a row. None where nothing of the round
    /// is worked.
    Stitches(Vec<(Stitch, u32)>),
    /// Words that no plan of version 1 wrote; they fit no round.
    Words(String),
}

impl Default for Begun {
    fn default() -> Self {
        Self::Stitches(Vec::new())
    }
}

impl Begun {
    /// A round of these stitches, begun.
    pub fn of(stitches: impl IntoIterator<Item = Stitch>) -> Self {
        let mut rows: Vec<(Stitch, u32)> = Vec::new();
        for stitch in stitches {
            put(&mut rows, stitch, 1);
        }
        Self::Stitches(rows)
    }

    /// Whether nothing of the round is worked.
    pub fn is_nothing(&self) -> bool {
        *self == Self::default()
    }

    /// Reads the words of version 1, which were always US terms in single crochet:
    /// `(sc 5, inc) × 6 [42]`.
    fn in_words(text: &str) -> Self {
        match stitches_of(text) {
            Some(rows) => Self::Stitches(rows),
            None => Self::Words(text.to_owned()),
        }
    }

    /// Whether a round can have so many stitches.
    pub(super) fn is_possible(&self) -> bool {
        match self {
            Self::Stitches(rows) => total(rows).is_some(),
            Self::Words(_) => true,
        }
    }
}

fn put(rows: &mut Vec<(Stitch, u32)>, stitch: Stitch, times: u32) {
    match rows.last_mut() {
        Some((last, row)) if *last == stitch => *row = row.saturating_add(times),
        _ => rows.push((stitch, times)),
    }
}

/// Stitches that a round of these leaves, if no more than a round can have.
fn total(rows: &[(Stitch, u32)]) -> Option<u32> {
    let left = rows.iter().try_fold(0_u32, |sum, (stitch, times)| {
        sum.checked_add(times.checked_mul(stitch.produces())?)
    });
    left.filter(|&left| left <= MOST_STITCHES)
}

fn stitches_of(text: &str) -> Option<Vec<(Stitch, u32)>> {
    let (work, count) = text.strip_suffix(']')?.rsplit_once(" [")?;
    let count = count.parse().ok().filter(|&count| count <= MOST_STITCHES)?;
    let rows = match work {
        "sc in each st" => vec![(Stitch::Plain, count)],
        _ => line(work, 0)?,
    };
    (total(&rows)? == count).then_some(rows)
}

/// Items between commas; brackets are at most two deep.
fn line(work: &str, depth: u32) -> Option<Vec<(Stitch, u32)>> {
    let mut rows = Vec::new();
    let mut open = 0;
    let between = |c: char| {
        open += i32::from("([".contains(c)) - i32::from(")]".contains(c));
        c == ',' && open == 0
    };
    for part in work.split(between) {
        let (body, times) = match part.trim().rsplit_once(" × ") {
            Some((body, times)) => (body, times.parse().ok()?),
            None => (part.trim(), 1_u32),
        };
        let once = match inside(body) {
            Some(inside) if depth < 2 => line(inside, depth + 1)?,
            Some(_) => return None,
            None => vec![item(body)?],
        };
        // Checked before it is laid out: a number in a file may be anything.
        let least = total(&once)?.checked_mul(times)?;
        if least > MOST_STITCHES {
            return None;
        }
        for (stitch, row) in std::iter::repeat_n(&once, times as usize).flatten() {
            put(&mut rows, *stitch, *row);
        }
    }
    total(&rows).map(|_| rows)
}

/// What stands in brackets; version 1 wrote square ones around round ones.
fn inside(body: &str) -> Option<&str> {
    let between = |open, close| body.strip_prefix(open)?.strip_suffix(close);
    between('(', ')').or_else(|| between('[', ']'))
}

/// `sc 5`, `inc`.
fn item(text: &str) -> Option<(Stitch, u32)> {
    let (word, times) = match text.split_once(' ') {
        Some((word, times)) => (word, times.parse().ok()?),
        None => (text, 1),
    };
    let stitch = match word {
        "sc" => Stitch::Plain,
        "inc" => Stitch::Increase,
        "dec" => Stitch::Decrease,
        _ => return None,
    };
    (times > 0).then_some((stitch, times))
}

impl Serialize for Begun {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Stitches(rows) => rows.serialize(to),
            Self::Words(words) => to.serialize_str(words),
        }
    }
}

impl<'de> Deserialize<'de> for Begun {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Either;

        impl<'de> Visitor<'de> for Either {
            type Value = Begun;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the stitches of a round, such as [(Plain, 5), (Increase, 1)]")
            }

            fn visit_str<E>(self, text: &str) -> Result<Begun, E> {
                Ok(Begun::in_words(text))
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<Begun, A::Error> {
                let mut rows = Vec::new();
                while let Some((stitch, times)) = from.next_element()? {
                    put(&mut rows, stitch, times);
                }
                Ok(Begun::Stitches(rows))
            }
        }
        from.deserialize_any(Either)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounds as version 1 wrote them, and their stitches.
    const VERSION_1: &str = include_str!("../../../../tests/projects/version-1/rounds.txt");

    #[test]
    fn the_words_of_version_1_are_read_as_the_stitches_they_stood_for() {
        let mut read = 0;
        for line in VERSION_1.lines() {
            let (words, stitches) = line.split_once('\t').expect("words and stitches");
            let rows = stitches.split(' ').map(|row| {
                let stitch = match &row[..1] {
                    "p" => Stitch::Plain,
                    "i" => Stitch::Increase,
                    _ => Stitch::Decrease,
                };
                (stitch, row[1..].parse().expect("a number"))
            });
            assert_eq!(Begun::in_words(words), Begun::Stitches(rows.collect()), "{words}");
            read += 1;
        }
        assert!(read > 200, "{read}");
    }

    #[test]
    fn other_words_are_kept_and_fit_no_round() {
        for words in [
            "inc × 6",
            "inc × 6 [13]",
            "4 ch [4]",
            "sc in each st [4000000000]",
            "(sc 9, inc) × 4000000000 [36]",
            "((((sc)))) × 2 [2]",
            "(sc, inc × 6 [12]",
            "] [",
        ] {
            assert_eq!(Begun::in_words(words), Begun::Words(words.to_owned()));
        }
    }

    #[test]
    fn what_is_saved_is_read_again() {
        use Stitch::{Increase, Plain};
        for begun in [
            Begun::of([Plain, Plain, Increase, Plain]),
            Begun::default(),
            Begun::Words("as grandmother did".into()),
        ] {
            let text = ron::to_string(&begun).expect("it is written");
            assert_eq!(ron::from_str::<Begun>(&text).expect("it is read"), begun, "{text}");
        }
        assert!(ron::from_str::<Begun>("7").is_err());
    }
}
