//! The stitches of a plan on its surface: each a cell of the cloth with the two legs of its
//! V, standing where the round below offered its stitches.

use std::sync::Arc;

use super::leaf::{Leg, THICKNESS};
use super::seams::{between, even, seams};
use super::surface::{Surface, SurfacePoint};
use super::vector::{V3, add, mean, scaled, sub, unit};
use crate::piece::Piece;
use crate::piece::cloth::Working;
use crate::plan::placement::{Placement, Stitch};
use crate::plan::{Plan, Round};

/// Half the width of a leg, in stitch widths: two legs and a little overlap fill a stitch.
const LEG: f32 = 0.272;
/// How far the feet of a plain stitch stand from its middle, in stitch widths, and its heads.
const FOOT: f32 = 0.09;
const HEAD: f32 = 0.255;
/// How far the heads of a decrease stand from its middle: it draws two stitches together,
/// and has more room above them.
const CLOSED: f32 = 0.16;
/// How far the feet of an increase stand apart in the stitch they share.
const SHARED: f32 = 0.20;
/// The cloth beneath a stitch reaches this much beyond it, so that no gap shows where
/// shaping leaves its neighbours askew; hardly at all at the ends, which may be open.
const OVERLAP: f32 = 1.30;
const OVERLAP_AT_END: f32 = 1.04;
/// How far the cloth of a round's first stitch reaches under the last one of the round
/// before, in stitches: a leaning spiral would gape there.
const UNDER: f32 = 0.5;
/// From so many stitches around, the edge of one is as good as straight: 0.07 of a stitch
/// width is the most that it bulges.
const FLAT_FROM: f32 = 12.0;
/// Quads a round is drawn in where stitches would be too many.
const BAND_QUADS: u32 = 72;

/// A stitch, or where there are too many a piece of its round, in the body's frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cell {
    /// Its round, counted from 1.
    pub(super) round: u32,
    /// Its number in the round, counted from 1; none for a piece of a round.
    pub(super) stitch: Option<u32>,
    /// What is worked there.
    pub(super) worked: Stitch,
    /// Index of its yarn.
    pub(super) yarn: usize,
    /// Its middle on the surface.
    pub(super) middle: V3,
    /// Unit normal there.
    pub(super) normal: V3,
    /// Unit vector along the round, in working order.
    pub(super) across: V3,
    /// How much light reaches it.
    pub(super) openness: f32,
    /// How large its cloth is drawn, against its own size.
    pub(super) reach: f32,
    /// Corners of the cloth under it.
    pub(super) cloth: [V3; 4],
    /// The legs of its V, in working order.
    pub(super) legs: [Leg; 2],
}

/// Where the edges of rounds lie along the profile.
///
/// Joined rounds are level. A spiral climbs by a round in a round, so its edges tilt; each
/// starts half a round low and ends half a round high, where the next one goes on. The first
/// and the last edge are the piece's own.
#[derive(Debug, Clone, Copy)]
struct Edges {
    last: u32,
    climbs: bool,
}

impl Edges {
    fn along(self, edge: u32, part: f32) -> f32 {
        let tilts = self.climbs && edge > 0 && edge < self.last;
        edge as f32 + if tilts { part - 0.5 } else { 0.0 }
    }
}

/// One round as it stands on the one below.
#[derive(Debug, Clone)]
struct Standing {
    round: u32,
    yarn: usize,
    placement: Placement,
    /// Stitches of the round below and of this one.
    counts: (f32, f32),
    /// Their widths, mm.
    widths: (f32, f32),
    /// Where the stitches of the round below and of this one part, in turns.
    seams: (Arc<[f32]>, Arc<[f32]>),
}

/// All rounds of a plan as they stand one on another. A cell is worked out only when it is
/// asked for: of a body that changes with every move of a hand, half is never seen.
#[derive(Debug, Clone)]
pub(super) struct Stitches {
    rounds: Vec<Standing>,
    edges: Edges,
    /// How deep the middle of a leg lies, mm.
    depth: f32,
    /// Whether a round is drawn in bands rather than stitch by stitch.
    bands: bool,
    /// Cells of all rounds.
    many: usize,
}

/// Rounds and the surface they lie on.
struct Laid<'a> {
    all: &'a Stitches,
    surface: &'a Surface,
    row: &'a Standing,
}

impl Laid<'_> {
    /// The part of a turn at `at` stitches into the round, on its lower edge or its upper one,
    /// and how far along the profile that is.
    fn turn(&self, upper: bool, at: f32) -> (f32, f32) {
        let (count, seams, edge) = if upper {
            (self.row.counts.1, &self.row.seams.1, self.row.round)
        } else {
            (self.row.counts.0, &self.row.seams.0, self.row.round - 1)
        };
        (self.all.edges.along(edge, at / count), between(seams, at))
    }

    /// The place there and the normal.
    fn place(&self, upper: bool, at: f32) -> SurfacePoint {
        let (along, turn) = self.turn(upper, at);
        self.surface.at(along, turn)
    }

    /// The normal in the middle between these places of the lower and of the upper edge.
    fn facing(&self, low: f32, high: f32) -> V3 {
        let (a, b) = (self.turn(false, low), self.turn(true, high));
        self.surface.normal(0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1))
    }

    /// The places of an edge at `at`, between its corners at `ends`.
    fn between_corners(
        &self,
        upper: bool,
        ends: [(f32, SurfacePoint); 2],
        at: [f32; 2],
    ) -> [SurfacePoint; 2] {
        let [(from, a), (to, b)] = ends;
        let count = if upper { self.row.counts.1 } else { self.row.counts.0 };
        // Over more than a stitch the seam between them may lie off the middle.
        if count < FLAT_FROM || to - from > 1.0 + UNDER {
            return at.map(|at| self.place(upper, at));
        }
        let mix = |a: V3, b: V3, part: f32| add(a, scaled(sub(b, a), part));
        at.map(|at| {
            let part = (at - from) / (to - from);
            (mix(a.0, b.0, part), mix(a.1, b.1, part))
        })
    }

    /// The cell between these places of the lower edge and of the upper edge.
    fn cell(&self, worked: Stitch, low: (f32, f32), high: (f32, f32), feet: [f32; 2]) -> Cell {
        let row = self.row;
        let depth = self.all.depth;
        let under = if low.0 <= 0.0 { UNDER } else { 0.0 };
        let (low, high) = ((low.0 - under, low.1), (high.0 - under, high.1));
        let corners = [
            self.place(false, low.0),
            self.place(false, low.1),
            self.place(true, high.1),
            self.place(true, high.0),
        ];
        let middle_high = 0.5 * (high.0 + under + high.1);
        let head = if worked == Stitch::Decrease { CLOSED } else { HEAD };
        let heads = [middle_high - head, middle_high + head];
        let normal = unit(corners.iter().fold([0.0; 3], |sum, c| add(sum, c.1)));
        let [a, b, c, d] = corners.map(|c| c.0);
        let across = unit(sub(mean(b, c), mean(a, d)));
        let (low_width, high_width) = row.widths;
        let half = (LEG * low_width.max(0.35 * high_width), LEG * high_width);
        // The yarn lies under the surface that the forecast speaks of, each corner of the
        // cloth straight beneath its own place, so that neighbours meet.
        let sunk = |(place, normal): SurfacePoint, by: f32| sub(place, scaled(normal, by));
        let below = [(low.0, corners[0]), (low.1, corners[1])];
        let above = [(high.0, corners[3]), (high.1, corners[2])];
        let feet = self.between_corners(false, below, feet);
        let heads = self.between_corners(true, above, heads);
        let leg =
            |i: usize| Leg { foot: sunk(feet[i], depth), head: sunk(heads[i], depth), half };
        let part = middle_high / row.counts.1;
        let edges = self.all.edges;
        let along = 0.5 * (edges.along(row.round - 1, part) + edges.along(row.round, part));
        let at_end = row.round == 1 || row.round == edges.last;
        Cell {
            round: row.round,
            stitch: None,
            worked,
            yarn: row.yarn,
            middle: mean(mean(a, b), mean(c, d)),
            normal,
            across,
            openness: self.surface.openness(along),
            reach: if at_end { OVERLAP_AT_END } else { OVERLAP },
            cloth: corners.map(|corner| sunk(corner, 1.5 * depth)),
            legs: [leg(0), leg(1)],
        }
    }

    /// The stitches of the round that face where `shows` says, in working order.
    fn stitches(&self, shows: &impl Fn(V3) -> bool, cells: &mut Vec<Cell>) {
        let (mut below, mut above) = (0.0, 0.0);
        let mut number = 0;
        // In the small rounds of a pole a stitch reaches around a corner.
        let wide = self.row.counts.0.min(self.row.counts.1) < FLAT_FROM;
        for stitch in self.row.placement.stitches() {
            let taken = stitch.consumes() as f32;
            let middle = below + 0.5 * taken;
            let seen =
                wide || shows(self.facing(middle, above + 0.5 * stitch.produces() as f32));
            let mut put = |low, high: f32, feet| {
                number += 1;
                if seen {
                    let cell = self.cell(stitch, low, (high, high + 1.0), feet);
                    cells.push(Cell { stitch: Some(number), ..cell });
                }
            };
            match stitch {
                Stitch::Plain => {
                    put((below, below + 1.0), above, [middle - FOOT, middle + FOOT]);
                }
                // Two stitches out of one.
                Stitch::Increase => {
                    let (a, b) = (middle - SHARED, middle + SHARED);
                    put((below, middle), above, [a - 0.5 * FOOT, a + 0.5 * FOOT]);
                    put((middle, below + 1.0), above + 1.0, [b - 0.5 * FOOT, b + 0.5 * FOOT]);
                }
                // One stitch out of two: a leg in each.
                Stitch::Decrease => {
                    put((below, below + 2.0), above, [below + 0.6, below + 1.4]);
                }
            }
            below += taken;
            above += stitch.produces() as f32;
        }
    }

    /// The round as a band of quads.
    fn band(&self, shows: &impl Fn(V3) -> bool, cells: &mut Vec<Cell>) {
        for i in 0..BAND_QUADS {
            let part = |i: u32, count: f32| i as f32 / BAND_QUADS as f32 * count;
            let span = |count| (part(i, count), part(i + 1, count));
            let (low, high) = (span(self.row.counts.0), span(self.row.counts.1));
            if shows(self.facing(0.5 * (low.0 + low.1), 0.5 * (high.0 + high.1))) {
                cells.push(self.cell(Stitch::Plain, low, high, [low.0, low.1]));
            }
        }
    }
}

impl Stitches {
    /// The stitches of `plan`, the plan of `piece`, on `surface`: bands of the rounds if
    /// there are more than `most` of them.
    pub(super) fn new(piece: &Piece, plan: &Plan, surface: &Surface, most: usize) -> Self {
        let stitches: usize = plan.rounds.iter().map(|r| r.count as usize).sum();
        let bands = stitches > most;
        let edges =
            Edges { last: plan.rounds.len() as u32, climbs: piece.working == Working::Spiral };
        let leans = plan.depth_mm.is_none();
        let drift = if leans { piece.rules.spiral_drift as f32 } else { 0.0 };
        let on_chain = plan.start.joined().is_some();
        let mut below: Option<Arc<[f32]>> = None;
        let standing = |(number, round): (u32, &Round)| {
            let taken = round.placement.consumed();
            let lower = below.take().unwrap_or_else(|| even(0.0, taken).into());
            // As placement reckons, all rounds worked on stitches lean.
            let lean = if number > 1 || on_chain { drift / taken as f32 } else { 0.0 };
            let upper = seams(&lower, round.placement.stitches(), round.count, lean);
            let upper: Arc<[f32]> = upper.into();
            below = Some(Arc::clone(&upper));
            let counts = (taken as f32, round.count as f32);
            let around = |edge: u32| surface.around(edge as f32);
            Standing {
                round: number,
                yarn: round.yarn,
                placement: round.placement.clone(),
                counts,
                widths: (around(number - 1) / counts.0, around(number) / counts.1),
                seams: (lower, upper),
            }
        };
        Self {
            rounds: (1..).zip(&plan.rounds).map(standing).collect(),
            edges,
            depth: THICKNESS * LEG * plan.stitch_mm.width as f32,
            bands,
            many: if bands { plan.rounds.len() * BAND_QUADS as usize } else { stitches },
        }
    }

    /// The cells on `surface` whose middle faces a way that `shows`, in working order. Those
    /// of the small rounds about a pole are always among them.
    pub(super) fn cells(&self, surface: &Surface, shows: impl Fn(V3) -> bool) -> Vec<Cell> {
        // As a rule about half of them show.
        let mut cells = Vec::with_capacity(self.many / 2 + self.many / 8);
        for row in &self.rounds {
            let laid = Laid { all: self, surface, row };
            if self.bands {
                laid.band(&shows, &mut cells);
            } else {
                laid.stitches(&shows, &mut cells);
            }
        }
        cells
    }
}

#[cfg(test)]
mod tests {
    use super::super::vector::dot;
    use super::*;
    use crate::piece::gauge::Gauge;
    use crate::piece::outline::{Knot, Outline};
    use crate::plan::plan;

    #[test]
    fn an_increase_spreads_from_one_foot_and_a_decrease_closes_two() {
        let knots = [(0.0, 0.0), (34.0, 34.0), (0.0, 68.0)];
        let outline = Outline { knots: knots.map(|(r, z)| Knot::new(r, z)).into() };
        let piece = Piece::new("ball", outline, Gauge::default());
        let plan = plan(&piece).expect("a ball can be planned");
        let surface = Surface::new(&plan.forecast, 0.0, false);
        let stitches = Stitches::new(&piece, &plan, &surface, usize::MAX);
        let cells = stitches.cells(&surface, |_| true);
        let apart = |a: V3, b: V3| dot(sub(a, b), sub(a, b)).sqrt();
        let middle =
            |cell: &Cell, of: fn(&Leg) -> V3| mean(of(&cell.legs[0]), of(&cell.legs[1]));
        // Poles draw everything together.
        let inner = 3..plan.rounds.len() as u32 - 2;
        let (mut pairs, mut closed, mut i) = (0, 0, 0);
        while i < cells.len() {
            let cell = &cells[i];
            let counts = inner.contains(&cell.round);
            match cell.worked {
                Stitch::Increase => {
                    let next = &cells[i + 1];
                    let feet = apart(middle(cell, |l| l.foot), middle(next, |l| l.foot));
                    let heads = apart(middle(cell, |l| l.head), middle(next, |l| l.head));
                    assert!(
                        !counts || feet < 0.7 * heads,
                        "round {}: {feet} {heads}",
                        cell.round
                    );
                    pairs += u32::from(counts);
                    i += 2;
                    continue;
                }
                Stitch::Decrease => {
                    let [a, b] = cell.legs;
                    let (feet, heads) = (apart(a.foot, b.foot), apart(a.head, b.head));
                    assert!(
                        !counts || feet > 1.1 * heads,
                        "round {}: {feet} {heads}",
                        cell.round
                    );
                    closed += u32::from(counts);
                }
                Stitch::Plain => {}
            }
            i += 1;
        }
        assert!(pairs > 10 && closed > 10, "{pairs} increases, {closed} decreases");
    }
}
