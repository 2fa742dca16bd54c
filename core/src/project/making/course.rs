//! The course of a piece: its plan as what the hands do, one stitch after the other.

use crate::error::Result;
use crate::extent::Bounds;
use crate::piece::Piece;
use crate::piece::cloth::Working;
use crate::plan::placement::Stitch;
use crate::plan::{Plan, Round, plan};
use crate::project::Project;
use crate::project::sizes::at_size;
use crate::words::StitchKind;
use crate::words::from_plan::planned_work;
use crate::words::tree::{Decrease, Op, Placed, Times};
use crate::words::wording::{InsideLine, words};
use crate::words::write::{Below, Writer};

/// A piece as it is worked.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedPiece {
    /// The rounds in working order; round `k` is at index `k − 1`.
    pub rounds: Vec<CourseRound>,
    /// Read before round 1.
    pub opening: Vec<String>,
    /// Stuffing first goes in after this round.
    pub stuff_after: Option<u32>,
    /// What to do there.
    pub stuff_text: String,
    /// Stuffing, g, least and most.
    pub stuffing_g: Bounds,
    /// What is done inside it, in working order.
    pub inside: Vec<InsideLine>,
    /// Done after the last round.
    pub closing: Vec<String>,
    /// Stitches of the last round, where it stays open and is sewn to something.
    pub open_edge: Option<u32>,
}

/// One round as it is worked.
#[derive(Debug, Clone, PartialEq)]
pub struct CourseRound {
    /// Its name: `Rnd 9`.
    pub heading: String,
    /// What to work, in the words of the whole round.
    pub text: String,
    /// What the hands do, in order; each is one step.
    pub stitches: Vec<Stitch>,
    /// Where each repeat begins among those, from 0; a round without repeats is one.
    pub repeats: Vec<u32>,
    /// Stitches at its end.
    pub count: u32,
    /// Yarn it is worked in, an index into the project's yarns.
    pub yarn: usize,
    /// A plain stitch, an increase and a decrease of it, in words.
    words: [String; 3],
    /// Changes of yarn inside it: the step that is the first in another yarn, from 0, and that
    /// yarn.
    pub changes: Vec<(u32, usize)>,
    /// What is worked before its first stitch, in words; empty in a spiral.
    pub lead_in: String,
    /// What is worked after its last stitch, in words; empty in a spiral.
    pub lead_out: String,
    /// Chains and slip stitches of those.
    pub joining: u32,
}

impl CourseRound {
    /// A stitch of this round in words: `sc`, `inc`, `dec`.
    pub fn word(&self, stitch: Stitch) -> &str {
        &self.words[match stitch {
            Stitch::Plain => 0,
            Stitch::Increase => 1,
            Stitch::Decrease => 2,
        }]
    }

    /// Stitches on the hook's side once the first `done` steps are worked.
    pub fn made(&self, done: u32) -> u32 {
        self.stitches.iter().take(done as usize).map(|s| s.produces()).sum()
    }

    /// Steps in all.
    pub fn steps(&self) -> u32 {
        self.stitches.len() as u32
    }

    /// The repeat that step `done` (from 0) belongs to, counted from 0.
    pub fn repeat_of(&self, done: u32) -> usize {
        self.repeats.partition_point(|&start| start <= done).saturating_sub(1)
    }

    /// Where repeat `index` ends: the step after its last.
    pub fn repeat_end(&self, index: usize) -> u32 {
        self.repeats.get(index + 1).copied().unwrap_or(self.steps())
    }

    /// How often the stitch that step `done` is comes in a row from there on, and the other
    /// stitch that follows, if any.
    pub fn ahead(&self, done: u32) -> Option<(Stitch, u32, Option<Stitch>)> {
        let mut rest = self.stitches.iter().skip(done as usize).copied();
        let stitch = rest.next()?;
        let mut times = 1;
        for next in rest {
            if next != stitch {
                return Some((stitch, times, Some(next)));
            }
            times += 1;
        }
        Some((stitch, times, None))
    }
}

impl WorkedPiece {
    /// The course of `piece`, planned anew.
    ///
    /// # Errors
    /// As [`plan`](crate::plan()).
    pub fn of_piece(piece: &Piece, writer: &Writer<'_>) -> Result<Self> {
        Ok(Self::new(piece, &plan(piece)?, writer))
    }

    /// The courses of all pieces of `project` at its size called `size`, seams met: pieces
    /// without such a size are made as they are designed, or as a seam asks.
    ///
    /// # Errors
    /// As [`at_size`] and [`plan`](crate::plan()).
    pub fn at_size(project: &Project, size: &str, writer: &Writer<'_>) -> Result<Vec<Self>> {
        let at = at_size(project, size)?;
        let pieces = at.project.pieces.iter().zip(&at.made);
        pieces
            .map(|(piece, made)| match made {
                Some(made) => Ok(Self::new(piece, &made.plan, writer)),
                None => Self::of_piece(piece, writer)
                    .map_err(|e| e.within(&format!("piece “{}”", piece.name))),
            })
            .zip(&at.project.pieces)
            .map(|(course, piece)| Ok(course?.stuffed_if(at.project.stuffs(piece.id))))
            .collect()
    }

    /// The course of `piece`, planned as `plan`, in the words of `writer`.
    pub fn new(piece: &Piece, plan: &Plan, writer: &Writer<'_>) -> Self {
        let wording = words(plan, piece, writer);
        let mut below = plan.start.joined().unwrap_or(0);
        let rounds = (1..)
            .zip(&plan.rounds)
            .map(|(number, round)| {
                let kind = round.kind.into();
                let work = planned_work(piece, plan, number);
                let mut hands = HandMoves { below, ..HandMoves::default() };
                hands.line(&work);
                below = round.count;
                let joined = matches!(piece.working, Working::Joined { .. });
                let chain = Op::Chain(round.kind.turning_chain());
                let say = |op: Op| writer.text(&[Placed::unread(op)], Below::default());
                CourseRound {
                    heading: writer.round_name(number, number),
                    text: wording.text_of(number).to_owned(),
                    stitches: hands.stitches,
                    repeats: hands.repeats,
                    count: round.count,
                    yarn: round.yarn,
                    words: stitch_words(kind, writer),
                    changes: changes(round),
                    lead_in: if joined { say(chain) } else { String::new() },
                    lead_out: if joined { say(Op::Join) } else { String::new() },
                    joining: piece.working.joining(round.kind),
                }
            })
            .collect();
        let drawn = piece.outline.finishes_closed();
        let first = wording.stuffing.first();
        Self {
            rounds,
            opening: wording.opening,
            stuff_after: first.map(|stop| stop.after),
            stuff_text: first.map_or_else(String::new, |stop| stop.text.clone()),
            stuffing_g: plan.estimate.stuffing_g,
            inside: wording.inside,
            closing: wording.closing,
            open_edge: plan.rounds.last().filter(|_| !drawn).map(|round| round.count),
        }
    }

    /// The same; where it `is_stuffed` not, there is no stop to stuff it.
    #[must_use]
    pub fn stuffed_if(self, is_stuffed: bool) -> Self {
        match is_stuffed {
            true => self,
            false => Self { stuff_after: None, stuff_text: String::new(), ..self },
        }
    }

    /// Round `number`, counted from 1; none past the last.
    pub fn round(&self, number: u32) -> Option<&CourseRound> {
        self.rounds.get((number as usize).checked_sub(1)?)
    }

    /// Rounds in all.
    pub fn last_round(&self) -> u32 {
        self.rounds.len() as u32
    }

    /// The yarn to change to before round `number`, if it is another than that of the round
    /// before.
    pub fn yarn_change(&self, number: u32) -> Option<usize> {
        let yarn = self.round(number)?.yarn;
        let before = self.round(number.checked_sub(1)?)?.yarn;
        (yarn != before).then_some(yarn)
    }
}

/// Where the yarn changes inside a round, from its own.
fn changes(round: &Round) -> Vec<(u32, usize)> {
    let (mut at, mut now) = (0, round.yarn);
    let mut changes = Vec::new();
    for run in &round.colours {
        if run.yarn != now {
            changes.push((at, run.yarn));
        }
        now = run.yarn;
        at += run.steps;
    }
    changes
}

/// A plain stitch, an increase and a decrease of `kind`, as `writer` has them.
fn stitch_words(kind: StitchKind, writer: &Writer<'_>) -> [String; 3] {
    let say = |op: Op| writer.text(&[Placed::unread(op)], Below::default());
    [
        writer.lexicon().kind(kind).brief(1).to_owned(),
        say(Op::Into { kind, many: 2 }),
        say(Op::Together { kind, many: 2, how: Decrease::Plain }),
    ]
}

/// What the hands do in one round, as it is read off the round's work.
#[derive(Debug, Default)]
struct HandMoves {
    stitches: Vec<Stitch>,
    repeats: Vec<u32>,
    /// Stitches of the round below.
    below: u32,
    /// Whether the last repeat goes on with what comes next.
    open: bool,
}

impl HandMoves {
    /// The items of a line: a group that is worked several times is so many repeats, and what
    /// stands between such groups is one.
    fn line(&mut self, ops: &[Placed<Op>]) {
        for op in ops {
            match &op.it {
                Op::Only { body, .. } => self.line(body),
                Op::Group { body, times: Times::In(times) } => {
                    for _ in 0..*times {
                        self.begin();
                        self.work(body);
                    }
                    self.open = false;
                }
                _ => {
                    if !self.open {
                        self.begin();
                    }
                    self.open = true;
                    self.work(std::slice::from_ref(op));
                }
            }
        }
    }

    fn begin(&mut self) {
        self.repeats.push(self.stitches.len() as u32);
    }

    fn work(&mut self, ops: &[Placed<Op>]) {
        for op in ops {
            match &op.it {
                Op::Each { count, .. }
                | Op::Ring { count, .. }
                | Op::IntoChain { count, .. } => self.put(Stitch::Plain, *count),
                Op::Into { .. } => self.put(Stitch::Increase, 1),
                Op::Together { .. } => self.put(Stitch::Decrease, 1),
                Op::Only { body, .. } => self.work(body),
                Op::Group { body, times } => {
                    let times = match times {
                        Times::In(times) => *times,
                        // Only a single plain stitch is worked around.
                        Times::Around => self.below,
                    };
                    for _ in 0..times {
                        self.work(body);
                    }
                }
                // Nothing else in a planned round makes a stitch of it.
                _ => {}
            }
        }
    }

    fn put(&mut self, stitch: Stitch, times: u32) {
        self.stitches.extend(std::iter::repeat_n(stitch, times as usize));
    }
}
