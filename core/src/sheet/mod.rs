//! The sheet: the pattern as people print and read it. [`Sheet`] is the content, gathered
//! once from a project and its plans; [`text`], [`markdown`] and [`html`] only lay it out, as
//! the pages of `plumpline-typeset` do, so that every form says the same.
//!
//! `gather` brings it together. `materials` and `hooks`: what is needed; `level` and
//! `special`: what one must be able to do; `steps`: the rounds, `sizes` those of several sizes
//! in one; `abbreviations` and `labels`: what they and their headings are called; `pictures`:
//! what is drawn beside them; `toy` and `toy_pictures`: the parts put together, `needs` what
//! that takes. `spoken` is the same pattern as sentences to say, `blurb` what a shop says of it, `changes` what differs from a version before,
//! `tested` the form for testers and what they got.

mod abbreviations;
mod blurb;
mod changes;
mod floats;
mod gather;
mod hooks;
mod html;
mod labels;
mod length;
mod level;
mod markdown;
mod materials;
mod needs;
mod pictures;
mod plain;
mod sizes;
mod special;
mod spoken;
mod steps;
mod tested;
mod text;
mod toy;
mod toy_pictures;

pub use blurb::{BlurbForm, blurb};
pub use changes::{Changes, changes};
pub use gather::{sheet, sheet_of, sheet_with};
pub use hooks::hook_size;
pub use html::{html, html_of};
pub use length::inches;
pub use level::Level;
pub use markdown::{markdown, markdown_of};
pub use materials::{Materials, YarnNeed};
pub use pictures::{Pictures, drawing_svg};
pub use special::Special;
pub use spoken::{Script, ScriptLine, ScriptPace, captions_srt, captions_vtt, script};
pub use steps::{RoundsLine, Step, YarnStep};
pub use tested::{tester_form, testers_got, testers_plot};
pub use text::{text, text_of};
pub use toy::ToySheet;
pub use toy_pictures::{CalledView, ToyPictures};

use std::collections::BTreeMap;

use serde::Serialize;

use crate::piece::Piece;
use crate::plan::Plan;

/// A pattern ready to be laid out.
#[derive(Debug, Clone, Serialize)]
pub struct Sheet {
    /// Title of the project, on one line.
    pub title: String,
    /// Designer, or empty.
    pub designer: String,
    /// Terms of use in one line, or empty.
    pub licence: String,
    /// Which version it is: `Version 2, 28 November`; or empty.
    pub version: String,
    /// Language of the pattern, as a BCP 47 tag: `en-US`.
    pub language: String,
    /// Whose terms it uses: `English (US terms)`.
    pub terms: String,
    /// Said of words that no native reader has checked; empty where one has.
    pub unchecked: String,
    /// What it asks of the maker.
    pub level: Level,
    /// Notes, a paragraph each.
    pub notes: Vec<String>,
    /// How the pieces are put together, a paragraph each.
    pub assembly: Vec<String>,
    /// The whole toy; none where no part has been put in its place.
    pub toy: Option<ToySheet>,
    /// What is needed for all pieces and copies.
    pub materials: Materials,
    /// Abbreviations used, with their meaning.
    pub abbreviations: Vec<(String, String)>,
    /// What forms of the rounds mean that are no abbreviations, a sentence each.
    pub forms: Vec<String>,
    /// How the less usual stitches are worked.
    pub specials: Vec<Special>,
    /// Column heading over the rounds' numbers: `Rnd`.
    pub round_word: String,
    /// Headings and labels by name, in the language of the sheet; see [`Sheet::label`].
    pub labels: BTreeMap<&'static str, String>,
    /// A colon as its language writes it.
    pub colon: String,
    /// What a shop says of it, in a sentence or two.
    pub intro: String,
    /// What is included, a line each.
    pub included: Vec<String>,
    /// The pattern as it is said.
    #[serde(skip)]
    pub script: Script,
    /// One part a piece.
    pub pieces: Vec<PieceSheet>,
    /// What every maker should know before giving the thing away.
    pub cautions: Vec<String>,
}

/// The pattern of one piece.
#[derive(Debug, Clone, Serialize)]
pub struct PieceSheet {
    /// Name of the piece, and how many to make where that is more than one.
    pub name: String,
    /// How many to make.
    pub copies: u32,
    /// Its sizes, smallest first; at least one.
    pub sizes: Vec<SizeSheet>,
    /// Gauge in words.
    pub gauge: String,
    /// Its counts alone: `22 sc and 24 rounds to 10 cm (4 in)`.
    pub gauge_short: String,
    /// Hook in words: `3.5 mm (US E-4, old UK 9)`.
    pub hook: String,
    /// The same named: `hook 3.5 mm (US E-4, old UK 9)`.
    pub hooked: String,
    /// How hard it is stuffed: `stuffed softly`.
    pub stuffed: String,
    /// Lines before round 1.
    pub opening: Vec<String>,
    /// Rounds and what has to be done between them, in order: of all sizes together, `24 (30,
    /// 36)`; empty where sizes are worded differently and each has its own.
    pub steps: Vec<Step>,
    /// Most stitches of a round.
    pub most_stitches: u32,
    /// Lines after the last round.
    pub closing: Vec<String>,
    /// What the forecast warns the maker of.
    pub warnings: Vec<String>,
    /// What is drawn of it; of its first size.
    #[serde(skip)]
    pub pictures: Pictures,
}

/// What one size of a piece comes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SizeSheet {
    /// Name of the size; empty for the only one.
    pub name: String,
    /// Finished height, mm.
    pub height_mm: f64,
    /// Finished width, mm.
    pub width_mm: f64,
    /// Finished height in words: `11.1 cm (4 3/8 in)`.
    pub tall: String,
    /// Finished width in words.
    pub wide: String,
    /// Finished depth of an oval in words.
    pub deep: Option<String>,
    /// Stitches in all.
    pub stitches: u32,
    /// Rounds in all.
    pub rounds: u32,
    /// Finished size in words.
    pub finished: String,
    /// What that was measured on.
    pub measured_on: String,
    /// Stitches and rounds in all.
    pub total: String,
    /// Its own rounds, where the sizes are not told together.
    pub steps: Vec<Step>,
    /// What is done after its last round, where the sizes are not told together.
    pub closing: Vec<String>,
}

/// One size of a piece and its plan.
#[derive(Debug, Clone, Copy)]
pub struct SizedPlan<'a> {
    /// Name of the size; empty for the only one.
    pub name: &'a str,
    /// The piece in that size.
    pub piece: &'a Piece,
    /// Its plan.
    pub plan: &'a Plan,
}

impl SizeSheet {
    /// Its name before what is said of it: `M: `; nothing for the only size.
    pub(crate) fn lead(&self, colon: &str) -> String {
        if self.name.is_empty() { String::new() } else { format!("{}{colon} ", self.name) }
    }
}

impl PieceSheet {
    /// The lists of rounds: one of all sizes, without a name, or one a size, under its name;
    /// each with what is done after its last round.
    pub fn lists(&self) -> Vec<(&str, &[Step], &[String])> {
        if !self.steps.is_empty() {
            return vec![("", &self.steps, &self.closing)];
        }
        let own = self.sizes.iter();
        own.map(|s| (s.name.as_str(), s.steps.as_slice(), s.closing.as_slice())).collect()
    }
}

impl Sheet {
    /// The heading or label of this name; nothing for a name that is not there.
    pub fn label(&self, name: &str) -> &str {
        self.labels.get(name).map_or("", String::as_str)
    }

    /// A label with what stands for a name in its braces.
    pub fn label_of(&self, name: &str, given: &str, value: &str) -> String {
        self.label(name).replace(&format!("{{{given}}}"), value)
    }

    /// Whether pieces stand under their names: where there are several, or several to make.
    pub fn names_pieces(&self) -> bool {
        self.pieces.len() > 1 || self.pieces.iter().any(|p| p.copies > 1)
    }
}
