//! The polish: stitches moved towards the outline by what the forecast says each one does.
//!
//! Near a settled shape the distance of every node to the outline is linear in the counts,
//! with slopes ∂x/∂N = −H⁻¹ ∂g/∂N from the Hessian's factor that Newton's method leaves
//! behind. Squared and summed that gives a quadratic form in whole stitches, whose least
//! value under the rules and prices a [`beam`] search finds. Then the shape is settled anew,
//! and the step is kept only if the forecast really came closer; if not, the next step is
//! damped, since the form is only good near where it was made: cloth that goes slack answers
//! a stitch far less than cloth in tension.

use super::beam;
use super::misfit::Misfit;
use super::model::Model;
use super::rounds::Rounds;
use super::rules::{GaveWay, Targets};
use super::{Chosen, Holds, pressure_of, skin_of};
use crate::piece::Piece;
use crate::piece::outline::Profile;
use crate::plan::forecast::Energy;
use crate::plan::forecast::fit::{self, Fit, Trail};
use crate::plan::forecast::settle::{Settled, settle, settled_gradient};
use crate::plan::skin::RestSkin;

/// What ease charges per round, against the mean square misfit in stitches.
const EASE_SHARE: f64 = 0.02;

/// What straying from the ideal count costs, a squared stitch in a round of
/// [`STRAY_STITCHES`]: enough to keep neighbours from trading stitches for nothing, too
/// little to show in the fit. In small rounds a stitch puckers more, so it costs more.
const STRAY_SHARE: f64 = 2e-5;

/// The round straying is priced for.
const STRAY_STITCHES: f64 = 30.0;

/// How many times dearer straying is at full ease, where prices would pull counts further.
const EASY_STRAY: f64 = 10.0;

/// Most rounds searched at once.
const WINDOW: usize = 80;

/// Most stitches one step may move a round.
const REACH: u32 = 3;

/// From so many rounds on the nodes tell nearly as much as the curve between them.
const MANY_ROUNDS: usize = 12;

/// Below this share of the misfit that a polish of many rounds began with it surely came
/// closer.
const CLEARLY: f64 = 0.25;

/// Share of the cost a step must save for another to be worth its forecast.
const LEAST_GAIN: f64 = 0.05;

/// Damping of the step after one that failed, growing tenfold each time, and where it ends.
const DAMPING: std::ops::Range<f64> = 1e-3..0.2;

/// What a step came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// The forecast came closer.
    Better,
    /// It did not; a shorter step may.
    Worse,
    /// There is nothing left to try.
    Done,
}

/// One number of rounds being tried: its counts, their forecast and their cost.
pub(super) struct Candidate<'a> {
    piece: &'a Piece,
    trail: &'a Trail,
    rounds: Rounds,
    widths: Vec<f64>,
    pressure: f64,
    holds: Holds,
    counts: Vec<u32>,
    settled: Settled,
    misfit: Misfit,
    /// Prices, pins and strays, in the misfit's unit.
    charge: f64,
    damping: f64,
    /// Ease of the prices it is charged by.
    ease: f64,
    /// Length over which a stitch is felt, mm.
    felt_mm: f64,
    gave_way: Vec<GaveWay>,
    /// The programme's own counts, once a step has led away from them.
    first: Option<(Vec<u32>, Settled, Misfit)>,
    /// Forecasts solved so far.
    pub(super) forecasts: usize,
}

impl<'a> Candidate<'a> {
    pub(super) fn new(
        piece: &'a Piece,
        profile: &'a Profile,
        rest: &RestSkin,
        trail: &'a Trail,
        rounds: usize,
    ) -> Self {
        let targets = Targets::new(piece, profile, rest, rounds);
        let mut rounds = Rounds::new(piece, targets);
        rounds.set_ease(piece, 0.0);
        let (counts, gave_way) = rounds.solve();
        let holds = Holds::new(piece, profile, rest, counts.len());
        let skin = skin_of(piece, rounds.targets.start, &counts, &holds);
        let pressure = pressure_of(&skin, rest.pressure, piece.firmness);
        let energy = Energy::new(&skin, pressure);
        let start = energy.flatten(&skin.slack_shape());
        let settled = settle(&energy, &start, settled_gradient(&skin));
        let width = piece.gauge.stitch_width_mm();
        let misfit = Misfit::of(&settled.nodes, trail, width);
        let mut candidate = Self {
            piece,
            trail,
            widths: (1..=counts.len() as u32).map(|k| piece.cloth_of_round(k).0).collect(),
            holds,
            rounds,
            pressure,
            counts,
            settled,
            misfit,
            charge: 0.0,
            damping: 0.0,
            ease: 0.0,
            felt_mm: profile.widest_mm() * piece.firmness.0.sqrt(),
            gave_way,
            first: None,
            forecasts: 1,
        };
        candidate.charge = candidate.charge_of(&candidate.counts);
        candidate
    }

    /// What the polish lowers: mean square misfit in stitches, and what the counts are
    /// charged for.
    pub(super) fn cost(&self) -> f64 {
        self.misfit.mean_square + self.charge
    }

    fn charge_of(&self, counts: &[u32]) -> f64 {
        let rounds = &self.rounds;
        let movable = counts.len() - 1;
        let mut all = 0.0;
        let mut below = rounds.targets.start.joined();
        let mut was_plain = None;
        for (i, &count) in counts.iter().enumerate() {
            let plain = below == Some(count);
            let switch = was_plain.map_or(0.0, |was| rounds.switch(i, was, plain));
            all += EASE_SHARE * (rounds.price(i + 1, below, count) + switch);
            if i < movable {
                all += self.pull(i + 1).at(count);
            }
            (below, was_plain) = (Some(count), Some(plain));
        }
        all / counts.len() as f64
    }

    /// What draws round `k` towards its ideal, its pin or the usual ring, whatever the misfit.
    fn pull(&self, k: usize) -> Pull {
        let mut pull = Pull::default();
        let ideal = self.rounds.targets.ideal[k - 1];
        let ease = 1.0 + EASY_STRAY * self.ease;
        pull.add(STRAY_SHARE * ease * (STRAY_STITCHES / ideal.max(1.0)).powi(2), ideal);
        self.rounds.anchors(k).for_each(|(weight, count)| pull.add(weight, count));
        pull
    }

    /// One search and one new forecast.
    pub(super) fn improve(&mut self) -> Step {
        let width = self.piece.gauge.stitch_width_mm();
        let skin = skin_of(self.piece, self.rounds.targets.start, &self.counts, &self.holds);
        let energy = Energy::new(&skin, self.pressure);
        let (felt, widths) = (self.felt_mm, &self.widths);
        let mut model =
            Model::new(&energy, &skin, &self.settled, &self.misfit, widths, width, felt);
        let counts = self.search(&mut model);
        if counts == self.counts {
            return Step::Done;
        }
        if self.ease > 0.0
            && !self
                .rounds
                .shaping(&counts)
                .is_no_harder_than(self.rounds.shaping(&self.counts))
        {
            return self.damp();
        }
        let added = counts.iter().zip(&self.counts).map(|(&n, &o)| f64::from(n) - f64::from(o));
        let start = model.moved(added);
        let skin = skin_of(self.piece, self.rounds.targets.start, &counts, &self.holds);
        let energy = Energy::new(&skin, self.pressure);
        let settled = settle(&energy, &start, settled_gradient(&skin));
        self.forecasts += 1;
        let misfit = Misfit::of(&settled.nodes, self.trail, width);
        let charge = self.charge_of(&counts);
        // A faithful piece is never made less faithful for the sake of its ideal counts.
        let closer = !self.rounds.is_free() || misfit.mean_square < self.misfit.mean_square;
        if !closer || misfit.mean_square + charge >= self.cost() {
            return self.damp();
        }
        self.damping *= 0.3;
        let gain = 1.0 - (misfit.mean_square + charge) / self.cost();
        let counts = std::mem::replace(&mut self.counts, counts);
        let settled = std::mem::replace(&mut self.settled, settled);
        let misfit = std::mem::replace(&mut self.misfit, misfit);
        self.first.get_or_insert((counts, settled, misfit));
        self.charge = charge;
        if gain < LEAST_GAIN { Step::Done } else { Step::Better }
    }

    /// Makes the next step shorter, if it may be.
    fn damp(&mut self) -> Step {
        self.damping = (10.0 * self.damping).max(DAMPING.start);
        if self.damping < DAMPING.end { Step::Worse } else { Step::Done }
    }

    /// Goes on to the prices of `ease`. Rounds only become easier to work from here: see
    /// [`super::choose`].
    pub(super) fn set_ease(&mut self, ease: f64) {
        self.ease = ease;
        self.rounds.set_ease(self.piece, ease);
        self.charge = self.charge_of(&self.counts);
        self.damping = 0.0;
    }

    /// The cheapest counts by the model, found window by window in a long piece: a stitch
    /// is felt nearby only, and the work of a window grows with its square.
    fn search(&self, model: &mut Model<'_>) -> Vec<u32> {
        let rounds = &self.rounds;
        let free = rounds.free_rounds();
        if free < self.counts.len() - 1 {
            // The steps are predicted from all rounds, searched over the free half.
            model.fold(free, |k| rounds.mirror(k));
        }
        let share = 1.0 / self.counts.len() as f64;
        let mut counts = self.counts.clone();
        let windows = free.div_ceil(WINDOW).max(1);
        let mut from = 0;
        for w in 1..=windows {
            let window = from..free * w / windows;
            from = window.end;
            let mut form = model.form(window.clone());
            for (i, index) in window.clone().enumerate() {
                for k in std::iter::once(index + 1).chain(rounds.mirror(index + 1)) {
                    let pull = self.pull(k);
                    let slope = pull.weight * f64::from(counts[index]) - pull.weighted;
                    let weight = share * (pull.weight + self.damping);
                    form.add_own(i, weight, share * slope);
                }
            }
            let price = EASE_SHARE * share;
            let found = beam::search(form, rounds, &counts, window.clone(), price, REACH);
            let Some(found) = found else { continue };
            let added: Vec<f64> = window
                .clone()
                .map(|index| f64::from(found[index]) - f64::from(counts[index]))
                .collect();
            model.add(window, &added);
            counts = found;
        }
        if free < counts.len() - 1 {
            return rounds.unfold(&counts[..free]).unwrap_or_else(|| self.counts.clone());
        }
        counts
    }

    /// Goes back to the programme's own counts if they fit better after all: the steps go by
    /// the nodes and weigh what is out of reach less, the fit is measured all along.
    pub(super) fn keep_closest(&mut self) {
        let Some((counts, settled, misfit)) = self.first.take() else { return };
        let surely = self.counts.len() >= MANY_ROUNDS
            && self.misfit.mean_square < CLEARLY * misfit.mean_square;
        if surely {
            return;
        }
        if self.fit_of(&settled, &misfit).rms_stitches < self.fit().rms_stitches {
            (self.counts, self.settled, self.misfit) = (counts, settled, misfit);
            self.charge = self.charge_of(&self.counts);
        }
    }

    fn fit(&self) -> Fit {
        self.fit_of(&self.settled, &self.misfit)
    }

    fn fit_of(&self, settled: &Settled, misfit: &Misfit) -> Fit {
        let width = self.piece.gauge.stitch_width_mm();
        fit::measure_near(&settled.nodes, self.trail, width, misfit.shift)
    }

    /// The choice; `others` are forecasts spent on other numbers of rounds.
    pub(super) fn finish(self, others: usize) -> Chosen {
        let fit = self.fit();
        Chosen {
            start: self.rounds.targets.start,
            counts: self.counts,
            ideal: self.rounds.targets.ideal,
            settled: self.settled,
            fit,
            forecasts: others + self.forecasts,
            gave_way: self.gave_way,
        }
    }
}

/// Σ weight·(N − target)², kept as its weight and its weighted target.
#[derive(Debug, Clone, Copy, Default)]
struct Pull {
    weight: f64,
    weighted: f64,
    square: f64,
}

impl Pull {
    fn add(&mut self, weight: f64, target: f64) {
        self.weight += weight;
        self.weighted += weight * target;
        self.square += weight * target * target;
    }

    fn at(&self, count: u32) -> f64 {
        let n = f64::from(count);
        n * n * self.weight - 2.0 * n * self.weighted + self.square
    }
}
