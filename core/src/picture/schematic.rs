//! The schematic: the finished piece from the side with its measures, in one ink, for those
//! who check their work against it.

use super::Rgb;
use super::Writing;
use super::chart::rounds_named;
use super::colour::mixed;
use super::drawing::{Drawing, Pen, Shape, width_of};
use crate::extent::Extent;
use crate::piece::outline::Rz;
use crate::plan::Plan;
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

const INK: Rgb = [38, 36, 33];
const SOFT: Rgb = [101, 91, 79];
/// What of a yarn's colour is mixed into the paper.
const TINT: f32 = 0.28;
/// Height of type, mm.
const TYPE: f32 = 2.7;
/// From the body to the first line of measures, mm.
const ASIDE: f32 = 5.0;

/// The schematic of `plan` with its body no larger than `room`, mm. `yarns` holds letter and
/// colour of every yarn; `length` words a length in mm.
pub fn schematic(
    plan: &Plan,
    yarns: &[(String, Rgb)],
    room: [f32; 2],
    length: impl Fn(f64) -> String,
    writer: &Writer<'_>,
) -> Drawing {
    let Extent { height: tall, width: wide } = plan.size_mm;
    let scale = (room[0] / wide.max(1e-3) as f32).min(room[1] / tall.max(1e-3) as f32);
    let straight = plan.depth_mm.map_or(0.0, |depth| wide - depth);
    let ends = plan
        .forecast
        .iter()
        .map(|n| n.z)
        .fold((f64::MAX, f64::MIN), |(low, high), z| (low.min(z), high.max(z)));
    let sheet = Schematic {
        plan,
        writer,
        scale,
        straight,
        top: ends.0,
        half: 0.5 * wide as f32 * scale,
        height: (ends.1 - ends.0) as f32 * scale,
        drawing: Drawing::default(),
    };
    sheet.drawn(yarns, length)
}

struct Schematic<'a> {
    plan: &'a Plan,
    writer: &'a Writer<'a>,
    scale: f32,
    straight: f64,
    top: f64,
    /// Half the width and the height of the body, mm on paper.
    half: f32,
    height: f32,
    drawing: Drawing,
}

impl Schematic<'_> {
    fn drawn(mut self, yarns: &[(String, Rgb)], length: impl Fn(f64) -> String) -> Drawing {
        self.body(yarns);
        let Extent { height: tall, width: wide } = self.plan.size_mm;
        let left = -self.half - ASIDE;
        self.measure([left, 0.0], [left, self.height], &length(tall));
        let (plan, straight) = (self.plan, self.straight);
        let nodes = &plan.forecast;
        let across = |node: &Rz| length(2.0 * node.r + straight);
        let open = |node: Option<&Rz>| node.filter(|n| n.r > 0.5).copied();
        let start = open(nodes.first()).filter(|_| self.straight == 0.0);
        // Above: an open start, then the greatest width. Below: an open end.
        let mut above = -ASIDE;
        if let Some(node) = start {
            let text = across(&node);
            self.level(self.x(node.r), self.y(node.z), above, &text);
            above -= 2.0 * TYPE;
        }
        let widest = nodes.iter().max_by(|a, b| a.r.total_cmp(&b.r)).map_or(0.0, |n| n.z);
        if start.is_none_or(|node| node.r + 0.5 < 0.5 * (wide - self.straight)) {
            self.level(self.half, self.y(widest), above, &length(wide));
        }
        let mut below = self.height + ASIDE;
        if let Some(node) = open(nodes.last()) {
            let text = across(&node);
            self.level(self.x(node.r), self.y(node.z), below, &text);
            below += 1.8 * TYPE;
        }
        self.neck(&length);
        if let Some(deep) = self.plan.depth_mm {
            let deep = length(deep);
            let text = self.writer.say_of("size_deep", &[("deep", Words(&deep))]);
            self.drawing.words(text, [0.0, below - 0.2 * TYPE], TYPE, INK, false);
        }
        self.drawing
    }

    /// A level measure of half width `x` at height `y` of the body, drawn at height `at`.
    fn level(&mut self, x: f32, y: f32, at: f32, text: &str) {
        self.extension(-x, y, at);
        self.extension(x, y, at);
        self.measure([-x, at], [x, at], text);
    }

    fn x(&self, r: f64) -> f32 {
        (r + 0.5 * self.straight) as f32 * self.scale
    }

    fn y(&self, z: f64) -> f32 {
        (z - self.top) as f32 * self.scale
    }

    fn body(&mut self, yarns: &[(String, Rgb)]) {
        let nodes = &self.plan.forecast;
        let several = self.plan.rounds.iter().any(|r| r.yarn != self.plan.rounds[0].yarn);
        let mut from = 0;
        while from < self.plan.rounds.len() {
            let yarn = self.plan.rounds[from].yarn;
            let band = self.plan.rounds[from..].iter().take_while(|r| r.yarn == yarn).count();
            let to = from + band;
            let side =
                |sign: f32| nodes[from..=to].iter().map(move |n| (n, sign)).collect::<Vec<_>>();
            let right = side(1.0);
            let left = side(-1.0).into_iter().rev();
            let outline: Vec<[f32; 2]> = right
                .into_iter()
                .chain(left)
                .map(|(n, sign)| [sign * self.x(n.r), self.y(n.z)])
                .collect();
            let named = yarns.get(yarn);
            let colour = named.map_or([128; 3], |(_, colour)| *colour);
            let fill = mixed([255; 3], colour, TINT);
            self.drawing.area(outline, Some(fill), Some(Pen::new(SOFT, 0.14)));
            if let (true, Some((letter, _))) = (several, named) {
                self.letter(letter, from, to);
            }
            from = to;
        }
        let edge = |sign: f32| -> Vec<[f32; 2]> {
            nodes.iter().map(|n| [sign * self.x(n.r), self.y(n.z)]).collect()
        };
        for side in [edge(1.0), edge(-1.0)] {
            self.drawing.line(side, Pen::new(INK, 0.4));
        }
    }

    /// The letter of a yarn beside its band, outside on the right.
    fn letter(&mut self, letter: &str, from: usize, to: usize) {
        let (a, b) = (&self.plan.forecast[from], &self.plan.forecast[to]);
        let (y0, y1) = (self.y(a.z), self.y(b.z));
        let x = self.half + ASIDE;
        let y = 0.5 * (y0 + y1);
        let (low, high) = (y0.min(y1) + 0.5, y0.max(y1) - 0.5);
        let reach = 0.75 * TYPE;
        // A narrow band leaves no room for its letter; the rounds tell its yarn.
        if high - low < 0.6 * TYPE {
            return;
        }
        if high - low > 2.0 * reach {
            let pen = Pen::new(SOFT, 0.18);
            self.drawing.line([[x, low], [x, y - reach]], pen);
            self.drawing.line([[x, y + reach], [x, high]], pen);
        }
        self.drawing.words(letter, [x, y], TYPE, INK, true);
        let rounds = rounds_named(from as u32 + 1, to as u32, self.writer);
        self.drawing.words_from(rounds, [x + 0.8 * TYPE, y], 0.85 * TYPE, SOFT, false);
    }

    /// The narrowest place between two wider ones, where it is a good deal narrower.
    fn neck(&mut self, length: &impl Fn(f64) -> String) {
        let plan = self.plan;
        let nodes = &plan.forecast;
        let widest = |part: &[Rz]| part.iter().map(|n| n.r).fold(0.0, f64::max);
        let neck = (1..nodes.len().saturating_sub(1))
            .filter(|&i| {
                let sides = widest(&nodes[..i]).min(widest(&nodes[i + 1..]));
                nodes[i].r < 0.85 * sides
            })
            .min_by(|&a, &b| nodes[a].r.total_cmp(&nodes[b].r));
        let Some(i) = neck else { return };
        let (r, y) = (self.x(nodes[i].r), self.y(nodes[i].z));
        let text = length(2.0 * nodes[i].r + self.straight);
        self.drawing.line([[-r, y], [r, y]], Pen::new(INK, 0.2));
        self.ticks([-r, y], [r, y]);
        // Beside the neck there is room that the body leaves: where it leaves most.
        let reach = 1.25 * TYPE;
        let body_at = |at: f32| {
            let beside = nodes.iter().filter(|n| (self.y(n.z) - at).abs() < reach + 0.6);
            beside.map(|n| self.x(n.r)).fold(r, f32::max)
        };
        let aside = [0.0, 1.3, -1.3, 2.4, -2.4].map(|by| y + by * TYPE);
        let best = aside.into_iter().min_by(|a, b| body_at(*a).total_cmp(&body_at(*b)));
        let at = best.unwrap_or(y);
        let left = body_at(at) + 1.2;
        for (n, line) in text.split(" / ").enumerate() {
            let down = if n == 0 { -0.6 * TYPE } else { 0.6 * TYPE };
            self.drawing.words_from(line, [left, at + down], TYPE, INK, false);
        }
    }

    fn extension(&mut self, x: f32, from: f32, to: f32) {
        let gap = 0.8_f32.copysign(to - from);
        let line = [[x, from + gap], [x, to + gap]];
        self.drawing.line(line, Pen::new(SOFT, 0.14));
    }

    /// A measure from `a` to `b`, upright or level, with slanted ticks.
    fn measure(&mut self, a: [f32; 2], b: [f32; 2], text: &str) {
        let pen = Pen::new(INK, 0.2);
        let upright = a[0] == b[0];
        let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
        let half = 0.5 * width_of(text, TYPE) + 0.8;
        let stop = |by: f32| match upright {
            true => [middle[0], middle[1] + by],
            false => [middle[0] + by, middle[1]],
        };
        let fits = (b[0] - a[0]).hypot(b[1] - a[1]) > 2.0 * half + 2.0;
        let at = if fits {
            self.drawing.line([a, stop(-half)], pen);
            self.drawing.line([stop(half), b], pen);
            middle
        } else {
            self.drawing.line([a, b], pen);
            match upright {
                true => [middle[0] - TYPE, middle[1]],
                false => [b[0] + half + 0.6, middle[1]],
            }
        };
        self.ticks(a, b);
        let writing = Writing { text: text.into(), at, height: TYPE, colour: INK, upright };
        self.drawing.shapes.push(Shape::Words { writing, bold: false, from_start: false });
    }

    fn ticks(&mut self, a: [f32; 2], b: [f32; 2]) {
        let tick = 0.9;
        for [x, y] in [a, b] {
            let line = [[x - tick, y + tick], [x + tick, y - tick]];
            self.drawing.line(line, Pen::new(INK, 0.32));
        }
    }
}
