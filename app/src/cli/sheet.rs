//! `plumpline sheet`: the pattern of a project as a file to print or send.

use std::path::PathBuf;

use anyhow::{anyhow, bail};
use clap::Args;
use plumpline_core::{file, sheet};

/// Arguments of `plumpline sheet`.
#[derive(Debug, Args)]
pub(super) struct Sheet {
    /// Project file.
    project: PathBuf,
    /// File to write; its ending, .txt or .md, decides the form.
    #[arg(short, long)]
    output: PathBuf,
    /// Terms to write in instead of the project's: us, uk, de, fr or es.
    #[arg(long, value_name = "TERMS")]
    terms: Option<String>,
    /// House style to write in instead of the project's.
    #[arg(long, value_name = "NAME")]
    style: Option<String>,
}

impl Sheet {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.output.display();
        let lay = match self.output.extension().and_then(|e| e.to_str()) {
            Some("txt") => sheet::text,
            Some("md") => sheet::markdown,
            _ => bail!("{shown}: the ending is not known; end the name in .txt or .md"),
        };
        let mut project = file::load(&self.project)?;
        if let Some(terms) = self.terms {
            project.wording.lexicon = match terms.as_str() {
                "us" | "uk" => format!("en-{terms}"),
                _ => terms,
            };
        }
        if let Some(style) = self.style {
            project.wording.style = style;
        }
        let page = lay(&project).map_err(|e| anyhow!("{}: {e}", self.project.display()))?;
        std::fs::write(&self.output, page)
            .map_err(|e| anyhow!("{shown}: it cannot be written ({e}); check the folder"))
    }
}
