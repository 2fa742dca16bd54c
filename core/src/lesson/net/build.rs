//! Nets of rounds: which stitch is worked into which, and how long each yarn is at rest.

use super::{Net, NetEnd, NetFace, NetRing, Spring};
use crate::error::{Error, Result};
use crate::extent::StitchSize;
use crate::piece::Piece;
use crate::piece::given::{Given, Start};
use crate::piece::stitch::{Placement, Stitch};
use crate::plan::Plan;
use crate::plan::forecast::GATHERED_WIDTH;

/// Most stitches of a net: some seconds of work.
const MOST_NODES: usize = 60_000;

/// One round of a net: what is worked into it, and how large its stitches are.
#[derive(Debug, Clone, PartialEq)]
pub struct NetRound {
    /// Which of its stitches are increases and decreases.
    pub placement: Placement,
    /// Size of its stitches at rest.
    pub stitch_mm: StitchSize,
}

/// A stitch and what it is worked into: index in the ring below, index in its own ring.
pub(super) type Leg = (usize, usize);

impl Net {
    /// The net of `rounds` worked on `start`.
    ///
    /// # Errors
    /// Without a round, where a round does not take the stitches of the round below, of an
    /// oval, or of more than 60,000 stitches.
    pub fn new(start: Start, rounds: &[NetRound], end: NetEnd) -> Result<Self> {
        let Some(first) = rounds.first() else {
            return Err(Error::new("net", "there are no rounds", "give one at least"));
        };
        let below = match start {
            Start::Ring => 1,
            Start::Chain(n) if n > 0 => n as usize,
            Start::Chain(_) => {
                return Err(Error::new("net", "its chain has no stitch", "chain some"));
            }
            Start::Oval(_) => {
                return Err(Error::new(
                    "net",
                    "it starts on an oval's chain, which has no net yet",
                    "use a piece that starts in a ring or on a joined chain",
                ));
            }
        };
        let mut rings = vec![NetRing {
            first: 0,
            count: below,
            width_mm: if start == Start::Ring { 0.0 } else { first.stitch_mm.width },
            height_mm: 0.0,
            turn: 0.0,
        }];
        let mut legs: Vec<Vec<Leg>> = Vec::with_capacity(rounds.len());
        for (i, round) in rounds.iter().enumerate() {
            let below = rings[i];
            let count = round.placement.produced() as usize;
            let into_ring = i == 0 && start == Start::Ring;
            if count == 0
                || (!into_ring && round.placement.consumed() as usize != below.count)
                || below.first + below.count + count > MOST_NODES
            {
                return Err(Error::new(
                    format!("net, round {}", i + 1),
                    format!("{count} stitches on {} cannot be worked here", below.count),
                    format!("give rounds that follow on, {MOST_NODES} stitches at the most"),
                ));
            }
            let round_legs = if into_ring {
                (0..count).map(|j| (0, j)).collect()
            } else {
                legs_of(&round.placement)
            };
            let gathered = end == NetEnd::Drawn && i + 1 == rounds.len();
            let width = round.stitch_mm.width * if gathered { GATHERED_WIDTH } else { 1.0 };
            rings.push(NetRing {
                first: below.first + below.count,
                count,
                width_mm: width,
                height_mm: round.stitch_mm.height,
                turn: turn_over(&below, count, &round_legs),
            });
            legs.push(round_legs);
        }
        Ok(Self::joined(rings, &legs, end))
    }

    /// The net of `plan`, which is the plan of `piece`.
    ///
    /// # Errors
    /// As [`Net::new`].
    pub fn of_plan(piece: &Piece, plan: &Plan) -> Result<Self> {
        let rounds: Vec<NetRound> = (1_u32..)
            .zip(&plan.rounds)
            .map(|(number, round)| NetRound {
                placement: round.placement.clone(),
                stitch_mm: piece.cloth_of_round(number),
            })
            .collect();
        let end = if piece.outline.finishes_closed() { NetEnd::Drawn } else { NetEnd::Open };
        Self::new(plan.start, &rounds, end)
    }

    /// The net of rounds of these counts, their shaping spread as `piece` spreads it, in
    /// `piece`'s cloth; nothing is planned or stuffed.
    ///
    /// # Errors
    /// As [`Net::new`] and [`Given::validate`].
    pub fn of_counts(piece: &Piece, start: Start, counts: &[u32], end: NetEnd) -> Result<Self> {
        let given = Given::of_counts(start, counts);
        if counts.len() > 1 {
            given.validate()?;
        }
        let mut placer = crate::plan::placement::Placer::new(piece.spread, piece.drift());
        let mut below = start.joined();
        let rounds: Vec<NetRound> = (1_u32..)
            .zip(counts)
            .map(|(number, &count)| {
                let placement = match below {
                    Some(below) => placer.place(below, count),
                    None => Placement::plain(count.max(1)),
                };
                below = Some(count);
                NetRound { placement, stitch_mm: piece.cloth_of_round(number) }
            })
            .collect();
        Self::new(start, &rounds, end)
    }

    /// The net of `rings` whose stitches hang together by `legs`, those of a round in working
    /// order.
    pub(super) fn joined(rings: Vec<NetRing>, legs: &[Vec<Leg>], end: NetEnd) -> Self {
        let mut net = Self { rings, springs: Vec::new(), faces: Vec::new(), end };
        for k in 0..net.rings.len() {
            net.tie_along(k);
            if k > 0 {
                net.tie_up(k, &legs[k - 1]);
                net.cover(k, &legs[k - 1]);
            }
        }
        net
    }

    /// Yarns along ring `k`.
    fn tie_along(&mut self, k: usize) {
        let ring = self.rings[k];
        // Two stitches face one another twice; one has no neighbour.
        let ties = if ring.count > 1 { ring.count } else { 0 };
        // A chain is as stiff as a round of its stitches.
        let height = self.rings[k.max(1)].height_mm;
        for j in 0..ties {
            self.springs.push(Spring {
                ends: [ring.node(j) as u32, ring.node(j + 1) as u32],
                rest_mm: ring.width_mm,
                area_mm2: ring.width_mm * height,
                along_round: true,
                round: k as u32,
            });
        }
    }

    /// Yarns up the stitches of ring `k`.
    ///
    /// Together they stand for the cloth of the band, ½(N_{k−1}w + N_k w)·h as in the
    /// forecast. The stitches of an increase and of a decrease lean apart, so they are longer
    /// than the round is high: the round is h high there too.
    fn tie_up(&mut self, k: usize, legs: &[Leg]) {
        let (below, ring) = (self.rings[k - 1], self.rings[k]);
        let mut of_lower = vec![(0_usize, 0_usize); below.count];
        let mut of_upper = vec![(0_usize, 0_usize); ring.count];
        for &(i, j) in legs {
            of_lower[i].0 += 1;
            of_upper[j].0 += 1;
        }
        let height = ring.height_mm;
        let in_ring = below.width_mm == 0.0;
        for &(i, j) in legs {
            let fan = |of: &mut (usize, usize)| {
                let lean = of.1 as f64 - 0.5 * (of.0 as f64 - 1.0);
                of.1 += 1;
                (of.0 as f64, lean)
            };
            let (stitches, out) = fan(&mut of_lower[i]);
            let (legs, back) = fan(&mut of_upper[j]);
            // Around the middle of a ring stitches stand like spokes.
            let out = if in_ring { 0.0 } else { out * ring.width_mm };
            let lean = out + back * below.width_mm;
            let width = 0.5 * (ring.width_mm / legs + below.width_mm / stitches);
            self.springs.push(Spring {
                ends: [(below.first + i) as u32, (ring.first + j) as u32],
                rest_mm: height.hypot(lean),
                area_mm2: width * height,
                along_round: false,
                round: k as u32,
            });
        }
    }

    /// The cloth between ring `k` and the one below.
    fn cover(&mut self, k: usize, legs: &[Leg]) {
        let (below, ring) = (self.rings[k - 1], self.rings[k]);
        let lower = |i: usize| below.node(i) as u32;
        let upper = |j: usize| ring.node(j) as u32;
        let next = legs.iter().skip(1).chain(legs.first());
        let faces = legs.iter().zip(next).filter_map(|(&(i, j), &(i_next, j_next))| {
            match (i == i_next, j == j_next) {
                (true, true) => None,
                (true, false) => Some(NetFace::Widening([lower(i), upper(j), upper(j_next)])),
                (false, true) => Some(NetFace::Narrowing([lower(i), lower(i_next), upper(j)])),
                (false, false) => {
                    Some(NetFace::Square([lower(i), lower(i_next), upper(j_next), upper(j)]))
                }
            }
        });
        let faces = faces.collect();
        self.faces.push(faces);
    }
}

/// Which stitch of a round is worked into which, in working order.
fn legs_of(placement: &Placement) -> Vec<Leg> {
    let mut legs = Vec::new();
    let (mut i, mut j) = (0, 0);
    for stitch in placement.stitches() {
        match stitch {
            Stitch::Plain => legs.push((i, j)),
            Stitch::Increase => legs.extend([(i, j), (i, j + 1)]),
            Stitch::Decrease => legs.extend([(i, j), (i + 1, j)]),
        }
        i += stitch.consumes() as usize;
        j += stitch.produces() as usize;
    }
    legs
}

/// Where the first of `count` even stitches lies so that stitches lie, on average, over what
/// they are worked into.
pub(super) fn turn_over(below: &NetRing, count: usize, legs: &[Leg]) -> f64 {
    if below.count == 1 || legs.is_empty() {
        return below.turn;
    }
    let lean = |&(i, j): &Leg| i as f64 / below.count as f64 - j as f64 / count as f64;
    below.turn + legs.iter().map(lean).sum::<f64>() / legs.len() as f64
}
