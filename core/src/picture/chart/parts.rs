//! What charts are made of: how they are drawn, their stitches, their key.

use crate::picture::Rgb;
use crate::picture::drawing::Drawing;
use crate::plan::placement::Stitch;

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
}

impl Chart {
    /// What it is called: `Start chart`, or `Closing chart` for one worked inward.
    pub fn title(&self) -> &'static str {
        match (self.inward, self.first) {
            (true, _) => "Closing chart",
            (false, 1) => "Start chart",
            (false, _) => "Chart",
        }
    }

    /// Its rounds and how it is read, in a line.
    pub fn caption(&self) -> String {
        let rounds = rounds_named(self.first, self.last);
        let way = if self.inward { "inward" } else { "outward" };
        match self.shown {
            Shown::Whole => format!("{rounds}, worked {way}"),
            Shown::OneOf(n) => format!("{rounds}, worked {way}: one of {n} repeats"),
        }
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
    /// How they are read, a sentence each, and what of the piece they leave out.
    pub remarks: Vec<String>,
}

pub(super) fn rounds_named(first: u32, last: u32) -> String {
    if first == last { format!("rnd {first}") } else { format!("rnds {first}–{last}") }
}
