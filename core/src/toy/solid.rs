//! The stuffed shape of a piece as a body in space: its forecast turned about the axis, or for
//! an oval drawn along a stadium. Places on it are named by rounds and turns.
//!
//! Own axes: z in working order from the start, y to the front. Seen from outside at the front
//! with later rounds upwards, a right-hander's rounds run to the left; x is the way they run.

use std::f64::consts::{PI, TAU};

use super::through::{SolidBand, Through, lerp};
use super::vector::{V3, cross, unit};
use crate::piece::Piece;
use crate::piece::cloth::Hand;
use crate::piece::outline::Rz;
use crate::plan::Plan;

/// A place on the cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnCloth {
    /// How far along, in rounds: 0 the start, 4.5 the middle of round 5.
    pub round: f64,
    /// How far around from the front, in turns, the way the rounds run.
    pub turn: f64,
}

/// A place on the cloth with its directions, unit vectors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SolidStation {
    /// The place, mm.
    pub at: V3,
    /// Outwards from the cloth.
    pub normal: V3,
    /// Along the cloth to later rounds.
    pub later: V3,
}

/// Where a straight line goes through the cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Crossing {
    /// How far along the line, in lengths of its direction.
    pub(super) s: f64,
    /// Whether the line leaves the body there.
    pub(super) leaving: bool,
    /// Where on the cloth.
    pub(super) on: OnCloth,
}

/// A stuffed piece in space, in its own axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    nodes: Vec<Rz>,
    /// Length of the profile up to each node, mm.
    reach: Vec<f64>,
    /// Normal (r, z) at each node.
    normals: Vec<(f64, f64)>,
    /// Stitches of the ring at each node.
    counts: Vec<f64>,
    /// Where each round begins, in turns from the first; round `k` at index `k − 1`.
    begins: Vec<f64>,
    /// Straight part of an oval's side, mm.
    straight: f64,
    /// −1 where the work runs the other way round: left-handed.
    hand: f64,
    /// Whether the start, and the last edge, are open.
    open: (bool, bool),
    /// Width of an unstuffed stitch, mm.
    stitch_mm: f64,
}

impl Solid {
    /// The body of `piece`, planned as `plan`.
    pub fn new(piece: &Piece, plan: &Plan) -> Self {
        let nodes = plan.forecast.clone();
        let mut reach = vec![0.0; nodes.len()];
        for k in 1..nodes.len() {
            reach[k] = reach[k - 1] + nodes[k - 1].distance(nodes[k]);
        }
        let round_counts = plan.rounds.iter().map(|round| f64::from(round.count));
        let first = plan.chain.or(plan.rounds.first().map(|r| r.count)).unwrap_or(1);
        let mut counts: Vec<f64> =
            std::iter::once(f64::from(first)).chain(round_counts).collect();
        let last = counts.last().copied().unwrap_or(1.0);
        counts.resize(nodes.len(), last);
        // As placement and charts have it: each round begins where the lean has carried it.
        let mut begins = Vec::with_capacity(plan.rounds.len());
        let mut at = 0.0;
        for (k, below) in counts.iter().take(plan.rounds.len()).enumerate() {
            if k > 0 || plan.chain.is_some() {
                at += piece.drift() / below.max(1.0);
            }
            begins.push(at);
        }
        let oval = plan.depth_mm.is_some();
        Self {
            normals: normals(&nodes),
            nodes,
            reach,
            counts,
            begins,
            straight: if oval { piece.straight_mm } else { 0.0 },
            hand: if piece.hand == Hand::Left { -1.0 } else { 1.0 },
            open: (!piece.outline.starts_closed(), !piece.outline.finishes_closed()),
            stitch_mm: plan.stitch_mm.width,
        }
    }

    /// The profile's nodes (r, z), mm: one a round edge, then the pole of an end drawn shut.
    pub fn nodes(&self) -> &[Rz] {
        &self.nodes
    }

    /// Straight part of an oval's side, mm; it lies along x.
    pub fn straight_mm(&self) -> f64 {
        self.straight
    }

    /// −1 for left-handed work, else 1.
    pub fn hand(&self) -> f64 {
        self.hand
    }

    /// Number of rounds.
    pub fn rounds(&self) -> usize {
        self.begins.len()
    }

    /// Whether the start, and the last edge, are open.
    pub fn open(&self) -> (bool, bool) {
        self.open
    }

    /// Width of an unstuffed stitch, mm.
    pub fn stitch_mm(&self) -> f64 {
        self.stitch_mm
    }

    /// Length of the stuffed profile, mm.
    pub fn profile_mm(&self) -> f64 {
        self.reach.last().copied().unwrap_or(0.0)
    }

    /// How far along in rounds this share of the profile's length is.
    pub fn round_at(&self, share: f64) -> f64 {
        let wanted = share.clamp(0.0, 1.0) * self.profile_mm();
        let last = self.nodes.len() - 1;
        let k = self.reach.partition_point(|&r| r <= wanted).clamp(1, last) - 1;
        let step = self.reach[k + 1] - self.reach[k];
        let part = if step > 1e-9 { (wanted - self.reach[k]) / step } else { 0.0 };
        k as f64 + part.clamp(0.0, 1.0)
    }

    /// The share of the profile's length that is this far along in rounds.
    pub fn share_at(&self, round: f64) -> f64 {
        let all = self.profile_mm();
        if all > 0.0 { self.between(&self.reach, round, lerp) / all } else { 0.0 }
    }

    fn between<T: Copy>(&self, list: &[T], round: f64, mix: impl Fn(T, T, f64) -> T) -> T {
        let last = list.len() - 1;
        let round = round.clamp(0.0, last as f64);
        let k = (round as usize).min(last - 1);
        mix(list[k], list[k + 1], round - k as f64)
    }

    /// Radius and height of the profile there, mm.
    pub fn profile(&self, round: f64) -> Rz {
        self.between(&self.nodes, round, |a, b, u| {
            Rz::new(lerp(a.r, b.r, u), lerp(a.z, b.z, u))
        })
    }

    /// Length once around there, mm.
    pub fn around_mm(&self, round: f64) -> f64 {
        TAU * self.profile(round).r + 2.0 * self.straight
    }

    /// Stitches once around there; between two rounds' edges between their counts.
    pub fn stitches(&self, round: f64) -> f64 {
        self.between(&self.counts, round, lerp)
    }

    /// Where round `number` (from 1) begins, in turns from the first stitch of round 1.
    pub fn begins(&self, number: u32) -> f64 {
        let last = self.begins.len().saturating_sub(1);
        let index = (number.max(1) as usize - 1).min(last);
        self.begins.get(index).copied().unwrap_or(0.0)
    }

    /// The round (from 1) whose edges lie on both sides of there.
    pub fn number(&self, round: f64) -> u32 {
        (round.max(0.0).ceil() as u32).clamp(1, self.rounds().max(1) as u32)
    }

    /// The place on the cloth in space, mm, and the directions there. Between two edges the
    /// cloth is straight; its normal turns evenly.
    pub fn station(&self, on: OnCloth) -> SolidStation {
        let at = self.profile(on.round);
        let (foot, out) = self.stadium(at.r, on.turn);
        let (nr, nz) = self
            .between(&self.normals, on.round, |a, b, u| (lerp(a.0, b.0, u), lerp(a.1, b.1, u)));
        let normal = unit([nr * out.0, nr * out.1, nz]);
        // Along the meridian plane, at right angles to the normal, to later rounds.
        let flat = nr.hypot(nz).max(1e-12);
        let (lr, lz) = (-nz / flat, nr / flat);
        SolidStation {
            at: [at.r.mul_add(out.0, foot), at.r * out.1, at.z],
            normal,
            later: [lr * out.0, lr * out.1, lz],
        }
    }

    /// The part of the straight line along an oval, and outwards, at `turn`.
    fn stadium(&self, r: f64, turn: f64) -> (f64, (f64, f64)) {
        let turn = turn.rem_euclid(1.0);
        if self.straight <= 0.0 {
            return (0.0, self.out(TAU * turn));
        }
        let (half, arc) = (0.5 * self.straight, PI * r);
        let all = 2.0 * (arc + self.straight);
        let run = turn * all;
        let angle = |along: f64| if r > 1e-9 { along / r } else { 0.0 };
        let (foot, angle) = if run < half {
            (run, 0.0)
        } else if run < half + arc {
            (half, angle(run - half))
        } else if run < half + arc + self.straight {
            (half - (run - half - arc), PI)
        } else if run < all - half {
            (-half, PI + angle(run - half - arc - self.straight))
        } else {
            (run - all, 0.0)
        };
        (self.hand * foot, self.out(angle))
    }

    fn out(&self, angle: f64) -> (f64, f64) {
        let (sin, cos) = angle.sin_cos();
        (self.hand * sin, cos)
    }

    /// The turn at which the cloth is passed on the way from the axis to (x, y), where its
    /// radius is `r`.
    fn turn_at(&self, x: f64, y: f64, r: f64) -> f64 {
        let x = self.hand * x;
        let half = 0.5 * self.straight;
        if half <= 0.0 {
            return (x.atan2(y) / TAU).rem_euclid(1.0);
        }
        let all = TAU * r + 4.0 * half;
        let run = if x.abs() < half {
            if y >= 0.0 { x } else { half + PI * r + (half - x) }
        } else {
            let foot = half.copysign(x);
            let angle = (x - foot).atan2(y);
            foot + r * angle
        };
        (run / all).rem_euclid(1.0)
    }

    /// Distance of (x, y) from the straight part of the axis, mm: the axis itself of a round
    /// body.
    fn off_axis(&self, x: f64, y: f64) -> f64 {
        let past = (x.abs() - 0.5 * self.straight).max(0.0);
        past.hypot(y)
    }

    /// Whether a place in own axes lies inside, open edges taken as lidded.
    pub fn contains(&self, at: V3) -> bool {
        let r = self.off_axis(at[0], at[1]);
        let mut inside = false;
        for pair in self.nodes.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            if (a.z <= at[2]) != (b.z <= at[2]) {
                let u = (at[2] - a.z) / (b.z - a.z);
                inside ^= lerp(a.r, b.r, u) > r;
            }
        }
        inside
    }

    /// Every place where the line `from + s·along` goes through the cloth, in no order. A place
    /// on the edge between two rounds may come twice.
    pub(super) fn crossings(&self, from: V3, along: V3) -> Vec<Crossing> {
        let mut found = Vec::new();
        let half = 0.5 * self.straight;
        for (k, pair) in self.nodes.windows(2).enumerate() {
            let band = SolidBand { k, a: pair[0], b: pair[1] };
            if half <= 0.0 {
                band.cone(from, along, 0.0, |_| true, &mut found);
            } else {
                band.cone(from, along, half, |x| x >= half, &mut found);
                band.cone(from, along, -half, |x| x <= -half, &mut found);
                band.sides(from, along, half, &mut found);
            }
        }
        let placed = |through: Through| {
            let turn = self.turn_at(through.at[0], through.at[1], through.r);
            let on = OnCloth { round: through.round, turn };
            Crossing { s: through.s, leaving: through.leaving, on }
        };
        found.into_iter().map(placed).collect()
    }

    /// The place of the cloth that is seen along the line through `from`, mm, by an eye that
    /// lies `towards` there; none where the line passes it.
    pub fn seen(&self, from: V3, towards: V3) -> Option<OnCloth> {
        let found = self.crossings(from, towards).into_iter();
        found.max_by(|a, b| a.s.total_cmp(&b.s)).map(|nearest| nearest.on)
    }

    /// The nearest place of the cloth to `at` among the bands beside `round`.
    pub(super) fn nearest(&self, at: V3, round: f64) -> OnCloth {
        let r = self.off_axis(at[0], at[1]);
        let last = self.nodes.len() - 2;
        let middle = (round.max(0.0) as usize).min(last);
        let mut best = (f64::INFINITY, round);
        for k in middle.saturating_sub(1)..=(middle + 1).min(last) {
            let (a, b) = (self.nodes[k], self.nodes[k + 1]);
            let (dr, dz) = (b.r - a.r, b.z - a.z);
            let all = dr * dr + dz * dz;
            let u = if all > 0.0 { ((r - a.r) * dr + (at[2] - a.z) * dz) / all } else { 0.0 };
            let u = u.clamp(0.0, 1.0);
            let off = (lerp(a.r, b.r, u) - r).hypot(lerp(a.z, b.z, u) - at[2]);
            if off < best.0 {
                best = (off, k as f64 + u);
            }
        }
        let turn = self.turn_at(at[0], at[1], self.profile(best.1).r);
        OnCloth { round: best.1, turn }
    }

    /// The directions on the flat cloth of band `k` there: outwards, to later rounds, and
    /// later × outwards.
    pub(super) fn flat(&self, k: usize, on: OnCloth) -> (V3, V3, V3) {
        let (a, b) = (self.nodes[k], self.nodes[k + 1]);
        let long = a.distance(b).max(1e-12);
        let (lr, lz) = ((b.r - a.r) / long, (b.z - a.z) / long);
        let (_, out) = self.stadium(self.profile(on.round).r, on.turn);
        let normal = [lz * out.0, lz * out.1, -lr];
        let later = [lr * out.0, lr * out.1, lz];
        (normal, later, cross(later, normal))
    }
}

/// Normals at the nodes, half-way between those of the bands beside; along the axis at a pole.
fn normals(nodes: &[Rz]) -> Vec<(f64, f64)> {
    let step = |k: usize| {
        let (a, b) = (nodes[k], nodes[k + 1]);
        let long = a.distance(b);
        if long > 1e-9 { ((b.z - a.z) / long, -(b.r - a.r) / long) } else { (0.0, 0.0) }
    };
    let last = nodes.len() - 1;
    (0..=last)
        .map(|k| {
            let before = step(k.saturating_sub(1).min(last - 1));
            let after = step(k.min(last - 1));
            if nodes[k].r < 1e-9 {
                let along = if k == 0 { -1.0 } else { 1.0 };
                return (0.0, along);
            }
            let (r, z) = (before.0 + after.0, before.1 + after.1);
            let long = r.hypot(z);
            // Folded right back: either side's will do.
            if long > 1e-6 { (r / long, z / long) } else { after }
        })
        .collect()
}
