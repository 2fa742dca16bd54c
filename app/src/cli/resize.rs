//! `plumpline resize`: a project at another height, width, scale or gauge, or made to meet a
//! companion.

use std::path::PathBuf;

use anyhow::{Context as _, anyhow, bail};
use clap::Args;
use plumpline_core::Extent;
use plumpline_core::companion::{self, At, Edge, Seam, SeamKind, Side};
use plumpline_core::sizes::{self, Keeps, Resized};
use plumpline_core::{Gauge, PieceId, Project, Size, SizeBy, file};

use super::length::parse_mm;
use super::sized::named;
use crate::work::carried;

/// Arguments of `plumpline resize`.
#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("by").required(true).args(["height", "width", "factor", "gauge", "meet"])))]
pub(super) struct Resize {
    /// Project file.
    project: PathBuf,
    /// Height it is to have once stuffed, such as 12cm.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    height: Option<f64>,
    /// Width it is to have once stuffed.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    width: Option<f64>,
    /// What to multiply its outline by.
    #[arg(long)]
    factor: Option<f64>,
    /// Another swatch, such as 26x30/10cm: stitches, rounds, and the length both cover.
    #[arg(long, value_parser = parse_gauge, value_name = "SWATCH")]
    gauge: Option<Gauge>,
    /// What stays as it is at another gauge: size or rounds.
    #[arg(
        long,
        value_parser = parse_keeps,
        requires = "gauge",
        conflicts_with_all = ["height", "width", "factor", "meet"],
        value_name = "WHAT"
    )]
    keep: Option<Keeps>,
    /// Make the piece's open edge meet this round of a companion: PIECE:ROUND, PIECE:start or
    /// PIECE:end.
    #[arg(long, value_name = "PIECE:ROUND")]
    meet: Option<String>,
    /// Where the piece itself meets it: a round, start or end; its open edge if left out.
    #[arg(long, value_parser = parse_at, requires = "meet", value_name = "ROUND")]
    at: Option<At>,
    /// Room to leave between the two instead of sewing them, such as 3mm.
    #[arg(long, value_parser = parse_mm, requires = "meet", value_name = "LENGTH")]
    clearance: Option<f64>,
    /// Only the piece of this name; all of them together if left out.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// Keep the stitches of necks, lips and openings.
    #[arg(long)]
    keep_features: bool,
    /// Keep as many repeats a round, and the plain zone.
    #[arg(long)]
    family: bool,
    /// Project file to write.
    #[arg(short, long, value_name = "RON")]
    output: PathBuf,
}

/// `26x30/10cm` as a gauge.
pub(super) fn parse_gauge(text: &str) -> Result<Gauge, String> {
    let wrong = || format!("“{text}” is no swatch; write it like 26x30/10cm");
    let (counts, length) = text.split_once('/').ok_or_else(wrong)?;
    let (stitches, rounds) = counts.split_once(['x', '×', 'X']).ok_or_else(wrong)?;
    let number = |text: &str| text.trim().replace(',', ".").parse::<f64>().map_err(|_| wrong());
    let gauge = Gauge::per(number(stitches)?, number(rounds)?, parse_mm(length)?);
    gauge.validate().map_err(|e| e.to_string())?;
    Ok(gauge)
}

fn parse_keeps(text: &str) -> Result<Keeps, String> {
    match text {
        "size" => Ok(Keeps::Size),
        "rounds" => Ok(Keeps::Rounds),
        _ => Err(format!("“{text}” cannot be kept; write size or rounds")),
    }
}

fn parse_at(text: &str) -> Result<At, String> {
    match text {
        "start" => Ok(At::OpenStart),
        "end" => Ok(At::OpenEnd),
        number => match number.parse() {
            Ok(round @ 1..) => Ok(At::Round(round)),
            _ => Err(format!("“{text}” is no round; write a number from 1, start or end")),
        },
    }
}

impl Resize {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.project.display().to_string();
        let mut project = file::load(&self.project)?;
        let only = match &self.piece {
            Some(name) => Some(named(&project, name).context(shown.clone())?.id),
            None => None,
        };
        let said = match &self.meet {
            Some(other) => self.met(&mut project, only, other).context(shown)?,
            None => self.resized(&mut project, only).context(shown)?,
        };
        project.validate()?;
        let told = carried::save(project, Some(&self.project), &self.output)?;
        super::out::print(&said);
        super::out::print_lines(&told);
        Ok(())
    }

    /// Sizes one piece, or all in step with the first; seams are met again.
    fn resized(&self, project: &mut Project, only: Option<PieceId>) -> anyhow::Result<String> {
        let first = only.and_then(|id| project.piece(id)).unwrap_or(&project.pieces[0]);
        let by = match (self.height, self.width, self.factor, self.gauge) {
            (Some(mm), ..) => SizeBy::Height(mm),
            (_, Some(mm), ..) => SizeBy::Width(mm),
            (.., Some(factor), _) => SizeBy::Factor(factor),
            (.., Some(gauge)) => {
                // A swatch is written without its hook; the old one is the best guess.
                let hook_mm = first.gauge.hook_mm;
                let gauge = Gauge { hook_mm, ..gauge };
                SizeBy::Gauge { gauge, keeps: self.keep.unwrap_or_default() }
            }
            _ => bail!("give --height, --width, --factor, --gauge or --meet"),
        };
        let size =
            Size { keep: self.keep_features, family: self.family, ..Size::new("new", by) };
        let done = sizes::resize(project, only, &size)?;
        let mut out = String::new();
        for (_, made) in &done.made {
            out += &said(made);
        }
        done.seams.iter().for_each(|text| out += &format!("{text}\n"));
        *project = done.project;
        Ok(out)
    }

    /// Joins a piece to a companion and makes it meet it.
    fn met(
        &self,
        project: &mut Project,
        only: Option<PieceId>,
        other: &str,
    ) -> anyhow::Result<String> {
        let (name, at) = other
            .rsplit_once(':')
            .ok_or_else(|| anyhow!("--meet: “{other}” names no round; write PIECE:ROUND"))?;
        let theirs = Edge {
            piece: named(project, name)?.id,
            at: parse_at(at).map_err(|e| anyhow!("--meet: {e}"))?,
        };
        let others = project.pieces.iter().filter(|piece| piece.id != theirs.piece);
        let piece =
            match (only.and_then(|id| project.piece(id)), &others.collect::<Vec<_>>()[..]) {
                (Some(own), _) => own,
                (None, [other]) => *other,
                _ => bail!("--meet: which piece is to meet it? Name it by --piece"),
            };
        let at = match self.at {
            Some(at) => at,
            None if !piece.outline.finishes_closed() => At::OpenEnd,
            None if !piece.outline.starts_closed() => At::OpenStart,
            None => {
                bail!("piece “{}” has no open edge; say where it meets by --at", piece.name)
            }
        };
        let kind = match self.clearance {
            Some(mm) => SeamKind::Clearance { mm, stuffed: true },
            None => SeamKind::SewnEqual,
        };
        let own = Edge { piece: piece.id, at };
        let seam = Seam { moves: Side::B, ..Seam::new(theirs, own, kind) };
        let number = companion::join(project, seam);
        project.validate()?;
        let met = companion::meet(project, number)?;
        *project = met.project;
        let mut out = String::new();
        met.changes.iter().for_each(|c| out += &format!("{}\n", c.said));
        out += &format!("{}\n", met.report.sentence());
        Ok(out)
    }
}

/// What a sized piece came to, in lines.
fn said(made: &Resized) -> String {
    let Extent { height, width } = made.plan.size_mm;
    let mut out = format!(
        "{}: {height:.0} × {width:.0} mm high × wide, {} rounds (was {}), {} stitches\n",
        made.piece.name,
        made.plan.rounds.len(),
        made.base_rounds,
        made.plan.estimate.stitches
    );
    made.notes.iter().for_each(|note| out += &format!("Note: {note}\n"));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn swatches_are_read() {
        let gauge = parse_gauge("26x30/10cm").expect("a swatch");
        assert_eq!((gauge.stitches, gauge.rounds, gauge.along_mm), (26.0, 30.0, 100.0));
        assert!(parse_gauge("13 × 15,5 / 2in").is_ok());
        for wrong in ["26/10cm", "26x30", "x/10cm", "26x30/0", "0x30/10cm"] {
            assert!(parse_gauge(wrong).is_err(), "{wrong}");
        }
    }
}
