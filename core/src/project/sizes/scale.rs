//! The scale at which the forecast of a piece has a wanted measure.
//!
//! The closed-form skin of a scaled outline is the scaled skin, so the forecast grows almost
//! in step with the scale; whole stitches and whole rounds make it jump. The search therefore
//! keeps whatever came nearest, and brackets the wanted measure between a smaller and a
//! larger trial where stepping in proportion does not settle it.

use crate::error::Result;
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::plan::{Plan, plan, plannable};
use crate::sentence::{NoteValue, Sentence};

use super::carry::carry;
use super::family::Likeness;
use super::features::Kept;
use super::resized::{Dimension, Resized, Wanted};
use crate::piece::size::Size;

/// Trials of a search. Most sizes take one or two.
const MOST_TRIALS: usize = 14;

/// A trial off by this share of the tolerance is good enough.
const NEAR: f64 = 0.25;

/// Scales closer than this differ in no stitch worth trying.
const SAME_SCALE: f64 = 1e-4;

/// Scales tried either side of the best, in rounds, where none meets what was asked.
const SIDE_STEP: f64 = 0.07;
const SIDE_STEPS: u32 = 15;

/// The piece that sizes are made from.
pub(super) struct Base<'a> {
    piece: &'a Piece,
    pub(super) plan: Plan,
    size: &'a Size,
    likeness: Option<Likeness>,
}

/// The nearest trials below and above a wanted measure.
#[derive(Debug, Clone, Copy, Default)]
struct Bracket {
    below: Option<TriedScale>,
    above: Option<TriedScale>,
}

/// A scale and what it measured, mm.
#[derive(Debug, Clone, Copy)]
struct TriedScale {
    scale: f64,
    mm: f64,
}

impl Bracket {
    fn take(&mut self, tried: TriedScale, wanted: f64) {
        if tried.mm < wanted {
            if self.below.is_none_or(|below| tried.scale > below.scale) {
                self.below = Some(tried);
            }
        } else if self.above.is_none_or(|above| tried.scale < above.scale) {
            self.above = Some(tried);
        }
    }
}

/// One scale tried.
struct Trial {
    scale: f64,
    piece: Piece,
    plan: Plan,
    notes: Vec<Sentence>,
}

impl<'a> Base<'a> {
    pub(super) fn new(piece: &'a Piece, plan: Plan, size: &'a Size) -> Self {
        let likeness = size.family.then(|| Likeness::of(&plan));
        Self { piece, plan, size, likeness }
    }

    fn rounds(&self) -> u32 {
        self.plan.rounds.len() as u32
    }

    /// The piece `factor` times as large, height and width together.
    pub(super) fn times(&self, factor: f64) -> Result<Resized> {
        if factor == 1.0 {
            let (piece, plan) = (self.piece.clone(), self.plan.clone());
            return Ok(self.done(Trial { scale: 1.0, piece, plan, notes: Vec::new() }, None));
        }
        let mm = factor * Dimension::Both.of(&self.plan);
        self.to_measure(Dimension::Both, mm, self.piece.gauge)
    }

    /// The piece with its outline times `scale`, whatever it then measures.
    pub(super) fn at(&self, scale: f64) -> Result<Resized> {
        self.trial(scale, self.piece.gauge).map(|trial| self.done(trial, None))
    }

    /// The piece at `gauge` whose forecast measures `mm`.
    pub(super) fn to_measure(
        &self,
        dimension: Dimension,
        mm: f64,
        gauge: Gauge,
    ) -> Result<Resized> {
        self.search(Wanted { dimension, mm }, gauge)
    }

    /// The scale whose forecast comes nearest to `wanted`.
    fn search(&self, wanted: Wanted, gauge: Gauge) -> Result<Resized> {
        let measure = |plan: &Plan| wanted.dimension.of(plan);
        let off = |trial: &Trial| (measure(&trial.plan) - wanted.mm).abs();
        let tolerance = wanted.tolerance_mm(&gauge);
        let asked = wanted.mm / measure(&self.plan);
        let limits = self.limits(gauge, asked)?;
        let mut scale = asked.clamp(limits.0, limits.1);
        let mut best: Option<Trial> = None;
        let mut bracket = Bracket::default();
        for turn in 0..MOST_TRIALS {
            let trial = self.trial(scale, gauge)?;
            let got = measure(&trial.plan);
            let this = off(&trial);
            bracket.take(TriedScale { scale, mm: got }, wanted.mm);
            if best.as_ref().is_none_or(|best| this < off(best)) {
                best = Some(trial);
            }
            if this <= NEAR * tolerance {
                break;
            }
            let next = match (bracket.below, bracket.above) {
                (Some(b), Some(a)) if a.scale - b.scale > SAME_SCALE * a.scale => {
                    let share = (wanted.mm - b.mm) / (a.mm - b.mm).max(1e-9);
                    let share = if turn % 2 == 0 { share.clamp(0.05, 0.95) } else { 0.5 };
                    b.scale + share * (a.scale - b.scale)
                }
                (Some(_), Some(_)) => break,
                _ => (scale * wanted.mm / got.max(1e-3)).clamp(limits.0, limits.1),
            };
            if (next - scale).abs() <= 1e-9 * scale {
                break;
            }
            scale = next;
        }
        let Some(mut best) = best else {
            return self.trial(scale, gauge).map(|t| self.done(t, None));
        };
        // Where the number of rounds changes, sizes jump, and not always at one scale alone.
        if off(&best) > tolerance {
            let step = SIDE_STEP * gauge.round_height_mm() / wanted.mm;
            let middle = best.scale;
            for by in (1..=SIDE_STEPS).flat_map(|i| [f64::from(i), -f64::from(i)]) {
                let beside = (middle * (1.0 + by * step)).clamp(limits.0, limits.1);
                let trial = self.trial(beside, gauge)?;
                if off(&trial) < off(&best) {
                    best = trial;
                }
                if off(&best) <= tolerance {
                    break;
                }
            }
        }
        let mut made = self.done(best, Some(wanted));
        if !made.is_met() {
            let why = self.why_not(&made, wanted, gauge, (limits, asked), bracket);
            made.notes.insert(0, why);
        }
        Ok(made)
    }

    fn done(&self, trial: Trial, wanted: Option<Wanted>) -> Resized {
        let Trial { scale, piece, plan, notes } = trial;
        Resized { piece, plan, scale, base_rounds: self.rounds(), wanted, notes }
    }

    /// The outline and straight sides times `scale` at `gauge`, before anything is carried.
    fn scaled(&self, scale: f64, gauge: Gauge) -> Piece {
        let mut piece = self.piece.clone();
        piece.outline = piece.outline.scaled(scale, scale);
        piece.straight_mm *= scale;
        super::regauge::set_gauge(&mut piece, gauge);
        piece.sizes = crate::piece::size::sizes_at(&self.piece.sizes, scale);
        if let Some(picture) = &mut piece.picture {
            picture.scale(scale);
        }
        piece
    }

    /// The piece at this scale and gauge, planned, with everything carried over.
    fn trial(&self, scale: f64, gauge: Gauge) -> Result<Trial> {
        let scaled = self.scaled(scale, gauge);
        // The same stitches at another gauge are as wide as their stitch.
        let wider = gauge.stitch_width_mm() / self.piece.gauge.stitch_width_mm();
        let mut kept = Kept::new(self.piece, &self.plan, self.size.keep);
        let mut rounds = 0;
        let mut last: Option<Trial> = None;
        for _ in 0..5 {
            let mut piece = scaled.clone();
            let outline = kept.outline(&self.piece.outline, scale, wider);
            // A widened outline may come to cross itself; the plain one then has to do.
            if outline.validate().is_ok() {
                piece.outline = outline;
            }
            if rounds == 0 {
                rounds = crate::plan::rounds_of(&piece).clamp(2, u32::MAX);
            }
            let mut notes = carry(&mut piece, self.rounds(), rounds, scale / wider);
            if let Some(likeness) = &self.likeness {
                likeness.ask(&mut piece, self.rounds(), rounds);
            }
            // Nothing hangs on the number of rounds any more.
            if last.as_ref().is_some_and(|trial| trial.piece == piece) {
                break;
            }
            let plan = plan(&piece)?;
            rounds = plan.rounds.len() as u32;
            kept.raise(&plan, gauge.stitch_width_mm());
            notes.extend(kept.notes(&plan));
            notes.extend(self.likeness.iter().flat_map(|l| l.notes(&piece, &plan)));
            last = Some(Trial { scale, piece, plan, notes });
        }
        match last {
            Some(trial) => Ok(trial),
            None => Ok(Trial { scale, plan: plan(&scaled)?, piece: scaled, notes: Vec::new() }),
        }
    }

    /// The least and greatest scale at which the piece can be planned at `gauge`, about where
    /// it is wanted: within them every scale can be.
    fn limits(&self, gauge: Gauge, asked: f64) -> Result<(f64, f64)> {
        let can = |scale: f64| plannable(&self.scaled(scale, gauge));
        let asked = asked.clamp(1e-4, 1e4);
        let good = if can(asked).is_ok() {
            asked
        } else {
            let tries = (-26..=26).map(|i| 2_f64.powf(f64::from(i) * 0.5));
            let nearest = tries
                .filter(|&s| can(s).is_ok())
                .min_by(|a, b| (a / asked).ln().abs().total_cmp(&(b / asked).ln().abs()));
            match nearest {
                Some(scale) => scale,
                None => return Err(can(1.0).err().unwrap_or_else(|| nowhere(self.piece))),
            }
        };
        // Only the end towards what was asked matters; the other is never come to.
        let edge = |mut good: f64, mut bad: f64| {
            if can(bad).is_ok() {
                return bad;
            }
            for _ in 0..40 {
                let middle = (good * bad).sqrt();
                match can(middle) {
                    Ok(()) => good = middle,
                    Err(_) => bad = middle,
                }
            }
            good
        };
        Ok((edge(good, 0.25 * good.min(asked)), edge(good, 4.0 * good.max(asked))))
    }

    /// One sentence on why the wanted measure is not met.
    fn why_not(
        &self,
        made: &Resized,
        wanted: Wanted,
        gauge: Gauge,
        (limits, asked): ((f64, f64), f64),
        Bracket { below, above }: Bracket,
    ) -> Sentence {
        let mm = |mm: f64| NoteValue::from(Sentence::default().mm(mm));
        let key = match wanted.dimension {
            Dimension::Height => "so_high",
            Dimension::Width => "so_wide",
            Dimension::Both => "so_large",
        };
        let wanted_mm = || Sentence::note(key, [("mm", mm(wanted.mm))]).into();
        let got = || mm(wanted.dimension.of(&made.plan));
        let end = |scale: f64| {
            let piece = self.scaled(scale, gauge);
            match plannable(&piece) {
                // Nothing but lengths goes out of range by scaling.
                Err(e) if e.number().is_some() => Sentence::note("beyond_3_m", []),
                Err(_) if piece.outline.is_crowded() => {
                    Sentence::note("knots_fall_together", [])
                }
                Err(e) => e.what.into(),
                Ok(()) => Sentence::note("kept_leaves_no_room", []),
            }
        };
        if below.is_none() && asked <= limits.0 * 1.5 {
            let why = end(limits.0 * 0.98).into();
            let values = [("wanted", wanted_mm()), ("why", why), ("got", got())];
            return Sentence::note("size_no_smaller", values);
        }
        if above.is_none() && asked >= limits.1 / 1.5 {
            let why = end(limits.1 * 1.02).into();
            let values = [("wanted", wanted_mm()), ("why", why), ("got", got())];
            return Sentence::note("size_no_larger", values);
        }
        match (below, above) {
            (Some(b), Some(a)) => Sentence::note(
                "size_between",
                [
                    ("wanted", wanted_mm()),
                    ("below", mm(b.mm)),
                    ("above", mm(a.mm)),
                    ("got", got()),
                ],
            ),
            _ => Sentence::note("size_in_stitches", [("wanted", wanted_mm()), ("got", got())]),
        }
    }
}

fn nowhere(piece: &Piece) -> crate::Error {
    crate::Error::new(
        format!("piece “{}”", piece.name),
        "at this gauge no size of it can be worked",
        "choose another gauge",
    )
}
