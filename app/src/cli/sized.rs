//! `rounds --size` and `--all-sizes`: the pieces of a project at other sizes.

use anyhow::anyhow;
use plumpline_core::sizes::{self, AtSize};
use plumpline_core::{Piece, Plan, Project, plan};

use super::report::PieceReport;

/// The piece called `name`.
pub(super) fn named<'a>(project: &'a Project, name: &str) -> anyhow::Result<&'a Piece> {
    project.pieces.iter().find(|p| p.name == name).ok_or_else(|| {
        let names: Vec<&str> = project.pieces.iter().map(|p| p.name.as_str()).collect();
        anyhow!("there is no piece “{name}”; the pieces are {}", names.join(", "))
    })
}

/// The plans of all pieces of `project`.
pub(super) fn plans(project: &Project, shown: &str) -> anyhow::Result<Vec<Plan>> {
    project
        .pieces
        .iter()
        .map(|piece| plan(piece).map_err(|e| anyhow!("{shown}, piece “{}”, {e}", piece.name)))
        .collect()
}

/// `project` at every one of its sizes, with their names.
pub(super) fn all(project: &Project, shown: &str) -> anyhow::Result<Vec<(String, AtSize)>> {
    let names = sizes::size_names(project);
    if names.is_empty() {
        return Err(anyhow!("{shown}: the project has no sizes yet; add some in the studio"));
    }
    let made = sizes::at_all_sizes(project).map_err(|e| anyhow!("{shown}, {e}"))?;
    Ok(names.into_iter().map(str::to_owned).zip(made).collect())
}

/// Says in the report of piece `index` that it is this size, and what there is to say of it.
pub(super) fn mark<'a>(
    report: &mut PieceReport<'a>,
    name: &'a str,
    at: &'a AtSize,
    index: usize,
) {
    report.size = at.made[index].is_some().then_some(name);
    let id = at.project.pieces[index].id;
    let own = at.notes.iter().filter(|(piece, _)| *piece == id);
    report.notes = own.map(|(_, note)| note.clone()).collect();
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
