//! `plumpline rounds`: the rounds of a project, as it is drawn or at its sizes, as lines or as
//! JSON.

use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use plumpline_core::sizes::{self, AtSize};
use plumpline_core::{Piece, Plan, Project, file, words};

use super::report::{PieceReport, Report};
use super::{seams, sized};

/// Arguments of `plumpline rounds`.
#[derive(Debug, Args)]
pub(super) struct RoundsArgs {
    /// Project file.
    project: PathBuf,
    /// Everything the plan says, as JSON.
    #[arg(long)]
    json: bool,
    /// Only the piece of this name.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// The pieces at the size of this name.
    #[arg(long, value_name = "NAME")]
    size: Option<String>,
    /// The pieces at every size they have, in one wording.
    #[arg(long, conflicts_with = "size")]
    all_sizes: bool,
}

impl RoundsArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let project = file::load(&self.project)?;
        let shown = self.project.display().to_string();
        if let (true, Some(name)) = (self.chosen(&project).is_empty(), &self.piece) {
            let names: Vec<&str> = project.pieces.iter().map(|p| p.name.as_str()).collect();
            return Err(anyhow!(
                "{shown}: there is no piece “{name}”; the pieces are {}",
                names.join(", ")
            ));
        }
        let out = if self.all_sizes {
            self.at_all(&project, &shown)?
        } else if let Some(name) = &self.size {
            let at = sizes::at_size(&project, name).map_err(|e| anyhow!("{shown}, {e}"))?;
            self.at_one(name, &at, &shown)?
        } else {
            self.as_drawn(&project, &shown)?
        };
        super::out::print(&out);
        Ok(())
    }

    /// The pieces asked for, by index.
    fn chosen(&self, project: &Project) -> Vec<usize> {
        let asked = |p: &Piece| self.piece.as_ref().is_none_or(|name| *name == p.name);
        (0..project.pieces.len()).filter(|&i| asked(&project.pieces[i])).collect()
    }

    fn as_drawn(&self, project: &Project, shown: &str) -> anyhow::Result<String> {
        let plans = sized::plans(project, shown)?;
        let planned = self.planned(project, &plans);
        let seams = seams::seams(project, &plans)?;
        if self.json {
            let report = Report { seams, ..Report::new(project, &planned)? };
            return Ok(serde_json::to_string_pretty(&report)? + "\n");
        }
        let mut out = lines(project, &planned)?;
        seams.iter().for_each(|seam| out += &format!("Seam: {}\n", seam.text()));
        Ok(out)
    }

    fn planned<'a>(
        &self,
        project: &'a Project,
        plans: &'a [Plan],
    ) -> Vec<(&'a Piece, &'a Plan)> {
        let pair = |i: usize| (&project.pieces[i], &plans[i]);
        self.chosen(project).into_iter().map(pair).collect()
    }

    fn at_one(&self, name: &str, at: &AtSize, shown: &str) -> anyhow::Result<String> {
        let plans = sized::plans(&at.project, shown)?;
        let planned = self.planned(&at.project, &plans);
        let seams = seams::seams(&at.project, &plans)?;
        let mut report = Report { seams, ..Report::new(&at.project, &planned)? };
        for (piece, index) in report.pieces.iter_mut().zip(self.chosen(&at.project)) {
            sized::mark(piece, name, at, index);
        }
        if self.json {
            return Ok(serde_json::to_string_pretty(&report)? + "\n");
        }
        let mut out = lines(&at.project, &planned)?;
        report.seams.iter().for_each(|seam| out += &format!("Seam: {}\n", seam.text()));
        at.notes.iter().for_each(|(_, note)| out += &format!("Note: {note}\n"));
        Ok(out)
    }

    fn at_all(&self, project: &Project, shown: &str) -> anyhow::Result<String> {
        let all = sized::all(project, shown)?;
        let drawn = sized::plans(project, shown)?;
        let planned = self.planned(project, &drawn);
        let plans = all
            .iter()
            .map(|(_, at)| sized::plans(&at.project, shown))
            .collect::<anyhow::Result<Vec<_>>>()?;
        let mut report = Report::new(project, &planned)?;
        let mut out = String::new();
        for (piece, index) in report.pieces.iter_mut().zip(self.chosen(project)) {
            for ((name, at), plans) in all.iter().zip(&plans) {
                if at.made[index].is_none() {
                    continue;
                }
                let (piece_at, plan) = (&at.project.pieces[index], &plans[index]);
                let mut sized = PieceReport::new(&at.project, piece_at, plan)?;
                sized::mark(&mut sized, name, at, index);
                piece.sizes.push(sized);
            }
            if !piece.sizes.is_empty() {
                piece.written = Some(sized::written(project, index, &all, &plans)?);
            }
            out += &sized::table(piece);
        }
        report.seams = seams::seams(project, &drawn)?;
        if self.json {
            return Ok(serde_json::to_string_pretty(&report)? + "\n");
        }
        Ok(out)
    }
}

fn lines(project: &Project, planned: &[(&Piece, &Plan)]) -> anyhow::Result<String> {
    let writer = project.wording.writer()?;
    let mut out = String::new();
    for (piece, plan) in planned {
        // Writing to a String cannot fail.
        let mut put = |line: String| writeln!(out, "{line}").ok();
        put(format!(
            "{}: {:.0} × {:.0} mm high × wide, {} rounds, {} stitches",
            piece.name,
            plan.size_mm.height,
            plan.size_mm.width,
            plan.rounds.len(),
            plan.estimate.stitches
        ));
        if let Some(chain) = plan.chain {
            put(format!("Chain {chain}, joined into a ring"));
        }
        let words = words(plan, piece, &writer);
        for line in &words.lines {
            put(format!("{}: {} [{}]", line.heading, line.text, line.count));
            let inside = |under: bool| {
                let here = words.inside.iter().filter(move |i| i.under_stuffing == under);
                here.filter(|i| i.after == line.last)
            };
            for line in inside(true) {
                put(line.text.clone());
            }
            for stop in words.stuffing.iter().filter(|stop| stop.after == line.last) {
                put(stop.text.clone());
            }
            for line in inside(false) {
                put(line.text.clone());
            }
        }
        if let Some(fit) = plan.fit {
            put(format!(
                "Fit to the outline: {:.2} st RMS, {:.2} st at most; as hands vary, likely {:.2} st",
                fit.rms_stitches, fit.max_stitches, plan.likely_rms_stitches
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
            put(format!("Note: {}", warning.sentence()));
        }
    }
    Ok(out)
}
