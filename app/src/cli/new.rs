//! `plumpline new`: a project from a measured profile or a written pattern, and a gauge.

use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::outline::points;
use plumpline_core::pattern::read::{Wish, read};
use plumpline_core::pattern::shape::{project_of, shape};
use plumpline_core::{Firmness, Gauge, Outline, Piece, Project, file, plan};

use crate::length::parse_mm;
use crate::studio::jobs::pattern_text;

/// How far the knots' curve may be from the points, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// Arguments of `plumpline new`.
#[derive(Debug, Args)]
pub(super) struct New {
    /// Profile as radius_mm,height_mm rows in working order.
    #[arg(long, value_name = "CSV", required_unless_present = "from_pattern")]
    profile: Option<PathBuf>,
    /// Written pattern whose counts are kept, - for standard input.
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["profile", "ease"])]
    from_pattern: Option<PathBuf>,
    /// Terms of the pattern: us, uk, de, fr or es; found out from the text if left out.
    #[arg(long, requires = "from_pattern", value_parser = super::proofread::terms)]
    terms: Option<&'static str>,
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
        let gauge = Gauge::per(self.stitches, self.rounds, self.per);
        gauge.validate()?;
        let project = match (&self.from_pattern, &self.profile) {
            (Some(path), _) => self.written_in(path, gauge)?,
            (None, Some(path)) => self.shaped_by(path, gauge)?,
            (None, None) => anyhow::bail!("there is no profile; give one with --profile"),
        };
        file::save(&project, &self.output)?;
        Ok(())
    }

    fn shaped_by(&self, path: &Path, gauge: Gauge) -> anyhow::Result<Project> {
        let shown = path.display().to_string();
        let text = std::fs::read_to_string(path)
            .map_err(|e| anyhow!("{shown}: it cannot be read ({e}); check the name"))?;
        let tolerance = TOLERANCE_STITCHES * gauge.stitch_width_mm();
        let outline = points::read_csv(&text)
            .and_then(|points| Outline::through_points(&points, tolerance))
            .context(shown)?;
        let mut piece = Piece::new(self.name_for(path), outline, gauge);
        piece.firmness = self.firmness.unwrap_or(piece.firmness);
        piece.ease = self.ease.unwrap_or(piece.ease);
        plan(&piece)?; // A project that cannot be planned is not worth a file.
        Ok(Project::of_piece(piece))
    }

    fn written_in(&self, path: &Path, gauge: Gauge) -> anyhow::Result<Project> {
        let text = pattern_text(path)?;
        let reading = read(&text, self.terms.map_or(Wish::Infer, Wish::Lexicon));
        let firmness = self.firmness.unwrap_or_default();
        let name = self.name_for(path);
        let shaped = shape(&reading.pattern, &reading.unread, &name, gauge, firmness)
            .context(path.display().to_string())?;
        let project = project_of(shaped).ok_or_else(|| anyhow!("the pattern has no piece"))?;
        project.validate()?;
        Ok(project)
    }

    fn name_for(&self, path: &Path) -> String {
        let stem = path.file_stem().map(|s| s.to_string_lossy().into_owned());
        self.name.clone().or(stem).filter(|s| s != "-").unwrap_or_else(|| "Piece".into())
    }
}
