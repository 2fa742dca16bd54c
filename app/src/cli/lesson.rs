//! `plumpline lesson`: the handouts of the lesson, in the stitches of whoever gives it.

use std::path::PathBuf;

use anyhow::{Context as _, anyhow, ensure};
use clap::Args;
use plumpline_core::lesson::LessonCourse;
use plumpline_core::lesson::course::{lesson_page, teacher_page};
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Result, Unit, disk, file};
use plumpline_typeset::Press;

use super::new::parse_unit;
use super::resize::parse_gauge;
use super::sheet::PaperName;

/// Arguments of `plumpline lesson`.
#[derive(Debug, Args)]
pub(super) struct LessonArgs {
    /// Project file whose stitches the lesson counts in.
    #[arg(conflicts_with = "gauge")]
    project: Option<PathBuf>,
    /// Swatch to count in: stitches × rounds over a length.
    #[arg(long, value_name = "SxR/LENGTH", value_parser = parse_gauge)]
    gauge: Option<Gauge>,
    /// PDF to write: for each step a sheet with its answer on the back, then the guide for who
    /// teaches it.
    #[arg(short, long)]
    output: PathBuf,
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
        let gauge = match (&self.project, self.gauge) {
            (Some(path), _) => file::load(path)?.pieces[0].gauge,
            (None, gauge) => gauge.unwrap_or_default(),
        };
        let unit = self.unit;
        let course = LessonCourse::english();
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
        let writer = Writer::bench();
        let pages = steps.clone().map(|i| lesson_page(course, i, gauge, unit, &writer));
        let guides =
            steps.filter(|_| !self.handouts).map(|i| teacher_page(course, i, gauge, unit));
        let at = "the lesson at this gauge";
        let pages = pages.collect::<Result<Vec<_>>>().context(at)?;
        let guides = guides.collect::<Result<Vec<_>>>().context(at)?;
        let set = Press::new().lesson(&pages, &guides, self.paper.into());
        let pdf = set.and_then(|set| set.pdf()).map_err(|e| anyhow!("{e}"))?;
        Ok(disk::write(&self.output, &pdf)?)
    }
}
