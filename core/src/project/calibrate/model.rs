//! What a sample would measure if the maker's cloth were this or that.

use std::f64::consts::PI;

use super::tape::over_both_ends_mm;
use super::{MakersCloth, Measure, Measured};
use crate::error::{Error, Result};
use crate::extent::{Extent, StitchSize};
use crate::piece::Piece;
use crate::piece::Yarn;
use crate::piece::outline::Rz;
use crate::plan::counts::{Holds, skin_of};
use crate::plan::forecast::settle::{Settled, settle, settled_gradient};
use crate::plan::forecast::{Energy, pressure_for_skin, size_mm};
use crate::plan::{Plan, needs, skin};

/// Steps in which a piece is filled that would not settle at once.
const FILLINGS: u32 = 8;

/// A piece worked as planned, to be measured.
pub struct Sample<'a> {
    piece: &'a Piece,
    plan: Plan,
    yarns: &'a [Yarn],
    holds: Holds,
}

/// The forecast of the rounds of `piece`, planned as `plan`, when someone works them whose
/// cloth is `cloth`: the plan's own forecast where it is the cloth that was planned for.
pub fn worked_by(piece: &Piece, plan: &Plan, cloth: &MakersCloth) -> Vec<Rz> {
    Sample::new(piece, plan.clone(), &[]).stuffed(cloth)
}

impl<'a> Sample<'a> {
    /// A sample of `piece`, planned as `plan`, in these yarns.
    pub fn new(piece: &'a Piece, plan: Plan, yarns: &'a [Yarn]) -> Self {
        let (profile, rest) = skin(piece);
        let holds = Holds::new(piece, &profile, &rest, plan.rounds.len());
        Self { piece, plan, yarns, holds }
    }

    /// The piece.
    pub(super) fn piece(&self) -> &'a Piece {
        self.piece
    }

    /// Refuses a measure of what the sample has not.
    pub(super) fn has(&self, measure: &Measure) -> Result<()> {
        let rounds = self.plan.rounds.len() as u32;
        match *measure {
            Measure::Unravelled { round, .. } if !(1..=rounds).contains(&round) => {
                let what = format!("there is no Rnd {round}");
                Err(Error::new("the unravelled round", what, format!("the last is {rounds}")))
            }
            _ => Ok(()),
        }
    }

    /// The stuffed shape in `cloth`.
    ///
    /// A flat end may stand outwards or be pushed in: each is a minimum. Stuffing leaves the
    /// piece in the lower one, so it is looked for from the slack skin and from the shape that
    /// was forecast for it.
    fn stuffed(&self, cloth: &MakersCloth) -> Vec<Rz> {
        let dressed = cloth.dress(self.piece);
        let skin = skin_of(&dressed, self.plan.start, &self.plan.counts(), &self.holds);
        let pressure = pressure_for_skin(cloth.firmness.0, skin.largest_radius_mm());
        let energy = Energy::new(&skin, pressure);
        let tolerance = settled_gradient(&skin);
        let wider = cloth.stitch_width_mm / self.plan.stitch_mm.width;
        let wider = |n: &Rz| Rz::new(wider * n.r, wider * n.z);
        let forecast: Vec<Rz> =
            self.plan.forecast[..=skin.rounds()].iter().map(wider).collect();
        let lowest = [skin.slack_shape(), forecast]
            .iter()
            .map(|from| settle(&energy, &energy.flatten(from), tolerance))
            .filter(Settled::is_settled)
            .min_by(|a, b| energy.value(&a.x).total_cmp(&energy.value(&b.x)));
        if let Some(settled) = lowest {
            return skin.closed(&settled.nodes);
        }
        // The energy has no lower bound, and from far away a step may lead past its minimum:
        // filled little by little, the piece stays near it.
        let mut nodes = skin.slack_shape();
        for step in 1..=FILLINGS {
            let share = f64::from(step) / f64::from(FILLINGS);
            let energy = Energy::new(&skin, share * pressure);
            nodes = settle(&energy, &energy.flatten(&nodes), tolerance).nodes;
        }
        skin.closed(&nodes)
    }

    /// What `measures` would come to in `cloth`, mm or g.
    pub fn predict(&self, cloth: &MakersCloth, measures: &[Measured]) -> Vec<f64> {
        let shaped = |m: &Measured| {
            matches!(m.measure, Measure::Around(_) | Measure::Height(_) | Measure::OverEnds(_))
        };
        let nodes = match measures.iter().any(shaped) {
            true => self.stuffed(cloth),
            false => Vec::new(),
        };
        measures.iter().map(|m| self.one(cloth, &m.measure, &nodes)).collect()
    }

    /// What one measure would come to; `nodes` are the stuffed shape where it needs one.
    fn one(&self, cloth: &MakersCloth, measure: &Measure, nodes: &[Rz]) -> f64 {
        let Extent { height, width } = size_mm(nodes);
        match *measure {
            Measure::Stitches { stitches, .. } => stitches * cloth.stitch_width_mm,
            Measure::Rounds { rounds, .. } => rounds * cloth.round_height_mm,
            Measure::Around(_) => {
                let straight =
                    if self.plan.depth_mm.is_some() { self.piece.straight_mm } else { 0.0 };
                PI * width + 2.0 * straight
            }
            Measure::Height(_) => height,
            Measure::OverEnds(_) => over_both_ends_mm(nodes),
            Measure::Yarn { .. } => {
                let dressed = cloth.dress(self.piece);
                let used = needs(&dressed, &self.plan.rounds, 0.0).yarn;
                let grams = |y: &crate::plan::estimate::YarnUse| {
                    self.yarns.get(y.yarn).map_or(0.0, |yarn| yarn.grams(y.metres))
                };
                used.iter().map(grams).sum()
            }
            Measure::Unravelled { round, .. } => {
                let dressed = cloth.dress(self.piece);
                let index = round as usize - 1;
                let Some(count) = self.plan.rounds.get(index).map(|r| r.count) else {
                    return 0.0;
                };
                let StitchSize { width: w, height: h } = dressed.cloth_of_round(round);
                let area = w * h / (cloth.stitch_width_mm * cloth.round_height_mm);
                f64::from(count) * area * cloth.yarn_per_stitch * cloth.stitch_width_mm
            }
        }
    }
}
