//! The sizes of a piece side by side, and their wording in one text.

use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::plan::estimate::Estimate;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::sentence::Sentence;
use crate::words::from_plan::pattern;
use crate::words::write::{Writer, write_sizes};

use super::project::sized_and_met;
use super::{Resized, Size};

/// What a size comes to.
#[derive(Debug, Clone)]
pub struct MadeSize {
    /// Height of the stuffed piece by forecast, mm.
    pub height_mm: f64,
    /// Greatest width, mm; along the straight sides of an oval.
    pub width_mm: f64,
    /// Depth across the straight sides of an oval, mm.
    pub depth_mm: Option<f64>,
    /// The piece at that size.
    pub piece: Piece,
    /// Its plan.
    pub plan: Plan,
    /// Rounds.
    pub rounds: u32,
    /// Stitches, yarn, stuffing and time of one copy.
    pub needs: Estimate,
    /// RMS distance of forecast and outline, stitch widths.
    pub fit: Option<f64>,
    /// Whether the wanted measure is met.
    pub met: bool,
    /// What could not be carried over, kept or met.
    pub notes: Vec<Sentence>,
}

/// A row of the table of sizes.
#[derive(Debug, Clone)]
pub struct SizeRow {
    /// The size's name; `None` for the piece as it is drawn.
    pub name: Option<String>,
    /// What it comes to, or why it cannot be made.
    pub made: Result<MadeSize>,
}

impl MadeSize {
    /// How many times as large as `other` it is, height and width together, as
    /// [`SizeBy::Factor`](super::SizeBy::Factor) counts.
    pub fn times(&self, other: &Self) -> f64 {
        let both = |made: &Self| (made.height_mm * made.width_mm).sqrt();
        both(self) / both(other)
    }

    fn of(made: &Resized) -> Self {
        let plan = &made.plan;
        Self {
            height_mm: plan.size_mm.height,
            width_mm: plan.size_mm.width,
            depth_mm: plan.depth_mm,
            piece: made.piece.clone(),
            plan: plan.clone(),
            rounds: plan.rounds.len() as u32,
            needs: plan.estimate.clone(),
            fit: plan.fit.map(|fit| fit.rms_stitches),
            met: made.is_met(),
            notes: made.notes.clone(),
        }
    }
}

/// The table of sizes of `piece`, one of `project`: the piece as it is drawn, then its sizes in their
/// order, each with its seams met. A size that cannot be made has its reason in its row.
pub fn size_table(project: &Project, piece: &Piece) -> Vec<SizeRow> {
    let drawn = plan(piece).map(|plan| {
        let base_rounds = plan.rounds.len() as u32;
        let (piece, notes) = (piece.clone(), Vec::new());
        MadeSize::of(&Resized { piece, plan, scale: 1.0, base_rounds, wanted: None, notes })
    });
    let sizes = piece.sizes.iter().map(|size| SizeRow {
        name: Some(size.name.clone()),
        made: sized_and_met(project, piece.id, size).map(|made| MadeSize::of(&made)),
    });
    std::iter::once(SizeRow { name: None, made: drawn }).chain(sizes).collect()
}

/// The wording of all sizes of `piece`, one of `project`, in one text, in the project's own words: lines
/// that differ in numbers alone are one, the first size's number first and the others' in
/// brackets.
///
/// # Errors
/// As [`sized`](super::sized), for the first size that cannot be made; for a piece without sizes.
pub fn written(project: &Project, piece: &Piece) -> Result<String> {
    if piece.sizes.is_empty() {
        let place = format!("piece “{}”", piece.name);
        return Err(Error::new(place, "it has no sizes", "add sizes to it first"));
    }
    let made = piece
        .sizes
        .iter()
        .map(|size| sized_and_met(project, piece.id, size))
        .collect::<Result<Vec<Resized>>>()?;
    let named = |(size, made)| {
        let (size, made): (&Size, &Resized) = (size, made);
        (size.name.as_str(), &made.piece, &made.plan)
    };
    let sizes: Vec<_> = piece.sizes.iter().zip(&made).map(named).collect();
    Ok(written_as(&project.wording.writer()?, &sizes))
}

/// As [`written`], of sizes that are planned already, each by its name, in `writer`'s words.
/// Of no sizes, no text.
pub fn written_as(writer: &Writer<'_>, sizes: &[(&str, &Piece, &Plan)]) -> String {
    let Some(((first, piece, _), others)) = sizes.split_first() else { return String::new() };
    let patterns: Vec<_> = sizes.iter().map(|(_, piece, plan)| pattern(piece, plan)).collect();
    let others: Vec<&str> = others.iter().map(|size| size.0).collect();
    let mut heading = format!("{}: {first}", piece.name);
    if !others.is_empty() {
        // Lines that stand apart name their size by its number.
        let named = |(i, size): (u32, &(&str, &Piece, &Plan))| {
            let number = writer.phrases().size.replace("{n}", &i.to_string());
            format!("{number} = {}", size.0)
        };
        let numbers: Vec<String> = (1..).zip(sizes).map(named).collect();
        heading += &format!(" ({})\n{}", others.join(", "), numbers.join(", "));
    }
    format!("{heading}\n{}", write_sizes(&patterns, writer.style(), writer.lexicon()))
}
