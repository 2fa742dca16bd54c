//! What a trace is judged by.

use plumpline_core::Unit;

use crate::halves::OddKind;
use crate::line::fine;

/// A part that no turned shape has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OddPart {
    /// What it is.
    pub kind: OddKind,
    /// From where to where along the axis, mm from the upper end of the whole thing.
    pub along_mm: (f64, f64),
    /// How far it stands out, mm.
    pub out_mm: f64,
    /// Where it is in the picture: upper left and lower right corner, pixels.
    pub frame: [(f64, f64); 2],
}

impl OddPart {
    /// What it is, where, and how far it stands out, in words; lengths in `unit`.
    pub fn text(&self, unit: Unit) -> String {
        let what = match self.kind {
            OddKind::Left => "a part on the left stands out by",
            OddKind::Right => "a part on the right stands out by",
            OddKind::Pair => "parts on both sides, off the body, stand out by",
            OddKind::Fork => "an end that parts in two is as long as",
        };
        let ((from, to), out) = (self.along_mm, unit.text(self.out_mm));
        let (from, to) = (unit.rough_number(from), unit.rough_text(to));
        format!("{what} {out}, {from} to {to} from the top")
    }
}

/// Why a trace may be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Doubt {
    /// The thing reaches the edge of the picture: a part of it may be missing.
    CutByThePicture,
    /// Both sides share only this much of their area.
    SidesDiffer(f64),
    /// Parts that no turned shape has are still on it.
    NotTurned,
    /// So many parts of it are not turned.
    InParts(usize),
    /// It leans as far as was looked for, degrees.
    Leans(f64),
    /// Something else in the picture has this share of its area.
    Another(f64),
    /// It hardly stands out from its background.
    Faint,
    /// Its edge is rough by so much, mm.
    Rough(f64),
    /// It is only so many pixels high.
    Small(f64),
    /// The outline lies so far from the edge at one place, mm: more than was allowed.
    Off(f64),
}

impl Doubt {
    /// The doubt in words, what to look at or to do; lengths in `unit`.
    pub fn text(&self, unit: Unit) -> String {
        match self {
            Self::CutByThePicture => {
                "it reaches the edge of the picture; a part may be missing".to_owned()
            }
            Self::SidesDiffer(share) => {
                let share = 100.0 * share;
                format!(
                    "both sides share only {share:.1} % of their area; look whether all of it \
                     was found and nothing else"
                )
            }
            Self::NotTurned => "a part of it is not turned; cut it off, or take the side \
                                without it"
                .to_owned(),
            Self::InParts(count) => format!(
                "{count} parts of it are not turned; look whether it was told from its background"
            ),
            Self::Leans(degrees) => {
                format!("it leans by {degrees:.0}°; turn the picture upright")
            }
            Self::Another(share) => {
                let share = 100.0 * share;
                format!(
                    "something else in the picture is {share:.0} % as large; was the right one \
                     traced?"
                )
            }
            Self::Faint => "it hardly stands out from its background".to_owned(),
            Self::Rough(mm) => format!("its edge is rough by {}", unit.text(*mm)),
            Self::Small(pixels) => format!("it is only {pixels:.0} pixels high"),
            Self::Off(mm) => {
                format!("at one place the outline lies {} off the edge", unit.text(*mm))
            }
        }
    }
}

/// What a trace is judged by. Places are pixels of the whole picture as it is seen.
#[derive(Debug, Clone, PartialEq)]
pub struct TraceReport {
    /// Height along the axis, mm.
    pub height_mm: f64,
    /// Width across it, mm.
    pub width_mm: f64,
    /// How many mm a pixel is.
    pub mm_per_pixel: f64,
    /// How far the thing leans to the right at its top, degrees; to the left if negative.
    pub tilt_degrees: f64,
    /// How alike both sides are as they were found: the area they share when one is laid on
    /// the other, 0 … 1.
    pub symmetry: f64,
    /// The same without the parts that are not turned.
    pub symmetry_left: f64,
    /// The tolerance asked for, mm.
    pub tolerance_mm: f64,
    /// Greatest distance of the edge from the outline, mm.
    pub furthest_mm: f64,
    /// Root mean square of those distances, mm.
    pub rms_mm: f64,
    /// Whether a shadow was left out.
    pub shadow: bool,
    /// Parts that no turned shape has.
    pub odd: Vec<OddPart>,
    /// Whether they were cut off.
    pub cut: bool,
    /// Why all this may be wrong.
    pub doubts: Vec<Doubt>,
    /// The axis, from its upper end to its lower.
    pub axis: [(f64, f64); 2],
    /// The edge as it was found, left and right, from the top down.
    pub edges: [Vec<(f64, f64)>; 2],
    /// The outline laid over the picture, left and right, in working order.
    pub line: [Vec<(f64, f64)>; 2],
    /// Its knots on the right side, in working order.
    pub knots: Vec<(f64, f64)>,
}

impl TraceReport {
    /// What a person judges the trace by, a sentence without its full stop each; lengths in
    /// `unit`. Parts that are not turned are numbered as they are in [`Self::odd`], from 1.
    pub fn facts(&self, unit: Unit) -> Vec<String> {
        let (high, wide) = (unit.text(self.height_mm), unit.text(self.width_mm));
        let mut lines = vec![format!("{high} high, {wide} wide")];
        let knots = self.knots.len();
        lines.push(match self.knots_apart_mm() {
            Some((least, most)) => {
                let (least, most) = (unit.rough_number(least), unit.rough_text(most));
                format!("{knots} knots, {least} to {most} apart")
            }
            None => format!("{knots} knots"),
        });
        let (furthest, mean) = (fine(unit, self.furthest_mm), fine(unit, self.rms_mm));
        lines.push(format!("The line lies within {furthest} of the edge, {mean} in the mean"));
        lines.push(format!(
            "Both sides share {:.1} % of their area; it leans by {:.1}°{}",
            100.0 * self.symmetry,
            self.tilt_degrees.abs(),
            match self.tilt_degrees {
                lean if lean >= 0.05 => " to the right",
                lean if lean <= -0.05 => " to the left",
                _ => "",
            }
        ));
        if self.shadow {
            lines.push("A shadow was left out".to_owned());
        }
        let done = if self.cut { "cut off" } else { "not cut off" };
        let odd = self.odd.iter().enumerate();
        lines.extend(odd.map(|(i, part)| format!("{}: {}, {done}", i + 1, part.text(unit))));
        lines
    }

    /// Why all this may be wrong, in the same way.
    pub fn warnings(&self, unit: Unit) -> Vec<String> {
        self.doubts.iter().map(|doubt| format!("Look again: {}", doubt.text(unit))).collect()
    }

    /// Both, facts first.
    pub fn told(&self, unit: Unit) -> Vec<String> {
        [self.facts(unit), self.warnings(unit)].concat()
    }

    /// Least and greatest distance of a knot from the next, mm; none for fewer than two.
    pub fn knots_apart_mm(&self) -> Option<(f64, f64)> {
        let apart = self.knots.windows(2).map(|pair| {
            self.mm_per_pixel * (pair[0].0 - pair[1].0).hypot(pair[0].1 - pair[1].1)
        });
        apart.fold(None, |ends, mm| {
            let (least, most) = ends.unwrap_or((mm, mm));
            Some((mm.min(least), mm.max(most)))
        })
    }
}
