//! Cloth on its way to rest, and what is needed to show it.

use std::time::{Duration, Instant};

use plumpline_core::lesson::Relaxation;
use plumpline_core::lesson::net::RoundLook;
use plumpline_core::picture::relief::DrapeCell;
use plumpline_core::{Error, Piece, Plan, Result};

use super::{LessonState, LessonSubject, LessonWish};

/// A place, mm.
pub(in crate::work) type LessonPlace = [f64; 3];

/// How long the cloth goes on between two pictures of it.
const BETWEEN: Duration = Duration::from_millis(30);

/// A net on its way, and its patches.
pub(in crate::work) struct LooseCloth {
    relaxation: Relaxation,
    pub(in crate::work) cells: Vec<DrapeCell>,
    progress: f64,
}

/// The cloth of a lesson.
pub(super) struct LessonCloth {
    pub(super) subject: LessonSubject,
    pub(super) cloth: LooseCloth,
    /// Half of what it may come to reach, mm: its pictures keep one scale.
    pub(super) reach: f32,
}

impl LessonCloth {
    /// The cloth that is wished for, let go.
    pub(super) fn of(wish: &LessonWish) -> Result<Self> {
        let cloth = match (&wish.subject, &wish.piece) {
            (LessonSubject::Sample(rule, gauge), _) => {
                let kind = rule.kind();
                let relaxation = rule.at(*gauge)?.relaxation(*gauge)?;
                LooseCloth::new(relaxation, |_| RoundLook { kind, yarn: 0 })
            }
            (LessonSubject::Piece(..), Some((piece, plan))) => {
                LooseCloth::of_piece(piece, plan)?
            }
            (LessonSubject::Piece(..), None) => {
                return Err(Error::new(
                    say!("lesson-place"),
                    say!("lesson-piece-not-planned"),
                    say!("lesson-mend-the-piece"),
                ));
            }
        };
        let net = cloth.relaxation.net();
        let mut reach = reach_of(&cloth.relaxation.nodes());
        if net.rings().first().is_some_and(|ring| ring.count == 1) {
            reach = reach.min(reach_of(&net.held_flat()));
        }
        // Cloth that settles may spread a little.
        let reach = 1.04 * reach as f32;
        Ok(Self { subject: wish.subject, cloth, reach })
    }

    /// How its rounds lie.
    pub(super) fn state(&self, held: bool) -> LessonState {
        let LooseCloth { relaxation, progress, .. } = &self.cloth;
        let net = relaxation.net();
        let nodes = if held { net.held_flat() } else { relaxation.nodes() };
        LessonState {
            subject: self.subject,
            rings: net.measured(&nodes),
            progress: *progress,
            rests: relaxation.is_at_rest(),
            held,
        }
    }
}

impl LooseCloth {
    fn new(relaxation: Relaxation, look: impl Fn(u32) -> RoundLook) -> Self {
        let cells = relaxation.net().cells(look);
        Self { relaxation, cells, progress: 0.0 }
    }

    /// The stuffed piece that `plan` plans, every stitch let go.
    pub(in crate::work) fn of_piece(piece: &Piece, plan: &Plan) -> Result<Self> {
        let look = |round: u32| RoundLook {
            kind: piece.kind_of_round(round),
            yarn: piece.yarn_of_round(round),
        };
        Ok(Self::new(Relaxation::of_plan(piece, plan)?, look))
    }

    /// Goes on for a moment, or until it `is_vain` or at rest where only that is wanted;
    /// returns whether it is at rest.
    pub(in crate::work) fn settle(
        &mut self,
        to_the_end: bool,
        is_vain: impl Fn() -> bool,
    ) -> bool {
        let began = Instant::now();
        while !self.relaxation.is_at_rest() {
            self.progress = self.relaxation.step().progress;
            if is_vain() || (!to_the_end && began.elapsed() > BETWEEN) {
                break;
            }
        }
        self.relaxation.is_at_rest()
    }

    /// Where its corners lie: flat, if it is `held`.
    pub(in crate::work) fn places(&self, held: bool) -> Vec<LessonPlace> {
        let net = self.relaxation.net();
        let nodes = if held { net.held_flat() } else { self.relaxation.nodes() };
        net.closed(&nodes)
    }

    /// Mean width of its stitches, mm.
    pub(in crate::work) fn stitch_mm(&self) -> f32 {
        self.relaxation.net().stitch_width_mm() as f32
    }
}

/// How far places lie from the middle of the box around them, at most.
fn reach_of(places: &[LessonPlace]) -> f64 {
    let middle = middle(places);
    let far = |p: &LessonPlace| (0..3).map(|i| (p[i] - middle[i]).powi(2)).sum::<f64>().sqrt();
    places.iter().map(far).fold(1.0, f64::max)
}

/// The middle of the box around places.
pub(super) fn middle(places: &[LessonPlace]) -> LessonPlace {
    let ends = |i: usize| {
        let (low, high) = places
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| (l.min(p[i]), h.max(p[i])));
        if low <= high { 0.5 * (low + high) } else { 0.0 }
    };
    [ends(0), ends(1), ends(2)]
}
