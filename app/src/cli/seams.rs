//! How seams stand, for programs and for people.

use anyhow::anyhow;
use plumpline_core::companion::{self, At, SeamReport};
use plumpline_core::{Plan, Project, Sentence};
use serde::Serialize;

/// How a seam stands, for programs.
#[derive(Debug, Serialize)]
pub(super) struct SeamJson {
    a: EdgeJson,
    b: EdgeJson,
    room_mm: f64,
    off_stitches: f64,
    met: bool,
    text: Sentence,
}

#[derive(Debug, Serialize)]
struct EdgeJson {
    piece: String,
    at: &'static str,
    round: u32,
    stitches: u32,
    across_mm: f64,
    across_unstuffed_mm: f64,
}

impl SeamJson {
    fn new(project: &Project, report: SeamReport) -> Self {
        let edge = |facts: &companion::EdgeFacts| EdgeJson {
            piece: project.name_of(facts.edge.piece).to_owned(),
            at: match facts.edge.at {
                At::OpenStart => "start",
                At::OpenEnd => "end",
                At::Round(_) => "round",
            },
            round: facts.round,
            stitches: facts.stitches,
            across_mm: facts.stuffed_mm,
            across_unstuffed_mm: facts.slack_mm,
        };
        Self {
            a: edge(&report.a),
            b: edge(&report.b),
            room_mm: report.room_mm,
            off_stitches: report.off_stitches,
            met: report.met,
            text: report.sentence(),
        }
    }
}

/// How the seams of `project` stand; `plans` are those of all its pieces.
pub(super) fn seams(project: &Project, plans: &[Plan]) -> anyhow::Result<Vec<SeamJson>> {
    (1..)
        .zip(companion::reports(project, plans))
        .map(|(number, report)| {
            let report = report.map_err(|e| anyhow!("seam {number}, {e}"))?;
            Ok(SeamJson::new(project, report))
        })
        .collect()
}

impl SeamJson {
    /// The seam in a sentence.
    pub(super) fn text(&self) -> &Sentence {
        &self.text
    }
}
