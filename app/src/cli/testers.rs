//! `plumpline testers`: a form for testers, and what they returned against the forecast.

use std::path::PathBuf;
use std::time::SystemTime;

use anyhow::{anyhow, bail};
use clap::Args;
use plumpline_core::calibrate::Entry;
use plumpline_core::project::testers::{cloth_of, read_returns, spreads};
use plumpline_core::sheet::{self, BlurbForm};
use plumpline_core::{disk, file};

use super::calibrate::put_in_book;
use crate::work::day;
use crate::work::faces::PageMaker;

/// Largest table that is read, bytes.
const LARGEST_TABLE: u64 = 1 << 20;

/// Arguments of `plumpline testers`.
#[derive(Debug, Args)]
pub(super) struct TestersArgs {
    /// Project file of the pattern.
    project: PathBuf,
    /// What they returned: a .csv table with the columns tester, piece, stitches_per_10cm,
    /// rounds_per_10cm, height_mm, width_mm, yarn_g, stuffing_g, minutes, notes. Without one
    /// the form for testers is written.
    returns: Option<PathBuf>,
    /// File to write: the form as .pdf, .txt or .md, or what they got as .txt or, as a plot, .svg;
    /// without one the text is printed.
    #[arg(short, long)]
    output: Option<PathBuf>,
    /// Gauge book to enter what each hand taught; begun if there is none.
    #[arg(long, value_name = "RON", requires = "returns")]
    book: Option<PathBuf>,
}

impl TestersArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.project.display().to_string();
        let project = file::load(&self.project)?;
        let ending = self.output.as_ref().and_then(|path| path.extension()?.to_str());
        let text = match &self.returns {
            None => {
                let sheet = sheet::sheet(&project).map_err(|e| anyhow!("{shown}: {e}"))?;
                if let (Some("pdf"), Some(path)) = (ending, &self.output) {
                    let pages = PageMaker::default()
                        .tester_form(&sheet, Default::default())
                        .and_then(|pages| pages.pdf())
                        .map_err(|e| anyhow!("{shown}: {e}"))?;
                    return Ok(disk::write(path, &pages)?);
                }
                let form = match ending {
                    None | Some("txt") => BlurbForm::Plain,
                    Some("md") => BlurbForm::Markdown,
                    Some(_) => bail!("the form is a page; end its name in .pdf, .txt or .md"),
                };
                sheet::tester_form(&sheet, form)
            }
            Some(table) => {
                let text = disk::read_text(table, LARGEST_TABLE)?;
                let returns = read_returns(&project, &text)
                    .map_err(|e| anyhow!("{}: {e}", table.display()))?;
                let spreads =
                    spreads(&project, &returns).map_err(|e| anyhow!("{shown}: {e}"))?;
                if let Some(book) = &self.book {
                    enter(book, &project, &returns)?;
                }
                match ending {
                    None | Some("txt") => sheet::testers_got(&project, &spreads)?,
                    Some("svg") => {
                        let plot = sheet::testers_plot(&project, &spreads)?;
                        let told = sheet::testers_got(&project, &spreads)?;
                        sheet::drawing_svg(&plot, &project.title, &told, "")
                    }
                    Some(_) => bail!("what testers got is written as .txt or .svg"),
                }
            }
        };
        match &self.output {
            None => super::out::print(&text),
            Some(path) => disk::write(path, text.as_bytes())?,
        }
        Ok(())
    }
}

/// Enters what each tester's hand taught, under the first yarn of the piece.
fn enter(
    path: &std::path::Path,
    project: &plumpline_core::Project,
    returns: &[plumpline_core::project::testers::TesterReturn],
) -> anyhow::Result<()> {
    let date = day::iso(SystemTime::now());
    let mut entries = Vec::with_capacity(returns.len());
    for returned in returns {
        let Some(piece) = project.piece(returned.piece) else { continue };
        let Some(learned) = cloth_of(project, returned)? else { continue };
        let yarn = project.yarns.get(piece.yarn_of_round(1));
        let yarn = yarn.map_or("", |yarn| yarn.name.as_str());
        entries.push(Entry::learned(yarn, &returned.tester, &date, piece, &learned));
    }
    put_in_book(path, entries)
}
