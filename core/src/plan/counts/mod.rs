//! Counts: whole stitches for every round.
//!
//! [`Targets`] are the stitches the closed-form skin would have if stitches could be split;
//! `rounds` says what whole stitches may stand in their place. A `candidate` is one number of
//! rounds: the shape of its ideal counts is forecast, and near that forecast a `beam` search
//! finds the best counts at several prices of [`repeats`]: free ones, and a `family` of patterns
//! from many numbers of repeats to the fewest. The true forecasts of all of these make the `answers`, from faithful to simple,
//! judged by their [`likely`] fit; of them one is taken.

mod answers;
mod beam;
mod candidate;
mod descent;
mod family;
mod form;
pub mod likely;
mod misfit;
mod model;
pub mod repeats;
mod rounds;
pub mod rules;
pub mod slack;
mod steps;

use crate::piece::outline::{POLE_MM, Profile};
use crate::piece::{MOST_ROUNDS, Piece};
use crate::plan::forecast::fit::{self, Fit, Trail};
use crate::plan::forecast::settle::{Settled, settle, settled_gradient};
use crate::plan::forecast::{Cloth, Energy, Finish, Skin, pressure_for_skin};
use crate::plan::skin::RestSkin;

pub use answers::INDIFFERENT_STITCHES;
use answers::{Answer, Front};
use candidate::{Shape, Wish};
use misfit::Misfit;
pub use rounds::Rounds;
pub(crate) use rules::worked_length_mm;
pub use rules::{Start, Targets};

/// The counts chosen for a piece and the forecast they were judged by.
#[derive(Debug, Clone)]
pub struct Chosen {
    /// How the piece begins.
    pub start: Start,
    /// Stitches of each round.
    pub counts: Vec<u32>,
    /// Stitches the closed-form skin would have, per round.
    pub ideal: Vec<f64>,
    /// The settled forecast.
    pub settled: Settled,
    /// Its distance from the outline.
    pub fit: Fit,
    /// Expected RMS distance over hands, stitch widths.
    pub likely_rms_stitches: f64,
    /// What its pattern costs the maker, in new numbers of repeats.
    pub trouble: f64,
    /// Hoop strain of each round's top edge, stuffed against at rest; negative where the cloth
    /// is slack. `None` at a gathered round.
    pub hoop_strains: Vec<Option<f64>>,
    /// Forecasts solved on the way.
    pub forecasts: usize,
    /// Rules that had to give way.
    pub gave_way: Vec<rules::GaveWay>,
}

impl Chosen {
    /// Most stitches that `round` may gain on `below` and lie flat; as many again in a small
    /// round.
    pub fn most_gain(&self, piece: &Piece, round: u32, below: u32) -> u32 {
        if self.start.side().is_some() {
            return u32::MAX;
        }
        rules::most_gain(rules::flat_of_round(piece, round), below, self.counts[0])
    }
}

/// How long a plan may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Effort {
    /// At most [`MOST_FORECASTS`]: what a hand that drags can wait for.
    #[default]
    Draft,
    /// The faithful end is gone down to the last stitch on the true forecast.
    Full,
}

/// Forecasts a plan may solve, the descent to the faithful end apart.
pub const MOST_FORECASTS: usize = 12;

/// Whole stitches for `piece`, whose outline is `profile` and whose closed-form skin is
/// `rest`: the answer that its simplicity asks for.
pub fn choose(piece: &Piece, profile: &Profile, rest: &RestSkin, effort: Effort) -> Chosen {
    let trail = Trail::new(profile.places());
    let wish = Wish { piece, profile, rest, trail: &trail };
    let (front, answer) = Front::of(&wish, effort).take();
    front.chosen(answer)
}

/// The rounds of `counts`, begun as `start`, in `piece`'s cloth: their skin and what a choice
/// of them would be, were their forecast the outline.
pub(super) fn worked(piece: &Piece, start: Start, counts: &[u32]) -> (Skin, Chosen) {
    let skin = skin_of(piece, start, counts, &Holds::default());
    let pressure = pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
    let settled = {
        let energy = Energy::new(&skin, pressure);
        settle(&energy, &energy.flatten(&skin.slack_shape()), settled_gradient(&skin))
    };
    let width = piece.gauge.stitch_width_mm();
    let trail = Trail::new(skin.closed(&settled.nodes));
    let misfit = Misfit::of(&settled.nodes, &trail, width);
    let shape = Shape { skin, pressure, settled, misfit };
    let likely_rms_stitches = likely::likely_rms(&shape, &piece.variation, 0.0, 0.0, width);
    let chosen = Chosen {
        start,
        counts: counts.to_vec(),
        ideal: counts.iter().map(|&n| f64::from(n)).collect(),
        fit: Fit { rms_stitches: 0.0, max_stitches: 0.0, shift_mm: 0.0 },
        likely_rms_stitches,
        trouble: family::trouble_of(start, counts),
        hoop_strains: shape.hoop_strains(),
        settled: shape.settled,
        forecasts: 1,
        gave_way: Vec::new(),
    };
    (shape.skin, chosen)
}

/// Every answer to `piece` worth choosing, from the most faithful to the simplest, each with
/// the simplicity that takes it: none is beaten by another in both likely fit and trouble.
pub fn answers(piece: &Piece, profile: &Profile, rest: &RestSkin) -> Vec<(f64, Chosen)> {
    let trail = Trail::new(profile.places());
    let piece = &Piece { simplicity: Some(0.0), accepted: None, ..piece.clone() };
    let wish = Wish { piece, profile, rest, trail: &trail };
    let mut front = Front::of(&wish, Effort::Full);
    let simplicities = front.simplicities();
    let answers = std::mem::take(&mut front.answers);
    simplicities.into_iter().zip(answers).map(|(s, answer)| (s, front.chosen(answer))).collect()
}

impl Front<'_> {
    /// `answer`, measured along the whole curve.
    fn chosen(&self, answer: Answer) -> Chosen {
        let targets = &self.candidate.rounds.targets;
        let (fit, likely_rms_stitches) = answer.measured(self.candidate.wish, self.pulls);
        Chosen {
            start: targets.start,
            hoop_strains: answer.stuffed.shape.hoop_strains(),
            counts: answer.stuffed.counts,
            ideal: targets.ideal.clone(),
            settled: answer.stuffed.shape.settled,
            fit,
            likely_rms_stitches,
            trouble: answer.trouble,
            forecasts: self.forecasts,
            gave_way: self.candidate.gave_way.clone(),
        }
    }
}

/// What holds a piece besides its cloth, by round.
#[derive(Debug, Clone, Default)]
pub struct Holds {
    /// Rounds held at a radius, mm.
    held: Vec<(usize, f64)>,
    /// Rounds kept level by a card insert.
    level: Vec<usize>,
}

impl Holds {
    /// The holds of `piece` worked in `rounds` rounds: each knot's hold at the round edge
    /// nearest it, each card under the rounds that lie on it.
    pub fn new(piece: &Piece, profile: &Profile, rest: &RestSkin, rounds: usize) -> Self {
        let knots = &piece.outline.knots;
        if knots.iter().all(|k| k.hold.is_none() && !k.card) {
            return Self::default();
        }
        let edges = piece.edges_mm(rounds, worked_length_mm(piece, rest));
        let places: Vec<f64> =
            profile.knots_mm.iter().map(|&s| rest.rest_at(profile, s)).collect();
        let nearest = |at: f64| {
            let after = edges.partition_point(|&edge| edge < at);
            let before = after.saturating_sub(1);
            let nearer = edges.get(after).is_some_and(|&e| e - at < at - edges[before]);
            if nearer { after } else { before }
        };
        let mut holds = Self::default();
        for (knot, &at) in knots.iter().zip(&places) {
            if knot.hold.is_some() {
                holds.held.push((nearest(at), knot.radius_mm));
            }
        }
        let spans = knots.iter().zip(places.windows(2));
        for ends in spans.filter(|(knot, _)| knot.card).map(|(_, ends)| ends) {
            holds.level.extend(nearest(ends[0]) + 1..=nearest(ends[1]));
        }
        holds
    }
}

/// The skin of these stitches, whole or not.
pub fn skin_of<N: Copy + Into<f64>>(
    piece: &Piece,
    start: Start,
    counts: &[N],
    holds: &Holds,
) -> Skin {
    let cloth: Vec<(f64, f64)> =
        (1..=counts.len() as u32).map(|k| piece.cloth_of_round(k)).collect();
    let drawn = piece.outline.finishes_closed();
    let width = |k: usize| cloth[k].0;
    let start_mm = match start {
        Start::Ring => 0.0,
        Start::Chain(n) => f64::from(n) * width(0),
        Start::Oval(_) => 2.0 * piece.straight_mm,
    };
    let around = counts.iter().zip(&cloth).map(|(&n, c)| n.into() * c.0).collect();
    let height = cloth.iter().map(|c| c.1).collect();
    let finish = if drawn { Finish::Drawn } else { Finish::Open };
    let stiffness = Cloth { along: piece.stiffness_along, ..Cloth::default() };
    Skin {
        straight_mm: if matches!(start, Start::Oval(_)) { piece.straight_mm } else { 0.0 },
        held: holds.held.clone(),
        level: holds.level.clone(),
        ..Skin::new(start_mm, around, height, finish, stiffness)
    }
}

/// The rule of thumb that plans are compared with: `round(2πr/w)` at equal steps `h` of the
/// outline itself, a ring of six, never more than double nor less than half the round below.
/// Common practice, no source.
pub fn rule_of_thumb(piece: &Piece, profile: &Profile) -> Vec<u32> {
    let (w, h) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
    let rounds = ((profile.length_mm() / h).round() as usize).clamp(2, MOST_ROUNDS);
    let last = profile.stations.len() - 1;
    let mut counts: Vec<u32> = Vec::with_capacity(rounds);
    for k in 1..=rounds {
        let place = (k as f64 * h / profile.length_mm() * last as f64).min(last as f64);
        let (i, u) = ((place as usize).min(last - 1), place.fract());
        let (a, b) = (profile.stations[i].at.r, profile.stations[i + 1].at.r);
        let r = if place >= last as f64 { b } else { a + u * (b - a) };
        let wanted = (std::f64::consts::TAU * r / w).round() as u32;
        counts.push(match counts.last() {
            None if profile.stations[0].at.r <= POLE_MM => 6,
            None => wanted.max(3),
            Some(&below) => wanted.clamp(below.div_ceil(2), 2 * below),
        });
    }
    counts
}

/// The fit of whole counts, by the same forecast from the slack skin and the same measure as
/// a plan's.
pub fn fit_of(piece: &Piece, profile: &Profile, rest: &RestSkin, counts: &[u32]) -> Fit {
    let start = rules::start_of(piece, profile);
    let holds = Holds::new(piece, profile, rest, counts.len());
    let skin = skin_of(piece, start, counts, &holds);
    let energy =
        Energy::new(&skin, pressure_for_skin(piece.firmness.0, skin.largest_radius_mm()));
    let start = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &start, settled_gradient(&skin));
    let trail = Trail::new(profile.places());
    fit::measure(&skin.closed(&settled.nodes), &trail, piece.gauge.stitch_width_mm())
}
