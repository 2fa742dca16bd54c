//! `plumpline new`: a project from a measured profile, a starter or a written pattern, and a
//! gauge.

use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::outline::points;
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::project::shape::{project_of, shape};
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Firmness, Gauge, Outline, Piece, Project, disk, file, plan};

use super::length::parse_mm;
use crate::work::files::pattern_text;

/// The ease that stood for no choice.
const UNCHOSEN_EASE: f64 = 0.3;

/// How far the knots' curve may be from the points, in stitch widths.
const TOLERANCE_STITCHES: f64 = 0.02;

/// Arguments of `plumpline new`.
#[derive(Debug, Args)]
pub(super) struct New {
    /// Profile as radius_mm,height_mm rows in working order.
    #[arg(long, value_name = "CSV", required_unless_present_any = ["from_pattern", "starter"])]
    profile: Option<PathBuf>,
    /// Written pattern whose counts are kept, - for standard input.
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["profile", "simplicity", "ease"])]
    from_pattern: Option<PathBuf>,
    /// Terms of the pattern: us, uk, de, fr or es; found out from the text if left out.
    #[arg(long, requires = "from_pattern", value_parser = super::proofread::terms)]
    terms: Option<&'static str>,
    /// ball, egg, drop, cone, dome, bean, dish or float.
    #[arg(long, value_parser = Starter::parse, conflicts_with_all = ["profile", "from_pattern"])]
    starter: Option<Starter>,
    /// Height of the starter, such as 90mm.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    height: Option<f64>,
    /// Width of the starter.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    width: Option<f64>,
    /// Width of a float's neck.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    neck: Option<f64>,
    /// The long way across a bean.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    length: Option<f64>,
    /// Stitches in the swatch; 22 to 10 cm if left out with a starter.
    #[arg(long, required_unless_present = "starter", requires_all = ["rounds", "per"])]
    stitches: Option<f64>,
    /// Rounds in the swatch; 24 to 10 cm if left out with a starter.
    #[arg(long, required_unless_present = "starter", requires_all = ["stitches", "per"])]
    rounds: Option<f64>,
    /// Length both were counted over, such as 10cm or 4in.
    #[arg(long, value_parser = parse_mm, required_unless_present = "starter", requires = "stitches")]
    per: Option<f64>,
    /// soft, medium, firm, or the strain a ball shows, such as 0.08.
    #[arg(long, value_parser = Firmness::parse)]
    firmness: Option<Firmness>,
    /// 0 faithful to the profile … 1 simple to work; left out, the simplest whose likely fit
    /// no hand can tell from the best.
    #[arg(long)]
    simplicity: Option<f64>,
    /// The old spelling of simplicity.
    #[arg(long, hide = true, conflicts_with = "simplicity")]
    ease: Option<f64>,
    /// Name of the piece; the profile's file name or the starter's if left out.
    #[arg(long)]
    name: Option<String>,
    /// Project file to write.
    #[arg(short, long, value_name = "RON")]
    output: PathBuf,
}

impl New {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let gauge = match (self.stitches, self.rounds, self.per) {
            (Some(stitches), Some(rounds), Some(per)) => Gauge::per(stitches, rounds, per),
            _ => Gauge::default(),
        };
        gauge.validate()?;
        let project = match (&self.from_pattern, self.starter, &self.profile) {
            (Some(path), ..) => self.written_in(path, gauge)?,
            (None, Some(starter), _) => {
                self.planned(starter.piece(&self.dimensions(starter), gauge)?)?
            }
            (None, None, Some(path)) => self.planned(measured(path, gauge)?)?,
            (None, None, None) => {
                anyhow::bail!("new: no shape; give --profile, --starter or --from-pattern")
            }
        };
        file::save(&project, &self.output)?;
        Ok(())
    }

    /// A project of this piece under the name, firmness and simplicity that were asked for.
    fn planned(&self, mut piece: Piece) -> anyhow::Result<Project> {
        piece.name = self.name.clone().unwrap_or(piece.name);
        piece.firmness = self.firmness.unwrap_or(piece.firmness);
        piece.simplicity = self.simplicity.or(self.ease.filter(|&ease| ease != UNCHOSEN_EASE));
        plan(&piece)?; // A project that cannot be planned is not worth a file.
        Ok(Project::of_piece(piece))
    }

    fn written_in(&self, path: &Path, gauge: Gauge) -> anyhow::Result<Project> {
        let text = pattern_text(path)?;
        let reading = read(&text, self.terms.map_or(TermsWish::Infer, TermsWish::Lexicon));
        let firmness = self.firmness.unwrap_or_default();
        let name = self.name_for(path);
        let made = shape(&reading.pattern, &reading.unread, &name, gauge, firmness)
            .context(path.display().to_string())?;
        for left_out in &made.left_out {
            eprintln!("{}: left out: {left_out}", path.display());
        }
        let project =
            project_of(made.pieces).ok_or_else(|| anyhow!("the pattern has no piece"))?;
        project.validate()?;
        Ok(project)
    }

    fn name_for(&self, path: &Path) -> String {
        let stem = path.file_stem().map(|s| s.to_string_lossy().into_owned());
        self.name.clone().or(stem).filter(|s| s != "-").unwrap_or_else(|| "Piece".into())
    }

    /// What was asked for; where only one of height and width was, the other goes with it.
    fn dimensions(&self, starter: Starter) -> Dimensions {
        let usual = starter.usual();
        let slim = usual.height_mm / usual.width_mm;
        let (height_mm, width_mm) = match (self.height, self.width) {
            (Some(height), Some(width)) => (height, width),
            (Some(height), None) => (height, height / slim),
            (None, Some(width)) => (width * slim, width),
            (None, None) => (usual.height_mm, usual.width_mm),
        };
        Dimensions { height_mm, width_mm, neck_mm: self.neck, length_mm: self.length }
    }
}

/// A piece of the profile measured in this file, named after it.
fn measured(profile: &Path, gauge: Gauge) -> anyhow::Result<Piece> {
    let shown = profile.display().to_string();
    let text = disk::read_text(profile, disk::LARGEST_PROFILE)?;
    let tolerance = TOLERANCE_STITCHES * gauge.stitch_width_mm();
    let outline = points::read_csv(&text)
        .and_then(|points| Outline::through_points(&points, tolerance))
        .context(shown)?;
    let stem = profile.file_stem().map(|s| s.to_string_lossy().into_owned());
    Ok(Piece::new(stem.unwrap_or_else(|| "Piece".into()), outline, gauge))
}
