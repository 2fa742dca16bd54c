//! What charts are made of: how they are drawn, their stitches, their key.

use crate::picture::Rgb;
use crate::picture::drawing::Drawing;
use crate::plan::placement::Stitch;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::Writer;

/// Least room of a stitch along its round, mm, on a chart at its own size.
pub const SLOT_MM: f32 = 2.5;
/// Least a chart may be reduced to and still be read: stitches of 1.8 mm.
pub const LEAST_SCALE: f32 = 0.72;
/// Width there is for a chart on a page, mm.
pub const PAGE_MM: f32 = 180.0;
/// Greatest radius of a chart at its own size, mm: at the least scale it fills the width of
/// a page.
pub(super) const MOST_RADIUS: f32 = 120.0;
/// The symbol for single crochet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SingleSymbol {
    /// ×
    #[default]
    Cross,
    /// +
    Plus,
}

/// How charts are drawn.
#[derive(Debug, Clone, Copy)]
pub struct ChartLook<'a> {
    /// The symbol for single crochet.
    pub single: SingleSymbol,
    /// Letter and colour of every yarn of the project.
    pub yarns: &'a [(String, Rgb)],
    /// Whose words are beside them.
    pub writer: &'a Writer<'a>,
}

/// One stitch on a chart, an increase or a decrease counting as one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Symbol {
    /// Its round; the first of those that share a ring.
    pub round: u32,
    /// What is worked.
    pub stitch: Stitch,
    /// Where it stands, mm from the middle of the chart, y down.
    pub at: [f32; 2],
}

/// How much of each round a chart shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// All of it.
    Whole,
    /// One of so many repeats.
    OneOf(u32),
    /// An arc, part `nth` (from 0) of the `of` equal ones that the round is split into: it is
    /// too long for a page and has no repeat.
    Arc {
        /// Which of them.
        nth: u32,
        /// How many there are.
        of: u32,
    },
}

/// One chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// First round on it.
    pub first: u32,
    /// Last round on it.
    pub last: u32,
    /// Whether rounds grow towards the middle.
    pub inward: bool,
    /// Whether rounds run clockwise on paper.
    pub clockwise: bool,
    /// How much of each round it shows.
    pub shown: Shown,
    /// Its stitches in working order.
    pub symbols: Vec<Symbol>,
    /// The chart.
    pub drawing: Drawing,
    /// What it is called: `Start chart`, or `Closing chart` for one worked inward.
    pub title: String,
    /// Its rounds and how it is read, in a line.
    pub caption: String,
}

impl Chart {
    /// Names it in the words of `writer`.
    pub(super) fn named(mut self, writer: &Writer<'_>) -> Self {
        self.title = writer.say(match (self.inward, self.first) {
            (true, _) => "closing_chart",
            (false, 1) => "start_chart",
            (false, _) => "chart",
        });
        let rounds = rounds_named(self.first, self.last, writer);
        let way = if self.inward { "worked_inward" } else { "worked_outward" };
        let way = writer.say_of(way, &[("rounds", Words(&rounds))]);
        self.caption = match self.shown {
            Shown::Whole => way,
            Shown::OneOf(n) => {
                writer.say_of("one_of", &[("chart", Words(&way)), ("n", Number(n))])
            }
            Shown::Arc { nth, of } => writer.say_of(
                "arc_of",
                &[("chart", Words(&way)), ("nth", Number(nth + 1)), ("n", Number(of))],
            ),
        };
        self
    }

    /// Size at which it was drawn, mm.
    pub fn size_mm(&self) -> [f32; 2] {
        let [low, high] = self.drawing.bounds();
        [high[0] - low[0], high[1] - low[1]]
    }
}

/// What a symbol of the charts means.
#[derive(Debug, Clone, PartialEq)]
pub struct KeyEntry {
    /// The symbol.
    pub drawing: Drawing,
    /// Its meaning.
    pub text: String,
}

/// The charts of a piece.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Charts {
    /// The charts in working order.
    pub charts: Vec<Chart>,
    /// The symbols they use.
    pub key: Vec<KeyEntry>,
    /// How they are read, a sentence each.
    pub reading: Vec<String>,
    /// What of the piece they leave out, a sentence each.
    pub remarks: Vec<String>,
}

impl Charts {
    /// How they are read, then what they leave out.
    pub fn said(&self) -> impl Iterator<Item = &str> {
        self.reading.iter().chain(&self.remarks).map(String::as_str)
    }
}

/// A round or a range of rounds, within a sentence.
pub(crate) fn rounds_named(first: u32, last: u32, writer: &Writer<'_>) -> String {
    match first == last {
        true => writer.say_of("rnd", &[("n", Number(first))]),
        false => writer.say_of("rnds", &[("first", Number(first)), ("last", Number(last))]),
    }
}
