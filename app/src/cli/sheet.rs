//! `plumpline sheet`: the pattern of a project as a file to print or send.

use std::path::PathBuf;

use anyhow::{anyhow, bail, ensure};
use clap::{Args, ValueEnum};
use plumpline_core::picture::chart::SingleSymbol;
use plumpline_core::project::sheet_design::SheetSection;
use plumpline_core::sheet::ScriptPace;
use plumpline_core::{disk, file, sheet};
use plumpline_typeset::{Columns, Options, Paper};

use crate::work::own_pictures::OwnPictures;
use crate::work::sheet_file::Form;

/// Arguments of `plumpline sheet`.
#[derive(Debug, Args)]
pub(super) struct SheetArgs {
    /// Project file.
    project: PathBuf,
    /// File to write; its ending decides the form: .pdf, .html, .md, .txt, or .png for the
    /// picture of a page; .srt or .vtt for what is said.
    #[arg(short, long)]
    output: PathBuf,
    /// Terms to write in instead of the project's: us, uk, de, fr, es or es-419.
    #[arg(long, value_name = "TERMS")]
    terms: Option<String>,
    /// House style to write in instead of the project's.
    #[arg(long, value_name = "NAME")]
    style: Option<String>,
    /// Paper of a .pdf or .png.
    #[arg(long, value_enum, default_value_t = PaperName::A4)]
    paper: PaperName,
    /// Columns of rounds in a .pdf or .png: one with pictures beside it, or two on fewer pages.
    #[arg(long, value_name = "1|2", default_value_t = 1)]
    columns: u32,
    /// Symbol for single crochet in charts.
    #[arg(long, value_enum, default_value_t = ChartSymbol::Cross)]
    chart: ChartSymbol,
    /// Write the pattern as sentences to say: .txt to read from, .srt or .vtt as captions.
    #[arg(long, conflicts_with = "blurb")]
    spoken: bool,
    /// How long the lines of a script stand: as long as they take to say, or to work.
    #[arg(long, value_enum, default_value_t = PaceName::Said)]
    pace: PaceName,
    /// Write what a shop says of the pattern: .txt or .md.
    #[arg(long)]
    blurb: bool,
    /// Add the form for testers as a page of its own.
    #[arg(long)]
    tester: bool,
    /// Which page a .png shows.
    #[arg(long, default_value_t = 1)]
    page: usize,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperName {
    /// 210 × 297 mm.
    A4,
    /// 8.5 × 11 in.
    Letter,
}

impl From<PaperName> for Paper {
    fn from(paper: PaperName) -> Self {
        match paper {
            PaperName::A4 => Self::A4,
            PaperName::Letter => Self::Letter,
        }
    }
}

/// The pace of a script.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum PaceName {
    /// As the sentences are said.
    Said,
    /// As the rounds are worked.
    Worked,
}

impl From<PaceName> for ScriptPace {
    fn from(pace: PaceName) -> Self {
        match pace {
            PaceName::Said => Self::Said,
            PaceName::Worked => Self::Worked,
        }
    }
}

/// The symbol for single crochet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ChartSymbol {
    /// ×
    Cross,
    /// +
    Plus,
}

impl From<ChartSymbol> for SingleSymbol {
    fn from(symbol: ChartSymbol) -> Self {
        match symbol {
            ChartSymbol::Cross => Self::Cross,
            ChartSymbol::Plus => Self::Plus,
        }
    }
}

impl SheetArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.output.display();
        let form = Form::of(&self.output).map_err(|e| anyhow!(e))?;
        let columns = match self.columns {
            1 => Columns::One,
            2 => Columns::Two,
            n => bail!("--columns: {n} is out of range; give 1 or 2"),
        };
        ensure!(self.page >= 1, "--page: pages are counted from 1; give 1 or more");
        let mut project = file::load(&self.project)?;
        if let Some(terms) = &self.terms {
            project.wording.lexicon = match terms.as_str() {
                "us" | "uk" => format!("en-{terms}"),
                _ => terms.clone(),
            };
        }
        if let Some(style) = &self.style {
            project.wording.style.clone_from(style);
        }
        if self.tester {
            project.sheet.show(SheetSection::Tester, true);
        }
        let mut sheet = sheet::sheet_with(&project, self.chart.into())
            .map_err(|e| anyhow!("{}: {e}", self.project.display()))?;
        let own =
            OwnPictures::default().put_in(&mut sheet, &project.sheet, self.project.parent());
        for trouble in own {
            super::complain(&format!("the sheet goes without a picture: {trouble}"));
        }
        let paper = self.paper.into();
        let pace = self.pace.into();
        let (bytes, replaced) = match (self.spoken || form.is_captions(), self.blurb) {
            (true, _) => {
                (form.script(&sheet, pace).map_err(|e| anyhow!("{shown}: {e}"))?, None)
            }
            (_, true) => (form.blurb(&sheet).map_err(|e| anyhow!("{shown}: {e}"))?, None),
            _ => form
                .file(&sheet, Options { paper, columns }, self.page)
                .map_err(|e| anyhow!(e))?,
        };
        if let Some(replaced) = replaced {
            super::complain(&format!("{shown}: {replaced}"));
        }
        Ok(disk::write(&self.output, &bytes)?)
    }
}
