//! The cloth: where the stitches of every round lie on the surface, and which of them a place
//! of it belongs to.
//!
//! A place of the surface is named by how far along the profile it lies, in rounds from the
//! start, and by the part of a full turn around it. In a spiral a round ends one round higher
//! than it began, and a little farther round: rounds lean.

use std::hash::{Hash, Hasher};

use super::look::TileShape;
use super::space::{mix, whole};
use crate::piece::cloth::{Kind, Loop, Working};
use crate::piece::{Piece, YarnFace};
use crate::plan::colours::stitch_yarns;
use crate::plan::placement::Stitch;
use crate::plan::{Plan, Round};

/// How much of a shift a stitch passes on to the one above: between shaping, columns lean
/// gradually rather than jump. By eye, no source.
const STIFF: f32 = 0.62;
/// How often stitches of a round give way to their neighbours.
const RELAXED: usize = 5;
/// How much of its foot's own place a stitch keeps where it shares a stitch below, or takes
/// two: the yarn of its foot needs room beside the others.
const ROOTED: f32 = 0.55;

/// One round.
#[derive(Debug, Clone)]
struct FabricCourse {
    /// Where its seams begin in [`Fabric::seams`], and its stitches in [`Fabric::shapes`].
    seams: u32,
    shapes: u32,
    /// Stitches in it.
    count: u32,
    yarn: usize,
    /// The yarn of each stitch, where it is worked in several.
    painted: Vec<usize>,
    /// Whether the front loops of its stitches were left free by the round above.
    ridge: bool,
}

/// A stitch at a place of the cloth.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cell {
    /// Its round, counted from 0; one more than the last for loops drawn shut.
    pub(super) round: u32,
    /// Its number in the round, counted from 0.
    pub(super) stitch: u32,
    pub(super) shape: TileShape,
    pub(super) face: YarnFace,
    /// Where in the stitch the place is: across from −½ to ½ in working order, and up from 0
    /// to 1; beyond where a neighbour reaches over.
    pub(super) a: f32,
    pub(super) b: f32,
    /// How these change with a turn around, and with a round along.
    pub(super) per_turn: [f32; 2],
    pub(super) per_round: [f32; 2],
    /// How wide the stitch is there, in turns.
    pub(super) width: f32,
}

/// Where a place lies in the courses, before it is told which stitch it is in.
#[derive(Debug, Clone, Copy)]
pub(super) struct FabricSpot {
    along: f32,
    /// Turns from where the round begins, and the turn counted on from the first round's.
    on: f32,
    turn: f32,
    /// The round, from 0.
    round: u32,
}

/// All rounds.
#[derive(Debug, Clone)]
pub(super) struct Fabric {
    courses: Vec<FabricCourse>,
    /// Left edges of stitches and the end of the last one, round by round: turns at the lower
    /// and at the upper edge of the round.
    seams: Vec<[f32; 2]>,
    shapes: Vec<TileShape>,
    /// Where every edge of a round begins, turns; one more than the edges.
    begins: Vec<f32>,
    /// Faces of the yarns, by their numbers; what has none is smooth.
    faces: Vec<YarnFace>,
    rounds: u32,
    climbs: bool,
    /// Whether a disc of drawn loops follows the last round.
    drawn: bool,
}

impl Hash for Fabric {
    fn hash<H: Hasher>(&self, state: &mut H) {
        for numbers in &self.seams {
            numbers.map(f32::to_bits).hash(state);
        }
        for number in &self.begins {
            number.to_bits().hash(state);
        }
        self.shapes.hash(state);
        self.faces.hash(state);
        (self.rounds, self.climbs, self.drawn).hash(state);
        for course in &self.courses {
            (course.count, course.yarn, &course.painted, course.ridge).hash(state);
        }
    }
}

impl FabricCourse {
    /// The yarn of a stitch, from 0.
    fn yarn_of(&self, stitch: u32) -> usize {
        self.painted.get(stitch as usize).copied().unwrap_or(self.yarn)
    }
}

/// The yarn of each stitch of a round in several; nothing of one in its own.
fn painted(round: &Round) -> Vec<usize> {
    if round.colours.is_empty() {
        return Vec::new();
    }
    stitch_yarns(&round.placement, &round.colours, round.yarn).collect()
}

impl Fabric {
    pub(super) fn new(piece: &Piece, plan: &Plan) -> Self {
        let rounds = plan.rounds.len() as u32;
        let climbs = piece.working == Working::Spiral && plan.depth_mm.is_none();
        let drift = if plan.depth_mm.is_none() { piece.drift() as f32 } else { 0.0 };
        let on_chain = plan.start.joined().is_some();
        let taken: Vec<u32> =
            plan.rounds.iter().map(|r| r.placement.consumed().max(1)).collect();
        let mut begins = vec![0.0_f32];
        for (k, &below) in taken.iter().enumerate() {
            let lean = if k > 0 || on_chain { drift / below as f32 } else { 0.0 };
            begins.push(begins[k] + lean);
        }
        let last = plan.rounds.last().map_or(1, |r| r.count.max(1));
        begins.push(begins[rounds as usize] + drift / last as f32);
        let mut fabric = Self {
            courses: Vec::with_capacity(plan.rounds.len() + 1),
            seams: Vec::new(),
            shapes: Vec::new(),
            begins,
            faces: Vec::new(),
            rounds,
            climbs,
            drawn: plan.forecast.len() > plan.rounds.len() + 1,
        };
        let mut lower = fabric.even(0, taken.first().copied().unwrap_or(1));
        for (k, round) in plan.rounds.iter().enumerate() {
            let number = k as u32 + 1;
            let upper = fabric.stand(k, round.count, &lower, round.placement.stitches());
            let seams = fabric.seams.len() as u32;
            let shapes = fabric.shapes.len() as u32;
            let even = fabric.even(k, round.count);
            fabric.put(round.kind, (&lower, &even), &upper, round.placement.stitches());
            fabric.courses.push(FabricCourse {
                seams,
                shapes,
                count: fabric.shapes.len() as u32 - shapes,
                yarn: round.yarn,
                painted: painted(round),
                ridge: piece.loops.get(&(number + 1)) == Some(&Loop::Back) && number < rounds,
            });
            lower = upper;
        }
        if fabric.drawn {
            fabric.draw_shut(&lower);
        }
        fabric
    }

    /// `count` stitches of one width along edge `edge`.
    fn even(&self, edge: usize, count: u32) -> Vec<f32> {
        let long = self.length(edge);
        (0..=count).map(|i| self.begins[edge] + long * i as f32 / count as f32).collect()
    }

    /// Turns that edge `edge` runs on for: a spiral's go on to where the next one begins.
    fn length(&self, edge: usize) -> f32 {
        let goes_on = self.climbs && edge < self.rounds as usize;
        1.0 + if goes_on { self.begins[edge + 1] - self.begins[edge] } else { 0.0 }
    }

    /// Where the stitches of round `k` (from 0) part at its upper edge: partly straight above
    /// what they are worked into, partly evenly around, as stuffing pulls them.
    fn stand(
        &self,
        k: usize,
        count: u32,
        lower: &[f32],
        worked: impl Iterator<Item = Stitch>,
    ) -> Vec<f32> {
        let mut seams = self.even(k + 1, count);
        let begun = self.begins[k + 1] - lower[0];
        let ended = seams[seams.len() - 1] - lower[lower.len() - 1];
        let (mut below, mut above) = (0, 0);
        for stitch in worked {
            let many = stitch.produces();
            for i in 1..=many {
                let part = below as f32 + (stitch.consumes() * i) as f32 / many as f32;
                let lean = mix(begun, ended, part / (lower.len() - 1).max(1) as f32);
                let straight = between(lower, part) + lean;
                if let Some(seam) = seams.get_mut(above + i as usize) {
                    *seam = mix(*seam, straight, STIFF);
                }
            }
            below += stitch.consumes() as usize;
            above += many as usize;
        }
        self.relax(k + 1, &mut seams);
        seams
    }

    /// Neighbours give way to one another: what one stitch is wider than its even share is
    /// spread over those beside it.
    fn relax(&self, edge: usize, seams: &mut [f32]) {
        let even = self.even(edge, seams.len() as u32 - 1);
        let count = seams.len() - 1;
        let mut off: Vec<f32> = seams.iter().zip(&even).map(|(s, e)| s - e).collect();
        for _ in 0..RELAXED {
            let was = off.clone();
            for i in 0..count {
                let before = was[if i == 0 { count - 1 } else { i - 1 }];
                off[i] = 0.5 * was[i] + 0.25 * (before + was[i + 1]);
            }
            off[count] = off[0];
        }
        // The round begins where it begins.
        let begin = off[0];
        for ((seam, even), off) in seams.iter_mut().zip(&even).zip(&off) {
            *seam = even + off - begin;
        }
    }

    /// The stitches of a round between the seams of its edges.
    fn put(
        &mut self,
        kind: Kind,
        (lower, even): (&[f32], &[f32]),
        upper: &[f32],
        worked: impl Iterator<Item = Stitch>,
    ) {
        let (mut below, mut above) = (0.0_f32, 0_usize);
        self.seams.push([lower[0], upper[0]]);
        for stitch in worked {
            for i in 1..=stitch.produces() {
                let part = (stitch.consumes() * i) as f32 / stitch.produces() as f32;
                above += 1;
                let above = above.min(upper.len() - 1);
                let low = mix(even[above], between(lower, below + part), ROOTED);
                self.seams.push([low, upper[above]]);
                self.shapes.push(TileShape::of(kind, stitch, i));
            }
            below += stitch.consumes() as f32;
        }
    }

    /// The last loops, gathered round the pole.
    fn draw_shut(&mut self, lower: &[f32]) {
        let seams = self.seams.len() as u32;
        let shapes = self.shapes.len() as u32;
        let count = lower.len() as u32 - 1;
        self.seams.extend(lower.iter().map(|&turn| [turn, turn]));
        self.shapes.extend((0..count).map(|_| TileShape::DRAWN));
        let yarn = self.courses.last().map_or(0, |c| c.yarn);
        self.courses.push(FabricCourse {
            seams,
            shapes,
            count,
            yarn,
            painted: Vec::new(),
            ridge: false,
        });
    }

    /// Rounds, without the loops drawn shut.
    pub(super) fn rounds(&self) -> u32 {
        self.rounds
    }

    /// How far along the profile there are stitches, in rounds, with the loops drawn shut.
    pub(super) fn reach(&self) -> f32 {
        self.courses.len() as f32
    }

    /// Yarn of a stitch, both counted from 0.
    pub(super) fn yarn(&self, round: u32, stitch: u32) -> usize {
        self.courses.get(round as usize).map_or(0, |c| c.yarn_of(stitch))
    }

    /// The same fabric of yarns of these faces.
    pub(super) fn of_faces(self, faces: &[YarnFace]) -> Self {
        Self { faces: faces.to_vec(), ..self }
    }

    /// How far fibres stand off any of its yarns, in stitch widths. By eye, no source.
    pub(super) fn halo(&self) -> f32 {
        let far = |face: &YarnFace| match face {
            YarnFace::Smooth => 0.0,
            YarnFace::Wool => 0.22,
            YarnFace::Chenille => 0.10,
        };
        self.faces.iter().map(far).fold(0.0, f32::max)
    }

    /// The face of a yarn.
    pub(super) fn face(&self, yarn: usize) -> YarnFace {
        self.faces.get(yarn).copied().unwrap_or_default()
    }

    /// Whether the front loops of a round, from 0, lie free on it.
    pub(super) fn has_ridge(&self, round: u32) -> bool {
        self.courses.get(round as usize).is_some_and(|c| c.ridge)
    }

    /// Whether an edge climbs: the first and the last are the piece's own, and level.
    fn tilts(&self, edge: u32) -> bool {
        self.climbs && edge > 0 && edge < self.rounds
    }

    /// Where the place `along` rounds from the start and `turn` around lies.
    pub(super) fn spot(&self, along: f32, turn: f32) -> FabricSpot {
        let shifted = if self.climbs { along + 0.5 } else { along };
        let begins = between(&self.begins, shifted.clamp(0.0, (self.begins.len() - 1) as f32));
        let on = turn - begins;
        let on = on - whole(on);
        let level = if self.climbs { along - on + 0.5 } else { along };
        let round = if along >= self.rounds as f32 {
            self.courses.len() as u32 - 1
        } else {
            (level.max(0.0) as u32).min(self.rounds - 1)
        };
        FabricSpot { along, on, turn: begins + on, round }
    }

    /// How far along the profile, in rounds, and how far around, in turns, the place is that
    /// lies `up` of the height of a round (from 0) and `on` turns from where that begins.
    pub(super) fn place(&self, round: u32, up: f32, on: f32) -> (f32, f32) {
        let edge = |e: u32| e as f32 + if self.tilts(e) { on - 0.5 } else { 0.0 };
        let along = mix(edge(round), edge(round + 1), up);
        let shifted = if self.climbs { along + 0.5 } else { along };
        let begins = between(&self.begins, shifted.clamp(0.0, (self.begins.len() - 1) as f32));
        (along, begins + on)
    }

    /// The round above a spot's, or below it.
    pub(super) fn beside(&self, spot: FabricSpot, above: bool) -> Option<FabricSpot> {
        let round = if above { spot.round + 1 } else { spot.round.checked_sub(1)? };
        ((round as usize) < self.courses.len()).then_some(FabricSpot { round, ..spot })
    }

    /// How far up its round a spot lies, 0 to 1, and the rounds that one of it is high.
    pub(super) fn up(&self, spot: FabricSpot) -> (f32, f32) {
        let edge = |e: u32| e as f32 + if self.tilts(e) { spot.on - 0.5 } else { 0.0 };
        let (low, high) = (edge(spot.round), edge(spot.round + 1));
        let tall = (high - low).max(0.05);
        ((spot.along - low) / tall, tall)
    }

    /// The stitch at a spot.
    pub(super) fn cell(&self, spot: FabricSpot) -> Cell {
        let course = &self.courses[spot.round as usize];
        let (b, tall) = self.up(spot);
        let seams = &self.seams[course.seams as usize..][..course.count as usize + 1];
        let inside = b.clamp(0.0, 1.0);
        let at = |i: usize| mix(seams[i][0], seams[i][1], inside);
        let last = course.count as usize - 1;
        let (begin, end) = (at(0), at(last + 1));
        let guess = (spot.turn - begin) / (end - begin).max(1e-6) * course.count as f32;
        let mut i = (guess.max(0.0) as usize).min(last);
        while i > 0 && spot.turn < at(i) {
            i -= 1;
        }
        while i < last && spot.turn >= at(i + 1) {
            i += 1;
        }
        let (left, right) = (at(i), at(i + 1));
        let width = (right - left).max(1e-6);
        let part = ((spot.turn - left) / width).clamp(0.0, 1.0);
        // Seams lean, and a spiral's edges climb.
        let lean = mix(seams[i][1] - seams[i][0], seams[i + 1][1] - seams[i + 1][0], part);
        let climb = |edge: u32| if self.tilts(edge) { 1.0 } else { 0.0 };
        let b_turn = -mix(climb(spot.round), climb(spot.round + 1), inside) / tall;
        let b_round = 1.0 / tall;
        Cell {
            round: spot.round,
            stitch: i as u32,
            shape: self.shapes[course.shapes as usize + i],
            face: self.face(course.yarn_of(i as u32)),
            a: part - 0.5,
            b,
            per_turn: [(1.0 - lean * b_turn) / width, b_turn],
            per_round: [-lean * b_round / width, b_round],
            width,
        }
    }
}

/// The value `at` steps into a row.
fn between(row: &[f32], at: f32) -> f32 {
    if row.len() < 2 {
        return row.first().copied().unwrap_or(0.0);
    }
    let i = (at.max(0.0) as usize).min(row.len() - 2);
    mix(row[i], row[i + 1], at - i as f32)
}
