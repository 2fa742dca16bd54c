//! `plumpline lesson`: the handouts of the lesson, in the stitches of whoever gives it; its
//! samples as a project; its words as a file to write one's own.

use std::path::PathBuf;

use anyhow::{anyhow, ensure};
use clap::Args;
use plumpline_core::lesson::LessonCourse;
use plumpline_core::{Gauge, Unit, Yarn, disk, file};

use super::new::parse_unit;
use super::resize::parse_gauge;
use super::sheet::PaperName;
use crate::work::files;
use crate::work::lesson_file::LessonPrint;

/// Arguments of `plumpline lesson`.
#[derive(Debug, Args)]
pub(super) struct LessonArgs {
    /// Project file whose stitches the lesson counts in.
    #[arg(conflicts_with = "gauge")]
    project: Option<PathBuf>,
    /// Swatch to count in: stitches × rounds over a length.
    #[arg(long, value_name = "SxR/LENGTH", value_parser = parse_gauge)]
    gauge: Option<Gauge>,
    /// File to write. PDF: for each step a sheet with its answer on the back, then the guide
    /// for who teaches it. RON: a project with a piece for each step.
    #[arg(short, long, required_unless_present = "words")]
    output: Option<PathBuf>,
    /// Teach the course in this file, written like the one that --words writes.
    #[arg(long, value_name = "FILE")]
    course: Option<PathBuf>,
    /// Write the words of the built-in course to this file, to be changed.
    #[arg(long, value_name = "FILE")]
    words: Option<PathBuf>,
    /// One step alone, by its number, with its guide.
    #[arg(long)]
    step: Option<usize>,
    /// Without the guide: what learners are given.
    #[arg(long)]
    handouts: bool,
    /// Unit of lengths.
    #[arg(long, value_parser = parse_unit, default_value = "cm")]
    unit: Unit,
    /// Paper.
    #[arg(long, value_enum, default_value_t = PaperName::A4)]
    paper: PaperName,
}

impl LessonArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        if let Some(path) = &self.words {
            disk::write(path, LessonCourse::english_text().as_bytes())?;
        }
        let Some(output) = &self.output else { return Ok(()) };
        let project = self.project.as_deref().map(file::load).transpose()?;
        let gauge = match &project {
            Some(project) => project.pieces[0].gauge,
            None => self.gauge.unwrap_or_default(),
        };
        let yarn = project.and_then(|project| project.yarns.into_iter().next());
        let colour = yarn.unwrap_or_else(|| Yarn::plain(0)).colour;
        let course = match &self.course {
            Some(path) => files::course(path)?,
            None => LessonCourse::english().clone(),
        };
        let all = course.steps.len();
        let steps = match self.step {
            None => 0..all,
            Some(step) => {
                ensure!(
                    (1..=all).contains(&step),
                    "--step: {step} is out of range; give 1 to {all}"
                );
                step - 1..step
            }
        };
        if output.extension().is_some_and(|e| e.eq_ignore_ascii_case("ron")) {
            let course = LessonCourse { steps: course.steps[steps].to_vec(), ..course };
            return Ok(file::save(&course.project(gauge)?, output)?);
        }
        let guide = !self.handouts;
        let paper = self.paper.into();
        let print = LessonPrint { course, steps, guide, gauge, unit: self.unit, paper, colour };
        let pdf = print.pdf().map_err(|e| anyhow!("{e}"))?;
        Ok(disk::write(output, &pdf)?)
    }
}
