//! `plumpline compare`: what a maker who has the older pattern needs to know of the newer.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use plumpline_core::{disk, file, sheet};

/// Arguments of `plumpline compare`.
#[derive(Debug, Args)]
pub(super) struct CompareArgs {
    /// The project as it was published.
    old: PathBuf,
    /// The project as it is now.
    new: PathBuf,
    /// Text file to write; without one it is printed.
    #[arg(short, long)]
    output: Option<PathBuf>,
}

impl CompareArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let (old, new) = (file::load(&self.old)?, file::load(&self.new)?);
        let changes =
            sheet::changes(&old, &new).map_err(|e| anyhow!("{}: {e}", self.new.display()))?;
        match &self.output {
            None => super::out::print(&changes.text()),
            Some(path) => disk::write(path, changes.text().as_bytes())?,
        }
        Ok(())
    }
}
