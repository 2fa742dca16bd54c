//! The sheet: the pattern as people print and read it. [`Sheet`] is the content, gathered
//! once from a project and its plans; [`text`], [`markdown`] and [`html`] only lay it out, as
//! the pages of `plumpline-typeset` do, so that every form says the same.
//!
//! `materials` and `hooks`: what is needed; `level` and `special`: what one must be able to
//! do; `steps`: the rounds; `pictures`: what is drawn beside them.

mod hooks;
mod html;
mod length;
mod level;
mod markdown;
mod materials;
mod pictures;
mod sizes;
mod special;
mod steps;
mod text;

pub use hooks::hook_size;
pub use html::{html, html_of};
pub use length::inches;
pub use level::Level;
pub use markdown::{markdown, markdown_of};
pub use materials::{Materials, YarnNeed};
pub use pictures::{Pictures, drawing_svg};
pub use special::Special;
pub use steps::{RoundsLine, Step, YarnStep};
pub use text::{text, text_of};

use serde::Serialize;

use crate::companion::instructions;
use crate::error::Result;
use crate::gauge::Gauge;
use crate::pattern::write::Writer;
use crate::picture::chart::SingleSymbol;
use crate::piece::Piece;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::sizes::{at_size, size_names};
use crate::wording::Wording;
use length::{cm, number};
use steps::steps;

/// A pattern ready to be laid out.
#[derive(Debug, Clone, Serialize)]
pub struct Sheet {
    /// Title of the project, on one line.
    pub title: String,
    /// Designer, or empty.
    pub designer: String,
    /// Terms of use in one line, or empty.
    pub licence: String,
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
    /// What is needed for all pieces and copies.
    pub materials: Materials,
    /// Abbreviations used, with their meaning.
    pub abbreviations: Vec<(String, String)>,
    /// How the less usual stitches are worked.
    pub specials: Vec<Special>,
    /// Column heading over the rounds' numbers: `Rnd`.
    pub round_word: String,
    /// One part a piece.
    pub pieces: Vec<PieceSheet>,
    /// What every maker should know before giving the thing away.
    pub cautions: Vec<&'static str>,
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
    /// Stitches and rounds to 10 cm, as they are counted.
    pub gauge_counts: (String, String),
    /// Hook in words: `3.5 mm (US E-4, UK 9)`.
    pub hook: String,
    /// How hard it is stuffed: `softly`.
    pub stuffed: &'static str,
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

/// The sheet of every piece of `project`, charts with a cross for single crochet.
///
/// # Errors
/// As [`plan`](plan()), with the piece named.
pub fn sheet(project: &Project) -> Result<Sheet> {
    sheet_with(project, SingleSymbol::default())
}

/// As [`sheet`](sheet()), with the symbol for single crochet.
///
/// # Errors
/// As [`plan`](plan()), with the piece named.
pub fn sheet_with(project: &Project, single: SingleSymbol) -> Result<Sheet> {
    let names = size_names(project);
    let at: Vec<Project> = match names.is_empty() {
        true => vec![project.clone()],
        false => names
            .iter()
            .map(|name| at_size(project, name).map(|at| at.project))
            .collect::<Result<_>>()?,
    };
    let planned =
        |piece: &Piece| plan(piece).map_err(|e| e.within(&format!("piece “{}”", piece.name)));
    let plans = at
        .iter()
        .map(|project| project.pieces.iter().map(planned).collect::<Result<Vec<_>>>())
        .collect::<Result<Vec<_>>>()?;
    let sized = |index: usize| {
        let of = |k: usize, name| SizedPlan {
            name,
            piece: &at[k].pieces[index],
            plan: &plans[k][index],
        };
        let has = |name: &str| project.pieces[index].sizes.iter().any(|s| s.name == name);
        let own: Vec<SizedPlan<'_>> =
            (0..names.len()).filter(|&k| has(names[k])).map(|k| of(k, names[k])).collect();
        // A piece that comes in no sizes is the same in all.
        if own.is_empty() { vec![of(0, "")] } else { own }
    };
    let sized: Vec<Vec<SizedPlan<'_>>> = (0..project.pieces.len()).map(sized).collect();
    let pieces: Vec<&[SizedPlan<'_>]> = sized.iter().map(Vec::as_slice).collect();
    let mut sheet = sheet_of(project, &pieces, single)?;
    for (index, piece) in sheet.pieces.iter_mut().enumerate() {
        piece.closing.extend(instructions(&at[0], &plans[0], index));
    }
    Ok(sheet)
}

/// The sheet of pieces that are planned already, each in one size or several.
///
/// # Errors
/// Where the project's words are not known.
pub fn sheet_of(
    project: &Project,
    pieces: &[&[SizedPlan<'_>]],
    single: SingleSymbol,
) -> Result<Sheet> {
    let writer = project.wording.writer()?;
    let first: Vec<SizedPlan<'_>> =
        pieces.iter().filter_map(|sizes| sizes.first().copied()).collect();
    let sheets: Vec<PieceSheet> = pieces
        .iter()
        .filter_map(|sizes| piece_sheet(project, sizes, &writer, single))
        .collect();
    let lexicon = writer.lexicon();
    Ok(Sheet {
        title: one_line(&project.title),
        designer: one_line(&project.designer),
        licence: one_line(&project.licence),
        language: language(&lexicon.code),
        terms: lexicon.name.clone(),
        unchecked: match lexicon.checked {
            true => String::new(),
            false => writer.phrases().unchecked.clone(),
        },
        level: level::level(project, &first),
        notes: paragraphs(&project.notes),
        assembly: paragraphs(&project.assembly),
        materials: Materials::of(project, &first),
        abbreviations: abbreviations(&sheets, &writer),
        specials: special::specials(&first, &writer),
        round_word: lexicon.round.brief(1).to_owned(),
        pieces: sheets,
        cautions: cautions(),
    })
}

fn piece_sheet(
    project: &Project,
    sizes: &[SizedPlan<'_>],
    writer: &Writer<'_>,
    single: SingleSymbol,
) -> Option<PieceSheet> {
    let &SizedPlan { piece, plan, .. } = sizes.first()?;
    let wordings: Vec<Wording> =
        sizes.iter().map(|s| s.plan.worded_by(s.piece, writer)).collect();
    let steps_of = |(sized, wording): (&SizedPlan<'_>, &Wording)| {
        steps(project, sized.plan, wording, writer)
    };
    let all_steps: Vec<Vec<Step>> = sizes.iter().zip(&wordings).map(steps_of).collect();
    let told = |of: fn(&Wording) -> &[String]| -> Option<Vec<String>> {
        let longest = wordings.iter().map(|w| of(w).len()).max().unwrap_or(0);
        let line = |i: usize| {
            let texts = wordings.iter().map(|w| of(w).get(i).map(String::as_str));
            sizes::agreed(&texts.collect::<Option<Vec<_>>>()?)
        };
        (0..longest).map(line).collect()
    };
    let own = |of: fn(&Wording) -> &[String]| of(&wordings[0]).to_vec();
    let together = sizes::together(&all_steps).zip(told(|w| &w.closing));
    let mut size_sheets: Vec<SizeSheet> = sizes.iter().map(size_sheet).collect();
    let (steps, closing) = together.unwrap_or_else(|| {
        for ((sheet, steps), wording) in size_sheets.iter_mut().zip(all_steps).zip(&wordings) {
            sheet.steps = steps;
            sheet.closing.clone_from(&wording.closing);
        }
        (Vec::new(), Vec::new())
    });
    let most = sizes.iter().flat_map(|s| &s.plan.rounds).map(|r| r.count).max();
    Some(PieceSheet {
        name: named(piece),
        copies: piece.copies,
        sizes: size_sheets,
        gauge: gauge_text(&piece.gauge),
        gauge_counts: gauge_counts(&piece.gauge),
        hook: hook_size(piece.gauge.hook_mm),
        stuffed: stuffed(piece),
        steps,
        most_stitches: most.unwrap_or(0),
        opening: told(|w| &w.opening).unwrap_or_else(|| own(|w| &w.opening)),
        closing,
        warnings: warnings(plan),
        pictures: Pictures::of(project, piece, plan, single),
    })
}

impl SizeSheet {
    /// Its name before what is said of it: `M: `; nothing for the only size.
    pub(crate) fn lead(&self) -> String {
        if self.name.is_empty() { String::new() } else { format!("{}: ", self.name) }
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

/// What a maker can act on; pins, rules and outlines are the designer's.
fn warnings(plan: &Plan) -> Vec<String> {
    const FOR_MAKERS: [&str; 6] = ["corner", "wrinkle", "flat", "swatch", "unsettled", "oval"];
    let theirs = plan.warnings.iter().filter(|w| FOR_MAKERS.contains(&w.code));
    theirs.map(|w| at_rounds(w.code, &w.text)).collect()
}

/// `Rnds 10–12: stays in 5 mm.` as a sentence of its own, which nobody takes for rounds to
/// be worked: `At rnds 10–12 it stays in 5 mm.`
fn at_rounds(code: &str, text: &str) -> String {
    match text.strip_prefix("Rnd").and_then(|rest| rest.split_once(": ")) {
        None => text.to_owned(),
        Some((rounds, said)) => {
            let who = match (code, said.starts_with("end ")) {
                ("corner", true) => "the ",
                ("corner", false) => "it ",
                _ => "",
            };
            format!("At rnd{rounds} {who}{said}")
        }
    }
}

fn size_sheet(sized: &SizedPlan<'_>) -> SizeSheet {
    let (height_mm, width_mm) = sized.plan.size_mm;
    let mut finished = format!("{} high, {} wide", cm(height_mm), cm(width_mm));
    let mut inch = format!("{} by {}", inches(height_mm), inches(width_mm));
    if let Some(depth) = sized.plan.depth_mm {
        finished.push_str(&format!(", {} deep", cm(depth)));
        inch.push_str(&format!(" by {}", inches(depth)));
    }
    finished.push_str(&format!(" ({inch})"));
    SizeSheet {
        name: sized.name.to_owned(),
        height_mm,
        width_mm,
        finished,
        measured_on: format!(
            "Stuffed {}; forecast from the gauge, not measured on a finished piece.",
            stuffed(sized.piece)
        ),
        total: format!(
            "{} stitches in all, {} rounds",
            sized.plan.estimate.stitches,
            sized.plan.rounds.len()
        ),
        steps: Vec::new(),
        closing: Vec::new(),
    }
}

fn stuffed(piece: &Piece) -> &'static str {
    match piece.firmness.word() {
        "medium" => "to medium firmness",
        "soft" => "softly",
        _ => "firmly",
    }
}

fn named(piece: &Piece) -> String {
    let name = one_line(&piece.name);
    match piece.copies {
        1 => name,
        n => format!("{name} (make {n})"),
    }
}

impl Sheet {
    /// Whether pieces stand under their names: where there are several, or several to make.
    pub fn names_pieces(&self) -> bool {
        self.pieces.len() > 1 || self.pieces.iter().any(|p| p.copies > 1)
    }
}

/// User text kept to one line, control characters dropped.
fn one_line(text: &str) -> String {
    text.split_whitespace()
        .map(|word| word.chars().filter(|c| !c.is_control()).collect::<String>())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

fn paragraphs(text: &str) -> Vec<String> {
    text.lines().map(one_line).filter(|line| !line.is_empty()).collect()
}

fn capitalise(text: &mut str) {
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
}

/// A lexicon's code as a BCP 47 tag.
fn language(code: &str) -> String {
    match code {
        "en-us" => "en-US".into(),
        "en-uk" => "en-GB".into(),
        other => other.into(),
    }
}

fn gauge_counts(gauge: &Gauge) -> (String, String) {
    (number(100.0 / gauge.stitch_width_mm()), number(100.0 / gauge.round_height_mm()))
}

fn gauge_text(gauge: &Gauge) -> String {
    let (stitches, rounds) = gauge_counts(gauge);
    format!(
        "{stitches} sc and {rounds} rounds to 10 cm, worked in the round, right side out, \
         unstuffed"
    )
}

/// Abbreviations that the words around the rounds and the rounds use, and what stands at
/// their end.
fn abbreviations(pieces: &[PieceSheet], writer: &Writer<'_>) -> Vec<(String, String)> {
    let after = |piece: &'_ PieceSheet| {
        piece
            .lists()
            .into_iter()
            .flat_map(|(_, _, closing)| closing.to_vec())
            .collect::<Vec<_>>()
    };
    let around: Vec<String> =
        pieces.iter().flat_map(|p| [p.opening.clone(), after(p)].concat()).collect();
    let steps = pieces.iter().flat_map(PieceSheet::lists).flat_map(|(_, steps, _)| steps);
    let rounds = steps.flat_map(|step| match step {
        Step::Rounds(line) => [line.heading.as_str(), &line.text, &line.count],
        // The names of yarns are the maker's.
        Step::Yarn(_) | Step::Stuff(_) => [""; 3],
    });
    let mut list = writer.abbreviations(around.iter().map(String::as_str).chain(rounds));
    list.push((writer.count(24), "stitches at the end of the round".into()));
    list
}

/// The usual cautions for a stuffed thing without attachments. Figures only from sources
/// that could be read (FACTS.md sections 3.1–3.2).
fn cautions() -> Vec<&'static str> {
    vec![
        "For a child under 3, embroider features; add no beads, buttons, wire or other parts \
         that could come off. In the United States no such toy, nor any part that comes off \
         it in use, may fit entirely into a cylinder 1.25 in wide and 2.25 in long \
         (16 CFR 1501.4; CPSC small parts guidance).",
        "Sew every opening shut and bury the ends so that no stuffing can be reached.",
        "Before giving or selling it, follow your local rules: they and an accredited test \
         laboratory decide, not this pattern.",
    ]
}
