//! `plumpline new`: a project from a measured profile and a gauge.

use std::path::PathBuf;

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::outline::points;
use plumpline_core::{Firmness, Gauge, Outline, Piece, Project, file, plan};

use crate::length::parse_mm;

/// How far the knots' curve may be from the points, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// Arguments of `plumpline new`.
#[derive(Debug, Args)]
pub(super) struct New {
    /// Profile as radius_mm,height_mm rows in working order.
    #[arg(long, value_name = "CSV")]
    profile: PathBuf,
    /// Stitches in the swatch.
    #[arg(long)]
    stitches: f64,
    /// Rounds in the swatch.
    #[arg(long)]
    rounds: f64,
    /// Length both were counted over, such as 10cm or 4in.
    #[arg(long, value_parser = parse_mm)]
    per: f64,
    /// soft, medium, firm, or the strain a ball shows, such as 0.08.
    #[arg(long, value_parser = Firmness::parse)]
    firmness: Option<Firmness>,
    /// 0 faithful to the profile … 1 easy to work.
    #[arg(long)]
    ease: Option<f64>,
    /// Name of the piece; the profile's file name if left out.
    #[arg(long)]
    name: Option<String>,
    /// Project file to write.
    #[arg(short, long, value_name = "RON")]
    output: PathBuf,
}

impl New {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.profile.display().to_string();
        let text = std::fs::read_to_string(&self.profile)
            .map_err(|e| anyhow!("{shown}: it cannot be read ({e}); check the name"))?;
        let gauge = Gauge::per(self.stitches, self.rounds, self.per);
        gauge.validate()?;
        let tolerance = TOLERANCE_STITCHES * gauge.stitch_width_mm();
        let outline = points::read_csv(&text)
            .and_then(|points| Outline::through_points(&points, tolerance))
            .context(shown)?;
        let stem = self.profile.file_stem().map(|s| s.to_string_lossy().into_owned());
        let name = self.name.or(stem).unwrap_or_else(|| "Piece".into());
        let mut piece = Piece::new(name, outline, gauge);
        piece.firmness = self.firmness.unwrap_or(piece.firmness);
        piece.ease = self.ease.unwrap_or(piece.ease);
        plan(&piece)?; // A project that cannot be planned is not worth a file.
        file::save(&Project::of_piece(piece), &self.output)?;
        Ok(())
    }
}
