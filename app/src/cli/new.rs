//! `plumpline new`: a project from a measured, drawn or modelled profile, a starter, a formula
//! or a written pattern, and a gauge.

use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::project::shape::{ToldCount, missing_counts, project_of, shape_told};
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Firmness, Gauge, Piece, Project, Unit, file, plan};
use plumpline_trace::formula;

use super::length::parse_mm;
use super::out::print;
use crate::work::files::pattern_text;
use crate::work::shape_file::{ProfileReading, read_profile, tolerance_mm};
use crate::work::shape_reading::name_of;

/// The ease that stood for no choice.
const UNCHOSEN_EASE: f64 = 0.3;

/// Arguments of `plumpline new`.
#[derive(Debug, Args)]
pub(super) struct New {
    /// Profile: rows of radius_mm,height_mm in working order (.csv), a drawn path (.svg), or
    /// the mesh of a turned solid (.stl, .obj).
    #[arg(
        long,
        value_name = "FILE",
        required_unless_present_any = ["from_pattern", "starter", "formula"]
    )]
    profile: Option<PathBuf>,
    /// Radius in mm as a formula of z (the height above the start, mm), t (its share of the
    /// whole, 0 to 1) and h (the whole height, mm), such as "30*sin(pi*t)".
    #[arg(
        long,
        requires = "height",
        conflicts_with_all = ["profile", "from_pattern", "starter"]
    )]
    formula: Option<String>,
    /// Written pattern whose counts are kept, - for standard input.
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["profile", "simplicity", "ease"])]
    from_pattern: Option<PathBuf>,
    /// Terms of the pattern: us, uk, de, fr or es; found out from the text if left out.
    #[arg(long, requires = "from_pattern", value_parser = super::proofread::terms)]
    terms: Option<&'static str>,
    /// Stitches of a round that the pattern leaves out or that was not read: ROUND=STITCHES,
    /// or PIECE:ROUND=STITCHES where it has several pieces.
    #[arg(
        long,
        value_name = "ROUND=STITCHES",
        requires = "from_pattern",
        value_parser = told_count
    )]
    count: Vec<ToldCount>,
    /// ball, egg, drop, cone, dome, bean, dish or float.
    #[arg(long, value_parser = Starter::parse, conflicts_with_all = ["profile", "from_pattern"])]
    starter: Option<Starter>,
    /// Height of the starter, the drawing, the solid or the formula, such as 90mm.
    #[arg(long, value_parser = parse_mm, conflicts_with = "from_pattern")]
    height: Option<f64>,
    /// What one unit of a solid's file is: mm, cm or in.
    #[arg(long, value_parser = parse_unit, requires = "profile", default_value = "mm")]
    unit: Unit,
    /// Width of the starter.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    width: Option<f64>,
    /// Width of a float's neck.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    neck: Option<f64>,
    /// The long way across a bean.
    #[arg(long, value_parser = parse_mm, requires = "starter")]
    length: Option<f64>,
    /// How boxy a dome is: 2 is half a ball, more is fuller, less is more pointed.
    #[arg(long, requires = "starter")]
    exponent: Option<f64>,
    /// Stitches in the swatch; 22 to 10 cm if left out with a starter or formula.
    #[arg(
        long,
        required_unless_present_any = ["starter", "formula"],
        requires_all = ["rounds", "per"]
    )]
    stitches: Option<f64>,
    /// Rounds in the swatch; 24 to 10 cm if left out with a starter or formula.
    #[arg(
        long,
        required_unless_present_any = ["starter", "formula"],
        requires_all = ["stitches", "per"]
    )]
    rounds: Option<f64>,
    /// Length both were counted over, such as 10cm or 4in.
    #[arg(
        long,
        value_parser = parse_mm,
        required_unless_present_any = ["starter", "formula"],
        requires = "stitches"
    )]
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
        let project = match (&self.from_pattern, self.starter, &self.profile, &self.formula) {
            (Some(path), ..) => self.written_in(path, gauge)?,
            (None, Some(starter), ..) => self.planned(self.begun(starter, gauge)?)?,
            (None, None, Some(path), _) => self.planned(self.measured(path, gauge)?)?,
            (None, None, None, Some(formula)) => {
                let height = self.height.unwrap_or_default();
                let fitted = formula::outline(formula, height, tolerance_mm(gauge))?;
                self.planned(Piece::new("Piece", fitted.outline, gauge))?
            }
            (None, None, None, None) => anyhow::bail!(
                "new: no shape; give --profile, --formula, --starter or --from-pattern"
            ),
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
        let (pattern, unread) = (&reading.pattern, &reading.unread);
        let made = shape_told(pattern, unread, &self.count, &name, gauge, firmness);
        if made.is_err() {
            for missing in missing_counts(pattern, unread) {
                let rounds = match (missing.first, missing.last) {
                    (first, last) if first == last => format!("{first}"),
                    (first, last) => format!("{first} to {last}"),
                };
                let part = missing.part;
                eprintln!("piece {part}: tell round {rounds}: --count {part}:ROUND=STITCHES");
            }
        }
        let made = made.context(path.display().to_string())?;
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

    /// A piece of the profile in this file, named after it; what to judge it by is said.
    fn measured(&self, profile: &Path, gauge: Gauge) -> anyhow::Result<Piece> {
        let reading = ProfileReading {
            tolerance_mm: tolerance_mm(gauge),
            height_mm: self.height,
            unit: self.unit,
        };
        let shown = profile.display();
        let read = read_profile(profile, &reading, &|_| true)?
            .ok_or_else(|| anyhow!("{shown}: stopped"))?;
        for line in read.told(Unit::Mm) {
            print(&format!("{shown}: {line}\n"));
        }
        Ok(Piece::new(name_of(profile), read.outline().clone(), gauge))
    }

    /// A piece of this starter; a dome of any exponent is a superellipse.
    fn begun(&self, starter: Starter, gauge: Gauge) -> anyhow::Result<Piece> {
        let size = self.dimensions(starter);
        let Some(exponent) = self.exponent else { return Ok(starter.piece(&size, gauge)?) };
        if starter != Starter::Dome || self.neck.is_some() || self.length.is_some() {
            anyhow::bail!("new: only a dome has an exponent; leave it out");
        }
        let (height, width) = (size.height_mm, size.width_mm);
        let fitted = formula::dome(height, width, exponent, tolerance_mm(gauge))?;
        Ok(Piece::new(starter.name(), fitted.outline, gauge))
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

/// “5=24”, “2:5=24”: the stitches of a round, of the first piece where none is named.
fn told_count(text: &str) -> Result<ToldCount, String> {
    let told = || {
        let (place, count) = text.split_once('=')?;
        let (part, round) = place.split_once(':').unwrap_or(("1", place));
        Some(ToldCount {
            part: part.trim().parse().ok()?,
            round: round.trim().parse().ok()?,
            count: count.trim().parse().ok()?,
        })
    };
    told().ok_or_else(|| format!("“{text}” is no count; write 5=24, or 2:5=24 for piece 2"))
}

/// A unit by its symbol.
pub(super) fn parse_unit(text: &str) -> Result<Unit, String> {
    let named = |unit: &Unit| unit.symbol().eq_ignore_ascii_case(text.trim());
    Unit::ALL
        .into_iter()
        .find(named)
        .ok_or_else(|| format!("“{text}” is no unit; use mm, cm or in"))
}
