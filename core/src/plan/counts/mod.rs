//! Counts: whole stitches for every round.
//!
//! [`Targets`] are the stitches the closed-form skin would have if stitches could be split;
//! `programme` rounds them by dynamic programming under the [`rules`], as [`Rounds`] states
//! them; `polish` then
//! moves stitches towards the outline, by what the forecast says each stitch does, and from
//! that faithful answer on towards rounds that are easier to work.

mod beam;
mod form;
mod misfit;
mod model;
mod polish;
mod programme;
mod rounds;
pub mod rules;

use crate::piece::outline::{POLE_MM, Profile};
use crate::piece::{EASE_STOPS, Firmness, MOST_ROUNDS, Piece, ease_stop};
use crate::plan::forecast::fit::{self, Fit, Trail};
use crate::plan::forecast::settle::{Settled, settle, settled_gradient};
use crate::plan::forecast::{Cloth, Energy, Finish, Skin, pressure_for_skin};
use crate::plan::skin::RestSkin;

use polish::{Candidate, Step};
pub use rounds::Rounds;
pub use rules::{Price, Start, Targets};

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
    /// Forecasts solved on the way.
    pub forecasts: usize,
    /// Rules that had to give way.
    pub gave_way: Vec<rules::GaveWay>,
}

/// Forecasts a plan may solve.
pub const MOST_FORECASTS: usize = 12;

/// Forecasts that the faithful answer may take: what is left when every stop of ease after
/// it takes one.
const FAITHFUL_FORECASTS: usize = MOST_FORECASTS - (EASE_STOPS.len() - 1);

/// How many times the leader's cost a number of rounds may have and still be tried further.
const HOPELESS: f64 = 2.0;

/// Whole stitches for `piece`, whose outline is `profile` and whose closed-form skin is
/// `rest`.
///
/// First as close to the outline as whole stitches come, then made easier stop by stop, as
/// far as the piece's ease goes. Each stop starts from the one before and is taken only if
/// no more rounds are uneven after it: whoever moves the slider on may lose fit or gain
/// ease, never lose both.
pub fn choose(piece: &Piece, profile: &Profile, rest: &RestSkin) -> Chosen {
    let trail = Trail::new(profile.places());
    let (mut best, others) = faithful(piece, profile, rest, &trail);
    for (stop, &ease) in EASE_STOPS[..=ease_stop(piece.ease)].iter().enumerate().skip(1) {
        best.set_ease(ease);
        let budget = FAITHFUL_FORECASTS + stop - others;
        while best.forecasts < budget && best.improve() == Step::Worse {}
    }
    best.finish(others)
}

/// The candidate that comes closest to the outline, and the forecasts the others took. The
/// number of rounds is the rest length over the round height, or one either side unless pins
/// hold them all.
fn faithful<'a>(
    piece: &'a Piece,
    profile: &'a Profile,
    rest: &RestSkin,
    trail: &'a Trail,
) -> (Candidate<'a>, usize) {
    let middle = piece.rounds_in(rest.length_mm(), MOST_ROUNDS);
    let middle = (middle.round() as usize).clamp(2, MOST_ROUNDS);
    // A piece held in every one of its rounds has that many.
    let all_held = piece.pins.len() == middle
        && (1..).zip(piece.pins.keys()).all(|(round, &held)| round == held);
    let either_side = if all_held { 0 } else { 1 };
    let mut candidates: Vec<Candidate<'_>> = (middle - either_side..=middle + either_side)
        .filter(|&rounds| rounds >= 2)
        .map(|rounds| Candidate::new(piece, profile, rest, trail, rounds))
        .collect();
    // A number of rounds far behind after its first forecast never catches up.
    let leading = candidates.iter().map(Candidate::cost).fold(f64::INFINITY, f64::min);
    for candidate in candidates.iter_mut().filter(|c| c.cost() <= HOPELESS * leading) {
        candidate.improve();
    }
    candidates.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    let mut best = candidates.swap_remove(0);
    let others: usize = candidates.iter().map(|c| c.forecasts).sum();
    while others + best.forecasts < FAITHFUL_FORECASTS && best.improve() != Step::Done {}
    best.keep_closest();
    (best, others)
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
        let edges = piece.edges_mm(rounds, rest.length_mm());
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

/// The skin of these whole stitches.
pub fn skin_of(piece: &Piece, start: Start, counts: &[u32], holds: &Holds) -> Skin {
    let cloth: Vec<(f64, f64)> =
        (1..=counts.len() as u32).map(|k| piece.cloth_of_round(k)).collect();
    let drawn = piece.outline.finishes_closed();
    let width = |k: usize| cloth[k].0;
    let start_mm = match start {
        Start::Ring => 0.0,
        Start::Chain(n) => f64::from(n) * width(0),
        Start::Oval(_) => 2.0 * piece.straight_mm,
    };
    let around = counts.iter().zip(&cloth).map(|(&n, c)| f64::from(n) * c.0).collect();
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

/// How much wider than the outline's a skin may come out before the stuffing's pressure goes
/// by the skin.
const WIDER: f64 = 1.25;

/// The stuffing's pressure on `skin`: that of the outline, `wanted`, unless rules made the
/// skin so much wider that it would burst under it.
pub(crate) fn pressure_of(skin: &Skin, wanted: f64, firmness: Firmness) -> f64 {
    let own = pressure_for_skin(firmness.0, skin.largest_radius_mm());
    if own * WIDER < wanted { own } else { wanted }
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
    let energy = Energy::new(&skin, pressure_of(&skin, rest.pressure, piece.firmness));
    let start = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &start, settled_gradient(&skin));
    let trail = Trail::new(profile.places());
    fit::measure(&settled.nodes, &trail, piece.gauge.stitch_width_mm())
}
