//! `plumpline rounds`: the rounds of a project, as lines or as JSON.

use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use plumpline_core::{Piece, Plan, Project, file, plan};

use super::report::Report;

/// Arguments of `plumpline rounds`.
#[derive(Debug, Args)]
pub(super) struct Rounds {
    /// Project file.
    project: PathBuf,
    /// Everything the plan says, as JSON.
    #[arg(long)]
    json: bool,
    /// Only the piece of this name.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
}

impl Rounds {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let project = file::load(&self.project)?;
        let shown = self.project.display();
        let pieces: Vec<&Piece> = project
            .pieces
            .iter()
            .filter(|p| self.piece.as_ref().is_none_or(|name| *name == p.name))
            .collect();
        if let (true, Some(name)) = (pieces.is_empty(), &self.piece) {
            let names: Vec<&str> = project.pieces.iter().map(|p| p.name.as_str()).collect();
            return Err(anyhow!(
                "{shown}: there is no piece “{name}”; the pieces are {}",
                names.join(", ")
            ));
        }
        let writer = project.wording.writer()?;
        let mut planned = Vec::new();
        for piece in pieces {
            let plan =
                plan(piece).map_err(|e| anyhow!("{shown}, piece “{}”, {e}", piece.name))?;
            planned.push((piece, plan.in_words_of(piece, &writer)));
        }
        if self.json {
            let json = serde_json::to_string_pretty(&Report::new(&project, &planned))?;
            super::print(&(json + "\n"));
        } else {
            super::print(&lines(&project, &planned));
        }
        Ok(())
    }
}

fn lines(project: &Project, planned: &[(&Piece, Plan)]) -> String {
    let mut out = String::new();
    for (piece, plan) in planned {
        // Writing to a String cannot fail.
        let mut put = |line: String| writeln!(out, "{line}").ok();
        put(format!(
            "{}: {:.0} × {:.0} mm high × wide, {} rounds, {} stitches",
            piece.name,
            plan.size_mm.0,
            plan.size_mm.1,
            plan.rounds.len(),
            plan.estimate.stitches
        ));
        if let Some(chain) = plan.chain {
            put(format!("Chain {chain}, joined into a ring"));
        }
        for line in &plan.wording.lines {
            put(format!("{}: {} [{}]", line.heading, line.text, line.count));
            if plan.wording.stuff_after == Some(line.last) {
                put(plan.wording.stuff_text.clone());
            }
        }
        if let Some(fit) = plan.fit {
            put(format!(
                "Fit to the outline: {:.2} st RMS, {:.2} st at most",
                fit.rms_stitches, fit.max_stitches
            ));
        }
        for used in &plan.estimate.yarn {
            let yarn = &project.yarns[used.yarn];
            put(format!(
                "{}: {:.1} m, {:.1} g",
                yarn.name,
                used.metres,
                yarn.grams(used.metres)
            ));
        }
        for warning in &plan.warnings {
            put(format!("Note: {}", warning.text));
        }
    }
    out
}
