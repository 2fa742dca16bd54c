//! What is worked into a round: which stitch is an increase, a decrease, a plain one. A round
//! is stored as runs, never stitch by stitch.

use serde::{Deserialize, Serialize};

use super::cloth::Kind;

/// What is worked into the stitches of the round below.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Stitch {
    /// One single crochet in one stitch.
    Plain,
    /// Two single crochets in one stitch.
    Increase,
    /// One single crochet over two stitches.
    Decrease,
}

impl Stitch {
    /// Stitches of the round below it takes.
    pub fn consumes(self) -> u32 {
        if self == Self::Decrease { 2 } else { 1 }
    }

    /// Stitches it leaves for the round above.
    pub fn produces(self) -> u32 {
        if self == Self::Increase { 2 } else { 1 }
    }

    /// `sc`, `inc` or `dec` in single crochet; a plain stitch goes by its kind.
    pub fn code(self, kind: Kind) -> &'static str {
        match self {
            Self::Plain => kind.code(),
            Self::Increase => "inc",
            Self::Decrease => "dec",
        }
    }
}

/// `before` plain stitches, one shaping stitch, `after` plain ones, all `times` over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Run {
    /// Plain stitches first.
    pub before: u32,
    /// Then this; `Plain` only in a round without shaping.
    pub shaping: Stitch,
    /// Then plain stitches again.
    pub after: u32,
    /// How often the run is worked in a row.
    pub times: u32,
}

/// The stitches of one round in working order: a motif of runs, worked `repeats` times.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Placement {
    /// Runs of one repeat.
    pub motif: Vec<Run>,
    /// How often the motif is worked around.
    pub repeats: u32,
}

impl Placement {
    /// A round of `count` plain stitches.
    pub fn plain(count: u32) -> Self {
        let run = Run { before: count - 1, shaping: Stitch::Plain, after: 0, times: 1 };
        Self { motif: vec![run], repeats: 1 }
    }

    /// The round of these stitches in working order, as its shortest repeat; `None` of none.
    pub fn of_stitches(stitches: &[Stitch]) -> Option<Self> {
        let n = stitches.len();
        let repeats = |length: usize| {
            n.is_multiple_of(length)
                && stitches.chunks(length).all(|c| *c == stitches[..length])
        };
        if stitches.iter().all(|&s| s == Stitch::Plain) {
            return (n > 0).then(|| Self::plain(n as u32));
        }
        let length = (1..=n).find(|&length| repeats(length))?;
        let mut motif: Vec<Run> = Vec::new();
        let mut put = |before: u32, shaping: Stitch| match motif.last_mut() {
            Some(run) if run.before == before && run.shaping == shaping => run.times += 1,
            _ => motif.push(Run { before, shaping, after: 0, times: 1 }),
        };
        let mut plain = 0;
        for &stitch in &stitches[..length] {
            match stitch {
                Stitch::Plain => plain += 1,
                shaping => put(std::mem::take(&mut plain), shaping),
            }
        }
        if plain > 0 {
            // Plain stitches after the last shaping belong to it alone.
            match motif.last_mut() {
                Some(run) if run.times > 1 => {
                    run.times -= 1;
                    let last = Run { after: plain, times: 1, ..*run };
                    motif.push(last);
                }
                Some(run) => run.after = plain,
                None => {}
            }
        }
        Some(Self { motif, repeats: (n / length) as u32 })
    }

    /// Stitches in working order.
    pub fn stitches(&self) -> impl Iterator<Item = Stitch> + '_ {
        let plain = |n: u32| std::iter::repeat_n(Stitch::Plain, n as usize);
        let worked = move |run: &Run| {
            let run = *run;
            (0..run.times).flat_map(move |_| {
                plain(run.before).chain(std::iter::once(run.shaping)).chain(plain(run.after))
            })
        };
        (0..self.repeats).flat_map(move |_| self.motif.iter().flat_map(worked))
    }

    fn sum(&self, of: impl Fn(Stitch) -> u32) -> u32 {
        let run = |r: &Run| r.times * (r.before + of(r.shaping) + r.after);
        self.repeats * self.motif.iter().map(run).sum::<u32>()
    }

    /// Stitches of the round below that it takes.
    pub fn consumed(&self) -> u32 {
        self.sum(Stitch::consumes)
    }

    /// Stitches it leaves.
    pub fn produced(&self) -> u32 {
        self.sum(Stitch::produces)
    }

    /// How many stitches of this kind it has.
    pub fn number_of(&self, kind: Stitch) -> u32 {
        if kind == Stitch::Plain {
            return self.sum(|s| u32::from(s == Stitch::Plain));
        }
        let run = |r: &Run| if r.shaping == kind { r.times } else { 0 };
        self.repeats * self.motif.iter().map(run).sum::<u32>()
    }

    /// Whether it prints as one plain line or one “(…) × k”, k ≥ 2 (or the same stitch in
    /// every stitch below).
    pub fn is_single_repeat(&self) -> bool {
        match self.motif.as_slice() {
            [run] if run.shaping == Stitch::Plain => true,
            [run] => self.repeats * run.times >= 2,
            _ => false,
        }
    }

    /// Where the shaping stitches sit in the round below, as parts of a full turn from that
    /// round's first stitch, in order.
    pub fn shaping_turns(&self) -> impl Iterator<Item = f64> + '_ {
        let below = f64::from(self.consumed());
        let mut at = 0_u32;
        self.stitches().filter_map(move |stitch| {
            let centre = f64::from(at) + 0.5 * f64::from(stitch.consumes());
            at += stitch.consumes();
            (stitch != Stitch::Plain).then_some(centre / below)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stitches_make_the_round_they_came_from() {
        use Stitch::{Decrease as D, Increase as I, Plain as P};
        for stitches in [
            vec![P; 7],
            vec![I; 6],
            vec![P, P, I, P, P, I],
            vec![I, I, P, I, I, P],
            vec![P, I, I, P, P, D, P],
            vec![I, P, I, P, P],
        ] {
            let placement = Placement::of_stitches(&stitches).expect("there are stitches");
            assert_eq!(placement.stitches().collect::<Vec<_>>(), stitches);
        }
        assert_eq!(Placement::of_stitches(&[]), None);
        let twice = Placement::of_stitches(&[I, I, P, I, I, P]).expect("stitches");
        assert_eq!(twice.repeats, 2);
    }
}
