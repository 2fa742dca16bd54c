//! Sizes of whole projects: every piece at the size of one name, companions meeting again.

use crate::error::{Error, Result};
use crate::plan::plan;
use crate::project::Project;
use crate::project::companion::{self, Side};
use crate::sentence::Sentence;

use super::{Resized, Size, SizeBy, sized_piece};

/// A project whose pieces are at the size of one name.
#[derive(Debug, Clone)]
pub struct AtSize {
    /// The project at that size; pieces without such a size are as they were.
    pub project: Project,
    /// What has to be said, by piece index.
    pub notes: Vec<(usize, Sentence)>,
    /// Each piece at that size, where it has one, its seams met.
    pub made: Vec<Option<Resized>>,
}

/// The names of all sizes in `project`, each once, in the order of the pieces and their
/// tables.
pub fn size_names(project: &Project) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for size in project.pieces.iter().flat_map(|p| &p.sizes) {
        if !names.contains(&size.name.as_str()) {
            names.push(&size.name);
        }
    }
    names
}

/// Piece `index` of `project` at `size`; one that meets a companion meets it at the size of
/// the same name, where the companion has one.
///
/// # Errors
/// As [`sized_piece`]; for a companion that is not there, has no seam with the piece, or
/// cannot be met, with the reason.
///
/// # Panics
/// Where there is no piece `index`.
pub fn sized(project: &Project, index: usize, size: &Size) -> Result<Resized> {
    let piece = &project.pieces[index];
    match size.by {
        SizeBy::Meet { companion } => meet(project, index, companion, size, &mut vec![index]),
        _ => sized_piece(piece, size),
    }
    .map_err(|e| e.within(&format!("piece “{}”", piece.name)))
}

/// As [`sized`] for a size by companion; `waiting` are the pieces that wait for one another.
fn meet(
    project: &Project,
    index: usize,
    companion: usize,
    size: &Size,
    waiting: &mut Vec<usize>,
) -> Result<Resized> {
    let place = || format!("size “{}”", size.name);
    size.validate()?;
    let Some(other) = project.pieces.get(companion).filter(|_| companion != index) else {
        let what = format!("there is no companion {companion}");
        return Err(Error::new(place(), what, "choose another piece of the project"));
    };
    let base_plan = plan(&project.pieces[index])?;
    let mut at = project.clone();
    let mut notes = Vec::new();
    if let Some(theirs) = other.sizes.iter().find(|s| s.name == size.name) {
        let made = match theirs.by {
            SizeBy::Meet { companion: next } => {
                if waiting.contains(&companion) {
                    let names: Vec<&str> =
                        waiting.iter().map(|&i| project.pieces[i].name.as_str()).collect();
                    return Err(Error::new(
                        place(),
                        format!("{} wait for one another", names.join(" and ")),
                        "give one of them a height, a width or a factor",
                    ));
                }
                waiting.push(companion);
                meet(project, companion, next, theirs, waiting)?
            }
            _ => sized_piece(other, theirs)?,
        };
        put(&mut at, companion, &made);
    }
    let shared: Vec<usize> =
        (0..at.seams.len()).filter(|&i| at.seams[i].joins(index, companion)).collect();
    if shared.is_empty() {
        return Err(Error::new(
            place(),
            format!("no seam joins it to “{}”", other.name),
            "say where the two meet first",
        ));
    }
    for i in shared {
        let seam = &mut at.seams[i];
        seam.moves = if seam.a.piece == index { Side::A } else { Side::B };
        let met = companion::meet_as(&at, i, size)?;
        notes.extend(met.changes.iter().map(|change| change.text.clone().into()));
        at = met.project;
    }
    let piece = at.pieces.swap_remove(index);
    let plan = plan(&piece)?;
    let base_rounds = base_plan.rounds.len() as u32;
    let scale = plan.size_mm.height / base_plan.size_mm.height;
    Ok(Resized { piece, plan, scale, base_rounds, wanted: None, notes })
}

/// Every piece of `project` at its size called `name`, its seams met again.
///
/// A seam that cannot be met at that size is named in the notes of both its pieces; it never
/// keeps the size from being made.
///
/// # Errors
/// Where no piece has a size of that name, listing those there are; and as [`sized`].
pub fn at_size(project: &Project, name: &str) -> Result<AtSize> {
    let of_name = |i: usize| project.pieces[i].sizes.iter().find(|s| s.name == name);
    if (0..project.pieces.len()).all(|i| of_name(i).is_none()) {
        let names = size_names(project);
        let mend = match names.is_empty() {
            true => "the project has no sizes yet".to_owned(),
            false => format!("the sizes are {}", names.join(", ")),
        };
        return Err(Error::new("sizes", format!("there is no size “{name}”"), mend));
    }
    let mut at = project.clone();
    let mut made = Vec::with_capacity(project.pieces.len());
    for i in 0..project.pieces.len() {
        let sized = of_name(i).map(|size| sized(project, i, size)).transpose()?;
        if let Some(sized) = &sized {
            put(&mut at, i, sized);
        }
        made.push(sized);
    }
    let (at, seams) = companion::meet_all(&at);
    let mut notes = Vec::new();
    for (i, made) in made.iter_mut().enumerate() {
        let Some(made) = made else { continue };
        if made.piece != at.pieces[i] {
            made.plan = plan(&at.pieces[i])?;
            made.piece = at.pieces[i].clone();
        }
        notes.extend(made.notes.iter().map(|note| (i, note.clone())));
    }
    for (seam, said) in at.seams.iter().zip(seams) {
        for piece in [seam.a.piece, seam.b.piece] {
            notes.extend(said.iter().map(|text| (piece, text.clone())));
        }
    }
    Ok(AtSize { project: at, notes, made })
}

/// Piece `index` at its size `size`, its seams met as in [`at_size`] where it has any.
///
/// # Errors
/// As [`sized`].
pub(super) fn sized_and_met(project: &Project, index: usize, size: &Size) -> Result<Resized> {
    if !project.seams.iter().any(|seam| seam.touches(index)) {
        return sized(project, index, size);
    }
    let mut at = at_size(project, &size.name)?;
    let said = at.notes.into_iter().filter(|(piece, _)| *piece == index);
    let notes = said.map(|(_, note)| note).collect();
    match at.made.swap_remove(index) {
        Some(made) => Ok(Resized { notes, ..made }),
        None => sized(project, index, size),
    }
}

/// A project with one piece at another size, or all of them in step.
#[derive(Debug, Clone)]
pub struct ResizedProject {
    /// The project, its seams met again as far as they can be.
    pub project: Project,
    /// The pieces that were sized and what they came to, before seams moved them.
    pub made: Vec<(usize, Resized)>,
    /// What was changed so that seams hold, how each stands, and which cannot, a sentence
    /// each.
    pub seams: Vec<Sentence>,
}

/// `project` with piece `only` at `size`; without it the first piece is at `size` and the
/// others are scaled in step with it (or worked at the same gauge). Seams are met again by
/// moving companions of the piece that was sized.
///
/// # Errors
/// As [`sized`], for the first piece that cannot be made.
pub fn resize(project: &Project, only: Option<usize>, size: &Size) -> Result<ResizedProject> {
    let first = only.unwrap_or(0);
    let mut made = vec![(first, sized(project, first, size)?)];
    if only.is_none() {
        let by = match size.by {
            SizeBy::Gauge { .. } => size.by,
            _ => SizeBy::Factor(made[0].1.scale),
        };
        let in_step = Size { by, ..size.clone() };
        for other in 1..project.pieces.len() {
            made.push((other, sized(project, other, &in_step)?));
        }
    }
    let mut at = project.clone();
    for (index, made) in &made {
        put(&mut at, *index, made);
    }
    let mut seams = Vec::new();
    for i in 0..at.seams.len() {
        let moves = at.seams[i].moves;
        at.seams[i].moves = match only {
            Some(kept) if at.seams[i].a.piece == kept => Side::B,
            Some(kept) if at.seams[i].b.piece == kept => Side::A,
            _ => moves,
        };
        match companion::meet(&at, i) {
            Ok(met) => {
                at = met.project;
                seams.extend(met.changes.into_iter().map(|change| change.text.into()));
                seams.push(met.report.sentence());
            }
            Err(e) => seams.push(format!("Note: {e}.").into()),
        }
        at.seams[i].moves = moves;
    }
    Ok(ResizedProject { project: at, made, seams })
}

/// Puts piece `index` of `project` at the size that was made of it; its seams and its parts of
/// the toy go with it.
///
/// # Panics
/// Where there is no piece `index`.
pub fn put(project: &mut Project, index: usize, made: &Resized) {
    companion::carry(&mut project.seams, index, made);
    project.toy.piece_scaled(index, made.scale);
    project.pieces[index] = made.piece.clone();
}
