//! One chart: rings laid out, then drawn from the ground up.

use std::f32::consts::TAU;

use super::parts::{
    Chart, ChartLook, LEAST_SCALE, MOST_RADIUS, PAGE_MM, SLOT_MM, Shown, Symbol,
};
use super::rings::{Ring, RingsPart};
use super::symbols::{self, HEIGHT, INK, STROKE};
use super::track::{Track, TrackPlace};
use crate::picture::Rgb;
use crate::picture::colour::mixed;
use crate::picture::drawing::{Drawing, Pen, width_of};
use crate::piece::cloth::Kind;
use crate::plan::Plan;
use crate::plan::counts::Start;
use crate::plan::placement::Stitch;

/// From one ring to the next, mm.
const PITCH: f32 = 3.2;
/// What a ring of tall stitches takes more.
const TALL: f32 = 0.5;
/// Height of a round's number, mm.
const NUMBER: f32 = 2.1;
/// Room on either side of a number, mm.
const BESIDE: f32 = 0.7;
/// Stitches beyond which a round is easier read as one repeat of it.
const MOST_WHOLE: u32 = 200;
/// Lines between the rings, and how much of a yarn is mixed into the paper.
const FAINT: Rgb = [214, 206, 190];
const TINT: f32 = 0.24;
/// The same under a stitch that is painted on its round: it has to stand out from that.
const PAINTED: f32 = 0.6;
const SOFT: Rgb = [101, 91, 79];

/// Most arcs that a round is split into: more would be no picture of it.
const MOST_ARCS: u32 = 8;

/// The chart of `part`: whole, as one of its repeats, or split into arcs, in order; none where
/// no part of it could be read on a page.
pub(super) fn charts(
    part: &RingsPart<'_>,
    plan: &Plan,
    look: &ChartLook<'_>,
    left_handed: bool,
) -> Vec<Chart> {
    let most = part.rings.iter().map(|r| r.count).max().unwrap_or(0);
    let is_oval = part.rings.iter().any(|ring| ring.side.is_some());
    let common = if is_oval { 1 } else { part.common_repeats() };
    let shown = match common {
        n if n >= 2 && most > MOST_WHOLE => Shown::OneOf(n),
        _ => Shown::Whole,
    };
    let drawn = |shown| chart(part, plan, look, left_handed, shown);
    if let Some(whole) = drawn(shown) {
        return vec![whole];
    }
    // The straight sides of an oval make no wedge.
    let arcs = |of| (0..of).map(|nth| drawn(Shown::Arc { nth, of })).collect();
    let split = (2..=MOST_ARCS).filter(|_| !is_oval).find_map(arcs);
    split.unwrap_or_default()
}

/// One chart of `part`; `None` where it could not be read on a page.
fn chart(
    part: &RingsPart<'_>,
    plan: &Plan,
    look: &ChartLook<'_>,
    left_handed: bool,
    shown: Shown,
) -> Option<Chart> {
    let (first, last) = (part.rings.first()?, part.rings.last()?);
    let tracks = tracks(part, look, plan.start);
    let outermost = tracks.iter().map(|t| t.radius + 0.5 * t.straight).fold(0.0, f32::max);
    // What is wider than this by far need not be drawn to know that it does not fit.
    let drawable = match shown {
        Shown::Whole => outermost <= MOST_RADIUS,
        Shown::OneOf(n) => n >= 3 && outermost <= 2.0 * MOST_RADIUS,
        Shown::Arc { .. } => outermost <= 2.0 * MOST_RADIUS,
    };
    if !drawable {
        return None;
    }
    let mut sketch = Sketch {
        part,
        look,
        tracks,
        shown,
        // Counter-clockwise at the start of a right-hander; each of the two turns it round.
        mirrored: part.inward == left_handed,
        begins: first.begins,
        drawing: Drawing::default(),
        symbols: Vec::new(),
    };
    sketch.ground();
    sketch.start(plan.start);
    sketch.seam();
    for i in 0..part.rings.len() {
        sketch.round(i);
    }
    sketch.numbers();
    sketch.arrow();
    let chart = Chart {
        first: first.first,
        last: last.last,
        inward: part.inward,
        clockwise: !sketch.mirrored,
        shown,
        symbols: sketch.symbols,
        drawing: sketch.drawing,
        title: String::new(),
        caption: String::new(),
    };
    // Only the drawing knows its width: a wedge leans with the spiral, and numbers stand
    // beside it.
    (chart.size_mm()[0] * LEAST_SCALE <= PAGE_MM).then_some(chart)
}

/// The number of a ring, and the letter of a yarn taken up there.
fn label(part: &RingsPart<'_>, ring: &Ring, look: &ChartLook<'_>) -> String {
    let first = part.rings.first().is_some_and(|r| r.first == ring.first);
    let begins = part.several_yarns && (first || ring.yarn_begins);
    let number = match ring.first == ring.last {
        true => ring.first.to_string(),
        false => format!("{}–{}", ring.first, ring.last),
    };
    match look.yarns.get(ring.yarn) {
        Some((letter, _)) if begins => format!("{letter} {number}"),
        _ => number,
    }
}

fn label_width(part: &RingsPart<'_>, ring: &Ring, look: &ChartLook<'_>) -> f32 {
    width_of(&label(part, ring, look), NUMBER) + 2.0 * BESIDE
}

/// Height of a ring's band.
fn pitch(ring: &Ring) -> f32 {
    let tall = if ring.kind == Kind::Single { 0.0 } else { TALL };
    let under = if ring.only.is_some() { 0.4 } else { 0.0 };
    PITCH + tall + under
}

/// The track of every ring, in working order: as near the middle as its stitches and the
/// rings inside it allow.
fn tracks(part: &RingsPart<'_>, look: &ChartLook<'_>, start: Start) -> Vec<Track> {
    let straight = |ring: &Ring| ring.side.map_or(0.0, |side| side as f32 * SLOT_MM);
    let mut from = match (part.inward, part.rings.first().map(|r| r.first), start) {
        (false, Some(1), Start::Chain(n)) => n as f32 * SLOT_MM / TAU + 0.5 * PITCH,
        (false, Some(1), Start::Oval(_)) => 0.4 * PITCH,
        _ => 0.5 * PITCH,
    };
    let mut place = |ring: &Ring| {
        let chain = match ring.chains {
            Some((n, false)) => n.min(1) + 1,
            Some(_) => 1,
            None => 0,
        };
        let slots = (ring.count + chain) as f32 * SLOT_MM + label_width(part, ring, look);
        let least = (slots - 2.0 * straight(ring)) / TAU;
        let radius = least.max(from + 0.5 * pitch(ring));
        from = radius + 0.5 * pitch(ring);
        let bent = match ring.side {
            Some(side) => 1.0 - (2 * side) as f32 / ring.count.max(1) as f32,
            None => 1.0,
        };
        Track { radius, straight: straight(ring), bent: bent.clamp(0.05, 1.0) }
    };
    if part.inward {
        let mut tracks: Vec<Track> = part.rings.iter().rev().map(place).collect();
        tracks.reverse();
        tracks
    } else {
        part.rings.iter().map(&mut place).collect()
    }
}

struct Sketch<'a> {
    part: &'a RingsPart<'a>,
    look: &'a ChartLook<'a>,
    tracks: Vec<Track>,
    shown: Shown,
    /// Whether paper runs the other way round than the tracks, which run clockwise.
    mirrored: bool,
    begins: f32,
    drawing: Drawing,
    symbols: Vec<Symbol>,
}

impl Sketch<'_> {
    fn on_paper(&self, at: [f32; 2]) -> [f32; 2] {
        if self.mirrored { [-at[0], at[1]] } else { at }
    }

    fn papered(&self, points: Vec<[f32; 2]>) -> Vec<[f32; 2]> {
        points.into_iter().map(|p| self.on_paper(p)).collect()
    }

    /// Where ring `i` begins: the lean of the spiral since the first ring of the chart.
    fn lean(&self, i: usize) -> f32 {
        let lean = self.part.rings[i].begins - self.begins;
        match self.shown {
            Shown::Whole => lean,
            // The repeat, or the arc, stands upright in the middle of its wedge.
            Shown::OneOf(n) | Shown::Arc { of: n, .. } => lean - 0.5 / n as f32,
        }
    }

    /// Part of a turn that the number of ring `i` takes.
    fn gap(&self, i: usize) -> f32 {
        match self.shown {
            Shown::OneOf(_) | Shown::Arc { .. } => 0.0,
            Shown::Whole => {
                let width = label_width(self.part, &self.part.rings[i], self.look);
                (width / self.tracks[i].length()).min(0.45)
            }
        }
    }

    /// The place of what stands `part` of ring `i`'s stitches on from its start.
    fn spot(&self, i: usize, part: f32) -> TrackPlace {
        let gap = self.gap(i);
        let before = match self.shown {
            Shown::Arc { nth, of } => nth as f32 / of as f32,
            Shown::Whole | Shown::OneOf(_) => 0.0,
        };
        self.tracks[i].spot(self.lean(i) + 0.5 * gap + part * (1.0 - gap) - before)
    }

    /// The middle of the number of ring `i`.
    fn seam_at(&self, i: usize) -> [f32; 2] {
        let spot = self.tracks[i].spot(self.lean(i));
        match self.shown {
            Shown::Whole => self.on_paper(spot.at),
            Shown::OneOf(_) | Shown::Arc { .. } => {
                let width = label_width(self.part, &self.part.rings[i], self.look);
                self.on_paper(spot.moved(-0.5 * width - 0.4, 0.0))
            }
        }
    }

    /// How much of the turn is drawn.
    fn shown_turn(&self) -> f32 {
        match self.shown {
            Shown::Whole => 1.0,
            Shown::OneOf(n) | Shown::Arc { of: n, .. } => 1.0 / n as f32,
        }
    }

    /// Bands in the colours of the yarns, and a faint line inside each ring.
    fn ground(&mut self) {
        let several = self.part.several_yarns;
        let band = |track: &Track, out: f32| Track { radius: track.radius + out, ..*track };
        for (i, ring) in self.part.rings.iter().enumerate() {
            let (from, half) = (self.lean(i), 0.5 * pitch(ring));
            let to = from + self.shown_turn();
            let edge = |out: f32| {
                let track = band(&self.tracks[i], out);
                self.papered(track.points(from, to))
            };
            let (inner, outer) = (edge(-half), edge(half));
            if let (true, Some((_, colour))) = (several, self.look.yarns.get(ring.yarn)) {
                let fill = mixed([255; 3], *colour, TINT);
                let mut ground = outer.clone();
                ground.extend(inner.iter().rev());
                self.drawing.area(ground, Some(fill), None);
            }
            let pen = Pen::new(FAINT, 0.14);
            self.drawing.line(inner, pen);
            self.drawing.line(outer, pen);
        }
    }

    /// What the first round is worked into, or what the last is drawn shut to.
    fn start(&mut self, start: Start) {
        let begins = !self.part.inward && self.part.rings[0].first == 1;
        match start {
            _ if self.part.inward => {
                let pen = Pen::new(FAINT, 0.2);
                self.drawing.circle([0.0; 2], 0.5, None, Some(pen));
            }
            _ if !begins => {}
            Start::Ring => symbols::ring(&mut self.drawing, [0.0; 2]),
            Start::Chain(n) => self.foundation_ring(n),
            Start::Oval(n) => {
                let left = -0.5 * (n as f32 - 1.0) * SLOT_MM;
                for i in 0..n {
                    symbols::chain(&mut self.drawing, [left + i as f32 * SLOT_MM, 0.0], 0.0);
                }
            }
        }
    }

    fn foundation_ring(&mut self, n: u32) {
        let track = Track {
            radius: (self.tracks[0].radius - 0.5 * pitch(&self.part.rings[0]) - 0.4 * HEIGHT)
                .max(1.0),
            ..self.tracks[0]
        };
        for i in 0..n {
            let turn = (i as f32 + 0.5) / n as f32;
            let at = self.on_paper(track.spot(turn).at);
            let turned = if self.mirrored { -360.0 * turn } else { 360.0 * turn };
            symbols::chain(&mut self.drawing, at, turned);
        }
        let at = self.on_paper(track.spot(0.0).at);
        symbols::slip(&mut self.drawing, at);
    }

    /// The line the marker runs along.
    fn seam(&mut self) {
        if self.part.rings.len() < 2 {
            return;
        }
        let line: Vec<[f32; 2]> = (0..self.part.rings.len())
            .map(|i| self.on_paper(self.tracks[i].spot(self.lean(i)).at))
            .collect();
        self.drawing.line(line, Pen::new(SOFT, 0.16).dashed(0.7));
    }

    fn round(&mut self, i: usize) {
        let ring = &self.part.rings[i];
        let slots = ring.count + ring.chains.map_or(0, |(_, counts)| u32::from(!counts));
        let slots_and_slip = slots + u32::from(ring.chains.is_some());
        // Which of its stitches are drawn: each stands on one arc, that on which it begins.
        let in_view = match self.shown {
            Shown::Whole => 0..ring.count,
            Shown::OneOf(n) => 0..ring.count / n,
            Shown::Arc { nth, of } => {
                (nth * ring.count).div_ceil(of)..((nth + 1) * ring.count).div_ceil(of)
            }
        };
        let is_first = in_view.start == 0;
        let half = 0.5 * pitch(ring);
        let all = slots_and_slip.max(1) as f32;
        let apart = self.tracks[i].length() * (1.0 - self.gap(i)) / all;
        // Towards the round before it: inside, but for a chart that grows inward.
        let up = if self.part.inward { -1.0 } else { 1.0 };
        let mut slot = 0_u32;
        if let Some((chains, counts)) = ring.chains {
            if is_first {
                self.turning_chain(i, chains, 0.5 / all, up);
            }
            slot = u32::from(!counts);
        }
        let before = slot;
        let stitches: Vec<Stitch> = ring.placement.stitches().collect();
        for (nth, stitch) in stitches.into_iter().enumerate() {
            let wide = stitch.produces() as f32;
            if slot - before >= in_view.end {
                break;
            }
            if slot - before < in_view.start {
                slot += stitch.produces();
                continue;
            }
            let spot = self.spot(i, (slot as f32 + 0.5 * wide) / all);
            slot += stitch.produces();
            // A chain that counts stands where this stitch would.
            if nth == 0 && matches!(ring.chains, Some((_, true))) {
                continue;
            }
            let mirrored = self.mirrored;
            let frame = move |x: f32, y: f32| {
                let [px, py] = spot.moved(x, up * y);
                [if mirrored { -px } else { px }, py]
            };
            let painted = ring.painted.get(nth).filter(|&&yarn| yarn != ring.yarn);
            if let Some((_, colour)) = painted.and_then(|&yarn| self.look.yarns.get(yarn)) {
                // The stitch's own share of its ring, so that neighbours join.
                let side = 0.5 * apart * wide;
                let corners = [[-side, -half], [side, -half], [side, half], [-side, half]];
                let fill = mixed([255; 3], *colour, PAINTED);
                self.drawing.area(corners.map(|[x, y]| frame(x, y)), Some(fill), None);
            }
            let marks = (ring.kind, self.look.single);
            symbols::draw(&mut self.drawing, &frame, stitch, marks, apart, half);
            if let Some(only) = ring.only {
                symbols::underline(&mut self.drawing, &frame, only, apart);
            }
            let at = frame(0.0, 0.0);
            self.symbols.push(Symbol { round: ring.first, stitch, at });
        }
        if ring.chains.is_some() && self.shown == Shown::Whole {
            let spot = self.spot(i, (all - 0.5) / all);
            let at = self.on_paper(spot.moved(0.0, 0.0));
            symbols::slip(&mut self.drawing, at);
        }
    }

    /// The chains that begin a joined round, one over the other.
    fn turning_chain(&mut self, i: usize, chains: u32, part: f32, up: f32) {
        let spot = self.spot(i, part);
        let room = pitch(&self.part.rings[i]) / chains.max(1) as f32;
        for n in 0..chains {
            let y = (n as f32 + 0.5) * room - 0.5 * pitch(&self.part.rings[i]);
            let at = self.on_paper(spot.moved(0.0, up * y));
            // Upright on the round: a quarter turn from its way out.
            let out = self.on_paper(spot.out);
            let turn = out[1].atan2(out[0]).to_degrees();
            let (middle, pen) = (at, Some(Pen::new(INK, STROKE)));
            let radii = [(0.42 * room).min(0.52 * HEIGHT), 0.24 * HEIGHT];
            let oval = crate::picture::drawing::Shape::Oval {
                middle,
                radii,
                turn_deg: turn,
                fill: None,
                pen,
            };
            self.drawing.shapes.push(oval);
        }
    }

    fn numbers(&mut self) {
        for (i, ring) in self.part.rings.iter().enumerate() {
            let at = self.seam_at(i);
            let text = label(self.part, ring, self.look);
            let (w, h) = (0.5 * width_of(&text, NUMBER) + 0.2, 0.5 * NUMBER + 0.25);
            let [x, y] = at;
            let plaque = [[x - w, y - h], [x + w, y - h], [x + w, y + h], [x - w, y + h]];
            self.drawing.area(plaque, Some([255; 3]), None);
            self.drawing.words(text, at, NUMBER, INK, true);
        }
    }

    /// The way the rounds run, outside the outermost ring.
    fn arrow(&mut self) {
        let outermost =
            |a: &usize, b: &usize| self.tracks[*a].radius.total_cmp(&self.tracks[*b].radius);
        let Some(i) = (0..self.tracks.len()).max_by(outermost) else { return };
        let out = 0.5 * pitch(&self.part.rings[i]) + 1.9;
        let track = Track { radius: self.tracks[i].radius + out, ..self.tracks[i] };
        let length = (14.0 / track.length()).min(0.22).min(0.8 * self.shown_turn());
        let from = self.lean(i) + (2.0 / track.length()).min(0.1 * self.shown_turn());
        let to = from + length;
        let head = track.spot(to);
        let line = self.papered(track.points(from, to));
        self.drawing.line(line, Pen::new(INK, 0.32));
        let barb = [head.moved(0.9, 0.0), head.moved(-1.3, 0.85), head.moved(-1.3, -0.85)];
        let barb: Vec<[f32; 2]> = barb.into_iter().map(|p| self.on_paper(p)).collect();
        self.drawing.area(barb, Some(INK), None);
    }
}
