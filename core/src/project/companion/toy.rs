//! A toy at hand, matched from one measure of it.

use std::f64::consts::PI;

use crate::error::{Error, Result, within};
use crate::extent::Extent;
use crate::piece::PieceId;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::sizes::{ASKED_MM, Resized, Size, SizeBy, sized, tolerance_mm};
use crate::sentence::{NoteValue, Sentence};

/// Turns in which a factor is corrected for a measure that no [`SizeBy`] names.
const TURNS: usize = 5;

/// Narrower than this there is nothing to put a tape round, mm: the gathered end of a piece.
const NARROWEST_MM: f64 = 1.0;

/// A measure that a ruler or a tape takes of a stuffed thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToyMeasure {
    /// Along the axis.
    Height,
    /// Straight across; along the straight sides of an oval.
    Width(Spot),
    /// Once around.
    Around(Spot),
}

/// Where on a stuffed thing its width or girth is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// Where it is widest.
    Widest,
    /// At the top of this round of the piece as designed, counted from 1; of the piece at
    /// another size, at the same share of the working.
    Round(u32),
}

/// A piece made as large as a toy at hand.
#[derive(Debug, Clone)]
pub struct Matched {
    /// What the toy measures, in the measure of the piece as designed: 1.18 of it.
    pub scale: f64,
    /// What makes the piece that size.
    pub by: SizeBy,
    /// The piece as designed.
    pub now: Plan,
    /// The piece at that size.
    pub made: Resized,
    /// What was measured.
    pub measure: ToyMeasure,
    /// The measure of the piece as designed, by forecast, mm.
    pub now_mm: f64,
    /// That of the toy, mm.
    pub toy_mm: f64,
    /// That of the piece at that size, by forecast, mm.
    pub made_mm: f64,
}

impl ToyMeasure {
    /// What a piece planned as `plan` measures there, mm.
    ///
    /// # Errors
    /// For a round the plan has not, and one that is gathered shut.
    pub fn of(self, plan: &Plan) -> Result<f64> {
        let rounds = plan.rounds.len() as u32;
        if let Some(round) = self.round() {
            if !(1..=rounds).contains(&round) {
                let what = format!("there is no Rnd {round}");
                return Err(Error::new("the measure", what, format!("the last is {rounds}")));
            }
            // Past the last round only the loops of a gathered one have a node.
            let gathered = round == rounds && plan.forecast.len() > rounds as usize + 1;
            if gathered || 2.0 * radius(plan, round, rounds) < NARROWEST_MM {
                let what = format!("Rnd {round} is gathered shut");
                return Err(Error::new("the measure", what, "measure at a wider round"));
            }
        }
        Ok(self.at_share(plan, rounds))
    }

    /// `high`, `wide`, `wide at Rnd 12`, `around`.
    pub fn words(self) -> String {
        let at = self.round().map_or(String::new(), |round| format!(" at Rnd {round}"));
        match self {
            Self::Height => "high".into(),
            Self::Width(_) => format!("wide{at}"),
            Self::Around(_) => format!("around{at}"),
        }
    }

    /// `93 mm wide at Rnd 12`.
    fn measured(self, mm: NoteValue) -> Sentence {
        let mm = ("mm", mm);
        match (self, self.round()) {
            (Self::Height, _) => Sentence::note("so_high", [mm]),
            (Self::Width(_), None) => Sentence::note("so_wide", [mm]),
            (Self::Around(_), None) => Sentence::note("so_far_around", [mm]),
            (Self::Width(_), Some(k)) => {
                Sentence::note("so_wide_at", [mm, ("round", k.into())])
            }
            (Self::Around(_), Some(k)) => {
                Sentence::note("so_far_around_at", [mm, ("round", k.into())])
            }
        }
    }

    fn round(self) -> Option<u32> {
        match self {
            Self::Width(Spot::Round(round)) | Self::Around(Spot::Round(round)) => Some(round),
            _ => None,
        }
    }

    /// The measure of `plan`, a size of a piece of `base_rounds` rounds, mm.
    fn at_share(self, plan: &Plan, base_rounds: u32) -> f64 {
        let Extent { height, width: wide } = plan.size_mm;
        let straight = plan.depth_mm.map_or(0.0, |depth| wide - depth);
        let across = match self.round() {
            Some(round) => 2.0 * radius(plan, round, base_rounds),
            None => wide - straight,
        };
        match self {
            Self::Height => height,
            Self::Width(_) => across + straight,
            Self::Around(_) => PI * across + 2.0 * straight,
        }
    }
}

/// The radius of `plan` at the share of its working at which round `round` of `base_rounds`
/// ends, mm; between two rounds it is in proportion.
fn radius(plan: &Plan, round: u32, base_rounds: u32) -> f64 {
    let last = plan.rounds.len();
    let at = f64::from(round) / f64::from(base_rounds) * last as f64;
    let below = (at.floor() as usize).min(last);
    let (a, b) = (plan.forecast[below].r, plan.forecast[(below + 1).min(last)].r);
    a + (at - below as f64) * (b - a)
}

impl Matched {
    /// How much larger than the toy the piece comes out there, mm; below nought it is smaller.
    pub fn off_mm(&self) -> f64 {
        self.made_mm - self.toy_mm
    }

    /// Whether it comes to the toy's measure, as near as [`tolerance_mm`] asks of every size.
    pub fn is_met(&self) -> bool {
        self.off_mm().abs() <= tolerance_mm(self.toy_mm, &self.made.piece.gauge)
    }

    /// How near it comes, in a sentence.
    pub fn sentence(&self) -> Sentence {
        let length = |mm: f64| NoteValue::from(Sentence::default().mm(mm));
        let comes = self.measure.measured(length(self.made_mm)).into();
        let off = self.off_mm();
        let key = match (off.abs() < 0.5, self.is_met(), off > 0.0) {
            (true, ..) => return Sentence::note("match_as_toy", [("comes", comes)]),
            (_, true, true) => "match_more",
            (_, true, false) => "match_less",
            (_, false, true) => "match_more_no_nearer",
            (_, false, false) => "match_less_no_nearer",
        };
        Sentence::note(key, [("comes", comes), ("off", length(off.abs()))])
    }
}

/// What to multiply the outline by so that a piece planned as `plan` measures `toy_mm` where
/// it now measures `measure`: a toy at hand is matched from one measure of it.
///
/// # Errors
/// For a measure that is not above 0 and below 100 m, and as [`ToyMeasure::of`].
pub fn scale_to_match(plan: &Plan, measure: ToyMeasure, toy_mm: f64) -> Result<f64> {
    let toy_mm = within("the measure", toy_mm, ASKED_MM.low, ASKED_MM.high, "mm")?;
    Ok(toy_mm / measure.of(plan)?)
}

/// The piece `id` of `project` at the size at which its forecast measures `toy_mm`, or as near
/// as whole stitches and rounds come.
///
/// # Errors
/// As [`scale_to_match`] and [`sized`].
pub fn match_toy(
    project: &Project,
    id: PieceId,
    measure: ToyMeasure,
    toy_mm: f64,
) -> Result<Matched> {
    let now = plan(project.needed(id)?)?;
    let scale = scale_to_match(&now, measure, toy_mm)?;
    let now_mm = measure.of(&now)?;
    let base_rounds = now.rounds.len() as u32;
    let at = |by: SizeBy| -> Result<Matched> {
        let made = sized(project, id, &Size::new("matched", by))?;
        let made_mm = measure.at_share(&made.plan, base_rounds);
        Ok(Matched { scale, by, now: now.clone(), made, measure, now_mm, toy_mm, made_mm })
    };
    match measure {
        ToyMeasure::Height => return at(SizeBy::Height(toy_mm)),
        ToyMeasure::Width(Spot::Widest) => return at(SizeBy::Width(toy_mm)),
        // A body that is round all the way is as wide as its girth says.
        ToyMeasure::Around(Spot::Widest) if now.depth_mm.is_none() => {
            return at(SizeBy::Width(toy_mm / PI));
        }
        _ => {}
    }
    let mut factor = scale;
    let mut best = at(SizeBy::Factor(factor))?;
    let mut last_mm = best.made_mm;
    for _ in 0..TURNS {
        let next = factor * toy_mm / last_mm.max(NARROWEST_MM);
        // A stitch around is as wide as twice the tolerance: once met, a factor that comes
        // nearer does so by chance.
        if best.is_met() || (next / factor - 1.0).abs() < 1e-4 {
            break;
        }
        factor = next;
        let Ok(tried) = at(SizeBy::Factor(factor)) else { break };
        last_mm = tried.made_mm;
        if tried.off_mm().abs() < best.off_mm().abs() {
            best = tried;
        }
    }
    Ok(best)
}
