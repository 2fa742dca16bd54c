//! `plumpline trace`: a project from a picture of a thing seen from the side.

use std::path::{Path, PathBuf};

use anyhow::{anyhow, bail};
use clap::{Args, ValueEnum};
use plumpline_core::{Firmness, Gauge, Piece, Project, Unit, disk, plan};
use plumpline_trace::{
    Scale, Stroke, TraceGround, TraceReport, TraceWish, TracedEnd, TracedSide,
};

use super::length::parse_mm;
use super::out::{print, print_lines};
use crate::work::carried;
use crate::work::picture::{laid_over, photo};
use crate::work::shape_file::{laid, traced};
use crate::work::shape_reading::name_of;

/// Half the thickness of a stroke, as a share of the picture's longer side.
const STROKE: f64 = 0.01;

/// Which side of the thing is taken.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum SideName {
    Mean,
    Left,
    Right,
}

/// Which end of the thing the working starts at.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum EndName {
    Top,
    Bottom,
}

/// Arguments of `plumpline trace`.
#[derive(Debug, Args)]
#[command(group(clap::ArgGroup::new("size").required(true).args(["height", "known"])))]
pub(super) struct TraceArgs {
    /// Picture of the thing, seen from the side: PNG, JPEG or WebP.
    picture: PathBuf,
    /// How high the thing is along its axis, such as 9cm.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    height: Option<f64>,
    /// A length that is known between two places of the picture, in pixels: X,Y,X,Y=LENGTH.
    #[arg(long, value_parser = parse_known, value_name = "PLACES=LENGTH")]
    known: Option<Scale>,
    /// Which side is taken.
    #[arg(long, value_enum, default_value = "mean")]
    side: SideName,
    /// Where the working starts.
    #[arg(long, value_enum, default_value = "top")]
    start: EndName,
    /// How far the outline may lie from the edge, such as 0.5mm; a quarter of a percent of
    /// the height if left out.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    tolerance: Option<f64>,
    /// Cut off what no turned shape has, such as a handle; it is told of either way.
    #[arg(long)]
    cut: bool,
    /// Rectangle around the thing, in pixels, where the background is not plain.
    #[arg(long, value_parser = parse_frame, value_name = "X,Y,X,Y")]
    frame: Option<[(f64, f64); 2]>,
    /// A stroke over the thing, in pixels; any number of them.
    #[arg(long, value_parser = parse_points, value_name = "X,Y,X,Y,…")]
    thing: Vec<Points>,
    /// A stroke over its background, in pixels; any number of them.
    #[arg(long, value_parser = parse_points, value_name = "X,Y,X,Y,…")]
    background: Vec<Points>,
    /// Stitches in the swatch; 22 to 10 cm if left out.
    #[arg(long, requires_all = ["rounds", "per"])]
    stitches: Option<f64>,
    /// Rounds in the swatch; 24 to 10 cm if left out.
    #[arg(long, requires_all = ["stitches", "per"])]
    rounds: Option<f64>,
    /// Length both were counted over, such as 10cm or 4in.
    #[arg(long, value_parser = parse_mm, requires = "stitches")]
    per: Option<f64>,
    /// soft, medium, firm, or the strain a ball shows, such as 0.08.
    #[arg(long, value_parser = Firmness::parse)]
    firmness: Option<Firmness>,
    /// Name of the piece; the picture's file name if left out.
    #[arg(long)]
    name: Option<String>,
    /// Picture to write with the traced line over it, .png.
    #[arg(long, value_name = "PNG")]
    over: Option<PathBuf>,
    /// Project file to write.
    #[arg(short, long, value_name = "RON")]
    output: PathBuf,
}

/// Places of a stroke.
#[derive(Debug, Clone)]
struct Points(Vec<(f64, f64)>);

fn numbers(text: &str) -> Result<Vec<(f64, f64)>, String> {
    let wrong = || format!("“{text}” is no list of places; write X,Y,X,Y in pixels");
    let values: Vec<f64> = text
        .split(',')
        .map(|n| n.trim().parse::<f64>().ok().filter(|v| v.is_finite()))
        .collect::<Option<_>>()
        .ok_or_else(wrong)?;
    if !values.len().is_multiple_of(2) {
        return Err(wrong());
    }
    Ok(values.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect())
}

fn parse_points(text: &str) -> Result<Points, String> {
    numbers(text).map(Points)
}

fn parse_frame(text: &str) -> Result<[(f64, f64); 2], String> {
    let places = numbers(text)?;
    <[(f64, f64); 2]>::try_from(places)
        .map_err(|_| format!("“{text}” is no rectangle; write its corners X,Y,X,Y in pixels"))
}

fn parse_known(text: &str) -> Result<Scale, String> {
    let wrong = || format!("“{text}” is no known length; write it like 40,10,40,310=9cm");
    let (places, mm) = text.split_once('=').ok_or_else(wrong)?;
    let [from, to] = parse_frame(places).map_err(|_| wrong())?;
    Ok(Scale::Known { from, to, mm: parse_mm(mm)? })
}

impl TraceArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let gauge = match (self.stitches, self.rounds, self.per) {
            (Some(stitches), Some(rounds), Some(per)) => Gauge::per(stitches, rounds, per),
            _ => Gauge::default(),
        };
        gauge.validate()?;
        let picture = photo(&self.picture).map_err(|e| anyhow!(e))?;
        let wish = self.wish(picture.size)?;
        let traced = traced(&self.picture, &picture, &wish, &|_| true)
            .map_err(|e| anyhow!(e))?
            .ok_or_else(|| anyhow!("{}: stopped", self.picture.display()))?;
        if let Some(over) = &self.over {
            write_over(&self.picture, over, &traced.report)?;
        }
        let name = self.name.clone().unwrap_or_else(|| name_of(&self.picture));
        let mut piece = Piece::new(name, traced.outline, gauge);
        piece.firmness = self.firmness.unwrap_or(piece.firmness);
        piece.picture = laid(&self.picture, picture.size, &traced.report, wish.start);
        plan(&piece)?; // A project that cannot be planned is not worth a file.
        print(&(traced.report.told(Unit::Mm).join("\n") + "\n"));
        if !traced.report.odd.is_empty() && !self.cut {
            print("--cut cuts off what is not turned\n");
        }
        let told = carried::save(Project::of_piece(piece), None, &self.output)?;
        print_lines(&told);
        Ok(())
    }

    fn wish(&self, (width, height): (u32, u32)) -> anyhow::Result<TraceWish> {
        let scale = match (self.height, self.known) {
            (Some(mm), _) => Scale::Height(mm),
            (None, Some(known)) => known,
            (None, None) => bail!("trace: no size; give --height or --known"),
        };
        let radius = STROKE * f64::from(width.max(height));
        let stroke = |thing: bool| {
            move |points: &Points| Stroke { thing, points: points.0.clone(), radius }
        };
        let strokes: Vec<Stroke> = self
            .thing
            .iter()
            .map(stroke(true))
            .chain(self.background.iter().map(stroke(false)))
            .collect();
        let ground = if self.frame.is_none() && strokes.is_empty() {
            TraceGround::Plain
        } else {
            TraceGround::Marked { frame: self.frame, strokes }
        };
        Ok(TraceWish {
            scale,
            ground,
            side: match self.side {
                SideName::Mean => TracedSide::Mean,
                SideName::Left => TracedSide::Left,
                SideName::Right => TracedSide::Right,
            },
            start: match self.start {
                EndName::Top => TracedEnd::Top,
                EndName::Bottom => TracedEnd::Bottom,
            },
            tolerance_mm: self.tolerance,
            cut: self.cut,
        })
    }
}

fn write_over(picture: &Path, over: &Path, report: &TraceReport) -> anyhow::Result<()> {
    if over.extension().is_none_or(|e| !e.eq_ignore_ascii_case("png")) {
        bail!("{}: the ending is not known; name it .png", over.display());
    }
    let bytes = laid_over(picture, &report.line, &report.knots).map_err(|e| anyhow!(e))?;
    disk::write(over, &bytes)?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_and_lengths_are_read_or_told_apart() {
        assert!(matches!(
            parse_known("40,10,40,310=9cm"),
            Ok(Scale::Known { from: (40.0, 10.0), to: (40.0, 310.0), mm: 90.0 })
        ));
        for text in ["40,10,40,310", "40,10,40=9cm", "a,b,c,d=9cm", "1,2,3,4=9 ells", "=", ""] {
            assert!(parse_known(text).is_err(), "{text}");
        }
        assert!(parse_frame("1,2,3").is_err() && parse_frame("1,2,3,inf").is_err());
        assert_eq!(parse_points("1,2,3,4").map(|p| p.0), Ok(vec![(1.0, 2.0), (3.0, 4.0)]));
    }
}
