//! One number of rounds being tried: counts, their forecast, and the search for better ones.
//!
//! Near a settled shape the distance of every node to the outline is linear in the counts,
//! with slopes ∂x/∂N = −H⁻¹ ∂g/∂N from the Hessian's factor that Newton's method leaves
//! behind. Squared and summed that gives a quadratic form in whole stitches, whose least
//! value under rules and prices a [`beam`](super::beam) search finds.

use super::beam::BeamTask;
use super::form::{Factored, Quadratic};
use super::holds::{Holds, skin_of};
use super::misfit::NodeMisfit;
use super::model::Model;
use super::repeats::Prices;
use super::rounds::AllowedRounds;
use super::rules::{GaveWay, STRAY, Start, Targets};
use super::shape::SettledShape;
use super::slack::Slack;
use super::steps::Steps;
use crate::piece::Piece;
use crate::piece::outline::Profile;
use crate::plan::forecast::fit::{self, Fit, Trail};
use crate::plan::forecast::settle::{Settled, settle, settled_gradient, stuffed};
use crate::plan::forecast::{Energy, pressure_for_skin};
use crate::plan::skin::RestSkin;

/// What straying from the ideal count costs, a squared stitch in a round of
/// [`STRAY_STITCHES`]: enough to keep neighbours from trading stitches for nothing, too
/// little to show in the fit. In small rounds a stitch puckers more, so it costs more.
const STRAY_SHARE: f64 = 2e-5;

/// The round straying is priced for.
const STRAY_STITCHES: f64 = 30.0;

/// What neighbouring rounds cost whose stitches differ from the ideal by unlike shares, squared
/// stitches a squared share: a ring is kept filled by its neighbours, so one that juts out of
/// them stands slack, which the form does not know.
const JAGGED: f64 = 1.0;

/// Steps from the closed form towards the best counts that need not be whole.
pub(super) const IDEAL_STEPS: usize = 1;

/// Stitches either side of the cheapest count that are tried where counts are free.
const NEAR: f64 = 1.5;

/// What a piece is asked for, whatever its number of rounds.
pub(super) struct Wish<'a> {
    pub(super) piece: &'a Piece,
    pub(super) profile: &'a Profile,
    pub(super) rest: &'a RestSkin,
    pub(super) trail: &'a Trail,
}

/// Whole counts and the shape they stuff into.
#[derive(Debug, Clone)]
pub(super) struct Stuffed {
    pub(super) counts: Vec<u32>,
    pub(super) shape: SettledShape,
    /// What its slack rings cost, squared stitches.
    pub(super) slack: f64,
}

impl Stuffed {
    /// Its counts as real numbers.
    pub(super) fn counts_as_real(&self) -> Vec<f64> {
        self.counts.iter().map(|&n| f64::from(n)).collect()
    }

    /// Mean square misfit and what slack costs, squared stitches.
    pub(super) fn cost(&self) -> f64 {
        self.shape.misfit.mean_square + self.slack
    }

    /// The fit as people read it, its closing disc included.
    pub(super) fn fit(&self, wish: &Wish<'_>) -> Fit {
        let width = wish.piece.gauge.stitch_width_mm();
        let profile = self.shape.skin.closed(&self.shape.settled.nodes);
        fit::measure_near(&profile, wish.trail, width, self.shape.misfit.shift)
    }
}

/// One number of rounds being tried.
pub(super) struct Candidate<'a> {
    pub(super) wish: &'a Wish<'a>,
    pub(super) rounds: AllowedRounds,
    pub(super) widths: Vec<f64>,
    holds: Holds,
    pub(super) gave_way: Vec<GaveWay>,
    /// Length over which a stitch is felt, mm.
    felt_mm: f64,
    /// The steps of free counts.
    pub(super) steps: Steps,
}

impl<'a> Candidate<'a> {
    /// A piece of `rounds` rounds. Rules that cannot be kept have given way.
    pub(super) fn new(wish: &'a Wish<'a>, rounds: usize) -> Self {
        let piece = wish.piece;
        let targets = Targets::new(piece, wish.profile, wish.rest, rounds);
        let mut rules = AllowedRounds::new(piece, targets);
        let mut gave_way = Vec::new();
        let steps = loop {
            match Steps::new(&rules, true) {
                Some(steps) => break steps,
                None => gave_way.extend(rules.give_way()),
            }
        };
        Self {
            wish,
            widths: (1..=rounds as u32).map(|k| piece.cloth_of_round(k).width).collect(),
            holds: Holds::new(piece, wish.profile, wish.rest, rounds),
            rounds: rules,
            gave_way,
            felt_mm: wish.profile.widest_mm() * piece.firmness.0.sqrt(),
            steps,
        }
    }

    /// The shape of the best counts that need not be whole, and those counts: from what can be
    /// reached by the closed form, a step by what the forecast says each stitch does.
    pub(super) fn ideal(&self) -> (Vec<f64>, SettledShape) {
        let targets = &self.rounds.targets;
        let mut counts = targets.reachable.clone();
        let mut shape = self.shape(&counts, None);
        for _ in 0..IDEAL_STEPS {
            let near = self.near(&counts, &shape, &self.rounds);
            let Some(better) = near.unrounded() else { break };
            // A straight line through what one stitch does leads far astray where cloth folds.
            let near = self.rounds.unfold(&better).into_iter().zip(&targets.reachable);
            let near = near.map(|(n, &ideal)| n.clamp((ideal - STRAY).max(1.0), ideal + STRAY));
            counts = targets.followed(&near.collect::<Vec<f64>>());
            shape = self.shape(&counts, Some(&shape));
        }
        (counts, shape)
    }

    /// The forecast of `counts`, whole or not; `near` is a shape of as many rounds to set out
    /// from.
    fn shape(&self, counts: &[f64], near: Option<&SettledShape>) -> SettledShape {
        let piece = self.wish.piece;
        let skin = skin_of(piece, self.start(), counts, &self.holds);
        let pressure = pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
        let settled = match near {
            Some(near) => {
                let energy = Energy::new(&skin, pressure);
                let mut start = near.settled.x.clone();
                energy.hold(&mut start);
                settle(&energy, &start, settled_gradient(&skin))
            }
            None => stuffed(&skin, pressure),
        };
        let width = piece.gauge.stitch_width_mm();
        let trail = self.wish.trail;
        let mut misfit = NodeMisfit::of(&settled.nodes, trail, width);
        misfit.cover(&skin.closed(&settled.nodes), trail, width);
        SettledShape { skin, pressure, settled, misfit }
    }

    /// The forecast of whole `counts` as anyone would find it who knows nothing but them.
    pub(super) fn stuff_afresh(&self, counts: Vec<u32>) -> Stuffed {
        let unrounded: Vec<f64> = counts.iter().map(|&n| f64::from(n)).collect();
        let shape = self.shape(&unrounded, None);
        let slack = self.slack(&shape.settled).cost_of(&counts);
        Stuffed { counts, shape, slack }
    }

    /// The forecast of whole `counts`, set out from the shape `near`.
    pub(super) fn stuff(&self, counts: Vec<u32>, near: &SettledShape) -> Stuffed {
        let unrounded: Vec<f64> = counts.iter().map(|&n| f64::from(n)).collect();
        let shape = self.shape(&unrounded, Some(near));
        let slack = self.slack(&shape.settled).cost_of(&counts);
        Stuffed { counts, shape, slack }
    }

    fn start(&self) -> Start {
        self.rounds.targets.start
    }

    fn slack(&self, settled: &Settled) -> Slack {
        let piece = self.wish.piece;
        let straight = if self.start().side().is_some() { piece.straight_mm } else { 0.0 };
        let frills = piece.rules.frills;
        Slack::at(&settled.nodes, &self.widths, straight, &self.rounds.targets, frills)
    }

    /// The misfit near the `shape` of `counts`, ready for searches of `rounds`.
    pub(super) fn near(
        &self,
        counts: &[f64],
        shape: &SettledShape,
        rounds: &AllowedRounds,
    ) -> Near {
        let width = self.wish.piece.gauge.stitch_width_mm();
        let mut model = Model::new(shape, &self.widths, width, self.felt_mm);
        if rounds.is_mirrored() {
            model.fold(rounds.searched(), |k| rounds.mirror(k));
        }
        let slack = self.slack(&shape.settled);
        let mut form = form(&model, rounds, counts);
        form.add_constant(shape.misfit.uncovered);
        let from = counts[..rounds.searched()].to_vec();
        Near { from, slack, model, form, factored: None }
    }

    /// The misfit near whole counts.
    pub(super) fn near_stuffed(&self, at: &Stuffed, rounds: &AllowedRounds) -> Near {
        self.near(&at.counts_as_real(), &at.shape, rounds)
    }
}

/// The misfit near a stuffed shape, as a quadratic form in stitches.
pub(super) struct Near {
    from: Vec<f64>,
    slack: Slack,
    pub(super) model: Model,
    form: Quadratic,
    factored: Option<Factored>,
}

impl Near {
    /// Counts that need not be whole where the misfit and what slack costs are least, of the
    /// rounds that are searched.
    fn unrounded(&self) -> Option<Vec<f64>> {
        let mut counts = self.from.clone();
        // Which rings are slack follows from the counts, and the counts from those.
        for _ in 0..2 {
            let mut form = self.form.clone();
            for (i, (from, count)) in self.from.iter().zip(&counts).enumerate() {
                if let Some((weight, most)) = self.slack.pull(i + 1, *count) {
                    form.add_own(i, weight, from - most);
                }
            }
            let step = form.factor()?.least();
            counts = self.from.iter().zip(&step).map(|(n, s)| n + s).collect();
        }
        Some(counts)
    }

    /// What slack costs where the rounds have `counts`.
    pub(super) fn slack_of(&self, counts: &[u32]) -> f64 {
        self.slack.cost_of(counts)
    }

    /// The cheapest counts at `prices` by `steps` of `rounds`, and their predicted cost.
    pub(super) fn best(
        &mut self,
        rounds: &AllowedRounds,
        steps: &Steps,
        prices: Prices,
    ) -> Option<(Vec<u32>, f64)> {
        if self.factored.is_none() {
            self.factored = self.form.clone().factor();
        }
        let (slack, from) = (&self.slack, &self.from[..]);
        let reach = if prices.is_free() { NEAR } else { f64::INFINITY };
        BeamTask { rounds, steps, prices, slack, from, reach }.best(self.factored.as_ref()?)
    }
}

/// The misfit by stitches added to `from`, and what straying costs.
fn form(model: &Model, rounds: &AllowedRounds, from: &[f64]) -> Quadratic {
    let targets = &rounds.targets;
    let all = rounds.rounds();
    let share = 1.0 / all as f64;
    let mut form = model.form();
    for (i, &count) in from[..rounds.searched()].iter().enumerate() {
        let ideal = targets.reachable[i];
        let weight = if i + 1 == all && !targets.drawn {
            // An open edge is as wide as its stitches, whatever the cloth below does.
            share / (std::f64::consts::TAU * std::f64::consts::TAU)
        } else {
            share * STRAY_SHARE * (STRAY_STITCHES / ideal.max(1.0)).powi(2)
        };
        form.add_own(i, weight, count - ideal);
        if i + 1 < rounds.searched().min(all - 1) {
            let (here, above) = (1.0 / ideal.max(1.0), 1.0 / targets.reachable[i + 1].max(1.0));
            let root = (share * JAGGED).sqrt();
            form.add_square(i, &[root * here, -root * above], 0.0);
        }
    }
    form
}
