//! The sheet: the pattern as people print and read it. [`Sheet`] is the content, gathered
//! once from a project and its plans; [`text`] and [`markdown`] only lay it out, so that
//! every form says the same.

mod markdown;
mod text;

pub use markdown::markdown;
pub use text::text;

use crate::companion::instructions;
use crate::error::Result;
use crate::estimate::Estimate;
use crate::gauge::Gauge;
use crate::pattern::write::{RoundsText, Writer};
use crate::piece::Piece;
use crate::plan::{Plan, plan};
use crate::project::{Project, Yarn};
use crate::wording::Wording;

/// A pattern ready to be laid out.
#[derive(Debug, Clone)]
pub struct Sheet {
    /// Title of the project.
    pub title: String,
    /// Designer, or empty.
    pub designer: String,
    /// Notes, or empty.
    pub notes: String,
    /// One part a piece.
    pub pieces: Vec<PieceSheet>,
    /// What every maker should know before giving the thing away.
    pub cautions: Vec<&'static str>,
}

/// The pattern of one piece.
#[derive(Debug, Clone)]
pub struct PieceSheet {
    /// Name of the piece, and how many to make where that is more than one.
    pub name: String,
    /// How many to make; the materials are for all of them.
    pub copies: u32,
    /// Finished size in words.
    pub size: String,
    /// Gauge in words.
    pub gauge: String,
    /// Materials, a line each.
    pub materials: Vec<String>,
    /// Said of words that no native reader has checked; empty where one has.
    pub unchecked: String,
    /// Abbreviations used, with their meaning.
    pub abbreviations: Vec<(String, String)>,
    /// Lines before round 1.
    pub opening: Vec<String>,
    /// Rounds and what has to be done between them, in order.
    pub steps: Vec<Step>,
    /// Lines after the last round.
    pub closing: Vec<String>,
    /// Stitches and rounds in all.
    pub total: String,
    /// What the forecast warns of.
    pub warnings: Vec<String>,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// Work these rounds.
    Rounds(RoundsText),
    /// Change to this yarn, given by letter and name.
    Yarn(String),
    /// Stuff the piece.
    Stuff(String),
}

/// The sheet of every piece of `project`.
///
/// # Errors
/// As [`plan`](plan()), with the piece named.
pub fn sheet(project: &Project) -> Result<Sheet> {
    let writer = project.wording.writer()?;
    let plans = project
        .pieces
        .iter()
        .map(|piece| plan(piece).map_err(|e| e.within(&format!("piece “{}”", piece.name))))
        .collect::<Result<Vec<_>>>()?;
    let mut pieces = Vec::with_capacity(plans.len());
    for (i, (piece, plan)) in project.pieces.iter().zip(&plans).enumerate() {
        let mut sheet = piece_sheet(project, piece, plan, &writer);
        sheet.closing.extend(instructions(project, &plans, i));
        pieces.push(sheet);
    }
    Ok(Sheet {
        title: project.title.clone(),
        designer: project.designer.clone(),
        notes: project.notes.clone(),
        pieces,
        cautions: cautions(),
    })
}

fn piece_sheet(
    project: &Project,
    piece: &Piece,
    plan: &Plan,
    writer: &Writer<'_>,
) -> PieceSheet {
    let (height, width) = plan.size_mm;
    let wording = plan.worded_by(piece, writer);
    let steps = steps(project, plan, &wording, writer);
    let unchecked = match writer.lexicon().checked {
        true => String::new(),
        false => writer.phrases().unchecked.clone(),
    };
    PieceSheet {
        name: named(piece),
        copies: piece.copies,
        size: format!(
            "{:.1} cm high, {:.1} cm wide, stuffed {} (forecast from this gauge)",
            height / 10.0,
            width / 10.0,
            match piece.firmness.word() {
                "medium" => "to medium firmness",
                "soft" => "softly",
                _ => "firmly",
            },
        ),
        gauge: gauge_text(&piece.gauge),
        materials: materials(project, piece, &plan.estimate.times(piece.copies)),
        unchecked,
        abbreviations: abbreviations(&wording, &steps, writer),
        opening: wording.opening,
        steps,
        closing: wording.closing,
        total: format!(
            "{} rounds, {} stitches in all",
            plan.rounds.len(),
            plan.estimate.stitches
        ),
        warnings: plan.warnings.iter().map(|w| w.text.clone()).collect(),
    }
}

fn named(piece: &Piece) -> String {
    match piece.copies {
        1 => piece.name.clone(),
        n => format!("{} (make {n})", piece.name),
    }
}

impl Sheet {
    /// Whether pieces stand under their names: where there are several, or several to make.
    pub fn names_pieces(&self) -> bool {
        self.pieces.len() > 1 || self.pieces.iter().any(|p| p.copies > 1)
    }
}

/// A figure without needless decimals: `312`, `21.7`, `22`.
fn number(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    if rounded.fract() == 0.0 || rounded >= 100.0 {
        format!("{rounded:.0}")
    } else {
        format!("{rounded:.1}")
    }
}

/// An estimated amount, to no more places than it deserves.
fn amount(value: f64) -> String {
    if value >= 9.95 { format!("{value:.0}") } else { format!("{value:.1}") }
}

fn gauge_text(gauge: &Gauge) -> String {
    format!(
        "{} sc and {} rounds to 10 cm, worked in the round, right side out, unstuffed",
        number(100.0 / gauge.stitch_width_mm()),
        number(100.0 / gauge.round_height_mm()),
    )
}

fn materials(project: &Project, piece: &Piece, estimate: &Estimate) -> Vec<String> {
    let several = estimate.yarn.len() > 1;
    let mut lines: Vec<String> = estimate
        .yarn
        .iter()
        .map(|used| {
            let yarn = &project.yarns[used.yarn];
            let letter =
                if several { format!("{} ", Yarn::letter(used.yarn)) } else { String::new() };
            let (low, high) = used.range();
            format!(
                "Yarn {letter}({}): about {} m, {} g (estimate, {}–{} m)",
                yarn.name,
                amount(used.metres),
                amount(yarn.grams(used.metres)),
                amount(low),
                amount(high),
            )
        })
        .collect();
    lines.push(format!(
        "Crochet hook, {} mm, or the size that gives the gauge",
        number(piece.gauge.hook_mm)
    ));
    let (low, high) = estimate.stuffing_g;
    lines.push(format!(
        "Toy stuffing, about {}–{} g for {} ml (estimate)",
        amount(low),
        amount(high),
        amount(estimate.volume_ml),
    ));
    lines.push("Stitch marker, blunt needle, scissors".into());
    let minutes = estimate.minutes.round() as u32;
    lines.push(format!("Time: about {} h {:02} min (estimate)", minutes / 60, minutes % 60));
    lines
}

/// Abbreviations that the words around the rounds and the rounds use, and what stands at
/// their end.
fn abbreviations(
    wording: &Wording,
    steps: &[Step],
    writer: &Writer<'_>,
) -> Vec<(String, String)> {
    let around = wording.opening.iter().chain(&wording.closing).map(String::as_str);
    let rounds = steps.iter().flat_map(|step| match step {
        Step::Rounds(line) => [line.heading.as_str(), &line.text, &line.count],
        // The names of yarns are the maker's.
        Step::Yarn(_) | Step::Stuff(_) => [""; 3],
    });
    let mut list = writer.abbreviations(around.chain(rounds));
    list.push((writer.count(24), "stitches at the end of the round".into()));
    list
}

fn steps(project: &Project, plan: &Plan, wording: &Wording, writer: &Writer<'_>) -> Vec<Step> {
    let mut steps = Vec::new();
    let several = plan.estimate.yarn.len() > 1;
    let mut yarn = None;
    for line in &wording.lines {
        if several && yarn != Some(line.yarn) {
            let name =
                format!("{} ({})", Yarn::letter(line.yarn), project.yarns[line.yarn].name);
            steps.push(Step::Yarn(match yarn {
                None => format!("Start with yarn {name}."),
                Some(_) => format!("Change to yarn {name} in the last st of the round before."),
            }));
            yarn = Some(line.yarn);
        }
        steps.push(Step::Rounds(RoundsText {
            heading: writer.heading(line.first, line.last),
            text: line.text.clone(),
            count: writer.count(line.count),
        }));
        if wording.stuff_after == Some(line.last) {
            let (low, high) = plan.estimate.stuffing_g;
            steps.push(Step::Stuff(format!(
                "{} About {}–{} g.",
                wording.stuff_text,
                amount(low),
                amount(high)
            )));
        }
    }
    steps
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
