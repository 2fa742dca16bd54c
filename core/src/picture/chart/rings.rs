//! Rings: the rounds of a plan as a chart shows them, and how they are shared out.

use crate::piece::Piece;
use crate::piece::cloth::{Kind, Loop, Working};
use crate::plan::Plan;
use crate::plan::colours::coloured_steps;
use crate::plan::placement::{Placement, Stitch, gcd};

/// Most rings of one chart.
const MOST_RINGS: usize = 22;
/// A piece whose last round has this part of its widest one closes so little that one chart
/// shows it all.
const STAYS_WIDE: f64 = 0.6;

/// A round, or several plain ones worked alike, as one ring.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ring {
    pub(super) first: u32,
    pub(super) last: u32,
    pub(super) count: u32,
    pub(super) placement: Placement,
    pub(super) kind: Kind,
    pub(super) only: Option<Loop>,
    pub(super) yarn: usize,
    /// The yarn of each step, where it is worked in several.
    pub(super) painted: Vec<usize>,
    /// Whether its yarn is taken up here, in a piece of several.
    pub(super) yarn_begins: bool,
    /// Where it begins, in turns on from round 1: the lean of the spiral.
    pub(super) begins: f32,
    /// Chains that begin it, and whether they stand for its first stitch.
    pub(super) chains: Option<(u32, bool)>,
    /// Stitches of a straight side, in an oval.
    pub(super) side: Option<u32>,
}

impl Ring {
    pub(super) fn is_plain(&self) -> bool {
        self.placement.number_of(Stitch::Plain) == self.count
    }

    /// How often its repeat is worked around; any share of a plain round is one.
    fn repeats(&self) -> u32 {
        // A motif painted on it is shown whole.
        if !self.painted.is_empty() {
            1
        } else if self.is_plain() {
            self.count
        } else {
            self.placement.repeats
        }
    }
}

/// The rounds of `plan` as rings.
pub(super) fn rings(piece: &Piece, plan: &Plan) -> Vec<Ring> {
    let first = plan.rounds.first().map_or(0, |round| round.yarn);
    let several = plan.rounds.iter().any(|r| r.yarn != first || !r.colours.is_empty());
    let side = plan.start.side();
    let mut rings: Vec<Ring> = Vec::new();
    let mut begins = 0.0_f64;
    let mut below = plan.start.joined();
    for (number, round) in (1..).zip(&plan.rounds) {
        let only = piece.loops.get(&number).copied();
        let chains = match piece.working {
            Working::Joined { chain_counts } => {
                Some((round.kind.turning_chain(), chain_counts))
            }
            Working::Spiral => None,
        };
        let yarn_begins =
            several && rings.last().is_none_or(|ring: &Ring| ring.yarn != round.yarn);
        let ring = Ring {
            first: number,
            last: number,
            count: round.count,
            placement: round.placement.clone(),
            kind: round.kind,
            only,
            yarn: round.yarn,
            painted: match round.colours.is_empty() {
                true => Vec::new(),
                false => coloured_steps(&round.placement, &round.colours, round.yarn)
                    .map(|(_, yarn)| yarn)
                    .collect(),
            },
            yarn_begins,
            begins: begins as f32,
            chains,
            side,
        };
        if let (Some(below), None) = (below, side) {
            begins += piece.drift() / f64::from(below.max(1));
        }
        below = Some(round.count);
        match rings.last_mut() {
            Some(last)
                if last.is_plain()
                    && ring.is_plain()
                    && number > 2
                    && (last.count, last.kind, last.only, last.yarn, &last.painted)
                        == (ring.count, ring.kind, ring.only, ring.yarn, &ring.painted) =>
            {
                last.last = number;
            }
            _ => rings.push(ring),
        }
    }
    rings
}

/// The rings of one chart and which way it grows.
#[derive(Debug, Clone, Copy)]
pub(super) struct RingsPart<'a> {
    pub(super) rings: &'a [Ring],
    pub(super) inward: bool,
    /// Whether the piece has several yarns, so that each is told by tint and letter.
    pub(super) several_yarns: bool,
}

impl RingsPart<'_> {
    /// Into how many equal parts every one of its rounds divides.
    pub(super) fn common_repeats(&self) -> u32 {
        self.rings.iter().fold(0, |common, ring| gcd(common, ring.repeats()))
    }
}

/// The rings shared out: up to the widest round outward; from there on inward, if anything
/// narrows.
pub(super) fn divided(rings: &[Ring]) -> Vec<RingsPart<'_>> {
    let most = rings.iter().map(|r| r.count).max().unwrap_or(0);
    let widest = rings.iter().rposition(|r| r.count == most).map_or(0, |i| i + 1);
    // An end that stays nearly as wide is no end to look at from outside.
    let end = rings.last().map_or(0, |r| r.count);
    let narrows = f64::from(end) < STAYS_WIDE * f64::from(most);
    let widest = if narrows { widest } else { rings.len() };
    let several_yarns = rings.iter().any(|r| r.yarn != rings[0].yarn || !r.painted.is_empty());
    let (opening, closing) = rings.split_at(widest);
    let mut parts = Vec::new();
    for (half, inward) in [(opening, false), (closing, true)] {
        let charts = half.len().div_ceil(MOST_RINGS).max(1);
        let each = half.len().div_ceil(charts).max(1);
        parts.extend(half.chunks(each).map(|rings| RingsPart { rings, inward, several_yarns }));
    }
    parts
}
