//! `plan`: everything that follows from one piece, computed in one pass and never saved.

pub mod ball;
pub mod bend;
pub mod colours;
pub mod counts;
pub mod estimate;
pub mod forecast;
pub mod given;
pub mod inside;
mod knot_edges;
pub mod placement;
pub mod skin;
pub mod stuffing;
pub mod warning;

use std::collections::BTreeMap;

use crate::error::{Error, Result};
use crate::extent::{Bounds, Extent, StitchSize};
use crate::piece::cloth::Kind;
use crate::piece::outline::{Profile, Rz};
use crate::piece::{MOST_ROUNDS, Piece, Spread};
use crate::plan::bend::{Bend, bends};
use crate::plan::counts::{Chosen, Effort, Start, worked_length_mm};
use crate::plan::estimate::{Estimate, Worked, estimate};
use crate::plan::forecast::fit::{Fit, Trail, node_offsets};
use crate::plan::forecast::{Cloth, size_mm, straight_volume_mm3, volume_mm3};
use crate::plan::placement::{Placement, Placer, place_oval};
use crate::plan::skin::RestSkin;
use crate::plan::warning::{Misfit, Warning};

use colours::{ColourRun, Float, colour_runs, coloured_steps, floats, long_floats};
use inside::{Inside, InsideStop, inside_stops};
use stuffing::{StuffHow, StuffingStop, stuffing_stops};

/// Intervals in which the outline is sampled by arc length.
const OUTLINE_INTERVALS: usize = 400;

/// One round as it is worked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Round {
    /// Stitches at its end.
    pub count: u32,
    /// Where its increases and decreases fall.
    pub placement: Placement,
    /// Yarn it is worked in, an index into the project's yarns.
    pub yarn: usize,
    /// Kind of stitch it is worked in.
    pub kind: Kind,
    /// The yarns of its stitches in order, where it is worked in several; else none.
    pub colours: Vec<ColourRun>,
}

/// What follows from a piece: rounds, forecast, estimates. Derived, never saved; its words are
/// made from it by [`words`](crate::words::words).
#[derive(Debug, Clone)]
pub struct Plan {
    /// Stitch width and round height of the gauge, mm.
    pub stitch_mm: StitchSize,
    /// The wanted profile, evenly spaced by arc length, its start at z = 0 of its own knots.
    pub outline: Vec<Rz>,
    /// How the piece begins.
    pub start: Start,
    /// Foundation chain at an open start.
    pub chain: Option<u32>,
    /// The rounds in working order; round `k` is at index `k − 1`.
    pub rounds: Vec<Round>,
    /// Stitches the cloth would have if stitches could be split, per round.
    pub ideal: Vec<f64>,
    /// The stuffed profile: one node per round edge, M + 1 in all, z = 0 at the start; then
    /// the pole of the disc that closes an end drawn shut.
    pub forecast: Vec<Rz>,
    /// What to add to the forecast's z to lay it on the outline, mm.
    pub shift_mm: f64,
    /// Signed distance of each forecast node to the outline, mm; positive outside.
    pub offsets_mm: Vec<f64>,
    /// Height and greatest width of the forecast, mm. An oval's width is along its straight
    /// sides.
    pub size_mm: Extent,
    /// Depth across the straight sides of an oval, mm; `None` for a round body.
    pub depth_mm: Option<f64>,
    /// Distance between forecast and outline; none of a piece given by its rounds.
    pub fit: Option<Fit>,
    /// Expected RMS distance over hands, stitch widths.
    pub likely_rms_stitches: f64,
    /// What its pattern costs the maker, in new numbers of repeats: 0 asks nothing.
    pub trouble: f64,
    /// Hoop strain of each round's top edge, stuffed against at rest; negative where the cloth
    /// is slack, `None` at a gathered round.
    pub hoop_strains: Vec<Option<f64>>,
    /// Places where forecast and outline part by more than half a stitch.
    pub misfits: Vec<Misfit>,
    /// Where the stuffing goes in, in working order.
    pub stuffing: Vec<StuffingStop>,
    /// What is done inside it, in working order.
    pub inside: Vec<InsideStop>,
    /// Strands of colour work that are too long to lie loose.
    pub floats: Vec<Float>,
    /// Yarn, stuffing and time.
    pub estimate: Estimate,
    /// What each round does to the curvature.
    pub bends: Vec<Bend>,
    /// Stitches a round gains where the cloth lies flat, 2πh/w.
    pub flat_increase: f64,
    /// What the maker should know before working it.
    pub warnings: Vec<Warning>,
    /// Forecasts solved to find the counts.
    pub forecasts: usize,
}

impl Plan {
    /// Stitch counts, round by round.
    pub fn counts(&self) -> Vec<u32> {
        self.rounds.iter().map(|round| round.count).collect()
    }

    /// The round after which stuffing first goes in.
    pub fn stuff_after(&self) -> Option<u32> {
        self.stuffing.first().map(|stop| stop.after)
    }

    /// The same piece left without stuffing: nothing goes in anywhere, and none is needed. The
    /// shape stays that of the cloth as it is forecast.
    pub fn leave_empty(&mut self) {
        self.stuffing.clear();
        self.estimate.stuffing_g = Bounds::new(0.0, 0.0);
        self.estimate.volume_ml = 0.0;
    }

    /// Share of the rounds that are plain or a single repeat, 0 to 1.
    pub fn simple_share(&self) -> f64 {
        let simple = self.rounds.iter().filter(|r| r.placement.is_single_repeat()).count();
        simple as f64 / self.rounds.len() as f64
    }
}

/// Plans `piece`: whole stitches for every round, the shape they stuff into and what
/// they need. Pure and deterministic: the same piece gives the same plan.
///
/// Warnings come with the plan: rules that gave way, places cloth cannot hold.
///
/// ```
/// use plumpline_core::{Gauge, Knot, Outline, Piece, plan};
///
/// let bowl = Outline::new(vec![Knot::new(0.0, 0.0), Knot::new(40.0, 10.0), Knot::new(45.0, 50.0)])?;
/// let mut piece = Piece::new("Bowl", bowl, Gauge::default());
/// piece.pins.insert(5, 30);
/// let plan = plan(&piece)?;
/// assert_eq!(plan.rounds[4].count, 30, "a pin holds its round");
/// let below = plan.rounds[3].count;
/// assert_eq!(plan.rounds[4].placement.consumed(), below, "every stitch below is worked into");
/// # Ok::<(), plumpline_core::Error>(())
/// ```
///
/// # Errors
/// For a piece that [`Piece::validate`] refuses, or one of fewer than two or more than
/// [`MOST_ROUNDS`] rounds at its gauge.
pub fn plan(piece: &Piece) -> Result<Plan> {
    plan_with(piece, Effort::Full)
}

/// As [`plan`], within the forecasts that a hand dragging a knot can wait for: what is found by
/// then, which a plan may better.
///
/// # Errors
/// As [`plan`].
pub fn plan_draft(piece: &Piece) -> Result<Plan> {
    plan_with(piece, Effort::Draft)
}

fn plan_with(piece: &Piece, effort: Effort) -> Result<Plan> {
    piece.validate()?;
    if let Some(given) = &piece.given {
        let (outline, rest, chosen) = given::settled(piece, given);
        return Ok(describe(piece, outline, &rest, chosen));
    }
    let (profile, rest) = skin(piece);
    check_size(piece, &rest)?;
    let chosen = counts::choose(piece, &profile, &rest, effort);
    Ok(describe(piece, profile.places(), &rest, chosen))
}

/// Every answer to `piece` worth choosing, from the most faithful to the simplest, with the
/// simplicity that takes it. None is beaten by another in both likely fit and trouble.
///
/// Takes as long as some tens of plans: not for every frame.
///
/// # Errors
/// As [`plan`].
pub fn answers(piece: &Piece) -> Result<Vec<(f64, Plan)>> {
    piece.validate()?;
    if piece.given.is_some() {
        return Ok(vec![(1.0, plan(piece)?)]);
    }
    let (profile, rest) = skin(piece);
    check_size(piece, &rest)?;
    let answers = counts::answers(piece, &profile, &rest);
    let described = |(s, chosen)| (s, describe(piece, profile.places(), &rest, chosen));
    Ok(answers.into_iter().map(described).collect())
}

/// The wanted profile of `piece` and the unstuffed skin that stuffs into it.
pub(crate) fn skin(piece: &Piece) -> (Profile, RestSkin) {
    let profile = piece.outline.profile(OUTLINE_INTERVALS);
    let cloth = Cloth { along: piece.stiffness_along, ..Cloth::default() };
    let rest = RestSkin::of_oval(&profile, piece.firmness.0, &cloth, piece.straight_mm);
    (profile, rest)
}

/// Whether [`plan`] would take `piece`, without planning it.
///
/// # Errors
/// As [`plan`].
pub(crate) fn plannable(piece: &Piece) -> Result<()> {
    piece.validate()?;
    if piece.given.is_some() {
        return Ok(());
    }
    check_size(piece, &skin(piece).1)
}

/// Rounds that the rest length of `piece` comes to, to the nearest; a plan takes this many
/// or one either side.
pub(crate) fn rounds_of(piece: &Piece) -> u32 {
    if let Some(given) = &piece.given {
        return given.rounds.len() as u32;
    }
    piece.rounds_in(worked_length_mm(piece, &skin(piece).1), MOST_ROUNDS).round() as u32
}

fn check_size(piece: &Piece, rest: &RestSkin) -> Result<()> {
    let rounds = piece.rounds_in(worked_length_mm(piece, rest), MOST_ROUNDS);
    if rounds < 1.5 {
        return Err(Error::new(
            "outline",
            "it is less than two rounds long at this gauge",
            "make it larger or use finer yarn",
        ));
    }
    if rounds > MOST_ROUNDS as f64 - 1.0 {
        return Err(Error::new(
            "outline",
            format!("it takes {rounds:.0} rounds at this gauge"),
            format!("make it smaller; {MOST_ROUNDS} rounds is the most"),
        ));
    }
    Ok(())
}

/// Everything that is read off the chosen counts and their forecast.
fn describe(piece: &Piece, outline: Vec<Rz>, rest: &RestSkin, chosen: Chosen) -> Plan {
    let stitch_mm = piece.gauge.stitch_size();
    let rounds = place_rounds(piece, &chosen);
    let mut forecast = chosen.settled.nodes.clone();
    let offsets_mm = node_offsets(&forecast, &Trail::new(outline.clone()), chosen.fit.shift_mm);
    let misfits = warning::misfits(&offsets_mm, stitch_mm.width);
    let told = piece.given.as_ref().map_or(&[][..], |given| &given.stuff_after);
    let usual = stuffing_stops(&chosen.counts, stitch_mm.width);
    let stop = |&after: &u32| {
        let how = usual.iter().find(|stop| stop.after == after).map(|stop| stop.how);
        StuffingStop { after, how: how.unwrap_or(StuffHow::Filled) }
    };
    let mut stuffing = match told {
        [] => usual,
        told => told.iter().map(stop).collect(),
    };
    let profile = || piece.outline.profile(OUTLINE_INTERVALS);
    let inside = inside_stops(piece, rest, &forecast, chosen.counts.len(), profile);
    // What lies on the stuffing goes in after it.
    let mut lids =
        inside.iter().filter(|stop| matches!(stop.what, Inside::Card { on_top: true, .. }));
    if let (Some(lid), Some(stop)) = (lids.next_back(), stuffing.last_mut()) {
        stop.after = stop.after.min(lid.after);
    }
    let straight = if matches!(chosen.start, Start::Oval(_)) { piece.straight_mm } else { 0.0 };
    if piece.outline.finishes_closed() {
        // The gathered loops close the end as a level disc.
        let last = forecast[forecast.len() - 1];
        forecast.push(Rz::new(0.0, last.z));
    }
    let volume = volume_mm3(&forecast) + straight_volume_mm3(&forecast, straight);
    let estimate = needs(piece, &rounds, volume / 1000.0);
    let flat_increase = piece.gauge.flat_increase();
    let chain = chosen.start.joined();
    let bends = bends(chain.unwrap_or(0), &chosen.counts, &forecast, flat_increase);
    let extent = size_mm(&forecast);
    let mut warnings = warning::warnings(piece, rest, &chosen, &offsets_mm, &misfits);
    let of_round =
        |(number, round): (u32, &Round)| floats(number, &round.placement, &round.colours);
    let floats: Vec<Float> = (1..).zip(&rounds).flat_map(of_round).collect();
    warnings.extend(long_floats(&floats));
    Plan {
        stitch_mm,
        outline,
        start: chosen.start,
        chain,
        rounds,
        ideal: chosen.ideal,
        size_mm: Extent { width: extent.width + straight, ..extent },
        depth_mm: (straight > 0.0).then_some(extent.width),
        forecast,
        shift_mm: chosen.fit.shift_mm,
        offsets_mm,
        fit: piece.given.is_none().then_some(chosen.fit),
        likely_rms_stitches: chosen.likely_rms_stitches,
        trouble: chosen.trouble,
        hoop_strains: chosen.hoop_strains,
        misfits,
        stuffing,
        inside,
        floats,
        estimate,
        bends,
        flat_increase,
        warnings,
        forecasts: chosen.forecasts,
    }
}

fn place_rounds(piece: &Piece, chosen: &Chosen) -> Vec<Round> {
    let mut placer = Placer::new(piece.spread, piece.drift());
    let mut below = chosen.start.joined();
    let mut turned = false;
    (1..)
        .zip(&chosen.counts)
        .map(|(number, &count)| {
            let placement = match (below, chosen.start.side()) {
                (Some(below), _) if let Some(own) = own_work(piece, number) => {
                    placer.worked(below, own);
                    own.clone()
                }
                (Some(below), Some(side)) => {
                    turned ^= below != count && piece.spread == Spread::Turned;
                    place_oval(below, count, side, turned)
                }
                (Some(below), None) => placer.place(below, count),
                (None, _) => Placement::plain(count), // Into the ring or along the chain.
            };
            below = Some(count);
            let kind = piece.kind_of_round(number);
            let colours = colour_runs(piece, number, &placement);
            Round { count, placement, yarn: piece.yarn_of_round(number), kind, colours }
        })
        .collect()
}

/// The work of round `number` where the piece is given by its rounds and keeps it.
fn own_work(piece: &Piece, number: u32) -> Option<&Placement> {
    piece.given.as_ref()?.rounds.get(number as usize - 1)?.work.as_ref()
}

/// What these rounds of `piece` need if they hold `volume_ml`.
pub(crate) fn needs(piece: &Piece, rounds: &[Round], volume_ml: f64) -> Estimate {
    let stitch_mm = piece.gauge.stitch_size();
    let worked = worked(piece, rounds);
    estimate(worked, stitch_mm, volume_ml, piece.firmness, &piece.habits)
}

fn worked<'a>(piece: &'a Piece, rounds: &'a [Round]) -> impl Iterator<Item = Worked> + 'a {
    (1..).zip(rounds).flat_map(move |(number, round)| {
        let StitchSize { width, height } = piece.cloth_of_round(number);
        let mut counts = BTreeMap::from([(round.yarn, 0)]);
        for (stitch, yarn) in coloured_steps(&round.placement, &round.colours, round.yarn) {
            *counts.entry(yarn).or_insert(0) += stitch.produces();
        }
        counts.into_iter().filter(|(yarn, count)| *count > 0 || *yarn == round.yarn).map(
            move |(yarn, count)| {
                let own = yarn == round.yarn;
                let joining = if own { piece.working.joining(round.kind) } else { 0 };
                Worked { count, yarn, stitch_mm2: width * height, joining }
            },
        )
    })
}
