//! `rounds --size` and `--all-sizes`: the pieces of a project at other sizes.

use anyhow::anyhow;
use plumpline_core::companion::{self, At, SeamReport};
use plumpline_core::sizes::{self, AtSize};
use plumpline_core::{Piece, Plan, Project, plan};
use serde::Serialize;

use super::report::PieceReport;

/// The index of the piece called `name`.
pub(super) fn named(project: &Project, name: &str) -> anyhow::Result<usize> {
    project.pieces.iter().position(|p| p.name == name).ok_or_else(|| {
        let names: Vec<&str> = project.pieces.iter().map(|p| p.name.as_str()).collect();
        anyhow!("there is no piece “{name}”; the pieces are {}", names.join(", "))
    })
}

/// The plans of all pieces of `project`, in its own words.
pub(super) fn plans(project: &Project, shown: &str) -> anyhow::Result<Vec<Plan>> {
    let writer = project.wording.writer()?;
    project
        .pieces
        .iter()
        .map(|piece| {
            let plan =
                plan(piece).map_err(|e| anyhow!("{shown}, piece “{}”, {e}", piece.name))?;
            Ok(plan.in_words_of(piece, &writer))
        })
        .collect()
}

/// `project` at every one of its sizes, with their names.
pub(super) fn all(project: &Project, shown: &str) -> anyhow::Result<Vec<(String, AtSize)>> {
    let names = sizes::size_names(project);
    if names.is_empty() {
        return Err(anyhow!("{shown}: the project has no sizes yet; add some in the studio"));
    }
    names
        .into_iter()
        .map(|name| {
            let at = sizes::at_size(project, name).map_err(|e| anyhow!("{shown}, {e}"))?;
            Ok((name.to_owned(), at))
        })
        .collect()
}

/// Says in the report of piece `index` that it is this size, and what there is to say of it.
pub(super) fn mark<'a>(
    report: &mut PieceReport<'a>,
    name: &'a str,
    at: &'a AtSize,
    index: usize,
) {
    report.size = at.made[index].is_some().then_some(name);
    let own = at.notes.iter().filter(|(piece, _)| *piece == index);
    report.notes = own.map(|(_, note)| note.as_str()).collect();
}

/// The wording of piece `index` at all the sizes it has, in one text.
pub(super) fn written(
    project: &Project,
    index: usize,
    all: &[(String, AtSize)],
    plans: &[Vec<Plan>],
) -> anyhow::Result<String> {
    let of_piece = all.iter().zip(plans).filter(|((_, at), _)| at.made[index].is_some());
    let made: Vec<(&str, &Piece, &Plan)> = of_piece
        .map(|((name, at), plans)| (name.as_str(), &at.project.pieces[index], &plans[index]))
        .collect();
    Ok(sizes::written_as(&project.wording.writer()?, &made))
}

/// The sizes of a piece as lines: what each comes to, then the wording of all.
pub(super) fn table(piece: &PieceReport<'_>) -> String {
    let mut out = format!("{}\n", piece.summary("as drawn"));
    for size in &piece.sizes {
        out += &format!("{}\n", size.summary(size.size.unwrap_or_default()));
        size.notes.iter().for_each(|note| out += &format!("  Note: {note}\n"));
    }
    if let Some(written) = &piece.written {
        out += &format!("\n{written}\n");
    }
    out
}

/// How a seam stands, for programs.
#[derive(Debug, Serialize)]
pub(super) struct SeamJson {
    a: EdgeJson,
    b: EdgeJson,
    room_mm: f64,
    off_stitches: f64,
    met: bool,
    text: String,
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
            piece: project.pieces[facts.edge.piece].name.clone(),
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
            text: report.text,
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
    pub(super) fn text(&self) -> &str {
        &self.text
    }
}
